#include "ui/window/boardeditor.h"

#include "ui/document/text.h"

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

BoardEditor::BoardEditor(Document& document, QObject* parent)
    : QObject(parent)
    , document_(document) {
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

void BoardEditor::paint(const std::vector<QPoint>& cells) {
    const Project& project = document_.project();
    const Field& field = project.board.field;
    const int columns = static_cast<int>(field.columns.size());
    const int rows = static_cast<int>(field.rows.size());
    const std::vector<int> map = pieceMap(field);
    std::set<std::size_t> reached;
    for (const QPoint cell : cells) {
        for (const QPoint image : images(cell, symmetry_, columns, rows)) {
            const int index = map[static_cast<std::size_t>(image.y() * columns + image.x())];
            if (field.pieces[static_cast<std::size_t>(index)].wood != wood_) {
                reached.insert(static_cast<std::size_t>(index));
            }
        }
    }
    if (reached.empty()) {
        return;
    }
    const QString wood = toQt(project.woods[static_cast<std::size_t>(wood_)].name).toLower();
    document_.edit(tr("paint with %1").arg(wood), entry::paint, [&](Project& changed) {
        for (const std::size_t index : reached) {
            changed.board.field.pieces[index].wood = wood_;
        }
    });
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
    if (mark_.isNull()) {
        return false;
    }
    const QRect piece = pieceCells(mark_.topLeft());
    return piece.width() * piece.height() > 1;
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
        project.board.field = withSplit(project.board.field, mark_.x(), mark_.y());
    });
    Q_EMIT markChanged();
}

void BoardEditor::placeJoint(const GridJoint& joint, Length size) {
    const Field& field = document_.project().board.field;
    const std::vector<Length>& sizes = joint.vertical ? field.columns : field.rows;
    const auto first = static_cast<std::size_t>(joint.index);
    if (joint.isNone() || first + 1 >= sizes.size()) {
        return;
    }
    const Length both = sizes[first] + sizes[first + 1];
    const Length wanted = std::clamp(size, BoardLimits::leastCell, both - BoardLimits::leastCell);
    const Length by = wanted - sizes[first];
    document_.edit(tr("move joint"), entry::joint, [&](Project& project) {
        Field& changed = project.board.field;
        changed = joint.vertical ? withColumnJointMoved(changed, joint.index, by)
                                 : withRowJointMoved(changed, joint.index, by);
    });
}

Length BoardEditor::jointStep(bool fine) const {
    if (document_.project().notation.unit == Unit::Inches) {
        return fine ? Length::inch(1, 64) : Length::inch(1, 16);
    }
    return fine ? Length::um(100) : Length::mm(1);
}

void BoardEditor::nudgeJoint(const GridJoint& joint, int steps, bool fine) {
    const Field& field = document_.project().board.field;
    const std::vector<Length>& sizes = joint.vertical ? field.columns : field.rows;
    if (!joint.isNone() && static_cast<std::size_t>(joint.index) + 1 < sizes.size()) {
        placeJoint(joint, sizes[static_cast<std::size_t>(joint.index)] + jointStep(fine) * steps);
    }
}

}  // namespace kerfwright
