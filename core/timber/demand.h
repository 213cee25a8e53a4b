// What a plan wants of the rack.
#pragma once

#include "core/glueup/steps.h"
#include "core/timber/layout.h"

#include <vector>

namespace kerfwright {

/// The rough strips of every panel and of the border, as the steps mill them; strips that are alike
/// in wood and size are one line, in the order in which they are first wanted. `woods` are those of
/// the board that the steps make.
Demand demandOf(const StepList& steps, const std::vector<Wood>& woods);

/// Several boards from one rack. Lines that are alike become one, but for rails, which stay with
/// their board. With more than one board the labels get its number in front: "2: A3".
Demand together(const std::vector<Demand>& demands);

/// The label of each strip of a line.
std::vector<std::string> labelsOf(const WantedStrips& strips);

}  // namespace kerfwright
