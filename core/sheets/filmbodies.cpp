#include "core/sheets/filmbodies.h"

#include "core/drawing/geometry.h"
#include "core/sheets/hatch.h"

#include <cmath>
#include <cstdint>

namespace kerfwright {
namespace {

constexpr int tones = 5;            // of each wood: lit from above, to a face that looks sideways
constexpr double darkest = 0.17;    // of black in the last of them
constexpr double haloWidth = 0.76;  // mm; half of it is seen round small pictures

double mm(Length length) {
    return length.toMm();
}

Colour darker(const Colour& colour, double share) {
    const auto part = [share](std::uint8_t channel) {
        return static_cast<std::uint8_t>(std::lround(channel * (1 - share)));
    };
    return {part(colour.red), part(colour.green), part(colour.blue)};
}

/// As wood looks where light strikes it flatly: black alone would turn a pale wood grey.
Colour shaded(const Colour& colour, double share) {
    const auto part = [share](std::uint8_t channel, double weight) {
        return static_cast<std::uint8_t>(std::lround(channel * (1 - weight * share)));
    };
    return {part(colour.red, 0.72), part(colour.green, 1.06), part(colour.blue, 1.5)};
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

bool isUpright(const std::vector<Point>& points) {
    for (std::size_t i = 0; i < points.size(); ++i) {
        const Point& a = points[i];
        const Point& b = points[(i + 1) % points.size()];
        if (std::abs(a.x - b.x) > 1e-6 && std::abs(a.y - b.y) > 1e-6) {
            return false;
        }
    }
    return points.size() == 4;
}

Box boxOf(const std::vector<Point>& points) {
    Frame frame;
    for (const Point& point : points) {
        frame.add(point);
    }
    return {frame.left, frame.top, frame.width(), frame.height()};
}

}  // namespace

std::vector<Colour> FilmBodies::woods(const std::vector<Wood>& woods) {
    std::vector<Colour> all;
    for (int tone = 0; tone < tones; ++tone) {
        for (const Wood& wood : woods) {
            all.push_back(shaded(wood.colour, darkest * tone / (tones - 1)));
        }
    }
    for (const Wood& wood : woods) {
        all.push_back(figured(wood.colour));
    }
    for (const Wood& wood : woods) {
        all.push_back(jointed(wood.colour));
    }
    return all;
}

Point FilmBodies::put(const Spot& at) const {
    const Point flat = seen(at);
    return {origin_.x + flat.x * scale_.x, origin_.y + flat.y * scale_.y};
}

void FilmBodies::draw(const Scene& scene) {
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
    if (!look_.dimensions) {
        for (const Body& body : all) {
            surround(body.block, body.plate);
        }
    }
    for (const Body& body : all) {
        if (body.block != nullptr) {
            draw(*body.block);
        } else {
            draw(*body.plate);
        }
    }
}

int FilmBodies::toned(int wood, double up) const {
    const double side = 1 - std::clamp(up, 0.0, 1.0);
    return wood + woods_ * static_cast<int>(std::lround(side * (tones - 1)));
}

/// Upright rectangles are painted without seams between them.
void FilmBodies::fill(const std::vector<Point>& points, int wood) {
    const Style style{.fill = Ink::Wood, .wood = wood};
    if (isUpright(points)) {
        drawing_.marks.emplace_back(Rectangle{boxOf(points), 0, style});
    } else {
        drawing_.marks.emplace_back(Shape{
            points, true, {.fill = Ink::Wood, .line = Ink::Wood, .lineWidth = 0.1, .wood = wood}});
    }
}
void FilmBodies::outline(const std::vector<Point>& points, const Style& style) {
    if (isUpright(points)) {
        drawing_.marks.emplace_back(Rectangle{boxOf(points), 0, style});
    } else {
        drawing_.marks.emplace_back(Shape{points, true, style});
    }
}

/// Dark woods on a dark ground, and pale ones on a light one, are lost where they are small.
void FilmBodies::surround(const SceneBlock* block, const ScenePlate* plate) {
    const Style style{.line = Ink::Quiet, .lineWidth = haloWidth};
    if (block != nullptr) {
        for (const SeenFace& shown : facesOf(*block)) {
            outline(cornersOf(*block, shown), style);
        }
    } else {
        for (const double z : {plate->low, plate->high}) {
            std::vector<Point> points;
            for (const Point& corner : plate->outline) {
                points.push_back(put(Spot{corner.x, corner.y, z}));
            }
            outline(points, style);
        }
    }
}

Style FilmBodies::joint(int wood, double width) const {
    return {.line = Ink::Wood, .lineWidth = width, .wood = woods_ * (tones + 1) + wood};
}
double FilmBodies::jointWidth(double smallest) const {
    return std::clamp(smallest * 0.05, 0.06, look_.dimensions ? 0.28 : 0.2);
}

std::vector<FilmBodies::SeenFace> FilmBodies::facesOf(const SceneBlock& block) {
    std::vector<SeenFace> faces;
    for (const Axis axis : {X, Y, Z}) {
        for (const bool high : {false, true}) {
            Spot out{};
            out[axis] = high ? 1 : -1;
            out = turnedLike(block, out);
            // Seen from above and the front: the projection keeps the direction (0, tilt, 1).
            if (out[1] * filmTilt + out[2] > 1e-6) {
                faces.push_back({axis, high, out[2]});
            }
        }
    }
    return faces;
}

std::vector<Point> FilmBodies::cornersOf(const SceneBlock& block, const SeenFace& shown) const {
    const Axis a = shown.axis == X ? Y : X;
    const Axis b = shown.axis == Z ? Y : Z;
    Spot size{};
    for (const Axis axis : {X, Y, Z}) {
        size[axis] = mm(block.solid.size[axis]);
    }
    std::vector<Point> corners;
    for (const auto& [alongA, alongB] : {std::pair(0, 0), {1, 0}, {1, 1}, {0, 1}}) {
        Spot local{};
        local[shown.axis] = shown.high ? size[shown.axis] : 0;
        local[a] = alongA * size[a];
        local[b] = alongB * size[b];
        corners.push_back(put(placed(block, local)));
    }
    return corners;
}

void FilmBodies::draw(const SceneBlock& block) {
    for (const SeenFace& shown : facesOf(block)) {
        face(block, shown);
    }
}

void FilmBodies::face(const SceneBlock& block, const SeenFace& shown) {
    const auto& [axis, high, up] = shown;
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
        local[shown.axis] = depth;
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
        const double scale = std::min(scale_.x, scale_.y);
        smallest = std::min({smallest, (x1 - x0) * scale, (y1 - y0) * scale});
        cells.push_back({{at(x0, y0), at(x1, y0), at(x1, y1), at(x0, y1)}, &box});
    }
    const bool waste = block.fate == SceneBlock::Fate::Waste;
    for (const Cell& cell : cells) {
        fill(cell.points, toned(cell.box->wood, up));
    }
    for (const Cell& cell : cells) {
        if (look_.hatch && up > 0.5 && isUpright(cell.points)) {
            addHatch(drawing_, cell.points, cell.box->wood, 1.9, 0.14);
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
        // Piece by piece, in what reads on the wood of each.
        for (const Cell& cell : cells) {
            strike(cell.points,
                   {.line = Ink::WoodLine,
                    .lineWidth = 0.2,
                    .dashed = !waste,
                    .wood = toned(cell.box->wood, up)},
                   waste ? 1.5 : 3);
        }
    }
}

/// What does not go on is struck through with fine lines.
void FilmBodies::strike(const std::vector<Point>& all, const Style& style, double pitch) {
    for (const Segment& line : hatchLines(all, -60, look_.dimensions ? pitch : 0.9)) {
        drawing_.marks.emplace_back(Line{line.first, line.second, style});
    }
}

/// Straight figure along the grain; it stays with the box wherever that lies.
void FilmBodies::figure(const std::vector<Point>& points, const Cuboid& box, Axis a, Axis b,
                        double up) {
    const bool alongA = box.grain == a;
    const Axis over = alongA ? b : a;
    const double wide = mm(box.high[over] - box.low[over]);
    const int lines = std::clamp(static_cast<int>(wide / 7), 1, 24);
    const double pitch = wide / lines * scale_.x * (up > 0.5 ? 1 : filmTilt);
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
        drawing_.marks.emplace_back(
            alongA ? Line{mix(points[0], points[3]), mix(points[1], points[2]), style}
                   : Line{mix(points[0], points[1]), mix(points[3], points[2]), style});
    }
}

/// Growth rings about a heart beyond the corner.
void FilmBodies::rings(const std::vector<Point>& points, const Cuboid& box, double up) {
    const double wide = std::hypot(points[1].x - points[0].x, points[1].y - points[0].y);
    const double high = std::hypot(points[3].x - points[0].x, points[3].y - points[0].y);
    // A face at the front is seen foreshortened, and told from the top by its rings.
    if (std::min(wide, high) < (up < 0.35 ? 2 : 3.5)) {
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
            bow.push_back(
                {points[0].x + (points[1].x - points[0].x) * u + (points[3].x - points[0].x) * w,
                 points[0].y + (points[1].y - points[0].y) * u + (points[3].y - points[0].y) * w});
        }
        drawing_.marks.emplace_back(Shape{std::move(bow), false, style});
    }
}

void FilmBodies::draw(const ScenePlate& plate) {
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
        addHatch(drawing_, top, plate.wood, 1.9, 0.14);
    } else if (look_.dimensions) {
        along(top, plate);
    }
    outline(top, joint(plate.wood, look_.dimensions ? 0.22 : 0.12));
}

/// Long grain on a plate, cut to its outline.
void FilmBodies::along(const std::vector<Point>& top, const ScenePlate& plate) {
    const Style style{.line = Ink::Wood, .lineWidth = 0.16, .wood = woods_ * tones + plate.wood};
    for (const Segment& line : hatchLines(top, plate.grain == X ? 0 : 90, 1.7)) {
        drawing_.marks.emplace_back(Line{line.first, line.second, style});
    }
}

}  // namespace kerfwright
