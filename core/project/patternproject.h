// A first board in a pattern.
#pragma once

#include "core/measure/result.h"
#include "core/project/project.h"

namespace kerfwright {

/// A new project in the units asked for, its field laid out in that pattern, in as many of its
/// woods as the pattern wants, the border's own last. The fault says why there is no room for it.
Result<Project> newProject(Unit unit, Pattern pattern);

}  // namespace kerfwright
