#include "ui/document/figureplaces.h"

#include "core/drawing/geometry.h"
#include "core/replay/trace.h"

#include <array>
#include <cmath>
#include <unordered_map>

namespace kerfwright {
namespace {

std::uint32_t seedAt(const Piece& piece) {
    return seedOf(static_cast<std::uint32_t>(piece.column), static_cast<std::uint32_t>(piece.row));
}

/// mm from the field's corner; one more than there are lines.
std::vector<double> edges(const std::vector<Length>& lines) {
    std::vector<double> at{0};
    for (const Length line : lines) {
        at.push_back(at.back() + line.toMm());
    }
    return at;
}

Rings ringsOf(const std::vector<Wood>& woods, int wood) {
    return woods[static_cast<std::size_t>(wood)].rings;
}

double rounded(double mm) {
    constexpr double step = 16;
    return step * std::ceil(mm / step);
}

/// A stick that is there only to be looked at.
FigurePlace ownStick(const Piece& piece, double width, double height, Build build, bool grainDown,
                     const std::vector<Wood>& woods) {
    FigurePlace place;
    place.piece = piece;
    const bool endGrain = build == Build::EndGrain;
    // In steps, so that figure stands still while a joint is dragged.
    const double across = rounded(grainDown || endGrain ? width : height);
    const double thick = endGrain ? rounded(height) : 40;
    place.cut = cutFor(seedAt(piece), ringsOf(woods, piece.wood), across, thick);
    FacePlane face{{0, 0, thick}, {1, 0, 0}, {0, 1, 0}};
    if (endGrain) {
        face.down = {0, 0, -1};
    } else if (!grainDown) {
        face.across = {0, 1, 0};
        face.down = {1, 0, 0};
        face.origin = {0, 0, 0};  // seen from its other face, or it would be a mirror image
    }
    place.face = place.cut.inTree(face);
    return place;
}

}  // namespace

FigurePlaces figurePlaces(const Job& job, const std::vector<Wood>& woods) {
    const Field field = dividedAlong(job.board.field, job.plan.extraJoints);
    const auto startsOf = [](const std::vector<Length>& lines) {
        std::vector<Length> starts{Length()};
        for (const Length line : lines) {
            starts.push_back(starts.back() + line);
        }
        return starts;
    };
    const std::vector<Length> xs = startsOf(field.columns);
    const std::vector<Length> ys = startsOf(field.rows);
    const auto at = [](const std::vector<Length>& starts, int line) {
        return starts[static_cast<std::size_t>(line)];
    };
    // Asked for in the middle, where the strip is sure.
    std::vector<FieldPoint> middles;
    middles.reserve(field.pieces.size());
    for (const Piece& piece : field.pieces) {
        const Length left = at(xs, piece.column);
        const Length top = at(ys, piece.row);
        middles.push_back({left + half(at(xs, piece.column + piece.across) - left),
                           top + half(at(ys, piece.row + piece.down) - top)});
    }
    const Trace solids = trace(job.steps, job.board, job.season);
    const std::vector<StripPlace> strips = stripsAt(job.steps, solids, middles);

    // A strip is known by the first piece that shows it: labels change whenever a panel is added.
    std::unordered_map<std::string, TimberCut> cuts;
    FigurePlaces places;
    places.reserve(field.pieces.size());
    for (std::size_t i = 0; i < field.pieces.size(); ++i) {
        const Piece& piece = field.pieces[i];
        const StripPlace& strip = strips[i];
        const Length halfWidth = middles[i].x - at(xs, piece.column);
        const Length halfHeight = middles[i].y - at(ys, piece.row);
        if (strip.strip.empty()) {
            places.push_back(ownStick(piece, 2 * halfWidth.toMm(), 2 * halfHeight.toMm(),
                                      job.board.build, job.plan.grainDown, woods));
            continue;
        }
        const auto [known, isNew] = cuts.try_emplace(strip.strip);
        if (isNew) {
            known->second = cutFor(seedAt(piece), ringsOf(woods, piece.wood), strip.size[X].toMm(),
                                   strip.size[Z].toMm());
        }
        FacePlane face;
        for (const Axis axis : {X, Y, Z}) {
            face.across[axis] = strip.across[axis];
            face.down[axis] = strip.down[axis];
            face.origin[axis] = strip.point[axis].toMm() - strip.across[axis] * halfWidth.toMm() -
                                strip.down[axis] * halfHeight.toMm();
        }
        if (strip.across[Y] == 0 && strip.down[Y] == 0) {
            // Rings hardly change from slice to slice: one texture serves for all that lie alike.
            face.origin[Y] = 0;
        }
        places.push_back({piece, known->second, known->second.inTree(face)});
    }
    return places;
}

FigurePlaces figurePlaces(const Board& board, const std::vector<Wood>& woods,
                          const FigurePlaces& before, bool grainDown) {
    std::map<std::pair<int, int>, const FigurePlace*> known;
    for (const FigurePlace& place : before) {
        known.emplace(std::pair(place.piece.column, place.piece.row), &place);
    }
    const std::vector<double> xs = edges(board.field.columns);
    const std::vector<double> ys = edges(board.field.rows);
    FigurePlaces places;
    places.reserve(board.field.pieces.size());
    for (const Piece& piece : board.field.pieces) {
        const auto found = known.find(std::pair(piece.column, piece.row));
        if (found != known.end()) {
            places.push_back({piece, found->second->cut, found->second->face});
        } else {
            const auto size = [](const std::vector<double>& at, int from, int count) {
                return at[static_cast<std::size_t>(from + count)] -
                       at[static_cast<std::size_t>(from)];
            };
            places.push_back(ownStick(piece, size(xs, piece.column, piece.across),
                                      size(ys, piece.row, piece.down), board.build, grainDown,
                                      woods));
        }
    }
    return places;
}

RailPlace railPlace(int side, double width, double boardWidth, double boardHeight,
                    const Wood& wood) {
    RailPlace place;
    constexpr double thickness = 40;
    place.cut = cutFor(seedOf(0xB04DU, 1), wood.rings, width, thickness);
    // Along the stick: top from left to right, then on clockwise. Its outside edge is at x = 0.
    switch (side) {
    case 0:
        place.face = {{0, 0, thickness}, {0, 1, 0}, {1, 0, 0}};
        break;
    case 1:
        place.face = {{width, boardWidth, thickness}, {-1, 0, 0}, {0, 1, 0}};
        break;
    case 2:
        place.face = {{width, 2 * boardWidth + boardHeight, thickness}, {0, -1, 0}, {-1, 0, 0}};
        break;
    default:
        place.face = {{0, 2 * boardWidth + 2 * boardHeight, thickness}, {1, 0, 0}, {0, -1, 0}};
        break;
    }
    place.face = place.cut.inTree(place.face);
    return place;
}

std::vector<FiguredFace> figuredFaces(const Board& board, const Surround& surround,
                                      const std::vector<Wood>& woods, const FigurePlaces& places) {
    const Board glued = asGlued(board);
    const bool hasBorder = glued.border.isThere();
    const double left = hasBorder ? surround.left().toMm() : 0;
    const double top = hasBorder ? surround.top().toMm() : 0;
    const std::vector<double> xs = edges(glued.field.columns);
    const std::vector<double> ys = edges(glued.field.rows);
    const auto at = [](const std::vector<double>& lines, int line) {
        return lines[static_cast<std::size_t>(line)];
    };
    std::vector<FiguredFace> faces;
    faces.reserve(places.size() + 4);
    for (const FigurePlace& place : places) {
        const Piece& piece = place.piece;
        const double x = left + at(xs, piece.column);
        const double y = top + at(ys, piece.row);
        faces.push_back({corners({x, y, left + at(xs, piece.column + piece.across) - x,
                                  top + at(ys, piece.row + piece.down) - y}),
                         piece.wood, place.cut, place.face});
    }
    if (!hasBorder) {
        return faces;
    }
    const double wide = xs.back() + 2 * left;
    const double high = ys.back() + 2 * top;
    const double railX = surround.railX.toMm();
    const double railY = surround.railY.toMm();
    // Mitred strips run to the corners; of straight ones those at top and bottom lie over the ends
    // of the others.
    const double in = glued.border.isFrame() ? railX : 0;
    const double under = glued.border.isFrame() ? 0 : railY;
    const double side = glued.border.isFrame() ? railY : 0;
    const std::array<std::vector<Point>, 4> shapes = {{
        {{0, 0}, {wide, 0}, {wide - in, railY}, {in, railY}},
        {{wide, under},
         {wide, high - under},
         {wide - railX, high - under - side},
         {wide - railX, under + side}},
        {{0, high}, {wide, high}, {wide - in, high - railY}, {in, high - railY}},
        {{0, under}, {0, high - under}, {railX, high - under - side}, {railX, under + side}},
    }};
    const int wood = glued.border.wood;
    for (int i = 0; i < 4; ++i) {
        const double width = i % 2 == 1 ? railX : railY;
        if (width > 0) {
            const RailPlace place =
                railPlace(i, width, wide, high, woods[static_cast<std::size_t>(wood)]);
            faces.push_back({shapes[static_cast<std::size_t>(i)], wood, place.cut, place.face});
        }
    }
    return faces;
}

}  // namespace kerfwright
