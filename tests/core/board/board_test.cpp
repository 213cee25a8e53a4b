#include "core/board/board.h"
#include "tests/core/board/randomfield.h"

#include <climits>
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <cstdint>
#include <string>
#include <tuple>
#include <vector>

namespace kerfwright {
namespace {

using ::testing::AllOf;
using ::testing::Contains;
using ::testing::ElementsAre;
using ::testing::IsEmpty;
using ::testing::SizeIs;

constexpr int woods = 4;

Board boardOf(Field field) {
    Board board;
    board.thickness = Length::mm(40);
    board.field = std::move(field);
    return board;
}

Board chequered() {
    return boardOf(plainGrid(4, 3, Length::mm(50), Length::mm(45), 0));
}

std::vector<std::string> texts(const Board& board) {
    std::vector<std::string> all;
    for (const Fault& fault : faults(board, woods)) {
        all.push_back(fault.text());
    }
    return all;
}

/// The law of a field, spelled out a second time: every cell covered once, pieces in reading order.
bool isWhole(const Field& field) {
    std::vector<int> cover(field.columns.size() * field.rows.size(), 0);
    for (const Piece& piece : field.pieces) {
        for (int row = piece.row; row < piece.row + piece.down; ++row) {
            for (int column = piece.column; column < piece.column + piece.across; ++column) {
                if (row < 0 || column < 0 || row >= static_cast<int>(field.rows.size()) ||
                    column >= static_cast<int>(field.columns.size())) {
                    return false;
                }
                ++cover[static_cast<std::size_t>(row) * field.columns.size() +
                        static_cast<std::size_t>(column)];
            }
        }
    }
    return std::all_of(cover.begin(), cover.end(), [](int times) { return times == 1; }) &&
           std::is_sorted(field.pieces.begin(), field.pieces.end(),
                          [](const Piece& a, const Piece& b) {
                              return std::tie(a.row, a.column) < std::tie(b.row, b.column);
                          });
}

/// The wood of every cell, row by row, whatever the pieces are.
std::vector<int> woodsOf(const Field& field) {
    std::vector<int> all;
    for (const int piece : pieceMap(field)) {
        all.push_back(field.pieces[static_cast<std::size_t>(piece)].wood);
    }
    return all;
}

// --- faults

TEST(BoardFaults, findNothingInAGoodBoard) {
    EXPECT_THAT(texts(chequered()), IsEmpty());
}

TEST(BoardFaults, nameTheCellTheRuleAndTheValue) {
    Board board = chequered();
    board.field.columns[2] = Length::um(1500);
    board.field.rows[0] = Length::mm(-3);
    board.thickness = Length::mm(201);
    board.border.width = Length::mm(301);
    EXPECT_THAT(texts(board),
                ElementsAre("Column 3 width: must be from 2 mm to 1500 mm; got 1.5 mm.",
                            "Row 1 height: must be from 2 mm to 1500 mm; got -3 mm.",
                            "Thickness: must be from 5 mm to 200 mm; got 201 mm.",
                            "Border width: must be from 0 mm to 300 mm; got 301 mm."));
}

TEST(BoardFaults, countColumnsAndRows) {
    Board board = chequered();
    board.field.columns.clear();
    board.field.rows.assign(65, Length::mm(10));
    EXPECT_THAT(texts(board), ElementsAre("Columns: must be from 1 to 64; got 0.",
                                          "Rows: must be from 1 to 64; got 65."));
}

TEST(BoardFaults, refuseAFieldThatIsTooWide) {
    const Board board = boardOf(plainGrid(3, 1, Length::mm(1001), Length::mm(50), 0));
    EXPECT_THAT(texts(board), ElementsAre("Field width: must be at most 3000 mm; got 3003 mm."));
}

TEST(BoardFaults, nameTheWoodOfAPiece) {
    Board board = chequered();
    board.field.pieces[11].wood = 4;
    board.border.wood = -1;
    EXPECT_THAT(texts(board),
                ElementsAre("Piece 12: wood: must be one of the 4 woods of the project; got wood "
                            "number 5.",
                            "Border wood: must be one of the 4 woods of the project; got wood "
                            "number 0."));
}

TEST(BoardFaults, nameTheCellsThatAreBareOrDoubled) {
    Board board = chequered();
    board.field.pieces.pop_back();
    EXPECT_THAT(texts(board),
                ElementsAre("Pieces: must cover every cell; got a bare cell at column "
                            "4, row 3."));
    board = chequered();
    board.field.pieces[5].across = 2;
    EXPECT_THAT(texts(board), ElementsAre("Piece 7: must not lie over another piece; got a piece "
                                          "over piece 6 at column 3, row 2."));
    board = chequered();
    board.field.pieces.resize(3);
    EXPECT_THAT(texts(board), ElementsAre("Pieces: must cover every cell; got 9 bare cells, the "
                                          "first at column 4, row 1."));
}

TEST(BoardFaults, keepPiecesInsideAndInOrder) {
    Board board = chequered();
    board.field.pieces[3].across = 2;
    EXPECT_THAT(texts(board), Contains("Piece 4: columns covered: must be from 1 to 1 from there; "
                                       "got 2."));
    board = chequered();
    std::swap(board.field.pieces[0], board.field.pieces[1]);
    EXPECT_THAT(texts(board), ElementsAre("Pieces: must be sorted by row, then column; got piece 2 "
                                          "out of order."));
}

// Sums of such numbers do not fit 64 bits; under the sanitizers an overflow would stop the test.
TEST(BoardFaults, surviveAnyNumbers) {
    Board board = chequered();
    board.field.columns.assign(64, Length::nm(INT64_MAX));
    board.field.rows.assign(64, Length::nm(INT64_MIN));
    board.thickness = Length::nm(INT64_MIN);
    board.border.width = Length::nm(INT64_MAX);
    board.field.pieces = {{INT_MAX, INT_MAX, INT_MAX, INT_MAX, INT_MAX},
                          {INT_MIN, INT_MIN, INT_MIN, INT_MIN, INT_MIN},
                          {0, 0, INT_MAX, INT_MAX, 0}};
    EXPECT_THAT(texts(board), SizeIs(::testing::Ge(64U + 64U + 2U + 3U)));
}

TEST(BoardFaults, agreeWithTheLawSpelledOutTwice) {
    EXPECT_TRUE(rc::check([] {
        Board board = boardOf(random::anyField(6, woods));
        RC_ASSERT(faults(board, woods).empty());
        auto& pieces = board.field.pieces;
        Piece& piece = pieces[*rc::gen::inRange<std::size_t>(0, pieces.size())];
        for (int Piece::*member : {&Piece::column, &Piece::row, &Piece::across, &Piece::down}) {
            piece.*member += *rc::gen::inRange(-1, 2);
        }
        const bool spans = piece.across >= 1 && piece.down >= 1;
        RC_ASSERT((spans && isWhole(board.field)) == faults(board, woods).empty());
    }));
}

// --- edits

TEST(Field, knowsItsCells) {
    const Field field = plainGrid(4, 3, Length::mm(50), Length::mm(45), 2);
    EXPECT_EQ(field.width(), Length::mm(200));
    EXPECT_EQ(field.height(), Length::mm(135));
    EXPECT_THAT(field.pieces, SizeIs(12));
    EXPECT_EQ(columnAt(field, Length()), 0);
    EXPECT_EQ(columnAt(field, Length::mm(50)), 1);
    EXPECT_EQ(columnAt(field, Length::nm(49'999'999)), 0);
    EXPECT_EQ(columnAt(field, Length::mm(200)), -1);
    EXPECT_EQ(columnAt(field, Length::nm(-1)), -1);
    EXPECT_EQ(rowAt(field, Length::mm(134)), 2);
    EXPECT_EQ(pieceAt(field, 3, 2), 11);
    EXPECT_EQ(pieceAt(field, 4, 0), -1);
}

TEST(Field, growsByRepeatingItsPattern) {
    Field field = plainGrid(2, 2, Length::mm(50), Length::mm(45), 0);
    field.pieces[1].wood = field.pieces[2].wood = 1;
    field.columns[1] = Length::mm(20);
    const Field grown = resized(field, 3, 3);
    EXPECT_THAT(grown.columns, ElementsAre(Length::mm(50), Length::mm(20), Length::mm(20)));
    EXPECT_THAT(woodsOf(grown), ElementsAre(0, 1, 0, 1, 0, 1, 0, 1, 0));
    EXPECT_EQ(resized(grown, 2, 2), field);
}

TEST(Field, shortensPiecesAtItsNewEdge) {
    const Field wide = withMerged(plainGrid(4, 2, Length::mm(50), Length::mm(50), 0), 1, 0, 3, 2);
    const Field narrow = resized(wide, 2, 1);
    EXPECT_THAT(narrow.pieces, ElementsAre(Piece{0, 0, 1, 1, 0}, Piece{1, 0, 1, 1, 0}));
    EXPECT_THAT(resized(wide, 0, 1), wide);
    EXPECT_THAT(resized(wide, 1, 10'000), wide);
}

TEST(Field, movesAJointWithinTheLimits) {
    const Field field = plainGrid(3, 1, Length::mm(50), Length::mm(50), 0);
    EXPECT_THAT(withColumnJointMoved(field, 1, Length::mm(7)).columns,
                ElementsAre(Length::mm(50), Length::mm(57), Length::mm(43)));
    EXPECT_EQ(withColumnJointMoved(field, 0, Length::mm(49)), field) << "a column of 1 mm";
    EXPECT_EQ(withColumnJointMoved(field, 0, Length::mm(-49)), field) << "a column of 1 mm";
    EXPECT_EQ(withColumnJointMoved(field, 0, Length::nm(INT64_MAX)), field);
    EXPECT_EQ(withColumnJointMoved(field, 0, Length::nm(INT64_MIN)), field);
    EXPECT_EQ(withColumnJointMoved(field, 2, Length::mm(1)), field) << "the edge is no joint";
    EXPECT_EQ(withColumnJointMoved(field, -1, Length::mm(1)), field);
    EXPECT_EQ(withRowJointMoved(field, 0, Length::mm(1)), field) << "there is one row only";
    EXPECT_EQ(withRowJointMoved(transposed(field), 1, Length::mm(7)),
              transposed(withColumnJointMoved(field, 1, Length::mm(7))));
}

TEST(Field, mergesAndSplits) {
    Field field = plainGrid(3, 3, Length::mm(50), Length::mm(50), 0);
    field.pieces[4].wood = 3;
    const Field merged = withMerged(field, 1, 1, 2, 1);
    EXPECT_THAT(merged.pieces, SizeIs(8));
    EXPECT_THAT(merged.pieces, Contains(Piece{1, 1, 2, 1, 3}));
    // The new rectangle cuts the merged piece: what sticks out falls back into cells.
    const Field across = withMerged(merged, 1, 0, 1, 3);
    EXPECT_THAT(across.pieces,
                AllOf(Contains(Piece{1, 0, 1, 3, 0}), Contains(Piece{2, 1, 1, 1, 3})));
    EXPECT_THAT(woodsOf(withSplit(merged, 2, 1)), ElementsAre(0, 0, 0, 0, 3, 3, 0, 0, 0));
    EXPECT_EQ(withMerged(field, 2, 2, 2, 1), field) << "sticks out of the field";
    EXPECT_EQ(withMerged(field, 0, 0, INT_MAX, INT_MAX), field);
    EXPECT_EQ(withSplit(field, 3, 0), field);
}

TEST(Field, everyEditOfAGoodFieldGivesAGoodField) {
    EXPECT_TRUE(rc::check([] {
        const Field field = random::anyField(8, woods);
        const auto any = [] { return *rc::gen::inRange(-1, 10); };
        const auto by = Length::nm(*rc::gen::arbitrary<std::int64_t>() / 1'000'000'000);
        const std::vector<Field> edited{
            resized(field, any(), any()),
            withColumnJointMoved(field, any(), by),
            withRowJointMoved(field, any(), by),
            withMerged(field, any(), any(), any(), any()),
            withSplit(field, any(), any()),
            transposed(field),
            withCells(field, Length::mm(10), Length::mm(20)),
        };
        for (const Field& result : edited) {
            RC_ASSERT(isWhole(result));
            RC_ASSERT(faults(boardOf(result), woods).empty());
        }
        RC_ASSERT(edited[1].width() == field.width());
        RC_ASSERT(edited[2].height() == field.height());
        RC_ASSERT(woodsOf(edited[4]) == woodsOf(field));
        RC_ASSERT(transposed(edited[5]) == field);
    }));
}

TEST(Field, resizingThereAndBackKeepsCellsAndWoods) {
    EXPECT_TRUE(rc::check([] {
        const Field field = random::anyField(6, woods);
        const auto columns = static_cast<int>(field.columns.size());
        const auto rows = static_cast<int>(field.rows.size());
        const Field back = resized(
            resized(field, columns + *rc::gen::inRange(0, 20), rows + *rc::gen::inRange(0, 20)),
            columns, rows);
        RC_ASSERT(back == field);
    }));
}

TEST(WoodUse, coversTheFieldExactly) {
    EXPECT_TRUE(rc::check([] {
        const Field field = random::anyField(8, woods);
        Area all;
        int pieces = 0;
        for (const WoodUse& use : woodUse(field, woods)) {
            all += use.face;
            pieces += use.pieces;
        }
        RC_ASSERT(all == area(field.width(), field.height()));
        RC_ASSERT(pieces == static_cast<int>(field.pieces.size()));
    }));
}

}  // namespace
}  // namespace kerfwright
