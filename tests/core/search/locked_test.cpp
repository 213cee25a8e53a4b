#include "core/search/locked.h"
#include "core/search/search.h"
#include "tests/core/search/pictures.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <numeric>
#include <random>
#include <set>
#include <string>

namespace kerfwright::searching {
namespace {

using Rows = std::vector<std::string>;

bool guillotine(const Rows& rows) {
    const Field field = pieces(rows, {});
    return isGuillotine(pictureOf(field, Laying::EndGrain, false));
}

/// Calls `each` for every way of tiling the grid with exactly `left` more rectangles.
template <class Each>
void tile(Rows& rows, int left, char next, Each each) {
    int column = -1;
    int row = -1;
    const int width = static_cast<int>(rows.front().size());
    const int height = static_cast<int>(rows.size());
    const auto at = [&rows](int x, int y) -> char& {
        return rows[static_cast<std::size_t>(y)][static_cast<std::size_t>(x)];
    };
    for (int y = 0; y < height && row < 0; ++y)
        for (int x = 0; x < width && row < 0; ++x)
            if (at(x, y) == '.') {
                column = x;
                row = y;
            }
    if (row < 0) {
        if (left == 0)
            each(rows);
        return;
    }
    if (left == 0)
        return;
    for (int right = column; right < width && at(right, row) == '.'; ++right) {
        for (int bottom = row; bottom < height; ++bottom) {
            for (int y = row; y <= bottom; ++y)
                for (int x = column; x <= right; ++x)
                    at(x, y) = next;
            tile(rows, left - 1, static_cast<char>(next + 1), each);
            for (int y = row; y <= bottom; ++y)
                for (int x = column; x <= right; ++x)
                    at(x, y) = '.';
        }
    }
}

/// Which rectangles lie left of and above which, told by the lines between them: all on one side of
/// a line lie before all on its other side. Rectangles are put in order from the upper left. Empty
/// for a partition that has four corners in one point, two lines in one, or an unused line.
std::string structure(const Rows& rows, int count) {
    const int width = static_cast<int>(rows.front().size());
    const int height = static_cast<int>(rows.size());
    const auto at = [&rows](int x, int y) {
        return rows[static_cast<std::size_t>(y)][static_cast<std::size_t>(x)] - 'a';
    };
    for (int y = 1; y < height; ++y)
        for (int x = 1; x < width; ++x)
            if (std::set<int>{at(x - 1, y - 1), at(x, y - 1), at(x - 1, y), at(x, y)}.size() == 4)
                return {};
    std::vector<std::vector<int>> before(static_cast<std::size_t>(count),
                                         std::vector<int>(static_cast<std::size_t>(count), 0));
    int segments = 0;
    for (const bool vertical : {true, false}) {
        const int lines = vertical ? width : height;
        const int length = vertical ? height : width;
        for (int line = 1; line < lines; ++line) {
            const auto side = [&](int i, int offset) {
                return vertical ? at(line + offset, i) : at(i, line + offset);
            };
            int onLine = 0;
            for (int i = 0; i < length;) {
                if (side(i, -1) == side(i, 0)) {
                    ++i;
                    continue;
                }
                std::set<int> first;
                std::set<int> second;
                for (; i < length && side(i, -1) != side(i, 0); ++i) {
                    first.insert(side(i, -1));
                    second.insert(side(i, 0));
                }
                ++onLine;
                for (const int a : first)
                    for (const int b : second)
                        before[static_cast<std::size_t>(a)][static_cast<std::size_t>(b)] |=
                            vertical ? 1 : 2;
            }
            if (onLine != 1)
                return {};
            segments += onLine;
        }
    }
    if (segments != count - 1)
        return {};
    const auto all = static_cast<std::size_t>(count);
    for (std::size_t via = 0; via < all; ++via)
        for (std::size_t a = 0; a < all; ++a)
            for (std::size_t b = 0; b < all; ++b)
                before[a][b] |= before[a][via] & before[via][b];
    std::vector<std::size_t> order(all);
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::sort(order.begin(), order.end(),
              [&](std::size_t a, std::size_t b) { return before[a][b] != 0; });
    std::string text;
    for (const std::size_t a : order)
        for (const std::size_t b : order)
            text += static_cast<char>('0' + before[a][b]);
    return text;
}

TEST(Locked, CountsOfGuillotinePartitionsAreTheKnownOnes) {
    // Schroeder against Baxter numbers, for 1 to 5 rectangles. Value from memory.
    const std::vector<std::size_t> guillotines{1, 2, 6, 22, 90};
    const std::vector<std::size_t> allOfThem{1, 2, 6, 22, 92};
    for (int count = 1; count <= 5; ++count) {
        std::set<std::string> all;
        std::set<std::string> free;
        for (int across = 1; across <= count; ++across) {
            const int down = count + 1 - across;
            Rows rows(static_cast<std::size_t>(down),
                      std::string(static_cast<std::size_t>(across), '.'));
            tile(rows, count, 'a', [&](const Rows& tiled) {
                const std::string shape = structure(tiled, count);
                if (!shape.empty() || count == 1) {
                    all.insert(shape);
                    if (guillotine(tiled))
                        free.insert(shape);
                }
            });
        }
        EXPECT_EQ(all.size(), allOfThem[static_cast<std::size_t>(count - 1)]) << count;
        EXPECT_EQ(free.size(), guillotines[static_cast<std::size_t>(count - 1)]) << count;
    }
}

TEST(Locked, FreePicturesAskForNothing) {
    const Locked locked = lockedPieces(pictureOf(cells({"ABAB", "BABA"}), Laying::EndGrain, false));
    EXPECT_TRUE(locked.pieces.empty());
    EXPECT_TRUE(locked.freeing.empty());
}

TEST(Locked, OnlyThePinwheelIsNamedOnALargerBoard) {
    const Picture picture = pictureOf(pieces({"abcde", "fppqg", "hsrqi", "jsttk", "lmnou"}, {}),
                                      Laying::EndGrain, false);
    const Locked locked = lockedPieces(picture);
    ASSERT_EQ(locked.pieces.size(), 4u);
    for (const int piece : locked.pieces) {
        const Tile& tile = *std::find_if(picture.tiles.begin(), picture.tiles.end(),
                                         [&](const Tile& each) { return each.piece == piece; });
        EXPECT_EQ((tile.right - tile.left) * (tile.bottom - tile.top), 2);
    }
    EXPECT_EQ(locked.freeing.size(), 1u);
}

TEST(Locked, APinwheelOfOneWoodIsOneStripWhereLikePiecesMerge) {
    const Field field = pieces({"aabf", "debf", "dccf"}, {0, 0, 0, 0, 0, 1});
    EXPECT_FALSE(isGuillotine(pictureOf(field, Laying::EndGrain, false)));
    const Picture merged = pictureOf(field, Laying::EndGrain, true);
    EXPECT_TRUE(isGuillotine(merged));
    EXPECT_TRUE(lockedPieces(merged).freeing.empty());
    EXPECT_EQ(fewestGlueUps(merged).found.front().glueUps, 1);
    // Unless no timber is that large.
    const StripLimit narrow{Length::mm(80), Length::mm(80)};
    EXPECT_FALSE(isGuillotine(pictureOf(field, Laying::EndGrain, true, {narrow})));
}

TEST(Locked, EachPinwheelNeedsAJointOfItsOwn) {
    const Picture picture =
        pictureOf(pieces({"aabffg", "deblmg", "dcclkk"}, {}), Laying::EndGrain, false);
    const Locked locked = lockedPieces(picture);
    EXPECT_EQ(locked.pieces.size(), 8u);
    EXPECT_EQ(locked.freeing.size(), 2u);
    EXPECT_FALSE(isGuillotine(picture));
    EXPECT_TRUE(isGuillotine(withJoints(picture, locked.freeing)));
}

/// A picture of random rectangles.
Picture randomPicture(std::mt19937& random, int side) {
    Rows rows(static_cast<std::size_t>(side), std::string(static_cast<std::size_t>(side), '.'));
    char next = '0';
    for (int y = 0; y < side; ++y) {
        for (int x = 0; x < side; ++x) {
            const auto free = [&](int right, int bottom) {
                for (int j = y; j <= bottom; ++j)
                    for (int i = x; i <= right; ++i)
                        if (i >= side || j >= side ||
                            rows[static_cast<std::size_t>(j)][static_cast<std::size_t>(i)] != '.')
                            return false;
                return true;
            };
            if (!free(x, y))
                continue;
            int right = x;
            int bottom = y;
            (random() % 2 == 0 ? right : bottom) += static_cast<int>(random() % 3);
            while (!free(right, bottom))
                --(right > x ? right : bottom);
            for (int j = y; j <= bottom; ++j)
                for (int i = x; i <= right; ++i)
                    rows[static_cast<std::size_t>(j)][static_cast<std::size_t>(i)] = next;
            ++next;
        }
    }
    return pictureOf(pieces(rows, {}), Laying::EndGrain, false);
}

/// Every joint that runs through one tile.
std::vector<Joint> possibleJoints(const Picture& picture) {
    std::vector<Joint> all;
    const auto x = [&](int i) { return picture.xs[static_cast<std::size_t>(i)]; };
    const auto y = [&](int i) { return picture.ys[static_cast<std::size_t>(i)]; };
    for (const Tile& tile : picture.tiles) {
        for (int i = tile.left + 1; i < tile.right; ++i)
            all.push_back({true, x(i), y(tile.top), y(tile.bottom)});
        for (int i = tile.top + 1; i < tile.bottom; ++i)
            all.push_back({false, y(i), x(tile.left), x(tile.right)});
    }
    return all;
}

TEST(Locked, NoSmallerSetOfJointsFreesThePicture) {
    std::mt19937 random(7);
    int lockedOnes = 0;
    int several = 0;
    for (int i = 0; i < 300; ++i) {
        const Picture picture = randomPicture(random, 5 + i % 4);
        const Locked locked = lockedPieces(picture);
        ASSERT_EQ(locked.pieces.empty(), isGuillotine(picture));
        ASSERT_EQ(locked.freeing.empty(), isGuillotine(picture));
        const Picture freed = withJoints(picture, locked.freeing);
        ASSERT_TRUE(isGuillotine(freed));
        ASSERT_TRUE(locked.fewest);
        const SearchResult result = fewestGlueUps(freed, {false, 0, 1});
        ASSERT_FALSE(result.found.empty());
        ASSERT_EQ(mistakes(result.found.front().construction, freed), "");
        lockedOnes += locked.freeing.empty() ? 0 : 1;
        if (locked.freeing.size() < 2)
            continue;
        ++several;
        for (const Joint& one : possibleJoints(picture))
            ASSERT_FALSE(isGuillotine(withJoints(picture, {one})));
    }
    EXPECT_GT(lockedOnes, 20);
    EXPECT_GT(several, 0);
}

}  // namespace
}  // namespace kerfwright::searching
