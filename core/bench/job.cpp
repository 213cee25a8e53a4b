#include "core/bench/job.h"

#include "core/glueup/deep.h"
#include "core/words/say.h"

#include <optional>
#include <tuple>
#include <utility>

namespace kerfwright {
namespace {

/// A band that cannot become part of the field.
std::optional<Fault> bandFault(const Board& board) {
    if (!board.border.has(BorderDesign::EndGrainBand)) {
        return std::nullopt;
    }
    if (board.build == Build::LongGrain) {
        return Fault{say("Border"),
                     say("an end-grain band moves with an end-grain field, and needs one"),
                     say("a long-grain build")};
    }
    constexpr auto most = static_cast<std::size_t>(BoardLimits::cellsAcross) - 2;
    const std::pair<std::string, std::size_t> counts[] = {
        {say("Columns"), board.field.columns.size()}, {say("Rows"), board.field.rows.size()}};
    for (const auto& [entry, count] : counts) {
        if (count > most) {
            return Fault{entry, say("must be at most {1} inside a band", most),
                         std::to_string(count)};
        }
    }
    return std::nullopt;
}

Totals totals(const Board& board, const std::vector<Wood>& woods, const StepList& list,
              const Proof& proof, const Climate& climate, const Surround& surround) {
    Totals totals;
    totals.width = proof.width;
    totals.height = proof.height;
    totals.thickness = proof.thickness;
    totals.timberIn = proof.ledger.timberIn;
    totals.yieldPercent =
        100.0 * proof.ledger.board.toCubicMetres() / proof.ledger.timberIn.toCubicMetres();

    totals.weightKg = weightAt(board, woods, climate, climate.build, surround).value_or(0);

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

namespace {

/// Steps of the search that a plan may cost where nobody asked for the fewest glue-ups.
constexpr std::int64_t littleSearch = 20'000;

Result<Plan> planned(const Proposal& proposal, const Board& board, const std::vector<Wood>& woods,
                     const Shop& shop, const Notation& notation) {
    Result<Plan> made =
        planOf(proposal.construction, proposal.laying, board, woods, shop, notation);
    if (!made) {
        return made;
    }
    Plan plan = std::move(made).value();
    plan.construction = proposal.key;
    return plan;
}

/// Rows or columns; blocks from blocks where those would divide pieces more often.
Result<Plan> plannedField(const Board& board, const std::vector<Wood>& woods, const Shop& shop,
                          const Choices& choices, const Notation& notation) {
    Result<Plan> field = planField(board, woods, shop, choices, notation);
    if (!field || choices.rows != RowChoice::Best || !choices.construction.empty() ||
        field->extraJoints.empty()) {
        return field;
    }
    ProposalOptions options;
    options.mergeLike = choices.mergeLike;
    options.budget = littleSearch;
    for (const Proposal& proposal : proposals(board, woods, shop, options).all) {
        const auto cost = [](const Plan& plan) {
            return std::tuple(plan.extraJoints.size(), plan.glueUps, plan.assemblies);
        };
        const Result<Plan> made = planned(proposal, board, woods, shop, notation);
        if (made && cost(*made) < cost(*field) && made->glueUps <= field->glueUps) {
            Plan better = *made;
            better.decidedBy =
                sayCount(field->extraJoints.size(),
                         "Rows or columns alone would divide pieces with {1} joint that nobody "
                         "drew; blocks glued from blocks need {2}.",
                         "Rows or columns alone would divide pieces with {1} joints that nobody "
                         "drew; blocks glued from blocks need {2}.",
                         better.extraJoints.size());
            field = std::move(better);
        }
    }
    return field;
}

}  // namespace

Result<Job> makeJob(const Board& board, const std::vector<Wood>& woods, const Shop& shop,
                    const Choices& choices, const Notation& notation, const Conditions& conditions,
                    const Proposal* construction) {
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
    if (const auto fault = bandFault(board)) {
        return *fault;
    }
    Job job;
    job.board = asGlued(board);
    if (const auto found = faults(job.board, static_cast<int>(woods.size()), notation);
        !found.empty()) {
        return found.front();
    }
    Result<Plan> field = construction != nullptr
                             ? planned(*construction, job.board, woods, shop, notation)
                             : plannedField(job.board, woods, shop, choices, notation);
    if (!field) {
        return field.fault();
    }
    job.movement = movementOf(job.board, woods, !field->grainDown, conditions.climate);
    job.season = seasonOf(job.movement);
    Result<Plan> bordered =
        withBorder(std::move(field).value(), job.board, woods, shop, job.season, notation);
    if (!bordered) {
        return bordered.fault();
    }
    job.plan = std::move(bordered).value();
    const BorderFit& fit = job.plan.border;
    job.surround = surroundOf(board, job.plan.grainDown, fit.gapX.value, fit.gapY.value);
    job.steps = steps(job.plan, job.board, shop);
    job.proof = replay(job.steps, job.board, choices.mergeLike, job.season);
    if (!job.proof.ok()) {
        return Fault{say("Virtual bench"), say("the plan does not make the wished board"),
                     job.proof.faults.front()};
    }
    job.glue = glueNeeds(job.steps, woods, conditions.glue);
    job.hours = benchHours(job.steps, job.glue, conditions.glue, conditions.rates);
    job.cautions = cautions({board, job.board, woods, shop, choices, conditions, job.plan,
                             job.steps, job.movement, job.glue, notation});
    job.totals = totals(job.board, woods, job.steps, job.proof, conditions.climate, fit.surround);
    return job;
}

}  // namespace kerfwright
