// Planks one after another, always the one that gives most for its cost, at values that learn from
// round to round which strips end up on poorly used planks. Private to core/timber.
#pragma once

#include "core/timber/generation.h"
#include "core/timber/packer.h"

#include <vector>

namespace kerfwright::cutting {

class Greedy {
public:
    /// `values`: what the items are worth where planks are used well. All must outlive it.
    Greedy(const Pool& pool, const Aim& aim, std::vector<Filler>& fillers, Store& store,
           Budget& budget, const std::vector<double>& values, std::uint64_t seed);

    /// One layout; what it leaves missing is what found no place. What it used goes to the store.
    std::vector<Pattern> round();

private:
    const Pool& pool_;
    const Aim& aim_;
    std::vector<Filler>& fillers_;
    Store& store_;
    Budget& budget_;
    const std::vector<double> values_;
    std::vector<double> learnt_;
    Chance chance_;
};

}  // namespace kerfwright::cutting
