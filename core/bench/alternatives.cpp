#include "core/bench/alternatives.h"

#include "core/words/say.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <set>
#include <tuple>
#include <utility>

namespace kerfwright {
namespace {

constexpr std::size_t mostShown = 6;

/// Cautions that say what a machine, the glue or the timber does not take.
constexpr std::array<const char*, 9> limitKeys = {
    "open-time",    "wide-for-sander", "thick-for-saw", "short-for-sander", "short-slices",
    "short-strips", "narrow-rip",      "thin-stock",    "short-to-size"};

struct Counter {
    Measures measures;
    std::set<std::tuple<int, Length>> settings;

    void set(int machine, Length length) { settings.emplace(machine, length); }
    void operator()(const Mill& mill) {
        for (const MillLine& line : mill.lines) {
            const int count = static_cast<int>(line.strips.size());
            measures.cuts += count;
            set(0, line.thickness.value);
            set(1, line.width.value);
            set(2, line.roughLength.value);
            measures.timber +=
                volume(line.roughThickness.value, line.roughWidth.value, line.roughLength.value) *
                count;
        }
    }
    void operator()(const Flatten& work) { set(0, work.to.value); }
    void operator()(const SquareEnd& work) {
        set(2, work.waste.value);
        ++measures.cuts;
    }
    void operator()(const Crosscut& work) {
        set(2, work.stop.value);
        measures.cuts += static_cast<int>(work.slices.size() + work.spares.size());
    }
    void operator()(const BringToSize& work) {
        const Sizing& sizing = work.sizing;
        set(sizing.in == SizedIn::Thickness ? 0
            : sizing.in == SizedIn::Width   ? 1
                                            : 2,
            sizing.to.value);
        const int sides = int{sizing.offFirst > Length()} + int{sizing.offLast > Length()};
        measures.cuts += sides * static_cast<int>(work.parts.size());
    }
    void operator()(const TrimField& work) {
        set(1, work.width.value);
        set(1, work.height.value);
        measures.cuts += 4;
    }
    void operator()(const CutRails& work) {
        measures.cuts += 2 * static_cast<int>(work.rails.size());
        for (const Rail& rail : work.rails) {
            set(2, rail.longPoint.value);
        }
    }
    template <class Work>
    void operator()(const Work&) {}
};

bool worseInAll(const Alternative& a, const Alternative& b) {
    const Measures& x = a.measures;
    const Measures& y = b.measures;
    const auto joints = [](const Alternative& one) { return one.job.plan.extraJoints.size(); };
    return x.glueUps >= y.glueUps && x.clampLoads >= y.clampLoads && x.panels >= y.panels &&
           x.settings >= y.settings && x.cuts >= y.cuts && x.timber >= y.timber &&
           x.minutes >= y.minutes && joints(a) >= joints(b) &&
           std::all_of(b.limitKeys.begin(), b.limitKeys.end(), [&](const std::string& key) {
               return std::find(a.limitKeys.begin(), a.limitKeys.end(), key) != a.limitKeys.end();
           });
}

void findLimits(Alternative& way) {
    for (const Caution& caution : way.job.cautions) {
        if (std::find(limitKeys.begin(), limitKeys.end(), caution.key) != limitKeys.end()) {
            way.limits.push_back(caution.title);
            way.limitKeys.push_back(caution.key);
        }
    }
}

int mostPartsIn(const Conditions& conditions) {
    const std::optional<GlueTimes> times = glueTimes(conditions.glue);
    if (!times || conditions.glue.secondsPerLine <= 0) {
        return 0;
    }
    const double lines = times->openMinutes * 60 / conditions.glue.secondsPerLine;
    return std::max(2, static_cast<int>(lines + 1e-9) + 1);
}

class Gathering {
public:
    Gathering(const Board& board, const std::vector<Wood>& woods, const Shop& shop,
              const Notation& notation, const Conditions& conditions)
        : board_(board)
        , woods_(woods)
        , shop_(shop)
        , notation_(notation)
        , conditions_(conditions) {}

    /// The fault where it cannot be made.
    std::optional<Fault> add(const Choices& choices, std::string key, std::string name,
                             const Proposal* proposal) {
        Result<Job> made =
            makeJob(board_, woods_, shop_, choices, notation_, conditions_, proposal);
        if (!made) {
            return made.fault();
        }
        Alternative one{std::move(key), std::move(name), choices, std::move(made).value()};
        one.measures = measuresOf(one.job);
        findLimits(one);
        const auto same = [&](const Alternative& other) {
            return other.measures == one.measures &&
                   other.job.plan.byColumns == one.job.plan.byColumns &&
                   other.job.plan.extraJoints == one.job.plan.extraJoints;
        };
        if (std::none_of(all.begin(), all.end(), same)) {
            all.push_back(std::move(one));
        }
        return std::nullopt;
    }

