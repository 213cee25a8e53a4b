#include "core/search/locked.h"

#include "core/measure/at.h"

#include <algorithm>
#include <limits>
#include <map>
#include <set>
#include <tuple>

namespace kerfwright {
namespace {

struct Region {
    int left = 0, right = 0, top = 0, bottom = 0;
    friend auto operator<=>(const Region&, const Region&) = default;
    int cells() const { return (right - left) * (bottom - top); }
};

/// Tiles that are crossed by a line down the region (`vertical`) or across it, in order.
std::vector<int> crossed(const Picture& picture, const Region& region, bool vertical, int line) {
    std::vector<int> tiles;
    const int end = vertical ? region.bottom : region.right;
    for (int i = vertical ? region.top : region.left; i < end; ++i) {
        const int before = vertical ? picture.tileAt[at(i * picture.columns() + line - 1)]
                                    : picture.tileAt[at((line - 1) * picture.columns() + i)];
        const int after = vertical ? picture.tileAt[at(i * picture.columns() + line)]
                                   : picture.tileAt[at(line * picture.columns() + i)];
        if (before == after && (tiles.empty() || tiles.back() != before)) {
            tiles.push_back(before);
        }
    }
    return tiles;
}

/// Whether the region is one strip: one tile or a part of it, or one wood where like neighbours
/// merge and timber is large enough.
bool isOneStrip(const Picture& picture, const Region& region) {
    const Tile& first = picture.tile(region.left, region.top);
    if (first.right >= region.right && first.bottom >= region.bottom) {
        return true;
    }
    if (!picture.mergeLike ||
        !picture.fitsTimber(first.wood, picture.xs[at(region.right)] - picture.xs[at(region.left)],
                            picture.ys[at(region.bottom)] - picture.ys[at(region.top)])) {
        return false;
    }
    for (int row = region.top; row < region.bottom; ++row) {
        for (int column = region.left; column < region.right; ++column) {
            if (picture.tile(column, row).wood != first.wood) {
                return false;
            }
        }
    }
    return true;
}

/// Parts a region along all its free lines, again and again. What is left are tiles and regions
/// without a free line.
std::vector<Region> lockedRegions(const Picture& picture) {
    std::vector<Region> locked;
    std::vector<Region> open{{0, picture.columns(), 0, picture.rows()}};
    while (!open.empty()) {
        const Region region = open.back();
        open.pop_back();
        if (isOneStrip(picture, region)) {
            continue;
        }
        bool parted = false;
        for (const bool vertical : {true, false}) {
            const int from = vertical ? region.left : region.top;
            const int to = vertical ? region.right : region.bottom;
            for (int line = from + 1; line < to && !parted; ++line) {
                if (!crossed(picture, region, vertical, line).empty()) {
                    continue;
                }
                parted = true;
                Region before = region;
                Region after = region;
                (vertical ? before.right : before.bottom) = line;
                (vertical ? after.left : after.top) = line;
                open.push_back(after);
                open.push_back(before);
            }
        }
        if (!parted) {
            locked.push_back(region);
        }
    }
    return locked;
}

/// The fewest joints inside tiles that free a region, by the best first line of every part. A part
/// of a tile that a line cuts is as good as a tile.
class Freeing {
public:
    Freeing(const Picture& picture, std::size_t most)
        : picture_(picture)
        , most_(most) {}

    int fewest(const Region& region) {
        if (isOneStrip(picture_, region)) {
            return 0;
        }
        const auto known = best_.find(region);
        if (known != best_.end()) {
            return known->second.joints;
        }
        Best best;
        for (const bool vertical : {true, false}) {
            const int from = vertical ? region.left : region.top;
            const int to = vertical ? region.right : region.bottom;
            for (int line = from + 1; line < to && best.joints > 0; ++line) {
                const int here = static_cast<int>(crossed(picture_, region, vertical, line).size());
                if (here >= best.joints) {
                    continue;
                }
                // A free line never does harm: what frees the whole frees both parts too. Where
                // there are too many regions, a line with the fewest joints is taken at once.
                const bool enough = here == 0;
                if (!enough && best_.size() > most_) {
                    exact_ = false;
                    if (best.joints < unknown) {
                        continue;
                    }
                }
                Region before = region;
                Region after = region;
                (vertical ? before.right : before.bottom) = line;
                (vertical ? after.left : after.top) = line;
                const int sum = here + fewest(before) + fewest(after);
                if (sum < best.joints || enough) {
                    best = {sum, vertical, line};
                }
                if (enough) {
                    best_[region] = best;
                    return best.joints;
                }
            }
        }
        best_[region] = best;
        return best.joints;
    }

