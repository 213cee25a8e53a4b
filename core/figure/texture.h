// The figure of a wood on a plane of the tree, as tones.
#pragma once

#include "core/figure/look.h"
#include "core/figure/timbercut.h"

#include <cstdint>

namespace kerfwright {

/// A rectangle of pixels of a face.
struct TextureArea {
    int left = 0, top = 0;      ///< of its first pixel, from the face's top left corner
    int width = 0, height = 0;  ///< in pixels, 0 or more
    double step = 1;            ///< mm a pixel, more than 0
};

/// Writes `area.width * area.height` bytes, row by row: 0 is the palest tone, 255 the darkest, and
/// colours are up to `tintsOf` (tints.h). `face` is a plane of the tree (`TimberCut::inTree`);
/// `across` and `down` of it have length 1. What is finer than a pixel fades, so that figure which
/// is seen from afar is calm. One solid function is behind it: faces that meet at an edge fit
/// together there. Same input, same bytes.
void figureTexture(std::uint8_t* tones, const TextureArea& area, const WoodLook& look,
                   const TimberCut& cut, const FacePlane& face);
/// The same bytes one pixel at a time: what the other is measured against, and proven by.
void figureTexturePlain(std::uint8_t* tones, const TextureArea& area, const WoodLook& look,
                        const TimberCut& cut, const FacePlane& face);

/// The mean tone of a wood's figure, 0 to 255, over faces of every kind.
double meanTone(const WoodLook& look);

}  // namespace kerfwright
