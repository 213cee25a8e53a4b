#include "core/board/recipe.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <numeric>
#include <string>
#include <vector>

namespace kerfwright {
namespace {

using ::testing::ElementsAre;
using ::testing::HasSubstr;

constexpr Length side = Length::mm(400);
constexpr Length tenth = Length::um(100);

Recipe usual(Pattern pattern, Length width = side, Length height = side,
             std::vector<int> woods = {0, 1, 2}) {
    return usualRecipe(pattern, width, height, tenth, std::move(woods));
}

/// The woods of the cells, a letter each, row by row.
std::vector<std::string> letters(const Field& field) {
    std::vector<std::string> all(field.rows.size());
    const std::vector<int> map = pieceMap(field);
    for (std::size_t cell = 0; cell < map.size(); ++cell) {
        const Piece& piece = field.pieces[static_cast<std::size_t>(map[cell])];
        all[cell / field.columns.size()] += static_cast<char>('a' + piece.wood);
    }
    return all;
}

std::string faultOf(const Recipe& recipe) {
    const Result<Field> laid = layOut(recipe);
    return laid ? "" : laid.fault().text();
}

TEST(Recipes, OfEveryPatternFillTheirRoomAndNoMore) {
    for (const PatternInfo& info : patterns()) {
        for (const Length step : {ruleStep(Unit::Millimetres), ruleStep(Unit::Inches)}) {
            const Length width = step * 4001;
            const Length height = step * 3003;
            const Recipe recipe = usualRecipe(info.pattern, width, height, step, {0, 1, 2});
            const Result<Field> field = layOut(recipe);
            ASSERT_TRUE(field) << info.key << ": " << field.fault().text();
            Board board;
            board.thickness = Length::mm(20);
            board.field = *field;
            EXPECT_TRUE(faults(board, 3).empty()) << info.key;
            // Each column and each row loses less than a step in the rounding.
            EXPECT_LE(field->width(), width) << info.key;
            EXPECT_GT(field->width(), width - step * static_cast<int>(field->columns.size() + 1))
                << info.key;
            EXPECT_LE(field->height(), height) << info.key;
            EXPECT_GT(field->height(), height - step * static_cast<int>(field->rows.size() + 1))
                << info.key;
            EXPECT_TRUE(faults(recipe, *field).empty()) << info.key;
        }
    }
}

TEST(Recipes, HaveSixToTwelveCellsToBeginWith) {
    for (const PatternInfo& info : patterns()) {
        const Field field = *layOut(usual(info.pattern));
        EXPECT_LE(field.columns.size(), 17u) << info.key;
        EXPECT_LE(field.rows.size(), 12u) << info.key;
    }
}

// Source: the bulge formula of trade practice with its worked example, W 400, N 10, A 60 degrees:
// 28.4, 35.9, 41.8, 45.9, 48.0, mirrored; the pinch is the list reversed.
TEST(Recipes, ThePinchIsTheBulgeReversed) {
    Recipe recipe = usual(Pattern::Pinched);
    recipe.counts = {10, 10, 60};
    const Field field = *layOut(recipe);
    const std::vector<Length> half{Length::um(48000), Length::um(45900), Length::um(41800),
                                   Length::um(35900), Length::um(28400)};
    std::vector<Length> wanted = half;
    wanted.insert(wanted.end(), half.rbegin(), half.rend());
    EXPECT_EQ(field.columns, wanted);
    EXPECT_EQ(field.width(), side);
}

TEST(Recipes, AnOddPinchIsMirroredAndExactToo) {
    Recipe recipe = usual(Pattern::Pinched);
    recipe.counts = {7, 5, 60};
    const Field field = *layOut(recipe);
    EXPECT_EQ(field.width(), side);
    for (std::size_t i = 0; i < 3; ++i) {
        EXPECT_EQ(field.columns[i], field.columns[6 - i]);
        EXPECT_GT(field.columns[i], field.columns[i + 1]);
    }
}

TEST(Recipes, StrongerBulgesSwellMore) {
    Recipe recipe = usual(Pattern::Graduated);
    Length before;
    for (const int degrees : {10, 40, 80}) {
        recipe.counts[2] = degrees;
        const Field field = *layOut(recipe);
        const Length swell = field.columns[3] - field.columns[0];
        EXPECT_GT(swell, before);
        before = swell;
    }
}

// Source: trade practice, 10 courses of 25 mm and nine mortar rows of 6 mm are 304 mm high.
TEST(Recipes, MortarTakesItsShareOfTheRoom) {
    Recipe recipe = usual(Pattern::MortarBricks, side, Length::mm(304));
    recipe.counts = {3, 10};
    recipe.lengths = {Length::mm(6)};
    const Field field = *layOut(recipe);
    EXPECT_EQ(field.rows[0], Length::mm(25));
    EXPECT_EQ(field.rows[1], Length::mm(6));
    EXPECT_EQ(field.height(), Length::mm(304));
}

// Source: trade practice, three strips 6 + 38 + 6 make a stick 50 high: the sum is exact, and outer
// strips are alike.
TEST(Recipes, BasketStripsAreMirroredAndTheirSumIsTheTile) {
    for (int strips = 2; strips <= 8; ++strips) {
        Recipe recipe = usual(Pattern::Basket, Length::mm(200), Length::mm(200));
        recipe.counts = {2, 2, strips};
        const Field field = *layOut(recipe);
        Length sum;
        for (int i = 0; i < strips; ++i) {
            const auto at = [&](int strip) {
                return field.columns[static_cast<std::size_t>(strip)];
            };
            EXPECT_EQ(at(i), at(strips - 1 - i));
            sum += at(i);
        }
        EXPECT_EQ(sum, Length::mm(100));
    }
}

TEST(Recipes, BricksOfAnyBondNeverTouchTheirLike) {
    for (int parts = 2; parts <= 4; ++parts) {
        Recipe recipe = usual(Pattern::Bricks);
        recipe.counts = {5, 12, parts};
        const Field field = *layOut(recipe);
        const std::vector<int> map = pieceMap(field);
        const std::size_t columns = field.columns.size();
        const auto wood = [&](std::size_t cell) {
            return field.pieces[static_cast<std::size_t>(map[cell])].wood;
        };
        for (std::size_t cell = 0; cell < map.size(); ++cell) {
            if (cell % columns + 1 < columns && map[cell] != map[cell + 1]) {
                EXPECT_NE(wood(cell), wood(cell + 1)) << parts;
            }
            if (cell + columns < map.size()) {
                EXPECT_NE(wood(cell), wood(cell + columns)) << parts << ' ' << cell;
            }
        }
    }
}

TEST(Recipes, LayWhatTheyAreCalled) {
    Recipe pins = usual(Pattern::Pinstripes);
    pins.counts = {3, 2};
    EXPECT_THAT(letters(*layOut(pins)), ElementsAre("ababababa"));
    Recipe plaid = usual(Pattern::Plaid);
    plaid.counts = {2, 2};
    EXPECT_THAT(letters(*layOut(plaid)), ElementsAre("aba", "bcb", "aba"));
    Recipe steps = usual(Pattern::Steps);
    steps.counts = {4, 5, 2};
    EXPECT_THAT(letters(*layOut(steps)), ElementsAre("abca", "bcab", "cabc", "bcab", "abca"));
    Recipe diagonal = usual(Pattern::DiagonalSteps);
    diagonal.counts = {4, 3, 2};
    EXPECT_THAT(letters(*layOut(diagonal)), ElementsAre("aabb", "abbc", "bbcc"));
    Recipe key = usual(Pattern::GreekKey);
    key.counts = {1, 2};
    EXPECT_THAT(letters(*layOut(key)),
                ElementsAre("aaaaaa", "abbbba", "abaaba", "ababba", "abaaaa", "bbbbbb", "abaaaa",
                            "ababba", "abaaba", "abbbba", "aaaaaa"));
    Recipe cabin = usual(Pattern::LogCabin);
    cabin.counts = {1, 1, 2};
    cabin.woods = {0, 1, 2, 3, 4};
    EXPECT_THAT(letters(*layOut(cabin)), ElementsAre("ddddb", "addbb", "aacbb", "aeeeb", "eeeee"));
    Recipe mill = usual(Pattern::Windmill);
    mill.counts = {1, 1};
    EXPECT_THAT(letters(*layOut(mill)), ElementsAre("aab", "bcb", "baa"));
    Recipe bands = usual(Pattern::BorderBands);
    bands.counts = {1};
    EXPECT_THAT(letters(*layOut(bands)), ElementsAre("aaaaa", "abbba", "ababa", "abbba", "aaaaa"));
    Recipe rosette = usual(Pattern::Rosettes);
    rosette.counts = {1, 1, 3};
    EXPECT_THAT(letters(*layOut(rosette)),
                ElementsAre("bbaabb", "bcaacb", "aaccaa", "aaccaa", "bcaacb", "bbaabb"));
}

TEST(Recipes, ShareFewWoodsAmongTheirRoles) {
    const auto woods = [](Pattern pattern, std::vector<int> given) {
        return usual(pattern, side, side, std::move(given)).woods;
    };
    EXPECT_THAT(woods(Pattern::LogCabin, {5, 7}), ElementsAre(5, 7, 5, 5, 7));
    EXPECT_THAT(woods(Pattern::LogCabin, {5, 7, 2}), ElementsAre(5, 7, 2, 5, 7));
    EXPECT_THAT(woods(Pattern::Bricks, {5, 7}), ElementsAre(5, 7));
    EXPECT_THAT(woods(Pattern::Chequer, {5, 7, 2}), ElementsAre(5, 7, 2));
    EXPECT_THAT(woods(Pattern::Chequer, {}), ElementsAre());
}

TEST(Recipes, NameTheNumberThatDoesNotFit) {
    Recipe recipe = usual(Pattern::Basket);
    recipe.counts = {10, 4, 7};
    EXPECT_EQ(faultOf(recipe), "Tiles across: must be from 1 to 9 with this pattern; got 10.");
    recipe.counts = {4, 4, 9};
    EXPECT_EQ(faultOf(recipe), "Strips a tile: must be from 2 to 8 with this pattern; got 9.");
    recipe.counts = {4, 4};
    EXPECT_EQ(faultOf(recipe), "Counts: must be 3 with this pattern; got 2.");
    recipe = usual(Pattern::BorderBands);
    recipe.lengths[1] = Length::mm(190);
    EXPECT_EQ(faultOf(recipe), "Column 5: must come out from 2 mm to 1500 mm wide; got -40 mm.");
    recipe.lengths[1] = Length::mm(1);
    EXPECT_EQ(faultOf(recipe), "Margin: must be from 2 mm to 1500 mm; got 1 mm.");
    recipe = usual(Pattern::Chequer);
    recipe.width = Length::mm(3001);
    EXPECT_EQ(faultOf(recipe), "Field width: must be from 2 mm to 3000 mm; got 3001 mm.");
    recipe.width = Length::mm(15);
    EXPECT_EQ(faultOf(recipe), "Column 1: must come out from 2 mm to 1500 mm wide; got 1.8 mm.");
    recipe = usual(Pattern::Chequer);
    recipe.step = Length();
    EXPECT_THAT(faultOf(recipe), HasSubstr("Step: must be from"));
    recipe = usual(Pattern::Chequer, side, side, std::vector<int>(9, 0));
    EXPECT_EQ(faultOf(recipe), "Woods: must be at most 8; got 9.");
}

TEST(Recipes, StandForSquares) {
    for (const PatternInfo& info : patterns()) {
        for (const int squares : {1, 2, 8, 64}) {
            const Result<Recipe> recipe =
                recipeOfSquares(info.pattern, squares, squares, side, side, tenth, {0, 1, 2});
            ASSERT_TRUE(recipe) << info.key << ' ' << squares << ": " << recipe.fault().text();
            EXPECT_TRUE(layOut(*recipe)) << info.key;
            EXPECT_EQ(recipe->width, side);
        }
    }
    EXPECT_EQ(recipeOfSquares(Pattern::Basket, 12, 9, side, side, tenth, {0})->counts,
              (std::vector<int>{4, 3, 3}));
    const Result<Recipe> none =
        recipeOfSquares(Pattern::Chequer, 8, 8, Length::mm(1), side, tenth, {0});
    ASSERT_FALSE(none);
    EXPECT_EQ(none.fault().entry, "Field width");
}

TEST(Recipes, FollowAFieldThatIsOnlyLargerOrLonger) {
    for (const PatternInfo& info : patterns()) {
        const Recipe recipe = usual(info.pattern);
        EXPECT_EQ(refitted(recipe, *layOut(recipe)), recipe) << info.key;
        Recipe larger = recipe;
        larger.width = Length::mm(480);
        const Field field = *layOut(larger);
        const std::optional<Recipe> found = refitted(recipe, field);
        ASSERT_TRUE(found) << info.key;
        EXPECT_EQ(*layOut(*found), field) << info.key;
    }
    const Recipe chequer = usual(Pattern::Chequer, side, side, {0, 1});
    const Field laid = *layOut(chequer);
    const std::optional<Recipe> more = refitted(chequer, resized(laid, 11, 8));
    ASSERT_TRUE(more);
    EXPECT_EQ(more->counts, (std::vector<int>{11, 8}));
    EXPECT_EQ(more->width, Length::mm(550));
    Recipe mortar = usual(Pattern::MortarBricks);
    mortar.width = Length::mm(3 * 78 + 42);
    mortar.height = Length::mm(6 * 40 + 5 * 6);
    mortar.lengths = {Length::mm(6)};
    const Field bricks = *layOut(mortar);
    const std::optional<Recipe> twice =
        refitted(mortar, scaled(bricks, bricks.columns[0] * 2, bricks.rows[0] * 2, tenth));
    ASSERT_TRUE(twice);
    EXPECT_EQ(twice->lengths, std::vector<Length>{Length::mm(12)});
}

TEST(Recipes, GoOnWithMoreSquaresOfTheSameSize) {
    std::size_t followed = 0;
    for (const PatternInfo& info : patterns()) {
        std::vector<int> woods(static_cast<std::size_t>(info.woods));
        std::iota(woods.begin(), woods.end(), 0);
        const Recipe recipe =
            usualRecipe(info.pattern, Length::mm(400), Length::mm(400), Length::mm(1), woods);
        const Field before = layOut(recipe).value();
        const int columns = static_cast<int>(before.columns.size());
        const int rows = static_cast<int>(before.rows.size());
        EXPECT_EQ(layOut(recounted(recipe, columns, rows).value_or(recipe)).value(), before)
            << info.key;
        const std::optional<Recipe> more = recounted(recipe, columns + 2, rows);
        if (!more) {
            continue;
        }
        ++followed;
        const Field after = layOut(*more).value();
        EXPECT_EQ(after.columns.size(), before.columns.size() + 2) << info.key;
        EXPECT_EQ(after.rows, before.rows) << info.key;
        EXPECT_GT(after.width(), before.width()) << info.key;
    }
    EXPECT_GE(followed, 4U);
    EXPECT_FALSE(recounted(
        usualRecipe(Pattern::Chequer, Length::mm(400), Length::mm(400), Length::mm(1), {0, 1}), 0,
        8));
}

TEST(Recipes, AreNoneOfAFieldThatWentItsOwnWay) {
    const Recipe recipe = usual(Pattern::Chequer, side, side, {0, 1});
    Field field = *layOut(recipe);
    field.pieces[3].wood = 0;
    EXPECT_FALSE(refitted(recipe, field));
    const std::vector<Fault> found = faults(recipe, field);
    ASSERT_EQ(found.size(), 1u);
    EXPECT_EQ(found.front().entry, "Field");
    EXPECT_FALSE(refitted(recipe, withColumnJointMoved(*layOut(recipe), 2, Length::mm(1))));
    EXPECT_FALSE(refitted(recipe, withMerged(*layOut(recipe), 0, 0, 2, 2)));
}

}  // namespace
}  // namespace kerfwright
