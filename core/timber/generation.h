// Column generation: the linear program over all patterns there are, of which only those that help
// are ever made. Private to core/timber.
#pragma once

#include "core/timber/filler.h"
#include "core/timber/master.h"

#include <cstdint>
#include <set>
#include <utility>
#include <vector>

namespace kerfwright::cutting {

/// Steps that were taken, and whether to go on.
class Budget {
public:
    Budget(std::int64_t steps, GoOn goOn)
        : left_(steps)
        , goOn_(std::move(goOn)) {}
    /// False once all is spent, or the caller stopped.
    bool spend(std::int64_t steps = 1);
    bool isSpent() const { return left_ <= 0 || stopped_; }
    bool stopped() const { return stopped_; }
    std::int64_t left() const { return left_; }
    /// Asks without spending.
    bool ask();

private:
    std::int64_t left_;
    GoOn goOn_;
    bool stopped_ = false;
};

/// What is still to be done: of each item, how many; of each blank, how many are free.
struct Task {
    std::vector<int> demand;
    std::vector<int> blanks;
    bool isDone() const;
};
Task wholeTask(const Pool& pool);

/// Patterns, none twice for its blank and counts.
class Store {
public:
    /// True where it is new.
    bool add(const Pattern& pattern);
    const std::vector<Pattern>& patterns() const { return patterns_; }

private:
    std::vector<Pattern> patterns_;
    std::set<std::pair<int, std::vector<int>>> known_;
};

class Generation {
public:
    /// All must outlive it. Patterns that are found go to the store; those that others put there
    /// are taken in at the next `solve`.
    Generation(const Pool& pool, const Aim& aim, std::vector<Filler>& fillers, Store& store,
               Budget& budget);

    enum class Until {
        Best,      ///< the linear program's optimum
        Positive,  ///< as soon as the bound is above 0, or the optimum
    };
    /// Solves for a task. `within`: makes patterns with no more than the task's demand, which suit
    /// whole numbers better; `bound` is then of no meaning.
    void solve(const Task& task, Until until, bool within);

    double bound = 0;  ///< no covering costs less; exact as a sum of doubles
    double value = 0;  ///< of the linear program over the patterns so far
    /// Patterns that are taken, by their place in the store, and how often.
    std::vector<std::pair<std::size_t, double>> taken;
    std::vector<double> itemValues;

private:
    const Aim& aim_;
    std::vector<Filler>& fillers_;
    Store& store_;
    Budget& budget_;
    Master master_;
    std::size_t added_ = 0;  ///< patterns of the store that the master has
};

}  // namespace kerfwright::cutting
