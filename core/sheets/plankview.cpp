#include "core/sheets/plankview.h"

#include "core/drawing/dimension.h"
#include "core/drawing/geometry.h"
#include "core/sheets/stickview.h"
#include "core/words/say.h"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <numbers>

namespace kerfwright {
namespace {

constexpr double leastBlade = 0.32;   // mm that the blade's cut is drawn wide at least
constexpr double leastDefect = 1.3;   // mm
constexpr double wastePitch = 1.6;    // mm between hatch lines
constexpr double mostStretch = 6;     // widths over lengths
constexpr double perStrip = 1.62;     // height of a strip that holds a line of text, in ems
constexpr Colour ash{206, 203, 196};  // what waste fades to
constexpr Colour soot{24, 18, 14};

Length narrowest(const Layout& layout, const Demand& demand) {
    Length least;
    for (const PlankCuts& cuts : layout.planks) {
        for (const PlankSection& section : cuts.sections) {
            for (const LaidStrip& strip : section.strips) {
                const Length across = acrossPlank(
                    demand.strips[static_cast<std::size_t>(strip.wanted)], strip.onEdge);
                least = least == Length() ? across : std::min(least, across);
            }
        }
    }
    return least;
}

class PlankArtist {
public:
    PlankArtist(Drawing& drawing, Point at, const PlankMatter& matter, const PlankLook& look)
        : drawing_(drawing)
        , matter_(matter)
        , look_(look)
        , base_(colourOf(matter))
        , wood_(woodIndex(matter.woods, matter.plank.wood))
        , at_(at) {
        if (wood_ < 0) {
            wood_ = shade(base_, 1);
        }
        for (const char c : matter.plank.label + matter.plank.wood) {
            seed_ = (seed_ ^ static_cast<unsigned char>(c)) * 16'777'619U;
        }
    }

    PlankPlaces paint() {
        double top = at_.y;
        if (matter_.saw != nullptr) {
            top += numbersAbove();
        }
        const double left = at_.x + leftOfPlank(look_);
        plank_ = {left, top, matter_.plank.length.toMm() * look_.scale.along,
                  matter_.plank.width.toMm() * look_.scale.across};
        places_.plank = plank_;
        if (matter_.cuts != nullptr) {
            laidOut();
        } else {
            figured(plank_);
        }
        for (const Defect& defect : matter_.plank.defects) {
            addDefect(defect);
        }
        // Seen on the ground as well as on the wood, whichever is dark.
        drawing_.marks.emplace_back(Rectangle{plank_, 0, {.line = Ink::Quiet, .lineWidth = 0.3}});
        if (matter_.saw != nullptr) {
            sawn();
        }
        if (matter_.cuts != nullptr) {
            kept();
        }
        for (const PlankPlaces::Strip& strip : places_.strips) {
            marked(strip);
        }
        below();
        return places_;
    }

private:
    /// Of woods that the project does not have, as the catalogue has it, or grey.
    static Colour colourOf(const PlankMatter& matter) {
        const Wood* wood = findWood(matter.woods, matter.plank.wood);
        if (wood == nullptr) {
            wood = findWood(woodCatalogue(), matter.plank.wood);
        }
        return wood != nullptr ? wood->colour : Colour{172, 166, 156};
    }

    Box boxOf(Length x, Length y, Length length, Length width) const {
        const double high = width.toMm() * look_.scale.across;
        return {plank_.x + x.toMm() * look_.scale.along,
                plank_.bottom() - y.toMm() * look_.scale.across - high,
                length.toMm() * look_.scale.along, high};
    }

    /// A shade of the plank's wood, as one more wood of the drawing.
    int shade(Colour towards, double share) {
        const auto mix = [share](std::uint8_t a, std::uint8_t b) {
            return static_cast<std::uint8_t>(std::lround(a * (1 - share) + b * share));
        };
        const Colour mixed{mix(base_.red, towards.red), mix(base_.green, towards.green),
                           mix(base_.blue, towards.blue)};
        const auto known =
            std::find(drawing_.woods.begin() + static_cast<std::ptrdiff_t>(matter_.woods.size()),
                      drawing_.woods.end(), mixed);
        const auto index = static_cast<int>(known - drawing_.woods.begin());
        if (known == drawing_.woods.end()) {
            drawing_.woods.push_back(mixed);
        }
        return index;
    }

