// Texts that stand in columns on a terminal.
#pragma once

#include <string>
#include <string_view>

namespace kerfwright {

/// As many columns as the text has characters; enough for aligning Latin text.
std::size_t columnsOf(std::string_view text);
/// Filled up with spaces behind the text, or before it.
std::string leftAligned(std::string text, std::size_t columns);
std::string rightAligned(const std::string& text, std::size_t columns);

}  // namespace kerfwright
