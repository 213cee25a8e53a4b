// Rows and fields of a text table, whatever parts them. Private to core/timber.
#pragma once

#include "core/measure/result.h"

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace kerfwright {

struct TableRow {
    std::size_t line = 1;  ///< in which the row begins
    std::vector<std::string> fields;
};

/// Rows that hold anything. The fields are parted by a tab, a semicolon or a comma: the first of
/// these that stands in the first row outside quotes. Faults name line and column: a quote that is
/// not closed, a quote within a field that does not begin with one.
Result<std::vector<TableRow>> readTable(std::string_view text);

/// In quotes where need be.
std::string quoted(const std::string& field, char separator);

}  // namespace kerfwright
