#include "ui/window/totalsbar.h"

#include "core/bench/standing.h"
#include "core/sheets/film.h"
#include "core/sheets/hourwords.h"
#include "ui/document/surround.h"
#include "ui/document/text.h"
#include "ui/window/amounts.h"
#include "ui/window/focusring.h"
#include "ui/window/popupplace.h"
#include "ui/window/stepwords.h"
#include "ui/window/tones.h"
#include "ui/window/workingpopup.h"

#include <QKeyEvent>
#include <QListWidget>
#include <QMouseEvent>
#include <QPainter>
#include <QToolButton>
#include <QVBoxLayout>

#include <algorithm>

namespace kerfwright {

TotalsBar::TotalsBar(Document& document, Planner& planner, QWidget* parent)
    : QWidget(parent)
    , document_(document)
    , planner_(planner)
    , more_(new QToolButton(this)) {
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
    more_->setObjectName(QStringLiteral("totalsMore"));
    more_->setAutoRaise(true);
    more_->setFocusPolicy(Qt::StrongFocus);
    connect(more_, &QToolButton::clicked, this, &TotalsBar::openMore);
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
            items_.push_back({tr("Weight"), weightText(job.totals.weightKg, notation.unit), 7});
        }
        items_.push_back({tr("Glue-ups"), QString::number(job.plan.assemblies), 6});
        items_.push_back({tr("Panels"), QString::number(job.plan.panels), 11});
        items_.push_back({tr("Strips"), QString::number(job.plan.strips), 9});
        items_.push_back(
            {tr("Timber in"), toQt(formatVolume(job.totals.timberIn, notation.unit)), 8});
        items_.push_back({tr("At the bench"), toQt(timeWords(job.hours.minutes)), 3});
        if (job.hours.days) {
            items_.push_back({tr("Days"), QString::number(*job.hours.days), 10});
        }
        items_.push_back({tr("Yield"), tr("%1 %").arg(job.totals.yieldPercent, 0, 'f', 0), 12});
        const CautionCount cautions = countOf(job.cautions, project.seenTo);
        items_.push_back(
            {tr("Cautions"), QString::number(cautions.open - cautions.openDangers), 4});
        if (cautions.seenTo > 0) {
            items_.push_back({tr("Seen to"), QString::number(cautions.seenTo), 5});
        }
        if (cautions.openDangers > 0) {
            items_.push_back({tr("Dangers"), QString::number(cautions.openDangers), 1, true, true});
        }
    }
    switch (planner_.state()) {
    case Planner::State::Current:
        items_.push_back({tr("Plan replayed:"), tr("gives this board"), 2, true});
        break;
    case Planner::State::Working:
        items_.push_back({tr("Plan"), tr("being made …"), 2, true});
        break;
    case Planner::State::Impossible:
        items_.push_back({tr("Plan"), tr("cannot be made"), 2, true, true});
        break;
    }
    QStringList spoken;
    for (const Item& item : items_) {
        spoken << item.label + QStringLiteral(" ") + item.value;
    }
    setAccessibleName(tr("Totals: %1").arg(spoken.join(QStringLiteral(", "))));
    place();
}

namespace {

constexpr int totalsGap = 24;
constexpr int totalsEdge = 16;
constexpr int moreHeight = 26;

QFont smallTotals(const QFont& font) {
    QFont small = font;
    small.setPixelSize(11);
    return small;
}

QFont boldTotals(const QFont& font) {
    QFont bold = font;
    bold.setBold(true);
    return bold;
}

int workingSign(const QFontMetrics& metrics) {
    return metrics.horizontalAdvance(QStringLiteral("=")) + 8;
}

}  // namespace

/// An arrow says that a list opens upwards, and no sum is read into the number.
QString TotalsBar::moreWords(qsizetype count) {
    return tr("%1 more").arg(count) + QStringLiteral(" \u25B4");
}

int TotalsBar::widthOf(const Item& item) const {
    const QFontMetrics bold(boldTotals(font()));
    return QFontMetrics(smallTotals(font())).horizontalAdvance(item.label) + 7 +
           bold.horizontalAdvance(item.value) + (item.working && !stale_ ? workingSign(bold) : 0);
}

