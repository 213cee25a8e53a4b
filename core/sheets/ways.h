// The ways to glue a board, side by side, as text and as JSON (`kerfwright plan FILE --all`).
#pragma once

#include "core/bench/alternatives.h"
#include "core/project/project.h"

#include <string>

namespace kerfwright {

/// A table of what each costs, the limits that it breaks, how good the best is, which pieces lock
/// each other, and what a row or a column more or less would do.
std::string waysText(const Project& project, const Alternatives& ways);
/// The same as UTF-8 JSON, `"format": "kerfwright-ways"`, version 1; described in DEVELOPERS.md.
std::string waysJson(const Project& project, const Alternatives& ways);

/// Whether the project is glued that way now.
bool isInUse(const Alternative& way, const Plan& plan);

}  // namespace kerfwright
