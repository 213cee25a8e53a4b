// Allowances worked backwards from the finished board.
//
// Source of the check values: the project's design notes on glue-ups, section 3; each test says
// whether the notes call a value derived or common practice.
#include "tests/core/glueup/boards.h"

#include <gmock/gmock.h>

namespace kerfwright {
namespace {

using namespace test;
using testing::ElementsAre;
using testing::SizeIs;

struct Planned {
    Plan plan;
    StepList list;
};

Planned planned(const Board& board, const Shop& shop,
                const std::vector<Wood>& woods = endlessWoods(3), Choices choices = {}) {
    Result<Plan> made = plan(board, woods, shop, choices);
    EXPECT_TRUE(made.ok()) << (made.ok() ? "" : made.fault().text());
    if (!made) {
        return {};
    }
    return {*made, steps(*made, board, shop)};
}

Field rowsOf(int count, Length height) {
    Field field;
    field.columns = {square, square};
    field.rows.assign(static_cast<std::size_t>(count), height);
    for (int row = 0; row < count; ++row) {
        field.pieces.push_back({0, row, 1, 1, row % 2});
        field.pieces.push_back({1, row, 1, 1, 1 - row % 2});
    }
    return field;
}

Length stripLengthBeforeRounding(const Planned& p) {
    const Figure length = all<Mill>(p.list).front().lines.front().length;
    Length rounding;
    for (const Term& term : length.terms) {
        rounding += term.kind == TermKind::RoundingUp ? term.value : Length();
    }
    return length.value - rounding;
}

TEST(Allowances, CommonPracticeEightRowsAndASpareFrom21Inches) {
    // Common practice, no source: finished 2 in, blade 1/8 in, 1/8 in for refining: slice pitch
    // 2 1/4 in; 8 rows + 1 spare: 20 1/4 in, rounded up to 21 in; with a squaring cut 20 3/8 in.
    Shop shop = inchShop();
    shop.squaringCut = shop.tail = Length();
    shop.trimMargin = Length();
    shop.spareSlices = 1;
    shop.kerf = shop.fieldFlattening = Length::inch(1, 8);
    shop.lengthStep = Length::inch(1);
    Board board = boardOf(rowsOf(8, Length::inch(2)));
    board.thickness = Length::inch(2);
    Planned p = planned(board, shop);
    EXPECT_EQ(stripLengthBeforeRounding(p), Length::inch(81, 4));
    EXPECT_EQ(all<Mill>(p.list).front().lines.front().length.value, Length::inch(21));
    const Crosscut cut = all<Crosscut>(p.list).front();
    EXPECT_EQ(cut.stop.value + cut.kerf.value, Length::inch(9, 4));

    // "With a squaring cut" the notes count its kerf alone.
    shop.squaringCut = Length::nm(1);
    EXPECT_EQ(stripLengthBeforeRounding(planned(board, shop)) - Length::nm(1),
              Length::inch(163, 8));
}

TEST(Allowances, PublishedEightSlicesOfTwoInchesNeed17And1Eighth) {
    // Published lengths for eight 2 in slices say 17, 18 and 20 in; with a 1/8 in blade and a
    // squared end the need is 17 1/8 in (derived in the notes): seven-eighths of an inch for eight
    // kerfs and one more for the squaring cut, no tail.
    Shop shop = inchShop();
    shop.squaringCut = Length::nm(1);
    shop.tail = Length();
    shop.trimMargin = Length();
    shop.fieldFlattening = Length();
    shop.spareSlices = 0;
    shop.kerf = Length::inch(1, 8);
    Board board = boardOf(rowsOf(8, Length::inch(2)), Build::LongGrain);
    board.grain = GrainDirection::Down;
    EXPECT_EQ(stripLengthBeforeRounding(planned(board, shop)) - Length::nm(1),
              Length::inch(137, 8));
}

Shop bareShop() {
    Shop shop = notesShop();
    shop.spareSlices = 0;
    shop.trimMargin = Length();
    return shop;
}

TEST(Allowances, LongGrainLengths) {
    // Derived: k = 3.2, e1 = e2 = 10, s = 0, m = 0: 8 x 50: 448.8 (with m = 3, one panel: 454.8);
    // 8 x 57.15: 506.0.
    Board board = boardOf(rowsOf(8, Length::mm(50)), Build::LongGrain);
    board.grain = GrainDirection::Down;
    EXPECT_EQ(stripLengthBeforeRounding(planned(board, bareShop())), Length::um(448'800));
    Shop margin = bareShop();
    margin.trimMargin = Length::mm(3);
    EXPECT_EQ(stripLengthBeforeRounding(planned(board, margin)), Length::um(454'800));
    board.field = rowsOf(8, Length::um(57'150));
    EXPECT_EQ(stripLengthBeforeRounding(planned(board, bareShop())), Length::mm(506));
}

TEST(Allowances, EndGrainLengths) {
    // Derived: 8 slices, T 40 + 3: 392.8; T 25 + 3: 272.8.
    Board board = boardOf(rowsOf(8, square));
    EXPECT_EQ(stripLengthBeforeRounding(planned(board, bareShop())), Length::um(392'800));
    board.thickness = Length::mm(25);
    EXPECT_EQ(stripLengthBeforeRounding(planned(board, bareShop())), Length::um(272'800));
}

TEST(Allowances, AfterSquaringAndTwoMarginSlices) {
    // Derived ("Limits along the way"): the 392.8 panel is then 287.2 long, the 272.8 one 197.2.
    for (const auto& [thickness, left] : {std::pair(40, 287'200), std::pair(25, 197'200)}) {
        Board board = boardOf(rowsOf(8, square));
        board.thickness = Length::mm(thickness);
        Shop shop = bareShop();
        shop.trimMargin = Length::mm(3);
        shop.lengthStep = Length::um(100);
        const Planned p = planned(board, shop);
        EXPECT_EQ(all<Crosscut>(p.list).front().left, Length::um(left));
    }
}

TEST(Allowances, DraughtsBoardOfTheNotes) {
    // Derived: end grain 10 x 10, squares 45, T 40, k = 3.2, e1 = e2 = 10, m = a_p = a_f = 3, s =
    // 1: strips 8 x 45 and 2 x 48 wide, 51 thick, 531.4 long, rounded up to 540; panel to 48, two
    // margin slices of 43, panel to 45, eight slices and one spare of 43.
    const Planned p = planned(boardOf(chequer(10, 10)), notesShop());
    const Mill mill = all<Mill>(p.list).front();
    int at45 = 0;
    int at48 = 0;
    for (const MillLine& line : mill.lines) {
        EXPECT_EQ(line.thickness.value, Length::mm(51));
        EXPECT_EQ(line.length.value, Length::mm(540));
        EXPECT_EQ(line.roughThickness.value, Length::mm(54));
        EXPECT_EQ(line.roughWidth.value, line.width.value + Length::mm(3));
        (line.width.value == Length::mm(45) ? at45 : at48) += static_cast<int>(line.strips.size());
        EXPECT_TRUE(line.width.value == Length::mm(45) || line.width.value == Length::mm(48));
    }
    EXPECT_EQ(at45, 8);
    EXPECT_EQ(at48, 2);
    EXPECT_EQ(stripLengthBeforeRounding(p), Length::um(531'400));

    const std::vector<Flatten> flattens = all<Flatten>(p.list);
    ASSERT_THAT(flattens, SizeIs(3));
    EXPECT_EQ(flattens[0].from.value, Length::mm(51));
    EXPECT_EQ(flattens[0].to.value, Length::mm(48));
    EXPECT_EQ(flattens[1].to.value, square);
    EXPECT_EQ(flattens[1].purpose, Purpose::RowHeight);
    EXPECT_EQ(flattens[2].from.value, Length::mm(43));
    EXPECT_EQ(flattens[2].to.value, Length::mm(40));
    EXPECT_EQ(flattens[2].face, Face::EndGrain);

    const std::vector<Crosscut> cuts = all<Crosscut>(p.list);
    ASSERT_THAT(cuts, SizeIs(2));
    EXPECT_TRUE(cuts[0].marginRows);
    EXPECT_THAT(cuts[0].slices, ElementsAre("A-1", "A-2"));
    EXPECT_THAT(cuts[0].spares, SizeIs(0));
    EXPECT_EQ(cuts[0].stop.value, Length::mm(43));
    EXPECT_FALSE(cuts[1].marginRows);
    EXPECT_THAT(cuts[1].slices, SizeIs(8));
    EXPECT_THAT(cuts[1].spares, ElementsAre("A-spare"));
    EXPECT_EQ(cuts[1].stop.value, Length::mm(43));

    // The margin slices become the outermost rows.
    EXPECT_EQ(all<Glue>(p.list).back().parts.front().part, "A-1");
    EXPECT_EQ(all<Glue>(p.list).back().parts.back().part, "A-2");
    EXPECT_EQ(all<Glue>(p.list).back().width.value, Length::mm(456));
}

TEST(Allowances, MarginSlicesComeBeforeThePanelGoesDown) {
    const Planned p = planned(boardOf(chequer(10, 10)), notesShop());
    std::size_t margin = 0;
    std::size_t down = 0;
    for (std::size_t i = 0; i < p.list.steps.size(); ++i) {
        if (const auto* cut = std::get_if<Crosscut>(&p.list.steps[i].work);
            cut != nullptr && cut->marginRows) {
            margin = i;
        }
        if (const auto* flatten = std::get_if<Flatten>(&p.list.steps[i].work);
            flatten != nullptr && flatten->purpose == Purpose::RowHeight) {
            down = i;
        }
    }
    EXPECT_GT(margin, 0U);
    EXPECT_GT(down, margin);
}

TEST(Allowances, OneAndThreeQuarterSquaresAreNotMadeFromDressedEightQuarter) {
    // Derived: squares of 1 3/4 in with 1/8 in for flattening need strips 1 7/8 in thick as glued.
    // 8/4 surfaced on two sides is 1 3/4 in, rough 8/4 is 2 in (quarter system, trade.md 1.3).
    Shop shop = inchShop();
    shop.trimMargin = Length();
    shop.panelFlattening = Length::inch(1, 8);
    shop.milling = Length::inch(1, 8);
    Field field = chequer(8, 8);
    field.columns.assign(8, Length::inch(7, 4));
    field.rows.assign(8, Length::inch(7, 4));
    const Board board = boardOf(field);
    const auto strips = [&](Length thickness, Length milling) {
        shop.milling = milling;
        // Width no greater than the thickness, so that standing a strip on edge is no way out.
        return planned(board, shop, endlessWoods(2, {thickness, thickness}));
    };
    EXPECT_THAT(strips(Length::inch(2), Length::inch(1, 8)).plan.extraJoints, SizeIs(0));
    EXPECT_EQ(all<Mill>(strips(Length::inch(2), Length::inch(1, 8)).list)
                  .front()
                  .lines.front()
                  .thickness.value,
              Length::inch(15, 8));
    EXPECT_GT(strips(Length::inch(7, 4), Length()).plan.extraJoints.size(), 0U);
}

TEST(Allowances, BorderRailsRunLongPointToLongPoint) {
    // Derived (trade.md 5.3): 400 square, 50 wide: 4 x 500.
    Board board = boardOf(letters({"AB", "BA"}, Length::mm(200)));
    board.border = {Length::mm(50), 2};
    const Planned p = planned(board, notesShop());
    const std::vector<FitBorder> borders = all<FitBorder>(p.list);
    ASSERT_THAT(borders, SizeIs(1));
    ASSERT_THAT(borders.front().rails, SizeIs(4));
    for (const Rail& rail : borders.front().rails) {
        EXPECT_EQ(rail.longPoint.value, Length::mm(500));
    }
    EXPECT_TRUE(borders.front().mustNotBeGlued);
    EXPECT_EQ(all<Mill>(p.list).back().lines.front().roughWidth.value, Length::mm(53));
}

TEST(Allowances, EveryFigureIsTheSumOfItsWorking) {
    const Planned p = planned(boardOf(chequer(9, 9)), notesShop());
    for (const Mill& mill : all<Mill>(p.list)) {
        for (const MillLine& line : mill.lines) {
            for (const Figure* figure : {&line.roughThickness, &line.roughWidth, &line.roughLength,
                                         &line.thickness, &line.width, &line.length}) {
                EXPECT_EQ(figure->value, figure->sumOfTerms());
            }
        }
    }
}

TEST(Allowances, TheAccountOfTheTimberCloses) {
    Board board = boardOf(chequer(9, 7));
    board.border = {Length::mm(30), 2};
    const Planned p = planned(board, notesShop());
    EXPECT_EQ(p.list.ledger.timberIn, p.list.ledger.out());
    EXPECT_GT(p.list.ledger.board, Volume());
}

TEST(Allowances, OneLongGrainSliceIsFlattenedOnce) {
    // Its panel was made flat and nothing was glued after it; end grain is flattened all the same.
    Field field;
    field.columns = {square, square};
    field.rows = {Length::mm(60)};
    field.pieces = {{0, 0, 1, 1, 0}, {1, 0, 1, 1, 1}};
    Choices rows;
    rows.rows = RowChoice::Rows;
    const Planned lying =
        planned(boardOf(field, Build::LongGrain), notesShop(), endlessWoods(2), rows);
    ASSERT_THAT(all<Flatten>(lying.list), SizeIs(1));
    EXPECT_EQ(all<Flatten>(lying.list).front().to.value, Length::mm(40));
    EXPECT_FALSE(all<Crosscut>(lying.list).front().marginRows);
    EXPECT_EQ(title({all<Crosscut>(lying.list).front()}), "Cut the slice off A");

    const Planned standing = planned(boardOf(field), notesShop(), endlessWoods(2), rows);
    EXPECT_EQ(all<Flatten>(standing.list).back().from.value, Length::mm(43));
}

TEST(Allowances, LongPanelsAreMadeAsSeveral) {
    Shop shop = notesShop();
    shop.longestStrip = Length::mm(300);
    const Planned p = planned(boardOf(chequer(10, 10)), shop);
    EXPECT_EQ(p.plan.glueUps, 2) << "equal panels are one kind of glue-up";
    EXPECT_EQ(p.plan.panels, 1);
    EXPECT_EQ(p.plan.assemblies, 4)
        << "five slices and a spare need 356 mm, so three panels and the field";
    for (const Mill& mill : all<Mill>(p.list)) {
        EXPECT_LE(mill.lines.front().roughLength.value, shop.longestStrip);
    }
}

TEST(Allowances, StripTooShortForASliceIsRefused) {
    Shop shop = notesShop();
    shop.longestStrip = Length::mm(100);
    shop.spareSlices = 5;
    const Result<Plan> made = plan(boardOf(chequer(4, 4)), endlessWoods(2), shop, {});
    ASSERT_FALSE(made.ok());
    EXPECT_EQ(made.fault().entry, "Longest strip");
    EXPECT_EQ(made.fault().value, "100 mm");
}

}  // namespace
}  // namespace kerfwright
