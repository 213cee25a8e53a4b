// Random valid fields for properties: a grid of one piece a cell, some of them grown over their
// neighbours. Built without the edits of the board, which are themselves under test.
#pragma once

#include "core/board/board.h"

#include <rapidcheck.h>

#include <algorithm>
#include <vector>

namespace kerfwright::random {

inline std::vector<Length> anySizes(int most) {
    const auto cells = *rc::gen::inRange<std::size_t>(1, static_cast<std::size_t>(most) + 1);
    // Small enough that sixty-four of them stay within the greatest field.
    const auto counts = *rc::gen::container<std::vector<std::int64_t>>(
        cells, rc::gen::inRange<std::int64_t>(2'000'000, 46'000'000));
    std::vector<Length> sizes;
    sizes.reserve(counts.size());
    for (const std::int64_t count : counts) {
        sizes.push_back(Length::nm(count));
    }
    return sizes;
}

/// Call inside a property only.
inline Field anyField(int mostCells, int woods) {
    Field field{anySizes(mostCells), anySizes(mostCells), {}};
    const auto columns = static_cast<int>(field.columns.size());
    const auto rows = static_cast<int>(field.rows.size());
    std::vector<char> covered(static_cast<std::size_t>(columns * rows), 0);
    const auto isFree = [&](int column, int row) {
        return column < columns && row < rows &&
               covered[static_cast<std::size_t>(row * columns + column)] == 0;
    };
    for (int row = 0; row < rows; ++row) {
        for (int column = 0; column < columns; ++column) {
            if (!isFree(column, row)) {
                continue;
            }
            Piece piece{column, row, 1, 1, *rc::gen::inRange(0, woods)};
            const int wishedAcross = std::max(1, *rc::gen::inRange(-3, 5));
            while (piece.across < wishedAcross && isFree(column + piece.across, row)) {
                ++piece.across;
            }
            piece.down = std::min(std::max(1, *rc::gen::inRange(-3, 5)), rows - row);
            for (int y = row; y < row + piece.down; ++y) {
                for (int x = column; x < column + piece.across; ++x) {
                    covered[static_cast<std::size_t>(y * columns + x)] = 1;
                }
            }
            field.pieces.push_back(piece);
        }
    }
    return field;
}

}  // namespace kerfwright::random
