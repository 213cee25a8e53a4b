#include "core/sheets/bordersection.h"

#include "core/drawing/dimension.h"
#include "core/drawing/geometry.h"
#include "core/sheets/hatch.h"
#include "core/words/say.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <initializer_list>

namespace kerfwright {
namespace {

constexpr double em = 3.175;       // 9 pt, of letters and numbers
constexpr double solidRail = 14;   // mm of rail drawn beside its joinery
constexpr double solidField = 18;  // mm of field drawn beside it
constexpr double level = 7;        // mm from one line of dimensions to the next
constexpr double hatchPitch = 1.9;

/// Draws in mm of wood: x from the inside edge of the visible rail to the right, y down from the
/// top face.
class SectionPen {
public:
    SectionPen(const std::vector<Wood>& woods, const Notation& notation, const SectionLook& look)
        : woods_(woods)
        , notation_(notation)
        , look_(look) {
        for (const Wood& wood : woods) {
            drawing_.woods.push_back(wood.colour);
        }
    }

    void wood(double left, double right, double top, double bottom, int index) {
        const Box box{left * s(), top * s(), (right - left) * s(), (bottom - top) * s()};
        drawing_.marks.emplace_back(Rectangle{box, 0, {.fill = Ink::Wood, .wood = index}});
        addHatch(drawing_, corners(box), index, hatchPitch, 0.2);
    }

    void outline(std::vector<Point> points, bool closed) {
        for (Point& point : points) {
            point = {point.x * s(), point.y * s()};
        }
        drawing_.marks.emplace_back(
            Shape{std::move(points), closed, {.line = Ink::Text, .lineWidth = 0.35}});
    }
    void outline(double left, double right, double top, double bottom) {
        outline({{left, top}, {right, top}, {right, bottom}, {left, bottom}}, true);
    }

    /// Round wood of nobody's choice, such as a pin.
    void pin(double left, double right, double top, double bottom) {
        drawing_.marks.emplace_back(
            Rectangle{{left * s(), top * s(), (right - left) * s(), (bottom - top) * s()},
                      0,
                      {.fill = Ink::Paper, .line = Ink::Text, .lineWidth = 0.35}});
    }

    /// Where a part goes on that is not drawn.
    void broken(double x, double thickness) {
        const double at = x * s();
        const double middle = thickness * s() / 2;
        drawing_.marks.emplace_back(Shape{{{at, -1.5},
                                           {at, middle - 2},
                                           {at - 1.6, middle - 0.7},
                                           {at + 1.6, middle + 0.7},
                                           {at, middle + 2},
                                           {at, thickness * s() + 1.5}},
                                          false,
                                          {.line = Ink::Quiet, .lineWidth = 0.25}});
    }

    void letter(double left, double right, double top, double bottom, int index) {
        const std::string& letters = woods_[static_cast<std::size_t>(index)].letter;
        const double height = (bottom - top) * s();
        const double width = textWidth(letters, em, true) + 1.6;
        if (height < em || (right - left) * s() < width) {
            return;
        }
        const Point at{(left + right) / 2 * s(), (top + bottom) / 2 * s()};
        drawing_.marks.emplace_back(
            Rectangle{{at.x - width / 2, at.y - em * 0.68, width, em * 1.36},
                      0.6,
                      {.fill = Ink::Wood, .wood = index}});
        drawing_.marks.emplace_back(Text{.at = {at.x, at.y + em * 0.36},
                                         .text = letters,
                                         .size = em,
                                         .align = Align::Centre,
                                         .bold = true,
                                         .style = {.line = Ink::WoodLine, .wood = index}});
    }

    void words(double x, double y, const std::string& text, Align align) {
        drawing_.marks.emplace_back(Text{
            .at = {x, y}, .text = text, .size = em, .align = align, .style = {.line = Ink::Quiet}});
    }

