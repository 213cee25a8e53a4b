#include "core/sheets/filmsetter.h"
#include "core/sheets/record.h"

#include <algorithm>

namespace kerfwright {

void SceneSetter::railParts() {
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
            labelled(shownLabel(rail.label) + ", " + text(rail.longPoint.value), length,
                     y + wide / 2 - lift);
            if (!measured) {
                measured = true;
                down(y - lift, y + wide - lift, 0, line->width.value, Measured::Width);
            }
            bottom = y + wide;
            y += wide + apart + lift;
        }
    });
    each<Mill>([&](const Mill& mill) {
        for (const MillLine& line : mill.lines) {
            for (const std::string& label : line.strips) {
                if (std::find(cutToLength.begin(), cutToLength.end(), label) != cutToLength.end()) {
                    continue;
                }
                put(laid(
                        stick(line.wood, line.width.value, line.length.value, line.thickness.value),
                        Lay{.turned = true}),
                    label, 0, y);
                const double lift = filmTilt * mm(line.thickness.value);
                labelled(shownLabel(label) + ", " + bare(line.thickness.value) + " × " +
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
               number(Measured::LongPoint, first) >= 0 ? Measured::LongPoint : Measured::Length);
    }
}

/// The board with its rails `out` of their widths away from their place.
void SceneSetter::whole(double out) {
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
        across(0, w, h, ready.size[X], Measured::Width);
        down(-lift, h - lift, 0, ready.size[Y], Measured::Height);
        up(h, w, ready.size[Z], Measured::Thickness);
        return;
    }
    const double railX = mm(fit->boardWidth.value) - w - 2 * mm(fit->gapX.value);
    const double railY = mm(fit->boardHeight.value) - h - 2 * mm(fit->gapY.value);
    const double x0 = -mm(fit->gapX.value) - railX / 2;
    const double y0 = -mm(fit->gapY.value) - railY / 2;
    const double x1 = w - x0;
    const double y1 = h - y0;
    const double rail = mm(fit->width.value);
    addRails(*fit, mitred, {x0, y0, x1 - x0, y1 - y0}, {railX / 2, railY / 2}, out * rail, thick);
    if (stage_.kind == StageKind::Finished) {
        across(x0, x1, y1, fit->boardWidth.value, Measured::Width);
        down(y0 - lift, y1 - lift, x0, fit->boardHeight.value, Measured::Height);
        up(y1, x1, ready.size[Z], Measured::Thickness);
        return;
    }
    const double away = out * rail;
    for (const Rail& one : fit->rails) {
        const bool top = one.label.rfind("Top", 0) == 0;
        const bool left = one.label.rfind("Left", 0) == 0;
        if (top) {
            across(x0, x1, y1 + away, one.longPoint.value, Measured::Length);
        } else if (left) {
            const double half = mm(one.longPoint.value) / 2;
            down(h / 2 - half - lift, h / 2 + half - lift, x0 - away, one.longPoint.value,
                 Measured::Length);
        }
    }
    if (railY > 0) {
        size(SceneSize::Way::Up, y1 + away - lift - railY / 2, y1 + away - lift,
             x1 + (railX > 0 ? away : 0), fit->width.value, Measured::RailWidth);
    } else {
        across(x1 + away - railX / 2, x1 + away, h, fit->width.value, Measured::RailWidth);
    }
}

void SceneSetter::addRails(const FitBorder& fit, bool mitred, const Box& board, const Point& rails,
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
    const auto ring = [&](double outX, double outY, double inX, double inY, int wood, double low,
                          double high) {
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

}  // namespace kerfwright
