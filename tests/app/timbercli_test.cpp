// The commands about timber, called in this process.
#include "app/cli.h"
#include "tests/app/folder.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <sstream>

namespace kerfwright {
namespace {

using testing::HasSubstr;

struct Called {
    int code = -1;
    std::string out, err;
};

Called call(const std::vector<std::string>& arguments) {
    std::ostringstream out;
    std::ostringstream err;
    const Understood understood = understand(arguments, out, err);
    const int code = understood.request ? carryOut(*understood.request, out, err) : understood.code;
    return {code, out.str(), err.str()};
}

Project board(const char* name) {
    Project project = newProject(Unit::Millimetres);
    project.titles.name = name;
    return project;
}

const char* const table = "label;wood;thickness mm;width mm;length mm;price;defects mm\n"
                          "M1;hard-maple;60;200;2500;80;\"100; 0; 30; 40\"\n"
                          "M2;hard-maple;60;200;2500;80;\n"
                          "W1;black-walnut;60;200;2500;120;\n"
                          "W2;black-walnut;60;200;2500;120;\n"
                          "G1;wenge;60;200;2500;150;\n";

TEST(RackCommand, ImportsAndExportsTheSameTable) {
    const Folder folder;
    const std::string file = folder.write("a.kerfwright", board("A"));
    const Called in = call({"rack", file, "--import", folder.write("rack.csv", table)});
    ASSERT_EQ(in.code, Done) << in.err;
    EXPECT_THAT(in.out, HasSubstr("5 planks on the rack"));
    EXPECT_EQ(readProject(file)->timber.rack.planks[0].defects.size(), 1u);
    const Called out = call({"rack", file, "--export", folder.path("again.csv")});
    ASSERT_EQ(out.code, Done) << out.err;
    ASSERT_EQ(call({"rack", file, "--import", folder.path("again.csv")}).code, Done);
    EXPECT_EQ(readProject(file)->timber.rack.planks.size(), 5u);
}

TEST(RackCommand, ABadTableLeavesTheProjectAsItWas) {
    const Folder folder;
    const std::string file = folder.write("a.kerfwright", board("A"));
    const std::string before = bytesOf(file);
    const Called bad = call({"rack", file, "--import",
                             folder.write("bad.csv", "wood;thickness mm;width mm;length mm\n"
                                                     "ash;30;200;1000\nash;30;-1;1000\n")});
    EXPECT_EQ(bad.code, Problem);
    EXPECT_THAT(bad.err, HasSubstr("Line 3, column 3"));
    EXPECT_EQ(bytesOf(file), before);
    EXPECT_EQ(call({"rack", file}).code, Usage);
    EXPECT_EQ(call({"rack", file, "--import", folder.path("none.csv")}).code, Problem);
}

TEST(TimberCommand, LaysStripsOnTheRackAndWritesTheRackAfter) {
    const Folder folder;
    const std::string file = folder.write("a.kerfwright", board("A"));
    const std::string rack = folder.write("rack.csv", table);
    const Called told = call({"timber", file, "--rack", rack});
    ASSERT_EQ(told.code, Done) << told.err;
    EXPECT_THAT(told.out, HasSubstr("strips and 4 pieces of the border lie on"));
    EXPECT_THAT(told.out, HasSubstr("Proven best"));
    const Called after =
        call({"timber", file, "--rack", rack, "--rack-after", folder.path("after.csv")});
    ASSERT_EQ(after.code, Done) << after.err;
    EXPECT_THAT(bytesOf(folder.path("after.csv")), HasSubstr("yes"));
    const Called json = call({"timber", file, "--rack", rack, "--json"});
    EXPECT_TRUE(nlohmann::json::parse(json.out)["complete"].get<bool>());
}

TEST(TimberCommand, PlansABatchAndWritesOneSetOfSheets) {
    const Folder folder;
    const std::string a = folder.write("a.kerfwright", board("A"));
    const std::string b = folder.write("b.kerfwright", board("B"));
    const Called told = call({"timber", a, b, "--out", folder.path("both.pdf")});
    ASSERT_EQ(told.code, Done) << told.err;
    EXPECT_THAT(bytesOf(folder.path("both.pdf")), testing::StartsWith("%PDF"));
}

TEST(TimberCommand, FindsTheLargestBoardAndTheBoardsThatCanBeMade) {
    const Folder folder;
    const std::string a = folder.write("a.kerfwright", board("A"));
    const std::string rack = folder.write("rack.csv", table);
    const Called largest = call({"timber", a, "--rack", rack, "--largest", "cells"});
    ASSERT_EQ(largest.code, Done) << largest.err;
    EXPECT_THAT(largest.out, HasSubstr("The largest board from this rack has "));
    Project huge = board("Huge");
    huge.board.border.width = Length::mm(150);  // one plank of wenge gives no four such rails
    Project wide = board("Wide");
    wide.board.border.width = Length::mm(250);  // wider than any timber
    const Called each = call({"timber", a, folder.write("b.kerfwright", huge),
                              folder.write("c.kerfwright", wide), "--rack", rack, "--each"});
    ASSERT_EQ(each.code, Done) << each.err;
    EXPECT_THAT(each.out, HasSubstr("yes  A\n"));
    EXPECT_THAT(each.out, testing::ContainsRegex("no   Huge\n       [0-9]+ strips? of .* not fit"));
    EXPECT_THAT(each.out, HasSubstr("no   Wide\n       Board 1, Wide: Border width: "));
    EXPECT_EQ(call({"timber", a, "--largest", "rows"}).code, Usage);
    EXPECT_EQ(call({"timber"}).code, Usage);
}

}  // namespace
}  // namespace kerfwright
