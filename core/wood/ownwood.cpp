#include "core/wood/ownwood.h"

#include "core/words/say.h"

#include <algorithm>

namespace kerfwright {
namespace {

constexpr Colour ownColour{176, 136, 92};  // between the catalogue's light and dark ones

bool isTaken(const std::vector<Wood>& woods, const std::string Wood::*member,
             const std::string& text) {
    return std::any_of(woods.begin(), woods.end(),
                       [&](const Wood& wood) { return wood.*member == text; });
}

bool isFree(const std::vector<Wood>& taken, const std::string Wood::*member,
            const std::string& text) {
    return !isTaken(taken, member, text) && !isTaken(woodCatalogue(), member, text);
}

std::string freeLetter(const std::vector<Wood>& taken) {
    for (char first = 'A'; first <= 'Z'; ++first) {
        for (char second = 'A'; second <= 'Z'; ++second) {
            std::string letter{first, second};
            if (isFree(taken, &Wood::letter, letter)) {
                return letter;
            }
        }
    }
    return "A";  // 676 woods are more than a project may have
}

template <class Value>
void renew(const Value& now, const Value& was, const Value& unknown, std::string& source,
           const Value* catalogue, const std::string* catalogueSource) {
    if (now == was) {
        return;
    }
    if (catalogue != nullptr && now == *catalogue) {
        source = *catalogueSource;
    } else {
        source = now == unknown ? "" : ownSource;
    }
}

}  // namespace

Wood ownWood(const std::vector<Wood>& taken) {
    Wood wood;
    int number = 1;
    while (!isFree(taken, &Wood::key, "own-wood-" + std::to_string(number))) {
        ++number;
    }
    wood.key = "own-wood-" + std::to_string(number);
    wood.name = number == 1 ? say("Own wood") : say("Own wood {1}", number);
    wood.letter = freeLetter(taken);
    wood.colour = ownColour;
    wood.timber = woodCatalogue().front().timber;
    return wood;
}

void renewSources(Wood& changed, const Wood& before) {
    const Wood* known = findWood(woodCatalogue(), changed.key);
    const auto see = [&](auto Wood::*value, std::string WoodSources::*source) {
        renew(changed.*value, before.*value, {}, changed.sources.*source,
              known == nullptr ? nullptr : &(known->*value),
              known == nullptr ? nullptr : &(known->sources.*source));
    };
    see(&Wood::shrinkage, &WoodSources::shrinkage);
    see(&Wood::movement, &WoodSources::movement);
    see(&Wood::hardness, &WoodSources::hardness);
    see(&Wood::pores, &WoodSources::pores);
    see(&Wood::poreEnds, &WoodSources::pores);
    see(&Wood::gluing, &WoodSources::gluing);
    see(&Wood::reactions, &WoodSources::reactions);
    see(&Wood::food, &WoodSources::food);
    renew(changed.density, before.density, 0.0, changed.source,
          known == nullptr ? nullptr : &known->density,
          known == nullptr ? nullptr : &known->source);
}

}  // namespace kerfwright
