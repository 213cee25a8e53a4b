#include "core/bench/standing.h"
#include "core/drawing/dimension.h"
#include "core/drawing/geometry.h"
#include "core/sheets/amounts.h"
#include "core/sheets/boardview.h"
#include "core/sheets/hourwords.h"
#include "core/sheets/pages.h"
#include "core/words/say.h"

#include <algorithm>
#include <cmath>
#include <iterator>

namespace kerfwright {
namespace {

struct Fact {
    std::string name;
    std::string value;
    std::string more;
};

std::vector<Fact> facts(const Matter& matter, const Record& record) {
    const Job& job = matter.job;
    const Totals& totals = job.totals;
    const bool endGrain = matter.project.board.build == Build::EndGrain;
    const std::size_t across = matter.project.board.field.columns.size();
    const std::size_t down = matter.project.board.field.rows.size();
    std::vector<Fact> all{
        {sayIn("noun", "Build"), endGrain ? say("End grain up") : say("Long grain up"),
         record.take          ? say("of one slice")
         : job.plan.byColumns ? say("glued from columns")
                              : say("glued from rows")},
        {say("Field"), say("{1} × {2} cells", across, down), ""},
        {say("Glue-ups"), std::to_string(job.plan.assemblies),
         job.plan.assemblies == job.plan.glueUps
             ? ""
             : sayCount(job.plan.glueUps, "{1} different kind", "{1} different kinds")},
        {say("Strips"), std::to_string(job.plan.strips), ""},
    };
    if (totals.weightKg > 0) {
        all.push_back(
            {say("Weight"), weightWords(totals.weightKg, matter.notation().unit),
             say("as built, at {1} moisture", percentWords(matter.project.climate.build))});
    }
    all.push_back({say("Timber in"), formatVolume(totals.timberIn, matter.notation().unit),
                   say("about {1} % is in the board", std::lround(totals.yieldPercent))});
    return all;
}

/// The board with its sizes, at the cursor; returns the height.
double picture(Flow& flow, const Matter& matter, double width, double tallest) {
    const Board& board = matter.project.board;
    constexpr double sideRoom = 9;
    constexpr double topRoom = 6.5;
    const Totals& size = matter.job.totals;
    const Box extent{0, 0, size.width.toMm(), size.height.toMm()};
    const double scale = fitting(extent, width - sideRoom, tallest - topRoom);
    const BoardViewOptions options{.letters = true,
                                   .hatch = true,
                                   .wholeBoard = true,
                                   .lineWidth = 0.22 / scale,
                                   .hatchPitch = 1.7 / scale,
                                   .leastLetter = type::small / scale,
                                   .greatestLetter = 5.5 / scale,
                                   .surround = matter.job.surround};
    const Drawing drawn =
        drawBoard(board, matter.project.woods, matter.job.plan.extraJoints, options);
    const Point at{flow.left() + sideRoom, flow.y + topRoom};
    place(flow.drawing(), drawn, at, scale);
    const double right = at.x + extent.width * scale;
    const double bottom = at.y + extent.height * scale;
    addDimensionAcross(flow.drawing(), at.x, right, at.y - 2.4, at.y, matter.text(size.width),
                       {.bold = true});
    addDimensionDown(flow.drawing(), at.y, bottom, flow.left() + 6, at.x, matter.text(size.height),
                     {.bold = true});
    return bottom - flow.y;
}

double factColumn(Flow& flow, const Matter& matter, const Record& record, double x, double top,
                  double width) {
    flow.text(x, top + 3.2, say("Finished size"), quietText);
    double y = top + 5;
    const struct {
        Length length;
        std::string name;
    } sizes[] = {{matter.job.totals.width, sayIn("after a length", "across")},
                 {matter.job.totals.height, sayIn("after a length", "down")},
                 {matter.job.totals.thickness, sayIn("after a length", "thick")}};
    double nameWidth = 12;
    for (const auto& size : sizes) {
        nameWidth = std::max(nameWidth, textWidth(size.name, type::small, false));
    }
    for (const auto& size : sizes) {
        const std::string text = matter.text(size.length);
        constexpr Tone tone{5.4, true, Ink::Text};
        const double room = width - nameWidth - 2;
        flow.text(x, y + 5.2, text, tone, Align::Left, room);
        const double end = std::min(textWidth(text, tone.size, true), room);
        flow.text(x + end + 2, y + 5.2, size.name, quietText);
        y += 7;
    }
    y += 3;
    const std::vector<Fact> all = facts(matter, record);
    double indent = 22;
    for (const Fact& fact : all) {
        indent = std::max(indent, textWidth(fact.name, type::small, false) + 2);
    }
    for (const Fact& fact : all) {
        flow.text(x, y + 3.2, fact.name, quietText);
        flow.text(x + indent, y + 3.2, fact.value, boldText, Align::Left, width - indent);
        y += 5;
        if (!fact.more.empty()) {
            for (const std::string& line : fitted(fact.more, quietText, width - indent)) {
                flow.text(x + indent, y + 2.7, line, quietText, Align::Left, width - indent);
                y += 4.4;
            }
        }
        y += 0.8;
    }
    return y - top;
}

struct WoodLine {
    int wood = 0;
    std::string about;
};

std::vector<WoodLine> woodLines(const Matter& matter) {
    const Project& project = matter.project;
    const auto count = static_cast<int>(project.woods.size());
    const std::vector<WoodUse> uses = woodUse(project.board.field, count);
    std::vector<int> strips(project.woods.size());
    for (const Part& part : matter.job.plan.parts) {
        if (part.role == Role::Strip) {
            ++strips[static_cast<std::size_t>(part.wood)];
        }
    }
    const bool hasBorder = project.board.border.width > Length();
    std::vector<WoodLine> lines;
    for (int wood = 0; wood < count; ++wood) {
        const auto index = static_cast<std::size_t>(wood);
        const bool inBorder = hasBorder && project.board.border.wood == wood;
        if (uses[index].pieces == 0 && !inBorder) {
            continue;
        }
        WoodLine line{wood, {}};
        if (uses[index].pieces > 0) {
            line.about = sayCount(uses[index].pieces, "{1} piece", "{1} pieces") + ", " +
                         sayCount(strips[index], "{1} strip", "{1} strips");
        }
        if (inBorder) {
            line.about += (line.about.empty() ? "" : ", ") + say("border");
        }
        if (index < matter.job.totals.timberByWood.size()) {
            line.about +=
                " · " + formatVolume(matter.job.totals.timberByWood[index], matter.notation().unit);
        }
        lines.push_back(std::move(line));
    }
    return lines;
}

void woodTable(Flow& flow, const Matter& matter) {
    constexpr double lineHeight = 10.5;
    constexpr double gap = 4;
    constexpr double indent = 10;
    const std::vector<WoodLine> lines = woodLines(matter);
    const double third = (flow.width() - 2 * gap) / 3 - indent;
    const bool narrow = std::all_of(lines.begin(), lines.end(), [&](const WoodLine& line) {
        return textWidth(line.about, type::small, false) <= third;
    });
    // Several to a line, so that a board of many woods still leaves room.
    const int columns = narrow ? 3 : 2;
    const double column = (flow.width() - gap * (columns - 1)) / columns;
    int placed = 0;
    flow.heading(say("Woods"), say("letter and hatch as in every picture"));
    for (const WoodLine& line : lines) {
        if (placed % columns == 0 && flow.need(lineHeight)) {
            flow.heading(say("Woods"));
        }
        const double x = flow.left() + (placed % columns) * (column + gap);
        flow.swatch(x, flow.y, 8, line.wood);
        flow.name(x + indent, flow.y + 3.4, matter.wood(line.wood).name, boldText, column - indent);
        flow.text(x + indent, flow.y + 7.9, line.about, quietText, Align::Left, column - indent);
        if (++placed % columns == 0) {
            flow.y += lineHeight;
        }
    }
    if (placed % columns != 0) {
        flow.y += lineHeight;
    }
    flow.y += 2;
}

/// "Steps 4, 9 and 14: "; empty where the caution is about the whole board.
std::string aboutSteps(const Caution& caution) {
    std::vector<std::string> numbers;
    for (const int step : caution.steps) {
        numbers.push_back(std::to_string(step + 1));
    }
    return numbers.empty()
               ? ""
               : sayCount(numbers.size(), "Step {2}:", "Steps {2}:", sayList(numbers)) + " ";
}

/// All cautions, most severe first, those seen to among them; what finds no room goes on to the
/// next page.
void cautionList(Flow& flow, const Matter& matter) {
    if (matter.job.cautions.empty()) {
        return;
    }
    constexpr double sign = 5;  // beside the box
    constexpr double indent = sign + 6;
    const double width = flow.width() - indent;
    const auto heading = [&flow] { flow.heading(say("{1}, continued", sayIn("heading", "Mind"))); };
    flow.need(24);
    flow.heading(sayIn("heading", "Mind"));
    for (const Caution& caution : matter.job.cautions) {
        const std::string reason = aboutSteps(caution) + caution.reason + " " + caution.remedy;
        const Standing standing = standingOf(caution, matter.project.seenTo);
        const std::string title = standing == Standing::Open
                                      ? caution.title
                                      : say("{1} ({2})", caution.title, standingWords(standing));
        const double height = Flow::paragraphHeight(title, boldText, width) +
                              Flow::paragraphHeight(reason, smallText, width);
        // Together where one page holds it.
        if (flow.need(std::min(height, 60.0) + 2)) {
            heading();
        }
        if (standing == Standing::SeenTo) {
            flow.ticked(flow.left(), flow.y + 0.1, 3.6);
        } else {
            flow.tick(flow.left(), flow.y + 0.1, 3.6);
        }
        if (caution.severity != Severity::Note) {
            const bool danger = caution.severity == Severity::Danger;
            const double left = flow.left() + sign;
            flow.drawing().marks.emplace_back(Shape{
                {{left + 1.9, flow.y + 0.2}, {left + 3.8, flow.y + 3.6}, {left, flow.y + 3.6}},
                true,
                {.fill = danger ? Ink::Warning : Ink::None,
                 .line = Ink::Warning,
                 .lineWidth = 0.35}});
        }
        flow.y += flow.paragraph(flow.left() + indent, flow.y, width, title, boldText);
        flow.running(flow.left() + indent, width, reason, smallText, heading);
        flow.y += 1.6;
    }
    flow.y += 2;
}

/// The order of work in two columns, with a box to tick at each step; long names take several
/// lines.
class OrderOfWork {
public:
    OrderOfWork(Flow& flow, const StepList& list, const BenchHours& hours)
        : flow_(flow)
        , hours_(hours)
        , column_((flow.width() - gap) / 2)
        , pitch_(flow.isClose() ? 4.0 : 4.2)
        , apart_(flow.isClose() ? 0.2 : 0.6) {
        for (std::size_t i = 0; i < list.steps.size(); ++i) {
            const double width = column_ - wordsX - 2 - textWidth(timeOf(i), type::small, false);
            names_.push_back(wrapped(title(list.steps[i]), type::small, false, width));
        }
    }

