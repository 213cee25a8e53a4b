// Hours and sessions at the bench in words, alike on paper, on the terminal and in the window.
#pragma once

#include "core/bench/hours.h"

#include <string>

namespace kerfwright {

/// "35 min", "2 h 05 min", "97 h": as fine as such figures are good for. At least a minute where
/// there is any work at all.
std::string timeWords(double minutes);
/// "6 h 45 min hands on, 4 days in 4 sessions".
std::string totalWords(const BenchHours& hours);
/// "4 days in 4 sessions"; without days where the shop is too cold for the glue.
std::string daysWords(const BenchHours& hours);
/// "day 2", "days 2–4", "later".
std::string dayWords(const BenchSession& session);
/// The same at the head of a paragraph: "Day 2", "Days 2–4", "Later".
std::string dayTitle(const BenchSession& session);
/// "steps 1–4, 9; sand the board".
std::string taskWords(const BenchHours& hours, const BenchSession& session);
/// "the glue of steps 2 and 9 has set", "the clamps are free"; empty where nothing is waited for.
std::string waitWords(const BenchHours& hours, const BenchSession& session);
/// "24 m of milling passes × 0.25 min".
std::string termWords(const TimeTerm& term);
/// "24 m × 0.25 min".
std::string termAmount(const TimeTerm& term);
/// The entry that its rate comes from: "Mill, one pass".
std::string rateName(const TimeTerm& term);

}  // namespace kerfwright
