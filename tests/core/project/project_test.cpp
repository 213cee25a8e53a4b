#include "core/project/project.h"

#include <climits>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cstdint>
#include <limits>
#include <string>
#include <vector>

namespace kerfwright {
namespace {

using ::testing::Contains;
using ::testing::ElementsAre;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::SizeIs;

TEST(NewProject, isAChequerInTheUnitAskedFor) {
    const Project metric = newProject(Unit::Millimetres);
    EXPECT_THAT(faults(metric), IsEmpty());
    EXPECT_EQ(metric.notation, Notation::millimetres());
    EXPECT_EQ(metric.shop, metricShop());
    EXPECT_EQ(sizeOf(metric.board, surroundOf(metric.board, true, {}, {})).width,
              Length::mm(8 * 50 + 2 * 40));
    EXPECT_EQ(metric.board.thickness, Length::mm(38));

    const Project inches = newProject(Unit::Inches);
    EXPECT_THAT(faults(inches), IsEmpty());
    EXPECT_EQ(inches.notation, Notation::inches());
    EXPECT_EQ(inches.shop, inchShop());
    EXPECT_EQ(sizeOf(inches.board, surroundOf(inches.board, true, {}, {})).width,
              Length::inch(8 * 2 + 3));
    EXPECT_EQ(inches.board.thickness, Length::inch(3, 2));

    EXPECT_EQ(inches.board.field.pieces.size(), 64U);
    EXPECT_EQ(inches.woods[0].key, "hard-maple");
    EXPECT_EQ(inches.woods[1].key, "black-walnut");
    EXPECT_GT(inches.woods.size(), 4U) << "a few more to paint with";
}

TEST(ProjectFaults, chainTheFaultsOfEveryPart) {
    Project project = newProject(Unit::Millimetres);
    project.titles.note.assign(10'001, 'x');
    project.titles.maker = "Tarn \xFF";
    project.notation.denominator = 3;
    project.notation.decimals = 7;
    project.board.thickness = Length::nm(INT64_MIN);
    project.woods[1].density = std::numeric_limits<double>::quiet_NaN();
    project.shop.kerf = Length();
    project.shop.spareSlices = INT_MAX;
    project.unknownKeys = "[1]";
    std::vector<std::string> entries;
    for (const Fault& fault : faults(project)) {
        entries.push_back(fault.entry);
    }
    EXPECT_THAT(entries, ElementsAre("Maker", "Note", "Finest fraction", "Decimals", "Thickness",
                                     HasSubstr("density"), "Kerf", "Spare slices", "Unknown keys"));
}

TEST(ProjectFaults, limitTheTextsOfAWood) {
    for (const auto& spoil : std::vector<std::string& (*)(Wood&)>{
             [](Wood& wood) -> std::string& { return wood.botanical; },
             [](Wood& wood) -> std::string& { return wood.reactions; },
             [](Wood& wood) -> std::string& { return wood.food; },
             [](Wood& wood) -> std::string& { return wood.sources.shrinkage; },
             [](Wood& wood) -> std::string& { return wood.sources.food; }}) {
        Project project = newProject(Unit::Millimetres);
        spoil(project.woods[2]) = std::string(10'001, 'x');
        EXPECT_THAT(faults(project), SizeIs(1));
        spoil(project.woods[2]) = "\xFF";
        EXPECT_THAT(faults(project), SizeIs(1));
    }
}

TEST(ProjectFaults, countWoods) {
    Project project = newProject(Unit::Millimetres);
    project.woods.clear();
    EXPECT_THAT(faults(project), Contains(Fault{"Woods", "must be from 1 to 32", "0"}));
}

}  // namespace
}  // namespace kerfwright
