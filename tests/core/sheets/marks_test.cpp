// The decimal mark on paper and in the texts of the command line follows the language; what other
// programs read does not.
#include "core/batch/batch.h"
#include "core/bench/alternatives.h"
#include "core/sheets/batchsheets.h"
#include "core/sheets/planjson.h"
#include "core/sheets/quotepage.h"
#include "core/sheets/timbertext.h"
#include "core/sheets/ways.h"
#include "tests/core/sheets/samples.h"
#include "tests/core/sheets/wellset.h"
#include "tests/core/words/pofile.h"
#include "tests/core/words/points.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

namespace kerfwright {
namespace {

using namespace testing_samples;
using testing::ElementsAreArray;
using testing::HasSubstr;
using testing::IsEmpty;
using Json = nlohmann::json;

/// With something to tell in every place that knows of money, and lengths off the whole millimetre.
Project withDecimals(Project project) {
    for (Wood& wood : project.woods) {
        wood.price = {151'255};
    }
    project.currency = "€";
    project.pricing.benchHour = 3'850;
    project.pricing.glueKilogram = 1'235;
    project.pricing.finishLitre = 2'449;
    project.pricing.selling = 12'500;
    project.pricing.tax = 8'875;
    project.climate = {8.5, 5.5, 12.5};
    project.shop.kerf = Length::um(2'800);
    project.notation = Notation::millimetres();
    return project;
}

Quote askedFor(const Project& project, const Job& job) {
    return quote(job, timberAsSawn(job.totals, project.woods), project.pricing, project.notation,
                 project.currency);
}

Alternatives waysToGlue(const Project& project) {
    return alternatives(project.board, project.woods, project.shop, project.choices,
                        project.notation,
                        {project.climate, project.glue, project.purpose, project.rates})
        .value();
}

void expectNoPoints(const std::vector<Page>& pages, const std::string& name) {
    for (const Page& page : pages) {
        EXPECT_THAT(pointedNumbers(wordsOf(page)), IsEmpty()) << name << ", " << page.key;
    }
}

TEST(Marks, InGermanPaperAndTextHaveNoDecimalPoint) {
    const Speaking german("de");
    for (const Sample& sample : samples()) {
        for (const Unit unit : {Unit::Millimetres, Unit::Inches}) {
            Project project = withDecimals(sample.project);
            project.notation.unit = unit;
            const Job job = jobOf(project);
            const Quote made = askedFor(project, job);
            const std::string plan = planText(project, job);
            EXPECT_THAT(plan, HasSubstr(","));
            EXPECT_THAT(pointedNumbers(plan), IsEmpty()) << sample.name;
            EXPECT_THAT(pointedNumbers(quoteText(project, made)), IsEmpty()) << sample.name;
            EXPECT_THAT(pointedNumbers(waysText(project, waysToGlue(project))), IsEmpty())
                << sample.name;
            expectNoPoints(sheets(project, job, Paper::A4), sample.name);
            expectNoPoints(reckoningPages(project, job, made, Paper::A4), sample.name);
            expectNoPoints(quotePages(project, job, made, Paper::A4), sample.name);
        }
    }
}

TEST(Marks, InGermanTheTimberOfBoardsHasNoDecimalPoint) {
    const Speaking german("de");
    const Result<Batch> batch = planBatch({withDecimals(samples().front().project)});
    ASSERT_TRUE(batch) << batch.fault().text();
    EXPECT_THAT(timberText(*batch), HasSubstr(","));
    EXPECT_THAT(pointedNumbers(timberText(*batch)), IsEmpty());
    expectNoPoints(batchSheets(*batch, Paper::A4), "batch");
}

TEST(Marks, EnglishKeepsItsPoint) {
    const Project project = withDecimals(samples().front().project);
    EXPECT_THAT(pointedNumbers(planText(project, jobOf(project))), testing::Not(IsEmpty()));
}

/// The texts of all that stands for a single number.
void addNumbers(const Json& json, std::vector<std::string>& all) {
    if (json.is_object() && json.contains("text") &&
        (json.contains("nm") || json.contains("nm2") || json.contains("nm3") ||
         json.contains("hundredths"))) {
        all.push_back(json.at("text").get<std::string>());
    }
    for (const Json& inner : json) {
        if (inner.is_structured()) {
            addNumbers(inner, all);
        }
    }
}

TEST(Marks, JsonKeepsThePointInEveryLanguage) {
    const Project project = withDecimals(samples().front().project);
    const auto numbers = [&] {
        const Job job = jobOf(project);
        std::vector<std::string> all;
        addNumbers(Json::parse(planJson(project, job)), all);
        const Json asked = Json::parse(quoteJson(project, job, askedFor(project, job)));
        addNumbers(asked, all);
        for (const Json& line : asked.at("lines")) {
            if (line.at("key") == "timber") {
                all.push_back(line.at("quantity").at("text").get<std::string>());
            }
        }
        for (const char* side : {"width", "height", "thickness"}) {
            all.push_back(asked.at("size").at(side).get<std::string>());
        }
        const Json ways = Json::parse(waysJson(project, waysToGlue(project)));
        for (const Json& way : ways.at("ways")) {
            all.push_back(way.at("timberIn").get<std::string>());
        }
        return all;
    };
    const std::vector<std::string> english = numbers();
    EXPECT_GT(english.size(), 20U);
    const Speaking german("de");
    EXPECT_THAT(numbers(), ElementsAreArray(english));
}

}  // namespace
}  // namespace kerfwright
