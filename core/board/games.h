// Sizes of playing squares, as published or customary.
#pragma once

#include "core/board/use.h"

#include <string>
#include <vector>

namespace kerfwright {

/// Equal squares; the sizes are inclusive.
struct SquareSizes {
    BoardUse use;
    int across;  ///< squares each way
    Length least, greatest;
    const char* name;    ///< to be said: "FIDE", "international draughts"
    const char* source;  ///< where it was seen, to be said
};
/// Every one that is known, chess first.
const std::vector<SquareSizes>& squareSizes();

/// How much of a square a piece's foot takes, from and to, by customs that contradict each other.
struct FootShare {
    double least, greatest;
    const char* source;  ///< to be said
};
/// For a game; `across` squares each way.
FootShare footShare(BoardUse use, int across);

/// A square for pieces of that foot, rounded up to whole millimetres or eighths of an inch: chess
/// by the rule of 75 %, draughts by 6 mm of room (on 10 × 10 squares, and 78 % on 8 × 8).
Length squareFor(BoardUse use, int across, Length foot, Unit unit);

}  // namespace kerfwright
