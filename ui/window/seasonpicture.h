// The board as a season makes it, with its movement drawn larger than it is.
#pragma once

#include "core/bench/season.h"
#include "core/project/project.h"

namespace kerfwright {

/// How many times the movement is drawn: the most, of 1, 2, 5, 10, 20 and 50, that keeps the
/// greatest change of the year within a sixteenth of the field.
int drawnTimes(const Board& board, const BoardMovement& movement);

/// Only to be painted: its sizes are true in nothing but their look.
struct SeasonPicture {
    Board board;
    Surround surround;
    int times = 1;  ///< the movement is drawn as many times larger than it is
};

/// Whether what the rails leave free stays as large as it was built, whatever the field does: rails
/// along all four edges are long grain, which hardly moves.
bool railsStay(const Board& board);

/// Columns, rows and rails changed by `times` the middle of what `state` says of them. Between
/// rails that stay the gap is drawn as many times larger, and closes and opens as the field moves;
/// below 0 the field lies over its rails. Breadboard ends stay as long as they are, and the field
/// draws back from their ends or stands out beyond them. `board` as it is glued, `surround` as it
/// is built.
SeasonPicture seasonPicture(const Board& board, const Surround& surround, const SeasonState& state,
                            int times);

/// Where in the first half of the year, driest to dampest, wood has that moisture; 0 or 0.5 where
/// it is drier or damper than its place ever is.
double yearOf(const Climate& climate, double moisture);

}  // namespace kerfwright
