// Small pictures of the stages of a plan, for the comparison of plans and the way from timber to
// board.
#pragma once

#include "core/bench/job.h"
#include "core/drawing/drawing.h"
#include "core/project/project.h"

#include <string>
#include <vector>

namespace kerfwright {

struct StagePicture {
    std::string title;  ///< "Panel A", "Field"
    Drawing drawing;    ///< its longer side `longest` mm; to scale, but thin ones are thicker
};

/// Every kind of panel once, in the order of the steps, and the field as it is glued. Panels of an
/// end-grain build are seen from their near end, those of a long-grain build from above.
std::vector<StagePicture> stagePictures(const Project& project, const Job& job, double longest);

}  // namespace kerfwright
