// The rack: the planks that a maker has, with what spoils them and what they cost.
//
// A plank lies with its length along x, from its left end, and its width along y, from its lower
// edge; both begin at 0. All sizes are as measured, rough.
#pragma once

#include "core/measure/length.h"
#include "core/measure/notation.h"
#include "core/measure/result.h"
#include "core/wood/wood.h"

#include <cstdint>
#include <string>
#include <vector>

namespace kerfwright {

/// A knot, crack, wane or stain on the face of a plank, through its whole thickness. No strip may
/// hold any of it; a saw may run through it.
struct Defect {
    Length x, y;           ///< of its left lower corner
    Length length, width;  ///< along x and along y
    friend bool operator==(const Defect&, const Defect&) = default;
};

struct Plank {
    std::string label;  ///< what is chalked on it; no two planks of a rack share one
    std::string wood;   ///< key of the wood
    Length thickness, width, length;
    std::vector<Defect> defects = {};
    std::int64_t price = 0;  ///< of the whole plank, in hundredths; 0 where not known
    std::string note = {};
    bool isOffcut = false;  ///< left from an earlier project: used first
    friend bool operator==(const Plank&, const Plank&) = default;
};

struct Rack {
    std::vector<Plank> planks;
    friend bool operator==(const Rack&, const Rack&) = default;
};

/// What the values of a plank may be; wider than any plank is.
struct RackLimits {
    static constexpr Length thickness = Length::mm(500);
    static constexpr Length width = Length::mm(3'000);
    static constexpr Length length = Length::mm(20'000);
    static constexpr std::size_t defects = 64;     ///< on one plank
    static constexpr std::size_t planks = 20'000;  ///< in one rack
    static constexpr std::int64_t price = greatestPrice;
};

enum class PlankEntry { Wood, Thickness, Width, Length, Price, Defects };
/// A `Fault` of one plank whose entry has no name yet.
struct PlankFault {
    PlankEntry entry;
    std::size_t defect;  ///< number of the one that it is about, from 1; 0: all of them, or none
    std::string rule;
    std::string value;
};
/// Everything wrong with one plank.
std::vector<PlankFault> plankFaults(const Plank& plank, const Notation& notation);
/// The same, entries named after `where`: "Line 7, width".
std::vector<Fault> faults(const Plank& plank, const std::string& where, const Notation& notation);
/// Everything wrong, in the order of the planks; planks are named by their labels.
std::vector<Fault> faults(const Rack& rack, const Notation& notation = Notation::millimetres());

/// Planks without a price take that of their volume at the price of their wood, where it is known.
Rack priced(Rack rack, const std::vector<Wood>& woods);

}  // namespace kerfwright
