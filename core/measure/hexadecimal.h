// How a checksum is written.
#pragma once

#include <cstdint>
#include <string>

namespace kerfwright {

/// The last `digits` hexadecimal digits of a number, small letters, with leading zeros.
inline std::string hexadecimal(std::uint64_t number, std::size_t digits) {
    std::string text(digits, '0');
    for (std::size_t i = digits; i > 0; --i) {
        text[i - 1] = "0123456789abcdef"[number & 0xFU];
        number >>= 4U;
    }
    return text;
}

}  // namespace kerfwright
