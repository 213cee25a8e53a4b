#include "ui/window/boardpainter.h"

#include <QFontMetricsF>
#include <QPainter>

#include <array>
#include <cmath>

namespace kerfwright {

namespace {

/// Distance of the numbered marks, in mm, and how many parts each is divided into.
struct Spacing {
    double mm;
    int parts;
};

Spacing spacingFor(Unit unit, double scale) {
    constexpr double room = 56;  // pixels between two numbers
    constexpr double inch = 25.4;
    static constexpr std::array<Spacing, 12> metric{{{1, 2},
                                                     {2, 2},
                                                     {5, 5},
                                                     {10, 5},
                                                     {20, 2},
                                                     {50, 5},
                                                     {100, 2},
                                                     {200, 2},
                                                     {500, 5},
                                                     {1000, 2},
                                                     {2000, 2},
                                                     {5000, 5}}};
    static constexpr std::array<Spacing, 10> inches{{{inch / 8, 2},
                                                     {inch / 4, 4},
                                                     {inch / 2, 4},
                                                     {inch, 4},
                                                     {inch * 2, 2},
                                                     {inch * 4, 4},
                                                     {inch * 8, 4},
                                                     {inch * 12, 3},
                                                     {inch * 24, 2},
                                                     {inch * 96, 4}}};
    const auto pick = [scale](const auto& all) {
        for (const Spacing& spacing : all) {
            if (spacing.mm * scale >= room) {
                return spacing;
            }
        }
        return all.back();
    };
    return unit == Unit::Inches ? pick(inches) : pick(metric);
}

/// The grid of the ruler is exact in the unit, so a number needs no unit and no rounding mark.
QString numberAt(Unit unit, double mm) {
    if (unit == Unit::Millimetres) {
        return QString::number(std::lround(mm));
    }
    const Length length = Length::inch(std::lround(mm / 25.4 * 8), 8);
    const std::string text = formatBare(length, Notation::inches(8));
    return QString::fromStdString(text);
}

}  // namespace

void paintRulers(QPainter& painter, const QRectF& view, const BoardGeometry& geometry, Unit unit,
                 QPointF pointer, const Tones& tones, int enlarged) {
    const Spacing spacing = spacingFor(unit, geometry.scale());
    const double step = spacing.mm / spacing.parts;
    QFont small = painter.font();
    small.setPixelSize(11);
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing, false);
    painter.setFont(small);
    const QFontMetricsF metrics(small);

    const auto draw = [&](bool top) {
        const double size = top ? geometry.size().width() : geometry.size().height();
        const double band = top ? Rulers::top : Rulers::left;
        const QRectF ground =
            top ? QRectF(view.left(), view.top(), view.width(), band)
                : QRectF(view.left(), view.top() + Rulers::top, band, view.height() - Rulers::top);
        painter.fillRect(ground, tones.surround);
        if (enlarged > 1) {
            return;
        }
        const int last = static_cast<int>(std::floor(size / step + 1e-6));
        const double lower = top ? Rulers::left : Rulers::top;
        const double upper = top ? view.right() : view.bottom();
        for (int i = 0; i <= last; ++i) {
            const double at = top ? geometry.x(i * step) : geometry.y(i * step);
            if (at < lower || at > upper) {
                continue;
            }
            const bool numbered = i % spacing.parts == 0;
            const double tick = numbered ? 6 : 3;
            painter.setPen(numbered ? tones.quiet : mixed(tones.edge, tones.quiet, 0.3));
            if (top) {
                painter.drawLine(QPointF(at, band - tick), QPointF(at, band - 1));
            } else {
                painter.drawLine(QPointF(band - tick, at), QPointF(band - 1, at));
            }
            if (!numbered) {
                continue;
            }
            const QString number = numberAt(unit, i * step);
            painter.setPen(tones.quiet);
            if (top) {
                painter.drawText(QPointF(at - metrics.horizontalAdvance(number) / 2, band - 10),
                                 number);
            } else {
                painter.drawText(QPointF(band - 10 - metrics.horizontalAdvance(number),
                                         at + metrics.ascent() / 2 - 1),
                                 number);
            }
        }
        if (geometry.board().contains(pointer)) {
            painter.setPen(QPen(tones.accent, 2));
            if (top) {
                painter.drawLine(QPointF(pointer.x(), band - 7), QPointF(pointer.x(), band - 1));
            } else {
                painter.drawLine(QPointF(band - 7, pointer.y()), QPointF(band - 1, pointer.y()));
            }
        }
    };
    draw(true);
    draw(false);
    painter.fillRect(QRectF(view.left(), view.top(), Rulers::left, Rulers::top), tones.surround);
    painter.setPen(tones.quiet);
    painter.drawText(QRectF(view.left(), view.top(), Rulers::left - 10, Rulers::top - 6),
                     Qt::AlignRight | Qt::AlignBottom,
                     enlarged > 1           ? QStringLiteral("%1 ×").arg(enlarged)
                     : unit == Unit::Inches ? QStringLiteral("in")
                                            : QStringLiteral("mm"));
    painter.restore();
}

}  // namespace kerfwright
