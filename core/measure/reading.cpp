// Reading of length entries; the grammar is described in notation.h.
#include "core/measure/notation.h"
#include "core/measure/rational.h"

#include <array>
#include <optional>

namespace kerfwright {
namespace {

using detail::Rational;
using detail::Wide;

constexpr std::size_t longestEntry = 256;  // bytes; far more than any sum that somebody types
constexpr std::size_t longestQuote = 40;   // characters of an entry that a fault repeats
constexpr std::size_t wholeDigits = 12;    // so that no single term can leave 128 bits
constexpr std::size_t decimalDigits = 15;
constexpr std::size_t fractionDigits = 9;
constexpr Wide limit = Wide{1'000'000} * 1'000'000;  // nm in 1 km

enum class Measure { Bare, Millimetre, Centimetre, Metre, Inch, Foot };

struct UnitWord {
    std::string_view word;
    Measure measure;
};
constexpr std::array unitWords{
    UnitWord{"mm", Measure::Millimetre}, UnitWord{"cm", Measure::Centimetre},
    UnitWord{"m", Measure::Metre},       UnitWord{"in", Measure::Inch},
    UnitWord{"inch", Measure::Inch},     UnitWord{"inches", Measure::Inch},
    UnitWord{"ft", Measure::Foot},       UnitWord{"foot", Measure::Foot},
    UnitWord{"feet", Measure::Foot},
};
// The curly quotes are what word processors make of the straight ones.
constexpr std::array unitSigns{
    UnitWord{"\"", Measure::Inch}, UnitWord{"″", Measure::Inch}, UnitWord{"”", Measure::Inch},
    UnitWord{"'", Measure::Foot},  UnitWord{"′", Measure::Foot}, UnitWord{"’", Measure::Foot},
};

struct FractionSign {
    std::string_view sign;
    int above;
    int below;
};
constexpr std::array fractionSigns{
    FractionSign{"½", 1, 2}, FractionSign{"¼", 1, 4}, FractionSign{"¾", 3, 4},
    FractionSign{"⅛", 1, 8}, FractionSign{"⅜", 3, 8}, FractionSign{"⅝", 5, 8},
    FractionSign{"⅞", 7, 8},
};

constexpr std::array<std::string_view, 7> spaces{" ",      "\t",     "\n",    "\r",
                                                 "\u00a0", "\u2009", "\u202f"};
constexpr std::array<std::string_view, 3> minusSigns{"-", "−", "–"};
constexpr std::array<std::string_view, 2> slashes{"/", "⁄"};
constexpr std::array<std::string_view, 2> roundingMarks{"≈", "~"};

std::int64_t nmIn(Measure measure, Unit bareUnit) {
    switch (measure) {
    case Measure::Millimetre:
        return Length::mm(1).nm();
    case Measure::Centimetre:
        return Length::mm(10).nm();
    case Measure::Metre:
        return Length::mm(1000).nm();
    case Measure::Inch:
        return Length::inch(1).nm();
    case Measure::Foot:
        return Length::inch(12).nm();
    case Measure::Bare:
        break;
    }
    return nmIn(bareUnit == Unit::Inches ? Measure::Inch : Measure::Millimetre, bareUnit);
}

bool isDigit(char c) {
    return c >= '0' && c <= '9';
}
bool isLetter(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}
char lowerCase(char c) {
    return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
}

/// How many bytes the UTF-8 character at the front has; 0 where it is not one.
std::size_t characterLength(std::string_view text) {
    const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[i]); };
    const unsigned char lead = byte(0);
    if (lead < 0x80) {
        return 1;
    }
    const std::size_t length = lead >= 0xf0 ? 4 : lead >= 0xe0 ? 3 : 2;
    if (lead < 0xc2 || lead > 0xf4 || text.size() < length) {
        return 0;
    }
    for (std::size_t i = 1; i < length; ++i) {
        if ((byte(i) & 0xc0) != 0x80) {
            return 0;
        }
    }
    const bool overlong = (lead == 0xe0 && byte(1) < 0xa0) || (lead == 0xf0 && byte(1) < 0x90);
    const bool surrogate = lead == 0xed && byte(1) > 0x9f;
    const bool beyond = lead == 0xf4 && byte(1) > 0x8f;
    return overlong || surrogate || beyond ? 0 : length;
}

