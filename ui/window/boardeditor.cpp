#include "ui/window/boardeditor.h"

#include "core/board/magnets.h"
#include "core/board/regions.h"
#include "core/board/strokes.h"
#include "ui/document/text.h"
#include "ui/window/regioneditor.h"

#include <algorithm>
#include <set>

namespace kerfwright {

namespace {

const Piece* pieceOf(const Field& field, QPoint cell) {
    const int index = pieceAt(field, cell.x(), cell.y());
    return index < 0 ? nullptr : &field.pieces[static_cast<std::size_t>(index)];
}

}  // namespace

std::vector<QPoint> images(QPoint cell, const Symmetry& symmetry, int columns, int rows) {
    std::vector<QPoint> all{cell};
    const auto add = [&all](QPoint point) {
        if (std::find(all.begin(), all.end(), point) == all.end()) {
            all.push_back(point);
        }
    };
    const auto repeat = [&](auto image) {
        const std::vector<QPoint> before = all;
        for (const QPoint point : before) {
            add(image(point));
        }
    };
    if (symmetry.across) {
        repeat([&](QPoint p) { return QPoint(columns - 1 - p.x(), p.y()); });
    }
    if (symmetry.down) {
        repeat([&](QPoint p) { return QPoint(p.x(), rows - 1 - p.y()); });
    }
    if (symmetry.halfTurn) {
        repeat([&](QPoint p) { return QPoint(columns - 1 - p.x(), rows - 1 - p.y()); });
    }
    if (symmetry.alternateRows) {
        const std::vector<QPoint> before = all;
        for (const QPoint point : before) {
            for (int row = point.y() % 2; row < rows; row += 2) {
                add(QPoint(point.x(), row));
            }
        }
    }
    return all;
}

std::vector<QPoint> strokeCells(Stroke stroke, QPoint from, QPoint to, bool straight) {
    const Cell first{from.x(), from.y()};
    const Cell last{to.x(), to.y()};
    const std::vector<Cell> cells =
        stroke == Stroke::Line ? lineCells(first, straight ? straightened(first, last) : last)
                               : rectangleCells(first, last, straight);
    std::vector<QPoint> points;
    points.reserve(cells.size());
    for (const Cell cell : cells) {
        points.emplace_back(cell.column, cell.row);
    }
    return points;
}

BoardEditor::BoardEditor(Document& document, QObject* parent)
    : QObject(parent)
    , document_(document)
    , region_(new RegionEditor(document, *this)) {
    connect(&document, &Document::projectChanged, this, &BoardEditor::projectChanged);
}

void BoardEditor::projectChanged() {
    const Field& field = document_.project().board.field;
    const QRect all(0, 0, static_cast<int>(field.columns.size()),
                    static_cast<int>(field.rows.size()));
    if (!mark_.isNull() && !all.contains(mark_)) {
        clearMark();
    }
    const int last = static_cast<int>(document_.project().woods.size()) - 1;
    if (wood_ > last) {
        setWood(last);
    }
}

void BoardEditor::setWood(int wood) {
    if (wood != wood_ && wood >= 0 && wood < static_cast<int>(document_.project().woods.size())) {
        wood_ = wood;
        Q_EMIT woodChanged();
    }
}

void BoardEditor::setSymmetry(const Symmetry& symmetry) {
    if (symmetry != symmetry_) {
        symmetry_ = symmetry;
        Q_EMIT symmetryChanged();
    }
}

void BoardEditor::setMark(const QRect& cells) {
    if (cells != mark_) {
        mark_ = cells;
        Q_EMIT markChanged();
    }
}

QRect BoardEditor::pieceCells(QPoint cell) const {
    const Piece* piece = pieceOf(document_.project().board.field, cell);
    return piece == nullptr ? QRect()
                            : QRect(piece->column, piece->row, piece->across, piece->down);
}

void BoardEditor::stepMark(int right, int down) {
    if (mark_.isNull()) {
        setMark(pieceCells(QPoint(0, 0)));
        return;
    }
    QPoint cell = mark_.topLeft();
    if (right != 0) {
        cell.setX(right > 0 ? mark_.x() + mark_.width() : mark_.x() - 1);
    }
    if (down != 0) {
        cell.setY(down > 0 ? mark_.y() + mark_.height() : mark_.y() - 1);
    }
    const QRect piece = pieceCells(cell);
    if (!piece.isNull()) {
        setMark(piece);
    }
}

void BoardEditor::growMark(int right, int down) {
    if (mark_.isNull()) {
        stepMark(0, 0);
        return;
    }
    const Field& field = document_.project().board.field;
    QRect cells = mark_;
    cells.setWidth(
        std::clamp(cells.width() + right, 1, static_cast<int>(field.columns.size()) - cells.x()));
    cells.setHeight(
        std::clamp(cells.height() + down, 1, static_cast<int>(field.rows.size()) - cells.y()));
    setMark(cells);
}

std::vector<int> BoardEditor::reachedBy(const std::vector<QPoint>& cells) const {
    const Field& field = document_.project().board.field;
    const int columns = static_cast<int>(field.columns.size());
    const int rows = static_cast<int>(field.rows.size());
    const std::vector<int> map = pieceMap(field);
    std::set<int> reached;
    for (const QPoint cell : cells) {
        for (const QPoint image : images(cell, symmetry_, columns, rows)) {
            reached.insert(map[static_cast<std::size_t>(image.y() * columns + image.x())]);
        }
    }
    return {reached.begin(), reached.end()};
}

std::vector<int> BoardEditor::filledFrom(QPoint cell) const {
    const Field& field = document_.project().board.field;
    std::set<int> reached;
    for (const QPoint image : images(cell, symmetry_, static_cast<int>(field.columns.size()),
                                     static_cast<int>(field.rows.size()))) {
        const std::vector<int> pieces = connectedPieces(field, {image.x(), image.y()});
        reached.insert(pieces.begin(), pieces.end());
    }
    return {reached.begin(), reached.end()};
}

QString BoardEditor::woodName() const {
    return inSentence(toQt(document_.project().woods[static_cast<std::size_t>(wood_)].name));
}

void BoardEditor::paintPieces(const QString& what, int entry, const std::vector<int>& pieces) {
    const Field& field = document_.project().board.field;
    if (std::all_of(pieces.begin(), pieces.end(), [&](int piece) {
            return field.pieces[static_cast<std::size_t>(piece)].wood == wood_;
        })) {
        return;  // no copy of the project for a stroke that stays on its own wood
    }
    document_.edit(what, entry, [&](Project& changed) {
        changed.board.field = withWood(changed.board.field, pieces, wood_);
    });
}

void BoardEditor::paint(const std::vector<QPoint>& cells) {
    paintPieces(tr("paint with %1").arg(woodName()), entry::paint, reachedBy(cells));
}

void BoardEditor::draw(Stroke stroke, QPoint from, QPoint to, bool straight) {
    const QString what =
        stroke == Stroke::Line ? tr("draw a line in %1") : tr("draw a rectangle in %1");
    paintPieces(what.arg(woodName()), entry::none,
                reachedBy(strokeCells(stroke, from, to, straight)));
}

void BoardEditor::fill(QPoint cell) {
    paintPieces(tr("fill with %1").arg(woodName()), entry::none, filledFrom(cell));
}

void BoardEditor::endStroke() {
    document_.endSession();
}

void BoardEditor::paintMark() {
    if (mark_.isNull()) {
        return;
    }
    std::vector<QPoint> cells;
    for (int row = mark_.top(); row <= mark_.bottom(); ++row) {
        for (int column = mark_.left(); column <= mark_.right(); ++column) {
            cells.emplace_back(column, row);
        }
    }
    paint(cells);
    endStroke();
}

void BoardEditor::pickUp(QPoint cell) {
    if (const Piece* piece = pieceOf(document_.project().board.field, cell)) {
        setWood(piece->wood);
    }
}

bool BoardEditor::canMerge() const {
    return !mark_.isNull() && mark_ != pieceCells(mark_.topLeft());
}

bool BoardEditor::canSplit() const {
    const Field& field = document_.project().board.field;
    return !mark_.isNull() &&
           std::any_of(field.pieces.begin(), field.pieces.end(), [&](const Piece& piece) {
               return piece.across * piece.down > 1 &&
                      mark_.intersects(QRect(piece.column, piece.row, piece.across, piece.down));
           });
}

void BoardEditor::merge() {
    if (!canMerge()) {
        return;
    }
    document_.edit(tr("merge pieces"), entry::none, [this](Project& project) {
        project.board.field =
            withMerged(project.board.field, mark_.x(), mark_.y(), mark_.width(), mark_.height());
    });
    Q_EMIT markChanged();
}

void BoardEditor::split() {
    if (!canSplit()) {
        return;
    }
    document_.edit(tr("split piece"), entry::none, [this](Project& project) {
        project.board.field = withAllSplit(project.board.field,
                                           {mark_.x(), mark_.y(), mark_.width(), mark_.height()});
    });
    Q_EMIT markChanged();
}

const std::vector<Length>* BoardEditor::sizesAt(const GridJoint& joint) const {
    const Field& field = document_.project().board.field;
    const std::vector<Length>& sizes = joint.vertical ? field.columns : field.rows;
    return joint.isNone() || static_cast<std::size_t>(joint.index) + 1 >= sizes.size() ? nullptr
                                                                                       : &sizes;
}

void BoardEditor::placeJoint(const GridJoint& joint, Length size) {
    const std::vector<Length>* sizes = sizesAt(joint);
    if (sizes == nullptr) {
        return;
    }
    const auto first = static_cast<std::size_t>(joint.index);
    // A mirror moves the joint's image along with it.
    const bool paired = symmetry_.halfTurn || (joint.vertical ? symmetry_.across : symmetry_.down);
    std::vector<Length> moved = *sizes;
    if (paired) {
        moved = jointPairMoved(moved, joint.index, size);
    } else {
        const Length both = moved[first] + moved[first + 1];
        moved[first] =
            std::clamp(size, std::max(BoardLimits::leastCell, both - BoardLimits::greatestCell),
                       std::min(BoardLimits::greatestCell, both - BoardLimits::leastCell));
        moved[first + 1] = both - moved[first];
    }
    if (moved == *sizes) {
        return;  // a hand that rests costs nothing
    }
    document_.edit(tr("move joint"), entry::joint, [&](Project& project) {
        Field& changed = project.board.field;
        (joint.vertical ? changed.columns : changed.rows) = moved;
    });
}

void BoardEditor::dragJoint(const GridJoint& joint, Length wanted, Length reach) {
    if (const std::vector<Length>* sizes = sizesAt(joint)) {
        placeJoint(joint, jointPlace(*sizes, joint.index, wanted, reach, jointStep(false)).before);
    }
}

void BoardEditor::jumpJoint(const GridJoint& joint) {
    if (const std::vector<Length>* sizes = sizesAt(joint)) {
        placeJoint(joint, nextMagnet(*sizes, joint.index));
    }
}

Length BoardEditor::jointStep(bool fine) const {
    if (document_.project().notation.unit == Unit::Inches) {
        return fine ? Length::inch(1, 64) : Length::inch(1, 16);
    }
    return fine ? Length::um(100) : Length::mm(1);
}

void BoardEditor::nudgeJoint(const GridJoint& joint, int steps, bool fine) {
    if (const std::vector<Length>* sizes = sizesAt(joint)) {
        placeJoint(joint,
                   (*sizes)[static_cast<std::size_t>(joint.index)] + jointStep(fine) * steps);
    }
}

}  // namespace kerfwright
