// The search for the cheapest layout of one wood. Private to core/timber.
#pragma once

#include "core/timber/generation.h"
#include "core/timber/packer.h"

#include <cstdint>
#include <functional>
#include <vector>

namespace kerfwright::cutting {

/// With no more planks than that all sets of them are looked at.
inline constexpr std::size_t fewPlanks = 12;
/// To refill planks in one go.
inline constexpr int mostAttempts = 1 << 20;

class OneWood {
public:
    /// All must outlive it. `improved` is called whenever the best changed.
    OneWood(const Pool& pool, Budget& budget, std::function<void()> improved);

    void search();

    // What was found so far.
    std::vector<Pattern> best;  ///< one for each plank that is cut; may hold more than wanted
    std::vector<int> missing;   ///< of each item
    std::int64_t cost = 0;      ///< of the planks
    std::int64_t bound = 0;     ///< where nothing is missing, no layout costs less
    Volume missingVolume;
    Volume leastMissing;  ///< no layout leaves less
    bool proven = false;

private:
    bool isComplete() const { return missingVolume == Volume(); }
    std::int64_t costOf(const std::vector<Pattern>& patterns) const;
    /// True where it is better than the best.
    bool offer(std::vector<Pattern> patterns);
    void raiseBound(std::int64_t bound);
    void boundCost();
    void giveAllWorth();
    bool byAllCounts();
    void lessMissing();
    void cheaper();
    void bySets();
    void byCapacity();
    void alternate(int times);
    void byRounding();
    void byWhole(int nodes);
    bool canHold(const Task& task);
    bool pack(const std::vector<int>& blanks, int attempts);
    std::vector<int> bestSet(std::int64_t most, double waver);

    const Pool& pool_;
    Budget& budget_;
    std::function<void()> improved_;
    std::vector<Filler> fillers_;
    double costUnit_ = 1;          ///< normal cost of 1 in the aim
    detail::Wide volumeUnit_ = 1;  ///< nm3 of one unit of weight
    std::vector<std::int64_t> weights_;
    std::vector<double> scaledWeights_;
    Aim aim_;
    Aim missingAim_;
    Store store_;
    Generation cheapest_;
    Generation fewestMissing_;
    std::vector<double> values_;    ///< of the items, by the linear program, but never nothing
    std::vector<double> capacity_;  ///< of each blank, at the program's values
    Packer packer_;
    Chance chance_;
    bool manyAlike_ = false;
    std::size_t chosenFrom_ = 0;  ///< patterns in the store at the last choice in whole numbers
};

}  // namespace kerfwright::cutting
