#include "core/sheets/filmpicture.h"

#include "core/drawing/dimension.h"
#include "core/drawing/geometry.h"
#include "core/sheets/filmbodies.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

namespace kerfwright {
namespace {

constexpr double em = 3.175;  // 9 pt
constexpr double greatestScale = 1.2;
constexpr double level = 7;         // mm from one line of dimensions to the next
constexpr double leastThumb = 0.4;  // of a small picture's height or width that is filled
constexpr double airBetween = 0.9;  // mm between words

Frame frameOf(const Scene& scene) {
    Frame frame;
    for (const SceneBlock& block : scene.blocks) {
        for (int corner = 0; corner < 8; ++corner) {
            Spot local{};
            for (const Axis axis : {X, Y, Z}) {
                local[axis] = (corner >> axis & 1) != 0 ? block.solid.size[axis].toMm() : 0;
            }
            frame.add(seen(placed(block, local)));
        }
    }
    for (const ScenePlate& plate : scene.plates) {
        for (const Point& point : plate.outline) {
            frame.add(seen({point.x, point.y, plate.low}));
            frame.add(seen({point.x, point.y, plate.high}));
        }
    }
    if (!(frame.left < frame.right)) {
        frame = {0, 0, 1, 1};
    }
    return frame;
}

Frame mixed(const Frame& a, const Frame& b, double share) {
    const auto part = [share](double x, double y) { return x + (y - x) * share; };
    return {part(a.left, b.left), part(a.top, b.top), part(a.right, b.right),
            part(a.bottom, b.bottom)};
}

class Pen {
public:
    Pen(const Film& film, const FilmLook& look)
        : film_(film)
        , look_(look) {
        drawing().extent = {0, 0, look.width, look.height};
        drawing().woods = FilmBodies::woods(film.project.woods);
    }

    FilmPicture operator()(const Scene& scene, const Frame& frame, bool resting) {
        const bool told = look_.dimensions;
        const double left =
            told ? std::max(6 + level * (1 + levels(scene, SceneSize::Way::Down)), before(scene))
                 : 0.6;
        const double below = told ? 4 + level * (1 + levels(scene, SceneSize::Way::Across)) : 0.6;
        const double above = told ? 7 : 0.6;
        const double right = told ? besides(scene) : 0.6;
        const double wide = std::max(1.0, look_.width - left - right);
        const double high = std::max(1.0, look_.height - above - below);
        scale_ = std::min({wide / frame.width(), high / frame.height(),
                           told ? greatestScale : std::numeric_limits<double>::infinity()});
        Point scale{scale_, scale_};
        if (!told) {
            // A long plank would be a splinter of a few pixels: a sign for a plank says more.
            const double least = leastThumb * std::min(wide, high);
            scale.x = std::max(scale.x, least / frame.width());
            scale.y = std::max(scale.y, least / frame.height());
        }
        // In the middle of the picture, as far as what stands beside it leaves room.
        const double shown = frame.width() * scale.x;
        const double x = std::clamp((look_.width - shown) / 2, left, left + wide - shown);
        origin_ = {x - frame.left * scale.x,
                   above + (high - frame.height() * scale.y) / 2 - frame.top * scale.y};
        FilmBodies(drawing(), static_cast<int>(film_.project.woods.size()), look_, scale, origin_)
            .draw(scene);
        if (told && resting) {
            labels(scene);
            sizes(scene);
        }
        return std::move(picture_);
    }

private:
    Drawing& drawing() { return picture_.drawing; }
    Point put(const Point& at) const {
        return {origin_.x + at.x * scale_, origin_.y + at.y * scale_};
    }
    std::string text(Length length) const { return format(length, film_.project.notation); }

    static int levels(const Scene& scene, SceneSize::Way way) {
        int most = 0;
        for (const SceneSize& size : scene.sizes) {
            most = size.way == way ? std::max(most, size.level) : most;
        }
        return most;
    }

    /// Room left of the bodies for numbers that lie there.
    double before(const Scene& scene) const {
        double widest = 4;
        for (const SceneSize& size : scene.sizes) {
            if (size.way == SceneSize::Way::Down) {
                widest = std::max(widest, textWidth(text(size.value), em, true) + 6);
            }
        }
        return widest;
    }

