// The only place where text becomes a length and a length becomes text.
//
// Reading:  an entry is a sum of terms, `12 + 1/8`, `1 ft 6 in`, `2 in - 3 mm`. A term is a
//           decimal (`44.5`, `44,5`: both marks are decimal marks, there are no thousands
//           separators), a fraction (`3/4`, `½`), or a mixed number (`1 3/4`, `1-3/4`), with or
//           without a unit: mm, cm, m, in, ", inch, inches, ft, '. A term without a unit takes the
//           unit of the notation in force. A hyphen without spaces joins a mixed number, or inches
//           to feet (`5'-6"`); a minus has spaces on both sides or stands first. Terms set side by
//           side add, and share the sign before them: `-1 ft 6 in` is minus eighteen inches. The
//           mark of rounding, `≈` or `~`, is skipped. Nothing depends on the locale of the system.
// Writing:  inches as mixed fractions to a denominator (a power of two up to 64), millimetres as
//           decimals. A length on the grid of the style is written exactly and reads back as
//           itself; any other is marked as rounded (`≈ 3/16 in`) and reads back within half a step.
//           The decimal mark is that of the language that is spoken, but in what programs read.
#pragma once

#include "core/measure/length.h"
#include "core/measure/number.h"
#include "core/measure/result.h"

#include <initializer_list>
#include <string>
#include <string_view>

namespace kerfwright {

enum class Unit { Millimetres, Inches };

/// How lengths are written, and which unit a bare number has when read.
struct Notation {
    Unit unit = Unit::Millimetres;
    int denominator = 64;  ///< finest inch fraction written: 1, 2, 4, 8, 16, 32 or 64
    int decimals = 1;      ///< decimals of a millimetre written: 0 to 6

    static constexpr Notation millimetres(int decimals = 1) {
        return {Unit::Millimetres, 64, decimals};
    }
    static constexpr Notation inches(int denominator = 64) {
        return {Unit::Inches, denominator, 1};
    }

    /// The grid of the style: the distance between two lengths that it writes exactly.
    Length step() const;
    friend bool operator==(const Notation&, const Notation&) = default;
};

/// A length in words, and whether the words are short of the truth.
struct Written {
    std::string text;      ///< "1 3/4 in", "44.5 mm", "≈ 44.5 mm"
    bool rounded = false;  ///< true where the text is marked with `≈`
};

/// A text in lengths, and whether it named a length finer than a nanometre ("1/3 in").
struct Reading {
    Length length;
    bool rounded = false;  ///< true where the nearest nanometre was taken
};

/// With its unit. Never fails.
Written write(Length length, const Notation& notation, DecimalMark mark = DecimalMark::Spoken);
/// `write(...).text`, for texts that need no more.
std::string format(Length length, const Notation& notation, DecimalMark mark = DecimalMark::Spoken);
/// Without unit ("1 3/4", "44.5"), for tables that name the unit once.
std::string formatBare(Length length, const Notation& notation,
                       DecimalMark mark = DecimalMark::Spoken);
/// Sides of one thing, with the unit behind the last: "45 × 48 × 620 mm". Where one of them is
/// short of the truth a single `≈` stands before all: "≈ 44.5 × 48 × 620 mm".
std::string formatSize(std::initializer_list<Length> sides, const Notation& notation);
/// For the value in a fault, which must not look like the limit that it breaks: exact, where need
/// be with the millimetres behind it ("≈ 0 in (0.05 mm)").
std::string formatExact(Length length, const Notation& notation);
/// For the limits in a rule: the nearest length of the unit's finest style that is allowed, so that
/// what "must be at least" and "must be at most" promise is taken ("1/64 in" for at least 0.1 mm).
std::string formatLeast(Length limit, const Notation& notation);
std::string formatGreatest(Length limit, const Notation& notation);
/// "in" or "mm".
std::string_view unitName(Unit unit);
/// "0.25 m²" or "2.7 ft²", where small "53 cm²" or "6.2 in²"; always rounded, so never used where
/// something is cut.
std::string formatArea(Area area, Unit unit, DecimalMark mark = DecimalMark::Spoken);
/// "0.0217 m³" or "9.2 board feet"; always rounded.
std::string formatVolume(Volume volume, Unit unit, DecimalMark mark = DecimalMark::Spoken);

/// Reads an entry. `entry` is the name of the field for the fault: "Kerf". The fault quotes the
/// text as typed. Texts whose length is 1 km or more, either way, are refused.
Result<Reading> parse(std::string_view text, const Notation& notation, std::string_view entry);

}  // namespace kerfwright
