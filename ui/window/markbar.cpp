#include "ui/window/markbar.h"

#include "ui/document/text.h"
#include "ui/window/faultnote.h"
#include "ui/window/lengthfield.h"
#include "ui/window/regionbar.h"

#include <QHBoxLayout>
#include <QLabel>

#include <algorithm>

namespace kerfwright {

namespace {

constexpr int barHeight = 30;
constexpr int air = 14;

}  // namespace

MarkBar::MarkBar(Document& document, BoardEditor& editor, const RegionActions& actions,
                 QWidget* parent)
    : QWidget(parent)
    , document_(document)
    , editor_(editor)
    , actions_(actions)
    , columnName_(new QLabel(this))
    , rowName_(new QLabel(this))
    , size_(new QLabel(this)) {
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
        field->setMinimumWidth(66);
        field->setMaximumWidth(88);
        connect(field, &EntryField::sessionEnded, &document_, [this] { document_.endSession(); });
        return field;
    };
    columnWidth_ = lengthField(tr("Column width"), true);
    columnWidth_->setObjectName(QStringLiteral("columnWidth"));
    columnWidth_->line()->setObjectName(QStringLiteral("columnWidthEntry"));
    rowHeight_ = lengthField(tr("Row height"), false);
    rowHeight_->setObjectName(QStringLiteral("rowHeight"));
    rowHeight_->line()->setObjectName(QStringLiteral("rowHeightEntry"));
    size_->setObjectName(QStringLiteral("markSize"));
    size_->setForegroundRole(QPalette::PlaceholderText);
    auto* row = new QHBoxLayout(this);
    // The menu of the region has its place also where there is room for nothing else.
    row->setContentsMargins(0, 0, RegionBar::leastWidth() + 2, 0);
    row->setSpacing(6);
    row->addWidget(columnName_);
    row->addWidget(columnWidth_);
    row->addSpacing(2);
    row->addWidget(rowName_);
    row->addWidget(rowHeight_);
    row->addStretch(1);
    setFixedHeight(barHeight);
    columnName_->setBuddy(columnWidth_);
    rowName_->setBuddy(rowHeight_);
    connect(&editor, &BoardEditor::markChanged, this, &MarkBar::refresh);
    connect(&document, &Document::projectChanged, this, &MarkBar::refresh);
    refresh();
}

void MarkBar::setFaultNote(FaultNote* note) {
    faults_ = note;
    columnWidth_->setFaultNote(note);
    rowHeight_->setFaultNote(note);
}

void MarkBar::refresh() {
    const QRect mark = editor_.mark();
    setVisible(!mark.isNull());
    if (mark.isNull()) {
        if (faults_ != nullptr) {
            faults_->unsay(columnWidth_);
            faults_->unsay(rowHeight_);
        }
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
    size_->clear();
    if (mark.width() > 1 || mark.height() > 1) {
        Length width;
        for (int i = mark.left(); i <= mark.right(); ++i) {
            width += field.columns[static_cast<std::size_t>(i)];
        }
        Length height;
        for (int i = mark.top(); i <= mark.bottom(); ++i) {
            height += field.rows[static_cast<std::size_t>(i)];
        }
        const bool onePiece = mark == editor_.pieceCells(mark.topLeft());
        size_->setText((onePiece ? tr("Piece %1 × %2") : tr("Marked %1 × %2"))
                           .arg(toQt(formatBare(width, project.notation)),
                                toQt(format(height, project.notation))));
    }
    if (region_ == nullptr) {
        // Not before something is marked: a start needs none of it.
        region_ = new RegionBar(actions_, this);
        region_->show();
    }
    place();
}

QSize MarkBar::minimumSizeHint() const {
    return QSize(layout()->minimumSize().width(), barHeight);
}

void MarkBar::resizeEvent(QResizeEvent*) {
    place();
}

void MarkBar::place() {
    if (region_ == nullptr) {
        return;
    }
    // Outside the layout, so that the bar is never wider for what is marked. The size goes first,
    // then as many commands as there is room for.
    layout()->activate();
    const int left = rowHeight_->geometry().right() + air;
    const int room = std::max(RegionBar::leastWidth(), width() - left);
    const int words = size_->sizeHint().width();
    const bool said = !size_->text().isEmpty() && words + air + RegionBar::leastWidth() <= room;
    const int taken = said ? words + air : 0;
    size_->setGeometry(left, 0, words, height());
    size_->setVisible(said);
    size_->setToolTip(size_->text());
    const int buttons =
        std::clamp(room - taken, RegionBar::leastWidth(), region_->sizeHint().width());
    region_->setGeometry(width() - buttons, 0, buttons, height());
}

}  // namespace kerfwright
