// How long the maker takes for each kind of work at the bench.
//
// Nobody publishes such times for single steps; only hours of whole boards are to be had. So all
// that is set here at first is a judgement, to be replaced by what the maker measures. Nothing here
// is a length that is cut, so it is kept in floating point.
#pragma once

#include "core/measure/result.h"

#include <vector>

namespace kerfwright {

/// Each value is a row of `rateSettings()`, which names its unit and says where it is from. Times
/// are minutes with hands on the work, handling included, unless said otherwise.
struct BenchRates {
    double setting = 4;        ///< to set a machine and cut a test piece
    double crosscut = 0.75;    ///< one cut
    double rip = 1;            ///< one cut, edge to edge of a strip
    double millMetre = 0.25;   ///< 1 m of a strip through jointer or planer, one pass
    double millPass = 1;       ///< mm that a pass of milling takes off
    double layPart = 0.75;     ///< to lay a part in its place and fit it dry
    double clamp = 1;          ///< to set one clamp and take it off
    double scrapeMetre = 1.5;  ///< 1 m of joint, squeezed-out glue off both faces
    double flattenLong = 6;    ///< 1 m2 of long grain at the flattening machine, one pass
    double flattenEnd = 8;     ///< the same of end grain
    double longPass = 0.4;     ///< mm that a pass of flattening takes off long grain
    double endPass = 0.15;     ///< the same of end grain
    double groove = 2;         ///< 1 m of groove or rebate
    double mitre = 4;          ///< to saw and trim one mitre
    double fitRail = 6;        ///< to fit a rail or a stick to its place
    double pin = 4;            ///< to bore for one pin and drive it
    double key = 6;            ///< to slot one corner, and to glue its key and trim it
    double sandLong = 60;      ///< 1 m2 of long grain through all grits
    double sandEnd = 180;      ///< 1 m2 of end grain through all grits
    double coats = 2;          ///< of finish; a whole number
    double coatArea = 20;      ///< 1 m2 of surface, one coat
    double dryingHours = 12;   ///< that a coat waits for the next, hands off
    double hoursADay = 4;      ///< at the bench
    friend bool operator==(const BenchRates&, const BenchRates&) = default;
};

struct RateSetting {
    const char* key;     ///< "crosscut-minutes"
    const char* name;    ///< to be said: "A crosscut"
    const char* unit;    ///< "min"
    const char* source;  ///< to be said
    double BenchRates::*value;
    double least;     ///< inclusive
    double greatest;  ///< inclusive
    bool whole = false;
};
/// In the order a form shows them.
const std::vector<RateSetting>& rateSettings();
/// Outside the limits of `rateSettings()`, or no whole number where one is asked for.
std::vector<Fault> faults(const BenchRates& rates);

}  // namespace kerfwright
