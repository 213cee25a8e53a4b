#include "tests/app/folder.h"

#include "tests/source.h"

#include <algorithm>
#include <cstdio>
#include <fstream>
#include <sstream>
#include <sys/wait.h>
#include <unistd.h>

namespace kerfwright {

namespace fs = std::filesystem;

Folder::Folder() {
    std::string name = (fs::temp_directory_path() / "kerfwright-test-XXXXXX").string();
    if (mkdtemp(name.data()) == nullptr) {
        ADD_FAILURE() << "no folder for the test: " << name;
    }
    path_ = name;
}

Folder::~Folder() {
    std::error_code ignored;
    fs::remove_all(path_, ignored);
}

std::string Folder::path(const std::string& name) const {
    return name.empty() ? path_.string() : (path_ / name).string();
}

std::string Folder::write(const std::string& name, const std::string& bytes) const {
    std::ofstream(path(name), std::ios::binary) << bytes;
    return path(name);
}

std::string Folder::write(const std::string& name, const Project& project) const {
    return write(name, toBytes(project));
}

std::string bytesOf(const fs::path& path) {
    std::ifstream in(path, std::ios::binary);
    std::ostringstream bytes;
    bytes << in.rdbuf();
    return bytes.str();
}

std::vector<std::string> samples() {
    std::vector<std::string> found;
    for (const auto& entry : fs::directory_iterator(sourceFolder() / "samples")) {
        if (entry.path().extension() == ".kerfwright") {
            found.push_back(entry.path().string());
        }
    }
    std::sort(found.begin(), found.end());
    return found;
}

Ended runShell(const std::string& command) {
    Ended ended;
    FILE* pipe = popen(("{ " + command + "; } 2>&1").c_str(), "r");
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

}  // namespace kerfwright
