#include "ui/window/regioneditor.h"

#include "ui/document/text.h"
#include "ui/window/boardeditor.h"

#include <algorithm>

namespace kerfwright {

namespace {

Cells cellsIn(const QRect& rect) {
    return {rect.x(), rect.y(), rect.width(), rect.height()};
}

QRect rectOf(const Cells& cells) {
    return QRect(cells.column, cells.row, cells.across, cells.down);
}

/// -1 where there is none of that key.
int woodOf(const std::vector<Wood>& woods, const std::string& key) {
    const auto found =
        std::find_if(woods.begin(), woods.end(), [&](const Wood& wood) { return wood.key == key; });
    return found == woods.end() ? -1 : static_cast<int>(found - woods.begin());
}

}  // namespace

RegionEditor::RegionEditor(Document& document, BoardEditor& editor)
    : QObject(&editor)
    , document_(document)
    , editor_(editor) {
    // What is carried was cut to the board as it was.
    connect(&document, &Document::projectChanged, this, &RegionEditor::letGo);
}

Cells RegionEditor::marked() const {
    return cellsIn(editor_.mark());
}

void RegionEditor::setCarried(std::optional<Carried> carried) {
    carried_ = std::move(carried);
    Q_EMIT carriedChanged();
}

bool RegionEditor::change(const QString& what, const Result<Field>& changed) {
    const std::optional<Fault> fault =
        changed.ok() ? document_.edit(what, entry::none,
                                      [&](Project& project) { project.board.field = *changed; })
                     : std::optional<Fault>(changed.fault());
    if (fault) {
        Q_EMIT refused(toQt(fault->text()));
    }
    return !fault;
}

void RegionEditor::copy() {
    if (editor_.mark().isNull()) {
        return;
    }
    Copy copy{copied(field(), marked()), {}, {}};
    for (const Wood& wood : document_.project().woods) {
        copy.keys.push_back(wood.key);
        copy.names.push_back(wood.name);
    }
    copy_ = std::move(copy);
    Q_EMIT copyChanged();
}

void RegionEditor::cut() {
    if (editor_.mark().isNull()) {
        return;
    }
    copy();
    change(tr("cut pieces"), withCleared(field(), marked(), editor_.wood()));
}

std::optional<Field> RegionEditor::copyHere() {
    if (!copy_) {
        Q_EMIT refused(tr("Nothing is copied yet: mark pieces and copy them first."));
        return std::nullopt;
    }
    Field part = copy_->part;
    for (Piece& piece : part.pieces) {
        const auto wood = static_cast<std::size_t>(piece.wood);
        piece.wood = woodOf(document_.project().woods, copy_->keys[wood]);
        if (piece.wood < 0) {
            Q_EMIT refused(tr("The copy has %1 in it, which this board has not: add it to the "
                              "woods first.")
                               .arg(inSentence(toQt(copy_->names[wood]))));
            return std::nullopt;
        }
    }
    return part;
}

void RegionEditor::paste(QPoint place) {
    if (std::optional<Field> part = copyHere()) {
        const QPoint at = editor_.mark().isNull() ? place : editor_.mark().topLeft();
        setCarried(Carried{std::move(*part), at, std::nullopt});
    }
}

void RegionEditor::lift(bool keep) {
    const QRect mark = editor_.mark();
    if (!mark.isNull()) {
        setCarried(Carried{copied(field(), marked()), mark.topLeft(),
                           keep ? std::nullopt : std::optional<QRect>(mark)});
    }
}

void RegionEditor::carryTo(QPoint topLeft) {
    if (!carried_) {
        return;
    }
    // One cell at least stays over the field.
    const QRect cells = carried_->cells();
    const QPoint at(
        std::clamp(topLeft.x(), 1 - cells.width(), static_cast<int>(field().columns.size()) - 1),
        std::clamp(topLeft.y(), 1 - cells.height(), static_cast<int>(field().rows.size()) - 1));
    if (at != carried_->at) {
        carried_->at = at;
        Q_EMIT carriedChanged();
    }
}

void RegionEditor::carryBy(int right, int down) {
    if (carried_) {
        carryTo(carried_->at + QPoint(right, down));
    }
}

void RegionEditor::layDown(bool again) {
    if (!carried_) {
        return;
    }
    const Carried laid = *carried_;
    Field changed = field();
    if (laid.from) {
        changed = withCleared(changed, cellsIn(*laid.from), editor_.wood());
    }
    changed = withLaid(changed, laid.part, laid.at.x(), laid.at.y());
    setCarried(std::nullopt);
    const bool unmoved = laid.from && *laid.from == laid.cells() &&
                         laid.part == copied(field(), cellsIn(*laid.from));
    if (!unmoved) {
        change(laid.from ? tr("move pieces") : tr("paste pieces"), changed);
    }
    editor_.setMark(laid.cells().intersected(rectOf(cellsOf(field()))));
    if (again) {
        Carried more = laid;
        more.from.reset();
        setCarried(more);
    }
}

void RegionEditor::letGo() {
    if (carried_) {
        setCarried(std::nullopt);
    }
}

void RegionEditor::mirror(Mirror mirror) {
    if (carried_) {
        carried_->part = mirrored(carried_->part, mirror);
        Q_EMIT carriedChanged();
    } else if (!editor_.mark().isNull()) {
        change(mirror == Mirror::Across ? tr("mirror pieces across") : tr("mirror pieces down"),
               withMirrored(field(), marked(), mirror));
    }
}

void RegionEditor::turn() {
    if (carried_) {
        carried_->part = turned(carried_->part, 1);
        carryTo(carried_->at);
        Q_EMIT carriedChanged();
        return;
    }
    const QRect mark = editor_.mark();
    if (mark.isNull()) {
        return;
    }
    const bool whole = marked() == cellsOf(field());
    if (mark.width() != mark.height() && !whole) {
        Q_EMIT refused(tr("%1 by %2 cells do not fit where they lie once they are turned: copy "
                          "them, paste, and turn the copy while it is in the hand.")
                           .arg(mark.width())
                           .arg(mark.height()));
        return;
    }
    if (change(tr("turn pieces"), withTurned(field(), marked(), 1)) && whole) {
        markAll();
    }
}

void RegionEditor::repeatOverBoard() {
    repeatOver(rectOf(cellsOf(field())));
}

void RegionEditor::repeatOver(const QRect& cells) {
    if (!editor_.mark().isNull() && !cells.isEmpty() &&
        change(tr("repeat pieces"), withRepeated(field(), marked(), cellsIn(cells)))) {
        editor_.setMark(cells);
    }
}

Carried RegionEditor::repeatedOver(const QRect& cells) const {
    const QRect mark = editor_.mark();
    return {repeated(copied(field(), marked()), cells.width(), cells.height(), cells.x() - mark.x(),
                     cells.y() - mark.y()),
            cells.topLeft(), std::nullopt};
}

void RegionEditor::coverWithCopy() {
    const QRect mark = editor_.mark();
    if (mark.isNull()) {
        return;
    }
    if (const std::optional<Field> part = copyHere()) {
        change(tr("cover with the copy"),
               withLaid(field(), repeated(*part, mark.width(), mark.height()), mark.x(), mark.y()));
    }
}

void RegionEditor::insertLines(Edge edge) {
    const QRect mark = editor_.mark();
    if (mark.isNull()) {
        return;
    }
    const bool columns = edge == Edge::Left || edge == Edge::Right;
    const int first = columns ? mark.x() : mark.y();
    const int many = columns ? mark.width() : mark.height();
    const int at = edge == Edge::Left || edge == Edge::Top ? first : first + many;
    const QString what = columns ? counted(many, tr("insert %1 column"), tr("insert %1 columns"))
                                 : counted(many, tr("insert %1 row"), tr("insert %1 rows"));
    if (change(what, columns ? withColumnsInserted(field(), at, first, many)
                             : withRowsInserted(field(), at, first, many))) {
        editor_.setMark(columns ? QRect(at, mark.y(), many, mark.height())
                                : QRect(mark.x(), at, mark.width(), many));
    }
}

void RegionEditor::removeColumns() {
    removeLines(true);
}

void RegionEditor::removeRows() {
    removeLines(false);
}

void RegionEditor::removeLines(bool columns) {
    const QRect mark = editor_.mark();
    if (mark.isNull()) {
        return;
    }
    const int first = columns ? mark.x() : mark.y();
    const int many = columns ? mark.width() : mark.height();
    const auto there = static_cast<int>(columns ? field().columns.size() : field().rows.size());
    if (many == there) {
        Q_EMIT refused(columns ? tr("All columns are marked, and one at least has to stay.")
                               : tr("All rows are marked, and one at least has to stay."));
        return;
    }
    const QString what = columns ? counted(many, tr("remove %1 column"), tr("remove %1 columns"))
                                 : counted(many, tr("remove %1 row"), tr("remove %1 rows"));
    if (change(what, columns ? withColumnsRemoved(field(), first, many)
                             : withRowsRemoved(field(), first, many))) {
        const QPoint next(columns ? std::min(first, there - many - 1) : mark.x(),
                          columns ? mark.y() : std::min(first, there - many - 1));
        editor_.setMark(editor_.pieceCells(next));
    }
}

void RegionEditor::markAll() {
    editor_.setMark(rectOf(cellsOf(field())));
}

}  // namespace kerfwright
