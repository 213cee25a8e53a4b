#include "core/wood/moisture.h"

#include "core/measure/number.h"
#include "core/words/say.h"

#include <algorithm>

namespace kerfwright {
namespace {

std::string percentText(double value) {
    return formatFigures(value) + " %";
}

/// Volume at a moisture, as a part of the green volume.
double volumeAt(double volumetricShrinkage, double moisture) {
    return 1 - shrinkageTo(volumetricShrinkage, moisture) / 100;
}

}  // namespace

// Hailwood and Horrobin's model with two hydrates as Simpson fitted it (Wood Handbook, 2010,
// equation 4-5; constants for °C after Simpson, 1998, FPL-RN-0268, seen in a public script).
double equilibriumMoisture(double celsius, double humidity) {
    const double t = std::clamp(celsius, AirLimits::leastCelsius, AirLimits::greatestCelsius);
    const double h =
        std::clamp(humidity, AirLimits::leastHumidity, AirLimits::greatestHumidity) / 100;
    const double w = 349 + 1.29 * t + 0.0135 * t * t;
    const double k = 0.805 + 0.000736 * t - 0.00000273 * t * t;
    const double k1 = 6.27 - 0.00938 * t - 0.000303 * t * t;
    const double k2 = 1.91 + 0.0407 * t - 0.000293 * t * t;
    const double kh = k * h;
    const double hydrates = k1 * kh + k1 * k2 * kh * kh;
    return 1800 / w * (kh / (1 - kh) + (k1 * kh + 2 * k1 * k2 * kh * kh) / (1 + hydrates));
}

double equilibriumMoistureAtFahrenheit(double fahrenheit, double humidity) {
    return equilibriumMoisture((fahrenheit - 32) / 1.8, humidity);
}

double shrinkageTo(double greenToOvendry, double moisture) {
    const double below = fibreSaturation - std::clamp(moisture, 0.0, fibreSaturation);
    return greenToOvendry * below / fibreSaturation;
}

double densityOf(double specificGravity, double moisture) {
    return 1000 * specificGravity * (1 + moisture / 100);
}

double specificGravityAt(double basic, double volumetricShrinkage, double moisture) {
    return basic / volumeAt(volumetricShrinkage, moisture);
}

double densityAt(const Wood& wood, double moisture) {
    constexpr double catalogued = 12;
    const Shrinkage& shrinkage = wood.shrinkage;
    const double volumetric =
        shrinkage.volumetric > 0 ? shrinkage.volumetric : shrinkage.radial + shrinkage.tangential;
    const double weight = (1 + moisture / 100) / (1 + catalogued / 100);
    return wood.density * weight * volumeAt(volumetric, catalogued) /
           volumeAt(volumetric, moisture);
}

std::vector<Fault> faults(const Air& air) {
    std::vector<Fault> found;
    const auto check = [&](const char* entry, double value, double least, double greatest,
                           const std::string& unit) {
        if (!(value >= least && value <= greatest)) {
            found.push_back({say(entry),
                             say("must be from {1} to {2}", formatFigures(least) + unit,
                                 formatFigures(greatest) + unit),
                             formatFigures(value) + unit});
        }
    };
    check(noted("Temperature"), air.celsius, AirLimits::leastCelsius, AirLimits::greatestCelsius,
          " °C");
    check(noted("Humidity"), air.humidity, AirLimits::leastHumidity, AirLimits::greatestHumidity,
          " %");
    return found;
}

Climate climateOf(const Air& build, const Air& driest, const Air& dampest) {
    const auto moisture = [](const Air& air) {
        return equilibriumMoisture(air.celsius, air.humidity);
    };
    return {moisture(build), moisture(driest), moisture(dampest)};
}

const std::vector<ClimateSetting>& climateSettings() {
    static const std::vector<ClimateSetting> settings{
        {"build-percent", noted("Moisture when built"),
         noted("Of the timber on the day of its last glue-up, as a meter shows it."),
         &Climate::build},
        {"driest-percent", noted("Moisture in the driest season"),
         noted("What the wood settles at where the board lives, when the air is driest."),
         &Climate::driest},
        {"dampest-percent", noted("Moisture in the dampest season"),
         noted("What the wood settles at where the board lives, when the air is dampest."),
         &Climate::dampest},
    };
    return settings;
}

std::vector<Fault> faults(const Climate& climate) {
    std::vector<Fault> found;
    for (const ClimateSetting& setting : climateSettings()) {
        const double moisture = climate.*setting.value;
        if (!(moisture >= 0 && moisture <= fibreSaturation)) {
            found.push_back(
                {say(setting.name),
                 say("must be from {1} to {2}", percentText(0), percentText(fibreSaturation)),
                 percentText(moisture)});
        }
    }
    if (climate.dampest < climate.driest) {
        found.push_back(
            {say("Moisture in the dampest season"),
             say("must be at least that of the driest, {1}", percentText(climate.driest)),
             percentText(climate.dampest)});
    }
    return found;
}

const std::vector<ClimatePreset>& climatePresets() {
    static const std::vector<ClimatePreset> presets = [] {
        const std::string averages =
            noted("Average: Wood Handbook (US Forest Products Laboratory, 2010), "
                  "figure 13-1, quoted at second hand; range of single pieces: "
                  "value from memory");
        const std::string memory = noted("Value from memory");
        return std::vector<ClimatePreset>{
            {"heated-inland", noted("Heated home, inland"), {8, 6, 10}, averages},
            {"dry-south-west", noted("Home in a dry south-west"), {6, 4, 9}, averages},
            {"damp-coast", noted("Home on a damp, warm coast"), {11, 8, 13}, averages},
            {"heated-maritime", noted("Heated home, mild and damp outdoors"), {10, 8, 12}, memory},
            {"hut", noted("Hut or house heated now and then"), {12, 8, 16}, memory},
            {"unheated-workshop", noted("Unheated workshop or shed"), {13, 11, 18}, memory},
        };
    }();
    return presets;
}

const ClimatePreset* presetOf(const Climate& climate) {
    const std::vector<ClimatePreset>& all = climatePresets();
    const auto found = std::find_if(all.begin(), all.end(), [&](const ClimatePreset& preset) {
        return preset.climate == climate;
    });
    return found == all.end() ? nullptr : &*found;
}

}  // namespace kerfwright