    void add() {
        const std::size_t count = names_.size();
        // On one page where one page holds it.
        const double whole = headingHeight + heightOf(0, count, middle(0, count));
        flow_.need(std::min(whole, flow_.pageHeight()));
        std::size_t next = 0;
        while (next < count) {
            if (next > 0) {
                flow_.newPage();
            }
            flow_.heading(next == 0 ? say("Order of work")
                                    : say("{1}, continued", say("Order of work")),
                          say("≈ {1}; numbers as on every sheet", totalWords(hours_)));
            std::size_t end = count;
            while (end > next + 1 && heightOf(next, end, middle(next, end)) > flow_.room()) {
                --end;
            }
            const std::size_t half = middle(next, end);
            addColumn(next, half, flow_.left());
            addColumn(half, end, flow_.left() + column_ + gap);
            flow_.y += heightOf(next, end, half) + 2;
            next = end;
        }
    }

private:
    static constexpr double gap = 6;
    static constexpr double headingHeight = 7.2;
    static constexpr double wordsX = 14;

    std::string timeOf(std::size_t step) const { return timeWords(hours_.tasks[step].minutes); }

    double heightOf(std::size_t step) const {
        return static_cast<double>(names_[step].size()) * pitch_ + apart_;
    }

    double heightOf(std::size_t from, std::size_t end) const {
        double height = 0;
        for (std::size_t i = from; i < end; ++i) {
            height += heightOf(i);
        }
        return height;
    }

