#include "core/board/layouts.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <utility>

namespace kerfwright::laying {

std::size_t index(int i) {
    return static_cast<std::size_t>(i);
}

int woodOf(const Recipe& recipe, int turn) {
    return recipe.woods[index(turn) % recipe.woods.size()];
}

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

Length nearestPart(Length length, std::int64_t parts, Length step) {
    return roundedDown(Length::nm((length.nm() + step.nm() * parts / 2) / parts), step);
}

Length equalPart(Length whole, int parts, Length step) {
    return roundedDown(Length::nm(whole.nm() / parts), step);
}

std::vector<Length> repeated(const std::vector<Length>& sizes, int times) {
    std::vector<Length> all;
    for (int i = 0; i < times; ++i) {
        all.insert(all.end(), sizes.begin(), sizes.end());
    }
    return all;
}

std::vector<Length> mirroredParts(Length side, int parts, Length step) {
    std::vector<Length> all(index(parts), nearestPart(side, parts, step));
    Length rest = side;
    for (const Length part : all) {
        rest -= part;
    }
    const int middle = (parts - 1) / 2;
    if (parts % 2 == 1) {
        all[index(middle)] += rest;
    } else {
        all[index(middle)] += half(rest);
        all[index(middle + 1)] += rest - half(rest);
    }
    return all;
}

Field ofCells(std::vector<Length> columns, std::vector<Length> rows, const WoodAt& woodAt) {
    Field field{std::move(columns), std::move(rows), {}};
    for (int row = 0; row < static_cast<int>(field.rows.size()); ++row) {
        for (int column = 0; column < static_cast<int>(field.columns.size()); ++column) {
            field.pieces.push_back({column, row, 1, 1, woodAt(column, row)});
        }
    }
    return field;
}

Field ofRuns(std::vector<Length> columns, std::vector<Length> rows, const WoodAt& woodAt) {
    Field field = ofCells(std::move(columns), std::move(rows), woodAt);
    std::vector<Piece> runs;
    for (const Piece& cell : field.pieces) {
        if (!runs.empty() && runs.back().row == cell.row && runs.back().wood == cell.wood) {
            ++runs.back().across;
        } else {
            runs.push_back(cell);
        }
    }
    field.pieces = std::move(runs);
    return field;
}

namespace {

std::vector<Length> equalParts(Length whole, int parts, Length step) {
    return std::vector<Length>(index(parts), equalPart(whole, parts, step));
}

/// A grid of equal cells, by the first two counts.
Field grid(const Recipe& recipe, const WoodAt& woodAt) {
    return ofCells(equalParts(recipe.width, recipe.counts[0], recipe.step),
                   equalParts(recipe.height, recipe.counts[1], recipe.step), woodAt);
}

/// The bulge of trade practice: joints at x(u) = (W / 2) sin(A u) / sin A, u from -1 to 1. Pinched,
/// the list of one half is reversed; where there is a middle part, that changes the sum, and the
/// list is brought back to W. Joints of the left half are rounded to the step and mirrored, so that
/// the sum is exact and both halves are alike.
std::vector<Length> graded(Length all, int parts, int degrees, bool pinched, Length step) {
    const double angle = std::numbers::pi * degrees / 180;
    std::vector<double> shares;  // of the left half and, where there is one, of the middle part
    const auto joint = [&](int i) { return std::sin(angle * (-1 + 2.0 * i / parts)); };
    shares.reserve(index((parts + 1) / 2));
    for (int i = 0; i < (parts + 1) / 2; ++i) {
        shares.push_back((joint(i + 1) - joint(i)) / (2 * std::sin(angle)));
    }
    if (pinched) {
        std::reverse(shares.begin(), shares.end());
        double sum = parts % 2 == 1 ? -shares.back() : 0;
        for (const double share : shares) {
            sum += 2 * share;
        }
        for (double& share : shares) {
            share /= sum;
        }
    }
    std::vector<Length> sizes(index(parts));
    Length before;
    double at = 0;
    for (int i = 0; i < parts / 2; ++i) {
        at += shares[index(i)];
        const double steps = at * static_cast<double>(all.nm()) / static_cast<double>(step.nm());
        const Length next = 2 * (i + 1) == parts ? half(all) : step * std::llround(steps);
        sizes[index(i)] = sizes[index(parts - 1 - i)] = next - before;
        before = next;
    }
    if (parts % 2 == 1) {
        sizes[index(parts / 2)] = all - before * 2;
    }
    return sizes;
}

Field graduated(const Recipe& recipe, bool pinched) {
    Field field = chequer(recipe);
    const int degrees = recipe.counts[2];
    field.columns = graded(recipe.width, recipe.counts[0], degrees, pinched, recipe.step);
    field.rows = graded(recipe.height, recipe.counts[1], degrees, pinched, recipe.step);
    return field;
}

/// Broad bands with a narrow one between each two.
std::vector<Length> bandsOf(Length whole, int broad, Length narrow, Length step) {
    const Length each = equalPart(whole - narrow * (broad - 1), broad, step);
    std::vector<Length> all = repeated({each, narrow}, broad);
    all.pop_back();
    return all;
}

}  // namespace

Field plain(const Recipe& recipe) {
    return grid(recipe, [&](int, int) { return woodOf(recipe, 0); });
}

Field stripes(const Recipe& recipe) {
    return ofCells(equalParts(recipe.width, recipe.counts[0], recipe.step), {recipe.height},
                   [&](int column, int) { return woodOf(recipe, column); });
}

/// Between two broad stripes stand the lines, with ground as wide as a line between each two.
Field pinstripes(const Recipe& recipe) {
    const int broad = recipe.counts[0];
    const int between = 2 * recipe.counts[1] - 1;
    const Length line = recipe.lengths[0];
    const Length each =
        equalPart(recipe.width - line * (between * (broad - 1)), broad, recipe.step);
    std::vector<Length> stripe(index(1 + between), line);
    stripe.front() = each;
    std::vector<Length> columns = repeated(stripe, broad);
    columns.resize(columns.size() - index(between));
    return ofCells(std::move(columns), {recipe.height},
                   [&](int column, int) { return woodOf(recipe, column % (1 + between) % 2); });
}

Field chequer(const Recipe& recipe) {
    return grid(recipe, [&](int column, int row) { return woodOf(recipe, column + row); });
}

Field bulging(const Recipe& recipe) {
    return graduated(recipe, false);
}

Field pinched(const Recipe& recipe) {
    return graduated(recipe, true);
}

/// Each course is one part of a brick further on than the one above; after as many courses as a
/// brick has parts it begins again. Parts differ by a step where the brick does not divide.
Field bricks(const Recipe& recipe) {
    const int parts = recipe.counts[2];
    const int columns = parts * recipe.counts[0];
    const Length brick = equalPart(recipe.width, recipe.counts[0], recipe.step);
    std::vector<Length> each(index(parts), equalPart(brick, parts, recipe.step));
    each.back() = brick - each.front() * (parts - 1);
    Field field;
    field.columns = repeated(each, recipe.counts[0]);
    field.rows = equalParts(recipe.height, recipe.counts[1], recipe.step);
    int first = 0;  // turn of the first brick of a course
    for (int row = 0; row < recipe.counts[1]; ++row) {
        const int shift = row % parts;
        if (row > 0) {
            // Above a brick lie two. Where a part brick is new at the left, they are its own turn
            // and the one before, else its own and the one after: so one or two woods further on
            // keep all of them apart, given three woods.
            first = (first + (shift == 1 ? 1 : 2)) % 3;
        }
        int turn = first;
        for (int column = 0; column < columns; ++turn) {
            const int whole = column == 0 && shift > 0 ? shift : parts;
            const int across = std::min(whole, columns - column);
            field.pieces.push_back({column, row, across, 1, woodOf(recipe, turn)});
            column += across;
        }
    }
    return field;
}

/// A course is so many bricks, each with mortar on its right, and a part brick of (brick - mortar)
/// / 2 at the end; the next course is the same one reversed, which shifts it by half a brick and
/// its mortar. The last wood is the mortar.
Field mortarBricks(const Recipe& recipe) {
    const int across = recipe.counts[0];
    const int down = recipe.counts[1];
    const Length mortar = recipe.lengths[0];
    const Length part =
        equalPart(recipe.width - mortar * (2 * across), 2 * across + 1, recipe.step);
    const Length course = equalPart(recipe.height - mortar * (down - 1), down, recipe.step);
    const int brickWoods = std::max(1, static_cast<int>(recipe.woods.size()) - 1);
    const int mortarWood = recipe.woods.back();

    Field field;
    field.columns = repeated({part, mortar}, 2 * across);
    field.columns.push_back(part);
    const auto columns = static_cast<int>(field.columns.size());

    std::vector<Piece> bricks;
    for (int i = 0; i <= across; ++i) {
        const int column = 4 * i;
        const bool whole = i < across;
        bricks.push_back({column, 0, whole ? 3 : 1, 1, woodOf(recipe, i % brickWoods)});
        if (whole) {
            bricks.push_back({column + 3, 0, 1, 1, mortarWood});
        }
    }
    for (int i = 0; i < down; ++i) {
        if (i > 0) {
            field.rows.push_back(mortar);
            field.pieces.push_back({0, 2 * i - 1, columns, 1, mortarWood});
        }
        field.rows.push_back(course);
        for (Piece piece : bricks) {
            piece.row = 2 * i;
            field.pieces.push_back(piece);
        }
        for (Piece& piece : bricks) {
            piece.column = columns - piece.column - piece.across;
        }
        std::reverse(bricks.begin(), bricks.end());
    }
    return field;
}

/// Broad bands both ways: broad on broad is ground, narrow on narrow the knot.
Field plaid(const Recipe& recipe) {
    const Length narrow = recipe.lengths[0];
    return ofCells(bandsOf(recipe.width, recipe.counts[0], narrow, recipe.step),
                   bandsOf(recipe.height, recipe.counts[1], narrow, recipe.step),
                   [&](int column, int row) { return woodOf(recipe, column % 2 + row % 2); });
}

/// The columns step down for so many rows, and up again.
Field steps(const Recipe& recipe) {
    const int climb = recipe.counts[2];
    return grid(recipe, [&](int column, int row) {
        const int way = row % (2 * climb);
        return woodOf(recipe, column + std::min(way, 2 * climb - way));
    });
}

Field diagonalSteps(const Recipe& recipe) {
    const int run = recipe.counts[2];
    return ofRuns(equalParts(recipe.width, recipe.counts[0], recipe.step),
                  equalParts(recipe.height, recipe.counts[1], recipe.step),
                  [&](int column, int row) { return woodOf(recipe, (column + row) / run); });
}

}  // namespace kerfwright::laying
