#include "core/sheets/gluewords.h"
#include "core/sheets/methods.h"
#include "core/sheets/pages.h"
#include "core/sheets/stickview.h"
#include "core/words/say.h"

#include <algorithm>

namespace kerfwright {
namespace {

/// The strips in order as a list, set in columns, for panels that the picture cannot label.
void stripList(Flow& flow, const Matter& matter, const PanelRecord& panel) {
    constexpr double lineHeight = 5;
    constexpr int columns = 3;
    const double column = (flow.width() - 8) / columns;
    flow.need(30);
    flow.heading(say("Strips in order"),
                 say("left to right, width in {1}", unitName(matter.notation().unit)));
    std::size_t next = 0;
    while (next < panel.strips.size()) {
        if (flow.need(lineHeight * 2)) {
            flow.heading(say("{1}, continued", say("Strips in order")));
        }
        const std::size_t left = panel.strips.size() - next;
        const auto room = static_cast<std::size_t>(flow.room() / lineHeight);
        const std::size_t rows =
            std::min(std::max<std::size_t>(room, 1), (left + columns - 1) / columns);
        for (int c = 0; c < columns; ++c) {
            for (std::size_t r = 0; r < rows && next < panel.strips.size(); ++r, ++next) {
                const StripRecord& strip = panel.strips[next];
                const double x = flow.left() + c * (column + 4);
                const double base = flow.y + static_cast<double>(r) * lineHeight + 3.6;
                flow.text(x, base, strip.label, {type::small, true, Ink::Text});
                flow.text(x + 14, base, matter.wood(strip.line->wood).letter,
                          {type::small, true, Ink::Accent});
                flow.name(x + 23, base, matter.wood(strip.line->wood).name, quietText, column - 45);
                flow.text(x + column, base, matter.bare(strip.line->width.value),
                          {type::small, true, Ink::Text}, Align::Right);
            }
        }
        flow.y += static_cast<double>(rows) * lineHeight + 2;
    }
}

constexpr double headingHeight = 7.2;
constexpr double tickRoom = 7;
constexpr double stepGap = 1.4;

double stepsHeight(const std::vector<std::string>& words, double width) {
    double height = headingHeight;
    for (const std::string& word : words) {
        height += Flow::paragraphHeight(word, smallText, width - tickRoom) + stepGap;
    }
    return height;
}

/// What is done when gluing, each with a box to tick, at the cursor, which moves below it.
void addSteps(Flow& flow, const std::vector<std::string>& words, double width) {
    flow.heading(sayIn("heading", "Glue"));
    for (const std::string& word : words) {
        flow.tick(flow.left(), flow.y + 0.3, 3.6);
        flow.y +=
            flow.paragraph(flow.left() + tickRoom, flow.y, width - tickRoom, word, smallText) +
            stepGap;
    }
}

/// How the panel is flattened once it is out of the clamps.
struct AfterGlue {
    const Flatten* flatten = nullptr;  ///< null where the next step is another
    int step = 0;
    std::string words;

    double height(const Matter& matter, double width) const {
        const double lines =
            static_cast<double>(workingLines(flatten->to, matter.notation(), width).size());
        return headingHeight + 12.6 + lines * type::small * type::leading + 1.5 +
               Flow::paragraphHeight(words, smallText, width);
    }

    void add(Flow& flow, const Matter& matter, double x, double width) const {
        const std::string heading = say("Then flatten");
        flow.text(x, flow.y + 4.2, heading, strongText);
        flow.text(x + textWidth(heading, type::strong, true) + 3, flow.y + 4.2,
                  say("step {1}", step), quietText);
        flow.y += headingHeight;
        flow.y += bigNumbers(flow, x, flow.y, width,
                             {{say("Flatten to"), matter.text(flatten->to.value),
                               workingLines(flatten->to, matter.notation(), width)}}) +
                  1.5;
        flow.y += flow.paragraph(x, flow.y, width, words, smallText);
    }
};

AfterGlue afterGlue(const Matter& matter, const Record& record, int step) {
    AfterGlue after{std::get_if<Flatten>(&record.work(step)), step, {}};
    if (after.flatten != nullptr) {
        const Shop& shop = matter.project.shop;
        const FlatWork flat = flatWork(record, *after.flatten, step);
        after.words =
            sentences({say("From {1}, about half off each face: {2}, fed along the "
                           "grain.",
                           matter.inText(after.flatten->from.value), flatteningTools(flat, shop)),
                       whyNoPlaner(flat, shop),
                       say("Both faces true and parallel before the first "
                           "crosscut.")});
    }
    return after;
}

}  // namespace

void addPanelGlueUp(std::vector<Draft>& drafts, const Matter& matter, const Record& record,
                    const PanelRecord& panel) {
    const Glue& glue = *panel.glue.work;
    Flow flow(drafts, matter, "glue-" + panel.label, say("Glue panel {1}", panel.label),
              Sizes::AsGlued, Flow::Safety::None);
    flow.heading(say("Strips side by side, in this order"),
                 sayCount(panel.strips.size(), "{1} strip · step {2}", "{1} strips · step {2}",
                          panel.glue.number));
    const bool labelled = drawPanelToGlue(flow, matter, panel);
    flow.y += 3;

    const double third = (flow.width() - 10) / 3;
    const auto below = [&](const Figure& figure) {
        return workingLines(figure, matter.notation(), third);
    };
    flow.need(30);
    flow.heading(say("As glued"));
    flow.y +=
        bigNumbers(flow, flow.left(), flow.y, flow.width(),
                   {{say("Thickness"), matter.text(glue.thickness.value), below(glue.thickness)},
                    {say("Width"), matter.text(glue.width.value), below(glue.width)},
                    {say("Length"), matter.text(glue.length.value), below(glue.length)}});
    flow.y += 4;

    std::vector<std::string> words{
        say("Lay the strips on the bench, first strip left, best face up. Pencil the triangle "
            "across all of them: glued right, it reads as one triangle."),
        say("Clamp dry once; a joint that needs force to close is planed again, not clamped shut."),
        glueWords(matter.job, glue, matter.notation()),
        say("Keep the ends flush at one end. The squaring cut is taken off there.")};
    AfterGlue after;
    if (!panel.later.empty()) {
        after = afterGlue(matter, record, panel.later.front());
    }
    // What to do on the left, the thickness to flatten to on the right, each as wide as makes both
    // end soonest.
    constexpr double gap = 10;
    const auto heightAt = [&](double right) {
        return std::max(stepsHeight(words, flow.width() - gap - right),
                        after.flatten != nullptr ? after.height(matter, right) : 0);
    };
    double right = (flow.width() - gap) / 2;
    for (const double narrower : {0.45, 0.4, 0.35}) {
        const double tried = (flow.width() - gap) * narrower;
        if (heightAt(tried) < heightAt(right)) {
            right = tried;
        }
    }
    flow.need(heightAt(right) + 4 + flow.shortSafetyHeight());
    const double top = flow.y;
    addSteps(flow, words, flow.width() - gap - right);
    const double bottom = flow.y;
    flow.y = top;
    if (after.flatten != nullptr) {
        after.add(flow, matter, flow.right() - right, right);
    }
    flow.y = std::max(bottom, flow.y) + 4;
    if (!labelled) {
        stripList(flow, matter, panel);
    }
    flow.safetyAtEnd();
}

}  // namespace kerfwright