    /// Bare wood with the lines of its grain, which run on from part to part of one plank.
    void figured(const Box& box) {
        drawing_.marks.emplace_back(Rectangle{box, 0, {.fill = Ink::Wood, .wood = wood_}});
        const Style line{.line = Ink::Wood, .lineWidth = 0.22, .wood = shade(soot, 0.16)};
        constexpr double pitch = 1.7;  // mm
        constexpr double step = 4;     // mm
        const auto count = static_cast<int>(std::clamp(plank_.height / pitch, 2.0, 48.0));
        for (int i = 0; i < count; ++i) {
            // Chance that is the same each time: grain belongs to the plank.
            const std::uint32_t chance =
                (seed_ + static_cast<std::uint32_t>(i) * 2'654'435'761U) * 2'246'822'519U;
            const double phase = (chance >> 8U & 0xFFU) / 40.0;
            const double swing = plank_.height * (0.012 + (chance >> 16U & 0x3FU) / 2600.0);
            const double middle =
                plank_.y + plank_.height * (i + 0.3 + (chance >> 24U & 0x3FU) / 150.0) / count;
            std::vector<Point> points;
            const auto flush = [&] {
                if (points.size() > 1) {
                    drawing_.marks.emplace_back(Shape{points, false, line});
                }
                points.clear();
            };
            for (double x = box.x;; x = std::min(x + step, box.right())) {
                const double along = (x - plank_.x) / std::max(plank_.width, 1.0);
                const double y = middle + swing * std::sin(phase + along * 2.2 * std::numbers::pi) +
                                 swing * 0.5 * std::sin(phase * 2 + along * 5.1 * std::numbers::pi);
                if (y > box.y + 0.2 && y < box.bottom() - 0.2) {
                    points.push_back({x, y});
                } else {
                    flush();
                }
                if (x >= box.right()) {
                    break;
                }
            }
            flush();
        }
    }

    void laidOut() {
        const int faded = shade(ash, 0.62);
        drawing_.marks.emplace_back(Rectangle{plank_, 0, {.fill = Ink::Wood, .wood = faded}});
        const Style hatch{
            .line = Ink::Wood, .lineWidth = 0.16, .wood = shade({120, 114, 104}, 0.7)};
        for (const Segment& segment : hatchLines(corners(plank_), 45, wastePitch)) {
            drawing_.marks.emplace_back(Line{segment.first, segment.second, hatch});
        }
        const Style edge{.line = Ink::Wood, .lineWidth = 0.2, .wood = shade(soot, 0.75)};
        for (const Offcut& offcut : matter_.cuts->offcuts) {
            const Box box = boxOf(offcut.x, offcut.y, offcut.length, offcut.width);
            figured(box);
            drawing_.marks.emplace_back(Rectangle{
                box, 0, {.line = Ink::Wood, .lineWidth = 0.3, .dashed = true, .wood = edge.wood}});
        }
        int number = 0;
        for (const PlankSection& section : matter_.cuts->sections) {
            int place = 0;
            for (const LaidStrip& strip : section.strips) {
                const WantedStrips& wanted =
                    matter_.demand->strips[static_cast<std::size_t>(strip.wanted)];
                const Box box =
                    boxOf(strip.x, strip.y, wanted.length, acrossPlank(wanted, strip.onEdge));
                figured(box);
                drawing_.marks.emplace_back(Rectangle{box, 0, edge});
                places_.strips.push_back({{number, place}, box});
                ++place;
            }
            ++number;
        }
    }

    std::string size(Length width, Length length) const {
        return formatBare(width, matter_.notation) + " × " + formatBare(length, matter_.notation);
    }

    /// "4 rails" of those that are sawn in one length.
    static std::string shortName(const std::string& name) {
        const auto joints = std::count(name.begin(), name.end(), '+');
        return joints == 0 ? name : sayCount(joints + 1, "{1} rail", "{1} rails");
    }

    /// The first of the texts that has room from `indent` on; where none has, the last one turned
    /// by a quarter.
    void label(const Box& box, const std::vector<std::string>& texts, double indent, bool bold) {
        const double ems = look_.type;
        const Style ink{.line = Ink::WoodLine, .wood = wood_};
        const double room = box.width - indent - 0.8;
        if (box.height >= ems * 1.05) {
            for (const std::string& text : texts) {
                const double width = textWidth(text, ems, bold);
                if (width <= room) {
                    backed({box.x + indent, box.y + box.height / 2 - ems * 0.6, width, ems * 1.2});
                    drawing_.marks.emplace_back(
                        Text{.at = {box.x + indent, box.y + box.height / 2 + ems * 0.365},
                             .text = text,
                             .size = ems,
                             .bold = bold,
                             .maxWidth = width,
                             .style = ink});
                    return;
                }
            }
        }
        const std::string& last = texts.back();
        const double width = textWidth(last, ems, bold);
        if (box.width >= ems * 1.1 && box.height >= width + 0.8) {
            drawing_.marks.emplace_back(
                Text{.at = {box.x + box.width / 2 + ems * 0.365, box.y + box.height / 2},
                     .text = last,
                     .size = ems,
                     .align = Align::Centre,
                     .bold = bold,
                     .degrees = -90,
                     .maxWidth = width,
                     .style = ink});
        }
    }

    /// The longest part of a box that no defect cuts into.
    Box besideDefects(const Box& box) const {
        std::vector<std::pair<double, double>> taken;
        for (const Defect& defect : matter_.plank.defects) {
            const Box knot = boxOf(defect.x, defect.y, defect.length, defect.width);
            if (knot.y < box.bottom() && knot.bottom() > box.y && knot.x < box.right() &&
                knot.right() > box.x) {
                taken.emplace_back(knot.x, std::max(knot.right(), knot.x + leastDefect));
            }
        }
        taken.emplace_back(box.right(), box.right());
        std::sort(taken.begin(), taken.end());
        Box best{box.x, box.y, 0, box.height};
        double from = box.x;
        for (const auto& [left, right] : taken) {
            if (left - from > best.width) {
                best = {from, box.y, left - from, box.height};
            }
            from = std::max(from, right);
        }
        return best;
    }

    /// Bare ground below words, so that grain does not run through them.
    void backed(const Box& box) {
        drawing_.marks.emplace_back(Rectangle{box, 0, {.fill = Ink::Wood, .wood = wood_}});
    }

    void addDefect(const Defect& defect) {
        Box box = boxOf(defect.x, defect.y, defect.length, defect.width);
        const auto widened = [](double& from, double& extent, double least, double most) {
            if (extent < leastDefect) {
                from = std::clamp(from - (leastDefect - extent) / 2, least,
                                  std::max(least, most - leastDefect));
                extent = leastDefect;
            }
        };
        widened(box.x, box.width, plank_.x, plank_.right());
        widened(box.y, box.height, plank_.y, plank_.bottom());
        const int dark = shade(soot, 0.62);
        drawing_.marks.emplace_back(Rectangle{box, 0, {.fill = Ink::Wood, .wood = dark}});
        const Style line{.line = Ink::WoodLine, .lineWidth = 0.16, .wood = dark};
        for (const double degrees : {45.0, -45.0}) {
            for (const Segment& segment : hatchLines(corners(box), degrees, 1.1)) {
                drawing_.marks.emplace_back(Line{segment.first, segment.second, line});
            }
        }
        drawing_.marks.emplace_back(
            Rectangle{box, 0, {.line = Ink::Wood, .lineWidth = 0.45, .wood = shade(soot, 0.9)}});
    }

    /// A number in a small plate, its middle there; the middle is kept inside the plank.
    void plate(Point middle, const std::string& number) {
        const double ems = look_.type;
        const double high = ems * 1.16;
        const double wide = std::max(high, textWidth(number, ems, true) + ems * 0.42);
        const Box box{std::min(middle.x - wide / 2, plank_.right() - wide), middle.y - high / 2,
                      wide, high};
        drawing_.marks.emplace_back(
            Rectangle{box, high / 2, {.fill = Ink::Paper, .line = Ink::Cut, .lineWidth = 0.2}});
        drawing_.marks.emplace_back(Text{.at = {box.x + wide / 2, middle.y + ems * 0.365},
                                         .text = number,
                                         .size = ems,
                                         .align = Align::Centre,
                                         .bold = true,
                                         .style = {.line = Ink::Text}});
    }

    std::vector<EdgeLabel> crosscutNumbers() const {
        std::vector<EdgeLabel> labels;
        for (const SawCut& cut : *matter_.saw) {
            if (cut.plank == matter_.number && cut.kind == SawCutKind::Crosscut) {
                labels.push_back({at_.x + leftOfPlank(look_) +
                                      (cut.x + half(cut.length)).toMm() * look_.scale.along,
                                  std::to_string(cut.number),
                                  {look_.type, true, Ink::Text}});
            }
        }
        std::sort(labels.begin(), labels.end(),
                  [](const EdgeLabel& a, const EdgeLabel& b) { return a.x < b.x; });
        return labels;
    }

    /// Height of the rows in which the numbers of the crosscuts stand.
    double numbersAbove() const {
        Drawing trial;
        const double left = at_.x + leftOfPlank(look_);
        const double right = left + matter_.plank.length.toMm() * look_.scale.along;
        return addEdgeLabels(trial, crosscutNumbers(), 0, true, left, right, mostRows).height + 0.4;
    }

    void sawn() {
        const int blade = shade(soot, 0.9);
        const double ems = look_.type;
        double lastPlate = -1;
        int lastSection = -1;
        double indent = 0;
        for (const SawCut& cut : *matter_.saw) {
            if (cut.plank != matter_.number) {
                continue;
            }
            Box box = boxOf(cut.x, cut.y, cut.length, cut.width);
            double& thin = cut.kind == SawCutKind::Rip ? box.height : box.width;
            if (thin < leastBlade) {
                (cut.kind == SawCutKind::Rip ? box.y : box.x) -= (leastBlade - thin) / 2;
                thin = leastBlade;
            }
            drawing_.marks.emplace_back(Rectangle{box, 0, {.fill = Ink::Wood, .wood = blade}});
            const std::string number = std::to_string(cut.number);
            const double wide = std::max(ems * 1.16, textWidth(number, ems, true) + ems * 0.42);
            if (cut.kind == SawCutKind::Rip) {
                const double middle = box.y + box.height / 2;
                // Plates that would lie on each other step aside by turns.
                const bool crowded = lastSection == cut.section && lastPlate >= 0 &&
                                     std::abs(middle - lastPlate) < ems * 1.3;
                indent = crowded && indent == 0 ? wide + 0.5 : 0;
                plates_.push_back({{box.x + 0.5 + indent + wide / 2, middle}, number});
                lastPlate = middle;
                lastSection = cut.section;
            } else if (cut.kind == SawCutKind::ToLength) {
                plates_.push_back({{box.x - wide / 2 - 0.5, box.y + box.height / 2}, number});
            }
        }
        const double right = plank_.right();
        addEdgeLabels(drawing_, crosscutNumbers(), plank_.y - 0.4, true, plank_.x, right, mostRows);
        for (const auto& [middle, number] : plates_) {
            plate(middle, number);
        }
    }

    /// Room that numbers of cuts take at the left and at the right end of a box.
    struct Taken {
        double left = 0, right = 0;
    };
    Taken takenByPlates(const Box& box) const {
        const double ems = look_.type;
        Taken taken;
        for (const auto& [middle, text] : plates_) {
            const double wide = std::max(ems * 1.16, textWidth(text, ems, true) + ems * 0.42);
            const bool level = middle.y + ems * 0.6 > box.y &&
                               middle.y - ems * 0.6 < box.bottom() && middle.x > box.x &&
                               middle.x < box.right();
            if (level && middle.x - box.x < wide * 2 + 2) {
                taken.left = std::max(taken.left, middle.x + wide / 2 - box.x);
            } else if (level) {
                taken.right = std::max(taken.right, box.right() - middle.x + wide / 2);
            }
        }
        return taken;
    }

    void kept() {
        for (const Offcut& offcut : matter_.cuts->offcuts) {
            Box room = besideDefects(boxOf(offcut.x, offcut.y, offcut.length, offcut.width));
            const Taken taken = takenByPlates(room);
            room.width -= taken.right;
            label(room,
                  {say("keep {1}", size(offcut.width, offcut.length)), sayIn("offcut", "keep")},
                  std::max(0.8, taken.left + 0.8), false);
        }
    }

    /// Name and size of a strip, a pin where it is pinned, and a frame where it is chosen.
    void marked(const PlankPlaces::Strip& strip) {
        const auto section = static_cast<std::size_t>(strip.place.first);
        const auto number = static_cast<std::size_t>(strip.place.second);
        const LaidStrip& laid = matter_.cuts->sections[section].strips[number];
        const WantedStrips& wanted = matter_.demand->strips[static_cast<std::size_t>(laid.wanted)];
        const std::string name =
            matter_.names != nullptr ? (*matter_.names)[section][number] : wanted.label;
        const Taken taken = takenByPlates(strip.box);
        const bool pinned = !wanted.plank.empty();
        Box room = strip.box;
        room.width -= taken.right;
        if (pinned) {
            room.width -= pin({room.right(), room.y + room.height / 2});
        }
        label(room,
              {name + "  " + size(acrossPlank(wanted, laid.onEdge), wanted.length), name,
               shortName(name)},
              std::max(0.9, taken.left + 0.8), true);
        if (strip.place == look_.chosen) {
            drawing_.marks.emplace_back(
                Rectangle{strip.box, 0, {.line = Ink::Accent, .lineWidth = 0.8}});
        }
    }

    /// A pin whose plate ends at `right`; returns the room that it takes.
    double pin(Point right) {
        const double r = look_.type * 0.36;
        const double x = right.x - r - 0.8;
        const Style ink{.fill = Ink::WoodLine, .wood = wood_};
        drawing_.marks.emplace_back(Rectangle{{x - r, right.y - r * 1.5, 2 * r, 2 * r}, r, ink});
        drawing_.marks.emplace_back(Shape{{{x - r * 0.28, right.y + r * 0.3},
                                           {x + r * 0.28, right.y + r * 0.3},
                                           {x, right.y + r * 1.8}},
                                          true,
                                          ink});
        return 2 * r + 1.2;
    }

    void below() {
        double edge = plank_.bottom();
        const auto addLabels = [&](const std::vector<EdgeLabel>& labels) {
            if (!labels.empty()) {
                edge += addEdgeLabels(drawing_, labels, edge, false, plank_.x, plank_.right(), 3)
                            .height;
            }
        };
        const Tone tone{look_.type, false, Ink::Text};
        if (matter_.cuts != nullptr && look_.dimensions) {
            std::vector<EdgeLabel> lengths;
            for (const PlankSection& section : matter_.cuts->sections) {
                const Box box = boxOf(section.x, Length(), section.length, Length());
                lengths.push_back(
                    {box.x + box.width / 2, formatBare(section.length, matter_.notation), tone});
            }
            addLabels(lengths);
        } else if (look_.positions) {
            std::vector<EdgeLabel> begins;
            for (const Defect& defect : matter_.plank.defects) {
                begins.push_back({boxOf(defect.x, Length(), Length(), Length()).x,
                                  formatBare(defect.x, matter_.notation), tone});
            }
            std::sort(begins.begin(), begins.end(),
                      [](const EdgeLabel& a, const EdgeLabel& b) { return a.x < b.x; });
            addLabels(begins);
        }
        places_.bottom = edge;
        if (look_.dimensions) {
            const DimensionLook dimension{.size = look_.type};
            const double line = edge + look_.type * 1.75;
            addDimensionAcross(drawing_, plank_.x, plank_.right(), line, edge,
                               format(matter_.plank.length, matter_.notation), dimension);
            addDimensionDown(drawing_, plank_.y, plank_.bottom(), at_.x + look_.type * 1.36,
                             plank_.x, formatBare(matter_.plank.width, matter_.notation),
                             dimension);
            places_.bottom = line + 1.4;
        }
    }

    static constexpr int mostRows = 4;

    Drawing& drawing_;
    const PlankMatter& matter_;
    const PlankLook& look_;
    Colour base_;
    int wood_;
    Point at_;
    Box plank_;
    PlankPlaces places_;
    std::vector<std::pair<Point, std::string>> plates_;
    std::uint32_t seed_ = 2'166'136'261U;
};

}  // namespace

PlankScale scaleOf(const Rack& rack, const Layout& layout, const Demand& demand, double length,
                   double type, double widest) {
    Length longest, width;
    for (const PlankCuts& cuts : layout.planks) {
        const Plank& plank = rack.planks[static_cast<std::size_t>(cuts.plank)];
        longest = std::max(longest, plank.length);
        width = std::max(width, plank.width);
    }
    if (longest == Length()) {
        return {};
    }
    const double along = length / longest.toMm();
    const Length least = narrowest(layout, demand);
    double across = along;
    if (least > Length()) {
        across = std::clamp(type * perStrip / least.toMm(), along, along * mostStretch);
    }
    return {along, std::min(across, std::max(widest / width.toMm(), 1e-6))};
}

PlankScale scaleOf(const std::vector<Plank>& planks, double length, double type, double widest) {
    Length longest, width, least;
    for (const Plank& plank : planks) {
        longest = std::max(longest, plank.length);
        width = std::max(width, plank.width);
        least = least == Length() ? plank.width : std::min(least, plank.width);
    }
    if (longest == Length()) {
        return {};
    }
    const double along = length / longest.toMm();
    const double across = std::clamp(type * perStrip / least.toMm(), along, along * mostStretch);
    return {along, std::min(across, widest / width.toMm())};
}

double leftOfPlank(const PlankLook& look) {
    return look.dimensions ? look.type * 1.36 + 2.4 : 0;
}

PlankPlaces addPlank(Drawing& drawing, Point at, const PlankMatter& matter, const PlankLook& look) {
    return PlankArtist(drawing, at, matter, look).paint();
}

PlankView drawPlank(const PlankMatter& matter, const PlankLook& look) {
    PlankView view;
    for (const Wood& wood : matter.woods) {
        view.drawing.woods.push_back(wood.colour);
    }
    view.places = addPlank(view.drawing, {0, 0}, matter, look);
    const double right = view.places.plank.right() + (look.dimensions ? 1 : 0.2);
    view.drawing.extent = {0, 0, right, view.places.bottom + 0.2};
    return view;
}

}  // namespace kerfwright
