// How large a board a rack allows.
#pragma once

#include "core/timber/layout.h"

#include <functional>
#include <optional>

namespace kerfwright {

/// What the board of a size wants of the rack; a fault where it cannot be planned at that size.
using DemandAt = std::function<Result<Demand>(int size)>;

struct Largest {
    int size = 0;
    Layout layout;
    /// The next size is impossible: no layout of it is complete, or it cannot be planned.
    bool isSure = false;
};

/// The largest of the sizes 0 to `count` - 1 that the rack suffices for, found by halving: sizes
/// must want more timber the larger they are, such as the same board in squares of 30, 31, ... mm,
/// or with one row or column more each. Empty where not even size 0 can be laid. Each try takes the
/// budget of the rules at most. The callback sees the tries one after another.
std::optional<Largest> largestFrom(const Rack& rack, const CutRules& rules, int count,
                                   const DemandAt& demandAt, const LayoutCallback& callback = {});

}  // namespace kerfwright
