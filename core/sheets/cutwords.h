// The cuts of a layout in words, as the maker reads them at the saw: equal cuts that follow each
// other are one row.
#pragma once

#include "core/sheets/plankview.h"

#include <string>
#include <vector>

namespace kerfwright {

struct CutRow {
    int first = 0, last = 0;  ///< numbers of the cuts
    SawCutKind kind = SawCutKind::Crosscut;
    CutOff off = CutOff::Waste;
    Length set;        ///< what the stop or the fence is set to; 0 where the blade takes it all
    std::string what;  ///< "A1, A3", "for A1, A3" of a section, "offcut, keep it", "waste"
    int count() const { return last - first + 1; }
    friend bool operator==(const CutRow&, const CutRow&) = default;
};

/// The cuts of one plank of the layout, in order.
std::vector<CutRow> cutRows(const Layout& layout, const std::vector<SawCut>& cuts,
                            const StripNames& names, int plank);

/// The planks of a layout in the order in which they are cut; in their own where there are no cuts.
std::vector<int> cuttingOrder(const Layout& layout, const std::vector<SawCut>& cuts);

/// "Crosscut", "Rip", "Cut to length".
std::string cutName(SawCutKind kind);
/// "3" or "3–6".
std::string numberWords(const CutRow& row);
/// "stop at 620 mm", "fence at 48 mm", "trim" where nothing is measured.
std::string settingWords(const CutRow& row, const Notation& notation);

/// "P3 · Hard maple, offcut".
std::string plankWords(const Plank& plank, const std::vector<Wood>& woods);

/// Beside every list of cuts: whose word counts more than this program's.
std::string sawSafety();

}  // namespace kerfwright
