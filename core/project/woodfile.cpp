#include "core/project/woodfile.h"

#include "core/project/project.h"
#include "core/wood/names.h"
#include "core/words/say.h"

#include <array>
#include <charconv>
#include <cstdio>

namespace kerfwright {
namespace {

struct NumberKey {
    const char* key;
    double& (*of)(Wood&);
};
constexpr std::array numberKeys{
    NumberKey{"shrinkage-radial", [](Wood& wood) -> double& { return wood.shrinkage.radial; }},
    NumberKey{"shrinkage-tangential",
              [](Wood& wood) -> double& { return wood.shrinkage.tangential; }},
    NumberKey{"shrinkage-volumetric",
              [](Wood& wood) -> double& { return wood.shrinkage.volumetric; }},
    NumberKey{"movement-radial", [](Wood& wood) -> double& { return wood.movement.radial; }},
    NumberKey{"movement-tangential",
              [](Wood& wood) -> double& { return wood.movement.tangential; }},
    NumberKey{"hardness", [](Wood& wood) -> double& { return wood.hardness; }},
};

struct SourceKey {
    const char* key;
    std::string WoodSources::*of;
};
constexpr std::array sourceKeys{SourceKey{"shrinkage", &WoodSources::shrinkage},
                                SourceKey{"movement", &WoodSources::movement},
                                SourceKey{"hardness", &WoodSources::hardness},
                                SourceKey{"pores", &WoodSources::pores},
                                SourceKey{"gluing", &WoodSources::gluing},
                                SourceKey{"reactions", &WoodSources::reactions},
                                SourceKey{"food", &WoodSources::food}};

void addProperties(Json& json, Wood wood) {
    json.add("botanical", Json::ofText(wood.botanical));
    for (const NumberKey& number : numberKeys) {
        json.add(number.key, Json::ofNumber(number.of(wood)));
    }
    json.add("pores", named(poreNames, wood.pores));
    json.add("pore-ends", named(poreEndNames, wood.poreEnds));
    json.add("gluing", named(gluingNames, wood.gluing));
    json.add("reactions", Json::ofText(wood.reactions));
    json.add("food", Json::ofText(wood.food));
    json.add("rings", named(ringNames, wood.rings));
    json.add("price-per-m3", Json::ofNumber(wood.price.minorPerCubicMetre));
    Json sources = Json::object();
    for (const SourceKey& source : sourceKeys) {
        sources.add(source.key, Json::ofText(wood.sources.*source.of));
    }
    json.add("sources", std::move(sources));
}

/// Version 1 began without these, so each may be missing.
void readProperties(const Node& json, Wood& wood) {
    const auto readText = [](const Node& from, const char* key, std::string& to) {
        if (const auto node = from.maybe(key)) {
            to = node->text();
        }
    };
    const auto readName = [&json](const char* key, const auto& names, auto& to) {
        if (const auto node = json.maybe(key)) {
            to = node->name(names);
        }
    };
    readText(json, "botanical", wood.botanical);
    for (const NumberKey& number : numberKeys) {
        if (const auto node = json.maybe(number.key)) {
            number.of(wood) = node->real();
        }
    }
    readName("pores", poreNames, wood.pores);
    readName("pore-ends", poreEndNames, wood.poreEnds);
    readName("gluing", gluingNames, wood.gluing);
    readText(json, "reactions", wood.reactions);
    readText(json, "food", wood.food);
    readName("rings", ringNames, wood.rings);
    if (const auto node = json.maybe("price-per-m3")) {
        wood.price.minorPerCubicMetre = node->whole(0, WoodLimits::price);
    }
    if (const auto sources = json.maybe("sources")) {
        for (const SourceKey& source : sourceKeys) {
            readText(*sources, source.key, wood.sources.*source.of);
        }
    }
}

Json ofColour(Colour colour) {
    std::array<char, 8> text{};
    std::snprintf(text.data(), text.size(), "#%02x%02x%02x", unsigned{colour.red},
                  unsigned{colour.green}, unsigned{colour.blue});
    return Json::ofText(text.data());
}

Colour readColour(const Node& json) {
    const std::string& text = json.text();
    std::uint32_t value = 0;
    const char* const end = text.data() + text.size();
    if (text.size() != 7 || text.front() != '#' ||
        std::from_chars(text.data() + 1, end, value, 16).ptr != end) {
        json.refuseWith(say("must be a colour such as {1}", "#ebd3a6"));
    }
    const auto part = [value](unsigned shift) {
        return static_cast<std::uint8_t>((value >> shift) & 0xFFU);
    };
    return {part(16), part(8), part(0)};
}

}  // namespace

Json ofWoods(const std::vector<Wood>& woods) {
    Json all = Json::array();
    for (const Wood& wood : woods) {
        Json json = Json::object();
        json.add("key", Json::ofText(wood.key));
        json.add("name", Json::ofText(wood.name));
        json.add("letter", Json::ofText(wood.letter));
        json.add("colour", ofColour(wood.colour));
        json.add("density", Json::ofNumber(wood.density));
        json.add("timber-thickness-nm", ofLength(wood.timber.thickness));
        json.add("timber-width-nm", ofLength(wood.timber.width));
        json.add("source", Json::ofText(wood.source));
        addProperties(json, wood);
        json.startsLine = true;
        all.items.push_back(std::move(json));
    }
    return all;
}

std::vector<Wood> readWoods(const Node& json) {
    std::vector<Wood> woods;
    for (const Node& item : json.items(1, ProjectLimits::woods)) {
        Wood wood;
        wood.key = item.at("key").text();
        wood.name = item.at("name").text();
        wood.letter = item.at("letter").text();
        wood.colour = readColour(item.at("colour"));
        wood.density = item.at("density").real();
        wood.timber.thickness = item.at("timber-thickness-nm").length();
        wood.timber.width = item.at("timber-width-nm").length();
        wood.source = item.at("source").text();
        readProperties(item, wood);
        woods.push_back(std::move(wood));
    }
    return woods;
}

}  // namespace kerfwright
