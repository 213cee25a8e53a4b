#include "core/board/patterns.h"

#include "core/board/families.h"
#include "core/board/layouts.h"
#include "core/board/recipe.h"

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
    const PatternCount squaresAcross = across("Squares across", 8);
    const PatternCount squaresDown = down("Squares down", 8);
    const PatternCount strength{"strength", "Strength, degrees", 10, 80, 60};
    return {
        {{Pattern::Stripes,
          "stripes",
          "Stripes",
          "Upright stripes, each one stick as high as the field",
          {"First", "Second"},
          "",
          {across("Stripes", 8)},
          {}},
         oneRow,
         stripes},
        {{Pattern::Pinstripes,
          "pinstripes",
          "Pinstripes",
          "Broad stripes with fine lines between them",
          {"Ground", "Line"},
          "",
          {across("Broad stripes", 5, 2, 2), {"lines", "Lines between", 1, 4, 2}},
          {{"line", "Line width", 14}}},
         [](const Recipe& recipe) {
             const int broad = recipe.counts[0];
             return GridSize{broad + (broad - 1) * (2 * recipe.counts[1] - 1), 1};
         },
         pinstripes},
        {{Pattern::Chequer,
          "chequer",
          "Chequer",
          "Squares of two woods in turn, as for games",
          {"First", "Second"},
          "Columns × rows",
          {squaresAcross, squaresDown},
          {}},
         cells,
         chequer},
        {{Pattern::Graduated,
          "graduated",
          "Bulging chequer",
          "A chequer that swells towards its middle, so that it seems to bulge",
          {"First", "Second"},
          "Columns × rows",
          {squaresAcross, squaresDown, strength},
          {}},
         cells,
         bulging},
        {{Pattern::Pinched,
          "pinched",
          "Pinched chequer",
          "A chequer that shrinks towards its middle, so that it seems to sink in",
          {"First", "Second"},
          "Columns × rows",
          {squaresAcross, squaresDown, strength},
          {}},
         cells,
         pinched},
        {{Pattern::Bricks,
          "bricks",
          "Bricks",
          "Running bond: every course is part of a brick further on than the one above",
          {"Brick", "Brick", "Brick"},
          "Bricks × courses",
          {across("Bricks a course", 4, 1, 2),
           down("Courses", 8),
           {"offset", "Offset: brick ÷", 2, 4, 2}},
          {}},
         [](const Recipe& recipe) {
             return GridSize{recipe.counts[0] * recipe.counts[2], recipe.counts[1]};
         },
         bricks},
        {{Pattern::MortarBricks,
          "mortar-bricks",
          "Bricks with mortar lines",
          "Running bond with thin lines between; the last wood is the mortar",
          {"Brick", "Mortar"},
          "Bricks × courses",
          {across("Bricks a course", 3, 1, 3), down("Courses", 6)},
          {{"mortar", "Mortar line", 8}}},
         [](const Recipe& recipe) {
             return GridSize{4 * recipe.counts[0] + 1, 2 * recipe.counts[1] - 1};
         },
         mortarBricks},
        {{Pattern::Plaid,
          "plaid",
          "Plaid",
          "Broad and narrow bands that cross, as in woven cloth",
          {"Ground", "Band", "Crossing"},
          "Broad bands",
          {across("Broad bands across", 5, 2, 2), down("Broad bands down", 5, 2, 2)},
          {{"narrow", "Narrow band", 3}}},
         [](const Recipe& recipe) {
             return GridSize{2 * recipe.counts[0] - 1, 2 * recipe.counts[1] - 1};
         },
         plaid},
        {{Pattern::Steps,
          "steps",
          "Steps up and down",
          "Columns of squares that step down row by row, and up again",
          {"First", "Second", "Third"},
          "Columns × rows",
          {across("Squares across", 9),
           down("Squares down", 9),
           {"climb", "Rows a climb", 1, 16, 4}},
          {}},
         cells,
         steps},
        {{Pattern::DiagonalSteps,
          "diagonal-steps",
          "Diagonal steps",
          "Stepped bands that climb from corner to corner",
          {"First", "Second", "Third"},
          "Columns × rows",
          {across("Squares across", 9),
           down("Squares down", 9),
           {"run", "Squares a step", 1, 8, 1}},
          {}},
         cells,
         diagonalSteps},
    };
}

