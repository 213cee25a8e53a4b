#include "ui/window/gallery.h"

#include "ui/document/surround.h"
#include "ui/document/text.h"
#include "ui/window/boardpainter.h"
#include "ui/window/focusring.h"
#include "ui/window/samples.h"
#include "ui/window/tones.h"

#include <QGridLayout>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QPainter>
#include <QPushButton>
#include <QVBoxLayout>

#include <algorithm>

namespace kerfwright {

namespace {

constexpr int cardWidth = 208;
constexpr int gap = 16;

}  // namespace

SampleCard::SampleCard(Project project, QWidget* parent)
    : QAbstractButton(parent)
    , project_(std::move(project)) {
    setText(toQt(project_.titles.name));
    const BoardSize size = sizeOf(project_.board, surroundOf(project_));
    about_ = tr("%1 × %2 · %3")
                 .arg(toQt(formatBare(size.width, project_.notation)),
                      toQt(format(size.height, project_.notation)),
                      project_.board.build == Build::EndGrain ? tr("end grain") : tr("long grain"));
    setAccessibleName(text());
    setAccessibleDescription(about_);
    setFocusPolicy(Qt::StrongFocus);
    setCursor(Qt::PointingHandCursor);
    setAttribute(Qt::WA_Hover);
    setFixedSize(sizeHint());
}

void SampleCard::paintEvent(QPaintEvent*) {
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
    const QRectF room(20, 20, width() - 40, height() - 88);
    const Board& board = project_.board;
    const Surround surround = surroundOf(project_);
    const double w = sizeOf(board, surround).width.toMm();
    const double h = sizeOf(board, surround).height.toMm();
    const double scale = std::min(room.width() / w, room.height() / h);
    const BoardGeometry geometry(board, surround, scale, room.center() - QPointF(w, h) * scale / 2,
                                 devicePixelRatioF());
    paintShadow(painter, geometry.board(), tones.dark);
    paintBoard(painter, board, project_.woods, geometry);
    QFont bold = font();
    bold.setBold(true);
    painter.setFont(bold);
    painter.setPen(tones.text);
    const QRectF words(16, height() - 56, width() - 32, 20);
    painter.drawText(words, Qt::AlignLeft | Qt::AlignVCenter,
                     QFontMetrics(bold).elidedText(text(), Qt::ElideRight, width() - 32));
    QFont small = font();
    small.setPixelSize(11);
    painter.setFont(small);
    painter.setPen(tones.quiet);
    painter.drawText(words.translated(0, 20), Qt::AlignLeft | Qt::AlignVCenter, about_);
}

Gallery::Gallery(QWidget* parent)
    : QScrollArea(parent) {
    setObjectName(QStringLiteral("gallery"));
    setAccessibleName(tr("Sample boards"));
    setFrameShape(NoFrame);
    setWidgetResizable(true);
    setFocusPolicy(Qt::NoFocus);
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
        new QLabel(tr("Start with an empty chequer, or take a board from the mountain hut "
                      "and make it yours. Everything can be changed later."),
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
    };
    add(tr("New board in millimetres"), "galleryNewMm",
        [this] { Q_EMIT newChosen(Unit::Millimetres); });
    add(tr("New board in inches"), "galleryNewInch", [this] { Q_EMIT newChosen(Unit::Inches); });
    add(tr("Open a project…"), "galleryOpen", [this] { Q_EMIT openChosen(); });
    add(tr("Back to the open board"), "galleryClose", [this] { Q_EMIT closed(); });
    buttons->addStretch(1);
    column->addLayout(buttons);
    column->addSpacing(16);
    grid_ = new QGridLayout;
    grid_->setSpacing(gap);
    column->addLayout(grid_);
    column->addStretch(1);
    for (const QString& path : samplePaths()) {
        Result<Project> project = readSample(path);
        if (!project.ok()) {
            continue;
        }
        auto* card = new SampleCard(std::move(project).value(), content);
        connect(card, &QAbstractButton::clicked, this, [this, path] { Q_EMIT sampleChosen(path); });
        cards_.push_back(card);
    }
    setWidget(content);
    place();
}

void Gallery::place() {
    const int columns = std::max(1, (viewport()->width() - 96 + gap) / (cardWidth + gap));
    for (int i = 0; i < static_cast<int>(cards_.size()); ++i) {
        grid_->addWidget(cards_[static_cast<std::size_t>(i)], i / columns, i % columns,
                         Qt::AlignLeft | Qt::AlignTop);
    }
    // Setting a stretch makes the column, so the count is taken first.
    const int last = std::max(columns, grid_->columnCount());
    for (int i = 0; i <= last; ++i) {
        grid_->setColumnStretch(i, i == columns ? 1 : 0);
    }
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
