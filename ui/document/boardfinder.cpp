#include "ui/document/boardfinder.h"

#include "core/timber/demand.h"
#include "ui/document/text.h"

#include <QMetaObject>

#include <algorithm>

namespace kerfwright {

namespace {

/// Thousands of steps of a search that is one of many.
constexpr std::int64_t triedEffort = 4;

Length stepOf(const Project& project) {
    return project.notation.unit == Unit::Inches ? Length::inch(1, 16) : Length::mm(1);
}

Conditions conditionsOf(const Project& project) {
    return {project.climate, project.glue, project.purpose, project.rates};
}

}  // namespace

Result<Demand> demandOfBoard(const Project& project) {
    Result<Job> job = makeJob(project.board, project.woods, project.shop, project.choices,
                              project.notation, conditionsOf(project));
    if (!job.ok()) {
        return job.fault();
    }
    return demandOf(job->steps, project.woods);
}

BoardFinder::BoardFinder(QObject* parent)
    : QObject(parent) {
    pool_.setMaxThreadCount(1);
}

BoardFinder::~BoardFinder() {
    *stopAsked_ = true;
    pool_.waitForDone();
}

void BoardFinder::forget() {
    ++generation_;
    *stopAsked_ = true;
    working_ = false;
    fault_.clear();
    largest_.reset();
    verdicts_.clear();
    Q_EMIT changed();
}

void BoardFinder::begin() {
    *stopAsked_ = true;  // whatever still runs has a flag of its own
    stopAsked_ = std::make_shared<std::atomic<bool>>(false);
    ++generation_;
    working_ = true;
    progress_ = 0;
    fault_.clear();
    largest_.reset();
    verdicts_.clear();
}

void BoardFinder::told(quint64 generation, double done) {
    telling_ = false;
    if (generation == generation_) {
        progress_ = done;
        Q_EMIT changed();
    }
}

void BoardFinder::findLargest(const ProjectPtr& project, Growth growth) {
    begin();
    pool_.start([this, project, growth, generation = generation_, stopAsked = stopAsked_] {
        const auto fields = grownFields(project->board.field, project->recipe, growth,
                                        stepOf(*project), project->notation);
        Timber timber = project->timber;
        timber.sawing.effort = std::min(timber.sawing.effort, triedEffort);
        Result<LargestBoard> found = largestBoard(
            project->board, fields, project->woods, project->shop, project->choices,
            project->notation, conditionsOf(*project), timber, [&](const LayoutProgress& progress) {
                // One report at a time: a quick search must not flood the window.
                if (!telling_.exchange(true)) {
                    QMetaObject::invokeMethod(
                        this, [=, this, done = progress.done] { told(generation, done); },
                        Qt::QueuedConnection);
                }
                return !*stopAsked;
            });
        std::optional<LargestBoard> largest;
        QString fault;
        if (found.ok()) {
            largest = std::move(found).value();
        } else {
            fault = toQt(found.fault().text());
        }
        QMetaObject::invokeMethod(
            this,
            [=, this] {
                if (generation == generation_) {
                    working_ = false;
                    largest_ = largest;
                    fault_ = fault;
                    Q_EMIT changed();
                }
            },
            Qt::QueuedConnection);
    });
    Q_EMIT changed();
}

void BoardFinder::judge(const ProjectPtr& project, const std::vector<Candidate>& candidates) {
    begin();
    pool_.start([this, project, candidates, generation = generation_, stopAsked = stopAsked_] {
        double number = 0;
        for (const Candidate& candidate : candidates) {
            if (*stopAsked) {
                break;
            }
            Verdict verdict{candidate.key, candidate.name, 0, 0, false, {}};
            Project one = *candidate.project;
            one.shop = project->shop;
            const Result<Demand> demand = demandOfBoard(one);
            if (!demand.ok()) {
                verdict.fault = toQt(demand.fault().text());
            } else {
                Sawing sawing = project->timber.sawing;
                sawing.effort = std::min(sawing.effort, triedEffort);
                const CutRules rules = cutRules(project->shop, sawing);
                const Layout laid =
                    layout(priced(project->timber.rack, project->woods), *demand, rules,
                           [&](const LayoutProgress&) { return !*stopAsked; });
                for (const WantedStrips& strips : demand->strips) {
                    verdict.strips += strips.count;
                }
                for (const int missing : laid.missing) {
                    verdict.missing += missing;
                }
                verdict.isSure = laid.proven || verdict.missing == 0;
            }
            number += 1;
            const double done = number / static_cast<double>(candidates.size());
            QMetaObject::invokeMethod(
                this,
                [=, this] {
                    if (generation == generation_) {
                        progress_ = done;
                        verdicts_.push_back(verdict);
                        Q_EMIT changed();
                    }
                },
                Qt::QueuedConnection);
        }
        QMetaObject::invokeMethod(
            this,
            [=, this] {
                if (generation == generation_) {
                    working_ = false;
                    Q_EMIT changed();
                }
            },
            Qt::QueuedConnection);
    });
    Q_EMIT changed();
}

}  // namespace kerfwright
