// Puts tasks into sessions. Private to core/bench.
#pragma once

#include "core/bench/hours.h"

namespace kerfwright {

/// Fills in sessions and days. A task waits for all earlier ones that had one of its workpieces.
void addSessions(BenchHours& hours, const std::optional<GlueTimes>& times, double clampsOwned,
                 double hoursADay);

}  // namespace kerfwright
