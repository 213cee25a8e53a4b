#include "ui/window/stepspanel.h"

#include "core/sheets/hourwords.h"
#include "ui/document/text.h"
#include "ui/window/hoursbox.h"
#include "ui/window/planbanner.h"
#include "ui/window/spotlight.h"
#include "ui/window/stepwords.h"
#include "ui/window/workingpopup.h"

#include <QVBoxLayout>

namespace kerfwright {

namespace {

constexpr int noticed = 250;  // milliseconds

/// "about 41 min, then 12 h to set"
QString timeLine(const BenchTask& task) {
    const QString time = toQt(timeWords(task.minutes));
    if (task.wait == BenchWait::None) {
        return StepsPanel::tr("about %1").arg(time);
    }
    return task.waitMinutes ? StepsPanel::tr("about %1, then %2 to set")
                                  .arg(time, toQt(timeWords(*task.waitMinutes)))
                            : StepsPanel::tr("about %1; too cold for the glue to set").arg(time);
}

}  // namespace

StepsPanel::StepsPanel(Planner& planner, Spotlight& spotlight, QWidget* parent)
    : QWidget(parent)
    , planner_(planner)
    , spotlight_(spotlight)
    , banner_(new PlanBanner(planner, this))
    , hours_(new HoursBox(planner, this))
    , list_(new CardList(this)) {
    list_->setObjectName(QStringLiteral("steps"));
    list_->setAccessibleName(tr("Steps"));
    list_->setEmptyText(tr("The steps appear here once the board can be planned. Draw a board, or "
                           "see above what is in the way."));
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 4, 0, 0);
    column->setSpacing(0);
    column->addWidget(banner_);
    hours_->setContentsMargins(20, 4, 12, 4);
    column->addWidget(hours_);
    column->addWidget(list_, 1);
    slow_.setSingleShot(true);
    slow_.setInterval(noticed);
    connect(&slow_, &QTimer::timeout, this, [this] { list_->setStale(true); });
    connect(&planner, &Planner::changed, this, &StepsPanel::refresh);
    connect(list_, &CardList::chosen, this, &StepsPanel::chosen);
    connect(&spotlight, &Spotlight::changed, this, &StepsPanel::follow);
    connect(list_, &CardList::workingAsked, this, &StepsPanel::openWorking);
    refresh();
}

void StepsPanel::refresh() {
    switch (planner_.state()) {
    case Planner::State::Working:
        if (!slow_.isActive()) {
            slow_.start();
        }
        break;
    case Planner::State::Current:
        slow_.stop();
        list_->setStale(false);
        break;
    case Planner::State::Impossible:
        slow_.stop();
        list_->setStale(true);
        break;
    }
    if (planner_.last() == shown_) {
        return;
    }
    shown_ = planner_.last();
    std::vector<Card> cards;
    if (shown_) {
        const StepWriter writer(shown_->job.steps, *shown_->project);
        const int count = static_cast<int>(shown_->job.steps.steps.size());
        for (int step = 0; step < count; ++step) {
            const StepWords words = writer.describe(step);
            Card card;
            card.number = QString::number(step + 1);
            card.title = words.title;
            const BenchTask& task = shown_->job.hours.tasks[static_cast<std::size_t>(step)];
            card.lines = words.lines;
            card.lines << timeLine(task);
            card.bigLabel = words.bigLabel;
            card.big = words.big;
            card.warning = words.warning;
            card.working = !words.figures.empty() || !task.terms.empty();
            cards.push_back(std::move(card));
        }
    }
    list_->setCards(std::move(cards));
    follow();
}

void StepsPanel::chosen(int step) {
    if (following_) {
        return;
    }
    if (step >= 0) {
        spotlight_.choose({Subject::Kind::Step, step});
    } else {
        spotlight_.letGoOf(Subject::Kind::Step);
    }
}

void StepsPanel::follow() {
    const Subject& subject = spotlight_.subject();
    const int own = subject.kind == Subject::Kind::Step ? subject.index : -1;
    following_ = true;
    if (list_->chosenCard() != own && own < list_->count()) {
        list_->choose(own);
    }
    following_ = false;
    std::set<int> marks = own < 0 ? spotlight_.trail().steps : std::set<int>();
    if (marked_ || !marks.empty()) {
        marked_ = !marks.empty();
        list_->setMarked(marks);
    }
}

void StepsPanel::chooseStep(int step) {
    list_->choose(step);
    list_->setFocus();
}

void StepsPanel::openWorking(int step) {
    if (!shown_) {
        return;
    }
    const StepWords words = StepWriter(shown_->job.steps, *shown_->project).describe(step);
    const BenchTask& task = shown_->job.hours.tasks[static_cast<std::size_t>(step)];
    auto* popup =
        new WorkingPopup(words.title, words.figures, shown_->project->notation, this, &task);
    connect(popup, &WorkingPopup::rateAsked, this, &StepsPanel::rateAsked);
    connect(popup, &WorkingPopup::termAsked, this, &StepsPanel::termAsked);
    const QRect anchor = list_->workingRect(step);
    popup->openBeside(QRect(list_->viewport()->mapToGlobal(anchor.topLeft()), anchor.size()));
}

}  // namespace kerfwright
