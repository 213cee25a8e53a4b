#include "core/sheets/filmsetter.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace kerfwright {
namespace {

double heightOf(const SceneBlock& block) {
    double height = 0;
    for (const Axis axis : {X, Y, Z}) {
        Spot edge{};
        edge[axis] = block.solid.size[axis].toMm();
        height += std::abs(turnedLike(block, edge)[2]);
    }
    return height;
}

}  // namespace

std::vector<Laid> SceneSetter::order(bool& down) const {
    std::vector<Laid> parts;
    each<Glue>([&](const Glue& glue) {
        if (glue.final) {
            parts = glue.parts;
            down = glue.along == GlueAlong::Down;
        }
    });
    each<Take>([&](const Take& take) { parts = {take.part}; });
    return parts;
}

void SceneSetter::laidOut() {
    bool rows = true;
    const std::vector<Laid> parts = order(rows);
    const Axis along = rows ? Y : X;
    const auto count = static_cast<double>(parts.size());
    double from = 0;
    double to = 0;
    double wide = 0;
    for (const Laid& part : parts) {
        if (const Traced* piece = solid(part.part)) {
            wide = std::max(wide, mm(laid(piece->ready, part.lay).size[rows ? X : Y]));
        }
    }
    std::vector<Length> told;
    double i = 0;
    for (const Laid& part : parts) {
        const Traced* piece = solid(part.part);
        if (piece == nullptr) {
            continue;
        }
        const Solid ends = laid(piece->ready, part.lay);
        const double deep = mm(ends.size[along]);
        const double before = mm(piece->ready.size[Y]);
        // One after the other, so that the eye can follow.
        const double late = count > 1 ? 0.35 * i / (count - 1) : 0;
        const double way = share(linear_, late, late + 0.65);
        const double rise = eased(share(way, 0, 0.6));
        const double swing = eased(share(way, 0.4, 1));
        const double move = eased(way);
        SceneBlock& block = put(piece->ready, part.part, 0, 0);
        block.rolled = part.lay.rolled ? rise : 0;
        block.stoodUp = part.lay.stoodUp ? rise : 0;
        block.turnedOver = part.lay.turnedOver ? swing : 0;
        block.flipped = part.lay.flipped ? swing : 0;
        block.turned = part.lay.turned ? swing : 0;
        const double end = to + deep / 2;
        block.middle = {mixed(wide / 2, rows ? wide / 2 : end, move),
                        mixed(from + before / 2, rows ? end : wide / 2, move), 0};
        // On the bench while it turns, lifted while it swings round.
        const bool swings = part.lay.flipped || part.lay.turnedOver;
        block.lifted = swings && swing > 0 && swing < 1;
        block.middle[2] =
            heightOf(block) / 2 + (swings ? std::sin(std::numbers::pi * swing) * 0.12 * wide : 0);
        if (p_ >= 1) {
            const double lift = filmTilt * mm(ends.size[Z]);
            const bool flipped = part.lay.flipped;
            if (rows) {
                scene_.labels.push_back(
                    {wide, end - lift,
                     part.part + (flipped ? " ↔" : "") + (part.lay.turnedOver ? " ↕" : "")});
            } else {
                scene_.labels.push_back(
                    {end, -lift, part.part + (flipped ? " ↕" : ""), Align::Centre});
            }
            const Length value = ends.size[along];
            if (std::find(told.begin(), told.end(), value) == told.end()) {
                told.push_back(value);
                if (rows) {
                    down(to - lift, to + deep - lift, 0, value, Measured::Row);
                } else {
                    across(to, to + deep, wide, value, Measured::Column);
                }
            }
            if (i + 1 == count) {
                if (rows) {
                    across(0, wide, to + deep, ends.size[X], Measured::Width);
                } else {
                    down(-lift, wide - lift, 0, ends.size[Y], Measured::Width);
                }
                up(rows ? to + deep : wide, rows ? wide : to + deep, ends.size[Z],
                   Measured::Thickness);
            }
        }
        from += before + gapOf(before);
        to += deep + gapOf(deep);
        ++i;
    }
}

void SceneSetter::field() {
    const Traced* whole = solid(stage_.part);
    if (whole == nullptr) {
        return;
    }
    const Solid& made = whole->made;
    Length thickness = made.size[Z];
    each<Flatten>([&](const Flatten& flatten) { thickness = flatten.to.value; });
    const double wide = mm(made.size[X]);
    const double high = mm(made.size[Y]);
    bool parted = false;
    each<Glue>([&](const Glue& glue) {
        if (p_ < 1 && glue.final) {
            parted = true;
            spread(glue, 1 - p_, thickness);
        }
    });
    if (!parted) {
        put(thinned(made, thickness), stage_.part, 0, 0);
    }
    const double lift = filmTilt * mm(thickness);
    across(0, wide, high, made.size[X], Measured::Width);
    down(-lift, high - lift, 0, made.size[Y], Measured::Height);
    up(high, wide, thickness, Measured::Thickness);
}

void SceneSetter::trimmed() {
    const Traced* whole = solid(stage_.part);
    Length margin;
    each<TrimField>([&](const TrimField& trim) { margin = trim.margin.value; });
    if (whole == nullptr || margin <= Length()) {
        return;
    }
    const Length thickness = Length(film_.board.thickness);
    const Solid before = thinned(whole->made, thickness);
    const Length w = before.size[X];
    const Length h = before.size[Y];
    const double gap = p_ * std::max(apart, filmTilt * mm(thickness) + 6);
    const Solid middle = kerfwright::between(before, Y, margin, h - margin);
    const double m = mm(margin);
    put(kerfwright::between(before, Y, Length(), margin), {}, 0, -m - gap, Fate::Waste);
    put(kerfwright::between(middle, X, Length(), margin), {}, -gap, 0, Fate::Waste);
    put(kerfwright::between(middle, X, margin, w - margin), stage_.part, m, 0);
    put(kerfwright::between(middle, X, w - margin, w), {}, mm(w) - m + gap, 0, Fate::Waste);
    put(kerfwright::between(before, Y, h - margin, h), {}, 0, mm(middle.size[Y]) + gap,
        Fate::Waste);
    const double lift = filmTilt * mm(thickness);
    const double near = mm(middle.size[Y]);
    across(m, mm(w) - m, near + m + gap, w - margin * 2, Measured::Width);
    down(-lift, near - lift, -gap, h - margin * 2, Measured::Height);
    size(SceneSize::Way::Up, near + gap - lift, near + gap + m - lift, mm(w), margin,
         Measured::Margin);
}

}  // namespace kerfwright
