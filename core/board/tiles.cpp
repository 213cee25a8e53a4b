// Layouts of tiles and rings.
#include "core/board/layouts.h"

#include <algorithm>
#include <array>
#include <string_view>
#include <utility>

namespace kerfwright::laying {

std::vector<Piece> rings(int across, int down, const std::function<int(int)>& woodOfRing) {
    std::vector<Piece> all;
    for (int ring = 0; across > 0 && down > 0; ++ring, across -= 2, down -= 2) {
        const auto add = [&](int column, int row, int width, int height) {
            all.push_back({ring + column, ring + row, width, height, woodOfRing(ring)});
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
    std::sort(all.begin(), all.end(), readsBefore);
    return all;
}

namespace {

/// A square of `side` x `side` cells.
struct TilePattern {
    int side;
    std::vector<Piece> pieces;
};

void place(Field& field, const TilePattern& tile, int x, int y, bool flipped, bool turnedOver) {
    for (Piece piece : tile.pieces) {
        if (flipped) {
            piece.column = tile.side - piece.column - piece.across;
        }
        if (turnedOver) {
            piece.row = tile.side - piece.row - piece.down;
        }
        piece.column += x * tile.side;
        piece.row += y * tile.side;
        field.pieces.push_back(piece);
    }
}

std::vector<Length> equalCells(Length whole, int cells, Length step) {
    return std::vector<Length>(index(cells), equalPart(whole, cells, step));
}

}  // namespace

/// Tiles of strips, upright and lying in turn; strips are mirrored about the middle of their tile.
Field basket(const Recipe& recipe) {
    const int across = recipe.counts[0];
    const int down = recipe.counts[1];
    const int strips = recipe.counts[2];
    const auto sides = [&](Length whole, int tiles) {
        const Length tile = equalPart(whole, tiles, recipe.step);
        return repeated(mirroredParts(tile, strips, recipe.step), tiles);
    };
    Field field{sides(recipe.width, across), sides(recipe.height, down), {}};
    TilePattern upright{strips, {}};
    TilePattern lying{strips, {}};
    for (int strip = 0; strip < strips; ++strip) {
        const int wood = woodOf(recipe, strip % 2);
        upright.pieces.push_back({strip, 0, 1, strips, wood});
        lying.pieces.push_back({0, strip, strips, 1, wood});
    }
    for (int y = 0; y < down; ++y) {
        for (int x = 0; x < across; ++x) {
            place(field, (x + y) % 2 == 0 ? upright : lying, x, y, false, false);
        }
    }
    std::sort(field.pieces.begin(), field.pieces.end(), readsBefore);
    return field;
}

/// Logs round a square, on two sides light and on two sides dark; tiles are mirrored, so that like
/// sides meet. Lying logs may be of other woods than upright ones: then no two corners look alike,
/// and the fewest glue-ups can be proven.
Field logCabin(const Recipe& recipe) {
    const int rounds = recipe.counts[2];
    const int side = 2 * rounds + 1;
    TilePattern tile{side, {{rounds, rounds, 1, 1, woodOf(recipe, 2)}}};
    for (int round = 1; round <= rounds; ++round) {
        const int before = rounds - round;  // column or row of the new logs at the left and the top
        const int after = rounds + round;
        const int within = 2 * round - 1;
        tile.pieces.push_back({before, before + 1, 1, within, woodOf(recipe, 0)});
        tile.pieces.push_back({before, before, within + 1, 1, woodOf(recipe, 3)});
        tile.pieces.push_back({after, before, 1, within + 1, woodOf(recipe, 1)});
        tile.pieces.push_back({before, after, within + 2, 1, woodOf(recipe, 4)});
    }
    Field field{equalCells(recipe.width, side * recipe.counts[0], recipe.step),
                equalCells(recipe.height, side * recipe.counts[1], recipe.step),
                {}};
    for (int y = 0; y < recipe.counts[1]; ++y) {
        for (int x = 0; x < recipe.counts[0]; ++x) {
            place(field, tile, x, y, x % 2 == 1, y % 2 == 1);
        }
    }
    std::sort(field.pieces.begin(), field.pieces.end(), readsBefore);
    return field;
}

/// One quarter, laid four times round an eye: the arms of a star, petals on the diagonals between
/// them, and ground outside.
Field rosettes(const Recipe& recipe) {
    const int quarter = recipe.counts[2];
    const auto fromMiddle = [quarter](int cell) {
        const int in = cell % (2 * quarter);
        return in < quarter ? quarter - 1 - in : in - quarter;
    };
    return ofCells(equalCells(recipe.width, 2 * quarter * recipe.counts[0], recipe.step),
                   equalCells(recipe.height, 2 * quarter * recipe.counts[1], recipe.step),
                   [&](int column, int row) {
                       const int x = fromMiddle(column);
                       const int y = fromMiddle(row);
                       if (x == y && x < quarter - 1) {
                           return woodOf(recipe, 2);
                       }
                       return woodOf(recipe, std::min(x, y) == 0 ? 0 : 1);
                   });
}

/// A hook on a line, in bands that are mirrored about the line or about the ground between them.
Field greekKey(const Recipe& recipe) {
    constexpr std::array<std::string_view, 4> hook{"####", "#..#", "#.##", "#..."};
    constexpr int size = 5;  // the hook, and the ground or the line beside it
    const auto isLine = [&](int column, int row) {
        const bool turned = row / size % 2 == 1;
        if (row % size == 0) {
            return turned;
        }
        if (column % size == 0) {
            return false;
        }
        const int line = turned ? size - 1 - row % size : row % size - 1;
        return hook[index(line)][index(column % size - 1)] == '#';
    };
    return ofRuns(equalCells(recipe.width, size * recipe.counts[0] + 1, recipe.step),
                  equalCells(recipe.height, size * recipe.counts[1] + 1, recipe.step),
                  [&](int column, int row) { return woodOf(recipe, isLine(column, row) ? 1 : 0); });
}

/// Four arms round a middle: the smallest picture that locks.
Field windmill(const Recipe& recipe) {
    const Length middle = recipe.lengths[0];
    const auto sides = [&](Length whole, int tiles) {
        const Length tile = equalPart(whole, tiles, recipe.step);
        const Length arm = equalPart(tile - middle, 2, recipe.step);
        return repeated({arm, middle, arm}, tiles);
    };
    const int first = woodOf(recipe, 0);
    const int second = woodOf(recipe, 1);
    const TilePattern tile{3,
                           {{0, 0, 2, 1, first},
                            {2, 0, 1, 2, second},
                            {0, 1, 1, 2, second},
                            {1, 1, 1, 1, woodOf(recipe, 2)},
                            {1, 2, 2, 1, first}}};
    Field field{sides(recipe.width, recipe.counts[0]), sides(recipe.height, recipe.counts[1]), {}};
    for (int y = 0; y < recipe.counts[1]; ++y) {
        for (int x = 0; x < recipe.counts[0]; ++x) {
            place(field, tile, x, y, false, false);
        }
    }
    std::sort(field.pieces.begin(), field.pieces.end(), readsBefore);
    return field;
}

Field nestedSquares(const Recipe& recipe) {
    return {
        equalCells(recipe.width, recipe.counts[0], recipe.step),
        equalCells(recipe.height, recipe.counts[1], recipe.step),
        rings(recipe.counts[0], recipe.counts[1], [&](int ring) { return woodOf(recipe, ring); })};
}

/// Lines round the middle, with ground as wide as a line between them and a margin of ground
/// outside.
Field borderBands(const Recipe& recipe) {
    const int bands = recipe.counts[0];
    const auto sides = [&](Length whole) {
        std::vector<Length> all(index(4 * bands + 1), recipe.lengths[0]);
        all.front() = all.back() = recipe.lengths[1];
        all[index(2 * bands)] =
            whole - recipe.lengths[0] * (2 * (2 * bands - 1)) - recipe.lengths[1] * 2;
        return all;
    };
    const int lineWoods = std::max(1, static_cast<int>(recipe.woods.size()) - 1);
    return {sides(recipe.width), sides(recipe.height),
            rings(4 * bands + 1, 4 * bands + 1, [&](int ring) {
                return woodOf(recipe, ring % 2 == 0 ? 0 : 1 + ring / 2 % lineWoods);
            })};
}

}  // namespace kerfwright::laying
