// Amounts that are weighed or reckoned, not cut, for the paper.
#pragma once

#include "core/bench/boardmovement.h"
#include "core/measure/notation.h"
#include "core/wood/movement.h"

#include <string>

namespace kerfwright {

/// "8.5 %".
std::string percentWords(double percent);
/// "≈ 3.2 kg", "≈ 7.1 lb".
std::string weightWords(double kilograms, Unit unit);
/// A change in mm, signed: "+0.4 mm", "−0.3 to +0.9 mm". To a tenth of a millimetre or a hundredth
/// of an inch, which is more than such figures are good for.
std::string changeWords(const Range& mm, Unit unit);
/// What is left of a gap, in mm: "1.2 mm", "−0.3 to 0.4 mm".
std::string leftWords(const Range& mm, Unit unit);

/// How far the field moves at most, whichever way, between the driest and the dampest season:
/// "5.4 mm".
std::string travelWords(const BoardMovement& movement, Unit unit);

}  // namespace kerfwright
