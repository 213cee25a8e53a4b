// Patterns: a few parameters from which a field is laid out. What comes out is an ordinary field
// that can be painted on.
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
};

struct PatternRequest {
    Pattern pattern = Pattern::Chequer;
    int across = 8;  ///< cells, bricks, tiles or strips across, by pattern; 1 to 64
    int down = 8;
    Length cellWidth;  ///< of one square, brick, tile or stripe
    Length cellHeight;
    std::vector<int> woods;  ///< indices into the woods of the project, in the order used; not
                             ///< empty. Bricks with mortar take the last one as mortar
};

struct PatternInfo {
    Pattern pattern;
    std::string_view key;    ///< stable: "chequer"
    std::string_view name;   ///< on screen: "Chequer"
    std::string_view about;  ///< one line for the pointer
    int woods;               ///< how many woods it wants; fewer are repeated
};

/// In the order in which they are offered.
const std::vector<PatternInfo>& patterns();

/// The field. Faults where a number is outside the limits of a board or the grid would be wider
/// than 64 cells (basket tiles take three cells each way, bricks two columns, mortar bricks four
/// columns a brick and two rows a course). Stripes are one row, `down` cell heights high. What is
/// derived from the sizes, such as mortar, is rounded to 1/64 in or 0.1 mm where the sizes are on
/// that grid.
Result<Field> layOut(const PatternRequest& request);

}  // namespace kerfwright
