#include "ui/window/boardtext.h"

#include "ui/document/text.h"
#include "ui/window/boardreading.h"
#include "ui/window/boardview.h"
#include "ui/window/designpicker.h"

#include <QAccessibleWidget>
#include <QClipboard>
#include <QGuiApplication>
#include <QHBoxLayout>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QVBoxLayout>

#include <map>
#include <numeric>

namespace kerfwright {

namespace {

Length sum(const std::vector<Length>& sizes, int first, int many) {
    return std::accumulate(sizes.begin() + first, sizes.begin() + first + many, Length());
}

QString woodOf(const Project& project, int wood) {
    return inSentence(toQt(project.woods[static_cast<std::size_t>(wood)].name));
}

/// The pieces of a row from the left, each with its wood, its width and the rows that it covers.
QStringList piecesOf(const Project& project, int row) {
    const Field& field = project.board.field;
    QStringList words;
    const int columns = static_cast<int>(field.columns.size());
    for (int column = 0; column < columns;) {
        const Piece& piece = field.pieces[static_cast<std::size_t>(pieceAt(field, column, row))];
        const QString wood = woodOf(project, piece.wood);
        const QString width =
            toQt(format(sum(field.columns, piece.column, piece.across), project.notation));
        if (piece.down == 1) {
            words << BoardText::tr("%1 %2").arg(wood, width);
        } else if (row == piece.row) {
            words << BoardText::tr("%1 %2 down to row %3")
                         .arg(wood, width)
                         .arg(piece.row + piece.down);
        } else {
            words << BoardText::tr("%1 %2 from row %3").arg(wood, width).arg(piece.row + 1);
        }
        column = piece.column + piece.across;
    }
    return words;
}

/// What repeats from end to end is said once.
QString inRuns(const QStringList& words) {
    const auto repeats = [&](qsizetype period) {
        for (qsizetype i = period; i < words.size(); ++i) {
            if (words[i] != words[i - period]) {
                return false;
            }
        }
        return words.size() % period == 0;
    };
    for (qsizetype period = 1; period <= words.size() / 2; ++period) {
        if (repeats(period)) {
            return BoardText::tr("%1 times %2")
                .arg(words.size() / period)
                .arg(words.mid(0, period).join(BoardText::tr(", ")));
        }
    }
    return words.join(BoardText::tr(", "));
}

QString rowHead(const Project& project, int row) {
    const std::vector<Length>& rows = project.board.field.rows;
    return BoardText::tr("Row %1 of %2, %3 high")
        .arg(row + 1)
        .arg(rows.size())
        .arg(toQt(format(rows[static_cast<std::size_t>(row)], project.notation)));
}

/// A row of the board, as assistive technology walks over it.
class RowReader : public QAccessibleInterface {
public:
    RowReader(BoardView* view, int row)
        : view_(view)
        , row_(row) {}

    bool isValid() const override { return row_ < view_->geometry().rows(); }
    QObject* object() const override { return nullptr; }
    QWindow* window() const override { return view_->window()->windowHandle(); }
    QAccessibleInterface* childAt(int, int) const override { return nullptr; }
    QAccessibleInterface* parent() const override {
        return QAccessible::queryAccessibleInterface(view_);
    }
    QAccessibleInterface* child(int) const override { return nullptr; }
    int childCount() const override { return 0; }
    int indexOfChild(const QAccessibleInterface*) const override { return -1; }
    QString text(QAccessible::Text kind) const override {
        return kind == QAccessible::Name && isValid() ? rowWords(view_->shownProject(), row_)
                                                      : QString();
    }
    void setText(QAccessible::Text, const QString&) override {}
    QRect rect() const override {
        const BoardGeometry& geometry = view_->geometry();
        const QRect row = geometry.cells(QRect(0, row_, geometry.columns(), 1)).toAlignedRect();
        return QRect(view_->mapToGlobal(row.topLeft()), row.size());
    }
    QAccessible::Role role() const override { return QAccessible::ListItem; }
    QAccessible::State state() const override {
        QAccessible::State state;
        state.readOnly = true;
        state.invalid = !isValid();
        return state;
    }

private:
    BoardView* view_;
    int row_;
};

class BoardReader : public QAccessibleWidget {
public:
    explicit BoardReader(BoardView* view)
        : QAccessibleWidget(view, QAccessible::List)
        , view_(view) {}
    ~BoardReader() override {
        for (const auto& [row, id] : rows_) {
            QAccessible::deleteAccessibleInterface(id);
        }
    }

