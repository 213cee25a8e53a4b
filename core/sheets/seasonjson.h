// What the plan's JSON says of climate, glue, movement and places on the board. Private to
// core/sheets.
#pragma once

#include "core/bench/job.h"
#include "core/project/project.h"

#include <nlohmann/json.hpp>

namespace kerfwright {

nlohmann::ordered_json climateJson(const Climate& climate);
nlohmann::ordered_json glueJson(const GlueShop& glue);
/// The driest and the dampest season: changes from build in mm, each `[least, greatest]`.
nlohmann::ordered_json seasonJson(const Project& project, const Job& job);
/// Indices from 1.
nlohmann::ordered_json placeJson(const CautionPlace& place);

}  // namespace kerfwright
