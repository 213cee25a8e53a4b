#include "core/board/border.h"

#include "core/board/board.h"

#include <algorithm>

namespace kerfwright {

BorderSides borderSides(const Board& board, bool grainDown) {
    if (!board.border.isThere()) {
        return {};
    }
    const bool endGrain = board.build == Build::EndGrain;
    switch (board.border.design) {
    case BorderDesign::BreadboardEnds:
        return {!grainDown, grainDown};
    case BorderDesign::EdgeBand:
        return endGrain ? BorderSides{true, true} : BorderSides{grainDown, !grainDown};
    case BorderDesign::EndGrainBand:
    case BorderDesign::FloatingFrame:
    case BorderDesign::FixedFrame:
        break;
    }
    return {true, true};
}

Surround surroundOf(const Board& board, bool grainDown, Length gapX, Length gapY) {
    const BorderSides sides = borderSides(board, grainDown);
    Surround surround;
    if (sides.leftAndRight) {
        surround.gapX = gapX;
        surround.railX = board.border.width;
    }
    if (sides.topAndBottom) {
        surround.gapY = gapY;
        surround.railY = board.border.width;
    }
    return surround;
}

BoardSize sizeOf(const Board& board, const Surround& surround) {
    return {board.field.width() + surround.left() * 2, board.field.height() + surround.top() * 2};
}

Area railFace(const Board& board, const Surround& surround) {
    if (!board.border.isThere() || board.border.design == BorderDesign::EndGrainBand) {
        return {};
    }
    const BoardSize whole = sizeOf(board, surround);
    const Area inside = area(whole.width - surround.railX * 2, whole.height - surround.railY * 2);
    return Area(area(whole.width, whole.height).squareNm() - inside.squareNm());
}

bool bindsTheField(const Board& board) {
    return board.border.has(BorderDesign::FixedFrame) ||
           (board.border.has(BorderDesign::EdgeBand) && board.build == Build::EndGrain);
}

bool keysCorners(const Board& board) {
    return board.border.hasSplines() && (board.border.cautionRead || !bindsTheField(board));
}

Board asGlued(const Board& board) {
    const Border& border = board.border;
    if (!border.has(BorderDesign::EndGrainBand)) {
        return board;
    }
    const Field& inner = board.field;
    const int columns = static_cast<int>(inner.columns.size());
    const int rows = static_cast<int>(inner.rows.size());
    Board whole = board;
    Field& field = whole.field;
    for (std::vector<Length>* sizes : {&field.columns, &field.rows}) {
        sizes->insert(sizes->begin(), border.width);
        sizes->push_back(border.width);
    }
    for (Piece& piece : field.pieces) {
        ++piece.column;
        ++piece.row;
    }
    for (int column = 0; column < columns + 2; ++column) {
        field.pieces.push_back({column, 0, 1, 1, border.wood});
        field.pieces.push_back({column, rows + 1, 1, 1, border.wood});
    }
    for (int row = 1; row < rows + 1; ++row) {
        field.pieces.push_back({0, row, 1, 1, border.wood});
        field.pieces.push_back({columns + 1, row, 1, 1, border.wood});
    }
    std::sort(field.pieces.begin(), field.pieces.end(), readsBefore);
    whole.border.width = Length();
    return whole;
}

}  // namespace kerfwright
