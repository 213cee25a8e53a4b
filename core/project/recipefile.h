// The recipe of a project file. Private to core/project.
#pragma once

#include "core/board/recipe.h"
#include "core/project/node.h"
#include "core/wood/wood.h"

#include <vector>

namespace kerfwright {

Json ofRecipe(const Recipe& recipe, const std::vector<Wood>& woods);
/// Throws `Refused`. Whether it lays out the field of the file is not looked at.
Recipe readRecipe(const Node& json, const std::vector<Wood>& woods);

}  // namespace kerfwright
