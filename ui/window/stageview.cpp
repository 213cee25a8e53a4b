#include "ui/window/stageview.h"

#include "ui/document/text.h"
#include "ui/paint/painter.h"
#include "ui/window/focusring.h"
#include "ui/window/stepwords.h"
#include "ui/window/tones.h"
#include "ui/window/workingpopup.h"

#include <QBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QMouseEvent>
#include <QPainter>
#include <QStyle>
#include <QToolButton>

#include <algorithm>

namespace kerfwright {

namespace {

constexpr int titlePlace = 3;  // in the head, behind the two buttons and a gap

constexpr double pixelsPerMm = 3.78;  // at 96 dots per inch, as drawings are set
constexpr int transition = 400;       // milliseconds
constexpr int reach = 4;              // pixels round a number in which it can be pressed

QToolButton* button(const QString& text, const char* name, const QString& tip, QWidget* parent) {
    auto* made = new QToolButton(parent);
    made->setObjectName(QString::fromLatin1(name));
    made->setText(text);
    made->setToolTip(tip);
    made->setAccessibleName(tip);
    made->setAutoRaise(true);
    made->setFocusPolicy(Qt::TabFocus);
    made->setMinimumSize(32, 28);
    return made;
}

}  // namespace

StageCanvas::StageCanvas(QWidget* parent)
    : QWidget(parent) {
    setObjectName(QStringLiteral("stageCanvas"));
    setLayoutDirection(Qt::LeftToRight);
    setMouseTracking(true);
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);
}

void StageCanvas::show(const FilmPtr& film, int stage) {
    film_ = film;
    stage_ = stage;
    drawn_ = false;
    update();
}

void StageCanvas::setProgress(double progress) {
    progress_ = progress;
    drawn_ = false;
    update();
}

void StageCanvas::setLetters(bool on) {
    letters_ = on;
    drawn_ = false;
    update();
}

const FilmPicture& StageCanvas::picture() {
    if (!drawn_ && film_) {
        FilmLook look;
        look.width = std::max(40.0, width() / pixelsPerMm);
        look.height = std::max(30.0, height() / pixelsPerMm);
        look.hatch = letters_;
        picture_ = filmPicture(film_->film, stage_, look, progress_);
        drawn_ = true;
    }
    return picture_;
}

void StageCanvas::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setLayoutDirection(layoutDirection());
    if (film_) {
        painter.setRenderHint(QPainter::Antialiasing);
        painter.scale(pixelsPerMm, pixelsPerMm);
        kerfwright::paint(painter, picture().drawing, windowTheme(isDark(palette())));
    }
}

void StageCanvas::resizeEvent(QResizeEvent*) {
    drawn_ = false;
}

QRect StageCanvas::boxOf(const FilmSpot& spot) const {
    return QRectF(spot.box.x * pixelsPerMm, spot.box.y * pixelsPerMm, spot.box.width * pixelsPerMm,
                  spot.box.height * pixelsPerMm)
        .toAlignedRect()
        .adjusted(-reach, -reach, reach, reach);
}

QRect StageCanvas::spot(int number) {
    for (const FilmSpot& spot : picture().spots) {
        if (spot.number == number) {
            return boxOf(spot);
        }
    }
    return QRect();
}

int StageCanvas::numberAt(QPoint at) {
    for (const FilmSpot& spot : picture().spots) {
        if (boxOf(spot).contains(at)) {
            return spot.number;
        }
    }
    return -1;
}

void StageCanvas::mousePressEvent(QMouseEvent* event) {
    const int number = numberAt(event->pos());
    if (event->button() == Qt::LeftButton && number >= 0) {
        const QRect box = spot(number);
        Q_EMIT numberPressed(number, QRect(mapToGlobal(box.topLeft()), box.size()));
    } else {
        QWidget::mousePressEvent(event);
    }
}

void StageCanvas::mouseMoveEvent(QMouseEvent* event) {
    setCursor(numberAt(event->pos()) >= 0 ? Qt::PointingHandCursor : Qt::ArrowCursor);
}

