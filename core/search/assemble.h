// From a set of kinds to a construction.
#pragma once

#include "core/search/construction.h"
#include "core/search/ways.h"

#include <optional>
#include <vector>

namespace kerfwright::kinds {

/// The construction with the fewest members that needs no kinds but those of the set. Empty where
/// the set is no plan, or where two rectangles that differ were taken for one kind.
std::optional<Construction> assemble(Ways& ways, const std::vector<int>& set);

/// How many members that construction has, each kind counted once; -1 where the set is no plan.
int fewestMembers(Ways& ways, const std::vector<int>& set);

}  // namespace kerfwright::kinds
