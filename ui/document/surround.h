// The room round the field of a project, at once, whether or not it has been planned.
#pragma once

#include "core/bench/job.h"
#include "core/project/project.h"

namespace kerfwright {

/// `job`: the last plan, if there is one; it says which way a field with a free choice was planned.
inline Surround surroundOf(const Project& project, const Job* job = nullptr) {
    const std::optional<bool> byColumns =
        job != nullptr ? std::optional(!job->plan.grainDown) : std::nullopt;
    return borderRoom(project.board, project.woods, project.shop, project.climate, byColumns);
}

}  // namespace kerfwright
