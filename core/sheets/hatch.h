// How woods are told apart without colour: every wood of a project has its own hatch.
#pragma once

#include "core/drawing/drawing.h"

#include <vector>

namespace kerfwright {

/// Hatches a convex outline for the wood with this index. Woods 0 to 31 all differ; wood 0 is left
/// plain. `pitch` and `lineWidth` in mm.
void addHatch(Drawing& drawing, const std::vector<Point>& convex, int wood, double pitch,
              double lineWidth);

}  // namespace kerfwright
