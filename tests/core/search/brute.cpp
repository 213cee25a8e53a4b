#include "tests/core/search/brute.h"

#include <algorithm>

namespace kerfwright::searching {
namespace {

constexpr int free = -1;

Cells part(const Cells& cells, int left, int right, int top, int bottom) {
    Cells result{right - left, bottom - top, 0};
    for (int row = top; row < bottom; ++row)
        for (int column = left; column < right; ++column)
            result.set(column - left, row - top, cells.wood(column, row));
    return result;
}

/// Mirrored and transposed make all eight ways.
Cells laid(const Cells& cells, bool mirrorX, bool mirrorY, bool transpose) {
    Cells result{transpose ? cells.rows : cells.columns, transpose ? cells.columns : cells.rows, 0};
    for (int row = 0; row < cells.rows; ++row) {
        for (int column = 0; column < cells.columns; ++column) {
            const int x = mirrorX ? cells.columns - 1 - column : column;
            const int y = mirrorY ? cells.rows - 1 - row : row;
            result.set(transpose ? y : x, transpose ? x : y, cells.wood(column, row));
        }
    }
    return result;
}

bool sameDown(const Cells& cells) {
    const std::uint32_t first = cells.woods & 0xff;
    for (int row = 1; row < std::min(cells.rows, 4); ++row)
        if ((cells.woods >> (8 * row) & 0xff) != first)
            return false;
    return true;
}

std::uint64_t code(const Cells& cells) {
    return static_cast<std::uint64_t>(cells.columns * 8 + cells.rows) << 32 | cells.woods;
}

}  // namespace

std::uint64_t BruteForce::canonical(const Cells& cells) const {
    std::uint64_t least = ~std::uint64_t{0};
    for (int way = 0; way < (rule_ == Rule::GrainDown ? 4 : 8); ++way) {
        Cells one = laid(cells, (way & 1) != 0, (way & 2) != 0, (way & 4) != 0);
        const bool row = mergeLike_ ? sameDown(one) : one.rows == 1;
        if (rule_ != Rule::EndGrain && row)
            one = part(one, 0, one.columns, 0, 1);
        least = std::min(least, code(one));
    }
    return least;
}

int BruteForce::number(const Cells& cells) {
    const bool oneWood = sameDown(cells) && sameDown(laid(cells, false, false, true));
    if (mergeLike_ ? oneWood : cells.columns == 1 && cells.rows == 1)
        return free;
    const auto [found, isNew] =
        numbers_.emplace(canonical(cells), static_cast<int>(blocks_.size()));
    if (isNew) {
        blocks_.push_back(cells);
        ways_.emplace_back();
        known_.push_back(false);
    }
    return found->second;
}

const std::vector<BruteForce::Set>& BruteForce::ways(int number) {
    if (known_[static_cast<std::size_t>(number)])
        return ways_[static_cast<std::size_t>(number)];
    std::vector<Set> all;
    const Cells cells = blocks_[static_cast<std::size_t>(number)];
    for (const bool alongX : {true, false}) {
        const int size = alongX ? cells.columns : cells.rows;
        for (unsigned lines = 1; lines < 1u << (size - 1); ++lines) {
            Set wanted;
            int from = 0;
            for (int to = 1; to <= size; ++to) {
                if (to < size && (lines >> (to - 1) & 1) == 0)
                    continue;
                const int each = this->number(alongX ? part(cells, from, to, 0, cells.rows)
                                                     : part(cells, 0, cells.columns, from, to));
                if (each != free)
                    wanted.push_back(each);
                from = to;
            }
            std::sort(wanted.begin(), wanted.end());
            wanted.erase(std::unique(wanted.begin(), wanted.end()), wanted.end());
            if (std::find(wanted.begin(), wanted.end(), number) == wanted.end())
                all.push_back(wanted);
        }
    }
    std::sort(all.begin(), all.end());
    all.erase(std::unique(all.begin(), all.end()), all.end());
    known_[static_cast<std::size_t>(number)] = true;
    return ways_[static_cast<std::size_t>(number)] = all;
}

/// Whether the blocks from `parted` on can be parted with at most `limit` blocks in all.
bool BruteForce::within(int limit, Set& made, std::size_t parted) {
    if (parted == made.size())
        return true;
    const std::vector<Set> all = ways(made[parted]);
    for (const Set& way : all) {
        const std::size_t before = made.size();
        for (const int each : way)
            if (std::find(made.begin(), made.end(), each) == made.end())
                made.push_back(each);
        const bool good = static_cast<int>(made.size()) <= limit && within(limit, made, parted + 1);
        made.resize(before);
        if (good)
            return true;
    }
    return false;
}

int BruteForce::fewest(const Cells& cells) {
    const int whole = number(cells);
    if (whole == free)
        return 0;
    for (int limit = 1;; ++limit) {
        Set made{whole};
        if (within(limit, made, 0))
            return limit;
    }
}

}  // namespace kerfwright::searching
