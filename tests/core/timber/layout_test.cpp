// Layouts against answers from outside, and all of them before the referee.
#include "core/timber/layout.h"
#include "core/timber/referee.h"
#include "tests/core/timber/instances.h"

#include <gtest/gtest.h>

#include <string>
#include <vector>

namespace kerfwright::timbertest {
namespace {

// Sanitizers make the search some twenty times slower.
#ifdef KERFWRIGHT_SANITIZED
constexpr bool isQuick = false;
#else
constexpr bool isQuick = true;
#endif

std::string words(const std::vector<Fault>& faults) {
    std::string all;
    for (const Fault& fault : faults) {
        all += fault.text() + "\n";
    }
    return all;
}

Layout laid(Instance instance, std::int64_t budget) {
    instance.rules.budget = budget;
    Layout result = layout(instance.rack, instance.demand, instance.rules);
    EXPECT_EQ(words(layoutFaults(result, instance.rack, instance.demand, instance.rules)), "")
        << instance.name;
    return result;
}

void expectOptimum(const Instance& instance) {
    const Layout result = laid(instance, 200'000);
    EXPECT_TRUE(result.isComplete()) << instance.name;
    EXPECT_TRUE(result.proven) << instance.name << ": " << result.cost << ", " << result.bound;
    EXPECT_EQ(result.cost, instance.optimum) << instance.name;
    EXPECT_EQ(result.gapPercent(), 0) << instance.name;
}

TEST(OutsideLayout, TakesThePublishedNumberOfStockLengths) {
    // Sources: data/onedimensional/cutting_stock_1d_optima.csv.
    expectOptimum(textbook("roll5600"));
    if (isQuick) {
        expectOptimum(textbook("roll100"));
    }
}

TEST(OutsideLayout, PacksTheBinsOfTheLibrary) {
    // Source: OR-Library, binpack1.txt (u120); the optimum stands in the head of each instance.
    const std::vector<Instance> all = binPacking();
    const std::size_t count = isQuick ? all.size() : 0;
    for (std::size_t i = 0; i < count; ++i) {
        expectOptimum(all[i]);
    }
}

TEST(OutsideLayout, LaysAllThatIsLaidInTheGuillotineCases) {
    // Source: data/guillotine. The published profit is the area of all that is wanted, in mm2: so a
    // complete layout is as good as the published one, and no better one exists.
    const std::vector<std::pair<const char*, std::int64_t>> published = {{"2evo_defects_1", 600},
                                                                         {"2nvo_defects_2", 975},
                                                                         {"2nvo_defects_3", 975},
                                                                         {"2nvo_defects_4", 1000},
                                                                         {"2nvo_trims", 143}};
    for (const auto& [folder, profit] : published) {
        const Instance instance = guillotine(folder);
        Area wanted;
        for (const WantedStrips& strips : instance.demand.strips) {
            wanted += area(strips.width, strips.length) * strips.count;
        }
        EXPECT_TRUE(wanted == area(Length::mm(1), Length::mm(1)) * profit) << folder;
        const Layout result = laid(instance, 2'000);
        EXPECT_TRUE(result.isComplete()) << folder;
        EXPECT_TRUE(result.proven) << folder;
    }
}

TEST(OutsideLayout, IsAsGoodAsTheTreeSearchOnRacksWithDefects) {
    // Sources: data/README.md, boards. The bound there was found by another program for the same
    // kind of layout, so ours must not be above the best known layout.
    const Layout lum1 = laid(boards("lum1"), isQuick ? 8'000 : 150);
    EXPECT_GE(lum1.bound, 1'874'419);
    EXPECT_LE(lum1.bound, 1'937'679);
    EXPECT_LE(lum1.cost, isQuick ? 1'969'906 : 2'300'000);
    const Layout lum3 = laid(boards("lum3"), isQuick ? 8'000 : 150);
    EXPECT_GE(lum3.bound, isQuick ? 2'927'687 : 0);
    EXPECT_LE(lum3.bound, 3'046'349);
    EXPECT_LE(lum3.cost, isQuick ? 3'046'349 : 3'400'000);
}

TEST(PlantedLayout, IsBoundedByWhatWasPlanted) {
    // By construction no layout is cheaper than the planted one, and the timber leaves nothing to
    // spare: the bound must come very near to it.
    const std::vector<int> sizes = isQuick ? std::vector<int>{10, 30, 60} : std::vector<int>{10};
    for (const int planks : sizes) {
        const Instance instance = planted(1, planks);
        const Layout result = laid(instance, isQuick ? 3'000 : 150);
        EXPECT_TRUE(result.isComplete()) << planks;
        EXPECT_LE(result.bound, instance.optimum) << planks;
        EXPECT_GE(result.cost, instance.optimum) << planks;
        if (isQuick) {
            EXPECT_GE(result.bound * 1000, instance.optimum * 999) << planks;
            EXPECT_LE(result.cost * 100, instance.optimum * (planks == 10 ? 125 : 107)) << planks;
        }
    }
}

TEST(PlantedLayout, IsFoundWhereItIsSmall) {
    for (const std::uint64_t seed : {1u, 2u, 3u}) {
        Instance instance = planted(seed, 4);
        if (isQuick) {
            expectOptimum(instance);
        }
    }
}

TEST(Layout, ProvesATypicalProject) {
    const Layout result = laid(typical(), 20'000);
    EXPECT_TRUE(result.isComplete());
    EXPECT_TRUE(result.proven);
    EXPECT_EQ(result.costIn, CostIn::Money);
    // Two of the six planks, 31.00 and 35.00.
    EXPECT_EQ(result.cost, 6600);
}

TEST(Layout, IsTheSameEveryTime) {
    const Instance instance = boards("lum1");
    const std::int64_t budget = isQuick ? 300 : 100;
    const Layout once = laid(instance, budget);
    const Layout again = laid(instance, budget);
    EXPECT_EQ(once.planks, again.planks);
    EXPECT_EQ(once.bound, again.bound);
}

TEST(Layout, TellsHowFarItIsAndStops) {
    Instance instance = isQuick ? mixed(5, 14, 60, 20) : mixed(5, 13, 30, 8);
    instance.rules.budget = 1'000'000;
    const int most = isQuick ? 12 : 4;
    int calls = 0;
    std::int64_t best = 0;
    double done = 0;
    const Layout result =
        layout(instance.rack, instance.demand, instance.rules, [&](const LayoutProgress& progress) {
            EXPECT_GE(progress.done, done);
            done = progress.done;
            if (progress.best != nullptr && progress.best->isComplete()) {
                EXPECT_TRUE(best == 0 || progress.best->cost <= best);
                best = progress.best->cost;
            }
            return ++calls < most;
        });
    EXPECT_TRUE(result.stopped);
    EXPECT_EQ(calls, most);
    EXPECT_GT(best, 0);
    EXPECT_LE(result.cost, best);
    EXPECT_EQ(words(layoutFaults(result, instance.rack, instance.demand, instance.rules)), "");
}

constexpr Length mm(std::int64_t count) {
    return Length::mm(count);
}

/// One plank of 1000 x 100 x 30 for every label.
Instance planks(const std::vector<std::string>& labels) {
    Instance instance;
    for (const std::string& label : labels) {
        instance.rack.planks.push_back({label, "oak", mm(30), mm(100), mm(1000), {}, 1000});
    }
    instance.rules.kerf = mm(3);
    return instance;
}

TEST(Layout, SaysWhatIsMissingAndThatNoneLeavesLess) {
    Instance instance = planks({"P"});
    instance.demand.strips = {{"A", "oak", mm(30), mm(97), mm(500), 2},
                              {"B", "oak", mm(30), mm(40), mm(400), 1},
                              {"C", "ash", mm(30), mm(40), mm(400), 3},
                              {"D", "oak", mm(30), mm(101), mm(400), 1, false}};
    const Layout result = laid(instance, 2'000);
    // Two A take 1003 mm: one A and the B leave less missing than nothing else.
    EXPECT_EQ(result.missing, (std::vector<int>{1, 0, 3, 1}));
    EXPECT_TRUE(result.proven);
    EXPECT_EQ(result.leastMissingVolume, result.missingVolume);
}

TEST(Layout, LaysStripsOnEdgeWhereThatIsNarrower) {
    Instance instance = planks({"P"});
    // 20 wide three fit beside each other with 30 + 3 each and a 31 left over; as they lie flat
    // two would.
    instance.demand.strips = {{"A", "oak", mm(30), mm(20), mm(900), 4},
                              {"B", "oak", mm(22), mm(28), mm(50), 4}};
    Layout result = laid(instance, 2'000);
    EXPECT_TRUE(result.isComplete());
    bool onEdge = false;
    for (const PlankSection& section : result.planks.front().sections) {
        for (const LaidStrip& strip : section.strips) {
            onEdge = onEdge || strip.onEdge;
        }
    }
    EXPECT_TRUE(onEdge);
    instance.demand.strips[1].eitherWay = false;
    result = laid(instance, 2'000);
    EXPECT_EQ(result.missing[1], 1);
}

TEST(Layout, KeepsToTheThicknessThatTheRulesAllow) {
    Instance instance = planks({"P"});
    instance.demand.strips = {{"A", "oak", mm(20), mm(50), mm(500), 1}};
    EXPECT_TRUE(laid(instance, 500).isComplete());
    instance.rules.thicker = mm(9);
    EXPECT_FALSE(laid(instance, 500).isComplete());
    instance.rules.thicker = mm(10);
    EXPECT_TRUE(laid(instance, 500).isComplete());
}

TEST(Layout, TakesOffcutsFirstAndKeepsWhatIsLong) {
    Instance instance = planks({"P", "Q", "R"});
    instance.rack.planks[2].isOffcut = true;
    instance.demand.strips = {{"A", "oak", mm(30), mm(47), mm(300), 4}};
    const Layout result = laid(instance, 2'000);
    ASSERT_EQ(result.planks.size(), 1u);
    EXPECT_EQ(result.planks[0].plank, 2);
    EXPECT_EQ(result.cost, 250);
    EXPECT_TRUE(result.proven);
    ASSERT_FALSE(result.planks[0].offcuts.empty());
    // Two sections of 300 and two kerfs from 1000.
    EXPECT_EQ(result.planks[0].offcuts.back().length, mm(394));
}

TEST(Layout, CountsTimberWhereAPriceIsNotKnown) {
    Instance instance = planks({"P", "Q"});
    instance.rack.planks[1].price = 0;
    instance.demand.strips = {{"A", "oak", mm(30), mm(47), mm(300), 1}};
    const Layout result = laid(instance, 500);
    EXPECT_EQ(result.costIn, CostIn::Volume);
    EXPECT_EQ(result.cost, 3'000);
}

TEST(Layout, OfNothingIsNothing) {
    const Layout result = laid(planks({"P"}), 100);
    EXPECT_TRUE(result.isComplete());
    EXPECT_TRUE(result.proven);
    EXPECT_EQ(result.cost, 0);
    Instance bare = planks({});
    bare.demand.strips = {{"A", "oak", mm(30), mm(47), mm(300), 1}};
    EXPECT_EQ(laid(bare, 100).missing, std::vector<int>{1});
}

}  // namespace
}  // namespace kerfwright::timbertest
