// Writing and reading against each other.
#include "core/measure/notation.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <clocale>
#include <cstdlib>
#include <locale>
#include <sstream>
#include <string>
#include <vector>

namespace kerfwright {
namespace {

// Most lengths of a workshop and some at the edge of what can be read.
rc::Gen<std::int64_t> anyNanometres() {
    return rc::gen::weightedOneOf<std::int64_t>(
        {{4, rc::gen::inRange<std::int64_t>(-3'000'000'000, 3'000'000'000)},
         {1, rc::gen::inRange<std::int64_t>(-999'000'000'000, 999'000'000'000)},
         {1, rc::gen::inRange<std::int64_t>(-1000, 1000)}});
}

std::vector<Notation> allStyles() {
    std::vector<Notation> styles;
    for (int decimals = 0; decimals <= 6; ++decimals) {
        styles.push_back(Notation::millimetres(decimals));
    }
    for (int denominator = 1; denominator <= 64; denominator *= 2) {
        styles.push_back(Notation::inches(denominator));
    }
    return styles;
}

rc::Gen<Notation> anyStyle() {
    return rc::gen::elementOf(allStyles());
}

RC_GTEST_PROP(RoundTrip, OnTheGridReadsBackAsItself, ()) {
    const Notation style = *anyStyle();
    const std::int64_t step = style.step().nm();
    const Length length = Length::nm(*anyNanometres() / step * step);
    const Written written = write(length, style);
    RC_ASSERT(!written.rounded);
    RC_ASSERT(written.text.find("≈") == std::string::npos);
    const Result<Reading> reading = parse(written.text, style, "Kerf");
    RC_ASSERT(reading.ok());
    RC_ASSERT(reading->length == length);
    RC_ASSERT(!reading->rounded);
    // With its unit in the text, the style in force does not matter.
    const Result<Reading> elsewhere = parse(written.text, *anyStyle(), "Kerf");
    RC_ASSERT(elsewhere.ok());
    RC_ASSERT(elsewhere->length == length);
    const Result<Reading> bare = parse(formatBare(length, style), style, "Kerf");
    RC_ASSERT(bare.ok());
    RC_ASSERT(bare->length == length);
}

RC_GTEST_PROP(RoundTrip, OffTheGridIsMarkedAndReadsBackWithinHalfAStep, ()) {
    const Notation style = *anyStyle();
    const Length length = Length::nm(*anyNanometres());
    const std::int64_t step = style.step().nm();
    const Written written = write(length, style);
    RC_ASSERT(written.rounded == (length.nm() % step != 0));
    RC_ASSERT(written.rounded == written.text.starts_with("≈ "));
    const Result<Reading> reading = parse(written.text, style, "Kerf");
    RC_ASSERT(reading.ok());
    RC_ASSERT(2 * std::abs(reading->length.nm() - length.nm()) <= step);
    RC_ASSERT(reading->length.nm() % step == 0);
}

TEST(RoundTrip, EverySixtyFourthAndEveryTenthOfAWorkshop) {
    for (const Notation& style : allStyles()) {
        for (std::int64_t i = -2000; i <= 2000; ++i) {
            const Length length = style.step() * i;
            const Written written = write(length, style);
            const Result<Reading> reading = parse(written.text, style, "Kerf");
            ASSERT_TRUE(reading.ok()) << written.text;
            ASSERT_EQ(reading->length, length) << written.text;
            ASSERT_FALSE(written.rounded) << written.text;
        }
    }
}

RC_GTEST_PROP(RoundTrip, CommaAndPointAreTheSame, ()) {
    const Notation style = Notation::millimetres(6);
    std::string text = format(Length::nm(*anyNanometres()), style);
    const Result<Reading> point = parse(text, style, "Kerf");
    std::replace(text.begin(), text.end(), '.', ',');
    const Result<Reading> comma = parse(text, style, "Kerf");
    RC_ASSERT(point.ok());
    RC_ASSERT(comma.ok());
    RC_ASSERT(point->length == comma->length);
}

RC_GTEST_PROP(RoundTrip, SumsAreTheSumsOfTheirParts, ()) {
    const auto parts = *rc::gen::container<std::vector<std::int64_t>>(
        4, rc::gen::inRange<std::int64_t>(-200'000'000'000, 200'000'000'000));
    Length expected;
    std::string text;
    for (const std::int64_t part : parts) {
        const Notation style = *rc::gen::element(Notation::inches(), Notation::millimetres(6));
        const std::int64_t step = style.step().nm();
        const Length length = Length::nm(part / step * step);
        const bool negative = length < Length();
        if (text.empty()) {
            text = format(length, style);
        } else {
            text += (negative ? " - " : " + ") + format(negative ? -length : length, style);
        }
        expected += length;
    }
    const Result<Reading> reading = parse(text, *anyStyle(), "Kerf");
    RC_ASSERT(reading.ok());
    RC_ASSERT(reading->length == expected);
    RC_ASSERT(!reading->rounded);
}

RC_GTEST_PROP(RoundTrip, AnySpellingOfAMixedNumberIsTheSame, ()) {
    const int whole = *rc::gen::inRange(1, 200);
    const int below = 1 << *rc::gen::inRange(1, 7);
    const int above = *rc::gen::inRange(1, below);
    const std::string fraction = std::to_string(above) + "/" + std::to_string(below);
    const std::string number = std::to_string(whole);
    const Length expected = Length::inch(whole * below + above, below);
    for (const std::string& text :
         {number + " " + fraction, number + "-" + fraction + "\"", number + " + " + fraction,
          number + " in " + fraction + " in", "≈ " + number + " " + fraction + "in"}) {
        const Result<Reading> reading = parse(text, Notation::inches(), "Kerf");
        RC_ASSERT(reading.ok());
        RC_ASSERT(reading->length == expected);
    }
}

bool isUtf8(const std::string& text) {
    std::size_t i = 0;
    while (i < text.size()) {
        const auto lead = static_cast<unsigned char>(text[i]);
        const std::size_t length = lead < 0x80 ? 1 : lead < 0xe0 ? 2 : lead < 0xf0 ? 3 : 4;
        if ((lead >= 0x80 && lead < 0xc2) || lead > 0xf4 || i + length > text.size()) {
            return false;
        }
        for (std::size_t k = 1; k < length; ++k) {
            if ((static_cast<unsigned char>(text[i + k]) & 0xc0) != 0x80) {
                return false;
            }
        }
        i += length;
    }
    return true;
}

void checkAnyText(const std::string& text) {
    for (const Notation& style : {Notation::inches(), Notation::millimetres()}) {
        const Result<Reading> reading = parse(text, style, "Trim margin");
        if (reading.ok()) {
            RC_ASSERT(std::abs(reading->length.nm()) < 1'000'000'000'000);
            continue;
        }
        RC_ASSERT(reading.fault().entry == "Trim margin");
        RC_ASSERT(reading.fault().rule.starts_with("must "));
        RC_ASSERT(isUtf8(reading.fault().text()));
        RC_ASSERT(reading.fault().text().size() < 500);
    }
}

RC_GTEST_PROP(RoundTrip, AnyBytesAreReadOrRefused, ()) {
    checkAnyText(*rc::gen::container<std::string>(rc::gen::arbitrary<char>()));
}

RC_GTEST_PROP(RoundTrip, AnyWordsOfTheGrammarAreReadOrRefused, ()) {
    const auto words = *rc::gen::container<std::vector<std::string>>(rc::gen::element<std::string>(
        "1", "23", "0", "99999999999", "999999937", ".", ",", "/", "-", "+", " ", " ", "½", "″",
        "'", "\"", "mm", "m", "in", "ft", "≈", "−", "\xe2", "x"));
    std::string text;
    for (const std::string& word : words) {
        text += word;
    }
    checkAnyText(text);
}

class CommaLocale : public std::numpunct<char> {
    char do_decimal_point() const override { return ','; }
    char do_thousands_sep() const override { return '.'; }
    std::string do_grouping() const override { return "\3"; }
};

TEST(RoundTrip, TheLocaleOfTheSystemDoesNotMatter) {
    const std::vector<const char*> names{"de_DE.UTF-8", "fr_FR.UTF-8", "tr_TR.UTF-8", "C.UTF-8",
                                         "C"};
    const std::locale before = std::locale::global(std::locale(std::locale(), new CommaLocale));
    std::ostringstream stream;
    stream << 1234.5;
    EXPECT_EQ(stream.str(), "1.234,5") << "the locale is in force";
    for (const char* name : names) {
        std::setlocale(LC_ALL, name);  // where it is installed
        EXPECT_EQ(format(Length::um(1'234'500), Notation::millimetres()), "1234.5 mm") << name;
        EXPECT_EQ(formatArea(area(Length::mm(50'000), Length::mm(50'000)), Unit::Millimetres),
                  "2500.00 m²");
        for (const char* text : {"1234.5", "1234,5", "1234.5 MM", "1234.5mm"}) {
            const Result<Reading> reading = parse(text, Notation::millimetres(), "Kerf");
            ASSERT_TRUE(reading.ok()) << name << ' ' << text;
            EXPECT_EQ(reading->length, Length::um(1'234'500)) << name << ' ' << text;
        }
        // In Turkish a capital I is not the capital of i.
        EXPECT_TRUE(parse("1 INCH", Notation::millimetres(), "Kerf").ok()) << name;
    }
    std::setlocale(LC_ALL, "C");
    std::locale::global(before);
}

}  // namespace
}  // namespace kerfwright