StageView::StageView(QWidget* parent)
    : QWidget(parent)
    , title_(new QLabel(this))
    , words_(new QLabel(this))
    , back_(button(QStringLiteral("‹"), "stageBack", tr("Previous stage"), this))
    , on_(button(QStringLiteral("›"), "stageOn", tr("Next stage"), this))
    , working_(button(QStringLiteral("="), "stageWorking", tr("Working of these numbers"), this))
    , leave_(button(tr("Board"), "stageLeave", tr("Back to the board"), this))
    , canvas_(new StageCanvas(this)) {
    setObjectName(QStringLiteral("stage"));
    setFocusPolicy(Qt::StrongFocus);
    setBackgroundRole(QPalette::AlternateBase);
    setAutoFillBackground(true);
    title_->setObjectName(QStringLiteral("stageTitle"));
    title_->setTextFormat(Qt::PlainText);
    QFont large = title_->font();
    large.setPixelSize(16);
    large.setBold(true);
    title_->setFont(large);
    title_->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
    title_->setWordWrap(true);
    words_->setObjectName(QStringLiteral("stageWords"));
    words_->setTextFormat(Qt::PlainText);
    words_->setWordWrap(true);
    words_->setForegroundRole(QPalette::PlaceholderText);
    QFont signs = back_->font();
    signs.setPixelSize(18);
    back_->setFont(signs);
    on_->setFont(signs);
    signs.setBold(true);
    working_->setFont(signs);

    head_ = new QHBoxLayout;
    head_->setSpacing(4);
    head_->addWidget(back_);
    head_->addWidget(on_);
    head_->addSpacing(8);
    head_->addWidget(title_, 1);
    head_->addWidget(working_);
    head_->addWidget(leave_);
    column_ = new QVBoxLayout(this);
    column_->setContentsMargins(16, 12, 12, 0);
    column_->setSpacing(4);
    column_->addLayout(head_);
    column_->addWidget(words_);
    column_->addWidget(canvas_, 1);

    motion_.setStartValue(0.0);
    motion_.setEndValue(1.0);
    motion_.setDuration(transition);
    connect(&motion_, &QVariantAnimation::valueChanged, this,
            [this](const QVariant& value) { canvas_->setProgress(value.toReal()); });
    connect(&motion_, &QVariantAnimation::finished, this, [this] {
        canvas_->setProgress(1);
        canvas_->show(film_, resting_);
    });
    connect(back_, &QToolButton::clicked, this, [this] { step(-1); });
    connect(on_, &QToolButton::clicked, this, [this] { step(1); });
    connect(leave_, &QToolButton::clicked, this, &StageView::leaveAsked);
    connect(working_, &QToolButton::clicked, this,
            [this] { openWorking(-1, QRect(working_->mapToGlobal(QPoint()), working_->size())); });
    connect(canvas_, &StageCanvas::numberPressed, this, &StageView::openWorking);
}

bool StageView::systemMoves() const {
    // Qt 6.4 has no word of its own for a wish for less movement: a system that has one tells it
    // through the style, which then animates nothing and gives its animations no time.
    return style()->styleHint(QStyle::SH_Widget_Animate, nullptr, this) != 0 &&
           style()->styleHint(QStyle::SH_Widget_Animation_Duration, nullptr, this) > 0;
}

void StageView::setFilm(const FilmPtr& film, bool current) {
    if (film != film_) {
        motion_.stop();
        film_ = film;
        if (film_) {
            stage_ = std::clamp(stage_, 0, static_cast<int>(film_->film.stages.size()) - 1);
            canvas_->setProgress(1);
            canvas_->show(film_, stage_);
            refresh();
        }
    }
    canvas_->setEnabled(current);
    title_->setEnabled(current);
}

void StageView::showStage(int stage, bool moving) {
    const int before = stage_;
    motion_.stop();
    stage_ = stage;
    resting_ = stage;
    if (moving && systemMoves() && stage + 1 == before) {
        canvas_->show(film_, before);
        motion_.setDirection(QAbstractAnimation::Backward);
        motion_.start();
    } else {
        canvas_->show(film_, stage);
        canvas_->setProgress(1);
        if (moving && systemMoves()) {
            motion_.setDirection(QAbstractAnimation::Forward);
            motion_.start();
        }
    }
    refresh();
}

