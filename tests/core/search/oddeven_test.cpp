#include "core/search/oddeven.h"
#include "tests/core/search/pictures.h"

#include <gtest/gtest.h>

namespace kerfwright::searching {
namespace {

const std::vector<std::string> names{"Maple", "Walnut"};

TEST(OddEven, AnEvenChequerHasCornersAcrossTheDiagonal) {
    const std::vector<OddEven> all = oddAndEven(cells({"ABAB", "BABA", "ABAB", "BABA"}), names);
    ASSERT_EQ(all.size(), 5u);
    EXPECT_EQ(all[0].sentence,
              "As it is, 4 columns by 4 rows: no mirror images, but the same when turned half "
              "round; corners Maple and Walnut, like ones across the diagonal.");
    EXPECT_EQ(all[1].sentence,
              "With one column more, 5 columns by 4 rows: left and right are mirror images, top "
              "and bottom are not; upper corners Maple, lower ones Walnut.");
    EXPECT_EQ(all[2].look.columns, 3);
    EXPECT_TRUE(all[2].look.leftIsRight);
}

TEST(OddEven, AnOddChequerHasFourCornersOfOneWood) {
    const Field odd = cells({"ABA", "BAB", "ABA"});
    const FieldLook look = lookOf(odd);
    EXPECT_TRUE(look.leftIsRight);
    EXPECT_TRUE(look.topIsBottom);
    EXPECT_TRUE(look.sameHalfTurn);
    EXPECT_EQ(look.corners, (std::array<int, 4>{0, 0, 0, 0}));
    EXPECT_EQ(continued(odd, 1, 0), cells({"ABAB", "BABA", "ABAB"}));
}

TEST(OddEven, ThePatternGoesOn) {
    EXPECT_EQ(continued(cells({"ABABA", "BABAB"}), 1, 0), cells({"ABABAB", "BABABA"}));
    EXPECT_EQ(continued(cells({"AB", "AC", "AB", "AC"}), 0, 1),
              cells({"AB", "AC", "AB", "AC", "AB"}));
    EXPECT_EQ(continued(cells({"AB", "AC"}), -1, 0), cells({"A", "A"}));
    EXPECT_EQ(continued(cells({"ABC"}), 1, 0), cells({"ABCA"}));  // nothing repeats: from the first
}

TEST(OddEven, UnequalSizesAreNoMirrorImage) {
    Field field = cells({"ABA"});
    EXPECT_TRUE(lookOf(field).leftIsRight);
    field.columns.front() = Length::mm(41);
    EXPECT_FALSE(lookOf(field).leftIsRight);
    EXPECT_TRUE(lookOf(field).topIsBottom);
}

TEST(OddEven, NoBoardHasNoColumns) {
    EXPECT_EQ(oddAndEven(cells({"A"}), names).size(), 3u);
}

}  // namespace
}  // namespace kerfwright::searching
