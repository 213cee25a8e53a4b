#include "core/measure/notation.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>

namespace kerfwright {
namespace {

using testing::HasSubstr;

constexpr Notation inches = Notation::inches();
constexpr Notation millimetres = Notation::millimetres();

void expectReads(std::string_view text, Length expected, const Notation& notation,
                 bool rounded = false) {
    SCOPED_TRACE(std::string(text));
    const Result<Reading> reading = parse(text, notation, "Kerf");
    ASSERT_TRUE(reading.ok()) << reading.fault().text();
    EXPECT_EQ(reading->length.nm(), expected.nm());
    EXPECT_EQ(reading->rounded, rounded);
}

Fault faultOf(std::string_view text, const Notation& notation = millimetres) {
    const Result<Reading> reading = parse(text, notation, "Kerf");
    if (reading.ok()) {
        ADD_FAILURE() << "read “" << text << "” as " << reading->length.nm() << " nm";
        return {};
    }
    EXPECT_EQ(reading.fault().entry, "Kerf");
    EXPECT_FALSE(reading.fault().rule.empty());
    return reading.fault();
}

TEST(Reading, Decimals) {
    expectReads("44.5", Length::um(44'500), millimetres);
    expectReads("44,5", Length::um(44'500), millimetres);
    expectReads("1,5", Length::inch(3, 2), inches);
    expectReads("1.500", Length::inch(3, 2), inches);
    expectReads("1,500", Length::um(1'500), millimetres);
    expectReads(".5", Length::inch(1, 2), inches);
    expectReads(",5", Length::inch(1, 2), inches);
    expectReads("5.", Length::mm(5), millimetres);
    expectReads("007", Length::mm(7), millimetres);
    expectReads("0", Length(), millimetres);
    expectReads("0.000001", Length::nm(1), millimetres);
}

TEST(Reading, FractionsAndMixedNumbers) {
    expectReads("3/4", Length::inch(3, 4), inches);
    expectReads("1 3/4", Length::inch(7, 4), inches);
    expectReads("1-3/4", Length::inch(7, 4), inches);
    expectReads("1-3/4\"", Length::inch(7, 4), millimetres);
    expectReads("-1 3/4", Length::inch(-7, 4), inches);
    expectReads("-1-3/4 in", Length::inch(-7, 4), millimetres);
    expectReads("1  3 / 4", Length::inch(7, 4), inches);
    expectReads("5/4", Length::inch(5, 4), inches);
    expectReads("1/2", Length::um(500), millimetres);
    expectReads("1⁄2", Length::inch(1, 2), inches);
}

TEST(Reading, FractionSigns) {
    expectReads("½", Length::inch(1, 2), inches);
    expectReads("¼", Length::inch(1, 4), inches);
    expectReads("¾", Length::inch(3, 4), inches);
    expectReads("⅛", Length::inch(1, 8), inches);
    expectReads("⅜", Length::inch(3, 8), inches);
    expectReads("⅝", Length::inch(5, 8), inches);
    expectReads("⅞", Length::inch(7, 8), inches);
    expectReads("1½", Length::inch(3, 2), inches);
    expectReads("1 ½ in", Length::inch(3, 2), millimetres);
    expectReads("1-½″", Length::inch(3, 2), millimetres);
}

TEST(Reading, Units) {
    for (const char* text : {"2 in", "2in", "2\"", "2 \"", "2″", "2”", "2 inch", "2 inches", "2 IN",
                             "2 Inches", "50.8 mm", "50,8mm", "5.08 cm", "0.0508 m", "50.8 MM"}) {
        expectReads(text, Length::inch(2), millimetres);
        expectReads(text, Length::inch(2), inches);
    }
    for (const char* text : {"1 ft", "1'", "1′", "1’", "1 foot", "1 feet", "1FT", "12 in"}) {
        expectReads(text, Length::inch(12), millimetres);
    }
    expectReads("4.45 cm", Length::um(44'500), inches);
    expectReads("1/2 ft", Length::inch(6), millimetres);
}

TEST(Reading, Sums) {
    expectReads("12 + 1/8", Length::inch(97, 8), inches);
    expectReads("12+1/8", Length::inch(97, 8), inches);
    expectReads("12 - 1/8", Length::inch(95, 8), inches);
    expectReads("12 − 1/8", Length::inch(95, 8), inches);
    expectReads("12 – 1/8", Length::inch(95, 8), inches);
    expectReads("2 in - 3 mm", Length::um(47'800), millimetres);
    expectReads("1 3/4 in + 3 mm", Length::um(47'450), inches);
    expectReads("-3 + 5", Length::mm(2), millimetres);
    expectReads("+3", Length::mm(3), millimetres);
    expectReads("- 3", Length::mm(-3), millimetres);
    expectReads("1 - 3/4", Length::inch(1, 4), inches);
    expectReads("1/3 in + 2/3 in", Length::inch(1), inches);
}

TEST(Reading, TermsSideBySide) {
    expectReads("1 ft 6 in", Length::inch(18), millimetres);
    expectReads("1' 6\"", Length::inch(18), millimetres);
    expectReads("1'6\"", Length::inch(18), millimetres);
    expectReads("1'-6\"", Length::inch(18), millimetres);
    expectReads("1'-6 1/2\"", Length::inch(37, 2), millimetres);
    expectReads("1'6", Length::inch(18), inches);
    expectReads("1ft6in", Length::inch(18), millimetres);
    expectReads("1 m 20 cm 3 mm", Length::mm(1203), inches);
    expectReads("-1 ft 6 in", Length::inch(-18), millimetres);
    expectReads("-1'-6\"", Length::inch(-18), millimetres);
    expectReads("2 ft - 1 ft 6 in", Length::inch(6), millimetres);
    // A number without a unit takes the one in force.
    expectReads("2 in 3", Length::inch(5), inches);
    expectReads("2 in 3", Length::um(53'800), millimetres);
    expectReads("1 m 3/4", Length::um(1'000'750), millimetres);
}

TEST(Reading, SpacesAndTheMarkOfRounding) {
    expectReads("  44.5  ", Length::um(44'500), millimetres);
    expectReads("\t44.5 mm\r\n", Length::um(44'500), millimetres);
    expectReads("1\u00a03/4", Length::inch(7, 4), inches);
    expectReads("44.5\u202fmm", Length::um(44'500), inches);
    expectReads("≈ 3/16 in", Length::inch(3, 16), millimetres);
    expectReads("≈3/16 in", Length::inch(3, 16), millimetres);
    expectReads("~ -1/8", Length::inch(-1, 8), inches);
}

TEST(Reading, FinerThanANanometreIsRoundedAndSaysSo) {
    expectReads("1/3 in", Length::nm(8'466'667), inches, true);
    expectReads("-1/3 in", Length::nm(-8'466'667), inches, true);
    expectReads("0.0000005", Length::nm(1), millimetres, true);
    expectReads("-0.0000005", Length::nm(-1), millimetres, true);
    expectReads("0.0000004", Length::nm(0), millimetres, true);
    expectReads("1/128", Length::nm(198'438), inches, true);
    expectReads("1/128 + 1/128", Length::inch(1, 64), inches);
}

TEST(Reading, FaultsNameEntryRuleAndValue) {
    EXPECT_EQ(faultOf("banana").text(),
              "Kerf: must be a length such as 44.5 or 1 3/4 in; got banana.");
    const Fault fault = faultOf("12 abc");
    EXPECT_EQ(fault.text(),
              "Kerf: must have mm, cm, m, in or ft for a unit, not “abc”; got 12 abc.");
    EXPECT_EQ(faultOf("").text(), "Kerf: must not be empty.");
    EXPECT_EQ(faultOf("  \u00a0 ").text(), "Kerf: must not be empty.");
    EXPECT_EQ(faultOf("1/0").rule, "must not divide by zero");
    EXPECT_EQ(faultOf("1 1/00").rule, "must not divide by zero");
    EXPECT_THAT(faultOf("hello").rule, HasSubstr("44.5 or"));
    EXPECT_THAT(faultOf("hello", inches).rule, HasSubstr("1 3/4 or"));
    EXPECT_EQ(faultOf("hello").value, "hello");
}

TEST(Reading, OneDecimalMark) {
    for (const char* text : {"1.2.3", "1,200.5", "1.200,5", "1,,5", "1..5", "1,234,567"}) {
        EXPECT_THAT(faultOf(text).rule, HasSubstr("one decimal mark")) << text;
    }
    for (const char* text : {".", ",", "-.", ". mm"}) {
        EXPECT_THAT(faultOf(text).rule, HasSubstr("before or after the decimal mark")) << text;
    }
}

TEST(Reading, NoGuessesAtThousands) {
    EXPECT_THAT(faultOf("1 500").rule, HasSubstr("thousands"));
    EXPECT_THAT(faultOf("1 500,25").rule, HasSubstr("thousands"));
    EXPECT_THAT(faultOf("1'500").rule, HasSubstr("unit after every number"));
    EXPECT_THAT(faultOf("1m50").rule, HasSubstr("unit after every number"));
    for (const char* text : {"1m50", "44mm5", "1in6"}) {
        EXPECT_THAT(faultOf(text, inches).rule, HasSubstr("unit after every number")) << text;
    }
    EXPECT_THAT(faultOf("44mm5").rule, HasSubstr("unit after every number"));
}

TEST(Reading, MinusAndHyphenAreToldApart) {
    for (const char* text : {"12-3", "12 -3", "12- 3", "1 -3/4", "1 -½", "1.5-3/4 - 1 -2",
                             "1 in-3 mm", "1−3/4", "½-1/4", "1'-6 mm"}) {
        EXPECT_FALSE(parse(text, millimetres, "Kerf").ok()) << text;
    }
    for (const char* text : {"½-3", "½-1/4", "1 in-3 in", "1 in-3", "1 mm-3", "1 1/2-3", "12-3"}) {
        EXPECT_THAT(faultOf(text, inches).rule, HasSubstr("space on both sides of a minus"))
            << text;
    }
    EXPECT_THAT(faultOf("12-3").rule, HasSubstr("space on both sides of a minus"));
    EXPECT_THAT(faultOf("12 -3").rule, HasSubstr("space on both sides of a minus"));
    EXPECT_THAT(faultOf("1'-6").rule, HasSubstr("space on both sides of a minus"));
}

TEST(Reading, WhatIsNotALength) {
    for (const char* text :
         {"-",       "+",     "≈",      "~",       "mm",      "in",    "\"",        "1/",
          "/2",      "1/2/3", "1/2.5",  "1.5/2",   "1.5 3/4", "1 5/4", "1 4/4",     "1/-2",
          "--1",     "+-1",   "1 +",    "1 + + 2", "1 - - 2", "1e3",   "0x10",      "1 in in",
          "1 mm mm", "(1)",   "1*2",    "1 × 2",   "nan",     "inf",   "1 1/2 3/4", "1 µm",
          "١٢",      "1₂",    "12 mm;", "12 mm.",  "≈ ≈ 1",   "1 yd",  "1 inchs",   "1;5"}) {
        faultOf(text);
        faultOf(text, inches);
    }
}

TEST(Reading, BytesThatAreNoText) {
    EXPECT_EQ(faultOf(std::string_view("12\0", 3)).value, "12\ufffd");
    EXPECT_EQ(faultOf(std::string_view("\0", 1)).value, "\ufffd");
    EXPECT_EQ(faultOf("12\xff").value, "12\ufffd");
    EXPECT_EQ(faultOf("12\xc2").value, "12\ufffd");
    EXPECT_EQ(faultOf("12 \xed\xa0\x80").value, "12 \ufffd\ufffd\ufffd") << "a lone surrogate";
    EXPECT_EQ(faultOf("12 \xc0\xaf").value, "12 \ufffd\ufffd") << "an overlong slash";
    EXPECT_EQ(faultOf("12 \xe0\x80\xaf").value, "12 \ufffd\ufffd\ufffd") << "overlong, three bytes";
    EXPECT_EQ(faultOf("12 \xf0\x80\x80\xaf").value, "12 \ufffd\ufffd\ufffd\ufffd");
    EXPECT_EQ(faultOf("12 \xf4\x90\x80\x80").value, "12 \ufffd\ufffd\ufffd\ufffd") << "beyond";
    EXPECT_EQ(faultOf("12 \x7f").value, "12 \ufffd");
    EXPECT_EQ(faultOf("12\n;").value, "12\ufffd;");
    EXPECT_EQ(faultOf("12 \xf0\x9f\xaa\xb5").value, "12 🪵");
}

TEST(Reading, LongTextsAreRefusedAndShortened) {
    const std::string million(10'000'000, '9');
    const Fault fault = faultOf(million);
    EXPECT_EQ(fault.rule, "must be at most 256 characters long");
    EXPECT_EQ(fault.value, std::string(40, '9') + "…");
    EXPECT_EQ(faultOf(std::string(10'000'000, ' ')).rule, "must be at most 256 characters long");
    EXPECT_THAT(faultOf(std::string(200, '9')).rule, HasSubstr("at most 12 figures"));
    EXPECT_THAT(faultOf("0." + std::string(200, '3')).rule, HasSubstr("at most 15 figures"));
    EXPECT_THAT(faultOf("1/" + std::string(200, '3')).rule, HasSubstr("at most 9 figures"));
    EXPECT_THAT(faultOf("0." + std::string(16, '3')).rule, HasSubstr("at most 15 figures"));
    expectReads("0." + std::string(15, '3'), Length::nm(333'333), millimetres, true);
    EXPECT_THAT(faultOf(std::string(13, '9')).rule, HasSubstr("at most 12 figures"));
    EXPECT_THAT(faultOf(std::string(12, '9')).rule, HasSubstr("1 km"));
    expectReads(std::string(200, '0') + "7", Length::mm(7), millimetres);
    expectReads("7." + std::string(200, '0'), Length::mm(7), millimetres);
}

TEST(Reading, ExactOrNotAtAll) {
    // Denominators without a common factor, until their product leaves 128 bits.
    EXPECT_THAT(faultOf("1/999999937 + 1/999999929 + 1/999999893 + 1/999999883 + 1/999999797").rule,
                HasSubstr("simpler sum"));
}

TEST(Reading, AKilometreIsTooMuch) {
    expectReads("999.999999 m", Length::nm(999'999'999'000), millimetres);
    expectReads("-999999.999999", Length::nm(-999'999'999'999), millimetres);
    EXPECT_EQ(faultOf("1000 m").rule, "must be less than 1 km");
    EXPECT_EQ(faultOf("-1000000").rule, "must be less than 1 km");
    EXPECT_EQ(faultOf("999999.9999999").rule, "must be less than 1 km");
    EXPECT_EQ(faultOf("999999999999 ft", inches).rule, "must be less than 1 km");
    expectReads("2000 m - 1999 m", Length::mm(1000), millimetres);
}

}  // namespace
}  // namespace kerfwright
