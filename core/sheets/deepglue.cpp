// The glue-up of a panel that parts of other panels go into.
#include "core/drawing/dimension.h"
#include "core/sheets/gluewords.h"
#include "core/sheets/methods.h"
#include "core/sheets/pages.h"
#include "core/sheets/stickview.h"
#include "core/words/say.h"

#include <algorithm>

namespace kerfwright {
namespace {

std::string layWords(const Lay& lay) {
    std::string text;
    const auto then = [&text](bool is, const std::string& what) {
        if (is) {
            text = text.empty() ? what : say("{1}, then {2}", text, what);
        }
    };
    then(lay.rolled, sayIn("what to do", "roll a quarter, clockwise"));
    then(lay.turnedOver, sayIn("what to do", "turn over"));
    then(lay.flipped, sayIn("what to do", "flip"));
    return text.empty() ? say("as it is") : text;
}

class DeepSheet {
public:
    DeepSheet(Flow& flow, const Matter& matter, const Record& record, const PanelRecord& panel)
        : flow_(flow)
        , matter_(matter)
        , record_(record)
        , panel_(panel)
        , glue_(*panel.glue.work) {}

    bool endGrain() const { return matter_.project.board.build == Build::EndGrain; }

    bool lyingDown() const { return glue_.along == GlueAlong::Down; }

    /// Parts that are joined one below the other are drawn side by side, the uppermost at the left.
    void picture() {
        const bool lying = lyingDown();
        const Seen seen = endGrain() ? Seen::FromTheNearEnd : Seen::FromAbove;
        const Solid& solid = record_.solids.at(panel_.label).made;
        const Axis down = endGrain() ? Z : Y;
        const Axis across = lying ? down : X;
        const Axis other = lying ? X : down;
        const double wide = solid.size[across].toMm();
        const double tall = solid.size[other].toMm();
        constexpr double sideRoom = 16;
        constexpr double tallest = 30;
        const double scale = std::min({(flow_.width() - sideRoom) / wide, tallest / tall, 1.0});
        const std::string height = matter_.text(solid.size[other]);
        const Box box{flow_.left() + sideRoom, flow_.y + 6, wide * scale, tall * scale};
        Drawing& drawing = flow_.drawing();
        drawFace(drawing, matter_, solid, seen, box, true, lying);
        std::vector<EdgeLabel> names;
        double at = 0;
        const Style seam{.line = Ink::Joint, .lineWidth = 0.7};
        for (const Laid& laid : glue_.parts) {
            const Solid part = kerfwright::laid(record_.solids.at(laid.part).ready, laid.lay);
            const double size = part.size[across].toMm() * scale;
            names.push_back({box.x + at + size / 2, laid.part, {type::small, true, Ink::Text}});
            if (at > 0) {
                drawing.marks.emplace_back(
                    Line{{box.x + at, box.y - 0.8}, {box.x + at, box.bottom() + 0.8}, seam});
            }
            at += size;
        }
        const double below =
            addEdgeLabels(drawing, names, box.bottom(), false, flow_.left(), flow_.right(), 4)
                .height;
        const double line = box.bottom() + below + 5;
        addDimensionAcross(drawing, box.x, box.right(), line, box.bottom() + below,
                           matter_.text(solid.size[across]), {.bold = true});
        addDimensionDown(drawing, box.y, box.bottom(), box.x - 6, box.x, height, {.bold = true});
        flow_.y = line + 4;
        // The height of a low panel has no room between its lines and hangs below them.
        constexpr double arrows = 5;
        if (const double hangs = textWidth(height, type::small, true); hangs + 1 > box.height) {
            flow_.y = std::max(flow_.y, box.bottom() + hangs + arrows + 1);
        }
    }

