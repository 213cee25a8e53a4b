#include "core/measure/length.h"
#include "core/measure/rational.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <type_traits>

namespace kerfwright {
namespace {

// International inch: exactly 25.4 mm (ISO 31-1 annex; agreement of 1959).
static_assert(Length::inch(1) == Length::um(25'400));
static_assert(Length::inch(1, 64).nm() == 396'875);
static_assert(Length::inch(63, 64).nm() == 63 * 396'875);
static_assert(Length::inch(12) == Length::um(304'800));
static_assert(Length::mm(1).nm() == 1'000'000);
static_assert(Length::um(1) == Length::nm(1'000));
static_assert(Length() == Length::nm(0));
static_assert(Length::inch(-1, 8) == -Length::inch(1, 8));
static_assert(Length::mm(3) - Length::mm(5) == -Length::mm(2));
static_assert(Length::mm(3) * 4 == 4 * Length::mm(3));
static_assert(Length::mm(2) < Length::mm(3));

static_assert(half(Length::inch(1, 64)).nm() == 198'437, "an odd nanometre is lost, not gained");
static_assert(half(-Length::nm(3)) == -Length::nm(1));

static_assert(roundedUp(Length::um(531'400), Length::mm(10)) == Length::mm(540));
static_assert(roundedUp(Length::mm(540), Length::mm(10)) == Length::mm(540));
static_assert(roundedUp(Length(), Length::mm(10)) == Length());
static_assert(roundedUp(-Length::mm(15), Length::mm(10)) == -Length::mm(10));

template <class A, class B>
concept CanMultiply = requires(A a, B b) {
    a* b;
};
static_assert(!CanMultiply<Length, Length>, "an area has a name of its own");
static_assert(!CanMultiply<Length, double>, "a cut is never a fraction of a nanometre");
static_assert(!std::is_constructible_v<Length, std::int64_t>, "no way in from a bare number");
static_assert(!std::is_convertible_v<Length, std::int64_t>);

TEST(Length, BoardMeasureOfPublishedExamples) {
    // Published worked examples of board measure (trade press): 1 x 9 x 96 in is 6 board feet,
    // 1 1/2 x 9 x 96 in is 9.
    EXPECT_DOUBLE_EQ(volume(Length::inch(1), Length::inch(9), Length::inch(96)).toBoardFeet(), 6.0);
    EXPECT_DOUBLE_EQ(volume(Length::inch(3, 2), Length::inch(9), Length::inch(96)).toBoardFeet(),
                     9.0);
}

TEST(Length, AreasAndVolumesAreExactFarBeyondAnyWorkshop) {
    const Length kilometre = Length::mm(1'000'000);
    const detail::Wide cubic = volume(kilometre, kilometre, kilometre).cubicNm();
    detail::Wide expected = 1;
    for (int i = 0; i < 36; ++i) {
        expected *= 10;
    }
    EXPECT_TRUE(cubic == expected);
    EXPECT_TRUE(volume(kilometre, kilometre, kilometre - Length::nm(1)) <
                volume(kilometre, kilometre, kilometre));
    EXPECT_TRUE(area(Length::nm(3), Length::nm(7)) == Area(21));
    EXPECT_DOUBLE_EQ(area(Length::mm(500), Length::mm(500)).toSquareMetres(), 0.25);
}

RC_GTEST_PROP(Length, RoundingUpIsTheSmallestMultipleThatIsNotLess, ()) {
    const Length length =
        Length::nm(*rc::gen::inRange<std::int64_t>(-4'000'000'000, 4'000'000'000));
    const Length step = Length::nm(*rc::gen::inRange<std::int64_t>(1, 400'000'000));
    const Length up = roundedUp(length, step);
    RC_ASSERT(up.nm() % step.nm() == 0);
    RC_ASSERT(up >= length);
    RC_ASSERT(up - step < length);
}

using detail::Rational;
using detail::Wide;

static_assert(Rational(-6, 4).numerator() == -3 && Rational(-6, 4).denominator() == 2);
static_assert(Rational(5, 2).nearest() == 3 && Rational(-5, 2).nearest() == -3);
static_assert(Rational(12, 5).nearest() == 2 && Rational(13, 5).nearest() == 3);
static_assert(Rational(0, 7).isWhole() && Rational(0, 7).denominator() == 1);
static_assert(!detail::product(detail::wideGreatest, 2));
static_assert(detail::product(detail::wideGreatest, -1) == -detail::wideGreatest);
static_assert(!detail::sum(detail::wideGreatest, 1) && !detail::sum(-detail::wideGreatest, -2));
static_assert(detail::sum(detail::wideGreatest, 0) == detail::wideGreatest);
static_assert(!Rational::add(Rational(1, detail::wideGreatest), Rational(1, 2)),
              "says so instead of wrapping round");

RC_GTEST_PROP(Rational, AddsLikeCrossMultiplication, ()) {
    const auto any = rc::gen::inRange<std::int64_t>(-100'000, 100'000);
    const auto positive = rc::gen::inRange<std::int64_t>(1, 100'000);
    const std::int64_t a = *any;
    const std::int64_t b = *positive;
    const std::int64_t c = *any;
    const std::int64_t d = *positive;
    const auto sum = Rational::add(Rational(a, b), Rational(c, d));
    RC_ASSERT(sum.has_value());
    RC_ASSERT(sum->numerator() * b * d == (Wide{a} * d + Wide{c} * b) * sum->denominator());
    RC_ASSERT(detail::commonDivisor(sum->numerator(), sum->denominator()) == 1);
}

}  // namespace
}  // namespace kerfwright
