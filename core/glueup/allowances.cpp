#include "core/glueup/allowances.h"

#include <algorithm>

namespace kerfwright {

Length flattenedAfterwards(const Board& board, const Shop& shop, bool severalSlices) {
    return severalSlices || board.build == Build::EndGrain ? shop.fieldFlattening : Length();
}

Figure thicknessAsGlued(const Board& board, const Shop& shop, Length rowHeight, int marginSides,
                        bool glued) {
    Figure figure;
    if (board.build == Build::EndGrain) {
        figure.add(TermKind::RowHeight, rowHeight);
        figure.add(TermKind::TrimMargin, shop.trimMargin, marginSides);
    } else {
        figure.add(TermKind::BoardThickness, board.thickness);
        figure.add(TermKind::FieldFlattening, flattenedAfterwards(board, shop, marginSides < 2));
    }
    if (glued) {
        figure.add(TermKind::PanelFlattening, shop.panelFlattening);
    }
    return figure;
}

Figure sliceLength(const Board& board, const Shop& shop, Length rowHeight, int marginSides) {
    Figure figure;
    if (board.build == Build::EndGrain) {
        figure.add(TermKind::BoardThickness, board.thickness);
        figure.add(TermKind::FieldFlattening, shop.fieldFlattening);
    } else {
        figure.add(TermKind::RowHeight, rowHeight);
        figure.add(TermKind::TrimMargin, shop.trimMargin, marginSides);
    }
    return figure;
}

Figure stripLength(const Shop& shop, const std::vector<Length>& slices, int spares) {
    return stripLength(shop, slices, spares, *std::max_element(slices.begin(), slices.end()));
}

Figure stripLength(const Shop& shop, const std::vector<Length>& slices, int spares, Length spare) {
    const int cuts = static_cast<int>(slices.size()) + spares;
    Figure figure;
    figure.add(TermKind::SquaringCut, shop.squaringCut);
    figure.add(TermKind::Kerf, shop.kerf, cuts + (shop.squaringCut > Length() ? 1 : 0));
    // One term for each length, in the order in which it first comes.
    for (auto slice = slices.begin(); slice != slices.end(); ++slice) {
        if (std::find(slices.begin(), slice, *slice) == slice) {
            figure.add(TermKind::Slices, *slice,
                       static_cast<int>(std::count(slice, slices.end(), *slice)));
        }
    }
    figure.add(TermKind::SpareSlices, spare, spares);
    figure.add(TermKind::Tail, shop.tail);
    return figure.roundUp(shop.lengthStep);
}

Figure railLength(const Shop& shop, const Figure& longPoint) {
    Figure figure = longPoint;
    figure.add(TermKind::SquaringCut, shop.squaringCut)
        .add(TermKind::Kerf, shop.kerf, 2)
        .add(TermKind::Tail, shop.tail)
        .roundUp(shop.lengthStep);
    return figure;
}

Figure rough(const Figure& milled, const Shop& shop) {
    Figure figure = milled;
    figure.add(TermKind::Milling, shop.milling);
    return figure;
}

Figure roughLength(const Figure& milled, const Shop& shop) {
    Figure figure = milled;
    figure.add(TermKind::EndAllowance, shop.endAllowance);
    return figure;
}

}  // namespace kerfwright
