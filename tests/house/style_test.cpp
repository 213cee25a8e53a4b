// Laws that a reader would have to check by eye.
//
// Words that are looked for are put together from halves, so that this file does not find itself.
#include "tests/house/files.h"
#include "tests/source.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <regex>
#include <set>

namespace kerfwright::house {
namespace {

using testing::IsEmpty;

const std::vector<std::string> code = {".h", ".cpp"};
const std::vector<std::string> anyText = {""};

std::vector<File> codeOf(std::initializer_list<const char*> folders) {
    std::vector<File> all;
    for (const char* folder : folders) {
        for (File& file : filesBelow(folder, code)) {
            all.push_back(std::move(file));
        }
    }
    return all;
}

TEST(Wall, TheCoreKnowsNothingOfQt) {
    EXPECT_THAT(linesWith(filesBelow("core", {".h", ".cpp", ".in", ".txt"}),
                          "#include\\s*<Q|\\bQ(String|Object|Painter|Byte|Color|Point|Rect)|\\bQt"),
                IsEmpty());
}

TEST(Laws, TheCoreAsksNoClockNoChanceAndNoEnvironment) {
    EXPECT_THAT(linesWith(codeOf({"core"}), "system_clock|steady_clock|random_device|mt19937|"
                                            "\\brand\\(|\\btime\\((NULL|nullptr|0|&)|"
                                            "getenv|setlocale|std::locale"),
                IsEmpty());
}

TEST(Laws, OnlyTheProjectTouchesFiles) {
    std::vector<std::string> found =
        linesWith(codeOf({"core"}), "<fstream>|<filesystem>|\\bfopen\\(|\\bopen\\(");
    found.erase(
        std::remove_if(found.begin(), found.end(),
                       [](const std::string& line) { return line.rfind("core/project/", 0) == 0; }),
        found.end());
    EXPECT_THAT(found, IsEmpty());
}

TEST(Laws, OnlyMeasureReadsLengthsFromText) {
    std::vector<std::string> found =
        linesWith(codeOf({"core", "ui", "app"}),
                  "\\b(stod|stof|strtod|strtof|atof|sscanf)\\(|QDoubleSpinBox|toDouble\\(");
    found.erase(
        std::remove_if(found.begin(), found.end(),
                       [](const std::string& line) { return line.rfind("core/measure/", 0) == 0; }),
        found.end());
    EXPECT_THAT(found, IsEmpty());
}

TEST(Tests, CanFail) {
    const std::string mute = "QVER"
                             "IFY|QCOM"
                             "PARE|QTRY"
                             "_|GTEST_S"
                             "KIP|DISA"
                             "BLED_";
    EXPECT_THAT(linesWith(codeOf({"tests"}), mute), IsEmpty());
}

TEST(Tests, DoNotWaitForTimeToPass) {
    EXPECT_THAT(linesWith(codeOf({"tests"}), "sleep"
                                             "_for|sleep"
                                             "_until|\\bu?sleep"
                                             "\\(|"
                                             "qSl"
                                             "eep|qWa"
                                             "it\\("),
                IsEmpty());
}

TEST(Text, NothingIsLeftForLater) {
    const std::string later = "TO"
                              "DO|FIX"
                              "ME|\\bX"
                              "XX\\b|\\bHA"
                              "CK\\b";
    EXPECT_THAT(linesWith(textFiles(), later), IsEmpty());
}

TEST(Text, NoPathOfOneMachine) {
    const std::string paths = "(^|[^\\w.])/(wo"
                              "rk|ho"
                              "me|ro"
                              "ot|Us"
                              "ers)/|/tmp/bu"
                              "ild";
    EXPECT_THAT(linesWith(textFiles(), paths), IsEmpty());
}

TEST(Text, IsUnixTextWithoutTabsAndTrailingSpace) {
    std::vector<File> files = codeOf({"app", "core", "tests", "ui"});
    EXPECT_THAT(linesWith(files, "\t|\r|\\s+$"), IsEmpty());
    for (const File& file : files) {
        EXPECT_TRUE(!file.text.empty() && file.text.back() == '\n') << file.path;
    }
}

TEST(Names, OfFilesAreLowerCase) {
    static const std::set<std::string> agreed = {"CMakeLists.txt", "CMakePresets.json",
                                                 "DEVELOPERS.md",  "FORMAT.md",
                                                 "LICENSE",        "README.md"};
    std::vector<std::string> wrong;
    for (const File& file : textFiles()) {
        const std::string name = std::filesystem::path(file.path).filename().string();
        if (agreed.count(name) == 0 && std::regex_search(name, std::regex("[A-Z]"))) {
            wrong.push_back(file.path);
        }
    }
    EXPECT_THAT(wrong, IsEmpty());
}

TEST(Names, TheTopLevelHoldsOnlyWhatWasAgreed) {
    static const std::set<std::string> agreed = {"CMakeLists.txt", "CMakePresets.json", "README.md",
                                                 "DEVELOPERS.md", "LICENSE", "app", "core", "ui",
                                                 "resources", "tests", "samples",
                                                 // Never committed: see .gitignore.
                                                 "build", "out", "compile_commands.json"};
    std::vector<std::string> wrong;
    for (const auto& entry : std::filesystem::directory_iterator(sourceFolder())) {
        const std::string name = entry.path().filename().string();
        if (name.front() != '.' && agreed.count(name) == 0) {
            wrong.push_back(name);
        }
    }
    EXPECT_THAT(wrong, IsEmpty());
}

TEST(Headers, StandOnce) {
    std::vector<std::string> wrong;
    for (const File& file : filesBelow("core", {".h"})) {
        if (file.text.find("#pragma once") == std::string::npos) {
            wrong.push_back(file.path);
        }
    }
    EXPECT_THAT(wrong, IsEmpty());
}

TEST(Format, IsWhatClangFormatWrites) {
    std::string files;
    for (const File& file : codeOf({"app", "core", "tests", "ui"})) {
        files += " '" + file.path + "'";
    }
    ASSERT_FALSE(files.empty());
    const Ended ended = run("clang-format --dry-run -Werror --style=file" + files);
    EXPECT_EQ(ended.code, 0) << ended.said.substr(0, 4000);
}

TEST(Scripts, AreSoundBash) {
    for (const char* script : {"app/run", "app/packages.sh", "tests/run", ".ci/run"}) {
        const Ended ended = run(std::string("bash -n ") + script);
        EXPECT_EQ(ended.code, 0) << script << ": " << ended.said;
    }
}

TEST(Scripts, CanBeRun) {
    namespace fs = std::filesystem;
    for (const char* script : {"app/run", "tests/run", ".ci/run"}) {
        const fs::perms perms = fs::status(sourceFolder() / script).permissions();
        EXPECT_NE(perms & fs::perms::owner_exec, fs::perms::none) << script;
    }
}

TEST(Resources, TheDesktopEntryIsValid) {
    const Ended ended = run("desktop-file-validate resources/kerfwright.desktop");
    EXPECT_EQ(ended.code, 0);
    EXPECT_EQ(ended.said, "");
}

TEST(Resources, WhatSoftwareCentresShowIsValid) {
    const Ended ended =
        run("appstreamcli validate --no-net --no-color resources/kerfwright.metainfo.xml");
    EXPECT_EQ(ended.code, 0) << ended.said;
}

TEST(Resources, WhatSoftwareCentresShowNamesThisVersionFirst) {
    std::smatch version, release;
    const std::string lists = textOf("CMakeLists.txt");
    ASSERT_TRUE(
        std::regex_search(lists, version, std::regex("project\\(kerfwright VERSION (\\S+)")));
    const std::string info = textOf("resources/kerfwright.metainfo.xml");
    ASSERT_TRUE(std::regex_search(info, release, std::regex("<release version=\"([^\"]+)\"")));
    EXPECT_EQ(release[1], version[1]);
}

TEST(Resources, XmlAndSvgAreWellFormed) {
    int count = 0;
    std::string files;
    for (const char* folder : {"resources", "samples"}) {
        for (const File& file : filesBelow(folder, {".svg", ".xml"})) {
            files += " '" + file.path + "'";
            ++count;
        }
    }
    EXPECT_GE(count, 3);
    const Ended ended = run("xmllint --noout --nonet" + files);
    EXPECT_EQ(ended.code, 0) << ended.said;
}

}  // namespace
}  // namespace kerfwright::house
