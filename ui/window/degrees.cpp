#include "ui/window/degrees.h"

#include "core/wood/air.h"

#include <cmath>

namespace kerfwright {

QString degreeName(Unit unit) {
    return unit == Unit::Inches ? QStringLiteral("°F") : QStringLiteral("°C");
}

double shownDegrees(double celsius, Unit unit) {
    return std::round((unit == Unit::Inches ? fahrenheitOf(celsius) : celsius) * 10) / 10;
}

double celsiusFrom(double shown, Unit unit) {
    return unit == Unit::Inches ? celsiusOf(shown) : shown;
}

}  // namespace kerfwright
