#include "core/timber/worth.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>
#include <vector>

namespace kerfwright {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;

constexpr Length mm(std::int64_t count) {
    return Length::mm(count);
}

std::vector<Wood> woods() {
    std::vector<Wood> all{*findWood(woodCatalogue(), "hard-maple"),
                          *findWood(woodCatalogue(), "cherry")};
    all[0].price = {100'000};
    all[1].price = {};
    return all;
}

Plank plank(const char* label, const char* wood, std::int64_t price) {
    Plank made;
    made.label = label;
    made.wood = wood;
    made.thickness = mm(50);
    made.width = mm(100);
    made.length = mm(2000);
    made.price = price;
    return made;
}

TEST(TimberWorth, TakesWholePlanksAtTheirOwnPriceOrAtThatOfTheirWood) {
    const Rack rack{{plank("P1", "hard-maple", 1500), plank("P2", "hard-maple", 0),
                     plank("P3", "cherry", 0), plank("P4", "hard-maple", 2500),
                     plank("P5", "hard-maple", 9900)}};
    Layout cut;
    cut.planks = {
        {0, {}, {{mm(0), mm(0), mm(900), mm(100)}}}, {1, {}, {}}, {2, {}, {}}, {3, {}, {}}};
    const TimberCost cost = timberCost(rack, cut, nullptr, woods(), Notation::millimetres());
    ASSERT_EQ(cost.lines.size(), 3U);
    EXPECT_EQ(cost.boards, 1);
    EXPECT_EQ(cost.lines[0].wood, "Hard maple");
    EXPECT_EQ(cost.lines[0].words, "from the rack: 2 planks, P1, P4");
    EXPECT_EQ(cost.lines[0].amount, 4000);  // the offcut is not taken off
    EXPECT_EQ(cost.lines[0].price, Price());
    EXPECT_EQ(cost.lines[1].words, "from the rack: 1 plank, P2");
    EXPECT_EQ(cost.lines[1].amount, 1000);  // 0.01 m3 at 1000.00
    EXPECT_EQ(cost.lines[1].price, Price{100'000});
    EXPECT_EQ(cost.lines[1].volume, volume(mm(50), mm(100), mm(2000)));
    EXPECT_EQ(cost.lines[2].wood, "Cherry");
    EXPECT_EQ(cost.lines[2].amount, std::nullopt);
    EXPECT_THAT(cost.missing, IsEmpty());
}

TEST(TimberWorth, SaysWhatHasNoTimber) {
    Layout cut;
    cut.missing = {0, 2, 1};
    EXPECT_THAT(timberCost({}, cut, nullptr, woods(), Notation::millimetres()).missing,
                ElementsAre("3 strips for which the rack has no timber"));
    ShoppingList list;
    list.impossible = {1, 0};
    EXPECT_THAT(timberCost({}, cut, &list, woods(), Notation::millimetres()).missing,
                ElementsAre("1 strip that no plank of the yard can give"));
}

// A strip of 40 x 40 x 900 mm out of the yard's own planks: the whole plank is paid for.
TEST(TimberWorth, BuysWhatTheShoppingListSays) {
    const Demand demand{{{"A1", "hard-maple", mm(40), mm(40), mm(900), 2},
                         {"A2", "cherry", mm(40), mm(40), mm(900), 1}}};
    const ShoppingList list = shopping(demand, metricYard(), woods(), cutRules(metricShop()));
    ASSERT_FALSE(list.lines.empty());
    const TimberCost cost = timberCost({}, {}, &list, woods(), Notation::millimetres(), 3);
    EXPECT_EQ(cost.boards, 3);
    ASSERT_EQ(cost.lines.size(), list.lines.size());
    std::int64_t maple = 0;
    for (std::size_t i = 0; i < cost.lines.size(); ++i) {
        const ShoppingLine& bought = list.lines[i];
        EXPECT_EQ(cost.lines[i].amount, bought.price);
        EXPECT_EQ(cost.lines[i].volume, bought.charged);
        EXPECT_EQ(cost.lines[i].words,
                  std::to_string(bought.count) + (bought.count == 1 ? " plank " : " planks ") +
                      formatBare(bought.thickness, Notation::millimetres()) + " × " +
                      formatBare(bought.width, Notation::millimetres()) + " × " +
                      format(bought.length, Notation::millimetres()) + ", bought");
        EXPECT_EQ(cost.lines[i].wood == "Cherry", !cost.lines[i].amount.has_value());
        maple += cost.lines[i].amount.value_or(0);
    }
    // More than the strips alone: 2 x 0.00144 m3 at 1000.00 are 2.88.
    EXPECT_GT(maple, 288);
    EXPECT_THAT(cost.missing, IsEmpty());
}

// All strips of a small job: the plank on the rack and whatever had to be bought are both there.
TEST(TimberWorth, TakesAllThatAPlanCutsAndBuys) {
    Demand demand{{{"A1", "hard-maple", mm(40), mm(40), mm(900), 6}}};
    Timber timber = newTimber(Unit::Millimetres);
    timber.rack.planks = {plank("P1", "hard-maple", 0), plank("P2", "hard-maple", 4321)};
    const TimberPlan plan = planTimber(demand, woods(), metricShop(), timber).value();
    ASSERT_FALSE(plan.layout.planks.empty());
    const TimberCost cost = timberCost(plan, woods(), Notation::millimetres());
    std::int64_t sum = 0;
    for (const TimberCostLine& line : cost.lines) {
        sum += line.amount.value_or(0);
        // The price that a plank was given is that of its wood, and told so.
        if (line.words == "from the rack: 1 plank, P1") {
            EXPECT_EQ(line.price, Price{100'000});
        }
    }
    EXPECT_EQ(sum, *plan.rackCost + plan.shopping.price.value_or(0));
}

TEST(TimberWorth, TellsWhatTheYardChargesBeyondTheMeasure) {
    ShoppingList list;
    list.lines.push_back({"cherry", Length::inch(1), Length::inch(25, 4), Length::inch(96), 2,
                          volume(Length::inch(1), Length::inch(25, 4), Length::inch(96)) * 2,
                          volume(Length::inch(1), Length::inch(7), Length::inch(96)) * 2, 4200});
    const TimberCost cost = timberCost({}, {}, &list, woods(), Notation::inches());
    ASSERT_EQ(cost.lines.size(), 1U);
    EXPECT_EQ(cost.lines[0].words,
              "2 planks 1 × 6 1/4 × 96 in, bought and charged as 9.3 board feet");
}

}  // namespace
}  // namespace kerfwright
