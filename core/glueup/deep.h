// A plan of any depth: sticks made once and used many times, from a construction of the search.
//
// End grain: every block is the cross-section of a stick. Its copies are lengths crosscut off that
// stick, laid in any of eight ways and glued into wider sticks; the last sticks are sliced, and the
// slices stood up. Long grain: a block without end-to-end joints is a panel whose slices are the
// copies; any other block is glued once for every copy.
//
// A stick is made as large as the greediest of its copies needs it, with what flattening, truing
// and the trim margin will take; each copy is brought down to what it needs itself.
#pragma once

#include "core/glueup/plan.h"
#include "core/search/construction.h"
#include "core/search/picture.h"

namespace kerfwright {

/// Plans the field of a valid board from a construction that makes it, laid as `laying` says; for a
/// long-grain board that is the way its grain runs. The border is not looked at: see `withBorder`.
/// Faults where no strip could be had: timber too small for a strip with its allowances, a stick
/// that would be longer than the longest strip.
Result<Plan> planOf(const Construction& construction, Laying laying, const Board& board,
                    const std::vector<Wood>& woods, const Shop& shop,
                    const Notation& notation = Notation::millimetres(3));

}  // namespace kerfwright
