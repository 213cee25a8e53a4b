// Edits of a region of the field: copy, lay, move, mirror, turn, repeat, and whole rows and columns
// put in and taken out. All are pure: a valid field goes in, a valid field comes out.
//
// A region is a rectangle of whole cells. A piece that its edge cuts is divided there: what lies
// inside belongs to the region, what lies outside stays as few pieces as it can. The lines of the
// grid run through the whole field, so a copy that is laid elsewhere brings its pieces and woods
// with it and takes the sizes of the cells that it is laid on; sizes move only where the region
// reaches from edge to edge.
#pragma once

#include "core/board/board.h"
#include "core/measure/result.h"

namespace kerfwright {

/// A rectangle of cells of a grid.
struct Cells {
    int column = 0;  ///< of its top left cell, from 0
    int row = 0;
    int across = 1;  ///< how many columns, at least 1
    int down = 1;    ///< how many rows, at least 1
    friend bool operator==(const Cells&, const Cells&) = default;
};

bool isInside(const Field& field, const Cells& cells);
/// All of them.
Cells cellsOf(const Field& field);
/// Whether no piece lies partly inside and partly outside of the region.
bool cutsNoPiece(const Field& field, const Cells& cells);

enum class Mirror {
    Across,  ///< left becomes right
    Down,    ///< top becomes bottom
};

/// The region as a field of its own. It must be inside.
Field copied(const Field& field, const Cells& cells);
/// The whole field mirrored, sizes and all.
Field mirrored(const Field& field, Mirror mirror);
/// The whole field turned to the right by so many quarters, which may be negative; odd ones make
/// columns of rows.
Field turned(const Field& field, int quarters);
/// `part` over and over on `across` x `down` cells, each at least 1: its cell (`column`, `row`),
/// counted on beyond its edges either way, is the first.
Field repeated(const Field& part, int across, int down, int column = 0, int row = 0);

/// `part` laid on the field with its top left cell on (`column`, `row`); what hangs over the edges
/// of the field is left out, so all of it may be.
Field withLaid(const Field& field, const Field& part, int column, int row);
/// One piece of `wood` a cell. The region must be inside.
Field withCleared(const Field& field, const Cells& cells, int wood);
/// The region laid at (`column`, `row`), and cells of `wood` left where it was. The region must be
/// inside.
Field withMoved(const Field& field, const Cells& cells, int column, int row, int wood);
/// The region mirrored where it lies; one that reaches across the mirror from edge to edge (from
/// top to bottom where left becomes right) takes its sizes along. It must be inside.
Field withMirrored(const Field& field, const Cells& cells, Mirror mirror);
/// The region turned where it lies. The whole field takes its sizes along; any other region has
/// as many columns as rows, else the fault says so.
Result<Field> withTurned(const Field& field, const Cells& cells, int quarters);
/// The region repeated over the region `over`, in step with itself: where the two overlap on the
/// source, the source stays. Both must be inside.
Field withRepeated(const Field& field, const Cells& cells, const Cells& over);

/// Copies of the columns `first` to `first + many - 1`, widths and all, before column `at` (0 to
/// their number). A piece that lies across that place grows over them. The fault says that the
/// field would have more columns than `cellsAcross`, or names the column that there is not; the
/// result may be wider than a field may be, so ask `faults()`.
Result<Field> withColumnsInserted(const Field& field, int at, int first, int many);
Result<Field> withRowsInserted(const Field& field, int at, int first, int many);
/// Without the columns `first` to `first + many - 1`. Pieces that reach into them are shortened.
/// The fault says that at least one has to stay, or names the column that there is not.
Result<Field> withColumnsRemoved(const Field& field, int first, int many);
Result<Field> withRowsRemoved(const Field& field, int first, int many);

/// Every piece that reaches into the region becomes one piece a cell, also outside of it. The
/// region must be inside.
Field withAllSplit(const Field& field, const Cells& cells);

}  // namespace kerfwright
