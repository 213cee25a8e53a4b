// The rack once a layout has been sawn.
#pragma once

#include "core/timber/layout.h"

namespace kerfwright {

/// Without the planks that are cut, and with the offcuts that are kept as planks at the end: marked
/// as offcuts, labelled "P3 rest" ("P3 rest-2", where that is taken), with their share of the price
/// by area and with what of a defect lies on them. `layout` is one of `rack`.
Rack rackAfter(const Rack& rack, const Layout& layout);

/// Adds the planks of another rack; those whose labels are taken get other ones. Returns how many
/// that were.
int addPlanks(Rack& rack, const Rack& more);

/// `label`, or where that is taken the label with "-2", "-3", ... behind it.
std::string freeLabel(const Rack& rack, const std::string& label);

}  // namespace kerfwright
