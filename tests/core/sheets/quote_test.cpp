#include "core/sheets/quotepage.h"
#include "tests/core/sheets/priced.h"
#include "tests/core/sheets/samples.h"
#include "tests/core/sheets/wellset.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

namespace kerfwright {
namespace {

using namespace testing_samples;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;
using Json = nlohmann::json;

Quote quoteOf(const Project& project, const Job& job) {
    return quote(job, timberAsSawn(job.totals, project.woods), project.pricing, project.notation,
                 project.currency);
}

std::string allWords(const std::vector<Page>& pages) {
    std::string all;
    for (const Page& page : pages) {
        all += wordsOf(page);
    }
    return all;
}

TEST(QuotePages, AreWellSetForEverySampleOnBothPapersInBothUnits) {
    for (const Sample& sample : samples()) {
        for (const bool known : {false, true}) {
            for (const Unit unit : {Unit::Millimetres, Unit::Inches}) {
                Project project = known ? priced(sample.project) : sample.project;
                project.notation.unit = unit;
                project.pricing.boards = known ? 3 : 1;
                const Job job = jobOf(project);
                const Quote made = quoteOf(project, job);
                for (const Paper paper : {Paper::A4, Paper::Letter}) {
                    const auto reckoning = reckoningPages(project, job, made, paper);
                    const auto handed = quotePages(project, job, made, paper);
                    expectWellSet(reckoning, paper, sample.name);
                    expectWellSet(handed, paper, sample.name);
                    EXPECT_EQ(handed.size(), 1U) << sample.name;
                    EXPECT_LE(reckoning.size(), 2U) << sample.name;
                }
            }
        }
    }
}

TEST(QuotePages, BearLongTextsAndManyWoods) {
    Sample sample = randomBoard(12, Length::mm(30), 7, Unit::Millimetres);
    Project project = priced(sample.project);
    project.titles.note = std::string(3000, 'x');
    for (std::size_t at = 9; at < project.titles.note.size(); at += 10) {
        project.titles.note[at] = ' ';
    }
    project.titles.name = project.pricing.customer = project.pricing.validUntil =
        "A very long name " + std::string(300, 'w');
    project.currency = "New Shillings";
    project.pricing.benchHour = 999'999'999;
    project.pricing.boards = 1000;
    const Wood more = project.woods.front();
    while (project.woods.size() < 32) {
        project.woods.push_back(more);
        project.woods.back().key = "wood-" + std::to_string(project.woods.size());
        project.woods.back().letter =
            "X" + std::string(1, static_cast<char>('A' + project.woods.size() % 26));
    }
    int wood = 0;
    for (Piece& piece : project.board.field.pieces) {
        piece.wood = wood++ % 32;
    }
    const Job job = jobOf(project);
    const Quote made = quoteOf(project, job);
    for (const Paper paper : {Paper::A4, Paper::Letter}) {
        expectWellSet(reckoningPages(project, job, made, paper), paper, "long");
        expectWellSet(quotePages(project, job, made, paper), paper, "long");
    }
}

TEST(QuotePages, TheReckoningShowsEveryLineWithItsWorking) {
    const Project project = priced(samples().front().project);
    const Job job = jobOf(project);
    const Quote made = quoteOf(project, job);
    const std::string words = allWords(reckoningPages(project, job, made, Paper::A4));
    for (const QuoteLine& line : made.lines) {
        EXPECT_THAT(words, HasSubstr(line.words));
        EXPECT_THAT(words, HasSubstr(moneyWords(*line.amount, "€")));
        if (!line.isSum) {
            EXPECT_THAT(words, HasSubstr(line.working));
        }
    }
    EXPECT_THAT(words, Not(HasSubstr("Incomplete")));
}

TEST(QuotePages, WhatIsHandedOverTellsThePriceAndNoneOfTheReckoning) {
    const Project project = priced(samples().front().project);
    const Job job = jobOf(project);
    const Quote made = quoteOf(project, job);
    const std::string words = allWords(quotePages(project, job, made, Paper::A4));
    for (const std::string& told :
         {moneyWords(made.asked, "€"), moneyWords(made.tax, "€"), moneyWords(made.total, "€"),
          std::string("Tax, 8.875 %"), project.pricing.customer, project.pricing.validUntil,
          project.titles.maker, project.titles.date, format(job.totals.width, project.notation)}) {
        EXPECT_THAT(words, HasSubstr(told));
    }
    for (const char* kept : {"Overhead", "Profit", "Bench work", "Glue", "Selling"}) {
        EXPECT_THAT(words, Not(HasSubstr(kept)));
    }
}

TEST(QuotePages, WhatIsHandedOverCanBeSigned) {
    const Project project = priced(samples().front().project);
    const Job job = jobOf(project);
    const std::string words = allWords(quotePages(project, job, quoteOf(project, job), Paper::A4));
    EXPECT_THAT(words, HasSubstr("Ordered, date and name"));
    EXPECT_THAT(words, HasSubstr(project.titles.maker));
}

TEST(QuotePages, ThePictureLeavesOutJointsThatOnlyTheMakerNeeds) {
    std::size_t withJoints = 0;
    for (const Sample& sample : samples()) {
        const Project project = priced(sample.project);
        const Job job = jobOf(project);
        withJoints += job.plan.extraJoints.empty() ? 0U : 1U;
        for (const Page& page : quotePages(project, job, quoteOf(project, job), Paper::A4)) {
            for (const Mark& mark : page.drawing.marks) {
                const Ink ink = std::visit([](const auto& one) { return one.style.line; }, mark);
                EXPECT_NE(ink, Ink::ExtraJoint) << sample.name;
            }
        }
    }
    EXPECT_GT(withJoints, 0U);
}

// Whatever number of lines fills the page before: the total comes with what it is the sum of.
TEST(QuotePages, TheTotalNeverStandsAloneOnAPage) {
    const Project project = priced(samples().front().project);
    const Job job = jobOf(project);
    Quote made = quoteOf(project, job);
    const std::size_t items = made.lines.size();
    std::size_t twoPages = 0;
    for (int more = 0; more < 24; ++more) {
        made.lines.insert(made.lines.begin(), made.lines.front());
        for (const Paper paper : {Paper::A4, Paper::Letter}) {
            const std::vector<Page> pages = reckoningPages(project, job, made, paper);
            expectWellSet(pages, paper, "longer");
            const std::string last = wordsOf(pages.back());
            EXPECT_THAT(last, HasSubstr(made.lines.back().words));
            for (std::size_t i = 1; i <= 5; ++i) {
                EXPECT_THAT(last, HasSubstr(made.lines[made.lines.size() - i].words))
                    << made.lines.size() << " lines";
            }
            twoPages += pages.size() > 1 ? 1U : 0U;
        }
    }
    EXPECT_GT(items, 5U);
    EXPECT_GT(twoPages, 10U);
}

TEST(QuotePages, NoPriceIsHandedOverWhereOneIsNotKnown) {
    Project project = priced(samples().front().project);
    project.pricing.benchHour.reset();
    const Job job = jobOf(project);
    const Quote made = quoteOf(project, job);
    const std::string words = allWords(quotePages(project, job, made, Paper::A4));
    EXPECT_THAT(words, HasSubstr("Not a quote yet"));
    EXPECT_THAT(words, HasSubstr("the price of a bench hour"));
    EXPECT_THAT(words, Not(HasSubstr(moneyWords(made.total, "€"))));
    EXPECT_THAT(words, Not(HasSubstr("sums"))) << "there are none";
    EXPECT_THAT(words, Not(HasSubstr("Ordered, date and name"))) << "nothing to sign yet";
    EXPECT_THAT(allWords(reckoningPages(project, job, made, Paper::A4)),
                HasSubstr("The sums are without it"));
    EXPECT_THAT(quoteText(project, made), HasSubstr("not known  Bench work\n"));
    EXPECT_THAT(quoteText(project, made), HasSubstr(incompleteWords(made)));
}

TEST(QuoteJson, SaysAllThatTheReckoningSays) {
    for (const Sample& sample : samples()) {
        Project project = priced(sample.project);
        project.pricing.glueKilogram.reset();
        const Job job = jobOf(project);
        const Quote made = quoteOf(project, job);
        const Json json = Json::parse(quoteJson(project, job, made));
        EXPECT_EQ(json.at("format"), "kerfwright-quote");
        EXPECT_EQ(json.at("version"), 1);
        EXPECT_EQ(json.at("project").at("revision"), revision(project));
        EXPECT_EQ(json.at("complete"), false);
        EXPECT_EQ(json.at("missing").size(), 1U);
        for (const PriceSetting& setting : priceSettings()) {
            EXPECT_TRUE(json.at("pricing").contains(setting.key)) << setting.key;
        }
        EXPECT_EQ(json.at("pricing").at("bench-hour").at("hundredths"), 3'850);
        EXPECT_TRUE(json.at("pricing").at("glue-kilogram").is_null());
        EXPECT_EQ(json.at("pricing").at("tax-percent"), 8.875);
        EXPECT_EQ(json.at("pricing").at("rounding"), "five");
        ASSERT_EQ(json.at("lines").size(), made.lines.size());
        std::int64_t sum = 0;
        for (std::size_t i = 0; i < made.lines.size(); ++i) {
            const Json& line = json.at("lines")[i];
            EXPECT_EQ(line.at("key"), made.lines[i].key);
            const std::int64_t amount =
                line.at("amount").is_null()
                    ? 0
                    : line.at("amount").at("hundredths").get<std::int64_t>();
            if (line.at("sum") == true) {
                EXPECT_EQ(amount, sum) << sample.name << ", " << line.at("key");
            } else {
                sum += amount;
                EXPECT_THAT(line.at("working").get<std::string>(), Not(IsEmpty()));
            }
        }
        EXPECT_EQ(json.at("totals").at("total").at("hundredths"), sum);
    }
}

}  // namespace
}  // namespace kerfwright
