#include "core/sheets/layoutwords.h"

#include "core/sheets/amounts.h"
#include "core/timber/demand.h"

#include <algorithm>

namespace kerfwright {
namespace {

std::string counted(int count, const char* one, const char* many) {
    return std::to_string(count) + " " + (count == 1 ? one : many);
}

std::string joined(const std::vector<std::string>& parts) {
    std::string all;
    for (std::size_t i = 0; i < parts.size(); ++i) {
        all += (i == 0 ? "" : i + 1 == parts.size() ? " and " : ", ") + parts[i];
    }
    return all;
}

/// Rails that are sawn in one length are strips each.
int partsOf(const WantedStrips& strips) {
    const std::vector<std::string> labels = labelsOf(strips);
    return labels.empty() ? 1
                          : 1 + static_cast<int>(
                                    std::count(labels.front().begin(), labels.front().end(), '+'));
}

const Plank& plankOf(const PlankCuts& cuts, const Rack& rack) {
    return rack.planks[static_cast<std::size_t>(cuts.plank)];
}

Volume volumeOf(const Plank& plank) {
    return volume(plank.thickness, plank.width, plank.length);
}

}  // namespace

int stripCount(const Demand& demand) {
    int count = 0;
    for (const WantedStrips& strips : demand.strips) {
        count += strips.count * partsOf(strips);
    }
    return count;
}

int missingCount(const TimberPlan& plan) {
    int count = 0;
    for (std::size_t i = 0; i < plan.demand.strips.size(); ++i) {
        count += plan.layout.missing[i] * partsOf(plan.demand.strips[i]);
    }
    return count;
}

std::string goodnessWords(bool proven, double gapPercent) {
    return proven
               ? "proven best"
               : "at most " + percentWords(std::max(gapPercent, 0.1)) + " above the best possible";
}

std::string layoutWords(const TimberPlan& plan) {
    const Layout& layout = plan.layout;
    const int all = stripCount(plan.demand);
    const int missing = missingCount(plan);
    if (all == 0) {
        return "This board needs no strips.";
    }
    const std::string planks =
        std::to_string(layout.planks.size()) + " of " +
        counted(static_cast<int>(plan.rack.planks.size()), "plank", "planks") + ".";
    std::string words;
    if (missing == 0) {
        words = all == 1 ? "The one strip lies on " + planks
                         : "All " + std::to_string(all) + " strips lie on " + planks;
    } else if (missing == all) {
        words = all == 1 ? "The one strip does not fit on this rack."
                         : "None of the " + std::to_string(all) + " strips fits on this rack.";
    } else {
        words = std::to_string(all - missing) + " of " + std::to_string(all) + " strips lie on " +
                planks;
    }
    return words + " " + verdict(layout);
}

std::string sizeWords(Length thickness, Length width, Length length, const Notation& notation) {
    return formatBare(thickness, notation) + " × " + formatBare(width, notation) + " × " +
           format(length, notation);
}

std::string woodName(const std::string& key, const std::vector<Wood>& woods) {
    const Wood* wood = findWood(woods, key);
    if (wood == nullptr) {
        wood = findWood(woodCatalogue(), key);
    }
    return wood != nullptr ? wood->name : key;
}

std::vector<std::string> shortageWords(const TimberPlan& plan, const std::vector<Wood>& woods,
                                       const Notation& notation) {
    struct Short {
        std::string wood;
        std::vector<std::string> strips;
        int count = 0;
        int impossible = 0;
    };
    std::vector<Short> all;
    for (const WantedStrips& strips : plan.missing().strips) {
        auto known = std::find_if(all.begin(), all.end(),
                                  [&](const Short& one) { return one.wood == strips.wood; });
        if (known == all.end()) {
            all.push_back({strips.wood, {}, 0, 0});
            known = all.end() - 1;
        }
        known->strips.push_back(counted(strips.count, "strip", "strips") + " of " +
                                (known->strips.empty() ? woodName(strips.wood, woods) + " " : "") +
                                sizesOf(strips, notation));
        known->count += strips.count;
    }
    const ShoppingList& list = plan.shopping;
    for (std::size_t i = 0; i < list.impossible.size(); ++i) {
        for (Short& one : all) {
            if (one.wood == plan.toBuy.strips[i].wood) {
                one.impossible += list.impossible[i];
            }
        }
    }
    std::vector<std::string> sentences;
    for (const Short& one : all) {
        std::string words = joined(one.strips) + (one.count == 1 ? " does not fit" : " do not fit");
        std::vector<std::string> buys;
        for (const ShoppingLine& line : list.lines) {
            if (line.wood == one.wood) {
                buys.push_back(counted(line.count, "plank", "planks") + " " +
                               sizeWords(line.thickness, line.width, line.length, notation));
            }
        }
        if (!buys.empty()) {
            words += ": buy " + joined(buys);
        }
        words += ".";
        if (one.impossible > 0) {
            words += " The yard as it is set has no plank for " +
                     counted(one.impossible, "of them", "of them") + ".";
        }
        sentences.push_back(words);
    }
    return sentences;
}

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
            return std::string(info.name) + ": " + std::string(info.about);
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
