// From tones to colours.
#pragma once

#include "core/drawing/colour.h"
#include "core/wood/wood.h"

#include <array>

namespace kerfwright {

/// How the wood looks: as it leaves the plane, or oiled, as the catalogue gives its colour.
enum class Finish { Raw, Oiled };

/// A colour for each tone of a texture (texture.h).
using Tints = std::array<Colour, 256>;

/// Blended in OKLab between pale wood, the wood's own colour at the mean tone of its figure, late
/// wood and open pores. `contrast` 1 is the wood's own; less is calmer, and 0 is one colour.
Tints tintsOf(const Wood& wood, Finish finish, double contrast = 1);

/// The wood's colour without figure.
Colour finished(Colour oiled, Finish finish);

}  // namespace kerfwright
