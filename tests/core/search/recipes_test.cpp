// Every recipe as it begins: its fewest glue-ups are proven.
#include "core/board/recipe.h"
#include "core/search/locked.h"
#include "core/search/search.h"
#include "tests/core/search/pictures.h"

#include <gtest/gtest.h>

#include <map>
#include <numeric>

namespace kerfwright::searching {
namespace {

Field usual(const PatternInfo& info) {
    std::vector<int> woods(static_cast<std::size_t>(info.woods));
    std::iota(woods.begin(), woods.end(), 0);
    return layOut(usualRecipe(info.pattern, Length::mm(400), Length::mm(400),
                              ruleStep(Unit::Millimetres), woods))
        .value();
}

TEST(Recipes, AreProvenAsTheyBegin) {
    for (const PatternInfo& info : patterns()) {
        for (const bool mergeLike : {false, true}) {
            for (const Laying laying : {Laying::EndGrain, Laying::GrainDown, Laying::GrainAcross}) {
                Picture picture = pictureOf(usual(info), laying, mergeLike);
                const Locked locked = lockedPieces(picture);
                EXPECT_EQ(info.locks, !locked.pieces.empty()) << info.key;
                EXPECT_EQ(info.locks, fewestGlueUps(picture).found.empty()) << info.key;
                if (info.locks) {
                    EXPECT_TRUE(locked.fewest) << info.key;
                    picture = withJoints(picture, locked.freeing);
                }
                const SearchResult result = fewestGlueUps(picture);
                EXPECT_TRUE(result.proven) << info.key << ' ' << mergeLike;
                ASSERT_FALSE(result.found.empty()) << info.key;
                EXPECT_EQ(mistakes(result.found.front().construction, picture), "") << info.key;
            }
        }
    }
}

// One joint a tile frees a windmill: it is the smallest picture that locks.
TEST(Recipes, WindmillsTakeOneJointATile) {
    Recipe recipe = usualRecipe(Pattern::Windmill, Length::mm(400), Length::mm(400),
                                ruleStep(Unit::Millimetres), {0, 1, 2});
    for (int tiles = 1; tiles <= 3; ++tiles) {
        recipe.counts = {tiles, 2};
        const Picture picture = pictureOf(layOut(recipe).value(), Laying::EndGrain, true);
        EXPECT_EQ(lockedPieces(picture).freeing.size(), static_cast<std::size_t>(2 * tiles));
    }
}

// The counts that can be told by looking, end grain: rows that differ up to reversal, and the
// field.
TEST(Recipes, TakeAsManyGlueUpsAsTheyHaveKindsOfRows) {
    const std::map<Pattern, int> wanted{
        {Pattern::Stripes, 1},       {Pattern::Pinstripes, 1}, {Pattern::Chequer, 2},
        {Pattern::Graduated, 5},     {Pattern::Pinched, 5},    {Pattern::Plaid, 3},
        {Pattern::DiagonalSteps, 4}, {Pattern::Steps, 4},      {Pattern::MortarBricks, 2},
        {Pattern::Basket, 3},        {Pattern::Plain, 0},
    };
    for (const auto& [pattern, glueUps] : wanted) {
        const SearchResult result =
            fewestGlueUps(pictureOf(usual(patternInfo(pattern)), Laying::EndGrain, true));
        EXPECT_EQ(result.found.front().glueUps, glueUps) << patternInfo(pattern).key;
    }
}

}  // namespace
}  // namespace kerfwright::searching
