// What was seen to, in the file of a project.
#include "core/project/file.h"
#include "tests/source.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <string>

namespace kerfwright {
namespace {

using ::testing::HasSubstr;
using ::testing::Not;

/// A good file that says so.
std::string withSeenTo(const std::string& list) {
    std::string bytes = toBytes(newProject(Unit::Millimetres));
    const std::string after = "\"version\": 1,";
    return bytes.insert(bytes.find(after) + after.size(), " \"seen-to\": " + list + ",");
}

TEST(SeenToFile, keepsWhatWasSeenToInItsOrder) {
    Project project = newProject(Unit::Millimetres);
    EXPECT_THAT(toBytes(project), Not(HasSubstr("seen-to")));
    project.seenTo = {{"woods-alike", "ash oak", {fact("difference-hundredths", 310)}},
                      {"thin-work", "", {fact("worst", Length::mm(4)), fact("parts", "A=4")}}};
    const std::string bytes = toBytes(project);
    EXPECT_THAT(bytes, HasSubstr(R"(  "seen-to": [
    {
      "rule": "woods-alike",
      "about": "ash oak",
      "said": {
        "difference-hundredths": 310
      }
    },
    {
      "rule": "thin-work",
      "said": {
        "worst-nm": 4000000,
        "parts": "A=4"
      }
    }
  ]
)"));
    EXPECT_EQ(fromBytes(bytes).value(), project);
}

TEST(SeenToFile, opensWithNothingSeenToWhereNothingIsSaid) {
    EXPECT_TRUE(readProject(sourceFolder() / "tests/core/project/fixtures/version-1.kerfwright")
                    .value()
                    .seenTo.empty());
    const Project read = fromBytes(withSeenTo("[]")).value();
    EXPECT_TRUE(read.seenTo.empty());
    EXPECT_EQ(read.unknownKeys, "");
}

TEST(SeenToFile, refusesWhatCannotHaveBeenSeenTo) {
    const auto said = [](const std::string& list) {
        const Result<Project> read = fromBytes(withSeenTo(list));
        return read.ok() ? "none" : read.fault().text();
    };
    EXPECT_EQ(said("[{\"rule\": \"a\", \"said\": {}}]"), "none");
    EXPECT_EQ(said("{}"), "seen-to: must be a list; got an object.");
    EXPECT_EQ(said("[3]"), "seen-to[0]: must be an object; got 3.");
    EXPECT_EQ(said("[{\"said\": {}}]"), "seen-to[0].rule: must be given; got nothing.");
    EXPECT_EQ(said("[{\"rule\": \"a\"}]"), "seen-to[0].said: must be given; got nothing.");
    EXPECT_EQ(said("[{\"rule\": 1, \"said\": {}}]"), "seen-to[0].rule: must be a text; got 1.");
    EXPECT_EQ(said("[{\"rule\": \"a\", \"said\": []}]"),
              "seen-to[0].said: must be an object; got a list.");
    EXPECT_EQ(
        said("[{\"rule\": \"a\", \"said\": {\"gap-nm\": 1.5}}]"),
        "seen-to[0].said.gap-nm: must be a whole number, without point or exponent; got 1.5.");
    EXPECT_EQ(said("[{\"rule\": \"a\", \"said\": {\"gap-nm\": null}}]"),
              "seen-to[0].said.gap-nm: must be a whole number; got null.");
    EXPECT_EQ(
        said("[{\"rule\": \"A b\", \"said\": {}}]"),
        "seen-to: Seen to, entry 1: must have names of 1 to 60 lower case letters, digits and "
        "hyphens; got “A b”.");
    EXPECT_EQ(said("[{\"rule\": \"a\", \"said\": {}}, {\"rule\": \"a\", \"said\": {}}]"),
              "seen-to: Seen to, entry 2: must differ from the entries before it; got “a”.");
    std::string facts = "\"f0\": 0";
    for (int i = 1; i < 40; ++i) {
        facts += ", \"f" + std::to_string(i) + "\": 0";
    }
    EXPECT_EQ(said("[{\"rule\": \"a\", \"said\": {" + facts + "}}]"),
              "seen-to[0].said: must have at most 32 keys; got 40.");
    std::string entries = "{}";
    for (int i = 1; i < 300; ++i) {
        entries += ", {}";
    }
    EXPECT_EQ(said("[" + entries + "]"), "seen-to: must have from 0 to 256 items; got 300.");
}

TEST(SeenToFile, withBytesChangedIsRefusedOrStillValid) {
    const std::string list =
        R"([{"rule": "woods-alike", "about": "ash oak", "said": {"difference": 31, "to": "A"}},
            {"rule": "thin-work", "said": {"worst-nm": 4000000, "parts": "A=4"}}])";
    EXPECT_TRUE(rc::check([&list] {
        std::string bad = list;
        const int times = *rc::gen::inRange(1, 4);
        for (int i = 0; i < times; ++i) {
            bad[*rc::gen::resize(1000, rc::gen::inRange<std::size_t>(0, bad.size()))] =
                *rc::gen::element('0', '9', '-', 'e', '"', ',', '[', ']', '{', '}', ' ', '\xC3');
        }
        const Result<Project> read = fromBytes(withSeenTo(bad));
        if (read.ok()) {
            RC_ASSERT(faults(*read).empty());
            RC_ASSERT(fromBytes(toBytes(*read)).value() == *read);
        } else {
            RC_ASSERT(!read.fault().entry.empty());
            RC_ASSERT(!read.fault().rule.empty());
        }
    }));
}

}  // namespace
}  // namespace kerfwright
