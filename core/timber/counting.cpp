#include "core/timber/counting.h"

#include "core/measure/at.h"

#include <queue>

#include <algorithm>
#include <limits>
#include <map>
#include <utility>

namespace kerfwright::cutting {
namespace {

constexpr std::int64_t mostStates = 20'000;

/// Counts of all items as one number: digits, item by item, from 0 to what is wanted.
class Digits {
public:
    explicit Digits(const Pool& pool) {
        std::int64_t size = 1;
        for (const Item& item : pool.items) {
            steps_.push_back(static_cast<int>(size));
            most_.push_back(item.count);
            size = std::min(size * (item.count + 1), mostStates + 1);
        }
        size_ = static_cast<int>(size);
    }
    /// More than `mostStates` where there are too many.
    int size() const { return size_; }
    int items() const { return static_cast<int>(steps_.size()); }
    int step(int item) const { return steps_[at(item)]; }
    int digit(int state, int item) const {
        return state / steps_[at(item)] % (most_[at(item)] + 1);
    }
    bool isFull(int state, int item) const { return digit(state, item) == most_[at(item)]; }
    /// Both together, no more than is wanted of any.
    int sum(int a, int b) const {
        int result = 0;
        for (int item = 0; item < items(); ++item) {
            result += std::min(digit(a, item) + digit(b, item), most_[at(item)]) * step(item);
        }
        return result;
    }

private:
    std::vector<int> steps_;
    std::vector<int> most_;
    int size_ = 1;
};

/// How a state was reached: from which, by what (a way, or the counts of a section), and where.
struct Came {
    int from = -1;
    int by = -1;
    int length = -1;
    Nm place = 0;
    bool isReached = false;
};

using Reached = std::vector<Came>;

struct Next {
    Nm place;
    int state;
    Came came;
    bool operator<(const Next& other) const {
        return place != other.place ? place > other.place : state > other.state;
    }
};

class Counter {
public:
    Counter(const Pool& pool, const Digits& digits, Filler& filler, int blank, std::int64_t& looks)
        : pool_(pool)
        , digits_(digits)
        , filler_(filler)
        , blank_(pool.blanks[at(blank)])
        , index_(blank)
        , looks_(looks) {}

    /// False where there are too many looks.
    bool count() {
        reached_.assign(at(digits_.size()), {});
        inner_.assign(at(digits_.size()), {});
        std::priority_queue<Next> queue;
        queue.push({0, 0, {}});
        auto start = filler_.starts().begin();
        const auto end = filler_.starts().end();
        std::vector<int> order;
        while (!queue.empty() || start != end) {
            if (looks_ < 0) {
                return false;
            }
            if (queue.empty() || (start != end && start->first < queue.top().place)) {
                for (const int state : order) {
                    extend(queue, state, start->first, start->second);
                }
                ++start;
                continue;
            }
            const Next next = queue.top();
            queue.pop();
            Came& came = reached_[at(next.state)];
            if (came.isReached) {
                continue;  // sooner, with more room left
            }
            came = next.came;
            came.isReached = true;
            order.push_back(next.state);
            for (std::size_t length = 0; length < filler_.lengths().size(); ++length) {
                extend(queue, next.state, next.place, static_cast<int>(length));
            }
        }
        std::sort(order.begin(), order.end());
        best_ = largest(reached_, order);
        inner_.clear();
        inner_.shrink_to_fit();
        return true;
    }

    /// States beyond which nothing more of any one item could be added.
    const std::vector<int>& best() const { return best_; }

    Pattern pattern(int state) const {
        Pattern pattern{index_, {}, std::vector<int>(pool_.items.size())};
        for (; reached_[at(state)].from >= 0; state = reached_[at(state)].from) {
            const Came& came = reached_[at(state)];
            const int window = filler_.windowAt(came.place, came.length);
            const SectionCounts& inner = sections_.at(window);
            std::vector<std::pair<int, Nm>> strips;
            for (int part = came.by; part > 0; part = inner.came(part).from) {
                const Came& strip = inner.came(part);
                strips.emplace_back(strip.by, strip.place);
                ++pattern.counts[at(blank_.ways[at(strip.by)].item)];
            }
            std::reverse(strips.begin(), strips.end());
            pattern.stretches.push_back(
                filler_.stretch(came.place, filler_.lengths()[at(came.length)], strips));
        }
        std::reverse(pattern.stretches.begin(), pattern.stretches.end());
        return pattern;
    }

private:
    struct SectionCounts {
        std::vector<std::pair<int, Came>> reached;  ///< by state
        std::vector<int> best;

        const Came& came(int state) const {
            return std::lower_bound(reached.begin(), reached.end(), state,
                                    [](const auto& one, int wanted) { return one.first < wanted; })
                ->second;
        }
    };

    std::vector<int> largest(const Reached& reached, const std::vector<int>& among) const {
        std::vector<int> states;
        for (const int state : among) {
            bool isLargest = state > 0;
            for (int item = 0; isLargest && item < digits_.items(); ++item) {
                isLargest = digits_.isFull(state, item) ||
                            !reached[at(state + digits_.step(item))].isReached;
            }
            if (isLargest) {
                states.push_back(state);
            }
        }
        return states;
    }

