// Odd and even: what one row or column more or less does to the look of a board, said before
// anything is cut.
#pragma once

#include "core/board/board.h"

#include <array>
#include <string>
#include <vector>

namespace kerfwright {

struct FieldLook {
    int columns = 0, rows = 0;
    bool leftIsRight = false;      ///< mirror image of itself left to right, in sizes and woods
    bool topIsBottom = false;      ///< the same top to bottom
    bool sameHalfTurn = false;     ///< looks the same turned half round
    std::array<int, 4> corners{};  ///< woods: top left, top right, bottom left, bottom right
    friend bool operator==(const FieldLook&, const FieldLook&) = default;
};

/// Of a valid field. Joints between like pieces do not count.
FieldLook lookOf(const Field& field);

/// The field with a few columns and rows more or less on the right and at the bottom, as its
/// pattern goes on: the shortest repeat of its columns that has begun again is continued, else its
/// columns from the first on. One piece a cell. -1 to 1 is meant; less than one column stays one.
Field continued(const Field& field, int columns, int rows);

struct OddEven {
    int columns = 0, rows = 0;  ///< more or less than now
    FieldLook look;
    std::string sentence;  ///< what is gained and what is lost, as plain words
};

/// First the field as it is, then with a column more, a column less, a row more, a row less, as far
/// as a board may have so many. `woods`: names by wood.
std::vector<OddEven> oddAndEven(const Field& field, const std::vector<std::string>& woods);

}  // namespace kerfwright
