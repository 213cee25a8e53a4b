#include "core/sheets/hourwords.h"
#include "core/sheets/sheets.h"
#include "tests/core/sheets/samples.h"

#include <gtest/gtest.h>

namespace kerfwright {
namespace {

using testing_samples::jobOf;
using testing_samples::Sample;
using testing_samples::samples;

/// All words of a page in the order in which they were set.
std::string wordsOf(const Page& page) {
    std::string all;
    for (const Mark& mark : page.drawing.marks) {
        if (const auto* text = std::get_if<Text>(&mark)) {
            all += text->text + " ";
        }
    }
    return all;
}

TEST(HourSheet, TellsTheTimeOfEveryStepBySessions) {
    for (const Sample& sample : samples()) {
        const Job job = jobOf(sample.project);
        const std::vector<Page> pages = sheets(sample.project, job, Paper::A4);
        std::string words, overview;
        for (const Page& page : pages) {
            words += page.key.starts_with("hours") ? wordsOf(page) : "";
            overview += page.key.starts_with("overview") ? wordsOf(page) : "";
        }
        EXPECT_NE(words.find(totalWords(job.hours)), std::string::npos) << sample.name;
        EXPECT_NE(overview.find("≈ " + totalWords(job.hours)), std::string::npos) << sample.name;
        std::size_t at = 0;
        for (const BenchSession& session : job.hours.sessions) {
            for (const int index : session.tasks) {
                const BenchTask& task = job.hours.tasks[static_cast<std::size_t>(index)];
                at = words.find(task.title + " " + timeWords(task.minutes), at);
                ASSERT_NE(at, std::string::npos) << sample.name << ", " << task.title;
                at = words.find(termWords(task.terms.front()), at);
                ASSERT_NE(at, std::string::npos) << sample.name << ", " << task.title;
            }
        }
    }
}

TEST(HourWords, AreAsFineAsSuchFiguresAre) {
    EXPECT_EQ(timeWords(0), "0 min");
    EXPECT_EQ(timeWords(0.2), "1 min");
    EXPECT_EQ(timeWords(48.9), "49 min");
    EXPECT_EQ(timeWords(59.4), "59 min");
    EXPECT_EQ(timeWords(59.6), "1 h");
    EXPECT_EQ(timeWords(63), "1 h 05 min");
    EXPECT_EQ(timeWords(406), "6 h 45 min");
    EXPECT_EQ(timeWords(20 * 60 - 1), "20 h");
    EXPECT_EQ(timeWords(5801), "97 h");
    EXPECT_EQ(termWords({"of milling passes", "m", 21.6, 0.25, "mill-minutes"}),
              "21.6 m of milling passes × 0.25 min");
    EXPECT_EQ(termWords({"rips", "", 20, 1, "rip-minutes"}), "20 rips × 1 min");
}

TEST(HourWords, NameStepsAndWhatIsWaitedFor) {
    BenchHours hours;
    for (int step = 0; step < 8; ++step) {
        BenchTask task;
        task.step = step;
        task.wait = step == 1 || step == 4 ? BenchWait::Glue : BenchWait::None;
        hours.tasks.push_back(task);
    }
    BenchTask coat;
    coat.wait = BenchWait::Finish;
    hours.tasks.insert(hours.tasks.end(), 2, coat);
    BenchSession session;
    session.tasks = {0, 1, 2, 3, 5, 7, 8};
    session.waitsFor = {1, 4};
    session.day = session.lastDay = 2;
    EXPECT_EQ(taskWords(hours, session), "steps 1–4, 6, 8; coat 1");
    EXPECT_EQ(waitWords(hours, session), "the glue of steps 2, 5 has set");
    EXPECT_EQ(dayWords(session), "day 2");
    session.tasks = {5};
    session.waitsFor = {8};
    session.waitsForClamps = true;
    session.lastDay = 4;
    EXPECT_EQ(taskWords(hours, session), "step 6");
    EXPECT_EQ(waitWords(hours, session), "coat 1 is dry and the clamps are free");
    EXPECT_EQ(dayWords(session), "days 2–4");
}

}  // namespace
}  // namespace kerfwright
