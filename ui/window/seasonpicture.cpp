#include "ui/window/seasonpicture.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace kerfwright {

namespace {

double middle(const Range& range) {
    return (range.least + range.greatest) / 2;
}

double greatest(const SeasonChange& change) {
    return std::max({std::abs(change.toDriest.least), std::abs(change.toDriest.greatest),
                     std::abs(change.toDampest.least), std::abs(change.toDampest.greatest)});
}

/// Never less than a tenth of what it was: a picture has no negative sizes.
Length moved(Length size, const Range& change, int times) {
    const auto by = static_cast<std::int64_t>(std::llround(middle(change) * times * 1e6));
    return std::max(size + Length::nm(by), Length::nm(size.nm() / 10));
}

}  // namespace

int drawnTimes(const Board& board, const BoardMovement& movement) {
    const double room = std::min(board.field.width().toMm(), board.field.height().toMm()) / 16;
    const double most = std::max(greatest(movement.width), greatest(movement.height));
    constexpr std::array<int, 5> steps{50, 20, 10, 5, 2};
    for (const int times : steps) {
        if (most * times <= room) {
            return times;
        }
    }
    return 1;
}

bool railsStay(const Board& board) {
    return board.border.isFrame() || bindsTheField(board);
}

SeasonPicture seasonPicture(const Board& board, const Surround& surround, const SeasonState& state,
                            int times) {
    SeasonPicture picture{board, surround, times};
    Field& field = picture.board.field;
    for (std::size_t i = 0; i < state.columnWidths.size(); ++i) {
        field.columns[i] = moved(field.columns[i], state.columnWidths[i], times);
    }
    for (std::size_t i = 0; i < state.rowHeights.size(); ++i) {
        field.rows[i] = moved(field.rows[i], state.rowHeights[i], times);
    }
    if (railsStay(board)) {
        picture.surround.gapX = surround.gapX * times - half(field.width() - board.field.width());
        picture.surround.gapY = surround.gapY * times - half(field.height() - board.field.height());
    }
    if (board.border.has(BorderDesign::BreadboardEnds)) {
        Surround& room = picture.surround;
        if (room.railX > Length()) {
            room.gapY = half(board.field.height() - field.height());
        } else {
            room.gapX = half(board.field.width() - field.width());
        }
    }
    for (Length* rail : {&picture.surround.railX, &picture.surround.railY}) {
        *rail = *rail > Length() ? moved(*rail, state.railAcross, times) : *rail;
    }
    return picture;
}

double yearOf(const Climate& climate, double moisture) {
    double from = 0;
    double to = 0.5;
    for (int i = 0; i < 30; ++i) {
        const double half = (from + to) / 2;
        (moistureInYear(climate, half) < moisture ? from : to) = half;
    }
    return (from + to) / 2;
}

}  // namespace kerfwright
