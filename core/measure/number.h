// Plain numbers as the maker types them: percent, degrees, densities. Lengths are notation.h's.
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace kerfwright {

/// Digits with at most one decimal mark, a point or a comma, and a sign before them: "4,9", "-3",
/// ".5". Spaces around it are skipped. Nothing else is a number: no exponents, no groups of digits.
std::optional<double> parseNumber(std::string_view text);
/// The shortest digits that read back as the same number, with a point and without an exponent.
std::string formatNumber(double number);

}  // namespace kerfwright
