// Exact fractions for reading entries. Private to core/measure.
//
// A chain of fractions can need a denominator that no machine word holds. Every operation therefore
// says so instead of wrapping round: the reader turns an empty answer into a fault.
#pragma once

#include "core/measure/length.h"

#include <optional>

namespace kerfwright::detail {

inline constexpr Wide wideGreatest = ((Wide{1} << 126) - 1) * 2 + 1;

constexpr Wide magnitude(Wide value) {
    return value < 0 ? -value : value;
}

/// Empty where the product leaves 128 bits. Neither factor may be the least value of its type.
constexpr std::optional<Wide> product(Wide a, Wide b) {
    if (b != 0 && magnitude(a) > wideGreatest / magnitude(b)) {
        return std::nullopt;
    }
    return a * b;
}

/// Empty where the sum leaves 128 bits.
constexpr std::optional<Wide> sum(Wide a, Wide b) {
    if (b > 0 ? a > wideGreatest - b : a < -wideGreatest - b) {
        return std::nullopt;
    }
    return a + b;
}

constexpr Wide commonDivisor(Wide a, Wide b) {
    a = magnitude(a);
    b = magnitude(b);
    while (b != 0) {
        const Wide rest = a % b;
        a = b;
        b = rest;
    }
    return a;
}

/// Always in lowest terms, the denominator more than 0.
class Rational {
public:
    constexpr Rational() = default;
    /// `denominator` must be more than 0.
    constexpr Rational(Wide numerator, Wide denominator) {
        const Wide divisor = commonDivisor(numerator, denominator);
        // A denominator above 0 has no divisor of 0.
        numerator_ = numerator / divisor;  // NOLINT(clang-analyzer-core.DivideZero)
        denominator_ = denominator / divisor;
    }

    constexpr Wide numerator() const { return numerator_; }
    constexpr Wide denominator() const { return denominator_; }
    constexpr bool isWhole() const { return denominator_ == 1; }
    constexpr Rational operator-() const { return Rational(-numerator_, denominator_); }

    /// Rounded to the nearest whole number, halves away from zero.
    constexpr Wide nearest() const {
        const Wide whole = numerator_ / denominator_;
        const Wide rest = magnitude(numerator_ % denominator_);
        if (rest < denominator_ - rest) {
            return whole;
        }
        return numerator_ < 0 ? whole - 1 : whole + 1;
    }

    static constexpr std::optional<Rational> times(const Rational& a, Wide factor) {
        // Dividing first keeps the product small: most entries are binary or decimal fractions.
        const Wide divisor = commonDivisor(factor, a.denominator_);
        const std::optional<Wide> top = product(a.numerator_, factor / divisor);
        if (!top) {
            return std::nullopt;
        }
        return Rational(*top, a.denominator_ / divisor);
    }

    static constexpr std::optional<Rational> add(const Rational& a, const Rational& b) {
        const Wide divisor = commonDivisor(a.denominator_, b.denominator_);
        const std::optional<Wide> bottom = product(a.denominator_, b.denominator_ / divisor);
        const std::optional<Wide> left = product(a.numerator_, b.denominator_ / divisor);
        const std::optional<Wide> right = product(b.numerator_, a.denominator_ / divisor);
        if (!bottom || !left || !right) {
            return std::nullopt;
        }
        const std::optional<Wide> top = sum(*left, *right);
        if (!top) {
            return std::nullopt;
        }
        return Rational(*top, *bottom);
    }

private:
    Wide numerator_ = 0;
    Wide denominator_ = 1;
};

}  // namespace kerfwright::detail
