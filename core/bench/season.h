// The board at any moisture between its driest and its dampest, for a slider over the year.
//
// All changes are in mm from the sizes at build, growth positive, and are ranges where nobody has
// said how the rings lie. True figures: by how much a picture exaggerates them is its own affair.
#pragma once

#include "core/bench/boardmovement.h"

#include <optional>
#include <vector>

namespace kerfwright {

struct SeasonState {
    double moisture = 0;  ///< percent

    /// Of the width of each column and the height of each row, as a mean over its length: glued
    /// together the pieces pull each other along. What the board looks like.
    std::vector<Range> columnWidths, rowHeights;
    /// Of each row's length and each column's, as if it were free of its neighbours. What strains
    /// the joints.
    std::vector<Range> rowLengths, columnLengths;
    Range width, height;  ///< of the field; hold those of all rows and columns
    Range thickness;      ///< of the board; holds those of all pieces

    Range railAlong;                 ///< of a rail of the border, as a part of its length
    Range railAcross;                ///< of a rail's width
    std::optional<double> weightKg;  ///< empty where a density is not known

    /// For each wood, what a piece of it does; empty where the wood does not say, and the piece is
    /// taken to stay as it is.
    std::vector<std::optional<PieceGrowth>> woods;
};

/// For a valid board; an end-grain band must be part of the field. `byColumns` as in the plan,
/// `surround` the room round the field as built, without which the border is weighed as if it had
/// no gap.
SeasonState seasonAt(const Board& board, const std::vector<Wood>& woods, bool byColumns,
                     const Climate& climate, double moisture,
                     const std::optional<Surround>& surround = std::nullopt);

/// The gap that is left on one side of a floating field which was built with `gap`, once the field
/// has changed by `field` in that direction. Below 0: the field presses on its rails. Rails of long
/// grain are taken to stay as long as they are.
Range gapAt(Length gap, const Range& field);

/// Moisture on the way through the year: 0 and 1 are the driest season, 0.5 the dampest, and
/// between them runs a sine. Common practice, no source; wood lags behind the air, which is left
/// out.
double moistureInYear(const Climate& climate, double year);

}  // namespace kerfwright
