#include "core/project/timberfile.h"

#include <string>
#include <utility>

namespace kerfwright {
namespace {

constexpr std::size_t longestList = 12;

Json ofLengths(const std::vector<Length>& lengths) {
    Json all = Json::array();
    for (const Length length : lengths) {
        all.items.push_back(ofLength(length));
    }
    return all;
}

Json ofPlank(const Plank& plank) {
    Json json = Json::object();
    json.add("label", Json::ofText(plank.label));
    json.add("wood", Json::ofText(plank.wood));
    json.add("thickness-nm", ofLength(plank.thickness));
    json.add("width-nm", ofLength(plank.width));
    json.add("length-nm", ofLength(plank.length));
    Json defects = Json::array();
    for (const Defect& defect : plank.defects) {
        defects.items.push_back(ofLengths({defect.x, defect.y, defect.length, defect.width}));
    }
    json.add("defects-nm", std::move(defects));
    json.add("price", Json::ofNumber(plank.price));
    json.add("note", Json::ofText(plank.note));
    json.add("offcut", Json::ofBoolean(plank.isOffcut));
    return json;
}

Plank readPlank(const Node& json) {
    Plank plank;
    plank.label = json.at("label").text();
    plank.wood = json.at("wood").text();
    plank.thickness = json.at("thickness-nm").length(Length::nm(1), RackLimits::thickness);
    plank.width = json.at("width-nm").length(Length::nm(1), RackLimits::width);
    plank.length = json.at("length-nm").length(Length::nm(1), RackLimits::length);
    if (const auto defects = json.maybe("defects-nm")) {
        for (const Node& item : defects->items(0, RackLimits::defects)) {
            const std::vector<Node> sides = item.items(4, 4);
            plank.defects.push_back(
                {sides[0].length(), sides[1].length(), sides[2].length(), sides[3].length()});
        }
    }
    if (const auto price = json.maybe("price")) {
        plank.price = price->whole(0, RackLimits::price);
    }
    if (const auto note = json.maybe("note")) {
        plank.note = note->text();
    }
    if (const auto offcut = json.maybe("offcut")) {
        plank.isOffcut = offcut->flag();
    }
    return plank;
}

std::vector<Length> readLengths(const Node& json, Length greatest) {
    std::vector<Length> lengths;
    for (const Node& item : json.items(1, longestList)) {
        lengths.push_back(item.length(Length::nm(1), greatest));
    }
    return lengths;
}

Json ofYard(const Yard& yard) {
    Json json = Json::object();
    json.add("thicknesses-nm", ofLengths(yard.thicknesses));
    json.add("widths-nm", ofLengths(yard.widths));
    json.add("lengths-nm", ofLengths(yard.lengths));
    for (const TallyInfo& info : tallies()) {
        if (info.tally == yard.tally) {
            json.add("counted", Json::ofText(std::string(info.key)));
        }
    }
    return json;
}

void readYard(const Node& json, Yard& yard) {
    yard.thicknesses = readLengths(json.at("thicknesses-nm"), RackLimits::thickness);
    yard.widths = readLengths(json.at("widths-nm"), RackLimits::width);
    yard.lengths = readLengths(json.at("lengths-nm"), RackLimits::length);
    const Node counted = json.at("counted");
    std::vector<std::string_view> known;
    for (const TallyInfo& info : tallies()) {
        if (info.key == counted.text()) {
            yard.tally = info.tally;
            return;
        }
        known.push_back(info.key);
    }
    counted.refuseWith(oneOf(known));
}

}  // namespace

Json ofTimber(const Timber& timber) {
    Json planks = Json::array();
    for (const Plank& plank : timber.rack.planks) {
        planks.items.push_back(ofPlank(plank));
    }
    Json pins = Json::array();
    for (const StripPin& pin : timber.pins) {
        Json one = Json::object();
        one.add("strip", Json::ofText(pin.strip));
        one.add("plank", Json::ofText(pin.plank));
        pins.items.push_back(std::move(one));
    }
    Json sawing = Json::object();
    for (const SawingLength& setting : sawingLengths()) {
        sawing.add(std::string(setting.key) + "-nm", ofLength(timber.sawing.*setting.value));
    }
    for (const SawingCount& setting : sawingCounts()) {
        sawing.add(setting.key, Json::ofNumber(timber.sawing.*setting.value));
    }
    sawing.add("rails-in-one-length", Json::ofBoolean(timber.railsInOneLength));
    Json json = Json::object();
    json.add("rack", std::move(planks));
    json.add("pins", std::move(pins));
    json.add("yard", ofYard(timber.yard));
    json.add("sawing", std::move(sawing));
    return json;
}

Timber readTimber(const Node& json, Timber timber) {
    if (const auto rack = json.maybe("rack")) {
        for (const Node& plank : rack->items(0, RackLimits::planks)) {
            timber.rack.planks.push_back(readPlank(plank));
        }
    }
    if (const auto pins = json.maybe("pins")) {
        for (const Node& pin : pins->items(0, mostPins)) {
            timber.pins.push_back({pin.at("strip").text(), pin.at("plank").text()});
        }
    }
    if (const auto yard = json.maybe("yard")) {
        readYard(*yard, timber.yard);
    }
    if (const auto sawing = json.maybe("sawing")) {
        for (const SawingLength& setting : sawingLengths()) {
            if (const auto value = sawing->maybe(std::string(setting.key) + "-nm")) {
                timber.sawing.*setting.value = value->length(Length(), setting.greatest);
            }
        }
        for (const SawingCount& setting : sawingCounts()) {
            if (const auto value = sawing->maybe(setting.key)) {
                timber.sawing.*setting.value = value->whole(setting.least, setting.greatest);
            }
        }
        if (const auto rails = sawing->maybe("rails-in-one-length")) {
            timber.railsInOneLength = rails->flag();
        }
    }
    return timber;
}

}  // namespace kerfwright
