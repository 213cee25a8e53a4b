#include "core/bench/boardmovement.h"

#include <algorithm>
#include <cmath>

namespace kerfwright {
namespace {

/// Growth of a wood along each direction, to both seasons.
struct Growths {
    SeasonChange x, y, up;
};

SeasonChange operator*(const SeasonChange& change, double factor) {
    return {change.toDriest * factor, change.toDampest * factor};
}

void add(SeasonChange& sum, const SeasonChange& more) {
    sum.toDriest += more.toDriest;
    sum.toDampest += more.toDampest;
}

/// Empty where the wood does not say.
std::optional<Growths> growthsOf(const Wood& wood, Build build, bool byColumns,
                                 const Climate& climate) {
    const auto dry = pieceGrowth(wood, build, byColumns, climate.build, climate.driest);
    const auto damp = pieceGrowth(wood, build, byColumns, climate.build, climate.dampest);
    if (!dry || !damp) {
        return std::nullopt;
    }
    return Growths{{dry->x, damp->x}, {dry->y, damp->y}, {dry->up, damp->up}};
}

std::vector<double> edges(const std::vector<Length>& sizes) {
    std::vector<double> all{0};
    Length at;
    for (const Length size : sizes) {
        at += size;
        all.push_back(at.toMm());
    }
    return all;
}

SeasonChange hullOf(const std::vector<SeasonChange>& changes) {
    SeasonChange all = changes.front();
    for (const SeasonChange& change : changes) {
        all = hull(all, change);
    }
    return all;
}

double alike(const Range& a, const Range& b) {
    return std::max(std::abs(a.least - b.least), std::abs(a.greatest - b.greatest));
}

double worst(const Range& a, const Range& b) {
    return std::max(a.greatest - b.least, b.greatest - a.least);
}

Neighbours neighbours(const std::vector<SeasonChange>& lines) {
    // Less than this is the rounding of sums that differ in their order.
    constexpr double nothing = 1e-9;
    Neighbours found;
    const auto keep = [](Apart& most, double mm, std::size_t first) {
        if (mm > most.mm + nothing) {
            most = {mm, static_cast<int>(first)};
        }
    };
    for (std::size_t i = 0; i + 1 < lines.size(); ++i) {
        const SeasonChange& a = lines[i];
        const SeasonChange& b = lines[i + 1];
        keep(found.alike, std::max(alike(a.toDriest, b.toDriest), alike(a.toDampest, b.toDampest)),
             i);
        keep(found.worst, std::max(worst(a.toDriest, b.toDriest), worst(a.toDampest, b.toDampest)),
             i);
    }
    return found;
}

}  // namespace

SeasonChange hull(const SeasonChange& a, const SeasonChange& b) {
    return {hull(a.toDriest, b.toDriest), hull(a.toDampest, b.toDampest)};
}

std::optional<PieceGrowth> pieceGrowth(const Wood& wood, Build build, bool byColumns, double from,
                                       double to) {
    const std::optional<Range> width = growth(wood, StickSide::Width, wood.rings, from, to);
    const std::optional<Range> thickness = growth(wood, StickSide::Thickness, wood.rings, from, to);
    if (!width || !thickness) {
        return std::nullopt;
    }
    // Sticks lie side by side across the strips' length: along the row, or down the column. Stood
    // up, their thickness takes the place that their length has in a long-grain field.
    const bool stoodUp = build == Build::EndGrain;
    const Range along = growthAlongGrain(from, to);
    const Range other = stoodUp ? *thickness : along;
    const Range up = stoodUp ? along : *thickness;
    return byColumns ? PieceGrowth{other, *width, up} : PieceGrowth{*width, other, up};
}

BoardMovement movementOf(const Board& board, const std::vector<Wood>& woods, bool byColumns,
                         const Climate& climate) {
    std::vector<std::optional<Growths>> growths;
    growths.reserve(woods.size());
    for (const Wood& wood : woods) {
        growths.push_back(growthsOf(wood, board.build, byColumns, climate));
    }

    const Field& field = board.field;
    const std::vector<double> lefts = edges(field.columns);
    const std::vector<double> tops = edges(field.rows);
    BoardMovement result;
    result.rows.resize(field.rows.size());
    result.columns.resize(field.columns.size());
    std::vector<SeasonChange> heights;
    std::vector<bool> used(woods.size(), false);
    for (const Piece& piece : field.pieces) {
        const auto wood = static_cast<std::size_t>(piece.wood);
        const bool first = !used[wood];
        used[wood] = true;
        if (!growths[wood]) {
            if (first) {
                result.unknownWoods.push_back(piece.wood);
                heights.emplace_back();
            }
            continue;
        }
        const Growths& own = *growths[wood];
        if (first) {
            heights.push_back(own.up * board.thickness.toMm());
        }
        const auto column = static_cast<std::size_t>(piece.column);
        const auto row = static_cast<std::size_t>(piece.row);
        const std::size_t right = column + static_cast<std::size_t>(piece.across);
        const std::size_t bottom = row + static_cast<std::size_t>(piece.down);
        const SeasonChange wider = own.x * (lefts[right] - lefts[column]);
        const SeasonChange higher = own.y * (tops[bottom] - tops[row]);
        for (std::size_t i = row; i < bottom; ++i) {
            add(result.rows[i], wider);
        }
        for (std::size_t i = column; i < right; ++i) {
            add(result.columns[i], higher);
        }
    }
    std::sort(result.unknownWoods.begin(), result.unknownWoods.end());
    result.width = hullOf(result.rows);
    result.height = hullOf(result.columns);
    result.thickness = hullOf(heights);
    result.rowsApart = neighbours(result.rows);
    result.columnsApart = neighbours(result.columns);
    return result;
}

std::optional<double> weightAt(const Board& board, const std::vector<Wood>& woods,
                               const Climate& climate, double moisture,
                               const std::optional<Surround>& surround) {
    std::vector<WoodUse> use = woodUse(asGlued(board).field, static_cast<int>(woods.size()));
    use[static_cast<std::size_t>(board.border.wood)].face += railFace(
        board, surround.value_or(surroundOf(board, board.grain != GrainDirection::Across, {}, {})));
    const double wetter = (1 + moisture / 100) / (1 + climate.build / 100);
    double kg = 0;
    for (std::size_t i = 0; i < use.size(); ++i) {
        if (use[i].face == Area()) {
            continue;
        }
        if (woods[i].density <= 0) {
            return std::nullopt;
        }
        kg += volume(use[i].face, board.thickness).toCubicMetres() *
              densityAt(woods[i], climate.build) * wetter;
    }
    return kg;
}

}  // namespace kerfwright
