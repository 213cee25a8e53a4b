#include "ui/document/planner.h"

#include "ui/document/text.h"

#include <QMetaObject>

namespace kerfwright {

namespace {

bool sameWish(const Project& a, const Project& b) {
    return a.board == b.board && a.woods == b.woods && a.shop == b.shop && a.choices == b.choices &&
           a.notation == b.notation && a.climate == b.climate && a.glue == b.glue &&
           a.purpose == b.purpose && a.rates == b.rates;
}

}  // namespace

Planner::Planner(Document& document, std::chrono::milliseconds delay, QObject* parent)
    : QObject(parent)
    , document_(document) {
    pool_.setMaxThreadCount(1);
    delay_.setSingleShot(true);
    delay_.setInterval(delay);
    connect(&delay_, &QTimer::timeout, this, &Planner::run);
    connect(&document, &Document::projectChanged, this, &Planner::wishChanged);
    connect(&document, &Document::replaced, this, [this] {
        last_.reset();
        asked_.reset();
    });
    wishChanged();
}

Planner::~Planner() {
    pool_.waitForDone();
}

void Planner::wishChanged() {
    if (asked_ && sameWish(*asked_, document_.project())) {
        return;
    }
    // The generation moves when the wish changes, not when planning starts: a plan that comes in
    // between is already out of date.
    ++generation_;
    asked_ = document_.snapshot();
    state_ = State::Working;
    fault_.clear();
    delay_.start();
    Q_EMIT changed();
}

void Planner::run() {
    if (running_) {
        return;  // `finished` starts over when it finds that the generation moved
    }
    running_ = true;
    pool_.start([this, generation = generation_, project = asked_] {
        Result<Job> made = makeJob(
            project->board, project->woods, project->shop, project->choices, project->notation,
            {project->climate, project->glue, project->purpose, project->rates});
        PlannedPtr planned;
        QString fault;
        if (made.ok()) {
            planned = std::make_shared<const Planned>(Planned{project, std::move(made).value()});
        } else {
            fault = toQt(made.fault().text());
        }
        QMetaObject::invokeMethod(
            this, [=, this] { finished(generation, planned, fault); }, Qt::QueuedConnection);
    });
}

void Planner::finished(quint64 generation, const PlannedPtr& planned, const QString& fault) {
    running_ = false;
    if (generation != generation_) {
        if (!delay_.isActive()) {
            run();
        }
        return;
    }
    if (planned) {
        last_ = planned;
        state_ = State::Current;
    } else {
        fault_ = fault;
        state_ = State::Impossible;
    }
    Q_EMIT changed();
}

}  // namespace kerfwright
