#include "core/board/strokes.h"

#include <algorithm>
#include <cstdlib>

namespace kerfwright {
namespace {

/// a / b rounded to the nearest, halves up; b must be more than 0.
int nearest(int a, int b) {
    const int twice = 2 * a + b;
    const int whole = twice / (2 * b);
    return twice < 0 && twice % (2 * b) != 0 ? whole - 1 : whole;
}

int signOf(int number) {
    return number > 0 ? 1 : number < 0 ? -1 : 0;
}

}  // namespace

std::vector<Cell> lineCells(Cell from, Cell to) {
    // From the end that reads first, so that where two cells are equally near it is always the same
    // one.
    const Cell first = std::min(from, to);
    const Cell last = std::max(from, to);
    const int across = last.column - first.column;
    const int down = last.row - first.row;
    const int steps = std::max(std::abs(across), std::abs(down));
    std::vector<Cell> cells;
    for (int i = 0; i <= steps; ++i) {
        cells.push_back(steps == 0 ? first
                                   : Cell{first.column + nearest(across * i, steps),
                                          first.row + nearest(down * i, steps)});
    }
    if (from != first) {
        std::reverse(cells.begin(), cells.end());
    }
    return cells;
}

Cell straightened(Cell from, Cell to) {
    const int across = to.column - from.column;
    const int down = to.row - from.row;
    if (2 * std::abs(down) < std::abs(across)) {
        return {to.column, from.row};
    }
    if (2 * std::abs(across) < std::abs(down)) {
        return {from.column, to.row};
    }
    // The shorter way, so that it never leaves what lies between the two.
    const int steps = std::min(std::abs(across), std::abs(down));
    return {from.column + signOf(across) * steps, from.row + signOf(down) * steps};
}

std::vector<Cell> rectangleCells(Cell corner, Cell opposite, bool edgeOnly) {
    const auto [left, right] = std::minmax({corner.column, opposite.column});
    const auto [top, bottom] = std::minmax({corner.row, opposite.row});
    std::vector<Cell> cells;
    for (int row = top; row <= bottom; ++row) {
        for (int column = left; column <= right; ++column) {
            if (!edgeOnly || row == top || row == bottom || column == left || column == right) {
                cells.push_back({column, row});
            }
        }
    }
    return cells;
}

std::vector<int> connectedPieces(const Field& field, Cell cell) {
    const int columns = static_cast<int>(field.columns.size());
    const int rows = static_cast<int>(field.rows.size());
    if (cell.column < 0 || cell.row < 0 || cell.column >= columns || cell.row >= rows) {
        return {};
    }
    const std::vector<int> map = pieceMap(field);
    const auto ownerAt = [&](int column, int row) {
        return map[static_cast<std::size_t>(row) * static_cast<std::size_t>(columns) +
                   static_cast<std::size_t>(column)];
    };
    std::vector<bool> reached(field.pieces.size(), false);
    std::vector<int> found{ownerAt(cell.column, cell.row)};
    reached[static_cast<std::size_t>(found.front())] = true;
    const int wood = field.pieces[static_cast<std::size_t>(found.front())].wood;
    const auto reach = [&](int column, int row) {
        if (column < 0 || row < 0 || column >= columns || row >= rows) {
            return;
        }
        const auto owner = static_cast<std::size_t>(ownerAt(column, row));
        if (!reached[owner] && field.pieces[owner].wood == wood) {
            reached[owner] = true;
            found.push_back(static_cast<int>(owner));
        }
    };
    for (std::size_t next = 0; next < found.size(); ++next) {
        const Piece piece = field.pieces[static_cast<std::size_t>(found[next])];
        for (int column = piece.column; column < piece.column + piece.across; ++column) {
            reach(column, piece.row - 1);
            reach(column, piece.row + piece.down);
        }
        for (int row = piece.row; row < piece.row + piece.down; ++row) {
            reach(piece.column - 1, row);
            reach(piece.column + piece.across, row);
        }
    }
    std::sort(found.begin(), found.end());
    return found;
}

Field withWood(const Field& field, const std::vector<int>& pieces, int wood) {
    Field result = field;
    for (const int piece : pieces) {
        result.pieces[static_cast<std::size_t>(piece)].wood = wood;
    }
    return result;
}

}  // namespace kerfwright
