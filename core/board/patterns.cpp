#include "core/board/patterns.h"

#include "core/measure/notation.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <numbers>

namespace kerfwright {
namespace {

constexpr int stripsInTile = 3;
constexpr int columnsInMortarBrick = 4;

std::size_t index(int i) {
    return static_cast<std::size_t>(i);
}

int woodOf(const PatternRequest& request, int turn) {
    return request.woods[index(turn) % request.woods.size()];
}

/// The step in which a maker who typed these sizes measures: what is derived from them is rounded
/// to it, so that it can be set on the same rule.
Length gridOf(Length a, Length b) {
    constexpr std::array grids{Length::inch(1, 64), Length::um(100), Length::um(10), Length::um(1)};
    for (const Length grid : grids) {
        if (a.nm() % grid.nm() == 0 && b.nm() % grid.nm() == 0) {
            return grid;
        }
    }
    return Length::nm(1);
}

Length roundedDown(Length length, Length step) {
    return Length::nm(length.nm() - length.nm() % step.nm());
}

/// A part of `length`, rounded to the nearest step.
Length nearestPart(Length length, std::int64_t parts, Length step) {
    return roundedDown(Length::nm((length.nm() + step.nm() * parts / 2) / parts), step);
}

std::vector<Length> repeated(const std::vector<Length>& sizes, int times) {
    std::vector<Length> all;
    for (int i = 0; i < times; ++i) {
        all.insert(all.end(), sizes.begin(), sizes.end());
    }
    return all;
}

Field plain(const PatternRequest& request) {
    return plainGrid(request.across, request.down, request.cellWidth, request.cellHeight,
                     woodOf(request, 0));
}

Field stripes(const PatternRequest& request) {
    Field field =
        plainGrid(request.across, 1, request.cellWidth, request.cellHeight * request.down, 0);
    for (Piece& piece : field.pieces) {
        piece.wood = woodOf(request, piece.column);
    }
    return field;
}

Field chequer(const PatternRequest& request) {
    Field field = plain(request);
    for (Piece& piece : field.pieces) {
        piece.wood = woodOf(request, piece.column + piece.row);
    }
    return field;
}

/// Running bond: every other course starts and ends with half a brick. The halves differ by one
/// step where the brick does not halve on its grid.
Field bricks(const PatternRequest& request) {
    const Length left =
        roundedDown(half(request.cellWidth), gridOf(request.cellWidth, request.cellHeight));
    Field field;
    field.columns = repeated({left, request.cellWidth - left}, request.across);
    field.rows.assign(index(request.down), request.cellHeight);
    const int columns = 2 * request.across;
    for (int row = 0; row < request.down; ++row) {
        // Seen from a whole brick i, the bricks below it are i and i + 1 of the shifted course; one
        // wood further on keeps all of them apart, given three woods.
        const bool shifted = row % 2 == 1;
        int turn = shifted ? 1 : 0;
        for (int column = 0; column < columns; ++turn) {
            const int across = shifted && column == 0 ? 1 : std::min(2, columns - column);
            field.pieces.push_back({column, row, across, 1, woodOf(request, turn)});
            column += across;
        }
    }
    return field;
}

/// Of a brick: an eighth of its height, on the grid, and such that the rest of the width halves.
Length mortarOf(const PatternRequest& request) {
    const Length grid = gridOf(request.cellWidth, request.cellHeight);
    Length mortar =
        std::max(nearestPart(request.cellHeight, 8, grid), roundedUp(BoardLimits::leastCell, grid));
    if ((request.cellWidth - mortar).nm() % (2 * grid.nm()) != 0) {
        mortar += grid;
    }
    return mortar;
}

/// A course is so many bricks, each with mortar on its right, and a part brick of (brick - mortar)
/// / 2 at the end; the next course is the same one reversed, which shifts it by half a brick and
/// its mortar. The last wood is the mortar.
Field mortarBricks(const PatternRequest& request) {
    const Length mortar = mortarOf(request);
    const Length part = half(request.cellWidth - mortar);
    const int brickWoods = std::max(1, static_cast<int>(request.woods.size()) - 1);
    const int mortarWood = request.woods.back();

    Field field;
    field.columns = repeated({part, mortar}, 2 * request.across);
    field.columns.push_back(part);
    const auto columns = static_cast<int>(field.columns.size());

    std::vector<Piece> course;
    for (int i = 0; i <= request.across; ++i) {
        const int column = columnsInMortarBrick * i;
        const bool whole = i < request.across;
        course.push_back({column, 0, whole ? 3 : 1, 1, woodOf(request, i % brickWoods)});
        if (whole) {
            course.push_back({column + 3, 0, 1, 1, mortarWood});
        }
    }
    for (int i = 0; i < request.down; ++i) {
        if (i > 0) {
            field.rows.push_back(mortar);
            field.pieces.push_back({0, 2 * i - 1, columns, 1, mortarWood});
        }
        field.rows.push_back(request.cellHeight);
        for (Piece piece : course) {
            piece.row = 2 * i;
            field.pieces.push_back(piece);
        }
        for (Piece& piece : course) {
            piece.column = columns - piece.column - piece.across;
        }
        std::reverse(course.begin(), course.end());
    }
    return field;
}

/// A tile across: two outer strips alike and the middle one with what is left.
std::vector<Length> tileStrips(Length side, Length grid) {
    const Length outer = nearestPart(side, stripsInTile, grid);
    return {outer, side - outer * 2, outer};
}

Field basket(const PatternRequest& request) {
    const Length grid = gridOf(request.cellWidth, request.cellHeight);
    Field field;
    field.columns = repeated(tileStrips(request.cellWidth, grid), request.across);
    field.rows = repeated(tileStrips(request.cellHeight, grid), request.down);
    for (int y = 0; y < request.down; ++y) {
        for (int x = 0; x < request.across; ++x) {
            const bool upright = (x + y) % 2 == 0;
            for (int strip = 0; strip < stripsInTile; ++strip) {
                const int wood = woodOf(request, strip == 1 ? 1 : 0);
                const int column = stripsInTile * x;
                const int row = stripsInTile * y;
                if (upright) {
                    field.pieces.push_back({column + strip, row, 1, stripsInTile, wood});
                } else {
                    field.pieces.push_back({column, row + strip, stripsInTile, 1, wood});
                }
            }
        }
    }
    std::sort(field.pieces.begin(), field.pieces.end(), readsBefore);
    return field;
}

/// The bulge of trade practice: joints at x(u) = (W / 2) sin(A u) / sin A, u from -1 to 1, A = 60
/// degrees. Joints of the left half are rounded to the grid and mirrored, so that the sum is exact
/// and both halves are alike.
std::vector<Length> bulge(Length cell, int cells, Length grid) {
    constexpr double angle = std::numbers::pi / 3;
    const Length all = cell * cells;
    std::vector<Length> sizes(index(cells));
    Length joint;
    for (int i = 0; i < cells / 2; ++i) {
        const double u = -1.0 + 2.0 * (i + 1) / cells;
        const double share = (1 + std::sin(angle * u) / std::sin(angle)) / 2;
        const double steps = share * static_cast<double>(all.nm()) / static_cast<double>(grid.nm());
        const Length next = 2 * (i + 1) == cells ? half(all) : grid * std::llround(steps);
        sizes[index(i)] = sizes[index(cells - 1 - i)] = next - joint;
        joint = next;
    }
    if (cells % 2 == 1) {
        sizes[index(cells / 2)] = all - joint * 2;
    }
    return sizes;
}

Field graduated(const PatternRequest& request) {
    Field field = chequer(request);
    const Length grid = gridOf(request.cellWidth, request.cellHeight);
    field.columns = bulge(request.cellWidth, request.across, grid);
    field.rows = bulge(request.cellHeight, request.down, grid);
    return field;
}

/// Ring in ring, each of two bars over the whole width and two sides between them.
Field nestedSquares(const PatternRequest& request) {
    Field field = plain(request);
    field.pieces.clear();
    int across = request.across;
    int down = request.down;
    for (int ring = 0; across > 0 && down > 0; ++ring, across -= 2, down -= 2) {
        const int wood = woodOf(request, ring);
        const auto add = [&](int column, int row, int width, int height) {
            field.pieces.push_back({ring + column, ring + row, width, height, wood});
        };
        if (across == 1) {
            add(0, 0, 1, down);
            break;
        }
        add(0, 0, across, 1);
        if (down > 2) {
            add(0, 1, 1, down - 2);
            add(across - 1, 1, 1, down - 2);
        }
        if (down > 1) {
            add(0, down - 1, across, 1);
        }
    }
    std::sort(field.pieces.begin(), field.pieces.end(), readsBefore);
    return field;
}

/// How a pattern uses the grid, and the hand that lays it.
struct Maker {
    PatternInfo info;
    int columnsEach;  ///< of the grid, for one brick, tile or stripe
    int rowsEach;
    Field (*lay)(const PatternRequest&);
};

const std::vector<Maker>& makers() {
    static const std::vector<Maker> all{
        {{Pattern::Stripes, "stripes", "Stripes",
          "Upright stripes, each one stick as high as the field", 2},
         1,
         0,
         stripes},
        {{Pattern::Chequer, "chequer", "Chequer", "Squares of two woods in turn, as for games", 2},
         1,
         1,
         chequer},
        {{Pattern::Bricks, "bricks", "Bricks", "Running bond: every other course half a brick on",
          3},
         2,
         1,
         bricks},
        {{Pattern::MortarBricks, "mortar-bricks", "Bricks with mortar lines",
          "Running bond with thin lines between; the last wood is the mortar", 2},
         columnsInMortarBrick,
         2,
         mortarBricks},
        {{Pattern::Basket, "basket", "Basket weave",
          "Tiles of three strips, upright and lying in turn", 2},
         stripsInTile,
         stripsInTile,
         basket},
        {{Pattern::Graduated, "graduated", "Graduated",
          "A chequer that swells towards its middle, so that it seems to bulge", 2},
         1,
         1,
         graduated},
        {{Pattern::NestedSquares, "nested-squares", "Nested squares",
          "Ring within ring, the woods in turn from the edge inwards", 2},
         1,
         1,
         nestedSquares},
        {{Pattern::Plain, "plain", "Plain field", "A grid of one wood to paint on", 1},
         1,
         1,
         plain},
    };
    return all;
}

std::string words(Length length) {
    return format(length, Notation::millimetres(3));
}

Fault lengthFault(const char* entry, const std::string& rule, Length value) {
    return {entry, rule, words(value)};
}

/// The first thing wrong with one direction of a request.
std::vector<Fault> directionFaults(const char* countEntry, const char* sizeEntry, int count,
                                   Length size, int cellsEach) {
    std::vector<Fault> all;
    const int most =
        cellsEach < 2 ? BoardLimits::cellsAcross : BoardLimits::cellsAcross / cellsEach;
    // Four columns a brick and a part brick at the end: 15 bricks take 61 columns.
    const int mostWithEnd = cellsEach == columnsInMortarBrick ? most - 1 : most;
    if (count < 1 || count > mostWithEnd) {
        all.push_back({countEntry,
                       "must be from 1 to " + std::to_string(mostWithEnd) + " with this pattern",
                       std::to_string(count)});
    }
    if (size < BoardLimits::leastCell || size > BoardLimits::greatestCell) {
        all.push_back(lengthFault(sizeEntry,
                                  "must be from " + words(BoardLimits::leastCell) + " to " +
                                      words(BoardLimits::greatestCell),
                                  size));
    }
    return all;
}

}  // namespace

const std::vector<PatternInfo>& patterns() {
    static const std::vector<PatternInfo> all = [] {
        std::vector<PatternInfo> infos;
        for (const Maker& maker : makers()) {
            infos.push_back(maker.info);
        }
        return infos;
    }();
    return all;
}

Result<Field> layOut(const PatternRequest& request) {
    const auto maker = std::find_if(makers().begin(), makers().end(), [&](const Maker& each) {
        return each.info.pattern == request.pattern;
    });
    if (maker == makers().end()) {
        return Fault{"Pattern", "must be one of those offered",
                     std::to_string(static_cast<int>(request.pattern))};
    }
    for (const auto& found : {directionFaults("Across", "Cell width", request.across,
                                              request.cellWidth, maker->columnsEach),
                              directionFaults("Down", "Cell height", request.down,
                                              request.cellHeight, maker->rowsEach)}) {
        if (!found.empty()) {
            return found.front();
        }
    }
    if (request.woods.empty()) {
        return Fault{"Woods", "must be one at least", "none"};
    }
    const int leastWood = *std::min_element(request.woods.begin(), request.woods.end());
    if (leastWood < 0) {
        return Fault{"Woods", "must be woods of the project",
                     "wood number " + std::to_string(leastWood)};
    }
    if (request.pattern == Pattern::MortarBricks) {
        const Length least = mortarOf(request) + BoardLimits::leastCell * 2;
        if (request.cellWidth < least) {
            return lengthFault("Cell width",
                               "must be at least " + words(least) +
                                   " to leave part bricks beside the mortar",
                               request.cellWidth);
        }
    }
    Board board;
    board.field = maker->lay(request);
    board.thickness = BoardLimits::leastThickness;
    const int greatestWood = *std::max_element(request.woods.begin(), request.woods.end());
    board.border.wood = greatestWood;
    const std::vector<Fault> found = faults(
        board, greatestWood < std::numeric_limits<int>::max() ? greatestWood + 1 : greatestWood);
    if (!found.empty()) {
        return found.front();
    }
    return board.field;
}

}  // namespace kerfwright
