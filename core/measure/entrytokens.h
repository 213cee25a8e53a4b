// What an entry is spelt with: units, signs of fractions, spaces, minus signs. Private to
// core/measure.
#pragma once

#include "core/measure/notation.h"

#include <array>
#include <string>
#include <string_view>

namespace kerfwright::detail {

enum class Measure { Bare, Millimetre, Centimetre, Metre, Inch, Foot };

struct UnitWord {
    std::string_view word;
    Measure measure;
};
inline constexpr std::array unitWords{
    UnitWord{"mm", Measure::Millimetre}, UnitWord{"cm", Measure::Centimetre},
    UnitWord{"m", Measure::Metre},       UnitWord{"in", Measure::Inch},
    UnitWord{"inch", Measure::Inch},     UnitWord{"inches", Measure::Inch},
    UnitWord{"ft", Measure::Foot},       UnitWord{"foot", Measure::Foot},
    UnitWord{"feet", Measure::Foot},
};
// The curly quotes are what word processors make of the straight ones.
inline constexpr std::array unitSigns{
    UnitWord{"\"", Measure::Inch}, UnitWord{"″", Measure::Inch}, UnitWord{"”", Measure::Inch},
    UnitWord{"'", Measure::Foot},  UnitWord{"′", Measure::Foot}, UnitWord{"’", Measure::Foot},
};

struct FractionSign {
    std::string_view sign;
    int above;
    int below;
};
inline constexpr std::array fractionSigns{
    FractionSign{"½", 1, 2}, FractionSign{"¼", 1, 4}, FractionSign{"¾", 3, 4},
    FractionSign{"⅛", 1, 8}, FractionSign{"⅜", 3, 8}, FractionSign{"⅝", 5, 8},
    FractionSign{"⅞", 7, 8},
};

inline constexpr std::array<std::string_view, 7> spaces{" ",      "\t",     "\n",    "\r",
                                                        "\u00a0", "\u2009", "\u202f"};
inline constexpr std::array<std::string_view, 3> minusSigns{"-", "−", "–"};
inline constexpr std::array<std::string_view, 2> slashes{"/", "⁄"};
inline constexpr std::array<std::string_view, 2> roundingMarks{"≈", "~"};

/// In the unit itself, or in that of a bare number.
std::int64_t nmIn(Measure measure, Unit bareUnit);

inline bool isDigit(char c) {
    return c >= '0' && c <= '9';
}
inline bool isLetter(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}
inline char lowerCase(char c) {
    return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
}

/// Takes the first of the strings that `rest` begins with, and says whether there was one.
template <class Strings>
bool takeOne(std::string_view& rest, const Strings& strings) {
    for (const std::string_view string : strings) {
        if (rest.starts_with(string)) {
            rest.remove_prefix(string.size());
            return true;
        }
    }
    return false;
}

/// Whether there is nothing but spaces of whatever kind.
bool isBlank(std::string_view text);

/// What a fault repeats of a text: fit to be shown on one line, whatever was typed or pasted.
std::string quoted(std::string_view text, std::size_t longest = 40);

}  // namespace kerfwright::detail
