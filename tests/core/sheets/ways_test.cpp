// The sheets of every way to glue every sample, on both papers, in the languages that are shipped.
#include "core/bench/alternatives.h"
#include "core/board/patterns.h"
#include "core/board/recipe.h"
#include "core/sheets/pages.h"
#include "core/sheets/record.h"
#include "core/sheets/settingrows.h"
#include "tests/core/sheets/samples.h"
#include "tests/core/sheets/wellset.h"
#include "tests/core/words/pofile.h"

#include <gtest/gtest.h>

#include <numeric>

namespace kerfwright {
namespace {

using namespace testing_samples;

/// Every pattern as it begins, in both builds.
std::vector<Sample> everyPattern() {
    std::vector<Sample> all;
    for (const PatternInfo& info : patterns()) {
        Project project = newProject(Unit::Millimetres);
        std::vector<int> woods(static_cast<std::size_t>(info.woods));
        std::iota(woods.begin(), woods.end(), 0);
        Result<Field> field = layOut(
            usualRecipe(info.pattern, Length::mm(400), Length::mm(300), Length::mm(1), woods));
        if (!field) {
            continue;
        }
        project.board.field = std::move(field).value();
        all.push_back({std::string(info.key), project});
        project.board.build = Build::LongGrain;
        project.board.border.width = Length();
        project.notation = Notation::inches(16);
        all.push_back({std::string(info.key) + ", long grain", std::move(project)});
    }
    return all;
}

/// Calls `look` with every way to glue the sample, as a project that has chosen it.
template <class Look>
void everyWay(const Sample& sample, const Look& look) {
    const Project& project = sample.project;
    const Result<Alternatives> ways =
        alternatives(project.board, project.woods, project.shop, project.choices, project.notation,
                     {project.climate, project.glue, project.purpose, project.rates});
    ASSERT_TRUE(ways) << sample.name << ": " << ways.fault().text();
    for (const Alternative& way : ways->all) {
        Project chosen = project;
        chosen.choices = way.choices;
        look(chosen, way.job, sample.name + ", " + way.name);
    }
}

class SheetsOfEveryWay : public testing::TestWithParam<const char*> {};

TEST_P(SheetsOfEveryWay, AreWellSetOnBothPapers) {
    const Speaking language(GetParam());
    std::size_t ways = 0, deep = 0;
    std::vector<Sample> all = samples();
    const std::vector<Sample> more = everyPattern();
    all.insert(all.end(), more.begin(), more.end());
    for (const Sample& sample : all) {
        everyWay(sample, [&](const Project& project, const Job& job, const std::string& name) {
            ++ways;
            deep += Record(job.steps).deep ? 1U : 0U;
            for (const Paper paper : {Paper::A4, Paper::Letter}) {
                expectWellSet(sheets(project, job, paper), paper,
                              name + (paper == Paper::A4 ? ", A4" : ", Letter"));
            }
        });
    }
    EXPECT_GT(ways, samples().size());
    EXPECT_GT(deep, 0U);
}

/// In which block of the settings each step stands; -1 where it sets no machine.
std::vector<int> blocksOfSteps(const Settings& settings, std::size_t steps) {
    std::vector<int> blocks(steps + 1, -1);
    for (std::size_t block = 0; block < settings.blocks.size(); ++block) {
        for (const int step : settings.blocks[block].steps) {
            blocks[static_cast<std::size_t>(step)] = static_cast<int>(block);
        }
    }
    return blocks;
}

/// Whoever sets the machines in the order of the page has the parts of a panel before it is glued.
void expectNoWorkAhead(const Project& project, const Job& job, const std::string& name) {
    const Matter matter{project, job, Paper::A4};
    const Record record(job.steps);
    const std::vector<int> blocks =
        blocksOfSteps(machineSettings(matter, record), job.steps.steps.size());
    const auto lastCut = [&](const std::string& panel, std::size_t before) {
        int last = -1;
        for (std::size_t i = 0; i < before; ++i) {
            const auto* cut = std::get_if<Crosscut>(&job.steps.steps[i].work);
            if (cut != nullptr && cut->part == panel) {
                last = std::max(last, blocks[i + 1]);
            }
        }
        return last;
    };
    for (std::size_t i = 0; i < job.steps.steps.size(); ++i) {
        const auto* glue = std::get_if<Glue>(&job.steps.steps[i].work);
        if (glue == nullptr || glue->final) {
            continue;
        }
        int parts = -1;
        for (const Laid& laid : glue->parts) {
            parts = std::max(parts, lastCut(panelOf(laid.part), i));
        }
        for (std::size_t later = i + 1; later < job.steps.steps.size(); ++later) {
            const auto* flatten = std::get_if<Flatten>(&job.steps.steps[later].work);
            if (flatten != nullptr && flatten->part == glue->result) {
                EXPECT_GT(blocks[later + 1], parts)
                    << name << ": panel " << glue->result << " is flattened in step " << later + 1;
            }
        }
    }
}

TEST(Settings, NeverComeBeforeThePartsThatTheyAreMadeFor) {
    std::size_t together = 0;
    for (const Sample& sample : samples()) {
        everyWay(sample, [&](const Project& project, const Job& job, const std::string& name) {
            const Record record(job.steps);
            together += machineSettings({project, job, Paper::A4}, record).together && record.deep
                            ? 1U
                            : 0U;
            expectNoWorkAhead(project, job, name);
        });
    }
    EXPECT_GT(together, 0U);
}

INSTANTIATE_TEST_SUITE_P(Languages, SheetsOfEveryWay, testing::Values("", "de"),
                         [](const testing::TestParamInfo<const char*>& language) {
                             return std::string(*language.param == '\0' ? "English" : "German");
                         });

}  // namespace
}  // namespace kerfwright
