#include "core/bench/cautions.h"

#include "core/bench/rules.h"
#include "core/words/say.h"

#include <algorithm>
#include <set>
#include <utility>

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
    rules::gameSquares,   rules::fewClamps,         rules::noSpareSlice,    rules::extraJoints,
    rules::omittedJoints, rules::woodsAlike,        rules::lostWay,
};

/// "0 2 3": lines, from 0.
std::string numbers(const std::vector<int>& lines) {
    std::string all;
    for (const int line : lines) {
        all += (all.empty() ? "" : " ") + std::to_string(line);
    }
    return all;
}

/// "0,0,1,1 1,1,1,1": column, row, across and down of each piece, so that pieces which others are
/// drawn before stay the same.
std::string cells(const Field& field, const std::vector<int>& pieces) {
    std::string all;
    for (const int index : pieces) {
        const Piece& piece = field.pieces[static_cast<std::size_t>(index)];
        all += (all.empty() ? "" : " ") + std::to_string(piece.column) + ',' +
               std::to_string(piece.row) + ',' + std::to_string(piece.across) + ',' +
               std::to_string(piece.down);
    }
    return all;
}

/// To what the rule says of its numbers: how severe it is, and where.
void addWhere(const Field& field, Caution& caution) {
    caution.about = brief(caution.about);
    caution.said.insert(caution.said.begin(), fact("severity", keyOf(caution.severity)));
    const CautionPlace& place = caution.place;
    for (const auto& [name, where] :
         {std::pair("pieces", cells(field, place.pieces)), std::pair("rows", numbers(place.rows)),
          std::pair("columns", numbers(place.columns))}) {
        if (!where.empty()) {
            caution.said.push_back(fact(name, where));
        }
    }
    if (place.border) {
        caution.said.push_back(fact("border", std::int64_t{1}));
    }
}

/// Where a rule speaks twice about one thing, its cautions are numbered.
void tellApart(std::vector<Caution>& found) {
    std::set<std::pair<std::string, std::string>> known;
    for (Caution& caution : found) {
        const std::string about = caution.about;
        for (int number = 2; !known.emplace(caution.key, caution.about).second; ++number) {
            caution.about = brief(about + (about.empty() ? "" : " ") + std::to_string(number));
        }
    }
}

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
        addWhere(ground.wish.field, caution);
    }
    tellApart(found);
    std::stable_sort(found.begin(), found.end(), [](const Caution& a, const Caution& b) {
        return a.severity != b.severity ? a.severity > b.severity : a.step < b.step;
    });
    return found;
}

std::string keyOf(Severity severity) {
    switch (severity) {
    case Severity::Note:
        return "note";
    case Severity::Caution:
        return "caution";
    case Severity::Danger:
        return "danger";
    }
    return {};
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
