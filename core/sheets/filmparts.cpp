#include "core/sheets/filmsetter.h"
#include "core/words/say.h"

#include <algorithm>

namespace kerfwright {
namespace {

constexpr int manyBlanks = 28;  // of more, some of each size are drawn

}  // namespace

void SceneSetter::timber() {
    struct Blanks {
        const MillLine* line;
        int count;
    };
    std::vector<Blanks> groups;
    int all = 0;
    each<Mill>([&](const Mill& mill) {
        for (const MillLine& line : mill.lines) {
            const auto alike = std::find_if(groups.begin(), groups.end(), [&](const Blanks& g) {
                return g.line->wood == line.wood &&
                       g.line->roughThickness.value == line.roughThickness.value &&
                       g.line->roughWidth.value == line.roughWidth.value &&
                       g.line->roughLength.value == line.roughLength.value;
            });
            const int count = static_cast<int>(line.strips.size());
            all += count;
            if (alike == groups.end()) {
                groups.push_back({&line, count});
            } else {
                alike->count += count;
            }
        }
    });
    std::stable_sort(groups.begin(), groups.end(),
                     [](const Blanks& a, const Blanks& b) { return a.line->wood < b.line->wood; });
    const int most =
        all <= manyBlanks ? manyBlanks : std::max(1, manyBlanks / static_cast<int>(groups.size()));
    Length longest;
    for (const Blanks& group : groups) {
        longest = std::max(longest, group.line->roughLength.value);
    }
    double y = 0;
    double bottom = 0;
    bool measured = false;
    for (const Blanks& group : groups) {
        const MillLine& line = *group.line;
        const Solid blank = laid(stick(line.wood, line.roughWidth.value, line.roughLength.value,
                                       line.roughThickness.value),
                                 Lay{.turned = true});
        const double wide = mm(line.roughWidth.value);
        const double begin = y;
        for (int i = 0; i < std::min(group.count, most); ++i) {
            put(blank, line.strips.front(), 0, y);
            bottom = y + wide;
            y += wide + mixed(2, 5, p_) + filmTilt * mm(line.roughThickness.value);
        }
        // Translators: "Walnut, 4 of 30 × 50 × 600 mm".
        scene_.labels.push_back(
            {mm(longest), (begin + y) / 2 - filmTilt * mm(line.roughThickness.value),
             say("{1}, {2} of {3}", film_.project.woods[static_cast<std::size_t>(line.wood)].name,
                 group.count,
                 bare(line.roughThickness.value) + " × " + bare(line.roughWidth.value) + " × " +
                     text(line.roughLength.value))});
        if (!measured && line.roughLength.value == longest) {
            measured = true;
            down(begin - filmTilt * mm(line.roughThickness.value),
                 begin + wide - filmTilt * mm(line.roughThickness.value), 0, line.roughWidth.value,
                 Measured::RoughWidth);
        }
        y += 10;
    }
    across(0, mm(longest), bottom, longest, Measured::RoughLength);
}

void SceneSetter::strips() {
    std::vector<const MillLine*> order;
    for (const std::string& label : stripOrder()) {
        order.push_back(lineOf(label));
    }
    double x = 0;
    Length longest;
    double gap = apart;
    for (const MillLine* line : order) {
        longest = std::max(longest, line->length.value);
        gap = std::min(gap, std::max(4.0, mm(line->width.value) * 0.4));
    }
    gap = std::max(gap, 0.02 * mm(longest));  // of very long ones seen from far
    const std::vector<std::string> labels = stripOrder();
    for (std::size_t i = 0; i < order.size(); ++i) {
        const MillLine& line = *order[i];
        put(stick(line.wood, line.width.value, line.length.value, line.thickness.value), labels[i],
            x, 0);
        const double wide = mm(line.width.value);
        scene_.labels.push_back(
            {x + wide / 2, -filmTilt * mm(line.thickness.value), labels[i], Align::Centre});
        across(x, x + wide, mm(line.length.value), line.width.value, Measured::Width);
        x += wide + gap * p_;
    }
    const MillLine& last = *order.back();
    const double lift = filmTilt * mm(last.thickness.value);
    down(-lift, mm(longest) - lift, 0, longest, Measured::Length);
    up(mm(last.length.value), x - gap * p_, last.thickness.value, Measured::Thickness);
}

const MillLine* SceneSetter::lineOf(const std::string& label) const {
    const MillLine* found = nullptr;
    each<Mill>([&](const Mill& mill) {
        for (const MillLine& line : mill.lines) {
            if (std::find(line.strips.begin(), line.strips.end(), label) != line.strips.end()) {
                found = &line;
            }
        }
    });
    return found;
}

/// As they are glued, which is not the order in which they are milled.
std::vector<std::string> SceneSetter::stripOrder() const {
    std::vector<std::string> order;
    for (const Step& step : film_.list.steps) {
        const auto* glue = std::get_if<Glue>(&step.work);
        if (glue != nullptr && glue->result == stage_.part) {
            for (const Laid& laid : glue->parts) {
                if (lineOf(laid.part) != nullptr) {
                    order.push_back(laid.part);
                }
            }
        }
    }
    return order.size() == stage_.parts.size() ? order : stage_.parts;
}

void SceneSetter::panel() {
    const Traced* whole = solid(stage_.part);
    if (whole == nullptr) {
        return;
    }
    const Corner& ready = whole->ready.size;
    const double wide = mm(ready[X]);
    const double lift = filmTilt * mm(ready[Z]);
    bool apartYet = false;
    each<Glue>([&](const Glue& glue) {
        if (p_ < 1) {
            apartYet = true;
            spread(glue, 1 - p_, ready[Z]);
        }
    });
    Length squared;
    each<SquareEnd>([&](const SquareEnd& square) { squared = square.waste.value; });
    if (!apartYet) {
        put(whole->ready, stage_.part, 0, 0);
    }
    if (squared > Length() && !apartYet) {
        Solid waste = kerfwright::between(whole->made, Y, Length(), squared);
        waste = thinned(waste, ready[Z]);
        put(std::move(waste), {}, (wide - mm(whole->made.size[X])) / 2, -mm(squared) - apart,
            Fate::Waste);
    }
    across(0, wide, mm(ready[Y]), ready[X], Measured::Width);
    down(-lift, mm(ready[Y]) - lift, 0, ready[Y], Measured::Length);
    up(mm(ready[Y]), wide, ready[Z], Measured::Thickness);
}

/// The parts of a glue-up as they lie, `share` of the usual gap between them.
void SceneSetter::spread(const Glue& glue, double share, Length thickness) {
    const Axis along = glue.along == GlueAlong::Width ? X : Y;
    double at = 0;
    for (const Laid& part : glue.parts) {
        const Traced* piece = solid(part.part);
        if (piece == nullptr) {
            continue;
        }
        Solid lies = thinned(laid(piece->ready, part.lay), thickness);
        const double deep = mm(lies.size[along]);
        put(std::move(lies), part.part, along == X ? at : 0, along == Y ? at : 0);
        at += deep + share * gapOf(deep);
    }
}
void SceneSetter::cut() {
    double y = 0;
    Length width;
    double lift = 0;
    double front = 0;
    const auto slice = [&](const std::string& label, Fate fate) -> const Solid* {
        const Traced* piece = solid(label);
        if (piece == nullptr) {
            return nullptr;
        }
        const Solid& body = piece->made;
        width = std::max(width, body.size[X]);
        lift = filmTilt * mm(body.size[Z]);
        put(body, label, 0, y, fate);
        scene_.labels.push_back({mm(body.size[X]), y + mm(body.size[Y]) / 2 - lift,
                                 fate == Fate::Spare ? sayIn("slice", "spare") : label});
        front = y + mm(body.size[Y]);
        // The whole cut face is seen, and ground below it: else it looks like stock between them.
        y = front + mixed(1, apart, p_) + (p_ * lift);
        return &body;
    };
    Length thickness;
    Length left;
    std::vector<Length> told;
    each<Crosscut>([&](const Crosscut& cut) {
        bool first = true;
        for (const auto* labels : {&cut.slices, &cut.spares}) {
            for (const std::string& label : *labels) {
                const double from = y;
                const Solid* body =
                    slice(label, labels == &cut.spares ? Fate::Spare : Fate::GoesOn);
                if (body != nullptr && first &&
                    std::find(told.begin(), told.end(), cut.stop.value) == told.end()) {
                    first = false;
                    told.push_back(cut.stop.value);
                    down(from - lift, from + mm(cut.stop.value) - lift, 0, cut.stop.value,
                         Measured::Stop);
                }
                thickness = body != nullptr ? body->size[Z] : thickness;
            }
        }
        left = cut.left;
    });
    if (const Traced* whole = solid(stage_.part);
        whole != nullptr && left > Length() && left <= whole->ready.size[Y]) {
        const Length end = whole->ready.size[Y];
        Solid offcut = kerfwright::between(whole->ready, Y, end - left, end);
        offcut = thinned(offcut, thickness);
        front = y + mm(left);
        put(std::move(offcut), {}, 0, y, Fate::Waste);
        scene_.labels.push_back({mm(width), y + mm(left) / 2 - lift, say("offcut")});
    }
    across(0, mm(width), front, width, Measured::Width);
    up(front, mm(width), thickness, Measured::Thickness);
}

}  // namespace kerfwright
