#include "ui/document/sawyer.h"

#include "core/timber/demand.h"
#include "ui/document/text.h"

#include <QMetaObject>

#include <optional>

namespace kerfwright {

Sawyer::Sawyer(Document& document, Planner& planner, std::chrono::milliseconds delay,
               QObject* parent)
    : QObject(parent)
    , document_(document)
    , planner_(planner) {
    pool_.setMaxThreadCount(1);
    delay_.setSingleShot(true);
    delay_.setInterval(delay);
    connect(&delay_, &QTimer::timeout, this, &Sawyer::run);
    connect(&planner, &Planner::changed, this, &Sawyer::wishChanged);
    connect(&document, &Document::projectChanged, this, &Sawyer::wishChanged);
    connect(&document, &Document::replaced, this, [this] {
        cancel();
        last_.reset();
        project_.reset();
        planned_.reset();
    });
}

Sawyer::~Sawyer() {
    cancel();
    pool_.waitForDone();
}

void Sawyer::wake() {
    if (state_ == State::Asleep) {
        state_ = State::Working;
        wishChanged();
    }
}

void Sawyer::cancel() {
    ++generation_;
    cancelled_ = true;
}

void Sawyer::wishChanged() {
    if (state_ == State::Asleep) {
        return;
    }
    if (planner_.state() == Planner::State::Working) {
        // Whatever is being laid out is for another board.
        if (planned_) {
            planned_.reset();
            project_.reset();
            cancel();
        }
        delay_.stop();
        state_ = State::Working;
        progress_ = 0;
        Q_EMIT changed();
        return;
    }
    if (planner_.state() == Planner::State::Impossible) {
        cancel();
        delay_.stop();
        planned_.reset();
        project_.reset();
        state_ = State::Impossible;
        fault_ = planner_.fault();
        Q_EMIT changed();
        return;
    }
    if (planned_ == planner_.last() && project_ && project_->timber == document_.project().timber) {
        return;
    }
    cancel();
    planned_ = planner_.last();
    project_ = document_.snapshot();
    state_ = State::Working;
    progress_ = 0;
    fault_.clear();
    delay_.start();
    Q_EMIT changed();
}

void Sawyer::run() {
    if (running_ || !planned_) {
        return;  // `finished` starts over when it finds that the generation moved
    }
    running_ = true;
    stopAsked_ = false;
    cancelled_ = false;
    pool_.start([this, generation = generation_, project = project_, planned = planned_] {
        const TimberCallback callback = [&](const TimberProgress& progress) {
            // One report at a time: a quick search must not flood the window.
            const bool better = progress.best != nullptr;
            if (better || !telling_.exchange(true)) {
                SawnPtr sawn;
                if (better) {
                    sawn =
                        std::make_shared<const Sawn>(Sawn{project, planned, *progress.best, false});
                }
                QMetaObject::invokeMethod(
                    this, [=, this, done = progress.done] { told(generation, done, sawn); },
                    Qt::QueuedConnection);
            }
            return !stopAsked_ && !cancelled_;
        };
        SawnPtr sawn;
        QString fault;
        Result<TimberPlan> made =
            planTimber(demandOf(planned->job.steps, planned->project->woods),
                       planned->project->woods, planned->project->shop, project->timber, callback);
        if (made.ok()) {
            sawn =
                std::make_shared<const Sawn>(Sawn{project, planned, std::move(made).value(), true});
        } else {
            fault = toQt(made.fault().text());
        }
        QMetaObject::invokeMethod(
            this, [=, this] { finished(generation, sawn, fault); }, Qt::QueuedConnection);
    });
}

void Sawyer::told(quint64 generation, double done, const SawnPtr& better) {
    telling_ = false;
    if (generation != generation_) {
        return;
    }
    progress_ = done;
    if (better) {
        last_ = better;
    }
    Q_EMIT changed();
}

void Sawyer::finished(quint64 generation, const SawnPtr& sawn, const QString& fault) {
    running_ = false;
    if (generation != generation_) {
        if (!delay_.isActive() && state_ == State::Working) {
            run();
        }
        return;
    }
    progress_ = 1;
    if (sawn) {
        last_ = sawn;
        state_ = State::Current;
    } else {
        fault_ = fault;
        state_ = State::Impossible;
    }
    Q_EMIT changed();
}

}  // namespace kerfwright
