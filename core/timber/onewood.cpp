#include "core/timber/onewood.h"

#include "core/measure/at.h"
#include "core/timber/counting.h"
#include "core/timber/greedy.h"
#include "core/timber/sums.h"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <utility>

namespace kerfwright::cutting {
namespace {

/// A power of two, so that scaling by it is exact.
double unitFor(double mean) {
    return std::ldexp(1.0, std::ilogb(std::max(mean, 1.0)));
}

constexpr std::uint64_t seed = 20'26;

detail::Wide commonDivisor(detail::Wide a, detail::Wide b) {
    while (b != 0) {
        a = std::exchange(b, a % b);
    }
    return a;
}

detail::Wide unitOf(const std::vector<Item>& items) {
    detail::Wide divisor = 0;
    detail::Wide greatest = 1;
    for (const Item& item : items) {
        divisor = commonDivisor(divisor, item.volume.cubicNm());
        greatest = std::max(greatest, item.volume.cubicNm());
    }
    // Weights of up to 30 bits leave room for exact sums.
    return std::max<detail::Wide>({divisor, greatest >> 30, 1});
}

std::vector<Filler> fillersOf(const Pool& pool) {
    std::vector<Filler> fillers;
    fillers.reserve(pool.blanks.size());
    for (int blank = 0; blank < static_cast<int>(pool.blanks.size()); ++blank) {
        fillers.emplace_back(pool, blank);
    }
    return fillers;
}

double costUnitOf(const Pool& pool) {
    double sum = 0;
    for (const Blank& blank : pool.blanks) {
        sum += static_cast<double>(blank.cost);
    }
    return unitFor(sum / static_cast<double>(pool.blanks.size()));
}

std::vector<std::int64_t> weightsOf(const Pool& pool, detail::Wide unit) {
    std::vector<std::int64_t> weights;
    weights.reserve(pool.items.size());
    for (const Item& item : pool.items) {
        weights.push_back(static_cast<std::int64_t>(item.volume.cubicNm() / unit));
    }
    return weights;
}

std::vector<double> scaled(const std::vector<std::int64_t>& weights) {
    const double sum =
        static_cast<double>(std::accumulate(weights.begin(), weights.end(), std::int64_t{0}));
    const double unit = unitFor(sum / static_cast<double>(weights.size()));
    std::vector<double> result;
    for (const std::int64_t weight : weights) {
        result.push_back(static_cast<double>(weight) / unit);
    }
    return result;
}

/// To pay for what is missing with more than all planks cost.
Aim costAim(const Pool& pool, double unit) {
    Aim aim;
    double all = 0;
    for (const Blank& blank : pool.blanks) {
        aim.cost.push_back(static_cast<double>(blank.cost) / unit);
        all += aim.cost.back() * blank.count();
    }
    aim.penalty.assign(pool.items.size(), all);
    return aim;
}

Aim missingAimOf(const Pool& pool, const std::vector<double>& weights) {
    return {std::vector<double>(pool.blanks.size(), 0), weights};
}

}  // namespace

OneWood::OneWood(const Pool& pool, Budget& budget, std::function<void()> improved)
    : pool_(pool)
    , budget_(budget)
    , improved_(std::move(improved))
    , fillers_(fillersOf(pool))
    , costUnit_(costUnitOf(pool))
    , volumeUnit_(unitOf(pool.items))
    , weights_(weightsOf(pool, volumeUnit_))
    , scaledWeights_(scaled(weights_))
    , aim_(costAim(pool, costUnit_))
    , missingAim_(missingAimOf(pool, scaledWeights_))
    , cheapest_(pool, aim_, fillers_, store_, budget)
    , fewestMissing_(pool, missingAim_, fillers_, store_, budget)
    , packer_(fillers_, scaledWeights_, budget, seed)
    , chance_(seed) {
    missing = wholeTask(pool).demand;
    for (const Item& item : pool.items) {
        missingVolume += item.volume * item.count;
    }
}

std::int64_t OneWood::costOf(const std::vector<Pattern>& patterns) const {
    return std::accumulate(patterns.begin(), patterns.end(), std::int64_t{0},
                           [this](std::int64_t sum, const Pattern& pattern) {
                               return sum + pool_.blanks[at(pattern.blank)].cost;
                           });
}

bool OneWood::offer(std::vector<Pattern> patterns) {
    std::erase_if(patterns, [](const Pattern& pattern) { return pattern.isEmpty(); });
    const Packing packing = packer_.packing(patterns, wholeTask(pool_).demand);
    Volume left;
    for (std::size_t item = 0; item < pool_.items.size(); ++item) {
        left += pool_.items[item].volume * std::max(packing.missing[item], 0);
    }
    const std::int64_t own = costOf(patterns);
    for (const Pattern& pattern : patterns) {
        store_.add(pattern);
    }
    if (left > missingVolume || (left == missingVolume && own >= cost && !best.empty())) {
        return false;
    }
    best = std::move(patterns);
    cost = own;
    missingVolume = left;
    for (std::size_t item = 0; item < missing.size(); ++item) {
        missing[item] = std::max(packing.missing[item], 0);
    }
    proven = isComplete() ? cost <= bound : missingVolume <= leastMissing;
    improved_();
    return true;
}

void OneWood::raiseBound(std::int64_t reached) {
    bound = std::max(bound, reached);
    proven = proven || (isComplete() && cost <= bound);
}

void OneWood::boundCost() {
    cheapest_.solve(wholeTask(pool_), Generation::Until::Best, false);
    values_ = cheapest_.itemValues;
    for (Filler& filler : fillers_) {
        capacity_.push_back(filler.fill(values_));
    }
    giveAllWorth();
    const auto least = static_cast<std::int64_t>(std::ceil(cheapest_.bound * costUnit_ - 1e-6));
    std::vector<std::pair<std::int64_t, int>> parts;
    for (const Blank& blank : pool_.blanks) {
        parts.emplace_back(blank.cost, blank.count());
    }
    raiseBound(nextSum(parts, least));
}

/// What costs the linear program nothing has to be laid all the same.
void OneWood::giveAllWorth() {
    double value = 0;
    double weight = 0;
    for (std::size_t item = 0; item < values_.size(); ++item) {
        value += values_[item] * pool_.items[item].count;
        weight += scaledWeights_[item] * pool_.items[item].count;
    }
    for (std::size_t item = 0; item < values_.size(); ++item) {
        values_[item] = std::max(values_[item], 0.4 * scaledWeights_[item] * value / weight);
    }
}

void OneWood::search() {
    // A layout comes first, so that there is one whenever the search is stopped.
    offer(Greedy(pool_, aim_, fillers_, store_, budget_, scaledWeights_, seed).round());
    boundCost();
    for (const Blank& blank : pool_.blanks) {
        manyAlike_ = manyAlike_ || blank.count() > 3;
    }
    if (manyAlike_) {
        for (int time = 0; time < 10 && !proven && !budget_.isSpent(); ++time) {
            byRounding();
        }
    }
    Greedy greedy(pool_, aim_, fillers_, store_, budget_, values_, seed);
    for (int round = 0; round < 4 && !proven && !budget_.isSpent(); ++round) {
        offer(greedy.round());
    }
    if (!proven && !budget_.isSpent() && byAllCounts()) {
        return;
    }
    if (!isComplete() && !budget_.isSpent()) {
        lessMissing();
    }
    if (isComplete() && !proven && !budget_.isSpent()) {
        cheaper();
    }
}

/// True where the job was small enough to be solved exactly.
bool OneWood::byAllCounts() {
    constexpr std::int64_t looks = 4'000'000;
    std::vector<Volume> volumes;
    for (const Item& item : pool_.items) {
        volumes.push_back(item.volume);
    }
    std::optional<std::vector<Pattern>> exact =
        byCounting(pool_, fillers_, volumes, looks, budget_);
    if (!exact) {
        return false;
    }
    offer(std::move(*exact));
    leastMissing = missingVolume;
    bound = std::max(bound, cost);
    proven = true;
    improved_();
    return true;
}

void OneWood::lessMissing() {
    const Task all = wholeTask(pool_);
    fewestMissing_.solve(all, Generation::Until::Best, false);
    const double unit = static_cast<double>(weights_.front()) / scaledWeights_.front();
    const auto least = static_cast<std::int64_t>(std::ceil(fewestMissing_.bound * unit - 1e-6));
    std::vector<std::pair<std::int64_t, int>> parts;
    for (std::size_t item = 0; item < weights_.size(); ++item) {
        parts.emplace_back(weights_[item], pool_.items[item].count);
    }
    leastMissing = Volume(volumeUnit_ * nextSum(parts, least));
    proven = missingVolume <= leastMissing;
    improved_();
    const std::vector<double> values = fewestMissing_.itemValues;
    // Where the program gives an item no value, it would never be laid.
    std::vector<double> worth = scaledWeights_;
    for (std::size_t item = 0; item < worth.size(); ++item) {
        worth[item] = std::max(worth[item], values[item]);
    }
    Packing packing = packer_.packing(best, all.demand);
    std::vector<int> free = all.blanks;
    for (const Pattern& pattern : best) {
        --free[at(pattern.blank)];
    }
    for (std::size_t blank = 0; blank < free.size(); ++blank) {
        const Pattern empty{static_cast<int>(blank), {}, std::vector<int>(pool_.items.size())};
        packing.patterns.insert(packing.patterns.end(), at(free[blank]), empty);
    }
    packer_.fillEmpty(packing, worth);
    offer(packing.patterns);
    for (int attempts = 100; !proven && !isComplete() && !budget_.isSpent();
         attempts = std::min(2 * attempts, mostAttempts)) {
        packer_.improve(packing, worth, attempts);
        offer(packing.patterns);
        if (!proven && !isComplete() && store_.patterns().size() > chosenFrom_ + chosenFrom_ / 2) {
            byWhole(200);
        }
    }
}

/// The linear program's whole parts, then those of what is left, and so on.
void OneWood::byRounding() {
    Task task = wholeTask(pool_);
    std::vector<Pattern> chosen;
    while (!task.isDone() && !budget_.isSpent() && costOf(chosen) < cost) {
        cheapest_.solve(task, Generation::Until::Best, !chosen.empty());
        std::vector<std::pair<std::size_t, double>> taken = cheapest_.taken;
        for (auto& [place, often] : taken) {
            often += 0.5 * (1 - std::ceil(often) + often) * chance_.part();
        }
        std::stable_sort(taken.begin(), taken.end(),
                         [](const auto& a, const auto& b) { return a.second > b.second; });
        const std::size_t before = chosen.size();
        for (const auto& [place, often] : taken) {
            const Pattern& pattern = store_.patterns()[place];
            int times = std::max(static_cast<int>(often + 1e-6), chosen.size() == before ? 1 : 0);
            times = std::min(times, task.blanks[at(pattern.blank)]);
            for (std::size_t item = 0; item < pattern.counts.size(); ++item) {
                if (pattern.counts[item] > 0) {
                    times = std::min(times, task.demand[item] / pattern.counts[item]);
                }
            }
            for (std::size_t item = 0; item < pattern.counts.size(); ++item) {
                task.demand[item] -= times * pattern.counts[item];
            }
            task.blanks[at(pattern.blank)] -= times;
            chosen.insert(chosen.end(), at(times), pattern);
        }
        if (chosen.size() == before) {
            return;  // every pattern holds more than is left
        }
    }
    if (task.isDone()) {
        offer(std::move(chosen));
    }
}

void OneWood::byWhole(int nodes) {
    const std::vector<Pattern> patterns = store_.patterns();
    chosenFrom_ = patterns.size();
    const Aim& aim = isComplete() ? aim_ : missingAim_;
    double cutoff = 0;
    if (isComplete()) {
        cutoff = (static_cast<double>(cost) - 0.5) / costUnit_;
    } else {
        for (std::size_t item = 0; item < missing.size(); ++item) {
            cutoff += missing[item] * scaledWeights_[item];
        }
    }
    const std::vector<int> times =
        chooseWhole(pool_, aim, patterns, cutoff, nodes, [this] { return budget_.ask(); });
    budget_.spend(nodes);
    std::vector<Pattern> chosen;
    for (std::size_t i = 0; i < times.size(); ++i) {
        chosen.insert(chosen.end(), at(times[i]), patterns[i]);
    }
    if (!chosen.empty()) {
        offer(std::move(chosen));
    }
}

void OneWood::cheaper() {
    int planks = 0;
    for (const Blank& blank : pool_.blanks) {
        planks += blank.count();
    }
    if (manyAlike_) {
        alternate(30);
    }
    if (planks <= static_cast<int>(fewPlanks)) {
        bySets();
    } else {
        byCapacity();
    }
}

/// With many alike planks the linear program is all but whole.
void OneWood::alternate(int times) {
    for (int time = 0; time < times && !proven && !budget_.isSpent(); ++time) {
        byRounding();
    }
    if (!proven && !budget_.isSpent()) {
        byWhole(1000);
    }
}

}  // namespace kerfwright::cutting
