// Benchmarks come in pairs: what is measured, and something everybody can picture as its baseline.
// After the run each pair is printed with its ratio and the limit that was set for it. Nothing here
// passes or fails.
#pragma once

#include "core/project/project.h"

#include <functional>
#include <string>

namespace kerfwright::bench {

struct Limit {
    double milliseconds = 0;  ///< 0: none
    double ratio = 0;         ///< of measured to baseline; 0: none
};

/// Measures `work` and `baseline` in this run.
void pair(const std::string& name, Limit limit, const std::function<void()>& work,
          const std::string& baselineName, const std::function<void()>& baseline);
/// As `pair`, for work that says itself how many seconds it took.
void timedPair(const std::string& name, Limit limit, const std::function<double()>& work,
               const std::string& baselineName, const std::function<double()>& baseline);
/// Numbers that were measured otherwise, printed in the same table.
void notedPair(const std::string& name, const std::string& unit, double limitRatio, double value,
               const std::string& baselineName, double baseline);

/// A square field of `cells` x `cells` of random woods; the same every time.
Project randomProject(int cells);

void addPlanning();
void addSearch();
void addTimber();
void addSeasons();
void addView();
void addJoint();
void addSheets();
/// `folder`: where the programs stand that are started.
void addStart(const std::string& folder);

}  // namespace kerfwright::bench
