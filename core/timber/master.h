// The choice among patterns: as a linear program, whose duals value the items, and in whole
// numbers. Private to core/timber.
#pragma once

#include "core/timber/pool.h"

#include <functional>
#include <memory>
#include <vector>

namespace kerfwright::cutting {

/// What a choice is judged by.
struct Aim {
    std::vector<double> cost;     ///< of each blank
    std::vector<double> penalty;  ///< of each item that is missing
};

/// Covers the items with patterns, every blank used as often as there are alike planks.
class Master {
public:
    Master(const Pool& pool, const Aim& aim);
    ~Master();

    void add(const Pattern& pattern);
    /// How many of each item are to be covered, and how many of each blank may be taken.
    void bound(const std::vector<int>& demand, const std::vector<int>& blanks);
    void solve();
    double value() const;
    const std::vector<double>& itemValues() const { return itemValues_; }
    /// What one more of a blank would save; 0 or more.
    const std::vector<double>& blankValues() const { return blankValues_; }
    /// How often each pattern is taken, in the order in which they were added.
    std::vector<double> taken() const;

private:
    struct Program;
    std::unique_ptr<Program> program_;
    std::vector<double> itemValues_;
    std::vector<double> blankValues_;
};

/// Asked now and then; false stops.
using GoOn = std::function<bool()>;

/// Whole numbers of patterns for less than `cutoff`; empty where none were found within so many
/// nodes.
std::vector<int> chooseWhole(const Pool& pool, const Aim& aim, const std::vector<Pattern>& patterns,
                             double cutoff, int nodes, const GoOn& goOn);

}  // namespace kerfwright::cutting
