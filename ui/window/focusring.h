// Where the keys are, shown the same way everywhere.
#pragma once

#include "ui/window/tones.h"

#include <QPainter>

namespace kerfwright {

/// A solid ring of two pixels just inside of `rect`: seen on every ground of the palette, and
/// beside a thinner line that says what is chosen (WCAG 2.1, 2.4.7 and 1.4.11).
inline void paintFocusRing(QPainter& painter, const QRectF& rect, const Tones& tones,
                           double radius = 4) {
    constexpr double thick = 2;
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(tones.accent, thick));
    constexpr double in = thick / 2;
    painter.drawRoundedRect(rect.adjusted(in, in, -in, -in), radius, radius);
    painter.restore();
}

}  // namespace kerfwright
