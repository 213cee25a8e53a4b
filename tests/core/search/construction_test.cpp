#include "core/search/construction.h"

#include <gtest/gtest.h>

#include <array>
#include <utility>

namespace kerfwright {
namespace {

using Point = std::pair<int, int>;

/// Where a point of a square about the origin comes to lie: x right, y down.
Point moved(Point point, Placing placing) {
    if (placing.mirrored)
        point.first = -point.first;
    for (int turn = 0; turn < placing.quarterTurns; ++turn)
        point = {-point.second, point.first};
    return point;
}

std::array<Placing, 8> allPlacings() {
    std::array<Placing, 8> all;
    for (int i = 0; i < 8; ++i)
        all[static_cast<std::size_t>(i)] = {i >= 4, i % 4};
    return all;
}

TEST(Placing, OneAfterTheOtherIsOnePlacing) {
    const Point point{1, 2};
    for (const Placing first : allPlacings())
        for (const Placing second : allPlacings())
            EXPECT_EQ(moved(point, then(first, second)), moved(moved(point, first), second))
                << first.mirrored << first.quarterTurns << ' ' << second.mirrored
                << second.quarterTurns;
}

TEST(Placing, InverseUndoesIt) {
    for (const Placing placing : allPlacings()) {
        EXPECT_EQ(then(placing, inverse(placing)), Placing());
        EXPECT_EQ(then(inverse(placing), placing), Placing());
    }
}

TEST(Construction, OnlyGluedBlocksCount) {
    Construction chequer;
    const Length side = Length::mm(40);
    chequer.blocks = {{side, side, 0, {}, {}},
                      {side, side, 1, {}, {}},
                      {side * 2, side, -1, JoinedAlong::X, {{0, {}}, {1, {}}}},
                      {side * 2, side * 2, -1, JoinedAlong::Y, {{2, {}}, {2, {true, 0}}}}};
    EXPECT_EQ(chequer.glueUps(), 2);
}

}  // namespace
}  // namespace kerfwright
