#include "ui/document/boardfinder.h"

#include "core/timber/demand.h"
#include "core/timber/largest.h"
#include "ui/document/text.h"

#include <QMetaObject>

#include <algorithm>

namespace kerfwright {

namespace {

/// Steps of a search that is one of many.
constexpr std::int64_t triedBudget = 2'000;

Length stepOf(const Project& project) {
    return project.notation.unit == Unit::Inches ? Length::inch(1, 16) : Length::mm(1);
}

/// The smallest square of the series: a quarter of what is there, on the step.
Length leastSquare(const Project& project) {
    const Length step = stepOf(project);
    const Length quarter = Length::nm(project.board.field.columns.front().nm() / 4);
    return std::max(roundedUp(BoardLimits::leastCell, step), roundedUp(quarter, step));
}

}  // namespace

int sizesOf(const Project& project, Growth growth) {
    if (growth != Growth::Squares) {
        return BoardLimits::cellsAcross;
    }
    // Four times as large is more than any rack holds twice.
    const Length most =
        std::min(project.board.field.columns.front() * 4, BoardLimits::greatestCell);
    const Length least = leastSquare(project);
    return most < least ? 0 : static_cast<int>((most - least).nm() / stepOf(project).nm()) + 1;
}

std::optional<Field> fieldOfSize(const Project& project, Growth growth, int size) {
    if (size < 0 || size >= sizesOf(project, growth)) {
        return std::nullopt;
    }
    const Field& field = project.board.field;
    switch (growth) {
    case Growth::Rows:
        return resized(field, static_cast<int>(field.columns.size()), size + 1);
    case Growth::Columns:
        return resized(field, size + 1, static_cast<int>(field.rows.size()));
    case Growth::Squares:
        break;
    }
    const Length width = leastSquare(project) + stepOf(project) * size;
    const Length grid = project.notation.step();
    const detail::Wide high = static_cast<detail::Wide>(field.rows.front().nm()) * width.nm() /
                              field.columns.front().nm();
    const Length height = std::max(
        Length::nm((static_cast<std::int64_t>(high) + grid.nm() / 2) / grid.nm() * grid.nm()),
        grid);
    return scaled(field, width, height, grid);
}

Result<Demand> demandOfBoard(const Project& project) {
    Result<Job> job =
        makeJob(project.board, project.woods, project.shop, project.choices, project.notation,
                {project.climate, project.glue, project.purpose, project.rates});
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
    looked_ = false;
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
    looked_ = false;
    largest_.reset();
    verdicts_.clear();
}

void BoardFinder::told(quint64 generation, double done) {
    if (generation == generation_) {
        progress_ = done;
        Q_EMIT changed();
    }
}

void BoardFinder::findLargest(const ProjectPtr& project, Growth growth) {
    begin();
    pool_.start([this, project, growth, generation = generation_, stopAsked = stopAsked_] {
        const Rack rack = priced(project->timber.rack, project->woods);
        CutRules rules = cutRules(*project);
        rules.budget = std::min(rules.budget, triedBudget);
        const DemandAt demandAt = [&](int size) -> Result<Demand> {
            Project larger = *project;
            larger.board.field = *fieldOfSize(*project, growth, size);
            return demandOfBoard(larger);
        };
        const auto found = largestFrom(
            rack, rules, sizesOf(*project, growth), demandAt, [&](const LayoutProgress& progress) {
                QMetaObject::invokeMethod(
                    this, [=, this, done = progress.done] { told(generation, done); },
                    Qt::QueuedConnection);
                return !*stopAsked;
            });
        std::optional<Largest> largest;
        if (found) {
            largest =
                Largest{project, growth, found->size, *fieldOfSize(*project, growth, found->size),
                        found->isSure && !*stopAsked};
        }
        QMetaObject::invokeMethod(
            this,
            [=, this] {
                if (generation == generation_) {
                    working_ = false;
                    looked_ = true;
                    largest_ = largest;
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
                CutRules rules = cutRules(*project);
                rules.budget = std::min(rules.budget, triedBudget);
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
                    looked_ = true;
                    Q_EMIT changed();
                }
            },
            Qt::QueuedConnection);
    });
    Q_EMIT changed();
}

}  // namespace kerfwright
