// Recipes in a project and in its file.
#include "core/project/file.h"
#include "tests/source.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>

namespace kerfwright {
namespace {

using ::testing::HasSubstr;
using ::testing::Not;

Project laidWith(Pattern pattern, Unit unit = Unit::Millimetres) {
    Project project = newProject(unit);
    const Length side = unit == Unit::Inches ? Length::inch(15) : Length::mm(375);
    project.recipe = usualRecipe(pattern, side, side, ruleStep(unit), {2, 0, 1});
    project.board.field = layOut(*project.recipe).value();
    return project;
}

/// The file of a field of bricks with the first `from` replaced.
std::string spoilt(const std::string& from, const std::string& to) {
    std::string bytes = toBytes(laidWith(Pattern::MortarBricks));
    const std::size_t at = bytes.find(from, bytes.find("\"recipe\""));
    if (at == std::string::npos) {
        ADD_FAILURE() << "not in the file: " << from;
        return bytes;
    }
    return bytes.replace(at, from.size(), to);
}

std::string faultOf(const std::string& bytes) {
    const Result<Project> read = fromBytes(bytes);
    return read ? "none" : read.fault().text();
}

TEST(RecipeFile, ReadsBackEveryPattern) {
    for (const PatternInfo& info : patterns()) {
        for (const Unit unit : {Unit::Millimetres, Unit::Inches}) {
            const Project project = laidWith(info.pattern, unit);
            ASSERT_TRUE(faults(project).empty()) << info.key << faults(project).front().text();
            const Result<Project> read = fromBytes(toBytes(project));
            ASSERT_TRUE(read) << read.fault().text();
            EXPECT_EQ(*read, project) << info.key;
            EXPECT_EQ(toBytes(*read), toBytes(project)) << info.key;
        }
    }
}

TEST(RecipeFile, IsWrittenAsItIsDescribed) {
    EXPECT_THAT(toBytes(laidWith(Pattern::MortarBricks)),
                HasSubstr("  \"recipe\": {\n"
                          "    \"pattern\": \"mortar-bricks\",\n"
                          "    \"width-nm\": 375000000,\n"
                          "    \"height-nm\": 375000000,\n"
                          "    \"step-nm\": 100000,\n"
                          "    \"woods\": [\"cherry\", \"hard-maple\", \"black-walnut\"],\n"
                          "    \"numbers\": {\n"
                          "      \"across\": 3,\n"
                          "      \"down\": 6,\n"
                          "      \"mortar-nm\": 8000000\n"
                          "    }\n"
                          "  },\n"));
}

TEST(RecipeFile, IsMissingFromFreeFieldsAndOlderFiles) {
    Project project = newProject(Unit::Millimetres);
    ASSERT_TRUE(project.recipe);
    project.recipe.reset();
    EXPECT_THAT(toBytes(project), Not(HasSubstr("recipe")));
    EXPECT_EQ(fromBytes(toBytes(project)).value(), project);
    const Result<Project> old =
        readProject(sourceFolder() / "tests/core/project/fixtures/version-1.kerfwright");
    ASSERT_TRUE(old);
    EXPECT_FALSE(old->recipe);
}

TEST(RecipeFile, IsRefusedInWords) {
    EXPECT_THAT(faultOf(spoilt("\"mortar-bricks\"", "\"bricklayer\"")),
                HasSubstr("recipe.pattern: must be one of stripes, pinstripes, chequer, "));
    EXPECT_EQ(faultOf(spoilt("\"across\": 3", "\"across\": 65")),
              "recipe.numbers.across: must be from 1 to 64; got 65.");
    EXPECT_EQ(faultOf(spoilt("\"across\": 3", "\"across\": 40")),
              "recipe: Bricks a course: must be from 1 to 15 with this pattern; got 40.");
    EXPECT_EQ(
        faultOf(spoilt("\"across\": 3", "\"across\": 4")),
        "recipe: Field: must be what its recipe lays out, or have no recipe; got another field.");
    EXPECT_EQ(faultOf(spoilt("\"mortar-nm\": 8000000", "\"mortar-nm\": 1")),
              "recipe.numbers.mortar-nm: must be from 2 mm to 1500 mm; got 1 nm.");
    EXPECT_EQ(faultOf(spoilt(",\n      \"mortar-nm\": 8000000", "")),
              "recipe.numbers.mortar-nm: must be given; got nothing.");
    EXPECT_EQ(faultOf(spoilt("\"cherry\"", "\"ebony\"")),
              "recipe.woods[0]: must be the key of one of the woods of this file; got “ebony”.");
    EXPECT_EQ(faultOf(spoilt("\"step-nm\": 100000", "\"step-nm\": 0")),
              "recipe.step-nm: must be from 0.000001 mm to 1 mm; got 0 nm.");
}

TEST(RecipeFile, WhatWasUnknownOfItGoesWithIt) {
    const Result<Project> read = fromBytes(spoilt("\"numbers\": {", "\"tilt\": 4, \"numbers\": {"));
    ASSERT_TRUE(read) << read.fault().text();
    EXPECT_EQ(read->unknownKeys, R"({"recipe": {"tilt": 4}})");
    EXPECT_EQ(fromBytes(toBytes(*read)).value(), *read);
    Project freed = *read;
    freed.recipe.reset();
    const Result<Project> again = fromBytes(toBytes(freed));
    ASSERT_TRUE(again) << again.fault().text();
    EXPECT_FALSE(again->recipe);
    EXPECT_EQ(again->unknownKeys, "");
}

TEST(ProjectRecipe, FollowsTheFieldOrIsDropped) {
    Project project = newProject(Unit::Millimetres);
    project.board.field = resized(project.board.field, 10, 8);
    settleRecipe(project);
    ASSERT_TRUE(project.recipe);
    EXPECT_EQ(project.recipe->counts, (std::vector<int>{10, 8}));
    EXPECT_EQ(project.recipe->width, Length::mm(500));
    project.board.field.pieces.front().wood = 2;
    EXPECT_EQ(faults(project).front().entry, "Field");
    settleRecipe(project);
    EXPECT_FALSE(project.recipe);
    EXPECT_TRUE(faults(project).empty());
}

TEST(ProjectRecipe, HasWoodsOfTheProjectOnly) {
    Project project = newProject(Unit::Millimetres);
    project.recipe->counts = {1, 1};
    project.recipe->woods = {0, 9};
    project.board.field = layOut(*project.recipe).value();
    ASSERT_EQ(faults(project).size(), 1u);
    EXPECT_EQ(faults(project).front().text(),
              "Wood of the recipe: must be one of the 6 woods of the project; got wood number 10.");
}

}  // namespace
}  // namespace kerfwright
