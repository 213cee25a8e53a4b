#include "core/drawing/geometry.h"
#include "core/sheets/boardview.h"
#include "core/sheets/gluewords.h"
#include "core/sheets/hatch.h"
#include "core/sheets/methods.h"
#include "core/sheets/pages.h"
#include "core/sheets/stickview.h"
#include "core/words/say.h"

#include <algorithm>
#include <map>
#include <set>
#include <tuple>

namespace kerfwright {
namespace {

using Wish = std::vector<std::pair<int, Length>>;

Wish seen(const RowRecord& row) {
    Wish wish;
    for (const StripRecord& strip : row.strips) {
        wish.emplace_back(strip.line->wood, strip.line->width.value);
    }
    return wish;
}

/// What a face of a workpiece shows from above.
std::vector<Cuboid> onTop(const Solid& solid) {
    std::vector<Cuboid> top;
    for (Cuboid box : solid.boxes) {
        if (box.high[Z] == solid.size[Z]) {
            box.low[Z] = Length();
            top.push_back(box);
        }
    }
    std::sort(top.begin(), top.end(), [](const Cuboid& a, const Cuboid& b) {
        return std::tie(a.low, a.high) < std::tie(b.low, b.high);
    });
    return top;
}

bool looksAlike(const std::vector<RowRecord>& a, const std::vector<RowRecord>& b) {
    if (!a.empty() && !a.front().solid.boxes.empty()) {
        return std::equal(a.begin(), a.end(), b.begin(), b.end(),
                          [](const RowRecord& x, const RowRecord& y) {
                              return onTop(x.solid) == onTop(y.solid);
                          });
    }
    return std::equal(a.begin(), a.end(), b.begin(), b.end(),
                      [](const RowRecord& x, const RowRecord& y) { return seen(x) == seen(y); });
}

/// The field as the slices make it, without the trim margin.
Drawing drawField(const Matter& matter, const std::vector<RowRecord>& rows, bool byColumns,
                  double line, double hatch) {
    const double margin = matter.job.plan.margin.toMm();
    Drawing drawing;
    for (const Wood& wood : matter.project.woods) {
        drawing.woods.push_back(wood.colour);
    }
    const auto trimmed = [&](double size, std::size_t index, std::size_t count) {
        return size - margin * (int{index == 0} + int{index + 1 == count});
    };
    double v = 0;
    double width = 0;
    std::vector<Box> boxes;
    for (std::size_t r = 0; r < rows.size(); ++r) {
        const double height = trimmed(rows[r].height.toMm(), r, rows.size());
        double u = 0;
        for (std::size_t s = 0; s < rows[r].strips.size(); ++s) {
            const MillLine& strip = *rows[r].strips[s].line;
            const double part = trimmed(strip.width.value.toMm(), s, rows[r].strips.size());
            const Box box = byColumns ? Box{v, u, height, part} : Box{u, v, part, height};
            drawing.marks.emplace_back(Rectangle{box, 0, {.fill = Ink::Wood, .wood = strip.wood}});
            addHatch(drawing, corners(box), strip.wood, hatch, line * 0.6);
            boxes.push_back(box);
            u += part;
        }
        width = std::max(width, u);
        v += height;
    }
    for (const Box& box : boxes) {
        drawing.marks.emplace_back(Rectangle{box, 0, {.line = Ink::Joint, .lineWidth = line}});
    }
    drawing.extent = byColumns ? Box{0, 0, v, width} : Box{0, 0, width, v};
    return drawing;
}

/// The field of a deep plan as it would be if nobody turned a slice, its trim margin cut off.
void drawWrong(Drawing& drawing, const Matter& matter, const std::vector<RowRecord>& rows,
               bool byColumns, Point corner, double scale) {
    Solid whole;
    for (const RowRecord& row : rows) {
        append(whole, row.solid, byColumns ? X : Y);
    }
    const Length margin = matter.job.plan.margin;
    const Solid field = between(between(whole, X, margin, whole.size[X] - margin), Y, margin,
                                whole.size[Y] - margin);
    drawFace(drawing, matter, field, Seen::FromAbove,
             {corner.x, corner.y, field.size[X].toMm() * scale, field.size[Y].toMm() * scale},
             false);
}

/// A two-headed arrow: end for end along the row, or over about it.
void addArrow(Drawing& drawing, Point centre, bool down, Ink ink) {
    constexpr double halfLength = 3.2;
    constexpr double head = 1.7;
    constexpr double halfHead = 1.05;
    const auto put = [&](double u, double v) {
        return down ? Point{centre.x + v, centre.y + u * 0.7} : Point{centre.x + u, centre.y + v};
    };
    drawing.marks.emplace_back(
        Line{put(-halfLength + 1, 0), put(halfLength - 1, 0), {.line = ink, .lineWidth = 0.4}});
    for (const double end : {-1.0, 1.0}) {
        drawing.marks.emplace_back(
            Shape{{put(end * halfLength, 0), put(end * (halfLength - head), -halfHead),
                   put(end * (halfLength - head), halfHead)},
                  true,
                  {.fill = ink}});
    }
}

/// The right picture and the usual wrong one; returns the height.
double pictures(Flow& flow, const Matter& matter, const Record& record, double x, double width) {
    const bool endGrain = matter.project.board.build == Build::EndGrain;
    const std::vector<RowRecord> right = record.rows(endGrain, true);
    const std::vector<RowRecord> wrong = record.rows(endGrain, false);
    const bool differ = record.finalGlue && !looksAlike(right, wrong);
    const double column = differ ? (width - 6) / 2 : width;
    // Many rows need the height for their table.
    const double tallest = right.size() > 12 ? 38 : 54;

    const Box extent{0, 0, matter.project.board.field.width().toMm(),
                     matter.project.board.field.height().toMm()};
    const double scale = fitting(extent, column, tallest);
    const BoardViewOptions options{.letters = true,
                                   .hatch = true,
                                   .wholeBoard = false,
                                   .lineWidth = 0.2 / scale,
                                   .hatchPitch = 1.3 / scale,
                                   .leastLetter = type::small / scale,
                                   .greatestLetter = 4.2 / scale};
    const double top = flow.y;
    flow.text(x, top + 3.4,
              differ ? sayIn("not wrong", "Right") : say("The field, seen from above"),
              {type::body, true, Ink::Text});
    place(flow.drawing(),
          drawBoard(matter.project.board, matter.project.woods, record.list.extraJoints, options),
          {x, top + 5.5}, scale);
    if (differ) {
        const double left = x + column + 6;
        const std::string head = say("Wrong: nothing flipped");
        const double size =
            std::clamp(type::body * column / std::max(textWidth(head, type::body, true), 1.0),
                       type::small, type::body);
        flow.text(left, top + 3.4, head, {size, true, Ink::Warning}, Align::Left, column);
        if (record.deep) {
            drawWrong(flow.drawing(), matter, wrong, record.byColumns(), {left, top + 5.5}, scale);
        } else {
            place(
                flow.drawing(),
                drawField(matter, wrong, record.byColumns(), options.lineWidth, options.hatchPitch),
                {left, top + 5.5}, scale);
        }
        const double w = extent.width * scale;
        const double h = extent.height * scale;
        for (const auto& [ink, line] : {std::pair(Ink::Paper, 1.8), std::pair(Ink::Warning, 0.8)}) {
            const Style style{.line = ink, .lineWidth = line};
            const double y = top + 5.5;
            constexpr double in = 1;
            flow.drawing().marks.emplace_back(
                Line{{left + in, y + in}, {left + w - in, y + h - in}, style});
            flow.drawing().marks.emplace_back(
                Line{{left + in, y + h - in}, {left + w - in, y + in}, style});
        }
    }
    return 5.5 + extent.height * scale;
}

struct MapColumns {
    double row, slice, arrow, words, picture;
};

void mapHead(Flow& flow, const MapColumns& at, bool byColumns) {
    flow.box({flow.left(), flow.y, flow.width(), 6}, {.fill = Ink::Band});
    constexpr Tone tone{type::small, true, Ink::Quiet};
    const double base = flow.y + 4.2;
    flow.text(flow.left() + at.row, base, byColumns ? say("Column") : say("Row"), tone,
              Align::Right);
    flow.text(flow.left() + at.slice, base, sayIn("noun", "Slice"), tone);
    flow.text(flow.left() + at.arrow - 4, base, say("Lay it"), tone);
    flow.text(flow.left() + at.picture, base,
              byColumns ? say("Columns from left to right, their top at the left")
                        : say("Rows from top to bottom, as they lie"),
              tone, Align::Left, flow.width() - at.picture);
    flow.y += 7;
}

std::string layWords(const Lay& lay) {
    if (lay.flipped) {
        return lay.turnedOver ? sayIn("what to do", "flip, turn over")
                              : sayIn("what to do", "flip");
    }
    return lay.turnedOver ? sayIn("what to do", "turn over") : say("as cut");
}

/// `below`: the height of what must follow on the same page where it can.
void map(Flow& flow, const Matter& matter, const Record& record, double below) {
    const bool endGrain = matter.project.board.build == Build::EndGrain;
    const std::vector<RowRecord> rows = record.rows(endGrain, true);
    MapColumns at{20, 24, 48, 55, 84};
    for (const RowRecord& row : rows) {
        const double end = at.words + textWidth(layWords(row.lay), type::small, true) + 2;
        at.picture = std::max(at.picture, end);
    }
    const double pictureWidth = flow.width() - at.picture;
    flow.need(30);
    mapHead(flow, at, record.byColumns());
    // Few rows may be taller, so that they look like what lies on the bench.
    const double rowHeight =
        std::clamp((flow.room() - below) / static_cast<double>(rows.size()) - 0.01, 4.3, 9.0);
    const double letters = rowHeight < 5.2 ? type::small : type::body;
    const double gap = rowHeight < 5.2 ? 0.45 : 0.8;
    for (std::size_t i = 0; i < rows.size(); ++i) {
        if (flow.need(rowHeight)) {
            mapHead(flow, at, record.byColumns());
        }
        const RowRecord& row = rows[i];
        const double top = flow.y;
        const double middle = top + (rowHeight - gap) / 2;
        const double base = middle + letters * 0.365;
        const double tick = std::min(3.8, rowHeight - 0.9);
        flow.tick(flow.left(), middle - tick / 2, tick);
        flow.text(flow.left() + at.row, base, std::to_string(i + 1), quietText, Align::Right);
        flow.text(flow.left() + at.slice, base, row.slice, Tone{letters, true, Ink::Text},
                  Align::Left, 19);
        if (row.lay.flipped) {
            addArrow(flow.drawing(), {flow.left() + at.arrow, middle}, false, Ink::Accent);
        } else if (row.lay.turnedOver) {
            addArrow(flow.drawing(), {flow.left() + at.arrow, middle}, true, Ink::Accent);
        }
        flow.text(flow.left() + at.words, base, layWords(row.lay),
                  row.lay.flipped || row.lay.turnedOver ? Tone{letters, true, Ink::Text}
                                                        : Tone{letters, false, Ink::Quiet},
                  Align::Left, at.picture - at.words - 2);
        const Box picture{flow.left() + at.picture, top, pictureWidth, rowHeight - gap};
        if (row.solid.boxes.empty()) {
            drawRow(flow.drawing(), matter, row.strips, picture, true);
        } else {
            drawFace(flow.drawing(), matter, row.solid, Seen::FromAbove, picture, true,
                     record.byColumns());
        }
        flow.y += rowHeight;
    }
    flow.y += 3;
}

/// The joints inside pieces in words: how many and where, and each of them where they are few.
struct ExtraJoints {
    std::string summary;
    std::vector<std::string> each;

