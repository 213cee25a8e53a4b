// How large planks are drawn.
#include "core/sheets/plankview.h"

#include <algorithm>

namespace kerfwright {
namespace {

constexpr double mostStretch = 6;  // widths over lengths
constexpr double perStrip = 1.62;  // height of a strip that holds a line of text, in ems

Length narrowest(const Layout& layout, const Demand& demand) {
    Length least;
    for (const PlankCuts& cuts : layout.planks) {
        for (const PlankSection& section : cuts.sections) {
            for (const LaidStrip& strip : section.strips) {
                const Length across = acrossPlank(
                    demand.strips[static_cast<std::size_t>(strip.wanted)], strip.onEdge);
                least = least == Length() ? across : std::min(least, across);
            }
        }
    }
    return least;
}

}  // namespace

PlankScale scaleOf(const Rack& rack, const Layout& layout, const Demand& demand, double length,
                   double type, double widest) {
    Length longest, width;
    for (const PlankCuts& cuts : layout.planks) {
        const Plank& plank = rack.planks[static_cast<std::size_t>(cuts.plank)];
        longest = std::max(longest, plank.length);
        width = std::max(width, plank.width);
    }
    if (longest == Length()) {
        return {};
    }
    const double along = length / longest.toMm();
    const Length least = narrowest(layout, demand);
    double across = along;
    if (least > Length()) {
        across = std::clamp(type * perStrip / least.toMm(), along, along * mostStretch);
    }
    return {along, std::min(across, std::max(widest / width.toMm(), 1e-6))};
}

PlankScale scaleOf(const std::vector<Plank>& planks, double length, double type, double widest) {
    Length longest, width, least;
    for (const Plank& plank : planks) {
        longest = std::max(longest, plank.length);
        width = std::max(width, plank.width);
        least = least == Length() ? plank.width : std::min(least, plank.width);
    }
    if (longest == Length()) {
        return {};
    }
    const double along = length / longest.toMm();
    const double across = std::clamp(type * perStrip / least.toMm(), along, along * mostStretch);
    return {along, std::min(across, widest / width.toMm())};
}

}  // namespace kerfwright
