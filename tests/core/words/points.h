// Finds numbers that are written with a decimal point, for languages that write a comma.
#pragma once

#include <algorithm>
#include <string>
#include <string_view>
#include <vector>

namespace kerfwright {

/// Each number with digits on both sides of a point, with some of the words around it. What begins
/// with a letter is a label ("P1.1") or the name of a file, and no number.
inline std::vector<std::string> pointedNumbers(std::string_view text) {
    const auto isDigit = [](char c) { return c >= '0' && c <= '9'; };
    const auto isLetter = [](char c) { return (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z'); };
    std::vector<std::string> found;
    for (std::size_t at = text.find('.'); at != std::string_view::npos;
         at = text.find('.', at + 1)) {
        if (at == 0 || at + 1 == text.size() || !isDigit(text[at - 1]) || !isDigit(text[at + 1])) {
            continue;
        }
        std::size_t begin = at;
        while (begin > 0 && (isDigit(text[begin - 1]) || isLetter(text[begin - 1]))) {
            --begin;
        }
        if (!isLetter(text[begin])) {
            const std::size_t from = begin - std::min<std::size_t>(begin, 30);
            found.emplace_back(text.substr(from, at + 10 - from));
        }
    }
    return found;
}

}  // namespace kerfwright
