#include "core/figure/tints.h"

#include "core/figure/colourspace.h"
#include "core/figure/texture.h"

#include <algorithm>
#include <cmath>

namespace kerfwright {
namespace {

/// Oil takes the veil of scattered light off the fibres: dry wood is paler and greyer.
OkLab dried(const OkLab& oiled) {
    const double l = oiled.l + 0.24 * (0.93 - oiled.l) * (0.30 + oiled.l);
    return {std::max(l, oiled.l), oiled.a * 0.84, oiled.b * 0.86};
}

struct Stop {
    double tone;
    OkLab colour;
};

}  // namespace

Colour finished(Colour oiled, Finish finish) {
    return finish == Finish::Oiled ? oiled : colourOf(dried(okLabOf(oiled)));
}

Tints tintsOf(const Wood& wood, Finish finish, double contrast) {
    const WoodLook look = lookOf(wood);
    OkLab own = okLabOf(wood.colour);
    double strength = contrast * look.contrast;
    if (finish == Finish::Raw) {
        own = dried(own);
        strength *= 0.78;
    }
    const double mean = meanTone(look);
    // Pale wood loses its chroma to the light, late wood gains some; pores are shadows.
    const OkLab pale{own.l + 0.34 * (1 - own.l) * (0.25 + own.l), own.a * 0.86, own.b * 0.90};
    const OkLab late{own.l * 0.76, own.a * 0.96 + 0.004, own.b * 0.92 + 0.003};
    const OkLab pore{own.l * 0.46, own.a * 0.62 + 0.004, own.b * 0.50 + 0.004};
    const std::array<Stop, 4> stops = {{{mean - 128, blend(own, pale, strength)},
                                        {mean, own},
                                        {mean + 96, blend(own, late, strength)},
                                        {mean + 190, blend(own, pore, strength)}}};
    Tints tints;
    for (std::size_t i = 0; i < tints.size(); ++i) {
        const auto tone = static_cast<double>(i);
        std::size_t next = 1;
        while (next + 1 < stops.size() && stops[next].tone < tone) {
            ++next;
        }
        const Stop& from = stops[next - 1];
        const Stop& to = stops[next];
        tints[i] =
            colourOf(blend(from.colour, to.colour,
                           std::clamp((tone - from.tone) / (to.tone - from.tone), 0.0, 1.2)));
    }
    return tints;
}

}  // namespace kerfwright
