#include "core/sheets/plankview.h"

#include "core/drawing/dimension.h"
#include "core/drawing/geometry.h"
#include "core/glueup/steps.h"
#include "core/sheets/plankbadges.h"
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
            keepClear_.push_back(ground_.boxOf(defect));
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
        drawBadges(drawing_, badges_, look_.type);
        for (const Badge& badge : badges_) {
            places_.badges.push_back(badge.box);
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

    /// The parts of a box, from the left, that lie free between `top` and `bottom`.
    std::vector<Box> freeParts(const Box& box, double top, double bottom) const {
        std::vector<std::pair<double, double>> taken;
        const Box band{box.x, top, box.width, bottom - top};
        for (const Box& other : keepClear_) {
            if (overlap(band, other)) {
                taken.emplace_back(other.x, other.right());
            }
        }
        taken.emplace_back(box.right(), box.right());
        std::sort(taken.begin(), taken.end());
        std::vector<Box> parts;
        double from = box.x;
        for (const auto& [left, right] : taken) {
            if (left > from) {
                parts.push_back({from, top, left - from, bottom - top});
            }
            from = std::max(from, right);
        }
        return parts;
    }

    /// The first of the texts that finds room in the box; where none does, the last one turned by a
    /// quarter.
    void label(const Box& box, const std::vector<std::string>& texts, bool bold) {
        const double ems = look_.type;
        const double middle = box.y + box.height / 2;
        const Style ink{.line = Ink::WoodLine, .wood = ground_.wood()};
        if (box.height >= ems * 1.05) {
            const std::vector<Box> parts = freeParts(box, middle - ems * 0.62, middle + ems * 0.62);
            for (const std::string& text : texts) {
                const double width = textWidth(text, ems, bold);
                // The last one rather without air than not at all.
                const double indent = &text == &texts.back() ? 0.25 : 0.8;
                for (const Box& part : parts) {
                    if (width > part.width - 2 * indent) {
                        continue;
                    }
                    const double x = part.x + std::min(0.8, (part.width - width) / 2);
                    ground_.backed({x, part.y, width, part.height});
                    drawing_.marks.emplace_back(Text{.at = {x, middle + ems * 0.365},
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
        if (box.height < width + 0.8) {
            return;
        }
        for (const Box& part : freeParts(box, middle - width / 2, middle + width / 2)) {
            if (part.width >= ems * 1.2) {
                drawing_.marks.emplace_back(
                    Text{.at = {part.x + std::min(part.width, ems * 2) / 2 + ems * 0.365, middle},
                         .text = last,
                         .size = ems,
                         .align = Align::Centre,
                         .bold = bold,
                         .degrees = -90,
                         .maxWidth = width,
                         .style = ink});
                return;
            }
        }
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
        std::vector<CutToNumber> cuts;
        for (const SawCut& cut : *matter_.saw) {
            if (cut.plank != matter_.number) {
                continue;
            }
            Box box = ground_.boxOf(cut.x, cut.y, cut.length, cut.width);
            const bool rip = cut.kind == SawCutKind::Rip;
            double& thin = rip ? box.height : box.width;
            if (thin < leastBlade) {
                (rip ? box.y : box.x) -= (leastBlade - thin) / 2;
                thin = leastBlade;
            }
            drawing_.marks.emplace_back(Rectangle{box, 0, {.fill = Ink::Wood, .wood = blade}});
            if (cut.kind != SawCutKind::Crosscut) {
                cuts.push_back({std::to_string(cut.number), box, rip});
            }
        }
        addEdgeLabels(drawing_, crosscutNumbers(), plank_.y - 0.4, true, plank_.x, plank_.right(),
                      mostRows);
        badges_ = placeBadges(cuts, plank_, keepClear_, look_.type);
        for (const Badge& badge : badges_) {
            keepClear_.push_back(badge.box);
        }
    }

    void kept() {
        for (const Offcut& offcut : matter_.cuts->offcuts) {
            label(ground_.boxOf(offcut.x, offcut.y, offcut.length, offcut.width),
                  {say("keep {1}", size(offcut.width, offcut.length)), sayIn("offcut", "keep")},
                  false);
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
        if (!wanted.plank.empty()) {
            const double middle = strip.box.y + strip.box.height / 2;
            const double half = look_.type * 0.6;
            const std::vector<Box> parts = freeParts(strip.box, middle - half, middle + half);
            const double right = parts.empty() ? strip.box.right() : parts.back().right();
            const double wide = pin({right, middle});
            keepClear_.push_back({right - wide, middle - half, wide, 2 * half});
        }
        label(strip.box,
              {name + "  " + size(acrossPlank(wanted, laid.onEdge), wanted.length), name,
               shortName(name)},
              true);
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
    std::vector<Box> keepClear_;  ///< clear of words: defects, numbers, pins
    std::vector<Badge> badges_;
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
