// Pictures that no straight glue lines can make, and the joints that free them.
#pragma once

#include "core/board/joint.h"
#include "core/search/picture.h"

#include <vector>

namespace kerfwright {

struct Locked {
    std::vector<int> pieces;  ///< of the field, that lock each other, ascending: none of
    ///< them can be spared; empty where nothing is locked
    std::vector<Joint> freeing;  ///< joints inside pieces that free the picture, sorted
    bool fewest = true;          ///< no smaller set of joints inside pieces does it
};

/// Whether a straight line runs through the picture from edge to edge along tiles, and through each
/// half again, down to single tiles (or rectangles of one wood, where like neighbours merge).
bool isGuillotine(const Picture& picture);

/// Which pieces lock each other, and the smallest set of joints on lines of the picture that frees
/// it; `withJoints` makes the freed picture.
Locked lockedPieces(const Picture& picture);

}  // namespace kerfwright
