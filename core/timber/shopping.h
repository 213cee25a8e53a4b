// What to buy where the rack does not suffice: whole planks of sizes that a yard is likely to have,
// as few and as cheap as a layout on them shows. So the waste is that of the layout.
#pragma once

#include "core/timber/layout.h"
#include "core/timber/tally.h"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace kerfwright {

/// What a yard is likely to have: every thickness in every width and length.
struct Yard {
    std::vector<Length> thicknesses;  ///< rough
    std::vector<Length> widths;
    std::vector<Length> lengths;
    Tally tally = Tally::Exact;
    friend bool operator==(const Yard&, const Yard&) = default;
};

/// Rough thicknesses in quarters of an inch; widths and lengths are common practice, no source.
Yard quarterYard();
/// Metric sawn thicknesses; widths and lengths are common practice, no source.
Yard metricYard();
/// A list that is empty or longer than 12, sizes of 0 or less or beyond `RackLimits`.
std::vector<Fault> faults(const Yard& yard, const Notation& notation = Notation::millimetres());

/// Planks of one size.
struct ShoppingLine {
    std::string wood;
    Length thickness, width, length;
    int count = 0;
    Volume volume;                      ///< of all of them, as measured
    Volume charged;                     ///< by the yard's rule
    std::optional<std::int64_t> price;  ///< hundredths; empty where the wood has none
    friend bool operator==(const ShoppingLine&, const ShoppingLine&) = default;
};

struct ShoppingList {
    std::vector<ShoppingLine> lines;  ///< by wood in the order of the demand, thickest first
    Volume net;                       ///< of the strips that are laid on them
    Volume volume;
    Volume charged;
    std::optional<std::int64_t> price;  ///< of all; empty where one wood has none
    std::vector<int>
        impossible;         ///< of each line of the demand, strips that no plank there can give
    bool proven = false;    ///< no other planks of the yard cost less (or hold less, where no price
                            ///< is known)
    double gapPercent = 0;  ///< at most so much above the least
    Rack planks;            ///< those to buy, and
    Layout layout;          ///< how the strips lie on them
};

/// The lines of a demand that a layout could not lay.
Demand missingOf(const Layout& layout, const Demand& demand);

/// Buys for a demand, each strip from the thinnest thickness that takes it. Prices are those of the
/// woods. Demand, yard and rules must be without faults.
ShoppingList shopping(const Demand& demand, const Yard& yard, const std::vector<Wood>& woods,
                      const CutRules& rules, const LayoutCallback& callback = {});

}  // namespace kerfwright
