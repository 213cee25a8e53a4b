#include "core/bench/borderroom.h"

#include <algorithm>
#include <cmath>

namespace kerfwright {
namespace {

Length upToMicrometre(double mm) {
    return Length::um(static_cast<std::int64_t>(std::ceil(std::max(0.0, mm) * 1000 - 1e-6)));
}
Length growthOf(const SeasonChange& change) {
    return upToMicrometre(std::max(change.toDriest.greatest, change.toDampest.greatest));
}
Length shrinkageOf(const SeasonChange& change) {
    return upToMicrometre(-std::min(change.toDriest.least, change.toDampest.least));
}

}  // namespace

FieldSeason seasonOf(const BoardMovement& movement) {
    return {growthOf(movement.width), growthOf(movement.height), shrinkageOf(movement.width),
            shrinkageOf(movement.height)};
}

Surround borderRoom(const Board& board, const std::vector<Wood>& woods, const Shop& shop,
                    const Climate& climate, std::optional<bool> byColumns) {
    const bool columns = byColumns.value_or(board.build == Build::LongGrain &&
                                            board.grain == GrainDirection::Across);
    FieldSeason season;
    if (board.border.has(BorderDesign::FloatingFrame) && !board.border.gap) {
        season = seasonOf(movementOf(board, woods, columns, climate));
    }
    return surroundOf(board, !columns, gapFor(board.border, season.growthX, shop).value,
                      gapFor(board.border, season.growthY, shop).value);
}

}  // namespace kerfwright
