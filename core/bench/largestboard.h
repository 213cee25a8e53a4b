// From the timber to the board: the largest one that a rack allows.
#pragma once

#include "core/bench/job.h"
#include "core/board/grown.h"
#include "core/timber/timber.h"

#include <optional>
#include <vector>

namespace kerfwright {

struct LargestBoard {
    GrownField field;
    Layout layout;        ///< of its strips on the rack, rails singly
    bool isSure = false;  ///< it is proven that the next size does not fit, or cannot be planned
};

/// The largest of `fields`, smallest first, whose board can be planned and laid on the rack of
/// `timber`, pins aside. Board, woods, shop and the rest are as for `makeJob`; the border keeps its
/// width and the board its thickness. The fault says why not even the smallest can be made, or that
/// the search was stopped before anything was found. The callback sees the tries one after another.
Result<LargestBoard> largestBoard(const Board& board, const std::vector<GrownField>& fields,
                                  const std::vector<Wood>& woods, const Shop& shop,
                                  const Choices& choices, const Notation& notation,
                                  const Conditions& conditions, const Timber& timber,
                                  const LayoutCallback& callback = {});

}  // namespace kerfwright
