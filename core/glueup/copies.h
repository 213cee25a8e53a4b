// Copies of a stick: what each needs beyond its finished size, how large the stick has to be for
// them, and in which stages they are cut off it. Private to the plan of any depth (deep.cpp).
#pragma once

#include "core/glueup/nodes.h"
#include "core/glueup/plan.h"

#include <vector>

namespace kerfwright::deep {

/// What a copy needs beyond its finished size, in its own directions.
struct Sides {
    Figure left, right, top, bottom;
};

/// The sides of a rectangle after it was laid: clockwise, the left side comes to the top.
Sides laid(Sides sides, Placing placing);
/// Both together, equal terms put together.
Figure sum(Figure figure, const Figure& more);

/// A copy that an owner asks a node for.
struct Order {
    int owner = 0;  ///< index into the parts, as they are planned: owners first
    int use = 0;
    Length from, to;   ///< which stretch of the node's row, in its finished size
    Sides extra;       ///< top and bottom only where the node is not alike all the way down
    Figure thickness;  ///< as it lies on the bench; none where top and bottom say it
    Figure length;     ///< along the grain; none of a part that is glued copy by copy
    int marginSides = 0;
    bool forField = false;
    bool trueSides = false;  ///< its sides will be glued to other parts

    Length low() const { return from - extra.left.value; }
    Length high() const { return to + extra.right.value; }
    Length tall(const Node& node) const {
        return thickness.value > Length() ? thickness.value
                                          : node.down + extra.top.value + extra.bottom.value;
    }
};

/// How large the stick is while its copies are cut off it, from its finished edges outwards.
struct Extent {
    Length low, high;
    Figure thickness;    ///< of a stick that is alike all the way down
    Figure top, bottom;  ///< of any other
    Figure left, right;

    Length width() const { return high - low; }
};

/// What all these copies of the node need. Not empty.
Extent hullOf(const Node& node, std::vector<Order>::const_iterator begin,
              std::vector<Order>::const_iterator end);
/// So much of the node's row, as a working begins.
Figure stick(Length across, const Node& node);

/// Which copies are cut while the stick is how large, and how each is brought to its own size. The
/// slices are numbered as the load is ordered, from 0. `spares` of the longest that goes into the
/// field; in long grain, of the longest of all.
std::vector<Stage> stagesOf(const Node& node, const std::vector<Order>& load, const Extent& hull,
                            int spares, bool endGrain);

}  // namespace kerfwright::deep
