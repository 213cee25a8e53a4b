// Air and the moisture of wood, the other way round, and degrees.
#pragma once

#include "core/wood/moisture.h"

namespace kerfwright {

/// Relative humidity, in percent, of the air in which wood settles at `moisture`: the reverse of
/// `equilibriumMoisture`. The nearer end of `AirLimits` where no such air is reckoned with.
double humidityAt(double celsius, double moisture);

/// Exact by definition: 0 °C are 32 °F, and 5 K are 9 °F.
constexpr double fahrenheitOf(double celsius) {
    return celsius * 9 / 5 + 32;
}
constexpr double celsiusOf(double fahrenheit) {
    return (fahrenheit - 32) * 5 / 9;
}

}  // namespace kerfwright
