// The order of the cuts that carry a layout out.
//
// Planks that leave a long offcut come last, and on each plank the longest offcut stays in one
// piece with what is not yet cut until the last crosscut: so there is long stock to turn to if a
// strip is spoilt. Sections are taken off from the ends towards that offcut, strips of a section
// from its edges towards the widest one; no cut runs into an offcut or shuts one in. A plank is
// crosscut first, then its sections are ripped, then strips that are shorter than their section are
// cut to length.
#pragma once

#include "core/timber/layout.h"

#include <vector>

namespace kerfwright {

enum class SawCutKind { Crosscut, Rip, ToLength };

/// What a cut takes off the workpiece.
enum class CutOff { Waste, Kept, Section, Strip };

struct SawCut {
    int number = 0;  ///< from 1, through all planks
    SawCutKind kind = SawCutKind::Crosscut;
    int plank = 0;               ///< index into the layout's planks
    int section = -1;            ///< of the plank, in which is cut or which comes off; -1: none
    int strip = -1;              ///< of the section; -1: none
    CutOff off = CutOff::Waste;  ///< `Kept`: an offcut
    Length size;  ///< of what comes off, across the cut; 0 where the blade takes it all
    Length x, y, length, width;  ///< what the blade turns to dust, on the plank
    friend bool operator==(const SawCut&, const SawCut&) = default;
};

/// Of a layout that the referee has passed.
std::vector<SawCut> cutOrder(const Layout& layout, const Rack& rack, const Demand& demand,
                             const CutRules& rules);

}  // namespace kerfwright
