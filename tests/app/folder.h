// A folder for one test, and projects to put into it.
#pragma once

#include "core/project/file.h"

#include <gtest/gtest.h>

#include <filesystem>
#include <string>

namespace kerfwright {

/// A fresh folder that goes away with the test.
class Folder {
public:
    Folder();
    ~Folder();
    Folder(const Folder&) = delete;
    Folder& operator=(const Folder&) = delete;

    std::string path(const std::string& name = {}) const;
    /// Writes a file as it is; returns its path.
    std::string write(const std::string& name, const std::string& bytes) const;
    /// Writes a project through its own format; returns its path.
    std::string write(const std::string& name, const Project& project) const;

private:
    std::filesystem::path path_;
};

std::string bytesOf(const std::filesystem::path& path);
/// The sample projects, sorted by name.
std::vector<std::string> samples();
/// What a shell command said on both streams, and what it ended with.
struct Ended {
    int code = -1;
    std::string said;
};
Ended runShell(const std::string& command);

}  // namespace kerfwright
