// The decimal mark follows the language that is spoken, and whatever is written is read back.
#include "core/measure/notation.h"
#include "core/measure/number.h"
#include "tests/core/words/pofile.h"
#include "tests/core/words/spoken.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <cmath>

namespace kerfwright {
namespace {

class MarkOf : public testing::TestWithParam<const char*> {};

TEST_P(MarkOf, LengthsReadBackAsThemselves) {
    const Speaking language(GetParam());
    EXPECT_TRUE(rc::check([] {
        const Notation style = Notation::millimetres(*rc::gen::inRange(0, 7));
        const std::int64_t step = style.step().nm();
        const std::int64_t nm = *rc::gen::inRange<std::int64_t>(-3'000'000'000, 3'000'000'000);
        const Length length = Length::nm(nm / step * step);
        for (const DecimalMark mark : {DecimalMark::Spoken, DecimalMark::Point}) {
            for (const std::string& text :
                 {format(length, style, mark), formatBare(length, style, mark)}) {
                const Result<Reading> reading = parse(text, style, "Kerf");
                RC_ASSERT(reading.ok());
                RC_ASSERT(reading->length == length);
            }
        }
        // Off the grid it is said to be rounded, and is short of the truth by half a step at most.
        const Result<Reading> near = parse(format(Length::nm(nm), style), style, "Kerf");
        RC_ASSERT(near.ok());
        RC_ASSERT(2 * std::abs(near->length.nm() - nm) <= step);
    }));
}

TEST_P(MarkOf, NumbersReadBackAsThemselves) {
    const Speaking language(GetParam());
    EXPECT_TRUE(rc::check([] {
        const auto number = *rc::gen::arbitrary<double>();
        RC_PRE(std::isfinite(number));
        RC_ASSERT(parseNumber(formatNumber(number)) == number);
    }));
}

INSTANTIATE_TEST_SUITE_P(Languages, MarkOf, testing::Values("", "de"));

TEST(DecimalMark, IsACommaInGerman) {
    const Area plate = area(Length::mm(400), Length::mm(300));
    const Volume board = volume(Length::mm(400), Length::mm(300), Length::mm(30));
    EXPECT_EQ(formatArea(plate, Unit::Millimetres), "0.12 m²");
    const Speaking german("de");
    EXPECT_EQ(decimalMark(), ',');
    EXPECT_EQ(decimalMark(DecimalMark::Point), '.');
    EXPECT_EQ(format(Length::um(416'800), Notation::millimetres()), "416,8 mm");
    EXPECT_EQ(format(Length::um(416'800), Notation::millimetres(), DecimalMark::Point), "416.8 mm");
    EXPECT_EQ(formatSize({Length::um(44'510), Length::mm(48)}, Notation::millimetres()),
              "≈ 44,5 × 48 mm");
    EXPECT_EQ(formatExact(Length::um(50), Notation::inches()), "≈ 0 in (0,05 mm)");
    EXPECT_EQ(formatArea(plate, Unit::Millimetres), "0,12 m²");
    EXPECT_EQ(formatVolume(board, Unit::Millimetres), "0,0036 m³");
    EXPECT_EQ(formatVolume(board, Unit::Millimetres, DecimalMark::Point), "0.0036 m³");
    EXPECT_EQ(formatNumber(4.9), "4,9");
    EXPECT_EQ(formatFigures(100.0 / 7), "14,2857");
    EXPECT_EQ(formatFixed(8, 1), "8,0");
    EXPECT_EQ(formatFixed(8, 0), "8");
}

TEST(DecimalMark, IsAPointWhereALanguageSaysWhatCouldNotBeReadBack) {
    const Spoken other(Entries{{"decimal mark\4.", "·"}});
    EXPECT_EQ(formatNumber(4.9), "4.9");
}

}  // namespace
}  // namespace kerfwright
