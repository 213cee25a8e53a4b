// That the instances are what their names say: a wrong one would prove nothing.
#include "tests/core/timber/instances.h"

#include <gtest/gtest.h>

#include <numeric>

namespace kerfwright::timbertest {
namespace {

int strips(const Instance& instance) {
    return std::accumulate(instance.demand.strips.begin(), instance.demand.strips.end(), 0,
                           [](int sum, const WantedStrips& wanted) { return sum + wanted.count; });
}

std::size_t defects(const Instance& instance) {
    std::size_t count = 0;
    for (const Plank& plank : instance.rack.planks) {
        count += plank.defects.size();
    }
    return count;
}

void expectSound(const Instance& instance) {
    EXPECT_TRUE(faults(instance.rack).empty()) << instance.name;
    EXPECT_TRUE(faults(instance.demand).empty()) << instance.name;
    EXPECT_TRUE(faults(instance.rules).empty()) << instance.name;
}

TEST(Instances, AreAsLargeAsTheyShould) {
    const Instance lum1 = boards("lum1");
    EXPECT_EQ(lum1.rack.planks.size(), 8u);
    EXPECT_EQ(strips(lum1), 72);
    EXPECT_EQ(defects(lum1), 19u);
    const Instance lum3 = boards("lum3");
    EXPECT_EQ(lum3.rack.planks.size(), 12u);
    EXPECT_EQ(strips(lum3), 114);
    EXPECT_EQ(defects(lum3), 26u);
    const Instance case30 = measured();
    EXPECT_EQ(case30.rack.planks.size(), 30u);
    EXPECT_EQ(strips(case30), 260);
    EXPECT_EQ(defects(case30), 60u);
    EXPECT_EQ(strips(typical()), 20);
    EXPECT_EQ(binPacking().size(), 20u);
    EXPECT_EQ(textbook("roll5600").optimum, 73);
    EXPECT_EQ(textbook("roll100").optimum, 453);
    for (const Instance& instance : binPacking()) {
        EXPECT_EQ(strips(instance), 120) << instance.name;
        expectSound(instance);
    }
    for (const Instance& instance :
         {lum1, lum3, case30, typical(), textbook("roll100"), planted(1, 10), planted(2, 60),
          guillotine("2evo_defects_1"), guillotine("2nvo_trims")}) {
        expectSound(instance);
    }
}

TEST(Instances, ArePlantedWithoutTimberToSpare) {
    const Instance instance = planted(7, 30);
    const Length kerf = instance.rules.kerf;
    Area wanted;
    for (const WantedStrips& strip : instance.demand.strips) {
        wanted += area(strip.length + kerf, strip.width + kerf) * strip.count;
    }
    Area planks;
    for (int i = 0; i < 30; ++i) {
        const Plank& plank = instance.rack.planks[static_cast<std::size_t>(i)];
        planks += area(plank.length + kerf, plank.width + kerf);
    }
    EXPECT_LE(wanted, planks);
    EXPECT_GT(wanted.toSquareMetres(), planks.toSquareMetres() * 0.98);
}

}  // namespace
}  // namespace kerfwright::timbertest
