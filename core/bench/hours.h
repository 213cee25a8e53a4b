// How long a board takes: with hands on the work, and in days.
//
// Every step is counted (cuts, metres, faces, joints, clamps) and each count is taken times a rate
// of the shop. Waiting comes from the glue, and from the finish. What is left is put into sessions
// at the bench. Nothing here is a length that is cut, so it is reckoned in floating point.
#pragma once

#include "core/bench/glue.h"
#include "core/shop/benchrates.h"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace kerfwright {

/// `count` of something, each of which takes as long.
struct TimeTerm {
    std::string what;  ///< behind count and unit: "crosscuts", "of end grain, in 15 passes"
    const char* unit;  ///< of the count: "", "m" or "m²"
    double count = 0;
    double each = 0;      ///< minutes
    const char* setting;  ///< key in `rateSettings()` or, of spreading, in `glueSettings()`
    double minutes() const { return count * each; }
};

/// What has to be waited for before the same workpieces may be taken up again.
enum class BenchWait { None, Glue, Finish };

/// A step of the list; or what follows the last: sanding, then each coat of finish.
struct BenchTask {
    int step = -1;  ///< index into the step list; -1 where the list has no such step
    std::string title;
    std::vector<TimeTerm> terms;
    double minutes = 0;  ///< hands on: the sum of the terms
    BenchWait wait = BenchWait::None;
    /// After it, hands off; 0 where nothing is waited for. Empty where the shop is too cold for the
    /// glue: it never sets.
    std::optional<double> waitMinutes = 0;
    /// Hands off between clamp loads, where glue would dry before all parts are in place.
    double betweenLoads = 0;
    int clamps = 0;  ///< of those owned, in use until the joint is out of the clamps
    std::vector<std::string> labels;  ///< of workpieces that it takes up or makes, each once
};

/// One session at the bench.
struct BenchSession {
    std::vector<int> tasks;  ///< indices, in the order in which they are done
    double minutes = 0;      ///< hands on
    /// From 1, counted from the first session; 0 where the shop is too cold for the glue. A task
    /// that is longer than a day's work goes on until `lastDay`.
    int day = 0, lastDay = 0;
    std::vector<int> waitsFor;    ///< tasks of earlier sessions whose glue has to set or finish dry
    bool waitsForClamps = false;  ///< all that are owned are in use
};

/// As fine as such a figure is good for: a minute below an hour and at least one where there is any
/// work, five minutes below twenty hours, else an hour. What is told and what is charged are the
/// same.
std::int64_t toldMinutes(double minutes);

struct BenchHours {
    std::vector<BenchTask> tasks;  ///< the steps in their order, then sanding and finish
    std::vector<BenchSession> sessions;
    double minutes = 0;  ///< hands on: the sum over the tasks
    /// Until the last coat is dry and the last joint has its full strength; empty where the shop is
    /// too cold for the glue.
    std::optional<int> days;
};

/// `needs` are those of the list with the glue of `shop`.
///
/// Sessions follow the list as far as one step needs another: while a panel sets, the next one is
/// milled. A task is begun on a day on which it can be ended, unless it is longer than a day's
/// work.
BenchHours benchHours(const StepList& list, const GlueNeeds& needs, const GlueShop& shop,
                      const BenchRates& rates);

}  // namespace kerfwright
