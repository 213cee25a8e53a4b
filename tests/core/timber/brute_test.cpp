// The search against every layout there is, on planks of a few millimetres.
#include "core/timber/referee.h"
#include "tests/core/timber/instances.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <map>
#include <optional>
#include <set>
#include <string>
#include <vector>

namespace kerfwright::timbertest {
namespace {

constexpr Length mm(std::int64_t count) {
    return Length::mm(count);
}

using Counts = std::vector<int>;

int whole(Length length) {
    return static_cast<int>(length.nm() / 1'000'000);
}

/// What can be sawn from one plank: at every whole millimetre a section may begin, in it at every
/// whole millimetre a strip.
class EveryWay {
public:
    EveryWay(const Instance& instance, const Plank& plank)
        : instance_(instance)
        , plank_(plank)
        , counts_(instance.demand.strips.size(), 0) {
        along(0);
    }
    const std::set<Counts>& found() const { return found_; }

private:
    const WantedStrips& strips(std::size_t i) const { return instance_.demand.strips[i]; }

    void along(int x) {
        found_.insert(counts_);
        const int kerf = whole(instance_.rules.kerf);
        for (int from = x; from < whole(plank_.length); ++from) {
            std::set<int> lengths;
            for (const WantedStrips& one : instance_.demand.strips) {
                lengths.insert(whole(one.length));
            }
            for (const int length : lengths) {
                if (from + length <= whole(plank_.length)) {
                    for (const Counts& section : sections(from, length)) {
                        const Counts before = counts_;
                        bool within = true;
                        for (std::size_t i = 0; i < counts_.size(); ++i) {
                            counts_[i] += section[i];
                            within = within && counts_[i] <= strips(i).count;
                        }
                        if (within) {
                            along(from + length + kerf);
                        }
                        counts_ = before;
                    }
                }
            }
        }
    }

    const std::set<Counts>& sections(int x, int length) {
        auto [place, isNew] = sections_.try_emplace({x, length});
        if (isNew) {
            Counts counts(counts_.size(), 0);
            across(x, length, 0, counts, place->second);
            place->second.erase(Counts(counts_.size(), 0));
        }
        return place->second;
    }

    void across(int x, int length, int y, Counts& counts, std::set<Counts>& into) {
        into.insert(counts);
        for (std::size_t i = 0; i < counts.size(); ++i) {
            for (const bool onEdge : {false, true}) {
                if (counts[i] == strips(i).count ||
                    !suits(strips(i), plank_, onEdge, instance_.rules)) {
                    continue;
                }
                const int width = whole(acrossPlank(strips(i), onEdge));
                for (int from = y; from + width <= whole(plank_.width); ++from) {
                    if (clear(x, length, from, width, whole(strips(i).length))) {
                        ++counts[i];
                        across(x, length, from + width + whole(instance_.rules.kerf), counts, into);
                        --counts[i];
                    }
                }
            }
        }
    }

    /// Somewhere in the section.
    bool clear(int x, int length, int y, int width, int own) const {
        for (int from = x; from + own <= x + length; ++from) {
            if (std::none_of(
                    plank_.defects.begin(), plank_.defects.end(), [&](const Defect& defect) {
                        return whole(defect.x) < from + own &&
                               from < whole(defect.x + defect.length) &&
                               whole(defect.y) < y + width && y < whole(defect.y + defect.width);
                    })) {
                return true;
            }
        }
        return false;
    }

