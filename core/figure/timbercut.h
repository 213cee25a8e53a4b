// How a strip lies in the tree it was sawn from, and which plane of the tree a face of it shows.
#pragma once

#include "core/wood/wood.h"

#include <array>
#include <cstdint>

namespace kerfwright {

/// In mm.
using Vector = std::array<double, 3>;

/// Of a face: where its top left corner lies, and where one mm to the right and one mm down lead
/// to.
struct FacePlane {
    Vector origin{};
    Vector across{1, 0, 0};
    Vector down{0, 1, 0};
    friend bool operator==(const FacePlane&, const FacePlane&) = default;
};

/// A strip as the bench has it: x across its width, y along its length (the grain), z up.
/// In the tree, u points from the pith to the middle of the strip, v along the rings there, w up
/// the stem.
struct TimberCut {
    std::uint32_t seed = 0;  ///< which stick of which tree
    double radius = 80;  ///< from the pith to the strip's middle; greater than half its diagonal
    double turn = 0;     ///< of u away from z, in radians: 0 flat sawn, ±π/2 quarter sawn
    double up = 0;       ///< w at the strip's near end
    double width = 0, thickness = 0;  ///< of the strip
    friend bool operator==(const TimberCut&, const TimberCut&) = default;

    /// `face` is in the strip's own coordinates, from its low corner.
    FacePlane inTree(const FacePlane& face) const;
};

/// One of the many ways in which a strip of that section may lie in a tree, always the same for the
/// same seed. `rings`: how the maker's timber is sawn; where that is not known, as it comes.
TimberCut cutFor(std::uint32_t seed, Rings rings, double width, double thickness);

/// Mixes numbers into one that seeds a strip.
std::uint32_t seedOf(std::uint32_t a, std::uint32_t b);

}  // namespace kerfwright
