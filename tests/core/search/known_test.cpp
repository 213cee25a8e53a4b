// The table of known constructions in the design of the planner (glue-ups.md, 4), which takes them
// from the trade: every piece can be one strip, no thinning, no shift-and-trim unless named.
#include "core/board/patterns.h"
#include "core/search/locked.h"
#include "core/search/search.h"
#include "core/search/shifted.h"
#include "tests/core/search/pictures.h"

#include <gtest/gtest.h>

namespace kerfwright::searching {
namespace {

/// The fewest glue-ups, which must be proven and rightly made.
int fewest(const Field& field, Laying laying = Laying::EndGrain, bool mergeLike = true,
           const SearchOptions& options = {}) {
    const Picture picture = pictureOf(field, laying, mergeLike);
    const SearchResult result = fewestGlueUps(picture, options);
    EXPECT_TRUE(result.proven);
    for (const Found& each : result.found) {
        EXPECT_EQ(mistakes(each.construction, picture), "");
        EXPECT_EQ(each.construction.glueUps(), each.glueUps);
    }
    return result.found.empty() ? -1 : result.found.front().glueUps;
}

/// With shift-and-trim by rows or columns.
int shifted(const Field& field, Laying laying = Laying::EndGrain) {
    const Picture picture = pictureOf(field, laying, true);
    const std::vector<Found> all = shiftedAndTrimmed(picture);
    for (const Found& each : all) {
        EXPECT_EQ(mistakes(each.construction, picture), "");
    }
    return all.empty() ? -1 : all.front().glueUps;
}

Field pattern(Pattern which, int across, int down, std::vector<int> woods,
              Length width = Length::mm(40), Length height = Length::mm(40)) {
    return layOut({which, across, down, width, height, std::move(woods)}).value();
}

TEST(Known, StripesAreOneGlueUp) {
    EXPECT_EQ(fewest(pattern(Pattern::Stripes, 8, 1, {0, 1})), 1);
    EXPECT_EQ(fewest(cells({"ABCABC"})), 1);
    EXPECT_EQ(fewest(cells({"A"})), 0);
    EXPECT_EQ(fewest(cells({"AAA", "AAA"})), 0);
}

TEST(Known, ChequerWithRowsOrColumnsEvenTakesTwo) {
    EXPECT_EQ(fewest(pattern(Pattern::Chequer, 8, 8, {0, 1})), 2);
    EXPECT_EQ(fewest(pattern(Pattern::Chequer, 9, 8, {0, 1})), 2);
    EXPECT_EQ(fewest(pattern(Pattern::Chequer, 8, 5, {0, 1})), 2);
    EXPECT_EQ(fewest(pattern(Pattern::Chequer, 8, 8, {0, 1}), Laying::GrainDown), 2);
}

TEST(Known, OddChequerTakesThreeAndTwoShifted) {
    for (const int side : {3, 5, 9}) {
        const Field odd = pattern(Pattern::Chequer, side, side, {0, 1});
        EXPECT_EQ(fewest(odd), 3) << side;
        EXPECT_EQ(shifted(odd), 2) << side;
    }
}

TEST(Known, ShiftingCostsOneExtraStrip) {
    const Picture picture =
        pictureOf(pattern(Pattern::Chequer, 9, 9, {0, 1}), Laying::EndGrain, true);
    const std::vector<Found> all = shiftedAndTrimmed(picture);
    ASSERT_EQ(all.size(), 2u);  // by rows and by columns
    const std::vector<Block>& blocks = all.front().construction.blocks;
    ASSERT_GE(blocks.size(), 2u);
    EXPECT_EQ(blocks[blocks.size() - 2].members.size(), 10u);
}

TEST(Known, AnEvenChequerNeedsNoShifting) {
    EXPECT_EQ(shifted(pattern(Pattern::Chequer, 8, 8, {0, 1})), -1);
}

/// Courses of bricks with mortar between them, as runs of (wood, size); wood 1 is mortar.
Field courses(const std::vector<std::vector<std::pair<int, int>>>& words, int rows,
              bool gluedMortar) {
    constexpr int brick = 40;
    constexpr int mortar = 4;
    int width = 0;
    for (const auto& run : words.front())
        width += run.second;
    Field field;
    for (int i = 0; i < width / 2; ++i)
        field.columns.push_back(Length::mm(2));
    for (int row = 0; row < 2 * rows - 1; ++row) {
        field.rows.push_back(Length::mm(row % 2 == 0 ? brick / 2 : mortar));
        if (row % 2 == 1) {
            const int half = width / 4;
            if (gluedMortar) {
                field.pieces.push_back({0, row, half, 1, 1});
                field.pieces.push_back({half, row, width / 2 - half, 1, 2});
            } else {
                field.pieces.push_back({0, row, width / 2, 1, 1});
            }
            continue;
        }
        int column = 0;
        for (const auto& [wood, size] : words[static_cast<std::size_t>(row / 2) % words.size()]) {
            field.pieces.push_back({column, row, size / 2, 1, wood});
            column += size / 2;
        }
    }
    return field;
}

TEST(Known, MortarBricksEndingInPartBricksTakeTwoByReversal) {
    // Part brick (40 - 4) / 2 = 18: brick, mortar, brick, mortar, part; and the same reversed.
    const std::vector<std::pair<int, int>> word{{0, 40}, {1, 4}, {0, 40}, {1, 4}, {0, 18}};
    const std::vector<std::pair<int, int>> reversed(word.rbegin(), word.rend());
    EXPECT_EQ(fewest(courses({word, reversed}, 4, false)), 2);
    EXPECT_EQ(fewest(courses({word, reversed}, 4, true)), 3);
    EXPECT_EQ(fewest(pattern(Pattern::MortarBricks, 6, 8, {0, 1}, Length::mm(60))), 2);
}

TEST(Known, MortarBricksOfWholeBricksTakeThreeAndTwoShifted) {
    const std::vector<std::pair<int, int>> whole{{0, 40}, {1, 4}, {0, 40}, {1, 4}, {0, 40}};
    const std::vector<std::pair<int, int>> offset{{0, 18}, {1, 4}, {0, 40}, {1, 4},
                                                  {0, 40}, {1, 4}, {0, 18}};
    const Field field = courses({whole, offset}, 4, false);
    EXPECT_EQ(fewest(field), 3);
    EXPECT_EQ(shifted(field), 2);
}

TEST(Known, BasketWeaveTakesThree) {
    const Field basket = pattern(Pattern::Basket, 4, 4, {0, 1});
    EXPECT_EQ(fewest(basket), 3);
    EXPECT_EQ(fewest(basket, Laying::EndGrain, false), 3);
}

TEST(Known, ThreeRowsTurnedRoundTakeFour) {
    EXPECT_EQ(fewest(cells({"ABC", "BCA", "CAB"})), 4);
}

TEST(Known, RowsThatAllDiffer) {
    EXPECT_EQ(fewest(cells({"AB", "AC", "AD"})), 2);
    EXPECT_EQ(fewest(cells({"AAB", "ABA", "BAA"})), 3);
}

TEST(Known, PinwheelNeedsOneExtraJoint) {
    const Field field = pieces({"aab", "deb", "dcc"}, {0, 1, 0, 1, 2});
    const Picture picture = pictureOf(field, Laying::EndGrain, true);
    EXPECT_TRUE(fewestGlueUps(picture).found.empty());
    const Locked locked = lockedPieces(picture);
    EXPECT_EQ(locked.pieces, (std::vector<int>{0, 1, 2, 4}));
    ASSERT_EQ(locked.freeing.size(), 1u);
    EXPECT_TRUE(locked.fewest);
    const Picture freed = withJoints(picture, locked.freeing);
    const SearchResult result = fewestGlueUps(freed);
    ASSERT_FALSE(result.found.empty());
    EXPECT_TRUE(result.proven);
    EXPECT_EQ(result.found.front().construction.extraJoints, locked.freeing);
    EXPECT_EQ(mistakes(result.found.front().construction, freed), "");
}

TEST(Known, ThinningServesRowsOfSeveralHeights) {
    Field field = cells({"ABAB", "BABA", "ABAB", "BABA"});
    field.rows = {Length::mm(30), Length::mm(40), Length::mm(50), Length::mm(40)};
    EXPECT_EQ(fewest(field), 3);  // two columns that differ, and the field
    field.columns = {Length::mm(30), Length::mm(40), Length::mm(50), Length::mm(35)};
    EXPECT_EQ(fewest(field), 4);
    SearchOptions thinning;
    thinning.thinning = true;
    EXPECT_EQ(fewest(field, Laying::EndGrain, true, thinning), 3);
    // Long grain: the height is only where the panel is crosscut.
    EXPECT_EQ(fewest(field, Laying::GrainDown), 3);
}

TEST(Known, PlainFieldBeyondOneSectionTakesTwo) {
    const Field plain = cells({"A"}, Length::mm(200), Length::mm(120));
    const Picture picture =
        pictureOf(plain, Laying::EndGrain, true, {{Length::mm(50), Length::mm(100)}});
    const SearchResult result = fewestGlueUps(picture);
    ASSERT_FALSE(result.found.empty());
    EXPECT_EQ(result.found.front().glueUps, 2);
    EXPECT_EQ(mistakes(result.found.front().construction, picture), "");
    EXPECT_EQ(result.found.front().construction.extraJoints, picture.extraJoints);
}

}  // namespace
}  // namespace kerfwright::searching