    double height(const Flow& flow) const {
        if (summary.empty()) {
            return 0;
        }
        double height = 9.2 + Flow::paragraphHeight(summary, smallText, flow.width());
        for (const std::string& words : each) {
            height += Flow::paragraphHeight(words, smallText, flow.width());
        }
        return height;
    }
    void add(Flow& flow) const {
        if (summary.empty()) {
            return;
        }
        flow.need(height(flow));
        flow.heading(say("Joints inside pieces"), say("dashed in the picture, short ones fine"));
        flow.y += flow.paragraph(flow.left(), flow.y, flow.width(), summary, smallText);
        for (const std::string& words : each) {
            flow.y += flow.paragraph(flow.left(), flow.y, flow.width(), words, smallText);
        }
        flow.y += 2;
    }
};

/// "1–4, 7"
std::string numberList(const std::set<std::size_t>& numbers) {
    std::vector<std::string> labels;
    labels.reserve(numbers.size());
    for (const std::size_t number : numbers) {
        labels.push_back(std::to_string(number));
    }
    return labelList(labels);
}

/// Where every joint is: those at one place along the board in one line.
std::vector<std::string> eachJoint(const Matter& matter, const std::vector<Joint>& joints) {
    std::map<std::pair<bool, Length>, std::string> places;
    for (const Joint& joint : joints) {
        std::string& runs = places[{!joint.vertical, joint.at}];
        runs += (runs.empty() ? "" : ", ") +
                say("{1} to {2}", matter.bare(joint.from), matter.inText(joint.to));
    }
    std::vector<std::string> lines;
    for (const auto& [place, runs] : places) {
        const auto& [level, at] = place;
        lines.push_back(level ? say("Level, {1} from the top edge; from the left edge: {2}",
                                    matter.inText(at), runs)
                              : say("Upright, {1} from the left edge; from the top edge: {2}",
                                    matter.inText(at), runs));
    }
    return lines;
}

ExtraJoints extraJoints(const Matter& matter, const Record& record) {
    ExtraJoints words;
    const std::vector<Joint>& joints = record.list.extraJoints;
    if (joints.empty()) {
        return words;
    }
    const Field& field = matter.project.board.field;
    const std::vector<int> pieces = pieceMap(field);
    const std::vector<RowRecord> rows =
        record.rows(matter.project.board.build == Build::EndGrain, true);
    std::set<int> divided;
    std::set<std::size_t> inRows;
    std::size_t upright = 0;
    for (const Joint& joint : joints) {
        upright += joint.vertical ? 1U : 0U;
        const Length middle = joint.from + half(joint.to - joint.from);
        const int column = columnAt(field, joint.vertical ? joint.at : middle);
        const int line = rowAt(field, joint.vertical ? middle : joint.at);
        if (column >= 0 && line >= 0) {
            divided.insert(pieces[static_cast<std::size_t>(line) * field.columns.size() +
                                  static_cast<std::size_t>(column)]);
        }
        // Along the rows' own direction a joint has one place, across it a beginning and an end.
        const bool alongRow = joint.vertical == record.byColumns();
        const Length begin = alongRow ? joint.at : joint.from;
        const Length end = alongRow ? joint.at : joint.to;
        Length top = -matter.job.plan.margin;
        for (std::size_t r = 0; r < rows.size(); ++r) {
            const Length bottom = top + rows[r].height;
            if (alongRow ? top <= begin && end <= bottom : top < end && begin < bottom) {
                inRows.insert(r + 1);
            }
            top = bottom;
        }
    }
    const std::size_t level = joints.size() - upright;
    const std::string pieceWords =
        sayCount(divided.size(), "inside {1} piece", "inside {1} pieces");
    const std::string lineWords =
        record.byColumns()
            ? sayCount(inRows.size(), "in column {2}", "in columns {2}", numberList(inRows))
            : sayCount(inRows.size(), "in row {2}", "in rows {2}", numberList(inRows));
    // Translators: "12 joints (4 upright, 8 level) inside 4 pieces, in rows 1–3: …"
    words.summary = sayCount(
        joints.size(),
        "{1} joint ({2} upright, {3} level) {4}, {5}: no single strip makes those pieces. "
        "The strips of the cut list make these joints by themselves.",
        "{1} joints ({2} upright, {3} level) {4}, {5}: no single strip makes those pieces. "
        "The strips of the cut list make these joints by themselves.",
        upright, level, pieceWords, lineWords);
    constexpr std::size_t few = 12;
    if (joints.size() <= few) {
        words.each = eachJoint(matter, joints);
    }
    return words;
}

std::string howToLay(const Matter& matter, const Record& record) {
    const bool endGrain = matter.project.board.build == Build::EndGrain;
    if (!record.finalGlue) {
        return endGrain ? say("The field is one slice and is not glued again. Stand it up, so that "
                              "end grain faces up.")
                        : say("The field is one slice and is not glued again. It stays as it was "
                              "cut.");
    }
    return sentences(
        {endGrain ? say("Stand every slice up: roll it a quarter turn about its row, so that end "
                        "grain faces up (↻). All slices roll the same way.")
                  : say("The slices stay as they were cut, same face up."),
         record.byColumns() ? say("They lie as columns: the first strip at the top.") : "",
         record.deep ? say("Every slice lies as the picture of its row shows it.") : "",
         say("Flip (↔) turns a slice end for end with the same face up: its order reverses.")});
}

}  // namespace

void addFinalGlueUp(std::vector<Draft>& drafts, const Matter& matter, const Record& record) {
    const bool glued = static_cast<bool>(record.finalGlue);
    Flow flow(drafts, matter, "final-glue-up", glued ? say("Final glue-up") : say("The field"),
              Sizes::AsGlued, Flow::Safety::None);
    const double half = (flow.width() - 8) / 2;
    const double picturesWidth = flow.width() - half + 12;
    const double textWidthHere = flow.width() - picturesWidth - 8;
    const double pictureX = flow.right() - picturesWidth;

    const Figure& width = glued ? record.finalGlue->width : record.take->width;
    const Figure& length = glued ? record.finalGlue->length : record.take->length;
    const Figure& thickness = glued ? record.finalGlue->thickness : record.take->thickness;
    const int number = glued ? record.finalGlue.number : record.take.number;
    const double top = flow.y;
    const double pictureHeight = pictures(flow, matter, record, pictureX, picturesWidth);
    double y = top;
    flow.text(flow.left(), y + 3.4, say("Step {1}", number), {type::body, true, Ink::Accent});
    y += 6;
    y += flow.paragraph(flow.left(), y, textWidthHere, howToLay(matter, record), smallText) + 2;
    flow.y = std::max(y, top + pictureHeight + 2);
    if (glued) {
        flow.y += flow.paragraph(
            flow.left(), flow.y, flow.width(),
            sentences({say("Lay all slices out dry and look from above before any glue is opened."),
                       glueWords(matter.job, *record.finalGlue.work, matter.notation())}),
            smallText);
    }
    flow.y += 3;

    const double third = (flow.width() - 10) / 3;
    const auto below = [&](const Figure& figure) {
        return workingLines(figure, matter.notation(), third);
    };
    flow.y += bigNumbers(flow, flow.left(), flow.y, flow.width(),
                         {{glued ? say("Thickness, as glued") : say("Thickness, as it lies"),
                           matter.text(thickness.value), below(thickness)},
                          {glued ? say("Across, as glued") : say("Across, as it lies"),
                           matter.text(width.value), below(width)},
                          {glued ? say("Down, as glued") : say("Down, as it lies"),
                           matter.text(length.value), below(length)}}) +
              2.5;
    std::vector<BigNumber> after;
    std::vector<std::string> notes;
    if (record.flattenField) {
        const FlatWork flat =
            flatWork(record, *record.flattenField.work, record.flattenField.number);
        const Shop& shop = matter.project.shop;
        after.push_back({say("Step {1}: flatten to", record.flattenField.number),
                         matter.text(record.flattenField->to.value),
                         below(record.flattenField->to)});
        notes.push_back(
            sentences({say("Flatten with: {1}, in light passes.", flatteningTools(flat, shop)),
                       whyNoPlaner(flat, shop)}));
    }
    if (record.trim) {
        after.push_back({say("Step {1}: trim off each side", record.trim.number),
                         matter.text(record.trim->margin.value), below(record.trim->margin)});
        after.push_back(
            {say("Field, across × down"),
             matter.bare(record.trim->width.value) + " × " + matter.text(record.trim->height.value),
             {}});
    }
    if (!after.empty()) {
        double notesHeight = 0;
        for (const std::string& note : notes) {
            notesHeight += Flow::paragraphHeight(note, smallText, flow.width());
        }
        flow.need(25 + notesHeight);
        after.resize(std::max<std::size_t>(after.size(), 3));
        flow.y += bigNumbers(flow, flow.left(), flow.y, flow.width(), after) + 1;
        for (const std::string& note : notes) {
            flow.y += flow.paragraph(flow.left(), flow.y, flow.width(), note, smallText) + 2.5;
        }
    }
    const ExtraJoints joints = extraJoints(matter, record);
    if (glued) {
        map(flow, matter, record, joints.height(flow) + flow.shortSafetyHeight() + 3);
    }
    joints.add(flow);
    flow.safetyAtEnd();
}

}  // namespace kerfwright
