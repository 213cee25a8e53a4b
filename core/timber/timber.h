// The timber of a project: what the maker has and wishes, and what comes of it for a board's steps.
#pragma once

#include "core/glueup/steps.h"
#include "core/timber/cutorder.h"
#include "core/timber/layout.h"
#include "core/timber/shopping.h"

#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <vector>

namespace kerfwright {

/// A strip that the maker wants from one plank.
struct StripPin {
    std::string strip;  ///< label of one strip, as in the steps: "A3"
    std::string plank;  ///< label of a plank of the rack
    friend bool operator==(const StripPin&, const StripPin&) = default;
};

/// How planks are sawn up, but for the kerf, which the shop knows.
struct Sawing {
    Length endTrim;   ///< lost at each end of a plank; strips have their own end allowance
    Length edgeTrim;  ///< lost along each edge of a plank
    /// A plank may be thicker than a strip by that much. Thicker planks cost more for their face,
    /// so they are taken where nothing thinner will do, or where they save a plank.
    Length thicker = Length::mm(100);
    Length offcutLength = Length::mm(300);  ///< shorter offcuts are not kept
    Length offcutWidth = Length::mm(25);    ///< narrower ones neither
    std::int64_t offcutPercent = 25;  ///< what an offcut counts for, of its price: used up first
    std::int64_t effort = 40;         ///< thousands of steps that a search may take
    friend bool operator==(const Sawing&, const Sawing&) = default;
};

struct SawingLength {
    const char* key;    ///< in files, before "-nm"
    const char* name;   ///< "End trim", to be said
    const char* about;  ///< to be said
    Length Sawing::*value;
    Length greatest;  ///< from 0
};
struct SawingCount {
    const char* key;
    const char* name;  ///< to be said, as the next two
    const char* unit;
    const char* about;
    std::int64_t Sawing::*value;
    std::int64_t least, greatest;
};
/// In the order of a form.
const std::vector<SawingLength>& sawingLengths();
const std::vector<SawingCount>& sawingCounts();

/// What a project says of its timber.
struct Timber {
    Rack rack;
    Yard yard = metricYard();
    std::vector<StripPin> pins;
    Sawing sawing;
    /// Rails are sawn one after another from one length where a plank gives it, so that their grain
    /// runs round the board.
    bool railsInOneLength = true;
    friend bool operator==(const Timber&, const Timber&) = default;
};

/// An empty rack, and a yard that sells in quarters or in millimetres.
Timber newTimber(Unit unit);

/// Everything wrong with rack, yard, pins (a strip pinned twice, an empty label, more than
/// `mostPins`) and sawing.
std::vector<Fault> faults(const Timber& timber, const Notation& notation = Notation::millimetres());
inline constexpr std::size_t mostPins = 1'000;

/// The rules that layouts are made by.
CutRules cutRules(const Shop& shop, const Sawing& sawing);

/// How the rails of a border lie in their planks.
enum class RailLengths {
    None,       ///< no border, or of one part only
    OneLength,  ///< all of a kind one after another
    Pairs,      ///< two lengths, each with half of the rails
    Single,     ///< each by itself
};

/// A pin that cannot be kept, and why.
struct LostPin {
    StripPin pin;
    std::string reason;  ///< "there is no plank P7"
    friend bool operator==(const LostPin&, const LostPin&) = default;
};

struct TimberPlan {
    Rack rack;      ///< with the prices that it was laid by
    Demand demand;  ///< each line with the labels of its strips; pinned ones are lines of their own
    CutRules rules;
    Layout layout;
    std::vector<SawCut> cuts;
    RailLengths rails = RailLengths::None;
    std::vector<LostPin> lostPins;
    Demand toBuy;           ///< what is missing, rails in as long pieces as the yard has
    ShoppingList shopping;  ///< for it; its layout is one of `toBuy`
    /// Planks of the rack that are cut, in hundredths; empty where a price is not known.
    std::optional<std::int64_t> rackCost;

    Demand missing() const { return missingOf(layout, demand); }
};

enum class TimberStage { Rack, Shopping };
struct TimberProgress {
    TimberStage stage = TimberStage::Rack;
    double done = 0;  ///< of all, 0 to 1
    /// So far, on the rack; null where it did not change since the last call. Not yet seen by the
    /// referee, without cuts and shopping.
    const TimberPlan* best = nullptr;
};
/// False stops the search; the best so far is then ordered, checked and returned.
using TimberCallback = std::function<bool(const TimberProgress&)>;

/// What the strips of some boards want of the timber: lays them on the rack, orders the cuts, and
/// says what to buy. Planks without a price take that of their wood (`priced`). The referee has
/// seen both layouts: what it refuses is a fault with the entry "Layout". Demand and timber must be
/// without faults.
Result<TimberPlan> planTimber(const Demand& demand, const std::vector<Wood>& woods,
                              const Shop& shop, const Timber& timber,
                              const TimberCallback& callback = {});

/// The label of every strip that a layout lays, by plank of the layout, section and strip.
std::vector<std::vector<std::vector<std::string>>> stripLabels(const Layout& layout,
                                                               const Demand& demand);

/// The rack after the layout was sawn: without the planks that were cut, with the offcuts that were
/// kept as planks of their own, priced by their share of the plank's volume. Labels: "P3.1",
/// "P3.2".
Rack rackAfter(const TimberPlan& plan);

}  // namespace kerfwright
