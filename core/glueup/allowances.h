// From finished sizes back to rough timber: what each stage of a glue-up must be larger by.
//
// The formulae are the project's own, derived from geometry; DEVELOPERS.md gives them with check
// values, tests/core/glueup/allowances_test.cpp holds the planner to those.
#pragma once

#include "core/board/board.h"
#include "core/glueup/figure.h"
#include "core/shop/shop.h"

#include <vector>

namespace kerfwright {

/// What comes off the field's thickness once it is whole. Nothing off a single slice that lies with
/// its long grain up: its panel was made flat already, and no glue-up followed.
Length flattenedAfterwards(const Board& board, const Shop& shop, bool severalSlices);

/// Thickness of a panel as glued, or of a single strip as milled. Where the grain stands up it is
/// the height of the rows that the panel gives, else that of the field. `marginSides` is the
/// greatest number of sides (0 to 2) of one of those rows that become the field's outer edge.
Figure thicknessAsGlued(const Board& board, const Shop& shop, Length rowHeight, int marginSides,
                        bool glued);

/// Length of a slice, along the grain of its panel.
Figure sliceLength(const Board& board, const Shop& shop, Length rowHeight, int marginSides);

/// Length of the strips of a panel that gives slices of these lengths, and `spares` more of the
/// greatest: squaring cut, slices, a kerf for each cut, tail, rounded up. A kerf for the squaring
/// cut only where there is one.
Figure stripLength(const Shop& shop, const std::vector<Length>& slices, int spares);
/// The same with spares of another length.
Figure stripLength(const Shop& shop, const std::vector<Length>& slices, int spares, Length spare);

/// Length of the blank that a border rail is mitred from: long point to long point, a squaring cut,
/// a kerf for each mitre and a tail, rounded up.
Figure railLength(const Shop& shop, const Figure& longPoint);

/// The same strip before it is milled: `milling` larger in thickness and width, the end allowance
/// longer.
Figure rough(const Figure& milled, const Shop& shop);
Figure roughLength(const Figure& milled, const Shop& shop);

}  // namespace kerfwright
