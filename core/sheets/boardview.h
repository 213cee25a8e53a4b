// Drawings of the board and of its parts, at 1 mm to the mm. Shared by the window and the paper.
#pragma once

#include "core/drawing/drawing.h"
#include "core/project/project.h"

#include <optional>

namespace kerfwright {

struct BoardViewOptions {
    bool letters = false;        ///< wood letters on the pieces
    bool hatch = false;          ///< a hatch per wood besides its colour
    bool fills = true;           ///< the woods' colours; else what is below shows between the lines
    bool wholeBoard = true;      ///< with the border; else the field alone, at the origin
    double lineWidth = 0.3;      ///< of joints, mm
    double hatchPitch = 4;       ///< between hatch lines, mm
    double leastLetter = 0;      ///< em height, mm: letters that would be smaller are left out
    double greatestLetter = 18;  ///< em height, mm
    std::optional<Surround> surround = {};  ///< empty: no gap, and grain that runs down
};

/// The finished board from above. The field's top left corner lies within gap and rails. An
/// end-grain band is drawn as part of the field, and `extraJoints` are those of a field with it.
Drawing drawBoard(const Board& board, const std::vector<Wood>& woods,
                  const std::vector<Joint>& extraJoints, const BoardViewOptions& options);

}  // namespace kerfwright
