#include "core/measure/number.h"

#include "core/words/say.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>

namespace kerfwright {
namespace {

/// Not printf or a stream: there the mark would be the system's.
template <class... Style>
std::string digitsOf(double number, Style... style) {
    std::array<char, 400> text{};  // the greatest number has 309 digits before the mark
    const auto end = std::to_chars(text.data(), text.data() + text.size(), number, style...);
    std::replace(text.data(), end.ptr, '.', decimalMark());
    return std::string(text.data(), end.ptr);
}

}  // namespace

char decimalMark(DecimalMark mark) {
    // Translators: what stands before the decimals, "." or ","; others could not be read back.
    return mark == DecimalMark::Spoken && sayIn("decimal mark", ".") == "," ? ',' : '.';
}

std::optional<double> parseNumber(std::string_view text) {
    const std::size_t first = text.find_first_not_of(' ');
    if (first == std::string_view::npos) {
        return std::nullopt;
    }
    std::string plain(text.substr(first, text.find_last_not_of(' ') - first + 1));
    std::replace(plain.begin(), plain.end(), ',', '.');
    const bool signedOne = plain.front() == '-' || plain.front() == '+';
    const std::string digits = plain.substr(signedOne ? 1 : 0);
    const bool isPlain = digits.find_first_not_of("0123456789.") == std::string::npos &&
                         digits.find_first_of("0123456789") != std::string::npos &&
                         std::count(digits.begin(), digits.end(), '.') <= 1;
    double number = 0;
    const char* const end = digits.data() + digits.size();
    if (!isPlain ||
        std::from_chars(digits.data(), end, number, std::chars_format::fixed).ec != std::errc()) {
        return std::nullopt;
    }
    return plain.front() == '-' ? -number : number;
}

std::string formatNumber(double number) {
    return digitsOf(number, std::chars_format::fixed);
}

std::string formatFigures(double number) {
    return digitsOf(number, std::chars_format::general, 6);
}

std::string formatFixed(double number, int decimals) {
    return digitsOf(number, std::chars_format::fixed, decimals);
}

}  // namespace kerfwright
