#include "core/search/construction.h"

#include <algorithm>

namespace kerfwright {

Placing then(Placing first, Placing second) {
    // A mirror after a turn is the mirror before it with the turn the other way round.
    const int turnsBefore = second.mirrored ? 4 - first.quarterTurns : first.quarterTurns;
    return {first.mirrored != second.mirrored, (turnsBefore + second.quarterTurns) % 4};
}

Placing inverse(Placing placing) {
    return placing.mirrored ? placing : Placing{false, (4 - placing.quarterTurns) % 4};
}

int Construction::glueUps() const {
    return static_cast<int>(std::count_if(blocks.begin(), blocks.end(), [](const Block& block) {
        return block.isGlued() && block.sameGlueUpAs < 0;
    }));
}

}  // namespace kerfwright
