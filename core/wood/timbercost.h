// What the timber of a board comes to as it is paid for. Filled from planks that are cut and bought
// (core/timber/worth.h), or from the plan's own rough strips (core/bench/quote.h).
#pragma once

#include "core/wood/price.h"

#include <optional>
#include <string>
#include <vector>

namespace kerfwright {

struct TimberCostLine {
    std::string wood;                    ///< name
    std::string words;                   ///< "3 planks 27 × 150 × 2400 mm, bought"
    Volume volume;                       ///< that is paid for
    std::optional<std::int64_t> amount;  ///< hundredths, for all of it; empty where not known
    /// By which the amount was reckoned; 0 where the planks have prices of their own.
    Price price;
    friend bool operator==(const TimberCostLine&, const TimberCostLine&) = default;
};

struct TimberCost {
    int boards = 1;  ///< that it is enough for
    std::vector<TimberCostLine> lines;
    /// Timber that is needed and not among the lines: "2 strips that no plank can give".
    std::vector<std::string> missing;
    std::string basis;  ///< what is counted, as a sentence
    friend bool operator==(const TimberCost&, const TimberCost&) = default;
};

}  // namespace kerfwright
