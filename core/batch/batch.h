// Several boards made at once: one shop, one rack, each setting of a machine used for all boards.
#pragma once

#include "core/bench/job.h"
#include "core/project/project.h"
#include "core/timber/timber.h"

#include <string>
#include <vector>

namespace kerfwright {

struct BatchBoard {
    Project project;  ///< with the shop of the batch
    Job job;
};

struct Batch {
    std::vector<BatchBoard> boards;
    std::vector<Wood> woods;  ///< of all boards; where two tell of one wood, as the first does
    TimberPlan timber;        ///< labels with the number of the board in front: "2: A3"
};

inline constexpr std::size_t mostBoards = 20;

/// Plans every board with the shop and the spare slices of the first project, and lays the strips
/// of all on its rack; pins are left aside where there is more than one board. The fault is the
/// first thing that does not hold; its entry begins with the board: "Board 2, Cherry block: Width".
Result<Batch> planBatch(std::vector<Project> projects, const TimberCallback& callback = {});

}  // namespace kerfwright
