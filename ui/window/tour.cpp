#include "ui/window/tour.h"

#include "ui/window/benchtabs.h"
#include "ui/window/boardfoot.h"
#include "ui/window/boardview.h"
#include "ui/window/mainwindow.h"
#include "ui/window/panels.h"
#include "ui/window/tones.h"
#include "ui/window/wishform.h"

#include <QEvent>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QPainter>
#include <QPainterPath>
#include <QPushButton>
#include <QShortcut>
#include <QTabBar>
#include <QVBoxLayout>

#include <algorithm>
#include <array>

namespace kerfwright {

namespace {

constexpr int bubbleWidth = 300;
constexpr int noseLength = 12;
constexpr int bubbleFromEdge = 8;
constexpr double rounding = 8;

}  // namespace

TourBubble::TourBubble(MainWindow& window)
    : QFrame(&window)
    , window_(window)
    , title_(new QLabel(this))
    , words_(new QLabel(this))
    , number_(new QLabel(this))
    , back_(new QPushButton(tr("Bac&k"), this))
    , next_(new QPushButton(this))
    , close_(new QPushButton(tr("&Close"), this)) {
    setObjectName(QStringLiteral("tour"));
    setAccessibleName(tr("Tour"));
    setAttribute(Qt::WA_DeleteOnClose);
    back_->setObjectName(QStringLiteral("tourBack"));
    next_->setObjectName(QStringLiteral("tourNext"));
    close_->setObjectName(QStringLiteral("tourClose"));
    number_->setForegroundRole(QPalette::PlaceholderText);
    QFont bold = font();
    bold.setBold(true);
    title_->setFont(bold);
    words_->setWordWrap(true);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(16 + noseLength, 14 + noseLength, 16 + noseLength, 14 + noseLength);
    column->setSpacing(8);
    column->addWidget(title_);
    column->addWidget(words_);
    auto* row = new QHBoxLayout;
    row->setSpacing(6);
    row->addWidget(number_);
    row->addStretch(1);
    for (QPushButton* button : {close_, back_, next_}) {
        button->setAutoDefault(false);
        row->addWidget(button);
    }
    column->addLayout(row);
    connect(back_, &QPushButton::clicked, this, [this] { go(-1); });
    connect(next_, &QPushButton::clicked, this, [this] { go(1); });
    connect(close_, &QPushButton::clicked, this, &QWidget::close);
    // Wherever the keys are: it lies over what they are for.
    auto* escape = new QShortcut(Qt::Key_Escape, &window);
    connect(escape, &QShortcut::activated, this, &QWidget::close);
    connect(this, &QObject::destroyed, escape, &QObject::deleteLater);
    window.installEventFilter(this);
    window.board().installEventFilter(this);
    window.bench().installEventFilter(this);
}

void TourBubble::go(int by) {
    if (step_ + by >= count) {
        close();
    } else if (step_ + by >= 0) {
        showStep(step_ + by);
    }
}

void TourBubble::showStep(int step) {
    step_ = std::clamp(step, 0, count - 1);
    switch (step_) {
    case 0:
        title_->setText(tr("Draw by clicking"));
        words_->setText(tr("Choose a wood below the board and click pieces, or drag over them. "
                           "Patterns, sizes and woods stand in the form at the left. Undo takes "
                           "everything back."));
        break;
    case 1:
        title_->setText(tr("Read the steps and the cautions"));
        words_->setText(tr("The job is planned anew at every change. Choose a step or a caution, "
                           "and the board lights up what it is about."));
        // What is spoken of must be there to be seen.
        window_.panels().setOpen(Panels::Bench, true);
        break;
    default:
        title_->setText(tr("Print the sheets"));
        words_->setText(tr("When you like the board, look through its sheets here, print them, "
                           "and pin them above the bench. F1 opens the help for what you are at."));
        window_.panels().setOpen(Panels::Bench, true);
        break;
    }
    number_->setText(tr("%1 of %2").arg(step_ + 1).arg(count));
    back_->setEnabled(step_ > 0);
    next_->setText(step_ + 1 < count ? tr("Ne&xt") : tr("Begi&n"));
    setAccessibleDescription(title_->text() + QStringLiteral(". ") + words_->text());
    place();
    show();
    raise();
}

void TourBubble::takeFocus() {
    next_->setFocus(Qt::OtherFocusReason);
}

QRect TourBubble::anchor() const {
    const auto inWindow = [this](const QWidget& widget, const QRect& part) {
        return QRect(widget.mapTo(&window_, part.topLeft()), part.size());
    };
    if (step_ == 0) {
        return inWindow(window_.board(), window_.board().geometry().board().toRect());
    }
    const BenchTabs& bench = window_.bench();
    if (step_ == 1) {
        return inWindow(bench, bench.rect());
    }
    const QTabBar& tabs = *bench.tabBar();
    const QRect tab = tabs.tabRect(BenchTabs::Sheets) & tabs.rect();
    return inWindow(tabs, tab.isEmpty() ? tabs.rect() : tab);
}

std::vector<QRect> TourBubble::others() const {
    std::vector<QRect> all;
    if (step_ == 0) {
        for (const QWidget* part : {static_cast<QWidget*>(window_.findChild<WishForm*>()),
                                    static_cast<QWidget*>(window_.findChild<BoardFoot*>())}) {
            if (part != nullptr && part->isVisible()) {
                all.emplace_back(part->mapTo(&window_, QPoint()), part->size());
            }
        }
    }
    return all;
}

/// Beside what it speaks of where there is room, in front of it but not over its middle elsewhere.
void TourBubble::place() {
    const int width = bubbleWidth + 2 * noseLength;
    const int height = std::max(layout()->totalHeightForWidth(width), sizeHint().height());
    const QSize size(width, height);
    const QRect room =
        window_.rect().adjusted(bubbleFromEdge, bubbleFromEdge, -bubbleFromEdge, -bubbleFromEdge);
    const QRect target = anchor() & room;
    const QPoint middle = target.center();
    const std::array<QPoint, 4> corners{
        QPoint(target.left() - size.width(), middle.y() - size.height() / 2),
        QPoint(middle.x() - size.width() / 2, target.bottom()),
        QPoint(target.right(), middle.y() - size.height() / 2),
        QPoint(middle.x() - size.width() / 2, target.top() - size.height())};
    const std::vector<QRect> spoken = others();
    QRect at;
    bool free = false;
    for (const QPoint& corner : corners) {
        QRect wanted(corner, size);
        wanted.moveLeft(std::clamp(wanted.left(), room.left(),
                                   std::max(room.left(), room.right() - size.width())));
        wanted.moveTop(std::clamp(wanted.top(), room.top(),
                                  std::max(room.top(), room.bottom() - size.height())));
        const QRect body = wanted.adjusted(noseLength, noseLength, -noseLength, -noseLength);
        const bool covers = std::any_of(spoken.begin(), spoken.end(),
                                        [&](const QRect& other) { return other.intersects(body); });
        if (!body.intersects(target) && !free && (at.isNull() || !covers)) {
            at = wanted;
            free = !covers;
        }
    }
    if (at.isNull()) {
        at = QRect(QPoint(target.left() + bubbleFromEdge,
                          target.bottom() - size.height() - bubbleFromEdge),
                   size);
        at.moveTop(std::max(at.top(), room.top()));
    }
    setGeometry(at);
    tip_ = QPoint(std::clamp(middle.x(), at.left(), at.right()),
                  std::clamp(middle.y(), at.top(), at.bottom())) -
           at.topLeft();
    update();
}

void TourBubble::paintEvent(QPaintEvent*) {
    const Tones tones = tonesOf(palette());
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const QRectF body = QRectF(rect()).adjusted(noseLength, noseLength, -noseLength, -noseLength);
    QPainterPath shape;
    shape.addRoundedRect(body, rounding, rounding);
    if (!body.contains(tip_)) {
        const QPointF tip(tip_);
        const QPointF root(std::clamp(tip.x(), body.left() + 20, body.right() - 20),
                           std::clamp(tip.y(), body.top() + 20, body.bottom() - 20));
        const bool sideways = tip.x() < body.left() || tip.x() > body.right();
        const QPointF half = sideways ? QPointF(0, noseLength) : QPointF(noseLength, 0);
        QPainterPath nose(tip);
        nose.lineTo(root + half);
        nose.lineTo(root - half);
        nose.closeSubpath();
        shape = shape.united(nose);
    }
    painter.setPen(QPen(tones.accent, 1.5));
    painter.setBrush(tones.entry);
    painter.drawPath(shape);
}

void TourBubble::keyPressEvent(QKeyEvent* event) {
    switch (event->key()) {
    case Qt::Key_Escape:
        close();
        return;
    case Qt::Key_Return:
    case Qt::Key_Enter:
        // Outside a dialog a button answers only to Space.
        if (auto* button = qobject_cast<QPushButton*>(focusWidget())) {
            button->click();
            return;
        }
        break;
    default:
        break;
    }
    QFrame::keyPressEvent(event);
}

bool TourBubble::eventFilter(QObject* watched, QEvent* event) {
    if (event->type() == QEvent::Resize || event->type() == QEvent::Show ||
        event->type() == QEvent::Move) {
        if (isVisible()) {
            place();
        }
    }
    return QFrame::eventFilter(watched, event);
}

void beginTour(MainWindow& window, bool takesFocus) {
    auto* bubble = window.findChild<TourBubble*>(QString(), Qt::FindDirectChildrenOnly);
    if (bubble == nullptr) {
        bubble = new TourBubble(window);
    }
    bubble->showStep(0);
    if (takesFocus) {
        bubble->takeFocus();
    }
}

}  // namespace kerfwright
