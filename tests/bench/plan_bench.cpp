// Planning and the virtual bench, as the window asks for them: from a project to a proven plan.
#include "core/bench/job.h"
#include "core/project/file.h"
#include "tests/bench/pairs.h"

#include <benchmark/benchmark.h>

#include <memory>

namespace kerfwright::bench {

void addPlanning() {
    for (const auto& [cells, limit] : {std::pair{10, 2.0}, {64, 250.0}}) {
        const auto project = std::make_shared<Project>(randomProject(cells));
        const auto bytes = std::make_shared<std::string>(toBytes(*project));
        const std::string size = std::to_string(cells) + " x " + std::to_string(cells);
        pair(
            "plan and replay, " + size + " random", {limit, 0},
            [project] {
                Result<Job> job =
                    makeJob(project->board, project->woods, project->shop, project->choices,
                            project->notation, {project->climate, project->glue, project->purpose});
                benchmark::DoNotOptimize(job.ok());
            },
            "reading the same project from its bytes",
            [bytes] { benchmark::DoNotOptimize(fromBytes(*bytes).ok()); });
    }
}

}  // namespace kerfwright::bench
