#include "core/wood/air.h"

namespace kerfwright {

double humidityAt(double celsius, double moisture) {
    double low = AirLimits::leastHumidity;
    double high = AirLimits::greatestHumidity;
    // More humidity never means drier wood, so halving finds it; 40 times is finer than a double
    // of this size needs to be shown.
    for (int i = 0; i < 40; ++i) {
        const double middle = (low + high) / 2;
        (equilibriumMoisture(celsius, middle) < moisture ? low : high) = middle;
    }
    return (low + high) / 2;
}

}  // namespace kerfwright
