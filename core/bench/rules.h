// The rules behind the cautions, one function each: it looks at the ground it is given and adds
// what it finds. `cautions.cpp` has the list that is gone through. Private to core/bench.
#pragma once

#include "core/bench/ground.h"

namespace kerfwright::rules {

// machinerules.cpp
void endGrainFace(const Scene& on, Found& found);
void littleToHold(const Scene& on, Found& found);
void shortForSander(const Scene& on, Found& found);
void shortSlices(const Scene& on, Found& found);
void shortToSize(const Scene& on, Found& found);
void shortStrips(const Scene& on, Found& found);
void shortRails(const Scene& on, Found& found);
void narrowRips(const Scene& on, Found& found);
void wideForSander(const Scene& on, Found& found);
void thickForSaw(const Scene& on, Found& found);
void thinWork(const Scene& on, Found& found);
void thinStock(const Scene& on, Found& found);

// borderrules.cpp
void borderMoves(const Scene& on, Found& found);
void gapCloses(const Scene& on, Found& found);
void unknownMovement(const Scene& on, Found& found);

// movementrules.cpp
void unevenRows(const Scene& on, Found& found);
void moistureFarOff(const Scene& on, Found& found);

// jointrules.cpp
void endToEnd(const Scene& on, Found& found);
void extraJoints(const Scene& on, Found& found);
void omittedJoints(const Scene& on, Found& found);

// wayrules.cpp
void lostWay(const Scene& on, Found& found);

// allowancerules.cpp
void noSquaringCut(const Scene& on, Found& found);
void noTrimMargin(const Scene& on, Found& found);
void noSpareSlice(const Scene& on, Found& found);

// gluerules.cpp
void coldGlue(const Scene& on, Found& found);
void openTime(const Scene& on, Found& found);
void fewClamps(const Scene& on, Found& found);
void hardToGlue(const Scene& on, Found& found);

// userules.cpp
void openPores(const Scene& on, Found& found);
void unknownPores(const Scene& on, Found& found);
void reportedReactions(const Scene& on, Found& found);
void gameSquares(const Scene& on, Found& found);
void gamePieces(const Scene& on, Found& found);
void lowContrast(const Scene& on, Found& found);
void woodsAlike(const Scene& on, Found& found);

}  // namespace kerfwright::rules
