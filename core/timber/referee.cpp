#include "core/timber/referee.h"

#include <algorithm>
#include <set>
#include <utility>

namespace kerfwright {
namespace {

std::size_t at(int i) {
    return static_cast<std::size_t>(i);
}

struct Rectangular {
    Length left, right, low, high;
    bool meets(const Rectangular& other) const {
        return left < other.right && other.left < right && low < other.high && other.low < high;
    }
};

class Referee {
public:
    Referee(const Layout& layout, const Rack& rack, const Demand& demand, const CutRules& rules,
            const Notation& notation)
        : layout_(layout)
        , rack_(rack)
        , demand_(demand)
        , rules_(rules)
        , notation_(notation)
        , laid_(demand.strips.size()) {}

    std::vector<Fault> verdict() {
        std::set<int> used;
        for (const PlankCuts& cuts : layout_.planks) {
            if (cuts.plank < 0 || at(cuts.plank) >= rack_.planks.size()) {
                say("Plank", "must be one of the rack", std::to_string(cuts.plank));
            } else if (!used.insert(cuts.plank).second) {
                say("Plank " + rack_.planks[at(cuts.plank)].label, "must be cut once", "twice");
            } else {
                plank(rack_.planks[at(cuts.plank)], cuts);
            }
        }
        sums(used);
        return std::move(found_);
    }

private:
    void say(const std::string& entry, const std::string& rule, const std::string& value) {
        found_.push_back({entry, rule, value});
    }
    std::string text(Length length) const { return formatExact(length, notation_); }

    void plank(const Plank& plank, const PlankCuts& cuts) {
        const std::string name = "Plank " + plank.label;
        if (cuts.sections.empty()) {
            say(name, "must have a section where it is used", "none");
        }
        taken_.clear();
        Length free = rules_.endTrim;
        for (std::size_t i = 0; i < cuts.sections.size(); ++i) {
            const PlankSection& section = cuts.sections[i];
            const std::string where = name + ", section " + std::to_string(i + 1);
            if (section.x < free) {
                say(where, "must begin a kerf behind what lies before it, at " + text(free),
                    text(section.x));
            }
            if (section.length <= Length() ||
                section.x + section.length > plank.length - rules_.endTrim) {
                say(where, "must end within the plank, at " + text(plank.length - rules_.endTrim),
                    text(section.x + section.length));
            }
            free = section.x + section.length + rules_.kerf;
            strips(plank, section, where);
        }
        offcuts(plank, cuts, name);
    }

    void strips(const Plank& plank, const PlankSection& section, const std::string& where) {
        if (section.strips.empty()) {
            say(where, "must hold a strip", "none");
        }
        Length free = rules_.edgeTrim;
        for (const LaidStrip& strip : section.strips) {
            if (strip.wanted < 0 || at(strip.wanted) >= demand_.strips.size()) {
                say(where, "must hold strips that are wanted", std::to_string(strip.wanted));
                continue;
            }
            const WantedStrips& wanted = demand_.strips[at(strip.wanted)];
            ++laid_[at(strip.wanted)];
            const std::string name = where + ", strip " + wanted.label;
            const Length across = strip.onEdge ? wanted.thickness : wanted.width;
            const Length through = strip.onEdge ? wanted.width : wanted.thickness;
            if (strip.onEdge && !wanted.eitherWay) {
                say(name, "must not be sawn on edge", "on edge");
            }
            if (wanted.wood != plank.wood) {
                say(name, "must be of " + wanted.wood, plank.wood);
            }
            if (!wanted.plank.empty() && wanted.plank != plank.label) {
                say(name, "must come from plank " + wanted.plank, plank.label);
            }
            if (through > plank.thickness || plank.thickness - through > rules_.thicker) {
                say(name, "must suit the plank, which is " + text(plank.thickness) + " thick",
                    text(through));
            }
            if (strip.y < free) {
                say(name, "must lie a kerf above what is below it, at " + text(free),
                    text(strip.y));
            }
            if (strip.y + across > plank.width - rules_.edgeTrim) {
                say(name, "must end below " + text(plank.width - rules_.edgeTrim),
                    text(strip.y + across));
            }
            if (strip.x < section.x || strip.x + wanted.length > section.x + section.length) {
                say(name,
                    "must lie in its section, from " + text(section.x) + " to " +
                        text(section.x + section.length),
                    "from " + text(strip.x) + " to " + text(strip.x + wanted.length));
            }
            const Rectangular wood{strip.x, strip.x + wanted.length, strip.y, strip.y + across};
            for (const Defect& defect : plank.defects) {
                if (wood.meets(
                        {defect.x, defect.x + defect.length, defect.y, defect.y + defect.width})) {
                    say(name, "must be clear of defects",
                        "one at " + text(defect.x) + ", " + text(defect.y));
                }
            }
            free = strip.y + across + rules_.kerf;
            taken_.push_back(wood);
        }
    }