    /// Room right of the bodies for labels and heights.
    double besides(const Scene& scene) const {
        double widest = 4;
        for (const SceneLabel& label : scene.labels) {
            if (label.align == Align::Left) {
                widest = std::max(widest, textWidth(label.words, em, false) + 7);
            }
        }
        for (const SceneSize& size : scene.sizes) {
            if (size.way == SceneSize::Way::Up) {
                widest = std::max(widest, textWidth(text(size.value), em, true) + 9);
            }
        }
        return std::min(widest, look_.width * 0.4);
    }

    void labels(const Scene& scene) {
        const Style style{.line = Ink::Quiet};
        double rowEnd = -1e9;
        double columnEnd = -1e9;
        for (const SceneLabel& label : scene.labels) {
            const Point at = put(Point{label.x, label.y});
            const double wide = textWidth(label.words, em, false);
            if (label.align == Align::Centre) {
                if (at.x - wide / 2 > rowEnd + 1) {
                    drawing().marks.emplace_back(Text{.at = {at.x, at.y - 1.6},
                                                      .text = label.words,
                                                      .size = em,
                                                      .align = Align::Centre,
                                                      .style = style});
                    rowEnd = at.x + wide / 2;
                }
                continue;
            }
            if (at.y > columnEnd + em * 1.2) {
                drawing().marks.emplace_back(Text{.at = {at.x + 3, at.y + em * 0.36},
                                                  .text = label.words,
                                                  .size = em,
                                                  .maxWidth = look_.width - at.x - 3,
                                                  .style = style});
                beside_.push_back(drawing().marks.size() - 1);
                columnEnd = at.y;
            }
        }
    }

    void spot(const SceneSize& size, const Box& box) {
        if (size.number >= 0) {
            picture_.spots.push_back({box, size.number, size.value});
        }
    }

    /// The dimension's own text is the last mark that was drawn.
    Box lastBox() { return bounds(drawing().marks.back()); }

    DimensionLook lookOf(const SceneSize& size) const {
        // What has a working is in the colour of what can be pressed.
        return {.size = em, .bold = true, .number = size.number >= 0 ? Ink::Accent : Ink::Text};
    }

    void sizes(const Scene& scene) {
        std::vector<double> taken(8, -1e9);  // right ends of what stands below, by level
        double lying = -1e9;                 // the last baseline of a number that lies at the left
        for (const SceneSize& size : scene.sizes) {
            if (size.way == SceneSize::Way::Across) {
                acrossSize(scene, size, taken);
            } else if (size.way == SceneSize::Way::Down) {
                downSize(size, lying);
            } else {
                upSize(size);
            }
        }
    }

    void acrossSize(const Scene& scene, const SceneSize& size, std::vector<double>& taken) {
        const Point from = put(Point{size.from, size.edge});
        const Point to = put(Point{size.to, size.edge});
        const bool narrow = textWidth(text(size.value), em, true) + 1 > std::abs(to.x - from.x);
        // Of many narrow ones side by side each has its bare number below it, where there is room.
        const auto many = std::count_if(scene.sizes.begin(), scene.sizes.end(), [](const auto& s) {
            return s.way == SceneSize::Way::Across;
        });
        double& end = taken[static_cast<std::size_t>(std::clamp(size.level, 0, 7))];
        if (narrow && many > 1) {
            const std::string number = formatBare(size.value, film_.project.notation);
            const double wide = textWidth(number, em, true);
            const double middle = (from.x + to.x) / 2;
            if (middle - wide / 2 <= end + 0.8) {
                return;
            }
            end = middle + wide / 2;
            drawing().marks.emplace_back(Text{.at = {middle, from.y + 1.4 + em},
                                              .text = number,
                                              .size = em,
                                              .align = Align::Centre,
                                              .bold = true,
                                              .style = {.line = lookOf(size).number}});
            spot(size, lastBox());
            return;
        }
        if (from.x < end - 1e-6) {
            return;
        }
        end = narrow ? to.x + 3 + textWidth(text(size.value), em, true) : to.x;
        addDimensionAcross(drawing(), from.x, to.x, from.y + 6.5 + level * size.level, from.y + 1,
                           text(size.value), lookOf(size));
        spot(size, lastBox());
    }

