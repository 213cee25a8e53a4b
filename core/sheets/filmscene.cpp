#include "core/sheets/filmscene.h"

#include "core/sheets/record.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace kerfwright {
namespace {

using Fate = SceneBlock::Fate;

constexpr int manyBlanks = 28;  // of more, some of each size are drawn
constexpr double apart = 14;    // mm between workpieces that lie apart

double mm(Length length) {
    return length.toMm();
}

double mixed(double from, double to, double share) {
    return from + (to - from) * share;
}

/// The share of a part of the way: 0 up to `from`, 1 after `to`.
double between(double progress, double from, double to) {
    return std::clamp((progress - from) / (to - from), 0.0, 1.0);
}

/// The middle of a solid at the size it has later, where something came off both faces.
Solid thinned(const Solid& solid, Length thickness) {
    if (thickness >= solid.size[Z] || thickness <= Length()) {
        return solid;
    }
    const Length below = half(solid.size[Z] - thickness);
    return kerfwright::between(solid, Z, below, below + thickness);
}

class Setter {
public:
    Setter(const Film& film, int stage, double progress)
        : film_(film)
        , stage_(film.stages[static_cast<std::size_t>(stage)])
        , p_(eased(progress))
        , linear_(progress) {}

    Scene operator()() {
        switch (stage_.kind) {
        case StageKind::Timber:
            timber();
            break;
        case StageKind::Strips:
            strips();
            break;
        case StageKind::Panel:
            panel();
            break;
        case StageKind::Cut:
            cut();
            break;
        case StageKind::Laid:
            laidOut();
            break;
        case StageKind::Field:
            field();
            break;
        case StageKind::Trimmed:
            trimmed();
            break;
        case StageKind::Rails:
            railParts();
            break;
        case StageKind::Border:
            whole(mixed(2.2, 0.7, p_));
            break;
        case StageKind::Finished:
            whole(mixed(0.7, 0, p_));
            break;
        }
        return std::move(scene_);
    }

private:
    const Traced* solid(const std::string& label) const {
        const auto found = film_.solids.find(label);
        return found == film_.solids.end() ? nullptr : &found->second;
    }
    std::string bare(Length length) const { return formatBare(length, film_.project.notation); }
    std::string text(Length length) const { return format(length, film_.project.notation); }

    template <class Kind, class Use>
    void each(Use use) const {
        for (const int index : stage_.steps) {
            if (const auto* work =
                    std::get_if<Kind>(&film_.list.steps[static_cast<std::size_t>(index)].work)) {
                use(*work);
            }
        }
    }

    /// The number of the stage that is this size.
    int number(const char* begins, Length value) const {
        for (std::size_t i = 0; i < stage_.numbers.size(); ++i) {
            const StageNumber& one = stage_.numbers[i];
            if (one.figure.value == value && one.label.rfind(begins, 0) == 0) {
                return static_cast<int>(i);
            }
        }
        return -1;
    }
    void size(SceneSize::Way way, double from, double to, double edge, Length value,
              const char* begins, int level = 0) {
        scene_.sizes.push_back({way, from, to, edge, value, number(begins, value), level});
    }
    void across(double from, double to, double edge, Length value, const char* begins,
                int level = 0) {
        size(SceneSize::Way::Across, from, to, edge, value, begins, level);
    }
    void down(double from, double to, double edge, Length value, const char* begins,
              int level = 0) {
        size(SceneSize::Way::Down, from, to, edge, value, begins, level);
    }
    /// The height of a body whose near lower edge lies at `y` and ends at `x`.
    void up(double y, double x, Length value, const char* begins) {
        size(SceneSize::Way::Up, y - filmTilt * mm(value), y, x, value, begins);
    }

    SceneBlock& put(Solid body, std::string label, double x, double y, Fate fate = Fate::GoesOn) {
        SceneBlock& block = scene_.blocks.emplace_back();
        block.middle = {x + mm(body.size[X]) / 2, y + mm(body.size[Y]) / 2, mm(body.size[Z]) / 2};
        block.solid = std::move(body);
        block.label = std::move(label);
        block.fate = fate;
        return block;
    }

    // ---- Timber and strips ----

    void timber() {
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
        std::stable_sort(groups.begin(), groups.end(), [](const Blanks& a, const Blanks& b) {
            return a.line->wood < b.line->wood;
        });
        const int most = all <= manyBlanks
                             ? manyBlanks
                             : std::max(1, manyBlanks / static_cast<int>(groups.size()));
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
            scene_.labels.push_back(
                {mm(longest), (begin + y) / 2 - filmTilt * mm(line.roughThickness.value),
                 film_.project.woods[static_cast<std::size_t>(line.wood)].name + ", " +
                     std::to_string(group.count) + " of " + bare(line.roughThickness.value) +
                     " × " + bare(line.roughWidth.value) + " × " + text(line.roughLength.value)});
            if (!measured && line.roughLength.value == longest) {
                measured = true;
                down(begin - filmTilt * mm(line.roughThickness.value),
                     begin + wide - filmTilt * mm(line.roughThickness.value), 0,
                     line.roughWidth.value, "Rough width");
            }
            y += 10;
        }
        across(0, mm(longest), bottom, longest, "Rough length");
    }

