// Which part of which tree each piece of a board shows: from the plan, where there is one, so that
// all slices of a strip show that strip's rings, lying as the plan lays them.
#pragma once

#include "core/bench/job.h"
#include "core/figure/figuredface.h"
#include "core/figure/texture.h"
#include "core/figure/timbercut.h"

#include <cstdint>
#include <map>
#include <memory>
#include <string>
#include <utility>
#include <vector>

namespace kerfwright {

/// A piece of a field, or what of it lies between joints that the plan adds.
struct FigurePlace {
    Piece piece;  ///< its cells and its wood
    TimberCut cut;
    FacePlane face;  ///< of the tree, in mm; from the piece's top left corner
};

/// Of a whole field, in the order of its pieces.
using FigurePlaces = std::vector<FigurePlace>;
using FigurePlacesPtr = std::shared_ptr<const FigurePlaces>;

/// As a proven plan lays the strips. `woods` are those that the job was planned with.
FigurePlaces figurePlaces(const Job& job, const std::vector<Wood>& woods);

/// For a field that has no plan yet (`board` as it is glued): each piece shows what the piece at
/// its place showed in `before`, and a stick of its own where there was none.
FigurePlaces figurePlaces(const Board& board, const std::vector<Wood>& woods,
                          const FigurePlaces& before, bool grainDown);

/// Of a border's strips, grain along them; all are cut off one stick, one after the other, so that
/// figure runs on round the mitres. Sides in the order top, right, bottom, left. `face` begins at
/// the top left corner of the rectangle round the strip.
struct RailPlace {
    TimberCut cut;
    FacePlane face;
};
/// `side`: 0 top to 3 left; `width` of the strip, `boardWidth` and `boardHeight` in mm.
RailPlace railPlace(int side, double width, double boardWidth, double boardHeight,
                    const Wood& wood);

/// Pieces and border in the mm of `drawBoard(board, …)` with that `surround`. `places` are those of
/// the board as it is glued.
std::vector<FiguredFace> figuredFaces(const Board& board, const Surround& surround,
                                      const std::vector<Wood>& woods, const FigurePlaces& places);

}  // namespace kerfwright
