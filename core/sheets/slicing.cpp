#include "core/sheets/methods.h"
#include "core/sheets/pages.h"
#include "core/sheets/stickview.h"

#include <algorithm>

namespace kerfwright {
namespace {

constexpr double textX = 11;
constexpr double textWidthOf = 108;
constexpr double valueX = 124;

/// One cut or thickness: what to do on the left, the setting large on the right.
struct Action {
    int number = 0;
    std::string title;
    std::vector<std::string> words;
    std::string settingName;
    const Figure* setting = nullptr;
    std::size_t ticks = 0;  ///< pieces to count off
    std::string first;      ///< a line that must not be missed, before the rest
};

double heightOf(const Action& action, const Matter& matter, double width) {
    double left = 6.2;
    if (!action.first.empty()) {
        left +=
            Flow::paragraphHeight(action.first, {type::small, true, Ink::Warning}, textWidthOf) + 1;
    }
    for (const std::string& words : action.words) {
        left += Flow::paragraphHeight(words, smallText, textWidthOf) + 0.8;
    }
    if (action.ticks > 0) {
        const auto perLine = static_cast<std::size_t>(textWidthOf / 5.4);
        const std::size_t lines = (action.ticks + perLine - 1) / perLine;
        left += static_cast<double>(lines) * 5.4 + 1.2;
    }
    double right = 0;
    if (action.setting != nullptr) {
        const double lines = static_cast<double>(
            workingLines(*action.setting, matter.notation(), width - valueX).size());
        right = 12.6 + lines * type::small * type::leading;
    }
    return std::max(left, right) + 3.5;
}

void addAction(Flow& flow, const Matter& matter, const Action& action) {
    const double height = heightOf(action, matter, flow.width());
    flow.need(height);
    const double top = flow.y;
    flow.rule(flow.left(), flow.right(), top);
    flow.text(flow.left(), top + 5, std::to_string(action.number),
              {type::strong, true, Ink::Accent}, Align::Left, textX - 1);
    const double x = flow.left() + textX;
    flow.text(x, top + 5, action.title, {type::body, true, Ink::Text}, Align::Left, textWidthOf);
    double y = top + 6.6;
    if (!action.first.empty()) {
        y += flow.paragraph(x, y, textWidthOf, action.first, {type::small, true, Ink::Warning}) + 1;
    }
    for (const std::string& words : action.words) {
        y += flow.paragraph(x, y, textWidthOf, words, smallText) + 0.8;
    }
    const auto perLine = static_cast<std::size_t>(textWidthOf / 5.4);
    for (std::size_t i = 0; i < action.ticks; ++i) {
        const std::size_t line = i / perLine;
        flow.tick(x + static_cast<double>(i % perLine) * 5.4,
                  y + 0.6 + static_cast<double>(line) * 5.4, 3.8);
    }
    if (action.setting != nullptr) {
        const double width = flow.width() - valueX;
        bigNumbers(flow, flow.left() + valueX, top + 1, width,
                   {{action.settingName, matter.text(action.setting->value),
                     workingLines(*action.setting, matter.notation(), width)}});
    }
    flow.y = top + height;
}

/// What is held at the last cut of a run: the slice and what stays behind it.
bool isShort(const Matter& matter, const Crosscut& cut) {
    return cut.stop.value + cut.left < matter.project.shop.leastHeld;
}

Action actionFor(const Matter& matter, const Crosscut& cut, int number, bool thinnedLater) {
    Action action;
    action.number = number;
    const std::size_t slices = cut.slices.size();
    const std::string count = std::to_string(slices);
    const bool marginFirst = cut.marginRows && thinnedLater;
    if (cut.forPanels) {
        action.title = slices == 1 ? "Cut a length" : "Cut " + count + " lengths";
    } else if (cut.marginRows) {
        action.title = slices == 1 ? "Cut the margin slice" : "Cut " + count + " margin slices";
    } else {
        action.title = "Cut " + count + (slices == 1 ? " slice" : " slices");
    }
    if (!cut.spares.empty()) {
        action.title += " and " + std::to_string(cut.spares.size()) + " spare";
    }
    if (marginFirst) {
        action.first =
            "First, while the panel is still thick: these become outermost rows and keep "
            "their trim margin. Once the panel is thinner they cannot be cut any more.";
    }
    action.words.push_back("Number them as they come off the saw: " + labelList(cut.slices) +
                           (cut.forPanels
                                ? ". Pencil the number and an arrow to the squared end on the top "
                                  "face. They go into other panels."
                                : ". Pencil the number on the top face, at the first strip."));
    if (!cut.spares.empty()) {
        action.words.push_back(
            cut.spares.size() == 1
                ? "The spare comes last, at the same stop: it stands in for a slice that goes "
                  "wrong. A test cut is made in waste."
                : "The spares come last, at the same stop: they stand in for slices that go wrong. "
                  "A test cut is made in waste.");
    }
    if (isShort(matter, cut)) {
        action.words.push_back(
            "The panel gets short: at the last cut only " +
            matter.inText(cut.stop.value + cut.left) +
            " is left to hold. Crosscut sled, stop block, hold-down clamp, hands "
            "clear of the blade. Never rip fence and mitre gauge together.");
    } else {
        action.words.push_back("After the last cut " + matter.inText(cut.left) +
                               " of the panel is left.");
    }
    action.settingName = "Stop";
    action.setting = &cut.stop;
    action.ticks = slices + cut.spares.size();
    return action;
}

/// `length`: of the parts, along the grain.
Action actionFor(const Matter& matter, const BringToSize& work, int number, Length length) {
    const Sizing& sizing = work.sizing;
    Action action;
    action.number = number;
    const bool all = work.parts.size() == 1 && work.parts.front().find('-') == std::string::npos;
    const std::string what = all ? "the rest of the panel" : labelList(work.parts);
    action.title = sizing.purpose == SizedFor::TrueSides ? "True both sides of the panel"
                   : sizing.purpose == SizedFor::Window  ? "Saw the row out of " + what
                   : sizing.in == SizedIn::Thickness     ? "Bring " + what + " to thickness"
                                                         : "Bring " + what + " to width";
    action.words.push_back(
        sizingWords(sizing, matter.notation()) + ", as it lay in the panel. " +
        (sizing.purpose == SizedFor::TrueSides
             ? "Joint one side straight and square, rip the other: they will be glued."
         : sizing.purpose == SizedFor::Window
             ? "The panel is longer than this row: the row is a window onto it. A stop block on "
               "the sled, the same for all; what is named includes the kerf."
             : "Other copies need this wood where they lie in the board; these do not."));
    if (length < matter.project.shop.planerShortest) {
        action.words.emplace_back(
            "Too short for planer and rip fence: a sled with a stop and a clamp, a shooting board "
            "or the sander on a carrier; never a short piece along the fence.");
    }
    action.settingName = sizing.in == SizedIn::Thickness ? "Thickness" : "Width";
    action.setting = &sizing.to;
    action.ticks = work.parts.size();
    return action;
}

std::vector<Action> actions(const Matter& matter, const Record& record, const PanelRecord& panel) {
    std::vector<Action> all;
    for (std::size_t i = 0; i < panel.later.size(); ++i) {
        const int number = panel.later[i];
        const Work& work = record.work(number);
        Action action;
        action.number = number;
        if (const auto* sized = std::get_if<BringToSize>(&work)) {
            if (sized->sizing.purpose == SizedFor::TrueSides && panel.deep) {
                continue;  // stands on the sheet of the glue-up
            }
            const auto slice = record.slices.find(sized->parts.front());
            action = actionFor(matter, *sized, number,
                               slice != record.slices.end() ? slice->second.length
                                                            : panel.length().value);
        } else if (const auto* flatten = std::get_if<Flatten>(&work)) {
            if (flatten->purpose == Purpose::AfterGlueUp && panel.glue) {
                continue;  // stands on the sheet of the glue-up
            }
            action.title = flatten->purpose == Purpose::AfterGlueUp
                               ? "Flatten the panel"
                               : "Bring the panel to its final "
                                 "thickness";
            const Shop& shop = matter.project.shop;
            const FlatWork flat = flatWork(record, *flatten, number);
            action.words.push_back(
                "From " + matter.inText(flatten->from.value) +
                ", both faces: " + flatteningTools(flat, shop) + ". " + whyNoPlaner(flat, shop) +
                (flatten->purpose == Purpose::RowHeight ? " This sets the height of the rows."
                                                        : ""));
            action.settingName = "Thickness";
            action.setting = &flatten->to;
        } else if (const auto* square = std::get_if<SquareEnd>(&work)) {
            action.title = "Square one end";
            action.words.push_back(
                "Cut 1. The waste stands outside the blade; after it the panel is " +
                matter.inText(square->left) + " long. Every slice is measured from this end.");
            action.settingName = "Waste";
            action.setting = &square->waste;
        } else if (const auto* cut = std::get_if<Crosscut>(&work)) {
            bool thinnedLater = false;
            for (std::size_t j = i + 1; j < panel.later.size(); ++j) {
                thinnedLater =
                    thinnedLater || std::holds_alternative<Flatten>(record.work(panel.later[j]));
            }
            action = actionFor(matter, *cut, number, thinnedLater);
        } else {
            continue;
        }
        all.push_back(std::move(action));
    }
    return all;
}

}  // namespace

void addSlicing(std::vector<Draft>& drafts, const Matter& matter, const Record& record,
                const PanelRecord& panel) {
    const std::string name = panel.glue ? "panel " + panel.label : "strip " + panel.label;
    const bool lengthsOnly = std::all_of(panel.later.begin(), panel.later.end(), [&](int number) {
        const auto* cut = std::get_if<Crosscut>(&record.work(number));
        return cut == nullptr || cut->forPanels;
    });
    Flow flow(drafts, matter, "slicing-" + panel.label,
              lengthsOnly ? "Cut " + name + " to lengths" : "Slice " + name, Sizes::AsGlued,
              Flow::Safety::FirstPage);
    flow.heading("Cuts in order, from the squared end",
                 "cuts above, slices below; length to scale");
    drawPanelToSlice(flow, matter, record, panel);
    flow.y += 1;
    for (const Action& action : actions(matter, record, panel)) {
        addAction(flow, matter, action);
    }
}

}  // namespace kerfwright
