// Given planks, as much as possible laid on them: two or three planks at a time are emptied and
// filled anew with what lay there and what is missing, at values that change a little each time.
// Private to core/timber.
#pragma once

#include "core/timber/generation.h"

#include <cstdint>
#include <vector>

namespace kerfwright::cutting {

/// Chance from a seed, the same everywhere.
class Chance {
public:
    explicit Chance(std::uint64_t seed)
        : state_(seed) {}
    /// From 0 up to, but not, 1.
    double part();
    /// From 0 up to, but not, `count`.
    std::size_t below(std::size_t count);

private:
    std::uint64_t state_;
};

/// Blanks and what lies on each of them; several may be alike.
struct Packing {
    std::vector<Pattern> patterns;  ///< those of blanks that hold nothing are empty
    std::vector<int> missing;       ///< of each item
    double weight = 0;              ///< of all that is missing
};

class Packer {
public:
    /// `weights`: what it weighs that one of an item is missing; more than 0. All must outlive it.
    Packer(std::vector<Filler>& fillers, const std::vector<double>& weights, Budget& budget,
           std::uint64_t seed);

    /// What the patterns leave of the demand.
    Packing packing(std::vector<Pattern> patterns, const std::vector<int>& demand) const;
    /// Fills the blanks that hold nothing, one after another.
    void fillEmpty(Packing& packing, const std::vector<double>& values);
    /// Until nothing is missing, or so many attempts were made; leaves the best that was seen. True
    /// where nothing is missing.
    bool improve(Packing& packing, const std::vector<double>& values, int attempts);

private:
    void refill(Packing& packing, const std::vector<double>& values,
                const std::vector<std::size_t>& which);

    std::vector<Filler>& fillers_;
    const std::vector<double>& weights_;
    double meanWeight_ = 0;
    Budget& budget_;
    Chance chance_;
};

}  // namespace kerfwright::cutting
