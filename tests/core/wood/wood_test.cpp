#include "core/wood/wood.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <limits>

namespace kerfwright {
namespace {

Wood oak() {
    return {"oak", "Oak", "O", {190, 160, 110}, 700, {Length::mm(75), Length::mm(200)}, "invented"};
}

Wood ash() {
    return {"ash-2", "Ash", "A", {220, 200, 160}, 0, {Length::mm(50), Length::mm(150)}, "invented"};
}

std::string only(const std::vector<Wood>& woods) {
    const std::vector<Fault> found = faults(woods);
    return found.size() == 1 ? found.front().text()
                             : "there were " + std::to_string(found.size()) + " faults";
}

TEST(Woods, FoundByTheirKey) {
    const std::vector<Wood> woods{oak(), ash()};
    EXPECT_EQ(woodIndex(woods, "oak"), 0);
    EXPECT_EQ(woodIndex(woods, "ash-2"), 1);
    EXPECT_EQ(woodIndex(woods, "Oak"), -1);
    EXPECT_EQ(woodIndex(woods, ""), -1);
    EXPECT_EQ(woodIndex({}, "oak"), -1);
    EXPECT_EQ(findWood(woods, "ash-2"), &woods[1]);
    EXPECT_EQ(findWood(woods, "elm"), nullptr);
}

TEST(WoodFaults, NoneWhereAllIsRight) {
    EXPECT_TRUE(faults(std::vector<Wood>{}).empty());
    EXPECT_TRUE(faults({oak(), ash()}).empty());
}

TEST(WoodFaults, Keys) {
    for (const char* bad : {"", "Oak", "red oak", "oak_1", "ök", "oak/1"}) {
        Wood wood = oak();
        wood.key = bad;
        const std::vector<Fault> found = faults({wood});
        ASSERT_EQ(found.size(), 1u) << bad;
        EXPECT_EQ(found.front().entry, "Wood Oak, key");
        EXPECT_EQ(found.front().rule, "must be lower case letters, digits and hyphens");
        EXPECT_EQ(found.front().value, bad);
    }
    Wood twin = ash();
    twin.key = "oak";
    EXPECT_EQ(only({oak(), twin}),
              "Wood Ash, key: must differ from the keys of the other woods; got oak.");
}

TEST(WoodFaults, NamesAndLetters) {
    Wood nameless = ash();
    nameless.name = "  ";
    EXPECT_EQ(only({oak(), nameless}), "Wood 2, name: must not be empty.");
    for (const char* bad : {"", "o", "OAK", "Ö", "1", "O "}) {
        Wood wood = oak();
        wood.letter = bad;
        const std::vector<Fault> found = faults({wood});
        ASSERT_EQ(found.size(), 1u) << bad;
        EXPECT_EQ(found.front().rule, "must be one or two capitals from A to Z");
        EXPECT_EQ(found.front().value, bad);
    }
    Wood twin = ash();
    twin.letter = "O";
    EXPECT_EQ(only({oak(), twin}),
              "Wood Ash, letter: must differ from the letters of the other woods; got O.");
}

TEST(WoodFaults, Densities) {
    Wood wood = oak();
    wood.density = 2000;
    EXPECT_TRUE(faults({wood}).empty());
    wood.density = -0.5;
    EXPECT_EQ(only({wood}), "Wood Oak, density: must be from 0 to 2000 kg/m³, 0 where not known; "
                            "got -0.5.");
    wood.density = 1e300;
    EXPECT_EQ(faults({wood}).size(), 1u);
    wood.density = std::numeric_limits<double>::infinity();
    EXPECT_EQ(faults({wood}).size(), 1u);
    wood.density = std::nan("");
    EXPECT_EQ(faults({wood}).size(), 1u);
}

TEST(WoodFaults, Sections) {
    Wood wood = oak();
    wood.timber.thickness = Length();
    EXPECT_EQ(only({wood}), "Wood Oak, timber thickness: must be more than 0; got 0 mm.");
    wood = oak();
    wood.timber.width = Length::nm(-1);
    EXPECT_EQ(only({wood}), "Wood Oak, timber width: must be more than 0; got -0.000001 mm.");
    EXPECT_EQ(faults({wood}, Notation::inches()).front().value, "≈ 0 in (-0.000001 mm)");
    wood.timber.width = Length::mm(1'000'000);
    EXPECT_EQ(only({wood}), "Wood Oak, timber width: must be less than 1 km; got 1000000 mm.");
}

TEST(WoodFaults, NumbersThatNoWoodHas) {
    struct Spoilt {
        double& (*of)(Wood&);
        double limit;
        const char* text;
    };
    for (const Spoilt& one : std::vector<Spoilt>{
             {[](Wood& w) -> double& { return w.shrinkage.radial; }, 30,
              "radial shrinkage: must be from 0 to 30 %, 0 where not known"},
             {[](Wood& w) -> double& { return w.shrinkage.tangential; }, 30,
              "tangential shrinkage: must be from 0 to 30 %, 0 where not known"},
             {[](Wood& w) -> double& { return w.shrinkage.volumetric; }, 30,
              "volumetric shrinkage: must be from 0 to 30 %, 0 where not known"},
             {[](Wood& w) -> double& { return w.movement.radial; }, 0.02,
              "radial movement: must be from 0 to 0.02 for each 1 %, 0 where not known"},
             {[](Wood& w) -> double& { return w.movement.tangential; }, 0.02,
              "tangential movement: must be from 0 to 0.02 for each 1 %, 0 where not known"},
             {[](Wood& w) -> double& { return w.hardness; }, 50'000,
              "hardness: must be from 0 to 50000 N, 0 where not known"}}) {
        Wood wood = oak();
        one.of(wood) = one.limit;
        EXPECT_TRUE(faults({wood}).empty()) << one.text;
        one.of(wood) = one.limit * 2;
        EXPECT_EQ(faults({wood}).size(), 1u);
        one.of(wood) = std::nan("");
        EXPECT_EQ(faults({wood}).size(), 1u);
        one.of(wood) = -1;
        EXPECT_EQ(only({wood}), "Wood Oak, " + std::string(one.text) + "; got -1.");
    }
}

TEST(WoodFaults, Prices) {
    Wood wood = oak();
    wood.price.minorPerCubicMetre = WoodLimits::price;
    EXPECT_TRUE(faults({wood}).empty());
    for (const std::int64_t bad : {std::int64_t{-1}, WoodLimits::price + 1}) {
        wood.price.minorPerCubicMetre = bad;
        EXPECT_EQ(only({wood}),
                  "Wood Oak, price: must be from 0 to 1000000000000 hundredths per m³, "
                  "0 where not known; got " +
                      std::to_string(bad) + ".");
    }
}

TEST(WoodFaults, AllOfThemInTheOrderOfTheWoods) {
    const std::vector<Wood> woods{Wood(), oak(), Wood()};
    const std::vector<Fault> found = faults(woods);
    ASSERT_EQ(found.size(), 10u);
    EXPECT_EQ(found[0].entry, "Wood 1, key");
    EXPECT_EQ(found[4].entry, "Wood 1, timber width");
    EXPECT_EQ(found[5].entry, "Wood 3, key");
}

}  // namespace
}  // namespace kerfwright
