// All that the maker types and all that is saved. Everything else is computed from it.
#pragma once

#include "core/board/board.h"
#include "core/board/recipe.h"
#include "core/board/seento.h"
#include "core/board/use.h"
#include "core/glueup/plan.h"
#include "core/measure/notation.h"
#include "core/shop/benchrates.h"
#include "core/shop/glueshop.h"
#include "core/shop/pricing.h"
#include "core/shop/shop.h"
#include "core/timber/timber.h"
#include "core/wood/moisture.h"
#include "core/wood/wood.h"

#include <optional>
#include <string>
#include <vector>

namespace kerfwright {

struct Titles {
    std::string name;   ///< "Hut draughts board"
    std::string maker;  ///< "Tarn Hut Joinery"
    std::string date;   ///< as typed; printed as it is, never taken from a clock
    std::string note;
    friend bool operator==(const Titles&, const Titles&) = default;
};

struct Project {
    Titles titles;
    Notation notation;
    Board board;
    std::optional<Recipe> recipe;  ///< lays out the field of the board; empty: a free field
    std::vector<Wood> woods;  ///< those offered for painting, in the order of the chips; 1 to 32
    Shop shop;
    Choices choices;
    Climate climate;  ///< of the timber when it is glued, and of the place of use
    GlueShop glue;
    BoardPurpose purpose;
    BenchRates rates;
    Timber timber;
    std::string currency;  ///< what the prices of the woods are in: "€", "CHF"; may be empty
    Pricing pricing;       ///< what goes into a quote
    std::vector<SeenTo> seenTo;  ///< cautions that need no more looking after; the oldest first
    std::string unknownKeys;     ///< JSON of what a file held that this version does not know; kept
    friend bool operator==(const Project&, const Project&) = default;
};

struct ProjectLimits {
    static constexpr int woods = 32;
    static constexpr std::size_t textBytes = 10'000;
    static constexpr std::size_t currencyBytes = 16;
};

/// A first board to play with: an 8 x 8 chequer in the units asked for.
Project newProject(Unit unit);

/// Has lengths written, and bare numbers read, in `unit`; no length of the board changes. A shop
/// that is as this program set it up for the other unit becomes the one for `unit`, so that its
/// settings are numbers that can be set there; a shop that the maker changed stays.
void setUnit(Project& project, Unit unit);

/// After a change of the field: the recipe follows where it still lays out what is there, in other
/// sizes or counts, and is dropped where the field has gone its own way.
void settleRecipe(Project& project);

/// Everything wrong with it, in the order of the form.
std::vector<Fault> faults(const Project& project);

}  // namespace kerfwright
