#include "core/timber/timber.h"

#include "core/measure/at.h"
#include "core/timber/demand.h"
#include "core/timber/rails.h"
#include "core/timber/referee.h"
#include "core/words/say.h"

#include <algorithm>
#include <set>
#include <utility>

namespace kerfwright {
namespace {

/// Steps of a search after it was stopped: enough to have an answer at all.
constexpr std::int64_t hurried = 100;

bool fits(const WantedStrips& strips, const Plank& plank, bool onEdge, const CutRules& rules) {
    return suits(strips, plank, onEdge, rules) &&
           strips.length <= plank.length - rules.endTrim * 2 &&
           acrossPlank(strips, onEdge) <= plank.width - rules.edgeTrim * 2;
}

bool fits(const WantedStrips& strips, const Plank& plank, const CutRules& rules) {
    return fits(strips, plank, false, rules) || fits(strips, plank, true, rules);
}

/// Takes one strip out of its line and makes it a line that only `plank` may give.
bool pinOne(Demand& demand, const StripPin& pin) {
    for (WantedStrips& line : demand.strips) {
        std::vector<std::string> labels = labelsOf(line);
        const auto found = std::find(labels.begin(), labels.end(), pin.strip);
        if (found == labels.end() || !line.plank.empty()) {
            continue;
        }
        WantedStrips one = line;
        one.label = pin.strip;
        one.count = 1;
        one.plank = pin.plank;
        labels.erase(found);
        line.label.clear();
        for (const std::string& label : labels) {
            line.label += (line.label.empty() ? "" : ", ") + label;
        }
        if (--line.count == 0) {
            line = one;
        } else {
            demand.strips.push_back(one);
        }
        return true;
    }
    return false;
}

class Planning {
public:
    Planning(const Demand& demand, const std::vector<Wood>& woods, const Shop& shop,
             const Timber& timber, const TimberCallback& callback)
        : wish_(demand)
        , woods_(woods)
        , timber_(timber)
        , callback_(callback) {
        plan_.rack = priced(timber.rack, woods);
        plan_.rules = cutRules(shop, timber.sawing);
    }

    Result<TimberPlan> plan() {
        layOnRack();
        plan_.cuts = cutOrder(plan_.layout, plan_.rack, plan_.demand, plan_.rules);
        addCost();
        const std::vector<Fault> faults =
            layoutFaults(plan_.layout, plan_.rack, plan_.demand, plan_.rules);
        if (!faults.empty()) {
            return refused(faults.front());
        }
        buy();
        const std::vector<Fault> bought =
            layoutFaults(plan_.shopping.layout, plan_.shopping.planks, plan_.toBuy, plan_.rules);
        if (!bought.empty()) {
            return refused(bought.front());
        }
        return std::move(plan_);
    }

private:
    static Fault refused(const Fault& fault) {
        return {say("Layout"), say("must pass the referee"), fault.text()};
    }

    /// Pins that hold, each strip at most once; the others are told.
    Demand withPins(const Demand& demand, std::vector<StripPin>& kept) {
        Demand pinned = demand;
        plan_.lostPins.clear();
        kept.clear();
        for (const StripPin& pin : timber_.pins) {
            const std::string reason = whyNot(demand, pin);
            if (!reason.empty()) {
                plan_.lostPins.push_back({pin, reason});
            } else if (pinOne(pinned, pin)) {
                kept.push_back(pin);
            }
        }
        return pinned;
    }

    std::string whyNot(const Demand& demand, const StripPin& pin) const {
        const auto plank = std::find_if(plan_.rack.planks.begin(), plan_.rack.planks.end(),
                                        [&](const Plank& each) { return each.label == pin.plank; });
        if (plank == plan_.rack.planks.end()) {
            return say("there is no plank {1} on the rack", pin.plank);
        }
        for (const WantedStrips& line : demand.strips) {
            const std::vector<std::string> labels = labelsOf(line);
            if (std::find(labels.begin(), labels.end(), pin.strip) == labels.end()) {
                continue;
            }
            if (line.wood != plank->wood) {
                return say("plank {1} is of another wood", pin.plank);
            }
            if (crowded_.count(pin.strip) > 0) {
                return say("it finds no room on plank {1} any more", pin.plank);
            }
            return fits(line, *plank, plan_.rules)
                       ? std::string()
                       : say("it is too large for plank {1}", pin.plank);
        }
        return say("no strip is called {1}", pin.strip);
    }

