// Small jobs, exactly: everything that can come out of every plank, as counts of the items, and
// from that the cheapest planks. Private to core/timber.
#pragma once

#include "core/timber/generation.h"

#include <cstdint>
#include <optional>
#include <vector>

namespace kerfwright::cutting {

/// The patterns that leave least missing, by `weights`, and of these the cheapest. Empty where it
/// would take more than `most` looks, or the budget is spent.
std::optional<std::vector<Pattern>> byCounting(const Pool& pool, std::vector<Filler>& fillers,
                                               const std::vector<Volume>& volumes,
                                               std::int64_t most, Budget& budget);

}  // namespace kerfwright::cutting
