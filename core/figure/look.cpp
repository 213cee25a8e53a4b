#include "core/figure/look.h"

#include <array>
#include <string_view>

namespace kerfwright {
namespace {

/// Fine pores all over, thin lines at the years' ends: maple, cherry.
WoodLook diffuse() {
    WoodLook look;
    look.ring = 3.2F;
    look.early = 0.30F;
    look.late = 0.40F;
    look.lateFrom = 0.55F;
    look.line = 0.16F;
    look.fibre = 0.08F;
    look.poreCell = 0.5F;
    look.poreRadius = 0.07F;
    look.poresEarly = 0.45F;
    look.poresLate = 0.3F;
    look.poreTone = 0.14F;
    look.poreLength = 5;
    return look;
}

/// A band of large pores begins each year: oak, ash.
WoodLook ringPorous() {
    WoodLook look;
    look.ring = 3.4F;
    look.ringVary = 1;
    look.early = 0.38F;
    look.late = 0.26F;
    look.lateFrom = 0.22F;
    look.lateTo = 0.42F;
    look.line = 0.10F;
    look.poreCell = 0.62F;
    look.poreRadius = 0.15F;
    look.poresEarly = 0.95F;
    look.poresLate = 0.05F;
    look.poresTo = 0.42F;
    look.poreTone = 0.55F;
    look.poreLength = 14;
    look.fibre = 0.08F;
    return look;
}

/// Pores that grow smaller and fewer through the year: walnut.
WoodLook semiRing() {
    WoodLook look;
    look.ring = 4;
    look.ringVary = 1;
    look.early = 0.28F;
    look.late = 0.48F;
    look.lateFrom = 0.3F;
    look.line = 0.16F;
    look.yearVary = 0.08F;
    look.bands = 0.16F;
    look.bandWidth = 11;
    look.poreCell = 0.8F;
    look.poreRadius = 0.12F;
    look.poresEarly = 0.55F;
    look.poresLate = 0.12F;
    look.poreTone = 0.34F;
    look.poreLength = 12;
    look.rayTone = -0.03F;
    return look;
}

/// Of the tropics: no winters, so hardly any rings; large pores, few of them, with pale borders.
WoodLook tropical() {
    WoodLook look;
    look.ring = 5;
    look.ringVary = 1.3F;
    look.early = 0.32F;
    look.late = 0.44F;
    look.lateFrom = 0.2F;
    look.line = 0.04F;
    look.yearVary = 0.12F;
    look.bands = 0.2F;
    look.bandWidth = 9;
    look.fibre = 0.08F;
    look.warp = 3.5F;
    look.taper = 0.006F;
    look.poreCell = 1;
    look.poreRadius = 0.13F;
    look.poresEarly = 0.4F;
    look.poresLate = 0.35F;
    look.poreTone = 0.3F;
    look.poreLength = 16;
    look.raySpacing = 0.9F;
    look.rayWidth = 0.1F;
    look.rayTone = -0.05F;
    return look;
}

WoodLook byPores(Pores pores) {
    switch (pores) {
    case Pores::Ring:
        return ringPorous();
    case Pores::SemiRing:
        return semiRing();
    case Pores::Diffuse:
    case Pores::Unknown:
        break;
    }
    return diffuse();
}

void broadRays(WoodLook& look, float spacing, float width, float height, float tone) {
    look.raySpacing = spacing;
    look.rayWidth = width;
    look.rayHeight = height;
    look.rayTone = tone;
}

struct Own {
    std::string_view key;
    WoodLook (*look)();
};

/// Woods that are known for more than how their pores lie.
constexpr auto own = std::to_array<Own>({
    {"hard-maple",
     [] {
         WoodLook look = diffuse();
         look.mottle = 0.08F;
         look.wave = 0.05F;
         look.waveLength = 9;
         return look;
     }},
    {"soft-maple",
     [] {
         WoodLook look = diffuse();
         look.ring = 4;
         look.mottle = 0.09F;
         look.wave = 0.08F;
         return look;
     }},
    {"cherry",
     [] {
         WoodLook look = diffuse();
         look.ring = 3.6F;
         look.late = 0.44F;
         look.line = 0.18F;
         look.bands = 0.14F;
         look.mottle = 0.08F;
         look.poresEarly = 0.6F;
         broadRays(look, 1.2F, 0.12F, 2.2F, -0.10F);
         return look;
     }},
    {"american-beech",
     [] {
         WoodLook look = diffuse();
         broadRays(look, 1.5F, 0.22F, 2.6F, 0.16F);
         look.rayShare = 0.5F;
         return look;
     }},
    {"european-beech",
     [] {
         WoodLook look = diffuse();
         look.ring = 2.8F;
         broadRays(look, 1.4F, 0.2F, 2.6F, 0.17F);
         look.rayShare = 0.5F;
         return look;
     }},
    {"sycamore",
     [] {
         WoodLook look = diffuse();
         broadRays(look, 1.3F, 0.28F, 4, 0.16F);
         look.rayShare = 0.7F;
         return look;
     }},
    {"white-oak",
     [] {
         WoodLook look = ringPorous();
         look.ring = 3;
         broadRays(look, 4.2F, 0.42F, 22, -0.15F);
         return look;
     }},
    {"european-oak",
     [] {
         WoodLook look = ringPorous();
         look.ring = 2.6F;
         broadRays(look, 3.8F, 0.42F, 20, -0.15F);
         return look;
     }},
    {"red-oak",
     [] {
         WoodLook look = ringPorous();
         look.ring = 3.8F;
         look.poreTone = 0.5F;
         broadRays(look, 3.4F, 0.34F, 9, -0.12F);
         return look;
     }},
    {"white-ash",
     [] {
         WoodLook look = ringPorous();
         look.ring = 3.8F;
         look.poreTone = 0.42F;
         look.late = 0.3F;
         return look;
     }},
    {"purpleheart",
     [] {
         WoodLook look = tropical();
         look.bands = 0.12F;
         look.yearVary = 0.06F;
         look.poreTone = 0.22F;
         return look;
     }},
    {"padauk",
     [] {
         WoodLook look = tropical();
         look.bands = 0.24F;
         look.poreCell = 1.3F;
         look.poreRadius = 0.2F;
         look.poreTone = 0.42F;
         look.poreLength = 18;
         look.fibre = 0.09F;
         return look;
     }},
    {"wenge",
     [] {
         WoodLook look = tropical();
         // Pale tissue between the pores lies in bands of its own, several to a year.
         look.ring = 1.7F;
         look.ringVary = 0.7F;
         look.early = 0.16F;
         look.late = 0.62F;
         look.lateFrom = 0.15F;
         look.lateTo = 0.5F;
         look.line = 0;
         look.bands = 0.1F;
         look.poreRadius = 0.14F;
         look.contrast = 1.25F;
         return look;
     }},
    {"jatoba",
     [] {
         WoodLook look = tropical();
         look.bands = 0.15F;
         look.line = 0.12F;
         return look;
     }},
    {"sapele",
     [] {
         WoodLook look = tropical();
         look.wave = 0.16F;
         look.waveLength = 26;
         look.poreRadius = 0.1F;
         look.poreCell = 0.8F;
         return look;
     }},
    {"mahogany",
     [] {
         WoodLook look = tropical();
         look.line = -0.1F;
         look.bands = 0.1F;
         look.yearVary = 0.07F;
         return look;
     }},
    {"african-mahogany",
     [] {
         WoodLook look = tropical();
         look.wave = 0.1F;
         look.waveLength = 22;
         look.bands = 0.1F;
         return look;
     }},
    {"teak",
     [] {
         WoodLook look = ringPorous();
         look.ring = 4;
         look.poresEarly = 0.7F;
         look.poresLate = 0.12F;
         look.poreTone = 0.4F;
         look.bands = 0.2F;
         return look;
     }},
    {"yellow-poplar",
     [] {
         WoodLook look = diffuse();
         look.ring = 4.5F;
         look.line = -0.12F;
         look.bands = 0.2F;
         look.bandWidth = 16;
         return look;
     }},
    {"basswood",
     [] {
         WoodLook look = diffuse();
         look.ring = 3.5F;
         look.line = 0.08F;
         look.poreTone = 0.08F;
         return look;
     }},
    {"bubinga",
     [] {
         WoodLook look = tropical();
         look.bands = 0.26F;
         look.bandWidth = 6;
         look.poreRadius = 0.1F;
         return look;
     }},
    {"zebrawood",
     [] {
         WoodLook look = tropical();
         look.ring = 4.2F;
         look.ringVary = 1;
         look.early = 0.14F;
         look.late = 0.8F;
         look.lateFrom = 0.45F;
         look.lateTo = 0.85F;
         look.bands = 0.1F;
         look.contrast = 1.3F;
         return look;
     }},
    {"bocote",
     [] {
         WoodLook look = tropical();
         look.ring = 5.5F;
         look.early = 0.18F;
         look.late = 0.72F;
         look.bands = 0.1F;
         look.lateFrom = 0.5F;
         look.lateTo = 0.9F;
         look.warp = 5;
         look.contrast = 1.3F;
         return look;
     }},
    {"brazilian-rosewood",
     [] {
         WoodLook look = tropical();
         look.bands = 0.45F;
         look.bandWidth = 7;
         look.warp = 5;
         look.contrast = 1.2F;
         return look;
     }},
    {"indian-rosewood",
     [] {
         WoodLook look = tropical();
         look.bands = 0.34F;
         look.bandWidth = 5;
         look.contrast = 1.15F;
         return look;
     }},
    {"black-walnut",
     [] {
         WoodLook look = semiRing();
         look.bands = 0.22F;
         look.contrast = 1.1F;
         return look;
     }},
    {"butternut",
     [] {
         WoodLook look = semiRing();
         look.ring = 4.6F;
         return look;
     }},
});

}  // namespace

WoodLook lookOf(const Wood& wood) {
    for (const Own& one : own) {
        if (one.key == wood.key) {
            return one.look();
        }
    }
    return byPores(wood.pores);
}

}  // namespace kerfwright
