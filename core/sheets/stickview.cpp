#include "core/sheets/stickview.h"

#include "core/drawing/dimension.h"
#include "core/drawing/geometry.h"
#include "core/sheets/hatch.h"

#include <algorithm>
#include <cmath>

namespace kerfwright {
namespace {

constexpr double hatchPitch = 1.7;
constexpr double hatchLine = 0.14;
constexpr double jointLine = 0.25;

/// A letter with a little of its wood around it, so that the hatch does not run through it.
void addLetter(Drawing& drawing, const Matter& matter, Point centre, int wood, double size) {
    const std::string& letter = matter.wood(wood).letter;
    if (wood > 0) {
        const double width = textWidth(letter, size, true) + 0.8;
        drawing.marks.emplace_back(
            Rectangle{{centre.x - width / 2, centre.y - size * 0.5, width, size},
                      0,
                      {.fill = Ink::Wood, .wood = wood}});
    }
    drawing.marks.emplace_back(Text{.at = {centre.x, centre.y + size * 0.365},
                                    .text = letter,
                                    .size = size,
                                    .align = Align::Centre,
                                    .bold = true,
                                    .style = {.line = Ink::WoodLine, .wood = wood}});
}

/// A white band with two ragged edges: the picture is broken here.
void addBreak(Drawing& drawing, double left, double right, double y) {
    constexpr double halfBand = 1.1;
    constexpr double tooth = 1.0;
    const int teeth = std::max(2, static_cast<int>((right - left) / 7));
    std::vector<Point> upper;
    std::vector<Point> lower;
    for (int i = 0; i <= teeth; ++i) {
        const double x = left + (right - left) * i / teeth;
        const double swing = i % 2 == 0 ? tooth : -tooth;
        upper.push_back({x, y - halfBand + swing});
        lower.push_back({x, y + halfBand + swing});
    }
    std::vector<Point> band = upper;
    band.insert(band.end(), lower.rbegin(), lower.rend());
    // A little wider than the panel, to hide its outline too.
    band.front().x -= 0.4;
    band.back().x -= 0.4;
    band[upper.size() - 1].x += 0.4;
    band[upper.size()].x += 0.4;
    drawing.marks.emplace_back(Shape{std::move(band), true, {.fill = Ink::Paper}});
    const Style edge{.line = Ink::Quiet, .lineWidth = 0.2};
    drawing.marks.emplace_back(Shape{std::move(upper), false, edge});
    drawing.marks.emplace_back(Shape{std::move(lower), false, edge});
}

/// The mark that is pencilled across the face before gluing: it reads as one triangle only while
/// every strip lies in its place and the right way round.
void addFaceMark(Drawing& drawing, const Box& box) {
    const std::vector<Point> triangle{
        {box.x + box.width / 2, box.y}, {box.right(), box.bottom()}, {box.x, box.bottom()}};
    drawing.marks.emplace_back(Shape{triangle, true, {.line = Ink::Paper, .lineWidth = 1.1}});
    drawing.marks.emplace_back(Shape{triangle, true, {.line = Ink::Text, .lineWidth = 0.45}});
}

void addWaste(Drawing& drawing, const Box& box) {
    drawing.marks.emplace_back(Rectangle{box, 0, {.fill = Ink::Paper}});
    const Style style{.line = Ink::Waste, .lineWidth = 0.15};
    for (const Segment& line : hatchLines(corners(box), -60, 1.1)) {
        drawing.marks.emplace_back(Line{line.first, line.second, style});
    }
    drawing.marks.emplace_back(Rectangle{box, 0, {.line = Ink::Waste, .lineWidth = 0.2}});
}

}  // namespace

EdgeLabels addEdgeLabels(Drawing& drawing, const std::vector<EdgeLabel>& labels, double edge,
                         bool above, double least, double most, int mostRows) {
    constexpr double air = 0.9;
    const auto rowCount = static_cast<std::size_t>(mostRows);
    std::vector<double> taken(rowCount, least - 2 * air);    // right ends of the texts in a row
    std::vector<double> leaders(rowCount, least - 2 * air);  // the last leader through a row
    const double size = labels.empty() ? type::small : labels.front().tone.size;
    const double pitch = size * 1.28;
    EdgeLabels result;
    std::size_t used = 0;
    for (const EdgeLabel& label : labels) {
        const double half = textWidth(label.words, label.tone.size, label.tone.bold) / 2;
        const double middle =
            std::clamp(label.x, least + half, std::max(least + half, most - half));
        bool placed = false;
        for (std::size_t row = 0; row < rowCount && !placed; ++row) {
            const bool roomForText = middle - half > std::max(taken[row], leaders[row]) + air &&
                                     middle + half <= most + air;
            const bool roomForLeader =
                std::all_of(taken.begin(), taken.begin() + static_cast<std::ptrdiff_t>(row),
                            [&](double end) { return label.x > end + air / 2; });
            if (!roomForText || !roomForLeader) {
                continue;
            }
            placed = true;
            used = std::max(used, row + 1);
            taken[row] = middle + half;
            const double start = 1.1 + pitch * static_cast<double>(row);
            const double baseline = above ? edge - start : edge + start + size * 0.76;
            if (row > 0) {
                drawing.marks.emplace_back(
                    Line{{label.x, above ? edge - 0.5 : edge + 0.5},
                         {label.x, above ? baseline + 0.5 : edge + start - 0.2},
                         {.line = Ink::Rule, .lineWidth = 0.15}});
                std::fill(leaders.begin(), leaders.begin() + static_cast<std::ptrdiff_t>(row),
                          label.x);
            }
            drawing.marks.emplace_back(Text{.at = {middle, baseline},
                                            .text = label.words,
                                            .size = label.tone.size,
                                            .align = Align::Centre,
                                            .bold = label.tone.bold,
                                            .style = {.line = label.tone.ink}});
        }
        result.complete = result.complete && placed;
    }
    result.height = 1.1 + pitch * static_cast<double>(used);
    return result;
}

void drawRow(Drawing& drawing, const Matter& matter, const std::vector<StripRecord>& strips,
             const Box& box, bool letters) {
    double total = 0;
    for (const StripRecord& strip : strips) {
        total += strip.line->width.value.toMm();
    }
    double x = box.x;
    std::vector<double> joints;
    for (const StripRecord& strip : strips) {
        const int wood = strip.line->wood;
        const Box part{x, box.y, strip.line->width.value.toMm() * box.width / total, box.height};
        drawing.marks.emplace_back(Rectangle{part, 0, {.fill = Ink::Wood, .wood = wood}});
        addHatch(drawing, corners(part), wood, hatchPitch, hatchLine);
        const double letter = textWidth(matter.wood(wood).letter, type::small, true);
        if (letters && part.width > letter + 1.4 && part.height > type::small + 0.6) {
            addLetter(drawing, matter, {part.x + part.width / 2, part.y + part.height / 2}, wood,
                      type::small);
        }
        x = part.right();
        joints.push_back(x);
    }
    joints.pop_back();
    const Style style{.line = Ink::Joint, .lineWidth = jointLine};
    for (const double joint : joints) {
        drawing.marks.emplace_back(Line{{joint, box.y}, {joint, box.bottom()}, style});
    }
    drawing.marks.emplace_back(Rectangle{box, 0, style});
}

void drawFace(Drawing& drawing, const Matter& matter, const Solid& solid, Seen seen, const Box& box,
              bool letters, bool diagonally) {
    const bool above = seen == Seen::FromAbove;
    const Axis down = above ? Y : Z;
    const double across = solid.size[X].toMm();
    const double tall = solid.size[down].toMm();
    const double xScale = box.width / (diagonally ? tall : across);
    const double yScale = box.height / (diagonally ? across : tall);
    std::vector<Box> cells;
    for (const Cuboid& cuboid : solid.boxes) {
        const bool shows =
            above ? cuboid.high[Z] == solid.size[Z] : cuboid.high[Y] == solid.size[Y];
        if (!shows) {
            continue;
        }
        const double x = cuboid.low[X].toMm();
        const double w = (cuboid.high[X] - cuboid.low[X]).toMm();
        const double h = (cuboid.high[down] - cuboid.low[down]).toMm();
        const double y = above ? cuboid.low[Y].toMm() : tall - cuboid.high[Z].toMm();
        const Box cell = diagonally
                             ? Box{box.x + y * xScale, box.y + x * yScale, h * xScale, w * yScale}
                             : Box{box.x + x * xScale, box.y + y * yScale, w * xScale, h * yScale};
        drawing.marks.emplace_back(Rectangle{cell, 0, {.fill = Ink::Wood, .wood = cuboid.wood}});
        addHatch(drawing, corners(cell), cuboid.wood, hatchPitch, hatchLine);
        const double letter = textWidth(matter.wood(cuboid.wood).letter, type::small, true);
        if (letters && cell.width > letter + 1.4 && cell.height > type::small + 0.6) {
            addLetter(drawing, matter, {cell.x + cell.width / 2, cell.y + cell.height / 2},
                      cuboid.wood, type::small);
        }
        cells.push_back(cell);
    }
    for (const Box& cell : cells) {
        drawing.marks.emplace_back(
            Rectangle{cell, 0, {.line = Ink::Joint, .lineWidth = jointLine}});
    }
}

std::vector<std::pair<int, Length>> topBands(const Solid& solid) {
    std::vector<const Cuboid*> top;
    for (const Cuboid& box : solid.boxes) {
        if (box.high[Z] == solid.size[Z] && box.low[Y] == Length()) {
            top.push_back(&box);
        }
    }
    std::sort(top.begin(), top.end(),
              [](const Cuboid* a, const Cuboid* b) { return a->low[X] < b->low[X]; });
    std::vector<std::pair<int, Length>> bands;
    for (const Cuboid* box : top) {
        bands.emplace_back(box->wood, box->high[X] - box->low[X]);
    }
    return bands;
}

bool drawPanelToGlue(Flow& flow, const Matter& matter, const PanelRecord& panel) {
    constexpr double tallest = 58;
    constexpr double sideRoom = 9;
    Drawing& drawing = flow.drawing();
    const double width = panel.width().toMm();
    const double length = panel.length().value.toMm();
    const double left = flow.left() + sideRoom;
    // A narrow panel is not blown up beyond half its true size.
    const double scale = std::min((flow.right() - left) / width, 1.0);
    const double right = left + width * scale;
    const bool broken = length * scale > tallest;
    const double height = broken ? tallest : length * scale;

    std::vector<EdgeLabel> names;
    std::vector<EdgeLabel> numbers;
    std::vector<EdgeLabel> widths;
    std::vector<EdgeLabel> letters;
    bool lettersInside = height > 10;
    const Tone bold{type::small, true, Ink::Text};
    double x = left;
    for (const StripRecord& strip : panel.strips) {
        const double part = strip.line->width.value.toMm() * scale;
        const double middle = x + part / 2;
        const std::string& letter = matter.wood(strip.line->wood).letter;
        names.push_back({middle, strip.label, bold});
        numbers.push_back({middle, std::to_string(numbers.size() + 1), bold});
        widths.push_back({middle, matter.bare(strip.line->width.value), smallText});
        letters.push_back({middle, letter, {type::small, true, Ink::Accent}});
        lettersInside = lettersInside && part > textWidth(letter, type::small, true) + 1;
        x += part;
    }
    // The labels are laid out twice: once to learn how high they stand, once in their place.
    Drawing trial;
    const double most = flow.right();
    constexpr int mostRows = 3;
    EdgeLabels above = addEdgeLabels(trial, names, 0, true, left, most, mostRows);
    if (!above.complete) {
        // Very many strips are counted without the letter of the panel.
        names = std::move(numbers);
        above = addEdgeLabels(trial, names, 0, true, left, most, mostRows + 1);
    }
    const double top = flow.y + above.height + 0.5;
    const Box box{left, top, right - left, height};
    addEdgeLabels(drawing, names, top, true, left, most, mostRows + 1);

    x = left;
    for (const StripRecord& strip : panel.strips) {
        const Box part{x, top, strip.line->width.value.toMm() * scale, height};
        drawing.marks.emplace_back(
            Rectangle{part, 0, {.fill = Ink::Wood, .wood = strip.line->wood}});
        addHatch(drawing, corners(part), strip.line->wood, hatchPitch, hatchLine);
        x = part.right();
    }
    const Style joint{.line = Ink::Joint, .lineWidth = jointLine};
    x = left;
    for (const StripRecord& strip : panel.strips) {
        const double part = strip.line->width.value.toMm() * scale;
        if (lettersInside) {
            const double room =
                textWidth(matter.wood(strip.line->wood).letter, type::small, true) + 1;
            const double size = std::min(5.5, type::small * part / room);
            addLetter(drawing, matter, {x + part / 2, top + 5}, strip.line->wood, size);
        }
        x += part;
        drawing.marks.emplace_back(Line{{x, top}, {x, box.bottom()}, joint});
    }
    drawing.marks.emplace_back(Rectangle{box, 0, joint});
    if (height > 24) {
        addFaceMark(drawing,
                    {box.x + 2, top + 11, box.width - 4, height * (broken ? 0.62 : 0.8) - 11});
    }
    if (broken) {
        addBreak(drawing, box.x, box.right(), top + height * 0.78);
    }

    double below = 0;
    bool complete = above.complete;
    const auto addBelow = [&](const std::vector<EdgeLabel>& labels) {
        const double edge = box.bottom() + below;
        if (addEdgeLabels(trial, labels, edge, false, left, most, mostRows).complete) {
            below += addEdgeLabels(drawing, labels, edge, false, left, most, mostRows).height;
        } else {
            complete = false;
        }
    };
    if (!lettersInside) {
        addBelow(letters);
    }
    addBelow(widths);
    const double line = box.bottom() + below + 6;
    addDimensionAcross(drawing, left, right, line, box.bottom() + below, matter.text(panel.width()),
                       {.bold = true});
    addDimensionDown(drawing, top, box.bottom(), flow.left() + 4.4, left,
                     matter.text(panel.length().value), {.bold = true});
    flow.y = line + 3;
    return complete;
}

void drawPanelToSlice(Flow& flow, const Matter& matter, const Record& record,
                      const PanelRecord& panel) {
    constexpr double height = 30;
    Drawing& drawing = flow.drawing();
    const double length = panel.length().value.toMm();
    const double left = flow.left();
    const double scale = flow.width() / length;

    struct Slice {
        double from, to;
        std::string words;
        bool margin, spare;
    };
    std::vector<Slice> slices;
    std::vector<EdgeLabel> cuts;
    std::vector<Box> waste;
    double at = 0;
    int cutNumber = 0;
    const Tone cutTone{type::small, true, Ink::Accent};
    for (const int number : panel.later) {
        const Work& work = record.work(number);
        if (const auto* square = std::get_if<SquareEnd>(&work)) {
            waste.push_back({left, 0, square->waste.value.toMm() * scale, height});
            at += square->waste.value.toMm();
            cuts.push_back({left + (at + square->kerf.value.toMm() / 2) * scale,
                            std::to_string(++cutNumber), cutTone});
            at += square->kerf.value.toMm();
        } else if (const auto* cut = std::get_if<Crosscut>(&work)) {
            for (const auto* labels : {&cut->slices, &cut->spares}) {
                const bool spare = labels == &cut->spares;
                for (const std::string& label : *labels) {
                    const double end = at + cut->stop.value.toMm();
                    const std::string shown = shownLabel(label);
                    const std::string prefix = panel.label + "-";
                    slices.push_back(
                        {at, end, shown.starts_with(prefix) ? shown.substr(prefix.size()) : shown,
                         cut->marginRows, spare});
                    cuts.push_back({left + (end + cut->kerf.value.toMm() / 2) * scale,
                                    std::to_string(++cutNumber), cutTone});
                    at = end + cut->kerf.value.toMm();
                }
            }
        }
    }
    waste.push_back({left + at * scale, 0, (length - at) * scale, height});

    Drawing trial;
    const double above = addEdgeLabels(trial, cuts, 0, true, left, flow.right(), 4).height;
    const double top = flow.y + above + 1;
    const double bottom = top + height;
    addEdgeLabels(drawing, cuts, top - 1, true, left, flow.right(), 4);

    // The strips lie along the picture, the first one at the top.
    std::vector<std::pair<int, Length>> bands;
    if (panel.deep) {
        bands = topBands(record.solids.at(panel.label).ready);
    } else {
        for (const StripRecord& strip : panel.strips) {
            bands.emplace_back(strip.line->wood, strip.line->width.value);
        }
    }
    Length widest;
    for (const auto& [wood, width] : bands) {
        widest += width;
    }
    double y = top;
    for (const auto& [wood, width] : bands) {
        const Box part{left, y, flow.width(), width.toMm() * height / widest.toMm()};
        drawing.marks.emplace_back(Rectangle{part, 0, {.fill = Ink::Wood, .wood = wood}});
        addHatch(drawing, corners(part), wood, hatchPitch, hatchLine);
        y = part.bottom();
    }
    for (Box box : waste) {
        box.y = top;
        if (box.width > 0.05) {
            addWaste(drawing, box);
        }
    }
    const Style kerf{.fill = Ink::Paper};
    for (const EdgeLabel& cut : cuts) {
        const double half = std::max(0.35, matter.project.shop.kerf.toMm() * scale / 2);
        drawing.marks.emplace_back(
            Rectangle{{cut.x - half, top - 0.4, 2 * half, height + 0.8}, 0, kerf});
        drawing.marks.emplace_back(
            Line{{cut.x, top - 1.2}, {cut.x, bottom + 0.8}, {.line = Ink::Cut, .lineWidth = 0.3}});
    }
    std::vector<EdgeLabel> names;
    for (const Slice& slice : slices) {
        const double from = left + slice.from * scale;
        const double to = left + slice.to * scale;
        const Ink ink = slice.margin ? Ink::Warning : slice.spare ? Ink::Quiet : Ink::Text;
        if (slice.margin) {
            drawing.marks.emplace_back(
                Rectangle{{from, bottom + 1, to - from, 1.2}, 0, {.fill = Ink::Warning}});
        }
        names.push_back({(from + to) / 2, slice.words, {type::small, !slice.spare, ink}});
    }
    const double below =
        addEdgeLabels(drawing, names, bottom + 2, false, left, flow.right(), 5).height;
    flow.y = bottom + 2 + below + 1.5;
}

}  // namespace kerfwright
