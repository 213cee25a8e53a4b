#include "core/project/file.h"
#include "core/project/json.h"
#include "core/words/say.h"

#include <array>
#include <cerrno>
#include <cstring>
#include <fcntl.h>
#include <optional>
#include <string>
#include <sys/stat.h>
#include <system_error>
#include <unistd.h>
#include <utility>

namespace kerfwright {
namespace {

namespace fs = std::filesystem;

/// `rule` is to be said, once `errno` has been read.
Fault systemFault(const fs::path& path, const char* rule, int error) {
    return {path.string(), say(rule), std::generic_category().message(error)};
}

/// An open file that is closed when it goes out of sight.
class Handle {
public:
    explicit Handle(int number)
        : number_(number) {}
    Handle(const Handle&) = delete;
    Handle& operator=(const Handle&) = delete;
    ~Handle() {
        if (number_ >= 0) {
            ::close(number_);
        }
    }
    bool isOpen() const { return number_ >= 0; }
    int number() const { return number_; }
    /// Some file systems report a full disk only here.
    bool close() { return ::close(std::exchange(number_, -1)) == 0; }

private:
    int number_;
};

template <class Call>
auto retried(Call call) {
    auto result = call();
    while (result < 0 && errno == EINTR) {
        result = call();
    }
    return result;
}

Result<std::string> readBytes(const fs::path& path) {
    // Not blocking, so that a pipe without a writer does not hold the program up.
    const Handle file(
        retried([&] { return ::open(path.c_str(), O_RDONLY | O_CLOEXEC | O_NONBLOCK); }));
    if (!file.isOpen()) {
        if (errno == ENOENT || errno == ENOTDIR) {
            return Fault{path.string(), say("there is no such file"), ""};
        }
        return systemFault(path, noted("must be a file that can be read"), errno);
    }
    struct stat status {};
    if (::fstat(file.number(), &status) != 0) {
        return systemFault(path, noted("must be a file that can be read"), errno);
    }
    if (!S_ISREG(status.st_mode)) {
        return Fault{path.string(), say("must be a file"),
                     S_ISDIR(status.st_mode) ? say("a folder") : say("a device or pipe")};
    }
    std::string bytes;
    std::array<char, 65536> buffer{};
    while (true) {
        const ssize_t count =
            retried([&] { return ::read(file.number(), buffer.data(), buffer.size()); });
        if (count < 0) {
            return systemFault(path, noted("must be a file that can be read"), errno);
        }
        if (count == 0) {
            return bytes;
        }
        bytes.append(buffer.data(), static_cast<std::size_t>(count));
        if (bytes.size() > JsonLimits::bytes) {
            return Fault{path.string(), say("must be at most 16 MiB long"), say("a longer file")};
        }
    }
}

bool writeAll(int file, std::string_view bytes) {
    while (!bytes.empty()) {
        const ssize_t count = retried([&] { return ::write(file, bytes.data(), bytes.size()); });
        if (count < 0) {
            return false;
        }
        bytes.remove_prefix(static_cast<std::size_t>(count));
    }
    return true;
}

fs::path folderOf(const fs::path& path) {
    return path.has_parent_path() ? path.parent_path() : fs::path(".");
}

/// Where a chain of symbolic links ends, whether or not a file is there yet.
Result<fs::path> followed(fs::path path) {
    constexpr int mostLinks = 40;  // as many as Linux itself follows
    for (int i = 0; i <= mostLinks; ++i) {
        std::error_code error;
        if (!fs::is_symlink(fs::symlink_status(path, error))) {
            return path;
        }
        const fs::path target = fs::read_symlink(path, error);
        if (error) {
            return systemFault(path, noted("must be a link that can be followed"), error.value());
        }
        path = folderOf(path) / target;  // an absolute target replaces the folder
    }
    return systemFault(path, noted("must be a link that can be followed"), ELOOP);
}

/// A new, empty file in the folder of the old one, taken away again unless it is put in place.
class NewFile {
public:
    NewFile() = default;
    NewFile(const NewFile&) = delete;
    NewFile& operator=(const NewFile&) = delete;
    ~NewFile() {
        if (!path_.empty()) {
            ::unlink(path_.c_str());
        }
    }

    /// The open file, or -1 with `errno` set.
    int create(const fs::path& folder) {
        constexpr int mostTries = 1000;
        for (int i = 0; i < mostTries; ++i) {
            // A short name of its own: the name of the project may already be as long as names may
            // be.
            fs::path path = folder / (".kerfwright-" + std::to_string(::getpid()) + "-" +
                                      std::to_string(i) + ".part");
            constexpr mode_t asUsual = 0666;  // less what the user's mask takes off
            const int file = retried([&] {
                return ::open(path.c_str(), O_RDWR | O_CREAT | O_EXCL | O_CLOEXEC, asUsual);
            });
            if (file >= 0) {
                path_ = std::move(path);
                return file;
            }
            if (errno != EEXIST) {
                return -1;
            }
        }
        return -1;
    }

