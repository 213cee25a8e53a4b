#include "ui/window/reckoninglist.h"

#include "core/sheets/quotepage.h"
#include "core/shop/pricing.h"
#include "core/words/say.h"
#include "ui/document/text.h"
#include "ui/window/focusring.h"
#include "ui/window/textblock.h"
#include "ui/window/tones.h"

#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <QStyledItemDelegate>
#include <QWheelEvent>

namespace kerfwright {

namespace {

constexpr int side = 20;         // as the words of the other tabs
constexpr int rightSide = 8;     // beside the "="
constexpr int above = 5;         // and below
constexpr int workingSize = 24;  // of the "="
constexpr int gap = 10;          // between words and amount

QFont boldFont(const QFont& font) {
    QFont bold = font;
    bold.setBold(true);
    return bold;
}

}  // namespace

/// Paints a line; measures it where there is no painter.
class LinePainter : public QStyledItemDelegate {
public:
    explicit LinePainter(ReckoningList* list)
        : QStyledItemDelegate(list)
        , list_(list) {}

    QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override {
        const int width = list_->viewport()->width();
        return QSize(width,
                     layOut(nullptr, index.row(), QRect(0, 0, width, 0), option.palette, nullptr));
    }

    void paint(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override {
        const Tones tones = tonesOf(option.palette);
        painter->save();
        painter->setLayoutDirection(option.direction);
        painter->setRenderHint(QPainter::Antialiasing);
        painter->setOpacity(list_->isStale() ? 0.5 : 1);
        if (list_->hasFocus() && list_->currentIndex() == index) {
            paintFocusRing(*painter, QRectF(option.rect).adjusted(12, 1, -4, -1), tones);
        }
        layOut(painter, index.row(), option.rect, option.palette, nullptr);
        painter->restore();
    }

    QRect entryRect(int row, const QRect& cell) const {
        QRect entry;
        layOut(nullptr, row, cell, list_->palette(), &entry);
        return entry;
    }

private:
    int layOut(QPainter* painter, int row, const QRect& cell, const QPalette& palette,
               QRect* entry) const {
        const QuoteLine& line = list_->line(row);
        const Tones tones = tonesOf(palette);
        const QFont plain = list_->font();
        const QFont small = smallFont(plain);
        const QFont font = line.isSum ? boldFont(plain) : plain;
        const int right = cell.right() - rightSide - workingSize - 4;
        const bool known = line.amount.has_value();
        const QString amount = (known ? QString() : QStringLiteral("▲ ")) + list_->amount(row);
        const int amountWidth = QFontMetrics(font).horizontalAdvance(amount) + 1;
        if (painter != nullptr) {
            if (line.isSum) {
                painter->setPen(QPen(tones.edge, 1));
                painter->drawLine(QPointF(right - std::max(amountWidth, 90), cell.top() + 1.5),
                                  QPointF(right, cell.top() + 1.5));
            }
            painter->setFont(font);
            painter->setPen(known ? tones.text : tones.caution);
            painter->drawText(QRect(right - amountWidth, cell.top() + above, amountWidth + 1, 60),
                              Qt::AlignRight | Qt::AlignTop, amount);
            if (list_->hasWorking(row)) {
                painter->setFont(boldFont(plain));
                painter->setPen(tones.accent);
                painter->drawText(list_->workingRect(row), Qt::AlignCenter, QStringLiteral("="));
            }
        }
        TextColumn text{painter, cell.left() + side, cell.top() + above};
        text.add(toQt(line.words), font, tones.text, right - amountWidth - gap, 0);
        if (!line.isSum) {
            text.add(toQt(amountOf(line)), small, tones.quiet, right - amountWidth - gap, 0);
        }
        // A price that is missing is what there is to do: the way to its entry is always there.
        if (list_->isOpen(row) || !known) {
            text.y += 2;
            if (known) {
                text.add(QStringLiteral("= ") + toQt(line.working), small, tones.text, right, 0);
            }
            const QString words = list_->entryWords(row);
            if (!words.isEmpty()) {
                const QFontMetrics metrics(small);
                const QRect place(cell.left() + side, text.y + 2,
                                  metrics.horizontalAdvance(words) + 2, metrics.height() + 2);
                if (painter != nullptr) {
                    painter->setFont(small);
                    painter->setPen(tones.accent);
                    painter->drawText(place, Qt::AlignLeft | Qt::AlignVCenter, words);
                }
                if (entry != nullptr) {
                    *entry = place;
                }
                text.y = place.bottom() + 1;
            }
        }
        return text.y + (line.isSum ? above + 6 : above) - cell.top();
    }

    ReckoningList* list_;
};

int ReckoningModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(lines_.size());
}

QVariant ReckoningModel::data(const QModelIndex& index, int role) const {
    if (!index.isValid()) {
        return QVariant();
    }
    const QuoteLine& one = line(index.row());
    switch (role) {
    case Qt::DisplayRole:
        return toQt(one.words);
    case Qt::AccessibleTextRole: {
        QString all = tr("%1: %2").arg(toQt(one.words), amount(index.row()));
        if (!one.isSum && !amountOf(one).empty()) {
            all += tr("; %1").arg(toQt(amountOf(one)));
        }
        return one.working.empty() ? all : tr("%1. Working: %2").arg(all, toQt(one.working));
    }
    case Qt::ToolTipRole:
        return !one.amount           ? QVariant(tr("Its entry: Enter or F2"))
               : one.working.empty() ? QVariant()
                                     : QVariant(tr("The working: Enter. Its entry: F2"));
    default:
        return QVariant();
    }
}

void ReckoningModel::setLines(std::vector<QuoteLine> lines, const std::string& currency) {
    beginResetModel();
    lines_ = std::move(lines);
    amounts_.clear();
    for (const QuoteLine& one : lines_) {
        amounts_.push_back(toQt(amountWords(one, currency)));
    }
    endResetModel();
}

ReckoningList::ReckoningList(QWidget* parent)
    : KeyList(parent)
    , model_(new ReckoningModel(this))
    , painter_(new LinePainter(this)) {
    setObjectName(QStringLiteral("reckoning"));
    setAccessibleName(tr("Reckoning"));
    setModel(model_);
    setItemDelegate(painter_);
    setSelectionMode(NoSelection);
    setFrameShape(NoFrame);
    setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Fixed);
    setMouseTracking(true);
    viewport()->setAutoFillBackground(false);
}

