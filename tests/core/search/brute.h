// The fewest glue-ups of small pictures of equal square cells, found the long way and without
// anything of the search: by trying sets of blocks, one larger each time.
#pragma once

#include <cstdint>
#include <unordered_map>
#include <vector>

namespace kerfwright::searching {

/// Up to 4 x 4 cells of up to 4 woods.
struct Cells {
    int columns = 0, rows = 0;
    std::uint32_t woods = 0;  ///< two bits a cell, row by row, 4 cells a row
    int wood(int column, int row) const {
        return static_cast<int>(woods >> (2 * (row * 4 + column)) & 3);
    }
    void set(int column, int row, int wood) {
        woods |= static_cast<std::uint32_t>(wood) << (2 * (row * 4 + column));
    }
};

enum class Rule {
    EndGrain,   ///< eight ways to lay a block; its height matters
    Thinned,    ///< eight ways; a row of full-height strips counts in any height
    GrainDown,  ///< four ways; a row of full-height strips counts in any height
};

class BruteForce {
public:
    BruteForce(Rule rule, bool mergeLike)
        : rule_(rule)
        , mergeLike_(mergeLike) {}
    int fewest(const Cells& cells);

private:
    using Set = std::vector<int>;
    std::uint64_t canonical(const Cells& cells) const;
    int number(const Cells& cells);
    const std::vector<Set>& ways(int number);
    bool within(int limit, Set& made, std::size_t parted);

    Rule rule_;
    bool mergeLike_;
    std::unordered_map<std::uint64_t, int> numbers_;
    std::vector<Cells> blocks_;
    std::vector<std::vector<Set>> ways_;  ///< which other blocks each way of parting wants
    std::vector<bool> known_;
};

}  // namespace kerfwright::searching