    const fs::path& path() const { return path_; }

    bool putInPlaceOf(const fs::path& target) {
        if (::rename(path_.c_str(), target.c_str()) != 0) {
            return false;
        }
        path_.clear();
        return true;
    }

private:
    fs::path path_;
};

/// Whether the bytes on disk are those that were sent there, and mean the project that was meant.
std::optional<Fault> readBack(const fs::path& written, const fs::path& target,
                              const std::string& bytes, const Project& project) {
    const Result<std::string> back = readBytes(written);
    if (!back) {
        return Fault{target.string(), back.fault().rule, back.fault().value};
    }
    if (*back != bytes) {
        return Fault{target.string(), say("must read back as it was written"), say("other bytes")};
    }
    const Result<Project> read = fromBytes(*back);
    if (!read) {
        return Fault{target.string(), say("must read back as the same project"),
                     read.fault().text()};
    }
    // Unknown keys of woods that were taken out of the project are rightly gone.
    Project same = *read;
    same.unknownKeys = project.unknownKeys;
    if (same != project || toBytes(*read) != bytes) {
        return Fault{target.string(), say("must read back as the same project"),
                     say("another one")};
    }
    return std::nullopt;
}

/// Gives a new file the permissions and, where the system allows it, the owner of the old one.
bool takeOver(int file, const struct stat& old) {
    struct stat own {};
    if (::fstat(file, &own) != 0) {
        return false;
    }
    if (own.st_uid != old.st_uid || own.st_gid != old.st_gid) {
        // Only a superuser may give files away; a file of one's own is the next best thing.
        [[maybe_unused]] const int given = ::fchown(file, old.st_uid, old.st_gid);
    }
    constexpr mode_t permissions = 07777;
    return ::fchmod(file, old.st_mode & permissions) == 0;
}

/// The permissions of the old file, if there is one that may be replaced.
Result<std::optional<struct stat>> statusOf(const fs::path& target) {
    struct stat status {};
    if (::stat(target.c_str(), &status) != 0) {
        if (errno == ENOENT) {
            return std::optional<struct stat>();
        }
        return systemFault(target, noted("must be a place that can be written to"), errno);
    }
    if (!S_ISREG(status.st_mode)) {
        return Fault{target.string(), say("must be a file"),
                     S_ISDIR(status.st_mode) ? say("a folder") : say("a device or pipe")};
    }
    if (::access(target.c_str(), W_OK) != 0) {
        return systemFault(target, noted("must be a file that may be changed"), errno);
    }
    return std::optional(status);
}

}  // namespace

Result<Project> readProject(const fs::path& path) {
    const Result<std::string> bytes = readBytes(path);
    if (!bytes) {
        return bytes.fault();
    }
    return fromBytes(*bytes);
}

Result<std::size_t> writeProject(const Project& project, const fs::path& path) {
    const std::vector<Fault> wrong = faults(project);
    if (!wrong.empty()) {
        return wrong.front();
    }
    const std::string bytes = toBytes(project);
    const Result<fs::path> target = followed(path);
    if (!target) {
        return target.fault();
    }
    const Result<std::optional<struct stat>> old = statusOf(*target);
    if (!old) {
        return old.fault();
    }

    NewFile fresh;
    Handle file(fresh.create(folderOf(*target)));
    if (!file.isOpen()) {
        return systemFault(*target, noted("must be in a folder that can be written to"), errno);
    }
    if (!writeAll(file.number(), bytes) || (*old && !takeOver(file.number(), **old)) ||
        ::fsync(file.number()) != 0 || !file.close()) {
        return systemFault(*target, noted("must be written in full"), errno);
    }
    if (std::optional<Fault> fault = readBack(fresh.path(), *target, bytes, project)) {
        return *std::move(fault);
    }
    if (!fresh.putInPlaceOf(*target)) {
        return systemFault(*target, noted("must be replaced by the new file"), errno);
    }
    // The file is whole and in place; where the folder cannot be flushed, the change of name only
    // reaches the disk a little later.
    const Handle folder(retried(
        [&] { return ::open(folderOf(*target).c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC); }));
    if (folder.isOpen()) {
        ::fsync(folder.number());
    }
    return bytes.size();
}

}  // namespace kerfwright
