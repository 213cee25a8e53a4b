// The pages of the timber: planks with their cuts, what is taken from where, and what to buy.
#pragma once

#include "core/sheets/flow.h"
#include "core/timber/timber.h"

namespace kerfwright {

/// Every plank that is cut, with its numbered cuts and what the saw is set to for them.
void addPlankCuts(std::vector<Draft>& drafts, const Matter& matter, const TimberPlan& plan);
/// What is wanted, which planks it is taken from, and how much of them is waste.
void addTimberList(std::vector<Draft>& drafts, const Matter& matter, const TimberPlan& plan);
/// What to take along to the yard; no page where nothing has to be bought.
void addShoppingSlip(std::vector<Draft>& drafts, const Matter& matter, const TimberPlan& plan);
/// All of these, from the yard to the saw, each settled.
void addTimber(std::vector<Draft>& drafts, const Matter& matter, const TimberPlan& plan);

}  // namespace kerfwright
