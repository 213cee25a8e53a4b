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
constexpr int leastWords = 330;
constexpr int leastSlider = 90;
constexpr int seasonGap = 8;
constexpr int linesBelow = 2;  // of each of the two sentences, where they stand below the slider

}  // namespace

/// One line, its end left out where there is no room; or several, whole.
class SeasonLine : public QLabel {
public:
    explicit SeasonLine(QWidget* parent)
        : QLabel(parent) {
        setFont(smallFont(parent->font()));
        setMinimumWidth(0);
        setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
    }
    QSize minimumSizeHint() const override { return QSize(20, fontMetrics().height()); }
    QSize sizeHint() const override { return minimumSizeHint(); }

protected:
    void paintEvent(QPaintEvent*) override {
        QPainter painter(this);
        painter.setPen(palette().color(foregroundRole()));
        if (wordWrap()) {
            painter.drawText(rect(), Qt::AlignLeft | Qt::AlignTop | Qt::TextWordWrap, text());
        } else {
            painter.drawText(rect(), Qt::AlignLeft | Qt::AlignVCenter,
                             fontMetrics().elidedText(text(), Qt::ElideRight, width()));
        }
    }
};

namespace {

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
    , grid_(new QGridLayout(this))
    , when_(new SeasonLine(this))
    , how_(new SeasonLine(this)) {
    setObjectName(QStringLiteral("seasons"));
    setAccessibleName(tr("Dry and damp"));
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
    year_->setMinimumWidth(leastSlider);
    year_->setMaximumWidth(220);
    when_->setObjectName(QStringLiteral("seasonWhen"));
    how_->setObjectName(QStringLiteral("seasonHow"));
    how_->setForegroundRole(QPalette::PlaceholderText);
    grid_->setContentsMargins(0, 0, 0, 0);
    grid_->setHorizontalSpacing(seasonGap);
    grid_->setVerticalSpacing(0);
    place();
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
    // Where there is little room the end is cut off: how true the picture is comes first, then
    // what a floating field must not use up.
    QStringList how;
    how << (times == 1 ? tr("drawn true to scale") : tr("drawn %1 ×").arg(times));
    const Range left = hull(gapAt(surround.gapX, state.width), gapAt(surround.gapY, state.height));
    if (glued.border.has(BorderDesign::FloatingFrame)) {
        how << tr("gap %1").arg(gapText(left, unit));
    } else if (railsStay(glued) && left.least + left.greatest != 0) {
        how << (left.least + left.greatest < 0 ? tr("presses on its rails")
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
    place();
}

void SeasonBar::setLow(bool low) {
    if (low != low_) {
        low_ = low;
        place();
    }
}

bool SeasonBar::isStacked(int width) const {
    const int row = leastSlider + built_->sizeHint().width() + leastWords + 2 * seasonGap;
    return !low_ && width < row;
}

int SeasonBar::heightIn(int width) const {
    const int line = when_->fontMetrics().lineSpacing();
    return isStacked(width) ? barHeight + 2 * linesBelow * line : barHeight;
}

void SeasonBar::place() {
    const bool stacked = isStacked(width());
    for (QWidget* part : std::initializer_list<QWidget*>{year_, built_, when_, how_}) {
        grid_->removeWidget(part);
    }
    when_->setWordWrap(stacked);
    how_->setWordWrap(stacked);
    grid_->setRowMinimumHeight(0, stacked ? barHeight : 0);
    grid_->setRowStretch(2, stacked ? 1 : 0);
    grid_->setColumnStretch(0, 1);
    grid_->setColumnStretch(2, stacked ? 0 : 3);
    if (stacked) {
        const int line = when_->fontMetrics().lineSpacing();
        const QRect room(0, 0, width(), linesBelow * line);
        const int first =
            when_->fontMetrics().boundingRect(room, Qt::TextWordWrap, when_->text()).height();
        grid_->setRowMinimumHeight(1, std::min(first, linesBelow * line));
        grid_->addWidget(year_, 0, 0);
        grid_->addWidget(built_, 0, 1);
        grid_->addWidget(when_, 1, 0, 1, 3);
        grid_->addWidget(how_, 2, 0, 1, 3);
    } else {
        grid_->setRowMinimumHeight(1, 0);
        grid_->addWidget(year_, 0, 0, 2, 1);
        grid_->addWidget(built_, 0, 1, 2, 1);
        grid_->addWidget(when_, 0, 2);
        grid_->addWidget(how_, 1, 2);
    }
    // Words before the button: an edit leads back as well.
    constexpr int fewWords = 220;
    const int wanted = leastSlider + built_->sizeHint().width() + fewWords;
    built_->setVisible(stacked || width() >= wanted);
}

void SeasonBar::resizeEvent(QResizeEvent*) {
    place();
}

}  // namespace kerfwright
