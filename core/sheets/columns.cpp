#include "core/sheets/columns.h"

#include <algorithm>

namespace kerfwright {
namespace {

std::size_t missing(std::string_view text, std::size_t columns) {
    const std::size_t taken = columnsOf(text);
    return columns > taken ? columns - taken : 0;
}

}  // namespace

std::size_t columnsOf(std::string_view text) {
    return static_cast<std::size_t>(std::count_if(text.begin(), text.end(), [](char c) {
        return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U;
    }));
}

std::string leftAligned(std::string text, std::size_t columns) {
    text.append(missing(text, columns), ' ');
    return text;
}

std::string rightAligned(const std::string& text, std::size_t columns) {
    return std::string(missing(text, columns), ' ') + text;
}

}  // namespace kerfwright