std::vector<PatternFamily> tiled() {
    return {
        {{Pattern::Basket,
          "basket",
          "Basket weave",
          "Tiles of strips, upright and lying in turn",
          {"Outer strips", "Inner strips"},
          "Tiles",
          {across("Tiles across", 4, 1, 3),
           down("Tiles down", 4, 1, 3),
           {"strips", "Strips a tile", 2, 8, 3}},
          {}},
         [](const Recipe& recipe) { return ofTiles(recipe, recipe.counts[2]); },
         basket},
        {{Pattern::LogCabin,
          "log-cabin",
          "Log cabin",
          "Logs round a square, light on two sides and dark on two; like sides meet",
          {"Light logs", "Dark logs", "Middle", "Light logs, lying", "Dark logs, lying"},
          "Tiles",
          {across("Tiles across", 2, 1, 4),
           down("Tiles down", 2, 1, 4),
           {"rounds", "Logs a side", 1, 6, 2}},
          {},
          false,
          3},
         [](const Recipe& recipe) { return ofTiles(recipe, 2 * recipe.counts[2] + 1); },
         logCabin},
        {{Pattern::NestedSquares,
          "nested-squares",
          "Nested squares",
          "Ring within ring, the woods in turn from the edge inwards",
          {"Outermost ring", "Second ring", "Third ring"},
          "Columns × rows",
          {across("Squares across", 9), down("Squares down", 9)},
          {}},
         cells,
         nestedSquares},
        {{Pattern::BorderBands,
          "border-bands",
          "Border bands",
          "Lines round a plain middle, with a margin outside them",
          {"Ground", "Outer line", "Inner line"},
          "",
          {{"bands", "Lines", 1, 8, 2}},
          {{"line", "Line width", 40}, {"margin", "Margin", 10}}},
         [](const Recipe& recipe) {
             const int side = 4 * recipe.counts[0] + 1;
             return GridSize{side, side};
         },
         borderBands},
        {{Pattern::Rosettes,
          "rosettes",
          "Rosettes",
          "One quarter, laid four times round each middle",
          {"Star", "Ground", "Petals"},
          "Rosettes",
          {across("Rosettes across", 2, 1, 4),
           down("Rosettes down", 2, 1, 4),
           {"quarter", "Cells a quarter", 2, 6, 3}},
          {}},
         [](const Recipe& recipe) { return ofTiles(recipe, 2 * recipe.counts[2]); },
         rosettes},
        {{Pattern::GreekKey,
          "greek-key",
          "Greek key",
          "Bands of square hooks on a line, mirrored in turn",
          {"Ground", "Key"},
          "Hooks × bands",
          {across("Hooks across", 2, 1, 4), down("Bands", 2, 1, 4)},
          {}},
         [](const Recipe& recipe) {
             return GridSize{5 * recipe.counts[0] + 1, 5 * recipe.counts[1] + 1};
         },
         greekKey},
        {{Pattern::Windmill,
          "windmill",
          "Windmill",
          "Four arms round a middle: they lock, and take a joint more a tile to be glued",
          {"Lying arms", "Upright arms", "Middle"},
          "Tiles",
          {across("Tiles across", 2, 1, 4), down("Tiles down", 2, 1, 4)},
          {{"middle", "Middle", 4}},
          true},
         [](const Recipe& recipe) { return ofTiles(recipe, 3); },
         windmill},
        {{Pattern::Plain,
          "plain",
          "Plain field",
          "A grid of one wood to paint on",
          {"Wood"},
          "Columns × rows",
          {across("Squares across", 8), down("Squares down", 8)},
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
    return Fault{entry,
                 "must be from " + words(BoardLimits::leastCell) + " to " +
                     words(BoardLimits::greatestCell),
                 words(size)};
}

}  // namespace

Result<Recipe> recipeOf(const PatternRequest& request) {
    if (const auto fault = cellFault("Cell width", request.cellWidth)) {
        return *fault;
    }
    if (const auto fault = cellFault("Cell height", request.cellHeight)) {
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
            return Fault{"Cell width",
                         "must be at least " + words(least) +
                             " to leave part bricks beside the mortar",
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
