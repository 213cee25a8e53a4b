// Edits of regions, each as a property of any field and any region in it.
#include "core/board/regions.h"
#include "tests/core/board/randomfield.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <set>
#include <string>
#include <utility>
#include <vector>

namespace kerfwright {
namespace {

constexpr int woods = 4;
constexpr int most = 8;  // cells across of a random field

int across(const Field& field) {
    return static_cast<int>(field.columns.size());
}
int down(const Field& field) {
    return static_cast<int>(field.rows.size());
}

/// What the board would say of the field, as one text; empty where it is sound.
std::string wrong(const Field& field) {
    Board board;
    board.thickness = Length::mm(40);
    board.field = field;
    const std::vector<Fault> all = faults(board, woods);
    return all.empty() ? std::string() : all.front().text();
}

Cells anyCells(const Field& field) {
    const int column = *rc::gen::inRange(0, across(field));
    const int row = *rc::gen::inRange(0, down(field));
    return {column, row, *rc::gen::inRange(1, across(field) - column + 1),
            *rc::gen::inRange(1, down(field) - row + 1)};
}

/// The smallest region round `cells` that cuts no piece, found by growing it.
Cells wholePieces(const Field& field, Cells cells) {
    bool grown = true;
    while (grown) {
        grown = false;
        for (const Piece& piece : field.pieces) {
            const bool touches = piece.column < cells.column + cells.across &&
                                 piece.column + piece.across > cells.column &&
                                 piece.row < cells.row + cells.down &&
                                 piece.row + piece.down > cells.row;
            if (!touches) {
                continue;
            }
            const int left = std::min(cells.column, piece.column);
            const int top = std::min(cells.row, piece.row);
            const int right = std::max(cells.column + cells.across, piece.column + piece.across);
            const int bottom = std::max(cells.row + cells.down, piece.row + piece.down);
            const Cells larger{left, top, right - left, bottom - top};
            grown = grown || larger != cells;
            cells = larger;
        }
    }
    return cells;
}

int woodAt(const Field& field, int column, int row) {
    return field.pieces[static_cast<std::size_t>(pieceAt(field, column, row))].wood;
}

/// Whether two cells are of one piece.
bool samePiece(const Field& field, int column, int row, int other, int otherRow) {
    return pieceAt(field, column, row) == pieceAt(field, other, otherRow);
}

RC_GTEST_PROP(Regions, CopyAndLayAgainIsNoChangeWhereNoPieceIsCut, ()) {
    const Field field = random::anyField(most, woods);
    const Cells cells = wholePieces(field, anyCells(field));
    RC_ASSERT(cutsNoPiece(field, cells));
    RC_ASSERT(withLaid(field, copied(field, cells), cells.column, cells.row) == field);
}

RC_GTEST_PROP(Regions, WhatIsLaidIsWhatWasCopied, ()) {
    const Field field = random::anyField(most, woods);
    const Field part = copied(field, anyCells(field));
    RC_ASSERT(wrong(part).empty());
    const int column = *rc::gen::inRange(-3, across(field) + 3);
    const int row = *rc::gen::inRange(-3, down(field) + 3);
    const Field laid = withLaid(field, part, column, row);
    RC_ASSERT(wrong(laid).empty());
    RC_ASSERT(laid.columns == field.columns);
    RC_ASSERT(laid.rows == field.rows);
    for (int y = 0; y < down(field); ++y) {
        for (int x = 0; x < across(field); ++x) {
            const int px = x - column;
            const int py = y - row;
            const bool covered = px >= 0 && py >= 0 && px < across(part) && py < down(part);
            RC_ASSERT(woodAt(laid, x, y) == (covered ? woodAt(part, px, py) : woodAt(field, x, y)));
        }
    }
    const Cells inside{column, row, across(part), down(part)};
    if (isInside(field, inside)) {
        RC_ASSERT(copied(laid, inside).pieces == part.pieces);
    }
}

RC_GTEST_PROP(Regions, MirroredTwiceIsNoChangeWhereNoPieceIsCut, ()) {
    const Field field = random::anyField(most, woods);
    const Cells cells = wholePieces(field, anyCells(field));
    for (const Mirror mirror : {Mirror::Across, Mirror::Down}) {
        const Field once = withMirrored(field, cells, mirror);
        RC_ASSERT(wrong(once).empty());
        RC_ASSERT(withMirrored(once, cells, mirror) == field);
    }
}

RC_GTEST_PROP(Regions, MirroringAnyRegionMovesTheWoodsOfItsCells, ()) {
    const Field field = random::anyField(most, woods);
    const Cells cells = anyCells(field);
    const Field once = withMirrored(field, cells, Mirror::Across);
    RC_ASSERT(wrong(once).empty());
    RC_ASSERT(once.width() == field.width());
    for (int y = 0; y < down(field); ++y) {
        for (int x = 0; x < across(field); ++x) {
            const bool inside = x >= cells.column && x < cells.column + cells.across &&
                                y >= cells.row && y < cells.row + cells.down;
            const int from = inside ? 2 * cells.column + cells.across - 1 - x : x;
            RC_ASSERT(woodAt(once, x, y) == woodAt(field, from, y));
        }
    }
}

TEST(Regions, AMirrorFromEdgeToEdgeTakesTheSizesAlong) {
    Field field = plainGrid(3, 2, Length::mm(50), Length::mm(40), 0);
    field.columns[0] = Length::mm(20);
    EXPECT_EQ(withMirrored(field, {0, 0, 2, 2}, Mirror::Across).columns,
              (std::vector<Length>{Length::mm(50), Length::mm(20), Length::mm(50)}));
    // The columns run on through the other row: they stay.
    EXPECT_EQ(withMirrored(field, {0, 0, 2, 1}, Mirror::Across).columns, field.columns);
    field.rows[0] = Length::mm(30);
    EXPECT_EQ(withMirrored(field, {0, 0, 3, 2}, Mirror::Down).rows,
              (std::vector<Length>{Length::mm(40), Length::mm(30)}));
}

RC_GTEST_PROP(Regions, TurnedFourTimesIsNoChange, ()) {
    const Field field = random::anyField(most, woods);
    Field all = field;
    for (int i = 0; i < 4; ++i) {
        all = turned(all, 1);
        RC_ASSERT(wrong(all).empty());
    }
    RC_ASSERT(all == field);
    RC_ASSERT(turned(field, 3) == turned(field, -1));
    RC_ASSERT(turned(field, 2) == turned(turned(field, 1), 1));
    Cells cells = wholePieces(field, anyCells(field));
    if (cells.across != cells.down && cells != cellsOf(field)) {
        RC_ASSERT(!withTurned(field, cells, 1).ok());
        RC_ASSERT(withTurned(field, cells, 2).ok());
        return;
    }
    Result<Field> part = field;
    for (int i = 0; i < 4; ++i) {
        part = withTurned(*part, cells == cellsOf(field) ? cellsOf(*part) : cells, 1);
        RC_ASSERT(part.ok());
        RC_ASSERT(wrong(*part).empty());
    }
    RC_ASSERT(*part == field);
}

RC_GTEST_PROP(Regions, AQuarterTurnBringsTheLeftColumnToTheTop, ()) {
    const Field field = random::anyField(most, woods);
    const Field once = turned(field, 1);
    RC_ASSERT(once.columns == std::vector<Length>(field.rows.rbegin(), field.rows.rend()));
    RC_ASSERT(once.rows == field.columns);
    for (int y = 0; y < down(field); ++y) {
        for (int x = 0; x < across(field); ++x) {
            RC_ASSERT(woodAt(once, down(field) - 1 - y, x) == woodAt(field, x, y));
        }
    }
}

TEST(Regions, SaysWhyARegionCannotBeTurned) {
    const Field field = plainGrid(4, 4, Length::mm(50), Length::mm(50), 0);
    EXPECT_EQ(withTurned(field, {0, 0, 3, 2}, 1).fault().text(),
              "Marked region: must have as many columns as rows to be turned where it lies; got 3 "
              "by 2 cells.");
}

RC_GTEST_PROP(Regions, RepeatedIsThePartOverAndOver, ()) {
    const Field part = random::anyField(5, woods);
    const int wide = *rc::gen::inRange(1, 12);
    const int high = *rc::gen::inRange(1, 12);
    const int column = *rc::gen::inRange(-9, 9);
    const int row = *rc::gen::inRange(-9, 9);
    const Field all = repeated(part, wide, high, column, row);
    RC_ASSERT(wrong(all).empty());
    RC_ASSERT(across(all) == wide);
    RC_ASSERT(down(all) == high);
    const auto in = [](int index, int many) { return ((index % many) + many) % many; };
    for (int y = 0; y < high; ++y) {
        for (int x = 0; x < wide; ++x) {
            const int px = in(column + x, across(part));
            const int py = in(row + y, down(part));
            RC_ASSERT(woodAt(all, x, y) == woodAt(part, px, py));
            RC_ASSERT(all.columns[static_cast<std::size_t>(x)] ==
                      part.columns[static_cast<std::size_t>(px)]);
            // Two pieces of the part never become one, and one that is whole stays one.
            if (x + 1 < wide) {
                const bool joined = px + 1 < across(part) && samePiece(part, px, py, px + 1, py);
                RC_ASSERT(samePiece(all, x, y, x + 1, y) == joined);
            }
        }
    }
}

RC_GTEST_PROP(Regions, RepeatedOverALargerRegionTheSourceStays, ()) {
    const Field field = random::anyField(most, woods);
    const Cells cells = wholePieces(field, anyCells(field));
    const Field all = withRepeated(field, cells, cellsOf(field));
    RC_ASSERT(wrong(all).empty());
    RC_ASSERT(copied(all, cells) == copied(field, cells));
    RC_ASSERT(withRepeated(all, cells, cellsOf(field)) == all);
    RC_ASSERT(withRepeated(field, cells, cells) == field);
}

RC_GTEST_PROP(Regions, MovedLeavesTheWoodBehindAndCoversWhatLiesThere, ()) {
    const Field field = random::anyField(most, woods);
    const Cells cells = anyCells(field);
    const int column = *rc::gen::inRange(-2, across(field) + 2);
    const int row = *rc::gen::inRange(-2, down(field) + 2);
    const Field moved = withMoved(field, cells, column, row, 3);
    RC_ASSERT(wrong(moved).empty());
    const auto within = [&](int x, int y, int left, int top) {
        return x >= left && y >= top && x < left + cells.across && y < top + cells.down;
    };
    for (int y = 0; y < down(field); ++y) {
        for (int x = 0; x < across(field); ++x) {
            const int wood = woodAt(moved, x, y);
            if (within(x, y, column, row)) {
                RC_ASSERT(wood == woodAt(field, cells.column + x - column, cells.row + y - row));
            } else {
                RC_ASSERT(wood ==
                          (within(x, y, cells.column, cells.row) ? 3 : woodAt(field, x, y)));
            }
        }
    }
}

RC_GTEST_PROP(Regions, InsertedAndRemovedAgainIsNoChange, ()) {
    const Field field = random::anyField(most, woods);
    const int first = *rc::gen::inRange(0, across(field));
    const int many = *rc::gen::inRange(1, across(field) - first + 1);
    const int at = *rc::gen::inRange(0, across(field) + 1);
    const Result<Field> wider = withColumnsInserted(field, at, first, many);
    RC_ASSERT(wider.ok());
    RC_ASSERT(wrong(*wider).empty());
    RC_ASSERT(across(*wider) == across(field) + many);
    const Result<Field> back = withColumnsRemoved(*wider, at, many);
    RC_ASSERT(back.ok());
    RC_ASSERT(*back == field);
    for (int y = 0; y < down(field); ++y) {
        for (int i = 0; i < many; ++i) {
            const bool grown = at > 0 && at < across(field) && samePiece(field, at - 1, y, at, y);
            RC_ASSERT(woodAt(*wider, at + i, y) ==
                      (grown ? woodAt(field, at, y) : woodAt(field, first + i, y)));
        }
    }
}

RC_GTEST_PROP(Regions, RowsGoTheWayOfColumns, ()) {
    const Field field = random::anyField(most, woods);
    const int first = *rc::gen::inRange(0, down(field));
    const int many = *rc::gen::inRange(1, down(field) - first + 1);
    const int at = *rc::gen::inRange(0, down(field) + 1);
    const Result<Field> higher = withRowsInserted(field, at, first, many);
    RC_ASSERT(higher.ok());
    RC_ASSERT(wrong(*higher).empty());
    RC_ASSERT(transposed(*higher) == *withColumnsInserted(transposed(field), at, first, many));
    const Result<Field> back = withRowsRemoved(*higher, at, many);
    RC_ASSERT(back.ok());
    RC_ASSERT(*back == field);
}

TEST(Regions, SaysWhyLinesCannotBePutInOrTakenOut) {
    const Field field = plainGrid(40, 3, Length::mm(20), Length::mm(20), 0);
    EXPECT_EQ(withColumnsInserted(field, 0, 0, 30).fault().text(),
              "Columns: must be from 1 to 64; got 70.");
    EXPECT_EQ(withColumnsRemoved(field, 0, 40).fault().text(),
              "Columns: must be from 1 to 64; got 0.");
    EXPECT_EQ(withRowsRemoved(field, 2, 2).fault().text(),
              "Rows: must be from 1 to 3; got 3 to 4.");
    EXPECT_FALSE(withColumnsInserted(field, 41, 0, 1).ok());
    EXPECT_FALSE(withColumnsInserted(field, -1, 0, 1).ok());
    EXPECT_FALSE(withRowsInserted(field, 0, -1, 1).ok());
    EXPECT_FALSE(withRowsInserted(field, 0, 0, 0).ok());
}

TEST(Regions, APieceThatIsCutIsDividedAtTheEdgeOnly) {
    const Field whole = withMerged(plainGrid(4, 4, Length::mm(30), Length::mm(30), 0), 0, 0, 4, 4);
    ASSERT_EQ(whole.pieces.size(), 1u);
    EXPECT_FALSE(cutsNoPiece(whole, {1, 1, 2, 2}));
    const Field hole = withCleared(whole, {1, 1, 2, 2}, 2);
    // Above, left and right of the hole, below, and four cells in it.
    EXPECT_EQ(hole.pieces.size(), 8u);
    EXPECT_EQ(wrong(hole), "");
    EXPECT_EQ(hole.pieces.front(), (Piece{0, 0, 4, 1, 0}));
}

RC_GTEST_PROP(Regions, MergedThenSplitIsOnePieceACell, ()) {
    const Field field = random::anyField(most, woods);
    const Cells cells = anyCells(field);
    const Field merged = withMerged(field, cells.column, cells.row, cells.across, cells.down);
    RC_ASSERT(wrong(merged).empty());
    const Field split = withAllSplit(merged, cells);
    RC_ASSERT(wrong(split).empty());
    const int wood = woodAt(field, cells.column, cells.row);
    RC_ASSERT(copied(split, cells).pieces ==
              plainGrid(cells.across, cells.down, Length(), Length(), wood).pieces);
    // What lies outside is as merging left it.
    for (const Piece& piece : merged.pieces) {
        const bool inside = piece.column == cells.column && piece.row == cells.row;
        RC_ASSERT(inside ||
                  std::find(split.pieces.begin(), split.pieces.end(), piece) != split.pieces.end());
    }
}

RC_GTEST_PROP(Regions, SplitReachesEveryPieceOfTheRegionAndNoOther, ()) {
    const Field field = random::anyField(most, woods);
    const Cells cells = anyCells(field);
    std::set<int> reached;
    for (int y = cells.row; y < cells.row + cells.down; ++y) {
        for (int x = cells.column; x < cells.column + cells.across; ++x) {
            reached.insert(pieceAt(field, x, y));
        }
    }
    Field expected = field;
    for (const int index : reached) {
        const Piece piece = field.pieces[static_cast<std::size_t>(index)];
        expected = withSplit(expected, piece.column, piece.row);
    }
    RC_ASSERT(withAllSplit(field, cells) == expected);
}

}  // namespace
}  // namespace kerfwright
