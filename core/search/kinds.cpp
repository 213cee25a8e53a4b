#include "core/search/kinds.h"

#include "core/measure/at.h"
#include "core/search/hasher.h"

#include <algorithm>

namespace kerfwright::kinds {
namespace {

constexpr std::int64_t greatestTable = 8'000'000;
/// How many cells high or wide a box is at most, where not all boxes are looked at.
constexpr int thinAmongMany = 4;
constexpr int thinAmongVeryMany = 1;

std::int64_t pairs(int cells) {
    return static_cast<std::int64_t>(cells) * (cells + 1) / 2;
}

}  // namespace

Kinds::Kinds(const Picture& picture, bool heightFree, std::uint64_t seed, int mostKinds,
             const std::function<bool()>& goOn)
    : picture_(picture)
    , columns_(picture.columns())
    , rows_(picture.rows())
    , pairsAcross_(static_cast<std::size_t>(pairs(columns_)))
    , heightFree_(heightFree) {
    const std::int64_t all = pairs(columns_) * pairs(rows_);
    dense_ = all <= greatestTable;
    complete_ = dense_;
    countCrossings();
    const Hasher hasher(picture, heightFree, seed);
    look(hasher, mostKinds, goOn);
    if (complete_ && count() > mostKinds) {
        complete_ = false;
        look(hasher, mostKinds, goOn);
    }
}

void Kinds::countCrossings() {
    crossedDown_.assign(at((columns_ + 1) * (rows_ + 1)), 0);
    crossedAcross_ = crossedDown_;
    const auto point = [&](int column, int row) { return at(row * (columns_ + 1) + column); };
    const auto tileAt = [&](int column, int row) {
        return picture_.tileAt[at(row * columns_ + column)];
    };
    for (int row = 0; row < rows_; ++row) {
        for (int column = 0; column < columns_; ++column) {
            const bool left = column > 0 && tileAt(column - 1, row) == tileAt(column, row);
            const bool top = row > 0 && tileAt(column, row - 1) == tileAt(column, row);
            crossedDown_[point(column, row + 1)] =
                static_cast<std::int16_t>(crossedDown_[point(column, row)] + (left ? 1 : 0));
            crossedAcross_[point(column + 1, row)] =
                static_cast<std::int16_t>(crossedAcross_[point(column, row)] + (top ? 1 : 0));
        }
    }
}

void Kinds::lines(const Box& box, bool alongX, Lines& lines) const {
    lines.clear();
    const auto point = [&](int column, int row) { return at(row * (columns_ + 1) + column); };
    if (alongX) {
        for (std::int16_t i = box.left; i <= box.right; ++i) {
            if (i == box.left || i == box.right ||
                crossedDown_[point(i, box.top)] == crossedDown_[point(i, box.bottom)]) {
                lines.push_back(i);
            }
        }
        return;
    }
    for (std::int16_t i = box.top; i <= box.bottom; ++i) {
        if (i == box.top || i == box.bottom ||
            crossedAcross_[point(box.left, i)] == crossedAcross_[point(box.right, i)]) {
            lines.push_back(i);
        }
    }
}

bool Kinds::isTaken(const Box& box, bool alongX) const {
    const PanelLimit& limit = picture_.panels;
    const bool whole =
        box.left == 0 && box.top == 0 && box.right == columns_ && box.bottom == rows_;
    if (whole || limit == PanelLimit{}) {
        return true;
    }
    const Length width = picture_.xs[at(box.right)] - picture_.xs[at(box.left)];
    const Length height = picture_.ys[at(box.bottom)] - picture_.ys[at(box.top)];
    const auto fits = [](Length size, Length most) { return most == Length() || size <= most; };
    switch (picture_.laying) {
    case Laying::GrainDown:
        return fits(width, limit.widest);
    case Laying::GrainAcross:
        return fits(height, limit.widest);
    case Laying::EndGrain:
        break;
    }
    return fits(alongX ? width : height, limit.widest) &&
           fits(alongX ? height : width, limit.thickest);
}

int Kinds::sparse(std::size_t index) const {
    const auto found = few_.find(index);
    return found == few_.end() ? none : found->second;
}

int Kinds::numberOf(std::uint64_t hash, const Box& box, bool word, std::vector<std::uint64_t>& keys,
                    std::vector<std::int32_t>& values) {
    // Open addressing; grown at half full. 0 marks an empty place, and the least residue of
    // something is 0 so seldom that it may be taken for 1.
    hash = std::max<std::uint64_t>(hash, 1);
    std::size_t mask = keys.size() - 1;
    std::size_t place = static_cast<std::size_t>(hash * 0x9e3779b97f4a7c15 >> 20) & mask;
    while (keys[place] != 0 && keys[place] != hash) {
        place = (place + 1) & mask;
    }
    if (keys[place] == hash) {
        return values[place];
    }
    const int number = count();
    keys[place] = hash;
    values[place] = number;
    shown_.push_back(box);
    word_.push_back(word ? 1 : 0);
    if (shown_.size() * 2 > keys.size()) {
        std::vector<std::uint64_t> moreKeys(keys.size() * 4, 0);
        std::vector<std::int32_t> moreValues(moreKeys.size(), 0);
        mask = moreKeys.size() - 1;
        for (std::size_t i = 0; i < keys.size(); ++i) {
            if (keys[i] == 0) {
                continue;
            }
            place = static_cast<std::size_t>(keys[i] * 0x9e3779b97f4a7c15 >> 20) & mask;
            while (moreKeys[place] != 0) {
                place = (place + 1) & mask;
            }
            moreKeys[place] = keys[i];
            moreValues[place] = values[i];
        }
        keys.swap(moreKeys);
        values.swap(moreValues);
    }
    return number;
}

void Kinds::look(const Hasher& hasher, int mostKinds, const std::function<bool()>& goOn) {
    if (dense_) {
        number_.assign(static_cast<std::size_t>(pairs(columns_) * pairs(rows_)), none);
    }
    shown_.assign(1, {});
    word_.assign(1, 0);
    std::vector<std::uint64_t> keys(1024, 0);
    std::vector<std::int32_t> values(1024, 0);
    const auto crossedAcross = [&](int line, int from, int to) {
        const std::size_t row = at(line * (columns_ + 1));
        return line > 0 && line < rows_ &&
               crossedAcross_[row + at(from)] != crossedAcross_[row + at(to)];
    };
    thin_ = dense_ ? thinAmongMany : thinAmongVeryMany;
    Lines across;
    const auto lastRow = static_cast<std::int16_t>(rows_);
    for (std::int16_t top = 0; top < lastRow; ++top) {
        if ((complete_ && count() > mostKinds) || (goOn && !goOn())) {
            return;
        }
        for (auto bottom = static_cast<std::int16_t>(top + 1); bottom <= lastRow; ++bottom) {
            lines({0, static_cast<std::int16_t>(columns_), top, bottom}, true, across);
            for (std::size_t i = 0; i + 1 < across.size(); ++i) {
                for (std::size_t j = i + 1; j < across.size(); ++j) {
                    const Box box{across[i], across[j], top, bottom};
                    if (!isLookedAt(box)) {
                        continue;
                    }
                    if (crossedAcross(top, box.left, box.right) ||
                        crossedAcross(bottom, box.left, box.right)) {
                        continue;
                    }
                    const bool sameDown = hasher.sameDown(box);
                    const bool sameAcross = hasher.sameAcross(box);
                    int number = none;
                    if (sameDown && sameAcross && hasher.fits(box, true)) {
                        number = freeKind;
                    } else if (sameDown != sameAcross && hasher.fits(box, sameDown)) {
                        number = isTaken(box, sameDown)
                                     ? numberOf(hasher.word(box, sameDown), box, true, keys, values)
                                     : none;
                    } else if (isTaken(box, true) || isTaken(box, false)) {
                        number = numberOf(hasher.block(box), box, false, keys, values);
                    }
                    const std::size_t where = index(box.left, box.right, top, bottom);
                    if (dense_) {
                        number_[where] = number;
                    } else {
                        few_.emplace(where, number);
                    }
                }
            }
        }
    }
}

}  // namespace kerfwright::kinds
