#include "core/bench/spots.h"

#include "core/words/say.h"

#include <algorithm>
#include <utility>

namespace kerfwright::rules {

bool shorter(Length a, Length b) {
    return a < b;
}
bool longer(Length a, Length b) {
    return a > b;
}

void Spots::add(Spot spot) {
    if (steps_.empty() || steps_.back() != spot.step) {
        steps_.push_back(spot.step);
    }
    const auto known = std::find_if(spots_.begin(), spots_.end(),
                                    [&](const Spot& s) { return s.label == spot.label; });
    if (known == spots_.end()) {
        spots_.push_back(std::move(spot));
    } else if (isWorse_(spot.length, known->length)) {
        *known = std::move(spot);
    }
}

const Spot& Spots::worst() const {
    return *std::min_element(spots_.begin(), spots_.end(), [this](const Spot& a, const Spot& b) {
        return isWorse_(a.length, b.length);
    });
}

std::vector<std::string> Spots::labels() const {
    std::vector<std::string> all;
    for (const Spot& spot : spots_) {
        all.push_back(spot.label);
    }
    return all;
}

std::string Spots::names() const {
    constexpr std::size_t most = 4;
    std::vector<std::string> all = labels();
    if (all.size() > most + 1) {
        const std::size_t unnamed = all.size() - most;
        all.resize(most);
        // Translators: of panels, behind some that are named: "A, B, C, D and 12 more".
        all.push_back(sayCount(unnamed, "{1} more", "{1} more"));
    }
    return sayList(all);
}

std::vector<Fact> Spots::facts(Length limit) const {
    std::string all;
    for (const Spot& spot : spots_) {
        all += (all.empty() ? "" : " ") + spot.label + "=" + std::to_string(spot.length.nm());
    }
    return {fact("limit", limit), fact("worst", worst().length), fact("parts", all)};
}

}  // namespace kerfwright::rules
