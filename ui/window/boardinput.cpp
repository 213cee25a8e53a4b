// The mouse and the keys of the board view.
#include "ui/window/boardview.h"

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

Length snapped(Length length, Length step) {
    const double steps = static_cast<double>(length.nm()) / static_cast<double>(step.nm());
    return step * std::llround(steps);
}

}  // namespace

void BoardView::updateCursor() {
    if (drag_ == Drag::Pan || spaceDown_) {
        setCursor(drag_ == Drag::Pan ? Qt::ClosedHandCursor : Qt::OpenHandCursor);
    } else if (!joint_.isNone()) {
        setCursor(joint_.vertical ? Qt::SplitHCursor : Qt::SplitVCursor);
    } else if (hovered_.x() >= 0 && tool_ != Tool::Joints) {
        setCursor(tool_ == Tool::Paint ? Qt::PointingHandCursor : Qt::CrossCursor);
    } else {
        unsetCursor();
    }
}

void BoardView::showPointer(QPointF at) {
    pointer_ = at;
    hovered_ = geometry_.cellAt(at);
    if (!isStill() || at.x() < Rulers::left || at.y() < Rulers::top) {
        hovered_ = QPoint(-1, -1);
    }
    if (drag_ != Drag::Joint) {
        joint_ = tool_ == Tool::Joints && drag_ == Drag::None ? geometry_.jointAt(at, reach)
                                                              : GridJoint();
    }
    updateCursor();
    update();
}

void BoardView::strokeTo(QPointF at) {
    // A quick hand skips cells between two events; the line between them is painted.
    const QPointF way = at - last_;
    const int steps = std::max(1, static_cast<int>(std::hypot(way.x(), way.y()) / 3));
    std::vector<QPoint> cells;
    for (int i = 0; i <= steps; ++i) {
        const QPoint cell = geometry_.cellAt(last_ + way * (static_cast<double>(i) / steps));
        if (cell.x() >= 0 && (cells.empty() || cells.back() != cell)) {
            cells.push_back(cell);
        }
    }
    last_ = at;
    editor_.paint(cells);
}

void BoardView::dragJoint(QPointF at, bool fine) {
    const double moved = joint_.vertical ? at.x() - dragFrom_.x() : at.y() - dragFrom_.y();
    const auto by = static_cast<std::int64_t>(std::llround(moved / scale_ * 1e6));
    editor_.placeJoint(joint_, snapped(jointSize_ + Length::nm(by), editor_.jointStep(fine)));
}

void BoardView::mousePressEvent(QMouseEvent* event) {
    Q_EMIT touched();
    const QPointF at = event->position();
    const QPoint cell = geometry_.cellAt(at);
    last_ = at;
    dragFrom_ = at;
    if (event->button() == Qt::MiddleButton || (event->button() == Qt::LeftButton && spaceDown_)) {
        drag_ = Drag::Pan;
        spacePanned_ = true;
    } else if (event->button() == Qt::RightButton) {
        editor_.pickUp(cell);
    } else if (event->button() == Qt::LeftButton) {
        showPointer(at);
        if (tool_ == Tool::Joints && !joint_.isNone()) {
            const Field& field = document_.project().board.field;
            const auto index = static_cast<std::size_t>(joint_.index);
            jointSize_ = joint_.vertical ? field.columns[index] : field.rows[index];
            drag_ = Drag::Joint;
            editor_.setMark(joint_.vertical ? QRect(joint_.index, std::max(0, cell.y()), 1, 1)
                                            : QRect(std::max(0, cell.x()), joint_.index, 1, 1));
        } else if (cell.x() < 0) {
            editor_.clearMark();
            Q_EMIT pieceChosen(QPoint(-1, -1), QPointF());
        } else if (tool_ == Tool::Paint) {
            drag_ = Drag::Paint;
            strokeTo(at);
        } else {
            drag_ = Drag::Select;
            markFrom_ = cell;
            editor_.setMark(editor_.pieceCells(cell));
            Q_EMIT pieceChosen(cell, geometry_.toMm(at));
        }
    }
    updateCursor();
}

void BoardView::mouseMoveEvent(QMouseEvent* event) {
    const QPointF at = event->position();
    switch (drag_) {
    case Drag::Pan:
        pan(at - last_);
        last_ = at;
        break;
    case Drag::Paint:
        strokeTo(at);
        break;
    case Drag::Joint:
        dragJoint(at, event->modifiers().testFlag(Qt::ShiftModifier));
        break;
    case Drag::Select: {
        const QPoint cell = geometry_.cellAt(at);
        if (cell.x() >= 0) {
            editor_.setMark(editor_.pieceCells(markFrom_).united(editor_.pieceCells(cell)));
        }
        break;
    }
    case Drag::None:
        break;
    }
    showPointer(at);
}

void BoardView::mouseReleaseEvent(QMouseEvent* event) {
    if (drag_ != Drag::None && event->button() != Qt::RightButton) {
        drag_ = Drag::None;
        editor_.endStroke();
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

void BoardView::chooseMark() {
    const QRectF cells = geometry_.cells(editor_.mark());
    Q_EMIT pieceChosen(editor_.mark().topLeft(), geometry_.toMm(cells.center()));
}

bool BoardView::nudgeKey(int right, int down, bool fine) {
    const QRect mark = editor_.mark();
    if (mark.isNull()) {
        return false;
    }
    const GridJoint joint = right != 0 ? GridJoint{true, mark.x() + mark.width() - 1}
                                       : GridJoint{false, mark.y() + mark.height() - 1};
    editor_.nudgeJoint(joint, right + down, fine);
    return true;
}

void BoardView::keyPressEvent(QKeyEvent* event) {
    const Qt::KeyboardModifiers keys = event->modifiers() & ~Qt::KeypadModifier;
    const int key = event->key();
    const int right = key == Qt::Key_Right ? 1 : key == Qt::Key_Left ? -1 : 0;
    const int down = key == Qt::Key_Down ? 1 : key == Qt::Key_Up ? -1 : 0;
    if (right != 0 || down != 0) {
        if (keys.testFlag(Qt::AltModifier)) {
            nudgeKey(right, down, keys.testFlag(Qt::ShiftModifier));
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
        editor_.clearMark();
        Q_EMIT pieceChosen(QPoint(-1, -1), QPointF());
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
        }
        QWidget::keyReleaseEvent(event);
        return;
    }
    // Space alone paints, where painting is at hand; held while dragging it moves the board.
    if (spaceDown_ && !spacePanned_ && tool_ != Tool::Joints) {
        editor_.paintMark();
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
    editor_.endStroke();
    update();
}

}  // namespace kerfwright
