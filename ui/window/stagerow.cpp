#include "ui/window/stagerow.h"

#include "core/sheets/filmpicture.h"
#include "ui/document/text.h"
#include "ui/paint/export.h"
#include "ui/window/focusring.h"
#include "ui/window/tones.h"

#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <QScrollBar>
#include <QStyledItemDelegate>

#include <algorithm>

namespace kerfwright {

namespace {

constexpr int cardWidth = 92;
constexpr int leastCard = 48;
constexpr int cardHeight = 56;
constexpr int gap = 6;
constexpr int arrowRoom = 18;         // at each end, where there are more stages than fit
constexpr double pixelsPerMm = 3.78;  // at 96 dots per inch, as drawings are set

QFont nameFont(const QFont& base, bool bold) {
    QFont font = base;
    font.setPixelSize(11);
    font.setBold(bold);
    return font;
}

int wordsWidth(const StageRow& row, const QString& name) {
    return QFontMetrics(nameFont(row.font(), true)).horizontalAdvance(name);
}

/// Of a card, and of the name below it.
int cellWidth(const StageRow& row, const QString& name, int card) {
    return std::max(card, wordsWidth(row, name) + 4);
}

class StagePainter : public QStyledItemDelegate {
public:
    explicit StagePainter(StageRow* row)
        : QStyledItemDelegate(row)
        , row_(row) {}

    QSize sizeHint(const QStyleOptionViewItem&, const QModelIndex& index) const override {
        const QString name = toQt(row_->stages().stage(index.row()).name);
        return row_->isSlim() ? QSize(wordsWidth(*row_, name) + 20 + gap, 32)
                              : QSize(cellWidth(*row_, name, row_->cardSize().width()) + gap, 82);
    }

