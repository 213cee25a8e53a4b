#include "core/sheets/filmpicture.h"

#include "core/drawing/dimension.h"
#include "core/drawing/geometry.h"
#include "core/sheets/hatch.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace kerfwright {
namespace {

constexpr int tones = 5;          // of each wood: lit from above, to a face that looks sideways
constexpr double darkest = 0.24;  // of black in the last of them
constexpr double em = 3.175;      // 9 pt
constexpr double greatestScale = 1.2;
constexpr double level = 7;  // mm from one line of dimensions to the next

struct Frame {
    double left = std::numeric_limits<double>::infinity();
    double top = std::numeric_limits<double>::infinity();
    double right = -std::numeric_limits<double>::infinity();
    double bottom = -std::numeric_limits<double>::infinity();

    void add(const Point& at) {
        left = std::min(left, at.x);
        right = std::max(right, at.x);
        top = std::min(top, at.y);
        bottom = std::max(bottom, at.y);
    }
    double width() const { return right - left; }
    double height() const { return bottom - top; }
};

Point seen(const Spot& at) {
    return {at[0], at[1] - filmTilt * at[2]};
}

double mm(Length length) {
    return length.toMm();
}

Frame frameOf(const Scene& scene) {
    Frame frame;
    for (const SceneBlock& block : scene.blocks) {
        for (int corner = 0; corner < 8; ++corner) {
            Spot local{};
            for (const Axis axis : {X, Y, Z}) {
                local[axis] = (corner >> axis & 1) != 0 ? mm(block.solid.size[axis]) : 0;
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

Colour darker(const Colour& colour, double share) {
    const auto part = [share](std::uint8_t channel) {
        return static_cast<std::uint8_t>(std::lround(channel * (1 - share)));
    };
    return {part(colour.red), part(colour.green), part(colour.blue)};
}

/// Figure that shows on a plain ground of that wood: darker on light woods, lighter on dark ones.
Colour figured(const Colour& colour) {
    if (colour.red + colour.green + colour.blue > 200) {
        return darker(colour, 0.13);
    }
    const auto part = [](std::uint8_t channel) {
        return static_cast<std::uint8_t>(channel + (255 - channel) * 0.14);
    };
    return {part(colour.red), part(colour.green), part(colour.blue)};
}

/// A glue line that shows between two pieces of that wood.
Colour jointed(const Colour& colour) {
    if (colour.red + colour.green + colour.blue > 330) {
        return darker(colour, 0.62);
    }
    const auto part = [](std::uint8_t channel) {
        return static_cast<std::uint8_t>(channel + (255 - channel) * 0.30);
    };
    return {part(colour.red), part(colour.green), part(colour.blue)};
}

/// The same for the same box wherever it lies: a number from 0 to 1.
double chance(std::uint64_t seed) {
    seed ^= seed >> 33;
    seed *= 0xff51afd7ed558ccdULL;
    seed ^= seed >> 33;
    seed *= 0xc4ceb9fe1a85ec53ULL;
    seed ^= seed >> 33;
    return static_cast<double>(seed >> 11) * 0x1p-53;
}

class Pen {
public:
    Pen(const Film& film, const FilmStage& stage, const FilmLook& look)
        : film_(film)
        , stage_(stage)
        , look_(look)
        , woods_(static_cast<int>(film.project.woods.size())) {
        drawing().extent = {0, 0, look.width, look.height};
        for (int tone = 0; tone < tones; ++tone) {
            for (const Wood& wood : film.project.woods) {
                drawing().woods.push_back(darker(wood.colour, darkest * tone / (tones - 1)));
            }
        }
        for (const Wood& wood : film.project.woods) {
            drawing().woods.push_back(figured(wood.colour));
        }
        for (const Wood& wood : film.project.woods) {
            drawing().woods.push_back(jointed(wood.colour));
        }
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
        // In the middle of the picture, as far as what stands beside it leaves room.
        const double shown = frame.width() * scale_;
        const double x = std::clamp((look_.width - shown) / 2, left, left + wide - shown);
        origin_ = {x - frame.left * scale_,
                   above + (high - frame.height() * scale_) / 2 - frame.top * scale_};
        bodies(scene);
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
    Point put(const Spot& at) const { return put(seen(at)); }
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
                widest = std::max(widest, textWidth(label.words, em, false) + 5);
            }
        }
        for (const SceneSize& size : scene.sizes) {
            if (size.way == SceneSize::Way::Up) {
                widest = std::max(widest, textWidth(text(size.value), em, true) + 9);
            }
        }
        return std::min(widest, look_.width * 0.4);
    }

    // ---- Bodies ----

    void bodies(const Scene& scene) {
        struct Body {
            double near;
            const SceneBlock* block;
            const ScenePlate* plate;
        };
        std::vector<Body> all;
        for (const SceneBlock& block : scene.blocks) {
            const double over = block.lifted ? 1e6 : 0;
            all.push_back({over + filmTilt * block.middle[1] + block.middle[2], &block, nullptr});
        }
        for (const ScenePlate& plate : scene.plates) {
            double y = 0;
            for (const Point& point : plate.outline) {
                y += point.y / static_cast<double>(plate.outline.size());
            }
            all.push_back({filmTilt * y + (plate.low + plate.high) / 2, nullptr, &plate});
        }
        std::stable_sort(all.begin(), all.end(),
                         [](const Body& a, const Body& b) { return a.near < b.near; });
        for (const Body& body : all) {
            if (body.block != nullptr) {
                draw(*body.block);
            } else {
                draw(*body.plate);
            }
        }
    }

    int toned(int wood, double up) const {
        const double side = 1 - std::clamp(up, 0.0, 1.0);
        return wood + woods_ * static_cast<int>(std::lround(side * (tones - 1)));
    }

    static bool isUpright(const std::vector<Point>& points) {
        for (std::size_t i = 0; i < points.size(); ++i) {
            const Point& a = points[i];
            const Point& b = points[(i + 1) % points.size()];
            if (std::abs(a.x - b.x) > 1e-6 && std::abs(a.y - b.y) > 1e-6) {
                return false;
            }
        }
        return points.size() == 4;
    }
    static Box boxOf(const std::vector<Point>& points) {
        Frame frame;
        for (const Point& point : points) {
            frame.add(point);
        }
        return {frame.left, frame.top, frame.width(), frame.height()};
    }

    /// Upright rectangles are painted without seams between them.
    void fill(const std::vector<Point>& points, int wood) {
        const Style style{.fill = Ink::Wood, .wood = wood};
        if (isUpright(points)) {
            drawing().marks.emplace_back(Rectangle{boxOf(points), 0, style});
        } else {
            drawing().marks.emplace_back(
                Shape{points,
                      true,
                      {.fill = Ink::Wood, .line = Ink::Wood, .lineWidth = 0.1, .wood = wood}});
        }
    }
    void outline(const std::vector<Point>& points, const Style& style) {
        if (isUpright(points)) {
            drawing().marks.emplace_back(Rectangle{boxOf(points), 0, style});
        } else {
            drawing().marks.emplace_back(Shape{points, true, style});
        }
    }

    Style joint(int wood, double width) const {
        return {.line = Ink::Wood, .lineWidth = width, .wood = woods_ * (tones + 1) + wood};
    }
    double jointWidth(double smallest) const {
        return std::clamp(smallest * 0.05, 0.06, look_.dimensions ? 0.28 : 0.2);
    }

    void draw(const SceneBlock& block) {
        for (const Axis axis : {X, Y, Z}) {
            for (const bool high : {false, true}) {
                Spot out{};
                out[axis] = high ? 1 : -1;
                out = turnedLike(block, out);
                // Seen from above and the front: the projection keeps the direction (0, tilt, 1).
                if (out[1] * filmTilt + out[2] > 1e-6) {
                    face(block, axis, high, out[2]);
                }
            }
        }
    }

    void face(const SceneBlock& block, Axis axis, bool high, double up) {
        const Solid& solid = block.solid;
        const Axis a = axis == X ? Y : X;
        const Axis b = axis == Z ? Y : Z;
        const double depth = high ? mm(solid.size[axis]) : 0;
        struct Cell {
            std::vector<Point> points;
            const Cuboid* box;
        };
        std::vector<Cell> cells;
        double smallest = std::numeric_limits<double>::infinity();
        const auto at = [&](double x, double y) {
            Spot local{};
            local[axis] = depth;
            local[a] = x;
            local[b] = y;
            return put(placed(block, local));
        };
        for (const Cuboid& box : solid.boxes) {
            if (high ? box.high[axis] != solid.size[axis] : box.low[axis] != Length()) {
                continue;
            }
            const double x0 = mm(box.low[a]);
            const double x1 = mm(box.high[a]);
            const double y0 = mm(box.low[b]);
            const double y1 = mm(box.high[b]);
            smallest = std::min({smallest, (x1 - x0) * scale_, (y1 - y0) * scale_});
            cells.push_back({{at(x0, y0), at(x1, y0), at(x1, y1), at(x0, y1)}, &box});
        }
        const bool waste = block.fate == SceneBlock::Fate::Waste;
        for (const Cell& cell : cells) {
            fill(cell.points, toned(cell.box->wood, up));
        }
        for (const Cell& cell : cells) {
            if (look_.hatch && up > 0.5 && isUpright(cell.points)) {
                addHatch(drawing(), cell.points, cell.box->wood, 1.9, 0.14);
            } else if (look_.dimensions && cell.box->grain != axis && !waste) {
                figure(cell.points, *cell.box, a, b, up);
            } else if (look_.dimensions && cell.box->grain == axis && !waste) {
                rings(cell.points, *cell.box, up);
            }
        }
        for (const Cell& cell : cells) {
            outline(cell.points, waste ? Style{.line = Ink::Waste, .lineWidth = 0.15}
                                       : joint(cell.box->wood, jointWidth(smallest)));
        }
        if (block.fate != SceneBlock::Fate::GoesOn && up > 0.5) {
            const std::vector<Point> all{at(0, 0), at(mm(solid.size[a]), 0),
                                         at(mm(solid.size[a]), mm(solid.size[b])),
                                         at(0, mm(solid.size[b]))};
            veil(all, waste);
        }
    }

    /// What does not go on is struck through with fine lines.
    void veil(const std::vector<Point>& all, bool waste) {
        const Style style{.line = waste ? Ink::Paper : Ink::Waste,
                          .lineWidth = waste ? 0.45 : 0.2,
                          .dashed = !waste};
        const double pitch = look_.dimensions ? (waste ? 1.3 : 3) : 0.9;
        for (const Segment& line : hatchLines(all, -60, pitch)) {
            drawing().marks.emplace_back(Line{line.first, line.second, style});
        }
    }

    /// Straight figure along the grain; it stays with the box wherever that lies.
    void figure(const std::vector<Point>& points, const Cuboid& box, Axis a, Axis b, double up) {
        const bool alongA = box.grain == a;
        const Axis over = alongA ? b : a;
        const double wide = mm(box.high[over] - box.low[over]);
        const int lines = std::clamp(static_cast<int>(wide / 7), 1, 24);
        const double pitch = wide / lines * scale_ * (up > 0.5 ? 1 : filmTilt);
        if (pitch < 0.9) {
            return;
        }
        const Style style{.line = Ink::Wood, .lineWidth = 0.16, .wood = woods_ * tones + box.wood};
        const auto seed = static_cast<std::uint64_t>(box.low[over].nm() / 1000 * 31 + box.wood);
        for (int i = 0; i < lines; ++i) {
            const double at =
                (i + 0.2 + 0.6 * chance(seed + static_cast<std::uint64_t>(i) * 7919)) / lines;
            const auto mix = [at](const Point& p, const Point& q) {
                return Point{p.x + (q.x - p.x) * at, p.y + (q.y - p.y) * at};
            };
            // Points run along a, then along b.
            drawing().marks.emplace_back(
                alongA ? Line{mix(points[0], points[3]), mix(points[1], points[2]), style}
                       : Line{mix(points[0], points[1]), mix(points[3], points[2]), style});
        }
    }

    /// Growth rings about a heart beyond the corner.
    void rings(const std::vector<Point>& points, const Cuboid& box, double up) {
        const double wide = std::hypot(points[1].x - points[0].x, points[1].y - points[0].y);
        const double high = std::hypot(points[3].x - points[0].x, points[3].y - points[0].y);
        if (std::min(wide, high) < 3.5 || up < 0.35) {
            return;
        }
        const auto seed = static_cast<std::uint64_t>(box.low[X].nm() / 1000 * 17 +
                                                     box.low[Z].nm() / 1000 * 5 + box.wood);
        const Style style{.line = Ink::Wood, .lineWidth = 0.18, .wood = woods_ * tones + box.wood};
        const double heart = 0.25 + 0.5 * chance(seed);
        constexpr int arcs = 4;
        constexpr int bends = 6;
        for (int i = 1; i <= arcs; ++i) {
            // Shallow bows across the piece, in its own frame from 0 to 1.
            const double base = (i - 0.3) / arcs;
            const double sag = 0.16 + 0.1 * chance(seed + 11);
            std::vector<Point> bow;
            for (int k = 0; k <= bends; ++k) {
                const double u = static_cast<double>(k) / bends;
                const double v = base - sag * (u - heart) * (u - heart) * 2.2;
                const double w = std::clamp(v, 0.0, 1.0);
                bow.push_back({points[0].x + (points[1].x - points[0].x) * u +
                                   (points[3].x - points[0].x) * w,
                               points[0].y + (points[1].y - points[0].y) * u +
                                   (points[3].y - points[0].y) * w});
            }
            drawing().marks.emplace_back(Shape{std::move(bow), false, style});
        }
    }

    void draw(const ScenePlate& plate) {
        const std::size_t count = plate.outline.size();
        std::vector<Point> top;
        for (std::size_t i = 0; i < count; ++i) {
            const Point& from = plate.outline[i];
            const Point& to = plate.outline[(i + 1) % count];
            top.push_back(put(Spot{from.x, from.y, plate.high}));
            const double length = std::hypot(to.x - from.x, to.y - from.y);
            // Clockwise on the page, where y runs down: the outside lies left of the way.
            const double outY = -(to.x - from.x) / std::max(length, 1e-9);
            if (outY > 1e-6 && plate.high - plate.low > 0.1) {
                const std::vector<Point> side{
                    put(Spot{from.x, from.y, plate.high}), put(Spot{to.x, to.y, plate.high}),
                    put(Spot{to.x, to.y, plate.low}), put(Spot{from.x, from.y, plate.low})};
                fill(side, toned(plate.wood, 0));
                outline(side, joint(plate.wood, 0.15));
            }
        }
        fill(top, plate.wood);
        if (look_.hatch) {
            addHatch(drawing(), top, plate.wood, 1.9, 0.14);
        } else if (look_.dimensions) {
            along(top, plate);
        }
        outline(top, joint(plate.wood, look_.dimensions ? 0.22 : 0.12));
    }

    /// Long grain on a plate, cut to its outline.
    void along(const std::vector<Point>& top, const ScenePlate& plate) {
        const Style style{
            .line = Ink::Wood, .lineWidth = 0.16, .wood = woods_ * tones + plate.wood};
        for (const Segment& line : hatchLines(top, plate.grain == X ? 0 : 90, 1.7)) {
            drawing().marks.emplace_back(Line{line.first, line.second, style});
        }
    }

    // ---- Words ----

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
        drawing().marks.emplace_back(Text{.at = {x + 2, (upper.y + lower.y) / 2 + em * 0.36},
                                          .text = text(size.value),
                                          .size = em,
                                          .bold = true,
                                          .style = {.line = lookOf(size).number}});
        spot(size, lastBox());
    }

    const Film& film_;
    const FilmStage& stage_;
    const FilmLook& look_;
    int woods_;
    double scale_ = 1;
    Point origin_;
    FilmPicture picture_;
};

}  // namespace

FilmPicture filmPicture(const Film& film, int stage, const FilmLook& look, double progress) {
    const double p = std::clamp(progress, 0.0, 1.0);
    const Scene rest = sceneOf(film, stage, 1);
    const FilmStage& shown = film.stages[static_cast<std::size_t>(stage)];
    if (p >= 1) {
        return Pen(film, shown, look)(rest, frameOf(rest), true);
    }
    // Labels and dimensions of the rest keep their room, so that nothing jumps at the end.
    Scene scene = sceneOf(film, stage, p);
    Frame frame = mixed(frameOf(sceneOf(film, stage, 0)), frameOf(rest), eased(p));
    const Frame now = frameOf(scene);  // what swings out on the way stays in sight
    frame.add({now.left, now.top});
    frame.add({now.right, now.bottom});
    scene.labels = rest.labels;
    scene.sizes = rest.sizes;
    return Pen(film, shown, look)(scene, frame, false);
}

}  // namespace kerfwright
