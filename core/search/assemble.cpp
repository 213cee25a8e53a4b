#include "core/search/assemble.h"

#include "core/measure/at.h"
#include "core/search/painted.h"

#include <algorithm>
#include <limits>
#include <map>
#include <set>
#include <tuple>
#include <utility>

namespace kerfwright::kinds {
namespace {

struct Face {
    Length width, height;
    std::vector<PaintedStrip> strips;  ///< sorted
};

/// How a kind is parted: the boxes of its members, within the rectangle that shows it.
struct Parting {
    bool alongX = true;
    std::vector<Box> parts;
};

class Assembly {
public:
    Assembly(Ways& ways, const std::vector<int>& set)
        : ways_(ways)
        , kinds_(ways.kinds())
        , picture_(kinds_.picture())
        , set_(set.begin(), set.end()) {}

    std::optional<Construction> construction();
    int members();

private:
    bool begin();
    Length width(const Box& box) const {
        return picture_.xs[at(box.right)] - picture_.xs[at(box.left)];
    }
    Length height(const Box& box) const {
        return picture_.ys[at(box.bottom)] - picture_.ys[at(box.top)];
    }
    Box whole() const {
        return {0, static_cast<std::int16_t>(picture_.columns()), 0,
                static_cast<std::int16_t>(picture_.rows())};
    }
    bool part(int kind);
    std::vector<Box> shortest(int kind, bool alongX);
    void want(int kind);
    Face face(const Box& box) const;
    int strip(Length width, Length height, int wood);
    int word(int kind, Length across);
    int block(const Box& box);
    std::optional<Placing> placing(const Face& from, const Face& to) const;
    bool wordAlongX(const Box& box) const;
    Length across(const Box& box) const { return wordAlongX(box) ? height(box) : width(box); }

