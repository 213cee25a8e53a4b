// The table of machine settings as it stands on the sheets of one board and of several.
#pragma once

#include "core/sheets/flow.h"

#include <functional>
#include <string>
#include <vector>

namespace kerfwright {

/// Value, what it is for, how many pieces, and room for a test cut.
class SettingTable {
public:
    /// `about`: the head of what stands beside the values.
    SettingTable(Flow& flow, std::string about);

    struct Line {
        std::string words;
        Tone tone = quietText;
    };

    /// What the lines beside a value may be wide.
    double wordsWidth() const { return wordsWidth_; }
    /// At the cursor, which moves below it, as it does for a row.
    void head();
    /// `begin` sets what stands above the first row of a block, and is called again on a new page.
    void row(const std::string& value, std::vector<Line> lines, std::size_t pieces, bool first,
             const std::function<void()>& begin);

private:
    Flow& flow_;
    std::string about_, test_, measured_;
    // From the left edge.
    double measuredX_, testX_, piecesX_, wordsWidth_;
};

}  // namespace kerfwright