    const SectionCounts& section(int index) {
        const auto [place, isNew] = sections_.try_emplace(index);
        if (isNew) {
            across(filler_.window(index), place->second);
        }
        return place->second;
    }

    void across(const Filler::Window& window, SectionCounts& counts) {
        std::vector<int> states;
        std::priority_queue<Next> queue;
        queue.push({0, 0, {}});
        while (!queue.empty() && looks_ >= 0) {
            const Next next = queue.top();
            queue.pop();
            Came& came = inner_[at(next.state)];
            if (came.isReached) {
                continue;
            }
            came = next.came;
            came.isReached = true;
            states.push_back(next.state);
            for (const auto& way : window.ways) {
                const Way& lies = blank_.ways[at(way.first)];
                const Nm y = filler_.lowest(way, next.place);
                --looks_;
                if (y >= 0 && !digits_.isFull(next.state, lies.item)) {
                    queue.push({y + lies.width + pool_.kerf,
                                next.state + digits_.step(lies.item),
                                {next.state, way.first, -1, y, false}});
                }
            }
        }
        std::sort(states.begin(), states.end());
        counts.best = largest(inner_, states);
        for (const int state : states) {
            counts.reached.emplace_back(state, std::exchange(inner_[at(state)], {}));
        }
    }

    void extend(std::priority_queue<Next>& queue, int state, Nm x, int length) {
        const Nm end = x + filler_.lengths()[at(length)];
        if (end > blank_.length) {
            return;
        }
        for (const int more : section(filler_.windowAt(x, length)).best) {
            --looks_;
            const int sum = digits_.sum(state, more);
            if (!reached_[at(sum)].isReached) {
                queue.push({end + pool_.kerf, sum, {state, more, length, x, false}});
            }
        }
    }

    const Pool& pool_;
    const Digits& digits_;
    Filler& filler_;
    const Blank& blank_;
    int index_;
    std::int64_t& looks_;
    Reached reached_;
    Reached inner_;  ///< while a section is counted
    std::vector<int> best_;
    std::map<int, SectionCounts> sections_;
};

/// After some planks: the least cost of each state, and how it was reached.
struct Layer {
    int blank = 0;
    std::vector<std::pair<int, int>> came;  ///< the state before, and what the plank gave; -1: none
};

}  // namespace

std::optional<std::vector<Pattern>> byCounting(const Pool& pool, std::vector<Filler>& fillers,
                                               const std::vector<Volume>& volumes,
                                               std::int64_t most, Budget& budget) {
    const Digits digits(pool);
    if (digits.size() > mostStates) {
        return std::nullopt;
    }
    constexpr std::int64_t never = std::numeric_limits<std::int64_t>::max();
    std::vector<Counter> counters;
    std::vector<std::int64_t> least(at(digits.size()), never);
    least[0] = 0;
    std::vector<Layer> layers;
    counters.reserve(pool.blanks.size());
    for (int blank = 0; blank < static_cast<int>(pool.blanks.size()); ++blank) {
        Counter& counter = counters.emplace_back(pool, digits, fillers[at(blank)], blank, most);
        budget.spend();
        if (!counter.count()) {
            return std::nullopt;
        }
        const std::int64_t cost = pool.blanks[at(blank)].cost;
        for (int time = 0; time < pool.blanks[at(blank)].count(); ++time) {
            most -= static_cast<std::int64_t>(digits.size()) *
                    static_cast<std::int64_t>(counter.best().size());
            if (most < 0 || budget.isSpent()) {
                return std::nullopt;
            }
            Layer layer{blank, std::vector<std::pair<int, int>>(at(digits.size()), {-1, -1})};
            std::vector<std::int64_t> next = least;
            for (int state = 0; state < digits.size(); ++state) {
                if (least[at(state)] == never) {
                    continue;
                }
                for (const int more : counter.best()) {
                    const int sum = digits.sum(state, more);
                    if (least[at(state)] + cost < next[at(sum)]) {
                        next[at(sum)] = least[at(state)] + cost;
                        layer.came[at(sum)] = {state, more};
                    }
                }
            }
            least = std::move(next);
            layers.push_back(std::move(layer));
        }
    }
    int best = 0;
    Volume laid;
    for (int state = 0; state < digits.size(); ++state) {
        Volume volume;
        for (int item = 0; item < digits.items(); ++item) {
            volume += volumes[at(item)] * digits.digit(state, item);
        }
        if (least[at(state)] != never &&
            (volume > laid || (volume == laid && least[at(state)] < least[at(best)]))) {
            best = state;
            laid = volume;
        }
    }
    std::vector<Pattern> patterns;
    for (std::size_t layer = layers.size(); layer-- > 0;) {
        const auto& [before, more] = layers[layer].came[at(best)];
        if (before >= 0) {
            patterns.push_back(counters[at(layers[layer].blank)].pattern(more));
            best = before;
        }
    }
    return patterns;
}

}  // namespace kerfwright::cutting
