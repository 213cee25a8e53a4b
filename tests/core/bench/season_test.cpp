#include "core/bench/season.h"
#include "core/board/patterns.h"
#include "tests/core/board/randomfield.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>

namespace kerfwright {
namespace {

constexpr Climate heated{8, 6, 10};

std::vector<Wood> flatSawn(std::vector<const char*> keys) {
    std::vector<Wood> woods;
    for (const char* key : keys) {
        woods.push_back(*findWood(woodCatalogue(), key));
        woods.back().rings = Rings::Flat;
    }
    return woods;
}

Board plainBoard(Build build, int across, int down) {
    Board board;
    board.build = build;
    board.thickness = Length::mm(40);
    board.field = plainGrid(across, down, Length::mm(50), Length::mm(50), 0);
    return board;
}

// Coefficients of hard maple: Wood Handbook (2010), table 13-5, 0.00165 and 0.00353. Flat-sawn
// strips stood up in rows: tangential along the row, radial down the column; 2 % on 400 mm.
TEST(Season, AColumnOfOneWoodGrowsByItsCoefficient) {
    const Board board = plainBoard(Build::EndGrain, 8, 8);
    const SeasonState state = seasonAt(board, flatSawn({"hard-maple"}), false, heated, 10);
    EXPECT_NEAR(state.columnWidths[3].least, 50 * 0.00353 * 2, 1e-9);
    EXPECT_NEAR(state.columnWidths[3].greatest, 50 * 0.00353 * 2, 1e-9);
    EXPECT_NEAR(state.rowHeights[0].least, 50 * 0.00165 * 2, 1e-9);
    EXPECT_NEAR(state.width.greatest, 400 * 0.00353 * 2, 1e-9);
    EXPECT_NEAR(state.height.greatest, 400 * 0.00165 * 2, 1e-9);
    EXPECT_LT(state.thickness.greatest, 0.01) << "along the grain hardly anything moves";
}

TEST(Season, ALongGrainFieldMovesAcrossItsGrainOnly) {
    const SeasonState state =
        seasonAt(plainBoard(Build::LongGrain, 8, 8), flatSawn({"hard-maple"}), false, heated, 10);
    EXPECT_NEAR(state.width.greatest, 400 * 0.00353 * 2, 1e-9);
    // 0.2 % from green to ovendry, 30 points: at most 0.0000667 for each.
    EXPECT_NEAR(state.height.greatest, 400 * 0.002 / 30 * 2, 1e-9);
}

// Black walnut 0.00274: half of each column's height is maple, half walnut.
TEST(Season, AColumnOfTwoWoodsGrowsByTheirMean) {
    Board board = plainBoard(Build::EndGrain, 8, 8);
    for (Piece& piece : board.field.pieces) {
        piece.wood = (piece.column + piece.row) % 2;
    }
    const SeasonState state =
        seasonAt(board, flatSawn({"hard-maple", "black-walnut"}), false, heated, 10);
    for (const Range& width : state.columnWidths) {
        EXPECT_NEAR(width.least, 50 * (0.00353 + 0.00274) / 2 * 2, 1e-9);
    }
}

TEST(Season, NothingMovesAtTheMoistureOfTheBuild) {
    EXPECT_TRUE(rc::check([] {
        Board board;
        board.build = *rc::gen::element(Build::EndGrain, Build::LongGrain);
        board.thickness = Length::mm(40);
        board.field = random::anyField(10, 2);
        const std::vector<Wood> woods = {*findWood(woodCatalogue(), "hard-maple"),
                                         *findWood(woodCatalogue(), "wenge")};
        const bool byColumns = *rc::gen::arbitrary<bool>();
        const SeasonState same = seasonAt(board, woods, byColumns, heated, heated.build);
        RC_ASSERT(same.width == Range());
        RC_ASSERT(same.height == Range());

        // In both seasons the rows and columns are those of the board's movement, and the drawn
        // widths of all columns make the mean of the rows.
        const BoardMovement movement = movementOf(board, woods, byColumns, heated);
        const SeasonState damp = seasonAt(board, woods, byColumns, heated, heated.dampest);
        const double height = board.field.height().toMm();
        double mean = 0;
        for (std::size_t row = 0; row < movement.rows.size(); ++row) {
            RC_ASSERT(std::abs(damp.rowLengths[row].least - movement.rows[row].toDampest.least) <
                      1e-9);
            RC_ASSERT(std::abs(damp.rowLengths[row].greatest -
                               movement.rows[row].toDampest.greatest) < 1e-9);
            mean += damp.rowLengths[row].greatest * board.field.rows[row].toMm() / height;
        }
        double sum = 0;
        for (const Range& width : damp.columnWidths) {
            sum += width.greatest;
        }
        RC_ASSERT(std::abs(sum - mean) < 1e-9);
        RC_ASSERT(damp.width.least >= 0);
        const SeasonState dry = seasonAt(board, woods, byColumns, heated, heated.driest);
        RC_ASSERT(dry.width.greatest <= 0);
        RC_ASSERT(*dry.weightKg < *damp.weightKg);
    }));
}

// Field of 400 mm of maple and walnut, 5.0 mm of movement in all: 2.5 mm a side (trade notes 5.3).
TEST(Season, TheGapClosesInTheDampAndOpensInTheDry) {
    const Range closed = gapAt(Length::um(2500), {5, 5});
    EXPECT_NEAR(closed.least, 0, 1e-12);
    EXPECT_NEAR(closed.greatest, 0, 1e-12);
    const Range open = gapAt(Length::um(2500), {-4, -2});
    EXPECT_NEAR(open.least, 3.5, 1e-12);
    EXPECT_NEAR(open.greatest, 4.5, 1e-12);
    EXPECT_LT(gapAt(Length::mm(1), {5, 5}).greatest, 0) << "it presses on the rails";
}

TEST(Season, TheYearGoesFromTheDriestToTheDampestAndBack) {
    EXPECT_NEAR(moistureInYear(heated, 0), 6, 1e-12);
    EXPECT_NEAR(moistureInYear(heated, 0.25), 8, 1e-12);
    EXPECT_NEAR(moistureInYear(heated, 0.5), 10, 1e-12);
    EXPECT_NEAR(moistureInYear(heated, 1), 6, 1e-12);
    EXPECT_TRUE(rc::check([] {
        const double year = *rc::gen::inRange(0, 1001) / 1000.0;
        const double moisture = moistureInYear(heated, year);
        RC_ASSERT(moisture >= heated.driest - 1e-12);
        RC_ASSERT(moisture <= heated.dampest + 1e-12);
        RC_ASSERT(std::abs(moisture - moistureInYear(heated, 1 - year)) < 1e-12);
    }));
}

// Field 400 × 400, gap 2.5, rail 50, 40 thick: the rails of 505 cover 505² − 405² = 91 000 mm².
TEST(Season, TheWeightIsThatOfFieldAndRailsWithoutTheGap) {
    Board board = plainBoard(Build::EndGrain, 8, 8);
    const std::vector<Wood> woods = flatSawn({"hard-maple", "black-walnut"});
    const double field = *seasonAt(board, woods, false, heated, 8).weightKg;
    EXPECT_NEAR(field, 0.4 * 0.4 * 0.04 * densityAt(woods[0], 8), 1e-9);
    board.border = {Length::mm(50), 1};
    board.border.design = BorderDesign::FloatingFrame;
    const Surround room{Length::um(2500), Length::um(2500), Length::mm(50), Length::mm(50)};
    const SeasonState state = seasonAt(board, woods, false, heated, 8, room);
    EXPECT_NEAR(*state.weightKg - field, 0.091 * 0.04 * densityAt(woods[1], 8), 1e-9);
    EXPECT_LT(*seasonAt(board, woods, false, heated, 8).weightKg, *state.weightKg);
}

TEST(Season, AWoodThatDoesNotSayStaysAsItIs) {
    std::vector<Wood> woods = flatSawn({"hard-maple"});
    woods[0].movement = {};
    woods[0].shrinkage = {};
    const SeasonState state = seasonAt(plainBoard(Build::EndGrain, 2, 2), woods, false, heated, 10);
    EXPECT_FALSE(state.woods[0].has_value());
    EXPECT_EQ(state.width, Range());
}

}  // namespace
}  // namespace kerfwright
