// Plain numbers as the maker types them: percent, degrees, densities. Lengths are notation.h's.
//
// The decimal mark of what is written for a person is that of the language that is spoken; the
// locale of the system has no say. Reading takes both marks in every language.
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace kerfwright {

/// Whose decimal mark is written.
enum class DecimalMark {
    Spoken,  ///< that of the language: for all that a person reads
    Point,   ///< the same in every language: for files and all else that programs read
};

/// A comma where the language that is spoken writes one, else a point.
char decimalMark(DecimalMark mark = DecimalMark::Spoken);

/// Digits with at most one decimal mark, a point or a comma, and a sign before them: "4,9", "-3",
/// ".5". Spaces around it are skipped. Nothing else is a number: no exponents, no groups of digits.
std::optional<double> parseNumber(std::string_view text);
/// The shortest digits that read back as the same number, without an exponent.
std::string formatNumber(double number);
/// The number to six figures, for limits and for what breaks them: "0.05", "14.2857", "1e+06".
std::string formatFigures(double number);
/// With so many decimals, "47.50".
std::string formatFixed(double number, int decimals);

}  // namespace kerfwright
