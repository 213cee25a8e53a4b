// Puts the board and what is said about it on the screen. Edges lie on whole device pixels, so that
// plain fills stay crisp and a board of 64 x 64 pieces is painted within a frame.
#pragma once

#include "core/bench/trail.h"
#include "core/glueup/borderfit.h"
#include "core/project/project.h"
#include "ui/window/boardgeometry.h"
#include "ui/window/tones.h"

#include <QStringList>

#include <vector>

QT_BEGIN_NAMESPACE
class QPainter;
QT_END_NAMESPACE

namespace kerfwright {

QColor toQColor(Colour colour);

/// The board from above: woods, joints, border.
void paintBoard(QPainter& painter, const Board& board, const std::vector<Wood>& woods,
                const BoardGeometry& geometry);
/// Rails, their mitres, inlay and the gap, true to scale; for borders that are no part of the
/// field.
void paintBorder(QPainter& painter, const Border& border, const std::vector<Wood>& woods,
                 const BoardGeometry& geometry);
/// What holds a border together: keys across its corners, which lie below the face and are dashed,
/// and pins.
void paintBorderFit(QPainter& painter, const Border& border, const BorderFit& fit,
                    const std::vector<Wood>& woods, const BoardGeometry& geometry);
/// Its inlay, its mitres and joints: what lies over the wood of the rails.
void paintBorderLines(QPainter& painter, const Border& border, const std::vector<Wood>& woods,
                      const BoardGeometry& geometry);
/// How wide joints between pieces are drawn, in pixels; 0 where pieces are too small for them.
double jointWidth(const Field& field, const BoardGeometry& geometry);
/// What of a piece is seen beside its joints.
QRectF pieceRect(const Piece& piece, const BoardGeometry& geometry, double joint);
/// The soft edge under it.
void paintShadow(QPainter& painter, const QRectF& board, bool dark);
/// A hairline round it, where dark woods would run into a dark window.
void paintOutline(QPainter& painter, const BoardGeometry& geometry, const Tones& tones);
/// Joints that the plan adds, dashed. Positions are in the field.
void paintExtraJoints(QPainter& painter, const std::vector<Joint>& joints, const Board& board,
                      const BoardGeometry& geometry);
/// Lights that up and veils the rest.
void paintHighlight(QPainter& painter, const Highlight& highlight, const Board& board,
                    const BoardGeometry& geometry, const Tones& tones);
/// A frame that shows on every wood.
void paintFrame(QPainter& painter, const QRectF& rect, const QColor& colour, double width);
/// A few lines of text beside `at`, inside `bounds`; the first line is bold.
void paintBubble(QPainter& painter, QPointF at, const QRectF& bounds, const QStringList& lines);

/// Rulers along the top and left edge of `view`, zero at the board's corner. `pointer` is marked
/// where it is inside.
struct Rulers {
    static constexpr int top = 26;
    static constexpr int left = 46;
};
/// Where the movement of the board is drawn `enlarged` times no mark would be true: then there are
/// none, and how many times stands in place of the unit.
void paintRulers(QPainter& painter, const QRectF& view, const BoardGeometry& geometry, Unit unit,
                 QPointF pointer, const Tones& tones, int enlarged = 1);

}  // namespace kerfwright
