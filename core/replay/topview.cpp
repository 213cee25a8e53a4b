#include "core/replay/topview.h"

#include "core/measure/notation.h"
#include "core/words/say.h"

#include <algorithm>
#include <functional>

namespace kerfwright {

namespace {

std::string inWords(Length length) {
    return format(length, Notation::millimetres(6));
}

/// Where the cells begin, and where the last one ends.
std::vector<Length> edgesOf(const std::vector<Length>& sizes) {
    std::vector<Length> edges(1);
    edges.reserve(sizes.size() + 1);
    for (const Length size : sizes) {
        edges.push_back(edges.back() + size);
    }
    return edges;
}

/// Index of the cell that holds the stretch beginning at `at`.
std::size_t cellFrom(const std::vector<Length>& edges, Length at) {
    return static_cast<std::size_t>(std::upper_bound(edges.begin(), edges.end(), at) -
                                    edges.begin()) -
           1;
}

/// The wished field, cell by cell.
struct Wish {
    explicit Wish(const Field& field)
        : columns(edgesOf(field.columns))
        , rows(edgesOf(field.rows))
        , pieces(pieceMap(field)) {
        woods.reserve(pieces.size());
        for (const int piece : pieces) {
            woods.push_back(field.pieces[static_cast<std::size_t>(piece)].wood);
        }
    }
    std::size_t across() const { return columns.size() - 1; }
    std::size_t down() const { return rows.size() - 1; }
    std::size_t cell(std::size_t column, std::size_t row) const { return row * across() + column; }

    std::vector<Length> columns;
    std::vector<Length> rows;
    std::vector<int> pieces;
    std::vector<int> woods;
};

bool isOnTop(const Solid& solid, const Cuboid& box) {
    return box.high[Z] == solid.size[Z];
}

void compareWoods(const Solid& solid, const Wish& wish, std::vector<std::string>& faults) {
    for (const Cuboid& box : solid.boxes) {
        if (!isOnTop(solid, box)) {
            continue;
        }
        const std::size_t firstColumn = cellFrom(wish.columns, box.low[X]);
        const std::size_t firstRow = cellFrom(wish.rows, box.low[Y]);
        for (std::size_t r = firstRow; r < wish.down() && wish.rows[r] < box.high[Y]; ++r) {
            for (std::size_t c = firstColumn; c < wish.across() && wish.columns[c] < box.high[X];
                 ++c) {
                if (wish.woods[wish.cell(c, r)] != box.wood) {
                    faults.push_back(
                        say("column {1}, row {2} shows another wood than wished", c + 1, r + 1));
                    return;
                }
            }
        }
    }
}

/// Sorts of line on the face of the field. Each is counted by itself along the sweep.
enum Mark { Made, Wished, WishedLike, Extra, Omitted, Marks };

/// A sort of line begins (+1) or ends (-1) at `pos` on the line at `at`.
struct Event {
    Length at;
    Length pos;
    Mark mark;
    int change;
};

class Sweep {
public:
    explicit Sweep(bool vertical)
        : vertical_(vertical) {}

    void reserve(std::size_t segments) { events_.reserve(segments * 2); }
    void add(Mark mark, Length at, Length from, Length to) {
        events_.push_back({at, from, mark, 1});
        events_.push_back({at, to, mark, -1});
    }

    void compare(bool mergeLike, std::vector<std::string>& faults) {
        std::sort(events_.begin(), events_.end(), [](const Event& a, const Event& b) {
            return a.at != b.at ? a.at < b.at : a.pos < b.pos;
        });
        std::array<int, Marks> count{};
        for (std::size_t i = 0; i < events_.size(); ++i) {
            const Event& event = events_[i];
            count[event.mark] += event.change;
            if (i + 1 == events_.size() || events_[i + 1].at != event.at ||
                events_[i + 1].pos == event.pos) {
                continue;
            }
            if (const char* wrong = judge(count, mergeLike)) {
                faults.push_back(placed(wrong, event, events_[i + 1].pos));
                return;
            }
        }
    }

private:
    static const char* judge(const std::array<int, Marks>& count, bool mergeLike) {
        const bool made = count[Made] > 0;
        const bool wished = count[Wished] + count[WishedLike] > 0;
        if (count[Extra] + count[Omitted] > 1) {
            return noted("two listed joints overlap");
        }
        if (count[Extra] > 0) {
            return wished  ? noted("a joint is listed as extra that the field has anyway")
                   : !made ? noted("a joint is listed as extra that is not there")
                           : nullptr;
        }
        if (count[Omitted] > 0) {
            return !wished      ? noted("a joint is listed as left out that was not wished")
                   : made       ? noted("a joint is listed as left out that is there")
                   : !mergeLike ? noted("a joint is left out though like pieces stay apart")
                   : count[WishedLike] < 1 ? noted("a joint is left out between two woods")
                                           : nullptr;
        }
        return made && !wished   ? noted("a joint inside a piece is not listed")
               : wished && !made ? noted("a wished joint is missing")
                                 : nullptr;
    }

