#include "core/timber/greedy.h"

#include <algorithm>
#include <limits>

namespace kerfwright::cutting {

Greedy::Greedy(const Pool& pool, const Aim& aim, std::vector<Filler>& fillers, Store& store,
               Budget& budget, const std::vector<double>& values, std::uint64_t seed)
    : pool_(pool)
    , aim_(aim)
    , fillers_(fillers)
    , store_(store)
    , budget_(budget)
    , values_(values)
    , learnt_(values)
    , chance_(seed) {}

std::vector<Pattern> Greedy::round() {
    Task task = wholeTask(pool_);
    std::vector<double> values = learnt_;
    for (double& value : values) {
        value *= 0.9 + 0.2 * chance_.part();
    }
    const std::size_t blanks = pool_.blanks.size();
    std::vector<double> liking(blanks);
    for (double& like : liking) {
        like = 0.95 + 0.1 * chance_.part();
    }
    // What a blank can hold only shrinks while the demand does, so an old value is a bound, and
    // only the foremost has to be filled anew.
    std::vector<double> full(blanks, std::numeric_limits<double>::max());
    std::vector<Pattern> patterns(blanks);
    std::vector<Pattern> chosen;
    while (!task.isDone() && !budget_.isSpent()) {
        std::vector<char> fresh(blanks, 0);
        std::size_t best = blanks;
        for (;;) {
            best = blanks;
            double most = 0;
            for (std::size_t blank = 0; blank < blanks; ++blank) {
                const double ratio = full[blank] / aim_.cost[blank] * liking[blank];
                if (task.blanks[blank] > 0 && ratio > most) {
                    best = blank;
                    most = ratio;
                }
            }
            if (best == blanks || fresh[best] != 0) {
                break;
            }
            budget_.spend();
            full[best] = fillers_[best].fillWithin(values, task.demand, patterns[best]);
            fresh[best] = 1;
        }
        if (best == blanks) {
            break;
        }
        const Pattern& pattern = patterns[best];
        store_.add(pattern);
        int times = task.blanks[best];
        for (std::size_t item = 0; item < pattern.counts.size(); ++item) {
            if (pattern.counts[item] > 0) {
                times = std::min(times, task.demand[item] / pattern.counts[item]);
            }
        }
        for (std::size_t item = 0; item < pattern.counts.size(); ++item) {
            task.demand[item] -= times * pattern.counts[item];
        }
        task.blanks[best] -= times;
        chosen.insert(chosen.end(), static_cast<std::size_t>(times), pattern);
    }
    std::vector<double> sums(values_.size());
    std::vector<int> counts(values_.size());
    for (const Pattern& pattern : chosen) {
        double worth = 0;
        for (std::size_t item = 0; item < pattern.counts.size(); ++item) {
            worth += pattern.counts[item] * values_[item];
        }
        const double rate =
            worth > 0 ? std::min(aim_.cost[static_cast<std::size_t>(pattern.blank)] / worth, 2.0)
                      : 2.0;
        for (std::size_t item = 0; item < pattern.counts.size(); ++item) {
            sums[item] += pattern.counts[item] * values_[item] * rate;
            counts[item] += pattern.counts[item];
        }
    }
    for (std::size_t item = 0; item < sums.size(); ++item) {
        if (counts[item] > 0) {
            learnt_[item] = 0.7 * learnt_[item] + 0.3 * sums[item] / counts[item];
        }
    }
    return chosen;
}

}  // namespace kerfwright::cutting
