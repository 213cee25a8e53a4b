#include "core/search/alike.h"

#include "core/measure/at.h"
#include "core/search/polynomial.h"

#include <algorithm>
#include <unordered_map>

namespace kerfwright::kinds {
namespace {

/// Above it the answer is yes without a look: nothing is proven about so many kinds anyway.
constexpr int manyKinds = 60'000;

/// The woods of a box on the lines at which they change, and nothing of its tiles.
class Look {
public:
    Look(const Picture& picture, const Box& box)
        : picture_(picture) {
        columns_ = changes(box.left, box.right, [&](int column) {
            for (int row = box.top; row < box.bottom; ++row) {
                if (wood(column - 1, row) != wood(column, row)) {
                    return true;
                }
            }
            return false;
        });
        rows_ = changes(box.top, box.bottom, [&](int row) {
            for (int column = box.left; column < box.right; ++column) {
                if (wood(column, row - 1) != wood(column, row)) {
                    return true;
                }
            }
            return false;
        });
    }

    Residue hash() const {
        Residue least = prime;
        for (int way = 0; way < (picture_.laying == Laying::EndGrain ? 8 : 4); ++way) {
            least = std::min(least, hash((way & 1) != 0, (way & 2) != 0, (way & 4) != 0));
        }
        return least;
    }

private:
    int wood(int column, int row) const { return picture_.tile(column, row).wood; }

    template <class Changes>
    std::vector<int> changes(int from, int to, Changes changesAt) {
        std::vector<int> lines{from};
        for (int line = from + 1; line < to; ++line) {
            if (changesAt(line)) {
                lines.push_back(line);
            }
        }
        lines.push_back(to);
        return lines;
    }

    Residue hash(bool mirrorX, bool mirrorY, bool turned) const {
        Residue sum = 1;
        const auto add = [&sum](std::int64_t number) {
            sum = scattered(sum + static_cast<std::uint64_t>(number));
        };
        const std::size_t across = columns_.size() - 1;
        const std::size_t down = rows_.size() - 1;
        const auto column = [&](std::size_t i) { return mirrorX ? across - 1 - i : i; };
        const auto row = [&](std::size_t i) { return mirrorY ? down - 1 - i : i; };
        const auto width = [&](std::size_t i) {
            return picture_.xs[at(columns_[column(i) + 1])] - picture_.xs[at(columns_[column(i)])];
        };
        const auto height = [&](std::size_t i) {
            return picture_.ys[at(rows_[row(i) + 1])] - picture_.ys[at(rows_[row(i)])];
        };
        const std::size_t outer = turned ? down : across;
        const std::size_t inner = turned ? across : down;
        for (std::size_t i = 0; i < outer; ++i) {
            add((turned ? height(i) : width(i)).nm());
            for (std::size_t j = 0; j < inner; ++j) {
                add((turned ? width(j) : height(j)).nm());
                add(turned ? wood(columns_[column(j)], rows_[row(i)])
                           : wood(columns_[column(i)], rows_[row(j)]));
            }
        }
        return sum;
    }

    const Picture& picture_;
    std::vector<int> columns_, rows_;
};

bool equalSteps(const std::vector<Length>& lines) {
    for (std::size_t i = 2; i < lines.size(); ++i) {
        if (lines[i] - lines[i - 1] != lines[1] - lines[0]) {
            return false;
        }
    }
    return true;
}

}  // namespace

bool someLookAlike(const Kinds& kinds) {
    const Picture& picture = kinds.picture();
    const bool oneTileACell = picture.tiles.size() == picture.tileAt.size();
    if (!picture.mergeLike || (oneTileACell && equalSteps(picture.xs) && equalSteps(picture.ys))) {
        return false;
    }
    if (kinds.count() > manyKinds) {
        return true;
    }
    std::unordered_map<Residue, int> seen;
    for (int kind = 1; kind < kinds.count(); ++kind) {
        if (!kinds.isWord(kind) &&
            !seen.emplace(Look(picture, kinds.shown(kind)).hash(), kind).second) {
            return true;
        }
    }
    return false;
}

}  // namespace kerfwright::kinds
