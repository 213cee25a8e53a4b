// The two-level plan before its allowances: which rows the field falls into, which rows one panel
// can serve, and where a piece must be divided because no timber is that large.
//
// Everything here speaks of rows. For a plan by columns the field is transposed first and the
// joints are transposed back.
#pragma once

#include "core/glueup/plan.h"

#include <string>
#include <vector>

namespace kerfwright::rows {

/// One wood along a row: what becomes one strip, or several where timber is too small.
struct Span {
    int wood = 0;
    Length width;
    friend auto operator<=>(const Span&, const Span&) = default;
};

/// A row as it will be glued into the field. Lines between bands run right across the field.
struct Band {
    Length height;
    std::vector<Span> word;
    int sheet = -1;        ///< index into Draft::sheets
    bool flipped = false;  ///< the panel's order reversed
    int marginSides = 0;   ///< 1 for an outermost row, 2 where the field is one row
    /// Joints drawn right across the band, or right down it, that merging would leave out: where a
    /// part must be divided after all, it is divided there. Offsets from the band's top left
    /// corner.
    std::vector<Length> drawnAcross, drawnDown;
};

/// Rows that panels of one make-up can serve: the same word up to reversal and, where the grain
/// stands up, the same height (there the row height is the panel's thickness).
struct Sheet {
    std::vector<Span> strips;  ///< after division
    std::vector<int> bands;    ///< indices of the rows it serves, top to bottom

    bool isGlued() const { return strips.size() > 1; }
};

struct Draft {
    Field field;  ///< as its rows are glued; transposed for a plan by columns
    bool byColumns = false;
    std::vector<Band> bands;
    std::vector<Sheet> sheets;
    std::vector<Joint> extraJoints;    ///< in the directions of the board, sorted
    std::vector<Joint> omittedJoints;  ///< the same

    int glueUps() const;
    int strips() const;
};

/// Faults where no division makes the strips fit the timber.
Result<Draft> draft(const Board& board, const std::vector<Wood>& woods, const Shop& shop,
                    bool mergeLike, bool byColumns, const Notation& notation);

/// Where parts laid side by side begin and end: 0, the first size, the sum of the first two ...
std::vector<Length> edges(const std::vector<Length>& sizes);
std::vector<Span> reversed(const std::vector<Span>& word);
/// The name of the panel with that number, from 0: "A" ... "Z", "AA", ...
std::string panelLabel(int index);

}  // namespace kerfwright::rows
