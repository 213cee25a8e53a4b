// Wood in space: a workpiece is a rectangular block made of axis-aligned boxes, each of one wood
// with its grain along one axis. A face where two boxes meet is a joint; boxes are never merged,
// because two strips of one wood that were glued still show a joint.
//
// Directions: x to the right, y down the page (on the bench: along a stick, from its squared end),
// z up. Seen from above that is the page itself, so a lay needs no change of view.
#pragma once

#include "core/glueup/plan.h"

#include <array>
#include <vector>

namespace kerfwright {

enum Axis { X, Y, Z };

using Corner = std::array<Length, 3>;

/// Not `Box`: that is the rectangle of a drawing, and two types of one name break the program.
struct Cuboid {
    Corner low;   ///< lowest x, y, z; 0 is the edge of the workpiece
    Corner high;  ///< greatest x, y, z; greater than `low` on every axis
    int wood = 0;
    Axis grain = Y;
    friend bool operator==(const Cuboid&, const Cuboid&) = default;
};

/// A full rectangular block: the boxes fill 0 to `size` without gap or overlap.
struct Solid {
    Corner size;
    std::vector<Cuboid> boxes;

    /// Weighed box by box, so that a gap or an overlap shows in the ledger.
    Volume volume() const;
    /// Area of the face that looks along `axis`.
    Area face(Axis axis) const;
    bool showsEndGrain() const;  ///< grain stands upright somewhere
    friend bool operator==(const Solid&, const Solid&) = default;
};

/// A stick of one wood, grain along y.
Solid stick(int wood, Length width, Length length, Length thickness);

/// The solid as it lies after the turns of `lay`. All are rotations: none makes a mirror image.
Solid laid(const Solid& solid, const Lay& lay);

/// Its size alone.
Corner laidSize(const Corner& size, const Lay& lay);

/// Where a point of the laid solid was before it was laid; `size` is the solid's before.
Corner unlaid(const Corner& point, const Corner& size, const Lay& lay);

/// What lies between `from` and `to` along `axis`, moved to 0. Needs 0 <= from < to <= size.
Solid between(const Solid& solid, Axis axis, Length from, Length to);

/// Puts `part` against the far end of `whole` along `axis`. Their other two sizes must be equal.
/// An empty `whole` becomes the part.
void append(Solid& whole, const Solid& part, Axis axis);

}  // namespace kerfwright
