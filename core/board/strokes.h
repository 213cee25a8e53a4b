// Which cells a line or a rectangle reaches, and which pieces a fill does.
#pragma once

#include "core/board/board.h"

#include <compare>
#include <vector>

namespace kerfwright {

/// A cell of the grid, or a place beside it.
struct Cell {
    int column = 0;
    int row = 0;
    friend auto operator<=>(const Cell&, const Cell&) = default;
};

/// From end to end, both among them. In the direction in which it goes further, one cell a line of
/// the grid, that nearest to the straight line between the middles of its ends, as if all cells
/// were squares. The same cells whichever end comes first.
std::vector<Cell> lineCells(Cell from, Cell to);
/// `to`, or the cell nearest to it that lies level, upright or at half a right angle from `from`.
Cell straightened(Cell from, Cell to);
/// All cells between two corners, row by row; with `edgeOnly` those on the edge.
std::vector<Cell> rectangleCells(Cell corner, Cell opposite, bool edgeOnly);

/// The pieces of one wood that hang together with the one that covers the cell, each sharing some
/// length of an edge with the next; a corner is not enough. Indices into the pieces, in order. None
/// outside the field, which must be valid.
std::vector<int> connectedPieces(const Field& field, Cell cell);
/// These pieces in another wood.
Field withWood(const Field& field, const std::vector<int>& pieces, int wood);

}  // namespace kerfwright