    void strips() {
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
            put(stick(line.wood, line.width.value, line.length.value, line.thickness.value),
                labels[i], x, 0);
            const double wide = mm(line.width.value);
            scene_.labels.push_back(
                {x + wide / 2, -filmTilt * mm(line.thickness.value), labels[i], Align::Centre});
            across(x, x + wide, mm(line.length.value), line.width.value, "Width");
            x += wide + gap * p_;
        }
        const MillLine& last = *order.back();
        const double lift = filmTilt * mm(last.thickness.value);
        down(-lift, mm(longest) - lift, 0, longest, "Length");
        up(mm(last.length.value), x - gap * p_, last.thickness.value, "Thickness");
    }

    const MillLine* lineOf(const std::string& label) const {
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
    std::vector<std::string> stripOrder() const {
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

    // ---- Panels and what is cut off them ----

    void panel() {
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
        across(0, wide, mm(ready[Y]), ready[X], "Width");
        down(-lift, mm(ready[Y]) - lift, 0, ready[Y], "Length");
        up(mm(ready[Y]), wide, ready[Z], "Thickness");
    }

    /// The parts of a glue-up as they lie, `share` of the usual gap between them.
    void spread(const Glue& glue, double share, Length thickness) {
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
    static double gapOf(double size) { return std::clamp(size * 0.45, 4.0, apart); }

    void cut() {
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
                                     fate == Fate::Spare ? "spare" : label});
            front = y + mm(body.size[Y]);
            y = front + mixed(1, apart, p_) + (p_ * lift * 0.5);
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
                             "Stop");
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
            scene_.labels.push_back({mm(width), y + mm(left) / 2 - lift, "offcut"});
        }
        across(0, mm(width), front, width, "Width");
        up(front, mm(width), thickness, "Thickness");
    }

    // ---- The field ----

    std::vector<Laid> order(bool& down) const {
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

    void laidOut() {
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
            const double way = between(linear_, late, late + 0.65);
            const double rise = eased(between(way, 0, 0.6));
            const double swing = eased(between(way, 0.4, 1));
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
            block.middle[2] = heightOf(block) / 2 +
                              (swings ? std::sin(std::numbers::pi * swing) * 0.12 * wide : 0);
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
                        down(to - lift, to + deep - lift, 0, value, "Row");
                    } else {
                        across(to, to + deep, wide, value, "Column");
                    }
                }
                if (i + 1 == count) {
                    if (rows) {
                        across(0, wide, to + deep, ends.size[X], "Width");
                    } else {
                        down(-lift, wide - lift, 0, ends.size[Y], "Width");
                    }
                    up(rows ? to + deep : wide, rows ? wide : to + deep, ends.size[Z], "Thickness");
                }
            }
            from += before + gapOf(before);
            to += deep + gapOf(deep);
            ++i;
        }
    }

    static double heightOf(const SceneBlock& block) {
        double height = 0;
        for (const Axis axis : {X, Y, Z}) {
            Spot edge{};
            edge[axis] = mm(block.solid.size[axis]);
            height += std::abs(turnedLike(block, edge)[2]);
        }
        return height;
    }

    void field() {
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
        across(0, wide, high, made.size[X], "Width");
        down(-lift, high - lift, 0, made.size[Y], "Height");
        up(high, wide, thickness, "Thickness");
    }

    void trimmed() {
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
        across(m, mm(w) - m, near + m + gap, w - margin * 2, "Width");
        down(-lift, near - lift, -gap, h - margin * 2, "Height");
        size(SceneSize::Way::Up, near + gap - lift, near + gap + m - lift, mm(w), margin, "Margin");
    }

    // ---- The border ----

    void railParts() {
        double y = 0;
        double bottom = 0;
        double longest = 0;
        std::vector<std::string> cutToLength;
        bool measured = false;
        const auto labelled = [&](const std::string& words, double x, double at) {
            longest = std::max(longest, x);
            scene_.labels.push_back({x, at, words});
        };
        Length thickness = film_.board.thickness;
        each<CutRails>([&](const CutRails& cut) {
            for (const Rail& rail : cut.rails) {
                const MillLine* line = lineOf(rail.label);
                if (line == nullptr) {
                    continue;
                }
                cutToLength.push_back(rail.label);
                thickness = line->thickness.value;
                const double length = mm(rail.longPoint.value);
                const double wide = mm(line->width.value);
                const double back = cut.mitred ? std::min(wide, length / 2) : 0;
                const double lift = filmTilt * mm(thickness);
                scene_.plates.push_back(
                    {rail.label,
                     {{0, y}, {length, y}, {length - back, y + wide}, {back, y + wide}},
                     0,
                     mm(thickness),
                     line->wood,
                     X});
                labelled(rail.label + ", " + text(rail.longPoint.value), length,
                         y + wide / 2 - lift);
                if (!measured) {
                    measured = true;
                    down(y - lift, y + wide - lift, 0, line->width.value, "Width");
                }
                bottom = y + wide;
                y += wide + apart + lift;
            }
        });
        each<Mill>([&](const Mill& mill) {
            for (const MillLine& line : mill.lines) {
                for (const std::string& label : line.strips) {
                    if (std::find(cutToLength.begin(), cutToLength.end(), label) !=
                        cutToLength.end()) {
                        continue;
                    }
                    put(laid(stick(line.wood, line.width.value, line.length.value,
                                   line.thickness.value),
                             Lay{.turned = true}),
                        label, 0, y);
                    const double lift = filmTilt * mm(line.thickness.value);
                    labelled(label + ", " + bare(line.thickness.value) + " × " +
                                 bare(line.width.value) + " × " + text(line.length.value),
                             mm(line.length.value), y + mm(line.width.value) / 2 - lift);
                    bottom = y + mm(line.width.value);
                    y = bottom + apart * 0.7 + lift;
                }
            }
        });
        for (SceneLabel& label : scene_.labels) {
            label.x = longest;
        }
        Length first;
        each<CutRails>([&](const CutRails& cut) {
            if (!cut.rails.empty()) {
                first = cut.rails.front().longPoint.value;
            }
        });
        if (first > Length()) {
            across(0, mm(first), bottom, first,
                   number("Long point", first) >= 0 ? "Long point" : "Length,");
        }
    }

    /// The board with its rails `out` of their widths away from their place.
    void whole(double out) {
        const Traced* field = solid(stage_.part);
        if (field == nullptr) {
            return;
        }
        const Solid& ready = field->ready;
        const double thick = mm(ready.size[Z]);
        const double lift = filmTilt * thick;
        const double w = mm(ready.size[X]);
        const double h = mm(ready.size[Y]);
        put(ready, stage_.part, 0, 0);
        const FitBorder* fit = nullptr;
        bool mitred = true;
        for (const Step& step : film_.list.steps) {
            if (const auto* work = std::get_if<FitBorder>(&step.work)) {
                fit = work;
            } else if (const auto* rails = std::get_if<CutRails>(&step.work)) {
                mitred = rails->mitred;
            }
        }
        if (fit == nullptr) {
            across(0, w, h, ready.size[X], "Width");
            down(-lift, h - lift, 0, ready.size[Y], "Height");
            up(h, w, ready.size[Z], "Thickness");
            return;
        }
        const double railX = mm(fit->boardWidth.value) - w - 2 * mm(fit->gapX.value);
        const double railY = mm(fit->boardHeight.value) - h - 2 * mm(fit->gapY.value);
        const double x0 = -mm(fit->gapX.value) - railX / 2;
        const double y0 = -mm(fit->gapY.value) - railY / 2;
        const double x1 = w - x0;
        const double y1 = h - y0;
        const double rail = mm(fit->width.value);
        addRails(*fit, mitred, {x0, y0, x1 - x0, y1 - y0}, {railX / 2, railY / 2}, out * rail,
                 thick);
        if (stage_.kind == StageKind::Finished) {
            across(x0, x1, y1, fit->boardWidth.value, "Width");
            down(y0 - lift, y1 - lift, x0, fit->boardHeight.value, "Height");
            up(y1, x1, ready.size[Z], "Thickness");
            return;
        }
        const double away = out * rail;
        for (const Rail& one : fit->rails) {
            const bool top = one.label.rfind("Top", 0) == 0;
            const bool left = one.label.rfind("Left", 0) == 0;
            if (top) {
                across(x0, x1, y1 + away, one.longPoint.value, "Length");
            } else if (left) {
                const double half = mm(one.longPoint.value) / 2;
                down(h / 2 - half - lift, h / 2 + half - lift, x0 - away, one.longPoint.value,
                     "Length");
            }
        }
        if (railY > 0) {
            size(SceneSize::Way::Up, y1 + away - lift - railY / 2, y1 + away - lift,
                 x1 + (railX > 0 ? away : 0), fit->width.value, "Rail width");
        } else {
            across(x1 + away - railX / 2, x1 + away, h, fit->width.value, "Rail width");
        }
    }

    void addRails(const FitBorder& fit, bool mitred, const Box& board, const Point& rails,
                  double away, double thick) {
        const Border& border = film_.board.border;
        const double x0 = board.x;
        const double y0 = board.y;
        const double x1 = board.right();
        const double y1 = board.bottom();
        const auto plate = [&](const char* side, std::vector<Point> outline, double dx, double dy,
                               int wood, double low, double high) {
            const std::string name(side);
            for (Point& point : outline) {
                point = {point.x + dx * away, point.y + dy * away};
            }
            std::string label;
            for (const Rail& rail : fit.rails) {
                label = rail.label.rfind(name, 0) == 0 ? rail.label : label;
            }
            scene_.plates.push_back({label, std::move(outline), low, high, wood, dy != 0 ? X : Y});
        };
        const auto ring = [&](double outX, double outY, double inX, double inY, int wood,
                              double low, double high) {
            const double mitreX = mitred ? inX : outX;
            if (rails.y > 0) {
                plate("Top",
                      {{x0 + outX, y0 + outY},
                       {x1 - outX, y0 + outY},
                       {x1 - mitreX, y0 + inY},
                       {x0 + mitreX, y0 + inY}},
                      0, -1, wood, low, high);
            }
            const double endY = mitred ? outY : (rails.y > 0 ? inY : 0);
            const double innerY = rails.y > 0 ? inY : 0;
            if (rails.x > 0) {
                plate("Left",
                      {{x0 + outX, y0 + endY},
                       {x0 + inX, y0 + innerY},
                       {x0 + inX, y1 - innerY},
                       {x0 + outX, y1 - endY}},
                      -1, 0, wood, low, high);
                plate("Right",
                      {{x1 - inX, y0 + innerY},
                       {x1 - outX, y0 + endY},
                       {x1 - outX, y1 - endY},
                       {x1 - inX, y1 - innerY}},
                      1, 0, wood, low, high);
            }
            if (rails.y > 0) {
                plate("Bottom",
                      {{x0 + mitreX, y1 - inY},
                       {x1 - mitreX, y1 - inY},
                       {x1 - outX, y1 - outY},
                       {x0 + outX, y1 - outY}},
                      0, 1, wood, low, high);
            }
        };
        ring(0, 0, rails.x, rails.y, border.wood, 0, thick);
        if (border.hasInlay()) {
            const double line = mm(border.inlayWidth);
            ring(rails.x - line, rails.y - line, rails.x, rails.y, border.inlayWood, thick,
                 thick + 0.01);
        }
    }

    const Film& film_;
    const FilmStage& stage_;
    double p_;       ///< eased
    double linear_;  ///< not yet: every slice has its own way
    Scene scene_;
};

