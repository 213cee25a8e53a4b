#include "core/replay/solid.h"

#include "tests/core/replay/handbuilt.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

namespace kerfwright {
namespace {

using test::operator""_mm;  // NOLINT(misc-unused-using-decls): of a literal

/// Different along every axis, so that no turn but none leaves it as it is.
Solid lopsided() {
    Solid solid = stick(0, 30_mm, 100_mm, 20_mm);
    append(solid, stick(1, 10_mm, 100_mm, 20_mm), X);
    Solid further = stick(2, 40_mm, 7_mm, 20_mm);
    append(solid, further, Y);
    append(solid, stick(3, 40_mm, 107_mm, 3_mm), Z);
    return solid;
}

/// Where the boxes of these woods lie seen from each other: the sign of the determinant of three
/// directions in the solid. A mirror image has the other sign.
int hand(const Solid& solid) {
    const auto middle = [&](int wood) {
        for (const Cuboid& box : solid.boxes) {
            if (box.wood == wood) {
                return std::array<double, 3>{(box.low[X] + box.high[X]).toMm(),
                                             (box.low[Y] + box.high[Y]).toMm(),
                                             (box.low[Z] + box.high[Z]).toMm()};
            }
        }
        return std::array<double, 3>{};
    };
    const auto from = middle(0);
    std::array<std::array<double, 3>, 3> d{};
    for (std::size_t i = 0; i < 3; ++i) {
        const auto to = middle(static_cast<int>(i) + 1);
        for (std::size_t axis = 0; axis < 3; ++axis) {
            d[i][axis] = to[axis] - from[axis];
        }
    }
    const double determinant = d[0][0] * (d[1][1] * d[2][2] - d[1][2] * d[2][1]) -
                               d[0][1] * (d[1][0] * d[2][2] - d[1][2] * d[2][0]) +
                               d[0][2] * (d[1][0] * d[2][1] - d[1][1] * d[2][0]);
    return determinant > 0 ? 1 : determinant < 0 ? -1 : 0;
}

Lay layOf(unsigned bits) {
    Lay lay;
    lay.stoodUp = (bits & 1U) != 0;
    lay.turnedOver = (bits & 2U) != 0;
    lay.flipped = (bits & 4U) != 0;
    lay.turned = (bits & 8U) != 0;
    return lay;
}

TEST(Solid, AStickIsOneBoxWithItsGrainAlongIt) {
    const Solid solid = stick(3, 20_mm, 300_mm, 10_mm);
    EXPECT_EQ(solid.size, (Corner{20_mm, 300_mm, 10_mm}));
    ASSERT_EQ(solid.boxes.size(), 1U);
    EXPECT_EQ(solid.boxes[0].grain, Y);
    EXPECT_EQ(solid.volume(), volume(20_mm, 300_mm, 10_mm));
    EXPECT_FALSE(solid.showsEndGrain());
}

TEST(Solid, StandingUpTurnsTheGrainUp) {
    Lay lay;
    lay.stoodUp = true;
    const Solid up = laid(stick(0, 20_mm, 30_mm, 10_mm), lay);
    EXPECT_EQ(up.size, (Corner{20_mm, 10_mm, 30_mm}));
    EXPECT_TRUE(up.showsEndGrain());
}

TEST(Solid, TurningPutsTheFirstStripOnTop) {
    Solid solid = stick(0, 10_mm, 50_mm, 20_mm);
    append(solid, stick(1, 30_mm, 50_mm, 20_mm), X);
    Lay lay;
    lay.turned = true;
    const Solid turned = laid(solid, lay);
    EXPECT_EQ(turned.size, (Corner{50_mm, 40_mm, 20_mm}));
    EXPECT_EQ(turned.boxes[0].low[Y], Length());
    EXPECT_EQ(turned.boxes[0].high[Y], 10_mm);
    EXPECT_EQ(turned.boxes[1].low[Y], 10_mm);
    EXPECT_EQ(turned.boxes[0].grain, X);
}

TEST(Solid, FlippingReversesTheOrderAndTurningOverKeepsIt) {
    Solid solid = stick(0, 10_mm, 50_mm, 20_mm);
    append(solid, stick(1, 30_mm, 50_mm, 20_mm), X);
    Lay flip;
    flip.flipped = true;
    EXPECT_EQ(laid(solid, flip).boxes[0].low[X], 30_mm);
    Lay over;
    over.turnedOver = true;
    EXPECT_EQ(laid(solid, over), solid);
}

TEST(Solid, TurningOverSwapsFrontAndBack) {
    Solid solid = stick(0, 30_mm, 50_mm, 20_mm);
    append(solid, stick(1, 30_mm, 10_mm, 20_mm), Y);
    Lay over;
    over.turnedOver = true;
    const Solid turned = laid(solid, over);
    EXPECT_EQ(turned.boxes[0].low[Y], 10_mm);
    EXPECT_EQ(turned.boxes[1].low[Y], Length());
}

TEST(Solid, NoLayMakesAMirrorImage) {
    const Solid solid = lopsided();
    ASSERT_NE(hand(solid), 0);
    for (unsigned bits = 0; bits < 16; ++bits) {
        const Solid turned = laid(solid, layOf(bits));
        EXPECT_EQ(hand(turned), hand(solid)) << bits;
        EXPECT_EQ(turned.volume(), solid.volume()) << bits;
        EXPECT_EQ(turned == solid, bits == 0) << bits;
    }
}

TEST(Solid, TheTurnsAreCarriedOutInTheirOrder) {
    const Solid solid = lopsided();
    for (unsigned bits = 0; bits < 16; ++bits) {
        Solid stepwise = solid;
        for (unsigned bit = 1; bit < 16; bit *= 2) {
            stepwise = laid(stepwise, layOf(bits & bit));
        }
        EXPECT_EQ(laid(solid, layOf(bits)), stepwise) << bits;
    }
}

TEST(Solid, HalfTurnsUndoThemselvesAndFourQuartersToo) {
    const Solid solid = lopsided();
    EXPECT_EQ(laid(laid(solid, layOf(2)), layOf(2)), solid);
    EXPECT_EQ(laid(laid(solid, layOf(4)), layOf(4)), solid);
    for (const unsigned quarter : {1U, 8U}) {
        const Solid half = laid(laid(solid, layOf(quarter)), layOf(quarter));
        EXPECT_EQ(half, laid(solid, layOf(quarter * 2 == 2 ? 2 : 4)));
        EXPECT_EQ(laid(laid(half, layOf(quarter)), layOf(quarter)), solid);
    }
}

RC_GTEST_PROP(Solid, CutPartsAddUpToTheWhole, ()) {
    const Solid solid = lopsided();
    const Axis axis = *rc::gen::element(X, Y, Z);
    const Length at = Length::nm(*rc::gen::inRange<std::int64_t>(1, solid.size[axis].nm()));
    const Solid near = between(solid, axis, Length(), at);
    const Solid far = between(solid, axis, at, solid.size[axis]);
    RC_ASSERT(near.volume() + far.volume() == solid.volume());
    RC_ASSERT(near.volume() == volume(near.size[X], near.size[Y], near.size[Z]));
    Solid whole;
    append(whole, near, axis);
    append(whole, far, axis);
    RC_ASSERT(whole.size == solid.size);
    RC_ASSERT(whole.volume() == solid.volume());
}

}  // namespace
}  // namespace kerfwright
