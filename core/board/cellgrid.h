// A field as its cells see it, for edits that cut through pieces: each cell names the piece that
// owns it. Private to core/board.
#pragma once

#include "core/board/board.h"

#include <vector>

namespace kerfwright::cutting {

struct CellGrid {
    int columns = 0;
    int rows = 0;
    std::vector<int> owners;  ///< row by row, indices into `woods`
    std::vector<int> woods;   ///< of each owner

    int& owner(int column, int row) { return owners[at(column, row)]; }
    int owner(int column, int row) const { return owners[at(column, row)]; }
    std::size_t at(int column, int row) const {
        return static_cast<std::size_t>(row) * static_cast<std::size_t>(columns) +
               static_cast<std::size_t>(column);
    }
};

/// Of a valid field.
CellGrid gridOf(const Field& field);
/// A grid of so many cells with the same owners, each cell yet to be given one.
CellGrid emptyGrid(int columns, int rows, std::vector<int> woods);
/// Cells of one owner that still make up a rectangle are one piece; what was cut into another shape
/// becomes as few rectangles as reading order finds. Sorted as a field keeps them.
std::vector<Piece> piecesOf(const CellGrid& grid);

}  // namespace kerfwright::cutting
