// The numbers of an entry: decimals, fractions and mixed numbers.
#include "core/measure/entryreader.h"
#include "core/words/say.h"

namespace kerfwright::detail {
namespace {

constexpr std::size_t wholeDigits = 12;  // so that no single term can leave 128 bits
constexpr std::size_t decimalDigits = 15;
constexpr std::size_t fractionDigits = 9;

}  // namespace

bool EntryReader::atNumber() const {
    if (rest_.empty()) {
        return false;
    }
    if (isDigit(rest_.front()) || rest_.front() == '.' || rest_.front() == ',') {
        return true;
    }
    for (const FractionSign& fraction : fractionSigns) {
        if (rest_.starts_with(fraction.sign)) {
            return true;
        }
    }
    return false;
}

std::string_view EntryReader::takeDigits() {
    std::size_t count = 0;
    while (count < rest_.size() && isDigit(rest_[count])) {
        ++count;
    }
    const std::string_view digits = rest_.substr(0, count);
    rest_.remove_prefix(count);
    return digits;
}

Number EntryReader::takeNumber() {
    Number number;
    number.whole = takeDigits();
    if (!rest_.empty() && (rest_.front() == '.' || rest_.front() == ',')) {
        rest_.remove_prefix(1);
        number.isDecimal = true;
        number.decimals = takeDigits();
    }
    return number;
}

std::optional<Wide> EntryReader::whole(std::string_view digits, std::size_t most,
                                       const char* rule) {
    const std::size_t first = digits.find_first_not_of('0');
    digits.remove_prefix(first == std::string_view::npos ? digits.size() : first);
    if (digits.size() > most) {
        return refuse(say(rule, most));
    }
    Wide value = 0;
    for (const char digit : digits) {
        value = value * 10 + (digit - '0');
    }
    return value;
}

std::optional<Rational> EntryReader::decimal(const Number& number) {
    if (number.whole.empty() && number.decimals.empty()) {
        return refuse(say("must have a figure before or after the decimal mark"));
    }
    const std::optional<Wide> before = whole(
        number.whole, wholeDigits, noted("must have at most {1} figures before the decimal mark"));
    if (!before) {
        return std::nullopt;
    }
    std::string_view decimals = number.decimals;
    while (decimals.ends_with('0')) {
        decimals.remove_suffix(1);
    }
    Wide above = *before;
    Wide below = 1;
    if (decimals.size() > decimalDigits) {
        return refuse(say("must have at most {1} figures after the decimal mark", decimalDigits));
    }
    for (const char digit : decimals) {
        above = above * 10 + (digit - '0');
        below *= 10;
    }
    return Rational(above, below);
}

/// `above` has been read and the slash taken.
std::optional<Rational> EntryReader::fractionAfter(std::string_view above) {
    skipSpaces();
    const Number under = takeNumber();
    if (under.whole.empty() || under.isDecimal) {
        return refuse(say("must have a whole number above and below the fraction line"));
    }
    const std::optional<Wide> top = whole(
        above, fractionDigits, noted("must have at most {1} figures above the fraction line"));
    const std::optional<Wide> bottom =
        top ? whole(under.whole, fractionDigits,
                    noted("must have at most {1} figures below the fraction line"))
            : std::nullopt;
    if (!bottom) {
        return std::nullopt;
    }
    if (*bottom == 0) {
        return refuse(say("must not divide by zero"));
    }
    return Rational(*top, *bottom);
}

/// Empty without a rule where there is none.
std::optional<Rational> EntryReader::fractionSign() {
    for (const FractionSign& fraction : fractionSigns) {
        if (rest_.starts_with(fraction.sign)) {
            rest_.remove_prefix(fraction.sign.size());
            return Rational(fraction.above, fraction.below);
        }
    }
    return std::nullopt;
}

/// A decimal, a fraction or a mixed number.
std::optional<Rational> EntryReader::mixed() {
    if (const std::optional<Rational> sign = fractionSign()) {
        return sign;
    }
    if (!atNumber()) {
        return refuseRest();
    }
    const Number first = takeNumber();
    if (!rest_.empty() && first.isDecimal && (rest_.front() == '.' || rest_.front() == ',')) {
        return refuse(
            say("must have one decimal mark in a number; both . and , are decimal marks and "
                "there is no mark for thousands"));
    }

    const std::string_view afterFirst = rest_;
    const bool spaced = skipSpaces();
    if (take(slashes)) {
        if (first.isDecimal) {
            return refuse(say("must have a whole number above and below the fraction line"));
        }
        return fractionAfter(first.whole);
    }

    // The fraction of a mixed number: `1 3/4`, `1-3/4`, `1½`, `1 ½`.
    const bool joined = !spaced && rest_.starts_with('-');
    if (joined) {
        rest_.remove_prefix(1);
    }
    std::optional<Rational> fraction = fractionSign();
    if (!fraction && atDigit()) {
        const std::string_view above = takeDigits();
        skipSpaces();
        if (take(slashes)) {
            fraction = fractionAfter(above);
            if (!fraction) {
                return std::nullopt;
            }
        }
    }
    if (!fraction) {
        rest_ = afterFirst;
        return decimal(first);
    }
    if (first.isDecimal) {
        return refuse(say("must have a whole number before a fraction"));
    }
    if (fraction->numerator() >= fraction->denominator()) {
        return refuse(say("must have a fraction of less than 1 after a whole number"));
    }
    const std::optional<Wide> before =
        whole(first.whole, wholeDigits, noted("must have at most {1} figures before a fraction"));
    if (!before) {
        return std::nullopt;
    }
    return Rational::add(Rational(*before, 1), *fraction);
}

}  // namespace kerfwright::detail
