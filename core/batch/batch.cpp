#include "core/batch/batch.h"

#include "core/timber/demand.h"
#include "core/words/say.h"

#include <utility>

namespace kerfwright {
namespace {

std::string nameOf(const Project& project, std::size_t index) {
    return project.titles.name.empty() ? say("Board {1}", index + 1)
                                       : say("Board {1}, {2}", index + 1, project.titles.name);
}

}  // namespace

Result<Batch> planBatch(std::vector<Project> projects, const TimberCallback& callback) {
    if (projects.empty() || projects.size() > mostBoards) {
        return Fault{say("Batch"), say("must be of 1 to {1} boards", mostBoards),
                     std::to_string(projects.size())};
    }
    Batch batch;
    const Shop shop = projects.front().shop;
    Timber timber = projects.front().timber;
    if (projects.size() > 1) {
        timber.pins.clear();
    }
    std::vector<Demand> demands;
    for (std::size_t i = 0; i < projects.size(); ++i) {
        Project& project = projects[i];
        project.shop = shop;
        Result<Job> job =
            makeJob(project.board, project.woods, project.shop, project.choices, project.notation,
                    {project.climate, project.glue, project.purpose, project.rates});
        if (!job) {
            Fault fault = job.fault();
            fault.entry = nameOf(project, i) + ": " + fault.entry;
            return fault;
        }
        demands.push_back(demandOf(job->steps, project.woods));
        for (const Wood& wood : project.woods) {
            if (findWood(batch.woods, wood.key) == nullptr) {
                batch.woods.push_back(wood);
            }
        }
        batch.boards.push_back({std::move(project), std::move(job).value()});
    }
    Result<TimberPlan> plan = planTimber(together(demands), batch.woods, shop, timber, callback);
    if (!plan) {
        return plan.fault();
    }
    batch.timber = std::move(plan).value();
    return batch;
}

}  // namespace kerfwright
