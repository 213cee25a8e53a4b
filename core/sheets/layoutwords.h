// What a layout, a shortage and a shopping list say, for the window and the paper.
#pragma once

#include "core/measure/notation.h"
#include "core/timber/timber.h"

#include <string>
#include <vector>

namespace kerfwright {

/// Rails that are sawn in one length are counted each.
int stripCount(const Demand& demand);
int missingCount(const TimberPlan& plan);

/// "All 20 strips lie on 4 of 6 planks. Proven best: no layout uses planks that cost less." or how
/// far it can be from that, or how many strips find no place.
std::string layoutWords(const TimberPlan& plan);
/// "proven best" or "at most 1.8 % above the best possible".
std::string goodnessWords(bool proven, double gapPercent);

/// "28 × 48 × 620 mm".
std::string sizeWords(Length thickness, Length width, Length length, const Notation& notation);

/// One sentence a wood of which strips are missing: "3 strips of Walnut 28 × 48 × 620 mm do not
/// fit: buy 1 plank 32 × 150 × 1000 mm." Before the shopping is known it says what is missing only.
std::vector<std::string> shortageWords(const TimberPlan& plan, const std::vector<Wood>& woods,
                                       const Notation& notation);

/// The least width and length that planks of a line must have for their strips, as these lie;
/// `line` is one of the list.
struct LeastPlank {
    Length width, length;
};
LeastPlank leastPlank(const TimberPlan& plan, const ShoppingLine& line);
std::string woodName(const std::string& key, const std::vector<Wood>& woods);
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
