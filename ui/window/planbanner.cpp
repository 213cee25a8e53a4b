#include "ui/window/planbanner.h"

#include "ui/window/tones.h"

#include <QLabel>
#include <QPainter>
#include <QVBoxLayout>

namespace kerfwright {

PlanBanner::PlanBanner(Planner& planner, QWidget* parent)
    : QWidget(parent)
    , planner_(planner)
    , words_(new QLabel(this)) {
    setObjectName(QStringLiteral("planBanner"));
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(20, 12, 20, 10);
    words_->setWordWrap(true);
    words_->setTextFormat(Qt::PlainText);
    words_->setTextInteractionFlags(Qt::TextSelectableByMouse);
    words_->setFocusPolicy(Qt::NoFocus);
    column->addWidget(words_);
    hide();
    connect(&planner, &Planner::changed, this, &PlanBanner::refresh);
    refresh();
}

QString PlanBanner::text() const {
    return isHidden() ? QString() : words_->text();
}

void PlanBanner::refresh() {
    // A plan in the making is not worth moving the cards for; only what stays is said here.
    const bool impossible = planner_.state() == Planner::State::Impossible;
    if (impossible) {
        words_->setText(planner_.last()
                            ? tr("▲ No plan for this board.\n%1\nBelow is the last plan "
                                 "that could be made.")
                                  .arg(planner_.fault())
                            : tr("▲ No plan for this board.\n%1").arg(planner_.fault()));
        setAccessibleName(words_->text());
    }
    if (planner_.state() != Planner::State::Working) {
        setVisible(impossible);
    }
}

void PlanBanner::paintEvent(QPaintEvent*) {
    const Tones tones = tonesOf(palette());
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(mixed(tones.surface, tones.danger, 0.5), 1));
    painter.setBrush(mixed(tones.surface, tones.danger, 0.1));
    painter.drawRoundedRect(QRectF(rect()).adjusted(8.5, 6.5, -8.5, -2.5), 6, 6);
}

}  // namespace kerfwright
