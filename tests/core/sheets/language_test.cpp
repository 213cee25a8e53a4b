// What must not depend on the language that is spoken, and how longer words are set.
#include "core/sheets/columns.h"
#include "core/sheets/film.h"
#include "core/sheets/filmscene.h"
#include "core/sheets/flow.h"
#include "core/sheets/hourwords.h"
#include "core/sheets/settingrows.h"
#include "core/words/catalogue.h"
#include "tests/core/sheets/samples.h"
#include "tests/core/sheets/wellset.h"
#include "tests/core/words/catalogue.h"

#include <gtest/gtest.h>

namespace kerfwright {
namespace {

using namespace testing_samples;

/// Some German for the length of one test.
class Language : public testing::Test {
protected:
    static void speakGerman() {
        auto words = Catalogue::read(machineForm({
            {"", "Plural-Forms: nplurals=2; plural=(n != 1);\n"},
            {"Top rail", "Obere Leiste"},
            {"{1} to {2}", "{1} bis {2}"},
            {"Day {1}", "Tag {1}"},
            {"Later", "Später"},
            {"Width, {1}", "Breite, {1}"},
            {"Thickness, {1}", "Dicke, {1}"},
            {"Stop, {1}", "Anschlag, {1}"},
            {"Mill the strips", "Streifen aushobeln"},
            {"Flatten the panels", "Tafeln abrichten"},
            {"Square one end", "Ein Ende winklig sägen"},
            {"Cut slices", "Abschnitte sägen"},
            {"cuts above, slices below; length to scale",
             "oben die Schnitte, unten die Abschnitte; die Länge ist maßstäblich gezeichnet, die "
             "Breite nicht"},
            {"Rough sizes as glued, in {1}",
             "Rohmaße, so wie die Teile verleimt werden, und zwar allesamt in {1}"},
            {"Wrong: nothing flipped", "Falsch: kein Abschnitt ist umgedreht worden"},
            {"Gap above and below, each side", "Luft oberhalb und unterhalb, auf jeder der Seiten"},
        }));
        ASSERT_TRUE(words);
        speak(std::make_shared<const Catalogue>(std::move(*words)));
    }
    ~Language() override { speak(nullptr); }
};

TEST_F(Language, LabelsOfTheBorderAreWords) {
    EXPECT_EQ(labelList({"Top rail", "A1"}), "Top rail, A1");
    speakGerman();
    EXPECT_EQ(labelList({"Top rail", "A1"}), "Obere Leiste, A1");
    EXPECT_EQ(labelList({"A-1", "A-2", "A-3"}), "A-1 bis A-3");
}

TEST_F(Language, DaysBeginWithACapitalWhereTheLanguageWantsIt) {
    BenchSession session;
    EXPECT_EQ(dayTitle(session), "Later");
    session.day = session.lastDay = 2;
    EXPECT_EQ(dayTitle(session), "Day 2");
    speakGerman();
    EXPECT_EQ(dayTitle(session), "Tag 2");
}

TEST_F(Language, LeavesTheOrderOfTheSettingsAlone) {
    const Sample sample = randomBoard(20, Length::inch(3, 4), 2, Unit::Inches);
    const Job job = jobOf(sample.project);
    const Matter matter{sample.project, job, Paper::A4};
    const Record record(job.steps);
    const auto steps = [&] {
        const Settings settings = machineSettings(matter, record);
        EXPECT_TRUE(settings.together);
        std::vector<std::vector<int>> all;
        for (const SettingBlock& block : settings.blocks) {
            all.push_back(block.steps);
        }
        return all;
    };
    const auto english = steps();
    speakGerman();
    EXPECT_EQ(steps(), english);
}

TEST_F(Language, LeavesTheWorkingsOfDimensionsAlone) {
    const auto numbers = [] {
        std::vector<int> all;
        for (const Sample& sample : samples()) {
            const Film film = makeFilm(sample.project, jobOf(sample.project));
            for (int stage = 0; stage < static_cast<int>(film.stages.size()); ++stage) {
                for (const SceneSize& size : sceneOf(film, stage).sizes) {
                    all.push_back(size.number);
                }
            }
        }
        return all;
    };
    const std::vector<int> english = numbers();
    speakGerman();
    EXPECT_EQ(numbers(), english);
}

TEST_F(Language, LongerWordsFindRoom) {
    speakGerman();
    for (const Sample& sample : samples()) {
        const Job job = jobOf(sample.project);
        expectWellSet(sheets(sample.project, job, Paper::A4), Paper::A4, sample.name);
    }
}

TEST(Columns, CountCharacters) {
    EXPECT_EQ(columnsOf("0.0093 m³"), 9U);
    EXPECT_EQ(leftAligned("für", 5), "für  ");
    EXPECT_EQ(rightAligned("≈ 3", 5), "  ≈ 3");
    EXPECT_EQ(rightAligned("longer", 5), "longer");
}

TEST(Fitted, BreaksOnlyWhatIsMuchTooWide) {
    const std::string words = "glued from the columns of the field";
    const double width = textWidth(words, type::small, false);
    EXPECT_EQ(fitted(words, smallText, width).size(), 1U);
    EXPECT_EQ(fitted(words, smallText, width * 0.95).size(), 1U);
    EXPECT_EQ(fitted(words, smallText, width * 0.85).size(), 2U);
}

TEST(Sentences, LeaveOutThoseThatAreEmpty) {
    EXPECT_EQ(sentences({"One.", "", "Two."}), "One. Two.");
    EXPECT_EQ(sentences({"", "Two."}), "Two.");
}

}  // namespace
}  // namespace kerfwright
