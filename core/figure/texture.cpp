#include "core/figure/texture.h"

#include "core/figure/lanes.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstring>
#include <vector>

namespace kerfwright {
namespace {

// What a number from the hash is for, so that no two share one.
enum Salt {
    SlowWarp,
    FineWarp,
    Widths,
    Years,
    Pigment,
    Clouds,
    Fibres,
    Waves,
    PoreRows,
    RayPlaces,
    Salts,
};

/// All that does not change from pixel to pixel, each once a lane.
template <class F>
struct Scene {
    using W = typename WordsOf<F>::Type;

    std::array<W, Salts> salt;
    std::array<F, 3> origin, across, down;  ///< of the first pixel; a pixel further
    F warp, fineWarp, taper, perRing, ringVary;
    F seasonal, line, yearVary, mean, seasonMean;  ///< tones; the means where rings run together
    F lateFrom, perLate;
    F bands, perBand, mottle, fibre, wave, perWave;
    F poresLate, poresMore, poresFrom, perPores, meanCover, meanShare;
    F poreTone, pores, perCell, perPoreLength;
    F poreSeen, poreStrength, cell, poreEdge;
    F radius, perRay, raySpacing, perRayHeight, halfRay, rayShare, rayTone, rayEdge, halfPixel;
    bool hasBands = false, hasWaves = false, hasFibres = false, hasPores = false, hasRays = false;
};

/// 1 where a pixel is up to `whole` mm wide, 0 from `gone` on.
float fade(double step, double whole, double gone) {
    return static_cast<float>(std::clamp((gone - step) / (gone - whole), 0.0, 1.0));
}

template <class F>
Scene<F> sceneOf(const TextureArea& area, const WoodLook& look, const TimberCut& cut,
                 const FacePlane& face) {
    using W = typename WordsOf<F>::Type;
    Scene<F> scene;
    const auto all = [](float value) { return F{} + value; };
    for (std::uint32_t i = 0; i < Salts; ++i) {
        scene.salt[i] = W{} + seedOf(cut.seed, 0x5A17U + i);
    }
    const auto step = static_cast<float>(area.step);
    for (std::size_t i = 0; i < 3; ++i) {
        scene.origin[i] =
            all(static_cast<float>(face.origin[i] + (area.left + 0.5) * area.step * face.across[i] +
                                   (area.top + 0.5) * area.step * face.down[i]));
        scene.across[i] = all(static_cast<float>(face.across[i] * area.step));
        scene.down[i] = all(static_cast<float>(face.down[i] * area.step));
    }
    scene.warp = all(2 * look.warp);
    scene.fineWarp = all(0.22F * look.warp);
    scene.taper = all(look.taper);
    scene.perRing = all(1 / look.ring);
    scene.ringVary = all(look.ringVary);
    scene.seasonal = all(look.late - look.early);
    scene.line = all(look.line);
    scene.yearVary = all(look.yearVary);
    const float meanSeason =
        (look.late - look.early) * (1 - 0.5F * (look.lateFrom + look.lateTo)) + 0.07F * look.line;
    // No two strips are quite alike.
    const float ownTone =
        0.09F * (static_cast<float>(seedOf(cut.seed, 99) >> 8U) / 16777216.0F - 0.5F);
    scene.seasonMean = all(meanSeason);
    scene.mean = all(look.early + ownTone + meanSeason);
    scene.lateFrom = all(look.lateFrom);
    scene.perLate = all(1 / (look.lateTo - look.lateFrom));
    const float bands = fade(area.step, look.bandWidth / 8.0, look.bandWidth / 1.6);
    scene.bands = all(look.bands * bands);
    scene.perBand = all(1 / look.bandWidth);
    scene.hasBands = look.bands * bands > 0;
    scene.mottle = all(look.mottle);
    const float fibres = fade(area.step, 0.35, 1);
    scene.fibre = all(look.fibre * fibres);
    scene.hasFibres = fibres > 0;
    const float waves = fade(area.step, look.waveLength / 8.0, look.waveLength / 3.0);
    scene.wave = all(look.wave * waves);
    scene.perWave = all(1 / look.waveLength);
    scene.hasWaves = look.wave * waves > 0;

    const float pores = fade(area.step, 0.7 * look.poreCell, 1.6 * look.poreCell);
    scene.hasPores = pores > 0;
    scene.pores = all(pores);
    scene.poresLate = all(look.poresLate);
    scene.poresMore = all(look.poresEarly - look.poresLate);
    scene.poresFrom = all(0.5F * look.poresTo);
    scene.perPores = all(1 / (0.5F * look.poresTo));
    // Where pores are too fine to be seen, their shade remains.
    const float meanCover =
        (1 - pores) * 2.6F * look.poreRadius * look.poreRadius / (look.poreCell * look.poreCell);
    scene.meanCover = all(meanCover);
    scene.meanShare =
        all(look.poresLate + 0.75F * look.poresTo * (look.poresEarly - look.poresLate));
    scene.poreTone = all(look.poreTone);
    scene.cell = all(look.poreCell);
    scene.perCell = all(1 / look.poreCell);
    scene.perPoreLength = all(1 / look.poreLength);
    // A pore that is finer than a pixel is a paler one as wide as a pixel.
    const float seen = std::max(look.poreRadius, 0.5F * step);
    scene.poreSeen = all(seen);
    scene.poreStrength = all(look.poreRadius / seen);
    scene.poreEdge = all(1 / std::max(0.04F, step));

    const float rays = fade(area.step, look.raySpacing / 4.0, look.raySpacing / 1.5);
    scene.hasRays = rays > 0;
    scene.radius = all(static_cast<float>(cut.radius));
    scene.perRay = all(1 / look.raySpacing);
    scene.raySpacing = all(look.raySpacing);
    scene.perRayHeight = all(1 / look.rayHeight);
    scene.halfRay = all(0.5F * look.rayWidth);
    scene.rayShare = all(look.rayShare);
    scene.rayTone = all(look.rayTone * rays);
    scene.rayEdge = all(1 / std::max(0.05F, step));
    scene.halfPixel = all(0.5F * step);
    return scene;
}

template <class F>
F smooth(F t) {
    return t * t * (3.0F - 2.0F * t);
}

/// Numbers at the corners of one cell of a lattice. Slow noise stays in a cell for many pixels, so
/// the fast version keeps the corners of the last one; the plain version makes them anew for each
/// pixel. Either way they are the same numbers.
template <class F>
struct Corners {
    std::int32_t x = 0, y = 0;
    bool known = false;
    F a{}, b{}, c{}, d{};

