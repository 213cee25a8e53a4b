// Dimension lines after the habits of ISO 129: each size once, its number above the line, readable
// from below or from the right.
#pragma once

#include "core/drawing/drawing.h"

#include <string>

namespace kerfwright {

struct DimensionLook {
    double size = 3.175;  ///< em height of the number, mm
    bool bold = false;
    double gap = 0.8;      ///< between the object and its extension line, mm
    Ink ink = Ink::Quiet;  ///< lines
    Ink number = Ink::Text;
};

/// Across, between x = `from` and x = `to`, at height `y`. Extension lines come from `objectY`.
void addDimensionAcross(Drawing& drawing, double from, double to, double y, double objectY,
                        const std::string& number, const DimensionLook& look = {});
/// Down, between y = `from` and y = `to`, at `x`, the number left of the line and turned to be read
/// from the right.
void addDimensionDown(Drawing& drawing, double from, double to, double x, double objectX,
                      const std::string& number, const DimensionLook& look = {});

}  // namespace kerfwright