/// What a fault repeats of a text: fit to be shown on one line, whatever was typed or pasted.
std::string quoted(std::string_view text, std::size_t longest = longestQuote) {
    std::string shown;
    for (std::size_t count = 0; !text.empty(); ++count) {
        if (count == longest) {
            return shown + "…";
        }
        const std::size_t length = characterLength(text);
        const auto lead = static_cast<unsigned char>(text.front());
        if (length == 0 || lead < 0x20 || lead == 0x7f) {
            shown += "\ufffd";
        } else {
            shown += text.substr(0, length);
        }
        text.remove_prefix(length == 0 ? 1 : length);
    }
    return shown;
}

struct Term {
    Rational size;  ///< in its own measure
    Measure measure = Measure::Bare;
};

/// A run of digits with at most one decimal mark.
struct Number {
    std::string_view whole;
    std::string_view decimals;
    bool isDecimal = false;
};

class Reader {
public:
    Reader(std::string_view text, Unit bareUnit)
        : all_(text)
        , rest_(text)
        , bareUnit_(bareUnit) {}

    /// The sum in nm, or nothing; then `rule()` says what was broken.
    std::optional<Rational> read();
    const std::string& rule() const { return rule_; }

private:
    std::nullopt_t refuse(std::string rule) {
        rule_ = std::move(rule);
        return std::nullopt;
    }
    std::nullopt_t refuseRest();

    template <class Strings>
    bool take(const Strings& strings) {
        for (const std::string_view string : strings) {
            if (rest_.starts_with(string)) {
                rest_.remove_prefix(string.size());
                return true;
            }
        }
        return false;
    }
    bool skipSpaces() {
        bool skipped = false;
        while (take(spaces)) {
            skipped = true;
        }
        return skipped;
    }
    bool atDigit() const { return !rest_.empty() && isDigit(rest_.front()); }
    bool atNumber() const;

    std::string_view takeDigits();
    Number takeNumber();
    std::optional<Wide> whole(std::string_view digits, std::size_t most, const char* what);
    std::optional<Rational> decimal(const Number& number);
    std::optional<Rational> fractionAfter(std::string_view above);
    std::optional<Rational> fractionSign();
    std::optional<Rational> mixed();
    std::optional<Measure> measure();
    std::optional<Term> term();
    bool add(const Term& term, bool negative);

    std::string_view all_;
    std::string_view rest_;
    Unit bareUnit_;
    Rational sum_;
    std::string rule_;
};

constexpr const char* minusRule = "must have a space on both sides of a minus; a hyphen without "
                                  "spaces joins a whole number and a fraction";

std::nullopt_t Reader::refuseRest() {
    if (rest_.empty()) {
        return refuse("must have a number after the sign");
    }
    std::string rule = "must be a length such as ";
    rule += bareUnit_ == Unit::Inches ? "1 3/4 or 44.5 mm" : "44.5 or 1 3/4 in";
    // Of an entry that could be read in part, name what could not.
    if (rest_.size() < all_.size()) {
        rule += ", without “" + quoted(rest_, 12) + "”";
    }
    return refuse(rule);
}