    /// Offcuts are as sawn: a kerf from every strip beside which they lie.
    void offcuts(const Plank& plank, const PlankCuts& cuts, const std::string& name) {
        for (const Offcut& offcut : cuts.offcuts) {
            const Rectangular rest{offcut.x, offcut.x + offcut.length, offcut.y,
                                   offcut.y + offcut.width};
            if (rest.left < Length() || rest.low < Length() || rest.right > plank.length ||
                rest.high > plank.width) {
                say(name + ", offcut", "must lie on the plank", text(rest.left));
            }
            if (offcut.length < rules_.offcutLength || offcut.width < rules_.offcutWidth) {
                say(name + ", offcut", "must be large enough to keep",
                    text(offcut.length) + " x " + text(offcut.width));
            }
            const Rectangular withKerf{rest.left - rules_.kerf, rest.right + rules_.kerf,
                                       rest.low - rules_.kerf, rest.high + rules_.kerf};
            if (std::any_of(taken_.begin(), taken_.end(),
                            [&](const Rectangular& wood) { return wood.meets(withKerf); })) {
                say(name + ", offcut", "must be clear of strips by a kerf", text(rest.left));
            }
            taken_.push_back(rest);
        }
    }

    void sums(const std::set<int>& used) {
        std::int64_t cost = 0;
        for (const int plank : used) {
            cost += countedCost(rack_.planks[at(plank)], rules_, layout_.costIn);
        }
        if (cost != layout_.cost) {
            say("Cost", "must be that of the planks, " + std::to_string(cost),
                std::to_string(layout_.cost));
        }
        if (layout_.missing.size() != demand_.strips.size()) {
            say("Missing strips", "must be told of each line of the demand",
                std::to_string(layout_.missing.size()));
            return;
        }
        Volume missing;
        for (std::size_t i = 0; i < demand_.strips.size(); ++i) {
            const WantedStrips& wanted = demand_.strips[i];
            if (layout_.missing[i] < 0 || laid_[i] + layout_.missing[i] != wanted.count) {
                say("Strips " + wanted.label,
                    "laid and missing must be the " + std::to_string(wanted.count) + " wanted",
                    std::to_string(laid_[i]) + " and " + std::to_string(layout_.missing[i]));
            }
            missing += volume(wanted.thickness, wanted.width, wanted.length) * layout_.missing[i];
        }
        if (missing != layout_.missingVolume) {
            say("Missing timber", "must be that of the missing strips", "another volume");
        }
        if (layout_.leastMissingVolume > missing ||
            (layout_.isComplete() && layout_.bound > layout_.cost)) {
            say("Bound", "must not be above what was reached", std::to_string(layout_.bound));
        }
        const bool tight = layout_.isComplete() ? layout_.bound == layout_.cost
                                                : layout_.leastMissingVolume == missing;
        if (layout_.proven && !tight) {
            say("Proven", "must be said of what meets its bound only",
                std::to_string(layout_.bound));
        }
    }

    const Layout& layout_;
    const Rack& rack_;
    const Demand& demand_;
    const CutRules& rules_;
    const Notation& notation_;
    std::vector<int> laid_;
    std::vector<Rectangular> taken_;
    std::vector<Fault> found_;
};

}  // namespace

std::vector<Fault> layoutFaults(const Layout& layout, const Rack& rack, const Demand& demand,
                                const CutRules& rules, const Notation& notation) {
    return Referee(layout, rack, demand, rules, notation).verdict();
}

}  // namespace kerfwright
