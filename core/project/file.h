// The project file, `*.kerfwright`: UTF-8 JSON, described in project/FORMAT.md. The only part of
// the core that touches files.
#pragma once

#include "core/measure/result.h"
#include "core/project/project.h"

#include <filesystem>
#include <string>
#include <string_view>

namespace kerfwright {

inline constexpr std::string_view projectFormat = "kerfwright-project";
inline constexpr int projectVersion = 1;

/// The bytes of a project: fixed key order, exact lengths in nanometres, ends with a line feed.
std::string toBytes(const Project& project);
/// Reads and checks. The fault names the key as a path ("board.field.columns[3]"), the rule and the
/// value. A newer version is refused in words.
Result<Project> fromBytes(std::string_view bytes);

/// Reads a file of at most 16 MiB.
Result<Project> readProject(const std::filesystem::path& path);
/// Writes a new file beside the old one, reads it back and compares, flushes it to disk, then puts
/// it in the old one's place; symbolic links are followed and permissions kept. On any fault the
/// old file is as it was and no litter stays. Returns the number of bytes written.
Result<std::size_t> writeProject(const Project& project, const std::filesystem::path& path);

}  // namespace kerfwright
