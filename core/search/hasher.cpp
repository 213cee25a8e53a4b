#include "core/search/hasher.h"

#include "core/measure/at.h"

#include <algorithm>

namespace kerfwright::kinds {
namespace {

std::uint64_t bits(Length length) {
    return static_cast<std::uint64_t>(length.nm());
}

/// A number for a wood and a size. Order matters.
Residue element(std::uint64_t seed, int wood, Length first, Length second) {
    const Residue base = scattered(seed + static_cast<std::uint64_t>(wood) + 1);
    return scattered(scattered(base + bits(first)) + bits(second));
}

}  // namespace

Kinds::Hasher::Hasher(const Picture& picture, bool heightFree, std::uint64_t seed)
    : picture_(picture)
    , columns_(picture.columns())
    , rows_(picture.rows())
    , heightFree_(heightFree)
    , ways_(picture.laying == Laying::EndGrain ? 8 : 4) {
    const Residue bases[2] = {scattered(seed * 2 + 1), scattered(seed * 2 + 2)};
    const Residue inverses[2] = {inverse(bases[0]), inverse(bases[1])};
    const auto lines = [&](const std::vector<Length>& positions) {
        std::vector<Line> result;
        for (const Length position : positions) {
            const std::uint64_t exponent = bits(position);
            result.push_back({{power(bases[0], exponent), power(bases[1], exponent)},
                              {power(inverses[0], exponent), power(inverses[1], exponent)}});
        }
        return result;
    };
    acrossLines_ = lines(picture.xs);
    downLines_ = lines(picture.ys);
    sumBlocks(scattered(seed + 3));
    sumWords(scattered(seed + 4));
    sumChanges();
}

void Kinds::Hasher::sumBlocks(std::uint64_t seed) {
    blocks_.assign(at((columns_ + 1) * (rows_ + 1)) * 8, 0);
    for (const Tile& tile : picture_.tiles) {
        const Length width = picture_.xs[at(tile.right)] - picture_.xs[at(tile.left)];
        const Length height = picture_.ys[at(tile.bottom)] - picture_.ys[at(tile.top)];
        const Residue value[2] = {element(seed, tile.wood, width, height),
                                  element(seed, tile.wood, height, width)};
        Residue* const sums = &blocks_[point(tile.left + 1, tile.top + 1) * 8];
        for (int way = 0; way < 8; ++way) {
            const int turned = way / 4;  // the bases change places
            const Residue x = (way & 1) != 0 ? acrossLines_[at(tile.right)].down[turned]
                                             : acrossLines_[at(tile.left)].up[turned];
            const Residue y = (way & 2) != 0 ? downLines_[at(tile.bottom)].down[1 - turned]
                                             : downLines_[at(tile.top)].up[1 - turned];
            sums[way] = times(value[turned], times(x, y));
        }
    }
    for (int row = 1; row <= rows_; ++row) {
        Residue left[8] = {};
        for (int column = 1; column <= columns_; ++column) {
            for (std::size_t way = 0; way < 8; ++way) {
                Residue& sum = blocks_[point(column, row) * 8 + way];
                left[way] = plus(left[way], sum);
                sum = plus(left[way], blocks_[point(column, row - 1) * 8 + way]);
            }
        }
    }
}

void Kinds::Hasher::sumWords(std::uint64_t seed) {
    rowWords_.assign(at((columns_ + 1) * (rows_ + 1)) * 2, 0);
    columnWords_.assign(rowWords_.size(), 0);
    // Where like neighbours merge, the sum over a strip must not show how many tiles it has.
    const auto forwards = [&](int wood, const Line& from, const Line& to, Length size) {
        return picture_.mergeLike ? times(element(seed, wood, {}, {}), minus(to.up[0], from.up[0]))
                                  : times(element(seed, wood, size, {}), from.up[0]);
    };
    const auto backwards = [&](int wood, const Line& from, const Line& to, Length size) {
        return picture_.mergeLike
                   ? times(element(seed, wood, {}, {}), minus(from.down[0], to.down[0]))
                   : times(element(seed, wood, size, {}), to.down[0]);
    };
    for (int row = 0; row < rows_; ++row) {
        for (int column = 0; column < columns_; ++column) {
            const Tile& tile = picture_.tile(column, row);
            Residue* const across = &rowWords_[point(column + 1, row) * 2];
            Residue* const down = &columnWords_[point(column, row + 1) * 2];
            for (std::size_t i = 0; i < 2; ++i) {
                across[i] = rowWords_[point(column, row) * 2 + i];
                down[i] = columnWords_[point(column, row) * 2 + i];
            }
            if (tile.left == column) {
                const Line& from = acrossLines_[at(tile.left)];
                const Line& to = acrossLines_[at(tile.right)];
                const Length size = picture_.xs[at(tile.right)] - picture_.xs[at(tile.left)];
                across[0] = plus(across[0], forwards(tile.wood, from, to, size));
                across[1] = plus(across[1], backwards(tile.wood, from, to, size));
            }
            if (tile.top == row) {
                const Line& from = downLines_[at(tile.top)];
                const Line& to = downLines_[at(tile.bottom)];
                const Length size = picture_.ys[at(tile.bottom)] - picture_.ys[at(tile.top)];
                down[0] = plus(down[0], forwards(tile.wood, from, to, size));
                down[1] = plus(down[1], backwards(tile.wood, from, to, size));
            }
        }
    }
}

bool Kinds::Hasher::differ(int column, int row, int otherColumn, int otherRow) const {
    const Tile& one = picture_.tile(column, row);
    const Tile& other = picture_.tile(otherColumn, otherRow);
    return picture_.mergeLike ? one.wood != other.wood : &one != &other;
}

void Kinds::Hasher::sumChanges() {
    changesDown_.assign(at((columns_ + 1) * (rows_ + 1)), 0);
    changesAcross_.assign(changesDown_.size(), 0);
    for (int row = 0; row < rows_; ++row) {
        int down = 0;
        int across = 0;
        for (int column = 0; column < columns_; ++column) {
            down += row > 0 && differ(column, row - 1, column, row) ? 1 : 0;
            across += column > 0 && differ(column - 1, row, column, row) ? 1 : 0;
            changesDown_[point(column + 1, row + 1)] = changesDown_[point(column + 1, row)] + down;
            changesAcross_[point(column + 1, row + 1)] =
                changesAcross_[point(column + 1, row)] + across;
        }
    }
}

int Kinds::Hasher::within(const std::vector<int>& sums, int left, int right, int top,
                          int bottom) const {
    if (left >= right || top >= bottom) {
        return 0;
    }
    return sums[point(right, bottom)] - sums[point(left, bottom)] - sums[point(right, top)] +
           sums[point(left, top)];
}

Residue Kinds::Hasher::block(const Box& box) const {
    const Residue* const inner = &blocks_[point(box.left, box.top) * 8];
    const Residue* const right = &blocks_[point(box.right, box.top) * 8];
    const Residue* const below = &blocks_[point(box.left, box.bottom) * 8];
    const Residue* const outer = &blocks_[point(box.right, box.bottom) * 8];
    const Line& left = acrossLines_[at(box.left)];
    const Line& farRight = acrossLines_[at(box.right)];
    const Line& top = downLines_[at(box.top)];
    const Line& bottom = downLines_[at(box.bottom)];
    Residue least = prime;
    for (int way = 0; way < ways_; ++way) {
        const int turned = way / 4;
        const Residue sum = minus(plus(outer[way], inner[way]), plus(right[way], below[way]));
        const Residue x = (way & 1) != 0 ? farRight.up[turned] : left.down[turned];
        const Residue y = (way & 2) != 0 ? bottom.up[1 - turned] : top.down[1 - turned];
        least = std::min(least, times(sum, times(x, y)));
    }
    return least;
}

bool Kinds::Hasher::heightMatters(bool alongX) const {
    switch (picture_.laying) {
    case Laying::EndGrain:
        return !heightFree_;
    case Laying::GrainDown:
        return !alongX;
    case Laying::GrainAcross:
        return alongX;
    }
    return true;
}

Residue Kinds::Hasher::word(const Box& box, bool alongX) const {
    const std::vector<Residue>& sums = alongX ? rowWords_ : columnWords_;
    const Residue* const from = &sums[point(box.left, box.top) * 2];
    const Residue* const to =
        &sums[(alongX ? point(box.right, box.top) : point(box.left, box.bottom)) * 2];
    const Line& first = alongX ? acrossLines_[at(box.left)] : downLines_[at(box.top)];
    const Line& last = alongX ? acrossLines_[at(box.right)] : downLines_[at(box.bottom)];
    const Residue forwards = times(minus(to[0], from[0]), first.down[0]);
    const Residue backwards = times(minus(to[1], from[1]), last.up[0]);
    // In long grain a word down and a word across are never the same.
    const std::uint64_t direction = ways_ == 8 || alongX ? 1 : 2;
    const Length height = alongX ? picture_.ys[at(box.bottom)] - picture_.ys[at(box.top)]
                                 : picture_.xs[at(box.right)] - picture_.xs[at(box.left)];
    return scattered(scattered(std::min(forwards, backwards) + direction) +
                     (heightMatters(alongX) ? bits(height) : 0));
}

bool Kinds::Hasher::fits(const Box& box, bool alongX) const {
    if (picture_.greatest.empty()) {
        return true;
    }
    const std::vector<Length>& lines = alongX ? picture_.xs : picture_.ys;
    const int end = alongX ? box.right : box.bottom;
    const auto strip = [&](int i) -> const Tile& {
        return alongX ? picture_.tile(i, box.top) : picture_.tile(box.left, i);
    };
    const Length height = alongX ? picture_.ys[at(box.bottom)] - picture_.ys[at(box.top)]
                                 : picture_.xs[at(box.right)] - picture_.xs[at(box.left)];
    int begin = alongX ? box.left : box.top;
    for (int i = begin + 1; i <= end; ++i) {
        if (i < end && (picture_.mergeLike ? strip(i).wood == strip(i - 1).wood
                                           : &strip(i) == &strip(i - 1))) {
            continue;
        }
        const Length size = lines[at(i)] - lines[at(begin)];
        if (!picture_.fitsTimber(strip(begin).wood, alongX ? size : height,
                                 alongX ? height : size)) {
            return false;
        }
        begin = i;
    }
    return true;
}

}  // namespace kerfwright::kinds
