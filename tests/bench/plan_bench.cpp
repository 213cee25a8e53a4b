// Planning and the virtual bench, as the window asks for them: from a project to a proven plan.
#include "core/bench/job.h"
#include "core/bench/season.h"
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
                            project->notation,
                            {project->climate, project->glue, project->purpose, project->rates});
                benchmark::DoNotOptimize(job.ok());
            },
            "reading the same project from its bytes",
            [bytes] { benchmark::DoNotOptimize(fromBytes(*bytes).ok()); });
    }
}

void addSeasons() {
    for (const auto& [cells, limit] : {std::pair{10, 3.0}, {64, 30.0}}) {
        struct Ready {
            Project project;
            Conditions conditions;
            Job job;
        };
        const auto ready = std::make_shared<Ready>();
        ready->project = randomProject(cells);
        // So that no rule is silent.
        ready->conditions.purpose = {BoardUse::KitchenBoard, Length::mm(38)};
        ready->conditions.glue.clampsOwned = 4;
        const Project& project = ready->project;
        ready->job = makeJob(project.board, project.woods, project.shop, project.choices,
                             project.notation, ready->conditions)
                         .value();
        const auto bytes = std::make_shared<std::string>(toBytes(project));
        const std::string size = std::to_string(cells) + " x " + std::to_string(cells);
        pair(
            "movement, glue, cautions and season, " + size, {limit, 0},
            [ready] {
                const Project& from = ready->project;
                const Job& job = ready->job;
                const Climate& climate = ready->conditions.climate;
                const BoardMovement movement =
                    movementOf(from.board, from.woods, job.plan.byColumns, climate);
                const GlueNeeds glue = glueNeeds(job.steps, from.woods, ready->conditions.glue);
                benchmark::DoNotOptimize(cautions({from.board, from.board, from.woods, from.shop,
                                                   from.choices, ready->conditions, job.plan,
                                                   job.steps, movement, glue, from.notation})
                                             .size());
                benchmark::DoNotOptimize(
                    seasonAt(from.board, from.woods, job.plan.byColumns, climate, climate.dampest)
                        .width.least);
            },
            "reading the same project from its bytes",
            [bytes] { benchmark::DoNotOptimize(fromBytes(*bytes).ok()); });
    }
}

}  // namespace kerfwright::bench
