#include "core/drawing/geometry.h"
#include "core/sheets/boardview.h"
#include "core/sheets/hatch.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>
#include <set>

using namespace kerfwright;

namespace {

Board boardOf(int columns, int rows, Length border) {
    Board board;
    board.thickness = Length::mm(40);
    board.field = plainGrid(columns, rows, Length::mm(30), Length::mm(20), 0);
    for (Piece& piece : board.field.pieces) {
        piece.wood = (piece.column + piece.row) % 2;
    }
    board.border = {border, 1};
    return board;
}

std::vector<Wood> twoWoods() {
    return {woodCatalogue().at(0), woodCatalogue().at(1)};
}

double areaOf(const std::vector<Point>& points) {
    double twice = 0;
    for (std::size_t i = 0; i < points.size(); ++i) {
        const Point& a = points[i];
        const Point& b = points[(i + 1) % points.size()];
        twice += a.x * b.y - b.x * a.y;
    }
    return std::abs(twice) / 2;
}

template <class Kind>
std::vector<Kind> marksOf(const Drawing& drawing) {
    std::vector<Kind> all;
    for (const Mark& mark : drawing.marks) {
        if (const auto* one = std::get_if<Kind>(&mark)) {
            all.push_back(*one);
        }
    }
    return all;
}

/// Length of all drawn joints inside the field.
double jointLength(const Drawing& drawing, Ink ink) {
    double sum = 0;
    for (const Line& line : marksOf<Line>(drawing)) {
        if (line.style.line == ink) {
            sum += std::hypot(line.to.x - line.from.x, line.to.y - line.from.y);
        }
    }
    return sum;
}

}  // namespace

TEST(BoardView, CoversTheBoardWithWood) {
    const Board board = boardOf(4, 3, Length::mm(25));
    const Drawing drawing = drawBoard(board, twoWoods(), {}, {});
    EXPECT_EQ(drawing.extent, (Box{0, 0, 170, 110}));
    double area = 0;
    for (const Rectangle& rectangle : marksOf<Rectangle>(drawing)) {
        area += rectangle.style.fill == Ink::Wood ? rectangle.box.width * rectangle.box.height : 0;
    }
    const std::vector<Shape> rails = marksOf<Shape>(drawing);
    ASSERT_EQ(rails.size(), 4U);
    for (const Shape& rail : rails) {
        EXPECT_EQ(rail.points.size(), 4U);  // mitred at both ends: a trapezium
        area += areaOf(rail.points);
    }
    EXPECT_NEAR(area, 170 * 110, 1e-6);
}

TEST(BoardView, LeavesTheBorderOutWhereAskedTo) {
    BoardViewOptions options;
    options.wholeBoard = false;
    const Drawing drawing = drawBoard(boardOf(4, 3, Length::mm(25)), twoWoods(), {}, options);
    EXPECT_EQ(drawing.extent, (Box{0, 0, 120, 60}));
    EXPECT_TRUE(marksOf<Shape>(drawing).empty());
}

TEST(BoardView, DrawsEveryJointOnce) {
    const Board board = boardOf(4, 3, Length());
    const Drawing drawing = drawBoard(board, twoWoods(), {}, {});
    EXPECT_NEAR(jointLength(drawing, Ink::Joint), 3 * 60 + 2 * 120, 1e-6);
}

RC_GTEST_PROP(BoardView, JointsAreTheEdgesBetweenPieces, ()) {
    Board board = boardOf(6, 6, Length());
    const int column = *rc::gen::inRange(0, 5);
    const int row = *rc::gen::inRange(0, 5);
    const int across = *rc::gen::inRange(1, 7 - column);
    const int down = *rc::gen::inRange(1, 7 - row);
    board.field = withMerged(board.field, column, row, across, down);
    const double inside = (across - 1) * 20.0 * down + (down - 1) * 30.0 * across;
    const Drawing drawing = drawBoard(board, twoWoods(), {}, {});
    RC_ASSERT(std::abs(jointLength(drawing, Ink::Joint) - (5 * 120 + 5 * 180 - inside)) < 1e-6);
}