    const Instance& instance_;
    const Plank& plank_;
    Counts counts_;
    std::set<Counts> found_;
    std::map<std::pair<int, int>, std::set<Counts>> sections_;
};

struct Answer {
    Volume missing;
    std::int64_t cost = 0;
};

Answer bruteForce(const Instance& instance) {
    std::map<Counts, std::int64_t> reached = {{Counts(instance.demand.strips.size(), 0), 0}};
    for (const Plank& plank : instance.rack.planks) {
        const EveryWay ways(instance, plank);
        std::map<Counts, std::int64_t> next = reached;
        for (const auto& [counts, cost] : reached) {
            for (const Counts& more : ways.found()) {
                Counts sum = counts;
                for (std::size_t i = 0; i < sum.size(); ++i) {
                    sum[i] = std::min(sum[i] + more[i], instance.demand.strips[i].count);
                }
                const auto [place, isNew] = next.try_emplace(sum, cost + plank.price);
                place->second = std::min(place->second, cost + plank.price);
            }
        }
        reached = std::move(next);
    }
    std::optional<Answer> best;
    for (const auto& [counts, cost] : reached) {
        Answer answer{Volume(), cost};
        for (std::size_t i = 0; i < counts.size(); ++i) {
            const WantedStrips& strips = instance.demand.strips[i];
            answer.missing +=
                volume(strips.thickness, strips.width, strips.length) * (strips.count - counts[i]);
        }
        if (!best || answer.missing < best->missing ||
            (answer.missing == best->missing && answer.cost < best->cost)) {
            best = answer;
        }
    }
    return best.value_or(Answer{});
}

/// Up to three planks of at most 13 x 7, up to two defects each, two or three kinds of strip.
Instance tiny(std::uint64_t seed) {
    Instance instance;
    std::uint64_t state = seed * 7919;
    const auto roll = [&state](std::int64_t least, std::int64_t greatest) {
        // Multiplier and increment of Knuth's MMIX generator.
        state = state * 6364136223846793005ULL + 1442695040888963407ULL;
        return least + static_cast<std::int64_t>((state >> 33) %
                                                 static_cast<std::uint64_t>(greatest - least + 1));
    };
    instance.rules.kerf = mm(roll(0, 1));
    const std::int64_t planks = roll(1, 3);
    for (std::int64_t i = 0; i < planks; ++i) {
        Plank plank{"P" + std::to_string(i), "oak", mm(roll(3, 4)), mm(roll(4, 7)),
                    mm(roll(8, 13))};
        for (std::int64_t defect = roll(0, 2); defect > 0; --defect) {
            const std::int64_t x = roll(0, whole(plank.length) - 2);
            const std::int64_t y = roll(0, whole(plank.width) - 1);
            plank.defects.push_back({mm(x), mm(y), mm(roll(1, 2)), mm(1)});
        }
        plank.price = roll(5, 20);
        instance.rack.planks.push_back(plank);
    }
    const std::int64_t kinds = roll(2, 3);
    for (std::int64_t i = 0; i < kinds; ++i) {
        instance.demand.strips.push_back({"S" + std::to_string(i), "oak", mm(roll(2, 4)),
                                          mm(roll(2, 4)), mm(roll(3, 6)),
                                          static_cast<int>(roll(1, 3)), roll(0, 1) == 0});
    }
    instance.rules.budget = 3'000;
    return instance;
}

#ifdef KERFWRIGHT_SANITIZED
constexpr std::uint64_t tries = 12;
#else
constexpr std::uint64_t tries = 400;
#endif

TEST(BruteForce, FindsNothingBetterThanTheSearch) {
    int complete = 0;
    int proven = 0;
    for (std::uint64_t seed = 1; seed <= tries; ++seed) {
        const Instance instance = tiny(seed);
        const Layout result = layout(instance.rack, instance.demand, instance.rules);
        const std::vector<Fault> faults =
            layoutFaults(result, instance.rack, instance.demand, instance.rules);
        EXPECT_TRUE(faults.empty()) << seed << ": " << faults.front().text();
        const Answer answer = bruteForce(instance);
        EXPECT_TRUE(result.missingVolume <= answer.missing) << seed;
        EXPECT_TRUE(result.missingVolume >= answer.missing) << seed;
        EXPECT_TRUE(result.leastMissingVolume <= answer.missing) << seed;
        if (result.isComplete()) {
            ++complete;
            EXPECT_EQ(result.cost, answer.cost) << seed;
            EXPECT_LE(result.bound, answer.cost) << seed;
        }
        proven += result.proven ? 1 : 0;
    }
    // So that both ends are looked at, and the proof is worth its name.
    EXPECT_GT(complete, static_cast<int>(tries / 5));
    EXPECT_LT(complete, static_cast<int>(tries));
    EXPECT_EQ(proven, static_cast<int>(tries));
}

}  // namespace
}  // namespace kerfwright::timbertest
