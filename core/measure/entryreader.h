// Reads one entry by the grammar that notation.h describes. Private to core/measure.
//
// A term is a number (decimal, fraction, mixed) with or without a unit; an entry is a sum of terms.
#pragma once

#include "core/measure/entrytokens.h"
#include "core/measure/rational.h"

#include <optional>

namespace kerfwright::detail {

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

class EntryReader {
public:
    EntryReader(std::string_view text, Unit bareUnit)
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
        return takeOne(rest_, strings);
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
    /// `rule` is said, with `most` in its place, where there are more figures.
    std::optional<Wide> whole(std::string_view digits, std::size_t most, const char* rule);
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

}  // namespace kerfwright::detail
