#include "core/figure/texture.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <functional>
#include <numbers>
#include <numeric>
#include <set>
#include <vector>

namespace kerfwright {
namespace {

using Tones = std::vector<std::uint8_t>;

const FacePlane endFace{{0, 100, 0}, {1, 0, 0}, {0, 0, 1}};
const FacePlane topFace{{0, 0, 30}, {1, 0, 0}, {0, 1, 0}};

const Wood& wood(const char* key) {
    return *findWood(woodCatalogue(), key);
}

TimberCut cut(std::uint32_t seed, Rings rings = Rings::Unknown) {
    return cutFor(seed, rings, 40, 30);
}

Tones texture(const WoodLook& look, const TimberCut& from, const FacePlane& face, int side,
              double step) {
    Tones tones(static_cast<std::size_t>(side * side));
    figureTexture(tones.data(), {0, 0, side, side, step}, look, from, from.inTree(face));
    return tones;
}

double mean(const Tones& tones) {
    return std::accumulate(tones.begin(), tones.end(), 0.0) / static_cast<double>(tones.size());
}

double spread(const Tones& tones) {
    const double middle = mean(tones);
    double sum = 0;
    for (const std::uint8_t tone : tones) {
        sum += (tone - middle) * (tone - middle);
    }
    return std::sqrt(sum / static_cast<double>(tones.size()));
}

double meanDifference(const Tones& a, const Tones& b) {
    double sum = 0;
    for (std::size_t i = 0; i < a.size(); ++i) {
        sum += std::abs(a[i] - b[i]);
    }
    return sum / static_cast<double>(a.size());
}

/// Share of the pixels in which two textures differ by more than rounding does.
double difference(const Tones& a, const Tones& b) {
    int differ = 0;
    for (std::size_t i = 0; i < a.size(); ++i) {
        differ += int{std::abs(a[i] - b[i]) > 3};
    }
    return differ / static_cast<double>(a.size());
}

Tones mirrored(const Tones& tones, int side) {
    Tones result = tones;
    for (auto row = result.begin(); row != result.end(); row += side) {
        std::reverse(row, row + side);
    }
    return result;
}

TEST(FigureTexture, IsTheSameByteForByteFastAndPlain) {
    for (const Wood& one : woodCatalogue()) {
        const WoodLook look = lookOf(one);
        for (std::uint32_t seed = 0; seed < 3; ++seed) {
            const TimberCut from = cut(seed);
            for (const FacePlane& face : {endFace, topFace}) {
                for (const double step : {0.05, 0.31, 0.9, 4.0}) {
                    // Neither side is a whole number of lanes.
                    const TextureArea area{-3, 7, 61, 23, step};
                    Tones fast(61 * 23);
                    Tones plain(61 * 23, 1);
                    figureTexture(fast.data(), area, look, from, from.inTree(face));
                    figureTexturePlain(plain.data(), area, look, from, from.inTree(face));
                    ASSERT_EQ(fast, plain) << one.key << " " << seed << " " << step;
                }
            }
        }
    }
}

TEST(FigureTexture, IsTheSameEachTimeAndWritesNothingBesideItsArea) {
    const WoodLook look = lookOf(wood("white-oak"));
    Tones tones(5 * 3 + 2, 77);
    figureTexture(tones.data() + 1, {0, 0, 5, 3, 0.3}, look, cut(3), cut(3).inTree(endFace));
    EXPECT_EQ(tones.front(), 77);
    EXPECT_EQ(tones.back(), 77);
    EXPECT_EQ(texture(look, cut(3), endFace, 50, 0.3), texture(look, cut(3), endFace, 50, 0.3));
}

TEST(FigureTexture, OfAPartIsThatPartOfTheWhole) {
    const WoodLook look = lookOf(wood("cherry"));
    const Tones whole = texture(look, cut(8), topFace, 96, 0.25);
    Tones part(32 * 32);
    figureTexture(part.data(), {40, 24, 32, 32, 0.25}, look, cut(8), cut(8).inTree(topFace));
    Tones expected;
    for (int row = 24; row < 56; ++row) {
        expected.insert(expected.end(), whole.begin() + row * 96 + 40,
                        whole.begin() + row * 96 + 72);
    }
    EXPECT_LT(difference(part, expected), 0.005);
}

TEST(FigureTexture, IsMirroredOnASliceThatLiesTheOtherWay) {
    constexpr int side = 80;
    const FacePlane back{{40, 100, 0}, {-1, 0, 0}, {0, 0, 1}};
    for (const char* key : {"white-oak", "hard-maple", "padauk"}) {
        const WoodLook look = lookOf(wood(key));
        const Tones front = texture(look, cut(5), endFace, side, 0.5);
        const Tones flipped = texture(look, cut(5), back, side, 0.5);
        EXPECT_LT(difference(mirrored(front, side), flipped), 0.005) << key;
        EXPECT_GT(difference(front, flipped), 0.2) << key;
    }
}

TEST(FigureTexture, OfNeighbouringSlicesOfAStripShowsTheSameRings) {
    const WoodLook look = lookOf(wood("cherry"));
    const FacePlane next{{0, 140, 0}, {1, 0, 0}, {0, 0, 1}};
    // Too coarse for pores, so that rings are what is compared.
    const Tones one = texture(look, cut(5), endFace, 40, 0.8);
    const Tones two = texture(look, cut(5), next, 40, 0.8);
    const Tones other = texture(look, cut(6), endFace, 40, 0.8);
    EXPECT_LT(meanDifference(one, two), 0.8 * meanDifference(one, other));
}

TEST(FigureTexture, MeetsAtAnEdgeThatTwoFacesShare) {
    const WoodLook look = lookOf(wood("black-walnut"));
    const TimberCut from = cut(4, Rings::Rift);
    // The last row of pixels of the end, and the first of the top beside it.
    const FacePlane end{{0, 0, 30}, {1, 0, 0}, {0, 0, -1}};
    Tones endRow(1000);
    Tones topRow(1000);
    figureTexture(endRow.data(), {0, 0, 1000, 1, 0.02}, look, from, from.inTree(end));
    figureTexture(topRow.data(), {0, 0, 1000, 1, 0.02}, look, from, from.inTree(topFace));
    EXPECT_LT(meanDifference(endRow, topRow), 1.5);
    EXPECT_GT(spread(endRow), 6);
}

TEST(FigureTexture, OfRingPorousWoodsHasItsPoresWhereTheYearBegins) {
    // Quarter sawn, far from the pith and with round rings: years are bands of known place.
    WoodLook look = lookOf(wood("white-oak"));
    look.warp = 0;
    look.ringVary = 0;
    look.taper = 0;
    look.rayShare = 0;
    TimberCut from = cut(2, Rings::Quarter);
    from.radius = 400;
    from.turn = std::numbers::pi / 2;  // u runs along x
    const int side = 160;
    const double step = 0.1;
    const Tones tones = texture(look, from, endFace, side, step);
    std::vector<int> dark(2);
    std::vector<int> all(2);
    for (int row = 0; row < side; ++row) {
        for (int column = 0; column < side; ++column) {
            const double u = from.radius + (column + 0.5) * step - 20;
            const double v = -((row + 0.5) * step - 15);
            const double years = std::hypot(u, v) / look.ring;
            const double part = years - std::floor(years);
            const bool late = part > 0.5;
            const bool early = part < 0.25;
            if (early || late) {
                const auto which = static_cast<std::size_t>(late);
                ++all[which];
                dark[which] += int{tones[static_cast<std::size_t>(row * side + column)] > 140};
            }
        }
    }
    const double inEarly = dark[0] / static_cast<double>(all[0]);
    const double inLate = dark[1] / static_cast<double>(all[1]);
    EXPECT_GT(inEarly, 0.1);
    EXPECT_LT(inLate, 0.03);
}

TEST(FigureTexture, OfOpenPoredWoodsHasDarkerSpotsThanThatOfFineOnes) {
    const auto darkest = [](const char* key) {
        const WoodLook look = lookOf(wood(key));
        double sum = 0;
        for (std::uint32_t seed = 0; seed < 8; ++seed) {
            Tones tones = texture(look, cut(seed), endFace, 120, 0.1);
            const double middle = mean(tones);
            std::sort(tones.begin(), tones.end());
            sum += tones[tones.size() * 98 / 100] - middle;
        }
        return sum / 8;
    };
    const double fine =
        std::max({darkest("hard-maple"), darkest("cherry"), darkest("american-beech")});
    for (const char* open : {"white-oak", "red-oak", "white-ash"}) {
        EXPECT_GT(darkest(open), fine + 10) << open;
    }
}

TEST(FigureTexture, RunsAlongTheGrainOnAFace) {
    // From pixel to pixel tones change more across the grain than along it.
    for (const Wood& one : woodCatalogue()) {
        const WoodLook look = lookOf(one);
        double across = 0;
        double along = 0;
        for (std::uint32_t seed = 0; seed < 6; ++seed) {
            const Tones tones = texture(look, cut(seed, Rings::Rift), topFace, 100, 0.3);
            for (std::size_t i = 0; i + 100 < tones.size(); ++i) {
                across += i % 100 == 99 ? 0 : std::abs(tones[i + 1] - tones[i]);
                along += std::abs(tones[i + 100] - tones[i]);
            }
        }
        EXPECT_GT(across, 2 * along) << one.key;
    }
}

TEST(FigureTexture, IsCalmFromAfar) {
    for (const Wood& one : woodCatalogue()) {
        const WoodLook look = lookOf(one);
        const Tones near = texture(look, cut(4), endFace, 100, 0.2);
        const Tones far = texture(look, cut(4), endFace, 10, 4);
        EXPECT_LT(spread(far), 20) << one.key;
        EXPECT_GT(spread(near), 3) << one.key;
        EXPECT_NEAR(mean(near), mean(far), 24) << one.key;
    }
}

TEST(FigureTexture, StaysWithinTheTonesThatHaveColours) {
    for (const Wood& one : woodCatalogue()) {
        const WoodLook look = lookOf(one);
        int ends = 0;
        for (std::uint32_t seed = 0; seed < 10; ++seed) {
            for (const std::uint8_t tone : texture(look, cut(seed), endFace, 60, 0.3)) {
                ends += int{tone == 0 || tone == 255};
            }
        }
        EXPECT_LT(ends, 10 * 60 * 60 / 50) << one.key;
    }
}

TEST(TimberCuts, KeepClearOfThePithAndFollowHowTheTimberIsSawn) {
    std::set<int> turns;
    for (std::uint32_t seed = 0; seed < 300; ++seed) {
        for (const double width : {20.0, 60.0, 200.0}) {
            const TimberCut from = cutFor(seed, Rings::Unknown, width, 40);
            EXPECT_GT(from.radius, std::hypot(width, 40) / 2);
            EXPECT_EQ(from, cutFor(seed, Rings::Unknown, width, 40));
        }
        const auto lean = [seed](Rings rings) {
            const double turn = cutFor(seed, rings, 40, 40).turn;
            return std::abs(std::sin(turn));
        };
        EXPECT_LT(lean(Rings::Flat), 0.4);
        EXPECT_GT(lean(Rings::Quarter), 0.9);
        EXPECT_GT(lean(Rings::Rift), 0.45);
        EXPECT_LT(lean(Rings::Rift), 0.9);
        turns.insert(static_cast<int>(100 * cut(seed).turn));
    }
    EXPECT_GT(turns.size(), 100U);
}

TEST(TimberCuts, ShowTheTreeAsItStands) {
    TimberCut from;
    from.radius = 50;
    from.width = 40;
    from.thickness = 20;
    from.up = 7;
    // Flat sawn: the middle of the strip is on u, its top is further from the pith.
    const FacePlane plane = from.inTree({{20, 3, 20}, {1, 0, 0}, {0, 1, 0}});
    EXPECT_EQ(plane.origin, (Vector{60, 0, 10}));
    EXPECT_EQ(plane.across, (Vector{0, 1, 0}));
    EXPECT_EQ(plane.down, (Vector{0, 0, 1}));
}

}  // namespace
}  // namespace kerfwright
