#include "core/drawing/geometry.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

namespace kerfwright {
namespace {

constexpr double ascent = 0.76;   // of the em, DejaVu Sans: digits and capitals with a little air
constexpr double descent = 0.24;  // of the em

Box around(const std::vector<Point>& points, double more) {
    double left = std::numeric_limits<double>::max();
    double top = left;
    double right = -left;
    double bottom = -left;
    for (const Point& point : points) {
        left = std::min(left, point.x);
        right = std::max(right, point.x);
        top = std::min(top, point.y);
        bottom = std::max(bottom, point.y);
    }
    return {left - more, top - more, right - left + 2 * more, bottom - top + 2 * more};
}

double halfLine(const Style& style) {
    return style.line == Ink::None ? 0 : style.lineWidth / 2;
}

Box boundsOf(const Rectangle& rectangle) {
    return around(corners(rectangle.box), halfLine(rectangle.style));
}

Box boundsOf(const Shape& shape) {
    return around(shape.points, halfLine(shape.style));
}

Box boundsOf(const Line& line) {
    return around({line.from, line.to}, halfLine(line.style));
}

Box boundsOf(const Text& text) {
    double width = textWidth(text.text, text.size, text.bold);
    if (text.maxWidth > 0) {
        width = std::min(width, text.maxWidth);
    }
    double start = 0;
    if (text.align == Align::Centre) {
        start = -width / 2;
    } else if (text.align == Align::Right) {
        start = -width;
    }
    const Box flat{start, -ascent * text.size, width, (ascent + descent) * text.size};
    const double turn = text.degrees * std::numbers::pi / 180;
    std::vector<Point> points;
    for (const Point& corner : corners(flat)) {
        points.push_back({text.at.x + corner.x * std::cos(turn) - corner.y * std::sin(turn),
                          text.at.y + corner.x * std::sin(turn) + corner.y * std::cos(turn)});
    }
    return around(points, 0);
}

}  // namespace

std::vector<Point> corners(const Box& box) {
    return {
        {box.x, box.y}, {box.right(), box.y}, {box.right(), box.bottom()}, {box.x, box.bottom()}};
}

std::vector<Segment> hatchLines(const std::vector<Point>& convex, double degrees, double pitch) {
    std::vector<Segment> segments;
    if (convex.size() < 3 || pitch <= 0) {
        return segments;
    }
    const double turn = degrees * std::numbers::pi / 180;
    const Point along{std::cos(turn), std::sin(turn)};
    const Point across{-along.y, along.x};
    const auto distance = [&](const Point& p) { return p.x * across.x + p.y * across.y; };
    const auto place = [&](const Point& p) { return p.x * along.x + p.y * along.y; };

    double nearest = std::numeric_limits<double>::max();
    double farthest = -nearest;
    for (const Point& point : convex) {
        nearest = std::min(nearest, distance(point));
        farthest = std::max(farthest, distance(point));
    }
    const double slack = pitch * 1e-6;  // a line on the outline itself is no hatch
    for (double k = std::ceil((nearest + slack) / pitch); k * pitch < farthest - slack; ++k) {
        const double offset = k * pitch;
        double from = std::numeric_limits<double>::max();
        double to = -from;
        for (std::size_t i = 0; i < convex.size(); ++i) {
            const Point& a = convex[i];
            const Point& b = convex[(i + 1) % convex.size()];
            const double da = distance(a) - offset;
            const double db = distance(b) - offset;
            if ((da < 0) == (db < 0)) {
                continue;
            }
            const double part = da / (da - db);
            const double at = place(a) + (place(b) - place(a)) * part;
            from = std::min(from, at);
            to = std::max(to, at);
        }
        if (to > from) {
            const auto point = [&](double at) {
                return Point{along.x * at + across.x * offset, along.y * at + across.y * offset};
            };
            segments.emplace_back(point(from), point(to));
        }
    }
    return segments;
}

Box bounds(const Mark& mark) {
    return std::visit([](const auto& one) { return boundsOf(one); }, mark);
}

void place(Drawing& into, const Drawing& part, Point at, double scale) {
    if (into.woods.empty()) {
        into.woods = part.woods;
    }
    const auto moved = [&](Point p) {
        return Point{at.x + (p.x - part.extent.x) * scale, at.y + (p.y - part.extent.y) * scale};
    };
    into.marks.reserve(into.marks.size() + part.marks.size());
    for (Mark mark : part.marks) {
        if (auto* rectangle = std::get_if<Rectangle>(&mark)) {
            const Point corner = moved({rectangle->box.x, rectangle->box.y});
            rectangle->box = {corner.x, corner.y, rectangle->box.width * scale,
                              rectangle->box.height * scale};
            rectangle->radius *= scale;
            rectangle->style.lineWidth *= scale;
        } else if (auto* shape = std::get_if<Shape>(&mark)) {
            for (Point& point : shape->points) {
                point = moved(point);
            }
            shape->style.lineWidth *= scale;
        } else if (auto* line = std::get_if<Line>(&mark)) {
            line->from = moved(line->from);
            line->to = moved(line->to);
            line->style.lineWidth *= scale;
        } else if (auto* text = std::get_if<Text>(&mark)) {
            text->at = moved(text->at);
            text->size *= scale;
            text->maxWidth *= scale;
        }
        into.marks.push_back(std::move(mark));
    }
}

double fitting(const Box& extent, double width, double height) {
    return std::min(width / extent.width, height / extent.height);
}

}  // namespace kerfwright