    std::string placed(const char* wrong, const Event& event, Length to) const {
        const std::string at = inWords(event.at);
        const std::string from = inWords(event.pos);
        return vertical_
                   ? say("{1}: down at {2}, from {3} to {4}", say(wrong), at, from, inWords(to))
                   : say("{1}: across at {2}, from {3} to {4}", say(wrong), at, from, inWords(to));
    }

    bool vertical_;
    std::vector<Event> events_;
};

void compareJoints(const Solid& solid, const Wish& wish, const std::vector<Joint>& extra,
                   const std::vector<Joint>& omitted, bool mergeLike,
                   std::vector<std::string>& faults) {
    Sweep down(true);
    Sweep across(false);
    const std::size_t expected =
        solid.boxes.size() + wish.pieces.size() + extra.size() + omitted.size();
    down.reserve(expected);
    across.reserve(expected);

    // A full block has on the far side of every joint exactly one box that begins there.
    for (const Cuboid& box : solid.boxes) {
        if (!isOnTop(solid, box)) {
            continue;
        }
        if (box.low[X] > Length()) {
            down.add(Made, box.low[X], box.low[Y], box.high[Y]);
        }
        if (box.low[Y] > Length()) {
            across.add(Made, box.low[Y], box.low[X], box.high[X]);
        }
    }
    for (std::size_t r = 0; r < wish.down(); ++r) {
        for (std::size_t c = 0; c < wish.across(); ++c) {
            const std::size_t here = wish.cell(c, r);
            const auto markTo = [&](std::size_t other) {
                return wish.woods[here] == wish.woods[other] ? WishedLike : Wished;
            };
            if (c > 0 && wish.pieces[here - 1] != wish.pieces[here]) {
                down.add(markTo(here - 1), wish.columns[c], wish.rows[r], wish.rows[r + 1]);
            }
            if (r > 0 && wish.pieces[here - wish.across()] != wish.pieces[here]) {
                across.add(markTo(here - wish.across()), wish.rows[r], wish.columns[c],
                           wish.columns[c + 1]);
            }
        }
    }
    for (const Joint& joint : extra) {
        (joint.vertical ? down : across).add(Extra, joint.at, joint.from, joint.to);
    }
    for (const Joint& joint : omitted) {
        (joint.vertical ? down : across).add(Omitted, joint.at, joint.from, joint.to);
    }
    down.compare(mergeLike, faults);
    across.compare(mergeLike, faults);
}

/// `noLength` and `noOrder` are to be said.
void checkList(const std::vector<Joint>& joints, const char* noLength, const char* noOrder,
               std::vector<std::string>& faults) {
    if (std::any_of(joints.begin(), joints.end(),
                    [](const Joint& joint) { return joint.from >= joint.to; })) {
        faults.push_back(say(noLength));
    }
    if (std::adjacent_find(joints.begin(), joints.end(), std::greater_equal<>()) != joints.end()) {
        faults.push_back(say(noOrder));
    }
}

}  // namespace

std::vector<std::string> topViewFaults(const Solid& solid, const Field& field,
                                       const std::vector<Joint>& extra,
                                       const std::vector<Joint>& omitted, bool mergeLike) {
    std::vector<std::string> faults;
    checkList(extra, noted("a joint in the list of extra joints has no length"),
              noted("the list of extra joints is not in order, or names one twice"), faults);
    checkList(omitted, noted("a joint in the list of left out joints has no length"),
              noted("the list of left out joints is not in order, or names one twice"), faults);
    if (!faults.empty()) {
        return faults;
    }
    const Wish wish(field);
    compareWoods(solid, wish, faults);
    compareJoints(solid, wish, extra, omitted, mergeLike, faults);
    return faults;
}

}  // namespace kerfwright
