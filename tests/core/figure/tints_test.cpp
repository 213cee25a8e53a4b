#include "core/figure/colourspace.h"
#include "core/figure/texture.h"
#include "core/figure/tints.h"

#include <gtest/gtest.h>

#include <cmath>
#include <set>

namespace kerfwright {
namespace {

TEST(TintsOfWood, GrowDarkerFromTheFirstToTheLast) {
    for (const Wood& wood : woodCatalogue()) {
        for (const Finish finish : {Finish::Raw, Finish::Oiled}) {
            const Tints tints = tintsOf(wood, finish);
            for (std::size_t i = 1; i < tints.size(); ++i) {
                // Rounding to a byte a channel may lift a step by a hair.
                ASSERT_LE(okLabOf(tints[i]).l, okLabOf(tints[i - 1]).l + 0.004) << wood.key << i;
            }
            EXPECT_GT(okLabOf(tints.front()).l, okLabOf(tints.back()).l + 0.1) << wood.key;
        }
    }
}

TEST(TintsOfWood, HaveTheWoodsOwnColourInTheMiddleOfItsFigure) {
    for (const Wood& wood : woodCatalogue()) {
        const auto mean = static_cast<std::size_t>(std::lround(meanTone(lookOf(wood))));
        EXPECT_LT(colourDifference(tintsOf(wood, Finish::Oiled)[mean], wood.colour), 1) << wood.key;
    }
}

TEST(TintsOfWood, ArePalerAndGreyerRawThanOiled) {
    for (const Wood& wood : woodCatalogue()) {
        const OkLab oiled = okLabOf(finished(wood.colour, Finish::Oiled));
        const OkLab raw = okLabOf(finished(wood.colour, Finish::Raw));
        EXPECT_EQ(finished(wood.colour, Finish::Oiled), wood.colour);
        EXPECT_GT(raw.l, oiled.l - 0.002) << wood.key;
        EXPECT_LT(std::hypot(raw.a, raw.b), std::hypot(oiled.a, oiled.b)) << wood.key;
    }
}

TEST(TintsOfWood, WithoutContrastAreOneColour) {
    const Wood& wood = woodCatalogue().front();
    for (const Colour& colour : tintsOf(wood, Finish::Oiled, 0)) {
        EXPECT_LT(colourDifference(colour, wood.colour), 0.5);
    }
}

TEST(Looks, FollowThePoresOfWoodsThatAreNotInTheCatalogue) {
    Wood wood = woodCatalogue().front();
    wood.key = "of-my-own";
    std::set<float> sizes;
    for (const Pores pores : {Pores::Ring, Pores::SemiRing, Pores::Diffuse}) {
        wood.pores = pores;
        sizes.insert(lookOf(wood).poreRadius);
    }
    EXPECT_EQ(sizes.size(), 3U);
    wood.pores = Pores::Unknown;
    EXPECT_EQ(sizes.count(lookOf(wood).poreRadius), 1U);
}

TEST(Looks, KeepPoresWithinTheirCells) {
    for (const Wood& wood : woodCatalogue()) {
        const WoodLook look = lookOf(wood);
        EXPECT_LE(look.poreRadius, 0.25F * look.poreCell + 1e-4F) << wood.key;
        EXPECT_LE(look.rayWidth, 0.3F * look.raySpacing) << wood.key;
        EXPECT_LE(look.lateFrom, look.lateTo) << wood.key;
    }
}

}  // namespace
}  // namespace kerfwright
