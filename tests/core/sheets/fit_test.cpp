// That nothing a maker reads is cut off, and that no page goes on from another for a few lines.
#include "core/batch/batch.h"
#include "core/sheets/batchsheets.h"
#include "core/sheets/quotepage.h"
#include "core/sheets/settle.h"
#include "core/timber/demand.h"
#include "core/timber/timber.h"
#include "tests/core/sheets/priced.h"
#include "tests/core/sheets/samples.h"
#include "tests/core/sheets/wellset.h"
#include "tests/core/words/pofile.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

namespace kerfwright {
namespace {

using namespace testing_samples;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;

/// Two planks of every wood: some strips find room on them, others have to be bought.
Rack smallRack(const Project& project) {
    Rack rack;
    for (const Wood& wood : project.woods) {
        for (int i = 0; i < 2; ++i) {
            Plank plank;
            plank.label = "P" + std::to_string(rack.planks.size() + 1);
            plank.wood = wood.key;
            plank.thickness = Length::mm(56);
            plank.width = Length::mm(120 + 40 * i);
            plank.length = Length::mm(1'500);
            plank.note = i == 0 ? "" : "a little twisted at one end, under the window";
            rack.planks.push_back(plank);
        }
    }
    return rack;
}

/// All that can come out of the printer for one project.
std::vector<Page> everyPage(Project project, Paper paper) {
    project.timber.rack = smallRack(project);
    const Job job = jobOf(project);
    const Result<TimberPlan> timber =
        planTimber(demandOf(job.steps, project.woods), project.woods, project.shop, project.timber);
    EXPECT_TRUE(timber) << timber.fault().text();
    std::vector<Page> pages = sheets(project, job, paper, &*timber);
    for (const Project& asked : {project, priced(project)}) {
        const Quote made = quote(job, timberAsSawn(job.totals, asked.woods), asked.pricing,
                                 asked.notation, asked.currency);
        for (const auto& more :
             {reckoningPages(asked, job, made, paper), quotePages(asked, job, made, paper)}) {
            pages.insert(pages.end(), more.begin(), more.end());
        }
    }
    return pages;
}

void expectNothingCutOff(const std::vector<Page>& pages, const std::string& name) {
    for (const Page& page : pages) {
        SCOPED_TRACE(name + ", " + page.key);
        EXPECT_THAT(page.cutOff, IsEmpty());
        for (const Text& text : textsOf(page)) {
            EXPECT_THAT(text.text, Not(testing::EndsWith("…")));
            if (text.maxWidth > 0) {
                EXPECT_LE(textWidth(text.text, text.size, text.bold),
                          text.maxWidth * mostNarrowed + 0.01)
                    << "squeezed: " << text.text;
            }
        }
    }
}

void expectNoneNearlyEmpty(const std::vector<Page>& pages, const std::string& name) {
    for (const Page& page : pages) {
        EXPECT_GT(page.filled, 0.0) << name << ", " << page.key;
        if (page.title.ends_with(say("{1} (continued)", ""))) {
            EXPECT_GE(page.filled, 0.15) << name << ", " << page.key;
        }
    }
}

/// Labels that are words are kept in English and said in the language.
void expectLabelsInTheLanguage(const std::vector<Page>& pages, const std::string& language) {
    for (const Page& page : pages) {
        if (!language.empty()) {
            EXPECT_THAT(wordsOf(page), Not(HasSubstr(" rail"))) << page.key;
            EXPECT_THAT(wordsOf(page), Not(HasSubstr(" tongue"))) << page.key;
        }
    }
}

/// In the picture of a plank that is cut into very small sections the numbers of cuts may touch.
std::vector<Page> withoutCutNumbers(std::vector<Page> pages) {
    for (Page& page : pages) {
        if (page.key.starts_with("plank-cuts")) {
            std::erase_if(page.drawing.marks, [](const Mark& mark) {
                const auto* text = std::get_if<Text>(&mark);
                return text != nullptr &&
                       text->text.find_first_not_of("0123456789") == std::string::npos;
            });
        }
    }
    return pages;
}

TEST(Fit, CutsNothingOffAndLeavesNoPageNearlyEmptyInAnyLanguageOnAnyPaper) {
    for (const Sample& sample : samples()) {
        for (const char* language : {"", "de"}) {
            const Speaking speaking(language);
            for (const Paper paper : {Paper::A4, Paper::Letter}) {
                const std::string name = sample.name + (*language != 0 ? " in German" : "") +
                                         (paper == Paper::A4 ? ", A4" : ", Letter");
                const std::vector<Page> pages = everyPage(sample.project, paper);
                expectNothingCutOff(pages, name);
                expectNoneNearlyEmpty(pages, name);
                expectWellSet(withoutCutNumbers(pages), paper, name);
                expectLabelsInTheLanguage(pages, language);
            }
        }
    }
}

TEST(Fit, HoldsForBoardsMadeTogether) {
    for (const char* language : {"", "de"}) {
        const Speaking speaking(language);
        std::vector<Project> projects;
        for (const Sample& sample : samples()) {
            if (projects.size() < 3) {
                projects.push_back(sample.project);
            }
        }
        projects.front().timber.rack = smallRack(projects.front());
        const Result<Batch> batch = planBatch(projects);
        ASSERT_TRUE(batch) << batch.fault().text();
        for (const Paper paper : {Paper::A4, Paper::Letter}) {
            const std::vector<Page> pages = batchSheets(*batch, paper);
            expectNothingCutOff(pages, "batch");
            expectNoneNearlyEmpty(pages, "batch");
            expectWellSet(withoutCutNumbers(pages), paper, "batch");
            expectLabelsInTheLanguage(pages, language);
        }
    }
}

TEST(Fit, RemembersWhatHadToBeCutOff) {
    Project project = newProject(Unit::Millimetres);
    const std::string longName(400, 'W');
    project.titles.name = longName;
    project.woods.front().name = longName;
    const Job job = jobOf(project);
    const std::vector<Page> pages = sheets(project, job, Paper::A4);
    for (const Page& page : pages) {
        EXPECT_THAT(page.cutOff, testing::Contains(longName)) << page.key;
    }
    EXPECT_GT(pages.front().cutOff.size(), 1U) << "and the wood in the overview";
}

TEST(Fit, ALongNameOfABoardTakesTwoLines) {
    Project project = newProject(Unit::Millimetres);
    project.titles.name = "Chequered board of maple and walnut for the long table in the hall "
                          "of the house at the tarn";
    const Job job = jobOf(project);
    const std::vector<Page> pages = sheets(project, job, Paper::A4);
    for (const Page& page : pages) {
        EXPECT_THAT(page.cutOff, IsEmpty()) << page.key;
        EXPECT_THAT(wordsOf(page), HasSubstr("Chequered board of maple"));
        EXPECT_THAT(wordsOf(page), HasSubstr("at the tarn"));
    }
    expectWellSet(pages, Paper::A4, "long name");
}

TEST(Fit, ANameIsSetSmallerBeforeItIsNarrowedAndNeverBelowNinePoints) {
    const std::string words = "American black walnut, steamed";
    const double wide = textWidth(words, boldText.size, true);
    EXPECT_EQ(madeToFit(words, boldText, wide + 1).size, boldText.size);
    const Tone fit = madeToFit(words, boldText, wide * 0.95);
    EXPECT_LT(fit.size, boldText.size);
    EXPECT_NEAR(textWidth(words, fit.size, true), wide * 0.95, 0.01);
    EXPECT_EQ(madeToFit(words, boldText, wide / 3).size, type::small);
    EXPECT_EQ(madeToFit(words, quietText, 1).size, quietText.size);
}

TEST(Fit, LongNamesOfStepsTakeSeveralLinesInTheOrderOfWork) {
    const Speaking german("de");
    for (const Sample& sample : samples()) {
        const Job job = jobOf(sample.project);
        std::string words;
        for (const Page& page : sheets(sample.project, job, Paper::A4)) {
            words += page.key.starts_with("overview") ? wordsOf(page) : "";
        }
        for (const Step& step : job.steps.steps) {
            EXPECT_THAT(words, HasSubstr(plain(title(step)))) << sample.name;
        }
    }
}

/// Sets paragraphs of a given height, on a sheet with safety words.
class Settling : public testing::Test {
protected:
    std::vector<Draft> settled(const std::vector<double>& heights) const {
        std::vector<Draft> drafts;
        settle(drafts, matter_, [&](std::vector<Draft>& to, const Matter& matter) {
            Flow flow(to, matter, "sheet", "Sheet", Sizes::Finished, Flow::Safety::FirstPage);
            for (const double height : heights) {
                flow.need(height);
                flow.box({flow.left(), flow.y, flow.width(), height}, {.fill = Ink::Band});
                flow.y += height;
            }
        });
        return drafts;
    }

    Project project_ = newProject(Unit::Millimetres);
    Job job_ = jobOf(project_);
    Matter matter_{project_, job_, Paper::A4};
};

TEST_F(Settling, LeavesAFullPageAlone) {
    EXPECT_EQ(settled(std::vector<double>(18, 10)).size(), 1U);
    const std::vector<Draft> two = settled(std::vector<double>(34, 10));
    ASSERT_EQ(two.size(), 2U);
    EXPECT_NEAR(filled(two[0]), 180.0 / 234, 0.05) << "all safety words below it";
    EXPECT_GT(filled(two[1]), 0.6);
}

TEST_F(Settling, ShortensTheSafetyWordsWhereThatSavesAPage) {
    const std::vector<Draft> drafts = settled(std::vector<double>(21, 10));
    ASSERT_EQ(drafts.size(), 1U);
    EXPECT_GT(drafts[0].safetyUpTo, drafts[0].safetyFrom);
    EXPECT_GT(filled(drafts[0]), 0.85);
}

TEST_F(Settling, MovesLinesToALastPageThatWouldHoldAFew) {
    const std::vector<Draft> drafts = settled(std::vector<double>(24, 10));
    ASSERT_EQ(drafts.size(), 2U);
    EXPECT_GE(filled(drafts[1]), 0.25);
    EXPECT_LT(filled(drafts[1]), 0.5) << "no more than it takes";
}

TEST_F(Settling, KeepsAPageNearlyEmptyWhereNothingCanBeMoved) {
    const std::vector<Draft> drafts = settled({190, 190, 10, 190, 30});
    ASSERT_EQ(drafts.size(), 3U);
    EXPECT_LT(filled(drafts[2]), 1.0);
    const std::vector<Draft> unmoved = settled({230, 230, 5});
    ASSERT_EQ(unmoved.size(), 3U);
    EXPECT_LT(filled(unmoved[2]), 0.05);
}

TEST_F(Settling, TheCutListKeepsAllSafetyWords) {
    for (const Sample& sample : samples()) {
        const Job job = jobOf(sample.project);
        for (const Page& page : sheets(sample.project, job, Paper::A4)) {
            if (page.key == "cut-list") {
                EXPECT_THAT(wordsOf(page), Not(HasSubstr("All safety words stand on the cut list")))
                    << sample.name;
                EXPECT_THAT(wordsOf(page), HasSubstr("Safety")) << sample.name;
            }
        }
    }
}

}  // namespace
}  // namespace kerfwright
