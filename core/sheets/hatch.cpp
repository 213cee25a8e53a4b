#include "core/sheets/hatch.h"

#include "core/drawing/geometry.h"

#include <array>

namespace kerfwright {
namespace {

struct Direction {
    double degrees;
    bool crossed;
};

// Those that are easiest to tell apart come first.
constexpr std::array<Direction, 8> directions = {{
    {45, false},
    {-45, false},
    {0, false},
    {90, false},
    {45, true},
    {0, true},
    {20, false},
    {-20, true},
}};
constexpr std::array<double, 4> densities = {1.0, 0.55, 1.8, 0.8};

}  // namespace

void addHatch(Drawing& drawing, const std::vector<Point>& convex, int wood, double pitch,
              double lineWidth) {
    if (wood <= 0) {
        return;
    }
    const auto index = static_cast<std::size_t>(wood - 1);
    const Direction direction = directions[index % directions.size()];
    const std::size_t round = (index / directions.size()) % densities.size();
    const Style style{.line = Ink::WoodLine, .lineWidth = lineWidth, .wood = wood};
    const auto lay = [&](double degrees) {
        for (const Segment& segment : hatchLines(convex, degrees, pitch * densities[round])) {
            drawing.marks.emplace_back(Line{segment.first, segment.second, style});
        }
    };
    lay(direction.degrees);
    if (direction.crossed) {
        lay(direction.degrees + 90);
    }
}

}  // namespace kerfwright
