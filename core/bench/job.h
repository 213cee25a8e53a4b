// From a wish to a proven plan in one call. The window, the paper and the command line get their
// plans here and nowhere else, so that no plan is shown that the virtual bench has not carried out.
#pragma once

#include "core/bench/borderroom.h"
#include "core/bench/cautions.h"
#include "core/bench/conditions.h"
#include "core/bench/glue.h"
#include "core/glueup/constructions.h"
#include "core/glueup/steps.h"
#include "core/replay/replay.h"

#include <cstdint>
#include <optional>
#include <vector>

namespace kerfwright {

struct Totals {
    Length width, height, thickness;  ///< of the finished board
    double weightKg = 0;  ///< at the moisture it is built at; 0 where a wood's density is not known
    Volume timberIn;      ///< rough
    double yieldPercent = 0;           ///< finished board of timber in
    std::vector<Volume> timberByWood;  ///< rough, by index of the wood
    /// Of that timber, in hundredths; empty where the price of a wood is not known.
    std::vector<std::optional<std::int64_t>> costByWood;
    /// Empty where the price of a wood that is needed is not known.
    std::optional<std::int64_t> cost;
};

/// A plan that was proven.
struct Job {
    /// As it is glued: an end-grain band has become part of the field. Joints, rows and columns of
    /// the plan, and places on it, are those of this board's field.
    Board board;
    FieldSeason season;  ///< how far that field moves
    Surround surround;   ///< round the field that was wished, the band included
    Plan plan;
    StepList steps;
    Proof proof;
    std::vector<Caution> cautions;
    BoardMovement movement;
    GlueNeeds glue;
    Totals totals;
};

/// Checks board, woods, shop and conditions, plans, replays. The fault is the first thing that does
/// not hold; a plan that the bench refuses is a fault with the entry "Virtual bench".
/// Where pieces span several cells and rows or columns would have to divide them, and neither was
/// asked for, blocks are glued from blocks if that saves glue-ups, or joints inside pieces.
/// `construction`: glued that way, whatever the choices say.
Result<Job> makeJob(const Board& board, const std::vector<Wood>& woods, const Shop& shop,
                    const Choices& choices, const Notation& notation,
                    const Conditions& conditions = {}, const Proposal* construction = nullptr);

}  // namespace kerfwright
