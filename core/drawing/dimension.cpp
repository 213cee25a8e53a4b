#include "core/drawing/dimension.h"

#include <cmath>

namespace kerfwright {
namespace {

constexpr double arrowLength = 2.0;  // mm
constexpr double arrowHalf = 0.42;   // mm
constexpr double overshoot = 1.2;    // mm that an extension line goes past the dimension line

/// In its own frame the dimension runs along u at height v; `put` turns that into the page's.
template <class Put>
void addDimension(Drawing& drawing, double from, double to, double v, double objectV,
                  const std::string& number, const DimensionLook& look, double degrees, Put put) {
    const Style thin{.line = look.ink, .lineWidth = 0.18};
    const double side = objectV < v ? 1 : -1;
    for (const double u : {from, to}) {
        drawing.marks.emplace_back(
            Line{put(u, objectV + side * look.gap), put(u, v + side * overshoot), thin});
    }
    drawing.marks.emplace_back(Line{put(from, v), put(to, v), thin});
    // Arrows point at the extension lines from inside, or from outside where there is no room.
    const bool inside = std::abs(to - from) > 3 * arrowLength;
    const double lean = (to > from ? 1 : -1) * (inside ? 1 : -1);
    const Style solid{.fill = look.ink};
    const auto arrow = [&](double tip, double towards) {
        drawing.marks.emplace_back(
            Shape{{put(tip, v), put(tip + towards * arrowLength, v - arrowHalf),
                   put(tip + towards * arrowLength, v + arrowHalf)},
                  true,
                  solid});
    };
    arrow(from, lean);
    arrow(to, -lean);
    double at = (from + to) / 2;
    Align align = Align::Centre;
    const double width = textWidth(number, look.size, look.bold);
    if (width + 1 > std::abs(to - from)) {
        // No room between the lines: the number stands past the end, on the line drawn on.
        const double shelf = (inside ? 0 : arrowLength) + 1;
        drawing.marks.emplace_back(Line{put(to, v), put(to + shelf + width, v), thin});
        at = to + shelf;
        align = degrees == 0 ? Align::Left : Align::Right;  // turned text runs back to the line
    }
    drawing.marks.emplace_back(Text{.at = put(at, v - 0.9),
                                    .text = number,
                                    .size = look.size,
                                    .align = align,
                                    .bold = look.bold,
                                    .degrees = degrees,
                                    .style = {.line = look.number}});
}

}  // namespace

void addDimensionAcross(Drawing& drawing, double from, double to, double y, double objectY,
                        const std::string& number, const DimensionLook& look) {
    addDimension(drawing, from, to, y, objectY, number, look, 0, [](double u, double v) {
        return Point{u, v};
    });
}

void addDimensionDown(Drawing& drawing, double from, double to, double x, double objectX,
                      const std::string& number, const DimensionLook& look) {
    addDimension(drawing, from, to, x, objectX, number, look, -90, [](double u, double v) {
        return Point{v, u};
    });
}

}  // namespace kerfwright
