#pragma once

#include <filesystem>

namespace kerfwright {

/// The folder that holds the project's sources: samples, fixtures and the tree that tests/house
/// reads.
std::filesystem::path sourceFolder();

}  // namespace kerfwright
