// A pattern made larger or smaller as a whole.
#include "tests/core/board/randomfield.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <cstdlib>
#include <vector>

namespace kerfwright {
namespace {

using Sizes = std::vector<Length>;

Sizes columnsScaled(Sizes columns, Length first, Length grid) {
    const Field field{std::move(columns), {Length::mm(20)}, {}};
    return scaled(field, first, Length::mm(20), grid).columns;
}

TEST(Scaled, keepsAPatternInProportion) {
    // Bricks of 40 mm with mortar of 3 mm, half as large again.
    EXPECT_EQ(columnsScaled({Length::mm(40), Length::mm(3), Length::mm(40), Length::mm(3)},
                            Length::mm(60), Length::um(100)),
              (Sizes{Length::mm(60), Length::um(4'500), Length::mm(60), Length::um(4'500)}));
    EXPECT_EQ(
        columnsScaled({Length::inch(2), Length::inch(3)}, Length::inch(3), Length::inch(1, 64)),
        (Sizes{Length::inch(3), Length::inch(9, 2)}));
}

TEST(Scaled, takesTheFirstSizeAsTypedAndRoundsTheOthers) {
    EXPECT_EQ(columnsScaled({Length::mm(40), Length::mm(10)}, Length::um(33'333), Length::um(100)),
              (Sizes{Length::um(33'333), Length::um(8'300)}));
    EXPECT_EQ(columnsScaled({Length::mm(40), Length::mm(3)}, Length::mm(4), Length::mm(1)),
              (Sizes{Length::mm(4), Length::mm(1)}))
        << "never nothing";
}

TEST(Scaled, doesNotTurnANarrowerSquareIntoAWiderOne) {
    EXPECT_EQ(
        columnsScaled({Length::um(10'400), Length::mm(10)}, Length::um(10'450), Length::mm(4)),
        (Sizes{Length::um(10'450), Length::um(10'450)}));
}

TEST(Scaled, changesNothingForASizeThatStaysOrIsNone) {
    const Sizes sizes{Length::mm(40), Length::um(3'333)};
    for (const Length same : {Length::mm(40), Length(), Length::mm(-1)}) {
        EXPECT_EQ(columnsScaled(sizes, same, Length::mm(1)), sizes);
    }
}

void checkSizes(const Sizes& before, const Sizes& after, Length first, Length grid) {
    RC_ASSERT(after.size() == before.size());
    RC_ASSERT(after.front() == first);
    if (first == before.front()) {
        RC_ASSERT(after == before);
        return;
    }
    for (std::size_t i = 0; i < before.size(); ++i) {
        RC_ASSERT(after[i] > Length());
        RC_ASSERT(after[i] == first || after[i].nm() % grid.nm() == 0);
        // Within half a step of the true proportion, or held by the grid or by the first.
        const double exact = before[i].toMm() * first.toMm() / before.front().toMm();
        RC_ASSERT(std::abs(after[i].toMm() - exact) <= grid.toMm() / 2 + 1e-6 || after[i] == grid ||
                  after[i] == first);
        for (std::size_t k = 0; k < i; ++k) {
            RC_ASSERT((before[i] <= before[k]) <= (after[i] <= after[k]));
            RC_ASSERT((before[i] == before[k]) <= (after[i] == after[k]));
        }
    }
}

TEST(Scaled, holdsForAnyField) {
    EXPECT_TRUE(rc::check([] {
        Field field = random::anyField(8, 3);
        // Equal sizes are what patterns are made of, and are rare by chance.
        if (field.columns.size() > 2) {
            field.columns.back() = field.columns[1];
            field.columns[2] = field.columns.front();
        }
        const Length grid = *rc::gen::element(Length::inch(1, 64), Length::inch(1, 16),
                                              Length::um(100), Length::mm(1), Length::nm(1));
        const auto any = [] { return Length::nm(*rc::gen::inRange<std::int64_t>(1, 90'000'000)); };
        const Length width = any();
        const Length height = any();
        const Field result = scaled(field, width, height, grid);
        RC_ASSERT(result.pieces == field.pieces);
        checkSizes(field.columns, result.columns, width, grid);
        checkSizes(field.rows, result.rows, height, grid);
    }));
}

TEST(Scaled, twiceAsLargeIsExactOnTheGridAndComesBack) {
    EXPECT_TRUE(rc::check([] {
        const Length grid = *rc::gen::element(Length::inch(1, 64), Length::um(100));
        Sizes sizes = *rc::gen::nonEmpty(rc::gen::container<Sizes>(
            rc::gen::map(rc::gen::inRange<std::int64_t>(1, 5'000),
                         [](std::int64_t steps) { return Length::nm(steps); })));
        for (Length& size : sizes) {
            size = grid * size.nm();
        }
        const Sizes twice = columnsScaled(sizes, sizes.front() * 2, grid);
        for (std::size_t i = 0; i < sizes.size(); ++i) {
            RC_ASSERT(twice[i] == sizes[i] * 2);
        }
        RC_ASSERT(columnsScaled(twice, sizes.front(), grid) == sizes);
    }));
}

}  // namespace
}  // namespace kerfwright
