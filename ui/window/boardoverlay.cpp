#include "ui/window/boardoverlay.h"

#include "ui/document/text.h"
#include "ui/window/boardpainter.h"

#include <QPainter>

#include <algorithm>
#include <array>
#include <cmath>

namespace kerfwright {

namespace {

constexpr std::size_t mostFrames = 400;  // more are too fine to be seen, and slow
constexpr double carriedStrength = 0.86;
constexpr int pillHeight = 22;
constexpr int pillAir = 8;

void paintPill(QPainter& painter, const QRectF& rect, const QString& text, const Tones& tones) {
    painter.setPen(Qt::NoPen);
    painter.setBrush(tones.accent);
    painter.drawRoundedRect(rect, rect.height() / 2, rect.height() / 2);
    painter.setPen(readableOn(tones.accent));
    painter.drawText(rect, Qt::AlignCenter, text);
}

/// The line of the grid after column or row `index`, in pixels.
double edgeOf(const BoardGeometry& geometry, bool vertical, int index) {
    const QRectF cell = geometry.cells(vertical ? QRect(index, 0, 1, 1) : QRect(0, index, 1, 1));
    return vertical ? cell.right() : cell.bottom();
}

void drawAcross(QPainter& painter, const QRectF& field, bool vertical, double at) {
    if (vertical) {
        painter.drawLine(QPointF(at, field.top()), QPointF(at, field.bottom()));
    } else {
        painter.drawLine(QPointF(field.left(), at), QPointF(field.right(), at));
    }
}

/// Dashed lines where the field agrees with the joint.
void paintFit(QPainter& painter, const std::vector<Length>& sizes, const GridJoint& joint,
              const BoardGeometry& geometry, const Tones& tones) {
    const JointFit fit = fitOf(sizes, joint.index);
    const QRectF field = geometry.field();
    const auto first = static_cast<std::size_t>(joint.index);
    std::vector<double> edges;
    if (fit == JointFit::Mirror) {
        const double at = edgeOf(geometry, joint.vertical, joint.index);
        const double other =
            joint.vertical ? field.left() + field.right() - at : field.top() + field.bottom() - at;
        edges.push_back(other);
    } else if (fit == JointFit::Neighbour && first > 0 && sizes[first - 1] == sizes[first]) {
        edges.push_back(edgeOf(geometry, joint.vertical, joint.index - 1));
    } else if (fit == JointFit::Neighbour) {
        edges.push_back(edgeOf(geometry, joint.vertical, joint.index + 1));
    }
    painter.setPen(QPen(tones.accent, 2, Qt::DashLine));
    for (const double edge : edges) {
        drawAcross(painter, field, joint.vertical, edge);
    }
}

}  // namespace

void paintWash(QPainter& painter, const Field& field, const std::vector<int>& pieces,
               const Wood& wood, const BoardGeometry& geometry, const Tones& tones) {
    const QColor colour = toQColor(wood.colour);
    for (const int index : pieces) {
        const Piece& piece = field.pieces[static_cast<std::size_t>(index)];
        const QRectF rect =
            geometry.cells(QRect(piece.column, piece.row, piece.across, piece.down));
        painter.fillRect(rect.adjusted(0, 0, -1, -1), colour);
        if (pieces.size() <= mostFrames) {
            paintFrame(painter, rect.adjusted(1, 1, -1, -1),
                       mixed(tones.accent, tones.surround, 0.25), 1);
        }
    }
}

void paintCarried(QPainter& painter, const Carried& carried, const std::vector<Wood>& woods,
                  const BoardGeometry& geometry, const Tones& tones) {
    const QRect all(0, 0, geometry.columns(), geometry.rows());
    if (carried.from) {
        painter.save();
        painter.setPen(QPen(tones.accent, 1.5, Qt::DashLine));
        painter.setBrush(Qt::NoBrush);
        painter.drawRect(geometry.cells(*carried.from).adjusted(1, 1, -1, -1));
        painter.restore();
    }
    for (const Piece& piece : carried.part.pieces) {
        const QRect cells = QRect(carried.at.x() + piece.column, carried.at.y() + piece.row,
                                  piece.across, piece.down)
                                .intersected(all);
        if (cells.isEmpty()) {
            continue;
        }
        QColor colour = toQColor(woods[static_cast<std::size_t>(piece.wood)].colour);
        colour.setAlphaF(static_cast<float>(carriedStrength));
        painter.fillRect(geometry.cells(cells).adjusted(0, 0, -1, -1), colour);
    }
    const QRect shown = carried.cells().intersected(all);
    paintFrame(painter, geometry.cells(shown).adjusted(1, 1, -1, -1), tones.accent, 3);
}

void paintHandle(QPainter& painter, const QRectF& handle, const Tones& tones) {
    painter.fillRect(handle, tones.surround);
    painter.fillRect(handle.adjusted(1.5, 1.5, -1.5, -1.5), tones.accent);
}

void paintJoint(QPainter& painter, const Project& project, const GridJoint& joint,
                const BoardGeometry& geometry, const Tones& tones, bool sizes, double along) {
    const Field& board = project.board.field;
    const std::vector<Length>& all = joint.vertical ? board.columns : board.rows;
    const auto first = static_cast<std::size_t>(joint.index);
    if (first + 1 >= all.size()) {
        return;
    }
    painter.save();
    const QRectF field = geometry.field();
    if (sizes) {
        paintFit(painter, all, joint, geometry, tones);
    }
    painter.setPen(QPen(tones.accent, 3));
    const double at = edgeOf(geometry, joint.vertical, joint.index);
    drawAcross(painter, field, joint.vertical, at);
    if (sizes) {
        painter.setRenderHint(QPainter::Antialiasing);
        QFont font = painter.font();
        font.setPixelSize(13);
        font.setBold(true);
        painter.setFont(font);
        const QFontMetricsF metrics(font);
        const double begin = joint.index == 0 ? (joint.vertical ? field.left() : field.top())
                                              : edgeOf(geometry, joint.vertical, joint.index - 1);
        const double end = edgeOf(geometry, joint.vertical, joint.index + 1);
        for (const bool after : {false, true}) {
            const QString text = toQt(format(all[first + (after ? 1 : 0)], project.notation));
            const double wide = std::ceil(metrics.horizontalAdvance(text)) + 2 * pillAir;
            const double extent = joint.vertical ? wide : pillHeight;
            // In the middle of its side, or clear of the joint where that is too narrow.
            double middle = after ? (at + end) / 2 : (begin + at) / 2;
            const double clear = extent / 2 + 4;
            middle = after ? std::max(middle, at + clear) : std::min(middle, at - clear);
            const QPointF centre = joint.vertical ? QPointF(middle, along) : QPointF(along, middle);
            paintPill(
                painter,
                QRectF(centre - QPointF(wide / 2, pillHeight / 2.0), QSizeF(wide, pillHeight)),
                text, tones);
        }
    }
    painter.restore();
}

}  // namespace kerfwright
