#include "core/sheets/plankview.h"

#include "core/drawing/dimension.h"
#include "core/drawing/geometry.h"
#include "core/glueup/steps.h"
#include "core/sheets/plankground.h"
#include "core/sheets/stickview.h"
#include "core/words/say.h"

#include <algorithm>
#include <cmath>

namespace kerfwright {
namespace {

constexpr double leastBlade = 0.32;  // mm that the blade's cut is drawn wide at least

class PlankArtist {
public:
    PlankArtist(Drawing& drawing, Point at, const PlankMatter& matter, const PlankLook& look)
        : drawing_(drawing)
        , matter_(matter)
        , look_(look)
        , ground_(drawing, matter, look.scale)
        , at_(at) {}

    PlankPlaces paint() {
        double top = at_.y;
        if (matter_.saw != nullptr) {
            top += numbersAbove();
        }
        const double left = at_.x + leftOfPlank(look_);
        plank_ = {left, top, matter_.plank.length.toMm() * look_.scale.along,
                  matter_.plank.width.toMm() * look_.scale.across};
        places_.plank = plank_;
        ground_.lay(plank_);
        if (matter_.cuts != nullptr) {
            laidOut();
        } else {
            ground_.figured(plank_);
        }
        for (const Defect& defect : matter_.plank.defects) {
            ground_.defect(defect);
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
    void laidOut() {
        ground_.waste();
        const Style edge{.line = Ink::Wood, .lineWidth = 0.2, .wood = ground_.dark(0.75)};
        for (const Offcut& offcut : matter_.cuts->offcuts) {
            const Box box = ground_.boxOf(offcut.x, offcut.y, offcut.length, offcut.width);
            ground_.figured(box);
            drawing_.marks.emplace_back(Rectangle{
                box, 0, {.line = Ink::Wood, .lineWidth = 0.3, .dashed = true, .wood = edge.wood}});
        }
        int number = 0;
        for (const PlankSection& section : matter_.cuts->sections) {
            int place = 0;
            for (const LaidStrip& strip : section.strips) {
                const WantedStrips& wanted =
                    matter_.demand->strips[static_cast<std::size_t>(strip.wanted)];
                const Box box = ground_.boxOf(strip.x, strip.y, wanted.length,
                                              acrossPlank(wanted, strip.onEdge));
                ground_.figured(box);
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

    /// The first of the texts that has room right of what is taken; where none has, the last one
    /// turned by a quarter.
    void label(const Box& box, const std::vector<std::string>& texts, double taken, bool bold) {
        const double ems = look_.type;
        const double indent = std::max(bold ? 0.9 : 0.8, taken + 0.8);
        const Style ink{.line = Ink::WoodLine, .wood = ground_.wood()};
        const double room = box.width - indent - 0.8;
        if (box.height >= ems * 1.05) {
            for (const std::string& text : texts) {
                const double width = textWidth(text, ems, bold);
                if (width <= room) {
                    ground_.backed(
                        {box.x + indent, box.y + box.height / 2 - ems * 0.6, width, ems * 1.2});
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
        const double left = taken > 0 ? taken + 0.2 : 0;
        if (box.width - left >= ems * 1.1 && box.height >= width + 0.8) {
            drawing_.marks.emplace_back(Text{
                .at = {box.x + left + (box.width - left) / 2 + ems * 0.365, box.y + box.height / 2},
                .text = last,
                .size = ems,
                .align = Align::Centre,
                .bold = bold,
                .degrees = -90,
                .maxWidth = width,
                .style = ink});
        }
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
        const int blade = ground_.dark(0.9);
        const double ems = look_.type;
        double lastPlate = -1;
        int lastSection = -1;
        double indent = 0;
        for (const SawCut& cut : *matter_.saw) {
            if (cut.plank != matter_.number) {
                continue;
            }
            Box box = ground_.boxOf(cut.x, cut.y, cut.length, cut.width);
            double& thin = cut.kind == SawCutKind::Rip ? box.height : box.width;
            if (thin < leastBlade) {
                (cut.kind == SawCutKind::Rip ? box.y : box.x) -= (leastBlade - thin) / 2;
                thin = leastBlade;
            }
            drawing_.marks.emplace_back(Rectangle{box, 0, {.fill = Ink::Wood, .wood = blade}});
            const std::string number = std::to_string(cut.number);
            const double wide = plateWidth(number);
            if (cut.kind == SawCutKind::Rip) {
                const double middle = box.y + box.height / 2;
                // Plates that would lie on each other step aside by turns.
                const bool crowded = lastSection == cut.section && lastPlate >= 0 &&
                                     std::abs(middle - lastPlate) < ems * 1.3;
                indent = crowded && indent == 0 ? wide + 0.5 : 0;
                Point place{box.x + 0.5 + indent + wide / 2, middle};
                while (place.x + wide * 1.5 < box.right() && onPlate(place, wide)) {
                    place.x += wide + 0.5;
                }
                plates_.push_back({place, number});
                lastPlate = middle;
                lastSection = cut.section;
            } else if (cut.kind == SawCutKind::ToLength) {
                Point middle{box.x - wide / 2 - 0.5, box.y + box.height / 2};
                while (middle.x > plank_.x + wide * 1.5 && onPlate(middle, wide)) {
                    middle.x -= wide + 0.5;
                }
                plates_.push_back({middle, number});
            }
        }
        const double right = plank_.right();
        addEdgeLabels(drawing_, crosscutNumbers(), plank_.y - 0.4, true, plank_.x, right, mostRows);
        for (const auto& [middle, number] : plates_) {
            plate(middle, number);
        }
    }

    double plateWidth(const std::string& number) const {
        const double ems = look_.type;
        return std::max(ems * 1.16, textWidth(number, ems, true) + ems * 0.42);
    }

    /// Whether a plate of that width would lie on one that is there.
    bool onPlate(Point middle, double wide) const {
        return std::any_of(plates_.begin(), plates_.end(), [&](const auto& plate) {
            return std::abs(plate.first.x - middle.x) < (plateWidth(plate.second) + wide) / 2 &&
                   std::abs(plate.first.y - middle.y) < look_.type * 1.16;
        });
    }

    /// Room that numbers of cuts take at the left and at the right end of a box.
    struct Taken {
        double left = 0, right = 0;
    };
    Taken takenByPlates(const Box& box) const {
        const double ems = look_.type;
        Taken taken;
        for (const auto& [middle, text] : plates_) {
            const double wide = plateWidth(text);
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
            Box room = ground_.besideDefects(
                ground_.boxOf(offcut.x, offcut.y, offcut.length, offcut.width));
            const Taken taken = takenByPlates(room);
            room.width -= taken.right;
            label(room,
                  {say("keep {1}", size(offcut.width, offcut.length)), sayIn("offcut", "keep")},
                  taken.left, false);
        }
    }

    /// Name and size of a strip, a pin where it is pinned, and a frame where it is chosen.
    void marked(const PlankPlaces::Strip& strip) {
        const auto section = static_cast<std::size_t>(strip.place.first);
        const auto number = static_cast<std::size_t>(strip.place.second);
        const LaidStrip& laid = matter_.cuts->sections[section].strips[number];
        const WantedStrips& wanted = matter_.demand->strips[static_cast<std::size_t>(laid.wanted)];
        const std::string name =
            shownLabel(matter_.names != nullptr ? (*matter_.names)[section][number] : wanted.label);
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
              taken.left, true);
        if (strip.place == look_.chosen) {
            drawing_.marks.emplace_back(
                Rectangle{strip.box, 0, {.line = Ink::Accent, .lineWidth = 0.8}});
        }
    }

    /// A pin whose plate ends at `right`; returns the room that it takes.
    double pin(Point right) {
        const double r = look_.type * 0.36;
        const double x = right.x - r - 0.8;
        const Style ink{.fill = Ink::WoodLine, .wood = ground_.wood()};
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
                const Box box = ground_.boxOf(section.x, Length(), section.length, Length());
                lengths.push_back(
                    {box.x + box.width / 2, formatBare(section.length, matter_.notation), tone});
            }
            addLabels(lengths);
        } else if (look_.positions) {
            std::vector<EdgeLabel> begins;
            for (const Defect& defect : matter_.plank.defects) {
                begins.push_back({ground_.boxOf(defect.x, Length(), Length(), Length()).x,
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
    PlankGround ground_;
    Point at_;
    Box plank_;
    PlankPlaces places_;
    std::vector<std::pair<Point, std::string>> plates_;
};

}  // namespace

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
