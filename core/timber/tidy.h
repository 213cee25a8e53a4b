// A finished choice of patterns made fit for the bench: nothing beyond what is wanted, and what is
// left over in few large pieces. Private to core/timber.
#pragma once

#include "core/timber/filler.h"
#include "core/timber/layout.h"

#include <vector>

namespace kerfwright::cutting {

/// Takes strips away that are more than wanted, then moves strips together, so that one plank after
/// another keeps as long an offcut as can be had; on the same planks or fewer. Stops early where
/// `goOn` says so.
std::vector<Pattern> tidied(const Pool& pool, const CutRules& rules, std::vector<Pattern> patterns,
                            const std::function<bool()>& goOn);

/// What is left of a plank besides its sections' strips and is large enough to keep.
std::vector<Offcut> offcutsOf(const Plank& plank, const PlankCuts& cuts, const Demand& demand,
                              const CutRules& rules);

}  // namespace kerfwright::cutting
