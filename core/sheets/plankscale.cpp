// How large planks are drawn.
#include "core/sheets/plankview.h"

#include <algorithm>

namespace kerfwright {
namespace {

// Widths over lengths at most, and the height of a strip in ems, so that it holds a line of text.
// Short strips have no room for it beside the numbers of their cuts: they hold it between them.
struct Room {
    double stretch, height;
};
constexpr Room usual{6, 1.62};
constexpr Room besideNumbers{9, 2.44};
constexpr double shortStrip = 4.8;  // ems

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

bool hasShortStrips(const Layout& layout, const Demand& demand, double along, double type) {
    for (const PlankCuts& cuts : layout.planks) {
        for (const PlankSection& section : cuts.sections) {
            for (const LaidStrip& strip : section.strips) {
                const Length length = demand.strips[static_cast<std::size_t>(strip.wanted)].length;
                if (section.strips.size() > 1 && length.toMm() * along < shortStrip * type) {
                    return true;
                }
            }
        }
    }
    return false;
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
        const Room& room = hasShortStrips(layout, demand, along, type) ? besideNumbers : usual;
        across = std::clamp(type * room.height / least.toMm(), along, along * room.stretch);
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
    const double across =
        std::clamp(type * usual.height / least.toMm(), along, along * usual.stretch);
    return {along, std::min(across, widest / width.toMm())};
}

}  // namespace kerfwright
