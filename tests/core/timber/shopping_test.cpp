#include "core/timber/largest.h"
#include "core/timber/referee.h"
#include "core/timber/shopping.h"
#include "tests/core/timber/instances.h"

#include <gtest/gtest.h>

#include <cmath>
#include <string>
#include <vector>

namespace kerfwright::timbertest {
namespace {

constexpr Length mm(std::int64_t count) {
    return Length::mm(count);
}

constexpr Length in(std::int64_t count, std::int64_t parts = 1) {
    return Length::inch(count, parts);
}

double feet(Volume volume) {
    return volume.toBoardFeet();
}

TEST(Tally, IsThePublishedBoardMeasure) {
    // Source: trade guide, thickness x width x length in inches over 144.
    Tallying tallying(Tally::BoardMeasure);
    EXPECT_DOUBLE_EQ(feet(tallying.charged(in(1), in(9), in(96))), 6);
    EXPECT_DOUBLE_EQ(feet(tallying.charged(in(3, 2), in(9), in(96))), 9);
    // Source: trade guides, stock thinner than 1 in is charged as 1 in.
    EXPECT_DOUBLE_EQ(feet(tallying.charged(in(3, 4), in(9), in(96))), 6);
}

TEST(Tally, RoundsTheSurfaceFirst) {
    // Sources: rules of a hardwood lumber association as told by a grading guide, 6 1/4 in x 8 ft
    // of 8/4 is a surface of 4 and 8 board feet; by a table of surfaces, 6 1/2 x 8: 4, 8 x 12: 8,
    // 10 x 13: 11.
    Tallying tallying(Tally::SurfaceMeasure);
    EXPECT_DOUBLE_EQ(feet(tallying.charged(in(2), in(25, 4), in(96))), 8);
    EXPECT_DOUBLE_EQ(feet(tallying.charged(in(1), in(13, 2), in(96))), 4);
    EXPECT_DOUBLE_EQ(feet(tallying.charged(in(1), in(8), in(144))), 8);
    EXPECT_DOUBLE_EQ(feet(tallying.charged(in(1), in(10), in(156))), 11);
}

TEST(Tally, OfExportsRoundsHalvesInTurn) {
    // Source: the grading guide, 5 1/4 in x 8 1/2 ft tallies 5 x 8.
    Tallying tallying(Tally::Export);
    EXPECT_DOUBLE_EQ(feet(tallying.charged(in(1), in(21, 4), in(102))), 5 * 8 / 12.0);
    EXPECT_DOUBLE_EQ(feet(tallying.charged(in(1), in(11, 2), in(96))), 6 * 8 / 12.0);
    EXPECT_DOUBLE_EQ(feet(tallying.charged(in(1), in(11, 2), in(96))), 5 * 8 / 12.0);
    EXPECT_DOUBLE_EQ(feet(tallying.charged(in(1), in(11, 2), in(96))), 6 * 8 / 12.0);
}

TEST(Tally, OfRetailYardsRoundsUp) {
    // Source: a yard's guide, width up to the inch, length up to the foot where more than 3 in
    // over, odd thickness up to the next that is stocked.
    Tallying tallying(Tally::Retail, {in(1), in(3, 2), in(2)});
    EXPECT_DOUBLE_EQ(feet(tallying.charged(in(1), in(25, 4), in(99))), 7 * 8 / 12.0);
    EXPECT_DOUBLE_EQ(feet(tallying.charged(in(1), in(6), in(100))), 6 * 9 / 12.0);
    EXPECT_DOUBLE_EQ(feet(tallying.charged(in(9, 8), in(6), in(96))), 1.5 * 6 * 8 / 12.0);
    EXPECT_EQ(Tallying(Tally::Exact).charged(mm(26), mm(150), mm(2'000)),
              volume(mm(26), mm(150), mm(2'000)));
    EXPECT_EQ(tallies().size(), 5u);
}

TEST(Waste, IsDividedByAndNotMultiplied) {
    // Source: a trade article, 100 net at 30 % waste needs 142.86, not 130; adding 30 % is a waste
    // of 23 %.
    const Volume net = volume(mm(100), mm(100), mm(100));
    EXPECT_NEAR(withWaste(net, 30).toCubicMetres() / net.toCubicMetres(), 1.4286, 1e-4);
    EXPECT_EQ(withWaste(net, 0), net);
    EXPECT_NEAR(wastePercent(net, net + volume(mm(30), mm(100), mm(100))), 23.08, 0.01);
    EXPECT_EQ(wastePercent(Volume(), Volume()), 0);
    EXPECT_EQ(usualWastes().size(), 3u);
}

Wood wood(const std::string& key, std::int64_t perCubicMetre) {
    Wood wood;
    wood.key = key;
    wood.price = {perCubicMetre};
    return wood;
}

CutRules rules() {
    CutRules rules;
    rules.kerf = mm(3);
    rules.budget = 400;
    return rules;
}

void expectAddedUp(const ShoppingList& list, const Demand& demand, const CutRules& rules) {
    const std::vector<Fault> faults = layoutFaults(list.layout, list.planks, demand, rules);
    EXPECT_TRUE(faults.empty()) << faults.front().text();
    Volume all;
    int count = 0;
    for (const ShoppingLine& line : list.lines) {
        all += line.volume;
        count += line.count;
    }
    EXPECT_EQ(all, list.volume);
    EXPECT_EQ(static_cast<std::size_t>(count), list.planks.planks.size());
    EXPECT_GE(list.volume, list.net);
}

TEST(Shopping, BuysWholePlanksOfTheThinnestThatServe) {
    Demand demand;
    demand.strips = {{"A", "oak", mm(24), mm(47), mm(490), 8, false},
                     {"B", "ash", mm(45), mm(60), mm(900), 2, false}};
    const Yard yard{{mm(26), mm(52)}, {mm(100), mm(150)}, {mm(1'000), mm(2'000)}, Tally::Exact};
    const ShoppingList list =
        shopping(demand, yard, {wood("oak", 2'000'00), wood("ash", 1'000'00)}, rules());
    expectAddedUp(list, demand, rules());
    // Oak: two in 100, in sections of 490: 2 m x 100 x 26 hold all eight. Ash: both beside each
    // other on 150, which is less than 2 m of 100.
    ASSERT_EQ(list.lines.size(), 2u);
    EXPECT_EQ(list.lines[0].wood, "oak");
    EXPECT_EQ(list.lines[0].thickness, mm(26));
    EXPECT_EQ(list.lines[0].width, mm(100));
    EXPECT_EQ(list.lines[0].volume, volume(mm(26), mm(100), mm(2'000)));
    EXPECT_EQ(list.lines[0].price, 10'40);
    EXPECT_EQ(list.lines[1].thickness, mm(52));
    EXPECT_EQ(list.lines[1].volume, volume(mm(52), mm(150), mm(1'000)));
    EXPECT_EQ(list.price, 10'40 + 7'80);
    EXPECT_TRUE(list.proven);
    EXPECT_EQ(list.impossible, (std::vector<int>{0, 0}));
}

TEST(Shopping, SaysWhatNoPlankOfTheYardCanGive) {
    Demand demand;
    demand.strips = {{"A", "oak", mm(24), mm(47), mm(2'100), 3},
                     {"B", "oak", mm(80), mm(90), mm(300), 1},
                     {"C", "oak", mm(24), mm(47), mm(300), 1}};
    const Yard yard{{mm(26)}, {mm(100)}, {mm(1'000), mm(2'000)}, Tally::Exact};
    const ShoppingList list = shopping(demand, yard, {}, rules());
    expectAddedUp(list, demand, rules());
    EXPECT_EQ(list.impossible, (std::vector<int>{3, 1, 0}));
    EXPECT_EQ(list.price, std::nullopt);
    ASSERT_EQ(list.lines.size(), 1u);
    EXPECT_EQ(list.lines[0].length, mm(1'000));
}

TEST(Shopping, BuysWhatTheRackIsShortOf) {
    Instance instance = typical();
    instance.rack.planks.resize(1);
    instance.rules.budget = 1'000;
    const Layout short_ = layout(instance.rack, instance.demand, instance.rules);
    ASSERT_FALSE(short_.isComplete());
    const Demand missing = missingOf(short_, instance.demand);
    ASSERT_FALSE(missing.strips.empty());
    for (const Yard& yard : {metricYard(), quarterYard()}) {
        EXPECT_TRUE(faults(yard).empty());
        const ShoppingList list = shopping(missing, yard, {wood("oak", 1'500'00)}, instance.rules);
        expectAddedUp(list, missing, instance.rules);
        EXPECT_TRUE(list.layout.isComplete());
        EXPECT_GT(list.price.value_or(0), 0);
        EXPECT_EQ(list.charged == list.volume, yard.tally == Tally::Exact);
    }
}

TEST(Yard, NamesWhatIsWrong) {
    Yard yard = metricYard();
    yard.widths.clear();
    yard.lengths.push_back(Length());
    EXPECT_EQ(faults(yard).size(), 2u);
}

TEST(Largest, IsTheLastThatTheRackSuffices) {
    Instance instance;
    instance.rules = rules();
    instance.rack.planks = {{"P", "oak", mm(30), mm(100), mm(1'000), {}, 100},
                            {"Q", "oak", mm(30), mm(100), mm(1'000), {}, 100}};
    // Four strips of 400: two to a section, so that widths up to 48 fit (2 x 48 + 3 = 99).
    int calls = 0;
    const DemandAt squares = [&calls](int size) -> Result<Demand> {
        ++calls;
        if (size > 90) {
            return Fault{"Square", "must be at most 120 mm", std::to_string(size + 30)};
        }
        Demand demand;
        demand.strips = {{"A", "oak", mm(30), mm(30 + size), mm(400), 8, false}};
        return demand;
    };
    const std::optional<Largest> largest = largestFrom(instance.rack, instance.rules, 100, squares);
    ASSERT_TRUE(largest);
    EXPECT_EQ(largest->size, 18);
    EXPECT_TRUE(largest->isSure);
    EXPECT_TRUE(largest->layout.isComplete());
    EXPECT_LE(calls, 10);
    Rack little = instance.rack;
    little.planks.resize(1);
    little.planks[0].length = mm(100);
    EXPECT_FALSE(largestFrom(little, instance.rules, 100, squares));
}

TEST(Largest, CountsRowsAsWellAndCanBeStopped) {
    Instance instance = typical();
    instance.rules.budget = 200;
    const DemandAt rows = [&instance](int size) -> Result<Demand> {
        Demand demand = instance.demand;
        for (WantedStrips& strips : demand.strips) {
            strips.count = strips.count * (size + 1) / 2;
        }
        return demand;
    };
    const std::optional<Largest> largest = largestFrom(instance.rack, instance.rules, 20, rows);
    ASSERT_TRUE(largest);
    EXPECT_GE(largest->size, 1);
    EXPECT_LT(largest->size, 19);
    EXPECT_FALSE(largestFrom(instance.rack, instance.rules, 20, rows,
                             [](const LayoutProgress&) { return false; }));
}

}  // namespace
}  // namespace kerfwright::timbertest
