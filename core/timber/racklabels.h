// Labels of planks when planks come to a rack.
#pragma once

#include "core/timber/rack.h"

namespace kerfwright {

/// Adds the planks of another rack; those whose labels are taken get "-2", "-3", ... behind.
/// Returns how many that were.
int addPlanks(Rack& rack, const Rack& more);

/// "P7": of the next plank, which no plank has yet.
std::string nextLabel(const Rack& rack);

}  // namespace kerfwright