    void paint(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override {
        // What is only partly in sight would be read wrongly: the arrows say that there is more.
        const QRect sight = row_->viewport()->rect();
        if (option.rect.left() < sight.left() || option.rect.right() - gap > sight.right()) {
            return;
        }
        const Tones tones = tonesOf(option.palette);
        const bool chosen = index.row() == row_->chosen();
        const bool focus = chosen && row_->hasFocus();
        const bool over = option.state.testFlag(QStyle::State_MouseOver);
        const QString name = toQt(row_->stages().stage(index.row()).name);
        painter->save();
        painter->setLayoutDirection(option.direction);
        painter->setRenderHint(QPainter::Antialiasing);
        const QRect cell = option.rect.adjusted(0, 0, -gap, 0);
        QRectF card = row_->isSlim()
                          ? QRectF(cell.left(), cell.top() + 3, cell.width(), 26)
                          : QRectF(cell.left(), cell.top() + 3, cell.width(), cardHeight);
        card.adjust(1, 0, -1, 0);
        const QColor ground = tones.dark ? mixed(tones.surface, tones.entry, 0.5) : tones.entry;
        painter->setPen(QPen(chosen ? tones.accent
                             : over ? mixed(tones.edge, tones.text, 0.35)
                                    : tones.edge,
                             chosen ? 2 : 1));
        painter->setBrush(row_->isSlim() && chosen ? tones.soft : ground);
        painter->drawRoundedRect(card.adjusted(0.5, 0.5, -0.5, -0.5), 6, 6);
        if (focus) {
            paintFocusRing(*painter, card.adjusted(3, 3, -3, -3), tones);
        }
        painter->setFont(nameFont(row_->font(), chosen));
        painter->setPen(chosen ? tones.text : tones.quiet);
        if (row_->isSlim()) {
            painter->drawText(card, Qt::AlignCenter, name);
        } else {
            const QImage picture = row_->picture(index.row());
            if (!picture.isNull()) {
                painter->setOpacity(row_->isStale() ? 0.45 : 1);
                const QSizeF size = picture.deviceIndependentSize();
                painter->drawImage(QPointF(card.center().x() - size.width() / 2,
                                           card.center().y() - size.height() / 2),
                                   picture);
                painter->setOpacity(1);
            }
            painter->drawText(QRectF(cell.left() - 3, card.bottom() + 3, cell.width() + 6, 16),
                              Qt::AlignHCenter | Qt::AlignVCenter, name);
        }
        if (index.row() == row_->marked()) {
            // As beside the cards of the steps.
            painter->setPen(Qt::NoPen);
            painter->setBrush(tones.accent);
            painter->drawRoundedRect(
                QRectF(card.left() + 8, card.bottom() - 4, card.width() - 16, 3), 1.5, 1.5);
        }
        painter->restore();
    }

private:
    StageRow* row_;
};

}  // namespace

int StageModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() || !film_ ? 0 : static_cast<int>(film_->film.stages.size());
}

QVariant StageModel::data(const QModelIndex& index, int role) const {
    if (!index.isValid() || !film_) {
        return QVariant();
    }
    const FilmStage& shown = stage(index.row());
    const QString steps = toQt(stepWords(shown));
    switch (role) {
    case Qt::DisplayRole:
        return toQt(shown.name);
    case Qt::ToolTipRole:
        return QStringLiteral("%1 · %2").arg(toQt(shown.title), steps);
    case Qt::AccessibleTextRole:
        return QStringLiteral("%1. %2. %3").arg(toQt(shown.title), steps, toQt(shown.words));
    default:
        return QVariant();
    }
}

void StageModel::setFilm(const FilmPtr& film) {
    beginResetModel();
    film_ = film;
    endResetModel();
}

StageRow::StageRow(QWidget* parent)
    : KeyList(parent)
    , model_(new StageModel(this)) {
    setObjectName(QStringLiteral("stages"));
    setAccessibleName(tr("Stages of the build"));
    setModel(model_);
    setItemDelegate(new StagePainter(this));
    setFlow(LeftToRight);
    setWrapping(false);
    setFrameShape(NoFrame);
    setEditTriggers(NoEditTriggers);
    setSelectionMode(NoSelection);
    setHorizontalScrollMode(ScrollPerPixel);
    setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    // A standing bar below a row that hardly ever scrolls is in the way; there are arrows.
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    connect(horizontalScrollBar(), &QScrollBar::valueChanged, this, [this] { update(); });
    connect(horizontalScrollBar(), &QScrollBar::rangeChanged, this, [this] { update(); });
    horizontalScrollBar()->setSingleStep(cardWidth / 2);
    setMouseTracking(true);
    viewport()->setAttribute(Qt::WA_Hover);
    setBackgroundRole(QPalette::AlternateBase);
    viewport()->setBackgroundRole(QPalette::AlternateBase);
    pool_.setMaxThreadCount(1);
    pool_.setThreadPriority(QThread::LowPriority);
}

StageRow::~StageRow() {
    pool_.clear();
    pool_.waitForDone();
}

void StageRow::setFilm(const FilmPtr& film, bool current) {
    if (film != model_->film()) {
        const QString key =
            chosen() >= 0 ? toQt(model_->stage(chosen()).key) : QStringLiteral("finished");
        const int scrolled = horizontalScrollBar()->value();
        quiet_ = true;
        forget();
        model_->setFilm(film);
        marked_ = -1;
        if (film) {
            const int again = stageOf(film->film, fromQt(key));
            setCurrentIndex(model_->index(again >= 0 ? again : count() - 1, 0));
            // What there is no stage for any more needs no picture.
            std::erase_if(pictures_,
                          [&](const auto& one) { return stageOf(film->film, one.first) < 0; });
        }
        laidOut_ = cardSize().width();
        doItemsLayout();
        horizontalScrollBar()->setValue(scrolled);
        // Another plan has other stages: what is chosen stays in sight.
        scrollTo(currentIndex());
        quiet_ = false;
    }
    if (stale_ == current) {
        stale_ = !current;
        viewport()->update();
    }
}

int StageRow::widthOfAll(int card) const {
    int sum = 0;
    for (int stage = 0; stage < count(); ++stage) {
        const QString name = toQt(model_->stage(stage).name);
        sum += (slim_ ? wordsWidth(*this, name) + 20 : cellWidth(*this, name, card)) + gap;
    }
    return sum - gap;
}

QSize StageRow::cardSize() const {
    int card = cardWidth;
    while (card > leastCard && widthOfAll(card) > width()) {
        --card;
    }
    return QSize(card, cardHeight);
}

bool StageRow::allFit() const {
    return widthOfAll(slim_ ? 0 : cardSize().width()) <= width();
}

void StageRow::updateGeometries() {
    KeyList::updateGeometries();
    // The gap behind the last card is no reason to scroll.
    QScrollBar* bar = horizontalScrollBar();
    bar->setMaximum(allFit() ? 0 : std::max(0, bar->maximum() - gap));
}

void StageRow::doItemsLayout() {
    const int room = allFit() ? 0 : arrowRoom;
    if (viewportMargins().left() != room) {
        setViewportMargins(room, 0, room, 0);
    }
    KeyList::doItemsLayout();
}

/// Where the arrow at that end is pressed; null where there is nothing more beyond it.
QRect StageRow::arrow(bool forward) const {
    const QScrollBar& bar = *horizontalScrollBar();
    const bool more = forward ? bar.value() < bar.maximum() : bar.value() > bar.minimum();
    return more && viewportMargins().left() > 0
               ? QRect(forward ? width() - arrowRoom : 0, 0, arrowRoom, slim_ ? 32 : cardHeight + 6)
               : QRect();
}

bool StageRow::event(QEvent* event) {
    if (event->type() == QEvent::MouseButtonPress) {
        const QPoint at = static_cast<QMouseEvent*>(event)->position().toPoint();
        for (const bool forward : {false, true}) {
            if (arrow(forward).contains(at)) {
                const int page = viewport()->width() - cardSize().width();
                horizontalScrollBar()->setValue(horizontalScrollBar()->value() +
                                                (forward ? page : -page));
                return true;
            }
        }
    }
    const bool done = KeyList::event(event);
    if (event->type() == QEvent::Paint) {
        QPainter painter(this);
        painter.setRenderHint(QPainter::Antialiasing);
        painter.setPen(
            QPen(tonesOf(palette()).quiet, 1.6, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
        for (const bool forward : {false, true}) {
            if (const QRect place = arrow(forward); !place.isNull()) {
                const QPointF middle = QRectF(place).center();
                const double on = forward ? 1 : -1;
                painter.drawPolyline(
                    QPolygonF{{middle + QPointF(-2.5 * on, -5), middle + QPointF(2.5 * on, 0),
                               middle + QPointF(-2.5 * on, 5)}});
            }
        }
    }
    return done;
}

void StageRow::choose(int stage, bool seen) {
    quiet_ = true;
    const int scrolled = horizontalScrollBar()->value();
    setCurrentIndex(model_->index(stage, 0));
    if (seen) {
        scrollTo(currentIndex());
    } else {
        horizontalScrollBar()->setValue(scrolled);
    }
    quiet_ = false;
    viewport()->update();
}

void StageRow::setMarked(int stage) {
    if (stage != marked_) {
        marked_ = stage;
        if (stage >= 0) {
            scrollTo(model_->index(stage, 0));
        }
        viewport()->update();
    }
}

void StageRow::setSlim(bool slim) {
    if (slim != slim_) {
        slim_ = slim;
        updateGeometry();
        doItemsLayout();
    }
}

void StageRow::setLetters(bool on) {
    letters_ = on;
    redraw();
}

/// Pictures on their way are of something else; those at hand are shown until there are new ones.
void StageRow::forget() {
    pool_.clear();
    asked_.clear();
    ++generation_;
}

void StageRow::redraw() {
    forget();
    viewport()->update();
}

QImage StageRow::picture(int stage) {
    const FilmPtr film = model_->film();
    const std::string key = model_->stage(stage).key;
    const Picture& known = pictures_[key];
    if (known.generation != generation_ && asked_.insert(key).second) {
        const double ratio = devicePixelRatioF();
        const Theme theme = windowTheme(isDark(palette()));
        const QSize pictureSize = cardSize() - QSize(12, 10);
        pool_.start([this, film, stage, key, ratio, theme, pictureSize, letters = letters_,
                     generation = generation_] {
            FilmLook look{pictureSize.width() / pixelsPerMm, pictureSize.height() / pixelsPerMm,
                          false, letters};
            QImage image =
                toImage(filmPicture(film->film, stage, look).drawing, pixelsPerMm * ratio, theme);
            image.setDevicePixelRatio(ratio);
            QMetaObject::invokeMethod(
                this,
                [this, key, image, generation] {
                    if (generation == generation_) {
                        pictures_[key] = {image, generation};
                        viewport()->update();
                    }
                },
                Qt::QueuedConnection);
        });
    }
    return known.image;
}

bool StageRow::hasAllPictures() {
    bool all = count() > 0;
    for (int stage = 0; stage < count(); ++stage) {
        all = !picture(stage).isNull() &&
              pictures_[model_->stage(stage).key].generation == generation_ && all;
    }
    return all;
}

void StageRow::currentChanged(const QModelIndex& current, const QModelIndex& previous) {
    QListView::currentChanged(current, previous);
    viewport()->update();
    if (!quiet_ && current.isValid()) {
        Q_EMIT picked(current.row());
    }
}

void StageRow::mousePressEvent(QMouseEvent* event) {
    const QModelIndex index = indexAt(event->pos());
    const bool again = index.isValid() && index == currentIndex();
    QListView::mousePressEvent(event);
    if (again && event->button() == Qt::LeftButton) {
        Q_EMIT picked(index.row());
    }
}

void StageRow::keyPressEvent(QKeyEvent* event) {
    switch (event->key()) {
    case Qt::Key_Escape:
        Q_EMIT left();
        return;
    case Qt::Key_Return:
    case Qt::Key_Enter:
    case Qt::Key_Space:
        if (chosen() >= 0) {
            Q_EMIT picked(chosen());
        }
        return;
    default:
        QListView::keyPressEvent(event);
    }
}

void StageRow::wheelEvent(QWheelEvent* event) {
    // There is but one way to scroll.
    const int by = std::abs(event->angleDelta().x()) > std::abs(event->angleDelta().y())
                       ? event->angleDelta().x()
                       : event->angleDelta().y();
    horizontalScrollBar()->setValue(horizontalScrollBar()->value() - by);
    event->accept();
}

void StageRow::changeEvent(QEvent* event) {
    QListView::changeEvent(event);
    if (event->type() == QEvent::PaletteChange) {
        redraw();
    }
}

void StageRow::resizeEvent(QResizeEvent* event) {
    QListView::resizeEvent(event);
    const int room = viewportMargins().left();
    if (cardSize().width() != laidOut_ || (room == 0) != allFit()) {
        laidOut_ = cardSize().width();
        scheduleDelayedItemsLayout();
        redraw();
    }
    if (currentIndex().isValid()) {
        scrollTo(currentIndex());
    }
}

void StageRow::paintEvent(QPaintEvent* event) {
    QListView::paintEvent(event);
    if (count() == 0) {
        QPainter painter(viewport());
        painter.setPen(tonesOf(palette()).quiet);
        painter.drawText(viewport()->rect(), Qt::AlignCenter,
                         tr("The stages of the build appear here once the board can be planned."));
    }
    if (hasFocus() && chosen() < 0) {
        QPainter painter(viewport());
        paintFocusRing(painter, viewport()->rect(), tonesOf(palette()));
    }
}

}  // namespace kerfwright
