// The rules behind the cautions, one function each: it looks at the ground it is given and adds
// what it finds. `cautions.cpp` has the list that is gone through. Private to core/bench.
#pragma once

#include "core/bench/ground.h"

namespace kerfwright::rules {

// machinerules.cpp
void endGrainFace(const Ground& on, Found& found);
void littleToHold(const Ground& on, Found& found);
void shortForSander(const Ground& on, Found& found);
void shortSlices(const Ground& on, Found& found);
void shortStrips(const Ground& on, Found& found);
void narrowRips(const Ground& on, Found& found);
void wideForSander(const Ground& on, Found& found);
void thickForSaw(const Ground& on, Found& found);
void thinWork(const Ground& on, Found& found);
void thinStock(const Ground& on, Found& found);

// movementrules.cpp
void borderMoves(const Ground& on, Found& found);
void unevenRows(const Ground& on, Found& found);
void moistureFarOff(const Ground& on, Found& found);

// jointrules.cpp
void endToEnd(const Ground& on, Found& found);
void extraJoints(const Ground& on, Found& found);
void omittedJoints(const Ground& on, Found& found);

// allowancerules.cpp
void noSquaringCut(const Ground& on, Found& found);
void noTrimMargin(const Ground& on, Found& found);
void noSpareSlice(const Ground& on, Found& found);

// gluerules.cpp
void coldGlue(const Ground& on, Found& found);
void openTime(const Ground& on, Found& found);
void fewClamps(const Ground& on, Found& found);
void hardToGlue(const Ground& on, Found& found);

// userules.cpp
void openPores(const Ground& on, Found& found);
void reportedReactions(const Ground& on, Found& found);
void gameSquares(const Ground& on, Found& found);
void gamePieces(const Ground& on, Found& found);
void lowContrast(const Ground& on, Found& found);

}  // namespace kerfwright::rules
