#include "core/sheets/plankpages.h"

#include "core/sheets/cutwords.h"
#include "core/sheets/plankview.h"
#include "core/timber/timberwords.h"
#include "core/words/say.h"

#include <algorithm>

namespace kerfwright {
namespace {

constexpr double widest = 46;  // mm that a plank takes down the page at most
constexpr double rowHeight = 6.4;

// Columns of the list of cuts, from the left edge.
constexpr double numberX = 13;
constexpr double cutX = 17;
constexpr double setX = 80;
constexpr double whatX = 86;
constexpr double tickX = 182;

void cutHead(Flow& flow) {
    flow.box({flow.left(), flow.y, flow.width(), 6}, {.fill = Ink::Band});
    const double base = flow.y + 4.2;
    constexpr Tone tone{type::small, true, Ink::Quiet};
    flow.text(flow.left() + numberX, base, sayIn("column", "Cut"), tone, Align::Right);
    flow.text(flow.left() + setX, base, say("Set to"), tone, Align::Right);
    flow.text(flow.left() + whatX, base, say("Comes off"), tone);
    flow.text(flow.right(), base, sayIn("column", "Done"), tone, Align::Right);
    flow.y += 7;
}

/// `below`: room that must follow on the same page.
void addRow(Flow& flow, const Matter& matter, const CutRow& row, const std::string& heading,
            double below) {
    const auto lines = wrapped(row.what, type::small, false, tickX - whatX - 3);
    const double pitch = type::small * type::leading;
    const double height = std::max(rowHeight, 2 + static_cast<double>(lines.size()) * pitch);
    if (flow.need(height + below)) {
        flow.heading(say("{1}, continued", heading));
        cutHead(flow);
    }
    const double base = flow.y + 4.5;
    flow.text(flow.left() + numberX, base, numberWords(row), {type::body, true, Ink::Text},
              Align::Right, numberX);
    flow.text(flow.left() + cutX, base, cutName(row.kind), smallText);
    if (row.set > Length()) {
        flow.text(flow.left() + cutX + 25, base,
                  row.kind == SawCutKind::Rip ? sayIn("saw", "fence") : sayIn("saw", "stop"),
                  quietText);
        flow.text(flow.left() + setX, base, matter.text(row.set), {type::setting, true, Ink::Text},
                  Align::Right, 28);
    } else {
        flow.text(flow.left() + setX, base, say("the blade takes it"), quietText, Align::Right);
    }
    flow.lines(flow.left() + whatX, flow.y + 1.4, tickX - whatX - 3, lines, smallText);
    flow.tick(flow.left() + tickX, flow.y + 1.2, 3.8);
    flow.y += height;
    flow.rule(flow.left(), flow.right(), flow.y, Ink::Rule, 0.15);
}

/// Empty where nothing of the plank is kept.
std::string keptWords(const PlankCuts& cuts, const Notation& notation) {
    std::string sizes;
    for (const Offcut& offcut : cuts.offcuts) {
        sizes += (sizes.empty() ? "" : ", ") + unbroken(formatBare(offcut.width, notation) + " × " +
                                                        format(offcut.length, notation));
    }
    return sizes.empty() ? sizes : say("Back on the rack, width × length: {1}.", sizes);
}

}  // namespace

void addPlankCuts(std::vector<Draft>& drafts, const Matter& matter, const TimberPlan& plan) {
    if (plan.layout.planks.empty()) {
        return;
    }
    Flow flow(drafts, matter, "plank-cuts", say("Plank cuts"), Sizes::Rough,
              Flow::Safety::FirstPage);
    PlankLook look;
    const double room = flow.width() - leftOfPlank(look) - 1;
    look.scale = scaleOf(plan.rack, plan.layout, plan.demand, room, look.type, widest);
    std::string words =
        say("Cuts are numbered in the order in which they are made: crosscut the plank, rip its "
            "sections, then cut strips to length that are shorter than their section. Write its "
            "label on every strip as it comes off.");
    if (look.scale.across > look.scale.along * 1.02) {
        words += " " + say("Widths are drawn larger than lengths.");
    }
    flow.y += flow.paragraph(flow.left(), flow.y, flow.width(), words, smallText) + 1;
    flow.y += flow.paragraph(flow.left(), flow.y, flow.width(), sawSafety(), smallText) + 3;

    const StripNames names = stripLabels(plan.layout, plan.demand);
    for (const int number : cuttingOrder(plan.layout, plan.cuts)) {
        const auto i = static_cast<std::size_t>(number);
        const PlankCuts& cuts = plan.layout.planks[i];
        const Plank& plank = plan.rack.planks[static_cast<std::size_t>(cuts.plank)];
        const PlankMatter subject{
            plank,     matter.project.woods, matter.notation(), &cuts, &plan.demand,
            &names[i], static_cast<int>(i),  &plan.cuts};
        Drawing trial;
        for (const Wood& wood : matter.project.woods) {
            trial.woods.push_back(wood.colour);
        }
        const double height = addPlank(trial, {0, 0}, subject, look).bottom;
        const std::vector<CutRow> rows =
            cutRows(plan.layout, plan.cuts, names, static_cast<int>(i));
        // A plank keeps the first of its cuts below it.
        flow.need(7.2 + height + 3 + 7 +
                  rowHeight * static_cast<double>(std::min<std::size_t>(rows.size(), 3)));
        const std::string heading =
            shortened(plankWords(plank, matter.project.woods), strongText, flow.width() * 0.55);
        const double top = flow.y;
        const int wood = woodIndex(matter.project.woods, plank.wood);
        const double headRoom =
            flow.width() - textWidth(heading, type::strong, true) - 3 - 9;  // and the swatch
        flow.heading(heading, shortened(sizeWords(plank, matter.notation()) +
                                            (plank.note.empty() ? "" : " · " + plank.note),
                                        quietText, headRoom));
        if (wood >= 0) {
            flow.swatch(flow.right() - 6, top, 5.6, wood);
        }
        flow.y = addPlank(flow.drawing(), {flow.left(), flow.y}, subject, look).bottom + 3;
        cutHead(flow);
        const std::string kept = keptWords(cuts, matter.notation());
        const double keptHeight =
            kept.empty() ? 0 : 1 + Flow::paragraphHeight(kept, smallText, flow.width() - cutX);
        for (const CutRow& row : rows) {
            addRow(flow, matter, row, heading, &row == &rows.back() ? keptHeight : 0);
        }
        if (!kept.empty()) {
            flow.y += 1 + flow.paragraph(flow.left() + cutX, flow.y + 1, flow.width() - cutX, kept,
                                         smallText);
        }
        flow.y += 6;
    }
}

}  // namespace kerfwright
