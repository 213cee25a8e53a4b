#include "tests/house/files.h"

#include "tests/source.h"

#include <algorithm>
#include <cstdio>
#include <fstream>
#include <regex>
#include <sstream>
#include <sys/wait.h>

namespace kerfwright::house {
namespace {

namespace fs = std::filesystem;

const fs::path root = sourceFolder();

bool endsWith(const std::string& text, const std::string& end) {
    return text.size() >= end.size() &&
           text.compare(text.size() - end.size(), end.size(), end) == 0;
}

std::string read(const fs::path& path) {
    std::ifstream in(path, std::ios::binary);
    std::ostringstream text;
    text << in.rdbuf();
    return text.str();
}

void add(const fs::path& path, std::vector<File>& files) {
    std::string text = read(path);
    if (text.find('\0') == std::string::npos) {
        files.push_back({fs::relative(path, root).generic_string(), std::move(text)});
    }
}

}  // namespace

const std::vector<File>& textFiles() {
    static const std::vector<File> files = [] {
        std::vector<File> all;
        for (const char* folder : {".ci", "app", "core", "resources", "samples", "tests", "ui"}) {
            if (!fs::exists(root / folder)) {
                continue;
            }
            for (const auto& entry : fs::recursive_directory_iterator(root / folder)) {
                if (entry.is_regular_file()) {
                    add(entry.path(), all);
                }
            }
        }
        for (const auto& entry : fs::directory_iterator(root)) {
            // In a linked work tree .git is a file, and git's own.
            if (entry.is_regular_file() && entry.path().filename() != ".git") {
                add(entry.path(), all);
            }
        }
        std::sort(all.begin(), all.end(),
                  [](const File& a, const File& b) { return a.path < b.path; });
        return all;
    }();
    return files;
}

std::vector<File> filesBelow(const std::string& folder, const std::vector<std::string>& ends) {
    std::vector<File> found;
    std::copy_if(
        textFiles().begin(), textFiles().end(), std::back_inserter(found), [&](const File& file) {
            return file.path.compare(0, folder.size() + 1, folder + "/") == 0 &&
                   std::any_of(ends.begin(), ends.end(),
                               [&](const std::string& end) { return endsWith(file.path, end); });
        });
    return found;
}

std::string textOf(const std::string& path) {
    return read(root / path);
}

std::vector<std::string> linesWith(const std::vector<File>& files, const std::string& regex) {
    const std::regex wanted(regex, std::regex::ECMAScript | std::regex::optimize);
    std::vector<std::string> found;
    for (const File& file : files) {
        std::istringstream lines(file.text);
        std::string line;
        for (int number = 1; std::getline(lines, line); ++number) {
            // Data on one endless line says nothing about style, and is slow to search.
            if (line.size() < 2000 && std::regex_search(line, wanted)) {
                found.push_back(file.path + ":" + std::to_string(number) + ": " + line);
            }
        }
    }
    return found;
}

Ended run(const std::string& command) {
    Ended ended;
    FILE* pipe = popen(("cd '" + root.string() + "' && { " + command + "; } 2>&1").c_str(), "r");
    if (pipe == nullptr) {
        ended.said = "could not be started";
        return ended;
    }
    char chunk[4096];
    for (std::size_t size = 0; (size = fread(chunk, 1, sizeof chunk, pipe)) > 0;) {
        ended.said.append(chunk, size);
    }
    const int status = pclose(pipe);
    ended.code = WIFEXITED(status) ? WEXITSTATUS(status) : -1;
    return ended;
}

}  // namespace kerfwright::house
