// The pages of the timber: planks with their cuts, what is taken from where, and what to buy.
#pragma once

#include "core/sheets/flow.h"
#include "core/timber/cutorder.h"
#include "core/timber/shopping.h"

namespace kerfwright {

/// What the pages read. `list` is null where nothing has to be bought.
struct TimberMatter {
    const Rack& rack;
    const Demand& demand;
    const CutRules& rules;
    const Layout& layout;
    const std::vector<SawCut>& cuts;
    const Yard& yard;
    const ShoppingList* list = nullptr;
};

/// Every plank that is cut, with its numbered cuts and what the saw is set to for them.
void addPlankCuts(std::vector<Draft>& drafts, const Matter& matter, const TimberMatter& timber);
/// What is wanted, which planks it is taken from, and how much of them is waste.
void addTimberList(std::vector<Draft>& drafts, const Matter& matter, const TimberMatter& timber);
/// What to take along to the yard; no page where nothing has to be bought.
void addShoppingSlip(std::vector<Draft>& drafts, const Matter& matter, const TimberMatter& timber);

}  // namespace kerfwright
