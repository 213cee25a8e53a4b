// The glue-up of a panel that parts of other panels go into.
#include "core/drawing/dimension.h"
#include "core/sheets/gluewords.h"
#include "core/sheets/methods.h"
#include "core/sheets/pages.h"
#include "core/sheets/stickview.h"

#include <algorithm>

namespace kerfwright {
namespace {

std::string layWords(const Lay& lay) {
    std::vector<std::string> words;
    if (lay.rolled) {
        words.emplace_back("roll a quarter, clockwise");
    }
    if (lay.turnedOver) {
        words.emplace_back("turn over");
    }
    if (lay.flipped) {
        words.emplace_back("flip");
    }
    std::string text;
    for (const std::string& one : words) {
        text += (text.empty() ? "" : ", then ") + one;
    }
    return text.empty() ? "as it is" : text;
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
        addDimensionDown(drawing, box.y, box.bottom(), box.x - 6, box.x,
                         matter_.text(solid.size[other]), {.bold = true});
        flow_.y = line + 4;
    }

    /// Every part with how it is laid; several panels that are glued alike stand side by side.
    void parts(const std::vector<const PanelRecord*>& alike) {
        constexpr double lineHeight = 5.4;
        const auto head = [&] {
            flow_.heading("Parts in this order",
                          glue_.along == GlueAlong::Width ? "left to right" : "top to bottom");
        };
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
            const std::vector<std::string> lines =
                wrapped(labels, type::small, true, flow_.width() - 100);
            const double height = std::max(lineHeight, static_cast<double>(lines.size()) * 4.4 + 1);
            if (flow_.need(height)) {
                head();
            }
            flow_.tick(flow_.left(), flow_.y, 3.8);
            const double base = flow_.y + 3.4;
            flow_.text(flow_.left() + 11, base, std::to_string(i + 1), quietText, Align::Right);
            flow_.text(flow_.left() + 14, base, kindOf(laid.part), smallText, Align::Left, 34);
            const bool asIs = laid.lay == Lay{};
            flow_.text(flow_.left() + 50, base, layWords(laid.lay),
                       asIs ? quietText : Tone{type::small, true, Ink::Text}, Align::Left, 48);
            flow_.lines(flow_.left() + 100, flow_.y, flow_.width() - 100, lines,
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
        flow_.heading("As glued");
        flow_.y +=
            bigNumbers(flow_, flow_.left(), flow_.y, flow_.width(),
                       {{"Thickness", matter_.text(glue_.thickness.value), below(glue_.thickness)},
                        {"Width", matter_.text(glue_.width.value), below(glue_.width)},
                        {"Length", matter_.text(glue_.length.value), below(glue_.length)}});
        flow_.y += 4;
    }

    void words() {
        std::vector<std::string> all{
            endGrain()
                ? "Look at the near end, as in the picture: every stick must show there what is "
                  "drawn. Clockwise is as seen from there. Chalk the panel's letter and an arrow "
                  "to the squared "
                  "end on top."
                : "Look from above, as in the picture. Chalk the panel's letter on top.",
            "Clamp dry once; a joint that needs force to close is planed again, not clamped shut.",
            glueWords(matter_.job, glue_, matter_.notation())};
        if (glue_.along == GlueAlong::Down) {
            all.emplace_back("End grain meets end grain: size the ends with thin glue first.");
        }
        flow_.need(30);
        flow_.heading("Glue", "step " + std::to_string(panel_.glue.number));
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
            const std::string step = "Step " + std::to_string(number) + ": ";
            if (const auto* flatten = std::get_if<Flatten>(&work);
                flatten != nullptr && flatten->purpose == Purpose::AfterGlueUp) {
                numbers.push_back(
                    {step + "flatten to", matter_.text(flatten->to.value), below(flatten->to)});
                const FlatWork flat = flatWork(record_, *flatten, number);
                const Shop& shop = matter_.project.shop;
                notes.push_back("Flatten with: " + flatteningTools(flat, shop) +
                                ", half off each face. " + whyNoPlaner(flat, shop));
            } else if (const auto* sized = std::get_if<BringToSize>(&work);
                       sized != nullptr && sized->sizing.purpose == SizedFor::TrueSides) {
                const bool sides = sized->sizing.in == SizedIn::Width;
                numbers.push_back({step + (sides ? "true to width" : "square to length"),
                                   matter_.text(sized->sizing.to.value), below(sized->sizing.to)});
                if (sides) {
                    notes.push_back(sizingWords(sized->sizing, matter_.notation()) +
                                    ": joint one side, rip the other. Where the panel is too short "
                                    "for jointer and fence, use a sled.");
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
        flow_.heading("Then");
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
            return (endGrain() ? "length of panel " : "slice of panel ") + panelOf(label);
        }
        for (const StripRecord& strip : panel_.strips) {
            if (strip.label == label) {
                return "strip, " + matter_.wood(strip.line->wood).name;
            }
        }
        return "panel " + label;
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
    const std::string title =
        alike.size() == 1 ? "Glue panel " + panel.label : "Glue panels " + labelList(labels);
    Flow flow(drafts, matter, "glue-" + panel.label, title, Sizes::AsGlued, Flow::Safety::None);
    DeepSheet sheet(flow, matter, record, panel);
    const std::string alikeWords =
        alike.size() == 1 ? "" : ", " + std::to_string(alike.size()) + " panels alike";
    flow.heading(sheet.endGrain()    ? "Seen from the near end, as it lies on the bench"
                 : sheet.lyingDown() ? "Seen from above, its upper end at the left"
                                     : "Seen from above",
                 std::to_string(panel.glue->parts.size()) + " parts" + alikeWords);
    sheet.picture();
    sheet.sizes();
    sheet.parts(alike);
    sheet.words();
    sheet.after();
    flow.safetyAtEnd();
}

}  // namespace kerfwright
