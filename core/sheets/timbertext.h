// The timber of one board or of a batch as text and as JSON (`kerfwright timber`).
#pragma once

#include "core/batch/batch.h"

#include <string>

namespace kerfwright {

/// Planks with their strips, what is missing, what to buy, and how good that is. Lengths in the
/// notation of the first project.
std::string timberText(const Batch& batch);
/// The same as UTF-8 JSON, `"format": "kerfwright-timber"`, version 1; described in DEVELOPERS.md.
std::string timberJson(const Batch& batch);

}  // namespace kerfwright
