#include "ui/document/boardfinder.h"

#include "core/timber/demand.h"
#include "ui/document/text.h"

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

namespace {

BoardFinder::Verdict verdictOn(const BoardFinder::Candidate& candidate, const Project& shop,
                               const Errand& errand) {
    BoardFinder::Verdict verdict{candidate.key, candidate.name, 0, 0, false, {}};
    Project board = *candidate.project;
    board.shop = shop.shop;
    const Result<Demand> demand = demandOfBoard(board);
    if (!demand.ok()) {
        verdict.fault = toQt(demand.fault().text());
        return verdict;
    }
    Sawing sawing = shop.timber.sawing;
    sawing.effort = std::min(sawing.effort, triedEffort);
    const Layout laid =
        layout(priced(shop.timber.rack, shop.woods), *demand, cutRules(shop.shop, sawing),
               [&errand](const LayoutProgress&) { return errand.goesOn(); });
    for (const WantedStrips& strips : demand->strips) {
        verdict.strips += strips.count;
    }
    for (const int missing : laid.missing) {
        verdict.missing += missing;
    }
    verdict.isSure = laid.proven || verdict.missing == 0;
    return verdict;
}

}  // namespace

BoardFinder::BoardFinder(QObject* parent)
    : QObject(parent) {
    connect(&work_, &Background::ended, this, &BoardFinder::changed);
}

void BoardFinder::clear() {
    progress_ = 0;
    fault_.clear();
    largest_.reset();
    verdicts_.clear();
}

void BoardFinder::forget() {
    work_.drop();
    clear();
    Q_EMIT changed();
}

void BoardFinder::findLargest(const ProjectPtr& project, Growth growth) {
    clear();
    work_.begin([this, project, growth](const Errand& errand) {
        const auto fields = grownFields(project->board.field, project->recipe, growth,
                                        stepOf(*project), project->notation);
        Timber timber = project->timber;
        timber.sawing.effort = std::min(timber.sawing.effort, triedEffort);
        Result<LargestBoard> found = largestBoard(
            project->board, fields, project->woods, project->shop, project->choices,
            project->notation, conditionsOf(*project), timber, [&](const LayoutProgress& progress) {
                errand.mention([this, done = progress.done] {
                    progress_ = done;
                    Q_EMIT changed();
                });
                return errand.goesOn();
            });
        if (found.ok()) {
            errand.say([this, largest = std::move(found).value()] { largest_ = largest; });
        } else {
            errand.say([this, fault = toQt(found.fault().text())] { fault_ = fault; });
        }
    });
    Q_EMIT changed();
}

void BoardFinder::judge(const ProjectPtr& project, const std::vector<Candidate>& candidates) {
    clear();
    work_.begin([this, project, candidates](const Errand& errand) {
        const auto all = static_cast<double>(candidates.size());
        for (const Candidate& candidate : candidates) {
            if (!errand.goesOn()) {
                break;
            }
            const Verdict verdict = verdictOn(candidate, *project, errand);
            errand.say([this, verdict, all] {
                verdicts_.push_back(verdict);
                progress_ = static_cast<double>(verdicts_.size()) / all;
                Q_EMIT changed();
            });
        }
    });
    Q_EMIT changed();
}

}  // namespace kerfwright
