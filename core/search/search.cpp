#include "core/search/search.h"

#include "core/measure/at.h"
#include "core/search/alike.h"
#include "core/search/assemble.h"
#include "core/search/guess.h"
#include "core/search/proof.h"

#include <algorithm>
#include <limits>
#include <optional>
#include <tuple>
#include <utility>

namespace kerfwright {
namespace {

/// Above it only thin boxes are looked at: time and memory of the table of kinds.
constexpr int mostKinds = 400'000;
constexpr int beamWidth = 4;
/// With more kinds than these a narrower beam is carried along.
constexpr int manyKinds = 40'000;
/// How many of the plans with the fewest glue-ups are compared by their members.
constexpr int mostEqual = 100;

bool better(const Found& a, const Found& b) {
    return std::tie(a.glueUps, a.assemblies, a.members, a.levels) <
           std::tie(b.glueUps, b.assemblies, b.members, b.levels);
}

bool noWorse(const Found& a, const Found& b) {
    return a.glueUps <= b.glueUps && a.members <= b.members && a.levels <= b.levels &&
           a.assemblies <= b.assemblies;
}

bool lastAlong(const Found& found, JoinedAlong along) {
    return found.construction.blocks.back().along == along;
}

/// The best, then those that are better in something, then the best by rows and by columns.
std::vector<Found> selected(std::vector<Found> all, int atMost) {
    std::stable_sort(all.begin(), all.end(), better);
    std::vector<Found> kept;
    std::vector<Found> dropped;
    for (Found& each : all) {
        const bool useless = std::any_of(kept.begin(), kept.end(),
                                         [&](const Found& other) { return noWorse(other, each); });
        (useless || static_cast<int>(kept.size()) >= atMost ? dropped : kept)
            .push_back(std::move(each));
    }
    for (const JoinedAlong along : {JoinedAlong::Y, JoinedAlong::X}) {
        const auto is = [along](const Found& each) { return lastAlong(each, along); };
        const auto found = std::find_if(dropped.begin(), dropped.end(), is);
        if (static_cast<int>(kept.size()) < atMost && found != dropped.end() &&
            std::none_of(kept.begin(), kept.end(), is)) {
            kept.push_back(std::move(*found));
            dropped.erase(found);
        }
    }
    return kept;
}

class Run {
public:
    Run(const Picture& picture, const SearchOptions& options, const SearchCallback& callback,
        std::uint64_t seed)
        : picture_(picture)
        , options_(options)
        , callback_(callback)
        , kinds_(picture, options.thinning && picture.laying == Laying::EndGrain, seed, mostKinds,
                 [this] { return !result_.stopped && (goOn(0) || !result_.stopped); })
        , ways_(kinds_) {}

    /// Empty where two rectangles that differ fell together.
    std::optional<SearchResult> result();

private:
    bool take(const std::vector<int>& set);
    bool goOn(std::int64_t steps);
    void prove();
    int fewest() const;

