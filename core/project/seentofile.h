// What was seen to, in a project file. Private to core/project.
#pragma once

#include "core/board/seento.h"
#include "core/project/node.h"

#include <vector>

namespace kerfwright {

Json ofSeenTo(const std::vector<SeenTo>& seenTo);
/// Throws `Refused`. Whether the entries are sound is not looked at.
std::vector<SeenTo> readSeenTo(const Node& json);

}  // namespace kerfwright
