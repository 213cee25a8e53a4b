#include "core/bench/standing.h"
#include "core/measure/number.h"
#include "core/sheets/amounts.h"
#include "core/sheets/columns.h"
#include "core/sheets/hourwords.h"
#include "core/sheets/methods.h"
#include "core/sheets/planjson.h"
#include "core/words/say.h"

#include <algorithm>
#include <utility>
#include <vector>

namespace kerfwright {
namespace {

std::string laid(const Laid& part) {
    std::string turns;
    const auto add = [&turns](bool is, const std::string& word) {
        if (is) {
            turns += (turns.empty() ? "" : ", ") + word;
        }
    };
    add(part.lay.turnedOver, sayIn("how a part lies", "turned over"));
    add(part.lay.flipped, sayIn("how a part lies", "flipped"));
    add(part.lay.turned, sayIn("how a part lies", "turned a quarter"));
    return shownLabel(part.part) + (turns.empty() ? "" : " (" + turns + ")");
}

/// Writes the steps as short paragraphs: what to do, then each setting with its working.
class Teller {
public:
    Teller(const Project& project, const Job& job, const Record& record)
        : project_(project)
        , job_(job)
        , record_(record) {}

    /// `number` counts from 1.
    std::string told(const Step& step, int number) {
        number_ = number;
        out_.clear();
        std::visit([this](const auto& work) { tell(work); }, step.work);
        return out_;
    }

private:
    std::string text(Length length) const { return format(length, project_.notation); }
    const std::string& wood(int index) const {
        return project_.woods.at(static_cast<std::size_t>(index)).name;
    }
    /// Thickness × width × length, length along the grain.
    std::string size(const Figure& thickness, const Figure& width, const Figure& length) const {
        return formatSize({thickness.value, width.value, length.value}, project_.notation);
    }

    void line(const std::string& words) { out_ += "      " + words + "\n"; }
    /// The value with its working, where there is one.
    std::string how(const Figure& figure) const {
        return figure.terms.size() > 1 ? working(figure, project_.notation) : text(figure.value);
    }
    std::string area(Area value) const { return formatArea(value, project_.notation.unit); }

