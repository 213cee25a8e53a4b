#include "core/timber/referee.h"

#include "core/measure/at.h"
#include "core/words/say.h"

#include <algorithm>
#include <set>
#include <utility>

namespace kerfwright {
namespace {

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
                refuse(say("Plank"), say("must be one of the rack"), std::to_string(cuts.plank));
            } else if (!used.insert(cuts.plank).second) {
                refuse(nameOf(rack_.planks[at(cuts.plank)]), say("must be cut once"),
                       sayIn("got", "twice"));
            } else {
                plank(rack_.planks[at(cuts.plank)], cuts);
            }
        }
        sums(used);
        return std::move(found_);
    }

private:
    void refuse(std::string entry, std::string rule, std::string value) {
        found_.push_back({std::move(entry), std::move(rule), std::move(value)});
    }
    static std::string nameOf(const Plank& plank) { return say("Plank {1}", plank.label); }
    std::string text(Length length) const { return formatExact(length, notation_); }

    void plank(const Plank& plank, const PlankCuts& cuts) {
        const std::string name = nameOf(plank);
        if (cuts.sections.empty()) {
            refuse(name, say("must have a section where it is used"), sayIn("got", "none"));
        }
        taken_.clear();
        Length free = rules_.endTrim;
        for (std::size_t i = 0; i < cuts.sections.size(); ++i) {
            const PlankSection& section = cuts.sections[i];
            const std::string where = say("{1}, section {2}", name, i + 1);
            if (section.x < free) {
                refuse(where,
                       say("must begin a kerf behind what lies before it, at {1}", text(free)),
                       text(section.x));
            }
            if (section.length <= Length() ||
                section.x + section.length > plank.length - rules_.endTrim) {
                refuse(
                    where,
                    say("must end within the plank, at {1}", text(plank.length - rules_.endTrim)),
                    text(section.x + section.length));
            }
            free = section.x + section.length + rules_.kerf;
            strips(plank, section, where);
        }
        offcuts(plank, cuts, name);
    }

    void strips(const Plank& plank, const PlankSection& section, const std::string& where) {
        if (section.strips.empty()) {
            refuse(where, say("must hold a strip"), sayIn("got", "none"));
        }
        Length free = rules_.edgeTrim;
        for (const LaidStrip& strip : section.strips) {
            if (strip.wanted < 0 || at(strip.wanted) >= demand_.strips.size()) {
                refuse(where, say("must hold strips that are wanted"),
                       std::to_string(strip.wanted));
                continue;
            }
            const WantedStrips& wanted = demand_.strips[at(strip.wanted)];
            ++laid_[at(strip.wanted)];
            const std::string name = say("{1}, strip {2}", where, wanted.label);
            const Length across = strip.onEdge ? wanted.thickness : wanted.width;
            const Length through = strip.onEdge ? wanted.width : wanted.thickness;
            if (strip.onEdge && !wanted.eitherWay) {
                refuse(name, say("must not be sawn on edge"), sayIn("got", "on edge"));
            }
            if (wanted.wood != plank.wood) {
                refuse(name, say("must be of {1}", wanted.wood), plank.wood);
            }
            if (!wanted.plank.empty() && wanted.plank != plank.label) {
                refuse(name, say("must come from plank {1}", wanted.plank), plank.label);
            }
            if (through > plank.thickness || plank.thickness - through > rules_.thicker) {
                refuse(name, say("must suit the plank, which is {1} thick", text(plank.thickness)),
                       text(through));
            }
            if (strip.y < free) {
                refuse(name, say("must lie a kerf above what is below it, at {1}", text(free)),
                       text(strip.y));
            }
            if (strip.y + across > plank.width - rules_.edgeTrim) {
                refuse(name, say("must end below {1}", text(plank.width - rules_.edgeTrim)),
                       text(strip.y + across));
            }
            if (strip.x < section.x || strip.x + wanted.length > section.x + section.length) {
                refuse(name,
                       say("must lie in its section, from {1} to {2}", text(section.x),
                           text(section.x + section.length)),
                       say("from {1} to {2}", text(strip.x), text(strip.x + wanted.length)));
            }
            const Rectangular wood{strip.x, strip.x + wanted.length, strip.y, strip.y + across};
            for (const Defect& defect : plank.defects) {
                if (wood.meets(
                        {defect.x, defect.x + defect.length, defect.y, defect.y + defect.width})) {
                    refuse(name, say("must be clear of defects"),
                           say("one at {1}, {2}", text(defect.x), text(defect.y)));
                }
            }
            free = strip.y + across + rules_.kerf;
            taken_.push_back(wood);
        }
    }

    /// Offcuts are as sawn: a kerf from every strip beside which they lie.
    void offcuts(const Plank& plank, const PlankCuts& cuts, const std::string& name) {
        const std::string entry = say("{1}, offcut", name);
        for (const Offcut& offcut : cuts.offcuts) {
            const Rectangular rest{offcut.x, offcut.x + offcut.length, offcut.y,
                                   offcut.y + offcut.width};
            if (rest.left < Length() || rest.low < Length() || rest.right > plank.length ||
                rest.high > plank.width) {
                refuse(entry, say("must lie on the plank"), text(rest.left));
            }
            if (offcut.length < rules_.offcutLength || offcut.width < rules_.offcutWidth) {
                refuse(entry, say("must be large enough to keep"),
                       text(offcut.length) + " x " + text(offcut.width));
            }
            const Rectangular withKerf{rest.left - rules_.kerf, rest.right + rules_.kerf,
                                       rest.low - rules_.kerf, rest.high + rules_.kerf};
            if (std::any_of(taken_.begin(), taken_.end(),
                            [&](const Rectangular& wood) { return wood.meets(withKerf); })) {
                refuse(entry, say("must be clear of strips by a kerf"), text(rest.left));
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
            refuse(say("Cost"), say("must be that of the planks, {1}", cost),
                   std::to_string(layout_.cost));
        }
        if (layout_.missing.size() != demand_.strips.size()) {
            refuse(say("Missing strips"), say("must be told of each line of the demand"),
                   std::to_string(layout_.missing.size()));
            return;
        }
        Volume missing;
        for (std::size_t i = 0; i < demand_.strips.size(); ++i) {
            const WantedStrips& wanted = demand_.strips[i];
            if (layout_.missing[i] < 0 || laid_[i] + layout_.missing[i] != wanted.count) {
                refuse(say("Strips {1}", wanted.label),
                       say("laid and missing must be the {1} wanted", wanted.count),
                       say("{1} and {2}", laid_[i], layout_.missing[i]));
            }
            missing += volume(wanted.thickness, wanted.width, wanted.length) * layout_.missing[i];
        }
        if (missing != layout_.missingVolume) {
            refuse(say("Missing timber"), say("must be that of the missing strips"),
                   say("another volume"));
        }
        if (layout_.leastMissingVolume > missing ||
            (layout_.isComplete() && layout_.bound > layout_.cost)) {
            refuse(say("Bound"), say("must not be above what was reached"),
                   std::to_string(layout_.bound));
        }
        const bool tight = layout_.isComplete() ? layout_.bound == layout_.cost
                                                : layout_.leastMissingVolume == missing;
        if (layout_.proven && !tight) {
            refuse(say("Proven"), say("must be said of what meets its bound only"),
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
