#include "ui/window/cutlist.h"

#include "core/sheets/record.h"
#include "ui/document/text.h"
#include "ui/window/boardpainter.h"
#include "ui/window/cardpainter.h"
#include "ui/window/focusring.h"
#include "ui/window/spotlight.h"
#include "ui/window/stepwords.h"
#include "ui/window/textblock.h"
#include "ui/window/tones.h"
#include "ui/window/workingpopup.h"

#include <QKeyEvent>
#include <QLabel>
#include <QMouseEvent>
#include <QPainter>
#include <QStyledItemDelegate>

#include <algorithm>

namespace kerfwright {

namespace {

constexpr int headHeight = 48;
constexpr int side = 12;  // left and right of a line
constexpr int chipSize = 26;
constexpr int above = 9;  // and below
constexpr int signSize = 28;

/// Paints a line; measures it where there is no painter.
class CutPainter : public QStyledItemDelegate {
public:
    explicit CutPainter(CutList* list)
        : QStyledItemDelegate(list)
        , list_(list) {}

    QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override {
        const int width = list_->viewport()->width();
        return QSize(width, layOut(nullptr, list_->line(index.row()), QRect(0, 0, width, 0),
                                   option.palette));
    }

    void paint(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override {
        const Tones tones = tonesOf(option.palette);
        painter->save();
        painter->setLayoutDirection(option.direction);
        painter->setRenderHint(QPainter::Antialiasing);
        if (index.row() > 0) {
            painter->setPen(QPen(tones.edge, 1));
            const double y = option.rect.top() + 0.5;
            painter->drawLine(QPointF(option.rect.left() + side, y),
                              QPointF(option.rect.right() - side, y));
        }
        if (list_->hasFocus() && list_->currentIndex() == index) {
            paintFocusRing(*painter, QRectF(option.rect).adjusted(4, 3, -4, -3), tones);
        }
        if (list_->chosenLine() == index.row()) {
            painter->setPen(QPen(tones.accent, 1.6));
            painter->setBrush(Qt::NoBrush);
            painter->drawRoundedRect(QRectF(option.rect).adjusted(1.5, 2.5, -1.5, -1.5), 6, 6);
        } else if (list_->isMarked(index.row())) {
            paintTrailBar(*painter, QRectF(option.rect).adjusted(3, 0, 0, 0), tones);
        }
        layOut(painter, list_->line(index.row()), option.rect, option.palette);
        QFont bold = list_->font();
        bold.setBold(true);
        painter->setFont(bold);
        painter->setPen(tones.accent);
        painter->drawText(list_->workingRect(index.row()), Qt::AlignCenter, QStringLiteral("="));
        painter->restore();
    }

private:
    int layOut(QPainter* painter, const CutLine& line, const QRect& cell,
               const QPalette& palette) const {
        const Tones tones = tonesOf(palette);
        const QFont plain = list_->font();
        QFont bold = plain;
        bold.setBold(true);
        const QFont small = smallFont(plain);
        const int left = cell.left() + side + chipSize + 10;
        const int right = cell.right() - side;
        TextColumn text{painter, left, cell.top() + above};
        if (painter != nullptr) {
            const QRectF chip(cell.left() + side, text.y + 1, chipSize, chipSize);
            painter->setPen(QPen(outlineOf(line.colour, tones), 1));
            painter->setBrush(line.colour);
            painter->drawRoundedRect(chip.adjusted(0.5, 0.5, -0.5, -0.5), 4, 4);
            painter->setFont(bold);
            painter->setPen(readableOn(line.colour));
            painter->drawText(chip, Qt::AlignCenter, line.letter);
        }
        const int useWidth = QFontMetrics(small).horizontalAdvance(line.use);
        if (painter != nullptr) {
            painter->setFont(small);
            painter->setPen(tones.quiet);
            painter->drawText(QRect(right - useWidth, text.y, useWidth + 1, 40),
                              Qt::AlignLeft | Qt::AlignTop, line.use);
        }
        text.add(line.wood, plain, tones.text, right - useWidth - 10, 1);
        text.add(line.pieces, small, tones.quiet, right, 3);
        text.add(line.milled, bold, tones.text, right - signSize, 1);
        text.add(line.rough, small, tones.quiet, right - signSize, 1);
        return text.y + above - cell.top();
    }

    CutList* list_;
};

}  // namespace

QString CutLine::spoken() const {
    return CutList::tr("%1, letter %2, for %3. %4. %5. %6")
        .arg(wood, letter, use, pieces, milled, rough);
}

int CutModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(lines_.size());
}

QVariant CutModel::data(const QModelIndex& index, int role) const {
    if (!index.isValid()) {
        return QVariant();
    }
    switch (role) {
    case Qt::DisplayRole:
        return line(index.row()).wood;
    case Qt::AccessibleTextRole:
        return line(index.row()).spoken();
    default:
        return QVariant();
    }
}

void CutModel::setLines(std::vector<CutLine> lines) {
    beginResetModel();
    lines_ = std::move(lines);
    endResetModel();
}

CutList::CutList(Planner& planner, Spotlight& spotlight, QWidget* parent)
    : KeyList(parent)
    , planner_(planner)
    , spotlight_(spotlight)
    , model_(new CutModel(this))
    , head_(new QLabel(this)) {
    setObjectName(QStringLiteral("cutList"));
    setAccessibleName(tr("Cut list"));
    setModel(model_);
    setItemDelegate(new CutPainter(this));
    setFrameShape(NoFrame);
    setEditTriggers(NoEditTriggers);
    setSelectionMode(NoSelection);
    setVerticalScrollMode(ScrollPerPixel);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOn);
    setViewportMargins(0, headHeight, 0, 0);
    viewport()->setBackgroundRole(QPalette::Window);
    setMouseTracking(true);
    connect(&spotlight, &Spotlight::changed, this, &CutList::follow);
    head_->setObjectName(QStringLiteral("cutListHead"));
    head_->setWordWrap(true);
    head_->setForegroundRole(QPalette::PlaceholderText);
    head_->setContentsMargins(side, 0, side, 0);
    connect(&planner, &Planner::changed, this, [this] {
        if (isVisible()) {
            refresh();
        }
    });
}

