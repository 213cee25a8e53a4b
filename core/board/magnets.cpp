#include "core/board/magnets.h"

#include "core/board/board.h"

#include <algorithm>
#include <numeric>

namespace kerfwright {
namespace {

struct Room {
    Length least, greatest;
    bool holds(Length size) const { return size >= least && size <= greatest; }
};

/// What the size before the joint may be.
Room roomOf(const std::vector<Length>& sizes, int index) {
    const auto first = static_cast<std::size_t>(index);
    const Length both = sizes[first] + sizes[first + 1];
    return {std::max(BoardLimits::leastCell, both - BoardLimits::greatestCell),
            std::min(BoardLimits::greatestCell, both - BoardLimits::leastCell)};
}

Length distance(Length a, Length b) {
    return a < b ? b - a : a - b;
}

int rank(JointFit fit) {
    switch (fit) {
    case JointFit::Mirror:
        return 0;
    case JointFit::Even:
        return 1;
    default:
        return 2;
    }
}

}  // namespace

std::vector<JointPlace> jointMagnets(const std::vector<Length>& sizes, int index) {
    const auto first = static_cast<std::size_t>(index);
    const Room room = roomOf(sizes, index);
    const Length both = sizes[first] + sizes[first + 1];
    std::vector<JointPlace> places;
    const auto offer = [&](Length before, JointFit fit) {
        if (room.holds(before)) {
            places.push_back({before, fit});
        }
    };
    const Length left = std::accumulate(sizes.begin(), sizes.begin() + index, Length());
    const Length whole = std::accumulate(sizes.begin(), sizes.end(), Length());
    Length edge;
    for (std::size_t joint = 0; joint + 1 < sizes.size(); ++joint) {
        edge += sizes[joint];
        if (joint != first) {
            offer(whole - edge - left, JointFit::Mirror);
        }
    }
    // The middle is its own mirror.
    if (whole.nm() % 2 == 0) {
        offer(half(whole) - left, JointFit::Mirror);
    }
    if (both.nm() % 2 == 0) {
        offer(half(both), JointFit::Even);
    }
    if (first > 0) {
        offer(sizes[first - 1], JointFit::Neighbour);
    }
    if (first + 2 < sizes.size()) {
        offer(both - sizes[first + 2], JointFit::Neighbour);
    }
    std::stable_sort(places.begin(), places.end(), [](const JointPlace& a, const JointPlace& b) {
        return a.before != b.before ? a.before < b.before : rank(a.fit) < rank(b.fit);
    });
    const auto same = [](const JointPlace& a, const JointPlace& b) { return a.before == b.before; };
    places.erase(std::unique(places.begin(), places.end(), same), places.end());
    return places;
}

JointPlace jointPlace(const std::vector<Length>& sizes, int index, Length wanted, Length reach,
                      Length step) {
    const Room room = roomOf(sizes, index);
    const Length clamped = std::clamp(wanted, room.least, room.greatest);
    JointPlace best;
    bool found = false;
    for (const JointPlace& place : jointMagnets(sizes, index)) {
        const Length far = distance(place.before, clamped);
        if (far <= reach && (!found || far < distance(best.before, clamped))) {
            best = place;
            found = true;
        }
    }
    if (found) {
        return best;
    }
    const Length below = Length::nm(clamped.nm() - clamped.nm() % step.nm());
    const Length above = below + step;
    const bool belowFits = room.holds(below);
    const bool aboveFits = room.holds(above);
    if (!belowFits && !aboveFits) {
        return {clamped, JointFit::Free};
    }
    const bool nearerBelow = clamped - below <= above - clamped;
    return {(belowFits && (nearerBelow || !aboveFits)) ? below : above, JointFit::Step};
}

Length nextMagnet(const std::vector<Length>& sizes, int index) {
    const Length now = sizes[static_cast<std::size_t>(index)];
    const std::vector<JointPlace> places = jointMagnets(sizes, index);
    for (const JointPlace& place : places) {
        if (place.before > now) {
            return place.before;
        }
    }
    return places.empty() ? now : places.front().before;
}

std::vector<Length> jointPairMoved(const std::vector<Length>& sizes, int index, Length before) {
    const auto first = static_cast<std::size_t>(index);
    const std::size_t image = sizes.size() - 2 - first;  // the joint after this size
    // How often each size takes part in the move; one between two joints that touch it takes twice.
    std::vector<int> share(sizes.size(), 0);
    ++share[first];
    --share[first + 1];
    if (image != first) {
        --share[image];
        ++share[image + 1];
    }
    Length by = Length::nm((before - sizes[first]).nm() / share[first]);
    for (std::size_t i = 0; i < sizes.size(); ++i) {
        const std::int64_t times = share[i] < 0 ? -share[i] : share[i];
        if (times == 0) {
            continue;
        }
        const Length shrink = Length::nm((sizes[i] - BoardLimits::leastCell).nm() / times);
        const Length grow = Length::nm((BoardLimits::greatestCell - sizes[i]).nm() / times);
        by = share[i] > 0 ? std::clamp(by, -shrink, grow) : std::clamp(by, -grow, shrink);
    }
    std::vector<Length> moved = sizes;
    for (std::size_t i = 0; i < sizes.size(); ++i) {
        moved[i] += by * share[i];
    }
    return moved;
}

JointFit fitOf(const std::vector<Length>& sizes, int index) {
    for (const JointPlace& place : jointMagnets(sizes, index)) {
        if (place.before == sizes[static_cast<std::size_t>(index)]) {
            return place.fit;
        }
    }
    return JointFit::Free;
}

}  // namespace kerfwright
