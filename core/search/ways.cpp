#include "core/search/ways.h"

#include "core/measure/at.h"

#include <algorithm>
#include <limits>

namespace kerfwright::kinds {
namespace {

/// Above it the least number of glue-ups of every kind would take longer than the search.
constexpr int manyKinds = 60'000;

}  // namespace

Ways::Direction Ways::direction(const Box& box, bool alongX) {
    std::vector<std::int16_t>& lines = lines_.emplace_back();
    std::vector<std::int32_t>& parts = parts_.emplace_back();
    kinds_.lines(box, alongX, lines);
    if (!kinds_.isTaken(box, alongX) && lines.size() > 2) {
        lines = {lines.front(), lines.back()};  // edges alone: it cannot be parted that way
    }
    parts.reserve(lines.size() * lines.size());
    for (std::size_t from = 0; from < lines.size(); ++from) {
        for (std::size_t to = 0; to < lines.size(); ++to) {
            parts.push_back(from < to ? kinds_.part(box, alongX, lines[from], lines[to]) : none);
        }
    }
    return {lines.data(), parts.data(), static_cast<int>(lines.size())};
}

const Ways::Both& Ways::of(int kind) {
    std::int32_t& place = place_[at(kind)];
    if (place < 0) {
        place = static_cast<std::int32_t>(known_.size());
        const Box& box = kinds_.shown(kind);
        known_.push_back({direction(box, true), direction(box, false)});
    }
    return known_[at(place)];
}

std::int64_t Ways::area(int kind) {
    if (kinds_.isWord(kind) && kinds_.heightFree()) {
        return 0;
    }
    const Picture& picture = kinds_.picture();
    const Box& box = kinds_.shown(kind);
    return (picture.xs[at(box.right)] - picture.xs[at(box.left)]).nm() *
           (picture.ys[at(box.bottom)] - picture.ys[at(box.top)]).nm();
}

int Ways::least(int kind) {
    if (kind == freeKind) {
        return 0;
    }
    if (kinds_.isWord(kind)) {
        return 1;
    }
    if (kinds_.count() > manyKinds) {
        return 2;
    }
    if (least_[at(kind)] == 0) {
        // Two shortcuts: of a block that is no word at least 2 are needed, whichever way.
        int least = leastAlong(kind, true);
        least = least == 2 ? 2 : std::min(least, leastAlong(kind, false));
        least_[at(kind)] = static_cast<std::int16_t>(least);
    }
    return least_[at(kind)];
}

int Ways::leastAlong(int kind, bool alongX) {
    // All parts of a way have to be made, so the hardest of them counts; the easiest way wins.
    constexpr int never = std::numeric_limits<std::int16_t>::max();
    const Box box = kinds_.shown(kind);
    Lines lines;
    kinds_.lines(box, alongX, lines);
    std::vector<int> hardest(lines.size(), never);
    hardest[0] = 0;
    for (std::size_t to = 1; to < lines.size(); ++to) {
        for (std::size_t from = to; from-- > 0;) {
            if (hardest[from] >= hardest[to]) {
                continue;
            }
            const int part = kinds_.part(box, alongX, lines[from], lines[to]);
            if (part != none && part != kind) {
                hardest[to] = std::min(hardest[to], std::max(hardest[from], least(part)));
            }
        }
    }
    return hardest.back() == never ? never : hardest.back() + 1;
}

}  // namespace kerfwright::kinds
