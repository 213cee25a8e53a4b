// A rail seen on its end: what is left of it when grooves and rebates have been cut, and what was
// glued in. All of it runs from end to end.
//
// Out is measured from the rail's outer edge inwards, down from its top face.
#pragma once

#include "core/measure/length.h"

#include <vector>

namespace kerfwright {

/// A rectangle of wood in the profile.
struct Slab {
    Length out, outEnd;
    Length down, downEnd;
};

class Profile {
public:
    Profile() = default;
    Profile(Length width, Length thickness);

    /// Distance from the outer edge to the inner one between two depths; 0 where that is not one
    /// straight edge.
    Length innerEdge(Length down, Length downEnd) const;
    /// Takes a rectangle out. False, and nothing is changed, where it is not solid wood all over.
    bool cut(const Slab& away);
    void put(const Slab& slab) { slabs_.push_back(slab); }
    /// For a blank of that length, or a square-ended rail.
    Volume straight(Length length) const;
    /// For a rail with both ends mitred at 45°, measured from long point to long point.
    Volume mitred(Length longPoint) const;

private:
    std::vector<Slab> slabs_;
};

}  // namespace kerfwright
