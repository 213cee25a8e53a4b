#include "core/sheets/plankground.h"

#include "core/drawing/geometry.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace kerfwright {
namespace {

constexpr double leastDefect = 1.3;   // mm
constexpr double wastePitch = 1.6;    // mm between hatch lines
constexpr Colour ash{206, 203, 196};  // what waste fades to
constexpr Colour soot{24, 18, 14};

/// Of woods that the project does not have, as the catalogue has it, or grey.
Colour colourOf(const PlankMatter& matter) {
    const Wood* wood = findWood(matter.woods, matter.plank.wood);
    if (wood == nullptr) {
        wood = findWood(woodCatalogue(), matter.plank.wood);
    }
    return wood != nullptr ? wood->colour : Colour{172, 166, 156};
}

}  // namespace

PlankGround::PlankGround(Drawing& drawing, const PlankMatter& matter, const PlankScale& scale)
    : drawing_(drawing)
    , matter_(matter)
    , scale_(scale)
    , base_(colourOf(matter))
    , wood_(woodIndex(matter.woods, matter.plank.wood)) {
    if (wood_ < 0) {
        wood_ = shade(base_, 1);
    }
    for (const char c : matter.plank.label + matter.plank.wood) {
        seed_ = (seed_ ^ static_cast<unsigned char>(c)) * 16'777'619U;
    }
}

int PlankGround::dark(double share) {
    return shade(soot, share);
}

Box PlankGround::boxOf(Length x, Length y, Length length, Length width) const {
    const double high = width.toMm() * scale_.across;
    return {plank_.x + x.toMm() * scale_.along, plank_.bottom() - y.toMm() * scale_.across - high,
            length.toMm() * scale_.along, high};
}

int PlankGround::shade(Colour towards, double share) {
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

void PlankGround::figured(const Box& box) {
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

void PlankGround::waste() {
    const int faded = shade(ash, 0.62);
    drawing_.marks.emplace_back(Rectangle{plank_, 0, {.fill = Ink::Wood, .wood = faded}});
    const Style hatch{.line = Ink::Wood, .lineWidth = 0.16, .wood = shade({120, 114, 104}, 0.7)};
    for (const Segment& segment : hatchLines(corners(plank_), 45, wastePitch)) {
        drawing_.marks.emplace_back(Line{segment.first, segment.second, hatch});
    }
}

void PlankGround::backed(const Box& box) {
    drawing_.marks.emplace_back(Rectangle{box, 0, {.fill = Ink::Wood, .wood = wood_}});
}

Box PlankGround::boxOf(const Defect& defect) const {
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
    return box;
}

void PlankGround::defect(const Defect& defect) {
    const Box box = boxOf(defect);
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

}  // namespace kerfwright