    /// Dimensions above count their levels up from the top face, those below down from `objectY`.
    void above(double from, double to, int row, const std::string& name, Length value) {
        across(from, to, -level * row, 0, name, value);
    }
    void below(double from, double to, double objectY, int row, const std::string& name,
               Length value) {
        across(from, to, objectY * s() + level * row - 1, objectY * s(), name, value);
    }
    void down(double from, double to, double x, double objectX, Length value) {
        if (look_.dimensions && value > Length()) {
            addDimensionDown(drawing_, from * s(), to * s(), x, objectX * s(),
                             format(value, notation_));
        }
    }

    double s() const { return look_.scale; }

    double drawnRight() const { return drawn().right(); }

    Drawing taken() {
        drawing_.extent = drawn();
        return std::move(drawing_);
    }

private:
    Box drawn() const {
        Box all = bounds(drawing_.marks.front());
        for (const Mark& mark : drawing_.marks) {
            const Box box = bounds(mark);
            const double right = std::max(all.right(), box.right());
            const double bottom = std::max(all.bottom(), box.bottom());
            all.x = std::min(all.x, box.x);
            all.y = std::min(all.y, box.y);
            all.width = right - all.x;
            all.height = bottom - all.y;
        }
        return all;
    }

    void across(double from, double to, double y, double objectY, const std::string& name,
                Length value) {
        if (look_.dimensions && value > Length()) {
            addDimensionAcross(drawing_, from * s(), to * s(), y, objectY,
                               name + " " + format(value, notation_));
        }
    }

