#include "ui/window/seasonbar.h"

#include "core/measure/number.h"
#include "ui/document/text.h"
#include "ui/window/amounts.h"
#include "ui/window/textblock.h"

#include <QGridLayout>
#include <QLabel>
#include <QPainter>
#include <QSignalBlocker>
#include <QSlider>
#include <QToolButton>

#include <algorithm>
#include <cmath>

namespace kerfwright {

namespace {

constexpr int barHeight = 30;
constexpr int yearSteps = 48;  // of the slider: quarters of a month
constexpr int leastWords = 220;

/// One line, its end left out where there is no room.
class Line : public QLabel {
public:
    using QLabel::QLabel;
    QSize minimumSizeHint() const override { return QSize(20, QLabel::minimumSizeHint().height()); }

protected:
    void paintEvent(QPaintEvent*) override {
        QPainter painter(this);
        painter.setPen(palette().color(foregroundRole()));
        painter.drawText(rect(), Qt::AlignLeft | Qt::AlignVCenter,
                         fontMetrics().elidedText(text(), Qt::ElideRight, width()));
    }
};

QString percent(double moisture) {
    return SeasonBar::tr("%1 % moisture").arg(toQt(formatFixed(moisture, 1)));
}

QString monthWords(double year) {
    const int month = static_cast<int>(std::lround(year * 12)) % 12;
    switch (month) {
    case 0:
        return SeasonBar::tr("Driest month");
    case 6:
        return SeasonBar::tr("Dampest month");
    default:
        return month < 6
                   ? counted(month, SeasonBar::tr("%1 month after the driest, getting damper"),
                             SeasonBar::tr("%1 months after the driest, getting damper"))
                   : counted(month - 6, SeasonBar::tr("%1 month after the dampest, drying out"),
                             SeasonBar::tr("%1 months after the dampest, drying out"));
    }
}

}  // namespace

SeasonBar::SeasonBar(Document& document, Planner& planner, QWidget* parent)
    : QWidget(parent)
    , document_(document)
    , planner_(planner)
    , built_(new QToolButton(this))
    , year_(new QSlider(Qt::Horizontal, this))
    , when_(new Line(this))
    , how_(new Line(this)) {
    setObjectName(QStringLiteral("seasons"));
    setAccessibleName(tr("Dry and damp"));
    setFixedHeight(barHeight);
    built_->setObjectName(QStringLiteral("asBuilt"));
    built_->setText(tr("As built"));
    built_->setToolTip(tr("Shows the board at the moisture it is built at"));
    built_->setAccessibleName(built_->text());
    built_->setAutoRaise(true);
    built_->setFocusPolicy(Qt::StrongFocus);
    year_->setObjectName(QStringLiteral("year"));
    year_->setAccessibleName(tr("Through the year, from the driest month to the dampest and back"));
    year_->setToolTip(year_->accessibleName());
    year_->setRange(0, yearSteps);
    year_->setPageStep(4);
    year_->setMinimumWidth(90);
    year_->setMaximumWidth(220);
    when_->setObjectName(QStringLiteral("seasonWhen"));
    how_->setObjectName(QStringLiteral("seasonHow"));
    how_->setForegroundRole(QPalette::PlaceholderText);
    for (QLabel* label : {when_, how_}) {
        label->setFont(smallFont(font()));
        label->setMinimumWidth(0);
        label->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
    }
    auto* grid = new QGridLayout(this);
    grid->setContentsMargins(0, 0, 0, 0);
    grid->setHorizontalSpacing(8);
    grid->setVerticalSpacing(0);
    grid->addWidget(year_, 0, 0, 2, 1);
    grid->addWidget(built_, 0, 1, 2, 1);
    grid->addWidget(when_, 0, 2);
    grid->addWidget(how_, 1, 2);
    grid->setColumnStretch(0, 2);
    grid->setColumnStretch(2, 3);
    connect(year_, &QSlider::valueChanged, this, [this] {
        asBuilt_ = false;
        moved();
    });
    connect(built_, &QToolButton::clicked, this, &SeasonBar::showAsBuilt);
    // An edit is of the board as it is built.
    connect(&document, &Document::projectChanged, this, &SeasonBar::showAsBuilt);
    connect(&planner, &Planner::changed, this, &SeasonBar::planChanged);
    showAsBuilt();
}

void SeasonBar::showAsBuilt() {
    asBuilt_ = true;
    const Climate& climate = document_.project().climate;
    {
        const QSignalBlocker quiet(year_);
        year_->setValue(static_cast<int>(std::lround(yearOf(climate, climate.build) * yearSteps)));
    }
    planChanged();
    Q_EMIT pictured(nullptr);
}

void SeasonBar::leaveSeason() {
    if (!asBuilt_) {
        showAsBuilt();
    }
}

void SeasonBar::planChanged() {
    if (!asBuilt_) {
        moved();
        return;
    }
    const Project& project = document_.project();
    const bool planned = planner_.state() == Planner::State::Current && planner_.last();
    const bool still = project.climate.driest >= project.climate.dampest;
    bool silent = false;
    if (planned) {
        const BoardMovement& movement = planner_.last()->job.movement;
        silent = !movement.unknownWoods.empty() && movement.width == SeasonChange() &&
                 movement.height == SeasonChange();
    }
    year_->setEnabled(planned && !still && !silent);
    built_->setEnabled(false);
    const QString when = tr("As built · %1").arg(percent(project.climate.build));
    if (silent) {
        tell(when, tr("Its woods do not say how they move: give them shrinkage, under Woods."));
    } else if (still) {
        tell(when, tr("Its place is as damp all the year: see Use and season."));
    } else {
        tell(when, tr("Slide: the driest month, the dampest, and back"));
    }
}

void SeasonBar::moved() {
    if (planner_.state() != Planner::State::Current || !planner_.last()) {
        return;
    }
    const Planned& planned = *planner_.last();
    const Project& project = *planned.project;
    const Job& job = planned.job;
    const double year = static_cast<double>(year_->value()) / yearSteps;
    const double moisture = moistureInYear(project.climate, year);
    // A band of end grain is part of the field that is glued.
    const Board& glued = job.board;
    const Surround surround = job.plan.border.surround;
    const SeasonState state =
        seasonAt(glued, project.woods, !job.plan.grainDown, project.climate, moisture, surround);
    const int times = drawnTimes(glued, job.movement);
    const Unit unit = project.notation.unit;
    // Where there is little room the end is cut off: how true the picture is comes first.
    QStringList how;
    how << (times == 1 ? tr("drawn true to scale") : tr("drawn %1 ×").arg(times));
    const Range gap = hull(gapAt(surround.gapX, state.width), gapAt(surround.gapY, state.height));
    if (glued.border.has(BorderDesign::FloatingFrame)) {
        how << tr("gap %1").arg(gapText(gap, unit));
    } else if (railsStay(glued) && gap.least + gap.greatest != 0) {
        how << (gap.least + gap.greatest < 0 ? tr("presses on its rails")
                                             : tr("pulls at its rails"));
    }
    if (state.width == state.height) {
        how << tr("across and down %1").arg(changeText(state.width, unit));
    } else {
        how << tr("across %1").arg(changeText(state.width, unit))
            << tr("down %1").arg(changeText(state.height, unit));
    }
    if (!job.movement.unknownWoods.empty()) {
        how << tr("not all its woods are known");
    }
    built_->setEnabled(true);
    tell(tr("%1 · %2").arg(monthWords(year), percent(moisture)), how.join(QStringLiteral(" · ")));
    Q_EMIT pictured(
        std::make_shared<const SeasonPicture>(seasonPicture(glued, surround, state, times)));
}

void SeasonBar::tell(const QString& when, const QString& how) {
    when_->setText(when);
    how_->setText(how);
    for (QLabel* label : {when_, how_}) {
        label->setToolTip(when + QStringLiteral("\n") + how);
    }
    year_->setAccessibleDescription(when + QStringLiteral(", ") + how);
}

void SeasonBar::resizeEvent(QResizeEvent*) {
    // Words before the button: an edit leads back as well.
    built_->setVisible(width() >= year_->minimumWidth() + built_->sizeHint().width() + leastWords);
}

}  // namespace kerfwright
