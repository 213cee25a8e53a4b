// The numbers of cuts on the wood of a plank, in small plates. Each lies on its cut, or as close to
// it as room is, with a line that leads there; none lies on another, or on what must be seen.
#pragma once

#include "core/drawing/drawing.h"

#include <optional>
#include <string>
#include <vector>

namespace kerfwright {

struct CutToNumber {
    std::string number;
    Box cut;            ///< as it is drawn
    bool along = true;  ///< the plank: a rip; else the strip left of it is cut to length
};

struct Badge {
    Box box;
    std::string number;
    std::optional<Point> leader = {};  ///< of the cut, where the plate lies off it
};

/// Plates for cuts in the order of cutting. `taken`: what they keep clear of, as far as the plank
/// has room elsewhere. `type`: em height, mm.
std::vector<Badge> placeBadges(const std::vector<CutToNumber>& cuts, const Box& plank,
                               const std::vector<Box>& taken, double type);

void drawBadges(Drawing& drawing, const std::vector<Badge>& badges, double type);

/// Whether two boxes share any ground; those that touch do not.
bool overlap(const Box& a, const Box& b);

}  // namespace kerfwright
