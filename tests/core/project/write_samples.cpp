// Writes the files of samples/ anew: write_samples FOLDER

#include "core/project/file.h"
#include "tests/core/project/samples.h"

#include <filesystem>
#include <iostream>

int main(int count, char** arguments) {
    if (count != 2) {
        std::cerr << "usage: write_samples FOLDER\n";
        return 2;
    }
    for (const auto& [file, project] : kerfwright::samples::all()) {
        const auto path = std::filesystem::path(arguments[1]) / file;
        const auto written = kerfwright::writeProject(project, path);
        if (!written) {
            std::cerr << file << ": " << written.fault().text() << '\n';
            return 1;
        }
    }
    return 0;
}