void CutList::showEvent(QShowEvent* event) {
    QListView::showEvent(event);
    refresh();
}

void CutList::resizeEvent(QResizeEvent* event) {
    QListView::resizeEvent(event);
    head_->setGeometry(0, 0, width(), headHeight);
    scheduleDelayedItemsLayout();
}

QRect CutList::workingRect(int row) const {
    const QRect cell = visualRect(model_->index(row));
    return QRect(cell.right() - side - signSize + 6, cell.bottom() - above - signSize - 6, signSize,
                 signSize);
}

void CutList::mousePressEvent(QMouseEvent* event) {
    QListView::mousePressEvent(event);
    const QModelIndex index = indexAt(event->pos());
    if (event->button() != Qt::LeftButton) {
        return;
    }
    if (!index.isValid()) {
        spotlight_.letGoOf(Subject::Kind::CutLine);
    } else if (workingRect(index.row()).contains(event->pos())) {
        openWorking(index.row());
    } else {
        toggle(index.row());
    }
}

void CutList::mouseMoveEvent(QMouseEvent* event) {
    QListView::mouseMoveEvent(event);
    const QModelIndex index = indexAt(event->pos());
    const bool over = index.isValid() && workingRect(index.row()).contains(event->pos());
    viewport()->setCursor(over ? Qt::PointingHandCursor : Qt::ArrowCursor);
}

void CutList::keyPressEvent(QKeyEvent* event) {
    const bool asks = event->key() == Qt::Key_Equal || event->key() == Qt::Key_Return ||
                      event->key() == Qt::Key_Enter;
    if (asks && currentIndex().isValid()) {
        openWorking(currentIndex().row());
        return;
    }
    if (event->key() == Qt::Key_Space && currentIndex().isValid()) {
        toggle(currentIndex().row());
        return;
    }
    QListView::keyPressEvent(event);
}

void CutList::toggle(int row) {
    if (chosenLine() == row) {
        spotlight_.letGo();
    } else {
        spotlight_.choose({Subject::Kind::CutLine, row});
    }
}

int CutList::chosenLine() const {
    const Subject& subject = spotlight_.subject();
    return subject.kind == Subject::Kind::CutLine ? subject.index : -1;
}

bool CutList::isMarked(int row) const {
    return chosenLine() < 0 && spotlight_.trail().cutLines.contains(row);
}

void CutList::follow() {
    viewport()->update();
    const std::set<int>& lines = spotlight_.trail().cutLines;
    const bool seen = std::any_of(lines.begin(), lines.end(), [this](int row) {
        return viewport()->rect().intersects(visualRect(model_->index(row)));
    });
    if (!lines.empty() && !seen) {
        scrollTo(model_->index(*lines.begin()));
    }
}

void CutList::openWorking(int row) {
    if (!shown_) {
        return;
    }
    const CutLine& asked = line(row);
    auto* popup = new WorkingPopup(tr("%1, %2").arg(asked.wood, asked.use), asked.figures,
                                   shown_->project->notation, this);
    connect(popup, &WorkingPopup::termAsked, this, &CutList::termAsked);
    const QRect anchor = workingRect(row);
    popup->openBeside(QRect(viewport()->mapToGlobal(anchor.topLeft()), anchor.size()));
}

void CutList::refresh() {
    const PlannedPtr planned = planner_.last();
    if (planned == shown_ && !head_->text().isEmpty()) {
        return;
    }
    shown_ = planned;
    std::vector<CutLine> lines;
    if (planned) {
        const Notation& notation = planned->project->notation;
        const auto size = [&](const Figure& thickness, const Figure& width, const Figure& length) {
            return sizeText(thickness.value, width.value, length.value, notation);
        };
        for (const auto& [panel, line] : cutListOf(planned->job.steps)) {
            const Wood& wood = planned->project->woods[static_cast<std::size_t>(line.wood)];
            lines.push_back(
                {toQColor(wood.colour),
                 toQt(wood.letter),
                 toQt(wood.name),
                 panel.empty() ? tr("border") : tr("panel %1").arg(toQt(panel)),
                 tr("%1: %2").arg(
                     counted(static_cast<int>(line.strips.size()), tr("%1 piece"), tr("%1 pieces")),
                     toQt(labelList(line.strips))),
                 tr("milled %1").arg(size(line.thickness, line.width, line.length)),
                 tr("rough %1").arg(size(line.roughThickness, line.roughWidth, line.roughLength)),
                 {{tr("Thickness"), line.thickness},
                  {tr("Width"), line.width},
                  {tr("Length"), line.length},
                  {tr("Rough thickness"), line.roughThickness},
                  {tr("Rough width"), line.roughWidth},
                  {tr("Rough length"), line.roughLength}}});
        }
    }
    head_->setText(lines.empty() ? tr("The strips appear here once the board can be planned.")
                                 : tr("Every size is thickness × width × length."));
    model_->setLines(std::move(lines));
    follow();
}

}  // namespace kerfwright
