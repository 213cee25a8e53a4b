#include "core/bench/job.h"

namespace kerfwright {
namespace {

Totals totals(const Board& board, const std::vector<Wood>& woods, const StepList& list,
              const Proof& proof, const Climate& climate) {
    Totals totals;
    totals.width = proof.width;
    totals.height = proof.height;
    totals.thickness = proof.thickness;
    totals.timberIn = proof.ledger.timberIn;
    totals.yieldPercent =
        100.0 * proof.ledger.board.toCubicMetres() / proof.ledger.timberIn.toCubicMetres();

    totals.weightKg = weightAt(board, woods, climate, climate.build).value_or(0);

    totals.timberByWood.resize(woods.size());
    for (const Step& step : list.steps) {
        const Mill* mill = std::get_if<Mill>(&step.work);
        if (mill == nullptr) {
            continue;
        }
        for (const MillLine& line : mill->lines) {
            totals.timberByWood[static_cast<std::size_t>(line.wood)] +=
                volume(line.roughThickness.value, line.roughWidth.value, line.roughLength.value) *
                static_cast<std::int64_t>(line.strips.size());
        }
    }
    totals.cost = 0;
    for (std::size_t wood = 0; wood < woods.size(); ++wood) {
        const std::optional<std::int64_t> one = cost(totals.timberByWood[wood], woods[wood].price);
        totals.costByWood.push_back(one);
        if (totals.timberByWood[wood] > Volume()) {
            totals.cost = one && totals.cost ? std::optional(*totals.cost + *one) : std::nullopt;
        }
    }
    return totals;
}

}  // namespace

Result<Job> makeJob(const Board& board, const std::vector<Wood>& woods, const Shop& shop,
                    const Choices& choices, const Notation& notation,
                    const Conditions& conditions) {
    if (const auto found = faults(board, static_cast<int>(woods.size()), notation);
        !found.empty()) {
        return found.front();
    }
    if (const auto found = faults(woods, notation); !found.empty()) {
        return found.front();
    }
    if (const auto found = faults(shop, notation); !found.empty()) {
        return found.front();
    }
    if (const auto found = faults(conditions, notation); !found.empty()) {
        return found.front();
    }
    Result<Plan> planned = plan(board, woods, shop, choices, notation);
    if (!planned) {
        return planned.fault();
    }
    Job job;
    job.plan = std::move(planned).value();
    job.steps = steps(job.plan, board, shop);
    job.proof = replay(job.steps, board, choices.mergeLike);
    if (!job.proof.ok()) {
        return Fault{"Virtual bench", "the plan does not make the wished board",
                     job.proof.faults.front()};
    }
    job.movement = movementOf(board, woods, job.plan.byColumns, conditions.climate);
    job.glue = glueNeeds(job.steps, woods, conditions.glue);
    job.cautions = cautions({board, woods, shop, choices, conditions, job.plan, job.steps,
                             job.movement, job.glue, notation});
    job.totals = totals(board, woods, job.steps, job.proof, conditions.climate);
    return job;
}

}  // namespace kerfwright
