#include "core/search/picture.h"

#include "core/measure/at.h"

#include <algorithm>
#include <limits>
#include <tuple>
#include <utility>

namespace kerfwright {
namespace {

struct Rectangle {
    Length left, right, top, bottom;
    int wood = 0;
    int piece = 0;
};

bool within(Length size, Length limit) {
    return limit == Length() || size <= limit;
}

int lineAt(const std::vector<Length>& lines, Length where) {
    return static_cast<int>(std::lower_bound(lines.begin(), lines.end(), where) - lines.begin());
}

void sortLines(std::vector<Length>& lines) {
    std::sort(lines.begin(), lines.end());
    lines.erase(std::unique(lines.begin(), lines.end()), lines.end());
}

/// Fills in lines, tiles and cells; everything else is kept.
void lay(Picture& picture, const std::vector<Rectangle>& rectangles) {
    picture.xs.clear();
    picture.ys.clear();
    for (const Rectangle& each : rectangles) {
        picture.xs.insert(picture.xs.end(), {each.left, each.right});
        picture.ys.insert(picture.ys.end(), {each.top, each.bottom});
    }
    sortLines(picture.xs);
    sortLines(picture.ys);
    picture.tiles.clear();
    for (const Rectangle& each : rectangles) {
        picture.tiles.push_back({lineAt(picture.xs, each.left), lineAt(picture.xs, each.right),
                                 lineAt(picture.ys, each.top), lineAt(picture.ys, each.bottom),
                                 each.wood, each.piece});
    }
    std::sort(picture.tiles.begin(), picture.tiles.end(), [](const Tile& a, const Tile& b) {
        return std::tie(a.top, a.left) < std::tie(b.top, b.left);
    });
    picture.tileAt.assign(at(picture.columns()) * at(picture.rows()), 0);
    for (std::size_t i = 0; i < picture.tiles.size(); ++i) {
        const Tile& tile = picture.tiles[i];
        for (int row = tile.top; row < tile.bottom; ++row) {
            for (int column = tile.left; column < tile.right; ++column) {
                picture.tileAt[at(row * picture.columns() + column)] = static_cast<int>(i);
            }
        }
    }
}

std::vector<Rectangle> rectanglesOf(const Picture& picture) {
    std::vector<Rectangle> all;
    for (const Tile& tile : picture.tiles) {
        all.push_back({picture.xs[at(tile.left)], picture.xs[at(tile.right)],
                       picture.ys[at(tile.top)], picture.ys[at(tile.bottom)], tile.wood,
                       tile.piece});
    }
    return all;
}

/// The widest of `parts` parts of a length, none of which is more than a nanometre wider than
/// another; the last ones are the wider ones.
Length widest(Length whole, int parts) {
    return Length::nm((whole.nm() + parts - 1) / parts);
}

/// Where part `i` of `parts` ends.
Length endOf(Length begin, Length whole, int parts, int i) {
    const std::int64_t each = whole.nm() / parts;
    const std::int64_t wider = whole.nm() % parts;
    return begin + Length::nm(each * i + std::max<std::int64_t>(0, i - (parts - wider)));
}

/// A count at which parts fall on 0.1 mm or 1/64 in, at most twice what is asked for; else as
/// asked.
int rounder(Length whole, int atLeast) {
    for (const Length grid : {Length::um(100), Length::inch(1, 64)}) {
        for (int count = atLeast; atLeast > 1 && count <= 2 * atLeast; ++count) {
            if (whole.nm() % grid.nm() == 0 && (whole.nm() / grid.nm()) % count == 0) {
                return count;
            }
        }
    }
    return atLeast;
}

/// Into how many parts across and down; the fewest that fit, wide ones before tall ones.
std::pair<int, int> division(const Picture& picture, const Rectangle& one) {
    const Length width = one.right - one.left;
    const Length height = one.bottom - one.top;
    const auto most = [](Length size) {  // no part thinner than a cell may be
        return static_cast<int>(std::max<std::int64_t>(1, size.nm() / BoardLimits::leastCell.nm()));
    };
    std::pair<int, int> best{1, 1};
    int fewest = std::numeric_limits<int>::max();
    for (int across = 1; across <= most(width) && across < fewest; ++across) {
        for (int down = 1; down <= most(height) && across * down < fewest; ++down) {
            if (picture.fitsTimber(one.wood, widest(width, across), widest(height, down))) {
                best = {across, down};
                fewest = across * down;
            }
        }
    }
    return {rounder(width, best.first), rounder(height, best.second)};
}

}  // namespace

bool Picture::fitsTimber(int wood, Length width, Length height) const {
    if (at(wood) >= greatest.size()) {
        return true;
    }
    const StripLimit& limit = greatest[at(wood)];
    switch (laying) {
    case Laying::EndGrain:
        return (within(width, limit.width) && within(height, limit.thickness)) ||
               (within(width, limit.thickness) && within(height, limit.width));
    case Laying::GrainDown:
        return within(width, limit.width);
    case Laying::GrainAcross:
        return within(height, limit.width);
    }
    return false;
}

Picture pictureOf(const Field& field, Laying laying, bool mergeLike,
                  const std::vector<StripLimit>& greatest) {
    Picture picture;
    picture.laying = laying;
    picture.mergeLike = mergeLike;
    picture.greatest = greatest;
    const auto edgesOf = [](const std::vector<Length>& sizes) {
        std::vector<Length> edges{Length()};
        for (const Length size : sizes) {
            edges.push_back(edges.back() + size);
        }
        return edges;
    };
    const std::vector<Length> xs = edgesOf(field.columns);
    const std::vector<Length> ys = edgesOf(field.rows);
    std::vector<Rectangle> rectangles;
    std::vector<Joint> joints;
    for (std::size_t i = 0; i < field.pieces.size(); ++i) {
        const Piece& piece = field.pieces[i];
        const Rectangle whole{xs[at(piece.column)], xs[at(piece.column + piece.across)],
                              ys[at(piece.row)],    ys[at(piece.row + piece.down)],
                              piece.wood,           static_cast<int>(i)};
        rectangles.push_back(whole);
        const auto [across, down] = division(picture, whole);
        for (int part = 1; part < across; ++part) {
            joints.push_back({true, endOf(whole.left, whole.right - whole.left, across, part),
                              whole.top, whole.bottom});
        }
        for (int part = 1; part < down; ++part) {
            joints.push_back({false, endOf(whole.top, whole.bottom - whole.top, down, part),
                              whole.left, whole.right});
        }
    }
    lay(picture, rectangles);
    return joints.empty() ? picture : withJoints(picture, joints);
}

Picture withJoints(const Picture& picture, const std::vector<Joint>& joints) {
    Picture result = picture;
    std::vector<Rectangle> rectangles = rectanglesOf(picture);
    for (const Joint& joint : joints) {
        const std::size_t before = rectangles.size();
        for (std::size_t i = 0; i < before; ++i) {
            const Rectangle whole = rectangles[i];
            if (joint.vertical && whole.left < joint.at && joint.at < whole.right &&
                joint.from <= whole.top && whole.bottom <= joint.to) {
                rectangles[i].right = joint.at;
                rectangles.push_back(whole);
                rectangles.back().left = joint.at;
            } else if (!joint.vertical && whole.top < joint.at && joint.at < whole.bottom &&
                       joint.from <= whole.left && whole.right <= joint.to) {
                rectangles[i].bottom = joint.at;
                rectangles.push_back(whole);
                rectangles.back().top = joint.at;
            }
        }
    }
    lay(result, rectangles);
    result.extraJoints.insert(result.extraJoints.end(), joints.begin(), joints.end());
    std::sort(result.extraJoints.begin(), result.extraJoints.end());
    result.extraJoints.erase(std::unique(result.extraJoints.begin(), result.extraJoints.end()),
                             result.extraJoints.end());
    return result;
}

}  // namespace kerfwright
