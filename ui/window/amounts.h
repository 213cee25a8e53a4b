// Amounts that are weighed or reckoned, not cut: in words, in the units of the project.
#pragma once

#include "core/measure/notation.h"
#include "core/wood/movement.h"

#include <QString>

namespace kerfwright {

/// "≈ 3.2 kg", "≈ 7.1 lb".
QString weightText(double kilograms, Unit unit);
/// A change in mm, signed: "+0.4 mm", "−0.3 to +0.9 mm", "±0 mm". To a tenth of a millimetre or a
/// hundredth of an inch, which is more than such figures are good for.
QString changeText(const Range& mm, Unit unit);
/// What is left of a gap, in mm: "1.2 mm", "−0.3 to 0.4 mm".
QString gapText(const Range& mm, Unit unit);

}  // namespace kerfwright
