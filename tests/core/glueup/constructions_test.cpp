// Known constructions: how many glue-ups a picture takes.
//
// Source: the project's design notes on glue-ups, section 4 (derived there from geometry), with
// timber so large that every piece can be one stick, no thinning between slices and no shifting.
#include "tests/core/glueup/boards.h"

#include <gmock/gmock.h>

namespace kerfwright {
namespace {

using namespace test;
using testing::IsEmpty;

Plan planned(const Board& board, int woods = 3, Choices choices = {}) {
    Result<Plan> made = plan(board, endlessWoods(woods), notesShop(), choices);
    EXPECT_TRUE(made.ok()) << (made.ok() ? "" : made.fault().text());
    return made.ok() ? *made : Plan{};
}

TEST(Constructions, StripesAreOneGlueUpInEitherBuild) {
    Field field;
    field.columns.assign(5, square);
    field.rows = {Length::mm(300)};
    for (int i = 0; i < 5; ++i) {
        field.pieces.push_back({i, 0, 1, 1, i % 2});
    }
    for (const Build build : {Build::EndGrain, Build::LongGrain}) {
        const Plan plan = planned(boardOf(field, build));
        EXPECT_EQ(plan.glueUps, 1);
        EXPECT_THAT(plan.extraJoints, IsEmpty());
    }
}

TEST(Constructions, LongGrainStripesKeepTheirGrainWhole) {
    // As columns two strips would do, but every stripe would end against its neighbour's side.
    Field field;
    field.columns = {square, square, square};
    field.rows = {Length::mm(300)};
    field.pieces = {{0, 0, 1, 1, 0}, {1, 0, 1, 1, 1}, {2, 0, 1, 1, 0}};
    const Plan plan = planned(boardOf(field, Build::LongGrain));
    EXPECT_FALSE(plan.byColumns);
    EXPECT_EQ(plan.strips, 3);
}

TEST(Constructions, ChequerWithAnEvenSideTakesOnePanelAndTheFinalGlueUp) {
    for (const auto& [columns, rows] :
         {std::pair(10, 10), std::pair(8, 7), std::pair(7, 8), std::pair(2, 2)}) {
        const Plan plan = planned(boardOf(chequer(columns, rows)));
        EXPECT_EQ(plan.glueUps, 2) << columns << " x " << rows;
        EXPECT_EQ(plan.panels, 1);
    }
}

TEST(Constructions, ChequerWithAnEvenSideFlipsEveryOtherSlice) {
    const Plan plan = planned(boardOf(chequer(8, 8)));
    for (std::size_t row = 0; row < 8; ++row) {
        EXPECT_EQ(plan.field().uses[row].lay.flipped, row % 2 == 1) << "row " << row;
        EXPECT_TRUE(plan.field().uses[row].lay.stoodUp);
    }
}

TEST(Constructions, ChequerWithBothSidesOddTakesThree) {
    EXPECT_EQ(planned(boardOf(chequer(9, 9))).glueUps, 3);
    EXPECT_EQ(planned(boardOf(chequer(3, 5))).glueUps, 3);
}

// A brick is `b`, mortar `m`; every other course starts with a part brick of (b - m) / 2.
Field mortarCourses(bool partBricks) {
    const Length brick = Length::mm(60);
    const Length mortar = Length::mm(6);
    const Length part = half(brick - mortar);
    // Columns so fine that both courses fall on them: part, mortar, part, part, mortar, part ...
    Field field;
    std::vector<Length> fine;
    for (int i = 0; i < 4; ++i) {
        fine.insert(fine.end(), {part, mortar});
    }
    fine.push_back(part);
    field.columns = fine;
    field.rows = {Length::mm(25), mortar, Length::mm(25), mortar, Length::mm(25)};
    const int last = static_cast<int>(fine.size());
    for (int row = 0; row < 5; ++row) {
        if (row % 2 == 1) {
            field.pieces.push_back({0, row, last, 1, 1});
            continue;
        }
        // Course A: brick over columns 0-2, mortar 3, brick 4-6, mortar 7, part 8; course B
        // mirrored where it ends in part bricks, or the same where bricks stay whole at both ends.
        const bool mirrored = partBricks && row == 2;
        const std::vector<std::pair<int, int>> runs =
            mirrored ? std::vector<std::pair<int, int>>{{1, 0}, {1, 1}, {3, 0}, {1, 1}, {3, 0}}
                     : std::vector<std::pair<int, int>>{{3, 0}, {1, 1}, {3, 0}, {1, 1}, {1, 0}};
        int column = 0;
        for (const auto& [across, wood] : runs) {
            field.pieces.push_back({column, row, across, 1, wood});
            column += across;
        }
    }
    return field;
}

TEST(Constructions, MortarBricksEndingInPartBricksTakeTwo) {
    const Plan plan = planned(boardOf(mortarCourses(true)));
    EXPECT_EQ(plan.glueUps, 2);
    EXPECT_EQ(plan.panels, 1);
    EXPECT_THAT(plan.extraJoints, IsEmpty());
}

TEST(Constructions, BricksOfWholeAndHalfCoursesTakeThree) {
    // Course A of three whole bricks, course B of half, two whole, half: two panels.
    Field field;
    field.columns.assign(6, Length::mm(30));
    field.rows.assign(4, Length::mm(25));
    for (int row = 0; row < 4; ++row) {
        const std::vector<int> spans =
            row % 2 == 0 ? std::vector<int>{2, 2, 2} : std::vector<int>{1, 2, 2, 1};
        int column = 0;
        for (const int span : spans) {
            field.pieces.push_back(
                {column, row, span, 1, static_cast<int>(field.pieces.size()) % 2});
            column += span;
        }
    }
    for (std::size_t i = 0; i < field.pieces.size(); ++i) {
        field.pieces[i].wood = field.pieces[i].column % 4 < 2 ? 0 : 1;
    }
    EXPECT_EQ(planned(boardOf(field)).glueUps, 3);
}

TEST(Constructions, RowsThatShareNothingTakeOnePanelEach) {
    EXPECT_EQ(planned(boardOf(letters({"ABC", "BCA", "CAB"}))).glueUps, 4);
}

TEST(Constructions, SomeSmallPictures) {
    // AB over AC over AD: as columns a strip of A and a panel BCD, where A may be one strip.
    Choices merge;
    merge.mergeLike = true;
    EXPECT_EQ(planned(boardOf(letters({"AB", "AC", "AD"})), 4, merge).glueUps, 2);
    EXPECT_EQ(planned(boardOf(letters({"AAB", "ABA", "BAA"}))).glueUps, 3);
}

TEST(Constructions, OneWoodIsTheMatterOfPiecesNotOfGlue) {
    EXPECT_EQ(planned(boardOf(letters({"A"}))).glueUps, 0);
    EXPECT_EQ(planned(boardOf(letters({"AA", "AA"}))).glueUps, 2);
    Choices merge;
    merge.mergeLike = true;
    const Plan plan = planned(boardOf(letters({"AA", "AA"})), 1, merge);
    EXPECT_EQ(plan.glueUps, 0);
    EXPECT_EQ(plan.omittedJoints.size(), 4U);
}

TEST(Constructions, MergingMakesRowsOfOneWoodPlainStrips) {
    Choices merge;
    merge.mergeLike = true;
    // Rows AAB and BBB: with merging the second is one strip, the first two.
    const Plan plan = planned(boardOf(letters({"AAB", "BBB"})), 2, merge);
    EXPECT_EQ(plan.glueUps, 2);
    EXPECT_EQ(plan.strips, 3);
    EXPECT_EQ(plan.omittedJoints, (std::vector<Joint>{{true, square, Length(), square},
                                                      {true, square, square, square * 2},
                                                      {true, square * 2, square, square * 2}}));
}

TEST(Constructions, InLongGrainRowsOfOneWordShareAPanelWhateverTheirHeight) {
    Field field = letters({"ABC", "CBA", "ABC"});
    field.rows = {Length::mm(30), Length::mm(50), Length::mm(70)};
    Board board = boardOf(field, Build::LongGrain);
    board.grain = GrainDirection::Down;
    EXPECT_EQ(planned(board).glueUps, 2);
    // Stood up, the row height is the thickness of the panel: one panel each.
    board.build = Build::EndGrain;
    Choices rows;
    rows.rows = RowChoice::Rows;
    EXPECT_EQ(planned(board, 3, rows).glueUps, 4);
}

TEST(Constructions, GrainDirectionDecidesBetweenRowsAndColumns) {
    Board board = boardOf(letters({"AB", "AC", "AD"}), Build::LongGrain);
    board.grain = GrainDirection::Down;
    EXPECT_FALSE(planned(board, 4).byColumns);
    board.grain = GrainDirection::Across;
    EXPECT_TRUE(planned(board, 4).byColumns);
    board.grain = GrainDirection::PlannersChoice;
    Choices merge;
    merge.mergeLike = true;
    const Plan best = planned(board, 4, merge);
    EXPECT_TRUE(best.byColumns);
    EXPECT_EQ(best.decidedBy, "Rows need 4 glue-ups, columns 2.");
}

TEST(Constructions, PinwheelIsNeverRefusedButDividesPieces) {
    Field field;
    field.columns.assign(3, square);
    field.rows.assign(3, square);
    field.pieces = {
        {0, 0, 2, 1, 0}, {2, 0, 1, 2, 1}, {0, 1, 1, 2, 1}, {1, 1, 1, 1, 2}, {1, 2, 2, 1, 0}};
    const Plan plan = planned(boardOf(field));
    EXPECT_EQ(plan.extraJoints, (std::vector<Joint>{{false, square, square * 2, square * 3},
                                                    {false, square * 2, Length(), square}}));
}

TEST(Constructions, PartsStandAfterThePartsTheyUse) {
    const Plan plan = planned(boardOf(letters({"ABC", "BCA", "CAB", "CBA"})));
    for (std::size_t i = 0; i < plan.parts.size(); ++i) {
        for (const Use& use : plan.parts[i].uses) {
            EXPECT_LT(use.part, static_cast<int>(i));
            EXPECT_GE(use.part, 0);
        }
    }
    EXPECT_EQ(plan.field().role, Role::Field);
}

}  // namespace
}  // namespace kerfwright
