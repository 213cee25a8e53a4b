#include "core/bench/cautions.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

namespace kerfwright {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::Not;

Figure figure(Length length) {
    return Figure{{TermKind::Slices, length, 1}};
}

/// A shop and a job at which no rule finds anything; each test spoils one thing.
class Cautions : public testing::Test {
protected:
    Cautions() {
        woods = {Wood{"maple", "Hard maple", "M", Colour{}, 705, {}, {}},
                 Wood{"walnut", "Black walnut", "W", Colour{}, 610, {}, {}}};
        board.build = Build::LongGrain;
        board.thickness = Length::mm(20);
        board.field = plainGrid(4, 1, Length::mm(50), Length::mm(400), 0);
        shop.kerf = Length::um(3200);
        shop.trimMargin = Length::mm(3);
        shop.squaringCut = Length::mm(10);
        shop.spareSlices = 1;
        shop.sanderWidth = Length::mm(400);
        shop.sanderShortest = Length::mm(200);
        shop.planerShortest = Length::mm(300);
        shop.planerWidth = Length::mm(300);
        conditions.glue.clampForce = 10'000;
        shop.sawDepth = Length::mm(75);
        shop.leastHeld = Length::mm(150);
        shop.sliceShortest = Length::mm(15);
        plan.margin = shop.trimMargin;

        mill = {"A",
                {{0,
                  {"A1", "A2"},
                  {},
                  {},
                  figure(Length::mm(600)),
                  figure(Length::mm(48)),
                  figure(Length::mm(50)),
                  figure(Length::mm(600))}}};
        glue = {"A",
                false,
                GlueAlong::Width,
                {{"A1", {}}, {"A2", {}}},
                figure(Length::mm(100)),
                figure(Length::mm(600)),
                figure(Length::mm(48)),
                Area()};
        cut = {"A",   figure(Length::mm(43)), figure(shop.kerf), {"A-1", "A-2"}, {},
               false, Length::mm(400)};
    }

    std::vector<Caution> found(std::vector<Work> works) const {
        StepList list;
        for (Work& work : works) {
            list.steps.push_back({std::move(work)});
        }
        const BoardMovement movement = movementOf(board, woods, plan.byColumns, conditions.climate);
        return cautions({board, board, woods, shop, choices, conditions, plan, list, movement,
                         glueNeeds(list, woods, conditions.glue), notation});
    }

    /// The one caution with this key; a test failure and an empty caution where it is not so.
    static Caution one(const std::vector<Caution>& all, const std::string& key) {
        std::vector<Caution> with;
        std::copy_if(all.begin(), all.end(), std::back_inserter(with),
                     [&](const Caution& caution) { return caution.key == key; });
        EXPECT_EQ(with.size(), 1u) << key;
        return with.size() == 1 ? with.front() : Caution{};
    }
    static bool has(const std::vector<Caution>& all, const std::string& key) {
        return std::any_of(all.begin(), all.end(),
                           [&](const Caution& caution) { return caution.key == key; });
    }

    Flatten flatten(Length from, Length to) const {
        return {"A", Face::LongGrain, Purpose::AfterGlueUp, figure(from), figure(to)};
    }

