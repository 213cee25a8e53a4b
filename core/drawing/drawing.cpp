#include "core/drawing/drawing.h"

#include "core/drawing/glyphs.h"

#include <algorithm>

namespace kerfwright {
namespace {

/// Takes one character off the front of UTF-8. A byte that starts none counts as itself.
char32_t takeCharacter(std::string_view& text) {
    const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[i]); };
    const unsigned char first = byte(0);
    std::size_t more = 0;
    char32_t code = first;
    if (first >= 0xF0) {
        more = 3;
        code = first & 0x07U;
    } else if (first >= 0xE0) {
        more = 2;
        code = first & 0x0FU;
    } else if (first >= 0xC0) {
        more = 1;
        code = first & 0x1FU;
    }
    std::size_t used = 1;
    for (; used <= more && used < text.size() && (byte(used) & 0xC0U) == 0x80U; ++used) {
        code = (code << 6U) | (byte(used) & 0x3FU);
    }
    text.remove_prefix(used);
    return code;
}

std::uint16_t advance(char32_t code, bool bold) {
    if (code >= 0x20 && code <= 0x7E) {
        return (bold ? glyphs::boldAscii : glyphs::regularAscii)[code - 0x20];
    }
    if (code >= 0xA0 && code <= 0xFF) {
        return (bold ? glyphs::boldLatin : glyphs::regularLatin)[code - 0xA0];
    }
    const auto* const sign = std::lower_bound(
        glyphs::signs.begin(), glyphs::signs.end(), code,
        [](const glyphs::Sign& one, char32_t wanted) { return one.code < wanted; });
    if (sign != glyphs::signs.end() && sign->code == code) {
        return bold ? sign->bold : sign->regular;
    }
    return glyphs::otherwise;
}

}  // namespace

double textWidth(std::string_view text, double size, bool bold) {
    long units = 0;
    while (!text.empty()) {
        units += advance(takeCharacter(text), bold);
    }
    return static_cast<double>(units) * size / glyphs::unitsPerEm;
}

std::vector<std::string> wrapped(std::string_view text, double size, bool bold, double width) {
    std::vector<std::string> lines;
    std::string line;
    while (!text.empty()) {
        const std::size_t start = text.find_first_not_of(' ');
        if (start == std::string_view::npos) {
            break;
        }
        text.remove_prefix(start);
        const std::string_view word = text.substr(0, text.find(' '));
        text.remove_prefix(word.size());
        std::string longer = line;
        if (!longer.empty()) {
            longer += ' ';
        }
        longer += word;
        if (!line.empty() && textWidth(longer, size, bold) > width) {
            lines.push_back(line);
            line = word;
        } else {
            line = std::move(longer);
        }
    }
    if (!line.empty()) {
        lines.push_back(line);
    }
    return lines;
}

}  // namespace kerfwright
