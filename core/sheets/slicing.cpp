#include "core/sheets/methods.h"
#include "core/sheets/pages.h"
#include "core/sheets/stickview.h"
#include "core/words/say.h"

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

std::string cutTitle(const Crosscut& cut) {
    const std::size_t slices = cut.slices.size();
    const std::size_t spares = cut.spares.size();
    if (spares > 0) {
        return cut.forPanels    ? sayCount(slices, "Cut a length and {2} spare",
                                           "Cut {1} lengths and {2} spare", spares)
               : cut.marginRows ? sayCount(slices, "Cut the margin slice and {2} spare",
                                           "Cut {1} margin slices and {2} spare", spares)
                                : sayCount(slices, "Cut {1} slice and {2} spare",
                                           "Cut {1} slices and {2} spare", spares);
    }
    return cut.forPanels    ? sayCount(slices, "Cut a length", "Cut {1} lengths")
           : cut.marginRows ? sayCount(slices, "Cut the margin slice", "Cut {1} margin slices")
                            : sayCount(slices, "Cut {1} slice", "Cut {1} slices");
}

Action actionFor(const Matter& matter, const Crosscut& cut, int number, bool thinnedLater) {
    Action action;
    action.number = number;
    const std::size_t slices = cut.slices.size();
    const bool marginFirst = cut.marginRows && thinnedLater;
    action.title = cutTitle(cut);
    if (marginFirst) {
        action.first =
            say("First, while the panel is still thick: these become outermost rows and keep their "
                "trim margin. Once the panel is thinner they cannot be cut any more.");
    }
    const std::string labels = labelList(cut.slices);
    action.words.push_back(
        cut.forPanels
            ? say("Number them as they come off the saw: {1}. Pencil the number and an arrow to "
                  "the squared end on the top face. They go into other panels.",
                  labels)
            : say("Number them as they come off the saw: {1}. Pencil the number on the top face, "
                  "at the first strip.",
                  labels));
    if (!cut.spares.empty()) {
        action.words.push_back(
            cut.spares.size() == 1
                ? say("The spare comes last, at the same stop: it stands in for a slice that goes "
                      "wrong. A test cut is made in waste.")
                : say("The spares come last, at the same stop: they stand in for slices that go "
                      "wrong. A test cut is made in waste."));
    }
    action.words.push_back(
        isShort(matter, cut)
            ? say("The panel gets short: at the last cut only {1} is left to hold. Crosscut sled, "
                  "stop block, hold-down clamp, hands clear of the blade. Never rip fence and "
                  "mitre gauge together.",
                  matter.inText(cut.stop.value + cut.left))
            : say("After the last cut {1} of the panel is left.", matter.inText(cut.left)));
    action.settingName = sayIn("of a saw", "Stop");
    action.setting = &cut.stop;
    action.ticks = slices + cut.spares.size();
    return action;
}

std::string sizeTitle(const BringToSize& work) {
    const Sizing& sizing = work.sizing;
    const bool window = sizing.purpose == SizedFor::Window;
    const bool thickness = sizing.in == SizedIn::Thickness;
    if (sizing.purpose == SizedFor::TrueSides) {
        return say("True both sides of the panel");
    }
    if (work.parts.size() == 1 && work.parts.front().find('-') == std::string::npos) {
        return window      ? say("Saw the row out of the rest of the panel")
               : thickness ? say("Bring the rest of the panel to thickness")
                           : say("Bring the rest of the panel to width");
    }
    const std::string parts = labelList(work.parts);
    return window      ? say("Saw the row out of {1}", parts)
           : thickness ? say("Bring {1} to thickness", parts)
                       : say("Bring {1} to width", parts);
}

/// `length`: of the parts, along the grain.
Action actionFor(const Matter& matter, const BringToSize& work, int number, Length length) {
    const Sizing& sizing = work.sizing;
    Action action;
    action.number = number;
    action.title = sizeTitle(work);
    const std::string off = sizingWords(sizing, matter.notation());
    // Translators: {1} is "1.5 mm off each side".
    action.words.push_back(
        sizing.purpose == SizedFor::TrueSides
            ? say("{1}, as it lay in the panel. Joint one side straight and square, rip the other: "
                  "they will be glued.",
                  off)
        : sizing.purpose == SizedFor::Window
            ? say("{1}, as it lay in the panel. The panel is longer than this row: the row is a "
                  "window onto it. A stop block on the sled, the same for all; what is named "
                  "includes the kerf.",
                  off)
            : say("{1}, as it lay in the panel. Other copies need this wood where they lie in the "
                  "board; these do not.",
                  off));
    if (length < matter.project.shop.planerShortest) {
        action.words.push_back(
            say("Too short for planer and rip fence: a sled with a stop and a clamp, a shooting "
                "board or the sander on a carrier; never a short piece along the fence."));
    }
    action.settingName = sizing.in == SizedIn::Thickness ? say("Thickness") : say("Width");
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
                               ? say("Flatten the panel")
                               : say("Bring the panel to its final thickness");
            const Shop& shop = matter.project.shop;
            const FlatWork flat = flatWork(record, *flatten, number);
            action.words.push_back(sentences(
                {say("From {1}, both faces: {2}.", matter.inText(flatten->from.value),
                     flatteningTools(flat, shop)),
                 whyNoPlaner(flat, shop),
                 flatten->purpose == Purpose::RowHeight ? say("This sets the height of the rows.")
                                                        : ""}));
            action.settingName = say("Thickness");
            action.setting = &flatten->to;
        } else if (const auto* square = std::get_if<SquareEnd>(&work)) {
            action.title = say("Square one end");
            action.words.push_back(say("Cut 1. The waste stands outside the blade; after it the "
                                       "panel is {1} long. Every slice is measured from this end.",
                                       matter.inText(square->left)));
            action.settingName = sayIn("a length", "Waste");
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
    const bool lengthsOnly = std::all_of(panel.later.begin(), panel.later.end(), [&](int number) {
        const auto* cut = std::get_if<Crosscut>(&record.work(number));
        return cut == nullptr || cut->forPanels;
    });
    const std::string title = panel.glue
                                  ? (lengthsOnly ? say("Cut panel {1} to lengths", panel.label)
                                                 : say("Slice panel {1}", panel.label))
                                  : (lengthsOnly ? say("Cut strip {1} to lengths", panel.label)
                                                 : say("Slice strip {1}", panel.label));
    Flow flow(drafts, matter, "slicing-" + panel.label, title, Sizes::AsGlued,
              Flow::Safety::FirstPage);
    flow.heading(say("Cuts in order, from the squared end"),
                 say("cuts above, slices below; length to scale"));
    drawPanelToSlice(flow, matter, record, panel);
    flow.y += 1;
    for (const Action& action : actions(matter, record, panel)) {
        addAction(flow, matter, action);
    }
}

}  // namespace kerfwright
