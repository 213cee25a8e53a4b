// Where a joint that is dragged likes to stop.
#pragma once

#include "core/measure/length.h"

#include <vector>

namespace kerfwright {

enum class JointFit {
    Free,       ///< nothing in particular
    Step,       ///< the size before it is a whole number of steps
    Even,       ///< the two beside it are equal
    Neighbour,  ///< one of the two equals the next beyond it
    Mirror,     ///< it lies as far from its end as another joint from the other end
};

struct JointPlace {
    Length before;  ///< size of the column or row before the joint
    JointFit fit = JointFit::Free;
    friend bool operator==(const JointPlace&, const JointPlace&) = default;
};

/// The places that are more than a round number, for the joint after `index` (0 to the number of
/// `sizes` less two), by size and each once; the strongest fit where several agree: mirror, even,
/// neighbour. Both sizes beside the joint are within the limits of a cell. Sizes are in the order
/// of the field, each within the limits of a cell.
std::vector<JointPlace> jointMagnets(const std::vector<Length>& sizes, int index);

/// Where the joint stops when the hand would make the size before it `wanted`: the nearest magnet
/// within `reach`, else the nearest whole number of `step` (more than 0) that both sides allow.
JointPlace jointPlace(const std::vector<Length>& sizes, int index, Length wanted, Length reach,
                      Length step);

/// The next larger magnet from `sizes[index]` on, or the smallest where there is none; the size as
/// it is where there are no magnets.
Length nextMagnet(const std::vector<Length>& sizes, int index);
/// The sizes with the joint after `index` moved so that the size before it becomes `before`, and
/// its image from the other end moved alike, as far as the limits of a cell let both; a joint in
/// the middle is its own image and moves alone. The sum stays. Where the size before the joint lies
/// between the two, it is `before` to the nanometre below, since both sides of it move.
std::vector<Length> jointPairMoved(const std::vector<Length>& sizes, int index, Length before);
/// Why the joint is well placed as it is; `Free` where no magnet is there.
JointFit fitOf(const std::vector<Length>& sizes, int index);

}  // namespace kerfwright
