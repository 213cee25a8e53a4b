#include "core/board/patterns.h"
#include "core/board/recipe.h"

#include <climits>
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <set>
#include <string>
#include <vector>

namespace kerfwright {
namespace {

using ::testing::Each;
using ::testing::ElementsAre;
using ::testing::SizeIs;

PatternRequest request(Pattern pattern, int across, int down, Length width, Length height,
                       std::vector<int> woods = {0, 1}) {
    return {pattern, across, down, width, height, std::move(woods)};
}

std::vector<Piece> rowOf(const Field& field, int row) {
    std::vector<Piece> all;
    for (const Piece& piece : field.pieces) {
        if (piece.row == row) {
            all.push_back(piece);
        }
    }
    return all;
}

std::vector<Piece> reversedRow(const Field& field, int row, int asRow) {
    std::vector<Piece> all = rowOf(field, row);
    for (Piece& piece : all) {
        piece.column = static_cast<int>(field.columns.size()) - piece.column - piece.across;
        piece.row = asRow;
    }
    std::reverse(all.begin(), all.end());
    return all;
}

std::vector<Length> reversed(std::vector<Length> sizes) {
    std::reverse(sizes.begin(), sizes.end());
    return sizes;
}

TEST(Patterns, areListedOnceEach) {
    std::set<std::string_view> keys;
    std::set<Pattern> all;
    for (const PatternInfo& info : patterns()) {
        keys.insert(info.key);
        all.insert(info.pattern);
        EXPECT_FALSE(info.name.empty());
        EXPECT_FALSE(info.about.empty());
        EXPECT_THAT(info.roles, SizeIs(static_cast<std::size_t>(info.woods)));
        EXPECT_EQ(&patternInfo(info.pattern), &info);
        EXPECT_FALSE(info.counts.empty());
        std::set<std::string_view> numbers;
        for (const PatternCount& count : info.counts) {
            numbers.insert(count.key);
            EXPECT_FALSE(count.name.empty());
            EXPECT_LE(count.least, count.usual);
            EXPECT_LE(count.usual, count.greatest);
        }
        for (const PatternLength& length : info.lengths) {
            numbers.insert(length.key);
            EXPECT_FALSE(length.name.empty());
        }
        EXPECT_THAT(numbers, SizeIs(info.counts.size() + info.lengths.size()));
    }
    EXPECT_THAT(patterns(), SizeIs(18));
    EXPECT_THAT(keys, SizeIs(18));
    EXPECT_THAT(all, SizeIs(18));
}

TEST(Patterns, stripesAreOnePieceHigh) {
    const Field field =
        *layOut(request(Pattern::Stripes, 5, 4, Length::mm(30), Length::mm(50), {0, 1, 2}));
    EXPECT_THAT(field.rows, ElementsAre(Length::mm(200)));
    EXPECT_THAT(field.pieces,
                ElementsAre(Piece{0, 0, 1, 1, 0}, Piece{1, 0, 1, 1, 1}, Piece{2, 0, 1, 1, 2},
                            Piece{3, 0, 1, 1, 0}, Piece{4, 0, 1, 1, 1}));
}

TEST(Patterns, chequerRowsAreReversalsWhereTheyAreEven) {
    const Field field = *layOut(request(Pattern::Chequer, 8, 8, Length::mm(45), Length::mm(45)));
    EXPECT_EQ(field.pieces[0].wood, 0);
    for (int row = 0; row + 1 < 8; ++row) {
        EXPECT_EQ(rowOf(field, row + 1), reversedRow(field, row, row + 1));
    }
}

TEST(Patterns, bricksStandHalfABrickOn) {
    const Field field =
        *layOut(request(Pattern::Bricks, 3, 2, Length::mm(80), Length::mm(40), {0, 1, 2}));
    EXPECT_EQ(field.width(), Length::mm(240));
    EXPECT_THAT(field.columns, Each(Length::mm(40)));
    EXPECT_THAT(field.pieces,
                ElementsAre(Piece{0, 0, 2, 1, 0}, Piece{2, 0, 2, 1, 1}, Piece{4, 0, 2, 1, 2},
                            Piece{0, 1, 1, 1, 1}, Piece{1, 1, 2, 1, 2}, Piece{3, 1, 2, 1, 0},
                            Piece{5, 1, 1, 1, 1}));
}

TEST(Patterns, bricksOfThreeWoodsNeverTouchTheirLike) {
    EXPECT_TRUE(rc::check([] {
        const Field field =
            *layOut(request(Pattern::Bricks, *rc::gen::inRange(1, 33), *rc::gen::inRange(1, 65),
                            Length::mm(40), Length::mm(20), {0, 1, 2}));
        const auto map = pieceMap(field);
        const std::size_t columns = field.columns.size();
        const auto wood = [&](std::size_t cell) {
            return field.pieces[static_cast<std::size_t>(map[cell])].wood;
        };
        for (std::size_t cell = 0; cell < map.size(); ++cell) {
            if (cell % columns + 1 < columns && map[cell] != map[cell + 1]) {
                RC_ASSERT(wood(cell) != wood(cell + 1));
            }
            if (cell + columns < map.size()) {
                RC_ASSERT(wood(cell) != wood(cell + columns));
            }
        }
    }));
}

// Trade practice, derived there from its own formula: ten courses of 25 mm and nine mortar rows of
// 6 mm make 304 mm. With our mortar of an eighth it is the same sum.
TEST(Patterns, mortarLiesBetweenCourses) {
    const Field field =
        *layOut(request(Pattern::MortarBricks, 3, 10, Length::mm(76), Length::mm(48), {0, 1}));
    EXPECT_EQ(field.height(), Length::mm(10 * 48 + 9 * 6));
    EXPECT_EQ(field.width(), Length::mm(3 * (76 + 6) + 35));
    EXPECT_THAT(rowOf(field, 1), ElementsAre(Piece{0, 1, 13, 1, 1}));
}

// The known construction with two glue-ups: rows end in a part brick of (brick - mortar) / 2, and
// the reversal of a course gives the half offset.
TEST(Patterns, aMortaredCourseReversedIsTheNext) {
    EXPECT_TRUE(rc::check([] {
        const bool inches = *rc::gen::arbitrary<bool>();
        const auto size = [&](int least, int most) {
            const int steps = *rc::gen::inRange(least, most);
            return inches ? Length::inch(steps, 64) : Length::um(400) * steps;
        };
        const auto wish =
            request(Pattern::MortarBricks, *rc::gen::inRange(1, 16), *rc::gen::inRange(1, 33),
                    size(64, 200), size(16, 100), {0, 1, 2});
        const Result<Field> laid = layOut(wish);
        RC_PRE(laid.ok());
        const Field& field = *laid;
        RC_ASSERT(field.columns == reversed(field.columns));
        RC_ASSERT(field.columns.front() * 2 + field.columns[1] == wish.cellWidth);
        const Length grid = inches ? Length::inch(1, 64) : Length::um(100);
        RC_ASSERT(field.columns[1].nm() % grid.nm() == 0);
        for (int row = 0; row + 2 < static_cast<int>(field.rows.size()); row += 2) {
            RC_ASSERT(rowOf(field, row + 2) == reversedRow(field, row, row + 2));
        }
        // Half a brick and its mortar: the first whole brick of the second course begins there.
        if (wish.down > 1) {
            RC_ASSERT((field.columns[0] + field.columns[1]) * 2 ==
                      wish.cellWidth + field.columns[1]);
            RC_ASSERT(rowOf(field, 2)[2].column == 2);
        }
    }));
}

TEST(Patterns, basketTilesAreThreeStripsWhoseSumIsExact) {
    const Field field = *layOut(request(Pattern::Basket, 2, 2, Length::mm(50), Length::mm(50)));
    // 50 mm is no three times a tenth: the middle strip takes what is left.
    EXPECT_THAT(field.columns,
                ElementsAre(Length::um(16700), Length::um(16600), Length::um(16700),
                            Length::um(16700), Length::um(16600), Length::um(16700)));
    EXPECT_EQ(field.width(), Length::mm(100));
    EXPECT_THAT(rowOf(field, 0), ElementsAre(Piece{0, 0, 1, 3, 0}, Piece{1, 0, 1, 3, 1},
                                             Piece{2, 0, 1, 3, 0}, Piece{3, 0, 3, 1, 0}));
    EXPECT_THAT(rowOf(field, 1), ElementsAre(Piece{3, 1, 3, 1, 1}));
}

// Source: the bulge formula of trade practice with its worked example, W 400, N 10, A 60 degrees.
TEST(Patterns, graduatedWidthsFollowTheWorkedExample) {
    const Field field =
        *layOut(request(Pattern::Graduated, 10, 10, Length::mm(40), Length::mm(40)));
    const std::vector<Length> wanted{Length::um(28400), Length::um(35900), Length::um(41800),
                                     Length::um(45900), Length::um(48000), Length::um(48000),
                                     Length::um(45900), Length::um(41800), Length::um(35900),
                                     Length::um(28400)};
    EXPECT_EQ(field.columns, wanted);
    EXPECT_EQ(field.rows, wanted);
    EXPECT_EQ(field.width(), Length::mm(400));
}

TEST(Patterns, nestedSquaresAreRingsOfBarsAndSides) {
    const Field field =
        *layOut(request(Pattern::NestedSquares, 5, 4, Length::mm(30), Length::mm(30)));
    EXPECT_THAT(field.pieces,
                ElementsAre(Piece{0, 0, 5, 1, 0}, Piece{0, 1, 1, 2, 0}, Piece{1, 1, 3, 1, 1},
                            Piece{4, 1, 1, 2, 0}, Piece{1, 2, 3, 1, 1}, Piece{0, 3, 5, 1, 0}));
    EXPECT_THAT(
        layOut(request(Pattern::NestedSquares, 1, 5, Length::mm(30), Length::mm(30)))->pieces,
        ElementsAre(Piece{0, 0, 1, 5, 0}));
}

TEST(Patterns, nameWhatIsWrong) {
    const auto fault = [](const PatternRequest& wish) { return layOut(wish).fault().text(); };
    const Length cell = Length::mm(50);
    EXPECT_EQ(fault(request(Pattern::Chequer, 0, 8, cell, cell)),
              "Squares across: must be from 1 to 64 with this pattern; got 0.");
    EXPECT_EQ(fault(request(Pattern::Basket, 8, 22, cell, cell)),
              "Tiles down: must be from 1 to 21 with this pattern; got 22.");
    EXPECT_EQ(fault(request(Pattern::MortarBricks, 16, 8, cell, cell)),
              "Bricks a course: must be from 1 to 15 with this pattern; got 16.");
    EXPECT_EQ(fault(request(Pattern::MortarBricks, 8, 33, cell, cell)),
              "Courses: must be from 1 to 32 with this pattern; got 33.");
    EXPECT_EQ(fault(request(Pattern::Plaid, 1, 8, cell, cell)),
              "Broad bands across: must be from 2 to 32 with this pattern; got 1.");
    EXPECT_EQ(fault(request(Pattern::Chequer, 8, 8, cell, Length::mm(1))),
              "Cell height: must be from 2 mm to 1500 mm; got 1 mm.");
    EXPECT_EQ(fault(request(Pattern::MortarBricks, 8, 8, Length::mm(9), cell)),
              "Cell width: must be at least 10.4 mm to leave part bricks beside the mortar; got 9 "
              "mm.");
    EXPECT_EQ(fault(request(Pattern::Chequer, 64, 8, cell, cell)),
              "Field width: must be from 2 mm to 3000 mm; got 3200 mm.");
    EXPECT_EQ(fault(request(Pattern::Chequer, 8, 8, cell, cell, {})),
              "Woods: must be one at least; "
              "got none.");
    EXPECT_EQ(fault(request(Pattern::Chequer, 8, 8, cell, cell, {0, -2})),
              "Woods: must be woods of the project; got wood number -2.");
}

TEST(Patterns, areSoundWhateverIsAsked) {
    EXPECT_TRUE(rc::check([] {
        const auto& offered = patterns();
        PatternRequest wish;
        wish.pattern = offered[*rc::gen::inRange<std::size_t>(0, offered.size())].pattern;
        const auto count = [] {
            return *rc::gen::weightedElement<int>({{20, *rc::gen::inRange(1, 20)},
                                                   {4, *rc::gen::inRange(-2, 70)},
                                                   {1, INT_MAX},
                                                   {1, INT_MIN}});
        };
        const auto size = [] {
            return Length::nm(*rc::gen::weightedElement<std::int64_t>(
                {{20, *rc::gen::inRange<std::int64_t>(9'000'000, 90'000'000)},
                 {1, *rc::gen::arbitrary<std::int64_t>()},
                 {20, 100'000 * *rc::gen::inRange<std::int64_t>(80, 900)}}));
        };
        wish.across = count();
        wish.down = count();
        wish.cellWidth = size();
        wish.cellHeight = size();
        wish.woods = *rc::gen::container<std::vector<int>>(rc::gen::inRange(0, 4));
        const Result<Field> laid = layOut(wish);
        RC_CLASSIFY(laid.ok());
        if (!laid.ok()) {
            RC_ASSERT(!laid.fault().entry.empty());
            RC_ASSERT(!laid.fault().rule.empty());
            return;
        }
        Board board;
        board.thickness = Length::mm(20);
        board.field = *laid;
        RC_ASSERT(faults(board, 4).empty());
        const bool mirrored = wish.pattern != Pattern::Bricks;
        RC_ASSERT(!mirrored || laid->columns == reversed(laid->columns));
        static const std::set<Pattern> exact{
            Pattern::Plain,  Pattern::Stripes,       Pattern::Chequer,  Pattern::Bricks,
            Pattern::Basket, Pattern::NestedSquares, Pattern::Graduated};
        if (exact.count(wish.pattern) > 0) {
            RC_ASSERT(laid->width() == wish.cellWidth * wish.across);
            RC_ASSERT(laid->height() == wish.cellHeight * wish.down);
        }
    }));
}

}  // namespace
}  // namespace kerfwright
