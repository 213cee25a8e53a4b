#include "core/search/guess.h"

#include "core/measure/at.h"

#include <algorithm>
#include <limits>
#include <map>
#include <set>

namespace kerfwright::kinds {
namespace {

constexpr int greatestStep = 8;
constexpr std::size_t mostMotifs = 12;
constexpr int never = std::numeric_limits<int>::max() / 4;

}  // namespace

void Guess::take(const KindSet& set, std::uint8_t mark) {
    for (const int kind : set) {
        have_[at(kind)] = mark;
    }
}

bool Guess::partsFreely(int kind) const {
    return ways_.kinds().isWord(kind) || ways_.parts(kind, [this](int part) { return have(part); });
}

/// Glue-ups that parting along all lines would add; `each(part, weight)` is told every part that
/// is not there yet.
template <class Each>
bool Guess::allLines(const Ways::Direction& way, Each each) {
    bool possible = way.count > 2;
    KindSet seen;
    for (int i = 0; i + 1 < way.count && possible; ++i) {
        const int part = way.part(i, i + 1);
        possible = part != none;
        if (possible && !have(part)) {
            have_[at(part)] = 1;
            seen.push_back(part);
            each(part, ways_.kinds().isWord(part) ? 1 : 3);
        }
    }
    take(seen, 0);
    return possible;
}

/// Glue-ups of a kind by itself, if it is parted along all its lines in one direction.
int Guess::alone(int kind) {
    if (have(kind)) {
        return 0;
    }
    if (ways_.kinds().isWord(kind)) {
        return 1;
    }
    int fewest = never;
    for (int direction = 0; direction < 2; ++direction) {
        int sum = 1;
        if (allLines(ways_.of(kind)[direction], [&](int, int weight) { sum += weight; })) {
            fewest = std::min(fewest, sum);
        }
    }
    return fewest;
}

/// What is wanted, and about how many more it would take to part all of it along all lines of one
/// direction or the other. Of a part that several wanted kinds share each pays its share.
int Guess::foresee(const Half& half) {
    constexpr int whole = 720;  // divisible by most small counts
    take(half.made, 1);
    KindSet wanted;
    KindSet shared;
    for (std::size_t i = 0; i < half.made.size(); ++i) {
        if (half.open[i] != 0 && !partsFreely(half.made[i])) {
            wanted.push_back(half.made[i]);
        }
    }
    for (const int kind : wanted) {
        for (int direction = 0; direction < 2; ++direction) {
            allLines(ways_.of(kind)[direction], [&](int part, int) {
                ++sharers_[at(part)];
                shared.push_back(part);
            });
        }
    }
    int sum = static_cast<int>(half.made.size());
    KindSet marked;
    for (const int kind : wanted) {
        int least = never;
        int added = never;
        KindSet best;
        for (int direction = 0; direction < 2; ++direction) {
            KindSet more;
            int pays = 0;
            int adds = 0;
            const bool possible = allLines(ways_.of(kind)[direction], [&](int part, int weight) {
                pays += weight * whole / sharers_[at(part)];
                adds += weight;
                more.push_back(part);
            });
            if (possible && pays < least) {
                least = pays;
                added = adds;
                best = std::move(more);
            }
        }
        take(best, 1);
        marked.insert(marked.end(), best.begin(), best.end());
        sum = std::min(never, sum + added);
    }
    take(marked, 0);
    take(half.made, 0);
    for (const int part : shared) {
        sharers_[at(part)] = 0;
    }
    return sum;
}

/// Parts of so and so many lines each, the first one shorter or not.
void Guess::evenly(const Ways::Direction& way, int kind, std::vector<KindSet>& sets) const {
    const int last = way.count - 1;
    for (int step = 1; step <= std::min(greatestStep, last - 1); ++step) {
        for (int first = 1; first <= step; ++first) {
            KindSet set;
            bool all = true;
            for (int from = 0, to = first; from < last && all; from = to, to += step) {
                to = std::min(to, last);
                const int part = way.part(from, to);
                all = part != none && part != kind;
                if (all && !have(part)) {
                    set.push_back(part);
                }
            }
            if (all) {
                sets.push_back(std::move(set));
            }
        }
    }
}

void Guess::cheapest(const Ways::Direction& way, int kind, const std::function<int(int)>& price,
                     std::vector<KindSet>& sets) const {
    std::vector<int> cost(at(way.count), never);
    std::vector<int> before(at(way.count), -1);
    cost[0] = 0;
    for (int to = 1; to < way.count; ++to) {
        for (int from = 0; from < to; ++from) {
            const int part = way.part(from, to);
            if (part == none || part == kind || cost[at(from)] == never) {
                continue;
            }
            const int sum = cost[at(from)] + (have(part) ? 1 : price(part));
            if (sum < cost[at(to)]) {
                cost[at(to)] = sum;
                before[at(to)] = from;
            }
        }
    }
    if (cost.back() == never) {
        return;
    }
    KindSet set;
    for (int to = way.count - 1; to > 0; to = before[at(to)]) {
        const int part = way.part(before[at(to)], to);
        if (!have(part)) {
            set.push_back(part);
        }
    }
    sets.push_back(std::move(set));
}

/// Ways in which one part is used as often as it goes, and everything else is dear.
void Guess::motifs(const Ways::Direction& way, int kind, std::vector<KindSet>& sets) {
    constexpr int dear = 1000;
    std::map<int, int> prices;
    const auto price = [&](int part) {
        const auto [found, isNew] = prices.emplace(part, 0);
        if (isNew) {
            found->second = dear * std::min(50, alone(part));
        }
        return found->second;
    };
    struct Motif {
        int kind, times, from, length;
    };
    std::map<int, std::size_t> places;
    std::vector<Motif> all;
    for (int to = 1; to < way.count; ++to) {
        for (int from = 0; from < to; ++from) {
            const int part = way.part(from, to);
            if (part <= 0 || part == kind || have(part)) {
                continue;
            }
            const auto [found, isNew] = places.emplace(part, all.size());
            if (isNew) {
                all.push_back({part, 1, to, to - from});
            } else if (Motif& motif = all[found->second]; from >= motif.from) {
                ++motif.times;
                motif.from = to;
            }
        }
    }
    if (way.count <= 33) {
        std::map<int, int> times;
        for (const Motif& motif : all) {
            times[motif.kind] = motif.times;
        }
        cheapest(way, kind, price, sets);
        cheapest(
            way, kind, [&](int part) { return price(part) / times[part] + 1; }, sets);
    }
    std::erase_if(all, [](const Motif& motif) { return motif.times < 2; });
    std::stable_sort(all.begin(), all.end(), [](const Motif& a, const Motif& b) {
        return a.times * a.length > b.times * b.length;
    });
    if (all.size() > mostMotifs) {
        all.resize(mostMotifs);
    }
    for (const Motif& motif : all) {
        cheapest(
            way, kind, [&](int part) { return part == motif.kind ? 2 : price(part); }, sets);
    }
}

void Guess::candidates(int kind, std::vector<KindSet>& sets) {
    const Ways::Both& both = ways_.of(kind);
    for (int direction = 0; direction < 2; ++direction) {
        evenly(both[direction], kind, sets);
        motifs(both[direction], kind, sets);
    }
    for (KindSet& set : sets) {
        std::sort(set.begin(), set.end());
        set.erase(std::unique(set.begin(), set.end()), set.end());
    }
    std::sort(sets.begin(), sets.end());
    sets.erase(std::unique(sets.begin(), sets.end()), sets.end());
}

/// The largest kind that has still to be parted, or -1; what parts freely is closed on the way.
int Guess::nextOpen(const Half& half) {
    int largest = -1;
    for (std::size_t i = 0; i < half.made.size(); ++i) {
        if (half.open[i] == 0 || partsFreely(half.made[i])) {
            continue;
        }
        if (largest < 0 || ways_.area(half.made[i]) > ways_.area(half.made[at(largest)])) {
            largest = static_cast<int>(i);
        }
    }
    return largest;
}

/// Kinds that the plan can do without are left out.
void Guess::thinOut(KindSet& plan) {
    for (std::size_t i = plan.size(); i-- > 1;) {
        const int without = plan[i];
        take(plan, 1);
        have_[at(without)] = 0;
        const bool still = std::all_of(plan.begin(), plan.end(), [&](int kind) {
            return kind == without || partsFreely(kind);
        });
        take(plan, 0);
        if (still) {
            plan.erase(plan.begin() + static_cast<std::ptrdiff_t>(i));
        }
    }
}

void Guess::finish(const Half& half, std::vector<KindSet>& plans) {
    KindSet plan = half.made;
    thinOut(plan);
    plans.push_back(std::move(plan));
}

void Guess::search(std::vector<Half> beam, int width, const std::function<bool()>& goOn,
                   std::vector<KindSet>& plans) {
    int best = never;
    while (!beam.empty() && goOn()) {
        std::vector<Half> next;
        std::set<KindSet> seen;
        for (const Half& half : beam) {
            take(half.made, 1);
            const int place = nextOpen(half);
            if (place < 0) {
                take(half.made, 0);
                if (static_cast<int>(half.made.size()) < best) {
                    best = static_cast<int>(half.made.size());
                    finish(half, plans);
                }
                continue;
            }
            std::vector<KindSet> sets;
            candidates(half.made[at(place)], sets);
            take(half.made, 0);
            for (const KindSet& set : sets) {
                Half more = half;
                more.open[at(place)] = 0;
                for (const int kind : set) {
                    more.made.push_back(kind);
                    more.open.push_back(ways_.kinds().isWord(kind) ? 0 : 1);
                }
                KindSet sorted = more.made;
                std::sort(sorted.begin(), sorted.end());
                if (static_cast<int>(sorted.size()) >= best ||
                    !seen.insert(std::move(sorted)).second) {
                    continue;
                }
                more.foreseen = foresee(more);
                next.push_back(std::move(more));
            }
        }
        std::stable_sort(next.begin(), next.end(), [](const Half& a, const Half& b) {
            return a.foreseen != b.foreseen ? a.foreseen < b.foreseen
                                            : a.made.size() < b.made.size();
        });
        if (next.size() > at(width)) {
            next.resize(at(width));
        }
        beam = std::move(next);
    }
}

Guess::Half Guess::begin(const KindSet& added) const {
    Half half;
    const int whole = ways_.kinds().whole();
    half.made = {whole};
    half.open = {added.empty() ? std::uint8_t{1} : std::uint8_t{0}};
    for (const int kind : added) {
        if (kind != freeKind &&
            std::find(half.made.begin(), half.made.end(), kind) == half.made.end()) {
            half.made.push_back(kind);
            half.open.push_back(ways_.kinds().isWord(kind) ? 0 : 1);
        }
    }
    return half;
}

std::vector<Guess::KindSet> Guess::plans(int beam, const std::function<bool()>& goOn) {
    std::vector<KindSet> plans;
    const int whole = ways_.kinds().whole();
    if (whole == none || whole == freeKind || ways_.kinds().isWord(whole)) {
        return whole == none ? plans : std::vector<KindSet>{{whole}};
    }
    const Ways::Both both = ways_.of(whole);
    for (int direction = 0; direction < 2; ++direction) {
        const Ways::Direction& way = both[direction];
        KindSet all;
        for (int i = 0; way.count > 2 && i + 1 < way.count; ++i) {
            all.push_back(way.part(i, i + 1));
        }
        if (!all.empty() && std::find(all.begin(), all.end(), none) == all.end()) {
            search(
                {begin(all)}, 1, [] { return true; }, plans);  // soon done
        }
    }
    search({begin({})}, beam, goOn, plans);
    std::stable_sort(plans.begin(), plans.end(),
                     [](const KindSet& a, const KindSet& b) { return a.size() < b.size(); });
    return plans;
}

}  // namespace kerfwright::kinds
