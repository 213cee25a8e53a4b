// A part of a drawing that shows the figure of its wood.
#pragma once

#include "core/drawing/drawing.h"
#include "core/figure/timbercut.h"

#include <vector>

namespace kerfwright {

/// In the mm of the drawing.
struct FiguredFace {
    std::vector<Point> corners;  ///< of a convex shape, in order round it
    int wood = 0;                ///< of the drawing's woods
    TimberCut cut;
    FacePlane face;  ///< of the tree; begins at the top left corner of the box round the shape
};

}  // namespace kerfwright
