#include "core/search/shifted.h"

#include "core/measure/at.h"
#include "core/search/painted.h"

#include <algorithm>
#include <map>
#include <optional>
#include <set>
#include <tuple>
#include <utility>

namespace kerfwright {
namespace {

struct Run {
    Length from, to;
    int wood = 0;
    friend bool operator==(const Run&, const Run&) = default;
    friend auto operator<=>(const Run&, const Run&) = default;
};
using Word = std::vector<Run>;

Length lengthOf(const Word& word) {
    return word.back().to;
}

Word backwards(const Word& word) {
    Word result;
    for (std::size_t i = word.size(); i-- > 0;) {
        result.push_back(
            {lengthOf(word) - word[i].to, lengthOf(word) - word[i].from, word[i].wood});
    }
    return result;
}

Word moved(Word word, Length by) {
    for (Run& run : word) {
        run.from += by;
        run.to += by;
    }
    return word;
}

/// The row of which both are windows, `shift` apart, from 0 on. The strips at the ends of a window
/// may be wider in the row. Empty where they disagree.
std::optional<Word> overlaid(const Word& one, const Word& other, Length shift) {
    const Word early = shift >= Length() ? one : moved(other, shift);
    const Word late = shift >= Length() ? moved(other, shift) : one;
    const Length from = late.front().from;
    const Length to = std::min(early.back().to, late.back().to);
    const auto window = [&](const Word& word) {
        Word part;
        for (const Run& run : word) {
            if (run.from < to && run.to > from) {
                part.push_back({std::max(run.from, from), std::min(run.to, to), run.wood});
            }
        }
        return part;
    };
    if (from >= to || window(early) != window(late)) {
        return std::nullopt;
    }
    Word whole = early;
    for (const Run& run : late) {
        if (run.to <= whole.back().to) {
            continue;
        }
        if (run.from < whole.back().to) {
            whole.back().to = run.to;  // the strip in which the early one ends
        } else {
            whole.push_back(run);
        }
    }
    return moved(whole, -whole.front().from);
}

struct Window {
    int row = 0;
    Length from;  ///< in the panel
    bool flipped = false;
};

struct Panel {
    Word word;
    Length height;  ///< of its rows; 0 where any height goes
    std::vector<Window> windows;
};

struct Joining {
    Length extra;
    std::size_t one = 0, other = 0;
    Length shift;
    bool backwards = false;
    friend auto operator<=>(const Joining&, const Joining&) = default;
};

class Shifting {
public:
    /// Rows, or columns where `byColumns`.
    Shifting(const Picture& picture, bool byColumns)
        : picture_(picture)
        , byColumns_(byColumns)
        , along_(byColumns ? picture.ys : picture.xs)
        , across_(byColumns ? picture.xs : picture.ys) {}

    std::optional<Found> found();

private:
    const Tile& tile(int place, int row) const {
        return byColumns_ ? picture_.tile(row, place) : picture_.tile(place, row);
    }
    bool readRows();
    std::optional<Joining> best() const;
    void join(const Joining& joining);
    Construction construction() const;
    bool heightFree() const { return picture_.laying != Laying::EndGrain; }
    bool fits(const Word& word, Length height) const;

