#include "core/project/file.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <csignal>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>
#include <sys/resource.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>
#include <vector>

namespace kerfwright {
namespace {

namespace fs = std::filesystem;
using ::testing::ElementsAre;
using ::testing::HasSubstr;
using ::testing::StartsWith;

std::string bytesOf(const fs::path& path) {
    std::ifstream file(path, std::ios::binary);
    std::ostringstream all;
    all << file.rdbuf();
    return all.str();
}

class Disk : public ::testing::Test {
protected:
    void SetUp() override {
        std::string name = (fs::temp_directory_path() / "kerfwright-disk-XXXXXX").string();
        ASSERT_NE(::mkdtemp(name.data()), nullptr);
        folder_ = name;
    }
    void TearDown() override { fs::remove_all(folder_); }

    std::vector<std::string> names() const {
        std::vector<std::string> all;
        for (const auto& entry : fs::directory_iterator(folder_)) {
            all.push_back(entry.path().filename());
        }
        std::sort(all.begin(), all.end());
        return all;
    }

    /// Runs in a process of its own, so that limits and identity of this one stay as they are.
    /// Returns what `work` returned.
    template <class Work>
    static int apart(Work work) {
        const pid_t child = ::fork();
        if (child == 0) {
            ::_exit(work());
        }
        int status = 0;
        EXPECT_EQ(::waitpid(child, &status, 0), child);
        EXPECT_TRUE(WIFEXITED(status));
        return WEXITSTATUS(status);
    }

