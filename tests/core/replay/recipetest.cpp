// Every recipe as it begins, through the planner and over the bench: by rows or columns, and as the
// search puts it together.
#include "core/board/recipe.h"

#include "core/glueup/constructions.h"
#include "core/glueup/deep.h"
#include "core/replay/replay.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <numeric>

namespace kerfwright {
namespace {

using ::testing::IsEmpty;

void comesOut(const Result<Plan>& made, const Board& board, const std::string& name) {
    ASSERT_TRUE(made) << name << ": " << made.fault().text();
    const StepList list = steps(*made, board, metricShop());
    const Proof proof = replay(list, board, false, {});
    EXPECT_THAT(proof.faults, IsEmpty()) << name;
    EXPECT_EQ(proof.width, board.field.width()) << name;
    EXPECT_EQ(proof.height, board.field.height()) << name;
    EXPECT_EQ(proof.ledger, list.ledger) << name;
}

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
        board.field = layOut(usualRecipe(info.pattern, Length::mm(400), Length::mm(400),
                                         ruleStep(Unit::Millimetres), order))
                          .value();
        for (const Build build : {Build::EndGrain, Build::LongGrain}) {
            board.build = build;
            const std::string name(info.key);
            comesOut(plan(board, woods, metricShop(), {}, Notation::millimetres(3), {}), board,
                     name);
            const Proposals found = proposals(board, woods, metricShop(), {false, 0, 0});
            EXPECT_FALSE(found.all.empty()) << name;
            for (const Proposal& each : found.all) {
                comesOut(planOf(each.construction, each.laying, board, woods, metricShop()), board,
                         name + ", " + each.name);
            }
        }
    }
}

}  // namespace
}  // namespace kerfwright