    /// Every part with how it is laid; several panels that are glued alike stand side by side.
    void parts(const std::vector<const PanelRecord*>& alike) {
        constexpr double lineHeight = 5.4;
        const auto head = [&] {
            flow_.heading(say("Parts in this order"), glue_.along == GlueAlong::Width
                                                          ? say("left to right")
                                                          : say("top to bottom"));
        };
        // From the left edge: what a part is, how it is laid, which ones they are.
        constexpr double kindX = 14;
        double layX = 50;
        for (const Laid& laid : glue_.parts) {
            layX = std::max(layX, kindX + textWidth(kindOf(laid.part), type::small, false) + 2);
        }
        const double labelsX = layX + 50;
        const double labelsWidth = flow_.width() - labelsX;
        flow_.need(7.2 + 3 * lineHeight);
        head();
        for (std::size_t i = 0; i < glue_.parts.size(); ++i) {
            const Laid& laid = glue_.parts[i];
            std::string labels = laid.part;
            std::vector<std::string> others;
            for (const PanelRecord* one : alike) {
                others.push_back(one->glue->parts[i].part);
            }
            if (others.size() > 1) {
                labels = labelList(others);
            }
            const std::vector<std::string> lines = wrapped(labels, type::small, true, labelsWidth);
            const Tone layTone = laid.lay == Lay{} ? quietText : Tone{type::small, true, Ink::Text};
            const std::vector<std::string> lay =
                fitted(layWords(laid.lay), layTone, 48, mostNarrowed);
            const double height = std::max(
                lineHeight, static_cast<double>(std::max(lines.size(), lay.size())) * 4.4 + 1);
            if (flow_.need(height)) {
                head();
            }
            flow_.tick(flow_.left(), flow_.y, 3.8);
            const double base = flow_.y + 3.4;
            flow_.text(flow_.left() + 11, base, std::to_string(i + 1), quietText, Align::Right);
            flow_.text(flow_.left() + kindX, base, kindOf(laid.part), smallText, Align::Left,
                       layX - kindX - 2);
            double layBase = base;
            for (const std::string& words : lay) {
                flow_.text(flow_.left() + layX, layBase, words, layTone, Align::Left, 48);
                layBase += 4.4;
            }
            flow_.lines(flow_.left() + labelsX, flow_.y, labelsWidth, lines,
                        {type::small, true, Ink::Text});
            flow_.y += height;
        }
        flow_.y += 2;
    }

    void sizes() {
        const double third = (flow_.width() - 10) / 3;
        const auto below = [&](const Figure& figure) {
            return workingLines(figure, matter_.notation(), third);
        };
        flow_.need(30);
        flow_.heading(say("As glued"));
        flow_.y += bigNumbers(
            flow_, flow_.left(), flow_.y, flow_.width(),
            {{say("Thickness"), matter_.text(glue_.thickness.value), below(glue_.thickness)},
             {say("Width"), matter_.text(glue_.width.value), below(glue_.width)},
             {say("Length"), matter_.text(glue_.length.value), below(glue_.length)}});
        flow_.y += 4;
    }

    void words() {
        std::vector<std::string> all{
            endGrain()
                ? say("Look at the near end, as in the picture: every stick must show there what "
                      "is drawn. Clockwise is as seen from there. Chalk the panel's letter and an "
                      "arrow to the squared end on top.")
                : say("Look from above, as in the picture. Chalk the panel's letter on top."),
            say("Clamp dry once; a joint that needs force to close is planed again, not clamped "
                "shut."),
            glueWords(matter_.job, glue_, matter_.notation())};
        if (glue_.along == GlueAlong::Down) {
            all.push_back(say("End grain meets end grain: size the ends with thin glue first."));
        }
        flow_.need(30);
        flow_.heading(sayIn("heading", "Glue"), say("step {1}", panel_.glue.number));
        for (const std::string& word : all) {
            flow_.need(Flow::paragraphHeight(word, smallText, flow_.width() - 7) + 1.4);
            flow_.tick(flow_.left(), flow_.y + 0.3, 3.6);
            flow_.y +=
                flow_.paragraph(flow_.left() + 7, flow_.y, flow_.width() - 7, word, smallText) +
                1.4;
        }
        flow_.y += 2;
    }

