// A construction as the bench sees it: private to the plan of any depth (deep.cpp).
#pragma once

#include "core/glueup/plan.h"
#include "core/search/construction.h"
#include "core/search/picture.h"

#include <vector>

namespace kerfwright::deep {

/// A part of a node, as it lies in it.
struct Child {
    int node = -1;
    Placing placing;
    Length trimFirst, trimLast;  ///< sawn off along the child's own row
};

/// A block in the directions of the bench. End grain: the cross-section of a stick that lies on the
/// bench, seen from its near end; parts side by side. Long grain: the part seen from above, its
/// grain running down.
struct Node {
    Length across, down;
    int wood = -1;  ///< one strip; -1: glued
    bool sideBySide = true;
    std::vector<Child> children;
    int root = -1;  ///< the node from whose glue-up this one comes: itself, or its word in another
                    ///< height
    bool isWord = false;  ///< strips side by side, or panels of such: alike all the way down

    bool isGlued() const { return wood < 0; }
    /// Alike from top to bottom, so that it can be cut or thinned to any height.
    bool isUniform() const { return wood >= 0 || isWord; }
};

struct Nodes {
    std::vector<Node> all;  ///< each after its children; the last is the field
    const Node& operator[](int index) const { return all[static_cast<std::size_t>(index)]; }
    const Node& field() const { return all.back(); }
};

/// Every glued node but the field has its parts side by side where the grain stands up. A field
/// that is one word becomes a field of one slice. Where the grain runs across, all is mirrored
/// about the diagonal, so that it runs down.
Nodes nodesOf(const Construction& construction, Laying laying);

/// How a part lies: `upright` for slices that are stood up and for all of long grain, else for
/// sticks that lie on the bench.
Lay layOf(Placing placing, bool endGrain, bool stoodUp);

/// `placing`, and then mirrored about the diagonal as the field is where the grain runs across.
Placing transposedBack(Placing placing);

}  // namespace kerfwright::deep
