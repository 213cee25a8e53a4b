#include "ui/window/gallery.h"

#include "core/project/patternproject.h"
#include "ui/document/surround.h"
#include "ui/document/text.h"
#include "ui/window/boardpainter.h"
#include "ui/window/figuredboard.h"
#include "ui/window/figurelayer.h"
#include "ui/window/figurenotice.h"
#include "ui/window/focusring.h"
#include "ui/window/samples.h"
#include "ui/window/tones.h"

#include <QGridLayout>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QPainter>
#include <QPushButton>
#include <QTextLayout>
#include <QTimer>
#include <QVBoxLayout>

#include <algorithm>

namespace kerfwright {

namespace {

constexpr int cardWidth = 208;
constexpr int gap = 16;

/// From the top of `room`, as wide as it is; what `most` lines have no room for is left out.
/// Returns how many there are.
int drawLines(QPainter& painter, const QString& text, const QFont& font, const QRect& room,
              int most) {
    const QFontMetrics metrics(font);
    painter.setFont(font);
    QTextLayout layout(text, font);
    layout.beginLayout();
    int count = 0;
    for (int from = 0; count < most && from < text.size(); ++count) {
        QTextLine line = layout.createLine();
        line.setLineWidth(room.width());
        const bool last = count + 1 == most;
        const QString words = (last ? text.mid(from) : text.mid(from, line.textLength())).trimmed();
        painter.drawText(QRect(room.left(), room.top() + count * metrics.height(), room.width(),
                               metrics.height()),
                         Qt::AlignLeft | Qt::AlignTop,
                         metrics.elidedText(words, Qt::ElideRight, room.width()));
        from += line.textLength();
    }
    layout.endLayout();
    return count;
}

}  // namespace

BoardCard::BoardCard(Project project, const QString& name, const QString& about, QWidget* parent)
    : QAbstractButton(parent)
    , project_(std::make_shared<const Project>(std::move(project)))
    , surround_(surroundOf(*project_))
    , about_(about) {
    setText(name);
    setAccessibleName(name);
    setAccessibleDescription(about_);
    setToolTip(name + QLatin1Char('\n') + about_);
    setCursor(Qt::PointingHandCursor);
    setAttribute(Qt::WA_Hover);
    setFixedSize(sizeHint());
}

BoardGeometry BoardCard::place() const {
    const QRectF room(20, 20, width() - 40, height() - 102);
    const BoardSize size = sizeOf(project_->board, surround_);
    const double w = size.width.toMm();
    const double h = size.height.toMm();
    const double scale = std::min(room.width() / w, room.height() / h);
    // On whole device pixels, or a picture of it would differ from it by one.
    const double ratio = devicePixelRatioF();
    const QPointF corner = (room.center() - QPointF(w, h) * scale / 2) * ratio;
    return BoardGeometry(project_->board, surround_, scale, QPointF(corner.toPoint()) / ratio,
                         ratio);
}

std::function<QImage()> BoardCard::maker() const {
    return [project = project_, surround = surround_, scale = place().scale(),
            ratio = devicePixelRatioF(), finish = keptFigureStyle().finish] {
        return figuredBoard(*project, surround, scale, ratio, finish);
    };
}

void BoardCard::setPicture(const QImage& picture, const FigureStyle& style, double ratio) {
    picture_ = picture;
    picture_.setDevicePixelRatio(ratio);
    pictureStyle_ = style;
    wantsPicture_ = false;
    update();
}

void BoardCard::keyPressEvent(QKeyEvent* event) {
    switch (event->key()) {
    case Qt::Key_Left:
        return Q_EMIT stepped(-1, 0);
    case Qt::Key_Right:
        return Q_EMIT stepped(1, 0);
    case Qt::Key_Up:
        return Q_EMIT stepped(0, -1);
    case Qt::Key_Down:
        return Q_EMIT stepped(0, 1);
    default:
        QAbstractButton::keyPressEvent(event);
    }
}

void BoardCard::paintEvent(QPaintEvent*) {
    const Tones tones = tonesOf(palette());
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const QRectF frame = QRectF(rect()).adjusted(1, 1, -1, -1);
    painter.setPen(QPen(underMouse() ? tones.accent : tones.rim, 1));
    painter.setBrush(tones.entry);
    painter.drawRoundedRect(frame, 8, 8);
    if (hasFocus()) {
        paintFocusRing(painter, rect(), tones, 8);
    }
    const BoardGeometry lies = place();
    paintShadow(painter, lies.board(), tones.dark);
    const FigureStyle style = keptFigureStyle();
    const bool isMade = !picture_.isNull() && pictureStyle_ == style &&
                        picture_.devicePixelRatio() == devicePixelRatioF();
    wantsPicture_ = style.on && !isMade;
    if (style.on && isMade) {
        painter.drawImage(lies.board().topLeft(), picture_);
    } else {
        paintBoard(painter, project_->board, finishedWoods(project_->woods, style.finish), lies);
    }
    if (wantsPicture_) {
        Q_EMIT pictureWanted();
    }
    QFont bold = font();
    bold.setBold(true);
    QFont small = font();
    small.setPixelSize(11);
    painter.setPen(tones.text);
    QRect words(16, height() - 72, width() - 32, 0);
    const int name = drawLines(painter, text(), bold, words, 2);
    words.setTop(words.top() + name * QFontMetrics(bold).height() + 3);
    painter.setPen(tones.quiet);
    drawLines(painter, about_, small, words, name > 1 ? 2 : 3);
}

Gallery::Gallery(Unit unit, QWidget* parent)
    : QScrollArea(parent) {
    setObjectName(QStringLiteral("gallery"));
    setAccessibleName(tr("Sample boards and patterns"));
    setFrameShape(NoFrame);
    setWidgetResizable(true);
    setFocusPolicy(Qt::NoFocus);
    pool_.setMaxThreadCount(1);
    pool_.setThreadPriority(QThread::LowPriority);
    auto* content = new QWidget;
    content->setBackgroundRole(QPalette::AlternateBase);
    content->setAutoFillBackground(true);
    auto* column = new QVBoxLayout(content);
    column->setContentsMargins(48, 40, 48, 40);
    column->setSpacing(8);
    auto* head = new QLabel(tr("What will it be?"), content);
    QFont large = head->font();
    large.setPixelSize(24);
    large.setBold(true);
    head->setFont(large);
    column->addWidget(head);
    auto* about =
        new QLabel(tr("Start with a plain chequer or a pattern, or take a board from the mountain "
                      "hut and make it yours. Everything can be changed later."),
                   content);
    about->setWordWrap(true);
    about->setForegroundRole(QPalette::PlaceholderText);
    column->addWidget(about);
    column->addSpacing(8);
    auto* buttons = new QHBoxLayout;
    buttons->setSpacing(8);
    const auto add = [&](const QString& text, const char* name, auto run) {
        auto* button = new QPushButton(text, content);
        button->setObjectName(QString::fromLatin1(name));
        buttons->addWidget(button);
        connect(button, &QPushButton::clicked, this, run);
        return button;
    };
    add(tr("New board in millimetres"), "galleryNewMm",
        [this] { Q_EMIT newChosen(Unit::Millimetres); });
    add(tr("New board in inches"), "galleryNewInch", [this] { Q_EMIT newChosen(Unit::Inches); });
    add(tr("Open a project…"), "galleryOpen", [this] { Q_EMIT openChosen(); });
    back_ = add(tr("Back to the open board"), "galleryClose", [this] { Q_EMIT closed(); });
    buttons->addStretch(1);
    column->addLayout(buttons);
    groups_.reserve(2);
    Group& samples = addGroup(tr("Sample boards"), column);
    for (const QString& path : samplePaths()) {
        Result<Project> project = readSample(path);
        if (!project.ok()) {
            continue;
        }
        const BoardSize size = sizeOf(project->board, surroundOf(*project));
        const QString about =
            tr("%1 × %2 · %3")
                .arg(toQt(formatBare(size.width, project->notation)),
                     toQt(format(size.height, project->notation)),
                     project->board.build == Build::EndGrain ? tr("end grain") : tr("long grain"));
        const QString name = toQt(project->titles.name);
        BoardCard* card = addCard(samples, std::move(project).value(), name, about);
        connect(card, &QAbstractButton::clicked, this, [this, path] { Q_EMIT sampleChosen(path); });
    }
    Group& begun = addGroup(tr("Patterns"), column);
    for (const PatternInfo& info : patterns()) {
        Result<Project> project = newProject(unit, info.pattern);
        if (!project.ok()) {
            continue;
        }
        BoardCard* card =
            addCard(begun, std::move(project).value(), toQt(say(info.name)), toQt(say(info.about)));
        card->setObjectName(QStringLiteral("galleryPattern-") + toQt(info.key));
        connect(card, &QAbstractButton::clicked, this,
                [this, pattern = info.pattern] { Q_EMIT patternChosen(pattern); });
    }
    column->addStretch(1);
    for (Group& group : groups_) {
        if (!group.cards.empty()) {
            group.cards.front()->setFocusPolicy(Qt::StrongFocus);
        }
    }
    setWidget(content);
    place();
}

Gallery::~Gallery() {
    pool_.waitForDone();
}

void Gallery::makePictures() {
    if (isMaking_) {
        return;
    }
    for (const Group& group : groups_) {
        for (BoardCard* card : group.cards) {
            if (!card->wantsPicture() || card->visibleRegion().isEmpty()) {
                continue;
            }
            isMaking_ = true;
            pool_.start([this, card, make = card->maker(), style = keptFigureStyle(),
                         ratio = card->devicePixelRatioF()] {
                QMetaObject::invokeMethod(
                    this,
                    [this, card, picture = make(), style, ratio] {
                        isMaking_ = false;
                        card->setPicture(picture, style, ratio);
                        // The card asks again if that is no longer what it shows.
                        QTimer::singleShot(0, this, &Gallery::makePictures);
                    },
                    Qt::QueuedConnection);
            });
            return;
        }
    }
}

void Gallery::setBack(bool opened) {
    back_->setText(opened ? tr("Back to the open board") : tr("Start with a plain chequer"));
}

Gallery::Group& Gallery::addGroup(const QString& title, QVBoxLayout* column) {
    column->addSpacing(16);
    auto* head = new QLabel(title, this);
    QFont large = head->font();
    large.setPixelSize(16);
    large.setBold(true);
    head->setFont(large);
    column->addWidget(head);
    auto* grid = new QGridLayout;
    grid->setSpacing(gap);
    column->addLayout(grid);
    groups_.push_back({grid, {}});
    return groups_.back();
}

BoardCard* Gallery::addCard(Group& group, Project project, const QString& name,
                            const QString& about) {
    auto* card = new BoardCard(std::move(project), name, about, this);
    card->setFocusPolicy(Qt::ClickFocus);
    connect(card, &BoardCard::stepped, this,
            [this, card](int right, int down) { step(card, right, down); });
    // After this paint: what is made beside it must not hold the first one up.
    connect(card, &BoardCard::pictureWanted, this, &Gallery::makePictures, Qt::QueuedConnection);
    connect(&FigureNotice::instance(), &FigureNotice::changed, card, qOverload<>(&QWidget::update));
    group.cards.push_back(card);
    return card;
}

int Gallery::columns() const {
    return std::max(1, (viewport()->width() - 96 + gap) / (cardWidth + gap));
}

void Gallery::place() {
    const int count = columns();
    for (const Group& group : groups_) {
        for (int i = 0; i < static_cast<int>(group.cards.size()); ++i) {
            group.grid->addWidget(group.cards[static_cast<std::size_t>(i)], i / count, i % count,
                                  Qt::AlignLeft | Qt::AlignTop);
        }
        // Setting a stretch makes the column, so the count is taken first.
        const int last = std::max(count, group.grid->columnCount());
        for (int i = 0; i <= last; ++i) {
            group.grid->setColumnStretch(i, i == count ? 1 : 0);
        }
    }
}

void Gallery::step(const BoardCard* from, int right, int down) {
    const int wide = columns();
    for (std::size_t g = 0; g < groups_.size(); ++g) {
        std::vector<BoardCard*>& cards = groups_[g].cards;
        const auto found = std::find(cards.begin(), cards.end(), from);
        if (found == cards.end()) {
            continue;
        }
        const int count = static_cast<int>(cards.size());
        const int at = static_cast<int>(found - cards.begin());
        const int to = at + right + down * wide;
        if (to >= 0 && to < count) {
            goTo(groups_[g], cards[static_cast<std::size_t>(to)]);
        } else if (to >= count && down > 0 && at / wide < (count - 1) / wide) {
            goTo(groups_[g], cards.back());  // the last row is not full
        } else if (to >= count && g + 1 < groups_.size() && !groups_[g + 1].cards.empty()) {
            std::vector<BoardCard*>& next = groups_[g + 1].cards;
            const int column = down > 0 ? at % wide : 0;
            goTo(groups_[g + 1], next[static_cast<std::size_t>(
                                     std::min(column, static_cast<int>(next.size()) - 1))]);
        } else if (to < 0 && g > 0 && !groups_[g - 1].cards.empty()) {
            std::vector<BoardCard*>& before = groups_[g - 1].cards;
            const int last = static_cast<int>(before.size()) - 1;
            const int column = last / wide * wide + at % wide;
            goTo(groups_[g - 1],
                 before[static_cast<std::size_t>(down < 0 ? std::min(column, last) : last)]);
        }
        return;
    }
}

void Gallery::goTo(Group& group, BoardCard* card) {
    for (BoardCard* each : group.cards) {
        each->setFocusPolicy(each == card ? Qt::StrongFocus : Qt::ClickFocus);
    }
    card->setFocus(Qt::OtherFocusReason);
    ensureWidgetVisible(card, gap, gap);
}

void Gallery::resizeEvent(QResizeEvent* event) {
    QScrollArea::resizeEvent(event);
    place();
}

void Gallery::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Escape) {
        Q_EMIT closed();
        return;
    }
    if (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter) {
        // Outside a dialog a button answers only to Space.
        if (auto* button = qobject_cast<QAbstractButton*>(focusWidget())) {
            button->click();
            return;
        }
    }
    QScrollArea::keyPressEvent(event);
}

}  // namespace kerfwright
