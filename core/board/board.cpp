#include "core/board/board.h"

#include "core/measure/notation.h"
#include "core/words/say.h"

#include <algorithm>
#include <functional>
#include <numeric>
#include <tuple>
#include <utility>

namespace kerfwright {
namespace {

std::size_t index(int i) {
    return static_cast<std::size_t>(i);
}
int count(const std::vector<Length>& sizes) {
    return static_cast<int>(sizes.size());
}

Length sum(const std::vector<Length>& sizes) {
    return std::accumulate(sizes.begin(), sizes.end(), Length());
}

Length sum(const std::vector<Length>& sizes, int first, int many) {
    const auto from = sizes.begin() + first;
    return std::accumulate(from, from + many, Length());
}

void sortPieces(std::vector<Piece>& pieces) {
    std::sort(pieces.begin(), pieces.end(), readsBefore);
}

/// Adds one piece a cell for the cells of `piece` that `wanted(column, row)` accepts.
template <class Wanted>
void addCells(std::vector<Piece>& pieces, const Piece& piece, Wanted wanted) {
    for (int row = piece.row; row < piece.row + piece.down; ++row) {
        for (int column = piece.column; column < piece.column + piece.across; ++column) {
            if (wanted(column, row)) {
                pieces.push_back({column, row, 1, 1, piece.wood});
            }
        }
    }
}

int cellAt(const std::vector<Length>& sizes, Length at) {
    if (at < Length()) {
        return -1;
    }
    Length end;
    for (int i = 0; i < count(sizes); ++i) {
        end += sizes[index(i)];
        if (at < end) {
            return i;
        }
    }
    return -1;
}

std::vector<Length> resizedSizes(const std::vector<Length>& sizes, int many) {
    std::vector<Length> result = sizes;
    result.resize(index(many), sizes.back());
    return result;
}

std::vector<Length> scaledSizes(const std::vector<Length>& sizes, Length first, Length grid) {
    const Length before = sizes.front();
    if (first == before || first <= Length() || before <= Length()) {
        return sizes;
    }
    std::vector<Length> result = sizes;
    for (Length& size : result) {
        if (size == before) {
            size = first;  // as typed, even off the grid
            continue;
        }
        // The nearest step, worked out in 128 bits: the product of two lengths is wider than 64.
        const detail::Wide product = area(size, first).squareNm();
        const detail::Wide step = area(before, grid).squareNm();
        const auto steps = static_cast<std::int64_t>((product + step / 2) / step);
        const Length rounded = grid * std::max<std::int64_t>(1, steps);
        // Rounding must not carry a size past that of the first column, which is not rounded.
        size = size > before ? std::max(rounded, first) : std::min(rounded, first);
    }
    return result;
}

/// Moves the joint after `first`. The sizes are compared with `by` before anything is added, so
/// that no distance, however large, overflows.
std::vector<Length> jointMoved(std::vector<Length> sizes, int first, Length by) {
    if (first < 0 || first >= count(sizes) - 1) {
        return sizes;
    }
    Length& before = sizes[index(first)];
    Length& after = sizes[index(first) + 1];
    constexpr Length least = BoardLimits::leastCell;
    constexpr Length greatest = BoardLimits::greatestCell;
    const bool beforeFits = by >= least - before && by <= greatest - before;
    const bool afterFits = by <= after - least && by >= after - greatest;
    if (beforeFits && afterFits) {
        before += by;
        after -= by;
    }
    return sizes;
}

// --- faults

void checkLength(std::vector<Fault>& all, const std::string& entry, Length value, Length least,
                 Length greatest, const Notation& notation) {
    if (value < least || value > greatest) {
        all.push_back({entry,
                       say("must be from {1} to {2}", formatLeast(least, notation),
                           formatGreatest(greatest, notation)),
                       formatExact(value, notation)});
    }
}

/// Entries of columns or rows, to be said.
struct LinesWords {
    const char* all;
    const char* one;      ///< with the number of the column or row
    const char* field;    ///< all sizes together
    const char* first;    ///< of the piece with that number
    const char* covered;  ///< the same
};
constexpr LinesWords columnsWords{noted("Columns"), noted("Column {1} width"), noted("Field width"),
                                  noted("Piece {1}: column"), noted("Piece {1}: columns covered")};
constexpr LinesWords rowsWords{noted("Rows"), noted("Row {1} height"), noted("Field height"),
                               noted("Piece {1}: row"), noted("Piece {1}: rows covered")};

/// Returns whether the number of cells is right.
bool checkSizes(std::vector<Fault>& all, const std::vector<Length>& sizes, const LinesWords& words,
                const Notation& notation) {
    constexpr auto most = static_cast<std::size_t>(BoardLimits::cellsAcross);
    if (sizes.empty() || sizes.size() > most) {
        all.push_back({say(words.all), say("must be from {1} to {2}", 1, most),
                       std::to_string(sizes.size())});
        return false;
    }
    const std::size_t before = all.size();
    for (int i = 0; i < count(sizes); ++i) {
        checkLength(all, say(words.one, i + 1), sizes[index(i)], BoardLimits::leastCell,
                    BoardLimits::greatestCell, notation);
    }
    // Only sizes within their limits are added up: no sum of them overflows.
    if (all.size() == before && sum(sizes) > BoardLimits::greatestField) {
        all.push_back(
            {say(words.field),
             say("must be at most {1}", formatGreatest(BoardLimits::greatestField, notation)),
             formatExact(sum(sizes), notation)});
    }
    return true;
}

void checkWood(std::vector<Fault>& all, const std::string& entry, int wood, int woodCount) {
    if (wood < 0 || wood >= woodCount) {
        all.push_back({entry,
                       sayCount(woodCount, "must be the one wood of the project",
                                "must be one of the {1} woods of the project"),
                       say("wood number {1}", static_cast<std::int64_t>(wood) + 1)});
    }
}

/// Whether the piece of that number lies inside a grid, without adding numbers that may be huge.
bool checkSpan(std::vector<Fault>& all, std::size_t piece, const LinesWords& words, int first,
               int many, int cells) {
    if (first < 0 || first >= cells) {
        all.push_back({say(words.first, piece), say("must be from {1} to {2}", 1, cells),
                       std::to_string(static_cast<std::int64_t>(first) + 1)});
        return false;
    }
    if (many < 1 || many > cells - first) {
        all.push_back({say(words.covered, piece),
                       say("must be from {1} to {2} from there", 1, cells - first),
                       std::to_string(many)});
        return false;
    }
    return true;
}

void checkPieces(std::vector<Fault>& all, const Field& field, int woodCount) {
    const int columns = count(field.columns);
    const int rows = count(field.rows);
    const auto cells = index(columns) * index(rows);
    if (field.pieces.empty() || field.pieces.size() > cells) {
        all.push_back({say("Pieces"), say("must be from {1} to {2}, one a cell at most", 1, cells),
                       std::to_string(field.pieces.size())});
        return;
    }
    std::vector<int> cover(cells, -1);
    bool inside = true;
    for (std::size_t i = 0; i < field.pieces.size(); ++i) {
        const Piece& piece = field.pieces[i];
        checkWood(all, say("Piece {1}: wood", i + 1), piece.wood, woodCount);
        if (!checkSpan(all, i + 1, columnsWords, piece.column, piece.across, columns) ||
            !checkSpan(all, i + 1, rowsWords, piece.row, piece.down, rows)) {
            inside = false;
            continue;
        }
        bool told = false;
        for (int row = piece.row; row < piece.row + piece.down; ++row) {
            for (int column = piece.column; column < piece.column + piece.across; ++column) {
                int& owner = cover[index(row) * index(columns) + index(column)];
                if (owner >= 0 && !told) {
                    all.push_back({say("Piece {1}", i + 1), say("must not lie over another piece"),
                                   say("a piece over piece {1} at column {2}, row {3}", owner + 1,
                                       column + 1, row + 1)});
                    told = true;
                } else if (owner < 0) {
                    owner = static_cast<int>(i);
                }
            }
        }
    }
    const auto bare = std::count(cover.begin(), cover.end(), -1);
    if (bare > 0 && inside) {
        const auto at = static_cast<int>(std::find(cover.begin(), cover.end(), -1) - cover.begin());
        all.push_back({say("Pieces"), say("must cover every cell"),
                       sayCount(bare, "a bare cell at column {2}, row {3}",
                                "{1} bare cells, the first at column {2}, row {3}",
                                at % columns + 1, at / columns + 1)});
    }
    for (std::size_t i = 1; i < field.pieces.size(); ++i) {
        if (readsBefore(field.pieces[i], field.pieces[i - 1])) {
            all.push_back({say("Pieces"), say("must be sorted by row, then column"),
                           say("piece {1} out of order", i + 1)});
            return;
        }
    }
}

}  // namespace

bool readsBefore(const Piece& a, const Piece& b) {
    return std::tie(a.row, a.column) < std::tie(b.row, b.column);
}

Length Field::width() const {
    return sum(columns);
}
Length Field::height() const {
    return sum(rows);
}

std::vector<Fault> faults(const Board& board, int woodCount, const Notation& notation) {
    std::vector<Fault> all;
    const bool columnsCounted = checkSizes(all, board.field.columns, columnsWords, notation);
    const bool rowsCounted = checkSizes(all, board.field.rows, rowsWords, notation);
    if (columnsCounted && rowsCounted) {
        checkPieces(all, board.field, woodCount);
    }
    checkLength(all, say("Thickness"), board.thickness, BoardLimits::leastThickness,
                BoardLimits::greatestThickness, notation);
    checkLength(all, say("Border width"), board.border.width, Length(), BoardLimits::greatestBorder,
                notation);
    checkWood(all, say("Border wood"), board.border.wood, woodCount);
    if (board.border.gap) {
        checkLength(all, say("Gap"), *board.border.gap, Length(), BoardLimits::greatestGap,
                    notation);
    }
    checkLength(all, say("Inlay width"), board.border.inlayWidth, Length(),
                BoardLimits::greatestBorder, notation);
    checkWood(all, say("Inlay wood"), board.border.inlayWood, woodCount);
    checkLength(all, say("Spline thickness"), board.border.splineThickness, Length(),
                BoardLimits::greatestSpline, notation);
    checkWood(all, say("Spline wood"), board.border.splineWood, woodCount);
    return all;
}

Field plainGrid(int columns, int rows, Length cellWidth, Length cellHeight, int wood) {
    Field field;
    field.columns.assign(index(columns), cellWidth);
    field.rows.assign(index(rows), cellHeight);
    field.pieces.reserve(index(columns) * index(rows));
    addCells(field.pieces, {0, 0, columns, rows, wood}, [](int, int) { return true; });
    return field;
}

int pieceAt(const Field& field, int column, int row) {
    for (std::size_t i = 0; i < field.pieces.size(); ++i) {
        const Piece& piece = field.pieces[i];
        if (column >= piece.column && column < piece.column + piece.across && row >= piece.row &&
            row < piece.row + piece.down) {
            return static_cast<int>(i);
        }
    }
    return -1;
}

std::vector<int> pieceMap(const Field& field) {
    const std::size_t columns = field.columns.size();
    std::vector<int> map(columns * field.rows.size(), -1);
    for (std::size_t i = 0; i < field.pieces.size(); ++i) {
        const Piece& piece = field.pieces[i];
        for (int row = piece.row; row < piece.row + piece.down; ++row) {
            const auto from =
                map.begin() + static_cast<std::ptrdiff_t>(index(row) * columns) + piece.column;
            std::fill(from, from + piece.across, static_cast<int>(i));
        }
    }
    return map;
}

int columnAt(const Field& field, Length x) {
    return cellAt(field.columns, x);
}
int rowAt(const Field& field, Length y) {
    return cellAt(field.rows, y);
}

Field resized(const Field& field, int columns, int rows) {
    if (columns < 1 || rows < 1 || columns > BoardLimits::cellsAcross ||
        rows > BoardLimits::cellsAcross) {
        return field;
    }
    Field result{resizedSizes(field.columns, columns), resizedSizes(field.rows, rows), {}};
    const int oldColumns = count(field.columns);
    const int oldRows = count(field.rows);
    for (int y = 0; y < rows; y += oldRows) {
        for (int x = 0; x < columns; x += oldColumns) {
            for (Piece piece : field.pieces) {
                piece.column += x;
                piece.row += y;
                if (piece.column < columns && piece.row < rows) {
                    piece.across = std::min(piece.across, columns - piece.column);
                    piece.down = std::min(piece.down, rows - piece.row);
                    result.pieces.push_back(piece);
                }
            }
        }
    }
    sortPieces(result.pieces);
    return result;
}

Field withCells(const Field& field, Length cellWidth, Length cellHeight) {
    Field result = field;
    std::fill(result.columns.begin(), result.columns.end(), cellWidth);
    std::fill(result.rows.begin(), result.rows.end(), cellHeight);
    return result;
}

Field scaled(const Field& field, Length firstWidth, Length firstHeight, Length grid) {
    return {scaledSizes(field.columns, firstWidth, grid),
            scaledSizes(field.rows, firstHeight, grid), field.pieces};
}

Field withColumnJointMoved(const Field& field, int left, Length by) {
    return {jointMoved(field.columns, left, by), field.rows, field.pieces};
}

Field withRowJointMoved(const Field& field, int upper, Length by) {
    return {field.columns, jointMoved(field.rows, upper, by), field.pieces};
}

Field withMerged(const Field& field, int column, int row, int across, int down) {
    const bool inside = column >= 0 && row >= 0 && column < count(field.columns) &&
                        row < count(field.rows) && across >= 1 && down >= 1 &&
                        across <= count(field.columns) - column && down <= count(field.rows) - row;
    if (!inside) {
        return field;
    }
    const int right = column + across;
    const int bottom = row + down;
    const auto covered = [&](int c, int r) {
        return c >= column && c < right && r >= row && r < bottom;
    };
    Field result{field.columns, field.rows, {}};
    const int wood = field.pieces[index(pieceAt(field, column, row))].wood;
    result.pieces.push_back({column, row, across, down, wood});
    for (const Piece& piece : field.pieces) {
        const bool apart = piece.column >= right || piece.row >= bottom ||
                           piece.column + piece.across <= column || piece.row + piece.down <= row;
        if (apart) {
            result.pieces.push_back(piece);
        } else {
            addCells(result.pieces, piece, std::not_fn(covered));
        }
    }
    sortPieces(result.pieces);
    return result;
}

Field withSplit(const Field& field, int column, int row) {
    const int at = pieceAt(field, column, row);
    if (at < 0) {
        return field;
    }
    Field result = field;
    const Piece whole = result.pieces[index(at)];
    result.pieces.erase(result.pieces.begin() + at);
    addCells(result.pieces, whole, [](int, int) { return true; });
    sortPieces(result.pieces);
    return result;
}

Field dividedAlong(const Field& field, const std::vector<Joint>& joints) {
    const auto linesOf = [](const std::vector<Length>& sizes) {
        std::vector<Length> lines(1);
        for (const Length size : sizes) {
            lines.push_back(lines.back() + size);
        }
        return lines;
    };
    const std::vector<Length> xs = linesOf(field.columns);
    const std::vector<Length> ys = linesOf(field.rows);
    Field divided = field;
    for (const Joint& joint : joints) {
        const std::vector<Length>& lines = joint.vertical ? xs : ys;
        const auto on = std::find(lines.begin(), lines.end(), joint.at);
        if (on == lines.end()) {
            continue;
        }
        const int line = static_cast<int>(on - lines.begin());
        std::vector<Piece> pieces;
        for (const Piece& piece : divided.pieces) {
            const int begin = joint.vertical ? piece.column : piece.row;
            const int count = joint.vertical ? piece.across : piece.down;
            const auto other = static_cast<std::size_t>(joint.vertical ? piece.row : piece.column);
            const auto span = static_cast<std::size_t>(joint.vertical ? piece.down : piece.across);
            const std::vector<Length>& along = joint.vertical ? ys : xs;
            if (line <= begin || line >= begin + count || joint.from > along[other] ||
                joint.to < along[other + span]) {
                pieces.push_back(piece);
                continue;
            }
            Piece first = piece;
            Piece second = piece;
            (joint.vertical ? first.across : first.down) = line - begin;
            (joint.vertical ? second.column : second.row) = line;
            (joint.vertical ? second.across : second.down) = begin + count - line;
            pieces.push_back(first);
            pieces.push_back(second);
        }
        divided.pieces = std::move(pieces);
    }
    std::sort(divided.pieces.begin(), divided.pieces.end(), readsBefore);
    return divided;
}

Field transposed(const Field& field) {
    Field result{field.rows, field.columns, field.pieces};
    for (Piece& piece : result.pieces) {
        std::swap(piece.column, piece.row);
        std::swap(piece.across, piece.down);
    }
    sortPieces(result.pieces);
    return result;
}

std::vector<WoodUse> woodUse(const Field& field, int woodCount) {
    std::vector<WoodUse> uses(index(woodCount));
    for (const Piece& piece : field.pieces) {
        WoodUse& use = uses[index(piece.wood)];
        ++use.pieces;
        use.face += area(sum(field.columns, piece.column, piece.across),
                         sum(field.rows, piece.row, piece.down));
    }
    return uses;
}

}  // namespace kerfwright
