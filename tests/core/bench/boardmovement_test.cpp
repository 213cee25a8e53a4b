#include "core/bench/boardmovement.h"
#include "core/board/patterns.h"
#include "tests/core/board/randomfield.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <algorithm>
#include <utility>

namespace kerfwright {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;

/// Coefficients that make sums easy: 0.1 and 0.2 %, 0.2 and 0.3 % for each point.
Wood easy(Rings rings) {
    Wood wood;
    wood.density = 700;
    wood.movement = {0.001, 0.002};
    wood.rings = rings;
    return wood;
}
Wood lively(Rings rings) {
    Wood wood = easy(rings);
    wood.movement = {0.002, 0.003};
    return wood;
}

constexpr Climate climate{9, 7, 13};  // 2 points down, 4 up, all within the coefficients

/// Two rows of 100 mm: three pieces of 50, 50 and 100 mm; one piece across.
Board twoRows() {
    Board board;
    board.thickness = Length::mm(40);
    board.field.columns = {Length::mm(50), Length::mm(50), Length::mm(100)};
    board.field.rows = {Length::mm(60), Length::mm(30)};
    board.field.pieces = {{0, 0, 1, 1, 0}, {1, 0, 1, 1, 1}, {2, 0, 1, 1, 0}, {0, 1, 3, 1, 1}};
    return board;
}

void expectChange(const SeasonChange& found, Range dry, Range damp) {
    EXPECT_NEAR(found.toDriest.least, dry.least, 1e-9);
    EXPECT_NEAR(found.toDriest.greatest, dry.greatest, 1e-9);
    EXPECT_NEAR(found.toDampest.least, damp.least, 1e-9);
    EXPECT_NEAR(found.toDampest.greatest, damp.greatest, 1e-9);
}

void expectChange(const SeasonChange& found, double dry, double damp) {
    expectChange(found, {dry, dry}, {damp, damp});
}

// All sums below were made by hand: mm × coefficient × points.
TEST(BoardMovement, OfAnEndGrainFieldIsTheSumOfItsPiecesBothWays) {
    const BoardMovement found =
        movementOf(twoRows(), {easy(Rings::Flat), lively(Rings::Flat)}, false, climate);
    ASSERT_EQ(found.rows.size(), 2u);
    ASSERT_EQ(found.columns.size(), 3u);
    // x is the width of flat-sawn strips: tangential. 150 × 0.002 + 50 × 0.003 = 0.45 a point.
    expectChange(found.rows[0], -0.9, 1.8);
    expectChange(found.rows[1], -1.2, 2.4);  // 200 × 0.003
    // y is their thickness: radial. 60 × 0.001 + 30 × 0.002, and 90 × 0.002.
    expectChange(found.columns[0], -0.24, 0.48);
    expectChange(found.columns[1], -0.36, 0.72);
    expectChange(found.columns[2], -0.24, 0.48);
    expectChange(found.width, {-1.2, -0.9}, {1.8, 2.4});
    expectChange(found.height, {-0.36, -0.24}, {0.48, 0.72});
    EXPECT_NEAR(found.rowsApart.alike.mm, 0.6, 1e-9);
    EXPECT_EQ(found.rowsApart.alike.first, 0);
    EXPECT_NEAR(found.columnsApart.alike.mm, 0.24, 1e-9);
    EXPECT_EQ(found.columnsApart.alike.first, 0);
    EXPECT_THAT(found.unknownWoods, IsEmpty());
    // The thickness is along the grain: 40 mm × 0.1 to 0.2 % × 4 / 30.
    expectChange(found.thickness, {-40 * 0.002 * 2 / 30, -40 * 0.001 * 2 / 30},
                 {40 * 0.001 * 4 / 30, 40 * 0.002 * 4 / 30});
}

TEST(BoardMovement, OfColumnsThatAreTheSlicesTurnsWithThem) {
    const BoardMovement found =
        movementOf(twoRows(), {easy(Rings::Flat), lively(Rings::Flat)}, true, climate);
    expectChange(found.rows[0], -(150 * 0.001 + 50 * 0.002) * 2, (150 * 0.001 + 50 * 0.002) * 4);
    expectChange(found.columns[0], -(60 * 0.002 + 30 * 0.003) * 2, (60 * 0.002 + 30 * 0.003) * 4);
}

TEST(BoardMovement, OfALongGrainFieldIsAcrossTheGrain) {
    Board board = twoRows();
    board.build = Build::LongGrain;
    const std::vector<Wood> woods{easy(Rings::Quarter), lively(Rings::Quarter)};
    const BoardMovement found = movementOf(board, woods, false, climate);
    // Strips' width along x, rings quarter-sawn: radial.
    expectChange(found.rows[0], -(150 * 0.001 + 50 * 0.002) * 2, (150 * 0.001 + 50 * 0.002) * 4);
    // Along the grain each column is 90 mm of wood.
    for (const SeasonChange& column : found.columns) {
        expectChange(column, {-90 * 0.002 * 2 / 30, -90 * 0.001 * 2 / 30},
                     {90 * 0.001 * 4 / 30, 90 * 0.002 * 4 / 30});
    }
    EXPECT_EQ(found.columnsApart.alike, Apart());
    EXPECT_LT(found.columnsApart.worst.mm, 0.02) << "the range of what wood does along the grain";
    // The thickness is the strips' thickness: tangential.
    expectChange(found.thickness, {-40 * 0.003 * 2, -40 * 0.002 * 2},
                 {40 * 0.002 * 4, 40 * 0.003 * 4});
    const BoardMovement turned = movementOf(board, woods, true, climate);
    EXPECT_LT(turned.width.toDampest.greatest, 0.1);
    expectChange(turned.columns[1], -90 * 0.002 * 2, 90 * 0.002 * 4);
}

TEST(BoardMovement, IsARangeWhereTheRingsAreNotKnown) {
    const BoardMovement found =
        movementOf(twoRows(), {easy(Rings::Unknown), lively(Rings::Unknown)}, false, climate);
    expectChange(found.rows[0], {-0.9, -(150 * 0.001 + 50 * 0.002) * 2},
                 {(150 * 0.001 + 50 * 0.002) * 4, 1.8});
    // Alike: 0.6 as if all were flat. Worst: a row that moves most beside one that moves least.
    EXPECT_NEAR(found.rowsApart.alike.mm, 0.6, 1e-9);
    EXPECT_NEAR(found.rowsApart.worst.mm, 2.4 - 1.0, 1e-9);
    EXPECT_EQ(found.rowsApart.worst.first, 0);
}

TEST(BoardMovement, NamesTheWoodsThatSayNothing) {
    Wood silent = easy(Rings::Unknown);
    silent.movement = {};
    Wood unused = silent;
    const BoardMovement found =
        movementOf(twoRows(), {easy(Rings::Flat), silent, unused}, false, climate);
    EXPECT_THAT(found.unknownWoods, ElementsAre(1));
    expectChange(found.rows[0], -150 * 0.002 * 2, 150 * 0.002 * 4);
    expectChange(found.rows[1], 0, 0);
}

TEST(BoardMovement, OfRowsThatAreAlikeIsAlike) {
    Board board;
    board.thickness = Length::mm(40);
    board.field = layOut({Pattern::Chequer, 8, 8, Length::mm(50), Length::mm(50), {0, 1}}).value();
    const std::vector<Wood> woods{*findWood(woodCatalogue(), "hard-maple"),
                                  *findWood(woodCatalogue(), "black-walnut")};
    const BoardMovement found = movementOf(board, woods, false, Climate{8, 6, 12});
    EXPECT_EQ(found.rowsApart.alike, Apart());
    EXPECT_EQ(found.columnsApart.alike, Apart());
    EXPECT_GT(found.rowsApart.worst.mm, 1);
    // 200 mm of each at 4 points: tangential 0.00353 and 0.00274, radial 0.00165 and 0.00190
    // (Wood Handbook, 2010, table 13-5).
    EXPECT_NEAR(found.width.toDampest.greatest, 200 * 4 * (0.00353 + 0.00274), 1e-9);
    EXPECT_NEAR(found.width.toDampest.least, 200 * 4 * (0.00165 + 0.00190), 1e-9);
    EXPECT_EQ(found.width, found.rows[0]);
}

/// Inside a property only.
std::pair<Board, std::vector<Wood>> anyBoard() {
    std::vector<Wood> woods;
    for (int i = 0; i < 4; ++i) {
        woods.push_back(*rc::gen::elementOf(woodCatalogue()));
        woods.back().rings =
            *rc::gen::element(Rings::Unknown, Rings::Flat, Rings::Rift, Rings::Quarter);
    }
    Board board;
    board.build = *rc::gen::element(Build::EndGrain, Build::LongGrain);
    board.thickness = Length::mm(*rc::gen::inRange(10, 80));
    board.field = random::anyField(12, 4);
    return {board, woods};
}

TEST(BoardMovement, OfAFieldTurnedRoundIsTheSameTurnedRound) {
    EXPECT_TRUE(rc::check([] {
        const auto [board, woods] = anyBoard();
        Board turned = board;
        turned.field = transposed(board.field);
        const BoardMovement one = movementOf(board, woods, false, Climate{9, 5, 16});
        const BoardMovement other = movementOf(turned, woods, true, Climate{9, 5, 16});
        const auto near = [](double a, double b) { return std::abs(a - b) < 1e-9; };
        for (std::size_t i = 0; i < one.rows.size(); ++i) {
            RC_ASSERT(near(one.rows[i].toDriest.least, other.columns[i].toDriest.least));
            RC_ASSERT(near(one.rows[i].toDampest.greatest, other.columns[i].toDampest.greatest));
        }
        RC_ASSERT(near(one.height.toDampest.greatest, other.width.toDampest.greatest));
        RC_ASSERT(near(one.thickness.toDriest.least, other.thickness.toDriest.least));
    }));
}

TEST(BoardMovement, GrowsInTheDampShrinksInTheDryAndStaysWhereNothingChanges) {
    EXPECT_TRUE(rc::check([] {
        const auto [board, woods] = anyBoard();
        const bool byColumns = *rc::gen::arbitrary<bool>();
        const BoardMovement found = movementOf(board, woods, byColumns, Climate{9, 5, 16});
        for (const auto* lines : {&found.rows, &found.columns}) {
            for (const SeasonChange& line : *lines) {
                RC_ASSERT(line.toDriest.least <= line.toDriest.greatest);
                RC_ASSERT(line.toDriest.greatest < 0);
                RC_ASSERT(line.toDampest.least > 0);
                RC_ASSERT(line.toDampest.least <= line.toDampest.greatest);
            }
        }
        RC_ASSERT(found.rowsApart.worst.mm >= found.rowsApart.alike.mm - 1e-9);
        const BoardMovement still = movementOf(board, woods, byColumns, Climate{9, 9, 9});
        RC_ASSERT(still.width == SeasonChange());
        RC_ASSERT(still.height == SeasonChange());
        RC_ASSERT(still.rowsApart == Neighbours());
    }));
}

// Reckoned by hand: half of a 400 × 400 × 40 field of each wood and a border of the second.
TEST(BoardWeight, IsThatOfEachWoodAtTheMoisture) {
    Board board;
    board.thickness = Length::mm(40);
    board.field = layOut({Pattern::Chequer, 8, 8, Length::mm(50), Length::mm(50), {0, 1}}).value();
    board.border = {Length::mm(50), 1};
    std::vector<Wood> woods{easy(Rings::Flat), lively(Rings::Flat)};
    woods[1].density = 560;
    const double field = 0.4 * 0.4 * 0.04;
    const double border = (0.5 * 0.5 - 0.4 * 0.4) * 0.04;
    const double at12 = field / 2 * 700 + (field / 2 + border) * 560;
    EXPECT_NEAR(weightAt(board, woods, {12, 6, 14}, 12).value(), at12, 1e-9);
    // No shrinkage known, so the volume stays and only the water comes and goes.
    EXPECT_NEAR(weightAt(board, woods, {8, 6, 14}, 6).value(), at12 * 1.06 / 1.12, 1e-9);
    woods[0].shrinkage = woods[1].shrinkage = {5, 10, 15};
    // Sizes as built at 8 %, where the same wood is denser than its catalogue says for 12 %.
    EXPECT_NEAR(weightAt(board, woods, {8, 6, 14}, 8).value(), at12 / 700 * densityAt(woods[0], 8),
                1e-9);
    EXPECT_GT(*weightAt(board, woods, {8, 6, 14}, 14), *weightAt(board, woods, {8, 6, 14}, 6));
    woods[1].density = 0;
    EXPECT_FALSE(weightAt(board, woods, {8, 6, 14}, 8).has_value());
    board.field = plainGrid(1, 1, Length::mm(100), Length::mm(100), 0);
    board.border = {Length(), 1};
    EXPECT_TRUE(weightAt(board, woods, {8, 6, 14}, 8).has_value()) << "none of it is in the board";
}

}  // namespace
}  // namespace kerfwright
