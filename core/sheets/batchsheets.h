// One set of sheets for boards that are made at once.
#pragma once

#include "core/batch/batch.h"
#include "core/sheets/sheets.h"

#include <vector>

namespace kerfwright {

/// First what the boards share: the boards with their numbers, every position of every machine with
/// the boards that need it, the planks with their cuts, the timber and what to buy. Then the sheets
/// of each board, its number in their titles. Of one board alone: its sheets and those of its
/// timber.
std::vector<Page> batchSheets(const Batch& batch, Paper paper);

}  // namespace kerfwright
