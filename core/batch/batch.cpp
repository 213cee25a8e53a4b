#include "core/batch/batch.h"

#include "core/timber/demand.h"

#include <utility>

namespace kerfwright {
namespace {

std::string nameOf(const Project& project, std::size_t index) {
    const std::string number = "Board " + std::to_string(index + 1);
    return project.titles.name.empty() ? number : number + ", " + project.titles.name;
}

}  // namespace

Result<Batch> planBatch(std::vector<Project> projects, const TimberCallback& callback) {
    if (projects.empty() || projects.size() > mostBoards) {
        return Fault{"Batch", "must be of 1 to " + std::to_string(mostBoards) + " boards",
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
