#include "core/project/file.h"
#include "core/replay/replay.h"
#include "tests/core/replay/mutants.h"
#include "tests/core/replay/randomboard.h"
#include "tests/source.h"

#include <gtest/gtest.h>

#include <array>
#include <filesystem>

namespace kerfwright {
namespace {

using namespace test;

struct Tally {
    int wrong = 0;
    std::array<int, static_cast<std::size_t>(Harmless::Count)> harmless{};
};

void judgeAll(const Job& job, Tally& tally) {
    ASSERT_TRUE(replay(job.list, job.board, job.mergeLike, job.season).ok()) << job.name;
    int failures = 0;
    forEachMutant(
        job, [&](const std::string& what, const StepList& list, std::optional<Harmless> harmless) {
            const Proof proof = replay(list, job.board, job.mergeLike, job.season);
            if (harmless) {
                ++tally.harmless[static_cast<std::size_t>(*harmless)];
            } else {
                ++tally.wrong;
            }
            if (proof.ok() != harmless.has_value() && ++failures <= 20) {
                ADD_FAILURE() << what
                              << (harmless ? std::string(" should pass: ") + reason(*harmless) +
                                                 "; but: " + proof.faults.front()
                                           : std::string(" passed the bench"));
            }
        });
}

TEST(Mutants, OfHandBuiltListsFailUnlessHarmlessByName) {
    Tally tally;
    for (const Job& job : handBuilt()) {
        judgeAll(job, tally);
    }
    EXPECT_GT(tally.wrong, 1500);
    for (std::size_t i = 0; i < tally.harmless.size(); ++i) {
        EXPECT_GT(tally.harmless[i], 0) << "never met: " << reason(static_cast<Harmless>(i));
    }
}

TEST(Mutants, OfPlannedListsFailUnlessHarmlessByName) {
    Tally tally;
    int planned = 0;
    int bands = 0;
    for (std::uint64_t seed = 1; planned < (underSanitizers ? 20 : 400); ++seed) {
        const RandomBoard wish =
            randomBoard(seed, 1 + static_cast<int>(seed % 7), 1 + static_cast<int>(seed / 7 % 5));
        const Board glued = asGlued(wish.board);
        const Result<Plan> made =
            plan(glued, wish.woods, wish.shop, wish.choices, Notation::millimetres(3), wish.season);
        if (made) {
            ++planned;
            bands += wish.board.border.has(BorderDesign::EndGrainBand) ? 1 : 0;
            judgeAll({"random board " + std::to_string(seed), glued, steps(*made, glued, wish.shop),
                      wish.choices.mergeLike, wish.season},
                     tally);
        }
    }
    EXPECT_GT(tally.wrong, planned * 200);
    EXPECT_GT(bands, planned / 50) << "bands of end grain are among them";
}

TEST(Mutants, OfTheSamplesFailUnlessHarmlessByName) {
    Tally tally;
    int samples = 0;
    for (const auto& entry : std::filesystem::directory_iterator(sourceFolder() / "samples")) {
        if (entry.path().extension() != ".kerfwright") {
            continue;
        }
        SCOPED_TRACE(entry.path());
        ++samples;
        const Result<Project> project = readProject(entry.path());
        ASSERT_TRUE(project.ok()) << project.fault().text();
        const Result<Plan> made =
            plan(project->board, project->woods, project->shop, project->choices);
        ASSERT_TRUE(made.ok()) << made.fault().text();
        judgeAll({entry.path().stem(), project->board, steps(*made, project->board, project->shop),
                  project->choices.mergeLike},
                 tally);
    }
    EXPECT_GE(samples, 6);
    EXPECT_GT(tally.wrong, samples * 200);
}

}  // namespace
}  // namespace kerfwright
