// The hands that lay patterns out, and what they share. Private to core/board.
//
// A layout trusts its recipe: numbers within their ranges, one wood at least, a step above 0. Sizes
// that come out too thin, even below 0, are found by who asked.
#pragma once

#include "core/board/recipe.h"

#include <functional>
#include <vector>

namespace kerfwright::laying {

struct GridSize {
    int columns, rows;
};

std::size_t index(int i);

/// The wood of a turn; the woods repeat.
int woodOf(const Recipe& recipe, int turn);

/// The step in which a maker who typed these sizes measures: what is derived from them is rounded
/// to it, so that it can be set on the same rule.
Length gridOf(Length a, Length b);

Length roundedDown(Length length, Length step);

/// A part of `length`, rounded to the nearest step.
Length nearestPart(Length length, std::int64_t parts, Length step);

/// The largest of so many equal parts that `whole` has room for.
Length equalPart(Length whole, int parts, Length step);

std::vector<Length> repeated(const std::vector<Length>& sizes, int times);

/// `side` in so many strips, mirrored about its middle; the middle takes what is left.
std::vector<Length> mirroredParts(Length side, int parts, Length step);

/// What wood a cell is of, by column and row.
using WoodAt = std::function<int(int, int)>;

/// One piece a cell.
Field ofCells(std::vector<Length> columns, std::vector<Length> rows, const WoodAt& woodAt);
/// Neighbours of one wood in a row are one piece.
Field ofRuns(std::vector<Length> columns, std::vector<Length> rows, const WoodAt& woodAt);

/// Ring in ring, each of two bars over the whole width and two sides between them; the last ring
/// may be a single bar or cell.
std::vector<Piece> rings(int across, int down, const std::function<int(int)>& woodOfRing);

// Straight through the field.
Field plain(const Recipe& recipe);
Field stripes(const Recipe& recipe);
Field pinstripes(const Recipe& recipe);
Field chequer(const Recipe& recipe);
Field bulging(const Recipe& recipe);
Field pinched(const Recipe& recipe);
Field bricks(const Recipe& recipe);
Field mortarBricks(const Recipe& recipe);
Field plaid(const Recipe& recipe);
Field steps(const Recipe& recipe);
Field diagonalSteps(const Recipe& recipe);

// Of tiles and rings.
Field basket(const Recipe& recipe);
Field logCabin(const Recipe& recipe);
Field rosettes(const Recipe& recipe);
Field greekKey(const Recipe& recipe);
Field windmill(const Recipe& recipe);
Field nestedSquares(const Recipe& recipe);
Field borderBands(const Recipe& recipe);

}  // namespace kerfwright::laying
