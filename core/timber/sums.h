// Which sums can be reached. Private to core/timber.
#pragma once

#include <cstdint>
#include <utility>
#include <vector>

namespace kerfwright::cutting {

/// The smallest sum of parts (value more than 0, how often at most) that is not below `least`.
/// Where there are too many sums to look at, a number that no such sum is below.
std::int64_t nextSum(const std::vector<std::pair<std::int64_t, int>>& parts, std::int64_t least);

/// Sets of parts whose sums lie in `[least, below)`, the smallest sums first; empty where they
/// would be more than `most`. Each part may be taken once; at most 20 parts.
std::vector<std::pair<std::int64_t, std::uint32_t>>
setsBetween(const std::vector<std::int64_t>& parts, std::int64_t least, std::int64_t below,
            std::size_t most);

}  // namespace kerfwright::cutting
