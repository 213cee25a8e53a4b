#include "core/bench/job.h"

namespace kerfwright {
namespace {

/// Volume of the finished board by wood: the field's pieces and the rails.
std::vector<Volume> boardByWood(const Board& board, std::size_t woodCount) {
    std::vector<Volume> volumes(woodCount);
    const std::vector<WoodUse> uses = woodUse(board.field, static_cast<int>(woodCount));
    for (std::size_t wood = 0; wood < woodCount; ++wood) {
        volumes[wood] = volume(uses[wood].face, board.thickness);
    }
    if (board.border.width > Length()) {
        const Area whole = area(board.width(), board.height());
        const Area field = area(board.field.width(), board.field.height());
        volumes[static_cast<std::size_t>(board.border.wood)] +=
            volume(Area(whole.squareNm() - field.squareNm()), board.thickness);
    }
    return volumes;
}

Totals totals(const Board& board, const std::vector<Wood>& woods, const StepList& list,
              const Proof& proof) {
    Totals totals;
    totals.width = proof.width;
    totals.height = proof.height;
    totals.thickness = proof.thickness;
    totals.timberIn = proof.ledger.timberIn;
    totals.yieldPercent =
        100.0 * proof.ledger.board.toCubicMetres() / proof.ledger.timberIn.toCubicMetres();

    const std::vector<Volume> byWood = boardByWood(board, woods.size());
    for (std::size_t wood = 0; wood < woods.size(); ++wood) {
        if (byWood[wood] > Volume() && woods[wood].density <= 0) {
            totals.weightKg = 0;
            break;
        }
        totals.weightKg += byWood[wood].toCubicMetres() * woods[wood].density;
    }

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
    return totals;
}

}  // namespace

Result<Job> makeJob(const Board& board, const std::vector<Wood>& woods, const Shop& shop,
                    const Choices& choices, const Notation& notation) {
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
    job.cautions = cautions(board, woods, shop, job.plan, job.steps, notation);
    job.glue = glueNeeds(job.steps, woods, GlueShop{});
    job.totals = totals(board, woods, job.steps, job.proof);
    return job;
}

}  // namespace kerfwright
