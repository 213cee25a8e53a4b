// What a layout uses up and what a yard must have, for the window and the paper.
#pragma once

#include "core/timber/timber.h"

#include <string>

namespace kerfwright {

/// The least width and length that planks of a line must have for their strips, as these lie;
/// `line` is one of the list.
struct LeastPlank {
    Length width, length;
};
LeastPlank leastPlank(const TimberPlan& plan, const ShoppingLine& line);
/// "Board measure: as measured; thinner than 1 in counts as 1 in."
std::string tallyWords(Tally tally);

/// Net timber, what is cut up for it, and what goes back on the rack.
struct TimberUse {
    Volume net;                   ///< of the strips that are laid, rough
    Volume planks;                ///< that are cut
    Volume kept;                  ///< offcuts
    double wastePercent() const;  ///< of what is used up: planks less offcuts that are kept
};
TimberUse useOf(const Layout& layout, const Rack& rack, const Demand& demand);

}  // namespace kerfwright