    const std::vector<Wood>& woods_;
    const Notation& notation_;
    const SectionLook& look_;
    Drawing drawing_;
};

/// Sizes in mm, as drawn.
struct RailShape {
    double rail = 0;   ///< of the visible rail as far as it is drawn
    double field = 0;  ///< of the field as far as it is drawn, from its edge
    double gap = 0;
    double thickness = 0;
    double railGroove = 0, fieldGroove = 0;
    double channelTop = 0, channelBottom = 0;  ///< of grooves and tongue
    double tongue = 0;
    double ledge = 0, ledgeThickness = 0;
    double inlay = 0, inlayDepth = 0;
    bool wholeRail = true;
};

RailShape shapeOf(const Board& board, const BorderFit& fit) {
    RailShape shape;
    shape.thickness = board.thickness.toMm();
    shape.gap = fit.gapX.value.toMm();
    shape.railGroove = fit.railGroove.value.toMm();
    shape.fieldGroove = fit.fieldGroove.value.toMm();
    shape.channelTop = fit.tongueFromFace.value.toMm();
    shape.channelBottom = shape.channelTop + fit.tongueThickness.value.toMm();
    shape.tongue = fit.tongueWidth.value.toMm();
    shape.ledge = fit.ledge.value.toMm();
    shape.ledgeThickness = fit.ledgeThickness.value.toMm();
    shape.inlay = board.border.hasInlay() ? board.border.inlayWidth.toMm() : 0;
    shape.inlayDepth = fit.inlayDepth.value.toMm();
    const double width = board.border.width.toMm();
    const double wanted = std::max(shape.railGroove, shape.inlay) + solidRail;
    // A stub of a few millimetres is better drawn than broken off.
    shape.wholeRail = width <= wanted * 1.5;
    shape.rail = shape.wholeRail ? width : wanted;
    const double pins = fit.pinFromEdge.value.toMm() + fit.pinDiameter.value.toMm();
    shape.field = std::max(shape.fieldGroove, pins) + solidField;
    return shape;
}

void append(std::vector<Point>& outline, std::initializer_list<Point> points) {
    for (const Point& point : points) {
        outline.push_back(point);
    }
}

/// The wood of the field where the section goes through it: halfway down its left edge.
int edgeWood(const Field& field) {
    const int piece = pieceAt(field, 0, rowAt(field, half(field.height())));
    return piece < 0 ? 0 : field.pieces[static_cast<std::size_t>(piece)].wood;
}

void drawRail(SectionPen& section, const Border& border, const RailShape& shape) {
    const int wood = border.wood;
    const double t = shape.thickness;
    const double left = -shape.rail;
    std::vector<Point> outline{{left, 0}, {0, 0}};
    if (shape.railGroove > 0) {
        const double in = -shape.railGroove;
        section.wood(left, in, 0, t, wood);
        section.wood(in, 0, 0, shape.channelTop, wood);
        section.wood(in, 0, shape.channelBottom, t, wood);
        append(outline, {{0, shape.channelTop},
                         {in, shape.channelTop},
                         {in, shape.channelBottom},
                         {0, shape.channelBottom}});
    } else {
        section.wood(left, 0, 0, t, wood);
    }
    if (shape.ledge > 0) {
        section.wood(0, shape.ledge, t - shape.ledgeThickness, t, wood);
        append(outline, {{0, t - shape.ledgeThickness},
                         {shape.ledge, t - shape.ledgeThickness},
                         {shape.ledge, t}});
    } else {
        outline.push_back({0, t});
    }
    outline.push_back({left, t});
    if (shape.inlay > 0) {
        section.wood(-shape.inlay, 0, 0, shape.inlayDepth, border.inlayWood);
        section.outline(-shape.inlay, 0, 0, shape.inlayDepth);
    }
    section.outline(outline, shape.wholeRail);
    section.letter(left, -shape.railGroove, shape.inlayDepth, t, wood);
    if (!shape.wholeRail) {
        section.broken(left, t);
    }
}

void drawField(SectionPen& section, int wood, const RailShape& shape) {
    const double t = shape.thickness;
    const double edge = shape.gap;
    const double in = edge + shape.fieldGroove;
    const double right = edge + shape.field;
    std::vector<Point> outline{{right, t}};
    section.wood(in, right, 0, t, wood);
    if (shape.ledge > 0) {
        section.wood(edge, in, 0, t - shape.ledgeThickness, wood);
        append(outline,
               {{in, t}, {in, t - shape.ledgeThickness}, {edge, t - shape.ledgeThickness}});
    } else {
        outline.push_back({edge, t});
        if (shape.fieldGroove > 0) {
            section.wood(edge, in, 0, shape.channelTop, wood);
            section.wood(edge, in, shape.channelBottom, t, wood);
            append(outline, {{edge, shape.channelBottom},
                             {in, shape.channelBottom},
                             {in, shape.channelTop},
                             {edge, shape.channelTop}});
        }
    }
    append(outline, {{edge, 0}, {right, 0}});
    section.outline(outline, false);
    section.letter(in, right, 0, t, wood);
    section.broken(right, t);
}

}  // namespace

Drawing drawRailSection(const Board& board, const std::vector<Wood>& woods, const BorderFit& fit,
                        const Notation& notation, const SectionLook& look) {
    const Border& border = board.border;
    if (!border.isThere() || border.design == BorderDesign::EndGrainBand) {
        return {};
    }
    SectionPen section(woods, notation, look);
    const RailShape shape = shapeOf(board, fit);
    const double t = shape.thickness;
    drawField(section, edgeWood(board.field), shape);
    drawRail(section, border, shape);
    if (shape.tongue > 0) {
        const double from = -shape.railGroove;
        section.wood(from, from + shape.tongue, shape.channelTop, shape.channelBottom, border.wood);
        section.outline(from, from + shape.tongue, shape.channelTop, shape.channelBottom);
    }
    if (fit.pinDiameter.value > Length()) {
        const double middle = shape.gap + fit.pinFromEdge.value.toMm();
        const double radius = fit.pinDiameter.value.toMm() / 2;
        section.pin(middle - radius, middle + radius, 0, t);
        section.above(shape.gap, middle, 1, sayIn("before a length", "pin"), fit.pinFromEdge.value);
    }

    const double right = shape.gap + shape.field;
    section.words(-shape.rail * section.s(), -1.4, say("top face"), Align::Left);
    section.above(0, shape.gap, 1, sayIn("before a length", "gap"), fit.gapX.value);
    section.above(-shape.inlay, 0, 2, sayIn("before a length", "inlay"),
                  shape.inlay > 0 ? border.inlayWidth : Length());
    // Numbers that find no room between their lines stand to the right of them. In this order no
    // line goes through one.
    int row = 1;
    section.below(shape.gap, shape.gap + shape.fieldGroove, t, row++,
                  shape.ledge > 0 ? sayIn("before a length", "rebate")
                                  : sayIn("before a length", "field groove"),
                  fit.fieldGroove.value);
    if (shape.ledge > 0) {
        section.below(0, shape.ledge, t, row++, sayIn("before a length", "ledge"), fit.ledge.value);
    } else if (shape.railGroove > 0) {
        section.below(-shape.railGroove, -shape.railGroove + shape.tongue, t, row++,
                      sayIn("before a length", "tongue"), fit.tongueWidth.value);
        section.below(-shape.railGroove, 0, t, row++, sayIn("before a length", "rail groove"),
                      fit.railGroove.value);
    } else {
        row = 1;
    }
    if (shape.wholeRail) {
        section.below(-shape.rail, 0, t, row, sayIn("before a length", "rail"), border.width);
    }
    const double beside = -shape.rail * section.s();
    section.down(0, shape.inlayDepth, beside - 4, -shape.rail, fit.inlayDepth.value);
    section.down(0, t, beside - (shape.inlay > 0 ? 4 + level : 4), -shape.rail, board.thickness);
    // Beyond the numbers that stand to the right of their lines.
    const double after = std::max(right * section.s(), section.drawnRight());
    if (shape.channelBottom > 0) {
        // A number without room stands below its lines: the lower size comes first, so that only
        // lines from above it lead past it.
        section.down(shape.channelTop, shape.channelBottom, after + level, right,
                     fit.tongueThickness.value);
        section.down(0, shape.channelTop, after + 2 * level, right, fit.tongueFromFace.value);
    } else if (shape.ledge > 0) {
        section.down(t - shape.ledgeThickness, t, after + level, right, fit.ledgeThickness.value);
    }
    return section.taken();
}

Drawing drawCornerSection(const Board& board, const std::vector<Wood>& woods, const BorderFit& fit,
                          const Notation& notation, const SectionLook& look) {
    const Border& border = board.border;
    if (!keysCorners(board)) {
        return {};
    }
    SectionPen section(woods, notation, look);
    const double t = board.thickness.toMm();
    const double depth = fit.splineDepth.value.toMm();
    const double top = fit.splineFromFace.value.toMm();
    const double bottom = top + border.splineThickness.toMm();
    const double right = depth + solidRail;
    section.wood(0, right, 0, t, border.wood);
    section.wood(0, depth, top, bottom, border.splineWood);
    section.outline(0, depth, top, bottom);
    section.outline({{right, 0}, {0, 0}, {0, t}, {right, t}}, false);
    section.letter(depth, right, 0, t, border.wood);
    section.letter(0, depth, top, bottom, border.splineWood);
    section.broken(right, t);
    section.words(0, -1.4, say("top face"), Align::Left);
    section.below(0, depth, t, 1, sayIn("before a length", "slot"), fit.splineDepth.value);
    const double after = std::max(right * section.s(), section.drawnRight());
    section.down(top, bottom, after + level, right, border.splineThickness);
    section.down(0, top, after + 2 * level, right, fit.splineFromFace.value);
    return section.taken();
}

double usualScale(double width, double height, double roomWidth, double roomHeight) {
    constexpr std::array<double, 6> usual{5, 2, 1, 0.5, 0.2, 0.1};  // ISO 5455
    for (const double scale : usual) {
        if (width * scale <= roomWidth && height * scale <= roomHeight) {
            return scale;
        }
    }
    return usual.back();
}

std::string scaleText(double scale) {
    return scale >= 1 ? std::to_string(std::lround(scale)) + " : 1"
                      : "1 : " + std::to_string(std::lround(1 / scale));
}

}  // namespace kerfwright
