// Where the workpieces of a stage lie, as bodies in space. A scene has a progress from 0 to 1, at
// which the stage comes about: strips close up to a panel, slices part, stand up and flip, rails
// come in. At 1 it is at rest, with its dimensions.
//
// Millimetres; x right, y towards the viewer, z up. Floating point: these are pictures.
#pragma once

#include "core/drawing/drawing.h"
#include "core/sheets/film.h"

#include <array>
#include <string>
#include <vector>

namespace kerfwright {

using Spot = std::array<double, 3>;  ///< x, y, z in mm

/// A workpiece on its way from how it came to how it lies.
struct SceneBlock {
    enum class Fate { GoesOn, Spare, Waste };
    Solid solid;  ///< before all turns
    std::string label;
    Spot middle{};
    Fate fate = Fate::GoesOn;
    bool lifted = false;  ///< over the others, while it swings round
    /// How far each turn of its lay has gone, 0 to 1, in the order of `Lay`.
    double rolled = 0, stoodUp = 0, turnedOver = 0, flipped = 0, turned = 0;
};

/// A flat body with an outline that is no rectangle: a mitred rail, an inlay, a pin.
struct ScenePlate {
    std::string label;
    std::vector<Point> outline;  ///< x and y, clockwise seen from above
    double low = 0;              ///< z
    double high = 0;
    int wood = 0;
    Axis grain = X;
};

/// A dimension, in the picture's plane: x to the right, down the page y − tilt · z.
struct SceneSize {
    enum class Way {
        Across,  ///< below the scene
        Down,    ///< left of it
        Up,      ///< along z, right of the body
    };
    Way way = Way::Across;
    double from = 0, to = 0;
    double edge = 0;  ///< of the body: y below which, x beside which it stands
    Length value;
    int number = -1;  ///< of the stage's numbers; -1: it has no working of its own
    int level = 0;    ///< 0 is next to the body
};

struct SceneLabel {
    double x = 0, y = 0;  ///< in the picture's plane
    std::string words;
    Align align = Align::Left;  ///< Left: right of the place; Centre: above it
};

struct Scene {
    std::vector<SceneBlock> blocks;
    std::vector<ScenePlate> plates;
    std::vector<SceneLabel> labels;
    std::vector<SceneSize> sizes;
};

/// How much of a body's height shows below its top face.
inline constexpr double filmTilt = 0.6;

/// Soft at both ends, without a bounce; 0 to 1 for 0 to 1.
double eased(double progress);

/// `progress` is clamped to 0 to 1.
Scene sceneOf(const Film& film, int stage, double progress = 1);

/// Where a point of the untouched solid is in the scene.
Spot placed(const SceneBlock& block, const Spot& local);
/// A direction turned like the block.
Spot turnedLike(const SceneBlock& block, const Spot& direction);

}  // namespace kerfwright
