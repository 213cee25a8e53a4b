// How the bench puts lengths and labels in its faults.
#pragma once

#include "core/glueup/steps.h"
#include "core/measure/notation.h"
#include "core/words/say.h"

#include <string>
#include <string_view>

namespace kerfwright {

inline std::string inWords(Length length) {
    return format(length, Notation::millimetres(6));
}

inline std::string quoted(std::string_view label) {
    return say("“{1}”", shownLabel(std::string(label)));
}

}  // namespace kerfwright
