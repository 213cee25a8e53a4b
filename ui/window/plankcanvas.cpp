#include "ui/window/plankcanvas.h"

#include "ui/document/text.h"
#include "ui/paint/painter.h"
#include "ui/window/tones.h"

#include <QApplication>
#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>

#include <algorithm>
#include <cmath>

namespace kerfwright {

namespace {

constexpr double canvasScale = 3.7;  // so that the drawing's texts are as large as the window's
constexpr double knotReach = 4;      // pixels round a defect that still hit it

Length snappedTo(double nm, Length step) {
    return step * std::llround(nm / static_cast<double>(step.nm()));
}

Defect keptInside(Defect defect, const Plank& plank) {
    defect.length = std::min(defect.length, plank.length);
    defect.width = std::min(defect.width, plank.width);
    defect.x = std::clamp(defect.x, Length(), plank.length - defect.length);
    defect.y = std::clamp(defect.y, Length(), plank.width - defect.width);
    return defect;
}

}  // namespace

PlankCanvas::PlankCanvas(QWidget* parent)
    : QWidget(parent) {
    setObjectName(QStringLiteral("plankCanvas"));
    setLayoutDirection(Qt::LeftToRight);
    setFocusPolicy(Qt::StrongFocus);
    setMouseTracking(true);
    setCursor(Qt::CrossCursor);
    setAccessibleName(tr("Plank from above"));
}

void PlankCanvas::show(const Plank& plank, const std::vector<Wood>& woods,
                       const Notation& notation) {
    plank_ = plank;
    woods_ = woods;
    notation_ = notation;
    chosen_ = std::min(chosen_, static_cast<int>(plank.defects.size()) - 1);
    layOut();
    report();
}

Length PlankCanvas::step() const {
    return notation_.unit == Unit::Inches ? Length::inch(1, 16) : Length::mm(1);
}

void PlankCanvas::layOut() {
    look_ = PlankLook();
    look_.positions = true;
    const double width = this->width() / canvasScale - leftOfPlank(look_) - 3;
    const double height = this->height() / canvasScale - 17;
    if (plank_.length > Length() && plank_.width > Length() && width > 10 && height > 5) {
        look_.scale.along = width / plank_.length.toMm();
        // Knots on a long plank could not be hit where both directions had one scale.
        look_.scale.across =
            std::min(height / plank_.width.toMm(), std::max(look_.scale.along * 3, 0.28));
        view_ = drawPlank({plank_, woods_, notation_}, look_);
        pixels_ = canvasScale;
        corner_ =
            QPointF(2, std::max(2.0, (this->height() - view_.drawing.extent.height * pixels_) / 2));
    }
    update();
}

QPointF PlankCanvas::seenAt(Length x, Length y) const {
    const Box& plank = view_.places.plank;
    return corner_ + QPointF(plank.x + x.toMm() * look_.scale.along,
                             plank.bottom() - y.toMm() * look_.scale.across) *
                         pixels_;
}

QRectF PlankCanvas::seen(const Defect& defect) const {
    return QRectF(seenAt(defect.x, defect.y + defect.width),
                  seenAt(defect.x + defect.length, defect.y));
}

std::pair<Length, Length> PlankCanvas::placeAt(QPointF at) const {
    const Box& plank = view_.places.plank;
    const QPointF mm = (at - corner_) / pixels_;
    const double x = (mm.x() - plank.x) / look_.scale.along * 1e6;
    const double y = (plank.bottom() - mm.y()) / look_.scale.across * 1e6;
    return {std::clamp(snappedTo(x, step()), Length(), plank_.length),
            std::clamp(snappedTo(y, step()), Length(), plank_.width)};
}

Defect PlankCanvas::between(QPointF a, QPointF b) const {
    const auto [ax, ay] = placeAt(a);
    const auto [bx, by] = placeAt(b);
    return {std::min(ax, bx), std::min(ay, by), std::max(ax, bx) - std::min(ax, bx),
            std::max(ay, by) - std::min(ay, by)};
}

int PlankCanvas::defectAt(QPointF at) const {
    for (std::size_t i = plank_.defects.size(); i > 0; --i) {
        if (seen(plank_.defects[i - 1])
                .adjusted(-knotReach, -knotReach, knotReach, knotReach)
                .contains(at)) {
            return static_cast<int>(i) - 1;
        }
    }
    return -1;
}

void PlankCanvas::choose(int defect) {
    defect = std::clamp(defect, -1, static_cast<int>(plank_.defects.size()) - 1);
    if (chosen_ != defect) {
        chosen_ = defect;
        Q_EMIT chosenChanged(defect);
        report();
        update();
    }
}

/// Tells screen readers what is chosen.
void PlankCanvas::report() {
    if (chosen_ < 0) {
        setAccessibleDescription(counted(static_cast<qsizetype>(plank_.defects.size()),
                                         tr("%1 defect is marked"), tr("%1 defects are marked")));
        return;
    }
    const Defect& defect = plank_.defects[static_cast<std::size_t>(chosen_)];
    setAccessibleDescription(
        tr("Defect %1: %2 from the left end, %3 from the lower edge, %4 by %5")
            .arg(chosen_ + 1)
            .arg(toQt(format(defect.x, notation_)), toQt(format(defect.y, notation_)),
                 toQt(format(defect.length, notation_)), toQt(format(defect.width, notation_))));
}

void PlankCanvas::paintEvent(QPaintEvent*) {
    const Tones tones = tonesOf(palette());
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.save();
    painter.translate(corner_);
    painter.scale(pixels_, pixels_);
    paint(painter, view_.drawing, windowTheme(tones.dark));
    painter.restore();
    if (chosen_ >= 0 && chosen_ < static_cast<int>(plank_.defects.size())) {
        painter.setBrush(Qt::NoBrush);
        painter.setPen(QPen(tones.accent, 2));
        painter.drawRect(
            seen(plank_.defects[static_cast<std::size_t>(chosen_)]).adjusted(-3, -3, 3, 3));
    }
    if (drawing_) {
        painter.setPen(QPen(tones.accent, 1.5, Qt::DashLine));
        QColor ground = tones.accent;
        ground.setAlpha(60);
        painter.setBrush(ground);
        painter.drawRect(seen(between(from_, to_)));
    }
    if (hasFocus()) {
        const Box& plank = view_.places.plank;
        painter.setBrush(Qt::NoBrush);
        painter.setPen(QPen(tones.accent, 2));
        painter.drawRect(QRectF(corner_ + QPointF(plank.x, plank.y) * pixels_,
                                QSizeF(plank.width, plank.height) * pixels_)
                             .adjusted(-3.5, -3.5, 3.5, 3.5));
    }
}

void PlankCanvas::resizeEvent(QResizeEvent*) {
    layOut();
}

void PlankCanvas::changeEvent(QEvent* event) {
    QWidget::changeEvent(event);
    if (event->type() == QEvent::PaletteChange) {
        update();
    }
}

void PlankCanvas::mousePressEvent(QMouseEvent* event) {
    if (event->button() != Qt::LeftButton) {
        return;
    }
    setFocus(Qt::MouseFocusReason);
    pressed_ = true;
    from_ = to_ = event->position();
    dragged_ = defectAt(from_);
    choose(dragged_);
    if (dragged_ >= 0) {
        before_ = plank_.defects[static_cast<std::size_t>(dragged_)];
    }
}

void PlankCanvas::mouseMoveEvent(QMouseEvent* event) {
    if (!pressed_) {
        setCursor(defectAt(event->position()) >= 0 ? Qt::SizeAllCursor : Qt::CrossCursor);
        return;
    }
    to_ = event->position();
    if (dragged_ >= 0) {
        const auto [fromX, fromY] = placeAt(from_);
        const auto [toX, toY] = placeAt(to_);
        Defect defect = before_;
        defect.x += toX - fromX;
        defect.y += toY - fromY;
        defect = keptInside(defect, plank_);
        if (defect != plank_.defects[static_cast<std::size_t>(dragged_)]) {
            Q_EMIT moved(dragged_, defect);
        }
    } else {
        drawing_ = drawing_ || (to_ - from_).manhattanLength() >= 4;
        update();
    }
}

void PlankCanvas::mouseReleaseEvent(QMouseEvent* event) {
    if (!pressed_ || event->button() != Qt::LeftButton) {
        return;
    }
    pressed_ = false;
    dragged_ = -1;
    if (drawing_) {
        drawing_ = false;
        Defect defect = between(from_, event->position());
        defect.length = std::max(defect.length, step());
        defect.width = std::max(defect.width, step());
        Q_EMIT added(keptInside(defect, plank_));
        choose(static_cast<int>(plank_.defects.size()) - 1);
    }
    update();
}

bool PlankCanvas::focusNextPrevChild(bool next) {
    const int count = static_cast<int>(plank_.defects.size());
    const int to = chosen_ + (next ? 1 : -1);
    if (hasFocus() && to >= 0 && to < count) {
        choose(to);
        return true;
    }
    return QWidget::focusNextPrevChild(next);
}

void PlankCanvas::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Insert || event->key() == Qt::Key_Plus) {
        const Length side = step() * (notation_.unit == Unit::Inches ? 16 : 30);
        Q_EMIT added(keptInside({half(plank_.length) - half(side), half(plank_.width) - half(side),
                                 side, std::min(side, plank_.width)},
                                plank_));
        choose(static_cast<int>(plank_.defects.size()) - 1);
        return;
    }
    if (chosen_ < 0) {
        QWidget::keyPressEvent(event);
        return;
    }
    if (event->key() == Qt::Key_Delete || event->key() == Qt::Key_Backspace) {
        Q_EMIT removed(chosen_);
        return;
    }
    int across = 0;
    int up = 0;
    switch (event->key()) {
    case Qt::Key_Left:
        across = -1;
        break;
    case Qt::Key_Right:
        across = 1;
        break;
    case Qt::Key_Up:
        up = 1;
        break;
    case Qt::Key_Down:
        up = -1;
        break;
    default:
        QWidget::keyPressEvent(event);
        return;
    }
    Defect defect = plank_.defects[static_cast<std::size_t>(chosen_)];
    const Length by = step() * (event->modifiers().testFlag(Qt::ControlModifier) ? 10 : 1);
    if (event->modifiers().testFlag(Qt::ShiftModifier)) {
        defect.length = std::max(defect.length + by * across, step());
        defect.width = std::max(defect.width + by * up, step());
    } else {
        defect.x += by * across;
        defect.y += by * up;
    }
    Q_EMIT moved(chosen_, keptInside(defect, plank_));
}

}  // namespace kerfwright
