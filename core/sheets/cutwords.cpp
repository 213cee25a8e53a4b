#include "core/sheets/cutwords.h"

#include "core/sheets/record.h"
#include "core/timber/timberwords.h"
#include "core/words/say.h"

#include <algorithm>

namespace kerfwright {
namespace {

std::string whatComesOff(const SawCut& cut, const PlankCuts& plank,
                         const std::vector<std::vector<std::string>>& names) {
    switch (cut.off) {
    case CutOff::Waste:
        return say("waste");
    case CutOff::Kept:
        return say("offcut, keep it");
    case CutOff::Section: {
        if (cut.section < 0) {
            return say("section");
        }
        const auto& strips = names[static_cast<std::size_t>(cut.section)];
        std::vector<std::string> sorted = strips;
        std::sort(sorted.begin(), sorted.end(), labelBefore);
        // Translators: a section, for the strips "A1, A3".
        return say("for {1}", labelList(sorted));
    }
    case CutOff::Strip:
        break;
    }
    if (cut.section < 0 || cut.strip < 0 ||
        plank.sections[static_cast<std::size_t>(cut.section)].strips.empty()) {
        return say("strip");
    }
    return names[static_cast<std::size_t>(cut.section)][static_cast<std::size_t>(cut.strip)];
}

std::string shown(const std::vector<std::string>& strips) {
    return strips.size() > 1 ? labelList(strips) : shownLabel(strips.front());
}

/// Whether the saw stays as it is from one cut to the next.
bool goesOn(const CutRow& row, const SawCut& cut) {
    return row.kind == cut.kind && row.off == cut.off && row.set == cut.size &&
           cut.off == CutOff::Strip && cut.size > Length() && cut.number == row.last + 1;
}

}  // namespace

std::vector<CutRow> cutRows(const Layout& layout, const std::vector<SawCut>& cuts,
                            const StripNames& names, int plank) {
    const auto index = static_cast<std::size_t>(plank);
    std::vector<CutRow> rows;
    std::vector<std::vector<std::string>> strips;
    int section = -1;
    for (const SawCut& cut : cuts) {
        if (cut.plank != plank) {
            continue;
        }
        const std::string what = whatComesOff(cut, layout.planks[index], names[index]);
        if (!rows.empty() && section == cut.section && goesOn(rows.back(), cut)) {
            rows.back().last = cut.number;
            strips.back().push_back(what);
        } else {
            rows.push_back({cut.number, cut.number, cut.kind, cut.off, cut.size, what});
            strips.push_back({what});
        }
        section = cut.section;
    }
    for (std::size_t i = 0; i < rows.size(); ++i) {
        if (rows[i].off == CutOff::Strip) {
            rows[i].what = shown(strips[i]);
        }
    }
    return rows;
}

std::vector<int> cuttingOrder(const Layout& layout, const std::vector<SawCut>& cuts) {
    std::vector<int> order;
    const auto add = [&](int plank) {
        if (std::find(order.begin(), order.end(), plank) == order.end()) {
            order.push_back(plank);
        }
    };
    for (const SawCut& cut : cuts) {
        add(cut.plank);
    }
    // A plank that is used as it is needs no cut.
    for (std::size_t i = 0; i < layout.planks.size(); ++i) {
        add(static_cast<int>(i));
    }
    return order;
}

std::string cutName(SawCutKind kind) {
    switch (kind) {
    case SawCutKind::Crosscut:
        return sayIn("saw cut", "Crosscut");
    case SawCutKind::Rip:
        return sayIn("saw cut", "Rip");
    case SawCutKind::ToLength:
        break;
    }
    return sayIn("saw cut", "Cut to length");
}

std::string numberWords(const CutRow& row) {
    const std::string first = std::to_string(row.first);
    return row.first == row.last ? first : first + "–" + std::to_string(row.last);
}

std::string settingWords(const CutRow& row, const Notation& notation) {
    if (row.set <= Length()) {
        return sayIn("saw cut", "trim");
    }
    const std::string set = format(row.set, notation);
    return row.kind == SawCutKind::Rip ? say("fence at {1}", set) : say("stop at {1}", set);
}

std::string plankWords(const Plank& plank, const std::vector<Wood>& woods) {
    const std::string wood = woodName(plank.wood, woods);
    return plank.isOffcut ? say("{1} · {2}, offcut", plank.label, wood)
                          : plank.label + " · " + wood;
}

std::string sawSafety() {
    return say("The saw’s manual, local rules and trained people come before this list. What is "
               "too short or too narrow to be guided is never ripped or crosscut by itself: saw "
               "such strips together, out of a longer piece.");
}

}  // namespace kerfwright
