// Fields that grow, and the largest board that a rack allows.
#include "core/bench/largestboard.h"
#include "core/board/grown.h"
#include "core/timber/demand.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace kerfwright {
namespace {

const Notation mm = Notation::millimetres();

std::vector<Wood> twoWoods() {
    return {*findWood(woodCatalogue(), "hard-maple"), *findWood(woodCatalogue(), "black-walnut")};
}

Recipe chequer() {
    return usualRecipe(Pattern::Chequer, Length::mm(320), Length::mm(320), Length::mm(1), {0, 1});
}

TEST(Grown, SquaresGrowStepByStepAndKeepTheirRecipe) {
    const Field field = layOut(chequer()).value();
    const auto fields = grownFields(field, chequer(), Growth::Squares, Length::mm(1), mm);
    ASSERT_GT(fields.size(), 100u);
    EXPECT_EQ(fields.front().words, "squares of 5 mm");
    for (std::size_t i = 1; i < fields.size(); ++i) {
        ASSERT_EQ(fields[i].field.columns[0] - fields[i - 1].field.columns[0], Length::mm(1));
    }
    const GrownField& larger = fields[37];  // 42 mm
    EXPECT_EQ(larger.field.width(), Length::mm(42 * 8));
    ASSERT_TRUE(larger.recipe.has_value());
    EXPECT_EQ(layOut(*larger.recipe).value(), larger.field);
}

TEST(Grown, ColumnsOfOtherWidthsFollowInProportion) {
    Field field = layOut(chequer()).value();
    field.columns[0] = Length::mm(80);
    const auto fields = grownFields(field, std::nullopt, Growth::Squares, Length::mm(1), mm);
    const auto found = std::find_if(fields.begin(), fields.end(), [](const GrownField& grown) {
        return grown.field.columns[1] == Length::mm(20);
    });
    ASSERT_NE(found, fields.end());
    EXPECT_EQ(found->field.columns[0], Length::mm(40));
}

TEST(Grown, CellsOfARecipeKeepTheirSize) {
    const Field field = layOut(chequer()).value();
    const auto fields = grownFields(field, chequer(), Growth::Cells, Length::mm(1), mm);
    ASSERT_GT(fields.size(), 10u);
    for (const GrownField& grown : fields) {
        EXPECT_EQ(grown.field.columns[0], Length::mm(40));
        EXPECT_EQ(grown.field.columns.size(), grown.field.rows.size());
        ASSERT_TRUE(grown.recipe.has_value());
        EXPECT_EQ(layOut(*grown.recipe).value(), grown.field);
    }
}

TEST(Grown, APlainGridGoesOnAsItBegan) {
    Field field = layOut(chequer()).value();
    const auto fields = grownFields(field, std::nullopt, Growth::Cells, Length::mm(1), mm);
    const auto nine = std::find_if(fields.begin(), fields.end(), [](const GrownField& grown) {
        return grown.field.columns.size() == 9;
    });
    ASSERT_NE(nine, fields.end());
    EXPECT_EQ(nine->words, "9 × 9 squares");
    for (const Piece& piece : nine->field.pieces) {
        const auto same =
            std::find_if(field.pieces.begin(), field.pieces.end(), [&](const Piece& other) {
                return other.row == piece.row % 2 && other.column == piece.column % 2;
            });
        EXPECT_EQ(piece.wood, same->wood);
    }
    field.pieces.erase(field.pieces.begin() + 1);
    field.pieces.front().across = 2;
    EXPECT_TRUE(grownFields(field, std::nullopt, Growth::Cells, Length::mm(1), mm).empty());
}

TEST(LargestBoard, FillsTheRackAndTheNextSizeDoesNotFit) {
    const std::vector<Wood> woods = twoWoods();
    Board board;
    board.field = layOut(chequer()).value();
    board.thickness = Length::mm(38);
    Timber timber;
    for (const Wood& wood : woods) {
        timber.rack.planks.push_back(
            {wood.key, wood.key, Length::mm(60), Length::mm(180), Length::mm(700)});
    }
    const Shop shop = metricShop();
    const auto fields = grownFields(board.field, chequer(), Growth::Squares, Length::mm(1), mm);
    const Result<LargestBoard> largest =
        largestBoard(board, fields, woods, shop, {}, mm, {}, timber);
    ASSERT_TRUE(largest) << largest.fault().text();
    EXPECT_TRUE(largest->layout.isComplete());
    EXPECT_TRUE(largest->isSure);
    const auto at = std::find_if(fields.begin(), fields.end(), [&](const GrownField& grown) {
        return grown.words == largest->field.words;
    });
    const auto complete = [&](const GrownField& grown) {
        Board sized = board;
        sized.field = grown.field;
        const Result<Job> job = makeJob(sized, woods, shop, {}, mm);
        return job.ok() &&
               layout(timber.rack, demandOf(job->steps, woods), cutRules(shop, timber.sawing))
                   .isComplete();
    };
    EXPECT_TRUE(complete(*at));
    EXPECT_FALSE(complete(*(at + 1)));
}

TEST(LargestBoard, SaysWhyNothingCanBeMade) {
    Board board;
    board.field = layOut(chequer()).value();
    board.thickness = Length::mm(38);
    const auto fields = grownFields(board.field, chequer(), Growth::Squares, Length::mm(1), mm);
    const Result<LargestBoard> none =
        largestBoard(board, fields, twoWoods(), metricShop(), {}, mm, {}, Timber());
    ASSERT_FALSE(none);
    EXPECT_EQ(none.fault().entry, "Rack");
    EXPECT_NE(none.fault().text().find("no plank of "), std::string::npos) << none.fault().text();
    EXPECT_FALSE(largestBoard(board, {}, twoWoods(), metricShop(), {}, mm, {}, Timber()));
}

}  // namespace
}  // namespace kerfwright
