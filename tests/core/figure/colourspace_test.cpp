#include "core/figure/colourspace.h"
#include "tests/source.h"

#include <gtest/gtest.h>

#include <fstream>
#include <iomanip>
#include <sstream>
#include <string>

namespace kerfwright {
namespace {

/// To as many digits as are published.
void expectNear(const OkLab& got, double l, double a, double b, double within) {
    EXPECT_NEAR(got.l, l, within);
    EXPECT_NEAR(got.a, a, within);
    EXPECT_NEAR(got.b, b, within);
}

// The four pairs that stand beside the definition (Ottosson, "A perceptual color space for image
// processing", 2020). Values from memory.
TEST(OkLabSpace, MeetsThePublishedValues) {
    expectNear(okLabOfXyz(0.950, 1, 1.089), 1, 0, 0, 0.0006);
    expectNear(okLabOfXyz(1, 0, 0), 0.450, 1.236, -0.019, 0.0006);
    expectNear(okLabOfXyz(0, 1, 0), 0.922, -0.671, 0.263, 0.0006);
    expectNear(okLabOfXyz(0, 0, 1), 0.153, -1.415, -0.449, 0.0006);
}

// The same as CSS Color 4 gives for its named colours. Values from memory.
TEST(OkLabSpace, MeetsKnownColoursOfSrgb) {
    expectNear(okLabOf({255, 255, 255}), 1, 0, 0, 0.0002);
    expectNear(okLabOf({255, 0, 0}), 0.62796, 0.22486, 0.12585, 0.0002);
    expectNear(okLabOf({0, 0, 255}), 0.45201, -0.03246, -0.31153, 0.0002);
    expectNear(okLabOf({0, 0, 0}), 0, 0, 0, 1e-9);
}

TEST(OkLabSpace, GivesEveryColourBack) {
    for (int red = 0; red < 256; red += 15) {
        for (int green = 0; green < 256; green += 15) {
            for (int blue = 0; blue < 256; blue += 15) {
                const Colour colour{static_cast<std::uint8_t>(red),
                                    static_cast<std::uint8_t>(green),
                                    static_cast<std::uint8_t>(blue)};
                ASSERT_EQ(colourOf(okLabOf(colour)), colour) << red << " " << green << " " << blue;
            }
        }
    }
}

TEST(OkLabSpace, BlendsFromEndToEndThroughEvenSteps) {
    const Colour dark{40, 20, 10};
    const Colour light{240, 220, 170};
    EXPECT_EQ(blend(dark, light, 0), dark);
    EXPECT_EQ(blend(dark, light, 1), light);
    const double middle = okLabOf(blend(dark, light, 0.5)).l;
    EXPECT_NEAR(middle, (okLabOf(dark).l + okLabOf(light).l) / 2, 0.003);
}

TEST(ColourDifference, MeetsAll34PublishedPairs) {
    std::ifstream file(sourceFolder() / "tests/core/figure/data/ciede2000.csv");
    std::string line;
    std::getline(file, line);
    int pairs = 0;
    while (std::getline(file, line)) {
        for (char& c : line) {
            c = c == ',' ? ' ' : c;
        }
        std::istringstream numbers(line);
        int pair = 0;
        CieLab a;
        CieLab b;
        double published = -1;
        numbers >> pair >> a.l >> a.a >> a.b >> b.l >> b.a >> b.b >> published;
        EXPECT_NEAR(colourDifference(a, b), published, 0.00005 + 1e-9) << "pair " << pair;
        EXPECT_NEAR(colourDifference(b, a), published, 0.00005 + 1e-9) << "pair " << pair;
        ++pairs;
    }
    EXPECT_EQ(pairs, 34);
}

TEST(ColourDifference, OfSrgbIsNothingForOneColourAndHundredFromBlackToWhite) {
    EXPECT_EQ(colourDifference(Colour{12, 200, 90}, Colour{12, 200, 90}), 0);
    EXPECT_NEAR(colourDifference(Colour{0, 0, 0}, Colour{255, 255, 255}), 100, 0.01);
}

}  // namespace
}  // namespace kerfwright