    fs::path folder_;
    Project project_ = newProject(Unit::Inches);
};

TEST_F(Disk, readsWhatItWrote) {
    const fs::path path = folder_ / "board.kerfwright";
    const Result<std::size_t> written = writeProject(project_, path);
    ASSERT_TRUE(written.ok()) << written.fault().text();
    EXPECT_EQ(*written, toBytes(project_).size());
    EXPECT_EQ(bytesOf(path), toBytes(project_));
    const Result<Project> read = readProject(path);
    ASSERT_TRUE(read.ok());
    EXPECT_EQ(*read, project_);
    EXPECT_THAT(names(), ElementsAre("board.kerfwright"));
}

TEST_F(Disk, takesTheLongestNameThatAFileMayHave) {
    const fs::path path = folder_ / (std::string(244, 'n') + ".kerfwright");
    EXPECT_TRUE(writeProject(project_, path).ok());
    EXPECT_EQ(bytesOf(path), toBytes(project_));
}

TEST_F(Disk, keepsPermissions) {
    const fs::path path = folder_ / "board.kerfwright";
    ASSERT_TRUE(writeProject(project_, path).ok());
    ASSERT_EQ(::chmod(path.c_str(), 0640), 0);
    project_.titles.name = "Changed";
    ASSERT_TRUE(writeProject(project_, path).ok());
    struct stat status {};
    ASSERT_EQ(::stat(path.c_str(), &status), 0);
    EXPECT_EQ(status.st_mode & 07777, 0640U);
    EXPECT_EQ(readProject(path)->titles.name, "Changed");
}

TEST_F(Disk, givesNewFilesThePermissionsOfTheUsersMask) {
    const fs::path path = folder_ / "board.kerfwright";
    EXPECT_EQ(apart([&] {
                  ::umask(027);
                  return writeProject(project_, path).ok() ? 0 : 1;
              }),
              0);
    struct stat status {};
    ASSERT_EQ(::stat(path.c_str(), &status), 0);
    EXPECT_EQ(status.st_mode & 07777, 0640U);
}

TEST_F(Disk, followsSymbolicLinks) {
    const fs::path file = folder_ / "store" / "board.kerfwright";
    fs::create_directory(folder_ / "store");
    fs::create_symlink("store/board.kerfwright", folder_ / "link");
    fs::create_symlink(folder_ / "link", folder_ / "far-link");
    for (const char* name : {"Nothing there yet", "Something there"}) {
        project_.titles.name = name;
        ASSERT_TRUE(writeProject(project_, folder_ / "far-link").ok()) << name;
        EXPECT_TRUE(fs::is_symlink(folder_ / "link"));
        EXPECT_TRUE(fs::is_symlink(folder_ / "far-link"));
        EXPECT_TRUE(fs::is_regular_file(fs::symlink_status(file)));
        EXPECT_EQ(readProject(file)->titles.name, name);
    }
    fs::create_symlink("round", folder_ / "round");
    EXPECT_FALSE(writeProject(project_, folder_ / "round").ok());
}

TEST_F(Disk, refusesWhatIsNoFile) {
    const fs::path inner = folder_ / "inner";
    fs::create_directory(inner);
    const Result<std::size_t> written = writeProject(project_, inner);
    ASSERT_FALSE(written.ok());
    EXPECT_EQ(written.fault().text(), inner.string() + ": must be a file; got a folder.");
    EXPECT_EQ(readProject(inner).fault().text(),
              inner.string() + ": must be a file; got a folder.");
    EXPECT_EQ(readProject("/dev/null").fault().text(),
              "/dev/null: must be a file; got a device or pipe.");
    EXPECT_EQ(writeProject(project_, "/dev/full").fault().text(),
              "/dev/full: must be a file; got a device or pipe.");
    ASSERT_EQ(::mkfifo((folder_ / "pipe").c_str(), 0600), 0);
    EXPECT_FALSE(readProject(folder_ / "pipe").ok()) << "and it must not wait for a writer";
    EXPECT_THAT(names(), ElementsAre("inner", "pipe"));
}

TEST_F(Disk, namesWhatIsNotThere) {
    const fs::path path = folder_ / "none" / "board.kerfwright";
    EXPECT_EQ(readProject(path).fault().text(), path.string() + ": there is no such file.");
    EXPECT_THAT(writeProject(project_, path).fault().text(),
                StartsWith(path.string() + ": must be in a folder that can be written to; got "));
}

TEST_F(Disk, refusesFilesThatAreTooLong) {
    const fs::path path = folder_ / "long.kerfwright";
    std::ofstream(path) << "{";
    fs::resize_file(path, (std::uintmax_t{16} << 20) + 1);
    EXPECT_THAT(readProject(path).fault().text(), HasSubstr("must be at most 16 MiB long"));
}

TEST_F(Disk, writesNoProjectWithFaults) {
    const fs::path path = folder_ / "board.kerfwright";
    project_.board.thickness = Length();
    EXPECT_THAT(writeProject(project_, path).fault().text(), StartsWith("Thickness: "));
    EXPECT_FALSE(fs::exists(path));
}

// A limit on the size of files stands for a full disk: the write stops part of the way.
TEST_F(Disk, leavesTheOldFileWhereTheDiskIsFull) {
    const fs::path path = folder_ / "board.kerfwright";
    ASSERT_TRUE(writeProject(project_, path).ok());
    const std::string before = bytesOf(path);
    project_.titles.name = "Changed";
    const int result = apart([&] {
        ::signal(SIGXFSZ, SIG_IGN);
        const rlimit limit{1000, 1000};
        if (::setrlimit(RLIMIT_FSIZE, &limit) != 0) {
            return 3;
        }
        const Result<std::size_t> written = writeProject(project_, path);
        if (written.ok()) {
            return 2;
        }
        return written.fault().rule == "must be written in full" ? 0 : 1;
    });
    EXPECT_EQ(result, 0);
    EXPECT_EQ(bytesOf(path), before);
    EXPECT_THAT(names(), ElementsAre("board.kerfwright"));
}

// A superuser may write anywhere, so the child becomes somebody else.
TEST_F(Disk, leavesTheOldFileWhereTheFolderIsClosed) {
    const fs::path path = folder_ / "board.kerfwright";
    ASSERT_TRUE(writeProject(project_, path).ok());
    const std::string before = bytesOf(path);
    project_.titles.name = "Changed";
    const auto refusedRule = [&](const std::string& rule) {
        return apart([&] {
            constexpr uid_t nobody = 65534;
            if (::geteuid() == 0 && (::setgid(nobody) != 0 || ::setuid(nobody) != 0)) {
                return 3;
            }
            const Result<std::size_t> written = writeProject(project_, path);
            return written.ok() ? 2 : written.fault().rule == rule ? 0 : 1;
        });
    };
    ASSERT_EQ(::chmod(path.c_str(), 0666), 0);
    ASSERT_EQ(::chmod(folder_.c_str(), 0555), 0);
    EXPECT_EQ(refusedRule("must be in a folder that can be written to"), 0);
    ASSERT_EQ(::chmod(folder_.c_str(), 0777), 0);
    ASSERT_EQ(::chmod(path.c_str(), 0444), 0);
    EXPECT_EQ(refusedRule("must be a file that may be changed"), 0);
    EXPECT_EQ(bytesOf(path), before);
    EXPECT_THAT(names(), ElementsAre("board.kerfwright"));
}

TEST_F(Disk, savesAProjectWhoseWoodWithUnknownKeysIsGone) {
    const fs::path path = folder_ / "board.kerfwright";
    const std::string gone = project_.woods.back().key;
    project_.woods.pop_back();
    project_.unknownKeys = R"({"woods": {")" + gone + R"(": {"price": 9}}, "place": 1})";
    ASSERT_TRUE(writeProject(project_, path).ok());
    EXPECT_EQ(readProject(path)->unknownKeys, R"({"place": 1})");
}

}  // namespace
}  // namespace kerfwright
