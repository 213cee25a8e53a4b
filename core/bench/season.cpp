#include "core/bench/season.h"

#include <cmath>
#include <numbers>

namespace kerfwright {
namespace {

std::vector<double> inMm(const std::vector<Length>& sizes) {
    std::vector<double> all;
    all.reserve(sizes.size());
    for (const Length size : sizes) {
        all.push_back(size.toMm());
    }
    return all;
}

Range hullOfAll(const std::vector<Range>& all) {
    Range whole = all.front();
    for (const Range& one : all) {
        whole = hull(whole, one);
    }
    return whole;
}

}  // namespace

SeasonState seasonAt(const Board& board, const std::vector<Wood>& woods, bool byColumns,
                     const Climate& climate, double moisture,
                     const std::optional<Surround>& surround) {
    SeasonState state;
    state.moisture = moisture;
    for (const Wood& wood : woods) {
        state.woods.push_back(pieceGrowth(wood, board.build, byColumns, climate.build, moisture));
    }
    const Field& field = board.field;
    const std::vector<double> widths = inMm(field.columns);
    const std::vector<double> heights = inMm(field.rows);
    const double width = field.width().toMm();
    const double height = field.height().toMm();
    state.columnWidths.resize(widths.size());
    state.rowHeights.resize(heights.size());
    state.rowLengths.resize(heights.size());
    state.columnLengths.resize(widths.size());
    std::vector<Range> ups;
    std::vector<bool> used(woods.size(), false);
    for (const Piece& piece : field.pieces) {
        const auto wood = static_cast<std::size_t>(piece.wood);
        const PieceGrowth own = state.woods[wood].value_or(PieceGrowth());
        if (!used[wood]) {
            used[wood] = true;
            ups.push_back(own.up * board.thickness.toMm());
        }
        const auto right = static_cast<std::size_t>(piece.column + piece.across);
        const auto bottom = static_cast<std::size_t>(piece.row + piece.down);
        for (auto row = static_cast<std::size_t>(piece.row); row < bottom; ++row) {
            for (auto column = static_cast<std::size_t>(piece.column); column < right; ++column) {
                const Range wider = own.x * widths[column];
                const Range higher = own.y * heights[row];
                state.rowLengths[row] += wider;
                state.columnLengths[column] += higher;
                state.columnWidths[column] += wider * (heights[row] / height);
                state.rowHeights[row] += higher * (widths[column] / width);
            }
        }
    }
    state.width = hullOfAll(state.rowLengths);
    state.height = hullOfAll(state.columnLengths);
    state.thickness = hullOfAll(ups);
    state.railAlong = growthAlongGrain(climate.build, moisture);
    if (const Wood& rail = woods[static_cast<std::size_t>(board.border.wood)];
        const auto across = growth(rail, StickSide::Width, rail.rings, climate.build, moisture)) {
        state.railAcross = changeInMm(board.border.width, *across);
    }
    state.weightKg = weightAt(board, woods, climate, moisture,
                              surround.value_or(surroundOf(board, !byColumns, Length(), Length())));
    return state;
}

Range gapAt(Length gap, const Range& field) {
    return {gap.toMm() - field.greatest / 2, gap.toMm() - field.least / 2};
}

double moistureInYear(const Climate& climate, double year) {
    const double middle = (climate.driest + climate.dampest) / 2;
    const double swing = (climate.dampest - climate.driest) / 2;
    return middle - swing * std::cos(2 * std::numbers::pi * year);
}

}  // namespace kerfwright
