// What the figure of a wood is made of: rings, pores, rays and bands of colour, in mm and in tones.
#pragma once

#include "core/wood/wood.h"

namespace kerfwright {

/// A tone is 0 (palest) to 1 (darkest); it says nothing of the colour. All lengths in mm. Values
/// are judged by eye from what end and face grain of the wood look like at arm's length, so rings
/// and pores are somewhat coarser than a lens shows them.
struct WoodLook {
    float ring = 3;          ///< mean width of a year's ring
    float ringVary = 0.8F;   ///< how uneven years are: 0 all alike, to 1.5
    float early = 0.3F;      ///< tone of early wood
    float late = 0.5F;       ///< tone of late wood
    float lateFrom = 0.5F;   ///< part of the ring, 0 to 1, where it begins to turn late ...
    float lateTo = 1;        ///< ... and where it is late
    float line = 0.1F;       ///< tone added at the year's end
    float yearVary = 0.05F;  ///< tone from one year to the next
    float bands = 0;         ///< tone of pigment that comes and goes over several years
    float bandWidth = 8;
    float mottle = 0.06F;  ///< tone of slow clouds
    float fibre = 0.06F;   ///< tone of the finest streaks
    float warp = 2.5F;     ///< how far rings leave the circle
    float taper = 0.012F;  ///< of the stem: mm of radius to a mm of length
    float wave = 0;        ///< tone of cross figure: ribbons and curls
    float waveLength = 12;
    // Pores lie in cells as wide as `poreCell`, one in each at most; up to a quarter of a cell.
    float poreCell = 0.6F;
    float poreRadius = 0.08F;
    float poresEarly = 0.4F;  ///< how many cells have one, 0 to 1, at the beginning of a ring
    float poresLate = 0.4F;   ///< ... and at its end
    float poresTo = 1;        ///< part of the ring over which that goes from one to the other
    float poreTone = 0.2F;
    float poreLength = 9;  ///< of the streaks they make in face grain
    float raySpacing = 1.6F;
    float rayWidth = 0.12F;
    float rayHeight = 2;
    float rayShare = 0.6F;   ///< how many places have a ray, 0 to 1
    float rayTone = -0.06F;  ///< negative where rays are paler than the wood
    float contrast = 1;      ///< of light and dark in colour
};

/// From the wood's key where it is one of the catalogue, else from its pores.
WoodLook lookOf(const Wood& wood);

}  // namespace kerfwright
