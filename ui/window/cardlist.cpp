#include "ui/window/cardlist.h"

#include "ui/window/cardpainter.h"
#include "ui/window/focusring.h"
#include "ui/window/tones.h"

#include <QMouseEvent>
#include <QPainter>
#include <QScrollBar>

#include <algorithm>

namespace kerfwright {

QString Card::heading() const {
    switch (mood) {
    case Mood::Plain:
        return title;
    case Mood::Note:
        return CardList::tr("Note: %1").arg(title);
    case Mood::Caution:
        return CardList::tr("Caution: %1").arg(title);
    case Mood::Danger:
        return CardList::tr("Danger: %1").arg(title);
    }
    return title;
}

QString Card::spoken() const {
    QStringList all;
    if (!number.isEmpty()) {
        all << number;
    }
    all << heading();
    if (ticked) {
        all << (*ticked ? CardList::tr("Seen to") : CardList::tr("Not seen to"));
    }
    if (!lapsed.isEmpty()) {
        all << lapsed;
    }
    all << lines;
    if (!big.isEmpty()) {
        all << bigLabel + QStringLiteral(" ") + big;
    }
    if (!warning.isEmpty()) {
        all << warning;
    }
    if (!remedy.isEmpty()) {
        all << remedy;
    }
    for (const CardWay& way : ways) {
        all << way.words;
    }
    return all.join(QStringLiteral(". "));
}

int CardModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(cards_.size());
}

QVariant CardModel::data(const QModelIndex& index, int role) const {
    if (!index.isValid()) {
        return QVariant();
    }
    switch (role) {
    case Qt::DisplayRole:
        return card(index.row()).title;
    case Qt::AccessibleTextRole:
        return card(index.row()).spoken();
    case Qt::CheckStateRole: {
        const std::optional<bool> ticked = card(index.row()).ticked;
        return ticked ? QVariant(*ticked ? Qt::Checked : Qt::Unchecked) : QVariant();
    }
    default:
        return QVariant();
    }
}

Qt::ItemFlags CardModel::flags(const QModelIndex& index) const {
    const bool hasTick = index.isValid() && card(index.row()).ticked;
    return QAbstractListModel::flags(index) | (hasTick ? Qt::ItemIsUserCheckable : Qt::NoItemFlags);
}

void CardModel::setCards(std::vector<Card> cards) {
    beginResetModel();
    cards_ = std::move(cards);
    endResetModel();
}

CardList::CardList(QWidget* parent)
    : KeyList(parent)
    , model_(new CardModel(this)) {
    setModel(model_);
    setItemDelegate(new CardPainter(this));
    setFrameShape(QFrame::NoFrame);
    setVerticalScrollMode(ScrollPerPixel);
    verticalScrollBar()->setSingleStep(24);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOn);
    setSelectionMode(SingleSelection);
    setLayoutMode(Batched);
    setBatchSize(60);
    setMouseTracking(true);
    viewport()->setBackgroundRole(QPalette::Window);
}

void CardList::setCards(std::vector<Card> cards) {
    const int before = chosenCard();
    const QString title = before >= 0 ? card(before).title : QString();
    const int scrolled = verticalScrollBar()->value();
    const bool same = before >= 0 && before < static_cast<int>(cards.size()) &&
                      cards[static_cast<std::size_t>(before)].title == title;
    {
        const QSignalBlocker quiet(this);
        model_->setCards(std::move(cards));
        marked_.clear();
        if (same) {
            selectionModel()->setCurrentIndex(model_->index(before),
                                              QItemSelectionModel::ClearAndSelect);
        }
    }
    doItemsLayout();
    verticalScrollBar()->setValue(scrolled);
    if (before >= 0) {
        Q_EMIT chosen(chosenCard());
    }
    viewport()->update();
}

int CardList::chosenCard() const {
    const QModelIndexList selected = selectionModel()->selectedIndexes();
    return selected.isEmpty() ? -1 : selected.front().row();
}

void CardList::choose(int row) {
    const int before = chosenCard();
    if (row < 0) {
        clearSelection();
        setCurrentIndex(QModelIndex());
    } else {
        selectionModel()->setCurrentIndex(model_->index(row), QItemSelectionModel::ClearAndSelect);
    }
    viewport()->update();
    if (chosenCard() != before) {
        Q_EMIT chosen(chosenCard());
    }
}

void CardList::goTo(int row) {
    selectionModel()->setCurrentIndex(row < 0 ? QModelIndex() : model_->index(row),
                                      QItemSelectionModel::NoUpdate);
    viewport()->update();
}

void CardList::setMarked(const std::set<int>& rows) {
    if (rows != marked_) {
        marked_ = rows;
        viewport()->update();
        const bool seen = std::any_of(rows.begin(), rows.end(), [this](int row) {
            return viewport()->rect().intersects(visualRect(model_->index(row)));
        });
        if (!rows.empty() && !seen) {
            scrollTo(model_->index(*rows.begin()));
        }
    }
}

void CardList::setEmptyText(const QString& text) {
    emptyText_ = text;
    viewport()->update();
}

