// Patterns: a few numbers from which a field is laid out. What comes out is an ordinary field that
// can be painted on.
#pragma once

#include "core/board/board.h"

#include <string_view>
#include <vector>

namespace kerfwright {

enum class Pattern {
    Plain,
    Stripes,
    Chequer,
    Bricks,
    MortarBricks,
    Basket,
    Graduated,
    NestedSquares,
    Pinched,
    Pinstripes,
    LogCabin,
    Steps,
    DiagonalSteps,
    Plaid,
    GreekKey,
    BorderBands,
    Rosettes,
    Windmill,
};

/// Which way what is counted lies.
enum class CountedAlong {
    Width,    ///< side by side across the field
    Height,   ///< one below the other
    Neither,  ///< inside a tile, or anything else
};

/// A whole number that a pattern asks for.
struct PatternCount {
    std::string_view key;   ///< stable: "across"
    std::string_view name;  ///< on screen, to be said: "Bricks a course"
    int least, greatest;    ///< inclusive
    int usual;              ///< to begin with
    CountedAlong along = CountedAlong::Neither;
    int squares = 1;  ///< how many squares of a plain grid one of these stands for
};

/// A length that a pattern asks for, as thin or thick as a cell may be.
struct PatternLength {
    std::string_view key;   ///< stable: "mortar"
    std::string_view name;  ///< on screen, to be said: "Mortar line"
    int parts;  ///< to begin with it is such a part of one brick, tile or stripe, on its short side
};

struct PatternInfo {
    Pattern pattern;
    std::string_view key;    ///< stable, in files: "chequer"
    std::string_view name;   ///< on screen, to be said: "Chequer"
    std::string_view about;  ///< one line for the pointer, to be said
    /// What each wood is for, in order: "Brick", "Mortar"; to be said in the context "wood of a
    /// pattern".
    std::vector<std::string_view> roles;
    /// The counts across and down in one, to be said: "Bricks × courses"; may be empty where there
    /// are not both.
    std::string_view together;
    std::vector<PatternCount> counts;
    std::vector<PatternLength> lengths;
    bool locks = false;  ///< no straight glue lines make it: it takes joints inside pieces
    /// Fewer woods than roles are taken in turn (0); or so many roles get theirs first, and those
    /// after them share these.
    int apart = 0;
    int woods = 1;  ///< how many it wants, one a role
};

/// In the order in which they are offered. What a key lays out for given numbers stays the same for
/// ever, since files keep recipes.
const std::vector<PatternInfo>& patterns();
const PatternInfo& patternInfo(Pattern pattern);

/// A pattern by the size of its cells, with the usual numbers for the rest.
struct PatternRequest {
    Pattern pattern = Pattern::Chequer;
    int across = 8;  ///< cells, bricks, tiles or strips across, by pattern
    int down = 8;
    Length cellWidth;  ///< of one square, brick, tile or stripe
    Length cellHeight;
    std::vector<int> woods;  ///< indices into the woods of the project, in the order of the
                             ///< pattern's roles; not empty
};

/// The field. Faults where a number is outside the limits of a board or of the pattern, or the grid
/// would be wider than 64 cells. Patterns of one row are `down` cell heights high; bricks with
/// mortar are as wide as their bricks and mortar make them. What is derived from the sizes is
/// rounded to 1/64 in or 0.1 mm where the sizes are on that grid.
Result<Field> layOut(const PatternRequest& request);

}  // namespace kerfwright