TEST(BoardView, DashesExtraJointsAtTheirPlace) {
    const std::vector<Joint> extra{{true, Length::mm(15), Length::mm(20), Length::mm(40)},
                                   {false, Length::mm(10), Length::mm(30), Length::mm(60)}};
    const Drawing drawing = drawBoard(boardOf(4, 3, Length::mm(25)), twoWoods(), extra, {});
    std::vector<Line> dashed;
    for (const Line& line : marksOf<Line>(drawing)) {
        if (line.style.dashed) {
            EXPECT_EQ(line.style.line, Ink::ExtraJoint);
            dashed.push_back(line);
        }
    }
    ASSERT_EQ(dashed.size(), 2U);
    EXPECT_EQ(dashed[0].from, (Point{40, 45}));
    EXPECT_EQ(dashed[0].to, (Point{40, 65}));
    EXPECT_EQ(dashed[1].from, (Point{55, 35}));
    EXPECT_EQ(dashed[1].to, (Point{85, 35}));
}

/// A mortar line is narrower than a dash is long: there it would look like a spot.
TEST(BoardView, ShortExtraJointsAreThinLinesWithoutDashes) {
    const BoardViewOptions options;
    const std::vector<Joint> extra{{true, Length::mm(15), Length::mm(20), Length::mm(25)},
                                   {true, Length::mm(15), Length::mm(30), Length::mm(45)}};
    std::vector<Line> drawn;
    for (const Line& line :
         marksOf<Line>(drawBoard(boardOf(4, 3, Length::mm(25)), twoWoods(), extra, options))) {
        if (line.style.line == Ink::ExtraJoint) {
            drawn.push_back(line);
        }
    }
    ASSERT_EQ(drawn.size(), 2U);
    EXPECT_FALSE(drawn[0].style.dashed);
    EXPECT_LT(drawn[0].style.lineWidth, options.lineWidth);
    EXPECT_TRUE(drawn[1].style.dashed);
}

TEST(BoardView, LettersAndHatchOnlyWhereAskedFor) {
    const Board board = boardOf(4, 3, Length::mm(25));
    EXPECT_TRUE(marksOf<Text>(drawBoard(board, twoWoods(), {}, {})).empty());
    BoardViewOptions options;
    options.letters = true;
    options.hatch = true;
    const Drawing drawing = drawBoard(board, twoWoods(), {}, options);
    const std::vector<Text> letters = marksOf<Text>(drawing);
    EXPECT_EQ(letters.size(), 12U + 4U);
    const std::size_t hatched = marksOf<Line>(drawing).size();
    options.hatch = false;
    EXPECT_GT(hatched, marksOf<Line>(drawBoard(board, twoWoods(), {}, options)).size() + 20);
    options.leastLetter = 100;
    EXPECT_TRUE(marksOf<Text>(drawBoard(board, twoWoods(), {}, options)).empty());
}

TEST(BoardView, KeepsEveryMarkInsideItsExtent) {
    BoardViewOptions options;
    options.letters = true;
    options.hatch = true;
    const Drawing drawing = drawBoard(boardOf(5, 5, Length::mm(25)), twoWoods(), {}, options);
    for (const Mark& mark : drawing.marks) {
        const Box box = bounds(mark);
        EXPECT_GE(box.x, -options.lineWidth);
        EXPECT_GE(box.y, -options.lineWidth);
        EXPECT_LE(box.right(), drawing.extent.right() + options.lineWidth);
        EXPECT_LE(box.bottom(), drawing.extent.bottom() + options.lineWidth);
    }
}

TEST(Hatches, DifferForAllWoodsOfAProject) {
    std::set<std::string> seen;
    for (int wood = 0; wood < 32; ++wood) {
        Drawing drawing;
        addHatch(drawing, corners({0, 0, 40, 40}), wood, 2, 0.2);
        std::string print;
        for (const Line& line : marksOf<Line>(drawing)) {
            print += std::to_string(line.from.x) + "," + std::to_string(line.from.y) + " ";
        }
        EXPECT_TRUE(seen.insert(print).second) << wood;
    }
}
