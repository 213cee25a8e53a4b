#include "core/project/recipefile.h"

#include "core/words/say.h"

#include <algorithm>
#include <string>

namespace kerfwright {
namespace {

std::string countKey(const PatternCount& count) {
    return std::string(count.key);
}
std::string lengthKey(const PatternLength& length) {
    return std::string(length.key) + "-nm";
}

Pattern readPattern(const Node& json) {
    std::vector<std::string_view> known;
    for (const PatternInfo& info : patterns()) {
        if (info.key == json.text()) {
            return info.pattern;
        }
        known.push_back(info.key);
    }
    json.refuseWith(oneOf(known));
}

}  // namespace

Json ofRecipe(const Recipe& recipe, const std::vector<Wood>& woods) {
    const PatternInfo& info = patternInfo(recipe.pattern);
    Json keys = Json::array();
    for (const int wood : recipe.woods) {
        const auto i = static_cast<std::size_t>(wood);
        keys.items.push_back(
            Json::ofText(wood >= 0 && i < woods.size() ? woods[i].key : std::string()));
    }
    Json numbers = Json::object();
    for (std::size_t i = 0; i < std::min(info.counts.size(), recipe.counts.size()); ++i) {
        numbers.add(countKey(info.counts[i]), Json::ofNumber(std::int64_t{recipe.counts[i]}));
    }
    for (std::size_t i = 0; i < std::min(info.lengths.size(), recipe.lengths.size()); ++i) {
        numbers.add(lengthKey(info.lengths[i]), ofLength(recipe.lengths[i]));
    }
    Json json = Json::object();
    json.add("pattern", Json::ofText(std::string(info.key)));
    json.add("width-nm", ofLength(recipe.width));
    json.add("height-nm", ofLength(recipe.height));
    json.add("step-nm", ofLength(recipe.step));
    json.add("woods", std::move(keys));
    json.add("numbers", std::move(numbers));
    return json;
}

Recipe readRecipe(const Node& json, const std::vector<Wood>& woods) {
    Recipe recipe;
    recipe.pattern = readPattern(json.at("pattern"));
    recipe.width = json.at("width-nm").length(BoardLimits::leastCell, BoardLimits::greatestField);
    recipe.height = json.at("height-nm").length(BoardLimits::leastCell, BoardLimits::greatestField);
    recipe.step = json.at("step-nm").length(Length::nm(1), RecipeLimits::greatestStep);
    for (const Node& item : json.at("woods").items(1, RecipeLimits::woods)) {
        const int wood = woodIndex(woods, item.text());
        if (wood < 0) {
            item.refuseWith(say("must be the key of one of the woods of this file"));
        }
        recipe.woods.push_back(wood);
    }
    const PatternInfo& info = patternInfo(recipe.pattern);
    const Node numbers = json.at("numbers");
    for (const PatternCount& count : info.counts) {
        recipe.counts.push_back(
            numbers.at(countKey(count)).smallWhole(count.least, count.greatest));
    }
    for (const PatternLength& length : info.lengths) {
        recipe.lengths.push_back(numbers.at(lengthKey(length))
                                     .length(BoardLimits::leastCell, BoardLimits::greatestCell));
    }
    return recipe;
}

}  // namespace kerfwright
