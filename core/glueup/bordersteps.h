// The steps of a border. Private to core/glueup.
#pragma once

#include "core/glueup/steps.h"

#include <string>

namespace kerfwright {

/// Adds the steps after those of the field, and what they do to the ledger.
void addBorderSteps(StepList& list, const BorderFit& fit, const Board& board, const Shop& shop,
                    bool grainDown, const std::string& field);

/// Notes in the ledger what milling a line takes off.
void account(Ledger& ledger, const MillLine& line);

/// Length of the longest rail; 0 where there is none.
Figure longestRail(const BorderFit& fit, const Board& board, bool grainDown);

}  // namespace kerfwright
