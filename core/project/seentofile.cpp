#include "core/project/seentofile.h"

#include <utility>

namespace kerfwright {

Json ofSeenTo(const std::vector<SeenTo>& seenTo) {
    Json all = Json::array();
    for (const SeenTo& entry : seenTo) {
        Json said = Json::object();
        for (const Fact& fact : entry.said) {
            const auto* number = std::get_if<std::int64_t>(&fact.value);
            said.add(fact.name, number != nullptr
                                    ? Json::ofNumber(*number)
                                    : Json::ofText(std::get<std::string>(fact.value)));
        }
        Json json = Json::object();
        json.add("rule", Json::ofText(entry.rule));
        if (!entry.about.empty()) {
            json.add("about", Json::ofText(entry.about));
        }
        json.add("said", std::move(said));
        json.startsLine = true;
        all.items.push_back(std::move(json));
    }
    return all;
}

std::vector<SeenTo> readSeenTo(const Node& json) {
    std::vector<SeenTo> seenTo;
    for (const Node& item : json.items(0, SeenToLimits::entries)) {
        SeenTo entry{item.at("rule").text()};
        if (const std::optional<Node> about = item.maybe("about")) {
            entry.about = about->text();
        }
        for (const auto& [name, value] : item.at("said").entries(SeenToLimits::facts)) {
            Fact fact{name, {}};
            if (value.isText()) {
                fact.value = value.text();
            } else {
                fact.value = value.wholeNumber();
            }
            entry.said.push_back(std::move(fact));
        }
        seenTo.push_back(std::move(entry));
    }
    return seenTo;
}

}  // namespace kerfwright
