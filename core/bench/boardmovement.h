// How this board moves: its field from the moisture it is built at to the driest and the dampest
// that its place has, piece by piece, and what it weighs on the way.
//
// All changes are in mm, growth positive, and are ranges: rings that nobody has said the lie of can
// lie either way. Rows and columns are reckoned as if each were free of its neighbours; glued
// together they pull each other along, so that the field as a whole lies somewhere between.
#pragma once

#include "core/board/board.h"
#include "core/wood/moisture.h"
#include "core/wood/movement.h"

#include <optional>
#include <vector>

namespace kerfwright {

struct SeasonChange {
    Range toDriest;   ///< from build to the driest season
    Range toDampest;  ///< from build to the dampest season
    friend bool operator==(const SeasonChange&, const SeasonChange&) = default;
};
SeasonChange hull(const SeasonChange& a, const SeasonChange& b);

/// By how much two neighbours move apart at most, whichever season it is.
struct Apart {
    double mm = 0;
    int first = -1;  ///< the upper or left one of the two; -1: there are no two that differ
    friend bool operator==(const Apart&, const Apart&) = default;
};
struct Neighbours {
    Apart alike;  ///< where the rings of all pieces lie alike, as they should in a row
    Apart worst;  ///< where they lie as badly as what is known of them allows
    friend bool operator==(const Neighbours&, const Neighbours&) = default;
};

/// Growth of one wood in the three directions of the board, as a part of the dimension.
struct PieceGrowth {
    Range x, y, up;
    friend bool operator==(const PieceGrowth&, const PieceGrowth&) = default;
};
/// `byColumns` as for `movementOf`. Empty where the wood does not say.
std::optional<PieceGrowth> pieceGrowth(const Wood& wood, Build build, bool byColumns, double from,
                                       double to);

struct BoardMovement {
    std::vector<SeasonChange> rows;     ///< of each row's length, along x
    std::vector<SeasonChange> columns;  ///< of each column's length, along y
    SeasonChange width;                 ///< of the field: holds those of all rows
    SeasonChange height;                ///< holds those of all columns
    SeasonChange thickness;             ///< of the board: holds those of all pieces
    Neighbours rowsApart;
    Neighbours columnsApart;
    /// Woods in the field, by index, that say too little of their movement; they are taken to stay
    /// as they are, so that the true movement is more than what is said here.
    std::vector<int> unknownWoods;
};

/// `byColumns` as in the plan: the field's columns are the slices (else its rows). It says where
/// the strips' width lies, and which way the grain of a long-grain field runs. For a valid board.
BoardMovement movementOf(const Board& board, const std::vector<Wood>& woods, bool byColumns,
                         const Climate& climate);

/// kg of the board, border included, once all of it is at `moisture`; its sizes are those at the
/// moisture it was built at. Grooves and what fills them are taken as solid wood.
/// `surround` empty: the border without a gap. Empty where a
/// wood in it has no density.
std::optional<double> weightAt(const Board& board, const std::vector<Wood>& woods,
                               const Climate& climate, double moisture,
                               const std::optional<Surround>& surround = std::nullopt);

}  // namespace kerfwright
