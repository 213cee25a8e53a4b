// What lay on the bench in the course of a list, for pictures.
#pragma once

#include "core/board/board.h"
#include "core/glueup/steps.h"
#include "core/replay/solid.h"

#include <string>
#include <unordered_map>

namespace kerfwright {

/// One workpiece.
struct Traced {
    Solid made;   ///< as it came out of the clamps, off the saw or from milling
    Solid ready;  ///< just before its first slice was cut, before it went into another part, or at
                  ///< the end; what was done to it stays done
};

/// By label. A list that the bench refuses is followed up to the step that it refuses. Throws
/// nothing; costs as much as a replay.
using Trace = std::unordered_map<std::string, Traced>;
Trace trace(const StepList& steps, const Board& board, const FieldSeason& season = {});

}  // namespace kerfwright