bool Reader::atNumber() const {
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

std::string_view Reader::takeDigits() {
    std::size_t count = 0;
    while (count < rest_.size() && isDigit(rest_[count])) {
        ++count;
    }
    const std::string_view digits = rest_.substr(0, count);
    rest_.remove_prefix(count);
    return digits;
}

Number Reader::takeNumber() {
    Number number;
    number.whole = takeDigits();
    if (!rest_.empty() && (rest_.front() == '.' || rest_.front() == ',')) {
        rest_.remove_prefix(1);
        number.isDecimal = true;
        number.decimals = takeDigits();
    }
    return number;
}

std::optional<Wide> Reader::whole(std::string_view digits, std::size_t most, const char* what) {
    const std::size_t first = digits.find_first_not_of('0');
    digits.remove_prefix(first == std::string_view::npos ? digits.size() : first);
    if (digits.size() > most) {
        return refuse("must have at most " + std::to_string(most) + " figures " + what);
    }
    Wide value = 0;
    for (const char digit : digits) {
        value = value * 10 + (digit - '0');
    }
    return value;
}

std::optional<Rational> Reader::decimal(const Number& number) {
    if (number.whole.empty() && number.decimals.empty()) {
        return refuse("must have a figure before or after the decimal mark");
    }
    const std::optional<Wide> before = whole(number.whole, wholeDigits, "before the decimal mark");
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
        return refuse("must have at most " + std::to_string(decimalDigits) +
                      " figures after the decimal mark");
    }
    for (const char digit : decimals) {
        above = above * 10 + (digit - '0');
        below *= 10;
    }
    return Rational(above, below);
}

/// `above` has been read and the slash taken.
std::optional<Rational> Reader::fractionAfter(std::string_view above) {
    skipSpaces();
    const Number under = takeNumber();
    if (under.whole.empty() || under.isDecimal) {
        return refuse("must have a whole number above and below the fraction line");
    }
    const std::optional<Wide> top = whole(above, fractionDigits, "above the fraction line");
    const std::optional<Wide> bottom =
        top ? whole(under.whole, fractionDigits, "below the fraction line") : std::nullopt;
    if (!bottom) {
        return std::nullopt;
    }
    if (*bottom == 0) {
        return refuse("must not divide by zero");
    }
    return Rational(*top, *bottom);
}

/// Empty without a rule where there is none.
std::optional<Rational> Reader::fractionSign() {
    for (const FractionSign& fraction : fractionSigns) {
        if (rest_.starts_with(fraction.sign)) {
            rest_.remove_prefix(fraction.sign.size());
            return Rational(fraction.above, fraction.below);
        }
    }
    return std::nullopt;
}