Spot roundX(const Spot& at, double quarters) {
    const double angle = quarters * std::numbers::pi / 2;
    return {at[0], at[1] * std::cos(angle) - at[2] * std::sin(angle),
            at[1] * std::sin(angle) + at[2] * std::cos(angle)};
}
Spot roundY(const Spot& at, double quarters) {
    const double angle = quarters * std::numbers::pi / 2;
    return {at[0] * std::cos(angle) + at[2] * std::sin(angle), at[1],
            at[2] * std::cos(angle) - at[0] * std::sin(angle)};
}
Spot roundZ(const Spot& at, double quarters) {
    const double angle = quarters * std::numbers::pi / 2;
    return {at[0] * std::cos(angle) - at[1] * std::sin(angle),
            at[0] * std::sin(angle) + at[1] * std::cos(angle), at[2]};
}

}  // namespace

double eased(double progress) {
    const double p = std::clamp(progress, 0.0, 1.0);
    return p * p * p * (p * (p * 6 - 15) + 10);
}

Scene sceneOf(const Film& film, int stage, double progress) {
    return Setter(film, stage, std::clamp(progress, 0.0, 1.0))();
}

Spot turnedLike(const SceneBlock& block, const Spot& direction) {
    Spot at = roundY(direction, block.rolled);
    at = roundX(at, block.stoodUp);
    at = roundX(at, block.turnedOver * 2);
    at = roundZ(at, block.flipped * 2);
    return roundZ(at, block.turned);
}

Spot placed(const SceneBlock& block, const Spot& local) {
    Spot at{};
    for (const Axis axis : {X, Y, Z}) {
        at[axis] = local[axis] - mm(block.solid.size[axis]) / 2;
    }
    at = turnedLike(block, at);
    for (const Axis axis : {X, Y, Z}) {
        at[axis] += block.middle[axis];
    }
    return at;
}

}  // namespace kerfwright
