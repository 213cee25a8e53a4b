// What a construction looks like, strip by strip.
#pragma once

#include "core/search/construction.h"
#include "core/search/picture.h"

#include <utility>
#include <vector>

namespace kerfwright {

/// A strip, or what is left of it, where it comes to lie in the field.
struct PaintedStrip {
    Length left, right, top, bottom;
    int wood = 0;
    friend bool operator==(const PaintedStrip&, const PaintedStrip&) = default;
    friend auto operator<=>(const PaintedStrip&, const PaintedStrip&) = default;
};

/// Lays the strips of a face of that size another way; returns its width and height then.
std::pair<Length, Length> laidStrips(std::vector<PaintedStrip>& strips, Length width, Length height,
                                     Placing placing);

/// All strips of the field, sorted. Empty where blocks do not fit together: members of another
/// size than their row, or a block that is not after its members.
std::vector<PaintedStrip> painted(const Construction& construction);

/// Whether the construction makes the picture: every strip covers whole tiles of its wood, one
/// alone unless `mergeLike`.
bool makes(const Construction& construction, const Picture& picture);

/// Those of the picture's extra joints that the strips really make.
std::vector<Joint> extraJointsMade(const std::vector<PaintedStrip>& strips, const Picture& picture);

}  // namespace kerfwright
