// The program itself, as a child process: exit codes, streams, no display, installation.
#include "tests/app/folder.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace kerfwright {
namespace {

namespace fs = std::filesystem;
using testing::ContainsRegex;
using testing::HasSubstr;
using testing::Not;

const std::string program = "'" KW_PROGRAM "'";
// Nothing of the caller's surroundings: no display, no locale, no home.
const std::string bare = "env -i PATH=/usr/bin:/bin " + program;

std::string quoted(const std::string& path) {
    return "'" + path + "'";
}

TEST(Process, SaysItsVersionAndHelps) {
    EXPECT_EQ(runShell(bare + " --version").said, "kerfwright " KERFWRIGHT_VERSION "\n");
    EXPECT_EQ(runShell(bare + " --help").code, 0);
}

TEST(Process, EndsWithTwoForWrongUsageAndWithOneForAProblem) {
    EXPECT_EQ(runShell(bare + " plan").code, 2);
    EXPECT_EQ(runShell(bare + " sheets a --out b --format gif").code, 2);
    EXPECT_EQ(runShell(bare + " check /does/not/exist.kerfwright").code, 1);
}

TEST(Process, TellsProblemsOnTheErrorStream) {
    const Ended ended = runShell(bare + " check /does/not/exist.kerfwright 2>/dev/null");
    EXPECT_EQ(ended.code, 1);
    EXPECT_EQ(ended.said, "");
}

TEST(Process, WithoutADisplayTheWindowSaysSoInsteadOfDying) {
    const Ended ended = runShell(bare);
    EXPECT_EQ(ended.code, 1);
    EXPECT_THAT(ended.said, HasSubstr("no display"));
}

TEST(Process, EveryCommandWorksWithoutADisplay) {
    const Folder folder;
    const std::string file = quoted(folder.write("a.kerfwright", newProject(Unit::Inches)));
    for (const std::string& command :
         {" check " + file, " plan " + file, " plan --json " + file,
          " sheets " + file + " --out " + quoted(folder.path("a.pdf")),
          " sheets " + file + " --format svg --out " + quoted(folder.path("svg")),
          " picture " + file + " --out " + quoted(folder.path("a.png")),
          " picture " + file + " --out " + quoted(folder.path("a.svg"))}) {
        const Ended ended = runShell(bare + command);
        EXPECT_EQ(ended.code, 0) << command << "\n" << ended.said;
    }
    EXPECT_EQ(bytesOf(folder.path("a.png")).substr(1, 3), "PNG");
    EXPECT_EQ(bytesOf(folder.path("a.pdf")).substr(0, 5), "%PDF-");
}

TEST(Process, WritesTheSameBytesInEveryRun) {
    const Folder folder;
    const std::string file = quoted(folder.write("a.kerfwright", newProject(Unit::Millimetres)));
    for (const std::string end : {".pdf", ".png", ".svg"}) {
        std::string bytes[2];
        for (int run = 0; run < 2; ++run) {
            const std::string out = folder.path(std::to_string(run) + end);
            // Another hash seed, zone and locale each time must not show.
            const std::string around = run == 0 ? "env QT_HASH_SEED=1 TZ=UTC LC_ALL=C "
                                                : "env -u QT_HASH_SEED TZ=Asia/Tokyo "
                                                  "LC_ALL=de_DE.UTF-8 ";
            const std::string command = end == ".pdf" ? " sheets " : " picture ";
            const Ended ended =
                runShell(around + program + command + file + " --out " + quoted(out));
            EXPECT_EQ(ended.code, 0) << ended.said;
            bytes[run] = bytesOf(out);
        }
        EXPECT_FALSE(bytes[0].empty());
        EXPECT_TRUE(bytes[0] == bytes[1]) << end;
    }
}

TEST(Process, AFullDiskIsAProblem) {
    const Folder folder;
    const std::string file = quoted(folder.write("a.kerfwright", newProject(Unit::Millimetres)));
    const Ended ended = runShell(bare + " plan --json " + file + " > /dev/full");
    EXPECT_EQ(ended.code, 1);
    EXPECT_THAT(ended.said, HasSubstr("could not be written"));
}

TEST(Process, FileNamesMayHoldSpacesAndLettersOfAnyLanguage) {
    const Folder folder;
    const std::string file =
        quoted(folder.write("Hütte & Söhne 板.kerfwright", newProject(Unit::Millimetres)));
    const std::string out = folder.path("Brett für alle.png");
    EXPECT_EQ(runShell(bare + " picture " + file + " --out " + quoted(out)).code, 0);
    EXPECT_TRUE(fs::exists(out));
}

TEST(Install, PutsTheProgramItsEntryAndTheSamplesInPlace) {
    const Folder folder;
    const Ended ended =
        runShell("cmake --install '" KW_BINARY_DIR "' --prefix " + quoted(folder.path("usr")));
    ASSERT_EQ(ended.code, 0) << ended.said;
    for (const char* path :
         {"usr/bin/kerfwright", "usr/share/applications/kerfwright.desktop",
          "usr/share/mime/packages/kerfwright.xml",
          "usr/share/metainfo/org.kerfwright.Kerfwright.metainfo.xml",
          "usr/share/doc/kerfwright/copyright",
          "usr/share/icons/hicolor/scalable/apps/kerfwright.svg",
          "usr/share/icons/hicolor/scalable/mimetypes/application-x-kerfwright-project.svg"}) {
        EXPECT_TRUE(fs::exists(folder.path(path))) << path;
    }
    const Ended mime = runShell("update-mime-database " + quoted(folder.path("usr/share/mime")) +
                                " && cat " + quoted(folder.path("usr/share/mime/globs2")));
    EXPECT_EQ(mime.code, 0) << mime.said;
    EXPECT_THAT(mime.said, HasSubstr("application/x-kerfwright-project:*.kerfwright"));

    std::size_t count = 0;
    for (const auto& entry : fs::directory_iterator(folder.path("usr/share/kerfwright/samples"))) {
        const Ended check = runShell("env -i " + quoted(folder.path("usr/bin/kerfwright")) +
                                     " check " + quoted(entry.path().string()));
        EXPECT_EQ(check.code, 0) << check.said;
        ++count;
    }
    EXPECT_EQ(count, samples().size());
}

TEST(Install, WhatSoftwareCentresShowFindsItsEntry) {
    const Folder folder;
    const Ended ended =
        runShell("cmake --install '" KW_BINARY_DIR "' --prefix " + quoted(folder.path("usr")));
    ASSERT_EQ(ended.code, 0) << ended.said;
    // Looks for the desktop entry that the metainfo names as well.
    const Ended tree =
        runShell("appstreamcli validate-tree --no-net --no-color " + quoted(folder.path()));
    EXPECT_EQ(tree.code, 0) << tree.said;
}

TEST(Package, HoldsTheProgramAndSaysWhatItNeeds) {
    const Folder folder;
    const Ended ended = runShell("cpack --config '" KW_BINARY_DIR "/CPackConfig.cmake' -G DEB -B " +
                                 quoted(folder.path()));
    ASSERT_EQ(ended.code, 0) << ended.said;
    std::string package;  // its path, as the shell wants it
    for (const auto& entry : fs::directory_iterator(folder.path())) {
        if (entry.path().extension() == ".deb") {
            package = quoted(entry.path().string());
        }
    }
    ASSERT_THAT(package, HasSubstr("kerfwright_" KERFWRIGHT_VERSION "_"));

    const std::string list = runShell("dpkg-deb --contents " + package).said;
    for (const char* path : {"./usr/bin/kerfwright", "./usr/share/applications/kerfwright.desktop",
                             "./usr/share/mime/packages/kerfwright.xml",
                             "./usr/share/icons/hicolor/scalable/apps/kerfwright.svg",
                             "./usr/share/metainfo/org.kerfwright.Kerfwright.metainfo.xml",
                             "./usr/share/kerfwright/samples/hut-draughts.kerfwright",
                             "./usr/share/doc/kerfwright/copyright"}) {
        EXPECT_THAT(list, HasSubstr(path));
    }
    EXPECT_THAT(list, Not(HasSubstr(".a\n"))) << "libraries of the build";
    EXPECT_THAT(list, Not(HasSubstr("drwxrwx"))) << "folders that a group may write to";

    const std::string about = runShell("dpkg-deb --field " + package).said;
    EXPECT_THAT(about, HasSubstr("Package: kerfwright\n"));
    EXPECT_THAT(about, HasSubstr("Version: " KERFWRIGHT_VERSION "\n"));
    EXPECT_THAT(about, HasSubstr("Section: graphics\n"));
    EXPECT_THAT(about, ContainsRegex("Depends: .*hicolor-icon-theme"));
    EXPECT_THAT(about, ContainsRegex("Depends: .*libqt6widgets6"));
    // A line that does not begin with a space would be a field of its own.
    EXPECT_THAT(about,
                HasSubstr("Description: Planner for patterned solid-wood boards\n Works out"));

    ASSERT_EQ(runShell("dpkg-deb -x " + package + " " + quoted(folder.path("in"))).code, 0);
    const Ended run =
        runShell("env -i " + quoted(folder.path("in/usr/bin/kerfwright")) + " --version");
    EXPECT_EQ(run.said, "kerfwright " KERFWRIGHT_VERSION "\n");
}

}  // namespace
}  // namespace kerfwright
