// The woods of a project file. Private to core/project.
#pragma once

#include "core/project/node.h"
#include "core/wood/wood.h"

#include <vector>

namespace kerfwright {

Json ofWoods(const std::vector<Wood>& woods);
/// Throws `Refused`. What files from before a value was known do not have is as it is in `Wood()`.
std::vector<Wood> readWoods(const Node& json);

}  // namespace kerfwright
