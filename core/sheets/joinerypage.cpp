#include "core/bench/season.h"
#include "core/drawing/geometry.h"
#include "core/sheets/amounts.h"
#include "core/sheets/bordersection.h"
#include "core/sheets/pages.h"
#include "core/words/say.h"

#include <algorithm>
#include <array>

namespace kerfwright {
namespace {

struct Fact {
    std::string what;
    const Figure* size;
};

/// Sizes of what is cut into rails and field beyond their outline.
std::vector<Fact> joineryFacts(const Board& board, const BorderFit& fit) {
    std::vector<Fact> facts;
    const auto add = [&](const std::string& what, const Figure& figure) {
        if (figure.value > Length()) {
            facts.push_back({what, &figure});
        }
    };
    const bool rebated =
        board.border.has(BorderDesign::FloatingFrame) && board.border.housing == Housing::Rebate;
    if (fit.railStock.value != board.border.width) {
        add(say("Rail as milled, wide"), fit.railStock);
    }
    add(say("Groove in the rail, deep"), fit.railGroove);
    add(rebated ? say("Rebate below the field, deep") : say("Groove in the field, deep"),
        fit.fieldGroove);
    add(say("Tongue and grooves, thick"), fit.tongueThickness);
    add(say("Groove below the top face"), fit.tongueFromFace);
    add(say("Tongue, wide"), fit.tongueWidth);
    add(say("Ledge beyond the visible rail"), fit.ledge);
    add(say("Ledge, thick"), fit.ledgeThickness);
    add(say("Rebate for the inlay, deep"), fit.inlayDepth);
    add(say("Inlay strip, high"), fit.inlayHeight);
    if (keysCorners(board)) {
        add(say("Corner slot, deep"), fit.splineDepth);
        add(say("Corner slot below the top face"), fit.splineFromFace);
    }
    add(say("Pin, diameter"), fit.pinDiameter);
    add(say("Pins in from the field's edge"), fit.pinFromEdge);
    for (const Pin& pin : fit.pins) {
        add(say("Pin, from the end of the rail"), pin.at);
        add(say("– its slot, away from the middle"), pin.outward);
        add(say("– its slot, towards the middle"), pin.inward);
    }
    return facts;
}

// mm of paper: for the wood in a section, and below it.
constexpr double greatestWidth = 105;
constexpr double greatestHeight = 52;
constexpr double between = 6;

/// Drawn as large as the usual scales and the page allow, side by side where there is room.
void addSections(Flow& flow, const Matter& matter) {
    const Board& board = matter.project.board;
    const std::vector<Wood>& woods = matter.project.woods;
    const BorderFit& fit = matter.job.plan.border;
    using Draw = Drawing (*)(const Board&, const std::vector<Wood>&, const BorderFit&,
                             const Notation&, const SectionLook&);
    const std::array<std::pair<const char*, Draw>, 2> sections{
        {{noted("Rail and field"), drawRailSection},
         {noted("Corner, along the diagonal"), drawCornerSection}}};
    constexpr double headed = 8;
    double x = flow.left();
    double below = flow.y;
    for (const auto& [name, draw] : sections) {
        const std::string title = say(name);
        const Box bare =
            draw(board, woods, fit, matter.notation(), {.scale = 1, .dimensions = false}).extent;
        if (bare.width <= 0) {
            continue;
        }
        const double scale = usualScale(bare.width, bare.height, greatestWidth, greatestHeight);
        const Drawing drawing = draw(board, woods, fit, matter.notation(), {.scale = scale});
        const std::string words = say("drawn {1}", scaleText(scale));
        const double titleWidth = textWidth(title, type::strong, true) + 3;
        const double width =
            std::max(drawing.extent.width, titleWidth + textWidth(words, type::small, false));
        if (x + width > flow.right()) {
            x = flow.left();
            flow.y = below;
        }
        flow.need(drawing.extent.height + headed + between);
        flow.text(x, flow.y + type::strong, title, {type::strong, true, Ink::Text});
        flow.text(x + titleWidth, flow.y + type::strong, words, quietText);
        place(flow.drawing(), drawing, {x, flow.y + headed}, 1);
        below = std::max(below, flow.y + headed + drawing.extent.height + between);
        x += width + 14;
    }
    flow.y = below;
}

void addFacts(Flow& flow, const Matter& matter) {
    const std::vector<Fact> facts = joineryFacts(matter.project.board, matter.job.plan.border);
    if (facts.empty()) {
        return;
    }
    double widestName = 0;
    double widestValue = 0;
    for (const Fact& fact : facts) {
        widestName = std::max(widestName, textWidth(fact.what, type::small, false));
        widestValue =
            std::max(widestValue, textWidth(matter.text(fact.size->value), type::small, true));
    }
    const double valueAt = std::max(78.0, widestName + 3 + widestValue);  // right edge
    const double workingAt = valueAt + 6;
    flow.need(16);
    flow.heading(say("Sizes"));
    for (const Fact& fact : facts) {
        const std::vector<std::string> working =
            workingLines(*fact.size, matter.notation(), flow.width() - workingAt);
        const double height =
            std::max<double>(1, static_cast<double>(working.size())) * type::small * type::leading +
            1;
        flow.need(height);
        flow.text(flow.left(), flow.y + type::small, fact.what, smallText);
        flow.text(flow.left() + valueAt, flow.y + type::small, matter.text(fact.size->value),
                  {type::small, true, Ink::Text}, Align::Right);
        flow.lines(flow.left() + workingAt, flow.y, flow.width() - workingAt, working, quietText);
        flow.y += height;
    }
    flow.y += 5;
}

/// A line of the table of seasons: as built, driest, dampest.
struct SeasonLine {
    std::string what;
    std::array<std::string, 3> values;
};

std::vector<SeasonLine> seasonLines(const Matter& matter) {
    const Project& project = matter.project;
    const Job& job = matter.job;
    const Unit unit = matter.notation().unit;
    const Climate& climate = project.climate;
    const auto at = [&](double moisture) {
        return seasonAt(job.board, project.woods, !job.plan.grainDown, climate, moisture);
    };
    const SeasonState dry = at(climate.driest);
    const SeasonState damp = at(climate.dampest);
    std::vector<SeasonLine> lines{
        {say("Moisture of the wood"),
         {percentWords(climate.build), percentWords(climate.driest),
          percentWords(climate.dampest)}},
        {say("Field across"),
         {matter.text(project.board.field.width()), changeWords(dry.width, unit),
          changeWords(damp.width, unit)}},
        {say("Field down"),
         {matter.text(project.board.field.height()), changeWords(dry.height, unit),
          changeWords(damp.height, unit)}}};
    if (project.board.border.has(BorderDesign::FloatingFrame)) {
        const BorderFit& fit = job.plan.border;
        const auto gap = [&](const std::string& what, const Figure& built, const Range& driest,
                             const Range& dampest) {
            lines.push_back({what,
                             {matter.text(built.value), leftWords(gapAt(built.value, driest), unit),
                              leftWords(gapAt(built.value, dampest), unit)}});
        };
        gap(say("Gap left and right, each side"), fit.gapX, dry.width, damp.width);
        gap(say("Gap above and below, each side"), fit.gapY, dry.height, damp.height);
    }
    if (job.totals.weightKg > 0) {
        const auto weight = [&](double moisture) {
            const std::optional<double> kg =
                weightAt(project.board, project.woods, climate, moisture, job.surround);
            return kg ? weightWords(*kg, unit) : sayIn("a weight", "not known");
        };
        lines.push_back({say("Board weighs"),
                         {weight(climate.build), weight(climate.driest), weight(climate.dampest)}});
    }
    return lines;
}

void addSeasons(Flow& flow, const Matter& matter) {
    const std::vector<SeasonLine> lines = seasonLines(matter);
    constexpr double lineHeight = type::small * type::leading + 1.2;
    flow.need(24 + lineHeight * static_cast<double>(lines.size()));
    flow.heading(say("Through the year"));
    const std::array<double, 3> ends{104, 146, 190 - 4};
    const std::array<std::string, 3> heads{say("as built"), say("driest"), say("dampest")};
    for (std::size_t i = 0; i < 3; ++i) {
        flow.text(flow.left() + ends[i], flow.y + type::small, heads[i],
                  {type::small, true, Ink::Quiet}, Align::Right);
    }
    flow.y += lineHeight;
    for (const SeasonLine& line : lines) {
        flow.rule(flow.left(), flow.right(), flow.y - 0.4);
        flow.text(flow.left(), flow.y + type::small + 0.2, line.what, smallText);
        for (std::size_t i = 0; i < 3; ++i) {
            flow.text(flow.left() + ends[i], flow.y + type::small + 0.2, line.values[i],
                      {type::small, i == 0, Ink::Text}, Align::Right);
        }
        flow.y += lineHeight;
    }
    flow.y += 1;
    const Board& board = matter.project.board;
    const std::string words = sentences(
        {say("Ranges, where nobody has said how the rings lie."),
         board.border.has(BorderDesign::FloatingFrame)
             ? say("Rails of long grain are taken to stay as long as they are. Should a gap come "
                   "out below 0 the field presses on its rails.")
         : bindsTheField(board)
             ? say("Rails of long grain stay as long as they are: all of this they have to hold "
                   "back, once they are glued to the field.")
             : ""});
    flow.y += flow.paragraph(flow.left(), flow.y, flow.width(), words, quietText);
    flow.y += 3;
}

}  // namespace

void addJoinery(std::vector<Draft>& drafts, const Matter& matter) {
    if (matter.project.board.border.has(BorderDesign::EndGrainBand)) {
        return;
    }
    Flow flow(drafts, matter, "joinery", say("Border joinery"), Sizes::Finished,
              Flow::Safety::None);
    addSections(flow, matter);
    addFacts(flow, matter);
    addSeasons(flow, matter);
    // The border's own sheet, just before this one, has the safety words.
    if (flow.room() >= flow.shortSafetyHeight()) {
        flow.safetyAtEnd();
    }
}

}  // namespace kerfwright