    void layOnRack() {
        std::vector<StripPin> kept;
        for (bool again = true; again;) {
            again = false;
            const Demand pinned = withPins(wish_, kept);
            layRails(pinned);
            for (std::size_t i = 0; i < plan_.demand.strips.size(); ++i) {
                const WantedStrips& line = plan_.demand.strips[i];
                if (!line.plank.empty() && plan_.layout.missing[i] > 0) {
                    again = crowded_.insert(line.label).second || again;
                }
            }
        }
    }

    /// Rails in lengths as long as the rack allows, and no dearer in missing timber than singly.
    void layRails(const Demand& pinned) {
        Rails rails(pinned, timber_.railsInOneLength);
        rails.shorten(
            [&](const WantedStrips& length) {
                return std::any_of(
                    plan_.rack.planks.begin(), plan_.rack.planks.end(),
                    [&](const Plank& plank) { return fits(length, plank, plan_.rules); });
            },
            plan_.rules.kerf);
        for (;;) {
            lay(rails);
            if (!rails.shortenMissing(plan_.demand, plan_.layout.missing)) {
                break;
            }
        }
        if (!plan_.layout.isComplete() && !rails.allSingle() && !stopped_) {
            const TimberPlan inLengths = plan_;
            rails.makeSingle();
            lay(rails);
            if (plan_.layout.missingVolume >= inLengths.layout.missingVolume) {
                plan_ = inLengths;
            }
        }
    }

    void lay(const Rails& rails) {
        plan_.demand = rails.demand(plan_.rules.kerf);
        plan_.rails = rails.lengths();
        CutRules rules = plan_.rules;
        rules.budget = stopped_ ? std::min(hurried, rules.budget) : rules.budget;
        plan_.layout = layout(plan_.rack, plan_.demand, rules, callbackFor(TimberStage::Rack));
        stopped_ = stopped_ || plan_.layout.stopped;
        plan_.layout.stopped = stopped_;
    }

    void addCost() {
        std::int64_t cost = 0;
        for (const PlankCuts& cuts : plan_.layout.planks) {
            const Plank& plank = plan_.rack.planks[at(cuts.plank)];
            if (plank.price == 0) {
                return;
            }
            cost += plank.price;
        }
        plan_.rackCost = cost;
    }

    /// What is missing, with rails in the longest lengths that the yard has.
    void buy() {
        Demand missing = plan_.missing();
        for (WantedStrips& line : missing.strips) {
            line.plank.clear();
        }
        Rails rails(missing, timber_.railsInOneLength);
        rails.shorten([&](const WantedStrips& length) { return sells(length); }, plan_.rules.kerf);
        plan_.toBuy = rails.demand(plan_.rules.kerf);
        CutRules rules = plan_.rules;
        rules.budget = stopped_ ? std::min(hurried, rules.budget) : rules.budget;
        plan_.shopping =
            shopping(plan_.toBuy, timber_.yard, woods_, rules, callbackFor(TimberStage::Shopping));
    }

    bool sells(const WantedStrips& strips) const {
        for (const Length thickness : timber_.yard.thicknesses) {
            for (const Length width : timber_.yard.widths) {
                for (const Length length : timber_.yard.lengths) {
                    if (fits(strips, {"", strips.wood, thickness, width, length}, plan_.rules)) {
                        return true;
                    }
                }
            }
        }
        return false;
    }

