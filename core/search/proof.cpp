#include "core/search/proof.h"

#include "core/measure/at.h"
#include "core/search/polynomial.h"

#include <algorithm>

namespace kerfwright::kinds {
namespace {

constexpr std::int64_t stepsBetweenAsking = 4096;

bool contains(const std::vector<int>& larger, const std::vector<int>& smaller) {
    return std::includes(larger.begin(), larger.end(), smaller.begin(), smaller.end());
}

}  // namespace

struct Proof::Options {
    std::vector<KindSet> sets;
    KindSet chosen;
    std::size_t cap = 0;
    bool overflow = false;
};

/// Long ways take longer: what they cost is the square of their lines.
void Proof::stepTaken(int lines) {
    const std::int64_t before = steps_ / stepsBetweenAsking;
    steps_ += 1 + lines * lines / 256;
    if (steps_ / stepsBetweenAsking != before && !(*goOn_)(steps_)) {
        stop_ = true;
    }
}

void Proof::add(int kind, State state) {
    state_[at(kind)] = state;
    made_.push_back(kind);
}

std::uint64_t Proof::fingerprint() const {
    std::uint64_t sum = 0;
    for (const int kind : made_) {
        sum += scattered(static_cast<std::uint64_t>(kind) * 4 + state_[at(kind)]);
    }
    return sum;
}

bool Proof::partsFreely(int kind) {
    return ways_.parts(kind, [this](int part) { return have(part); });
}

int Proof::newAtLeast(int kind) {
    int below = 0;
    const std::int64_t area = ways_.area(kind);
    for (const int other : made_) {
        below += other != kind && ways_.area(other) < area ? 1 : 0;
    }
    return ways_.least(kind) - 1 - below;
}

void Proof::extend(Options& options, int kind, int direction, std::vector<std::uint8_t>& reached) {
    const Ways::Direction way = ways_.of(kind)[direction];
    stepTaken(way.count);
    if (stop_ || options.overflow) {
        return;
    }
    for (int to = 1; to < way.count; ++to) {
        for (int from = 0; from < to && reached[at(to)] == 0; ++from) {
            const int part = way.part(from, to);
            reached[at(to)] = reached[at(from)] != 0 && part != kind && have(part) ? 1 : 0;
        }
    }
    if (reached[at(way.count - 1)] != 0) {
        KindSet set = options.chosen;
        std::sort(set.begin(), set.end());
        options.sets.push_back(std::move(set));
        options.overflow = options.sets.size() > options.cap;
        return;
    }
    const int room = limit_ - static_cast<int>(made_.size());
    if (room < 1) {
        return;
    }
    KindSet candidates;
    for (int from = 0; from < way.count; ++from) {
        for (int to = from + 1; reached[at(from)] != 0 && to < way.count; ++to) {
            const int part = way.part(from, to);
            if (reached[at(to)] == 0 && part > 0 && part != kind && barred_[at(part)] == 0 &&
                newAtLeast(part) < room) {
                candidates.push_back(part);
                barred_[at(part)] = 1;
            }
        }
    }
    for (const int part : candidates) {
        barred_[at(part)] = 0;
    }
    for (const int part : candidates) {
        std::vector<std::uint8_t> further = reached;
        add(part, pending);
        options.chosen.push_back(part);
        extend(options, kind, direction, further);
        options.chosen.pop_back();
        made_.pop_back();
        state_[at(part)] = absent;
        barred_[at(part)] = 1;  // sets with it have been looked at
    }
    for (const int part : candidates) {
        barred_[at(part)] = 0;
    }
}

Proof::Options Proof::optionsOf(int kind, std::size_t cap) {
    Options options;
    options.cap = cap;
    for (int direction = 0; direction < 2; ++direction) {
        std::vector<std::uint8_t> reached(at(ways_.of(kind)[direction].count), 0);
        reached[0] = 1;
        extend(options, kind, direction, reached);
    }
    if (options.overflow || stop_) {
        return options;
    }
    // A set that holds another one can do nothing that the other one cannot.
    std::vector<KindSet>& sets = options.sets;
    const auto ease = [this](const KindSet& set) {
        int sum = 0;
        for (const int each : set) {
            sum += ways_.least(each);
        }
        return std::pair(static_cast<int>(set.size()), sum);
    };
    std::sort(sets.begin(), sets.end(), [&](const KindSet& a, const KindSet& b) {
        const auto easeA = ease(a);
        const auto easeB = ease(b);
        return easeA != easeB ? easeA < easeB : a < b;
    });
    std::vector<KindSet> smallest;
    for (KindSet& set : sets) {
        if (std::none_of(smallest.begin(), smallest.end(),
                         [&](const KindSet& smaller) { return contains(set, smaller); })) {
            smallest.push_back(std::move(set));
        }
    }
    sets = std::move(smallest);
    return options;
}

bool Proof::search() {
    if (stop_ || enough_) {
        return false;
    }
    // What can be parted with what is wanted anyway is parted so.
    KindSet closed;
    KindSet open;
    int needed = 0;
    for (const int kind : made_) {
        if (state_[at(kind)] != pending) {
            continue;
        }
        if (partsFreely(kind)) {
            closed.push_back(kind);
        } else {
            open.push_back(kind);
            needed = std::max({needed, 1, newAtLeast(kind)});
        }
    }
    const auto reopen = [&] {
        for (const int kind : closed) {
            state_[at(kind)] = pending;
        }
    };
    for (const int kind : closed) {
        state_[at(kind)] = done;
    }
    if (open.empty()) {
        anyFound_ = true;
        enough_ = !(*found_)(made_);
        reopen();
        return true;
    }
    if (static_cast<int>(made_.size()) + needed > limit_ || !seen_.insert(fingerprint()).second) {
        reopen();
        return false;
    }
    // The kind with the fewest ways is parted first.
    constexpr std::size_t mostOptions = 1u << 20;
    Options best;
    int chosen = -1;
    std::sort(open.begin(), open.end(), [this](int a, int b) {
        const Ways::Both waysA = ways_.of(a);
        const Ways::Both waysB = ways_.of(b);
        const int linesA = waysA.across.count + waysA.down.count;
        const int linesB = waysB.across.count + waysB.down.count;
        return linesA != linesB ? linesA < linesB : a < b;
    });
    for (const int kind : open) {
        Options options = optionsOf(kind, chosen < 0 ? mostOptions : best.sets.size());
        if (stop_) {
            reopen();
            return false;
        }
        if (chosen < 0 || (!options.overflow && options.sets.size() < best.sets.size())) {
            best = std::move(options);
            chosen = kind;
        }
        if (best.sets.empty()) {
            break;
        }
    }
    bool any = false;
    if (chosen >= 0 && best.overflow) {
        stop_ = true;
    } else {
        state_[at(chosen)] = done;
        for (const KindSet& set : best.sets) {
            for (const int part : set) {
                add(part, ways_.kinds().isWord(part) ? done : pending);
            }
            any = search() || any;
            for (const int part : set) {
                made_.pop_back();
                state_[at(part)] = absent;
            }
            if (stop_ || enough_) {
                break;
            }
        }
        state_[at(chosen)] = pending;
    }
    reopen();
    return any;
}

Proof::Answer Proof::attempt(int glueUps, const std::function<bool(const KindSet&)>& found,
                             const std::function<bool(std::int64_t)>& goOn) {
    found_ = &found;
    goOn_ = &goOn;
    limit_ = glueUps;
    anyFound_ = stop_ = enough_ = false;
    seen_.clear();
    barred_.assign(state_.size(), 0);
    const int whole = ways_.kinds().whole();
    if (whole == freeKind) {
        found({});
        return Answer::Found;
    }
    if (whole == none || glueUps < ways_.least(whole)) {
        return Answer::RuledOut;
    }
    made_.clear();
    add(whole, ways_.kinds().isWord(whole) ? done : pending);
    search();
    state_[at(whole)] = absent;
    return anyFound_ ? Answer::Found : stop_ ? Answer::Stopped : Answer::RuledOut;
}

}  // namespace kerfwright::kinds
