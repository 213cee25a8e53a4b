// Lines, rectangles and fills against what a slow hand finds.
#include "core/board/strokes.h"
#include "tests/core/board/randomfield.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <cstdlib>
#include <set>
#include <vector>

namespace kerfwright {
namespace {

constexpr int woods = 3;

Cell anyCell() {
    return {*rc::gen::inRange(-9, 70), *rc::gen::inRange(-9, 70)};
}

RC_GTEST_PROP(Lines, AreTheNearestCellOfEveryLineOfTheGrid, ()) {
    const Cell from = anyCell();
    const Cell to = anyCell();
    const std::vector<Cell> cells = lineCells(from, to);
    RC_ASSERT(cells.front() == from);
    RC_ASSERT(cells.back() == to);
    const int across = to.column - from.column;
    const int down = to.row - from.row;
    const int steps = std::max(std::abs(across), std::abs(down));
    RC_ASSERT(static_cast<int>(cells.size()) == steps + 1);
    for (std::size_t i = 0; i < cells.size(); ++i) {
        const int x = cells[i].column - from.column;
        const int y = cells[i].row - from.row;
        // Twice the distance from the straight line, in cells, is at most 1: all in whole numbers.
        RC_ASSERT(2 * std::abs(x * steps - across * static_cast<int>(i)) <= steps);
        RC_ASSERT(2 * std::abs(y * steps - down * static_cast<int>(i)) <= steps);
    }
    std::vector<Cell> back = lineCells(to, from);
    std::reverse(back.begin(), back.end());
    RC_ASSERT(back == cells);
}

RC_GTEST_PROP(Lines, StraightenedLieLevelUprightOrAtHalfARightAngle, ()) {
    const Cell from = anyCell();
    const Cell to = anyCell();
    const Cell end = straightened(from, to);
    const int across = std::abs(end.column - from.column);
    const int down = std::abs(end.row - from.row);
    RC_ASSERT(across == 0 || down == 0 || across == down);
    RC_ASSERT(end.column >= std::min(from.column, to.column));
    RC_ASSERT(end.column <= std::max(from.column, to.column));
    RC_ASSERT(end.row >= std::min(from.row, to.row));
    RC_ASSERT(end.row <= std::max(from.row, to.row));
    RC_ASSERT(straightened(from, end) == end);
}

RC_GTEST_PROP(Rectangles, AreAllCellsBetweenTwoCorners, ()) {
    const Cell a = anyCell();
    const Cell b = anyCell();
    std::set<Cell> all;
    std::set<Cell> edge;
    for (int row = -9; row < 70; ++row) {
        for (int column = -9; column < 70; ++column) {
            const bool between = (column - a.column) * (column - b.column) <= 0 &&
                                 (row - a.row) * (row - b.row) <= 0;
            if (between) {
                all.insert({column, row});
                if (column == a.column || column == b.column || row == a.row || row == b.row) {
                    edge.insert({column, row});
                }
            }
        }
    }
    const std::vector<Cell> found = rectangleCells(a, b, false);
    const std::vector<Cell> foundEdge = rectangleCells(a, b, true);
    RC_ASSERT(std::set<Cell>(found.begin(), found.end()) == all);
    RC_ASSERT(found.size() == all.size());
    RC_ASSERT(std::set<Cell>(foundEdge.begin(), foundEdge.end()) == edge);
    RC_ASSERT(foundEdge.size() == edge.size());
}

/// By spreading from piece to piece until nothing is added; whether two touch is asked of their
/// rectangles, not of the cells.
std::vector<int> slowlyConnected(const Field& field, int start) {
    const auto touch = [](const Piece& a, const Piece& b) {
        const int shareX =
            std::min(a.column + a.across, b.column + b.across) - std::max(a.column, b.column);
        const int shareY = std::min(a.row + a.down, b.row + b.down) - std::max(a.row, b.row);
        return (shareX > 0 && shareY == 0) || (shareX == 0 && shareY > 0);
    };
    std::set<int> found{start};
    bool grown = true;
    while (grown) {
        grown = false;
        for (std::size_t i = 0; i < field.pieces.size(); ++i) {
            const Piece& piece = field.pieces[i];
            for (const int other : std::set<int>(found)) {
                const Piece& known = field.pieces[static_cast<std::size_t>(other)];
                if (piece.wood == known.wood && touch(piece, known)) {
                    grown = found.insert(static_cast<int>(i)).second || grown;
                }
            }
        }
    }
    return {found.begin(), found.end()};
}

RC_GTEST_PROP(Fills, ChangeExactlyTheConnectedPieces, ()) {
    const Field field = random::anyField(7, woods);
    const Cell cell{*rc::gen::inRange(0, static_cast<int>(field.columns.size())),
                    *rc::gen::inRange(0, static_cast<int>(field.rows.size()))};
    const std::vector<int> reached = connectedPieces(field, cell);
    RC_ASSERT(reached == slowlyConnected(field, pieceAt(field, cell.column, cell.row)));
    const Field filled = withWood(field, reached, woods);
    for (std::size_t i = 0; i < field.pieces.size(); ++i) {
        const bool meant =
            std::find(reached.begin(), reached.end(), static_cast<int>(i)) != reached.end();
        Piece expected = field.pieces[i];
        expected.wood = meant ? woods : expected.wood;
        RC_ASSERT(filled.pieces[i] == expected);
    }
    RC_ASSERT(connectedPieces(filled, cell) == reached);
}

TEST(Fills, DoNotGoRoundCornersAndReachNothingOutside) {
    Field field = plainGrid(2, 2, Length::mm(30), Length::mm(30), 0);
    field.pieces[1].wood = 1;
    field.pieces[2].wood = 1;
    EXPECT_EQ(connectedPieces(field, {0, 0}), std::vector<int>{0});
    EXPECT_TRUE(connectedPieces(field, {2, 0}).empty());
    EXPECT_TRUE(connectedPieces(field, {0, -1}).empty());
}

}  // namespace
}  // namespace kerfwright
