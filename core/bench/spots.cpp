#include "core/bench/spots.h"

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

std::string Spots::subject() const {
    if (single()) {
        return spots_.front().field ? "The field" : "Panel " + spots_.front().label;
    }
    constexpr std::size_t named = 4;
    const bool all = spots_.size() <= named + 1;
    const std::size_t shown = all ? spots_.size() - 1 : named;
    std::string text = "Panels ";
    for (std::size_t i = 0; i < shown; ++i) {
        text += (i == 0 ? "" : ", ") + spots_[i].label;
    }
    return text + " and " +
           (all ? spots_.back().label : std::to_string(spots_.size() - named) + " more");
}

}  // namespace kerfwright::rules
