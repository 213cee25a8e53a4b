#include "core/replay/profile.h"

#include <algorithm>

namespace kerfwright {
namespace {

Slab common(const Slab& a, const Slab& b) {
    return {std::max(a.out, b.out), std::min(a.outEnd, b.outEnd), std::max(a.down, b.down),
            std::min(a.downEnd, b.downEnd)};
}
bool isEmpty(const Slab& slab) {
    return slab.outEnd <= slab.out || slab.downEnd <= slab.down;
}
Area areaOf(const Slab& slab) {
    return area(slab.outEnd - slab.out, slab.downEnd - slab.down);
}

}  // namespace

Profile::Profile(Length width, Length thickness)
    : slabs_{{Length(), width, Length(), thickness}} {}

Length Profile::innerEdge(Length down, Length downEnd) const {
    Length edge;
    Length greatest;
    Length covered;
    for (const Slab& slab : slabs_) {
        greatest = std::max(greatest, slab.outEnd);
    }
    // The edge is straight where slabs that end at one line cover the whole height.
    std::vector<Length> ends;
    for (const Slab& slab : slabs_) {
        const Slab here = common(slab, {Length(), greatest, down, downEnd});
        if (!isEmpty(here)) {
            edge = std::max(edge, slab.outEnd);
        }
    }
    for (const Slab& slab : slabs_) {
        const Slab here = common(slab, {Length(), greatest, down, downEnd});
        if (!isEmpty(here) && slab.outEnd == edge) {
            covered += here.downEnd - here.down;
        }
    }
    return covered == downEnd - down ? edge : Length();
}

bool Profile::cut(const Slab& away) {
    if (isEmpty(away)) {
        return false;
    }
    Area solid;
    for (const Slab& slab : slabs_) {
        if (const Slab here = common(slab, away); !isEmpty(here)) {
            solid += areaOf(here);
        }
    }
    if (solid != areaOf(away)) {
        return false;
    }
    std::vector<Slab> rest;
    for (const Slab& slab : slabs_) {
        const Slab gone = common(slab, away);
        if (isEmpty(gone)) {
            rest.push_back(slab);
            continue;
        }
        const Slab around[] = {{slab.out, gone.out, slab.down, slab.downEnd},
                               {gone.outEnd, slab.outEnd, slab.down, slab.downEnd},
                               {gone.out, gone.outEnd, slab.down, gone.down},
                               {gone.out, gone.outEnd, gone.downEnd, slab.downEnd}};
        std::copy_if(std::begin(around), std::end(around), std::back_inserter(rest),
                     [](const Slab& one) { return !isEmpty(one); });
    }
    slabs_ = std::move(rest);
    return true;
}

Volume Profile::straight(Length length) const {
    Volume all;
    for (const Slab& slab : slabs_) {
        all += volume(areaOf(slab), length);
    }
    return all;
}

Volume Profile::mitred(Length longPoint) const {
    Volume all;
    for (const Slab& slab : slabs_) {
        // A trapezium from above: as long as it is halfway between its two edges.
        all += volume(areaOf(slab), longPoint - slab.out - slab.outEnd);
    }
    return all;
}

}  // namespace kerfwright
