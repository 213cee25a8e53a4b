// From a board to its planks: what the plan mills is what is laid, to the cubic nanometre.
#include "core/timber/cutorder.h"
#include "core/timber/demand.h"
#include "core/timber/referee.h"
#include "tests/core/glueup/boards.h"

#include <gtest/gtest.h>

#include <string>

namespace kerfwright {
namespace {

constexpr Length mm(std::int64_t count) {
    return Length::mm(count);
}

StepList stepsOf(const Board& board, const std::vector<Wood>& woods, const Shop& shop) {
    const Result<Plan> planned = plan(board, woods, shop, {});
    EXPECT_TRUE(planned) << (planned ? "" : planned.fault().text());
    return planned ? steps(*planned, board, shop) : StepList{};
}

TEST(DemandOf, IsAllTheTimberOfThePlan) {
    const std::vector<Wood> woods = test::endlessWoods(3);
    const Shop shop = test::notesShop();
    for (const Build build : {Build::EndGrain, Build::LongGrain}) {
        for (const int rail : {0, 50}) {
            Board board = test::boardOf(test::letters({"ABAB", "BABA", "CABC"}), build);
            board.border.width = mm(rail);
            board.border.wood = 2;
            const StepList steps = stepsOf(board, woods, shop);
            const Demand demand = demandOf(steps, woods);
            EXPECT_TRUE(faults(demand).empty());
            Volume all;
            for (const WantedStrips& strips : demand.strips) {
                all += volume(strips.thickness, strips.width, strips.length) * strips.count;
            }
            EXPECT_TRUE(all == steps.ledger.timberIn) << "rail " << rail;
        }
    }
}

TEST(DemandOf, IsLaidOnARackAndCut) {
    const std::vector<Wood> woods = test::endlessWoods(2);
    const Shop shop = test::notesShop();
    const Board board = test::boardOf(test::letters({"ABABABAB", "BABABABA"}));
    const Demand demand = demandOf(stepsOf(board, woods, shop), woods);
    Rack rack;
    for (const char* wood : {"wood-0", "wood-1"}) {
        for (int i = 0; i < 3; ++i) {
            const std::string label = std::string(wood) + "-" + std::to_string(i);
            rack.planks.push_back({label,
                                   wood,
                                   mm(60),
                                   mm(140 + 20 * i),
                                   mm(900),
                                   {{mm(200 + 100 * i), mm(30), mm(25), mm(20)}},
                                   1000 + 150 * i});
        }
    }
    CutRules rules = cutRules(shop);
    rules.budget = 500;
    const Layout laid = layout(rack, demand, rules);
    EXPECT_TRUE(laid.isComplete());
    EXPECT_TRUE(laid.proven);
    EXPECT_TRUE(layoutFaults(laid, rack, demand, rules).empty());
    EXPECT_FALSE(cutOrder(laid, rack, demand, rules).empty());
}

}  // namespace
}  // namespace kerfwright
