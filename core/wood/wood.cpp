#include "core/wood/wood.h"

#include "core/measure/number.h"
#include "core/wood/catalogue.h"
#include "core/wood/names.h"
#include "core/words/say.h"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <cmath>
#include <set>
#include <stdexcept>

namespace kerfwright {
namespace {

constexpr Length greatestSection = Length::mm(1'000'000);  // where lengths cease to be read

bool isLowerOrDigit(char c) {
    return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9');
}

bool isKey(const std::string& key) {
    return !key.empty() && std::all_of(key.begin(), key.end(),
                                       [](char c) { return isLowerOrDigit(c) || c == '-'; });
}

bool isLetter(const std::string& letter) {
    return (letter.size() == 1 || letter.size() == 2) &&
           std::all_of(letter.begin(), letter.end(), [](char c) { return c >= 'A' && c <= 'Z'; });
}

bool isBlank(const std::string& text) {
    return text.find_first_not_of(' ') == std::string::npos;
}

/// "#EBD3A6"
Colour colourFrom(const std::string& text) {
    const auto channel = [&](std::size_t at) {
        return static_cast<std::uint8_t>(std::stoi(text.substr(at, 2), nullptr, 16));
    };
    return {channel(1), channel(3), channel(5)};
}

/// The catalogue is compiled in and tested: a name that is none of them never leaves the house.
template <class Value, std::size_t n>
Value named(const std::array<FileName<Value>, n>& names, const nlohmann::json& json) {
    const auto text = json.get<std::string>();
    for (const FileName<Value>& each : names) {
        if (each.text == text) {
            return each.value;
        }
    }
    throw std::runtime_error("woods.json: no such name: " + text);
}

void readProperties(const nlohmann::json& entry, Wood& wood) {
    const auto source = [&](const char* key) {
        return entry.at(key).at("source").get<std::string>();
    };
    wood.botanical = entry.at("botanical").get<std::string>();
    const nlohmann::json& shrinkage = entry.at("shrinkage");
    wood.shrinkage = {shrinkage.at("radial").get<double>(),
                      shrinkage.at("tangential").get<double>(),
                      shrinkage.at("volumetric").get<double>()};
    const nlohmann::json& movement = entry.at("movement");
    wood.movement = {movement.at("radial").get<double>(), movement.at("tangential").get<double>()};
    wood.hardness = entry.at("hardness").at("newtons").get<double>();
    wood.pores = named(poreNames, entry.at("pores").at("kind"));
    wood.poreEnds = named(poreEndNames, entry.at("pores").at("ends"));
    wood.gluing = named(gluingNames, entry.at("gluing").at("ease"));
    wood.reactions = entry.at("reactions").at("text").get<std::string>();
    wood.food = entry.at("food").at("text").get<std::string>();
    wood.sources = {source("shrinkage"), source("movement"),  source("hardness"), source("pores"),
                    source("gluing"),    source("reactions"), source("food")};
}

std::vector<Wood> readCatalogue() {
    const nlohmann::json file = nlohmann::json::parse(detail::catalogueJson());
    const nlohmann::json& timber = file.at("timber");
    const Section section{Length::mm(timber.at("thickness-mm").get<std::int64_t>()),
                          Length::mm(timber.at("width-mm").get<std::int64_t>())};
    std::vector<Wood> woods;
    for (const nlohmann::json& entry : file.at("woods")) {
        Wood wood;
        wood.key = entry.at("key").get<std::string>();
        wood.name = entry.at("name").get<std::string>();
        wood.letter = entry.at("letter").get<std::string>();
        wood.colour = colourFrom(entry.at("colour").get<std::string>());
        wood.density = entry.at("density").get<double>();
        wood.timber = section;
        wood.source = entry.at("source").get<std::string>();
        readProperties(entry, wood);
        woods.push_back(std::move(wood));
    }
    return woods;
}

/// `entry` is to be said, with the wood in its place.
std::string entryName(const Wood& wood, std::size_t index, const char* entry) {
    return say(entry, isBlank(wood.name) ? std::to_string(index + 1) : wood.name);
}

/// Empty where the length may be the side of a section.
std::string sectionRule(Length side) {
    if (side <= Length()) {
        return say("must be more than 0");
    }
    return side < greatestSection ? "" : say("must be less than 1 km");
}

}  // namespace

const std::vector<Wood>& woodCatalogue() {
    static const std::vector<Wood> woods = readCatalogue();
    return woods;
}

std::string spokenName(const Wood& catalogued) {
    return sayIn("wood", catalogued.name);
}

Wood takenOver(Wood catalogued) {
    catalogued.name = spokenName(catalogued);
    for (std::string* text : {&catalogued.reactions, &catalogued.food}) {
        if (!text->empty()) {
            *text = sayIn("wood", *text);
        }
    }
    return catalogued;
}

const Wood* findWood(const std::vector<Wood>& woods, const std::string& key) {
    const int index = woodIndex(woods, key);
    return index < 0 ? nullptr : &woods[static_cast<std::size_t>(index)];
}

int woodIndex(const std::vector<Wood>& woods, const std::string& key) {
    const auto found =
        std::find_if(woods.begin(), woods.end(), [&](const Wood& wood) { return wood.key == key; });
    return found == woods.end() ? -1 : static_cast<int>(found - woods.begin());
}

std::vector<Fault> faults(const std::vector<Wood>& woods, const Notation& notation) {
    std::vector<Fault> found;
    std::set<std::string> keys;
    std::set<std::string> letters;
    for (std::size_t i = 0; i < woods.size(); ++i) {
        const Wood& wood = woods[i];
        const auto refuse = [&](const char* entry, std::string rule, std::string value) {
            found.push_back({entryName(wood, i, entry), std::move(rule), std::move(value)});
        };
        if (!isKey(wood.key)) {
            refuse(noted("Wood {1}, key"), say("must be lower case letters, digits and hyphens"),
                   wood.key);
        } else if (!keys.insert(wood.key).second) {
            refuse(noted("Wood {1}, key"), say("must differ from the keys of the other woods"),
                   wood.key);
        }
        if (isBlank(wood.name)) {
            refuse(noted("Wood {1}, name"), say("must not be empty"), "");
        }
        if (!isLetter(wood.letter)) {
            refuse(noted("Wood {1}, letter"), say("must be one or two capitals from A to Z"),
                   wood.letter);
        } else if (!letters.insert(wood.letter).second) {
            refuse(noted("Wood {1}, letter"),
                   say("must differ from the letters of the other woods"), wood.letter);
        }
        const auto checkNumber = [&](const char* entry, double value, double greatest,
                                     const char* rule) {
            if (!(value >= 0 && value <= greatest)) {
                refuse(entry, say(rule, formatFigures(greatest)), formatFigures(value));
            }
        };
        constexpr auto percents = noted("must be from 0 to {1} %, 0 where not known");
        constexpr auto coefficients =
            noted("must be from 0 to {1} for each 1 %, 0 where not known");
        checkNumber(noted("Wood {1}, density"), wood.density, WoodLimits::density,
                    noted("must be from 0 to {1} kg/m³, 0 where not known"));
        const auto checkSide = [&](const char* entry, Length side) {
            if (const std::string rule = sectionRule(side); !rule.empty()) {
                refuse(entry, rule, formatExact(side, notation));
            }
        };
        checkSide(noted("Wood {1}, timber thickness"), wood.timber.thickness);
        checkSide(noted("Wood {1}, timber width"), wood.timber.width);
        checkNumber(noted("Wood {1}, radial shrinkage"), wood.shrinkage.radial,
                    WoodLimits::shrinkage, percents);
        checkNumber(noted("Wood {1}, tangential shrinkage"), wood.shrinkage.tangential,
                    WoodLimits::shrinkage, percents);
        checkNumber(noted("Wood {1}, volumetric shrinkage"), wood.shrinkage.volumetric,
                    WoodLimits::shrinkage, percents);
        checkNumber(noted("Wood {1}, radial movement"), wood.movement.radial, WoodLimits::movement,
                    coefficients);
        checkNumber(noted("Wood {1}, tangential movement"), wood.movement.tangential,
                    WoodLimits::movement, coefficients);
        checkNumber(noted("Wood {1}, hardness"), wood.hardness, WoodLimits::hardness,
                    noted("must be from 0 to {1} N, 0 where not known"));
        if (const std::int64_t price = wood.price.minorPerCubicMetre;
            price < 0 || price > WoodLimits::price) {
            refuse(noted("Wood {1}, price"),
                   say("must be from 0 to {1} hundredths per m³, 0 where not known",
                       WoodLimits::price),
                   std::to_string(price));
        }
    }
    return found;
}

}  // namespace kerfwright
