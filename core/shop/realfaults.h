// Settings that are plain numbers, checked against the limits of their rows. Private to core/shop.
#pragma once

#include "core/measure/number.h"
#include "core/measure/result.h"
#include "core/words/say.h"

#include <cmath>
#include <string>
#include <vector>

namespace kerfwright {

inline std::string numberText(double value, const char* unit) {
    return formatNumber(value) + (*unit == '\0' ? "" : std::string(" ") + unit);
}

/// Outside its limits, or no whole number where one is asked for; in the order of the rows.
template <class Values, class Rows>
std::vector<Fault> realFaults(const Values& values, const Rows& rows) {
    std::vector<Fault> found;
    for (const auto& row : rows) {
        const double value = values.*row.value;
        if (row.whole && value != std::floor(value)) {
            found.push_back(
                {say(row.name), say("must be a whole number"), numberText(value, row.unit)});
        } else if (!(value >= row.least && value <= row.greatest)) {
            found.push_back({say(row.name),
                             say("must be from {1} to {2}", numberText(row.least, row.unit),
                                 numberText(row.greatest, row.unit)),
                             numberText(value, row.unit)});
        }
    }
    return found;
}

}  // namespace kerfwright
