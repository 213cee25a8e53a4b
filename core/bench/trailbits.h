// Sorted lists of numbers, as the trails keep them. Private to core/bench.
#pragma once

#include "core/measure/at.h"

#include <algorithm>
#include <cstddef>
#include <vector>

namespace kerfwright::bits {

inline void tidy(std::vector<int>& numbers) {
    std::sort(numbers.begin(), numbers.end());
    numbers.erase(std::unique(numbers.begin(), numbers.end()), numbers.end());
}

template <class Container>
void append(std::vector<int>& all, const Container& more) {
    all.insert(all.end(), more.begin(), more.end());
}

}  // namespace kerfwright::bits
