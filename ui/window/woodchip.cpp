#include "ui/window/woodchip.h"

#include "ui/window/boardpainter.h"
#include "ui/window/figurelayer.h"
#include "ui/window/tones.h"

#include <QBrush>
#include <QPainter>
#include <QPixmap>

#include <cmath>
#include <list>

namespace kerfwright {

namespace {

/// Chips are painted whenever the pointer goes over them, and many show the same wood.
const QImage& patchOf(const Wood& wood, Finish finish, QSize size, double ratio) {
    struct Patch {
        std::string key;
        Pores pores;
        Colour colour;
        Finish finish;
        double ratio;
        QImage image;
    };
    static std::list<Patch> patches;
    constexpr std::size_t kept = 200;
    for (const Patch& patch : patches) {
        if (patch.key == wood.key && patch.pores == wood.pores && patch.colour == wood.colour &&
            patch.finish == finish && patch.ratio == ratio && patch.image.size() == size) {
            return patch.image;
        }
    }
    if (patches.size() == kept) {
        patches.pop_back();
    }
    constexpr double pixelsPerMm = 1.5;
    const FigureFill fill{FaceGrain::Down, 5, pixelsPerMm, finish};
    patches.push_front({wood.key, wood.pores, wood.colour, finish, ratio,
                        figureImage(wood, fill, size, 1 / (pixelsPerMm * ratio))});
    return patches.front().image;
}

QIcon chipOf(const QColor& colour, const QWidget& widget, const auto& fill) {
    constexpr int side = 18;
    const double ratio = widget.devicePixelRatioF();
    QPixmap pixmap(QSize(side, side) * ratio);
    pixmap.setDevicePixelRatio(ratio);
    pixmap.fill(Qt::transparent);
    QPainter painter(&pixmap);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(outlineOf(colour, tonesOf(widget.palette())), 1));
    fill(painter, QRectF(0.5, 0.5, side - 1, side - 1), 3);
    return QIcon(pixmap);
}

}  // namespace

QColor shownColour(const Wood& wood) {
    return flatColour(wood, keptFigureStyle().finish);
}

void paintWood(QPainter& painter, const QRectF& rect, double radius, const Wood& wood) {
    const FigureStyle style = keptFigureStyle();
    QBrush brush(flatColour(wood, style.finish));
    if (style.on) {
        const double ratio = painter.device()->devicePixelRatioF();
        const QSize size(static_cast<int>(std::ceil(rect.width() * ratio)) + 1,
                         static_cast<int>(std::ceil(rect.height() * ratio)) + 1);
        brush = QBrush(patchOf(wood, style.finish, size, ratio));
        brush.setTransform(
            QTransform::fromTranslate(std::floor(rect.left()), std::floor(rect.top()))
                .scale(1 / ratio, 1 / ratio));
    }
    painter.setBrush(brush);
    painter.drawRoundedRect(rect, radius, radius);
}

QIcon woodChip(Colour colour, const QWidget& widget) {
    const QColor shown = toQColor(colour);
    return chipOf(shown, widget, [&](QPainter& painter, const QRectF& rect, double radius) {
        painter.setBrush(shown);
        painter.drawRoundedRect(rect, radius, radius);
    });
}

QIcon woodChip(const Wood& wood, const QWidget& widget) {
    return chipOf(shownColour(wood), widget,
                  [&](QPainter& painter, const QRectF& rect, double radius) {
                      paintWood(painter, rect, radius, wood);
                  });
}

}  // namespace kerfwright
