#include "core/board/patterns.h"

#include "core/board/families.h"
#include "core/board/layouts.h"
#include "core/board/recipe.h"
#include "core/words/say.h"

#include <algorithm>
#include <optional>
#include <string>
#include <utility>

namespace kerfwright {
namespace laying {
namespace {

constexpr auto width = CountedAlong::Width;
constexpr auto height = CountedAlong::Height;
constexpr int most = BoardLimits::cellsAcross;

PatternCount across(std::string_view name, int usual, int least = 1, int squares = 1) {
    return {"across", name, least, most, usual, width, squares};
}
PatternCount down(std::string_view name, int usual, int least = 1, int squares = 1) {
    return {"down", name, least, most, usual, height, squares};
}

GridSize cells(const Recipe& recipe) {
    return {recipe.counts[0], recipe.counts[1]};
}
GridSize oneRow(const Recipe& recipe) {
    return {recipe.counts[0], 1};
}
GridSize ofTiles(const Recipe& recipe, int side) {
    return {side * recipe.counts[0], side * recipe.counts[1]};
}

std::vector<PatternFamily> straight() {
    const std::vector<std::string_view> firstAndSecond{notedIn("wood of a pattern", "First"),
                                                       notedIn("wood of a pattern", "Second")};
    const std::vector<std::string_view> firstToThird{notedIn("wood of a pattern", "First"),
                                                     notedIn("wood of a pattern", "Second"),
                                                     notedIn("wood of a pattern", "Third")};
    const PatternCount squaresAcross = across(noted("Squares across"), 8);
    const PatternCount squaresDown = down(noted("Squares down"), 8);
    const PatternCount strength{"strength", noted("Strength, degrees"), 10, 80, 60};
    return {
        {{Pattern::Stripes,
          "stripes",
          noted("Stripes"),
          noted("Upright stripes, each one stick as high as the field"),
          firstAndSecond,
          "",
          {across(noted("Stripes"), 8)},
          {}},
         oneRow,
         stripes},
        {{Pattern::Pinstripes,
          "pinstripes",
          noted("Pinstripes"),
          noted("Broad stripes with fine lines between them"),
          {notedIn("wood of a pattern", "Ground"), notedIn("wood of a pattern", "Line")},
          "",
          {across(noted("Broad stripes"), 5, 2, 2), {"lines", noted("Lines between"), 1, 4, 2}},
          {{"line", noted("Line width"), 14}}},
         [](const Recipe& recipe) {
             const int broad = recipe.counts[0];
             return GridSize{broad + (broad - 1) * (2 * recipe.counts[1] - 1), 1};
         },
         pinstripes},
        {{Pattern::Chequer,
          "chequer",
          noted("Chequer"),
          noted("Squares of two woods in turn, as for games"),
          firstAndSecond,
          noted("Columns × rows"),
          {squaresAcross, squaresDown},
          {}},
         cells,
         chequer},
        {{Pattern::Graduated,
          "graduated",
          noted("Bulging chequer"),
          noted("A chequer that swells towards its middle, so that it seems to bulge"),
          firstAndSecond,
          noted("Columns × rows"),
          {squaresAcross, squaresDown, strength},
          {}},
         cells,
         bulging},
        {{Pattern::Pinched,
          "pinched",
          noted("Pinched chequer"),
          noted("A chequer that shrinks towards its middle, so that it seems to sink in"),
          firstAndSecond,
          noted("Columns × rows"),
          {squaresAcross, squaresDown, strength},
          {}},
         cells,
         pinched},
        {{Pattern::Bricks,
          "bricks",
          noted("Bricks"),
          noted("Running bond: every course is part of a brick further on than the one above"),
          {notedIn("wood of a pattern", "Brick"), notedIn("wood of a pattern", "Brick"),
           notedIn("wood of a pattern", "Brick")},
          noted("Bricks × courses"),
          {across(noted("Bricks a course"), 4, 1, 2),
           down(noted("Courses"), 8),
           {"offset", noted("Offset: brick ÷"), 2, 4, 2}},
          {}},
         [](const Recipe& recipe) {
             return GridSize{recipe.counts[0] * recipe.counts[2], recipe.counts[1]};
         },
         bricks},
        {{Pattern::MortarBricks,
          "mortar-bricks",
          noted("Bricks with mortar lines"),
          noted("Running bond with thin lines between; the last wood is the mortar"),
          {notedIn("wood of a pattern", "Brick"), notedIn("wood of a pattern", "Mortar")},
          noted("Bricks × courses"),
          {across(noted("Bricks a course"), 3, 1, 3), down(noted("Courses"), 6)},
          {{"mortar", noted("Mortar line"), 8}}},
         [](const Recipe& recipe) {
             return GridSize{4 * recipe.counts[0] + 1, 2 * recipe.counts[1] - 1};
         },
         mortarBricks},
        {{Pattern::Plaid,
          "plaid",
          noted("Plaid"),
          noted("Broad and narrow bands that cross, as in woven cloth"),
          {notedIn("wood of a pattern", "Ground"), notedIn("wood of a pattern", "Band"),
           notedIn("wood of a pattern", "Crossing")},
          noted("Broad bands"),
          {across(noted("Broad bands across"), 5, 2, 2), down(noted("Broad bands down"), 5, 2, 2)},
          {{"narrow", noted("Narrow band"), 3}}},
         [](const Recipe& recipe) {
             return GridSize{2 * recipe.counts[0] - 1, 2 * recipe.counts[1] - 1};
         },
         plaid},
        {{Pattern::Steps,
          "steps",
          noted("Steps up and down"),
          noted("Columns of squares that step down row by row, and up again"),
          firstToThird,
          noted("Columns × rows"),
          {across(noted("Squares across"), 9),
           down(noted("Squares down"), 9),
           {"climb", noted("Rows a climb"), 1, 16, 4}},
          {}},
         cells,
         steps},
        {{Pattern::DiagonalSteps,
          "diagonal-steps",
          noted("Diagonal steps"),
          noted("Stepped bands that climb from corner to corner"),
          firstToThird,
          noted("Columns × rows"),
          {across(noted("Squares across"), 9),
           down(noted("Squares down"), 9),
           {"run", noted("Squares a step"), 1, 8, 1}},
          {}},
         cells,
         diagonalSteps},
    };
}

std::vector<PatternFamily> tiled() {
    return {
        {{Pattern::Basket,
          "basket",
          noted("Basket weave"),
          noted("Tiles of strips, upright and lying in turn"),
          {notedIn("wood of a pattern", "Outer strips"),
           notedIn("wood of a pattern", "Inner strips")},
          noted("Tiles"),
          {across(noted("Tiles across"), 4, 1, 3),
           down(noted("Tiles down"), 4, 1, 3),
           {"strips", noted("Strips a tile"), 2, 8, 3}},
          {}},
         [](const Recipe& recipe) { return ofTiles(recipe, recipe.counts[2]); },
         basket},
        {{Pattern::LogCabin,
          "log-cabin",
          noted("Log cabin"),
          noted("Logs round a square, light on two sides and dark on two; like sides meet"),
          {notedIn("wood of a pattern", "Light logs"), notedIn("wood of a pattern", "Dark logs"),
           notedIn("wood of a pattern", "Middle"),
           notedIn("wood of a pattern", "Light logs, lying"),
           notedIn("wood of a pattern", "Dark logs, lying")},
          noted("Tiles"),
          {across(noted("Tiles across"), 2, 1, 4),
           down(noted("Tiles down"), 2, 1, 4),
           {"rounds", noted("Logs a side"), 1, 6, 2}},
          {},
          false,
          3},
         [](const Recipe& recipe) { return ofTiles(recipe, 2 * recipe.counts[2] + 1); },
         logCabin},
        {{Pattern::NestedSquares,
          "nested-squares",
          noted("Nested squares"),
          noted("Ring within ring, the woods in turn from the edge inwards"),
          {notedIn("wood of a pattern", "Outermost ring"),
           notedIn("wood of a pattern", "Second ring"), notedIn("wood of a pattern", "Third ring")},
          noted("Columns × rows"),
          {across(noted("Squares across"), 9), down(noted("Squares down"), 9)},
          {}},
         cells,
         nestedSquares},
        {{Pattern::BorderBands,
          "border-bands",
          noted("Border bands"),
          noted("Lines round a plain middle, with a margin outside them"),
          {notedIn("wood of a pattern", "Ground"), notedIn("wood of a pattern", "Outer line"),
           notedIn("wood of a pattern", "Inner line")},
          "",
          {{"bands", noted("Lines"), 1, 8, 2}},
          {{"line", noted("Line width"), 40}, {"margin", noted("Margin"), 10}}},
         [](const Recipe& recipe) {
             const int side = 4 * recipe.counts[0] + 1;
             return GridSize{side, side};
         },
         borderBands},
        {{Pattern::Rosettes,
          "rosettes",
          noted("Rosettes"),
          noted("One quarter, laid four times round each middle"),
          {notedIn("wood of a pattern", "Star"), notedIn("wood of a pattern", "Ground"),
           notedIn("wood of a pattern", "Petals")},
          noted("Rosettes"),
          {across(noted("Rosettes across"), 2, 1, 4),
           down(noted("Rosettes down"), 2, 1, 4),
           {"quarter", noted("Cells a quarter"), 2, 6, 3}},
          {}},
         [](const Recipe& recipe) { return ofTiles(recipe, 2 * recipe.counts[2]); },
         rosettes},
        {{Pattern::GreekKey,
          "greek-key",
          noted("Greek key"),
          noted("Bands of square hooks on a line, mirrored in turn"),
          {notedIn("wood of a pattern", "Ground"), notedIn("wood of a pattern", "Key")},
          noted("Hooks × bands"),
          {across(noted("Hooks across"), 2, 1, 4), down(noted("Bands"), 2, 1, 4)},
          {}},
         [](const Recipe& recipe) {
             return GridSize{5 * recipe.counts[0] + 1, 5 * recipe.counts[1] + 1};
         },
         greekKey},
        {{Pattern::Windmill,
          "windmill",
          noted("Windmill"),
          noted("Four arms round a middle: they lock, and take a joint more a tile to be glued"),
          {notedIn("wood of a pattern", "Lying arms"), notedIn("wood of a pattern", "Upright arms"),
           notedIn("wood of a pattern", "Middle")},
          noted("Tiles"),
          {across(noted("Tiles across"), 2, 1, 4), down(noted("Tiles down"), 2, 1, 4)},
          {{"middle", noted("Middle"), 4}},
          true},
         [](const Recipe& recipe) { return ofTiles(recipe, 3); },
         windmill},
        {{Pattern::Plain,
          "plain",
          noted("Plain field"),
          noted("A grid of one wood to paint on"),
          {notedIn("wood of a pattern", "Wood")},
          noted("Columns × rows"),
          {across(noted("Squares across"), 8), down(noted("Squares down"), 8)},
          {}},
         cells,
         plain},
    };
}

}  // namespace

const std::vector<PatternFamily>& families() {
    static const std::vector<PatternFamily> all = [] {
        std::vector<PatternFamily> both = straight();
        for (PatternFamily& family : tiled()) {
            both.push_back(std::move(family));
        }
        for (PatternFamily& family : both) {
            family.info.woods = static_cast<int>(family.info.roles.size());
        }
        return both;
    }();
    return all;
}

const PatternFamily& familyOf(Pattern pattern) {
    return *std::find_if(families().begin(), families().end(),
                         [pattern](const auto& family) { return family.info.pattern == pattern; });
}

}  // namespace laying

const std::vector<PatternInfo>& patterns() {
    static const std::vector<PatternInfo> all = [] {
        std::vector<PatternInfo> infos;
        for (const laying::PatternFamily& family : laying::families()) {
            infos.push_back(family.info);
        }
        return infos;
    }();
    return all;
}

const PatternInfo& patternInfo(Pattern pattern) {
    return *std::find_if(patterns().begin(), patterns().end(),
                         [pattern](const PatternInfo& info) { return info.pattern == pattern; });
}

namespace {

/// Mortar of a brick: an eighth of its height, on the grid, and such that the rest of its width
/// halves.
Length mortarOf(const PatternRequest& request, Length grid) {
    Length mortar = std::max(laying::nearestPart(request.cellHeight, 8, grid),
                             roundedUp(BoardLimits::leastCell, grid));
    if ((request.cellWidth - mortar).nm() % (2 * grid.nm()) != 0) {
        mortar += grid;
    }
    return mortar;
}

std::string words(Length length) {
    return format(length, Notation::millimetres(3));
}

std::optional<Fault> cellFault(const char* entry, Length size) {
    if (size >= BoardLimits::leastCell && size <= BoardLimits::greatestCell) {
        return std::nullopt;
    }
    return Fault{say(entry),
                 say("must be from {1} to {2}", words(BoardLimits::leastCell),
                     words(BoardLimits::greatestCell)),
                 words(size)};
}

}  // namespace

Result<Recipe> recipeOf(const PatternRequest& request) {
    if (const auto fault = cellFault(noted("Cell width"), request.cellWidth)) {
        return *fault;
    }
    if (const auto fault = cellFault(noted("Cell height"), request.cellHeight)) {
        return *fault;
    }
    const Length step = laying::gridOf(request.cellWidth, request.cellHeight);
    const PatternInfo& info = patternInfo(request.pattern);
    Recipe recipe = usualRecipe(request.pattern, request.cellWidth * request.across,
                                request.cellHeight * request.down, step, request.woods);
    for (std::size_t i = 0; i < info.counts.size(); ++i) {
        const CountedAlong along = info.counts[i].along;
        if (along != CountedAlong::Neither) {
            recipe.counts[i] = along == CountedAlong::Width ? request.across : request.down;
        }
    }
    if (const std::vector<Fault> found = laying::countFaults(recipe); !found.empty()) {
        return found.front();
    }
    recipe.lengths = laying::usualLengths(recipe);
    if (request.pattern == Pattern::MortarBricks) {
        const Length mortar = mortarOf(request, step);
        const Length least = mortar + BoardLimits::leastCell * 2;
        if (request.cellWidth < least) {
            return Fault{
                say("Cell width"),
                say("must be at least {1} to leave part bricks beside the mortar", words(least)),
                words(request.cellWidth)};
        }
        recipe.lengths = {mortar};
        recipe.width += mortar * request.across + half(request.cellWidth - mortar);
        recipe.height += mortar * (request.down - 1);
    }
    return recipe;
}

Result<Field> layOut(const PatternRequest& request) {
    const Result<Recipe> recipe = recipeOf(request);
    return recipe ? layOut(*recipe) : Result<Field>(recipe.fault());
}

}  // namespace kerfwright
