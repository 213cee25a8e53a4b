// Which planks: sets that may be cheaper than the best, and whether everything goes on them.
#include "core/measure/at.h"
#include "core/timber/onewood.h"
#include "core/timber/sums.h"

#include <algorithm>
#include <set>
#include <utility>

namespace kerfwright::cutting {
/// False where even the linear program leaves something missing.
bool OneWood::canHold(const Task& task) {
    fewestMissing_.solve(task, Generation::Until::Positive, false);
    return fewestMissing_.bound <= 1e-9;
}

bool OneWood::pack(const std::vector<int>& blanks, int attempts) {
    std::vector<int> free = blanks;
    std::vector<Pattern> patterns;
    for (const Pattern& pattern : best) {
        if (free[at(pattern.blank)] > 0) {
            --free[at(pattern.blank)];
            patterns.push_back(pattern);
        }
    }
    for (std::size_t blank = 0; blank < free.size(); ++blank) {
        const Pattern empty{static_cast<int>(blank), {}, std::vector<int>(pool_.items.size())};
        patterns.insert(patterns.end(), at(free[blank]), empty);
    }
    Packing packing = packer_.packing(std::move(patterns), wholeTask(pool_).demand);
    // By what is hard to lay, or by size: now one and now the other leads on.
    const std::vector<double>& values = chance_.part() < 0.5 ? values_ : scaledWeights_;
    packer_.fillEmpty(packing, values);
    const bool isPacked = packer_.improve(packing, values, attempts);
    for (const Pattern& pattern : packing.patterns) {
        store_.add(pattern);
    }
    return isPacked && offer(std::move(packing.patterns));
}

/// With few planks all sets of them are looked at that may be cheaper than the best.
void OneWood::bySets() {
    std::vector<std::int64_t> parts;
    std::vector<int> blankOf;
    for (std::size_t blank = 0; blank < pool_.blanks.size(); ++blank) {
        for (int i = 0; i < pool_.blanks[blank].count(); ++i) {
            parts.push_back(pool_.blanks[blank].cost);
            blankOf.push_back(static_cast<int>(blank));
        }
    }
    std::vector<std::pair<std::int64_t, std::vector<int>>> sets;
    bool isFirst = true;
    for (const auto& [sum, set] : setsBetween(parts, bound, cost, std::size_t{1} << fewPlanks)) {
        Task task = wholeTask(pool_);
        std::fill(task.blanks.begin(), task.blanks.end(), 0);
        for (std::size_t i = 0; i < parts.size(); ++i) {
            task.blanks[at(blankOf[i])] += (set >> i & 1) != 0 ? 1 : 0;
        }
        if (std::any_of(sets.begin(), sets.end(),
                        [&](const auto& other) { return other.second == task.blanks; }) ||
            !canHold(task)) {
            continue;
        }
        if (budget_.isSpent()) {
            return;
        }
        if (std::exchange(isFirst, false)) {
            raiseBound(sum);
        }
        sets.emplace_back(sum, task.blanks);
    }
    if (sets.empty()) {
        raiseBound(cost);
    }
    for (int attempts = 40; !sets.empty() && !budget_.isSpent();
         attempts = std::min(2 * attempts, mostAttempts)) {
        // Dear sets are easier: halving finds quickly how low it goes.
        std::size_t low = 0;
        while (low < sets.size() && !budget_.isSpent()) {
            const std::size_t middle =
                low + (attempts == 40 ? (sets.size() - low) / 2 : chance_.below(sets.size() - low));
            if (pack(sets[middle].second, attempts)) {
                std::erase_if(sets, [this](const auto& set) { return set.first >= cost; });
            } else {
                low = middle + 1;
            }
        }
    }
}

/// The blanks that hold most, by value, at a cost of `most`.
std::vector<int> OneWood::bestSet(std::int64_t most, double waver) {
    // Costs in steps, rounded up, so that the set is never dearer.
    constexpr std::int64_t steps = 4'000;
    const std::int64_t step = most / steps + 1;
    struct Unit {
        int blank;
        std::size_t cost;
        double value;
    };
    std::vector<Unit> units;
    for (std::size_t blank = 0; blank < pool_.blanks.size(); ++blank) {
        for (int i = 0; i < pool_.blanks[blank].count(); ++i) {
            units.push_back({static_cast<int>(blank),
                             static_cast<std::size_t>((pool_.blanks[blank].cost + step - 1) / step),
                             capacity_[blank] * (1 - waver / 2 + waver * chance_.part())});
        }
    }
    const auto room = static_cast<std::size_t>(most / step);
    std::vector<double> full(room + 1, 0);
    std::vector<std::vector<bool>> taken(units.size(), std::vector<bool>(room + 1, false));
    for (std::size_t i = 0; i < units.size(); ++i) {
        for (std::size_t at = room + 1; at-- > units[i].cost;) {
            const double with = full[at - units[i].cost] + units[i].value;
            if (with > full[at]) {
                full[at] = with;
                taken[i][at] = true;
            }
        }
    }
    std::vector<int> set(pool_.blanks.size(), 0);
    std::size_t left = room;
    for (std::size_t i = units.size(); i-- > 0;) {
        if (taken[i][left]) {
            ++set[at(units[i].blank)];
            left -= units[i].cost;
        }
    }
    return set;
}

/// With many planks: those that hold most at a cost between the bound and the best.
void OneWood::byCapacity() {
    for (int attempts = 60; !proven && !budget_.isSpent();
         attempts = std::min(2 * attempts, mostAttempts)) {
        std::set<std::vector<int>> tried;
        double low = 0;
        for (int tries = 0; tries < 8 && !proven && !budget_.isSpent(); ++tries) {
            const double part = low + (1 - low) * (0.4 + 0.5 * chance_.part());
            const auto most =
                bound + static_cast<std::int64_t>(static_cast<double>(cost - 1 - bound) * part);
            Task task = wholeTask(pool_);
            task.blanks = bestSet(most, attempts == 60 ? 0.0 : 0.02 * chance_.part());
            budget_.spend();
            if (tried.insert(task.blanks).second &&
                (!canHold(task) || !pack(task.blanks, attempts))) {
                low = part;
            }
        }
        if (!proven && manyAlike_) {
            alternate(20);
        } else if (!proven && !budget_.isSpent() && store_.patterns().size() > chosenFrom_ * 2) {
            byWhole(100);
        }
    }
}

}  // namespace kerfwright::cutting