void StageView::refresh() {
    QPalette sign = palette();
    sign.setColor(QPalette::ButtonText, tonesOf(sign).accent);
    working_->setPalette(sign);
    const FilmStage& shown = film_->film.stages[static_cast<std::size_t>(stage_)];
    const QString steps = toQt(stepWords(shown));
    title_->setText(toQt(shown.title));
    words_->setText(QStringLiteral("%1 · %2").arg(steps, toQt(shown.words)));
    back_->setEnabled(stage_ > 0);
    working_->setEnabled(!shown.numbers.empty());
    setAccessibleName(tr("Stage %1 of %2: %3")
                          .arg(stage_ + 1)
                          .arg(film_->film.stages.size())
                          .arg(toQt(shown.title)));
    QStringList spoken{steps, toQt(shown.words)};
    for (const StageNumber& number : shown.numbers) {
        spoken << QStringLiteral("%1 %2").arg(
            toQt(number.label), toQt(format(number.figure.value, film_->film.project.notation)));
    }
    setAccessibleDescription(spoken.join(QStringLiteral(". ")));
}

void StageView::step(int by) {
    if (film_) {
        const int last = static_cast<int>(film_->film.stages.size()) - 1;
        const int next = std::clamp(stage_ + by, 0, last);
        if (next != stage_) {
            Q_EMIT stepAsked(next);
        }
    }
}

void StageView::openWorking(int number, const QRect& anchor) {
    if (!film_) {
        return;
    }
    const FilmStage& shown = film_->film.stages[static_cast<std::size_t>(stage_)];
    std::vector<StepFigure> figures;
    for (std::size_t i = 0; i < shown.numbers.size(); ++i) {
        if (number < 0 || static_cast<std::size_t>(number) == i) {
            figures.push_back({toQt(shown.numbers[i].label), shown.numbers[i].figure});
        }
    }
    if (figures.empty()) {
        return;
    }
    auto* popup = new WorkingPopup(toQt(shown.title), figures, film_->film.project.notation, this);
    connect(popup, &WorkingPopup::termAsked, this, &StageView::termAsked);
    popup->openBeside(anchor);
}

void StageView::keyPressEvent(QKeyEvent* event) {
    const int all = film_ ? static_cast<int>(film_->film.stages.size()) : 0;
    switch (event->key()) {
    case Qt::Key_Right:
    case Qt::Key_Down:
    case Qt::Key_PageDown:
    case Qt::Key_Space:
        step(1);
        return;
    case Qt::Key_Left:
    case Qt::Key_Up:
    case Qt::Key_PageUp:
        step(-1);
        return;
    case Qt::Key_Home:
        step(-all);
        return;
    case Qt::Key_End:
        step(all);
        return;
    case Qt::Key_Escape:
        Q_EMIT leaveAsked();
        return;
    case Qt::Key_Equal:
    case Qt::Key_Return:
    case Qt::Key_Enter:
        openWorking(-1, QRect(working_->mapToGlobal(QPoint()), working_->size()));
        return;
    default:
        QWidget::keyPressEvent(event);
    }
}

void StageView::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    // Between the buttons a title would break into a word a line.
    constexpr int narrow = 480;
    const bool below = width() < narrow;
    if (below == (column_->indexOf(title_) >= 0)) {
        return;
    }
    if (below) {
        head_->removeWidget(title_);
        head_->insertStretch(titlePlace, 1);
        column_->insertWidget(1, title_);
    } else {
        column_->removeWidget(title_);
        delete head_->takeAt(titlePlace);
        head_->insertWidget(titlePlace, title_, 1);
    }
}

void StageView::focusInEvent(QFocusEvent* event) {
    QWidget::focusInEvent(event);
    update();
}

void StageView::focusOutEvent(QFocusEvent* event) {
    QWidget::focusOutEvent(event);
    update();
}

void StageView::paintEvent(QPaintEvent*) {
    if (hasFocus()) {
        QPainter painter(this);
        paintFocusRing(painter, rect().adjusted(3, 3, -3, -3), tonesOf(palette()));
    }
}

}  // namespace kerfwright
