// The tools of the board view in the hand: what a press, a drag and a key do with each, and what is
// laid over the board meanwhile.
#include "ui/window/boardoverlay.h"
#include "ui/window/boardreading.h"
#include "ui/window/boardview.h"
#include "ui/window/pieceinfo.h"
#include "ui/window/regioneditor.h"

#include <QPainter>

#include <algorithm>
#include <cmath>

namespace kerfwright {

namespace {

constexpr double handleSide = 11;    // pixels
constexpr double magnetReach = 6;    // pixels within which a dragged joint is held
constexpr double readingPlace = 40;  // pixels from the pointer along the joint

Length snapped(Length length, Length step) {
    const double steps = static_cast<double>(length.nm()) / static_cast<double>(step.nm());
    return step * std::llround(steps);
}

Length lengthAt(double mm) {
    return Length::nm(static_cast<std::int64_t>(std::llround(mm * 1e6)));
}

Stroke strokeOf(Tool tool) {
    return tool == Tool::Line ? Stroke::Line : Stroke::Rectangle;
}

bool draws(Tool tool) {
    return tool == Tool::Line || tool == Tool::Rectangle;
}

}  // namespace

QPoint BoardView::cellUnder(QPointF at) const {
    return at.x() < Rulers::left || at.y() < Rulers::top ? QPoint(-1, -1) : geometry_.cellAt(at);
}

QPoint BoardView::nearestCell(QPointF at) const {
    const QRectF field = geometry_.field();
    return geometry_.cellAt(QPointF(std::clamp(at.x(), field.left(), field.right() - 0.01),
                                    std::clamp(at.y(), field.top(), field.bottom() - 0.01)));
}

QRectF BoardView::repeatHandle() const {
    if (tool_ != Tool::Select || editor_.mark().isNull() || editor_.region().carried() ||
        preview_) {
        return QRectF();
    }
    const QPointF corner = geometry_.cells(editor_.mark()).bottomRight();
    return QRectF(corner - QPointF(handleSide * 0.6, handleSide * 0.6),
                  QSizeF(handleSide, handleSide));
}

bool BoardView::isOverMoveable(QPoint cell) const {
    // A piece alone is where a new mark may begin; what is more was marked to be worked on.
    return tool_ == Tool::Select && cell.x() >= 0 && editor_.mark().contains(cell) &&
           editor_.mark() != editor_.pieceCells(cell);
}

GridJoint BoardView::jointInHand() const {
    return tool_ == Tool::Joints && !joint_.isNone() ? joint_ : keyJoint_;
}

Hand BoardView::hand() const {
    Hand hand;
    hand.carried = editor_.region().carried();
    if (isDrawing()) {
        hand.drawn =
            Drawn{strokeOf(tool_), drawFrom_, drawTo_,
                  editor_.reachedBy(strokeCells(strokeOf(tool_), drawFrom_, drawTo_, straight_))};
    }
    hand.joint = keyJoint_;
    hand.mark = editor_.mark();
    return hand;
}

void BoardView::updateCursor() {
    const bool carried = editor_.region().carried() != nullptr;
    if (drag_ == Drag::Pan || spaceDown_) {
        setCursor(drag_ == Drag::Pan ? Qt::ClosedHandCursor : Qt::OpenHandCursor);
    } else if (carried) {
        setCursor(Qt::SizeAllCursor);
    } else if (drag_ == Drag::Repeat || repeatHandle().contains(pointer_)) {
        setCursor(Qt::SizeFDiagCursor);
    } else if (!joint_.isNone()) {
        setCursor(joint_.vertical ? Qt::SplitHCursor : Qt::SplitVCursor);
    } else if (hovered_.x() >= 0 && tool_ != Tool::Joints) {
        setCursor(isOverMoveable(hovered_)                      ? Qt::SizeAllCursor
                  : tool_ == Tool::Paint || tool_ == Tool::Fill ? Qt::PointingHandCursor
                                                                : Qt::CrossCursor);
    } else {
        unsetCursor();
    }
}

void BoardView::pressTool(QPointF at, Qt::KeyboardModifiers keys) {
    RegionEditor& region = editor_.region();
    const QPoint cell = cellUnder(at);
    if (region.carried() != nullptr) {
        region.layDown(keys.testFlag(Qt::ShiftModifier));
        return;
    }
    if (isDrawing()) {
        drawTo_ = nearestCell(at);  // begun by key
        endDrawing(true, keys.testFlag(Qt::ShiftModifier));
        return;
    }
    keyJoint_ = GridJoint();
    if (tool_ == Tool::Joints && !joint_.isNone()) {
        const Field& field = document_.project().board.field;
        const auto index = static_cast<std::size_t>(joint_.index);
        jointSize_ = joint_.vertical ? field.columns[index] : field.rows[index];
        drag_ = Drag::Joint;
        editor_.setMark(joint_.vertical ? QRect(joint_.index, std::max(0, cell.y()), 1, 1)
                                        : QRect(std::max(0, cell.x()), joint_.index, 1, 1));
        return;
    }
    if (repeatHandle().contains(at)) {
        drag_ = Drag::Repeat;
        repeat_ = editor_.mark();
        return;
    }
    if (tool_ == Tool::Select && (at.x() < Rulers::left) != (at.y() < Rulers::top)) {
        drag_ = Drag::Lines;
        markFrom_ = nearestCell(at);
        markLines(at);
        return;
    }
    if (cell.x() < 0) {
        editor_.clearMark();
        if ((tool_ == Tool::Select || tool_ == Tool::Joints) && geometry_.board().contains(at)) {
            Q_EMIT borderChosen();
        } else {
            Q_EMIT pieceChosen(QPoint(-1, -1));
        }
        return;
    }
    markFrom_ = cell;
    switch (tool_) {
    case Tool::Paint:
        drag_ = Drag::Paint;
        strokeTo(at);
        return;
    case Tool::Line:
    case Tool::Rectangle:
        drag_ = Drag::Draw;
        beginDrawing(cell);
        straight_ = keys.testFlag(Qt::ShiftModifier);
        return;
    case Tool::Fill:
        editor_.fill(cell);
        return;
    case Tool::Select:
    case Tool::Joints:
        if (isOverMoveable(cell)) {
            drag_ = Drag::Carry;
            grip_ = cell - editor_.mark().topLeft();
            return;
        }
        drag_ = Drag::Select;
        editor_.setMark(editor_.pieceCells(cell));
        Q_EMIT pieceChosen(cell);
    }
}

void BoardView::moveTool(QPointF at, Qt::KeyboardModifiers keys) {
    RegionEditor& region = editor_.region();
    switch (drag_) {
    case Drag::Pan:
        pan(at - last_);
        last_ = at;
        break;
    case Drag::Paint:
        strokeTo(at);
        break;
    case Drag::Draw:
        drawTo_ = nearestCell(at);
        straight_ = keys.testFlag(Qt::ShiftModifier);
        break;
    case Drag::Joint:
        dragJoint(at, keys.testFlag(Qt::ShiftModifier));
        break;
    case Drag::Select:
        editor_.setMark(editor_.pieceCells(markFrom_).united(editor_.pieceCells(nearestCell(at))));
        break;
    case Drag::Lines:
        markLines(at);
        break;
    case Drag::Carry:
        if (region.carried() == nullptr && nearestCell(at) != markFrom_) {
            region.lift(keys.testFlag(Qt::ControlModifier));
        }
        region.carryTo(nearestCell(at) - grip_);
        break;
    case Drag::Repeat:
        repeat_ = editor_.mark().united(QRect(nearestCell(at), QSize(1, 1)));
        break;
    case Drag::None:
        if (const Carried* carried = region.carried()) {
            const QSize half = carried->cells().size() / 2;
            if (cellUnder(at).x() >= 0) {
                region.carryTo(cellUnder(at) - QPoint(half.width(), half.height()));
            }
        }
        break;
    }
}

void BoardView::releaseTool(Qt::KeyboardModifiers keys) {
    const Drag ended = std::exchange(drag_, Drag::None);
    switch (ended) {
    case Drag::Draw:
        endDrawing(true, keys.testFlag(Qt::ShiftModifier));
        break;
    case Drag::Carry:
        if (editor_.region().carried() != nullptr) {
            editor_.region().layDown();
        } else {
            editor_.setMark(editor_.pieceCells(markFrom_));
            chooseMark();
        }
        break;
    case Drag::Repeat:
        if (repeat_ != editor_.mark()) {
            editor_.region().repeatOver(repeat_);
        }
        break;
    default:
        break;
    }
    editor_.endStroke();
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
    // A size between two joints that move alike grows on both sides.
    const Symmetry symmetry = editor_.symmetry();
    const bool paired = symmetry.halfTurn || (joint_.vertical ? symmetry.across : symmetry.down);
    const int count = joint_.vertical ? geometry_.columns() : geometry_.rows();
    const double times = paired && 2 * joint_.index == count - 1 ? 2 : 1;
    const Length wanted = jointSize_ + lengthAt(moved * times / scale_);
    if (fine) {
        editor_.placeJoint(joint_, snapped(wanted, editor_.jointStep(true)));
    } else {
        editor_.dragJoint(joint_, wanted, lengthAt(magnetReach / scale_));
    }
}

void BoardView::markLines(QPointF at) {
    // On the ruler at the top whole columns, on that at the side whole rows.
    const bool columns = dragFrom_.y() < Rulers::top;
    const QRect span = QRect(markFrom_, QSize(1, 1)).united(QRect(nearestCell(at), QSize(1, 1)));
    editor_.setMark(columns ? QRect(span.x(), 0, span.width(), geometry_.rows())
                            : QRect(0, span.y(), geometry_.columns(), span.height()));
}

void BoardView::beginDrawing(QPoint cell) {
    drawFrom_ = cell;
    drawTo_ = cell;
    straight_ = false;
    update();
    describe();
    Q_EMIT gestureChanged();
}

void BoardView::endDrawing(bool draw, bool straight) {
    if (!isDrawing()) {
        return;
    }
    const QPoint from = std::exchange(drawFrom_, QPoint(-1, -1));
    if (draw) {
        editor_.draw(strokeOf(tool_), from, drawTo_, straight);
    }
    update();
    describe();
    Q_EMIT gestureChanged();
}

void BoardView::chooseMark() {
    Q_EMIT pieceChosen(editor_.mark().topLeft());
}

GridJoint BoardView::jointBesideMark(bool vertical) const {
    const QRect mark = editor_.mark();
    if (mark.isNull()) {
        return {};
    }
    return vertical ? GridJoint{true, mark.x() + mark.width() - 1}
                    : GridJoint{false, mark.y() + mark.height() - 1};
}

void BoardView::moveJointByKey(const GridJoint& joint, const std::function<void()>& move) {
    move();
    keyJoint_ = joint;
    update();
    describe();
}

void BoardView::paintByKey() {
    if (editor_.mark().isNull()) {
        return;
    }
    const QPoint cell = editor_.mark().topLeft();
    switch (tool_) {
    case Tool::Paint:
    case Tool::Select:
        editor_.paintMark();
        break;
    case Tool::Line:
    case Tool::Rectangle:
        if (isDrawing()) {
            endDrawing(true, false);
        } else {
            beginDrawing(cell);
        }
        break;
    case Tool::Fill:
        editor_.fill(cell);
        break;
    case Tool::Joints:
        break;
    }
}

bool BoardView::handKey(int key, Qt::KeyboardModifiers keys, int right, int down) {
    const bool shift = keys.testFlag(Qt::ShiftModifier);
    const bool enters = key == Qt::Key_Return || key == Qt::Key_Enter;
    RegionEditor& region = editor_.region();
    if (const Carried* carried = region.carried()) {
        if (keys.testFlag(Qt::ControlModifier) || keys.testFlag(Qt::AltModifier)) {
            return false;
        }
        const QSize size = carried->cells().size();
        if (right != 0 || down != 0) {
            region.carryBy(right * (shift ? size.width() : 1), down * (shift ? size.height() : 1));
        } else if (enters || key == Qt::Key_Space) {
            region.layDown(shift);
        } else if (key == Qt::Key_Escape) {
            drag_ = Drag::None;
            region.letGo();
        } else {
            return false;
        }
        return true;
    }
    if (isDrawing() && (enters || key == Qt::Key_Escape)) {
        drag_ = Drag::None;
        endDrawing(enters, shift);
        return true;
    }
    if (key == Qt::Key_Escape && drag_ == Drag::Repeat) {
        drag_ = Drag::None;
        update();
        return true;
    }
    if (key == Qt::Key_N && (keys == Qt::NoModifier || keys == Qt::ShiftModifier)) {
        const GridJoint joint = jointBesideMark(!shift);
        if (!joint.isNone()) {
            moveJointByKey(joint, [&] { editor_.jumpJoint(joint); });
            editor_.endStroke();
        }
        return true;
    }
    return false;
}

void BoardView::paintTools(QPainter& painter) {
    const Tones tones = tonesOf(palette());
    const Project& project = shown();
    const Field& field = project.board.field;
    const bool mine = isStill() && !preview_;
    const Wood& wood = project.woods[static_cast<std::size_t>(
        std::min(editor_.wood(), static_cast<int>(project.woods.size()) - 1))];
    const Carried* carried = mine ? editor_.region().carried() : nullptr;
    if (mine && isDrawing()) {
        paintWash(painter, field,
                  editor_.reachedBy(strokeCells(strokeOf(tool_), drawFrom_, drawTo_, straight_)),
                  wood, geometry_, tones);
    } else if (mine && tool_ == Tool::Fill && hovered_.x() >= 0 && carried == nullptr) {
        paintWash(painter, field, editor_.filledFrom(hovered_), wood, geometry_, tones);
    } else if (carried == nullptr &&
               (drag_ == Drag::Paint ||
                ((tool_ == Tool::Paint || draws(tool_)) && hovered_.x() >= 0))) {
        for (const QPoint cell :
             images(hovered_, editor_.symmetry(), geometry_.columns(), geometry_.rows())) {
            const QRect piece = editor_.pieceCells(cell);
            if (!piece.isNull()) {
                paintFrame(painter, geometry_.cells(piece).adjusted(1, 1, -1, -1),
                           mixed(tones.accent, tones.surround, 0.25), 1);
            }
        }
    }
    if (drag_ == Drag::Repeat && repeat_ != editor_.mark()) {
        paintCarried(painter, editor_.region().repeatedOver(repeat_), project.woods, geometry_,
                     tones);
    }
    if (!editor_.mark().isNull() && (carried == nullptr || !carried->from)) {
        paintFrame(painter, geometry_.cells(editor_.mark()).adjusted(1, 1, -1, -1), tones.accent,
                   hasFocus() ? 3 : 2);
    }
    if (carried != nullptr) {
        paintCarried(painter, *carried, project.woods, geometry_, tones);
    }
    const QRectF handle = repeatHandle();
    if (!handle.isNull() && mine) {
        paintHandle(painter, handle, tones);
    }
    const GridJoint joint = jointInHand();
    if (!joint.isNone() && carried == nullptr) {
        const bool sizes = drag_ == Drag::Joint || joint == keyJoint_;
        const QRectF marked = geometry_.cells(editor_.mark());
        const double along =
            drag_ == Drag::Joint
                ? (joint.vertical ? pointer_.y() - readingPlace : pointer_.x() - 2 * readingPlace)
                : (joint.vertical ? marked.center().y() : marked.center().x());
        paintJoint(painter, project, joint, geometry_, tones, sizes, along);
    }
}

QStringList BoardView::bubbleWords() const {
    const Project& project = shown();
    if (!joint_.isNone() && tool_ == Tool::Joints && editor_.region().carried() == nullptr) {
        QStringList words = jointWords(project, joint_);
        if (drag_ == Drag::Joint && words.size() > 1) {
            words.removeAt(1);  // the sizes stand beside the joint
        }
        return words;
    }
    if (preview_ || hovered_.x() < 0) {
        return {};
    }
    if (drag_ == Drag::Draw) {
        const Hand held = hand();
        return {cellsWords(QRect(drawFrom_, QSize(1, 1)).united(QRect(drawTo_, QSize(1, 1)))),
                piecesWords(project, held.drawn->pieces)};
    }
    if (drag_ == Drag::Select || drag_ == Drag::Lines || drag_ == Drag::Repeat) {
        return {cellsWords(drag_ == Drag::Repeat ? repeat_ : editor_.mark())};
    }
    if (const Carried* carried = editor_.region().carried()) {
        return {cellsWords(carried->cells())};
    }
    if (drag_ != Drag::None) {
        return {};
    }
    const QPointF mm = geometry_.toMm(pointer_);
    const Surround& surround = geometry_.surround();
    return pieceWords(project, currentJob(), hovered_, lengthAt(mm.x()) - surround.left(),
                      lengthAt(mm.y()) - surround.top());
}

}  // namespace kerfwright