    void downSize(const SceneSize& size, double& lying) {
        const Point from = put(Point{size.edge, size.from});
        const Point to = put(Point{size.edge, size.to});
        const double x = from.x - 5 - level * size.level;
        if (textWidth(text(size.value), em, true) + 1 <= to.y - from.y) {
            addDimensionDown(drawing(), from.y, to.y, x, from.x, text(size.value), lookOf(size));
            spot(size, lastBox());
            return;
        }
        // A short one has its number lying beside it.
        const double baseline = (from.y + to.y) / 2 + em * 0.36;
        if (baseline < lying + em * 1.15) {
            return;
        }
        lying = baseline;
        const Style thin{.line = Ink::Quiet, .lineWidth = 0.18};
        for (const double y : {from.y, to.y}) {
            drawing().marks.emplace_back(Line{{x + 0.8, y}, {from.x - 0.8, y}, thin});
        }
        drawing().marks.emplace_back(Line{{x + 2, from.y}, {x + 2, to.y}, thin});
        drawing().marks.emplace_back(Text{.at = {x, baseline},
                                          .text = text(size.value),
                                          .size = em,
                                          .align = Align::Right,
                                          .bold = true,
                                          .style = {.line = lookOf(size).number}});
        spot(size, lastBox());
    }

    /// Between labels and a dimension that stands among them, its line and its number: a label goes
    /// up as far as the one above lets it, and for the rest beside the line and over the number.
    void makeWay(const Box& line, Text& number) {
        double above = -1e9;
        for (const std::size_t mark : beside_) {
            auto& label = std::get<Text>(drawing().marks[mark]);
            const Box words = bounds(label);
            const Box box = bounds(number);
            const double top = std::min(line.y, box.y);
            const double bottom = std::max(line.bottom(), box.bottom());
            if (words.bottom() + airBetween > top && words.y < bottom + airBetween) {
                const double over = words.bottom() + airBetween - top;
                const double up = std::clamp(words.y - above - em * 0.3, 0.0, over);
                label.at.y -= up;
                if (up < over) {
                    label.at.x = std::max(label.at.x, line.right() + airBetween);
                    label.maxWidth = look_.width - label.at.x;
                    number.at.y += std::max(0.0, words.bottom() - up + airBetween - box.y);
                }
            }
            above = bounds(label).bottom();
        }
    }

    /// A short line beside the near edge, its number lying.
    void upSize(const SceneSize& size) {
        const Point upper = put(Point{size.edge, size.from});
        const Point lower = put(Point{size.edge, size.to});
        const double x = upper.x + 3;
        const Style thin{.line = Ink::Quiet, .lineWidth = 0.18};
        for (const double y : {upper.y, lower.y}) {
            drawing().marks.emplace_back(Line{{upper.x + 0.8, y}, {x + 1.2, y}, thin});
        }
        drawing().marks.emplace_back(Line{{x, upper.y}, {x, lower.y}, thin});
        Text number{.at = {x + 2, (upper.y + lower.y) / 2 + em * 0.36},
                    .text = text(size.value),
                    .size = em,
                    .bold = true,
                    .style = {.line = lookOf(size).number}};
        makeWay({upper.x + 0.8, upper.y, x + 1.2 - upper.x - 0.8, lower.y - upper.y}, number);
        drawing().marks.emplace_back(std::move(number));
        spot(size, lastBox());
    }

    const Film& film_;
    const FilmLook& look_;
    double scale_ = 1;
    Point origin_;
    std::vector<std::size_t> beside_;  ///< marks: labels right of the bodies, from the top
    FilmPicture picture_;
};

}  // namespace

FilmPicture filmPicture(const Film& film, int stage, const FilmLook& look, double progress) {
    const double p = std::clamp(progress, 0.0, 1.0);
    const Scene rest = sceneOf(film, stage, 1);
    if (p >= 1) {
        return Pen(film, look)(rest, frameOf(rest), true);
    }
    // Labels and dimensions of the rest keep their room, so that nothing jumps at the end.
    Scene scene = sceneOf(film, stage, p);
    Frame frame = mixed(frameOf(sceneOf(film, stage, 0)), frameOf(rest), eased(p));
    if (film.stages[static_cast<std::size_t>(stage)].kind == StageKind::Laid) {
        // What swings out on the way stays in sight; the view draws back once and comes near again.
        Frame all = frame;
        for (const double moment : {0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8}) {
            const Frame then = frameOf(sceneOf(film, stage, moment));
            all.add({then.left, then.top});
            all.add({then.right, then.bottom});
        }
        frame = mixed(frame, all, std::min(1.0, 1.5 * std::sin(std::numbers::pi * p)));
    }
    scene.labels = rest.labels;
    scene.sizes = rest.sizes;
    return Pen(film, look)(scene, frame, false);
}

}  // namespace kerfwright
