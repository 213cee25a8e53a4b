#include "core/timber/generation.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace kerfwright::cutting {
namespace {

constexpr double small = 1e-9;

/// Multiples of 2^-30, so that sums of values are exact.
std::vector<double> onGrid(std::vector<double> values) {
    for (double& value : values) {
        value = std::ldexp(std::floor(std::ldexp(value, 30)), -30);
    }
    return values;
}

}  // namespace

bool Budget::spend(std::int64_t steps) {
    const bool askNow = left_ / 64 != (left_ - steps) / 64;
    left_ -= steps;
    return askNow ? ask() : !isSpent();
}

bool Budget::ask() {
    if (!stopped_ && goOn_ && !goOn_()) {
        stopped_ = true;
    }
    return !isSpent();
}

bool Task::isDone() const {
    return std::all_of(demand.begin(), demand.end(), [](int count) { return count <= 0; });
}

Task wholeTask(const Pool& pool) {
    Task task;
    for (const Item& item : pool.items) {
        task.demand.push_back(item.count);
    }
    for (const Blank& blank : pool.blanks) {
        task.blanks.push_back(blank.count());
    }
    return task;
}

bool Store::add(const Pattern& pattern) {
    if (pattern.isEmpty() || !known_.emplace(pattern.blank, pattern.counts).second) {
        return false;
    }
    patterns_.push_back(pattern);
    return true;
}

Generation::Generation(const Pool& pool, const Aim& aim, std::vector<Filler>& fillers, Store& store,
                       Budget& budget)
    : aim_(aim)
    , fillers_(fillers)
    , store_(store)
    , budget_(budget)
    , master_(pool, aim) {}

void Generation::solve(const Task& task, Until until, bool within) {
    master_.bound(task.demand, task.blanks);
    bound = 0;
    for (bool more = true; more;) {
        for (; added_ < store_.patterns().size(); ++added_) {
            master_.add(store_.patterns()[added_]);
        }
        master_.solve();
        value = master_.value();
        itemValues = onGrid(master_.itemValues());
        if (until == Until::Positive && value < small) {
            break;
        }
        double reached = 0;
        for (std::size_t item = 0; item < itemValues.size(); ++item) {
            reached += itemValues[item] * task.demand[item];
        }
        more = false;
        for (std::size_t blank = 0; blank < fillers_.size(); ++blank) {
            if (task.blanks[blank] == 0) {
                continue;
            }
            budget_.spend();
            Pattern pattern;
            const double full = within
                                    ? fillers_[blank].fillWithin(itemValues, task.demand, pattern)
                                    : fillers_[blank].fill(itemValues, &pattern);
            const double cost = aim_.cost[blank];
            reached += task.blanks[blank] * std::min(0.0, cost - full);
            if (full > cost + master_.blankValues()[blank] + small && store_.add(pattern)) {
                more = true;
            }
        }
        bound = std::max(bound, reached);
        if ((until == Until::Positive && bound > small) || budget_.isSpent() ||
            (!within && value - bound < small * value)) {
            break;
        }
    }
    taken.clear();
    const std::vector<double> often = master_.taken();
    for (std::size_t i = 0; i < often.size(); ++i) {
        if (often[i] > 1e-6) {
            taken.emplace_back(i, often[i]);
        }
    }
}

}  // namespace kerfwright::cutting
