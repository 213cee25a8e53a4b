// A plank of the rack from above, in its wood: what spoils it, and where there is a layout, its
// strips, the numbered cuts, what is kept and what is waste.
//
// Lengths and widths have scales of their own: a plank is so long that its strips would else be too
// narrow to be labelled. The blade's cut is drawn at its width, and a little wider where that could
// not be seen.
#pragma once

#include "core/drawing/drawing.h"
#include "core/measure/notation.h"
#include "core/timber/cutorder.h"
#include "core/timber/layout.h"

#include <string>
#include <utility>
#include <vector>

namespace kerfwright {

/// What `stripLabels` gives: by plank of the layout, section and strip.
using StripNames = std::vector<std::vector<std::vector<std::string>>>;

/// Section and strip of a plank, from 0.
using PlankSpot = std::pair<int, int>;

/// mm of drawing for a mm of plank.
struct PlankScale {
    double along = 1;
    double across = 1;
};

/// One scale for all planks of a layout: the longest fills `length` mm, and the narrowest strip can
/// hold a line of text with an em height of `type` mm, as long as no plank gets wider than `widest`
/// mm.
PlankScale scaleOf(const Rack& rack, const Layout& layout, const Demand& demand, double length,
                   double type, double widest);
/// The same for planks that are not cut: at least a line of text high.
PlankScale scaleOf(const std::vector<Plank>& planks, double length, double type, double widest);

struct PlankLook {
    PlankScale scale = {};
    double type = 3.175;     ///< em height of all texts, mm
    bool dimensions = true;  ///< the plank's length and width
    bool positions = false;  ///< of the defects, along the lower edge
    PlankSpot chosen = {-1, -1};
};

/// What a plank is drawn from. Without cuts: the plank as it lies on the rack.
struct PlankMatter {
    const Plank& plank;
    const std::vector<Wood>& woods;
    const Notation& notation;
    const PlankCuts* cuts = nullptr;
    const Demand* demand = nullptr;                                ///< with `cuts`
    const std::vector<std::vector<std::string>>* names = nullptr;  ///< of this plank's strips
    int number = 0;                                                ///< of the plank in the layout
    const std::vector<SawCut>* saw = nullptr;                      ///< of the whole layout
};

/// Where things came to lie in the drawing.
struct PlankPlaces {
    Box plank;
    struct Strip {
        PlankSpot place;
        Box box;
    };
    std::vector<Strip> strips;
    std::vector<Box> badges;  ///< plates with the numbers of cuts
    double bottom = 0;        ///< below everything that was drawn
};

/// Draws with the left upper corner of everything at `at`, room for dimensions and numbers
/// included. Shades of the wood are added to the woods of the drawing, which must begin with those
/// of `matter`.
PlankPlaces addPlank(Drawing& drawing, Point at, const PlankMatter& matter, const PlankLook& look);

/// A drawing of one plank alone.
struct PlankView {
    Drawing drawing;
    PlankPlaces places;
};
PlankView drawPlank(const PlankMatter& matter, const PlankLook& look);

/// Room that the dimension of the width takes left of the plank, mm; 0 without dimensions.
double leftOfPlank(const PlankLook& look);

}  // namespace kerfwright
