// What a shop glues with: its glue, its clamps, and how warm it is.
//
// Nothing here is a length that is cut, so it is kept in floating point.
#pragma once

#include "core/measure/result.h"

#include <vector>

namespace kerfwright {

/// What a shop glues with. Each value is a row of `glueSettings()`, which says where it is from.
struct GlueShop {
    double spread = 175;         ///< g/m2 of joint, both faces together
    double secondsPerLine = 30;  ///< to spread one line and set its part
    double openMinutes = 8;      ///< at 20 °C: how long spread glue may lie open
    double clampMinutes = 45;    ///< at 20 °C, a joint without stress
    double machiningHours = 12;  ///< at 20 °C, before the joint may be worked
    double cureHours = 24;       ///< at 20 °C, to full strength
    double celsius = 20;         ///< of shop, wood and glue
    double leastCelsius = 8;     ///< below it the glue makes no film
    double lightPressure = 0.7;  ///< MPa, for woods of `lightDensity` or less
    double heavyPressure = 1.7;  ///< MPa, for woods of `heavyDensity` or more
    double lightDensity = 400;   ///< kg/m3
    double heavyDensity = 900;   ///< kg/m3; more than `lightDensity`
    double clampForce = 1650;    ///< N, of one clamp
    double caul = 40;            ///< mm of wood between clamp and workpiece
    double clampsOwned = 0;      ///< a whole number; 0: not said
    friend bool operator==(const GlueShop&, const GlueShop&) = default;
};

struct GlueSetting {
    const char* key;     ///< "glue-spread"
    const char* name;    ///< to be said: "Glue spread"
    const char* unit;    ///< "g/m²"
    const char* source;  ///< to be said
    double GlueShop::*value;
    double least;     ///< inclusive
    double greatest;  ///< inclusive
    bool whole = false;
};
const std::vector<GlueSetting>& glueSettings();
/// Outside the limits of `glueSettings()`, no whole number where one is asked for, or a heavy
/// density that is not above the light one.
std::vector<Fault> faults(const GlueShop& shop);

}  // namespace kerfwright
