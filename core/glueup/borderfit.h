// What the sizes of a border come to once it is known how far the field moves: gap, grooves, tongue
// or ledge, inlay, splines, pins. Each with its working.
//
// Formulae are the project's own, from geometry, and hold for one side:
//   gap          half of the growth to the dampest season + clearance, rounded up
//   field groove gap + hold + half of the shrinkage to the driest season, rounded up: what reaches
//                below the field still holds it when that is smallest, and has room when the gap
//                has closed
//   tongue       groove in the rail + groove in the field
//   slot         pin + growth and shrinkage at the pin's distance from the middle + clearance
#pragma once

#include "core/board/board.h"
#include "core/glueup/figure.h"
#include "core/measure/result.h"
#include "core/shop/shop.h"

#include <vector>

namespace kerfwright {

/// How far the whole field grows from build to the dampest season and shrinks to the driest, both
/// sides together and neither below 0: the most that its woods may do.
struct FieldSeason {
    Length growthX, growthY;
    Length shrinkageX, shrinkageY;
    friend bool operator==(const FieldSeason&, const FieldSeason&) = default;
};

/// Round, through field and tongue, square to the face. The one in the middle is tight; in the
/// tongue the others stand in slots along the end.
struct Pin {
    Figure at;               ///< of its middle, from the left or top end of the rail
    Figure outward, inward;  ///< from the pin's middle to the slot's ends, away from and towards
                             ///< the middle of the rail; half of the pin where it is tight
    friend bool operator==(const Pin&, const Pin&) = default;
};

struct BorderFit {
    Surround surround;
    Figure gapX, gapY;  ///< floating frame; else 0

    // Floating frames and breadboard ends; 0 where there are none.
    Figure tongueThickness;  ///< of tongue and grooves
    Figure tongueFromFace;   ///< from the top face to the groove, in rail and field alike
    Figure railGroove;       ///< depth
    Figure fieldGroove;      ///< depth in from the field's edge; with a ledge the rebate's
    Figure tongueWidth;      ///< of the loose tongue: both grooves together
    Figure ledge;            ///< how far it reaches beyond the visible rail
    Figure ledgeThickness;   ///< also the height of the rebate below the field

    Figure railStock;  ///< width of a rail as milled: visible rail and ledge

    Figure inlayDepth;   ///< of its rebate, from the top face
    Figure inlayHeight;  ///< of the strip: a little more, levelled after gluing

    Figure splineDepth;     ///< of the slot, square to the corner
    Figure splineFromFace;  ///< from the top face

    Figure pinDiameter;
    Figure pinFromEdge;     ///< from the field's edge to the pins' middles
    std::vector<Pin> pins;  ///< of one end, from left or top

    friend bool operator==(const BorderFit&, const BorderFit&) = default;
};

/// Faults where a design does not suit the build, or a rail or the board is too small for the
/// joinery. For a valid board; `grainDown` as in `borderSides`.
Result<BorderFit> fitBorder(const Board& board, const Shop& shop, bool grainDown,
                            const FieldSeason& season,
                            const Notation& notation = Notation::millimetres(3));

/// The gap alone, for one direction: 0 but for a floating frame.
Figure gapFor(const Border& border, Length growth, const Shop& shop);

}  // namespace kerfwright
