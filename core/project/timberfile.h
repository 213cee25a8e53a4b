// The timber of a project file. Private to core/project.
#pragma once

#include "core/project/node.h"
#include "core/timber/timber.h"

namespace kerfwright {

Json ofTimber(const Timber& timber);
/// Throws `Refused`. What the file leaves out is as in a new project.
Timber readTimber(const Node& json, Timber timber);

}  // namespace kerfwright
