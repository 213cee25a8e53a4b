// The wish: the finished board, seen from above, and nothing about how it is made.
//
// x runs to the right, y down. The field is a grid of column widths and row heights; a piece is one
// visible rectangle of one wood and covers one or more whole cells.
#pragma once

#include "core/board/border.h"
#include "core/board/joint.h"
#include "core/measure/length.h"
#include "core/measure/notation.h"
#include "core/measure/result.h"
#include "core/wood/wood.h"

#include <optional>
#include <string>
#include <vector>

namespace kerfwright {

enum class Build {
    EndGrain,   ///< slices are stood up: end grain faces up
    LongGrain,  ///< slices stay as they are: grain lies in the face
};

/// Which way the grain of a long-grain field runs, seen from above. An end-grain field has none.
enum class GrainDirection {
    PlannersChoice,
    Down,    ///< along the columns: rows meet end grain to end grain
    Across,  ///< along the rows: columns meet end grain to end grain
};

struct Piece {
    int column = 0;  ///< of its top left cell, from 0
    int row = 0;
    int across = 1;  ///< how many columns it covers
    int down = 1;    ///< how many rows it covers
    int wood = 0;    ///< index into the woods of the project
    friend bool operator==(const Piece&, const Piece&) = default;
};

struct Field {
    std::vector<Length> columns;  ///< widths, left to right
    std::vector<Length> rows;     ///< heights, top to bottom
    std::vector<Piece> pieces;    ///< cover every cell exactly once; sorted by row, then column
    friend bool operator==(const Field&, const Field&) = default;

    Length width() const;
    Length height() const;
};

/// Its finished size depends on how far the field moves: `sizeOf` in border.h.
struct Board {
    Build build = Build::EndGrain;
    GrainDirection grain = GrainDirection::PlannersChoice;
    Length thickness;
    Field field;
    Border border;
    friend bool operator==(const Board&, const Board&) = default;
};

/// What a board may be. Wider than any shop of one person works, so that they stop slips of the
/// key and not a wish.
struct BoardLimits {
    static constexpr int cellsAcross = 64;
    static constexpr Length leastCell = Length::mm(2);
    static constexpr Length greatestCell = Length::mm(1500);
    static constexpr Length greatestField = Length::mm(3000);
    static constexpr Length leastThickness = Length::mm(5);
    static constexpr Length greatestThickness = Length::mm(200);
    static constexpr Length greatestBorder = Length::mm(300);
    static constexpr Length greatestGap = Length::mm(50);
    static constexpr Length greatestSpline = Length::mm(20);
};

/// Orders pieces as a field keeps them: by row, then column.
bool readsBefore(const Piece& a, const Piece& b);

/// Everything wrong with the board, in the order a form asks for it; empty where it can be planned.
/// `woodCount` is how many woods the project has; lengths in the faults are written in `notation`.
std::vector<Fault> faults(const Board& board, int woodCount,
                          const Notation& notation = Notation::millimetres(3));

/// A field of `columns` x `rows` equal cells of one wood, one piece a cell.
Field plainGrid(int columns, int rows, Length cellWidth, Length cellHeight, int wood);

/// Index of the piece that covers a cell, for a valid field; -1 outside.
int pieceAt(const Field& field, int column, int row);
/// For every cell, row by row, the index of its piece. For a valid field.
std::vector<int> pieceMap(const Field& field);
/// Index of the column that holds x (0 at the left edge), or -1 outside.
int columnAt(const Field& field, Length x);
int rowAt(const Field& field, Length y);

/// The same field with the grid changed to `columns` x `rows`: cells that stay keep their wood and
/// size, new ones repeat the pattern that is there (column c repeats column c modulo the old count)
/// in the size of the last one. Pieces cut by the new edge are shortened. Counts outside 1 to
/// `cellsAcross` change nothing; the result may be wider than a board may be, so ask `faults()`.
Field resized(const Field& field, int columns, int rows);
/// Sets every column width and row height, whatever they are: ask `faults()`.
Field withCells(const Field& field, Length cellWidth, Length cellHeight);
/// The same pattern, larger or smaller, of a valid field: the first column becomes `firstWidth`
/// wide, the first row `firstHeight` high. The others keep their proportion to it, rounded to the
/// nearest step of `grid`, but never less than one step; sizes that are equal stay equal, and no
/// size overtakes a larger one. A first size that stays changes nothing in its direction, and so
/// does one of 0 or less. The sizes may be more or less than a board may have, so ask `faults()`.
Field scaled(const Field& field, Length firstWidth, Length firstHeight, Length grid);
/// Moves the joint between columns `left` and `left + 1` by `by`, the sum unchanged.
/// Returns the field unchanged where a column would become thinner or wider than the limit.
Field withColumnJointMoved(const Field& field, int left, Length by);
Field withRowJointMoved(const Field& field, int upper, Length by);
/// Merges the pieces under a rectangle of cells into one piece of the wood at its top left.
/// Pieces that stick out of the rectangle are first split into cells. A rectangle that is not
/// wholly inside the field changes nothing.
Field withMerged(const Field& field, int column, int row, int across, int down);
/// Splits the piece that covers the cell into one piece a cell.
Field withSplit(const Field& field, int column, int row);
/// Divides pieces along joints that lie on lines of the grid; what of a joint lies outside a piece,
/// or on its edge, divides nothing.
Field dividedAlong(const Field& field, const std::vector<Joint>& joints);
/// Rows become columns. Pieces are mirrored about the diagonal.
Field transposed(const Field& field);

/// How many pieces each wood has, and how much of the field it covers.
struct WoodUse {
    int pieces = 0;
    Area face;
};
std::vector<WoodUse> woodUse(const Field& field, int woodCount);

}  // namespace kerfwright
