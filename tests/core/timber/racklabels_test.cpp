// Labels where planks come to a rack.
#include "core/timber/racklabels.h"

#include <gtest/gtest.h>

using namespace kerfwright;

namespace {

TEST(RackLabels, PlanksThatComeGetFreeOnes) {
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

TEST(RackLabels, TheNextIsFree) {
    EXPECT_EQ(nextLabel(Rack()), "P1");
    const Rack rack{{{"P3", "cherry", Length::mm(32), Length::mm(150), Length::mm(2000)},
                     {"B", "cherry", Length::mm(32), Length::mm(150), Length::mm(900)}}};
    EXPECT_EQ(nextLabel(rack), "P4");
}

}  // namespace
