#include "core/glueup/steps.h"
#include "tests/core/glueup/boards.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace kerfwright {
namespace {

using namespace test;

Board floating() {
    Board board = boardOf(letters({"AB", "BA"}, Length::mm(200)));
    board.border = {Length::mm(50), 0};
    board.border.design = BorderDesign::FloatingFrame;
    return board;
}

FitBorder borderOf(const StepList& list) {
    const auto at = std::find_if(list.steps.begin(), list.steps.end(), [](const Step& step) {
        return std::holds_alternative<FitBorder>(step.work);
    });
    return std::get<FitBorder>(at->work);
}

// The project's notes on glue-ups, section on borders: field 400, gap 2.5, rail 50.
TEST(Border, RailsOfTheCheckValueAre505LongPointToLongPoint) {
    Board board = floating();
    board.border.gap = Length::um(2500);
    const Result<Plan> made = plan(board, endlessWoods(2), notesShop(), {});
    ASSERT_TRUE(made.ok()) << made.fault().text();
    const FitBorder border = borderOf(steps(*made, board, notesShop()));
    EXPECT_EQ(border.boardWidth.value, Length::mm(505));
    for (const Rail& rail : border.rails) {
        EXPECT_EQ(rail.longPoint.value, Length::mm(505));
    }
}

// Trade notes: 400 mm of maple and walnut over 4 % move 5.0 mm, 2.5 mm a side; with the clearance
// of 0.5 mm the gap is 3 mm.
TEST(Border, TheGapIsHalfOfTheGrowthAndAClearance) {
    const FieldSeason season{Length::mm(5), Length::mm(4), Length::mm(3), Length::mm(3)};
    const Result<BorderFit> fit = fitBorder(floating(), notesShop(), true, season);
    ASSERT_TRUE(fit.ok()) << fit.fault().text();
    EXPECT_EQ(fit->gapX.value, Length::mm(3));
    EXPECT_EQ(fit->gapY.value, Length::um(2500));
    // gap 3 + hold 5 + half of 3
    EXPECT_EQ(fit->fieldGroove.value, Length::um(9500));
    EXPECT_EQ(fit->tongueWidth.value, Length::um(17500));
    EXPECT_EQ(fit->surround,
              (Surround{Length::mm(3), Length::um(2500), Length::mm(50), Length::mm(50)}));
}

TEST(Border, DesignsThatDoNotSuitTheBuildAreRefused) {
    Board board = floating();
    board.border.design = BorderDesign::BreadboardEnds;
    EXPECT_EQ(fitBorder(board, notesShop(), true, {}).fault().entry, "Border");
    board.build = Build::LongGrain;
    EXPECT_TRUE(fitBorder(board, notesShop(), true, {}).ok());
    board.border.design = BorderDesign::EndGrainBand;
    EXPECT_EQ(fitBorder(board, notesShop(), true, {}).fault().entry, "Border");
}

TEST(Border, AnEndGrainBandIsARingOfPieces) {
    Board board = floating();
    board.border.design = BorderDesign::EndGrainBand;
    const Board glued = asGlued(board);
    EXPECT_TRUE(faults(glued, 2).empty());
    EXPECT_EQ(glued.field.pieces.size(), 16U);
    EXPECT_EQ(glued.field.width(), Length::mm(500));
    EXPECT_FALSE(glued.border.isThere());
}

}  // namespace
}  // namespace kerfwright
