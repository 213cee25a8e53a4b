#include "ui/window/woodchip.h"

#include "ui/window/boardpainter.h"
#include "ui/window/tones.h"

#include <QPainter>
#include <QPixmap>

namespace kerfwright {

QIcon woodChip(Colour colour, const QWidget& widget) {
    constexpr int side = 18;
    const double ratio = widget.devicePixelRatioF();
    QPixmap pixmap(QSize(side, side) * ratio);
    pixmap.setDevicePixelRatio(ratio);
    pixmap.fill(Qt::transparent);
    QPainter painter(&pixmap);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(outlineOf(toQColor(colour), tonesOf(widget.palette())), 1));
    painter.setBrush(toQColor(colour));
    painter.drawRoundedRect(QRectF(0.5, 0.5, side - 1, side - 1), 3, 3);
    return QIcon(pixmap);
}

}  // namespace kerfwright
