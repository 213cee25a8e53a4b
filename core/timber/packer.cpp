#include "core/timber/packer.h"

#include "core/measure/at.h"

#include <algorithm>
#include <numeric>

namespace kerfwright::cutting {
namespace {

constexpr double nothing = 1e-9;

}  // namespace

double Chance::part() {
    // The multiplier and increment of Knuth's MMIX generator.
    state_ = state_ * 6364136223846793005ULL + 1442695040888963407ULL;
    return static_cast<double>(state_ >> 11) / 9007199254740992.0;
}

std::size_t Chance::below(std::size_t count) {
    return std::min(static_cast<std::size_t>(part() * static_cast<double>(count)), count - 1);
}

Packer::Packer(std::vector<Filler>& fillers, const std::vector<double>& weights, Budget& budget,
               std::uint64_t seed)
    : fillers_(fillers)
    , weights_(weights)
    , meanWeight_(std::accumulate(weights.begin(), weights.end(), 0.0) /
                  static_cast<double>(weights.size()))
    , budget_(budget)
    , chance_(seed) {}

Packing Packer::packing(std::vector<Pattern> patterns, const std::vector<int>& demand) const {
    Packing result{std::move(patterns), demand, 0};
    for (const Pattern& pattern : result.patterns) {
        for (std::size_t item = 0; item < pattern.counts.size(); ++item) {
            result.missing[item] -= pattern.counts[item];
        }
    }
    for (std::size_t item = 0; item < demand.size(); ++item) {
        result.weight += std::max(result.missing[item], 0) * weights_[item];
    }
    return result;
}

void Packer::refill(Packing& packing, const std::vector<double>& values,
                    const std::vector<std::size_t>& which) {
    for (const std::size_t plank : which) {
        Pattern& pattern = packing.patterns[plank];
        for (std::size_t item = 0; item < pattern.counts.size(); ++item) {
            packing.missing[item] += pattern.counts[item];
        }
    }
    for (const std::size_t plank : which) {
        Pattern& pattern = packing.patterns[plank];
        const int blank = pattern.blank;
        budget_.spend();
        fillers_[at(blank)].fillWithin(values, packing.missing, pattern);
        for (std::size_t item = 0; item < pattern.counts.size(); ++item) {
            packing.missing[item] -= pattern.counts[item];
        }
    }
    packing.weight = 0;
    for (std::size_t item = 0; item < weights_.size(); ++item) {
        packing.weight += std::max(packing.missing[item], 0) * weights_[item];
    }
}

void Packer::fillEmpty(Packing& packing, const std::vector<double>& values) {
    for (std::size_t plank = 0; plank < packing.patterns.size(); ++plank) {
        if (packing.patterns[plank].isEmpty()) {
            refill(packing, values, {plank});
        }
    }
}

bool Packer::improve(Packing& packing, const std::vector<double>& values, int attempts) {
    Packing now = packing;
    const std::size_t planks = now.patterns.size();
    std::vector<double> wavering(values.size());
    for (int attempt = 0; attempt < attempts && now.weight > nothing && !budget_.isSpent();
         ++attempt) {
        std::vector<std::size_t> which = {chance_.below(planks)};
        const std::size_t most = chance_.part() < 0.3 ? 3 : 2;
        while (which.size() < std::min(most, planks)) {
            const std::size_t next = chance_.below(planks);
            if (std::find(which.begin(), which.end(), next) == which.end()) {
                which.push_back(next);
            }
        }
        // Mostly little, since the values are good, and now and then a lot.
        const double wide = chance_.part();
        const double width = 0.8 * wide * wide;
        for (std::size_t item = 0; item < values.size(); ++item) {
            wavering[item] = values[item] * (1 - width / 2 + width * chance_.part());
        }
        Packing next = now;
        refill(next, wavering, which);
        // A little worse is taken now and then, and less and less: most ways on lead over such.
        const double still = 1 - static_cast<double>(attempt) / attempts;
        if (next.weight <= now.weight + 0.3 * still * meanWeight_ * chance_.part()) {
            now = std::move(next);
            if (now.weight < packing.weight - nothing) {
                packing = now;
            }
        }
    }
    return packing.weight <= nothing;
}

}  // namespace kerfwright::cutting
