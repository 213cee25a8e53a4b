// How each pattern uses the grid, and the hand that lays it. Private to core/board.
#pragma once

#include "core/board/layouts.h"

#include <vector>

namespace kerfwright::laying {

struct PatternFamily {
    PatternInfo info;
    GridSize (*grid)(const Recipe&);  ///< from the counts alone
    Field (*lay)(const Recipe&);
};

const std::vector<PatternFamily>& families();
const PatternFamily& familyOf(Pattern pattern);

/// Whether there are as many counts as the pattern has, each in its range and together within the
/// cells of a board.
std::vector<Fault> countFaults(const Recipe& recipe);

/// For the counts and the room of a recipe: parts of its smallest brick, tile or stripe, in whole
/// mm or 1/16 in.
std::vector<Length> usualLengths(const Recipe& recipe);

}  // namespace kerfwright::laying
