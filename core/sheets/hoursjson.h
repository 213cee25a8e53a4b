// What the plan's JSON says of hours, days and sessions at the bench. Private to core/sheets.
#pragma once

#include "core/bench/hours.h"

#include <nlohmann/json.hpp>

namespace kerfwright {

nlohmann::ordered_json ratesJson(const BenchRates& rates);
/// Tasks and sessions count from 1.
nlohmann::ordered_json hoursJson(const BenchHours& hours);

}  // namespace kerfwright