    const Picture& picture_;
    const SearchOptions& options_;
    const SearchCallback& callback_;
    SearchResult result_;
    bool mistaken_ = false;
    kinds::Kinds kinds_;  // asks whether to go on, so that the result must be there before
    kinds::Ways ways_;
};

bool Run::take(const std::vector<int>& set) {
    std::optional<Construction> made = kinds::assemble(ways_, set);
    mistaken_ = mistaken_ || !made;
    if (made) {
        result_.found.push_back(counted(std::move(*made), picture_.laying));
    }
    return !mistaken_;
}

int Run::fewest() const {
    int least = -1;
    for (const Found& each : result_.found) {
        least = least < 0 ? each.glueUps : std::min(least, each.glueUps);
    }
    return least;
}

bool Run::goOn(std::int64_t steps) {
    const double share =
        options_.budget > 0 ? static_cast<double>(steps) / static_cast<double>(options_.budget) : 0;
    if (callback_ && !callback_({result_.bound, std::max(0, fewest()), std::min(1.0, share)})) {
        result_.stopped = true;
    }
    return !result_.stopped && steps < options_.budget;
}

/// Raises the bound until it meets what was found, or the budget is spent.
void Run::prove() {
    kinds::Proof proof(ways_);
    const auto on = [this](std::int64_t steps) { return goOn(steps); };
    // Where only some boxes were looked at, or some look alike, two glue-ups can still be ruled
    // out: their parts run from edge to edge and are words.
    const bool exact = kinds_.complete() && !kinds::someLookAlike(kinds_);
    result_.bound = exact ? ways_.least(kinds_.whole()) : std::min(2, fewest());
    while (result_.bound < fewest() && (exact || result_.bound <= 2) &&
           proof.steps() < options_.budget && !mistaken_) {
        const auto answer = proof.attempt(
            result_.bound,
            [this](const std::vector<int>& set) {
                take(set);
                return false;
            },
            on);
        if (answer != kinds::Proof::Answer::RuledOut) {
            break;
        }
        ++result_.bound;
    }
    result_.proven = result_.bound == fewest();
    if (!result_.proven || result_.bound < 2 || mistaken_) {
        return;
    }
    // Of plans with equally few glue-ups the one with the fewest members.
    int members = std::numeric_limits<int>::max();
    for (const Found& each : result_.found) {
        members = each.glueUps == result_.bound ? std::min(members, each.members) : members;
    }
    const std::int64_t until = proof.steps() + (options_.budget - proof.steps()) / 4;
    int equal = 0;
    proof.attempt(
        result_.bound,
        [&](const std::vector<int>& set) {
            const int here = kinds::fewestMembers(ways_, set);
            if (here < members) {
                members = here;
                take(set);
            }
            return !mistaken_ && ++equal < mostEqual;
        },
        [&](std::int64_t steps) { return steps < until && goOn(steps); });
}

std::optional<SearchResult> Run::result() {
    const int whole = kinds_.whole();
    if (whole == kinds::none || result_.stopped) {
        return result_;
    }
    if (whole == kinds::freeKind) {
        take({});
    }
    const int width = kinds_.count() > manyKinds ? 2 : beamWidth;
    for (const std::vector<int>& plan : kinds::Guess(ways_).plans(
             width, [this] { return !result_.stopped && (goOn(0) || !result_.stopped); })) {
        if (!take(plan)) {
            return std::nullopt;
        }
    }
    if (result_.found.empty()) {
        return result_;
    }
    prove();
    if (mistaken_) {
        return std::nullopt;
    }
    result_.found = selected(std::move(result_.found), std::max(1, options_.alternatives));
    return std::move(result_);
}

}  // namespace

Found counted(Construction construction, Laying laying) {
    Found found;
    const std::vector<Block>& blocks = construction.blocks;
    const JoinedAlong endToEnd = laying == Laying::GrainAcross ? JoinedAlong::X : JoinedAlong::Y;
    std::vector<int> levels(blocks.size(), 0);
    std::vector<int> copies(blocks.size(), 0);
    std::vector<bool> hasEnds(blocks.size(), false);
    copies.back() = 1;
    for (std::size_t i = blocks.size(); i-- > 0;) {
        for (const Member& member : blocks[i].members) {
            copies[at(member.block)] += copies[i];
        }
    }
    for (std::size_t i = 0; i < blocks.size(); ++i) {
        const Block& block = blocks[i];
        if (!block.isGlued()) {
            continue;
        }
        hasEnds[i] = laying != Laying::EndGrain && block.along == endToEnd;
        for (const Member& member : block.members) {
            levels[i] = std::max(levels[i], levels[at(member.block)]);
            hasEnds[i] = hasEnds[i] || hasEnds[at(member.block)];
        }
        ++levels[i];
        found.levels = std::max(found.levels, levels[i]);
        if (block.sameGlueUpAs >= 0) {
            continue;
        }
        ++found.glueUps;
        found.assemblies += hasEnds[i] ? copies[i] : 1;
        found.members += static_cast<int>(block.members.size());
    }
    found.construction = std::move(construction);
    return found;
}

SearchResult fewestGlueUps(const Picture& picture, const SearchOptions& options,
                           const SearchCallback& callback) {
    // A mistaken kind is so unlikely (about one in 2^61 for each two rectangles) that a few seeds
    // are more than enough.
    for (std::uint64_t seed = 1; seed <= 5; ++seed) {
        if (std::optional<SearchResult> result = Run(picture, options, callback, seed).result()) {
            return std::move(*result);
        }
    }
    return {};
}

}  // namespace kerfwright