    Ways& ways_;
    const Kinds& kinds_;
    const Picture& picture_;
    std::set<int> set_;
    std::map<int, Parting> partings_;
    std::map<int, std::set<Length, std::greater<>>> heights_;  ///< of words, tallest first
    std::map<std::tuple<Length, Length, int>, int> strips_;
    std::map<std::pair<int, Length>, int> words_;
    std::map<int, int> blocks_;
    std::map<int, Face> faces_;  ///< of blocks
    Construction result_;
    bool failed_ = false;
};

bool Assembly::wordAlongX(const Box& box) const {
    // A word's strips run through: two cells, one below the other, never differ where it lies
    // along x.
    for (int row = box.top + 1; row < box.bottom; ++row) {
        const Tile& one = picture_.tile(box.left, row - 1);
        const Tile& other = picture_.tile(box.left, row);
        if (picture_.mergeLike ? one.wood != other.wood : &one != &other) {
            return false;
        }
    }
    return true;
}

/// What the box looks like: tiles, or the strips of a word.
Face Assembly::face(const Box& box) const {
    Face face{width(box), height(box), {}};
    const int kind = kinds_.of(box);
    const Length x = picture_.xs[at(box.left)];
    const Length y = picture_.ys[at(box.top)];
    if (kind != freeKind && !kinds_.isWord(kind)) {
        for (int row = box.top; row < box.bottom; ++row) {
            for (int column = box.left; column < box.right; ++column) {
                const Tile& tile = picture_.tile(column, row);
                if (tile.left == column && tile.top == row) {
                    face.strips.push_back({picture_.xs[at(tile.left)] - x,
                                           picture_.xs[at(tile.right)] - x,
                                           picture_.ys[at(tile.top)] - y,
                                           picture_.ys[at(tile.bottom)] - y, tile.wood});
                }
            }
        }
        std::sort(face.strips.begin(), face.strips.end());
        return face;
    }
    const bool alongX = wordAlongX(box);
    const int end = alongX ? box.right : box.bottom;
    const int begin = alongX ? box.left : box.top;
    const Tile* before = nullptr;
    for (int i = begin; i < end; ++i) {
        const Tile& tile = alongX ? picture_.tile(i, box.top) : picture_.tile(box.left, i);
        const Length to = alongX ? picture_.xs[at(i + 1)] - x : picture_.ys[at(i + 1)] - y;
        const bool same =
            before != nullptr && (picture_.mergeLike ? before->wood == tile.wood : before == &tile);
        if (!same) {
            const Length from = alongX ? picture_.xs[at(i)] - x : picture_.ys[at(i)] - y;
            face.strips.push_back(alongX ? PaintedStrip{from, to, {}, face.height, tile.wood}
                                         : PaintedStrip{{}, face.width, from, to, tile.wood});
        }
        (alongX ? face.strips.back().right : face.strips.back().bottom) = to;
        before = &tile;
    }
    return face;
}

std::vector<Box> Assembly::shortest(int kind, bool alongX) {
    const Ways::Direction way = ways_.of(kind)[alongX ? 0 : 1];
    constexpr int never = std::numeric_limits<int>::max() / 2;
    std::vector<int> members(at(way.count), never);
    std::vector<int> before(at(way.count), -1);
    members[0] = 0;
    for (int to = 1; to < way.count; ++to) {
        for (int from = 0; from < to; ++from) {
            const int each = way.part(from, to);
            const bool usable = each == freeKind || (each > 0 && each != kind && set_.count(each));
            if (usable && members[at(from)] + 1 < members[at(to)]) {
                members[at(to)] = members[at(from)] + 1;
                before[at(to)] = from;
            }
        }
    }
    std::vector<Box> parts;
    if (members.back() < never) {
        const Box& box = kinds_.shown(kind);
        for (int to = way.count - 1; to > 0; to = before[at(to)]) {
            const std::int16_t first = way.lines[before[at(to)]];
            const std::int16_t last = way.lines[to];
            parts.push_back(alongX ? Box{first, last, box.top, box.bottom}
                                   : Box{box.left, box.right, first, last});
        }
        std::reverse(parts.begin(), parts.end());
    }
    return parts;
}

bool Assembly::part(int kind) {
    const std::vector<Box> across = shortest(kind, true);
    const std::vector<Box> down = shortest(kind, false);
    const bool alongX = down.empty() || (!across.empty() && across.size() <= down.size());
    partings_[kind] = {alongX, alongX ? across : down};
    return !partings_[kind].parts.empty();
}

void Assembly::want(int kind) {
    if (kinds_.isWord(kind) || partings_.count(kind) != 0) {
        return;
    }
    if (!part(kind)) {
        failed_ = true;
        return;
    }
    for (const Box& box : std::vector<Box>(partings_[kind].parts)) {
        const int each = kinds_.of(box);
        if (each == freeKind) {
            continue;
        }
        if (kinds_.isWord(each)) {
            heights_[each].insert(across(box));
        }
        want(each);
    }
}

int Assembly::strip(Length width, Length height, int wood) {
    const auto [found, isNew] =
        strips_.emplace(std::tuple(width, height, wood), static_cast<int>(result_.blocks.size()));
    if (isNew) {
        result_.blocks.push_back({width, height, wood, JoinedAlong::X, {}});
    }
    return found->second;
}

int Assembly::word(int kind, Length across) {
    const auto known = words_.find({kind, across});
    if (known != words_.end()) {
        return known->second;
    }
    const Box& box = kinds_.shown(kind);
    const bool alongX = wordAlongX(box);
    Face face = this->face(box);
    (alongX ? face.height : face.width) = across;
    Block block{face.width, face.height, -1, alongX ? JoinedAlong::X : JoinedAlong::Y, {}};
    for (PaintedStrip& each : face.strips) {
        (alongX ? each.bottom : each.right) = across;
        block.members.push_back(
            {strip(each.right - each.left, each.bottom - each.top, each.wood), {}});
    }
    const Length tallest = *heights_[kind].begin();
    block.sameGlueUpAs = tallest == across ? -1 : word(kind, tallest);
    const int index = static_cast<int>(result_.blocks.size());
    result_.blocks.push_back(std::move(block));
    words_[{kind, across}] = index;
    faces_[index] = std::move(face);
    return index;
}

std::optional<Placing> Assembly::placing(const Face& from, const Face& to) const {
    const bool all = picture_.laying == Laying::EndGrain;
    for (int i = 0; i < 8; ++i) {
        // The plainest ways first: as it is, flipped, turned over.
        const Placing placing{(i & 2) != 0, (i & 1) * 2 + (i >> 2)};
        if (i >= 4 && !all) {
            break;
        }
        std::vector<PaintedStrip> strips = from.strips;
        if (laidStrips(strips, from.width, from.height, placing) ==
            std::pair(to.width, to.height)) {
            std::sort(strips.begin(), strips.end());
            if (strips == to.strips) {
                return placing;
            }
        }
    }
    return std::nullopt;
}

int Assembly::block(const Box& box) {
    const int kind = kinds_.of(box);
    if (kind == freeKind) {
        return strip(width(box), height(box), picture_.tile(box.left, box.top).wood);
    }
    if (kinds_.isWord(kind)) {
        return word(kind, across(box));
    }
    const auto known = blocks_.find(kind);
    if (known != blocks_.end()) {
        return known->second;
    }
    const Box shown = kinds_.shown(kind);
    const Parting& parting = partings_[kind];
    Block block{
        width(shown), height(shown), -1, parting.alongX ? JoinedAlong::X : JoinedAlong::Y, {}};
    for (const Box& each : parting.parts) {
        const int made = this->block(each);
        if (failed_) {
            return -1;
        }
        Placing laid;
        if (kinds_.of(each) != freeKind) {
            const std::optional<Placing> found = placing(faces_[made], face(each));
            failed_ = failed_ || !found;
            laid = found.value_or(Placing());
        }
        block.members.push_back({made, laid});
    }
    const int index = static_cast<int>(result_.blocks.size());
    result_.blocks.push_back(std::move(block));
    blocks_[kind] = index;
    faces_[index] = face(shown);
    return index;
}

/// Parts everything that the whole picture wants.
bool Assembly::begin() {
    const int kind = kinds_.whole();
    if (kind == none) {
        return false;
    }
    if (kind != freeKind) {
        if (kinds_.isWord(kind)) {
            heights_[kind].insert(across(whole()));
        }
        want(kind);
    }
    return !failed_;
}

int Assembly::members() {
    if (!begin()) {
        return -1;
    }
    std::size_t sum = 0;
    for (const auto& [kind, parting] : partings_) {
        sum += parting.parts.size();
    }
    for (const auto& [kind, heights] : heights_) {
        sum += face(kinds_.shown(kind)).strips.size();
    }
    return static_cast<int>(sum);
}

std::optional<Construction> Assembly::construction() {
    if (!begin()) {
        return std::nullopt;
    }
    block(whole());
    if (failed_ || !makes(result_, picture_)) {
        return std::nullopt;
    }
    result_.extraJoints = extraJointsMade(painted(result_), picture_);
    return std::move(result_);
}

}  // namespace

std::optional<Construction> assemble(Ways& ways, const std::vector<int>& set) {
    return Assembly(ways, set).construction();
}

int fewestMembers(Ways& ways, const std::vector<int>& set) {
    return Assembly(ways, set).members();
}

}  // namespace kerfwright::kinds
