// The terms of an entry with their units, and their sum.
#include "core/measure/entryreader.h"
#include "core/words/say.h"

namespace kerfwright::detail {
namespace {

constexpr const char* minusRule =
    noted("must have a space on both sides of a minus; a hyphen without "
          "spaces joins a whole number and a fraction");

}  // namespace

std::nullopt_t EntryReader::refuseRest() {
    if (rest_.empty()) {
        return refuse(say("must have a number after the sign"));
    }
    const bool inches = bareUnit_ == Unit::Inches;
    const char* bare = inches ? "1 3/4" : "44.5";
    const char* withUnit = inches ? "44.5 mm" : "1 3/4 in";
    if (rest_.size() == all_.size()) {
        return refuse(say("must be a length such as {1} or {2}", bare, withUnit));
    }
    // Of an entry that could be read in part, name what could not.
    return refuse(say("must be a length such as {1} or {2}, without “{3}”", bare, withUnit,
                      quoted(rest_, 12)));
}

std::optional<Measure> EntryReader::measure() {
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
    return refuse(say("must have mm, cm, m, in or ft for a unit, not “{1}”",
                      quoted(rest_.substr(0, count), 12)));
}

std::optional<Term> EntryReader::term() {
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

bool EntryReader::add(const Term& term, bool negative) {
    const std::optional<Rational> size = Rational::times(term.size, nmIn(term.measure, bareUnit_));
    const std::optional<Rational> sum =
        size ? Rational::add(sum_, negative ? -*size : *size) : std::nullopt;
    if (!sum) {
        refuse(say("must be a simpler sum; these fractions cannot be added exactly"));
        return false;
    }
    sum_ = *sum;
    return true;
}

std::optional<Rational> EntryReader::read() {
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
                return refuse(say(minusRule));
            } else {
                negative = true;
            }
        } else if (atNumber() && last->measure != Measure::Bare) {
            // A term set beside another belongs to it: `-1 ft 6 in` is one foot and six inches
            // less.
            unitFollows = !spaced;
        } else if (atNumber()) {
            return refuse(say("must have a unit or a + between two numbers; there is no mark for "
                              "thousands"));
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
            return refuse(say(minusRule));
        }
        // `1m50` is half a metre more to one reader and 50 mm to another.
        if (unitFollows && last->measure == Measure::Bare && !(before == Measure::Foot && inches)) {
            return refuse(
                say("must have a unit after every number that follows another so closely"));
        }
        if (!add(*last, negative)) {
            return std::nullopt;
        }
    }
}

}  // namespace kerfwright::detail
