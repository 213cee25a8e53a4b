#include "ui/window/racklist.h"

#include "core/bench/quote.h"
#include "core/sheets/cutwords.h"
#include "core/timber/timberwords.h"
#include "ui/document/text.h"
#include "ui/paint/painter.h"
#include "ui/window/cardpainter.h"
#include "ui/window/focusring.h"
#include "ui/window/textblock.h"
#include "ui/window/tones.h"

#include <QKeyEvent>
#include <QPainter>
#include <QStyledItemDelegate>

#include <algorithm>

namespace kerfwright {

namespace {

constexpr double rackScale = 3.7;
constexpr int rackSide = 16;
constexpr int rackAbove = 10;
constexpr int planksHeight = 34;

/// Paints a plank of the rack.
class RackPainter : public QStyledItemDelegate {
public:
    RackPainter(RackList* list, RackModel* model)
        : QStyledItemDelegate(list)
        , list_(list)
        , model_(model) {}

    QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex&) const override {
        const int line = QFontMetrics(option.font).height();
        return QSize(list_->viewport()->width(), 2 * rackAbove + line * 2 + planksHeight + 8);
    }

    void paint(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override {
        const Tones tones = tonesOf(option.palette);
        const Plank& plank = model_->plank(index.row());
        const Project& project = *model_->project();
        painter->save();
        painter->setLayoutDirection(option.direction);
        painter->setRenderHint(QPainter::Antialiasing);
        const QRectF cell(option.rect);
        if (option.state.testFlag(QStyle::State_Selected)) {
            painter->setPen(Qt::NoPen);
            painter->setBrush(tones.soft);
            painter->drawRoundedRect(cell.adjusted(6, 2, -6, -2), 6, 6);
        } else if (index.row() > 0) {
            painter->setPen(QPen(tones.edge, 1));
            painter->drawLine(QPointF(cell.left() + rackSide, cell.top() + 0.5),
                              QPointF(cell.right() - rackSide, cell.top() + 0.5));
        }
        if (list_->hasFocus() && list_->currentIndex() == index) {
            paintFocusRing(*painter, cell.adjusted(6, 2, -6, -2), tones, 5);
        }
        if (list_->isMarked(index.row())) {
            paintTrailBar(*painter, cell.adjusted(6, 2, -6, -2), tones);
        }
        const QFont plain = option.font;
        QFont bold = plain;
        bold.setBold(true);
        const QFont small = smallFont(plain);
        const int line = QFontMetrics(plain).height();
        const int left = option.rect.left() + rackSide;
        const int right = option.rect.right() - rackSide;
        int top = option.rect.top() + rackAbove;
        // Label and wood, and what it costs.
        const QString price =
            plank.price > 0 ? toQt(moneyWords(plank.price, project.currency)) : QString();
        const int priceWidth = price.isEmpty() ? 0 : QFontMetrics(small).horizontalAdvance(price);
        painter->setFont(small);
        painter->setPen(tones.quiet);
        painter->drawText(QRect(right - priceWidth, top, priceWidth + 1, line),
                          Qt::AlignRight | Qt::AlignVCenter, price);
        painter->setFont(bold);
        painter->setPen(tones.text);
        const QString label = toQt(plank.label);
        const int labelWidth =
            std::min(QFontMetrics(bold).horizontalAdvance(label) + 2, (right - left) / 2);
        painter->drawText(QRect(left, top, labelWidth, line), Qt::AlignVCenter,
                          QFontMetrics(bold).elidedText(label, Qt::ElideRight, labelWidth));
        painter->setFont(plain);
        QString wood = toQt(woodName(plank.wood, project.woods));
        if (plank.isOffcut) {
            wood += RackList::tr(" · offcut");
        }
        const int room = right - priceWidth - 8 - (left + labelWidth + 8);
        painter->drawText(QRect(left + labelWidth + 8, top, room, line), Qt::AlignVCenter,
                          QFontMetrics(plain).elidedText(wood, Qt::ElideRight, room));
        top += line;
        QString size = toQt(sizeWords(plank, project.notation));
        if (!plank.defects.empty()) {
            size += QStringLiteral(" · ") + counted(static_cast<qsizetype>(plank.defects.size()),
                                                    RackList::tr("%1 defect"),
                                                    RackList::tr("%1 defects"));
        }
        if (!plank.note.empty()) {
            size += QStringLiteral(" · ") + toQt(plank.note);
        }
        painter->setFont(small);
        painter->setPen(tones.quiet);
        painter->drawText(QRect(left, top, right - left, line), Qt::AlignVCenter,
                          QFontMetrics(small).elidedText(size, Qt::ElideRight, right - left));
        top += line + 4;
        PlankLook look;
        look.dimensions = false;
        look.scale = scale_(project, (right - left) / rackScale);
        const PlankView view = drawPlank({plank, project.woods, project.notation}, look);
        painter->translate(left, top);
        painter->scale(rackScale, rackScale);
        kerfwright::paint(*painter, view.drawing, windowTheme(tones.dark));
        painter->restore();
    }

private:
    /// One scale for the whole rack, so that planks can be compared.
    PlankScale scale_(const Project& project, double length) const {
        if (scaledFor_ != &project || scaledLength_ != length) {
            scaledFor_ = &project;
            scaledLength_ = length;
            scaled_ =
                scaleOf(project.timber.rack.planks, length, 2.2, planksHeight / rackScale - 0.5);
        }
        return scaled_;
    }

    RackList* list_;
    RackModel* model_;
    mutable const Project* scaledFor_ = nullptr;
    mutable double scaledLength_ = 0;
    mutable PlankScale scaled_;
};

}  // namespace

int RackModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() || !project_ ? 0
                                         : static_cast<int>(project_->timber.rack.planks.size());
}

