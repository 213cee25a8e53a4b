// The joinery of a border as it is seen where it is sawn through: what a fence and a cutter are set
// to, drawn to scale.
#pragma once

#include "core/drawing/drawing.h"
#include "core/glueup/borderfit.h"
#include "core/measure/notation.h"
#include "core/wood/wood.h"

#include <string>
#include <vector>

namespace kerfwright {

struct SectionLook {
    double scale = 1;        ///< drawn mm for a mm of wood
    bool dimensions = true;  ///< with their numbers, which keep their size at every scale
};

/// Square through one rail and the edge of the field beside it: rail on the left, top face up, the
/// gap as built. Of a wide rail and of the field as much as the joinery needs; where they go on,
/// they end in a broken line. Empty where there is no border, or where it is part of the field.
Drawing drawRailSection(const Board& board, const std::vector<Wood>& woods, const BorderFit& fit,
                        const Notation& notation, const SectionLook& look = {});

/// Along the diagonal through a keyed corner, the corner on the left. Empty where no corner is
/// keyed.
Drawing drawCornerSection(const Board& board, const std::vector<Wood>& woods, const BorderFit& fit,
                          const Notation& notation, const SectionLook& look = {});

/// The greatest of the usual scales at which a drawing of `extent` mm of wood fits the room, both
/// in mm: 5 : 1, 2 : 1, 1 : 1, 1 : 2 and so on.
double usualScale(double width, double height, double roomWidth, double roomHeight);
/// "2 : 1".
std::string scaleText(double scale);

}  // namespace kerfwright
