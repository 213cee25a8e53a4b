// The bodies of a scene as marks of a drawing: faces in the colours of their woods, darker the less
// they look up, with a little figure, farther ones first. Small pictures have a line round it all.
#pragma once

#include "core/drawing/drawing.h"
#include "core/sheets/filmpicture.h"
#include "core/sheets/filmscene.h"
#include "core/wood/wood.h"

#include <algorithm>
#include <limits>
#include <vector>

namespace kerfwright {

/// What a picture has to hold, in its own plane.
struct Frame {
    double left = std::numeric_limits<double>::infinity();
    double top = std::numeric_limits<double>::infinity();
    double right = -std::numeric_limits<double>::infinity();
    double bottom = -std::numeric_limits<double>::infinity();

    void add(const Point& at) {
        left = std::min(left, at.x);
        right = std::max(right, at.x);
        top = std::min(top, at.y);
        bottom = std::max(bottom, at.y);
    }
    double width() const { return right - left; }
    double height() const { return bottom - top; }
};

/// Where a spot is seen in the picture's plane.
inline Point seen(const Spot& at) {
    return {at[0], at[1] - filmTilt * at[2]};
}

class FilmBodies {
public:
    /// The colours that the marks name: those of the woods first, then their tones.
    static std::vector<Colour> woods(const std::vector<Wood>& woods);

    /// `scale`: mm of the drawing to the mm, across and down; `origin`: where the scene's 0 lies in
    /// the drawing.
    FilmBodies(Drawing& drawing, int woods, const FilmLook& look, const Point& scale,
               const Point& origin)
        : drawing_(drawing)
        , woods_(woods)
        , look_(look)
        , scale_(scale)
        , origin_(origin) {}

    void draw(const Scene& scene);

private:
    struct SeenFace {
        Axis axis;
        bool high;  ///< at the upper end of the axis
        double up;  ///< how much it looks up: 1 at most
    };

    static std::vector<SeenFace> facesOf(const SceneBlock& block);
    std::vector<Point> cornersOf(const SceneBlock& block, const SeenFace& shown) const;
    void surround(const SceneBlock* block, const ScenePlate* plate);
    Point put(const Spot& at) const;
    int toned(int wood, double up) const;
    void fill(const std::vector<Point>& points, int wood);
    void outline(const std::vector<Point>& points, const Style& style);
    Style joint(int wood, double width) const;
    double jointWidth(double smallest) const;
    void draw(const SceneBlock& block);
    void face(const SceneBlock& block, const SeenFace& shown);
    void strike(const std::vector<Point>& all, const Style& style, double pitch);
    void figure(const std::vector<Point>& points, const Cuboid& box, Axis a, Axis b, double up);
    void rings(const std::vector<Point>& points, const Cuboid& box, double up);
    void draw(const ScenePlate& plate);
    void along(const std::vector<Point>& top, const ScenePlate& plate);

    Drawing& drawing_;
    int woods_;
    const FilmLook& look_;
    Point scale_;
    Point origin_;
};

}  // namespace kerfwright
