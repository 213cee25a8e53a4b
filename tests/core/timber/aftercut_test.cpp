// The rack after its planks were cut.
#include "core/timber/aftercut.h"

#include <gtest/gtest.h>

using namespace kerfwright;

namespace {

TEST(AfterCut, OffcutsTakeThePlaceOfThePlanksThatWereCut) {
    Rack rack{{{"P1", "cherry", Length::mm(32), Length::mm(150), Length::mm(2000), {}, 4000},
               {"P2", "cherry", Length::mm(32), Length::mm(150), Length::mm(1000), {}, 0},
               {"P1 rest", "cherry", Length::mm(32), Length::mm(50), Length::mm(400), {}, 0}}};
    rack.planks[0].defects = {{Length::mm(1200), Length::mm(10), Length::mm(100), Length::mm(30)},
                              {Length::mm(100), Length::mm(10), Length::mm(20), Length::mm(20)}};
    Layout layout;
    layout.planks.push_back(
        {0, {}, {{Length::mm(1250), Length(), Length::mm(750), Length::mm(150)}}});
    const Rack after = rackAfter(rack, layout);
    ASSERT_EQ(after.planks.size(), 3u);
    EXPECT_EQ(after.planks[0], rack.planks[1]);
    EXPECT_EQ(after.planks[1], rack.planks[2]);
    const Plank& kept = after.planks[2];
    EXPECT_EQ(kept.label, "P1 rest-2");
    EXPECT_TRUE(kept.isOffcut);
    EXPECT_EQ(kept.length, Length::mm(750));
    EXPECT_EQ(kept.width, Length::mm(150));
    EXPECT_EQ(kept.thickness, Length::mm(32));
    EXPECT_EQ(kept.price, 1500);
    // Of the first knot the right half, from the offcut's own corner; nothing of the second.
    ASSERT_EQ(kept.defects.size(), 1u);
    EXPECT_EQ(kept.defects[0], (Defect{Length(), Length::mm(10), Length::mm(50), Length::mm(30)}));
    EXPECT_TRUE(faults(after).empty());
}

TEST(AfterCut, TheRestOfARestKeepsItsName) {
    const Rack rack{{{"P1 rest", "cherry", Length::mm(32), Length::mm(150), Length::mm(2000)}}};
    Layout layout;
    layout.planks.push_back({0, {}, {{Length(), Length(), Length::mm(500), Length::mm(150)}}});
    EXPECT_EQ(rackAfter(rack, layout).planks.front().label, "P1 rest");
}

TEST(AfterCut, PlanksOfAFileGetFreeLabels) {
    Rack rack{{{"P1", "cherry", Length::mm(32), Length::mm(150), Length::mm(2000)}}};
    const Rack more{{{"P1", "cherry", Length::mm(32), Length::mm(150), Length::mm(900)},
                     {"P1-2", "cherry", Length::mm(32), Length::mm(150), Length::mm(800)},
                     {"Q", "cherry", Length::mm(32), Length::mm(150), Length::mm(700)}}};
    EXPECT_EQ(addPlanks(rack, more), 2);
    ASSERT_EQ(rack.planks.size(), 4u);
    EXPECT_EQ(rack.planks[1].label, "P1-2");
    EXPECT_EQ(rack.planks[2].label, "P1-2-2");
    EXPECT_EQ(rack.planks[3].label, "Q");
    EXPECT_TRUE(faults(rack).empty());
}

}  // namespace
