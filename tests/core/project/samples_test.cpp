#include "core/glueup/plan.h"
#include "core/project/file.h"
#include "tests/core/project/samples.h"
#include "tests/source.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <set>
#include <sstream>
#include <string>

namespace kerfwright {
namespace {

using ::testing::IsEmpty;

const std::filesystem::path folder = sourceFolder() / "samples";

std::string bytesOf(const std::filesystem::path& path) {
    std::ifstream file(path, std::ios::binary);
    std::ostringstream all;
    all << file.rdbuf();
    return all.str();
}

TEST(Samples, areTheFilesOfTheFolder) {
    std::set<std::string> wanted;
    for (const samples::Sample& sample : samples::all()) {
        wanted.insert(sample.file);
    }
    std::set<std::string> found;
    for (const auto& entry : std::filesystem::directory_iterator(folder)) {
        if (entry.path().extension() == ".kerfwright") {
            found.insert(entry.path().filename());
        }
    }
    EXPECT_EQ(found, wanted);
    EXPECT_GE(wanted.size(), 8U);
}

TEST(Samples, areWrittenAsTheProgramWritesThem) {
    for (const samples::Sample& sample : samples::all()) {
        SCOPED_TRACE(sample.file + ": the target write_samples writes it anew");
        const std::string bytes = bytesOf(folder / sample.file);
        const Result<Project> read = fromBytes(bytes);
        ASSERT_TRUE(read.ok()) << read.fault().text();
        EXPECT_EQ(toBytes(*read), bytes);
        // Files carry their woods with them, so that they may differ from a catalogue that has
        // since learned better.
        Project wanted = sample.project;
        ASSERT_EQ(read->woods.size(), wanted.woods.size());
        for (std::size_t i = 0; i < wanted.woods.size(); ++i) {
            EXPECT_EQ(read->woods[i].key, wanted.woods[i].key);
        }
        wanted.woods = read->woods;
        EXPECT_EQ(*read, wanted);
    }
}

TEST(Samples, areValidAndCanBePlanned) {
    for (const samples::Sample& sample : samples::all()) {
        SCOPED_TRACE(sample.file);
        const Project& project = sample.project;
        EXPECT_THAT(faults(project), IsEmpty());
        const Result<Plan> made = plan(project.board, project.woods, project.shop, project.choices);
        EXPECT_TRUE(made.ok()) << made.fault().text();
    }
}

// Square sizes. Sources: US Chess, 2 in to 2 1/2 in; FIDE, 5 cm to 6 cm (second-hand);
// international draughts, men of 35 mm to 45 mm and squares 5 mm to 7 mm wider (a federation's
// forum). Light square at each player's right hand in chess; dark one at the left in draughts.
TEST(Samples, chessAndDraughtsKeepToPublishedSizes) {
    const auto find = [](const std::string& file) { return readProject(folder / file).value(); };
    const Project chess = find("hut-chess.kerfwright");
    for (const Length side : {chess.board.field.columns[0], chess.board.field.rows[0]}) {
        EXPECT_GE(side, Length::inch(2));
        EXPECT_LE(side, Length::inch(5, 2));
        EXPECT_GE(side, Length::mm(50));
        EXPECT_LE(side, Length::mm(60));
    }
    const Project draughts = find("hut-draughts.kerfwright");
    EXPECT_EQ(draughts.board.field.columns.size(), 10U);
    EXPECT_GE(draughts.board.field.columns[0], Length::mm(35 + 5));
    EXPECT_LE(draughts.board.field.columns[0], Length::mm(45 + 7));

    const auto cornerWood = [](const Project& project, bool right) {
        const auto columns = static_cast<int>(project.board.field.columns.size());
        const auto rows = static_cast<int>(project.board.field.rows.size());
        const int piece = pieceAt(project.board.field, right ? columns - 1 : 0, rows - 1);
        return project
            .woods[static_cast<std::size_t>(
                project.board.field.pieces[static_cast<std::size_t>(piece)].wood)]
            .key;
    };
    EXPECT_EQ(cornerWood(chess, true), "hard-maple");
    EXPECT_EQ(cornerWood(draughts, false), "cherry");
}

}  // namespace
}  // namespace kerfwright
