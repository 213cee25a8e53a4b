#include "core/timber/sums.h"

#include <algorithm>
#include <numeric>

namespace kerfwright::cutting {
namespace {

constexpr std::size_t mostSums = std::size_t{1} << 16;

/// Sorted; empty where there are too many.
std::vector<std::int64_t> sumsOf(const std::vector<std::pair<std::int64_t, int>>& parts,
                                 std::size_t from, std::size_t to) {
    std::vector<std::int64_t> sums = {0};
    for (std::size_t i = from; i < to; ++i) {
        const std::size_t before = sums.size();
        if (before * (static_cast<std::size_t>(parts[i].second) + 1) > 8 * mostSums) {
            return {};
        }
        for (int times = 1; times <= parts[i].second; ++times) {
            for (std::size_t one = 0; one < before; ++one) {
                sums.push_back(sums[one] + parts[i].first * times);
            }
        }
        std::sort(sums.begin(), sums.end());
        sums.erase(std::unique(sums.begin(), sums.end()), sums.end());
        if (sums.size() > mostSums) {
            return {};
        }
    }
    return sums;
}

}  // namespace

std::int64_t nextSum(const std::vector<std::pair<std::int64_t, int>>& parts, std::int64_t least) {
    const std::vector<std::int64_t> some = sumsOf(parts, 0, parts.size() / 2);
    const std::vector<std::int64_t> others = sumsOf(parts, parts.size() / 2, parts.size());
    if (some.empty() || others.empty()) {
        std::int64_t step = 0;
        for (const auto& part : parts) {
            step = std::gcd(step, part.first);
        }
        return step > 0 ? (least + step - 1) / step * step : least;
    }
    std::int64_t best = some.back() + others.back();
    std::size_t other = others.size();
    for (const std::int64_t one : some) {
        while (other > 0 && one + others[other - 1] >= least) {
            --other;
        }
        if (other < others.size()) {
            best = std::min(best, one + others[other]);
        }
    }
    return std::max(best, least);
}

std::vector<std::pair<std::int64_t, std::uint32_t>>
setsBetween(const std::vector<std::int64_t>& parts, std::int64_t least, std::int64_t below,
            std::size_t most) {
    std::vector<std::pair<std::int64_t, std::uint32_t>> sets;
    for (std::uint32_t set = 0; set < std::uint32_t{1} << parts.size(); ++set) {
        std::int64_t sum = 0;
        for (std::size_t i = 0; i < parts.size(); ++i) {
            sum += (set >> i & 1) != 0 ? parts[i] : 0;
        }
        if (sum >= least && sum < below) {
            sets.emplace_back(sum, set);
        }
    }
    if (sets.size() > most) {
        return {};
    }
    std::sort(sets.begin(), sets.end());
    return sets;
}

}  // namespace kerfwright::cutting
