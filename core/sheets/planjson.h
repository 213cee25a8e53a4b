// The plan as JSON, for other programs. Documented in DEVELOPERS.md; stable by version.
#pragma once

#include "core/bench/job.h"
#include "core/project/project.h"

#include <string>

namespace kerfwright {

inline constexpr int planJsonVersion = 1;

/// Lengths are objects {"nm": exact integer, "text": in the notation of the project}. Sentences are
/// in the language that is spoken; texts of single numbers have a decimal point in every language.
std::string planJson(const Project& project, const Job& job);

/// The plan as the maker reads it on a terminal.
std::string planText(const Project& project, const Job& job);

}  // namespace kerfwright