    void tell(const Mill& work) {
        const std::string rough = sayIn("sizes", "rough");
        const std::string milled = sayIn("sizes", "milled");
        const std::size_t width = std::max(columnsOf(rough), columnsOf(milled)) + 1;
        for (const MillLine& strips : work.lines) {
            line(eachLabel(strips.strips) + ": " + wood(strips.wood));
            line("  " + leftAligned(rough, width) +
                 size(strips.roughThickness, strips.roughWidth, strips.roughLength));
            line("  " + leftAligned(milled, width) +
                 size(strips.thickness, strips.width, strips.length));
        }
    }
    void tell(const Glue& work) {
        std::string order;
        for (const Laid& part : work.parts) {
            order += (order.empty() ? "" : " | ") + laid(part);
        }
        line(order);
        const std::string thickness = text(work.thickness.value);
        const std::string width = text(work.width.value);
        const std::string length = text(work.length.value);
        line(work.final ? say("glued: {1} thick, {2} across, {3} down", thickness, width, length)
                        : say("glued: {1} thick, {2} wide, {3} long", thickness, width, length));
        line(say("glue on {1} of joints", area(work.glueFace)));
    }
    void tell(const Take& work) {
        // Translators: {1} is the name of a slice.
        line(say("{1}: {2} thick, {3} across, {4} down", laid(work.part),
                 text(work.thickness.value), text(work.width.value), text(work.length.value)));
    }
    void tell(const Flatten& work) {
        const FlatWork flat = flatWork(record_, work, number_);
        const std::string why = whyNoPlaner(flat, project_.shop);
        line(flatteningTools(flat, project_.shop) + (why.empty() ? "" : ". " + why));
        fromTo(work.from, work.to);
    }
    void fromTo(const Figure& from, const Figure& to) {
        line(sayIn("size before", "from: {1}", how(from)));
        line(sayIn("size after", "to: {1}", how(to)));
    }
    void tell(const SquareEnd& work) {
        line(say("waste: {1}", how(work.waste)));
        line(sayIn("remains", "left: {1}", text(work.left)));
    }
    void tell(const Crosscut& work) {
        line(say("stop: {1}", how(work.stop)));
        const std::string labels = eachLabel(work.slices);
        // Translators: a length is what goes into another panel, a slice into the field.
        line(work.forPanels
                 ? sayCount(work.slices.size(), "{1} length: {2}", "{1} lengths: {2}", labels)
                 : sayCount(work.slices.size(), "{1} slice: {2}", "{1} slices: {2}", labels));
        if (!work.spares.empty()) {
            line(say("spare: {1}", eachLabel(work.spares)));
        }
        line(sayIn("remains", "left: {1}", text(work.left)));
    }
    void tell(const BringToSize& work) {
        line(eachLabel(work.parts) + ": " + sizingWords(work.sizing, project_.notation));
        fromTo(work.sizing.from, work.sizing.to);
    }
    void tell(const TrimField& work) {
        line(say("each side: {1}", how(work.margin)));
        line(say("across: {1}", how(work.width)));
        line(say("down: {1}", how(work.height)));
    }
    void tell(const CutChannel& work) {
        const std::string parts = eachLabel(work.parts);
        line(work.edges > 1 ? sayCount(work.edges, "{2}, {1} edge", "{2}, {1} edges", parts)
                            : parts);
        line(say("deep: {1}", how(work.depth)));
        line(say("wide: {1}", how(work.width)));
        if (work.fromFace.value > Length()) {
            line(say("below the top face: {1}", how(work.fromFace)));
        }
    }
    void tell(const GlueIn& work) {
        for (const Inset& inset : work.insets) {
            // Translators: "Top tongue into Top rail".
            line(say("{1} into {2}", shownLabel(inset.stick), shownLabel(inset.rail)));
        }
        line(work.purpose == ChannelFor::Inlay
                 ? say("stands over, to be levelled: {1}", how(work.proud))
                 : say("stands out: {1}", how(work.proud)));
        line(say("glue on {1} of joints", area(work.glueFace)));
    }
    void tell(const CutRails& work) {
        for (const Rail& rail : work.rails) {
            const std::string label = shownLabel(rail.label);
            line(work.mitred ? say("{1}, long point to long point: {2}", label, how(rail.longPoint))
                             : label + ": " + how(rail.longPoint));
        }
    }
    void tell(const KeyCorners& work) {
        line(say("four keys from {1}", shownLabel(work.stick)));
        line(say("slot deep: {1}", how(work.depth)));
        line(say("slot wide: {1}", how(work.thickness)));
        line(say("below the top face: {1}", how(work.fromFace)));
    }
    void tell(const FitBorder& work) {
        line(say("rail width: {1}", how(work.width)));
        for (const Rail& rail : work.rails) {
            const std::string label = shownLabel(rail.label);
            line(project_.board.border.isFrame()
                     ? say("{1}, long point to long point: {2}", label, how(rail.longPoint))
                     : say("{1}, length: {2}", label, how(rail.longPoint)));
        }
        const std::string travel = travelWords(job_.movement, project_.notation.unit);
        if (work.design == BorderDesign::FloatingFrame) {
            line(say("Glue the mitres and nothing else: the field lies loose in the frame."));
            line(say("gap left and right: {1}", how(work.gapX)));
            line(say("gap above and below: {1}", how(work.gapY)));
        } else if (work.design == BorderDesign::BreadboardEnds) {
            line(say("No glue between the ends and the field: pins hold them, the one in the "
                     "middle tight."));
            line(say("pin diameter: {1}", how(work.pinDiameter)));
            line(say("pins in from the edge of the field: {1}", how(work.pinFromEdge)));
            for (const Pin& pin : work.pins) {
                line(say("pin at: {1}", how(pin.at)));
                line("  " + say("slot away from the middle: {1}", how(pin.outward)));
                line("  " + say("slot towards the middle: {1}", how(pin.inward)));
            }
        } else if (!work.mustNotBeGlued) {
            line(say("glue on {1} of joints", area(work.glueFace)));
        } else if (work.design == BorderDesign::EdgeBand) {
            line(say("Do not glue this border to the field: it will move by up to {1} through the "
                     "year and the strips along it do not.",
                     travel));
        } else {
            line(say("Do not glue this border to the field: it will move by up to {1} through the "
                     "year and burst the mitres.",
                     travel));
        }
    }

