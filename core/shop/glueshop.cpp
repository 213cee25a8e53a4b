#include "core/shop/glueshop.h"

#include "core/shop/realfaults.h"
#include "core/words/say.h"

namespace kerfwright {

const std::vector<GlueSetting>& glueSettings() {
    static const std::vector<GlueSetting> settings{
        {"glue-spread", noted("Glue spread"), "g/m²",
         noted("150 to 200 for white and yellow wood glue: value from memory"), &GlueShop::spread,
         20, 1000},
        {"glue-seconds-per-line", noted("Time to spread a line"), "s",
         noted("Common practice, no source"), &GlueShop::secondsPerLine, 1, 3600},
        {"glue-open-minutes", noted("Open time at 20 °C"), "min",
         noted("5 to 10 minutes at 20 °C and 50 % humidity, 10 to 15 for slow types: value from "
               "memory"),
         &GlueShop::openMinutes, 0.5, 240},
        {"glue-clamp-minutes", noted("Clamp time at 20 °C"), "min",
         noted("30 minutes at least, seen in a glue's instructions; up to 60: value from memory"),
         &GlueShop::clampMinutes, 1, 10'000},
        {"glue-machining-hours", noted("Before it is worked, at 20 °C"), "h",
         noted("4 hours or overnight, seen in a glue's instructions"), &GlueShop::machiningHours, 0,
         1000},
        {"glue-cure-hours", noted("Full strength at 20 °C"), "h",
         noted("Seen in a glue's instructions"), &GlueShop::cureHours, 0.1, 1000},
        {"glue-celsius", noted("Temperature of the shop"), "°C",
         noted("Common practice, no source"), &GlueShop::celsius, -20, 60},
        {"glue-least-celsius", noted("Least temperature for the glue"), "°C",
         noted("8 °C reported of a water-resistant glue; pages on glue give 4 °C for yellow and 13 "
               "°C for white glue"),
         &GlueShop::leastCelsius, -20, 40},
        {"glue-light-pressure", noted("Pressure for light woods"), "MPa",
         noted("About 0.7: Wood Handbook, chapter 10, value from memory; 0.7 to 1.0 for softwoods "
               "seen in a trade journal of 2021"),
         &GlueShop::lightPressure, 0.01, 10},
        {"glue-heavy-pressure", noted("Pressure for heavy woods"), "MPa",
         noted("About 1.7: Wood Handbook, chapter 10, value from memory; 1.2 to 1.7 for hardwoods "
               "seen in a trade journal of 2021"),
         &GlueShop::heavyPressure, 0.01, 10},
        {"glue-light-density", noted("Light woods"), "kg/m³", noted("Common practice, no source"),
         &GlueShop::lightDensity, 100, 2000},
        {"glue-heavy-density", noted("Heavy woods"), "kg/m³", noted("Common practice, no source"),
         &GlueShop::heavyDensity, 100, 2000},
        {"clamp-force", noted("Force of a clamp"), "N",
         noted("A parallel-jaw clamp as measured by a trade journal in 2010"),
         &GlueShop::clampForce, 10, 100'000},
        {"clamp-caul", noted("Caul between clamp and work"), "mm",
         noted("Common practice, no source"), &GlueShop::caul, 0, 500},
        {"clamps-owned", noted("Clamps that you own"), "", noted("Yours to say; 0 where not said"),
         &GlueShop::clampsOwned, 0, 1000, true},
    };
    return settings;
}

std::vector<Fault> faults(const GlueShop& shop) {
    std::vector<Fault> found = realFaults(shop, glueSettings());
    if (shop.heavyDensity <= shop.lightDensity) {
        found.push_back(
            {say("Heavy woods"),
             say("must be heavier than light ones, {1}", numberText(shop.lightDensity, "kg/m³")),
             numberText(shop.heavyDensity, "kg/m³")});
    }
    return found;
}

}  // namespace kerfwright
