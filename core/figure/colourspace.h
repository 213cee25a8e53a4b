// Colours as the eye orders them: OKLab to blend in, CIELAB and CIEDE2000 to tell how far apart two
// colours look.
#pragma once

#include "core/drawing/colour.h"

namespace kerfwright {

/// OKLab (Ottosson 2020): `l` is 0 for black and 1 for white; a and b are 0 for greys.
struct OkLab {
    double l = 0;
    double a = 0;
    double b = 0;
};

/// From CIE XYZ of white D65, Y of white 1.
OkLab okLabOfXyz(double x, double y, double z);
OkLab okLabOf(Colour colour);
/// Nearest colour of sRGB; what lies outside is cut off channel by channel.
Colour colourOf(const OkLab& lab);
/// `a` with `share` (0 to 1) of `b` in it.
OkLab blend(const OkLab& a, const OkLab& b, double share);
Colour blend(Colour a, Colour b, double share);

/// CIELAB of white D65, 2° observer: `l` 0 to 100.
struct CieLab {
    double l = 0;
    double a = 0;
    double b = 0;
};

CieLab cieLabOf(Colour colour);
/// CIEDE2000 as in Sharma, Wu, Dalal, "The CIEDE2000 color-difference formula: implementation
/// notes, supplementary test data, and mathematical observations" (2005), all weights 1.
double colourDifference(const CieLab& a, const CieLab& b);
double colourDifference(Colour a, Colour b);

}  // namespace kerfwright
