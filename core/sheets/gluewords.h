// What the sheets say about the glue of one glue-up.
#pragma once

#include "core/bench/job.h"

#include <string>

namespace kerfwright {

/// Area, joints, glue, and the times against which the glue works, in a few sentences. `glue` must
/// be a step of the job's list.
std::string glueWords(const Job& job, const Glue& glue, const Notation& notation);

/// Glue face and glue of all joints of the border; empty where nothing of it is glued.
std::string borderGlueWords(const Job& job, const Notation& notation);

}  // namespace kerfwright
