#include "core/sheets/gluewords.h"

#include "core/sheets/flow.h"

#include <algorithm>
#include <cmath>

namespace kerfwright {
namespace {

/// A no-break space keeps a figure and its unit on one line.
std::string figure(double value, const char* unit) {
    return std::to_string(std::lround(value)) + "\u00a0" + unit;
}

}  // namespace

std::string glueWords(const Job& job, const Glue& glue, const Notation& notation) {
    const auto needs =
        std::find_if(job.glue.glueUps.begin(), job.glue.glueUps.end(),
                     [&](const GlueUpNeeds& one) { return one.result == glue.result; });
    std::string text = "Glue face " + unbroken(formatArea(glue.glueFace, notation.unit)) + " in " +
                       std::to_string(glue.parts.size() - 1) +
                       (glue.parts.size() == 2 ? " joint" : " joints");
    if (needs == job.glue.glueUps.end() || !job.glue.times) {
        return text + ".";
    }
    text += ", about " + figure(std::ceil(needs->grams / 5) * 5, "g") + " of wood glue. ";
    const GlueTimes& times = *job.glue.times;
    text += "Spreading takes about " + figure(std::ceil(needs->spreadMinutes), "min") +
            "; common glue stays open about " + figure(times.openMinutes, "min");
    text += needs->withinOpenTime
                ? ". "
                : ": glue in " + std::to_string(needs->loads) + " groups, then join the groups. ";
    return text + figure(times.clampMinutes, "min") + " in clamps at least, no machine before " +
           figure(times.machiningHours, "h") + ". What the glue's own sheet says comes first.";
}

}  // namespace kerfwright
