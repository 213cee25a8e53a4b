// The settings of all machines, gathered from the step list, before they are set on a sheet.
#pragma once

#include "core/sheets/flow.h"
#include "core/sheets/record.h"

#include <string>
#include <vector>

namespace kerfwright {

/// One setting of one machine.
struct SettingRow {
    std::string name;   ///< "Strip width"
    std::string about;  ///< "rip fence"
    Length value;
    std::size_t pieces = 0;
    std::vector<std::string> parts;       ///< sorted, each once
    std::vector<const Figure*> workings;  ///< that differ
};

/// What is set between two steps that must not be mixed.
struct SettingBlock {
    std::string title;
    std::vector<int> steps;
    std::vector<SettingRow> rows;
};

struct Settings {
    std::vector<SettingBlock> blocks;
    /// Equal settings of several panels share a row where the panels have come equally far, so that
    /// the order inside every panel stays.
    bool together = false;
};

/// Shared rows only where there are very many; points into the step list.
Settings machineSettings(const Matter& matter, const Record& record);

/// "each of panels A–D", "A1–A6", "all four rails", "Field": parts in a row are put together.
std::string partList(const std::vector<std::string>& parts);

}  // namespace kerfwright
