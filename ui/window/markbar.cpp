#include "ui/window/markbar.h"

#include "ui/document/text.h"
#include "ui/window/icons.h"
#include "ui/window/lengthfield.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QToolButton>

namespace kerfwright {

namespace {

QToolButton* button(const QString& text, const QString& icon, const QString& tip, QWidget* parent) {
    auto* made = new QToolButton(parent);
    made->setText(text);
    made->setIcon(lineIcon(icon));
    made->setIconSize(QSize(18, 18));
    made->setToolTip(tip);
    made->setAccessibleName(text);
    made->setFocusPolicy(Qt::StrongFocus);
    made->setAutoRaise(true);
    return made;
}

}  // namespace

MarkBar::MarkBar(Document& document, BoardEditor& editor, QWidget* parent)
    : QWidget(parent)
    , document_(document)
    , editor_(editor)
    , columnName_(new QLabel(this))
    , rowName_(new QLabel(this))
    , merge_(button(tr("Merge"), QStringLiteral("merge"), tr("One piece of all that is marked (M)"),
                    this))
    , split_(
          button(tr("Split"), QStringLiteral("split"), tr("One piece a square again (S)"), this)) {
    setAccessibleName(tr("Marked piece"));
    const auto lengthField = [this](const QString& name, bool column) {
        auto* field = new LengthField(
            name,
            [this, column](Length length) {
                const int index = column ? editor_.mark().x() : editor_.mark().y();
                const auto fault = document_.edit(
                    column ? tr("change column %1").arg(index + 1)
                           : tr("change row %1").arg(index + 1),
                    (column ? entry::column : entry::row) + index, [&](Project& project) {
                        Field& changed = project.board.field;
                        auto& sizes = column ? changed.columns : changed.rows;
                        if (index >= 0 && static_cast<std::size_t>(index) < sizes.size()) {
                            sizes[static_cast<std::size_t>(index)] = length;
                        }
                    });
                return fault ? toQt(fault->text()) : QString();
            },
            this);
        field->setRange(BoardLimits::leastCell, BoardLimits::greatestCell);
        field->setFixedWidth(88);
        connect(field, &EntryField::sessionEnded, &document_, [this] { document_.endSession(); });
        return field;
    };
    columnWidth_ = lengthField(tr("Column width"), true);
    columnWidth_->setObjectName(QStringLiteral("columnWidth"));
    columnWidth_->line()->setObjectName(QStringLiteral("columnWidthEntry"));
    rowHeight_ = lengthField(tr("Row height"), false);
    rowHeight_->setObjectName(QStringLiteral("rowHeight"));
    rowHeight_->line()->setObjectName(QStringLiteral("rowHeightEntry"));
    merge_->setObjectName(QStringLiteral("merge"));
    split_->setObjectName(QStringLiteral("split"));
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(6);
    row->addWidget(columnName_);
    row->addWidget(columnWidth_);
    row->addSpacing(2);
    row->addWidget(rowName_);
    row->addWidget(rowHeight_);
    row->addStretch(1);
    row->addWidget(merge_);
    row->addWidget(split_);
    columnName_->setBuddy(columnWidth_);
    rowName_->setBuddy(rowHeight_);
    // The board keeps its size when a piece is marked.
    QSizePolicy policy = sizePolicy();
    policy.setRetainSizeWhenHidden(true);
    setSizePolicy(policy);
    connect(merge_, &QToolButton::clicked, &editor, &BoardEditor::merge);
    connect(split_, &QToolButton::clicked, &editor, &BoardEditor::split);
    connect(&editor, &BoardEditor::markChanged, this, &MarkBar::refresh);
    connect(&document, &Document::projectChanged, this, &MarkBar::refresh);
    refresh();
}

void MarkBar::refresh() {
    const QRect mark = editor_.mark();
    setVisible(!mark.isNull());
    if (mark.isNull()) {
        return;
    }
    const Project& project = document_.project();
    const Field& field = project.board.field;
    const auto column = static_cast<std::size_t>(mark.x());
    const auto row = static_cast<std::size_t>(mark.y());
    if (column >= field.columns.size() || row >= field.rows.size()) {
        return;
    }
    columnName_->setText(tr("Column %1").arg(column + 1));
    rowName_->setText(tr("Row %1").arg(row + 1));
    columnWidth_->setNotation(project.notation);
    rowHeight_->setNotation(project.notation);
    columnWidth_->setValue(field.columns[column]);
    rowHeight_->setValue(field.rows[row]);
    merge_->setEnabled(editor_.canMerge());
    split_->setEnabled(editor_.canSplit());
}

}  // namespace kerfwright
