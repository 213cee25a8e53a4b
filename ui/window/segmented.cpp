#include "ui/window/segmented.h"

#include "ui/window/focusring.h"
#include "ui/window/tones.h"

#include <QButtonGroup>
#include <QHBoxLayout>
#include <QPainter>

#include <algorithm>

namespace kerfwright {

namespace {

constexpr int segmentHeight = 30;
constexpr double radius = 5;

}  // namespace

Segment::Segment(const QString& text, QWidget* parent)
    : QAbstractButton(parent) {
    setText(text);
    setCheckable(true);
    setFocusPolicy(Qt::StrongFocus);
    setAttribute(Qt::WA_Hover);
}

QSize Segment::sizeHint() const {
    return QSize(fontMetrics().horizontalAdvance(text()) + 18, segmentHeight);
}

QSize Segment::minimumSizeHint() const {
    return QSize(fontMetrics().horizontalAdvance(text()) + 10, segmentHeight);
}

void Segment::paintEvent(QPaintEvent*) {
    const Tones tones = tonesOf(palette());
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const QRectF inner = QRectF(rect()).adjusted(2.5, 2.5, -2.5, -2.5);
    if (isChecked()) {
        painter.setPen(QPen(tones.rim, 1));
        painter.setBrush(tones.dark ? mixed(tones.entry, Qt::white, 0.1) : tones.entry);
        painter.drawRoundedRect(inner, radius - 1, radius - 1);
    } else if (underMouse() && isEnabled()) {
        painter.setPen(Qt::NoPen);
        painter.setBrush(mixed(tones.surround, tones.text, 0.06));
        painter.drawRoundedRect(inner, radius - 1, radius - 1);
    }
    if (hasFocus()) {
        paintFocusRing(painter, rect(), tones, radius);
    }
    painter.setPen(!isEnabled()  ? palette().color(QPalette::Disabled, QPalette::ButtonText)
                   : isChecked() ? tones.text
                                 : tones.quiet);
    painter.drawText(rect(), Qt::AlignCenter, text());
}

Segmented::Segmented(const QString& name, const QStringList& choices, QWidget* parent)
    : QWidget(parent)
    , row_(new QHBoxLayout(this))
    , group_(new QButtonGroup(this)) {
    setAccessibleName(name);
    row_->setContentsMargins(0, 0, 0, 0);
    row_->setSpacing(0);
    for (int i = 0; i < choices.size(); ++i) {
        auto* segment = new Segment(choices[i], this);
        segment->setAccessibleName(name + QStringLiteral(": ") + choices[i]);
        group_->addButton(segment, i);
        row_->addWidget(segment, 1);
    }
    group_->setExclusive(true);
    group_->button(0)->setChecked(true);
    setFixedHeight(segmentHeight);
    connect(group_, &QButtonGroup::idClicked, this, &Segmented::chosen);
}

int Segmented::current() const {
    return group_->checkedId();
}

void Segmented::setCurrent(int index) {
    if (index >= 0) {
        group_->button(index)->setChecked(true);
    } else if (QAbstractButton* checked = group_->checkedButton()) {
        group_->setExclusive(false);
        checked->setChecked(false);
        group_->setExclusive(true);
    }
}

QAbstractButton* Segmented::segment(int index) const {
    return group_->button(index);
}

QSize Segmented::sizeHint() const {
    int widest = 0;
    for (const QAbstractButton* segment : group_->buttons()) {
        widest = std::max(widest, segment->sizeHint().width());
    }
    return QSize(widest * static_cast<int>(group_->buttons().size()), height());
}

QSize Segmented::minimumSizeHint() const {
    int widest = 0;
    for (const QAbstractButton* segment : group_->buttons()) {
        widest = std::max(widest, segment->minimumSizeHint().width());
    }
    return QSize(widest, height());
}

void Segmented::resizeEvent(QResizeEvent*) {
    int sum = 0;
    for (const QAbstractButton* segment : group_->buttons()) {
        sum += segment->minimumSizeHint().width();
    }
    const bool fits = sum <= width();
    row_->setDirection(fits ? QBoxLayout::LeftToRight : QBoxLayout::TopToBottom);
    setFixedHeight(fits ? segmentHeight
                        : segmentHeight * static_cast<int>(group_->buttons().size()));
}

void Segmented::paintEvent(QPaintEvent*) {
    const Tones tones = tonesOf(palette());
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(Qt::NoPen);
    painter.setBrush(tones.dark ? tones.surround : mixed(tones.surround, tones.edge, 0.25));
    painter.drawRoundedRect(rect(), radius, radius);
}

}  // namespace kerfwright