void ReckoningList::setLines(std::vector<QuoteLine> lines, const std::string& currency) {
    // What is open stays open by its key, and where the keys stand by its row.
    std::set<std::string> keys;
    for (const int row : open_) {
        keys.insert(line(row).key + '/' + line(row).words);
    }
    const int current = currentIndex().row();
    model_->setLines(std::move(lines), currency);
    open_.clear();
    for (int row = 0; row < count(); ++row) {
        if (keys.contains(line(row).key + '/' + line(row).words) && hasWorking(row)) {
            open_.insert(row);
        }
    }
    if (current >= 0 && current < count()) {
        const QSignalBlocker quiet(this);
        setCurrentIndex(model_->index(current));
    }
    relayout();
}

bool ReckoningList::hasWorking(int row) const {
    return !line(row).isSum && line(row).amount && !line(row).working.empty();
}

QString ReckoningList::entryWords(int row) const {
    if (!line(row).wood.empty()) {
        return tr("Price of %1 ›").arg(inSentence(toQt(line(row).wood)));
    }
    if (line(row).setting == "rounding") {
        return tr("Price asked is ›");
    }
    for (const PriceSetting& setting : priceSettings()) {
        if (line(row).setting == setting.key) {
            return tr("%1 ›").arg(toQt(say(setting.name)));
        }
    }
    return QString();
}

QRect ReckoningList::workingRect(int row) const {
    const QRect cell = visualRect(model_->index(row));
    return QRect(cell.right() - rightSide - workingSize + 1, cell.top(), workingSize, workingSize);
}

QRect ReckoningList::entryRect(int row) const {
    return painter_->entryRect(row, visualRect(model_->index(row)));
}

void ReckoningList::toggle(int row) {
    if (row < 0 || row >= count() || !hasWorking(row)) {
        return;
    }
    if (!open_.erase(row)) {
        open_.insert(row);
    }
    relayout();
}

void ReckoningList::setStale(bool stale) {
    if (stale_ != stale) {
        stale_ = stale;
        viewport()->update();
    }
}

void ReckoningList::askEntry(int row) {
    if (!line(row).wood.empty()) {
        Q_EMIT woodAsked(toQt(line(row).wood));
    } else if (!entryWords(row).isEmpty()) {
        Q_EMIT settingAsked(toQt(line(row).setting));
    }
}

void ReckoningList::relayout() {
    scheduleDelayedItemsLayout();
    updateGeometry();
    viewport()->update();
}

QSize ReckoningList::sizeHint() const {
    int height = 0;
    QStyleOptionViewItem option;
    initViewItemOption(&option);
    for (int row = 0; row < count(); ++row) {
        height += itemDelegate()->sizeHint(option, model_->index(row)).height();
    }
    return QSize(200, height);
}

QSize ReckoningList::minimumSizeHint() const {
    return QSize(120, sizeHint().height());
}

void ReckoningList::keyPressEvent(QKeyEvent* event) {
    const int row = currentIndex().row();
    switch (event->key()) {
    case Qt::Key_Return:
    case Qt::Key_Enter:
    case Qt::Key_Space:
    case Qt::Key_Equal:
        if (row >= 0 && !line(row).amount) {
            askEntry(row);
        } else {
            toggle(row);
        }
        return;
    case Qt::Key_F2:
        if (row >= 0) {
            askEntry(row);
        }
        return;
    default:
        QListView::keyPressEvent(event);
    }
}

void ReckoningList::mousePressEvent(QMouseEvent* event) {
    QListView::mousePressEvent(event);
    const int row = indexAt(event->pos()).row();
    if (event->button() != Qt::LeftButton || row < 0) {
        return;
    }
    if (!line(row).amount || entryRect(row).contains(event->pos())) {
        askEntry(row);
    } else {
        toggle(row);
    }
}

void ReckoningList::mouseMoveEvent(QMouseEvent* event) {
    const int row = indexAt(event->pos()).row();
    const bool leads = row >= 0 && (hasWorking(row) || !entryWords(row).isEmpty());
    viewport()->setCursor(leads ? Qt::PointingHandCursor : Qt::ArrowCursor);
    QListView::mouseMoveEvent(event);
}

void ReckoningList::resizeEvent(QResizeEvent* event) {
    QListView::resizeEvent(event);
    if (event->oldSize().width() != event->size().width()) {
        relayout();
    }
}

void ReckoningList::wheelEvent(QWheelEvent* event) {
    event->ignore();  // what stands round it scrolls
}

void ReckoningList::currentChanged(const QModelIndex& current, const QModelIndex& previous) {
    QListView::currentChanged(current, previous);
    if (current.isValid()) {
        Q_EMIT shown(visualRect(current));
    }
}

}  // namespace kerfwright
