// Drawings put together from drawings: measuring, moving, scaling, and hatch cut to its outline.
#pragma once

#include "core/drawing/drawing.h"

#include <utility>

namespace kerfwright {

using Segment = std::pair<Point, Point>;

/// Parallel lines inside a convex outline, `pitch` mm apart. `degrees` is clockwise from the x
/// axis. The lines lie on one grid for the whole drawing, so that hatches of neighbours meet.
std::vector<Segment> hatchLines(const std::vector<Point>& convex, double degrees, double pitch);

/// The four corners, clockwise from the top left.
std::vector<Point> corners(const Box& box);

/// The smallest box that holds the mark with its line width. Text is measured by `textWidth` and
/// from its ascenders to its descenders.
Box bounds(const Mark& mark);

/// Appends the marks of `part`, scaled by `scale`, with its extent's corner at `at`. Line widths,
/// text sizes and everything else scale alike. Both drawings must count woods alike; the woods of
/// `part` are taken over where `into` has none.
void place(Drawing& into, const Drawing& part, Point at, double scale);

/// The greatest scale at which `extent` fits into `width` x `height`.
double fitting(const Box& extent, double width, double height);

}  // namespace kerfwright
