#include "core/figure/timbercut.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace kerfwright {
namespace {

/// 0 to 1, one of many that a seed leads to.
double share(std::uint32_t seed, std::uint32_t which) {
    return seedOf(seed, which) / 4294967296.0;
}

constexpr double radians(double degrees) {
    return degrees * std::numbers::pi / 180;
}

}  // namespace

std::uint32_t seedOf(std::uint32_t a, std::uint32_t b) {
    std::uint32_t hash = a * 0x9E3779B1U + b * 0x85EBCA77U + 0x27D4EB2FU;
    hash = (hash ^ (hash >> 15U)) * 0x2C1B3C6DU;
    hash = (hash ^ (hash >> 12U)) * 0x297A2D39U;
    return hash ^ (hash >> 15U);
}

TimberCut cutFor(std::uint32_t seed, Rings rings, double width, double thickness) {
    if (rings == Rings::Unknown) {
        const double what = share(seed, 1);
        rings = what < 0.5 ? Rings::Flat : what < 0.85 ? Rings::Rift : Rings::Quarter;
    }
    const double in = share(seed, 2);
    const double degrees = rings == Rings::Flat   ? 22 * in
                           : rings == Rings::Rift ? 30 + 30 * in
                                                  : 72 + 18 * in;
    TimberCut cut;
    cut.seed = seed;
    cut.width = width;
    cut.thickness = thickness;
    cut.turn = radians(share(seed, 3) < 0.5 ? degrees : -degrees);
    if (share(seed, 4) < 0.5) {
        cut.turn += std::numbers::pi;  // the other face up
    }
    cut.radius = std::max(0.75 * std::hypot(width, thickness), 38.0) + 12 + 90 * share(seed, 5);
    cut.up = 2000 * share(seed, 6);
    return cut;
}

FacePlane TimberCut::inTree(const FacePlane& face) const {
    const double cosine = std::cos(turn);
    const double sine = std::sin(turn);
    const auto turned = [&](const Vector& v) {
        return Vector{sine * v[0] + cosine * v[2], cosine * v[0] - sine * v[2], v[1]};
    };
    FacePlane plane{
        turned({face.origin[0] - width / 2, face.origin[1], face.origin[2] - thickness / 2}),
        turned(face.across), turned(face.down)};
    plane.origin[0] += radius;
    plane.origin[2] += up;
    return plane;
}

}  // namespace kerfwright
