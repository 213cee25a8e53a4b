// What the tools of the board view lay over the board: what would be painted, what is carried, what
// can be dragged, and the sizes beside a joint.
#pragma once

#include "core/board/magnets.h"
#include "core/project/project.h"
#include "ui/window/boardgeometry.h"
#include "ui/window/regioneditor.h"
#include "ui/window/tones.h"

#include <vector>

QT_BEGIN_NAMESPACE
class QPainter;
QT_END_NAMESPACE

namespace kerfwright {

/// Pieces as they would look in `wood`, each with a thin frame.
void paintWash(QPainter& painter, const Field& field, const std::vector<int>& pieces,
               const Wood& wood, const BoardGeometry& geometry, const Tones& tones);
/// Pieces in the hand, and where they were taken from.
void paintCarried(QPainter& painter, const Carried& carried, const std::vector<Wood>& woods,
                  const BoardGeometry& geometry, const Tones& tones);
/// The corner of the mark that is dragged to repeat it.
void paintHandle(QPainter& painter, const QRectF& handle, const Tones& tones);
/// A joint of the grid from edge to edge; with `sizes`, those of its two sides beside it and what
/// it lines up with. `along` is the pixel along the joint near which they stand.
void paintJoint(QPainter& painter, const Project& project, const GridJoint& joint,
                const BoardGeometry& geometry, const Tones& tones, bool sizes, double along);

}  // namespace kerfwright