    Board board;
    std::vector<Wood> woods;
    Shop shop;
    Choices choices;
    Conditions conditions;
    Plan plan;
    Notation notation = Notation::millimetres(1);
    Mill mill;
    Glue glue;
    Crosscut cut;
};

TEST_F(Cautions, FindNothingInAJobWithRoom) {
    EXPECT_TRUE(found({mill, glue, flatten(Length::mm(51), Length::mm(48)), cut}).empty());
}

// US Wood Handbook (FPL-GTR-190), table 13-5: sugar maple changes by 0.00165 (radial) and 0.00353
// (tangential) per 1 % of moisture; 400 mm over 4 %: 2.6 and 5.6 mm.
TEST_F(Cautions, ABorderRoundEndGrainRestsOnTheMillimetresItMoves) {
    woods[0] = *findWood(woodCatalogue(), "hard-maple");
    board.build = Build::EndGrain;
    board.field = plainGrid(8, 8, Length::mm(50), Length::mm(50), 0);
    board.border = {Length::mm(40), 1};
    const FitBorder border{"Field", {}, figure(Length::mm(40)), {}, {}, true};
    const Caution caution = one(found({mill, border}), "border-moves");
    EXPECT_EQ(caution.severity, Severity::Danger);
    EXPECT_EQ(caution.step, 1);
    EXPECT_THAT(caution.title, HasSubstr("end-grain field"));
    EXPECT_THAT(caution.reason, HasSubstr("from 6 % to 10 % moisture"));
    EXPECT_THAT(caution.reason, HasSubstr("by 2.6 mm to 5.6 mm across and 2.6 mm to 5.6 mm down"));
    EXPECT_THAT(caution.reason, HasSubstr("Rails of Black walnut"));
    EXPECT_THAT(caution.reason, Not(HasSubstr("it may be more")));
    EXPECT_THAT(caution.remedy, HasSubstr("Do not glue this border to the field:"));

    notation = Notation::inches();
    EXPECT_THAT(one(found({mill, border}), "border-moves").reason,
                HasSubstr("by 7/64 in to 7/32 in across"));
}

TEST_F(Cautions, ABorderRoundALongGrainFieldMovesAcrossTheGrain) {
    // The woods of this fixture say nothing of their movement.
    board.border = {Length::mm(40), 1};
    const FitBorder border{"Field", {}, figure(Length::mm(40)), {}, {}, true};
    const Caution caution = one(found({border}), "border-moves");
    EXPECT_THAT(caution.title, HasSubstr("across its grain"));
    EXPECT_THAT(caution.reason, HasSubstr("it may be more"));
}

TEST_F(Cautions, EndGrainNeverGoesThroughAPlaner) {
    const Take take{"Field",
                    {"A-1", {}},
                    figure(Length::mm(400)),
                    figure(Length::mm(400)),
                    figure(Length::mm(43))};
    const Flatten field{"Field", Face::EndGrain, Purpose::Finished, figure(Length::mm(43)),
                        figure(Length::mm(40))};
    const Caution caution = one(found({take, field}), "end-grain-face");
    EXPECT_EQ(caution.severity, Severity::Danger);
    EXPECT_EQ(caution.step, 1);
    EXPECT_THAT(caution.title, HasSubstr("never through a thickness planer"));
    EXPECT_THAT(caution.reason, HasSubstr("3 mm"));
    EXPECT_THAT(caution.remedy, HasSubstr("drum sander"));
    EXPECT_THAT(caution.remedy, HasSubstr("router sled"));
    EXPECT_FALSE(has(found({take, Flatten{"Field", Face::LongGrain, Purpose::Finished,
                                          figure(Length::mm(43)), figure(Length::mm(40))}}),
                     "end-grain-face"));
}

TEST_F(Cautions, TheLastCutLeavesLittleToHold) {
    cut.left = Length::mm(10);
    const Caution caution = one(found({mill, glue, cut}), "little-to-hold");
    EXPECT_EQ(caution.severity, Severity::Danger);
    EXPECT_EQ(caution.step, 2);
    EXPECT_THAT(caution.reason, HasSubstr("53 mm"));  // 43 + 10
    EXPECT_THAT(caution.reason, HasSubstr("150 mm"));
    for (const char* words : {"sled", "stop block", "hold-down clamp", "hands clear",
                              "Never use the rip fence and the mitre gauge together"}) {
        EXPECT_THAT(caution.remedy, HasSubstr(words));
    }
    cut.left = Length::mm(107);  // exactly the least
    EXPECT_FALSE(has(found({mill, glue, cut}), "little-to-hold"));
}

// Derived: a panel of 392.8 mm, squared (10 + 3.2) and two margin slices shorter (2 x (43 + 3.2)),
// is 287.2 mm long when it goes back to the sander; one of 272.8 mm with slices of 28 is 197.2.
// Shop rules and safety sheets on short workpieces say 300 mm or 12 in.
TEST_F(Cautions, APanelIsShortWhenItGoesBackToTheSander) {
    cut.left = Length::um(287'200);
    const Caution usual =
        one(found({mill, glue, cut, flatten(Length::mm(48), Length::mm(45))}), "short-for-sander");
    EXPECT_EQ(usual.severity, Severity::Caution);
    EXPECT_EQ(usual.step, 3);
    EXPECT_THAT(usual.reason, HasSubstr("287.2 mm"));
    EXPECT_THAT(usual.reason, HasSubstr("300 mm"));

    cut.left = Length::um(197'200);
    const Caution own =
        one(found({mill, glue, cut, flatten(Length::mm(48), Length::mm(45))}), "short-for-sander");
    EXPECT_EQ(own.severity, Severity::Danger);
    EXPECT_THAT(own.reason, HasSubstr("197.2 mm"));
    EXPECT_THAT(own.reason, HasSubstr("200 mm"));
}

TEST_F(Cautions, TheShortestToPlaneIsASettingOfTheShop) {
    notation = Notation::inches();
    shop.planerShortest = Length::inch(12);
    cut.left = Length::inch(11);
    EXPECT_THAT(
        one(found({mill, glue, cut, flatten(Length::mm(48), Length::mm(45))}), "short-for-sander")
            .reason,
        HasSubstr("12 in"));
    cut.left = Length::inch(12);
    EXPECT_FALSE(
        has(found({mill, glue, cut, flatten(Length::mm(48), Length::mm(45))}), "short-for-sander"));
}

TEST_F(Cautions, SlicesAreShort) {
    cut.stop = figure(Length::mm(14));
    const Caution caution = one(found({mill, glue, cut}), "short-slices");
    EXPECT_EQ(caution.severity, Severity::Danger);
    EXPECT_THAT(caution.reason, HasSubstr("14 mm"));
    EXPECT_THAT(caution.reason, HasSubstr("15 mm"));
    cut.stop = figure(Length::mm(15));
    EXPECT_FALSE(has(found({mill, glue, cut}), "short-slices"));
}

// 1/4 in is the narrowest rip with the usual push blocks: woodmagazine.com, on cutting thin parts.
TEST_F(Cautions, StripsAreNarrow) {
    mill.lines.front().width = figure(Length::mm(5));
    const Caution caution = one(found({mill, glue}), "narrow-rip");
    EXPECT_EQ(caution.severity, Severity::Danger);
    EXPECT_EQ(caution.step, 0);
    EXPECT_THAT(caution.reason, HasSubstr("2 strips are"));
    EXPECT_THAT(caution.reason, HasSubstr("5 mm"));
    mill.lines.front().width = figure(Length::inch(1, 4));
    EXPECT_FALSE(has(found({mill, glue}), "narrow-rip"));
}

TEST_F(Cautions, APanelIsWiderThanTheSander) {
    glue.width = figure(Length::mm(406));
    const std::vector<Caution> all = found({mill, glue, flatten(Length::mm(51), Length::mm(48)),
                                            flatten(Length::mm(48), Length::mm(45))});
    const Caution caution = one(all, "wide-for-sander");  // once a panel, not once a pass
    EXPECT_EQ(caution.step, 2);
    EXPECT_THAT(caution.title, HasSubstr("Panel A"));
    EXPECT_THAT(caution.reason, HasSubstr("406 mm"));
    EXPECT_THAT(caution.reason, HasSubstr("400 mm"));
}

TEST_F(Cautions, AFieldGoesThroughTheSanderByItsLesserSide) {
    Glue field{"Field",
               true,
               GlueAlong::Down,
               {{"A-1", {}}},
               figure(Length::mm(500)),
               figure(Length::mm(390)),
               figure(Length::mm(43)),
               Area()};
    const Flatten pass{"Field", Face::LongGrain, Purpose::Finished, figure(Length::mm(43)),
                       figure(Length::mm(40))};
    EXPECT_FALSE(has(found({field, pass}), "wide-for-sander"));
    field.length = figure(Length::mm(410));  // untrimmed: margins included
    EXPECT_THAT(one(found({field, pass}), "wide-for-sander").reason, HasSubstr("410 mm"));
}

TEST_F(Cautions, APanelIsThickerThanTheSawCuts) {
    glue.thickness = figure(Length::mm(80));
    const std::vector<Caution> all = found({mill, glue, cut, cut});
    const Caution caution = one(all, "thick-for-saw");
    EXPECT_EQ(caution.step, 2);
    EXPECT_THAT(caution.reason, HasSubstr("80 mm"));
    EXPECT_THAT(caution.reason, HasSubstr("75 mm"));
}

TEST_F(Cautions, AFlattenedPanelIsJudgedByWhatIsLeftOfItsThickness) {
    glue.thickness = figure(Length::mm(78));
    EXPECT_FALSE(
        has(found({mill, glue, flatten(Length::mm(78), Length::mm(75)), cut}), "thick-for-saw"));
}

TEST_F(Cautions, TheShopHasNoAllowances) {
    shop.trimMargin = Length();
    shop.squaringCut = Length();
    shop.spareSlices = 0;
    Part panel;
    panel.role = Role::Panel;
    plan.parts = {panel};
    const Glue field{"Field", true, GlueAlong::Down, {{"A-1", {}}, {"A-2", {}}}, {},
                     {},      {},   Area()};
    EXPECT_FALSE(has(found({mill, glue, cut}), "no-spare-slice"))
        << "a field of one slice has no spare one";
    const std::vector<Caution> all = found({mill, glue, cut, field});
    EXPECT_THAT(one(all, "no-trim-margin").reason, HasSubstr("0 mm"));
    EXPECT_THAT(one(all, "no-trim-margin").remedy, HasSubstr("3 mm"));
    EXPECT_EQ(one(all, "no-trim-margin").step, -1);
    EXPECT_EQ(one(all, "no-squaring-cut").severity, Severity::Caution);
    EXPECT_EQ(one(all, "no-spare-slice").severity, Severity::Note);
    EXPECT_THAT(one(all, "no-spare-slice").reason, HasSubstr("1 panel:"));
}

TEST_F(Cautions, StripsTooShortToPlaneOneByOneAreMilledAsBlanks) {
    shop.planerShortest = Length::mm(300);
    EXPECT_FALSE(has(found({mill}), "short-strips"));
    mill.lines[0].roughLength = figure(Length::mm(299));
    EXPECT_THAT(one(found({mill}), "short-strips").reason, HasSubstr("shortest is 299 mm"));
    mill.lines[0].roughLength = figure(Length::mm(140));
    const Caution caution = one(found({glue, mill}), "short-strips");
    EXPECT_EQ(caution.severity, Severity::Danger);
    EXPECT_THAT(caution.reason, HasSubstr("2 strips are shorter than 300 mm"));
    EXPECT_EQ(caution.step, 1);
}

TEST_F(Cautions, PanelsAlikeMakeOneCaution) {
    std::vector<Work> works;
    for (const char* label : {"A", "B", "C", "D", "E", "F"}) {
        Crosscut one = cut;
        one.part = label;
        one.slices = {std::string(label) + "-1"};
        one.left = Length::mm(label[0] == 'D' ? 7 : 20);
        works.push_back(one);
    }
    const Caution many = one(found(works), "little-to-hold");
    EXPECT_EQ(many.title, "Panels A, B, C, D and 2 more get short at the saw");
    EXPECT_THAT(many.reason, HasSubstr("At the last cut of panel D 50 mm is left"));
    EXPECT_EQ(many.step, 3);
    EXPECT_THAT(many.steps, ElementsAre(0, 1, 2, 3, 4, 5));
    EXPECT_EQ(whichSteps(many), "steps 1, 2, 3, 4, 5 and 6");

    works.resize(3);
    EXPECT_EQ(one(found(works), "little-to-hold").title, "Panels A, B and C get short at the saw");
    works.resize(1);
    EXPECT_EQ(one(found(works), "little-to-hold").title, "Panel A gets short at the saw");
    EXPECT_EQ(whichSteps(one(found(works), "little-to-hold")), "step 1");
}

// The planner parts pieces that the timber cannot give, but not rails.
TEST_F(Cautions, TimberIsTooSmallForTheStripsCutFromIt) {
    woods[0].timber = {Length::mm(50), Length::mm(150)};
    mill.lines[0].roughThickness = figure(Length::mm(50));
    mill.lines[0].roughWidth = figure(Length::mm(51));
    EXPECT_FALSE(has(found({mill}), "thin-stock"));
    mill.lines[0].roughThickness = figure(Length::mm(51));
    const Caution caution = one(found({mill}), "thin-stock");
    EXPECT_EQ(caution.severity, Severity::Danger);
    EXPECT_THAT(caution.reason, HasSubstr("Strips of 51 mm rough are wanted; Hard maple is to be "
                                          "had in 50 mm × 150 mm"));
}

TEST_F(Cautions, RowsOfLongGrainMeetEndToEnd) {
    const Glue last{"Field", true, GlueAlong::Down, {{"A-1", {}}, {"A-2", {}}, {"B-1", {}}}, {},
                    {},      {},   Area()};
    const Caution caution = one(found({last}), "end-to-end");
    EXPECT_EQ(caution.title, "Rows meet end grain to end grain");
    EXPECT_THAT(caution.reason, HasSubstr("2 joints"));
    plan.byColumns = true;
    plan.grainDown = false;
    EXPECT_EQ(one(found({last}), "end-to-end").title, "Columns meet end grain to end grain");
    plan.grainDown = true;  // columns that lie side by side are glued along their grain
    EXPECT_FALSE(has(found({last}), "end-to-end"));
    plan.byColumns = false;
    const Glue inner{"C", false, GlueAlong::Down, {{"A-1", {}}, {"A-2", {}}}, {}, {}, {}, Area()};
    EXPECT_EQ(one(found({inner}), "end-to-end").title, "Parts of C meet end grain to end grain");
    board.build = Build::EndGrain;  // slices are stood up and glued along their grain
    EXPECT_FALSE(has(found({last}), "end-to-end"));
}

TEST_F(Cautions, JointsAreAddedOrLeftOut) {
    plan.extraJoints = {{true, Length::mm(50), {}, Length::mm(50)}};
    EXPECT_THAT(one(found({}), "extra-joints").reason, HasSubstr("1 joint was"));
    plan.omittedJoints = {{true, Length::mm(50), {}, Length::mm(50)},
                          {true, Length::mm(90), {}, Length::mm(50)}};
    EXPECT_THAT(one(found({}), "omitted-joints").reason, HasSubstr("2 joints"));
}

TEST_F(Cautions, StandInOrderOfSeverityThenOfSteps) {
    shop.spareSlices = 0;
    shop.trimMargin = Length();
    cut.left = Length::mm(10);
    cut.stop = figure(Length::mm(14));
    glue.width = figure(Length::mm(500));
    const std::vector<Caution> all =
        found({mill, glue, flatten(Length::mm(51), Length::mm(48)), cut, cut});
    ASSERT_GE(all.size(), 4u);
    EXPECT_TRUE(std::is_sorted(all.begin(), all.end(), [](const Caution& a, const Caution& b) {
        return std::pair(-static_cast<int>(a.severity), a.step) <
               std::pair(-static_cast<int>(b.severity), b.step);
    }));
    EXPECT_EQ(all.front().severity, Severity::Danger);
    EXPECT_EQ(all.back().severity, Severity::Caution);
}

TEST(SafetyWords, NameWhatMattersAndGiveWayToTheManual) {
    std::string all;
    for (const std::string& words : safetyWords()) {
        all += words + "\n";
    }
    for (const char* words :
         {"Guard", "push sticks", "least length", "dust", "thickness planer",
          "rip fence and mitre gauge", "manual", "local rules", "asks a trained person"}) {
        EXPECT_THAT(all, HasSubstr(words));
    }
}

}  // namespace
}  // namespace kerfwright