    LayoutCallback callbackFor(TimberStage stage) {
        if (!callback_ || stopped_) {
            return {};
        }
        return [this, stage](const LayoutProgress& progress) {
            TimberProgress told;
            told.stage = stage;
            told.done = stage == TimberStage::Rack ? progress.done * rackShare
                                                   : rackShare + progress.done * (1 - rackShare);
            TimberPlan best;
            if (progress.best != nullptr && stage == TimberStage::Rack) {
                best.rack = plan_.rack;
                best.demand = plan_.demand;
                best.rules = plan_.rules;
                best.rails = plan_.rails;
                best.layout = *progress.best;
                told.best = &best;
            }
            const bool goOn = callback_(told);
            stopped_ = stopped_ || !goOn;
            return goOn;
        };
    }

    static constexpr double rackShare = 0.7;

    const Demand& wish_;
    const std::vector<Wood>& woods_;
    const Timber& timber_;
    const TimberCallback& callback_;
    TimberPlan plan_;
    std::set<std::string> crowded_;  ///< strips that find no room where they are pinned
    bool stopped_ = false;
};

}  // namespace

const std::vector<SawingLength>& sawingLengths() {
    static const std::vector<SawingLength> all{
        {"end-trim", noted("End trim"),
         noted("Sawn off each end of a plank first: checks and paint. Strips have an end allowance "
               "of their own besides."),
         &Sawing::endTrim, RackLimits::width},
        {"edge-trim", noted("Edge trim"),
         noted("Sawn off along each edge of a plank first: bark and wane."), &Sawing::edgeTrim,
         RackLimits::width},
        {"thicker", noted("Planks thicker by at most"),
         noted("How much thicker than a strip a plank may be. What is too thick is planed or "
               "resawn away, so thicker planks cost more for the same face."),
         &Sawing::thicker, RackLimits::thickness},
        {"offcut-length", noted("Shortest offcut"),
         noted("A shorter rest does not go back on the rack."), &Sawing::offcutLength,
         RackLimits::width},
        {"offcut-width", noted("Narrowest offcut"),
         noted("A narrower rest does not go back on the rack."), &Sawing::offcutWidth,
         RackLimits::width},
    };
    return all;
}

const std::vector<SawingCount>& sawingCounts() {
    static const std::vector<SawingCount> all{
        {"offcut-percent", noted("Offcuts count for"), "%",
         noted("Of their price, when layouts are compared: the less, the sooner offcuts are used "
               "up."),
         &Sawing::offcutPercent, 0, 100},
        {"effort", noted("Search for at most"), noted("thousand steps"),
         noted("More steps come closer to the best layout of large jobs. Small ones are proven "
               "long before."),
         &Sawing::effort, 1, 10'000},
    };
    return all;
}

Timber newTimber(Unit unit) {
    Timber timber;
    timber.yard = unit == Unit::Inches ? quarterYard() : metricYard();
    return timber;
}

std::vector<Fault> faults(const Timber& timber, const Notation& notation) {
    std::vector<Fault> found = faults(timber.rack, notation);
    const std::vector<Fault> yard = faults(timber.yard, notation);
    found.insert(found.end(), yard.begin(), yard.end());
    for (const SawingLength& setting : sawingLengths()) {
        const Length value = timber.sawing.*setting.value;
        if (value < Length() || value > setting.greatest) {
            found.push_back(
                {say(setting.name),
                 say("must be from 0 to {1}", formatGreatest(setting.greatest, notation)),
                 formatExact(value, notation)});
        }
    }
    for (const SawingCount& setting : sawingCounts()) {
        const std::int64_t value = timber.sawing.*setting.value;
        if (value < setting.least || value > setting.greatest) {
            found.push_back({say(setting.name),
                             say("must be from {1} to {2} {3}", setting.least, setting.greatest,
                                 say(setting.unit)),
                             std::to_string(value)});
        }
    }
    if (timber.pins.size() > mostPins) {
        found.push_back({sayIn("strip to plank", "Pins"), say("must be at most {1}", mostPins),
                         std::to_string(timber.pins.size())});
    }
    std::set<std::string> strips;
    for (const StripPin& pin : timber.pins) {
        if (pin.strip.empty() || pin.plank.empty()) {
            found.push_back({sayIn("strip to plank", "Pin"), say("must name a strip and a plank"),
                             sayIn("strip to plank", "{1} to {2}", pin.strip, pin.plank)});
        } else if (!strips.insert(pin.strip).second) {
            found.push_back({sayIn("strip to plank", "Pin of {1}", pin.strip),
                             say("must be to one plank only"), pin.plank});
        }
    }
    return found;
}

CutRules cutRules(const Shop& shop, const Sawing& sawing) {
    CutRules rules = cutRules(shop);
    rules.endTrim = sawing.endTrim;
    rules.edgeTrim = sawing.edgeTrim;
    rules.thicker = sawing.thicker;
    rules.offcutLength = sawing.offcutLength;
    rules.offcutWidth = sawing.offcutWidth;
    rules.offcutPercent = static_cast<int>(sawing.offcutPercent);
    rules.budget = sawing.effort * 1'000;
    return rules;
}

Result<TimberPlan> planTimber(const Demand& demand, const std::vector<Wood>& woods,
                              const Shop& shop, const Timber& timber,
                              const TimberCallback& callback) {
    return Planning(demand, woods, shop, timber, callback).plan();
}

std::vector<std::vector<std::vector<std::string>>> stripLabels(const Layout& layout,
                                                               const Demand& demand) {
    std::vector<std::vector<std::string>> left;
    for (const WantedStrips& strips : demand.strips) {
        left.push_back(labelsOf(strips));
        std::reverse(left.back().begin(), left.back().end());
    }
    std::vector<std::vector<std::vector<std::string>>> labels;
    for (const PlankCuts& cuts : layout.planks) {
        labels.emplace_back();
        for (const PlankSection& section : cuts.sections) {
            labels.back().emplace_back();
            for (const LaidStrip& strip : section.strips) {
                labels.back().back().push_back(left[at(strip.wanted)].back());
                left[at(strip.wanted)].pop_back();
            }
        }
    }
    return labels;
}

Rack rackAfter(const TimberPlan& plan) {
    Rack rack;
    std::vector<const PlankCuts*> cut(plan.rack.planks.size(), nullptr);
    std::set<std::string> taken;
    for (const PlankCuts& cuts : plan.layout.planks) {
        cut[at(cuts.plank)] = &cuts;
    }
    for (std::size_t i = 0; i < cut.size(); ++i) {
        if (cut[i] == nullptr) {
            rack.planks.push_back(plan.rack.planks[i]);
            taken.insert(plan.rack.planks[i].label);
        }
    }
    for (std::size_t i = 0; i < cut.size(); ++i) {
        if (cut[i] == nullptr) {
            continue;
        }
        const Plank& from = plan.rack.planks[i];
        int number = 0;
        for (const Offcut& offcut : cut[i]->offcuts) {
            Plank plank = from;
            do {
                plank.label = from.label + "." + std::to_string(++number);
            } while (!taken.insert(plank.label).second);
            plank.length = offcut.length;
            plank.width = offcut.width;
            plank.isOffcut = true;
            plank.price = static_cast<std::int64_t>(detail::Wide{from.price} *
                                                    area(offcut.length, offcut.width).squareNm() /
                                                    area(from.length, from.width).squareNm());
            plank.defects.clear();
            for (const Defect& defect : from.defects) {
                const Length left = std::max(defect.x, offcut.x);
                const Length right = std::min(defect.x + defect.length, offcut.x + offcut.length);
                const Length low = std::max(defect.y, offcut.y);
                const Length high = std::min(defect.y + defect.width, offcut.y + offcut.width);
                if (left < right && low < high) {
                    plank.defects.push_back(
                        {left - offcut.x, low - offcut.y, right - left, high - low});
                }
            }
            rack.planks.push_back(std::move(plank));
        }
    }
    return rack;
}

}  // namespace kerfwright
