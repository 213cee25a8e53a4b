#include "core/sheets/layoutwords.h"

#include "core/words/say.h"

#include <algorithm>

namespace kerfwright {
namespace {

const Plank& plankOf(const PlankCuts& cuts, const Rack& rack) {
    return rack.planks[static_cast<std::size_t>(cuts.plank)];
}

Volume volumeOf(const Plank& plank) {
    return volume(plank.thickness, plank.width, plank.length);
}

}  // namespace

LeastPlank leastPlank(const TimberPlan& plan, const ShoppingLine& line) {
    const ShoppingList& list = plan.shopping;
    const CutRules& rules = plan.rules;
    LeastPlank least;
    for (const PlankCuts& cuts : list.layout.planks) {
        const Plank& plank = plankOf(cuts, list.planks);
        if (plank.wood != line.wood || plank.thickness != line.thickness ||
            plank.width != line.width || plank.length != line.length) {
            continue;
        }
        Length width, length;
        for (const PlankSection& section : cuts.sections) {
            length = std::max(length, section.x + section.length);
            for (const LaidStrip& strip : section.strips) {
                const WantedStrips& wanted =
                    plan.toBuy.strips[static_cast<std::size_t>(strip.wanted)];
                width = std::max(width, strip.y + acrossPlank(wanted, strip.onEdge));
            }
        }
        // The last cut off an end or an edge needs its kerf, unless the plank ends there.
        width =
            std::min(width + rules.edgeTrim + (rules.edgeTrim > Length() ? rules.kerf : Length()),
                     plank.width);
        length =
            std::min(length + rules.endTrim + (rules.endTrim > Length() ? rules.kerf : Length()),
                     plank.length);
        least.width = std::max(least.width, width);
        least.length = std::max(least.length, length);
    }
    return least;
}

std::string tallyWords(Tally tally) {
    for (const TallyInfo& info : tallies()) {
        if (info.tally == tally) {
            return say(info.name) + ": " + say(info.about);
        }
    }
    return {};
}

TimberUse useOf(const Layout& layout, const Rack& rack, const Demand& demand) {
    TimberUse use;
    for (const PlankCuts& cuts : layout.planks) {
        const Plank& plank = plankOf(cuts, rack);
        use.planks += volumeOf(plank);
        for (const PlankSection& section : cuts.sections) {
            for (const LaidStrip& strip : section.strips) {
                const WantedStrips& wanted = demand.strips[static_cast<std::size_t>(strip.wanted)];
                use.net += volume(wanted.thickness, wanted.width, wanted.length);
            }
        }
        for (const Offcut& offcut : cuts.offcuts) {
            use.kept += volume(plank.thickness, offcut.width, offcut.length);
        }
    }
    return use;
}

double TimberUse::wastePercent() const {
    return kerfwright::wastePercent(net, planks - kept);
}

}  // namespace kerfwright
