#include "core/sheets/cutwords.h"

#include "core/sheets/record.h"

#include <algorithm>

namespace kerfwright {
namespace {

std::string whatComesOff(const SawCut& cut, const PlankCuts& plank,
                         const std::vector<std::vector<std::string>>& names) {
    switch (cut.off) {
    case CutOff::Waste:
        return "waste";
    case CutOff::Kept:
        return "offcut, keep it";
    case CutOff::Section: {
        if (cut.section < 0) {
            return "section";
        }
        const auto& strips = names[static_cast<std::size_t>(cut.section)];
        std::vector<std::string> sorted = strips;
        std::sort(sorted.begin(), sorted.end(), labelBefore);
        return "for " + labelList(sorted);
    }
    case CutOff::Strip:
        break;
    }
    if (cut.section < 0 || cut.strip < 0 ||
        plank.sections[static_cast<std::size_t>(cut.section)].strips.empty()) {
        return "strip";
    }
    return names[static_cast<std::size_t>(cut.section)][static_cast<std::size_t>(cut.strip)];
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
        if (strips[i].size() > 1) {
            rows[i].what = labelList(strips[i]);
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

const char* cutName(SawCutKind kind) {
    switch (kind) {
    case SawCutKind::Crosscut:
        return "Crosscut";
    case SawCutKind::Rip:
        return "Rip";
    case SawCutKind::ToLength:
        break;
    }
    return "Cut to length";
}

std::string numberWords(const CutRow& row) {
    const std::string first = std::to_string(row.first);
    return row.first == row.last ? first : first + "–" + std::to_string(row.last);
}

std::string settingWords(const CutRow& row, const Notation& notation) {
    if (row.set <= Length()) {
        return "trim";
    }
    return (row.kind == SawCutKind::Rip ? "fence at " : "stop at ") + format(row.set, notation);
}

std::string plankWords(const Plank& plank, const std::vector<Wood>& woods) {
    const Wood* wood = findWood(woods, plank.wood);
    if (wood == nullptr) {
        wood = findWood(woodCatalogue(), plank.wood);
    }
    std::string words = plank.label + " · " + (wood != nullptr ? wood->name : plank.wood);
    return plank.isOffcut ? words + ", offcut" : words;
}

std::string plankSize(const Plank& plank, const Notation& notation) {
    return formatBare(plank.thickness, notation) + " × " + formatBare(plank.width, notation) +
           " × " + format(plank.length, notation);
}

const char* sawSafety() {
    return "The saw’s manual, local rules and trained people come before this list. What is too "
           "short or too narrow to be guided is never ripped or crosscut by itself: saw such "
           "strips together, out of a longer piece.";
}

}  // namespace kerfwright
