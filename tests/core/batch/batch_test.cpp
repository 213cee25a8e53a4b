// Several boards at once: one shop, one rack.
#include "core/batch/batch.h"
#include "core/sheets/batchsheets.h"
#include "core/sheets/timbertext.h"
#include "core/timber/demand.h"
#include "core/timber/referee.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <algorithm>

namespace kerfwright {
namespace {

using testing::HasSubstr;

Project named(const char* name) {
    Project project = newProject(Unit::Millimetres);
    project.titles.name = name;
    return project;
}

TEST(Batch, LaysTheStripsOfAllBoardsOnOneRack) {
    Project first = named("First");
    for (int i = 0; i < 12; ++i) {
        for (const char* wood : {"hard-maple", "black-walnut", "wenge"}) {
            first.timber.rack.planks.push_back({std::string(wood) + std::to_string(i), wood,
                                                Length::mm(60), Length::mm(200),
                                                Length::mm(2'500)});
        }
    }
    const Result<Batch> alone = planBatch({first});
    ASSERT_TRUE(alone) << alone.fault().text();
    const Result<Batch> both = planBatch({first, named("Second")});
    ASSERT_TRUE(both) << both.fault().text();
    EXPECT_TRUE(both->timber.layout.isComplete());
    int one = 0;
    int two = 0;
    for (const WantedStrips& strips : alone->timber.demand.strips) {
        one += strips.count * (strips.isRail ? 0 : 1);
    }
    std::vector<std::string> labels;
    for (const WantedStrips& strips : both->timber.demand.strips) {
        two += strips.count * (strips.isRail ? 0 : 1);
        const std::vector<std::string> more = labelsOf(strips);
        labels.insert(labels.end(), more.begin(), more.end());
    }
    EXPECT_EQ(two, 2 * one);
    EXPECT_THAT(labels, testing::Contains("1: A1"));
    EXPECT_THAT(labels, testing::Contains("2: A1"));
    EXPECT_TRUE(layoutFaults(both->timber.layout, both->timber.rack, both->timber.demand,
                             both->timber.rules)
                    .empty());
}

TEST(Batch, TakesTheShopOfTheFirst) {
    Project first = named("First");
    first.shop.kerf = Length::mm(5);
    const Result<Batch> batch = planBatch({first, named("Second")});
    ASSERT_TRUE(batch);
    EXPECT_EQ(batch->boards[1].project.shop.kerf, Length::mm(5));
    EXPECT_EQ(batch->timber.rules.kerf, Length::mm(5));
}

TEST(Batch, NamesTheBoardThatCannotBePlanned) {
    Project bad = named("Thin");
    bad.board.thickness = Length::mm(1);
    const Result<Batch> batch = planBatch({named("First"), bad});
    ASSERT_FALSE(batch);
    EXPECT_THAT(batch.fault().entry, HasSubstr("Board 2, Thin: "));
    EXPECT_FALSE(planBatch({}));
    EXPECT_FALSE(planBatch(std::vector<Project>(mostBoards + 1, named("Many"))));
}

TEST(Batch, SheetsShareSettingsAndThenGoBoardByBoard) {
    const Result<Batch> batch = planBatch({named("First"), named("Second")});
    ASSERT_TRUE(batch);
    const std::vector<Page> pages = batchSheets(*batch, Paper::A4);
    ASSERT_GT(pages.size(), 4u);
    EXPECT_EQ(pages[0].key, "batch");
    const auto shared = std::find_if(
        pages.begin(), pages.end(), [](const Page& page) { return page.key == "shared-settings"; });
    ASSERT_NE(shared, pages.end());
    const auto count = [&](const std::string& start) {
        return std::count_if(pages.begin(), pages.end(),
                             [&](const Page& page) { return page.key.starts_with(start); });
    };
    const auto own = static_cast<std::ptrdiff_t>(
        sheets(batch->boards[0].project, batch->boards[0].job, Paper::A4).size());
    EXPECT_EQ(count("board-1-"), own);
    EXPECT_EQ(count("board-2-"), own);
    // Equal boards share every setting: each is on the page once, for both.
    int both = 0;
    for (const Mark& mark : shared->drawing.marks) {
        if (const Text* text = std::get_if<Text>(&mark)) {
            both += text->text.starts_with("2: ") ? 1 : 0;
            both -= text->text.starts_with("1: ") ? 1 : 0;
        }
    }
    EXPECT_EQ(both, 0);
    EXPECT_GT(count("shopping"), 0);
    EXPECT_GT(count("timber"), 0);
}

TEST(Batch, TextAndJsonSayWhatIsMissingAndWhatToBuy) {
    const Result<Batch> batch = planBatch({named("First"), named("Second")});
    ASSERT_TRUE(batch);
    const std::string text = timberText(*batch);
    EXPECT_THAT(text, HasSubstr("1: First; 2: Second"));
    EXPECT_THAT(text, HasSubstr("Nothing is on the rack: all strips have to be bought."));
    EXPECT_THAT(text, HasSubstr(" do not fit: buy "));
    EXPECT_THAT(text, HasSubstr("To buy"));
    EXPECT_THAT(text, HasSubstr("÷ (1 − 33 %)"));
    const auto json = nlohmann::json::parse(timberJson(*batch));
    EXPECT_EQ(json["format"], "kerfwright-timber");
    EXPECT_EQ(json["boards"].size(), 2u);
    EXPECT_FALSE(json["complete"].get<bool>());
    EXPECT_EQ(json["shopping"]["lines"].size(), batch->timber.shopping.lines.size());
    int missing = 0;
    for (const auto& line : json["wanted"]) {
        missing += line["missing"].get<int>();
    }
    EXPECT_GT(missing, 0);
}

}  // namespace
}  // namespace kerfwright
