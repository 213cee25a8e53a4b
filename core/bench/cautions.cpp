#include "core/bench/cautions.h"

#include "core/bench/rules.h"
#include "core/words/say.h"

#include <algorithm>

namespace kerfwright {
namespace {

/// Every rule there is. A new one is a function in `rules.h`, a line here and a test.
using Rule = void (*)(const rules::Scene&, rules::Found&);
constexpr Rule everyRule[] = {
    rules::borderMoves,   rules::gapCloses,         rules::unknownMovement, rules::endGrainFace,
    rules::littleToHold,  rules::shortForSander,    rules::shortSlices,     rules::shortToSize,
    rules::shortStrips,   rules::shortRails,        rules::narrowRips,      rules::thinWork,
    rules::thinStock,     rules::wideForSander,     rules::thickForSaw,     rules::coldGlue,
    rules::noSquaringCut, rules::noTrimMargin,      rules::moistureFarOff,  rules::unevenRows,
    rules::endToEnd,      rules::hardToGlue,        rules::openTime,        rules::openPores,
    rules::unknownPores,  rules::reportedReactions, rules::lowContrast,     rules::gamePieces,
    rules::gameSquares,   rules::fewClamps,         rules::crowdedClamps,   rules::noSpareSlice,
    rules::extraJoints,   rules::omittedJoints,     rules::woodsAlike,      rules::lostWay,
};

}  // namespace

std::vector<Caution> cautions(const Ground& ground) {
    const rules::Scene scene(ground);
    rules::Found found;
    for (const Rule rule : everyRule) {
        rule(scene, found);
    }
    for (Caution& caution : found) {
        if (caution.steps.empty() && caution.step >= 0) {
            caution.steps.push_back(caution.step);
        }
    }
    std::stable_sort(found.begin(), found.end(), [](const Caution& a, const Caution& b) {
        return a.severity != b.severity ? a.severity > b.severity : a.step < b.step;
    });
    return found;
}

std::string whichSteps(const Caution& caution) {
    if (caution.steps.empty()) {
        return {};
    }
    std::vector<std::string> numbers;
    for (const int step : caution.steps) {
        numbers.push_back(std::to_string(step + 1));
    }
    return sayCount(numbers.size(), "step {2}", "steps {2}", sayList(numbers));
}

}  // namespace kerfwright
