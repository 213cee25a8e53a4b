// What the planks come to that a layout cuts and a shopping list buys.
#pragma once

#include "core/timber/timber.h"
#include "core/wood/timbercost.h"

namespace kerfwright {

/// Whole planks: those that `layout` cuts from `rack`, at their price or, where they have none, at
/// that of their wood; then those to buy, as the yard charges them. Offcuts that go back on the
/// rack are not taken off. `bought` is null where nothing was to be bought; strips that then found
/// no place are told as missing. `boards`: how many the layout makes.
TimberCost timberCost(const Rack& rack, const Layout& layout, const ShoppingList* bought,
                      const std::vector<Wood>& woods, const Notation& notation, int boards = 1);
/// Of all that a plan cuts and buys.
TimberCost timberCost(const TimberPlan& plan, const std::vector<Wood>& woods,
                      const Notation& notation, int boards = 1);

}  // namespace kerfwright
