// The places where one rule is broken, gathered into one caution. Private to core/bench.
#pragma once

#include "core/board/seento.h"
#include "core/measure/length.h"

#include <string>
#include <vector>

namespace kerfwright::rules {

/// A workpiece that breaks a rule, at a step, and the length that the rule is about.
struct Spot {
    std::string label;
    int step = -1;
    Length length;
    bool field = false;
};

bool shorter(Length a, Length b);
bool longer(Length a, Length b);

/// The spots of one rule, one a workpiece, so that ten panels alike make one caution and not ten.
class Spots {
public:
    /// `isWorse(a, b)` tells whether length a is worse than b.
    explicit Spots(bool (*isWorse)(Length, Length))
        : isWorse_(isWorse) {}

    void add(Spot spot);
    bool empty() const { return spots_.empty(); }
    bool single() const { return spots_.size() == 1; }
    const Spot& worst() const;
    const std::vector<int>& steps() const { return steps_; }

    std::vector<std::string> labels() const;

    std::size_t count() const { return spots_.size(); }
    /// "A", "A, B and C", "A, B, C, D and 12 more".
    std::string names() const;
    /// What a caution about them rests upon; `limit` is what they break.
    std::vector<Fact> facts(Length limit) const;

private:
    bool (*isWorse_)(Length, Length);
    std::vector<Spot> spots_;
    std::vector<int> steps_;  // all of them, also those of one workpiece
};

}  // namespace kerfwright::rules
