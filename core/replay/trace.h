// What lay on the bench in the course of a list, for pictures.
#pragma once

#include "core/board/board.h"
#include "core/glueup/steps.h"
#include "core/replay/solid.h"

#include <array>
#include <string>
#include <unordered_map>
#include <vector>

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
/// What is there at a point of the finished field, from its top left corner: the part that was
/// glued into the field first, then the part of which that was glued or off which it was cut, down
/// to the strip. Empty outside.
std::vector<std::string> originAt(const StepList& steps, const Trace& trace, Length x, Length y);

/// From the top left corner of the field as it is glued.
struct FieldPoint {
    Length x, y;
};
/// The same for many points.
std::vector<std::vector<std::string>> originsAt(const StepList& steps, const Trace& trace,
                                                const std::vector<FieldPoint>& points);

/// Where a point of the board's face lies in the strip it is of, and how that strip lies there.
struct StripPlace {
    std::string strip;  ///< empty outside the field
    Corner size;        ///< of the strip as it was milled; its grain runs along y
    Corner point;       ///< in the strip, from its low corner
    /// Where one step to the right, and one down the field, lead to in the strip: one of the three
    /// is 1 or -1, the others 0.
    std::array<int, 3> across{}, down{};
};
std::vector<StripPlace> stripsAt(const StepList& steps, const Trace& trace,
                                 const std::vector<FieldPoint>& points);

Trace trace(const StepList& steps, const Board& board, const FieldSeason& season = {});

}  // namespace kerfwright
