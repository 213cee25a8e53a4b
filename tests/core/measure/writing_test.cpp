#include "core/measure/notation.h"

#include <gtest/gtest.h>

#include <limits>

namespace kerfwright {
namespace {

TEST(Writing, InchesAreReducedMixedFractions) {
    const Notation inches = Notation::inches();
    EXPECT_EQ(format(Length::inch(7, 4), inches), "1 3/4 in");
    EXPECT_EQ(format(Length::inch(-1, 8), inches), "-1/8 in");
    EXPECT_EQ(format(Length::inch(-7, 4), inches), "-1 3/4 in");
    EXPECT_EQ(format(Length(), inches), "0 in");
    EXPECT_EQ(format(Length::inch(2), inches), "2 in");
    EXPECT_EQ(format(Length::inch(32, 64), inches), "1/2 in");
    EXPECT_EQ(format(Length::inch(1, 64), inches), "1/64 in");
    EXPECT_EQ(format(Length::inch(127, 64), inches), "1 63/64 in");
    EXPECT_EQ(format(Length::inch(163, 8), inches), "20 3/8 in");
}

TEST(Writing, MillimetresDropTrailingZeros) {
    const Notation fine = Notation::millimetres(6);
    EXPECT_EQ(format(Length::mm(45), Notation::millimetres()), "45 mm");
    EXPECT_EQ(format(Length::um(3200), Notation::millimetres()), "3.2 mm");
    EXPECT_EQ(format(Length::um(-44'500), Notation::millimetres()), "-44.5 mm");
    EXPECT_EQ(format(Length(), Notation::millimetres()), "0 mm");
    EXPECT_EQ(format(Length::um(3200), fine), "3.2 mm");
    EXPECT_EQ(format(Length::nm(396'875), fine), "0.396875 mm");
    EXPECT_EQ(format(Length::nm(-1), fine), "-0.000001 mm");
    EXPECT_EQ(format(Length::mm(100), Notation::millimetres(0)), "100 mm");
}

TEST(Writing, OffTheGridIsMarkedAndRoundedHalfAwayFromZero) {
    const auto same = [](Length length, const Notation& notation, const char* text) {
        const Written written = write(length, notation);
        EXPECT_EQ(written.text, text);
        EXPECT_TRUE(written.rounded) << text;
    };
    same(Length::um(44'450), Notation::millimetres(1), "≈ 44.5 mm");
    same(Length::um(-44'450), Notation::millimetres(1), "≈ -44.5 mm");
    same(Length::nm(44'449'999), Notation::millimetres(1), "≈ 44.4 mm");
    same(Length::um(44'960), Notation::millimetres(1), "≈ 45 mm");
    same(Length::um(44'500), Notation::millimetres(0), "≈ 45 mm");
    same(Length::mm(5), Notation::inches(64), "≈ 13/64 in");
    same(Length::inch(3, 32), Notation::inches(16), "≈ 1/8 in");
    same(Length::inch(-3, 32), Notation::inches(16), "≈ -1/8 in");
    same(Length::inch(1, 2), Notation::inches(1), "≈ 1 in");
    same(Length::nm(1), Notation::inches(64), "≈ 0 in");
    same(Length::nm(-1), Notation::millimetres(1), "≈ 0 mm");
    EXPECT_FALSE(write(Length::inch(3, 32), Notation::inches(32)).rounded);
    EXPECT_FALSE(write(Length::um(44'400), Notation::millimetres(1)).rounded);
}

TEST(Writing, BareHasNoUnitButKeepsTheMark) {
    EXPECT_EQ(formatBare(Length::inch(7, 4), Notation::inches()), "1 3/4");
    EXPECT_EQ(formatBare(Length::um(44'500), Notation::millimetres()), "44.5");
    EXPECT_EQ(formatBare(Length::um(44'450), Notation::millimetres()), "≈ 44.5");
    EXPECT_EQ(unitName(Unit::Inches), "in");
    EXPECT_EQ(unitName(Unit::Millimetres), "mm");
}

TEST(Writing, ValuesInFaultsAreExact) {
    EXPECT_EQ(formatExact(Length::nm(12'000'001), Notation::millimetres(0)), "12.000001 mm");
    EXPECT_EQ(formatExact(Length::mm(12), Notation::millimetres(0)), "12 mm");
    EXPECT_EQ(formatExact(Length::inch(-1, 64), Notation::inches(8)), "-1/64 in");
    EXPECT_EQ(formatExact(Length::um(50), Notation::inches()), "≈ 0 in (0.05 mm)");
}

TEST(Writing, LimitsInRulesAreRoundedInwards) {
    EXPECT_EQ(formatLeast(Length::um(100), Notation::inches(8)), "1/64 in");
    EXPECT_EQ(formatLeast(Length::um(100), Notation::millimetres(0)), "0.1 mm");
    EXPECT_EQ(formatLeast(Length::um(120), Notation::millimetres()), "0.2 mm");
    EXPECT_EQ(formatLeast(Length::um(120), Notation::millimetres(2)), "0.12 mm");
    EXPECT_EQ(formatLeast(Length(), Notation::inches()), "0 in");
    EXPECT_EQ(formatGreatest(Length::mm(12), Notation::inches()), "15/32 in");
    EXPECT_EQ(formatGreatest(Length::mm(12), Notation::millimetres()), "12 mm");
    EXPECT_EQ(formatGreatest(Length::um(12'190), Notation::millimetres()), "12.1 mm");
    EXPECT_EQ(formatGreatest(Length::um(-120), Notation::millimetres()), "-0.2 mm");
}

TEST(Writing, StepIsTheGrid) {
    EXPECT_EQ(Notation::inches(64).step(), Length::inch(1, 64));
    EXPECT_EQ(Notation::inches(1).step(), Length::inch(1));
    EXPECT_EQ(Notation::millimetres(0).step(), Length::mm(1));
    EXPECT_EQ(Notation::millimetres(1).step(), Length::um(100));
    EXPECT_EQ(Notation::millimetres(6).step(), Length::nm(1));
}

TEST(Writing, NeverFails) {
    const Length least = Length::nm(std::numeric_limits<std::int64_t>::min());
    const Length greatest = Length::nm(std::numeric_limits<std::int64_t>::max());
    EXPECT_EQ(format(least, Notation::millimetres(6)), "-9223372036854.775808 mm");
    EXPECT_EQ(format(greatest, Notation::millimetres(6)), "9223372036854.775807 mm");
    EXPECT_EQ(format(greatest, Notation::millimetres(0)), "≈ 9223372036855 mm");
    // Styles that no form offers are brought to the nearest one that is.
    EXPECT_EQ(format(Length::inch(1, 4), Notation::inches(0)), "≈ 0 in");
    EXPECT_EQ(format(Length::inch(1, 4), Notation::inches(-8)), "≈ 0 in");
    EXPECT_EQ(format(Length::inch(1, 4), Notation::inches(7)), "1/4 in");
    EXPECT_EQ(format(Length::inch(1, 64), Notation::inches(1000)), "1/64 in");
    EXPECT_EQ(format(Length::nm(1'500'000), Notation::millimetres(-3)), "≈ 2 mm");
    EXPECT_EQ(format(Length::nm(1), Notation::millimetres(30)), "0.000001 mm");
}

TEST(Writing, AreasInTheUsualUnits) {
    const Area square = area(Length::mm(500), Length::mm(500));
    EXPECT_EQ(formatArea(square, Unit::Millimetres), "0.25 m²");
    EXPECT_EQ(formatArea(square, Unit::Inches), "2.7 ft²");  // 0.25 / 0.09290304 = 2.691
    EXPECT_EQ(formatArea(area(Length::inch(12), Length::inch(12)), Unit::Inches), "1.0 ft²");
    EXPECT_EQ(formatArea(area(Length::mm(1500), Length::mm(1000)), Unit::Millimetres), "1.50 m²");
    EXPECT_EQ(formatArea(area(Length::mm(1999), Length::mm(1000)), Unit::Millimetres), "2.00 m²");
    // Small joints in the small units.
    EXPECT_EQ(formatArea(area(Length::mm(106), Length::mm(50)), Unit::Millimetres), "53 cm²");
    EXPECT_EQ(formatArea(area(Length::mm(20), Length::mm(10)), Unit::Millimetres), "2 cm²");
    EXPECT_EQ(formatArea(area(Length::mm(-20), Length::mm(100)), Unit::Millimetres), "-20 cm²");
    EXPECT_EQ(formatArea(area(Length::mm(316), Length::mm(316)), Unit::Millimetres), "999 cm²");
    EXPECT_EQ(formatArea(area(Length::mm(400), Length::mm(250)), Unit::Millimetres), "0.10 m²");
    EXPECT_EQ(formatArea(area(Length::inch(31, 10), Length::inch(2)), Unit::Inches), "6.2 in²");
    EXPECT_EQ(formatArea(area(Length::inch(12), Length::inch(6)), Unit::Inches), "72.0 in²");
    EXPECT_EQ(formatArea(Area(), Unit::Millimetres), "0.00 m²");
    EXPECT_EQ(formatArea(Area(), Unit::Inches), "0.0 ft²");
    EXPECT_EQ(formatArea(Area(-1), Unit::Millimetres), "0.0000000000 cm²");
}

TEST(Writing, VolumesInTheUsualUnits) {
    // Published worked example of board measure (trade press): 1 1/2 x 9 x 96 in is 9 board feet.
    const Volume plank = volume(Length::inch(3, 2), Length::inch(9), Length::inch(96));
    EXPECT_EQ(formatVolume(plank, Unit::Inches), "9.0 board feet");
    EXPECT_EQ(formatVolume(plank, Unit::Millimetres), "0.0212 m³");  // 1296 in³ of 16.387064 cm³
    EXPECT_EQ(
        formatVolume(volume(Length::mm(1000), Length::mm(217), Length::mm(100)), Unit::Millimetres),
        "0.0217 m³");
    EXPECT_EQ(formatVolume(Volume() - plank, Unit::Inches), "-9.0 board feet");
    const Length kilometre = Length::mm(1'000'000);
    EXPECT_EQ(formatVolume(volume(kilometre, kilometre, kilometre), Unit::Millimetres),
              "1000000000.0000 m³");
}

TEST(Sizes, AreMarkedOnceWhereASideIsShortOfTheTruth) {
    const Notation mm = Notation::millimetres(1);
    EXPECT_EQ(formatSize({Length::mm(45), Length::mm(48), Length::mm(620)}, mm),
              "45 × 48 × 620 mm");
    EXPECT_EQ(formatSize({Length::um(44'450), Length::um(50'812), Length::mm(620)}, mm),
              "≈ 44.5 × 50.8 × 620 mm");
    EXPECT_EQ(formatSize({Length::mm(45), Length::um(44'450)}, mm), "≈ 45 × 44.5 mm");
    EXPECT_EQ(formatSize({Length::inch(7, 4), Length::inch(2)}, Notation::inches()),
              "1 3/4 × 2 in");
}

}  // namespace
}  // namespace kerfwright
