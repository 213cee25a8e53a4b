#include "core/sheets/filmsetter.h"

#include <cmath>
#include <numbers>

namespace kerfwright {
namespace {

Spot roundX(const Spot& at, double quarters) {
    const double angle = quarters * std::numbers::pi / 2;
    return {at[0], at[1] * std::cos(angle) - at[2] * std::sin(angle),
            at[1] * std::sin(angle) + at[2] * std::cos(angle)};
}
Spot roundY(const Spot& at, double quarters) {
    const double angle = quarters * std::numbers::pi / 2;
    return {at[0] * std::cos(angle) + at[2] * std::sin(angle), at[1],
            at[2] * std::cos(angle) - at[0] * std::sin(angle)};
}
Spot roundZ(const Spot& at, double quarters) {
    const double angle = quarters * std::numbers::pi / 2;
    return {at[0] * std::cos(angle) - at[1] * std::sin(angle),
            at[0] * std::sin(angle) + at[1] * std::cos(angle), at[2]};
}

}  // namespace

Solid SceneSetter::thinned(const Solid& solid, Length thickness) {
    if (thickness >= solid.size[Z] || thickness <= Length()) {
        return solid;
    }
    const Length below = half(solid.size[Z] - thickness);
    return kerfwright::between(solid, Z, below, below + thickness);
}

Scene SceneSetter::operator()() {
    switch (stage_.kind) {
    case StageKind::Timber:
        timber();
        break;
    case StageKind::Strips:
        strips();
        break;
    case StageKind::Panel:
        panel();
        break;
    case StageKind::Cut:
        cut();
        break;
    case StageKind::Laid:
        laidOut();
        break;
    case StageKind::Field:
        field();
        break;
    case StageKind::Trimmed:
        trimmed();
        break;
    case StageKind::Rails:
        railParts();
        break;
    case StageKind::Border:
        whole(mixed(2.2, 0.7, p_));
        break;
    case StageKind::Finished:
        whole(mixed(0.7, 0, p_));
        break;
    }
    return std::move(scene_);
}

double eased(double progress) {
    const double p = std::clamp(progress, 0.0, 1.0);
    return p * p * p * (p * (p * 6 - 15) + 10);
}

Scene sceneOf(const Film& film, int stage, double progress) {
    return SceneSetter(film, stage, std::clamp(progress, 0.0, 1.0))();
}

Spot turnedLike(const SceneBlock& block, const Spot& direction) {
    Spot at = roundY(direction, block.rolled);
    at = roundX(at, block.stoodUp);
    at = roundX(at, block.turnedOver * 2);
    at = roundZ(at, block.flipped * 2);
    return roundZ(at, block.turned);
}

Spot placed(const SceneBlock& block, const Spot& local) {
    Spot at{};
    for (const Axis axis : {X, Y, Z}) {
        at[axis] = local[axis] - block.solid.size[axis].toMm() / 2;
    }
    at = turnedLike(block, at);
    for (const Axis axis : {X, Y, Z}) {
        at[axis] += block.middle[axis];
    }
    return at;
}

}  // namespace kerfwright
