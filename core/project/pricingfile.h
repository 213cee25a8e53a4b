// What goes into a quote, in a project file. Private to core/project.
#pragma once

#include "core/project/node.h"
#include "core/shop/pricing.h"

namespace kerfwright {

/// Money in whole hundredths, the rest as it is typed; prices that are not known are left out.
Json ofPricing(const Pricing& pricing);
/// Throws `Refused`. What the file leaves out stays as it is.
void readPricing(const Node& json, Pricing& pricing);

}  // namespace kerfwright
