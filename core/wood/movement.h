// How much wood grows and shrinks between two moistures.
//
// From 6 to 14 % moisture the change is dimension × coefficient × change of moisture (Wood
// Handbook, 2010, equation 13-2). Below and above, and where a wood has no coefficient, it follows
// from the shrinkage (equation 13-3). A change that crosses 6 or 14 % is taken in parts, so that
// more moisture never gives less movement, even where a wood's coefficient and shrinkage disagree.
// Above fibre saturation nothing moves. There and back ends within one part in thirty of the
// movement of where it began, which is less than the 5 % that the book trusts its rules to.
#pragma once

#include "core/measure/length.h"
#include "core/wood/wood.h"

#include <optional>

namespace kerfwright {

enum class RingDirection {
    Radial,      ///< square to the rings
    Tangential,  ///< along them
};

/// Both ends signed; `least` is never more than `greatest`.
struct Range {
    double least = 0;
    double greatest = 0;

    Range& operator+=(const Range& other) {
        least += other.least;
        greatest += other.greatest;
        return *this;
    }
    friend Range operator*(const Range& range, double factor) {
        return factor < 0 ? Range{range.greatest * factor, range.least * factor}
                          : Range{range.least * factor, range.greatest * factor};
    }
    friend bool operator==(const Range&, const Range&) = default;
};
/// The least range that holds both.
Range hull(const Range& a, const Range& b);

/// The range of moistures that the coefficients hold for, in percent.
inline constexpr double leastCoefficientMoisture = 6;
inline constexpr double greatestCoefficientMoisture = 14;

/// The coefficient that belongs to a shrinkage in percent, green to ovendry: equation 13-3 from 10
/// % moisture, S / (3000 − 20 S).
double coefficientFrom(double shrinkage);
/// The same the other way round.
double shrinkageFrom(double coefficient);

/// Growth (or, negative, shrinkage) as a part of the dimension at moisture `from`. Where a wood has
/// no shrinkage, the one that belongs to its coefficient serves. Empty where it has neither.
std::optional<double> growth(const Wood& wood, RingDirection direction, double from, double to);

/// Sides of a strip or plank, seen on its end: a flat-sawn one has its rings along the width.
enum class StickSide { Width, Thickness };

/// Growth of a stick's side, as a part of the dimension at moisture `from`, by how the rings lie:
///
///   rings     width       thickness
///   flat      tangential  radial
///   quarter   radial      tangential
///   rift      tangential × cos² 45° + radial × sin² 45°, for both sides
///   unknown   a range that holds all of these
///
/// A piece of an end-grain field shows the end of its strip: the strip's width lies along the row
/// that it was glued into, its thickness across it. Where the rows are the slices, x is the width
/// and y the thickness; where the columns are, the other way round. Empty where the wood says
/// nothing of its movement in a direction that matters.
std::optional<Range> growth(const Wood& wood, StickSide side, Rings rings, double from, double to);

/// Growth along the grain as a part of the length, the same for all woods: 0.1 to 0.2 % from green
/// to ovendry for normal wood.
Range growthAlongGrain(double from, double to);

/// In mm, for a dimension at moisture `from`.
Range changeInMm(Length dimension, const Range& growth);

}  // namespace kerfwright