    /// Of both columns; the right one begins at `half`.
    double heightOf(std::size_t from, std::size_t end, std::size_t half) const {
        return std::max(heightOf(from, half), heightOf(half, end));
    }

    /// The first step of the right column: both are about as long.
    std::size_t middle(std::size_t from, std::size_t end) const {
        std::size_t half = from;
        double left = 0;
        const double all = heightOf(from, end);
        while (half < end && left < all / 2) {
            left += heightOf(half++);
        }
        return half;
    }

    void addColumn(std::size_t from, std::size_t end, double x) {
        double y = flow_.y;
        for (std::size_t i = from; i < end; ++i) {
            flow_.tick(x, y + 0.1, 3.6);
            flow_.text(x + wordsX - 2, y + 3.3, std::to_string(i + 1),
                       {type::small, true, Ink::Accent}, Align::Right);
            double line = y + 3.3;
            for (const std::string& words : names_[i]) {
                flow_.text(x + wordsX, line, words, smallText);
                line += pitch_;
            }
            flow_.text(x + column_, y + 3.3, timeOf(i), quietText, Align::Right);
            y += heightOf(i);
        }
    }

    Flow& flow_;
    const BenchHours& hours_;
    double column_;
    double pitch_;  ///< of the lines of one name
    double apart_;  ///< between steps, besides
    std::vector<std::vector<std::string>> names_;
};

/// `tallest`: of the picture.
void setOverview(std::vector<Draft>& drafts, const Matter& matter, const Record& record,
                 double tallest) {
    Flow flow(drafts, matter, "overview", say("Overview"), Sizes::Finished, Flow::Safety::None);
    constexpr double pictureWidth = 118;
    const double height = picture(flow, matter, pictureWidth, tallest);
    const double facts = factColumn(flow, matter, record, flow.left() + pictureWidth + 8,
                                    flow.y + 2, flow.width() - pictureWidth - 8);
    flow.y += std::max(height, facts) + 4;
    const Plan& plan = matter.job.plan;
    if (!plan.extraJoints.empty()) {
        flow.drawing().marks.emplace_back(
            Line{{flow.left(), flow.y + 2.2},
                 {flow.left() + 10, flow.y + 2.2},
                 {.line = Ink::ExtraJoint, .lineWidth = 0.35, .dashed = true}});
        const std::string words = sayCount(
            plan.extraJoints.size(),
            "{1} joint inside pieces, drawn dashed, or fine where it is short: no single strip "
            "makes those pieces. They are told with the final glue-up.",
            "{1} joints inside pieces, drawn dashed, or fine where they are short: no single strip "
            "makes those pieces. They are told with the final glue-up.");
        for (const std::string& line : fitted(words, smallText, flow.width() - 13)) {
            flow.text(flow.left() + 13, flow.y + 3.2, line, smallText, Align::Left,
                      flow.width() - 13);
            flow.y += 4.4;
        }
        flow.y += 2.6;
    }
    woodTable(flow, matter);
    cautionList(flow, matter);
    if (!matter.project.titles.note.empty()) {
        flow.need(20);
        flow.heading(sayIn("heading", "Note"));
        flow.running(flow.left(), flow.width(),
                     shortened(matter.project.titles.note, smallText, 1e9), smallText,
                     [&flow] { flow.heading(say("{1}, continued", sayIn("heading", "Note"))); });
        flow.y += 3;
    }
    OrderOfWork(flow, record.list, matter.job.hours).add();
    // The other sheets have the safety words in any case.
    flow.safetyWhereRoom();
}

}  // namespace

void addOverview(std::vector<Draft>& drafts, const Matter& matter, const Record& record) {
    // As large a picture as leaves everything on one sheet; where one sheet is too few in any case,
    // the largest.
    constexpr double pictureHeights[] = {104, 94, 84, 74, 66};
    std::vector<Draft> set;
    for (const double tallest : pictureHeights) {
        std::vector<Draft> tried;
        setOverview(tried, matter, record, tallest);
        if (set.empty() || tried.size() < set.size()) {
            set = std::move(tried);
        }
        if (set.size() == 1) {
            break;
        }
    }
    std::move(set.begin(), set.end(), std::back_inserter(drafts));
}

}  // namespace kerfwright
