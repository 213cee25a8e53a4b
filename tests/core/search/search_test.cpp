#include "core/search/alike.h"
#include "core/search/locked.h"
#include "core/search/search.h"
#include "core/search/shifted.h"
#include "tests/core/search/pictures.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <random>
#include <set>

namespace kerfwright::searching {
namespace {

using Rows = std::vector<std::string>;

Rows randomRows(int columns, int rows, int woods, unsigned seed, int period = 0) {
    std::mt19937 random(seed);
    Rows result(static_cast<std::size_t>(rows),
                std::string(static_cast<std::size_t>(columns), 'A'));
    for (std::string& row : result)
        for (char& cell : row)
            cell = static_cast<char>('A' + random() % static_cast<unsigned>(woods));
    for (std::size_t row = 0; period > 0 && row < result.size(); ++row)
        for (std::size_t column = 0; column < result[row].size(); ++column)
            result[row][column] = result[row % static_cast<std::size_t>(period)]
                                        [column % static_cast<std::size_t>(period)];
    return result;
}

Rows transposed(const Rows& rows) {
    Rows result(rows[0].size());
    for (const std::string& row : rows)
        for (std::size_t i = 0; i < row.size(); ++i)
            result[i] += row[i];
    return result;
}

/// Distinct rows of more than one wood, up to reversal, and the final glue-up.
int closedForm(const Rows& rows) {
    std::set<std::string> distinct;
    for (const std::string& row : rows)
        if (row.find_first_not_of(row[0]) != std::string::npos)
            distinct.insert(std::min(row, std::string(row.rbegin(), row.rend())));
    return static_cast<int>(distinct.size()) + 1;
}

RC_GTEST_PROP(Search, NoPlanOfTwoLevelsIsBetterThanTheClosedForm, ()) {
    const int columns = *rc::gen::inRange(2, 8);
    const int rows = *rc::gen::inRange(2, 8);
    const Rows wished =
        randomRows(columns, rows, *rc::gen::inRange(2, 5), *rc::gen::arbitrary<unsigned>());
    const Picture picture = pictureOf(cells(wished), Laying::EndGrain, true);
    const SearchResult result = fewestGlueUps(picture, {false, 20'000, 6});
    const int closed = std::min(closedForm(wished), closedForm(transposed(wished)));
    RC_ASSERT(!result.found.empty());
    RC_ASSERT(result.found.front().glueUps <= closed);
    RC_ASSERT(result.bound <= result.found.front().glueUps);
    for (const Found& each : result.found) {
        RC_ASSERT(mistakes(each.construction, picture).empty());
        // One row or one column of strips needs no final glue-up beside it.
        RC_ASSERT(each.levels != 2 || each.glueUps >= closed);
    }
}

RC_GTEST_PROP(Search, BricksOfAllBuildsAreMadeRightly, ()) {
    // Pieces of several cells, uneven sizes.
    Field field = cells(randomRows(*rc::gen::inRange(2, 7), *rc::gen::inRange(2, 7), 3,
                                   *rc::gen::arbitrary<unsigned>()));
    for (Length& width : field.columns)
        width = Length::mm(20 * *rc::gen::inRange(1, 3));
    for (Length& height : field.rows)
        height = Length::mm(20 * *rc::gen::inRange(1, 3));
    for (int i = *rc::gen::inRange(0, 4); i > 0; --i)
        field = withMerged(field, *rc::gen::inRange(0, 5), *rc::gen::inRange(0, 5),
                           *rc::gen::inRange(1, 3), *rc::gen::inRange(1, 3));
    const Laying laying =
        *rc::gen::element(Laying::EndGrain, Laying::GrainDown, Laying::GrainAcross);
    const bool mergeLike = *rc::gen::arbitrary<bool>();
    Picture picture = pictureOf(field, laying, mergeLike);
    const Locked locked = lockedPieces(picture);
    RC_ASSERT(locked.freeing.empty() == !fewestGlueUps(picture, {false, 0, 1}).found.empty());
    picture = withJoints(picture, locked.freeing);
    const SearchResult result = fewestGlueUps(picture, {*rc::gen::arbitrary<bool>(), 5'000, 5});
    RC_ASSERT(!result.found.empty());
    for (const Found& each : result.found)
        RC_ASSERT(mistakes(each.construction, picture) == "");
    for (const Found& each : shiftedAndTrimmed(picture))
        RC_ASSERT(mistakes(each.construction, picture) == "");
}

TEST(Search, LongGrainCountsAssembliesByCopies) {
    // Rows AB and BA are one panel; four tiles of two rows each would be glued once a copy.
    const Picture picture =
        pictureOf(cells({"AABB", "BBAA", "AABB", "BBAA"}), Laying::GrainDown, true);
    const SearchResult result = fewestGlueUps(picture);
    ASSERT_TRUE(result.proven);
    EXPECT_EQ(result.found.front().glueUps, 2);
    EXPECT_EQ(result.found.front().assemblies, 2);

    Construction tiles;
    const Length side = Length::mm(40);
    tiles.blocks = {{side, side, 0, JoinedAlong::X, {}},
                    {side, side, 1, JoinedAlong::X, {}},
                    {side, side * 2, -1, JoinedAlong::Y, {{0, {}}, {1, {}}}},
                    {side * 4,
                     side * 2,
                     -1,
                     JoinedAlong::X,
                     {{2, {}}, {2, {false, 2}}, {2, {}}, {2, {false, 2}}}}};
    const Found found = counted(tiles, Laying::GrainDown);
    EXPECT_EQ(found.glueUps, 2);
    EXPECT_EQ(found.assemblies, 5);
    EXPECT_EQ(found.levels, 2);
    EXPECT_EQ(found.members, 6);
    EXPECT_EQ(counted(tiles, Laying::GrainAcross).assemblies, 2);
}

TEST(Search, SaysHowGoodAnUnprovenAnswerIs) {
    const Picture picture = pictureOf(cells(randomRows(12, 12, 3, 3)), Laying::EndGrain, true);
    const SearchResult result = fewestGlueUps(picture, {false, 20'000, 4});
    EXPECT_FALSE(result.proven);
    EXPECT_GE(result.bound, 3);
    EXPECT_LT(result.bound, result.found.front().glueUps);
    // Bands of two rows share the columns AB, AC and BC: fewer than a panel a row.
    EXPECT_LE(result.found.front().glueUps, 10);
}

TEST(Search, StopsWhenToldAndKeepsWhatItHas) {
    const Picture picture = pictureOf(cells(randomRows(10, 10, 3, 5)), Laying::EndGrain, true);
    int calls = 0;
    double done = 0;
    const SearchResult result = fewestGlueUps(picture, {}, [&](const SearchProgress& progress) {
        EXPECT_GE(progress.done, done);
        done = progress.done;
        return ++calls < 30;
    });
    EXPECT_TRUE(result.stopped);
    EXPECT_EQ(calls, 30);
    ASSERT_FALSE(result.found.empty());
    EXPECT_EQ(mistakes(result.found.front().construction, picture), "");
}

TEST(Search, StopsAtOnceWithNothing) {
    int calls = 0;
    const SearchResult result =
        fewestGlueUps(pictureOf(cells(randomRows(10, 10, 3, 5)), Laying::EndGrain, true), {},
                      [&](const SearchProgress&) { return ++calls < 1; });
    EXPECT_TRUE(result.stopped);
    EXPECT_TRUE(result.found.empty());
    EXPECT_EQ(calls, 1);
}

TEST(Search, TheSameTwice) {
    const Picture picture = pictureOf(cells(randomRows(9, 7, 3, 8)), Laying::EndGrain, true);
    const SearchResult one = fewestGlueUps(picture);
    const SearchResult other = fewestGlueUps(picture);
    ASSERT_EQ(one.found.size(), other.found.size());
    for (std::size_t i = 0; i < one.found.size(); ++i) {
        ASSERT_EQ(one.found[i].construction.blocks.size(),
                  other.found[i].construction.blocks.size());
        for (std::size_t j = 0; j < one.found[i].construction.blocks.size(); ++j)
            EXPECT_EQ(one.found[i].construction.blocks[j].members,
                      other.found[i].construction.blocks[j].members);
    }
}

TEST(Search, LargeBoardsAreMadeRightly) {
    for (const int period : {0, 8}) {
        const Picture picture =
            pictureOf(cells(randomRows(64, 64, 3, 1, period)), Laying::EndGrain, true);
        const SearchResult result = fewestGlueUps(picture, {false, 2'000, 2});
        ASSERT_FALSE(result.found.empty());
        EXPECT_EQ(mistakes(result.found.front().construction, picture), "");
        EXPECT_LE(result.found.front().glueUps, period == 0 ? 36 : 9);
        EXPECT_GE(result.bound, 2);
    }
}

TEST(Search, OffersRowsAndColumnsBesidesTheBest) {
    const SearchResult result =
        fewestGlueUps(pictureOf(cells({"AAB", "ABA", "BAA", "ABA"}), Laying::EndGrain, true));
    const auto lastAlong = [&](JoinedAlong along) {
        return std::any_of(result.found.begin(), result.found.end(), [&](const Found& each) {
            return each.construction.blocks.back().along == along;
        });
    };
    EXPECT_TRUE(lastAlong(JoinedAlong::X));
    EXPECT_TRUE(lastAlong(JoinedAlong::Y));
}

bool someLookAlike(const Field& field, bool mergeLike) {
    const Picture picture = pictureOf(field, Laying::EndGrain, mergeLike);
    return kinds::someLookAlike(kinds::Kinds(picture, false, 1, 100'000));
}

TEST(Search, KnowsBlocksThatLookAlikeButAreJoinedOtherwise) {
    // Twice AB over BA, but the first A is two pieces: a line runs through it that the other
    // block has not.
    const Field field = pieces({"abccddee", "ffgghhii"}, {0, 0, 1, 0, 1, 1, 0, 1, 0});
    EXPECT_TRUE(someLookAlike(field, true));
    EXPECT_FALSE(someLookAlike(field, false));
    EXPECT_FALSE(someLookAlike(cells({"ABAB", "BABA"}), true));
    const Picture picture = pictureOf(field, Laying::EndGrain, true);
    EXPECT_EQ(fewestGlueUps(picture).found.front().glueUps, 2);
}

TEST(Picture, LargePiecesAreDividedWhereARuleShowsIt) {
    const Field field = cells({"AB"}, Length::mm(200), Length::mm(90));
    const Picture picture =
        pictureOf(field, Laying::EndGrain, false, {{Length::mm(90), Length::mm(70)}});
    // 200 x 90 fits 70 x 90 in three columns; 200 / 3 is on no rule, a quarter is.
    EXPECT_EQ(picture.tiles.size(), 5u);
    EXPECT_EQ(picture.extraJoints,
              (std::vector<Joint>{{true, Length::mm(50), {}, Length::mm(90)},
                                  {true, Length::mm(100), {}, Length::mm(90)},
                                  {true, Length::mm(150), {}, Length::mm(90)}}));
    EXPECT_EQ(pictureOf(field, Laying::GrainAcross, false, {{{}, Length::mm(90)}}).tiles.size(),
              2u);
    EXPECT_EQ(pictureOf(field, Laying::GrainDown, false, {{{}, Length::mm(100)}}).tiles.size(), 3u);
}

TEST(Picture, ManyPartsAreNoTrouble) {
    const Field plain = cells({"A"}, Length::mm(1500), Length::mm(40));
    const Picture picture = pictureOf(plain, Laying::GrainDown, true, {{{}, Length::mm(10)}});
    EXPECT_EQ(picture.columns(), 150);
    const SearchResult result = fewestGlueUps(picture);
    EXPECT_TRUE(result.proven);
    EXPECT_EQ(result.found.front().glueUps, 1);
    EXPECT_EQ(mistakes(result.found.front().construction, picture), "");
    // Parts of less than 2 mm are none: such a piece stays whole, and nothing can be made of it.
    const Picture whole = pictureOf(plain, Laying::GrainDown, true, {{{}, Length::mm(1)}});
    EXPECT_EQ(whole.columns(), 1);
    EXPECT_TRUE(fewestGlueUps(whole).found.empty());
}

TEST(Picture, LinesThatPartNothingAreLeftOut) {
    Field field = plainGrid(4, 4, Length::mm(20), Length::mm(20), 0);
    field = withMerged(field, 0, 0, 4, 2);
    field = withMerged(field, 0, 2, 4, 2);
    const Picture picture = pictureOf(field, Laying::EndGrain, true);
    EXPECT_EQ(picture.columns(), 1);
    EXPECT_EQ(picture.rows(), 2);
}

TEST(Search, KeepsToWhatTheMachinesTakeOfAPanel) {
    const Field field = cells({"ABABABAB", "BABABABA", "ABBAABBA", "BAABBAAB"});
    for (const Laying laying : {Laying::EndGrain, Laying::GrainDown, Laying::GrainAcross}) {
        Picture picture = pictureOf(field, laying, false);
        const SearchResult free = fewestGlueUps(picture);
        picture.panels = {Length::mm(10'000), Length::mm(10'000)};
        EXPECT_EQ(fewestGlueUps(picture).bound, free.bound) << "limits that nothing reaches";
        picture.panels = {Length::mm(200), Length::mm(90)};
        const SearchResult limited = fewestGlueUps(picture);
        ASSERT_FALSE(limited.found.empty());
        EXPECT_GE(limited.bound, free.bound);
        for (const Found& found : limited.found) {
            EXPECT_EQ(searching::mistakes(found.construction, picture), "");
            const std::vector<Block>& blocks = found.construction.blocks;
            for (std::size_t i = 0; i + 1 < blocks.size(); ++i) {
                const Block& block = blocks[i];
                const bool alongX = block.along == JoinedAlong::X;
                if (!block.isGlued()) {
                    continue;
                }
                if (laying == Laying::EndGrain) {
                    EXPECT_LE(alongX ? block.width : block.height, picture.panels.widest);
                    EXPECT_LE(alongX ? block.height : block.width, picture.panels.thickest);
                } else {
                    EXPECT_LE(laying == Laying::GrainDown ? block.width : block.height,
                              picture.panels.widest);
                }
            }
        }
    }
}

}  // namespace
}  // namespace kerfwright::searching