    std::vector<Alternative> all;

private:
    const Board& board_;
    const std::vector<Wood>& woods_;
    const Shop& shop_;
    const Notation& notation_;
    const Conditions& conditions_;
};

std::string sentenceFor(const Alternatives& result, const Proposals& found) {
    if (!found.locked.pieces.empty()) {
        return say(
            "Pieces lock each other: no straight glue line parts them without a joint more.");
    }
    if (result.all.empty() || found.all.empty()) {
        return "";
    }
    int fewest = result.all.front().measures.glueUps;
    for (const Alternative& one : result.all) {
        fewest = std::min(fewest, one.measures.glueUps);
    }
    if (fewest < found.bound) {
        return sayCount(found.bound,
                        "Every piece whole, and no panel thinned, shifted or trimmed: at least {1} "
                        "glue-up is needed.",
                        "Every piece whole, and no panel thinned, shifted or trimmed: at least {1} "
                        "glue-ups are needed.");
    }
    if (found.proven && fewest == found.bound) {
        return sayCount(found.bound, "Proven: no plan has fewer than {1} glue-up.",
                        "Proven: no plan has fewer than {1} glue-ups.");
    }
    return sayCount(found.bound, "At least {1} glue-up is needed; the fewest found are {2}.",
                    "At least {1} glue-ups are needed; the fewest found are {2}.", fewest);
}

}  // namespace

Measures measuresOf(const Job& job) {
    Counter counter;
    for (const Step& step : job.steps.steps) {
        std::visit(counter, step.work);
    }
    counter.measures.settings = static_cast<int>(counter.settings.size());
    counter.measures.glueUps = job.plan.glueUps;
    counter.measures.clampLoads = job.plan.assemblies;
    counter.measures.panels = job.plan.panels;
    counter.measures.minutes = static_cast<int>(std::lround(job.hours.minutes));
    return counter.measures;
}

Result<Alternatives> alternatives(const Board& board, const std::vector<Wood>& woods,
                                  const Shop& shop, const Choices& choices,
                                  const Notation& notation, const Conditions& conditions,
                                  const SearchCallback& callback) {
    Gathering gathering(board, woods, shop, notation, conditions);
    std::optional<Fault> fault;
    const bool grainDecides =
        board.build == Build::LongGrain && board.grain != GrainDirection::PlannersChoice;
    for (const bool columns : {false, true}) {
        if (grainDecides && columns != (board.grain == GrainDirection::Across)) {
            continue;
        }
        Choices own = choices;
        own.construction.clear();
        own.rows = columns ? RowChoice::Columns : RowChoice::Rows;
        if (auto found = gathering.add(own, "", columns ? say("Columns") : say("Rows"), nullptr)) {
            fault = found;
        }
    }
    if (gathering.all.empty()) {
        return *fault;
    }
    Alternatives result;
    ProposalOptions options;
    options.mergeLike = choices.mergeLike;
    options.mostParts = mostPartsIn(conditions);
    const Board glued = asGlued(board);
    const Proposals found = proposals(glued, woods, shop, options, callback);
    for (const Proposal& proposal : found.all) {
        Choices own = choices;
        own.rows = RowChoice::Best;
        own.construction = proposal.key;
        own.mostParts = options.mostParts;
        gathering.add(own, proposal.key, proposal.name, &proposal);
    }
    std::vector<Alternative>& all = gathering.all;
    std::stable_sort(all.begin(), all.end(), [](const Alternative& a, const Alternative& b) {
        const auto rank = [](const Alternative& one) {
            return std::tuple(one.limits.empty() ? 0 : 1, one.measures.glueUps,
                              one.job.plan.extraJoints.size(), one.measures.clampLoads,
                              one.measures.timber);
        };
        return rank(a) < rank(b);
    });
    // What is worse in everything than another goes, but never the plan that is in use.
    for (std::size_t i = 0; i < all.size();) {
        const bool inUse = all[i].key == choices.construction && !choices.construction.empty();
        bool worse = false;
        for (std::size_t k = 0; k < all.size() && !worse; ++k) {
            worse = k != i && worseInAll(all[i], all[k]) && (k < i || !worseInAll(all[k], all[i]));
        }
        if (worse && !inUse) {
            all.erase(all.begin() + static_cast<std::ptrdiff_t>(i));
        } else {
            ++i;
        }
    }
    while (all.size() > mostShown) {
        const bool inUse = all.back().key == choices.construction && !all.back().key.empty();
        all.erase(inUse ? all.end() - 2 : all.end() - 1);
    }
    result.all = std::move(all);
    result.bound = found.bound;
    result.proven = found.proven;
    result.stopped = found.stopped;
    result.locked = found.locked;
    std::vector<std::string> names;
    for (const Wood& wood : woods) {
        names.push_back(wood.name);
    }
    result.looks = oddAndEven(board.field, names);
    result.sentence = sentenceFor(result, found);
    return result;
}

}  // namespace kerfwright