    int childCount() const override { return view_->geometry().rows(); }
    QAccessibleInterface* child(int row) const override {
        if (row < 0 || row >= childCount()) {
            return nullptr;
        }
        auto known = rows_.find(row);
        if (known == rows_.end()) {
            const QAccessible::Id id =
                QAccessible::registerAccessibleInterface(new RowReader(view_, row));
            known = rows_.emplace(row, id).first;
        }
        return QAccessible::accessibleInterface(known->second);
    }
    int indexOfChild(const QAccessibleInterface* child) const override {
        for (const auto& [row, id] : rows_) {
            if (QAccessible::accessibleInterface(id) == child) {
                return row;
            }
        }
        return -1;
    }
    QAccessibleInterface* childAt(int x, int y) const override {
        for (int row = 0; row < childCount(); ++row) {
            if (child(row)->rect().contains(x, y)) {
                return child(row);
            }
        }
        return nullptr;
    }

private:
    BoardView* view_;
    mutable std::map<int, QAccessible::Id> rows_;  ///< made when they are asked for
};

QAccessibleInterface* makeReader(const QString&, QObject* object) {
    auto* view = qobject_cast<BoardView*>(object);
    return view != nullptr ? new BoardReader(view) : nullptr;
}

}  // namespace

QString rowWords(const Project& project, int row) {
    return BoardText::tr("%1: %2").arg(rowHead(project, row), inRuns(piecesOf(project, row)));
}

QString boardWords(const Project& project, const BoardSize& size) {
    const Board& board = project.board;
    const Field& field = board.field;
    QStringList lines;
    if (!project.titles.name.empty()) {
        lines << toQt(project.titles.name);
    }
    lines << BoardText::tr("%1, %2").arg(
        toQt(formatSize({size.width, size.height, board.thickness}, project.notation)),
        board.build == Build::EndGrain ? BoardText::tr("end grain up")
                                       : BoardText::tr("long grain up"));
    std::vector<int> all(field.pieces.size());
    std::iota(all.begin(), all.end(), 0);
    lines << BoardText::tr("%1 columns by %2 rows, %3")
                 .arg(field.columns.size())
                 .arg(field.rows.size())
                 .arg(piecesWords(project, all));
    lines << (board.border.isThere() ? BoardText::tr("Border: %1, %2, %3 wide")
                                           .arg(inSentence(designName(board.border.design)),
                                                woodOf(project, board.border.wood),
                                                toQt(format(board.border.width, project.notation)))
                                     : BoardText::tr("No border"));
    std::map<QString, int> said;  // where pieces that stand like this stand first
    for (int row = 0; row < static_cast<int>(field.rows.size()); ++row) {
        const QString pieces = inRuns(piecesOf(project, row));
        const auto [first, isNew] = said.emplace(pieces, row);
        lines << BoardText::tr("%1: %2").arg(
            rowHead(project, row),
            isNew ? pieces : BoardText::tr("as row %1").arg(first->second + 1));
    }
    return lines.join(QLatin1Char('\n'));
}

void readBoardsAloud() {
    QAccessible::installFactory(makeReader);
}

BoardText::BoardText(const QString& words, QWidget* parent)
    : QDialog(parent)
    , text_(new QPlainTextEdit(words, this)) {
    setObjectName(QStringLiteral("boardText"));
    setAttribute(Qt::WA_DeleteOnClose);
    setWindowTitle(tr("The board in words"));
    text_->setObjectName(QStringLiteral("boardWords"));
    text_->setAccessibleName(windowTitle());
    text_->setReadOnly(true);
    text_->setTabChangesFocus(true);
    text_->setTextInteractionFlags(Qt::TextSelectableByMouse | Qt::TextSelectableByKeyboard);
    auto* copy = new QPushButton(tr("&Copy all"), this);
    copy->setObjectName(QStringLiteral("copyWords"));
    copy->setAutoDefault(false);
    auto* close = new QPushButton(tr("Close"), this);
    close->setDefault(true);
    connect(copy, &QPushButton::clicked, this,
            [this] { QGuiApplication::clipboard()->setText(text_->toPlainText()); });
    connect(close, &QPushButton::clicked, this, &QDialog::reject);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(20, 16, 20, 16);
    column->setSpacing(12);
    column->addWidget(text_);
    auto* row = new QHBoxLayout;
    row->addWidget(copy);
    row->addStretch(1);
    row->addWidget(close);
    column->addLayout(row);
    resize(560, 440);
    text_->setFocus();
}

}  // namespace kerfwright
