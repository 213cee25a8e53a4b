// From a field's movement to the room that its border takes.
#pragma once

#include "core/bench/boardmovement.h"
#include "core/glueup/borderfit.h"

#include <optional>

namespace kerfwright {

/// The most that the field may grow and shrink from how it is built, rounded up to a micrometre.
/// Woods that say nothing of their movement count as if they stayed as they are.
FieldSeason seasonOf(const BoardMovement& movement);

/// The room round the field, without planning: for pictures while the maker types. `byColumns` as
/// in the plan; where it is not known yet, rows are taken, or what the grain says.
Surround borderRoom(const Board& board, const std::vector<Wood>& woods, const Shop& shop,
                    const Climate& climate, std::optional<bool> byColumns = std::nullopt);

}  // namespace kerfwright
