// The project's own files, for tests that read them as text.
#pragma once

#include <filesystem>
#include <functional>
#include <string>
#include <vector>

namespace kerfwright::house {

struct File {
    std::string path;  ///< from the project's root, with '/'
    std::string text;
};

/// Every text file under the agreed folders and at the top level, sorted by path; build folders and
/// pictures are left out.
const std::vector<File>& textFiles();
/// Those below `folder` ("core", "core/bench") whose names end in one of `ends`.
std::vector<File> filesBelow(const std::string& folder, const std::vector<std::string>& ends);
/// One file, empty where it does not exist.
std::string textOf(const std::string& path);

/// "path:line: text" for each line of `files` that `regex` (ECMAScript) finds.
std::vector<std::string> linesWith(const std::vector<File>& files, const std::string& regex);

/// What a program said, both streams together, and what it ended with.
struct Ended {
    int code = -1;
    std::string said;
};
/// Runs a shell command in the project's root.
Ended run(const std::string& command);

}  // namespace kerfwright::house