    void collect(const Region& region, std::vector<Joint>& joints) const {
        const auto known = best_.find(region);
        if (known == best_.end()) {
            return;
        }
        const auto [sum, vertical, line] = known->second;
        for (const int index : crossed(picture_, region, vertical, line)) {
            const Tile& tile = picture_.tiles[at(index)];
            const int from =
                vertical ? std::max(tile.top, region.top) : std::max(tile.left, region.left);
            const int to = vertical ? std::min(tile.bottom, region.bottom)
                                    : std::min(tile.right, region.right);
            const std::vector<Length>& along = vertical ? picture_.ys : picture_.xs;
            joints.push_back({vertical, vertical ? picture_.xs[at(line)] : picture_.ys[at(line)],
                              along[at(from)], along[at(to)]});
        }
        Region before = region;
        Region after = region;
        (vertical ? before.right : before.bottom) = line;
        (vertical ? after.left : after.top) = line;
        collect(before, joints);
        collect(after, joints);
    }

    bool isExact() const { return exact_; }

private:
    static constexpr int unknown = std::numeric_limits<int>::max();
    struct Best {
        int joints = unknown;
        bool vertical = true;
        int line = 0;
    };
    const Picture& picture_;
    std::size_t most_;
    bool exact_ = true;
    std::map<Region, Best> best_;
};

/// Pieces of a locked region that hold each other: as long as they stay whole, no line runs through
/// it. None of them can be spared; where there is a choice small pieces are left out.
std::vector<int> lockingPieces(const Picture& picture, const Region& region) {
    std::vector<std::vector<int>> lines;
    std::map<int, int> crossedLines;
    for (const bool vertical : {true, false}) {
        const int from = vertical ? region.left : region.top;
        const int to = vertical ? region.right : region.bottom;
        for (int line = from + 1; line < to; ++line) {
            lines.push_back(crossed(picture, region, vertical, line));
            for (const int tile : lines.back()) {
                ++crossedLines[tile];
            }
        }
    }
    std::vector<std::pair<int, int>> bySize;
    bySize.reserve(crossedLines.size());
    for (const auto& [tile, times] : crossedLines) {
        bySize.emplace_back(times, tile);
    }
    std::sort(bySize.begin(), bySize.end());
    std::set<int> spared;
    for (const auto& [times, tile] : bySize) {
        spared.insert(tile);
        const bool stillLocked =
            std::all_of(lines.begin(), lines.end(), [&](const std::vector<int>& line) {
                return std::any_of(line.begin(), line.end(),
                                   [&](int each) { return spared.count(each) == 0; });
            });
        if (!stillLocked) {
            spared.erase(tile);
        }
    }
    std::vector<int> pieces;
    for (const auto& [times, tile] : bySize) {
        if (spared.count(tile) == 0) {
            pieces.push_back(picture.tiles[at(tile)].piece);
        }
    }
    return pieces;
}

}  // namespace

bool isGuillotine(const Picture& picture) {
    return lockedRegions(picture).empty();
}

Locked lockedPieces(const Picture& picture) {
    constexpr std::size_t mostRegions = 200'000;
    Locked result;
    for (const Region& region : lockedRegions(picture)) {
        const std::vector<int> pieces = lockingPieces(picture, region);
        result.pieces.insert(result.pieces.end(), pieces.begin(), pieces.end());
        Freeing freeing(picture, mostRegions);
        freeing.fewest(region);
        freeing.collect(region, result.freeing);
        result.fewest = result.fewest && freeing.isExact();
    }
    std::sort(result.pieces.begin(), result.pieces.end());
    result.pieces.erase(std::unique(result.pieces.begin(), result.pieces.end()),
                        result.pieces.end());
    std::sort(result.freeing.begin(), result.freeing.end());
    return result;
}

}  // namespace kerfwright
