#include "core/bench/job.h"
#include "core/board/patterns.h"

#include <gmock/gmock.h>

namespace kerfwright {
namespace {

using testing::HasSubstr;

std::vector<Wood> twoWoods() {
    return {*findWood(woodCatalogue(), "hard-maple"), *findWood(woodCatalogue(), "black-walnut")};
}

Board chequerBoard() {
    Board board;
    board.thickness = Length::mm(40);
    board.field =
        layOut({Pattern::Chequer, 10, 10, Length::mm(45), Length::mm(45), {0, 1}}).value();
    board.border = {Length::mm(50), 1};
    return board;
}

TEST(Job, HoldsAPlanThatTheBenchCarriedOut) {
    const Result<Job> job =
        makeJob(chequerBoard(), twoWoods(), metricShop(), {}, Notation::millimetres());
    ASSERT_TRUE(job.ok()) << job.fault().text();
    EXPECT_TRUE(job->proof.ok());
    EXPECT_EQ(job->proof.ledger, job->steps.ledger);
    EXPECT_EQ(job->totals.width, Length::mm(550));
    EXPECT_EQ(job->totals.height, Length::mm(550));
    EXPECT_EQ(job->totals.thickness, Length::mm(40));
}

TEST(Job, WeighsTheBoardWoodByWoodAtTheMoistureItIsBuiltAt) {
    // Reckoned here by hand: half of a 450 x 450 x 40 field of each wood, the border of the second.
    const std::vector<Wood> woods = twoWoods();
    Conditions conditions;
    conditions.climate = {12, 6, 16};  // densities are those at 12 %
    const Result<Job> job =
        makeJob(chequerBoard(), woods, metricShop(), {}, Notation::millimetres(), conditions);
    ASSERT_TRUE(job.ok()) << job.fault().text();
    const double field = 0.45 * 0.45 * 0.04;
    const double border = (0.55 * 0.55 - 0.45 * 0.45) * 0.04;
    EXPECT_NEAR(job->totals.weightKg,
                field / 2 * woods[0].density + (field / 2 + border) * woods[1].density, 1e-6);
    EXPECT_NEAR(job->totals.yieldPercent,
                100 * 0.55 * 0.55 * 0.04 / job->totals.timberIn.toCubicMetres(), 1e-6);
}

TEST(Job, SaysNothingOfTheWeightWhereADensityIsUnknown) {
    std::vector<Wood> woods = twoWoods();
    woods[1].density = 0;
    const Result<Job> job =
        makeJob(chequerBoard(), woods, metricShop(), {}, Notation::millimetres());
    ASSERT_TRUE(job.ok()) << job.fault().text();
    EXPECT_EQ(job->totals.weightKg, 0);
}

// 2 000.00 and 3 500.00 for a cubic metre; the volumes are those of the step list.
TEST(Job, AddsUpWhatTheTimberCosts) {
    std::vector<Wood> woods = twoWoods();
    woods[0].price = {200'000};
    const auto priced = [&] {
        return makeJob(chequerBoard(), woods, metricShop(), {}, Notation::millimetres()).value();
    };
    const Job half = priced();
    ASSERT_TRUE(half.totals.costByWood[0].has_value());
    EXPECT_FALSE(half.totals.costByWood[1].has_value());
    EXPECT_FALSE(half.totals.cost.has_value());
    woods[1].price = {350'000};
    const Job whole = priced();
    const Totals& totals = whole.totals;
    ASSERT_TRUE(totals.cost.has_value());
    EXPECT_EQ(*totals.cost, *totals.costByWood[0] + *totals.costByWood[1]);
    EXPECT_NEAR(static_cast<double>(*totals.cost),
                totals.timberByWood[0].toCubicMetres() * 200'000 +
                    totals.timberByWood[1].toCubicMetres() * 350'000,
                1.0);
}

TEST(Job, RefusesAClimateThatCannotBe) {
    Conditions conditions;
    conditions.climate.build = 31;
    const Result<Job> job =
        makeJob(chequerBoard(), twoWoods(), metricShop(), {}, Notation::millimetres(), conditions);
    ASSERT_FALSE(job.ok());
    EXPECT_EQ(job.fault().entry, "Moisture when built");
}

TEST(Job, TimberByWoodAddsUp) {
    const Result<Job> job =
        makeJob(chequerBoard(), twoWoods(), metricShop(), {}, Notation::millimetres());
    ASSERT_TRUE(job.ok()) << job.fault().text();
    EXPECT_EQ(job->totals.timberByWood[0] + job->totals.timberByWood[1], job->totals.timberIn);
}

TEST(Job, RefusesABadBoardInTheUnitsOfTheMaker) {
    Board board = chequerBoard();
    board.thickness = Length::inch(1, 64);
    const Result<Job> job = makeJob(board, twoWoods(), metricShop(), {}, Notation::inches());
    ASSERT_FALSE(job.ok());
    EXPECT_EQ(job.fault().entry, "Thickness");
    EXPECT_EQ(job.fault().value, "1/64 in");
}

TEST(Job, RefusesABadShop) {
    Shop shop = metricShop();
    shop.kerf = -Length::inch(1, 8);
    const Result<Job> job = makeJob(chequerBoard(), twoWoods(), shop, {}, Notation::inches());
    ASSERT_FALSE(job.ok());
    EXPECT_EQ(job.fault().entry, "Kerf");
    EXPECT_THAT(job.fault().text(), HasSubstr("-1/8 in"));
}

}  // namespace
}  // namespace kerfwright
