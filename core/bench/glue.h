// Glue and clamps for each glue-up: how much, how long, how hard, how many.
//
// All of it is advice and none of it stops a plan: makers report sound boards at a fraction of the
// pressures that books ask for, where joints fit. Nothing here is a length that is cut, so it is
// reckoned in floating point.
#pragma once

#include "core/board/use.h"
#include "core/glueup/steps.h"
#include "core/shop/glueshop.h"
#include "core/wood/wood.h"

#include <optional>
#include <string>
#include <vector>

namespace kerfwright {

/// A kind of clamp and the force that two people reached with it on average.
struct ClampKind {
    const char* key;   ///< "parallel-jaw"
    const char* name;  ///< "Parallel-jaw clamp", to be said
    double poundsForce;
    double newtons() const { return poundsForce * 4.4482216152605; }
};
const std::vector<ClampKind>& clampKinds();
/// Where those forces are from, and how far people differ.
std::string clampSource();

/// Colder glue takes longer: twice as long for every 10 °C, a rule of thumb (value from memory).
struct GlueTimes {
    double openMinutes = 0;
    double clampMinutes = 0;
    double machiningHours = 0;
    double cureHours = 0;
};
/// Empty where the shop is colder than the glue bears.
std::optional<GlueTimes> glueTimes(const GlueShop& shop);

/// MPa for a wood of that density at 12 %: between the shop's two pressures in a straight line. For
/// 0, a density that is not known, the greater one.
double pressureFor(double density, const GlueShop& shop);

/// How many clamps bring `pressure` (MPa) to a face of that area. At least 1.
int clampsFor(double pressure, Area face, double newtonsPerClamp);

/// mm from clamp to clamp at the least: heads of bar clamps side by side, every other one from the
/// other face (common practice, no source).
inline constexpr double clampRoom = 50;

/// One step of the list that glues.
struct GlueUpNeeds {
    int step = -1;       ///< index into the step list
    std::string result;  ///< label of the workpiece
    bool final = false;
    int lines = 0;     ///< glue lines
    Area area;         ///< of all of them together, one side of each
    double grams = 0;  ///< of glue
    double spreadMinutes = 0;
    bool withinOpenTime = false;  ///< also false where the shop is too cold
    int linesInOpenTime = 0;      ///< how many there is time for; 0 where it is too cold
    int loads = 1;       ///< clamp loads to part it into so that each is within the open time
    Area line;           ///< of one glue line: force passes through all of them in series
    double density = 0;  ///< of the heaviest wood in it; 0 where none is known
    Gluing hardest = Gluing::Unknown;  ///< the least easily glued class among its woods
    double pressure = 0;               ///< MPa
    double force = 0;                  ///< N in all
    int clampsByForce = 0;
    int clampsBySpacing = 0;
    /// The greater of the two, but no more than have room side by side: `clampRoom`.
    int clamps = 0;
    Length jointLength;
    double spacing = 0;  ///< mm from clamp to clamp; the first is half of it from the end
};

/// A step that glues parts of a border: tongues, inlay, mitres, edges, keys. How such joints are
/// pressed is not reckoned: it is the maker's way with band clamps, tape and wedges.
struct BorderGlue {
    int step = -1;  ///< index into the step list
    Area area;
    double grams = 0;
};

struct GlueNeeds {
    std::vector<GlueUpNeeds> glueUps;  ///< in the order of the steps
    std::vector<BorderGlue> border;    ///< in the order of the steps, those with glue alone
    Area area;                         ///< of both
    double grams = 0;                  ///< for both
    std::optional<GlueTimes> times;
};

GlueNeeds glueNeeds(const StepList& list, const std::vector<Wood>& woods, const GlueShop& shop);

/// Resistance of glue to water, EN 204.
enum class WaterClass { D1, D2, D3, D4 };
struct WaterClassInfo {
    WaterClass grade;
    const char* name;         ///< "D3"
    const char* use;          ///< to be said
    double greatestMoisture;  ///< of the wood in use, percent; 0 where the class names none
    double dryStrength;       ///< N/mm2, as tested by EN 205
    double wetStrength;       ///< N/mm2, still wet after 4 days in water; 0 where not asked for
};
const std::vector<WaterClassInfo>& waterClasses();
std::string waterClassSource();

struct GlueAdvice {
    WaterClass grade;
    std::string why;
    std::string source;
};
GlueAdvice glueFor(BoardUse use);

}  // namespace kerfwright
