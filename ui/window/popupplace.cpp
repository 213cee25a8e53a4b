#include "ui/window/popupplace.h"

#include <QScreen>

#include <algorithm>

namespace kerfwright {

namespace {

constexpr int gap = 4;  // to the button and to the edge of the screen

}  // namespace

void placeBeside(QWidget& popup, const QWidget& button) {
    const QRect screen = button.screen()->availableGeometry().adjusted(gap, gap, -gap, -gap);
    QPoint at = button.mapToGlobal(QPoint(0, button.height() + gap));
    if (at.y() + popup.height() > screen.bottom()) {
        const int above = button.mapToGlobal(QPoint()).y() - popup.height() - gap;
        at.setY(above >= screen.top() ? above : screen.bottom() - popup.height());
    }
    at.setY(std::max(at.y(), screen.top()));
    at.setX(std::max(screen.left(), std::min(at.x(), screen.right() - popup.width())));
    popup.move(at);
}

}  // namespace kerfwright
