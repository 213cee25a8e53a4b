#include "core/drawing/dimension.h"
#include "core/drawing/geometry.h"
#include "core/sheets/amounts.h"
#include "core/sheets/boardview.h"
#include "core/sheets/gluewords.h"
#include "core/sheets/pages.h"
#include "core/words/say.h"

#include <algorithm>

namespace kerfwright {
namespace {

std::string warning(const Matter& matter, const FitBorder& border) {
    const std::string travel = unbroken(travelWords(matter.job.movement, matter.notation().unit));
    if (border.design == BorderDesign::FloatingFrame) {
        return say("Glue the mitres and nothing else: the field lies loose in the frame, or it "
                   "bursts it in the damp.");
    }
    if (border.design == BorderDesign::BreadboardEnds) {
        return say("No glue between the ends and the field: pins hold them, the one in the middle "
                   "tight, the others in slots.");
    }
    if (border.design == BorderDesign::EdgeBand) {
        return say("Do not glue this border to the field: it will move by up to {1} through the "
                   "year and the strips along it do not. Joints open or the field cracks.",
                   travel);
    }
    if (matter.project.board.build == Build::EndGrain) {
        return say("Do not glue this border to the field: it will move by up to {1} through the "
                   "year and burst the mitres.",
                   travel);
    }
    return say("Across its grain this field grows and shrinks by up to {1} with the seasons, and "
               "the rails that run across it do not. Do not glue those rails to it: the mitres "
               "open or the field cracks.",
               travel);
}

/// What is glued in this step, then what is glued before and after it.
std::string gluedWords(const Board& board, const FitBorder& border) {
    std::vector<std::string> words;
    if (border.design == BorderDesign::FloatingFrame) {
        words.push_back(say("the mitres"));
    } else if (!border.mustNotBeGlued) {
        words.push_back(board.border.isFrame()
                            ? say("the mitres, and the rails to the edges of the field")
                            : say("the strips to the edges of the field"));
    }
    const bool tongue =
        border.design == BorderDesign::BreadboardEnds ||
        (border.design == BorderDesign::FloatingFrame && board.border.housing == Housing::Groove);
    if (tongue) {
        words.push_back(words.empty() ? say("the tongues into the rails, in an earlier step")
                                      : say("in an earlier step the tongues into the rails"));
    }
    if (board.border.hasInlay()) {
        words.push_back(words.empty() ? say("the inlay into the rails, in an earlier step")
                                      : say("in an earlier step the inlay into the rails"));
    }
    if (keysCorners(board)) {
        words.push_back(words.empty() ? say("the keys into the corners, in the next step")
                                      : say("in the next step the keys into the corners"));
    }
    if (words.empty()) {
        return say("Glued: nothing.");
    }
    std::string all;
    for (const std::string& one : words) {
        all += (all.empty() ? "" : "; ") + one;
    }
    return say("Glued: {1}.", all);
}

std::string dryWords(const Board& board, const FitBorder& border) {
    if (border.design == BorderDesign::FloatingFrame) {
        return board.border.housing == Housing::Groove
                   ? say("Dry: the tongues in the grooves of the field, and the field in the "
                         "frame.")
                   : say("Dry: the field on the ledge.");
    }
    if (border.design == BorderDesign::BreadboardEnds) {
        return say("Dry: the tongues in the grooves of the field, and the ends against its edges.");
    }
    return border.mustNotBeGlued ? say("Dry: the rails against the field.") : say("Dry: nothing.");
}

std::vector<std::string> workWords(const Board& board) {
    std::vector<std::string> words{
        say("Mill the rails together, from the cut list, so that all have one width and "
            "thickness.")};
    if (board.border.isFrame()) {
        words.push_back(
            say("Cut one mitre on every rail first, then set a stop block and cut the second mitre "
                "of each pair at one setting: opposite rails must be equal to a hair."));
        words.push_back(say("Try the mitres on waste first: four short offcuts must close to a "
                            "square frame."));
    } else {
        words.push_back(say("Cut the rails square, those of one length at one stop."));
    }
    words.push_back(say("Lay the rails dry round the field. Measure the field as it is before the "
                        "last cut; what is on the bench counts, not the paper."));
    return words;
}

struct RailPair {
    std::vector<std::string> labels;
    const Figure* longPoint;
};

/// Rails of one length are cut at one setting.
std::vector<RailPair> railPairs(const FitBorder& border) {
    std::vector<RailPair> pairs;
    for (const Rail& rail : border.rails) {
        const auto known = std::find_if(pairs.begin(), pairs.end(), [&](const RailPair& pair) {
            return pair.longPoint->value == rail.longPoint.value;
        });
        if (known == pairs.end()) {
            pairs.push_back({{rail.label}, &rail.longPoint});
        } else {
            known->labels.push_back(rail.label);
        }
    }
    return pairs;
}

}  // namespace

void addBorder(std::vector<Draft>& drafts, const Matter& matter, const Record& record) {
    const FitBorder& border = *record.border.work;
    const Board& board = matter.project.board;
    Flow flow(drafts, matter, "border", say("Border"), Sizes::Finished, Flow::Safety::None);

    if (border.mustNotBeGlued) {
        constexpr Tone tone{type::strong, true, Ink::Warning};
        const double height =
            Flow::paragraphHeight(warning(matter, border), tone, flow.width() - 8);
        flow.box({flow.left(), flow.y, 1.2, height + 1}, {.fill = Ink::Warning});
        flow.paragraph(flow.left() + 5, flow.y + 0.4, flow.width() - 8, warning(matter, border),
                       tone);
        flow.y += height + 7;
    }

    constexpr double sideRoom = 9;
    constexpr double topRoom = 6.5;
    const Totals& size = matter.job.totals;
    const Box extent{0, 0, size.width.toMm(), size.height.toMm()};
    const double scale = fitting(extent, 110, 74);
    const BoardViewOptions options{.letters = true,
                                   .hatch = true,
                                   .wholeBoard = true,
                                   .lineWidth = 0.22 / scale,
                                   .hatchPitch = 1.7 / scale,
                                   .leastLetter = type::small / scale,
                                   .greatestLetter = 5 / scale,
                                   .surround = matter.job.surround};
    const Point at{flow.left() + sideRoom, flow.y + topRoom};
    place(flow.drawing(), drawBoard(board, matter.project.woods, record.list.extraJoints, options),
          at, scale);
    const double right = at.x + extent.width * scale;
    const double bottom = at.y + extent.height * scale;
    addDimensionAcross(flow.drawing(), at.x, right, at.y - 2.4, at.y,
                       matter.text(border.boardWidth.value), {.bold = true});
    addDimensionDown(flow.drawing(), at.y, bottom, flow.left() + 6, at.x,
                     matter.text(border.boardHeight.value), {.bold = true});
    const Surround& around = matter.job.surround;
    if (around.railX > Length()) {
        addDimensionAcross(flow.drawing(), at.x, at.x + around.railX.toMm() * scale, bottom + 5.5,
                           bottom, matter.text(border.width.value));
    }

    const bool mitred = board.border.isFrame();
    const double x = std::max(right + 10, flow.left() + 128);
    const double width = flow.right() - x;
    const auto below = [&](const Figure& figure) {
        return workingLines(figure, matter.notation(), width);
    };
    double y = flow.y;
    flow.text(x, y + 3.4, say("Step {1}", record.border.number), {type::body, true, Ink::Accent});
    y += 6;
    for (const RailPair& pair : railPairs(border)) {
        y += flow.paragraph(x, y, width, eachLabel(pair.labels), {type::small, true, Ink::Text});
        y += bigNumbers(flow, x, y, width,
                        {{mitred ? say("Long point to long point") : say("Length"),
                          matter.text(pair.longPoint->value), below(*pair.longPoint)}}) +
             3;
    }
    y += bigNumbers(flow, x, y, width,
                    {{say("Rail width"), matter.text(border.width.value), below(border.width)}}) +
         3;
    if (mitred) {
        y += bigNumbers(flow, x, y, width,
                        {{say("Mitre"), "45°", {say("at both ends of every rail")}}}) +
             3;
    }
    double under = bottom + 10;
    if (border.design == BorderDesign::FloatingFrame) {
        const double half = 58;
        const auto lines = [&](const Figure& figure) {
            return workingLines(figure, matter.notation(), half - 4);
        };
        under += bigNumbers(flow, flow.left(), under, 2 * half,
                            {{say("Gap left and right, each side"), matter.text(border.gapX.value),
                              lines(border.gapX)},
                             {say("Gap above and below, each side"), matter.text(border.gapY.value),
                              lines(border.gapY)}});
    }
    flow.y = std::max(under, y) + 5;

    flow.need(24);
    flow.heading(sayIn("heading", "Glue"));
    for (const std::string& words : {gluedWords(board, border), dryWords(board, border)}) {
        flow.y += flow.paragraph(flow.left(), flow.y, flow.width(), words, boldText) + 1;
    }
    if (const std::string words = borderGlueWords(matter.job, matter.notation()); !words.empty()) {
        flow.y += flow.paragraph(flow.left(), flow.y, flow.width(), words, smallText) + 1;
    }
    flow.y += 4;

    flow.need(24);
    flow.heading(sayIn("heading", "How"));
    for (const std::string& word : workWords(board)) {
        const double height = Flow::paragraphHeight(word, smallText, flow.width() - 8);
        flow.need(height);
        flow.tick(flow.left(), flow.y + 0.3, 3.6);
        flow.paragraph(flow.left() + 8, flow.y, flow.width() - 8, word, smallText);
        flow.y += height + 1.6;
    }
    flow.need(flow.shortSafetyHeight());
    flow.safetyAtEnd();
}

}  // namespace kerfwright
