#include "core/measure/number.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <cmath>

namespace kerfwright {
namespace {

TEST(Number, isReadWithEitherMark) {
    EXPECT_EQ(parseNumber("4.9"), 4.9);
    EXPECT_EQ(parseNumber("4,9"), 4.9);
    EXPECT_EQ(parseNumber("  12 "), 12);
    EXPECT_EQ(parseNumber("-3"), -3);
    EXPECT_EQ(parseNumber("+3"), 3);
    EXPECT_EQ(parseNumber(".5"), 0.5);
    EXPECT_EQ(parseNumber("5."), 5);
}

TEST(Number, isNothingElse) {
    for (const char* bad : {"", " ", ".", "-", "--3", "1e5", "1 000", "1.000,5", "4.4.4", "nan",
                            "inf", "0x10", "three", "5 %", "- 3"}) {
        EXPECT_EQ(parseNumber(bad), std::nullopt) << bad;
    }
    EXPECT_EQ(parseNumber(std::string(400, '9')), std::nullopt) << "no double is that large";
}

TEST(Number, readsBackAsItself) {
    EXPECT_EQ(formatNumber(0.00005), "0.00005");
    EXPECT_EQ(formatNumber(12), "12");
    EXPECT_TRUE(rc::check([] {
        const auto number = *rc::gen::arbitrary<double>();
        RC_PRE(std::isfinite(number));
        RC_ASSERT(parseNumber(formatNumber(number)) == number);
    }));
}

}  // namespace
}  // namespace kerfwright
