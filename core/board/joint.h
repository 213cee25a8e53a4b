// A joint seen on the face of the field.
#pragma once

#include "core/measure/length.h"

namespace kerfwright {

struct Joint {
    bool vertical = true;  ///< runs down at x = `at`; else runs across at y = `at`
    Length at;
    Length from;
    Length to;
    friend bool operator==(const Joint&, const Joint&) = default;
    friend auto operator<=>(const Joint&, const Joint&) = default;
};

}  // namespace kerfwright
