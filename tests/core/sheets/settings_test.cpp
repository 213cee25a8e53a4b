// The rows of the machine settings and the words for what they are set for.
#include "core/sheets/settingrows.h"
#include "tests/core/sheets/samples.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <set>

using namespace kerfwright;
using namespace kerfwright::testing_samples;

TEST(Settings, SortTheirPartsSoThatNeighboursJoin) {
    for (const Sample& sample : samples()) {
        const Job job = jobOf(sample.project);
        const Matter matter{sample.project, job, Paper::A4};
        for (const SettingBlock& block : machineSettings(matter, Record(job.steps)).blocks) {
            for (const SettingRow& row : block.rows) {
                EXPECT_TRUE(std::is_sorted(row.parts.begin(), row.parts.end(), labelBefore))
                    << sample.name << ", " << block.title << ", " << row.name;
            }
        }
    }
}

TEST(Settings, ArePutTogetherInWords) {
    EXPECT_EQ(partList({"A1", "A2", "A3"}), "A1–A3");
    EXPECT_EQ(partList({"A"}), "panel A");
    EXPECT_EQ(partList({"A", "B", "C", "Z", "AA"}), "each of panels A–C, Z, AA");
    EXPECT_EQ(partList({"Top rail", "Bottom rail", "Left rail", "Right rail"}), "all four rails");
    EXPECT_EQ(partList({"Field"}), "Field");
}

// What nothing comes off in milling is cut to length once.
TEST(Settings, SetNoStopTwiceForOneLength) {
    const Project project = newProject(Unit::Millimetres);
    const Job job = jobOf(project);
    const Matter matter{project, job, Paper::A4};
    for (const SettingBlock& block : machineSettings(matter, Record(job.steps)).blocks) {
        std::set<Length> lengths;
        for (const SettingRow& row : block.rows) {
            if (row.name.ends_with(" length") && row.name != "Slice length") {
                EXPECT_TRUE(lengths.insert(row.value).second) << row.name;
            }
        }
    }
}

TEST(LabelList, CountsAsPanelsAreCounted) {
    EXPECT_TRUE(labelBefore("A2", "A10"));
    EXPECT_TRUE(labelBefore("Z", "AA"));
    EXPECT_TRUE(labelBefore("A", "B"));
    EXPECT_FALSE(labelBefore("B1", "A9"));
    EXPECT_FALSE(labelBefore("Top rail", "Bottom rail"));
    EXPECT_FALSE(labelBefore("Bottom rail", "Top rail"));
}

TEST(LabelList, PutsNeighboursTogether) {
    EXPECT_EQ(labelList({}), "");
    EXPECT_EQ(labelList({"A1"}), "A1");
    EXPECT_EQ(labelList({"A1", "A2"}), "A1, A2");
    EXPECT_EQ(labelList({"A1", "A2", "A3", "A5", "B6"}), "A1–A3, A5, B6");
    EXPECT_EQ(labelList({"A-9", "A-10", "A-11"}), "A-9 to A-11");
    EXPECT_EQ(labelList({"Top rail", "Bottom rail"}), "Top rail, Bottom rail");
}
