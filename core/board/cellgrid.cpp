#include "core/board/cellgrid.h"

#include <utility>

namespace kerfwright::cutting {

CellGrid gridOf(const Field& field) {
    CellGrid grid{static_cast<int>(field.columns.size()),
                  static_cast<int>(field.rows.size()),
                  pieceMap(field),
                  {}};
    grid.woods.reserve(field.pieces.size());
    for (const Piece& piece : field.pieces) {
        grid.woods.push_back(piece.wood);
    }
    return grid;
}

CellGrid emptyGrid(int columns, int rows, std::vector<int> woods) {
    CellGrid grid{columns, rows, {}, std::move(woods)};
    grid.owners.assign(static_cast<std::size_t>(columns) * static_cast<std::size_t>(rows), -1);
    return grid;
}

std::vector<Piece> piecesOf(const CellGrid& grid) {
    std::vector<Piece> pieces;
    std::vector<bool> taken(grid.owners.size(), false);
    const auto isFree = [&](int column, int row, int owner) {
        return grid.owner(column, row) == owner && !taken[grid.at(column, row)];
    };
    for (int row = 0; row < grid.rows; ++row) {
        for (int column = 0; column < grid.columns; ++column) {
            const int owner = grid.owner(column, row);
            if (!isFree(column, row, owner)) {
                continue;
            }
            Piece piece{column, row, 1, 1, grid.woods[static_cast<std::size_t>(owner)]};
            while (column + piece.across < grid.columns &&
                   isFree(column + piece.across, row, owner)) {
                ++piece.across;
            }
            const auto rowIsFree = [&](int below) {
                for (int x = column; x < column + piece.across; ++x) {
                    if (!isFree(x, below, owner)) {
                        return false;
                    }
                }
                return true;
            };
            while (row + piece.down < grid.rows && rowIsFree(row + piece.down)) {
                ++piece.down;
            }
            for (int y = row; y < row + piece.down; ++y) {
                for (int x = column; x < column + piece.across; ++x) {
                    taken[grid.at(x, y)] = true;
                }
            }
            pieces.push_back(piece);
        }
    }
    return pieces;
}

}  // namespace kerfwright::cutting
