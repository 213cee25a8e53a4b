// What of a board with figure is to be seen, in device pixels: a patch for each piece and each
// strip of the border, cut into parts that are one texture each.
#pragma once

#include "core/board/board.h"
#include "core/wood/wood.h"
#include "ui/document/figureplaces.h"
#include "ui/paint/figure.h"
#include "ui/window/boardgeometry.h"

#include <QRect>

#include <utility>
#include <vector>

namespace kerfwright {

/// What is to be seen.
struct FigureScene {
    const Board& board;
    const std::vector<Wood>& woods;
    const BoardGeometry& geometry;
    QRect view;               ///< of the widget, in its pixels
    bool grainDown = true;    ///< of a long-grain field without a plan
    bool underHatch = false;  ///< calmer, so that hatch and letters stay legible
};

/// A piece or a strip of the border, in device pixels from the board's corner.
struct FigurePatch {
    QRect rect;
    int wood = 0;
    int mitred = -1;  ///< side of the frame, 0 top to 3 left; -1: a rectangle
    int mitre = 0;    ///< as wide as the mitre cuts in
    TimberCut cut;
    FacePlane face;
    /// What of a row of it is seen: [from, to), both in pixels from its left. Rows from 0.
    std::pair<int, int> seenOfRow(int row) const;
};

/// What of a patch is one texture. Which strip shows, its place in the tree and the size of a pixel
/// say which texture it is.
struct FigurePart {
    quint64 key = 0;
    quint64 place = 0;                             ///< the same in whichever wood
    int left = 0, top = 0, width = 0, height = 0;  ///< in the patch
};

/// How textures of a scene come out: the looks of its woods, and a pixel's size.
struct FigureLooks {
    std::vector<WoodLook> woods;
    std::vector<quint64> keys;  ///< of the same woods
    double step = 1;            ///< mm a device pixel
};

FigureLooks figureLooks(const std::vector<Wood>& woods, double step);
QRect inDevicePixels(const QRectF& rect, const BoardGeometry& geometry);
/// The pieces at those places, then the border.
std::vector<FigurePatch> figurePatches(const FigurePlaces& places, const FigureScene& scene);
/// Those of its parts that are visible; none is wider or higher than 256 pixels.
std::vector<FigurePart> figureParts(const FigurePatch& patch, const QRect& visible,
                                    const FigureLooks& looks);

}  // namespace kerfwright
