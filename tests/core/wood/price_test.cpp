#include "core/wood/price.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

namespace kerfwright {
namespace {

// A board foot is 144 cubic inches, 2359.737216 cm3: 423.776 board feet to the cubic metre.
TEST(Prices, AreOfACubicMetreOrOfABoardFoot) {
    EXPECT_EQ(pricePerBoardFoot(650).minorPerCubicMetre, 275'454);
    EXPECT_EQ(hundredthsPerBoardFoot({275'454}), 650);
    EXPECT_TRUE(rc::check([] {
        const auto hundredths = *rc::gen::inRange<std::int64_t>(0, 2'000'000'000);
        RC_ASSERT(hundredthsPerBoardFoot(pricePerBoardFoot(hundredths)) == hundredths);
    }));
}

TEST(Prices, CostIsVolumeTimesPriceToTheNearestHundredth) {
    const Volume litre = volume(Length::mm(100), Length::mm(100), Length::mm(100));
    EXPECT_EQ(cost(litre, {200'000}), 200);
    EXPECT_EQ(cost(litre, {200'499}), 200);
    EXPECT_EQ(cost(litre, {200'500}), 201);
    EXPECT_EQ(cost(litre * 1000, {greatestPrice}), greatestPrice);
    EXPECT_EQ(cost(Volume(), {5}), 0);
    EXPECT_FALSE(cost(litre, Price()).has_value());
}

TEST(Money, ReadsBackWhatItWrote) {
    EXPECT_EQ(formatMoney(1250), "12.50");
    EXPECT_EQ(formatMoney(7), "0.07");
    EXPECT_EQ(parseMoney(" 12,5 ", "Price").value(), 1250);
    EXPECT_EQ(parseMoney("12", "Price").value(), 1200);
    EXPECT_TRUE(rc::check([] {
        const auto hundredths = *rc::gen::inRange<std::int64_t>(0, greatestPrice + 1);
        RC_ASSERT(parseMoney(formatMoney(hundredths), "Price").value() == hundredths);
    }));
    for (const char* bad : {"", ".", "1.", ".5", "-1", "1.234", "1 000", "1e3", "twelve"}) {
        const Result<std::int64_t> read = parseMoney(bad, "Price");
        ASSERT_FALSE(read.ok()) << bad;
        EXPECT_EQ(read.fault(), (Fault{"Price", "must be an amount such as 12.50", bad}));
    }
    EXPECT_EQ(parseMoney("10000000000.01", "Price").fault().rule, "must be at most 10000000000.00");
    EXPECT_FALSE(parseMoney(std::string(60, '9'), "Price").ok());
}

}  // namespace
}  // namespace kerfwright
