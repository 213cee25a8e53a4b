#include "core/wood/air.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <cmath>

namespace kerfwright {
namespace {

TEST(Air, isFoundAgainFromTheMoistureThatWoodSettlesAtInIt) {
    EXPECT_TRUE(rc::check([] {
        const double celsius = *rc::gen::inRange(0, 60);
        const double humidity = *rc::gen::inRange(1, 95);
        const double moisture = equilibriumMoisture(celsius, humidity);
        RC_ASSERT(std::abs(humidityAt(celsius, moisture) - humidity) < 1e-6);
    }));
}

TEST(Air, endsWhereItsLimitsAre) {
    EXPECT_NEAR(humidityAt(20, 0), AirLimits::leastHumidity, 1e-6);
    EXPECT_NEAR(humidityAt(20, 30), AirLimits::greatestHumidity, 1e-6);
}

// Wood Handbook (US Forest Products Laboratory, 2010), table 4-2: 21.1 °C and 50 % give 9.2 %.
TEST(Air, ofThePublishedTable) {
    EXPECT_NEAR(humidityAt(21.1, 9.2), 50, 1);
}

TEST(Degrees, agreeAtTheFixedPoints) {
    EXPECT_EQ(fahrenheitOf(0), 32);
    EXPECT_EQ(fahrenheitOf(100), 212);
    EXPECT_EQ(fahrenheitOf(-40), -40);
    EXPECT_EQ(celsiusOf(68), 20);
}

}  // namespace
}  // namespace kerfwright