void TotalsBar::place() {
    std::vector<const Item*> byRank;
    for (const Item& item : items_) {
        byRank.push_back(&item);
    }
    std::sort(byRank.begin(), byRank.end(),
              [](const Item* a, const Item* b) { return a->rank < b->rank; });
    const QString many = moreWords(std::ssize(items_));
    const int button = QFontMetrics(font()).horizontalAdvance(many) + 16;
    int room = width() - 2 * totalsEdge + totalsGap;
    const auto taken = [this](const Item* item) { return widthOf(*item) + totalsGap; };
    int all = 0;
    for (const Item* item : byRank) {
        all += taken(item);
    }
    room -= all > room ? button + totalsGap : 0;
    // One after the other, so that the same are left out however wide their numbers are.
    std::size_t fit = 0;
    while (fit < byRank.size() && (fit == 0 || taken(byRank[fit]) <= room)) {
        room -= taken(byRank[fit]);
        ++fit;
    }
    shown_.clear();
    QStringList left;
    int end = totalsEdge;
    for (const Item& item : items_) {
        const bool fits = item.rank <= byRank[fit - 1]->rank;
        if (fits) {
            shown_.push_back(item);
            end += item.right ? 0 : taken(&item);
        } else {
            left << item.label + QStringLiteral(" ") + item.value;
        }
    }
    more_->setVisible(!left.isEmpty());
    more_->setText(moreWords(left.size()));
    more_->setAccessibleName(tr("More totals"));
    more_->setAccessibleDescription(left.join(QStringLiteral(", ")));
    more_->setToolTip(left.join(QLatin1Char('\n')));
    more_->setGeometry(end - 4, (height() - moreHeight) / 2, button, moreHeight);
    update();
}

void TotalsBar::resizeEvent(QResizeEvent*) {
    place();
}

void TotalsBar::paintEvent(QPaintEvent*) {
    const Tones tones = tonesOf(palette());
    QPainter painter(this);
    painter.setLayoutDirection(layoutDirection());
    painter.fillRect(rect(), tones.surface);
    painter.fillRect(QRect(0, 0, width(), 1), tones.edge);
    const QFont small = smallTotals(font());
    const QFont bold = boldTotals(font());
    const QFontMetrics smallMetrics(small);
    const QFontMetrics boldMetrics(bold);
    const int sign = stale_ ? 0 : workingSign(boldMetrics);
    workingRect_ = QRect();
    int x = totalsEdge;
    int atRight = width() - totalsEdge + totalsGap;
    for (const Item& item : shown_) {
        atRight -= item.right ? widthOf(item) + totalsGap : 0;
    }
    bool onRight = false;
    const int baseline = (height() + boldMetrics.ascent() - boldMetrics.descent()) / 2;
    for (std::size_t i = 0; i < shown_.size(); ++i) {
        const Item& item = shown_[i];
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
        x += totalsGap;
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

void TotalsBar::openMore() {
    auto* popup = new QFrame(this, Qt::Popup);
    popup->setAttribute(Qt::WA_DeleteOnClose);
    popup->setFrameShape(QFrame::StyledPanel);
    popup->setAccessibleName(tr("More totals"));
    auto* list = new QListWidget(popup);
    list->setObjectName(QStringLiteral("totalsMoreList"));
    list->setFrameShape(QFrame::NoFrame);
    list->setAccessibleName(popup->accessibleName());
    for (const Item& item : items_) {
        const bool isShown = std::any_of(shown_.begin(), shown_.end(), [&](const Item& other) {
            return other.rank == item.rank;
        });
        if (!isShown) {
            list->addItem(item.label + QStringLiteral("  ") + item.value);
        }
    }
    list->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    list->setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    list->ensurePolished();
    constexpr int around = 8;
    list->setFixedSize(list->sizeHintForColumn(0) + 2 * around,
                       list->sizeHintForRow(0) * list->count());
    auto* column = new QVBoxLayout(popup);
    column->setContentsMargins(around, around, around, around);
    column->setSizeConstraint(QLayout::SetFixedSize);
    column->addWidget(list);
    popup->adjustSize();
    placeBeside(*popup, *more_);
    popup->show();
    list->setFocus(Qt::PopupFocusReason);
    // Nothing is chosen, nor framed as if it were, before a key is pressed.
    list->setCurrentRow(-1);
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
