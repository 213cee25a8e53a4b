// Whether a layout keeps its promises. The referee knows nothing of how layouts are made: it reads
// the layout as the maker would, and looks at every strip, cut and defect for itself.
#pragma once

#include "core/timber/layout.h"

namespace kerfwright {

/// Everything wrong with a layout of `demand` on `rack`: a plank used twice or unknown; a section
/// or strip that leaves the plank, its section or the part that trims leave; less than a kerf
/// between neighbours; a strip on a defect, of another wood, thicker than its plank or too thin for
/// it; more or fewer strips than wanted less `missing`; an offcut that is not free, or of no use; a
/// cost, a bound or a volume that does not add up. Empty: none.
std::vector<Fault> layoutFaults(const Layout& layout, const Rack& rack, const Demand& demand,
                                const CutRules& rules,
                                const Notation& notation = Notation::millimetres(3));

}  // namespace kerfwright
