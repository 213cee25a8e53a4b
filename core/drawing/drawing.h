// A picture as plain data, in millimetres, y down. One painter in `ui/paint` puts it on the screen,
// on paper, into PNG, SVG and PDF; they differ only in the transform and the device.
//
// Colours are roles, resolved by a theme when painted; woods name their index. There are no clips,
// no images and no pattern brushes, because not every device keeps them: what must be clipped is
// clipped here, hatch is lines.
#pragma once

#include "core/drawing/colour.h"

#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace kerfwright {

/// mm. Floating point is right here: these are pixels to be, not cuts to be made.
struct Point {
    double x = 0;
    double y = 0;
    friend bool operator==(const Point&, const Point&) = default;
};

struct Box {
    double x = 0;
    double y = 0;
    double width = 0;
    double height = 0;
    double right() const { return x + width; }
    double bottom() const { return y + height; }
    friend bool operator==(const Box&, const Box&) = default;
};

/// What a colour means.
enum class Ink {
    None,
    Paper,  ///< the sheet itself
    Text,
    Quiet,       ///< secondary text and thin rules
    Rule,        ///< table lines, frames
    Joint,       ///< glue lines
    ExtraJoint,  ///< joints that the plan adds inside a piece
    Cut,         ///< saw cuts
    Waste,       ///< what is cut off
    Accent,      ///< the one strong colour
    Warning,
    Band,      ///< light ground behind text, table heads
    Wood,      ///< colour of `Style::wood`
    WoodLine,  ///< hatch and letters on `Style::wood`: dark or light, whichever reads
};

struct Style {
    Ink fill = Ink::None;
    Ink line = Ink::None;
    double lineWidth = 0.2;  ///< mm
    bool dashed = false;
    int wood = -1;  ///< for Ink::Wood and Ink::WoodLine
    friend bool operator==(const Style&, const Style&) = default;
};

struct Shape {
    std::vector<Point> points;
    bool closed = true;
    Style style = {};
    friend bool operator==(const Shape&, const Shape&) = default;
};

struct Rectangle {
    Box box;
    double radius = 0;
    Style style = {};
    friend bool operator==(const Rectangle&, const Rectangle&) = default;
};

struct Line {
    Point from;
    Point to;
    Style style = {};
    friend bool operator==(const Line&, const Line&) = default;
};

enum class Align { Left, Centre, Right };

struct Text {
    Point at;           ///< on the baseline
    std::string text;   ///< UTF-8, one line
    double size = 3.5;  ///< em height in mm; 9 pt is 3.175 mm
    Align align = Align::Left;
    bool bold = false;
    double degrees = 0;   ///< clockwise about `at`; 0 or -90
    double maxWidth = 0;  ///< mm; painted narrower where the font at hand is wider; 0: as it comes
    Style style = {};     ///< colour in `line`
    friend bool operator==(const Text&, const Text&) = default;
};

using Mark = std::variant<Rectangle, Shape, Line, Text>;

struct Drawing {
    Box extent;  ///< what the drawing means to show
    std::vector<Mark> marks;
    std::vector<Colour> woods;  ///< colours of the woods by index
    friend bool operator==(const Drawing&, const Drawing&) = default;
};

/// Width of a text in mm, from the advance widths of the font that is drawn with (DejaVu Sans).
double textWidth(std::string_view text, double size, bool bold);
/// Breaks at spaces so that no line is wider than `width` mm, unless a single word is.
std::vector<std::string> wrapped(std::string_view text, double size, bool bold, double width);

}  // namespace kerfwright