    const Picture& picture_;
    bool byColumns_;
    const std::vector<Length>& along_;
    const std::vector<Length>& across_;
    std::vector<std::pair<Length, Length>> rows_;
    std::vector<int> plain_;  ///< by row: the wood where it is one strip, or -1
    std::vector<Panel> panels_;
};

bool Shifting::readRows() {
    const int places = static_cast<int>(along_.size()) - 1;
    const int lines = static_cast<int>(across_.size()) - 1;
    const auto parts = [&](int row) {  // whether the line above it parts the rows
        bool changes = false;
        for (int place = 0; place < places; ++place) {
            const Tile& above = tile(place, row - 1);
            const Tile& below = tile(place, row);
            changes = changes || (picture_.mergeLike ? above.wood != below.wood : &above != &below);
        }
        return changes;
    };
    const auto whole = [&](int row) {
        for (int place = 0; place < places; ++place) {
            if (&tile(place, row - 1) == &tile(place, row)) {
                return false;
            }
        }
        return true;
    };
    int begin = 0;
    for (int row = 1; row <= lines; ++row) {
        if (row < lines && !parts(row)) {
            continue;
        }
        if (row < lines && !whole(row)) {
            return false;
        }
        Word word;
        const Tile* before = nullptr;
        for (int place = 0; place < places; ++place) {
            const Tile& one = tile(place, begin);
            const bool same = before != nullptr &&
                              (picture_.mergeLike ? before->wood == one.wood : before == &one);
            if (!same) {
                word.push_back({along_[at(place)], {}, one.wood});
            }
            word.back().to = along_[at(place + 1)];
            before = &one;
        }
        const Length height = across_[at(row)] - across_[at(begin)];
        if (!fits(word, height)) {
            return false;
        }
        const int index = static_cast<int>(rows_.size());
        rows_.emplace_back(across_[at(begin)], across_[at(row)]);
        plain_.push_back(word.size() == 1 ? word.front().wood : -1);
        begin = row;
        if (word.size() == 1) {
            continue;
        }
        const auto same = std::find_if(panels_.begin(), panels_.end(), [&](const Panel& panel) {
            return (heightFree() || panel.height == height) &&
                   (panel.word == word || panel.word == backwards(word));
        });
        if (same == panels_.end()) {
            panels_.push_back({word, height, {{index, {}, false}}});
        } else {
            same->windows.push_back({index, {}, same->word != word});
        }
    }
    return true;
}

bool Shifting::fits(const Word& word, Length height) const {
    return std::all_of(word.begin(), word.end(), [&](const Run& run) {
        const Length size = run.to - run.from;
        return byColumns_ ? picture_.fitsTimber(run.wood, height, size)
                          : picture_.fitsTimber(run.wood, size, height);
    });
}

/// The two panels that can be one with the least more length.
std::optional<Joining> Shifting::best() const {
    std::optional<Joining> best;
    const Length most = half(along_.back());
    for (std::size_t i = 0; i < panels_.size(); ++i) {
        for (std::size_t j = i + 1; j < panels_.size(); ++j) {
            const Panel& one = panels_[i];
            if (!heightFree() && one.height != panels_[j].height) {
                continue;
            }
            for (const bool turned : {false, true}) {
                const Word other = turned ? backwards(panels_[j].word) : panels_[j].word;
                std::set<Length> shifts;
                for (const Run& a : one.word) {
                    for (const Run& b : other) {
                        shifts.insert({a.from - b.from, a.to - b.to});
                    }
                }
                for (const Length shift : shifts) {
                    const std::optional<Word> word = overlaid(one.word, other, shift);
                    if (!word || !fits(*word, one.height)) {
                        continue;
                    }
                    const Length extra =
                        lengthOf(*word) - std::max(lengthOf(one.word), lengthOf(other));
                    const Joining joining{extra, i, j, shift, turned};
                    if (extra <= most && (!best || joining < *best)) {
                        best = joining;
                    }
                }
            }
        }
    }
    return best;
}

void Shifting::join(const Joining& joining) {
    Panel& one = panels_[joining.one];
    Panel& other = panels_[joining.other];
    const Word laid = joining.backwards ? backwards(other.word) : other.word;
    const Word word = *overlaid(one.word, laid, joining.shift);
    for (Window& window : one.windows) {
        window.from += std::max(Length(), -joining.shift);
    }
    for (Window window : other.windows) {
        if (joining.backwards) {
            window.from = lengthOf(other.word) - window.from - along_.back();
            window.flipped = !window.flipped;
        }
        window.from += std::max(Length(), joining.shift);
        one.windows.push_back(window);
    }
    one.word = word;
    panels_.erase(panels_.begin() + static_cast<std::ptrdiff_t>(joining.other));
}

Construction Shifting::construction() const {
    Construction result;
    std::map<std::tuple<Length, Length, int>, int> strips;
    const auto put = [&](Block block) {
        if (byColumns_) {
            std::swap(block.width, block.height);
            block.along = block.along == JoinedAlong::X ? JoinedAlong::Y : JoinedAlong::X;
        }
        result.blocks.push_back(std::move(block));
        return static_cast<int>(result.blocks.size()) - 1;
    };
    const auto strip = [&](Length width, Length height, int wood) {
        const auto [found, isNew] = strips.emplace(std::tuple(width, height, wood), -1);
        if (isNew) {
            found->second = put({width, height, wood, JoinedAlong::X, {}});
        }
        return found->second;
    };
    const auto heightOf = [&](int row) { return rows_[at(row)].second - rows_[at(row)].first; };

    std::vector<Member> members(rows_.size());
    for (std::size_t i = 0; i < rows_.size(); ++i) {
        if (plain_[i] >= 0) {
            members[i] = {strip(along_.back(), heightOf(static_cast<int>(i)), plain_[i]), {}};
        }
    }
    for (const Panel& panel : panels_) {
        std::map<Length, int, std::greater<>> byHeight;  // tallest first
        for (const Window& window : panel.windows) {
            byHeight[heightOf(window.row)] = -1;
        }
        int first = -1;
        for (auto& [height, index] : byHeight) {
            Block block{lengthOf(panel.word), height, -1, JoinedAlong::X, {}, first};
            for (const Run& run : panel.word) {
                block.members.push_back({strip(run.to - run.from, height, run.wood), {}});
            }
            index = put(std::move(block));
            first = first < 0 ? index : first;
        }
        for (const Window& window : panel.windows) {
            members[at(window.row)] = {byHeight[heightOf(window.row)],
                                       {false, window.flipped ? 2 : 0},
                                       window.from,
                                       lengthOf(panel.word) - window.from - along_.back()};
        }
    }
    put({along_.back(), across_.back(), -1, JoinedAlong::Y, members});
    return result;
}

std::optional<Found> Shifting::found() {
    if (!readRows() || rows_.size() < 2) {
        return std::nullopt;
    }
    const std::size_t before = panels_.size();
    while (const std::optional<Joining> joining = best()) {
        join(*joining);
    }
    if (panels_.size() == before) {
        return std::nullopt;
    }
    Construction made = construction();
    if (!makes(made, picture_)) {
        return std::nullopt;
    }
    made.extraJoints = extraJointsMade(painted(made), picture_);
    return counted(std::move(made), picture_.laying);
}

}  // namespace

std::vector<Found> shiftedAndTrimmed(const Picture& picture) {
    std::vector<Found> all;
    for (const bool byColumns : {false, true}) {
        // Along the grain a panel of long-grain strips has no rows to give.
        if (picture.laying == (byColumns ? Laying::GrainDown : Laying::GrainAcross)) {
            continue;
        }
        if (std::optional<Found> found = Shifting(picture, byColumns).found()) {
            all.push_back(std::move(*found));
        }
    }
    std::stable_sort(all.begin(), all.end(),
                     [](const Found& a, const Found& b) { return a.glueUps < b.glueUps; });
    return all;
}

}  // namespace kerfwright