QVariant RackModel::data(const QModelIndex& index, int role) const {
    if (!index.isValid()) {
        return QVariant();
    }
    const Plank& one = plank(index.row());
    if (role == Qt::DisplayRole) {
        return toQt(one.label);
    }
    if (role == Qt::AccessibleTextRole) {
        QString words = RackList::tr("%1, %2").arg(toQt(plankWords(one, project_->woods)),
                                                   toQt(sizeWords(one, project_->notation)));
        if (!one.defects.empty()) {
            words += QStringLiteral(", ") + counted(static_cast<qsizetype>(one.defects.size()),
                                                    RackList::tr("%1 defect"),
                                                    RackList::tr("%1 defects"));
        }
        return words;
    }
    return QVariant();
}

void RackModel::setProject(const ProjectPtr& project) {
    beginResetModel();
    project_ = project;
    endResetModel();
}

RackList::RackList(QWidget* parent)
    : KeyList(parent)
    , model_(new RackModel(this)) {
    setObjectName(QStringLiteral("rack"));
    setAccessibleName(tr("Rack"));
    setModel(model_);
    setItemDelegate(new RackPainter(this, model_));
    setFrameShape(NoFrame);
    setEditTriggers(NoEditTriggers);
    setSelectionMode(ExtendedSelection);
    setUniformItemSizes(true);
    setVerticalScrollMode(ScrollPerPixel);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    viewport()->setBackgroundRole(QPalette::Window);
}

void RackList::setProject(const ProjectPtr& project) {
    if (project == model_->project()) {
        return;
    }
    if (model_->project() && model_->project()->timber.rack == project->timber.rack &&
        model_->project()->woods == project->woods &&
        model_->project()->notation == project->notation &&
        model_->project()->currency == project->currency) {
        return;
    }
    std::set<std::string> labels;
    for (const int row : chosenRows()) {
        labels.insert(model_->plank(row).label);
    }
    const int scrolled = currentIndex().row();
    model_->setProject(project);
    for (int row = 0; row < count() && !labels.empty(); ++row) {
        if (labels.contains(model_->plank(row).label)) {
            selectionModel()->select(model_->index(row), QItemSelectionModel::Select);
            selectionModel()->setCurrentIndex(model_->index(row), QItemSelectionModel::NoUpdate);
        }
    }
    if (!currentIndex().isValid() && count() > 0 && scrolled >= 0) {
        choose(std::min(scrolled, count() - 1));
    }
}

std::vector<int> RackList::chosenRows() const {
    std::vector<int> rows;
    for (const QModelIndex& index : selectionModel()->selectedIndexes()) {
        rows.push_back(index.row());
    }
    std::sort(rows.begin(), rows.end());
    return rows;
}

void RackList::choose(int row) {
    // Whatever keys are held down: this row alone.
    selectionModel()->setCurrentIndex(model_->index(row), QItemSelectionModel::ClearAndSelect);
    scrollTo(model_->index(row));
}

void RackList::keyPressEvent(QKeyEvent* event) {
    switch (event->key()) {
    case Qt::Key_Delete:
    case Qt::Key_Backspace:
        Q_EMIT removeAsked();
        return;
    case Qt::Key_Return:
    case Qt::Key_Enter:
        if (currentIndex().isValid()) {
            Q_EMIT editAsked(currentIndex().row());
        }
        return;
    case Qt::Key_D:
        if (event->modifiers().testFlag(Qt::ControlModifier)) {
            Q_EMIT duplicateAsked();
            return;
        }
        break;
    default:
        break;
    }
    const QModelIndex before = currentIndex();
    QListView::keyPressEvent(event);
    if (currentIndex() != before || event->key() == Qt::Key_Space) {
        tellChosen();
    }
}

void RackList::mousePressEvent(QMouseEvent* event) {
    QListView::mousePressEvent(event);
    if (event->button() == Qt::LeftButton && indexAt(event->pos()).isValid()) {
        tellChosen();
    }
}

void RackList::tellChosen() {
    if (currentIndex().isValid()) {
        Q_EMIT plankChosen(toQt(model_->plank(currentIndex().row()).label));
    }
}

void RackList::setMarked(const std::set<std::string>& labels) {
    if (labels == marked_) {
        return;
    }
    marked_ = labels;
    viewport()->update();
    int first = -1;
    for (int row = 0; row < count(); ++row) {
        if (isMarked(row)) {
            if (viewport()->rect().intersects(visualRect(model_->index(row)))) {
                return;
            }
            first = first < 0 ? row : first;
        }
    }
    if (first >= 0) {
        scrollTo(model_->index(first));
    }
}

void RackList::mouseDoubleClickEvent(QMouseEvent* event) {
    const QModelIndex index = indexAt(event->pos());
    if (index.isValid()) {
        Q_EMIT editAsked(index.row());
    }
}

void RackList::resizeEvent(QResizeEvent* event) {
    QListView::resizeEvent(event);
    scheduleDelayedItemsLayout();
}

}  // namespace kerfwright
