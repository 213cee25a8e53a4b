#include "core/sheets/amounts.h"

#include "core/measure/number.h"
#include "core/words/say.h"

#include <algorithm>
#include <cmath>

namespace kerfwright {
namespace {

std::string rangeWords(const Range& mm, Unit unit, bool withSign) {
    const bool inches = unit == Unit::Inches;
    const double scale = inches ? 25.4 : 1;
    const int decimals = inches ? 2 : 1;
    const double fine = inches ? 100 : 10;
    const auto part = [&](double value) -> std::string {
        const double shown = std::round(std::abs(value) / scale * fine) / fine;
        if (shown == 0) {
            return withSign ? "±0" : "0";
        }
        return (value < 0 ? "−" : withSign ? "+" : "") + formatFixed(shown, decimals);
    };
    const std::string least = part(mm.least);
    const std::string greatest = part(mm.greatest);
    return (least == greatest ? least : say("{1} to {2}", least, greatest)) +
           (inches ? " in" : " mm");
}

}  // namespace

std::string percentWords(double percent) {
    return formatFixed(percent, 1) + " %";
}

std::string weightWords(double kilograms, Unit unit) {
    return unit == Unit::Inches ? "≈ " + formatFixed(kilograms / 0.45359237, 1) + " lb"
                                : "≈ " + formatFixed(kilograms, 1) + " kg";
}

std::string changeWords(const Range& mm, Unit unit) {
    return rangeWords(mm, unit, true);
}

std::string leftWords(const Range& mm, Unit unit) {
    return rangeWords(mm, unit, false);
}

std::string travelWords(const BoardMovement& movement, Unit unit) {
    double most = 0;
    for (const SeasonChange* change : {&movement.width, &movement.height}) {
        const auto [least, greatest] =
            std::minmax({0.0, change->toDriest.least, change->toDriest.greatest,
                         change->toDampest.least, change->toDampest.greatest});
        most = std::max(most, greatest - least);
    }
    return leftWords({most, most}, unit);
}

}  // namespace kerfwright
