// With what a workpiece is flattened and how a strip comes out of its plank. Every sheet and the
// plan on the terminal take their words from here, so that no two of them disagree.
#pragma once

#include "core/sheets/record.h"
#include "core/shop/shop.h"
#include "core/wood/wood.h"

#include <string>

namespace kerfwright {

/// A workpiece at the flattening machine. `length` is along the grain, `width` across it; for end
/// grain they are the two sides.
struct FlatWork {
    Length width, length;
    Face face = Face::LongGrain;
    bool endJoints = false;  ///< slices glued end to end lie in the face
};

/// The workpiece of a step of the record.
FlatWork flatWork(const Record& record, const Flatten& flatten, int number);
bool planerTakes(const FlatWork& work, const Shop& shop);
/// "drum sander or router sled", or with the planer where it may be used.
std::string flatteningTools(const FlatWork& work, const Shop& shop);
/// Why there is no planer among the tools, as a sentence; empty where there is.
std::string whyNoPlaner(const FlatWork& work, const Shop& shop);

/// Thicker than any plank of its wood: the strip's thickness in the panel comes out of the plank's
/// width.
bool standsOnEdge(const MillLine& line, const Wood& wood);
/// Too short to be planed or ripped one at a time.
bool tooShortToMillSingly(const MillLine& line, const Shop& shop);

}  // namespace kerfwright
