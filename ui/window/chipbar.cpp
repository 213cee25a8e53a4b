#include "ui/window/chipbar.h"

#include "ui/document/text.h"
#include "ui/window/boardpainter.h"
#include "ui/window/figurenotice.h"
#include "ui/window/focusring.h"
#include "ui/window/tones.h"
#include "ui/window/woodchip.h"

#include <QPainter>

#include <algorithm>

namespace kerfwright {

namespace {

constexpr int leastStep = 18;  // pixels from chip to chip
constexpr int comfortableStep = 28;
constexpr int usualStep = 44;

}  // namespace

Chip::Chip(int number, QWidget* parent)
    : QAbstractButton(parent)
    , number_(number) {
    setObjectName(QStringLiteral("chip%1").arg(number));
    setCheckable(true);
    setFocusPolicy(Qt::StrongFocus);
    setAttribute(Qt::WA_Hover);
    setCursor(Qt::PointingHandCursor);
    connect(&FigureNotice::instance(), &FigureNotice::changed, this, qOverload<>(&QWidget::update));
}

void Chip::show(const Wood& wood, int pieces, bool paints) {
    wood_ = wood;
    pieces_ = QString::number(pieces);
    setChecked(paints);
    const QString name = toQt(wood.name);
    const QString use = counted(pieces, tr("%1 piece"), tr("%1 pieces"));
    setAccessibleName(tr("%1, chip %2, %3").arg(name).arg(number_).arg(use));
    setToolTip(name + QStringLiteral(" · ") + use);
    update();
}

void Chip::paintEvent(QPaintEvent*) {
    const Tones tones = tonesOf(palette());
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const double side = std::min(36, width() - 4);
    const QRectF chip((width() - side) / 2.0, 2, side, side);
    const QColor colour = shownColour(wood_);
    painter.setPen(QPen(outlineOf(colour, tones), 1));
    paintWood(painter, chip.adjusted(2.5, 2.5, -2.5, -2.5), 3, wood_);
    if (isChecked() || underMouse()) {
        painter.setBrush(Qt::NoBrush);
        painter.setPen(QPen(isChecked() ? tones.accent : tones.quiet, isChecked() ? 2.2 : 1.2));
        painter.drawRoundedRect(chip.adjusted(1, 1, -1, -1), 5, 5);
    }
    if (hasFocus()) {
        paintFocusRing(painter, rect(), tones);
    }
    QFont small = painter.font();
    small.setPixelSize(11);
    if (number_ <= 9) {
        painter.setFont(small);
        painter.setPen(readableOn(colour));
        painter.drawText(chip.adjusted(6, 4, -6, -4), Qt::AlignRight | Qt::AlignBottom,
                         QString::number(number_));
    }
    painter.setFont(small);
    painter.setPen(isChecked() ? tones.text : tones.quiet);
    painter.drawText(QRectF(0, chip.bottom(), width(), height() - chip.bottom()),
                     Qt::AlignHCenter | Qt::AlignVCenter, pieces_);
}

ChipBar::ChipBar(Document& document, BoardEditor& editor, QWidget* parent)
    : QWidget(parent)
    , document_(document)
    , editor_(editor) {
    setAccessibleName(tr("Woods to paint with"));
    setFixedHeight(56);
    connect(&document, &Document::projectChanged, this, &ChipBar::refresh);
    connect(&editor, &BoardEditor::woodChanged, this, &ChipBar::refresh);
    refresh();
}

void ChipBar::refresh() {
    const Project& project = document_.project();
    const std::size_t count = project.woods.size();
    const bool another = chips_.size() != count;
    while (chips_.size() > count) {
        delete chips_.back();
        chips_.pop_back();
    }
    while (chips_.size() < count) {
        const int wood = static_cast<int>(chips_.size());
        auto* chip = new Chip(wood + 1, this);
        chip->QWidget::show();
        connect(chip, &QAbstractButton::clicked, this, [this, wood] {
            editor_.setWood(wood);
            refresh();
            Q_EMIT clicked();
        });
        chips_.push_back(chip);
    }
    const std::vector<WoodUse> uses = woodUse(project.board.field, static_cast<int>(count));
    for (std::size_t i = 0; i < count; ++i) {
        chips_[i]->show(project.woods[i], uses[i].pieces, editor_.wood() == static_cast<int>(i));
    }
    if (another) {
        updateGeometry();
        place();
    }
}

int ChipBar::leastWidth() const {
    return static_cast<int>(chips_.size()) * comfortableStep + 8;
}

QSize ChipBar::sizeHint() const {
    return QSize(static_cast<int>(chips_.size()) * usualStep + 8, 56);
}

void ChipBar::resizeEvent(QResizeEvent*) {
    place();
}

void ChipBar::place() {
    const int count = std::max(1, static_cast<int>(chips_.size()));
    // Many woods share the width; a chip never gets too small to hit.
    const int step = std::clamp((width() - 8) / count, leastStep, usualStep);
    int x = 0;
    for (Chip* chip : chips_) {
        chip->setGeometry(x, 2, step - 2, 52);
        x += step;
    }
}

}  // namespace kerfwright