/// A decimal, a fraction or a mixed number.
std::optional<Rational> Reader::mixed() {
    if (const std::optional<Rational> sign = fractionSign()) {
        return sign;
    }
    if (!atNumber()) {
        return refuseRest();
    }
    const Number first = takeNumber();
    if (!rest_.empty() && first.isDecimal && (rest_.front() == '.' || rest_.front() == ',')) {
        return refuse("must have one decimal mark in a number; both . and , are decimal marks and "
                      "there is no mark for thousands");
    }

    const std::string_view afterFirst = rest_;
    const bool spaced = skipSpaces();
    if (take(slashes)) {
        if (first.isDecimal) {
            return refuse("must have a whole number above and below the fraction line");
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
        return refuse("must have a whole number before a fraction");
    }
    if (fraction->numerator() >= fraction->denominator()) {
        return refuse("must have a fraction of less than 1 after a whole number");
    }
    const std::optional<Wide> before = whole(first.whole, wholeDigits, "before a fraction");
    if (!before) {
        return std::nullopt;
    }
    return Rational::add(Rational(*before, 1), *fraction);
}

std::optional<Measure> Reader::measure() {
    for (const UnitWord& unit : unitSigns) {
        if (rest_.starts_with(unit.word)) {
            rest_.remove_prefix(unit.word.size());
            return unit.measure;
        }
    }
    std::string word;
    std::size_t count = 0;
    while (count < rest_.size() && isLetter(rest_[count])) {
        word.push_back(lowerCase(rest_[count]));
        ++count;
    }
    if (word.empty()) {
        return Measure::Bare;
    }
    for (const UnitWord& unit : unitWords) {
        if (word == unit.word) {
            rest_.remove_prefix(count);
            return unit.measure;
        }
    }
    return refuse("must have mm, cm, m, in or ft for a unit, not “" +
                  quoted(rest_.substr(0, count), 12) + "”");
}

std::optional<Term> Reader::term() {
    const std::optional<Rational> size = mixed();
    if (!size) {
        return std::nullopt;
    }
    const std::string_view afterNumber = rest_;
    skipSpaces();
    const std::optional<Measure> unit = measure();
    if (!unit) {
        return std::nullopt;
    }
    if (*unit == Measure::Bare) {
        rest_ = afterNumber;  // the space may belong to a minus
    }
    return Term{*size, *unit};
}

bool Reader::add(const Term& term, bool negative) {
    const std::optional<Rational> size = Rational::times(term.size, nmIn(term.measure, bareUnit_));
    const std::optional<Rational> sum =
        size ? Rational::add(sum_, negative ? -*size : *size) : std::nullopt;
    if (!sum) {
        refuse("must be a simpler sum; these fractions cannot be added exactly");
        return false;
    }
    sum_ = *sum;
    return true;
}

std::optional<Rational> Reader::read() {
    skipSpaces();
    if (take(roundingMarks)) {
        skipSpaces();
    }
    bool negative = take(minusSigns);
    if (!negative && rest_.starts_with('+')) {
        rest_.remove_prefix(1);
    }
    skipSpaces();

    std::optional<Term> last = term();
    if (!last || !add(*last, negative)) {
        return std::nullopt;
    }
    for (;;) {
        const bool spaced = skipSpaces();
        if (rest_.empty()) {
            return sum_;
        }
        // `5'-6"` and `5'6`: in the trade nothing but inches follows feet so closely.
        bool inchesFollow = false;
        bool unitFollows = false;
        if (rest_.starts_with('+')) {
            rest_.remove_prefix(1);
            skipSpaces();
            negative = false;
        } else if (take(minusSigns)) {
            const bool spacedAfter = skipSpaces();
            if (!spaced && !spacedAfter && last->measure == Measure::Foot) {
                inchesFollow = true;
            } else if (!spaced || !spacedAfter) {
                return refuse(minusRule);
            } else {
                negative = true;
            }
        } else if (atNumber() && last->measure != Measure::Bare) {
            // A term set beside another belongs to it: `-1 ft 6 in` is one foot and six inches
            // less.
            unitFollows = !spaced;
        } else if (atNumber()) {
            return refuse("must have a unit or a + between two numbers; there is no mark for "
                          "thousands");
        } else {
            return refuseRest();
        }
        const Measure before = last->measure;
        last = term();
        if (!last) {
            return std::nullopt;
        }
        const bool inches = last->measure == Measure::Inch ||
                            (last->measure == Measure::Bare && bareUnit_ == Unit::Inches);
        if (inchesFollow && !inches) {
            return refuse(minusRule);
        }
        // `1m50` is half a metre more to one reader and 50 mm to another.
        if (unitFollows && last->measure == Measure::Bare && !(before == Measure::Foot && inches)) {
            return refuse("must have a unit after every number that follows another so closely");
        }
        if (!add(*last, negative)) {
            return std::nullopt;
        }
    }
}

bool isBlank(std::string_view text) {
    while (!text.empty()) {
        bool space = false;
        for (const std::string_view one : spaces) {
            if (text.starts_with(one)) {
                text.remove_prefix(one.size());
                space = true;
                break;
            }
        }
        if (!space) {
            return false;
        }
    }
    return true;
}

}  // namespace

Result<Reading> parse(std::string_view text, const Notation& notation, std::string_view entry) {
    const auto fault = [&](std::string rule) {
        return Fault{std::string(entry), std::move(rule), quoted(text)};
    };
    if (text.size() > longestEntry) {
        return fault("must be at most " + std::to_string(longestEntry) + " characters long");
    }
    if (isBlank(text)) {
        return Fault{std::string(entry), "must not be empty", ""};
    }
    Reader reader(text, notation.unit);
    const std::optional<Rational> sum = reader.read();
    if (!sum) {
        return fault(reader.rule());
    }
    const Wide nm = sum->nearest();
    if (nm >= limit || nm <= -limit) {
        return fault("must be less than 1 km");
    }
    return Reading{Length::nm(static_cast<std::int64_t>(nm)), !sum->isWhole()};
}

}  // namespace kerfwright
