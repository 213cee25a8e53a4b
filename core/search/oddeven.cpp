#include "core/search/oddeven.h"

#include "core/measure/at.h"
#include "core/words/say.h"

#include <algorithm>
#include <utility>

namespace kerfwright {
namespace {

/// Woods by cell.
struct Woods {
    explicit Woods(const Field& field)
        : columns(static_cast<int>(field.columns.size()))
        , rows(static_cast<int>(field.rows.size())) {
        for (const int piece : pieceMap(field)) {
            all.push_back(field.pieces[at(piece)].wood);
        }
    }
    int of(int column, int row) const { return all[at(row * columns + column)]; }

    int columns, rows;
    std::vector<int> all;
};

template <class Same>
bool every(const Woods& woods, Same same) {
    for (int row = 0; row < woods.rows; ++row) {
        for (int column = 0; column < woods.columns; ++column) {
            if (!same(column, row)) {
                return false;
            }
        }
    }
    return true;
}

/// The shortest repeat that has begun again, else all of it. `same(i, j)`: whether two places are
/// alike.
template <class Same>
int repeatOf(int count, Same same) {
    for (int repeat = 1; repeat < count; ++repeat) {
        bool goesOn = true;
        for (int i = repeat; i < count && goesOn; ++i) {
            goesOn = same(i, i - repeat);
        }
        if (goesOn) {
            return repeat;
        }
    }
    return count;
}

/// For each place of the new count, the place it looks like.
std::vector<int> places(int count, int change, int repeat) {
    std::vector<int> result;
    for (int i = 0; i < std::max(1, count + change); ++i) {
        result.push_back(i < count ? i : i % repeat);
    }
    return result;
}

/// One row or column more or less, and the sentence on it, to be said with the columns, the rows,
/// the symmetry and the corners.
struct Change {
    int across, down;
    const char* sentence;
};
constexpr std::array changes{Change{0, 0, noted("As it is, {1} by {2}: {3}; {4}.")},
                             Change{1, 0, noted("With one column more, {1} by {2}: {3}; {4}.")},
                             Change{-1, 0, noted("With one column less, {1} by {2}: {3}; {4}.")},
                             Change{0, 1, noted("With one row more, {1} by {2}: {3}; {4}.")},
                             Change{0, -1, noted("With one row less, {1} by {2}: {3}; {4}.")}};

std::string symmetry(const FieldLook& look) {
    if (look.leftIsRight && look.topIsBottom) {
        return say("mirror images left to right and top to bottom");
    }
    if (look.leftIsRight) {
        return say("left and right are mirror images, top and bottom are not");
    }
    if (look.topIsBottom) {
        return say("top and bottom are mirror images, left and right are not");
    }
    return look.sameHalfTurn ? say("no mirror images, but the same when turned half round")
                             : say("no mirror images, and not the same when turned half round");
}

std::string corners(const FieldLook& look, const std::vector<std::string>& woods) {
    const auto name = [&](int i) {
        const int wood = look.corners[at(i)];
        return at(wood) < woods.size() ? woods[at(wood)] : say("wood {1}", wood + 1);
    };
    const auto same = [&](int a, int b) { return look.corners[at(a)] == look.corners[at(b)]; };
    if (same(0, 1) && same(0, 2) && same(0, 3)) {
        return say("all four corners {1}", name(0));
    }
    if (same(0, 3) && same(1, 2)) {
        return say("corners {1} and {2}, like ones across the diagonal", name(0), name(1));
    }
    if (same(0, 1) && same(2, 3)) {
        return say("upper corners {1}, lower ones {2}", name(0), name(2));
    }
    if (same(0, 2) && same(1, 3)) {
        return say("left corners {1}, right ones {2}", name(0), name(1));
    }
    return say("corners {1}, {2} above and {3}, {4} below", name(0), name(1), name(2), name(3));
}

}  // namespace

FieldLook lookOf(const Field& field) {
    const Woods woods(field);
    FieldLook look;
    look.columns = woods.columns;
    look.rows = woods.rows;
    const auto palindrome = [](const std::vector<Length>& sizes) {
        return std::equal(sizes.begin(), sizes.end(), sizes.rbegin());
    };
    const bool widths = palindrome(field.columns);
    const bool heights = palindrome(field.rows);
    const int right = woods.columns - 1;
    const int bottom = woods.rows - 1;
    look.leftIsRight = widths && every(woods, [&](int column, int row) {
                           return woods.of(column, row) == woods.of(right - column, row);
                       });
    look.topIsBottom = heights && every(woods, [&](int column, int row) {
                           return woods.of(column, row) == woods.of(column, bottom - row);
                       });
    look.sameHalfTurn = widths && heights && every(woods, [&](int column, int row) {
                            return woods.of(column, row) == woods.of(right - column, bottom - row);
                        });
    look.corners = {woods.of(0, 0), woods.of(right, 0), woods.of(0, bottom),
                    woods.of(right, bottom)};
    return look;
}

Field continued(const Field& field, int columns, int rows) {
    const Woods woods(field);
    const int repeatAcross = repeatOf(woods.columns, [&](int a, int b) {
        bool same = field.columns[at(a)] == field.columns[at(b)];
        for (int row = 0; row < woods.rows && same; ++row) {
            same = woods.of(a, row) == woods.of(b, row);
        }
        return same;
    });
    const int repeatDown = repeatOf(woods.rows, [&](int a, int b) {
        bool same = field.rows[at(a)] == field.rows[at(b)];
        for (int column = 0; column < woods.columns && same; ++column) {
            same = woods.of(column, a) == woods.of(column, b);
        }
        return same;
    });
    Field result;
    const std::vector<int> fromColumns = places(woods.columns, columns, repeatAcross);
    const std::vector<int> fromRows = places(woods.rows, rows, repeatDown);
    for (const int column : fromColumns) {
        result.columns.push_back(field.columns[at(column)]);
    }
    for (const int row : fromRows) {
        result.rows.push_back(field.rows[at(row)]);
    }
    for (std::size_t row = 0; row < fromRows.size(); ++row) {
        for (std::size_t column = 0; column < fromColumns.size(); ++column) {
            result.pieces.push_back({static_cast<int>(column), static_cast<int>(row), 1, 1,
                                     woods.of(fromColumns[column], fromRows[row])});
        }
    }
    return result;
}

std::vector<OddEven> oddAndEven(const Field& field, const std::vector<std::string>& woods) {
    std::vector<OddEven> all;
    const int columns = static_cast<int>(field.columns.size());
    const int rows = static_cast<int>(field.rows.size());
    for (const auto& [across, down, sentence] : changes) {
        if (columns + across < 1 || columns + across > BoardLimits::cellsAcross ||
            rows + down < 1 || rows + down > BoardLimits::cellsAcross) {
            continue;
        }
        const FieldLook look = lookOf(continued(field, across, down));
        all.push_back({across, down, look,
                       say(sentence, sayCount(look.columns, "{1} column", "{1} columns"),
                           sayCount(look.rows, "{1} row", "{1} rows"), symmetry(look),
                           corners(look, woods))});
    }
    return all;
}

}  // namespace kerfwright
