#include "core/board/regions.h"

#include "core/board/cellgrid.h"
#include "core/words/say.h"

#include <algorithm>
#include <string>
#include <utility>

namespace kerfwright {
namespace {

using cutting::CellGrid;
using cutting::emptyGrid;
using cutting::gridOf;
using cutting::piecesOf;

int count(const std::vector<Length>& sizes) {
    return static_cast<int>(sizes.size());
}

auto placeOf(const std::vector<Length>& sizes, int index) {
    return sizes.begin() + index;
}

/// The remainder that is never negative.
int wrapped(int index, int many) {
    const int rest = index % many;
    return rest < 0 ? rest + many : rest;
}

/// Lays `part` over `grid`; `offset` is where its owners begin in the woods of `grid`.
void lay(CellGrid& grid, const CellGrid& part, int column, int row, int offset) {
    for (int y = std::max(0, -row); y < part.rows && row + y < grid.rows; ++y) {
        for (int x = std::max(0, -column); x < part.columns && column + x < grid.columns; ++x) {
            grid.owner(column + x, row + y) = part.owner(x, y) + offset;
        }
    }
}

/// Adds the woods of `part` to those of `grid`; where they begin.
int adopt(CellGrid& grid, const CellGrid& part) {
    const int offset = static_cast<int>(grid.woods.size());
    grid.woods.insert(grid.woods.end(), part.woods.begin(), part.woods.end());
    return offset;
}

Fault tooMany(const char* entry, int many) {
    return {say(entry), say("must be from {1} to {2}", 1, BoardLimits::cellsAcross),
            std::to_string(many)};
}

Fault noSuch(const char* entry, int first, int many, int there) {
    return {say(entry), say("must be from {1} to {2}", 1, there),
            say("{1} to {2}", static_cast<std::int64_t>(first) + 1,
                static_cast<std::int64_t>(first) + many)};
}

Result<Field> inserted(const Field& field, int at, int first, int many, const char* entry) {
    const int there = count(field.columns);
    if (first < 0 || many < 1 || first >= there || many > there - first) {
        return noSuch(entry, first, many, there);
    }
    if (at < 0 || at > there) {
        return noSuch(entry, at, 1, there + 1);
    }
    if (there + many > BoardLimits::cellsAcross) {
        return tooMany(entry, there + many);
    }
    const CellGrid before = gridOf(field);
    CellGrid after = emptyGrid(there + many, before.rows, before.woods);
    const int offset = adopt(after, before);
    for (int row = 0; row < before.rows; ++row) {
        for (int column = 0; column < at; ++column) {
            after.owner(column, row) = before.owner(column, row);
        }
        for (int column = at; column < there; ++column) {
            after.owner(column + many, row) = before.owner(column, row);
        }
        const bool across =
            at > 0 && at < there && before.owner(at - 1, row) == before.owner(at, row);
        for (int i = 0; i < many; ++i) {
            after.owner(at + i, row) =
                across ? before.owner(at, row) : before.owner(first + i, row) + offset;
        }
    }
    Field result = field;
    const std::vector<Length> widths(placeOf(field.columns, first),
                                     placeOf(field.columns, first + many));
    result.columns.insert(placeOf(result.columns, at), widths.begin(), widths.end());
    result.pieces = piecesOf(after);
    return result;
}

Result<Field> removed(const Field& field, int first, int many, const char* entry) {
    const int there = count(field.columns);
    if (first < 0 || many < 1 || first >= there || many > there - first) {
        return noSuch(entry, first, many, there);
    }
    if (many == there) {
        return tooMany(entry, 0);
    }
    const CellGrid before = gridOf(field);
    CellGrid after = emptyGrid(there - many, before.rows, before.woods);
    for (int row = 0; row < before.rows; ++row) {
        for (int column = 0; column < after.columns; ++column) {
            after.owner(column, row) = before.owner(column < first ? column : column + many, row);
        }
    }
    Field result = field;
    result.columns.erase(placeOf(result.columns, first), placeOf(result.columns, first + many));
    result.pieces = piecesOf(after);
    return result;
}

Result<Field> backFrom(const Result<Field>& turnedField) {
    return turnedField.ok() ? Result<Field>(transposed(*turnedField)) : turnedField;
}

}  // namespace

bool isInside(const Field& field, const Cells& cells) {
    return cells.column >= 0 && cells.row >= 0 && cells.across >= 1 && cells.down >= 1 &&
           cells.column < count(field.columns) && cells.row < count(field.rows) &&
           cells.across <= count(field.columns) - cells.column &&
           cells.down <= count(field.rows) - cells.row;
}

Cells cellsOf(const Field& field) {
    return {0, 0, count(field.columns), count(field.rows)};
}

bool cutsNoPiece(const Field& field, const Cells& cells) {
    const int right = cells.column + cells.across;
    const int bottom = cells.row + cells.down;
    return std::all_of(field.pieces.begin(), field.pieces.end(), [&](const Piece& piece) {
        const bool apart = piece.column >= right || piece.row >= bottom ||
                           piece.column + piece.across <= cells.column ||
                           piece.row + piece.down <= cells.row;
        const bool within = piece.column >= cells.column && piece.row >= cells.row &&
                            piece.column + piece.across <= right &&
                            piece.row + piece.down <= bottom;
        return apart || within;
    });
}

Field copied(const Field& field, const Cells& cells) {
    const CellGrid all = gridOf(field);
    CellGrid part = emptyGrid(cells.across, cells.down, all.woods);
    for (int row = 0; row < cells.down; ++row) {
        for (int column = 0; column < cells.across; ++column) {
            part.owner(column, row) = all.owner(cells.column + column, cells.row + row);
        }
    }
    return {
        {placeOf(field.columns, cells.column), placeOf(field.columns, cells.column + cells.across)},
        {placeOf(field.rows, cells.row), placeOf(field.rows, cells.row + cells.down)},
        piecesOf(part)};
}

Field mirrored(const Field& field, Mirror mirror) {
    Field result = field;
    for (Piece& piece : result.pieces) {
        if (mirror == Mirror::Across) {
            piece.column = count(field.columns) - piece.column - piece.across;
        } else {
            piece.row = count(field.rows) - piece.row - piece.down;
        }
    }
    std::vector<Length>& sizes = mirror == Mirror::Across ? result.columns : result.rows;
    std::reverse(sizes.begin(), sizes.end());
    std::sort(result.pieces.begin(), result.pieces.end(), readsBefore);
    return result;
}

Field turned(const Field& field, int quarters) {
    switch (wrapped(quarters, 4)) {
    case 1:
        return mirrored(transposed(field), Mirror::Across);
    case 2:
        return mirrored(mirrored(field, Mirror::Across), Mirror::Down);
    case 3:
        return mirrored(transposed(field), Mirror::Down);
    default:
        return field;
    }
}

Field repeated(const Field& part, int across, int down, int column, int row) {
    const CellGrid one = gridOf(part);
    CellGrid all = emptyGrid(across, down, {});
    // Each copy has owners of its own, so that two pieces that come to touch stay two.
    const int startX = -wrapped(column, one.columns);
    const int startY = -wrapped(row, one.rows);
    for (int y = startY; y < down; y += one.rows) {
        for (int x = startX; x < across; x += one.columns) {
            lay(all, one, x, y, adopt(all, one));
        }
    }
    Field result;
    for (int i = 0; i < across; ++i) {
        result.columns.push_back(*placeOf(part.columns, wrapped(column + i, one.columns)));
    }
    for (int i = 0; i < down; ++i) {
        result.rows.push_back(*placeOf(part.rows, wrapped(row + i, one.rows)));
    }
    result.pieces = piecesOf(all);
    return result;
}

Field withLaid(const Field& field, const Field& part, int column, int row) {
    CellGrid grid = gridOf(field);
    const CellGrid laid = gridOf(part);
    lay(grid, laid, column, row, adopt(grid, laid));
    return {field.columns, field.rows, piecesOf(grid)};
}

Field withCleared(const Field& field, const Cells& cells, int wood) {
    return withLaid(field, plainGrid(cells.across, cells.down, Length(), Length(), wood),
                    cells.column, cells.row);
}

Field withMoved(const Field& field, const Cells& cells, int column, int row, int wood) {
    return withLaid(withCleared(field, cells, wood), copied(field, cells), column, row);
}

Field withMirrored(const Field& field, const Cells& cells, Mirror mirror) {
    const Field part = mirrored(copied(field, cells), mirror);
    Field result = withLaid(field, part, cells.column, cells.row);
    if (mirror == Mirror::Across && cells.down == count(field.rows)) {
        std::copy(part.columns.begin(), part.columns.end(), result.columns.begin() + cells.column);
    } else if (mirror == Mirror::Down && cells.across == count(field.columns)) {
        std::copy(part.rows.begin(), part.rows.end(), result.rows.begin() + cells.row);
    }
    return result;
}

Result<Field> withTurned(const Field& field, const Cells& cells, int quarters) {
    if (cells == cellsOf(field)) {
        return turned(field, quarters);
    }
    if (cells.across != cells.down && wrapped(quarters, 2) == 1) {
        return Fault{say("Marked region"),
                     say("must have as many columns as rows to be turned where it lies"),
                     say("{1} by {2} cells", cells.across, cells.down)};
    }
    return withLaid(field, turned(copied(field, cells), quarters), cells.column, cells.row);
}

Field withRepeated(const Field& field, const Cells& cells, const Cells& over) {
    const Field part = copied(field, cells);
    const Field laid = withLaid(
        field,
        repeated(part, over.across, over.down, over.column - cells.column, over.row - cells.row),
        over.column, over.row);
    return laid;
}

Result<Field> withColumnsInserted(const Field& field, int at, int first, int many) {
    return inserted(field, at, first, many, noted("Columns"));
}

Result<Field> withRowsInserted(const Field& field, int at, int first, int many) {
    return backFrom(inserted(transposed(field), at, first, many, noted("Rows")));
}

Result<Field> withColumnsRemoved(const Field& field, int first, int many) {
    return removed(field, first, many, noted("Columns"));
}

Result<Field> withRowsRemoved(const Field& field, int first, int many) {
    return backFrom(removed(transposed(field), first, many, noted("Rows")));
}

Field withAllSplit(const Field& field, const Cells& cells) {
    CellGrid grid = gridOf(field);
    std::vector<bool> reached(field.pieces.size(), false);
    for (int row = cells.row; row < cells.row + cells.down; ++row) {
        for (int column = cells.column; column < cells.column + cells.across; ++column) {
            reached[static_cast<std::size_t>(grid.owner(column, row))] = true;
        }
    }
    for (int& owner : grid.owners) {
        if (reached[static_cast<std::size_t>(owner)]) {
            grid.woods.push_back(grid.woods[static_cast<std::size_t>(owner)]);
            owner = static_cast<int>(grid.woods.size()) - 1;
        }
    }
    return {field.columns, field.rows, piecesOf(grid)};
}

}  // namespace kerfwright
