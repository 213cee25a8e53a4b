#include "ui/window/totalsbar.h"

#include "core/sheets/film.h"
#include "core/sheets/hourwords.h"
#include "ui/document/surround.h"
#include "ui/document/text.h"
#include "ui/window/amounts.h"
#include "ui/window/focusring.h"
#include "ui/window/stepwords.h"
#include "ui/window/tones.h"
#include "ui/window/workingpopup.h"

#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>

#include <algorithm>

namespace kerfwright {

TotalsBar::TotalsBar(Document& document, Planner& planner, QWidget* parent)
    : QWidget(parent)
    , document_(document)
    , planner_(planner) {
    setObjectName(QStringLiteral("totals"));
    setLayoutDirection(Qt::LeftToRight);
    setFixedHeight(40);
    setFocusPolicy(Qt::TabFocus);
    setMouseTracking(true);
    setAccessibleDescription(tr("Return opens the working of the finished size"));
    const QString proven =
        tr("Replayed: the plan was carried out step by step on a virtual bench, and the sizes, the "
           "joints and the volume of wood came out as on this board. That says nothing of safety: "
           "mind the dangers and cautions.");
    setToolTip(proven);
    setWhatsThis(proven);
    connect(&document, &Document::projectChanged, this, &TotalsBar::refresh);
    connect(&planner, &Planner::changed, this, &TotalsBar::refresh);
    refresh();
}

void TotalsBar::refresh() {
    const Project& project = document_.project();
    const Notation& notation = project.notation;
    items_.clear();
    const Job* last = planner_.last() ? &planner_.last()->job : nullptr;
    const BoardSize size = sizeOf(project.board, surroundOf(project, last));
    items_.push_back(
        {tr("Finished"),
         toQt(formatSize({size.width, size.height, project.board.thickness}, notation)), 0});
    items_.back().working = planner_.state() == Planner::State::Current;
    stale_ = planner_.state() != Planner::State::Current;
    if (planner_.last()) {
        const Job& job = planner_.last()->job;
        if (job.totals.weightKg > 0) {
            items_.push_back({tr("Weight"), weightText(job.totals.weightKg, notation.unit), 3});
        }
        items_.push_back({tr("Glue-ups"), QString::number(job.plan.assemblies), 2});
        items_.push_back({tr("Panels"), QString::number(job.plan.panels), 5});
        items_.push_back({tr("Strips"), QString::number(job.plan.strips), 4});
        items_.push_back(
            {tr("Timber in"), toQt(formatVolume(job.totals.timberIn, notation.unit)), 3});
        items_.push_back({tr("At the bench"), toQt(timeWords(job.hours.minutes)), 3});
        if (job.hours.days) {
            items_.push_back({tr("Days"), QString::number(*job.hours.days), 5});
        }
        items_.push_back({tr("Yield"), tr("%1 %").arg(job.totals.yieldPercent, 0, 'f', 0), 6});
        const auto dangers =
            std::count_if(job.cautions.begin(), job.cautions.end(), [](const Caution& caution) {
                return caution.severity == Severity::Danger;
            });
        items_.push_back({tr("Cautions"), QString::number(std::ssize(job.cautions) - dangers), 2});
        if (dangers > 0) {
            items_.push_back({tr("Dangers"), QString::number(dangers), 1, true, true});
        }
    }
    switch (planner_.state()) {
    case Planner::State::Current:
        items_.push_back({tr("Plan replayed:"), tr("gives this board"), 1, true});
        break;
    case Planner::State::Working:
        items_.push_back({tr("Plan"), tr("being made …"), 1, true});
        break;
    case Planner::State::Impossible:
        items_.push_back({tr("Plan"), tr("cannot be made"), 1, true, true});
        break;
    }
    QStringList spoken;
    for (const Item& item : items_) {
        spoken << item.label + QStringLiteral(" ") + item.value;
    }
    setAccessibleName(tr("Totals: %1").arg(spoken.join(QStringLiteral(", "))));
    update();
}

void TotalsBar::paintEvent(QPaintEvent*) {
    const Tones tones = tonesOf(palette());
    QPainter painter(this);
    painter.setLayoutDirection(layoutDirection());
    painter.fillRect(rect(), tones.surface);
    painter.fillRect(QRect(0, 0, width(), 1), tones.edge);
    QFont small = font();
    small.setPixelSize(11);
    QFont bold = font();
    bold.setBold(true);
    const QFontMetrics smallMetrics(small);
    const QFontMetrics boldMetrics(bold);
    const int sign = stale_ ? 0 : boldMetrics.horizontalAdvance(QStringLiteral("=")) + 8;
    const auto widthOf = [&](const Item& item) {
        return smallMetrics.horizontalAdvance(item.label) + 7 +
               boldMetrics.horizontalAdvance(item.value) + (item.working ? sign : 0);
    };
    std::vector<Item> shown = items_;
    constexpr int gap = 24;
    const auto total = [&] {
        int sum = 32 - gap;
        for (const Item& item : shown) {
            sum += widthOf(item) + gap;
        }
        return sum;
    };
    while (shown.size() > 1 && total() > width()) {
        shown.erase(std::max_element(shown.begin(), shown.end(),
                                     [](const Item& a, const Item& b) { return a.rank < b.rank; }));
    }
    workingRect_ = QRect();
    int x = 16;
    int atRight = width() - 16 + gap;
    for (const Item& item : shown) {
        atRight -= item.right ? widthOf(item) + gap : 0;
    }
    bool onRight = false;
    const int baseline = (height() + boldMetrics.ascent() - boldMetrics.descent()) / 2;
    for (std::size_t i = 0; i < shown.size(); ++i) {
        const Item& item = shown[i];
        if (item.right && !onRight) {
            x = std::max(x, atRight);
            onRight = true;
        }
        // What has been proven is said quietly: it is no word on safety.
        const bool quiet = item.right && !item.danger;
        painter.setFont(small);
        painter.setPen(item.danger ? tones.danger : tones.quiet);
        painter.drawText(x, baseline, item.label);
        x += smallMetrics.horizontalAdvance(item.label) + 7;
        painter.setFont(quiet ? small : bold);
        painter.setPen(item.danger                  ? tones.danger
                       : quiet || (stale_ && i > 0) ? tones.quiet
                                                    : tones.text);
        painter.drawText(x, baseline, item.value);
        x += boldMetrics.horizontalAdvance(item.value);
        if (i == 0 && !stale_) {
            workingRect_ = QRect(x, 4, sign + 8, height() - 8);
            painter.setPen(tones.accent);
            painter.drawText(workingRect_.adjusted(0, 0, -8, 0), Qt::AlignCenter,
                             QStringLiteral("="));
            x += sign;
        }
        if (i == 0 && hasFocus()) {
            paintFocusRing(painter, QRectF(10, 7, x - 11, height() - 14), tones);
        }
        x += gap;
    }
}

void TotalsBar::mousePressEvent(QMouseEvent* event) {
    if (event->button() == Qt::LeftButton && workingRect_.contains(event->pos())) {
        openWorking();
    }
}

void TotalsBar::mouseMoveEvent(QMouseEvent* event) {
    setCursor(workingRect_.contains(event->pos()) ? Qt::PointingHandCursor : Qt::ArrowCursor);
}

void TotalsBar::keyPressEvent(QKeyEvent* event) {
    const bool asks = event->key() == Qt::Key_Equal || event->key() == Qt::Key_Return ||
                      event->key() == Qt::Key_Enter;
    if (asks) {
        openWorking();
    } else {
        QWidget::keyPressEvent(event);
    }
}

void TotalsBar::openWorking() {
    if (stale_ || !planner_.last()) {
        return;
    }
    const Planned& planned = *planner_.last();
    std::vector<StepFigure> figures;
    for (const StageNumber& number : finishedNumbers(planned.job.board, planned.job.steps)) {
        figures.push_back({toQt(number.label), number.figure});
    }
    auto* popup = new WorkingPopup(tr("Finished size"), figures, planned.project->notation, this);
    connect(popup, &WorkingPopup::termAsked, this, &TotalsBar::termAsked);
    popup->openBeside(QRect(mapToGlobal(workingRect_.topLeft()), workingRect_.size()));
}

}  // namespace kerfwright
