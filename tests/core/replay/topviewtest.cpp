#include "core/replay/topview.h"

#include "tests/core/replay/handbuilt.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace kerfwright {
namespace {

using namespace test;
using ::testing::ElementsAre;
using ::testing::HasSubstr;
using ::testing::IsEmpty;

/// On the left two like pieces made as one, on the right one piece made in two parts: a joint left
/// out and an extra one meet end to end.
struct MeetingJoints : ::testing::Test {
    Field field = {
        {10_mm, 10_mm}, {10_mm, 10_mm}, {{0, 0, 1, 1, 0}, {1, 0, 1, 2, 0}, {0, 1, 1, 1, 0}}};
    Solid solid;
    std::vector<Joint> extra = {{false, 10_mm, 10_mm, 20_mm}};
    std::vector<Joint> omitted = {{false, 10_mm, Length(), 10_mm}};

    MeetingJoints() {
        append(solid, stick(0, 10_mm, 20_mm, 5_mm), X);
        Solid right = stick(0, 10_mm, 10_mm, 5_mm);
        append(right, stick(0, 10_mm, 10_mm, 5_mm), Y);
        append(solid, right, X);
    }
    std::vector<std::string> faults() const {
        return topViewFaults(solid, field, extra, omitted, true);
    }
};

TEST_F(MeetingJoints, AreBothToldOf) {
    EXPECT_THAT(faults(), IsEmpty());
}

TEST_F(MeetingJoints, MayNotRunIntoEachOther) {
    omitted[0].to += Length::nm(1);
    EXPECT_THAT(faults(), ElementsAre("two listed joints overlap: across at 10 mm, from 10 mm to "
                                      "10.000001 mm"));
    omitted[0].to -= Length::nm(1);
    extra[0].from -= Length::nm(1);
    EXPECT_THAT(faults(), ElementsAre(HasSubstr("two listed joints overlap")));
}

TEST_F(MeetingJoints, MayBeListedInPartsThatDoNotOverlap) {
    extra = {{false, 10_mm, 10_mm, 15_mm}, {false, 10_mm, 15_mm, 20_mm}};
    EXPECT_THAT(faults(), IsEmpty());
    extra[1].from -= Length::nm(1);
    EXPECT_THAT(faults(), ElementsAre(HasSubstr("two listed joints overlap")));
}

TEST_F(MeetingJoints, ListsAreSortedAndEachJointHasALength) {
    extra = {{false, 10_mm, 15_mm, 20_mm}, {false, 10_mm, 10_mm, 15_mm}};
    EXPECT_THAT(faults(), ElementsAre(HasSubstr("is not in order")));
    extra = {{false, 10_mm, 20_mm, 10_mm}};
    EXPECT_THAT(faults(), ElementsAre(HasSubstr("has no length")));
}

TEST_F(MeetingJoints, AJointBetweenTwoWoodsCannotBeLeftOut) {
    field.pieces[2].wood = 1;
    EXPECT_THAT(faults(), ElementsAre(HasSubstr("column 1, row 2 shows another wood than wished"),
                                      HasSubstr("a joint is left out between two woods")));
}

TEST_F(MeetingJoints, OnlyTheTopIsSeen) {
    // Another wood and other joints below change nothing.
    Solid stacked = stick(1, 20_mm, 20_mm, 5_mm);
    append(stacked, solid, Z);
    EXPECT_THAT(topViewFaults(stacked, field, extra, omitted, true), IsEmpty());
}

}  // namespace
}  // namespace kerfwright
