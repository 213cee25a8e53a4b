#include "core/sheets/timberwords.h"

#include "core/sheets/amounts.h"

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
        count += strips.count;
    }
    return count;
}

int missingCount(const Layout& layout) {
    int count = 0;
    for (const int missing : layout.missing) {
        count += missing;
    }
    return count;
}

std::string goodnessWords(bool proven, double gapPercent) {
    return proven
               ? "proven best"
               : "at most " + percentWords(std::max(gapPercent, 0.1)) + " above the best possible";
}

std::string layoutWords(const Layout& layout, const Rack& rack, const Demand& demand) {
    const int all = stripCount(demand);
    const int missing = missingCount(layout);
    const std::string planks = std::to_string(layout.planks.size()) + " of " +
                               counted(static_cast<int>(rack.planks.size()), "plank", "planks");
    if (all == 0) {
        return "This board needs no strips.";
    }
    if (missing > 0) {
        std::string words =
            missing == all
                ? "None of the " + counted(all, "strip", "strips") + " fits on this rack."
                : std::to_string(all - missing) + " of " + counted(all, "strip", "strips") +
                      " lie on " + planks + "; " + std::to_string(missing) +
                      (missing == 1 ? " finds" : " find") + " no place.";
        if (layout.proven) {
            return words + " Proven: no layout of this rack leaves less timber missing.";
        }
        return words + " What is missing is at most " +
               percentWords(std::max(layout.gapPercent(), 0.1)) + " more than the least possible.";
    }
    const std::string words =
        (all == 1 ? "The one strip lies on " : "All " + std::to_string(all) + " strips lie on ") +
        planks + ". ";
    if (layout.proven) {
        return words + (layout.costIn == CostIn::Money
                            ? "Proven best: no planks of this rack that hold them cost less."
                            : "Proven best: no fewer or smaller planks of this rack hold them.");
    }
    return words + (layout.costIn == CostIn::Money ? "Cost is " : "Timber is ") +
           goodnessWords(false, layout.gapPercent()) + ".";
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

std::string moneyWords(std::int64_t hundredths, const std::string& currency) {
    return formatMoney(hundredths) + (currency.empty() ? "" : " " + currency);
}

std::vector<std::string> shortageWords(const Demand& demand, const Layout& layout,
                                       const ShoppingList* list, const std::vector<Wood>& woods,
                                       const Notation& notation) {
    struct Short {
        std::string wood;
        std::vector<std::string> strips;
        int count = 0;
        int impossible = 0;
    };
    std::vector<Short> all;
    std::size_t asked = 0;  // line of the list's own demand, which has the missing lines only
    for (std::size_t i = 0; i < demand.strips.size(); ++i) {
        const int missing = layout.missing[i];
        if (missing == 0) {
            continue;
        }
        const WantedStrips& strips = demand.strips[i];
        auto known = std::find_if(all.begin(), all.end(),
                                  [&](const Short& one) { return one.wood == strips.wood; });
        if (known == all.end()) {
            all.push_back({strips.wood, {}, 0, 0});
            known = all.end() - 1;
        }
        known->strips.push_back(counted(missing, "strip", "strips") + " of " +
                                (known->strips.empty() ? woodName(strips.wood, woods) + " " : "") +
                                sizeWords(strips.thickness, strips.width, strips.length, notation));
        known->count += missing;
        if (list != nullptr && asked < list->impossible.size()) {
            known->impossible += list->impossible[asked];
        }
        ++asked;
    }
    std::vector<std::string> sentences;
    for (const Short& one : all) {
        std::string words = joined(one.strips) + (one.count == 1 ? " does not fit" : " do not fit");
        std::vector<std::string> buys;
        if (list != nullptr) {
            for (const ShoppingLine& line : list->lines) {
                if (line.wood == one.wood) {
                    buys.push_back(counted(line.count, "plank", "planks") + " " +
                                   sizeWords(line.thickness, line.width, line.length, notation));
                }
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

LeastPlank leastPlank(const ShoppingList& list, const Demand& demand, const ShoppingLine& line,
                      const CutRules& rules) {
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
                const WantedStrips& wanted = demand.strips[static_cast<std::size_t>(strip.wanted)];
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