void CardList::setStale(bool stale) {
    if (stale != stale_) {
        stale_ = stale;
        viewport()->update();
    }
}

QRect CardList::workingRect(int row) const {
    const QModelIndex index = model_->index(row);
    return static_cast<const CardPainter*>(itemDelegate())
        ->workingRect(visualRect(index), card(row));
}

QRect CardList::wayRect(int row, int way) const {
    return static_cast<const CardPainter*>(itemDelegate())
        ->wayRect(visualRect(model_->index(row)), card(row), way);
}

QRect CardList::tickRect(int row) const {
    return static_cast<const CardPainter*>(itemDelegate())
        ->tickRect(visualRect(model_->index(row)), card(row));
}

int CardList::wayAt(int row, QPoint at) const {
    const int count = static_cast<int>(card(row).ways.size());
    for (int way = 0; way < count; ++way) {
        if (wayRect(row, way).contains(at)) {
            return way;
        }
    }
    return -1;
}

void CardList::currentChanged(const QModelIndex& current, const QModelIndex& previous) {
    QListView::currentChanged(current, previous);
    viewport()->update();
}

QItemSelectionModel::SelectionFlags CardList::selectionCommand(const QModelIndex&,
                                                               const QEvent*) const {
    return QItemSelectionModel::NoUpdate;  // walking over the cards chooses none
}

void CardList::mousePressEvent(QMouseEvent* event) {
    const QModelIndex index = indexAt(event->pos());
    pressedWorking_ = -1;
    pressedWay_ = index.isValid() ? wayAt(index.row(), event->pos()) : -1;
    pressedCard_ = index.row();
    pressedTick_ = -1;
    if (!index.isValid()) {
        choose(-1);
        return;
    }
    if (tickRect(index.row()).contains(event->pos())) {
        pressedTick_ = index.row();
    } else if (workingRect(index.row()).contains(event->pos())) {
        pressedWorking_ = index.row();
        choose(index.row());
    } else if (pressedWay_ < 0) {
        choose(index.row() == chosenCard() ? -1 : index.row());  // a second click lets go
    }
}

void CardList::mouseReleaseEvent(QMouseEvent* event) {
    const QModelIndex index = indexAt(event->pos());
    if (index.isValid() && index.row() == pressedTick_) {
        if (tickRect(pressedTick_).contains(event->pos())) {
            Q_EMIT tickAsked(pressedTick_);
        }
    } else if (index.isValid() && index.row() == pressedWorking_) {
        Q_EMIT workingAsked(pressedWorking_);
    } else if (index.isValid() && index.row() == pressedCard_ && pressedWay_ >= 0 &&
               wayAt(index.row(), event->pos()) == pressedWay_) {
        Q_EMIT wayAsked(pressedCard_, pressedWay_);
    }
    pressedWorking_ = -1;
    pressedTick_ = -1;
    pressedWay_ = -1;
}

void CardList::mouseMoveEvent(QMouseEvent* event) {
    const QModelIndex index = indexAt(event->pos());
    const bool over = index.isValid() && (workingRect(index.row()).contains(event->pos()) ||
                                          tickRect(index.row()).contains(event->pos()) ||
                                          wayAt(index.row(), event->pos()) >= 0);
    viewport()->setCursor(over ? Qt::PointingHandCursor : Qt::ArrowCursor);
    viewport()->update();
}

void CardList::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Escape && chosenCard() >= 0) {
        choose(-1);
        return;
    }
    const int row = currentIndex().isValid() ? currentIndex().row() : -1;
    if (row >= 0 && event->key() == Qt::Key_Space) {
        choose(row == chosenCard() ? -1 : row);
        return;
    }
    const bool enter = event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter;
    if (row >= 0 && enter && (event->modifiers() & Qt::ControlModifier) != 0) {
        if (card(row).ticked) {
            Q_EMIT tickAsked(row);
        }
        return;
    }
    if (row >= 0 && card(row).working && (enter || event->key() == Qt::Key_Equal)) {
        Q_EMIT workingAsked(row);
        return;
    }
    if (row >= 0 && enter && !card(row).ways.empty()) {
        Q_EMIT wayAsked(row, 0);
        return;
    }
    QListView::keyPressEvent(event);
}

void CardList::resizeEvent(QResizeEvent* event) {
    QListView::resizeEvent(event);
    if (event->size().width() != event->oldSize().width()) {
        scheduleDelayedItemsLayout();
    }
}

void CardList::paintEvent(QPaintEvent* event) {
    QListView::paintEvent(event);
    if (count() == 0 && !emptyText_.isEmpty()) {
        QPainter painter(viewport());
        painter.setPen(tonesOf(palette()).quiet);
        painter.drawText(viewport()->rect().adjusted(24, 32, -24, -24),
                         Qt::AlignHCenter | Qt::AlignTop | Qt::TextWordWrap, emptyText_);
    }
    if (hasFocus() && !currentIndex().isValid()) {
        QPainter painter(viewport());
        paintFocusRing(painter, viewport()->rect(), tonesOf(palette()));
    }
}

}  // namespace kerfwright
