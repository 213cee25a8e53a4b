// The virtual bench: carries a step list out on solid wood and says whether the wished board comes
// out. It knows nothing of the planner; it reads only the step list that the maker reads.
#pragma once

#include "core/board/board.h"
#include "core/glueup/steps.h"

#include <string>
#include <vector>

namespace kerfwright {

struct Proof {
    std::vector<std::string> faults;  ///< each names the step (from 1) and what does not hold
    Ledger ledger;                    ///< as weighed on the bench
    Length width, height, thickness;  ///< of the finished board, border included

    bool ok() const { return faults.empty(); }
};

/// Stops at the first step that cannot be carried out. Checks, to the nanometre: each figure is the
/// sum of its working; each workpiece exists when it is used and is used once; glued faces match;
/// sizes written in a step are the sizes on the bench; the top view of the field has the wished
/// woods, and the wished joints plus `extraJoints` less `omittedJoints` (an extra joint must lie
/// inside a piece; an omitted one between two pieces of one wood, and only where `mergeLike` allows
/// it); nothing is left over but spare slices and offcuts; grain runs as the build wants; the
/// volume ledger closes and equals the one in the list. Of a border: rails meet long point to long
/// point, grooves and what stands in them fit each other, nothing that floats is glued, and for a
/// field that moves by `season` no gap closes (unless the maker wished that one), no slot binds and
/// no hold is lost. An end-grain band must be part of the field: see `asGlued`.
Proof replay(const StepList& list, const Board& board, bool mergeLike,
             const FieldSeason& season = {});

}  // namespace kerfwright
