#include "ui/document/comparer.h"

#include "ui/document/text.h"

#include <QMetaObject>

namespace kerfwright {

namespace {

/// Whether the same ways come out, whichever of them is in use.
bool sameWays(const Project& a, const Project& b) {
    return a.board == b.board && a.woods == b.woods && a.shop == b.shop &&
           a.choices.mergeLike == b.choices.mergeLike && a.notation == b.notation &&
           a.climate == b.climate && a.glue == b.glue && a.purpose == b.purpose &&
           a.rates == b.rates;
}

}  // namespace

Comparer::Comparer(Planner& planner, QObject* parent)
    : QObject(parent)
    , planner_(planner) {
    pool_.setMaxThreadCount(1);
    connect(&planner, &Planner::changed, this, &Comparer::wishChanged);
}

Comparer::~Comparer() {
    stopAsked_ = true;
    pool_.waitForDone();
}

void Comparer::wishChanged() {
    const PlannedPtr planned = planner_.last();
    const bool same = asked_ && planned && planner_.state() == Planner::State::Current &&
                      sameWays(*asked_, *planned->project);
    if (same || planner_.state() == Planner::State::Working) {
        return;
    }
    ++generation_;
    asked_.reset();
    stopAsked_ = true;
    state_ = State::Idle;
    Q_EMIT changed();
}

void Comparer::compare() {
    const PlannedPtr planned = planner_.last();
    if (!planned || planner_.state() != Planner::State::Current ||
        (asked_ && sameWays(*asked_, *planned->project))) {
        return;
    }
    asked_ = planned->project;
    state_ = State::Working;
    progress_ = SearchProgress();
    fault_.clear();
    if (running_) {
        again_ = true;
        stopAsked_ = true;
        Q_EMIT changed();
        return;
    }
    running_ = true;
    stopAsked_ = false;
    pool_.start([this, generation = generation_, project = asked_] {
        const SearchCallback told = [this](const SearchProgress& progress) {
            QMetaObject::invokeMethod(
                this,
                [=, this] {
                    progress_ = progress;
                    Q_EMIT changed();
                },
                Qt::QueuedConnection);
            return !stopAsked_;
        };
        Result<Alternatives> made = alternatives(
            project->board, project->woods, project->shop, project->choices, project->notation,
            {project->climate, project->glue, project->purpose, project->rates}, told);
        std::shared_ptr<const Compared> compared;
        QString fault;
        if (made.ok()) {
            compared = std::make_shared<const Compared>(Compared{project, std::move(made).value()});
        } else {
            fault = toQt(made.fault().text());
        }
        QMetaObject::invokeMethod(
            this, [=, this] { finished(generation, compared, fault); }, Qt::QueuedConnection);
    });
    Q_EMIT changed();
}

void Comparer::finished(quint64 generation, const std::shared_ptr<const Compared>& compared,
                        const QString& fault) {
    running_ = false;
    if (again_ || generation != generation_) {
        again_ = false;
        const bool wanted = asked_ != nullptr;
        asked_.reset();
        if (wanted) {
            compare();
        }
        return;
    }
    fault_ = fault;
    state_ = compared ? State::Done : State::Impossible;
    if (compared) {
        last_ = compared;
    }
    Q_EMIT changed();
}

}  // namespace kerfwright
