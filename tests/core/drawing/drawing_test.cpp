#include "core/drawing/dimension.h"
#include "core/drawing/drawing.h"
#include "core/drawing/geometry.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>

using namespace kerfwright;

// Advance widths read by hand with fonttools from DejaVu Sans 2.37: "A" 1401, "i" 569, "–" 1024,
// "½" 1985 of 2048; Bold: "A" 1585, "≈" 1716.
TEST(TextWidth, IsTheSumOfTheFontsAdvances) {
    EXPECT_DOUBLE_EQ(textWidth("", 10, false), 0);
    EXPECT_DOUBLE_EQ(textWidth("A", 2048, false), 1401);
    EXPECT_DOUBLE_EQ(textWidth("Ai–½", 2048, false), 1401 + 569 + 1024 + 1985);
    EXPECT_DOUBLE_EQ(textWidth("A≈", 2048, true), 1585 + 1716);
    EXPECT_DOUBLE_EQ(textWidth("é", 2048, false), 1260);
}

TEST(TextWidth, TakesBrokenUtf8ByTheByte) {
    EXPECT_GT(textWidth("\xE2\x88", 10, false), 0);
    EXPECT_GT(textWidth("\xFF", 10, false), 0);
    EXPECT_GT(textWidth("\x80z", 10, false), textWidth("z", 10, false));
}

TEST(Wrapped, BreaksOnlyAtSpaces) {
    EXPECT_EQ(wrapped("", 3, false, 10), std::vector<std::string>{});
    EXPECT_EQ(wrapped("one", 3, false, 0.1), std::vector<std::string>{"one"});
    EXPECT_EQ(wrapped("  one   two ", 3, false, 1000), std::vector<std::string>{"one two"});
    EXPECT_EQ(wrapped("one two", 3, false, textWidth("one tw", 3, false)),
              (std::vector<std::string>{"one", "two"}));
    EXPECT_EQ(wrapped("one two", 3, false, textWidth("one two", 3, false)),
              std::vector<std::string>{"one two"});
}

RC_GTEST_PROP(Wrapped, LosesNoWordAndKeepsTheWidth, ()) {
    const auto words = *rc::gen::container<std::vector<std::string>>(
        rc::gen::nonEmpty(rc::gen::container<std::string>(rc::gen::inRange('a', 'z'))));
    const double width = *rc::gen::inRange(1, 60);
    std::string text;
    for (const std::string& word : words) {
        text += (text.empty() ? "" : " ") + word;
    }
    std::string joined;
    for (const std::string& line : wrapped(text, 3.5, true, width)) {
        RC_ASSERT(textWidth(line, 3.5, true) <= width || line.find(' ') == std::string::npos);
        joined += (joined.empty() ? "" : " ") + line;
    }
    RC_ASSERT(joined == text);
}

TEST(Hatch, RunsFromEdgeToEdge) {
    const auto lines = hatchLines(corners({0, 0, 10, 4}), 0, 1);
    ASSERT_EQ(lines.size(), 3U);  // y = 1, 2, 3; not on the outline itself
    EXPECT_NEAR(lines[0].first.x, 0, 1e-9);
    EXPECT_NEAR(lines[0].second.x, 10, 1e-9);
    EXPECT_NEAR(lines[0].first.y, 1, 1e-9);
    EXPECT_TRUE(hatchLines({{0, 0}, {1, 1}}, 45, 1).empty());
    EXPECT_TRUE(hatchLines(corners({0, 0, 10, 4}), 45, 0).empty());
}

// The lines of a hatch, added up and multiplied by their distance, make the area: the trapezium
// rule.
TEST(Hatch, CoversTheAreaOfATriangle) {
    const std::vector<Point> triangle{{0, 0}, {30, 4}, {11, 25}};
    const double area = (30.0 * 25 - 11.0 * 4) / 2;
    for (const double degrees : {0.0, 20.0, 45.0, 90.0, -45.0}) {
        double sum = 0;
        for (const Segment& line : hatchLines(triangle, degrees, 0.05)) {
            sum += 0.05 * std::hypot(line.second.x - line.first.x, line.second.y - line.first.y);
        }
        EXPECT_NEAR(sum, area, area * 0.001) << degrees;
    }
}