    /// What is done to the panel before it is cut up.
    void after() {
        std::vector<BigNumber> numbers;
        std::vector<std::string> notes;
        const double third = (flow_.width() - 10) / 3;
        const auto below = [&](const Figure& figure) {
            return workingLines(figure, matter_.notation(), third);
        };
        for (const int number : panel_.later) {
            const Work& work = record_.work(number);
            if (const auto* flatten = std::get_if<Flatten>(&work);
                flatten != nullptr && flatten->purpose == Purpose::AfterGlueUp) {
                numbers.push_back({say("Step {1}: flatten to", number),
                                   matter_.text(flatten->to.value), below(flatten->to)});
                const FlatWork flat = flatWork(record_, *flatten, number);
                const Shop& shop = matter_.project.shop;
                notes.push_back(sentences(
                    {say("Flatten with: {1}, half off each face.", flatteningTools(flat, shop)),
                     whyNoPlaner(flat, shop)}));
            } else if (const auto* sized = std::get_if<BringToSize>(&work);
                       sized != nullptr && sized->sizing.purpose == SizedFor::TrueSides) {
                const bool sides = sized->sizing.in == SizedIn::Width;
                numbers.push_back({sides ? say("Step {1}: true to width", number)
                                         : say("Step {1}: square to length", number),
                                   matter_.text(sized->sizing.to.value), below(sized->sizing.to)});
                if (sides) {
                    // Translators: "1.5 mm off each side: …"
                    notes.push_back(say("{1}: joint one side, rip the other. Where the panel is "
                                        "too short for jointer and fence, use a sled.",
                                        sizingWords(sized->sizing, matter_.notation())));
                }
            }
        }
        if (numbers.empty()) {
            return;
        }
        double height = 25 + flow_.shortSafetyHeight();
        for (const std::string& note : notes) {
            height += Flow::paragraphHeight(note, smallText, flow_.width()) + 1.5;
        }
        flow_.need(height);
        flow_.heading(sayIn("heading", "Then"));
        numbers.resize(std::max<std::size_t>(numbers.size(), 3));
        flow_.y += bigNumbers(flow_, flow_.left(), flow_.y, flow_.width(), numbers) + 1;
        for (const std::string& note : notes) {
            flow_.need(Flow::paragraphHeight(note, smallText, flow_.width()));
            flow_.y += flow_.paragraph(flow_.left(), flow_.y, flow_.width(), note, smallText) + 1.5;
        }
    }

private:
    std::string kindOf(const std::string& label) const {
        const auto slice = record_.slices.find(label);
        if (slice != record_.slices.end()) {
            return endGrain() ? say("length of panel {1}", panelOf(label))
                              : say("slice of panel {1}", panelOf(label));
        }
        for (const StripRecord& strip : panel_.strips) {
            if (strip.label == label) {
                return say("strip, {1}", matter_.wood(strip.line->wood).name);
            }
        }
        return say("panel {1}", label);
    }

    Flow& flow_;
    const Matter& matter_;
    const Record& record_;
    const PanelRecord& panel_;
    const Glue& glue_;
};

}  // namespace

void addDeepGlueUp(std::vector<Draft>& drafts, const Matter& matter, const Record& record,
                   const std::vector<const PanelRecord*>& alike) {
    const PanelRecord& panel = *alike.front();
    std::vector<std::string> labels;
    for (const PanelRecord* one : alike) {
        labels.push_back(one->label);
    }
    const std::string title = alike.size() == 1 ? say("Glue panel {1}", panel.label)
                                                : say("Glue panels {1}", labelList(labels));
    Flow flow(drafts, matter, "glue-" + panel.label, title, Sizes::AsGlued, Flow::Safety::None);
    DeepSheet sheet(flow, matter, record, panel);
    const std::size_t parts = panel.glue->parts.size();
    const std::string partsWords = sayCount(parts, "{1} part", "{1} parts");
    flow.heading(sheet.endGrain()    ? say("Seen from the near end, as it lies on the bench")
                 : sheet.lyingDown() ? say("Seen from above, its upper end at the left")
                                     : say("Seen from above"),
                 alike.size() == 1 ? partsWords
                                   : sayCount(alike.size(), "{2}, {1} panel alike",
                                              "{2}, {1} panels alike", partsWords));
    sheet.picture();
    sheet.sizes();
    sheet.parts(alike);
    sheet.words();
    sheet.after();
    flow.safetyAtEnd();
}

}  // namespace kerfwright
