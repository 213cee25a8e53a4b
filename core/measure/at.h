// A count as an index. Counts are `int` throughout, since differences of them are reckoned with;
// containers want another type.
#pragma once

#include <cstddef>

namespace kerfwright {

/// `i` must not be negative.
constexpr std::size_t at(int i) {
    return static_cast<std::size_t>(i);
}

}  // namespace kerfwright
