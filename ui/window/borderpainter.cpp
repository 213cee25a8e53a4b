// The border in the board view.
#include "ui/window/boardpainter.h"

#include <QPainter>
#include <QPainterPath>

#include <array>
#include <numbers>

namespace kerfwright {

namespace {

const QColor shadow(34, 27, 21);  // in a gap one looks down into the dark

QColor colourOf(const std::vector<Wood>& woods, int wood) {
    return toQColor(woods[static_cast<std::size_t>(wood)].colour);
}

/// The four corners of a rectangle, from the top left, clockwise.
std::array<QPointF, 4> cornersOf(const QRectF& rect) {
    return {rect.topLeft(), rect.topRight(), rect.bottomRight(), rect.bottomLeft()};
}

void fillRing(QPainter& painter, const QRectF& outer, const QRectF& inner, const QColor& colour) {
    QPainterPath ring;
    ring.setFillRule(Qt::OddEvenFill);
    ring.addRect(outer);
    ring.addRect(inner);
    painter.fillPath(ring, colour);
}

}  // namespace

void paintBorder(QPainter& painter, const Border& border, const std::vector<Wood>& woods,
                 const BoardGeometry& geometry) {
    const QRectF outer = geometry.board();
    const QRectF inner = geometry.inside();
    const QColor wood = colourOf(woods, border.wood);
    if (!border.has(BorderDesign::BreadboardEnds)) {
        painter.fillRect(inner, shadow);
    }
    fillRing(painter, outer, inner, wood);
    paintBorderLines(painter, border, woods, geometry);
}

void paintBorderLines(QPainter& painter, const Border& border, const std::vector<Wood>& woods,
                      const BoardGeometry& geometry) {
    const QRectF outer = geometry.board();
    const QRectF inner = geometry.inside();
    const QColor wood = colourOf(woods, border.wood);
    if (border.hasInlay()) {
        const double line = border.inlayWidth.toMm() * geometry.scale();
        fillRing(painter, inner.adjusted(-line, -line, line, line), inner,
                 colourOf(woods, border.inlayWood));
    }
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(mixed(wood, readableOn(wood), 0.35), 1));
    if (border.isFrame()) {
        const std::array<QPointF, 4> from = cornersOf(outer);
        const std::array<QPointF, 4> to = cornersOf(inner);
        for (std::size_t i = 0; i < from.size(); ++i) {
            painter.drawLine(from[i], to[i]);
        }
    } else if (inner.left() > outer.left() && inner.top() > outer.top()) {
        // Straight strips: those at top and bottom lie over the ends of the others.
        painter.drawLine(QLineF(outer.left(), inner.top(), outer.right(), inner.top()));
        painter.drawLine(QLineF(outer.left(), inner.bottom(), outer.right(), inner.bottom()));
    } else if (inner.left() > outer.left()) {
        painter.drawLine(QLineF(inner.left(), outer.top(), inner.left(), outer.bottom()));
        painter.drawLine(QLineF(inner.right(), outer.top(), inner.right(), outer.bottom()));
    } else {
        painter.drawLine(QLineF(outer.left(), inner.top(), outer.right(), inner.top()));
        painter.drawLine(QLineF(outer.left(), inner.bottom(), outer.right(), inner.bottom()));
    }
    painter.restore();
}

void paintBorderFit(QPainter& painter, const Border& border, const BorderFit& fit,
                    const std::vector<Wood>& woods, const BoardGeometry& geometry) {
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    const QRectF outer = geometry.board();
    const double scale = geometry.scale();
    if (border.hasSplines()) {
        // A key fills a slot that is sawn square to the corner: seen from above a triangle whose
        // legs are the depth times the square root of two.
        const double leg = fit.splineDepth.value.toMm() * std::numbers::sqrt2 * scale;
        const std::array<QPointF, 4> corners = cornersOf(outer);
        const std::array<QPointF, 4> inwards{QPointF(1, 1), QPointF(-1, 1), QPointF(-1, -1),
                                             QPointF(1, -1)};
        const QColor rail = colourOf(woods, border.wood);
        QPen dashes(mixed(rail, readableOn(rail), 0.6), 1, Qt::CustomDashLine);
        dashes.setDashPattern({3, 3});
        painter.setPen(dashes);
        QColor key = colourOf(woods, border.splineWood);
        key.setAlpha(90);
        painter.setBrush(key);
        for (std::size_t i = 0; i < corners.size(); ++i) {
            const QPointF& corner = corners[i];
            const QPointF& in = inwards[i];
            painter.drawPolygon(QPolygonF{
                {corner, corner + QPointF(in.x() * leg, 0), corner + QPointF(0, in.y() * leg)}});
        }
    }
    if (border.has(BorderDesign::BreadboardEnds)) {
        const QRectF inner = geometry.inside();
        const double radius = fit.pinDiameter.value.toMm() * scale / 2;
        const double in = fit.pinFromEdge.value.toMm() * scale;
        const bool sides = geometry.surround().railX > Length();
        painter.setPen(QPen(QColor(20, 14, 10, 200), 1));
        painter.setBrush(QColor(112, 82, 54));
        // They stand in the field and go where it goes.
        const QRectF field = geometry.field();
        const double across = 2 * fit.pins[fit.pins.size() / 2].at.value.toMm();
        for (const Pin& pin : fit.pins) {
            const double share = pin.at.value.toMm() / across;
            const double x = field.left() + share * field.width();
            const double y = field.top() + share * field.height();
            const QPointF one =
                sides ? QPointF(inner.left() + in, y) : QPointF(x, inner.top() + in);
            const QPointF other =
                sides ? QPointF(inner.right() - in, y) : QPointF(x, inner.bottom() - in);
            painter.drawEllipse(one, radius, radius);
            painter.drawEllipse(other, radius, radius);
        }
    }
    painter.restore();
}

}  // namespace kerfwright
