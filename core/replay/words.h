// How the bench puts lengths and labels in its faults.
#pragma once

#include "core/measure/notation.h"

#include <string>
#include <string_view>

namespace kerfwright {

inline std::string inWords(Length length) {
    return format(length, Notation::millimetres(6));
}

inline std::string quoted(std::string_view label) {
    return "“" + std::string(label) + "”";
}

}  // namespace kerfwright
