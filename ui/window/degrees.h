// Temperatures as the maker reads them: °F beside inches, °C beside millimetres.
#pragma once

#include "core/measure/notation.h"

#include <QString>

namespace kerfwright {

QString degreeName(Unit unit);
/// To a tenth of a degree, which is finer than any shop is warmed.
double shownDegrees(double celsius, Unit unit);
double celsiusFrom(double shown, Unit unit);

}  // namespace kerfwright