RC_GTEST_PROP(Hatch, StaysInsideItsBox, ()) {
    const Box box{static_cast<double>(*rc::gen::inRange(-50, 50)),
                  static_cast<double>(*rc::gen::inRange(-50, 50)),
                  static_cast<double>(*rc::gen::inRange(1, 80)),
                  static_cast<double>(*rc::gen::inRange(1, 80))};
    const double degrees = *rc::gen::inRange(-180, 180);
    for (const Segment& line : hatchLines(corners(box), degrees, 0.7)) {
        for (const Point& end : {line.first, line.second}) {
            RC_ASSERT(end.x >= box.x - 1e-6 && end.x <= box.right() + 1e-6);
            RC_ASSERT(end.y >= box.y - 1e-6 && end.y <= box.bottom() + 1e-6);
        }
    }
}

TEST(Bounds, TurnWithTheText) {
    const Box flat = bounds(Text{.at = {10, 20}, .text = "AAAA", .size = 4});
    EXPECT_DOUBLE_EQ(flat.x, 10);
    EXPECT_NEAR(flat.width, 4 * 1401.0 / 2048 * 4, 1e-9);
    const Box turned = bounds(Text{.at = {10, 20}, .text = "AAAA", .size = 4, .degrees = -90});
    EXPECT_NEAR(turned.height, flat.width, 1e-9);
    EXPECT_NEAR(turned.bottom(), 20, 1e-9);  // a text turned by -90 runs up the page
    const Box right =
        bounds(Text{.at = {10, 20}, .text = "AAAA", .size = 4, .align = Align::Right});
    EXPECT_NEAR(right.right(), 10, 1e-9);
    const Box squeezed = bounds(Text{.at = {10, 20}, .text = "AAAA", .size = 4, .maxWidth = 3});
    EXPECT_DOUBLE_EQ(squeezed.width, 3);
}

TEST(Place, ScalesEverythingAlike) {
    Drawing part;
    part.extent = {5, 5, 10, 10};
    part.woods = {Colour{1, 2, 3}};
    part.marks.emplace_back(Rectangle{{5, 5, 10, 10}, 1, {.line = Ink::Joint, .lineWidth = 0.4}});
    part.marks.emplace_back(Text{.at = {10, 10}, .text = "x", .size = 4});
    Drawing page;
    place(page, part, {100, 200}, 0.5);
    const auto& rectangle = std::get<Rectangle>(page.marks[0]);
    EXPECT_EQ(rectangle.box, (Box{100, 200, 5, 5}));
    EXPECT_DOUBLE_EQ(rectangle.style.lineWidth, 0.2);
    EXPECT_DOUBLE_EQ(std::get<Text>(page.marks[1]).size, 2);
    EXPECT_EQ(page.woods, part.woods);
}

// ISO 129-1: the number stands above its line and is read from below or from the right (value from
// memory).
TEST(Dimension, NumberStandsAboveAndReadsFromBelowOrRight) {
    Drawing drawing;
    addDimensionAcross(drawing, 10, 60, 5, 8, "50");
    const auto& across = std::get<Text>(drawing.marks.back());
    EXPECT_LT(across.at.y, 5);
    EXPECT_DOUBLE_EQ(across.at.x, 35);
    EXPECT_EQ(across.degrees, 0);
    addDimensionDown(drawing, 10, 60, 5, 8, "50");
    const auto& down = std::get<Text>(drawing.marks.back());
    EXPECT_LT(down.at.x, 5);
    EXPECT_DOUBLE_EQ(down.at.y, 35);
    EXPECT_EQ(down.degrees, -90);
}
