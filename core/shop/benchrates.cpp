#include "core/shop/benchrates.h"

#include "core/shop/realfaults.h"
#include "core/words/say.h"

namespace kerfwright {

const std::vector<RateSetting>& rateSettings() {
    static constexpr auto judged = noted("common practice, no source; yours to measure");
    static constexpr auto endGrain =
        noted("end grain takes about three times the sanding of side grain, as a maker reports; "
              "the time itself is common practice, no source");
    static const std::vector<RateSetting> settings{
        {"setting-minutes", noted("Set a machine"), "min", judged, &BenchRates::setting, 0, 240},
        {"crosscut-minutes", noted("A crosscut"), "min", judged, &BenchRates::crosscut, 0, 60},
        {"rip-minutes", noted("A rip"), "min", judged, &BenchRates::rip, 0, 60},
        {"mill-minutes", noted("Mill, one pass"), "min/m", judged, &BenchRates::millMetre, 0, 60},
        {"mill-pass", noted("Off in a milling pass"), "mm", judged, &BenchRates::millPass, 0.05,
         10},
        {"lay-minutes", noted("Lay and fit a part"), "min", judged, &BenchRates::layPart, 0, 60},
        {"clamp-minutes", noted("Set a clamp"), "min", judged, &BenchRates::clamp, 0, 60},
        {"scrape-minutes", noted("Scrape off glue"), "min/m", judged, &BenchRates::scrapeMetre, 0,
         60},
        {"flatten-long-minutes", noted("Flatten long grain"), "min/m²", judged,
         &BenchRates::flattenLong, 0, 600},
        {"flatten-end-minutes", noted("Flatten end grain"), "min/m²", judged,
         &BenchRates::flattenEnd, 0, 600},
        {"flatten-long-pass", noted("Off in a pass, long grain"), "mm", judged,
         &BenchRates::longPass, 0.02, 10},
        {"flatten-end-pass", noted("Off in a pass, end grain"), "mm", judged, &BenchRates::endPass,
         0.02, 10},
        {"groove-minutes", noted("Groove or rebate"), "min/m", judged, &BenchRates::groove, 0, 60},
        {"mitre-minutes", noted("A mitre"), "min", judged, &BenchRates::mitre, 0, 60},
        {"rail-minutes", noted("Fit a rail"), "min", judged, &BenchRates::fitRail, 0, 240},
        {"pin-minutes", noted("A pin"), "min", judged, &BenchRates::pin, 0, 60},
        {"key-minutes", noted("Key a corner"), "min", judged, &BenchRates::key, 0, 60},
        {"sand-long-minutes", noted("Sand long grain"), "min/m²", judged, &BenchRates::sandLong, 0,
         6000},
        {"sand-end-minutes", noted("Sand end grain"), "min/m²", endGrain, &BenchRates::sandEnd, 0,
         6000},
        {"coats", noted("Coats of finish"), "", judged, &BenchRates::coats, 0, 20, true},
        {"coat-minutes", noted("A coat"), "min/m²", judged, &BenchRates::coatArea, 0, 600},
        {"drying-hours", noted("A coat dries"), "h",
         noted("common practice, no source; what the finish's own sheet says comes first"),
         &BenchRates::dryingHours, 0, 1000},
        {"hours-a-day", noted("At the bench in a day"), "h", noted("yours to say"),
         &BenchRates::hoursADay, 0.25, 24},
    };
    return settings;
}

std::vector<Fault> faults(const BenchRates& rates) {
    return realFaults(rates, rateSettings());
}

}  // namespace kerfwright
