// Woods of the maker's own, and where the values of a changed wood are from.
#include "core/wood/ownwood.h"

#include <gtest/gtest.h>

namespace kerfwright {
namespace {

TEST(OwnWood, isAGoodWoodThatNoOtherLooksLike) {
    std::vector<Wood> woods{woodCatalogue().front()};
    for (int i = 0; i < 30; ++i) {
        const Wood own = ownWood(woods);
        EXPECT_EQ(woodIndex(woodCatalogue(), own.key), -1);
        woods.push_back(own);
    }
    EXPECT_TRUE(faults(woods).empty());
    EXPECT_EQ(woods[1].name, "Own wood");
    EXPECT_NE(woods[1].name, woods[2].name);
}

TEST(Sources, nameTheMakerWhereAValueWasChanged) {
    const Wood maple = *findWood(woodCatalogue(), "hard-maple");
    Wood changed = maple;
    changed.shrinkage.radial += 0.1;
    changed.density = 700;
    renewSources(changed, maple);
    EXPECT_EQ(changed.sources.shrinkage, ownSource);
    EXPECT_EQ(changed.source, ownSource);
    EXPECT_EQ(changed.sources.movement, maple.sources.movement);
    Wood back = changed;
    back.shrinkage = maple.shrinkage;
    back.density = maple.density;
    renewSources(back, changed);
    EXPECT_EQ(back, maple) << "the catalogue's value has the catalogue's source";
}

TEST(Sources, areGoneWhereAValueIsNotKnownAnyMore) {
    const Wood maple = *findWood(woodCatalogue(), "hard-maple");
    Wood changed = maple;
    changed.hardness = 0;
    changed.gluing = Gluing::Unknown;
    changed.food.clear();
    renewSources(changed, maple);
    EXPECT_TRUE(changed.sources.hardness.empty());
    EXPECT_TRUE(changed.sources.gluing.empty());
}

TEST(Sources, ofAWoodThatTheCatalogueDoesNotKnowAreTheMakers) {
    const Wood own = ownWood({});
    Wood changed = own;
    changed.poreEnds = PoreEnds::Closed;
    changed.reactions = "Sneezing";
    renewSources(changed, own);
    EXPECT_EQ(changed.sources.pores, ownSource);
    EXPECT_EQ(changed.sources.reactions, ownSource);
    EXPECT_TRUE(changed.sources.movement.empty());
}

}  // namespace
}  // namespace kerfwright