    const Project& project_;
    const Job& job_;
    const Record& record_;
    int number_ = 0;
    std::string out_;
};

std::string word(Severity severity) {
    switch (severity) {
    case Severity::Note:
        return sayIn("severity", "Note");
    case Severity::Caution:
        return sayIn("severity", "Caution");
    case Severity::Danger:
        return sayIn("severity", "Danger");
    }
    return {};
}

std::string glueUpWords(const Plan& plan) {
    const std::string parts = sayCount(plan.panels, "{1} panel", "{1} panels") + ", " +
                              sayCount(plan.strips, "{1} strip", "{1} strips");
    const std::string glueUps = plan.assemblies == plan.glueUps
                                    ? std::to_string(plan.glueUps)
                                    : sayCount(plan.glueUps, "{1} kind, {2} to clamp",
                                               "{1} kinds, {2} to clamp", plan.assemblies);
    return glueUps + "; " + parts;
}

/// What is true of the board as a whole, each with its name.
std::string headWords(const Project& project, const Job& job) {
    const Totals& totals = job.totals;
    const Unit unit = project.notation.unit;
    const auto text = [&project](Length length) { return format(length, project.notation); };
    const std::string size = formatSize({totals.width, totals.height}, project.notation);
    std::vector<std::pair<std::string, std::string>> lines{
        {sayIn("size", "Finished"),
         project.board.build == Build::EndGrain
             ? say("{1}, {2} thick, end grain up", size, text(totals.thickness))
             : say("{1}, {2} thick, long grain up", size, text(totals.thickness))},
        {say("Glue-ups"), glueUpWords(job.plan)},
        {say("Timber in"), say("{1}, {2} % of it in the board", formatVolume(totals.timberIn, unit),
                               formatFixed(totals.yieldPercent, 0))}};
    if (totals.weightKg > 0) {
        lines.emplace_back(say("Weight"), weightWords(totals.weightKg, unit));
    }
    lines.emplace_back(say("At bench"), "≈ " + totalWords(job.hours));
    if (!job.plan.decidedBy.empty()) {
        lines.emplace_back(sayIn("noun", "Plan"), job.plan.decidedBy);
    }
    std::size_t widest = 0;
    for (const auto& [name, words] : lines) {
        widest = std::max(widest, columnsOf(name));
    }
    std::string out;
    for (const auto& [name, words] : lines) {
        out += leftAligned(name, widest + 2) + words + "\n";
    }
    return out;
}

}  // namespace

std::string planText(const Project& project, const Job& job) {
    std::string out = project.titles.name.empty() ? say("A board") : project.titles.name;
    out += "\n\n" + headWords(project, job);

    out += "\n" + say("Steps") + "\n";
    const Record record(job.steps);
    Teller teller(project, job, record);
    int number = 0;
    for (const Step& step : job.steps.steps) {
        const BenchTask& task = job.hours.tasks[static_cast<std::size_t>(number)];
        const std::string count = std::to_string(++number);
        out += rightAligned(count, 4) + ". " + title(step) + "  (" + timeWords(task.minutes) +
               ")\n" + teller.told(step, number);
    }

    out += "\n" + say("Sessions at the bench") + "\n";
    for (const BenchSession& session : job.hours.sessions) {
        const std::string wait = waitWords(job.hours, session);
        out += "  " + dayWords(session) + ", " + timeWords(session.minutes) + ": " +
               taskWords(job.hours, session) + (wait.empty() ? "" : "; " + say("once {1}", wait)) +
               "\n";
    }

    if (!job.cautions.empty()) {
        const CautionCount count = countOf(job.cautions, project.seenTo);
        out += "\n" + say("Cautions") +
               (count.seenTo > 0 ? " (" + countWords(count) + ")" : std::string()) + "\n";
        for (const Caution& caution : job.cautions) {
            const std::string standing = standingWords(standingOf(caution, project.seenTo));
            out += "  " + word(caution.severity) +
                   (caution.steps.empty() ? "" : ", " + whichSteps(caution)) +
                   (standing.empty() ? "" : " (" + standing + ")") + ": " + caution.title + ". " +
                   caution.reason + " " + caution.remedy + "\n";
        }
    }
    return out;
}

}  // namespace kerfwright
