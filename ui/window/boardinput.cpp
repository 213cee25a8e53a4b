// The mouse and the keys of the board view.
#include "ui/window/boardview.h"
#include "ui/window/regioneditor.h"

#include <QKeyEvent>
#include <QMouseEvent>
#include <QWheelEvent>

#include <algorithm>
#include <cmath>

namespace kerfwright {

namespace {

constexpr double reach = 6;  // pixels within which a joint is taken hold of
constexpr double zoomStep = 1.25;
constexpr double keyPan = 48;  // pixels

}  // namespace

void BoardView::showPointer(QPointF at) {
    pointer_ = at;
    hovered_ = isStill() ? cellUnder(at) : QPoint(-1, -1);
    if (drag_ != Drag::Joint) {
        joint_ = tool_ == Tool::Joints && drag_ == Drag::None ? geometry_.jointAt(at, reach)
                                                              : GridJoint();
    }
    updateCursor();
    update();
}

void BoardView::mousePressEvent(QMouseEvent* event) {
    Q_EMIT touched();
    const QPointF at = event->position();
    last_ = at;
    dragFrom_ = at;
    if (event->button() == Qt::MiddleButton || (event->button() == Qt::LeftButton && spaceDown_)) {
        drag_ = Drag::Pan;
        spacePanned_ = true;
    } else if (event->button() == Qt::RightButton) {
        if (editor_.region().carried() != nullptr || isDrawing()) {
            handKey(Qt::Key_Escape, Qt::NoModifier, 0, 0);
        } else {
            editor_.pickUp(geometry_.cellAt(at));
        }
    } else if (event->button() == Qt::LeftButton) {
        showPointer(at);
        pressTool(at, event->modifiers());
    }
    updateCursor();
}

void BoardView::mouseMoveEvent(QMouseEvent* event) {
    const QPointF at = event->position();
    moveTool(at, event->modifiers());
    showPointer(at);
}

void BoardView::mouseReleaseEvent(QMouseEvent* event) {
    if (drag_ != Drag::None && event->button() != Qt::RightButton) {
        releaseTool(event->modifiers());
        showPointer(event->position());
    }
}

void BoardView::mouseDoubleClickEvent(QMouseEvent* event) {
    mousePressEvent(event);  // two quick strokes are two strokes
}

void BoardView::wheelEvent(QWheelEvent* event) {
    const QPoint turned = event->angleDelta();
    if (event->modifiers().testFlag(Qt::ControlModifier)) {
        rescale(scale_ * std::pow(zoomStep, turned.y() / 120.0), event->position());
    } else if (event->modifiers().testFlag(Qt::ShiftModifier)) {
        pan(QPointF(turned.y(), turned.x()) / 2);
    } else {
        pan(QPointF(turned) / 2);
    }
    event->accept();
}

void BoardView::keyPressEvent(QKeyEvent* event) {
    const Qt::KeyboardModifiers keys = event->modifiers() & ~Qt::KeypadModifier;
    const int key = event->key();
    const int right = key == Qt::Key_Right ? 1 : key == Qt::Key_Left ? -1 : 0;
    const int down = key == Qt::Key_Down ? 1 : key == Qt::Key_Up ? -1 : 0;
    if (handKey(key, keys, right, down)) {
        return;
    }
    if (right != 0 || down != 0) {
        if (keys.testFlag(Qt::AltModifier)) {
            const GridJoint joint = jointBesideMark(right != 0);
            const bool fine = keys.testFlag(Qt::ShiftModifier);
            if (!joint.isNone()) {
                moveJointByKey(joint, [&] { editor_.nudgeJoint(joint, right + down, fine); });
            }
        } else if (keys.testFlag(Qt::ControlModifier)) {
            pan(QPointF(-right, -down) * keyPan);
        } else if (keys.testFlag(Qt::ShiftModifier)) {
            editor_.growMark(right, down);
        } else {
            editor_.stepMark(right, down);
            chooseMark();
        }
        return;
    }
    if (keys != Qt::NoModifier) {
        QWidget::keyPressEvent(event);
        return;
    }
    if (key >= Qt::Key_1 && key <= Qt::Key_9) {
        editor_.setWood(key - Qt::Key_1);
        return;
    }
    switch (key) {
    case Qt::Key_Space:
        if (!event->isAutoRepeat()) {
            spaceDown_ = true;
            spacePanned_ = false;
            updateCursor();
        }
        return;
    case Qt::Key_Return:
    case Qt::Key_Enter:
        if (!editor_.mark().isNull()) {
            editor_.pickUp(editor_.mark().topLeft());
        }
        return;
    case Qt::Key_Escape:
        keyJoint_ = GridJoint();
        editor_.clearMark();
        Q_EMIT pieceChosen(QPoint(-1, -1));
        return;
    default:
        QWidget::keyPressEvent(event);
    }
}

void BoardView::keyReleaseEvent(QKeyEvent* event) {
    if (event->key() != Qt::Key_Space || event->isAutoRepeat()) {
        // Joints moved by key are one undo step for as long as Alt is held.
        if (event->key() == Qt::Key_Alt) {
            editor_.endStroke();
            keyJoint_ = GridJoint();
            update();
        }
        QWidget::keyReleaseEvent(event);
        return;
    }
    // Space alone paints, where painting is at hand; held while dragging it moves the board.
    if (spaceDown_ && !spacePanned_) {
        paintByKey();
    }
    spaceDown_ = false;
    updateCursor();
}

void BoardView::leaveEvent(QEvent*) {
    if (drag_ == Drag::None) {
        pointer_ = QPointF(-1e6, -1e6);
        hovered_ = QPoint(-1, -1);
        joint_ = GridJoint();
        update();
    }
}

void BoardView::focusInEvent(QFocusEvent* event) {
    // Coming by key, there is something for the arrows to move.
    if (editor_.mark().isNull() &&
        (event->reason() == Qt::TabFocusReason || event->reason() == Qt::BacktabFocusReason)) {
        editor_.stepMark(0, 0);
    }
    update();
}

void BoardView::focusOutEvent(QFocusEvent*) {
    spaceDown_ = false;
    keyJoint_ = GridJoint();
    editor_.endStroke();
    update();
}

}  // namespace kerfwright
