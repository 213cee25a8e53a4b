#include "core/replay/solid.h"

#include <algorithm>

namespace kerfwright {

namespace {

/// A turn by quarter turns: axis i of the result is axis `from[i]` of the source, reversed where
/// `reversed[i]` is set.
struct Turn {
    std::array<Axis, 3> from = {X, Y, Z};
    std::array<bool, 3> reversed = {false, false, false};

    void then(const Turn& next) {
        Turn both;
        for (std::size_t i = 0; i < 3; ++i) {
            const auto middle = static_cast<std::size_t>(next.from[i]);
            both.from[i] = from[middle];
            both.reversed[i] = next.reversed[i] != reversed[middle];
        }
        *this = both;
    }
};

// Each has determinant +1: an even number of reversals with an even permutation, an odd number with
// an odd one.
constexpr Turn quarterAboutY{{Z, Y, X}, {false, false, true}};
constexpr Turn quarterAboutX{{X, Z, Y}, {false, true, false}};
constexpr Turn halfAboutX{{X, Y, Z}, {false, true, true}};
constexpr Turn halfAboutZ{{X, Y, Z}, {true, true, false}};
constexpr Turn quarterAboutZ{{Y, X, Z}, {true, false, false}};

Turn turnOf(const Lay& lay) {
    Turn turn;
    if (lay.rolled) {
        turn.then(quarterAboutY);
    }
    if (lay.stoodUp) {
        turn.then(quarterAboutX);
    }
    if (lay.turnedOver) {
        turn.then(halfAboutX);
    }
    if (lay.flipped) {
        turn.then(halfAboutZ);
    }
    if (lay.turned) {
        turn.then(quarterAboutZ);
    }
    return turn;
}

}  // namespace

Volume Solid::volume() const {
    Volume sum;
    for (const Cuboid& box : boxes) {
        sum += kerfwright::volume(box.high[X] - box.low[X], box.high[Y] - box.low[Y],
                                  box.high[Z] - box.low[Z]);
    }
    return sum;
}

Area Solid::face(Axis axis) const {
    return axis == X   ? area(size[Y], size[Z])
           : axis == Y ? area(size[X], size[Z])
                       : area(size[X], size[Y]);
}

bool Solid::showsEndGrain() const {
    return std::any_of(boxes.begin(), boxes.end(),
                       [](const Cuboid& box) { return box.grain == Z; });
}

Solid stick(int wood, Length width, Length length, Length thickness) {
    const Corner size = {width, length, thickness};
    return {size, {Cuboid{{}, size, wood, Y}}};
}

Solid laid(const Solid& solid, const Lay& lay) {
    if (lay == Lay{}) {
        return solid;
    }
    const Turn turn = turnOf(lay);
    Solid result;
    result.boxes.resize(solid.boxes.size());
    for (std::size_t i = 0; i < 3; ++i) {
        result.size[i] = solid.size[turn.from[i]];
    }
    for (std::size_t b = 0; b < solid.boxes.size(); ++b) {
        const Cuboid& source = solid.boxes[b];
        Cuboid& box = result.boxes[b];
        box.wood = source.wood;
        for (std::size_t i = 0; i < 3; ++i) {
            const Axis from = turn.from[i];
            box.low[i] = turn.reversed[i] ? result.size[i] - source.high[from] : source.low[from];
            box.high[i] = turn.reversed[i] ? result.size[i] - source.low[from] : source.high[from];
            if (source.grain == from) {
                box.grain = static_cast<Axis>(i);
            }
        }
    }
    return result;
}

Corner laidSize(const Corner& size, const Lay& lay) {
    const Turn turn = turnOf(lay);
    Corner result;
    for (std::size_t i = 0; i < 3; ++i) {
        result[i] = size[turn.from[i]];
    }
    return result;
}

Corner unlaid(const Corner& point, const Corner& size, const Lay& lay) {
    const Turn turn = turnOf(lay);
    Corner source;
    for (std::size_t i = 0; i < 3; ++i) {
        const Axis from = turn.from[i];
        source[from] = turn.reversed[i] ? size[from] - point[i] : point[i];
    }
    return source;
}

Solid between(const Solid& solid, Axis axis, Length from, Length to) {
    Solid result;
    result.size = solid.size;
    result.size[axis] = to - from;
    result.boxes.reserve(solid.boxes.size());
    for (const Cuboid& source : solid.boxes) {
        const Length low = std::max(source.low[axis], from);
        const Length high = std::min(source.high[axis], to);
        if (low < high) {
            Cuboid& box = result.boxes.emplace_back(source);
            box.low[axis] = low - from;
            box.high[axis] = high - from;
        }
    }
    return result;
}

void append(Solid& whole, const Solid& part, Axis axis) {
    if (whole.boxes.empty()) {
        whole = part;
        return;
    }
    const Length shift = whole.size[axis];
    for (const Cuboid& source : part.boxes) {
        Cuboid& box = whole.boxes.emplace_back(source);
        box.low[axis] += shift;
        box.high[axis] += shift;
    }
    whole.size[axis] += part.size[axis];
}

}  // namespace kerfwright
