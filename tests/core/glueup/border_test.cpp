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

// Reckoned by hand from the formulae in borderfit.h. Across the grain 400 mm, growth 4, shrinkage
// 3: the outermost pins stand 40 mm from the edges, 160 from the middle, and there are 2 a side of
// at most 150 mm apart. Slots take pin radius 3 + share of the movement at the pin (160 or 80 of
// 400) + clearance 0.5, rounded up to 0.5.
TEST(Border, PinsOfBreadboardEndsStandInSlotsAsLongAsTheFieldMovesThere) {
    Board board = floating();
    board.build = Build::LongGrain;
    board.thickness = Length::mm(24);
    board.border.width = Length::mm(60);
    board.border.design = BorderDesign::BreadboardEnds;
    const FieldSeason season{Length::mm(4), Length::mm(9), Length::mm(3), Length::mm(9)};
    const Result<BorderFit> fit = fitBorder(board, notesShop(), true, season);
    ASSERT_TRUE(fit.ok()) << fit.fault().text();
    EXPECT_EQ(fit->surround, (Surround{{}, {}, {}, Length::mm(60)}));
    EXPECT_EQ(fit->tongueThickness.value, Length::mm(8));
    EXPECT_EQ(fit->railGroove.value, Length::mm(8));
    EXPECT_EQ(fit->fieldGroove.value, Length::um(16500));
    EXPECT_EQ(fit->tongueWidth.value, Length::mm(24));
    EXPECT_EQ(fit->pinDiameter.value, Length::mm(6));
    EXPECT_EQ(fit->pinFromEdge.value, Length::mm(8));
    struct Known {
        Length at, outward, inward;
    };
    // 3 + 1.6 + 0.5 = 5.1 and 3 + 1.2 + 0.5 = 4.7; 3 + 0.8 + 0.5 = 4.3 and 3 + 0.6 + 0.5 = 4.1.
    const std::vector<Known> pins{{Length::mm(40), Length::um(5500), Length::mm(5)},
                                  {Length::mm(120), Length::um(4500), Length::um(4500)},
                                  {Length::mm(200), Length::mm(3), Length::mm(3)},
                                  {Length::mm(280), Length::um(4500), Length::um(4500)},
                                  {Length::mm(360), Length::um(5500), Length::mm(5)}};
    ASSERT_EQ(fit->pins.size(), pins.size());
    for (std::size_t i = 0; i < pins.size(); ++i) {
        SCOPED_TRACE(i);
        EXPECT_EQ(fit->pins[i].at.value, pins[i].at);
        EXPECT_EQ(fit->pins[i].outward.value, pins[i].outward);
        EXPECT_EQ(fit->pins[i].inward.value, pins[i].inward);
    }
    // Grain across: the ends stand left and right, and what moves is the height.
    const Result<BorderFit> across = fitBorder(board, notesShop(), false, season);
    ASSERT_TRUE(across.ok()) << across.fault().text();
    EXPECT_EQ(across->surround, (Surround{{}, {}, Length::mm(60), {}}));
    // 3 + 9 × 160 / 400 + 0.5 = 7.1
    EXPECT_EQ(across->pins.front().outward.value, Length::um(7500));
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
