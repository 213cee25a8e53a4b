// The stages of a build as drawings: small and bare for the row of stages, large with dimensions
// and labels. Seen from above and a little from the front, in a parallel projection: what is
// horizontal is to scale, heights are shown at 0.6 of it.
#pragma once

#include "core/drawing/drawing.h"
#include "core/sheets/filmscene.h"

#include <vector>

namespace kerfwright {

struct FilmLook {
    double width = 180;  ///< mm of the picture
    double height = 140;
    bool dimensions = true;  ///< dimensions and labels
    bool hatch = false;      ///< a hatch for each wood besides its colour
};

/// Where a dimension can be pointed at.
struct FilmSpot {
    Box box;     ///< its text, in the picture's mm
    int number;  ///< of the stage's numbers
    Length value;
};

struct FilmPicture {
    Drawing drawing;  ///< extent is the look's width and height, from 0
    std::vector<FilmSpot> spots;
};

/// Dimensions are shown where the stage is at rest, which is at `progress` 1. The scale goes from
/// that of the beginning to that of the rest with it.
FilmPicture filmPicture(const Film& film, int stage, const FilmLook& look, double progress = 1);

}  // namespace kerfwright