    template <class I, class W>
    void find(I atX, I atY, W salt) {
        const W place = hashed(atX, atY, salt);
        a = unitOf(stirred(place));
        b = unitOf(stirred(place + hashStepX));
        c = unitOf(stirred(place + hashStepY));
        d = unitOf(stirred(place + hashStepX + hashStepY));
    }
    void at(std::int32_t atX, std::int32_t atY, std::uint32_t salt) { find(atX, atY, salt); }
    void at(Ints atX, Ints atY, Words salt) {
        if (known && !anyOf((atX != x) | (atY != y))) {
            return;
        }
        find(atX, atY, salt);
        x = atX[0];
        y = atY[0];
        known = !anyOf((atX != x) | (atY != y));
    }
};

/// The same of a line.
template <class F>
struct Ends {
    std::int32_t x = 0;
    bool known = false;
    F a{}, b{};

    template <class I, class W>
    void find(I atX, W salt) {
        const W place = hashed(atX, salt);
        a = unitOf(stirred(place));
        b = unitOf(stirred(place + hashStepX));
    }
    void at(std::int32_t atX, std::uint32_t salt) { find(atX, salt); }
    void at(Ints atX, Words salt) {
        if (known && !anyOf(atX != x)) {
            return;
        }
        find(atX, salt);
        x = atX[0];
        known = !anyOf(atX != x);
    }
};

/// Of all slow noises of a texture.
template <class F>
struct Lattices {
    Corners<F> slow, fine, waves;
    Ends<F> widths, bands, clouds;
};

/// -0.5 to 0.5, smooth, with features of the size 1.
template <class F, class W>
F noise(F x, F y, W salt, Corners<F>& corners) {
    const F lowX = floorOf(x);
    const F lowY = floorOf(y);
    corners.at(toInt(lowX), toInt(lowY), salt);
    const F tx = smooth(x - lowX);
    const F ty = smooth(y - lowY);
    const F top = corners.a + tx * (corners.b - corners.a);
    const F bottom = corners.c + tx * (corners.d - corners.c);
    return top + ty * (bottom - top) - 0.5F;
}

/// The same along a line.
template <class F, class W>
F noise(F x, W salt, Ends<F>& ends) {
    const F low = floorOf(x);
    ends.at(toInt(low), salt);
    return ends.a + smooth(x - low) * (ends.b - ends.a) - 0.5F;
}

/// How dark pores make a point, 0 to 1. They are tubes along w with tapering ends, one a cell.
template <class F>
F poresAt(F u, F v, F w, F share, const Scene<F>& scene) {
    const F x = u * scene.perCell;
    const F lowX = floorOf(x);
    // Neighbouring rows of cells are shifted against each other, or one would see the rows.
    const auto row = stirred(hashed(toInt(lowX), scene.salt[PoreRows]));
    const F y = v * scene.perCell + unitOf(row);
    const F lowY = floorOf(y);
    const auto column = stirred(row + wordOf(toInt(lowY)) * hashStepY);
    const F z = w * scene.perPoreLength + unitOf(column);
    const F lowZ = floorOf(z);
    const auto body = scrambled(column + wordOf(toInt(lowZ)) * hashStepX);
    const auto isThere = highBits(body) < share;
    if (!anyOf(isThere)) {
        return F{};
    }
    const F along = z - lowZ;
    const F ends = minimum(F{} + 1.0F, 5.0F * along * (1.0F - along));
    const F dx = x - lowX - 0.3F - 0.4F * lowBits(body);
    const F dy = y - lowY - 0.25F - 0.5F * unitOf(body);
    const F distance = rootOf(dx * dx + dy * dy) * scene.cell;
    const F radius = scene.poreSeen * (ends * (0.65F + 0.5F * middleBits(body)));
    const F cover = clamped((radius - distance) * scene.poreEdge + 0.5F) * scene.poreStrength;
    return select(isThere, cover, F{});
}

/// Rays stand like pages of a book that is bound in the pith: long from there outwards, as high as
/// they are along w, and thin.
template <class F>
F rayAt(F u, F v, F w, F grown, F fine, const Scene<F>& scene) {
    const F turned = scene.radius * v / maximum(u, F{} + 4.0F) + 0.25F * fine;
    const F x = turned * scene.perRay;
    const F lowX = floorOf(x);
    const auto place = stirred(hashed(toInt(lowX), scene.salt[RayPlaces]));
    const F z = w * scene.perRayHeight + 7.0F * unitOf(place);
    const F lowZ = floorOf(z);
    const F out = grown * (1 / 17.0F) + 5.0F * middleBits(place);
    const F lowOut = floorOf(out);
    const auto body = scrambled(hashed(toInt(lowZ), toInt(lowOut), place));
    const auto isThere = highBits(body) < scene.rayShare;
    if (!anyOf(isThere)) {
        return F{};
    }
    const F middle = 0.3F + 0.4F * lowBits(body);
    const F high = z - lowZ;
    const F far = out - lowOut;
    const F lens = (high * (1.0F - high)) * (far * (1.0F - far)) * 22.0F;
    const F half = scene.halfRay * (0.55F + 0.9F * middleBits(body)) * lens;
    const F seen = maximum(half, scene.halfPixel);
    const F off = absolute(x - lowX - middle) * scene.raySpacing;
    const F cover = clamped((seen - off) * scene.rayEdge + 0.5F) * (half / seen);
    return scene.rayTone * select(isThere, cover, F{});
}

/// The solid: the tone at a point of the tree.
template <class F>
F toneAt(F u, F v, F w, const Scene<F>& scene, Lattices<F>& lattices) {
    // Rings leave the circle slowly, and waver along the stem.
    const F slow = noise(u * (1 / 42.0F) + w * (1 / 310.0F), v * (1 / 42.0F) - w * (1 / 420.0F),
                         scene.salt[SlowWarp], lattices.slow);
    const F fine = noise(u * (1 / 9.0F) + w * (1 / 120.0F), v * (1 / 9.0F) + w * (1 / 150.0F),
                         scene.salt[FineWarp], lattices.fine);
    const F r = rootOf(u * u + v * v);
    const F grown = r + scene.warp * slow + scene.fineWarp * fine - scene.taper * w;
    const F age = grown * scene.perRing;
    const F years = age + scene.ringVary * noise(age * 0.4F, scene.salt[Widths], lattices.widths);
    const F year = floorOf(years);
    const F part = years - year;

    // How many rings a pixel spans: the year's end is as sharp as that allows.
    const F toRing = scene.perRing / maximum(r, F{} + 1.0F);
    const F span = toRing * maximum(absolute(u * scene.across[0] + v * scene.across[1]),
                                    absolute(u * scene.down[0] + v * scene.down[1]));
    const F rings = clamped((0.6F - span) * (1 / 0.42F));

    const F late = smooth(clamped((part - scene.lateFrom) * scene.perLate));
    const F ending = smooth(clamped((part - 0.72F) * (1 / 0.28F)));
    const F just = 1.0F - clamped(part / maximum(span, F{} + 0.035F));  // past the year's end
    const F season = scene.seasonal * (late + just * (1.0F - late)) +
                     scene.line * (ending * ending + just * (1.0F - ending));
    const F own = unitOf(stirred(hashed(toInt(year), scene.salt[Years]))) - 0.5F;
    F tone = scene.mean + rings * (season - scene.seasonMean + scene.yearVary * own);

    if (scene.hasBands) {
        const F at = grown * scene.perBand;
        tone += scene.bands * (noise(at, scene.salt[Pigment], lattices.bands) +
                               0.6F * noise(at * 2.7F, scene.salt[Clouds], lattices.clouds));
    }
    tone += scene.mottle * (slow + fine);
    if (scene.hasWaves) {
        tone += scene.wave * noise(w * scene.perWave + 3.0F * fine, u * 0.035F + v * 0.05F,
                                   scene.salt[Waves], lattices.waves);
    }
    if (scene.hasFibres) {
        Corners<F> passing;
        tone += scene.fibre * noise(u * (1 / 0.7F) + w * (1 / 46.0F),
                                    v * (1 / 0.7F) - w * (1 / 38.0F), scene.salt[Fibres], passing);
    }

    const F early = 1.0F - smooth(clamped((part - scene.poresFrom) * scene.perPores));
    const F share = scene.poresLate + early * scene.poresMore;
    F pores = scene.meanCover * (scene.meanShare + rings * (share - scene.meanShare));
    if (scene.hasPores) {
        pores += scene.pores * poresAt(u + 0.8F * fine, v, w, share, scene);
    }
    tone += scene.poreTone * minimum(pores, F{} + 1.0F);
    if (scene.hasRays) {
        tone += rayAt(u, v, w, grown, fine, scene);
    }
    return tone;
}

/// One run of lanes after the other; `F` says how many pixels that are.
template <class F>
void paintRows(std::uint8_t* tones, const TextureArea& area, const Scene<F>& scene) {
    constexpr int lanes = lanesOf<F>;
    const F first = counting<F>();
    Lattices<F> lattices;
    for (int row = 0; row < area.height; ++row) {
        const auto y = static_cast<float>(row);
        for (int column = 0; column < area.width; column += lanes) {
            const F x = first + static_cast<float>(column);
            const F u = scene.origin[0] + y * scene.down[0] + x * scene.across[0];
            const F v = scene.origin[1] + y * scene.down[1] + x * scene.across[1];
            const F w = scene.origin[2] + y * scene.down[2] + x * scene.across[2];
            const F tone = clamped(toneAt(u, v, w, scene, lattices));
            store(toInt(tone * 255.0F + 0.5F), tones + column,
                  std::min(lanes, area.width - column));
        }
        tones += area.width;
    }
}

}  // namespace

void figureTexture(std::uint8_t* tones, const TextureArea& area, const WoodLook& look,
                   const TimberCut& cut, const FacePlane& face) {
    paintRows(tones, area, sceneOf<Floats>(area, look, cut, face));
}

void figureTexturePlain(std::uint8_t* tones, const TextureArea& area, const WoodLook& look,
                        const TimberCut& cut, const FacePlane& face) {
    paintRows(tones, area, sceneOf<float>(area, look, cut, face));
}

double meanTone(const WoodLook& look) {
    constexpr int side = 28;
    std::vector<std::uint8_t> tones(side * side);
    double sum = 0;
    constexpr int faces = 6;
    for (int i = 0; i < faces; ++i) {
        const TimberCut cut =
            cutFor(seedOf(77, static_cast<std::uint32_t>(i)), Rings::Unknown, 40, 40);
        const FacePlane face = i % 2 == 0 ? FacePlane{{0, 100, 0}, {1, 0, 0}, {0, 0, 1}}
                                          : FacePlane{{0, 0, 20}, {1, 0, 0}, {0, 1, 0}};
        figureTexture(tones.data(), {0, 0, side, side, 1.4}, look, cut, cut.inTree(face));
        for (const std::uint8_t tone : tones) {
            sum += tone;
        }
    }
    return sum / (faces * side * side);
}

}  // namespace kerfwright
