// What is seen from above, compared with what was wished.
#pragma once

#include "core/board/board.h"
#include "core/glueup/plan.h"
#include "core/replay/solid.h"

#include <string>
#include <vector>

namespace kerfwright {

/// Everything in which the finished field differs from the wished one, in words: woods, joints, and
/// the lists of extra and omitted joints. `solid` must have the width and height of the field.
/// At most one fault of each sort is told, with its place.
std::vector<std::string> topViewFaults(const Solid& solid, const Field& field,
                                       const std::vector<Joint>& extra,
                                       const std::vector<Joint>& omitted, bool mergeLike);

}  // namespace kerfwright
