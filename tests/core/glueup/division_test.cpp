// Pieces that no timber is large enough for are divided, and the joints are listed.
#include "tests/core/glueup/boards.h"

#include <gmock/gmock.h>

namespace kerfwright {
namespace {

using namespace test;
using testing::IsEmpty;

Result<Plan> planFrom(const Board& board, Section section, const Shop& shop = notesShop()) {
    return plan(board, endlessWoods(3, section), shop, {});
}

Field onePiece(Length width, Length height) {
    Field field;
    field.columns = {width};
    field.rows = {height};
    field.pieces = {{0, 0, 1, 1, 0}};
    return field;
}

TEST(Division, PlainFieldWiderAndDeeperThanOneSectionTakesTwoGlueUps) {
    // Source: the project's design notes on glue-ups, 4, "Easy to get wrong".
    const Result<Plan> made = planFrom(boardOf(onePiece(Length::mm(400), Length::mm(300))),
                                       {Length::mm(75), Length::mm(150)});
    ASSERT_TRUE(made.ok()) << made.fault().text();
    EXPECT_EQ(made->glueUps, 2);
    EXPECT_FALSE(made->extraJoints.empty());
}

TEST(Division, EveryRoughStripFitsItsTimber) {
    const Section section{Length::mm(60), Length::mm(150)};
    for (const Build build : {Build::EndGrain, Build::LongGrain}) {
        const Result<Plan> made =
            planFrom(boardOf(onePiece(Length::mm(700), Length::mm(500)), build), section);
        ASSERT_TRUE(made.ok()) << made.fault().text();
        for (const Part& part : made->parts) {
            if (part.role != Role::Strip) {
                continue;
            }
            EXPECT_LE(std::min(part.roughThickness.value, part.roughWidth.value),
                      section.thickness);
            EXPECT_LE(std::max(part.roughThickness.value, part.roughWidth.value), section.width);
        }
    }
}

TEST(Division, AStripMayStandOnEdge) {
    // 100 tall, 40 wide: from timber 50 x 150 it stands on edge and stays whole.
    Field field = letters({"AB", "BA"}, Length::mm(40));
    field.rows.assign(2, Length::mm(100));
    const Result<Plan> made = planFrom(boardOf(field), {Length::mm(50), Length::mm(150)});
    ASSERT_TRUE(made.ok()) << made.fault().text();
    EXPECT_THAT(made->extraJoints, IsEmpty());
}

TEST(Division, PartsFallOnARuleWhereTheyCan) {
    // 100 mm in three would be 33.333…: four parts of 25 can be set on a fence.
    Shop shop = notesShop();
    shop.trimMargin = Length();
    Field field;
    field.columns = {Length::mm(100), Length::mm(10)};
    field.rows = {Length::mm(20)};
    field.pieces = {{0, 0, 1, 1, 0}, {1, 0, 1, 1, 1}};
    const Result<Plan> made = planFrom(boardOf(field), {Length::mm(40), Length::mm(40)}, shop);
    ASSERT_TRUE(made.ok()) << made.fault().text();
    ASSERT_EQ(made->extraJoints.size(), 3U);
    EXPECT_EQ(made->extraJoints.front(), (Joint{true, Length::mm(25), Length(), Length::mm(20)}));
}

TEST(Division, JointsInsideAPieceAreListedPieceByPiece) {
    // Basket of two tiles: three upright strips beside three lying ones. By rows each upright strip
    // is divided at the two lines of the lying ones: six joints; nothing is gained by columns.
    Field field;
    field.columns.assign(6, Length::mm(20));
    field.rows.assign(3, Length::mm(20));
    field.pieces = {{0, 0, 1, 3, 0}, {1, 0, 1, 3, 1}, {2, 0, 1, 3, 0},
                    {3, 0, 3, 1, 0}, {3, 1, 3, 1, 1}, {3, 2, 3, 1, 0}};
    Choices rows;
    rows.rows = RowChoice::Rows;
    const Result<Plan> made = plan(boardOf(field), endlessWoods(2), notesShop(), rows);
    ASSERT_TRUE(made.ok());
    EXPECT_EQ(made->extraJoints.size(), 6U);
    for (const Joint& joint : made->extraJoints) {
        EXPECT_FALSE(joint.vertical);
        EXPECT_EQ(joint.to - joint.from, Length::mm(20));
    }
}

TEST(Division, WhatWasMergedIsDividedWhereAJointWasDrawn) {
    // Eight squares of 48 merge into a run of 384, which timber 200 wide cannot give: two parts of
    // four squares would do but for the trim margins (192 + 3 + 3 is 198), so they do.
    Choices merge;
    merge.mergeLike = true;
    merge.rows = RowChoice::Rows;
    Field field = letters({"AAAAAAAA"}, Length::mm(48));
    const Result<Plan> made = plan(
        boardOf(field), endlessWoods(1, {Length::mm(75), Length::mm(200)}), notesShop(), merge);
    ASSERT_TRUE(made.ok()) << made.fault().text();
    EXPECT_THAT(made->extraJoints, IsEmpty());
    EXPECT_EQ(made->strips, 2);
    EXPECT_EQ(made->omittedJoints.size(), 6U);

    // Unequal squares: the fewest parts along drawn lines.
    field.columns = {Length::mm(90), Length::mm(90), Length::mm(70), Length::mm(70),
                     Length::mm(60)};
    field.pieces.resize(5);
    const Result<Plan> uneven = plan(
        boardOf(field), endlessWoods(1, {Length::mm(75), Length::mm(200)}), notesShop(), merge);
    ASSERT_TRUE(uneven.ok()) << uneven.fault().text();
    EXPECT_THAT(uneven->extraJoints, IsEmpty());
    EXPECT_EQ(uneven->strips, 3);
}

TEST(Division, BoardThickerThanAnyTimberIsRefused) {
    Board board = boardOf(letters({"AB", "BA"}), Build::LongGrain);
    board.thickness = Length::mm(80);
    const Result<Plan> made = planFrom(board, {Length::mm(50), Length::mm(75)});
    ASSERT_FALSE(made.ok());
    EXPECT_EQ(made.fault().entry, "Timber of Wood A");
}

TEST(Division, BorderRailWiderThanItsTimberIsRefused) {
    Board board = boardOf(letters({"AB", "BA"}));
    board.border = {Length::mm(200), 2};
    const Result<Plan> made = planFrom(board, {Length::mm(75), Length::mm(150)});
    ASSERT_FALSE(made.ok());
    EXPECT_EQ(made.fault().entry, "Border width");
    EXPECT_EQ(made.fault().value, "200 mm");
}

}  // namespace
}  // namespace kerfwright
