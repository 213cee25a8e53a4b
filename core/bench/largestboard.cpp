#include "core/bench/largestboard.h"

#include "core/timber/demand.h"
#include "core/timber/largest.h"
#include "core/timber/timberwords.h"
#include "core/words/say.h"

#include <algorithm>
#include <iterator>
#include <utility>

namespace kerfwright {
namespace {

std::string woodsNotThere(const Demand& demand, const Rack& rack, const std::vector<Wood>& woods) {
    std::vector<std::string> keys;
    for (const WantedStrips& strips : demand.strips) {
        const bool isThere =
            std::any_of(rack.planks.begin(), rack.planks.end(),
                        [&](const Plank& plank) { return plank.wood == strips.wood; });
        if (!isThere && std::find(keys.begin(), keys.end(), strips.wood) == keys.end()) {
            keys.push_back(strips.wood);
        }
    }
    std::vector<std::string> names;
    std::transform(keys.begin(), keys.end(), std::back_inserter(names),
                   [&](const std::string& key) { return woodName(key, woods); });
    return sayList(names);
}

}  // namespace

Result<LargestBoard> largestBoard(const Board& board, const std::vector<GrownField>& fields,
                                  const std::vector<Wood>& woods, const Shop& shop,
                                  const Choices& choices, const Notation& notation,
                                  const Conditions& conditions, const Timber& timber,
                                  const LayoutCallback& callback) {
    if (fields.empty()) {
        return Fault{say("Field"),
                     say("must be a grid or laid out from a recipe to have more rows and columns"),
                     say("pieces over several cells")};
    }
    const auto demandAt = [&](int size) -> Result<Demand> {
        Board sized = board;
        sized.field = fields[static_cast<std::size_t>(size)].field;
        const Result<Job> job = makeJob(sized, woods, shop, choices, notation, conditions);
        if (!job) {
            return job.fault();
        }
        return demandOf(job->steps, woods);
    };
    bool stopped = false;
    const LayoutCallback watched = [&](const LayoutProgress& progress) {
        stopped = stopped || (callback && !callback(progress));
        return !stopped;
    };
    std::optional<Largest> largest =
        largestFrom(priced(timber.rack, woods), cutRules(shop, timber.sawing),
                    static_cast<int>(fields.size()), demandAt, watched);
    if (!largest) {
        const Result<Demand> smallest = demandAt(0);
        if (!smallest) {
            return smallest.fault();
        }
        if (const std::string none = woodsNotThere(*smallest, timber.rack, woods); !none.empty()) {
            return Fault{say("Rack"), say("must hold every wood of the board"),
                         say("no plank of {1}", none)};
        }
        return Fault{say("Rack"), say("must hold timber for a board"),
                     stopped ? say("stopped before one was found")
                             : say("not enough even for {1}", fields.front().words)};
    }
    return LargestBoard{fields[static_cast<std::size_t>(largest->size)], std::move(largest->layout),
                        largest->isSure};
}

}  // namespace kerfwright
