// Where a dragged joint stops.
#include "core/board/board.h"
#include "core/board/magnets.h"
#include "tests/core/board/randomfield.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <numeric>
#include <vector>

namespace kerfwright {
namespace {

using testing::Contains;
using testing::ElementsAre;

std::vector<Length> mm(std::initializer_list<int> sizes) {
    std::vector<Length> all;
    for (const int size : sizes) {
        all.push_back(Length::mm(size));
    }
    return all;
}

TEST(Magnets, HoldAtEvenAtANeighbourAndAtTheMirror) {
    const std::vector<Length> sizes = mm({30, 20, 50, 40, 75});
    EXPECT_THAT(jointMagnets(sizes, 1),
                ElementsAre(JointPlace{Length::mm(30), JointFit::Neighbour},  // as the one before
                            JointPlace{Length::mm(35), JointFit::Even},
                            // The last joint lies 75 from the right: this one 75 from the left.
                            JointPlace{Length::mm(45), JointFit::Mirror}));
    EXPECT_EQ(jointPlace(sizes, 1, Length::mm(31), Length::mm(2), Length::mm(1)).before,
              Length::mm(30));
    EXPECT_THAT(jointMagnets(mm({10, 50, 50, 60, 30}), 0),
                Contains(JointPlace{Length::mm(30), JointFit::Mirror}));
}

TEST(Magnets, AreLeftForWholeStepsOutOfReach) {
    const std::vector<Length> sizes = mm({50, 50, 50, 50});
    const JointPlace near = jointPlace(sizes, 1, Length::um(50'900), Length::mm(1), Length::mm(1));
    EXPECT_EQ(near, (JointPlace{Length::mm(50), JointFit::Mirror}));
    const JointPlace far = jointPlace(sizes, 1, Length::um(52'400), Length::mm(1), Length::mm(1));
    EXPECT_EQ(far, (JointPlace{Length::mm(52), JointFit::Step}));
}

TEST(Magnets, AreWalkedFromTheSmallestToTheLargestAndRoundAgain) {
    std::vector<Length> sizes = mm({50, 40, 60});
    const auto jump = [&sizes] {
        const Length before = nextMagnet(sizes, 0);
        sizes[1] += sizes[0] - before;
        sizes[0] = before;
        return before;
    };
    // The other joint lies 60 from the right; even parts are 45, the last column leaves 30.
    EXPECT_EQ(fitOf(sizes, 0), JointFit::Free);
    EXPECT_EQ(jump(), Length::mm(60));
    EXPECT_EQ(fitOf(sizes, 0), JointFit::Mirror);
    EXPECT_EQ(jump(), Length::mm(75));  // the middle of the field
    EXPECT_EQ(jump(), Length::mm(30));
    EXPECT_EQ(fitOf(sizes, 0), JointFit::Neighbour);
    EXPECT_EQ(jump(), Length::mm(45));
    EXPECT_EQ(fitOf(sizes, 0), JointFit::Even);
}

RC_GTEST_PROP(Magnets, KeepEveryCellWithinItsLimits, ()) {
    std::vector<Length> sizes = random::anySizes(8);
    sizes.push_back(Length::mm(*rc::gen::inRange(2, 60)));
    const int index = *rc::gen::inRange(0, static_cast<int>(sizes.size()) - 1);
    const auto first = static_cast<std::size_t>(index);
    const Length wanted = Length::nm(*rc::gen::inRange<std::int64_t>(-90'000'000, 190'000'000));
    const Length step = Length::nm(*rc::gen::inRange<std::int64_t>(100'000, 9'000'000));
    const Length reach = Length::nm(*rc::gen::inRange<std::int64_t>(0, 5'000'000));
    const JointPlace place = jointPlace(sizes, index, wanted, reach, step);
    const Length both = sizes[first] + sizes[first + 1];
    RC_ASSERT(place.before >= BoardLimits::leastCell);
    RC_ASSERT(both - place.before >= BoardLimits::leastCell);
    if (place.fit == JointFit::Step) {
        RC_ASSERT(place.before.nm() % step.nm() == 0);
    }
    // Each magnet is what it says.
    const Length left = std::accumulate(sizes.begin(), sizes.begin() + index, Length());
    const Length whole = std::accumulate(sizes.begin(), sizes.end(), Length());
    for (const JointPlace& magnet : jointMagnets(sizes, index)) {
        std::vector<Length> after = sizes;
        after[first] = magnet.before;
        after[first + 1] = both - magnet.before;
        RC_ASSERT(after[first + 1] >= BoardLimits::leastCell);
        if (magnet.fit == JointFit::Even) {
            RC_ASSERT(after[first] == after[first + 1]);
        } else if (magnet.fit == JointFit::Neighbour) {
            RC_ASSERT((first > 0 && after[first] == after[first - 1]) ||
                      (first + 2 < after.size() && after[first + 1] == after[first + 2]));
        } else {
            const Length at = left + magnet.before;
            bool mirrored = at + at == whole;
            Length edge;
            for (std::size_t i = 0; i + 1 < sizes.size(); ++i) {
                edge += sizes[i];
                mirrored = mirrored || (i != first && edge + at == whole);
            }
            RC_ASSERT(mirrored);
        }
    }
}

RC_GTEST_PROP(JointPairs, KeepAMirroredFieldMirrored, ()) {
    std::vector<Length> sizes = random::anySizes(5);
    const bool odd = *rc::gen::arbitrary<bool>();
    std::vector<Length> all = sizes;
    if (odd) {
        all.push_back(Length::mm(31));
    }
    all.insert(all.end(), sizes.rbegin(), sizes.rend());
    const int index = *rc::gen::inRange(0, static_cast<int>(all.size()) - 1);
    const auto first = static_cast<std::size_t>(index);
    const Length before = Length::nm(*rc::gen::inRange<std::int64_t>(0, 95'000'000));
    const std::vector<Length> moved = jointPairMoved(all, index, before);
    RC_ASSERT(std::accumulate(moved.begin(), moved.end(), Length()) ==
              std::accumulate(all.begin(), all.end(), Length()));
    for (const Length size : moved) {
        RC_ASSERT(size >= BoardLimits::leastCell);
    }
    const bool middle = first == all.size() - 2 - first;
    if (!middle) {
        RC_ASSERT(std::vector<Length>(moved.rbegin(), moved.rend()) == moved);
    }
    // As wished, or stopped by a cell that got as thin as it may.
    const bool stopped = std::any_of(moved.begin(), moved.end(), [](Length size) {
        return size < BoardLimits::leastCell + Length::nm(2);
    });
    const std::int64_t off = moved[first].nm() - before.nm();
    RC_ASSERT((off >= -1 && off <= 1) || stopped);
}

TEST(JointPairs, MoveTheImageByAsMuch) {
    EXPECT_EQ(jointPairMoved(mm({50, 40, 30, 60}), 0, Length::mm(45)), mm({45, 45, 35, 55}));
    EXPECT_EQ(jointPairMoved(mm({50, 40, 50}), 1, Length::mm(44)), mm({48, 44, 48}));
    EXPECT_EQ(jointPairMoved(mm({50, 40}), 0, Length::mm(44)), mm({44, 46}));
}

RC_GTEST_PROP(Magnets, AreStrongerThanSteps, ()) {
    std::vector<Length> sizes = random::anySizes(6);
    sizes.push_back(Length::mm(30));
    const int index = *rc::gen::inRange(0, static_cast<int>(sizes.size()) - 1);
    for (const JointPlace& magnet : jointMagnets(sizes, index)) {
        RC_ASSERT(jointPlace(sizes, index, magnet.before, Length::um(10), Length::mm(7)) == magnet);
    }
}

}  // namespace
}  // namespace kerfwright
