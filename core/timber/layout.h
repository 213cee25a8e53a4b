// Strips laid on planks: which plank is crosscut into which sections, and which strips each section
// is ripped into.
//
// A plank is crosscut into sections first; every section is then ripped, and a strip that is
// shorter than its section is cut to length last. So a strip's place is given by its section, by
// how far it lies from the plank's lower edge, and by where its own left end is. Between
// neighbouring sections, and between neighbouring strips of a section, lies at least a kerf. Strips
// run along the grain.
#pragma once

#include "core/measure/length.h"
#include "core/shop/shop.h"
#include "core/timber/rack.h"

#include <cstdint>
#include <functional>
#include <string>
#include <vector>

namespace kerfwright {

/// Equal strips that are wanted, rough.
struct WantedStrips {
    std::string label;  ///< "A3" or "A1, A5": what they become
    std::string wood;   ///< key
    Length thickness, width, length;
    int count = 1;
    /// It may be sawn with its thickness across the plank's width, where the plank is as thick as
    /// the strip is wide.
    bool eitherWay = true;
    std::string plank = {};  ///< label of the one plank that they may come from; empty: any
    bool isRail = false;     ///< of a border, in one length with others where a plank gives it
    bool ofBorder = false;   ///< a rail, a tongue or an inlay
    int board = 0;           ///< in a batch: for which board, from 0
    friend bool operator==(const WantedStrips&, const WantedStrips&) = default;
};

struct Demand {
    std::vector<WantedStrips> strips;
    friend bool operator==(const Demand&, const Demand&) = default;
};

/// Everything wrong: sizes of 0 or less, counts below 1, more than 100 000 strips in all.
std::vector<Fault> faults(const Demand& demand, const Notation& notation = Notation::millimetres());

struct CutRules {
    Length kerf;
    Length endTrim;   ///< lost at each end of a plank, with the kerf of that cut
    Length edgeTrim;  ///< lost along each edge of a plank, with the kerf of that cut
    /// A plank may be thicker than a strip by that much, at the price that a thicker plank has.
    Length thicker = Length::mm(500);
    Length offcutLength = Length::mm(300);  ///< shorter or narrower offcuts are not kept
    Length offcutWidth = Length::mm(25);
    int offcutPercent = 25;  ///< what a plank that is an offcut counts for, of its price; 0 to 100
    std::int64_t budget = 40'000;  ///< steps: planks filled once by the search
    friend bool operator==(const CutRules&, const CutRules&) = default;
};

/// Kerf of the shop; its end allowance is already in the length of its strips, so no end trim.
CutRules cutRules(const Shop& shop);
/// Negative lengths, a percentage outside 0 to 100, a budget below 0.
std::vector<Fault> faults(const CutRules& rules,
                          const Notation& notation = Notation::millimetres());

/// A strip on a plank.
struct LaidStrip {
    int wanted = 0;       ///< index into the demand
    Length x, y;          ///< of its left lower corner on the plank
    bool onEdge = false;  ///< its thickness lies across the plank's width
    friend bool operator==(const LaidStrip&, const LaidStrip&) = default;
};

/// A piece of plank between two crosscuts, over the plank's whole width.
struct PlankSection {
    Length x, length;
    std::vector<LaidStrip> strips;  ///< from the lower edge upwards
    friend bool operator==(const PlankSection&, const PlankSection&) = default;
};

/// What is left of a plank and large enough to go back on the rack.
struct Offcut {
    Length x, y, length, width;
    friend bool operator==(const Offcut&, const Offcut&) = default;
};

/// A plank that is cut.
struct PlankCuts {
    int plank = 0;                       ///< index into the rack
    std::vector<PlankSection> sections;  ///< from the left end
    std::vector<Offcut> offcuts;
    friend bool operator==(const PlankCuts&, const PlankCuts&) = default;
};

/// In what the cost of a layout is counted.
enum class CostIn {
    Money,   ///< hundredths, where every plank of the woods that are wanted has a price
    Volume,  ///< else: cubic centimetres of timber
};

struct Layout {
    std::vector<PlankCuts> planks;  ///< in the order of the rack; those that nothing is cut from
                                    ///< are not among them
    std::vector<int> missing;       ///< of each line of the demand, strips that found no place
    CostIn costIn = CostIn::Volume;
    std::int64_t cost = 0;      ///< of the planks, offcuts at `offcutPercent`
    std::int64_t bound = 0;     ///< no layout with as few missing costs less
    Volume missingVolume;       ///< of the strips that found no place
    Volume leastMissingVolume;  ///< no layout leaves less
    /// Nothing is missing, or no layout leaves less; and, where nothing is missing, none costs
    /// less.
    bool proven = false;
    bool stopped = false;  ///< by the callback

    bool isComplete() const { return missingVolume == Volume(); }
    /// At most so many percent above the least possible: of cost where all is laid, else of the
    /// timber that is missing; 0 where proven.
    double gapPercent() const;
};

struct LayoutProgress {
    double done = 0;               ///< share of the budget, 0 to 1
    const Layout* best = nullptr;  ///< so far; null where it did not change since the last call
};

/// False stops the search, which then returns the best so far.
using LayoutCallback = std::function<bool(const LayoutProgress&)>;

/// Lays the demand on the rack: as little as possible missing (by volume), then at least cost, then
/// with the longest and widest offcuts. Rack, demand and rules must be without faults. The same
/// input gives the same layout, if not stopped.
Layout layout(const Rack& rack, const Demand& demand, const CutRules& rules,
              const LayoutCallback& callback = {});

/// What a plank counts for. Volumes are rounded up to the whole cubic centimetre, money down to the
/// whole hundredth, but never below 1.
std::int64_t countedCost(const Plank& plank, const CutRules& rules, CostIn in);
/// Whether a strip may be sawn from a plank of that wood and thickness, lying flat or on edge.
bool suits(const WantedStrips& strips, const Plank& plank, bool onEdge, const CutRules& rules);
/// Of a strip, as it lies across the plank.
Length acrossPlank(const WantedStrips& strips, bool onEdge);

}  // namespace kerfwright
