#include "core/sheets/plankpages.h"

#include "core/sheets/cutwords.h"
#include "core/sheets/plankview.h"
#include "core/sheets/settle.h"
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
constexpr double tickX = 182;

std::string setOn(SawCutKind kind) {
    return kind == SawCutKind::Rip ? sayIn("saw", "fence") : sayIn("saw", "stop");
}

/// Those that depend on how long the words of the language are.
struct CutColumns {
    CutColumns() {
        double name = 0;
        double on = 0;
        for (const SawCutKind kind :
             {SawCutKind::Crosscut, SawCutKind::Rip, SawCutKind::ToLength}) {
            name = std::max(name, textWidth(cutName(kind), type::small, false));
            on = std::max(on, textWidth(setOn(kind), type::small, false));
        }
        onX = cutX + std::max(25.0, name + 2);
        setX =
            std::max({80.0, onX + on + 2 + valueWidth,
                      cutX + name + 2 + textWidth(say("the blade takes it"), type::small, false)});
        whatX = setX + 6;
    }

    static constexpr double valueWidth = 30;
    double onX = 0;   ///< what is set
    double setX = 0;  ///< to what, right edge
    double whatX = 0;
};

void cutHead(Flow& flow, const CutColumns& at) {
    flow.box({flow.left(), flow.y, flow.width(), 6}, {.fill = Ink::Band});
    const double base = flow.y + 4.2;
    constexpr Tone tone{type::small, true, Ink::Quiet};
    flow.text(flow.left() + numberX, base, sayIn("column", "Cut"), tone, Align::Right);
    flow.text(flow.left() + at.setX, base, say("Set to"), tone, Align::Right);
    flow.text(flow.left() + at.whatX, base, say("Comes off"), tone);
    flow.text(flow.right(), base, sayIn("column", "Done"), tone, Align::Right);
    flow.y += 7;
}

/// `below`: room that must follow on the same page.
void addRow(Flow& flow, const Matter& matter, const CutRow& row, const std::string& heading,
            double below) {
    const CutColumns at;
    const auto lines = wrapped(row.what, type::small, false, tickX - at.whatX - 3);
    const double pitch = type::small * type::leading;
    const double height = std::max(rowHeight, 2 + static_cast<double>(lines.size()) * pitch);
    if (flow.need(height + below)) {
        flow.heading(say("{1}, continued", heading));
        cutHead(flow, at);
    }
    const double base = flow.y + 4.5;
    flow.text(flow.left() + numberX, base, numberWords(row), {type::body, true, Ink::Text},
              Align::Right, numberX);
    flow.text(flow.left() + cutX, base, cutName(row.kind), smallText);
    if (row.set > Length()) {
        flow.text(flow.left() + at.onX, base, setOn(row.kind), quietText);
        flow.text(flow.left() + at.setX, base, matter.text(row.set),
                  {type::setting, true, Ink::Text}, Align::Right, CutColumns::valueWidth);
    } else {
        flow.text(flow.left() + at.setX, base, say("the blade takes it"), quietText, Align::Right);
    }
    flow.lines(flow.left() + at.whatX, flow.y + 1.4, tickX - at.whatX - 3, lines, smallText);
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

    const CutColumns at;
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
        constexpr double swatchRoom = 9;
        const std::string heading = flow.cutOff(plankWords(plank, matter.project.woods), strongText,
                                                flow.width() - swatchRoom);
        const std::string about =
            sizeWords(plank, matter.notation()) + (plank.note.empty() ? "" : " · " + plank.note);
        const bool beside =
            textWidth(heading, type::strong, true) + 3 + textWidth(about, type::small, false) <=
            flow.width() - swatchRoom;
        const std::vector<std::string> aboutLines =
            beside ? std::vector<std::string>() : flow.wrappedName(about, quietText, flow.width());
        const double aboutHeight =
            static_cast<double>(aboutLines.size()) * type::small * type::leading;
        // A plank keeps the first of its cuts below it.
        flow.need(7.2 + aboutHeight + height + 3 + 7 +
                  rowHeight * static_cast<double>(std::min<std::size_t>(rows.size(), 3)));
        const double top = flow.y;
        const int wood = woodIndex(matter.project.woods, plank.wood);
        flow.heading(heading, beside ? about : "");
        flow.y += flow.lines(flow.left(), flow.y - 1.4, flow.width(), aboutLines, quietText);
        if (wood >= 0) {
            flow.swatch(flow.right() - 6, top, 5.6, wood);
        }
        flow.y = addPlank(flow.drawing(), {flow.left(), flow.y}, subject, look).bottom + 3;
        cutHead(flow, at);
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

void addTimber(std::vector<Draft>& drafts, const Matter& matter, const TimberPlan& plan) {
    for (const auto add : {addShoppingSlip, addTimberList, addPlankCuts}) {
        settle(drafts, matter,
               [&](std::vector<Draft>& to, const Matter& with) { add(to, with, plan); });
    }
}

}  // namespace kerfwright
