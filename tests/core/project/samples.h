// The projects in samples/, as values. Their files are written from here by `write_samples` and
// compared with them by the tests.
#pragma once

#include "core/project/project.h"

#include <string>
#include <vector>

namespace kerfwright::samples {

struct Sample {
    std::string file;  ///< in samples/
    Project project;
};

std::vector<Sample> all();

}  // namespace kerfwright::samples
