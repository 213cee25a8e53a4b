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
                flow.text(x + 23, base,
                          shortened(matter.wood(strip.line->wood).name, quietText, column - 45),
                          quietText);
                flow.text(x + column, base, matter.bare(strip.line->width.value),
                          {type::small, true, Ink::Text}, Align::Right);
            }
        }
        flow.y += static_cast<double>(rows) * lineHeight + 2;
    }
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
    const Flatten* flatten = nullptr;
    int flattenStep = 0;
    if (!panel.later.empty()) {
        flattenStep = panel.later.front();
        flatten = std::get_if<Flatten>(&record.work(flattenStep));
    }
    // What to do on the left, the thickness to flatten to on the right.
    const double half = (flow.width() - 10) / 2;
    const double wordsWidth = half - 7;
    double height = 7.2;
    for (const std::string& word : words) {
        height += Flow::paragraphHeight(word, smallText, wordsWidth) + 1.4;
    }
    flow.need(std::max(height, 44.0) + 4 + flow.shortSafetyHeight());
    const double top = flow.y;
    flow.heading(sayIn("heading", "Glue"));
    for (const std::string& word : words) {
        flow.tick(flow.left(), flow.y + 0.3, 3.6);
        flow.y += flow.paragraph(flow.left() + 7, flow.y, wordsWidth, word, smallText) + 1.4;
    }
    double bottom = flow.y;
    if (flatten != nullptr) {
        const Shop& shop = matter.project.shop;
        const FlatWork flat = flatWork(record, *flatten, flattenStep);
        const double x = flow.left() + half + 10;
        const std::string heading = say("Then flatten");
        flow.text(x, top + 4.2, heading, strongText);
        flow.text(x + textWidth(heading, type::strong, true) + 3, top + 4.2,
                  say("step {1}", flattenStep), quietText);
        double y = top + 7.2;
        y += bigNumbers(flow, x, y, half,
                        {{say("Flatten to"), matter.text(flatten->to.value),
                          workingLines(flatten->to, matter.notation(), half)}}) +
             1.5;
        y += flow.paragraph(
            x, y, half,
            sentences({say("From {1}, about half off each face: {2}, fed along the "
                           "grain.",
                           matter.inText(flatten->from.value), flatteningTools(flat, shop)),
                       whyNoPlaner(flat, shop),
                       say("Both faces true and parallel before the first "
                           "crosscut.")}),
            smallText);
        bottom = std::max(bottom, y);
    }
    flow.y = bottom + 4;
    if (!labelled) {
        stripList(flow, matter, panel);
    }
    flow.safetyAtEnd();
}

}  // namespace kerfwright
