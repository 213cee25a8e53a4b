#include "core/timber/demand.h"
#include "core/timber/rackcsv.h"
#include "tests/core/words/spoken.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>

namespace kerfwright {
namespace {

using testing::HasSubstr;

std::string refusal(const std::string& csv) {
    const Result<Rack> rack = rackFromCsv(csv);
    return rack ? "was read" : rack.fault().text();
}

TEST(RackCsv, IsReadWithSemicolonsAndDecimalCommas) {
    const Result<Rack> rack = rackFromCsv("\xEF\xBB\xBF"
                                          "Label;Wood;Thickness (mm);width mm;LENGTH [mm];price;"
                                          "offcut;defects mm;note\r\n"
                                          "A;walnut;26,5;180;2400;41,50;no;"
                                          "\"100; 20; 30; 40 | 900,5; 0; 10; 180\";"
                                          "\"from the \"\"barn\"\"; dry\"\r\n"
                                          "\r\n"
                                          "B;hard-maple;1 1/4 in;200 mm;90 in;;yes;;\r\n");
    ASSERT_TRUE(rack) << rack.fault().text();
    ASSERT_EQ(rack->planks.size(), 2u);
    const Plank& a = rack->planks[0];
    EXPECT_EQ(a.label, "A");
    EXPECT_EQ(a.wood, "walnut");
    EXPECT_EQ(a.thickness, Length::um(26'500));
    EXPECT_EQ(a.price, 4150);
    EXPECT_FALSE(a.isOffcut);
    ASSERT_EQ(a.defects.size(), 2u);
    EXPECT_EQ(a.defects[1],
              (Defect{Length::um(900'500), Length(), Length::mm(10), Length::mm(180)}));
    EXPECT_EQ(a.note, "from the \"barn\"; dry");
    const Plank& b = rack->planks[1];
    EXPECT_EQ(b.thickness, Length::inch(5, 4));
    EXPECT_EQ(b.length, Length::inch(90));
    EXPECT_EQ(b.price, 0);
    EXPECT_TRUE(b.isOffcut);
}

TEST(RackCsv, IsReadWithCommasAndTabsAndCounts) {
    const Result<Rack> commas =
        rackFromCsv("wood,thickness in,width in,length in,count\nwalnut,1,6 1/2,96,3\n");
    ASSERT_TRUE(commas) << commas.fault().text();
    ASSERT_EQ(commas->planks.size(), 3u);
    EXPECT_EQ(commas->planks[2].label, "P1-3");
    EXPECT_EQ(commas->planks[2].width, Length::inch(13, 2));
    const Result<Rack> tabs =
        rackFromCsv("wood\tthickness mm\twidth mm\tlength mm\tnote\noak\t27\t1,5\t2\ta; b\n");
    ASSERT_TRUE(tabs) << tabs.fault().text();
    EXPECT_EQ(tabs->planks[0].width, Length::um(1500));
    EXPECT_EQ(tabs->planks[0].note, "a; b");
}

TEST(RackCsv, TakesThousandsOfRows) {
    std::string csv = "wood;thickness mm;width mm;length mm\n";
    for (int i = 0; i < 5000; ++i) {
        csv += "oak;27;" + std::to_string(100 + i % 100) + ";2500\n";
    }
    const Result<Rack> rack = rackFromCsv(csv);
    ASSERT_TRUE(rack) << rack.fault().text();
    EXPECT_EQ(rack->planks.size(), 5000u);
    EXPECT_EQ(rack->planks[4999].label, "P5000");
    csv += "oak;27;wide;2500\n";
    EXPECT_THAT(refusal(csv), HasSubstr("Line 5002, column 3 (width)"));
}

TEST(RackCsv, RefusesWithLineAndColumn) {
    const std::string head = "wood;thickness mm;width mm;length mm;defects mm;price;count;offcut\n";
    EXPECT_THAT(refusal(""), HasSubstr("Line 1: must name the columns"));
    EXPECT_THAT(refusal("wood;thickness mm;width mm\noak;1;2\n"),
                HasSubstr("Line 1: must have a column \"length\""));
    EXPECT_THAT(refusal("wood;thickness;width mm;length mm\n"),
                HasSubstr("Line 1, column 2 (thickness): must name its unit, mm or in; got none"));
    EXPECT_THAT(refusal("wood;wood;width mm;length mm\n"), HasSubstr("column 2"));
    EXPECT_THAT(refusal("wood;age;width mm;length mm\n"), HasSubstr("got age"));
    EXPECT_THAT(refusal(head + "oak;0;100;1000\n"),
                HasSubstr("Line 2, column 2 (thickness): must be more than 0; got 0 mm"));
    EXPECT_THAT(refusal(head + "\noak;27;100;21 m\n"),
                HasSubstr("Line 3, column 4 (length): must be at most 20000 mm"));
    EXPECT_THAT(refusal(head + "oak;27;;1000\n"), HasSubstr("Line 2, column 3 (width)"));
    EXPECT_THAT(refusal(head + ";27;100;1000\n"), HasSubstr("Line 2, column 1 (wood)"));
    EXPECT_THAT(refusal(head + "oak;27;100;1000;\"990; 0; 20; 10\"\n"),
                HasSubstr("Line 2, column 5 (defects), defect 1: must lie on the plank"));
    EXPECT_THAT(refusal(head + "oak;27;100;1000;\"1; 0; 20\"\n"), HasSubstr("(defects)"));
    EXPECT_THAT(refusal(head + "oak;27;100;1000;;dear\n"),
                HasSubstr("Line 2, column 6 (price): must be an amount"));
    EXPECT_THAT(refusal(head + "oak;27;100;1000;;;1.5\n"),
                HasSubstr("Line 2, column 7 (count): must be a whole number"));
    EXPECT_THAT(refusal(head + "oak;27;100;1000;;;;maybe\n"), HasSubstr("must be yes or no"));
    EXPECT_THAT(refusal(head + "oak;27;100;1000;;;;;x\n"), HasSubstr("Line 2, column 9"));
    EXPECT_THAT(refusal(head + "\"oak;27"), HasSubstr("must close its quotes"));
    EXPECT_THAT(refusal("label;wood;thickness mm;width mm;length mm\nA;o;1;1;1\nA;o;1;1;1\n"),
                HasSubstr("Line 3, column 1 (label): must be on one plank only; got A"));
}

TEST(RackCsv, WritesWhatItReads) {
    Rack rack;
    rack.planks.push_back({"T \"1\"",
                           "oak",
                           Length::nm(26'000'001),
                           Length::inch(13, 2),
                           Length::mm(2'400),
                           {{Length::nm(1), Length::um(20), Length::mm(3), Length::inch(1, 64)}},
                           1205,
                           "wavy;\ntwo lines",
                           true});
    rack.planks.push_back({"W2", "walnut", Length::inch(5, 4), Length::inch(6), Length::inch(96)});
    for (const Unit unit : {Unit::Millimetres, Unit::Inches}) {
        const Result<Rack> again = rackFromCsv(rackToCsv(rack, unit));
        ASSERT_TRUE(again) << again.fault().text();
        EXPECT_EQ(*again, rack) << rackToCsv(rack, unit);
    }
}

TEST(RackCsv, IsWrittenWithPointsInEveryLanguage) {
    Rack rack;
    rack.planks.push_back(
        {"W1", "walnut", Length::um(32'500), Length::mm(150), Length::nm(2'000'000'001), {}, 1205});
    const std::string english = rackToCsv(rack, Unit::Millimetres);
    const std::string inches = rackToCsv(rack, Unit::Inches);
    const Spoken german(Entries{{"decimal mark\4.", ","}});
    EXPECT_EQ(formatMoney(1205), "12,05") << "the language is spoken";
    EXPECT_EQ(rackToCsv(rack, Unit::Millimetres), english);
    EXPECT_EQ(rackToCsv(rack, Unit::Inches), inches);
}

TEST(Rack, TakesThePriceOfItsWoodWhereItHasNone) {
    Wood oak;
    oak.key = "oak";
    oak.price = {1'000'00};  // 1000 for a cubic metre
    Rack rack;
    rack.planks.push_back({"A", "oak", Length::mm(50), Length::mm(200), Length::mm(2'000)});
    rack.planks.push_back({"B", "oak", Length::mm(50), Length::mm(200), Length::mm(2'000), {}, 7});
    rack.planks.push_back({"C", "ash", Length::mm(50), Length::mm(200), Length::mm(2'000)});
    rack = priced(rack, {oak});
    EXPECT_EQ(rack.planks[0].price, 2000);
    EXPECT_EQ(rack.planks[1].price, 7);
    EXPECT_EQ(rack.planks[2].price, 0);
}

TEST(Demand, IsWhatTheStepsMill) {
    const auto line = [](std::vector<std::string> strips, int wood, int width) {
        MillLine mill;
        mill.wood = wood;
        mill.strips = std::move(strips);
        mill.roughThickness.value = Length::mm(30);
        mill.roughWidth.value = Length::mm(width);
        mill.roughLength.value = Length::mm(540);
        return mill;
    };
    StepList steps;
    steps.steps.push_back({Mill{"A", {line({"A1", "A3"}, 0, 48), line({"A2"}, 1, 48)}}});
    steps.steps.push_back({Mill{"B", {line({"B1"}, 0, 48), line({"B2"}, 0, 51)}}});
    Wood oak;
    oak.key = "oak";
    Wood ash;
    ash.key = "ash";
    const Demand demand = demandOf(steps, {oak, ash});
    ASSERT_EQ(demand.strips.size(), 3u);
    EXPECT_EQ(demand.strips[0].label, "A1, A3, B1");
    EXPECT_EQ(demand.strips[0].count, 3);
    EXPECT_EQ(demand.strips[0].wood, "oak");
    EXPECT_EQ(demand.strips[1].wood, "ash");
    EXPECT_EQ(demand.strips[2].width, Length::mm(51));
    EXPECT_EQ(together({demand, demand}).strips[0].count, 6);
}

TEST(Demand, AndRulesNameWhatIsWrong) {
    Demand demand;
    demand.strips.push_back({"A1", "", Length(), Length::mm(10), Length::mm(10), 0});
    EXPECT_EQ(faults(demand).size(), 3u);
    CutRules rules;
    rules.kerf = Length::mm(-1);
    rules.offcutPercent = 101;
    ASSERT_EQ(faults(rules).size(), 2u);
    EXPECT_EQ(faults(rules)[0].text(), "Kerf: must be from 0 to 3000 mm; got -1 mm.");
}

}  // namespace
}  // namespace kerfwright
