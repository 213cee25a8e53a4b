// The number of glue-ups of a two-level plan against its closed form.
//
// Source: the project's notes on algorithms, 1.2 (exact for two levels, no trimming, timber large
// enough): distinct rows that are not of one wood, up to reversal (and height, where the grain
// stands up), plus one; the same for columns; the smaller of the two. Worked out here on plain
// strings.
#include "tests/core/glueup/boards.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <set>

namespace kerfwright {
namespace {

using namespace test;

struct Grid {
    std::vector<std::string> rows;
    std::vector<int> heights, widths;  // mm
};

Grid turned(const Grid& grid) {
    Grid result{{}, grid.widths, grid.heights};
    for (std::size_t column = 0; column < grid.widths.size(); ++column) {
        std::string word;
        for (const std::string& row : grid.rows) {
            word += row[column];
        }
        result.rows.push_back(word);
    }
    return result;
}

/// Spells a row out in millimetres, so that runs of one wood melt together and equal rows are equal
/// strings whatever their columns.
std::string spelled(const Grid& grid, std::size_t row) {
    std::string word;
    for (std::size_t column = 0; column < grid.widths.size(); ++column) {
        word += std::string(static_cast<std::size_t>(grid.widths[column]), grid.rows[row][column]);
    }
    return word;
}

int closedForm(const Grid& grid, bool endGrain) {
    // Equal rows one upon the other are one row where pieces of one wood may be merged.
    std::vector<std::pair<std::string, int>> bands;
    for (std::size_t row = 0; row < grid.rows.size(); ++row) {
        const std::string word = spelled(grid, row);
        if (!bands.empty() && bands.back().first == word) {
            bands.back().second += grid.heights[row];
        } else {
            bands.emplace_back(word, grid.heights[row]);
        }
    }
    std::set<std::pair<std::string, int>> classes;
    for (const auto& [word, height] : bands) {
        if (word.find_first_not_of(word.front()) != std::string::npos) {
            classes.emplace(std::min(word, std::string(word.rbegin(), word.rend())),
                            endGrain ? height : 0);
        }
    }
    return static_cast<int>(classes.size()) + (bands.size() > 1 ? 1 : 0);
}

TEST(ClosedForm, GlueUpsOfRandomPictures) {
    EXPECT_TRUE(rc::check("glue-ups equal the closed form", [] {
        const int columns = *rc::gen::inRange(1, 7);
        const int rowCount = *rc::gen::inRange(1, 7);
        Grid grid;
        grid.widths = *rc::gen::container<std::vector<int>>(static_cast<std::size_t>(columns),
                                                            rc::gen::element(20, 30));
        grid.heights = *rc::gen::container<std::vector<int>>(static_cast<std::size_t>(rowCount),
                                                             rc::gen::element(20, 30));
        for (int row = 0; row < rowCount; ++row) {
            grid.rows.push_back(*rc::gen::container<std::string>(
                static_cast<std::size_t>(columns), rc::gen::elementOf(std::string("AAB"))));
        }
        const bool endGrain = *rc::gen::arbitrary<bool>();

        Field field = letters(grid.rows);
        for (std::size_t i = 0; i < field.columns.size(); ++i) {
            field.columns[i] = Length::mm(grid.widths[i]);
        }
        for (std::size_t i = 0; i < field.rows.size(); ++i) {
            field.rows[i] = Length::mm(grid.heights[i]);
        }
        Choices merge;
        merge.mergeLike = true;
        const Result<Plan> made =
            plan(boardOf(field, endGrain ? Build::EndGrain : Build::LongGrain), endlessWoods(2),
                 notesShop(), merge);
        RC_ASSERT(made.ok());
        RC_ASSERT(made->glueUps ==
                  std::min(closedForm(grid, endGrain), closedForm(turned(grid), endGrain)));
    }));
}

}  // namespace
}  // namespace kerfwright
