// Every recipe as it begins, through the planner and over the bench.
#include "core/board/recipe.h"

#include "core/replay/replay.h"
#include "core/wood/catalogue.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <numeric>

namespace kerfwright {
namespace {

TEST(RecipesOnTheBench, ComeOutOfTheirSteps) {
    for (const PatternInfo& info : patterns()) {
        if (info.locks) {
            continue;  // freed first, which is not the recipe's matter
        }
        std::vector<Wood> woods;
        for (int i = 0; i < info.woods; ++i) {
            woods.push_back(woodCatalogue()[static_cast<std::size_t>(i)]);
        }
        std::vector<int> order(woods.size());
        std::iota(order.begin(), order.end(), 0);
        Board board;
        board.thickness = Length::mm(40);
        board.field = layOut(usualRecipe(info.pattern, Length::mm(400), Length::mm(320),
                                         ruleStep(Unit::Millimetres), order))
                          .value();
        for (const Build build : {Build::EndGrain, Build::LongGrain}) {
            board.build = build;
            const Choices choices;
            const Result<Plan> made =
                plan(board, woods, metricShop(), choices, Notation::millimetres(3), {});
            ASSERT_TRUE(made) << info.key << ": " << made.fault().text();
            const StepList list = steps(*made, board, metricShop());
            const Proof proof = replay(list, board, choices.mergeLike, {});
            EXPECT_THAT(proof.faults, testing::IsEmpty()) << info.key;
            EXPECT_EQ(proof.width, board.field.width()) << info.key;
            EXPECT_EQ(proof.height, board.field.height()) << info.key;
            EXPECT_EQ(proof.ledger, list.ledger) << info.key;
        }
    }
}

}  // namespace
}  // namespace kerfwright
