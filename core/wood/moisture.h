// Moisture in wood: what it settles at in the air of a room, what it does to density, and the
// climates that boards are built in and live in.
//
// Moisture is percent of the ovendry weight throughout. All of it is physics, so floating point;
// the published data behind it carry about one decimal, and no more should be shown.
#pragma once

#include "core/measure/result.h"
#include "core/wood/wood.h"

#include <string>
#include <vector>

namespace kerfwright {

/// Above it wood neither swells nor shrinks. The Wood Handbook takes 30 % for all woods; measured
/// values reach from 22 % (black locust, wenge) to 30 %. With a lower one the same shrinkage is
/// packed into fewer points of moisture, so that such woods move more than is reckoned here.
inline constexpr double fibreSaturation = 30;

/// The range of the fit behind `equilibriumMoisture`: that of the table which it was checked with.
struct AirLimits {
    static constexpr double leastCelsius = -1.2;
    static constexpr double greatestCelsius = 60;
    static constexpr double leastHumidity = 0;
    static constexpr double greatestHumidity = 95;
};

/// Moisture that wood settles at in air of that temperature and relative humidity (percent), which
/// are brought within `AirLimits` first: ask `faults(Air)` where they are typed. One curve for all
/// woods; that wood which is drying stays a little wetter is left out.
double equilibriumMoisture(double celsius, double humidity);
double equilibriumMoistureAtFahrenheit(double fahrenheit, double humidity);

/// Shrinkage in percent from green to `moisture`, of one that is `greenToOvendry` in all; 0 at
/// fibre saturation and above.
double shrinkageTo(double greenToOvendry, double moisture);

/// kg/m3 from the specific gravity of ovendry weight and volume at `moisture`.
double densityOf(double specificGravity, double moisture);
/// Specific gravity of ovendry weight and volume at `moisture`, from the basic one (green volume).
double specificGravityAt(double basic, double volumetricShrinkage, double moisture);
/// kg/m3 of a wood at a moisture: weight and volume both at that moisture. Where the volumetric
/// shrinkage is not known, radial and tangential together stand for it; where those are not known
/// either, the volume is taken to stay. 0 where the density is not known.
double densityAt(const Wood& wood, double moisture);

/// Air of a room.
struct Air {
    double celsius = 20;
    double humidity = 50;  ///< percent
};
/// Outside `AirLimits`.
std::vector<Fault> faults(const Air& air);

/// Moisture of the wood when it is glued up, and in the driest and dampest season of its place.
struct Climate {
    double build = 8;
    double driest = 6;
    double dampest = 10;
    friend bool operator==(const Climate&, const Climate&) = default;
};

/// One row of the climate: what it is called and where it lives. Percent, 0 to `fibreSaturation`.
struct ClimateSetting {
    const char* key;    ///< in files: "build-percent"
    const char* name;   ///< on screen, to be said: "Moisture when built"
    const char* about;  ///< one sentence for the pointer, to be said
    double Climate::*value;
};
const std::vector<ClimateSetting>& climateSettings();

Climate climateOf(const Air& build, const Air& driest, const Air& dampest);

/// A moisture below 0 or above fibre saturation, or a dampest season that is drier than the driest.
/// That timber is built drier or wetter than its place ever is, is no fault: it is what cautions
/// are for.
std::vector<Fault> faults(const Climate& climate);

struct ClimatePreset {
    std::string key;   ///< stable name: "heated-inland"
    std::string name;  ///< to be said: "Heated home, inland"
    Climate climate;
    std::string source;  ///< to be said; or "value from memory"
};
const std::vector<ClimatePreset>& climatePresets();
/// The preset with these very moistures; null where they are the maker's own.
const ClimatePreset* presetOf(const Climate& climate);

}  // namespace kerfwright
