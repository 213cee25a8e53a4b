#include "core/sheets/gluewords.h"

#include "core/sheets/flow.h"

#include <algorithm>
#include <cmath>
#include <cstdint>

namespace kerfwright {
namespace {

/// A no-break space keeps a figure and its unit on one line.
std::string figure(double value, const char* unit) {
    return std::to_string(std::lround(value)) + "\u00a0" + unit;
}

/// Where a clamp stands is not measured finer than to a centimetre or half an inch.
std::string aboutLength(double mm, const Notation& notation) {
    const bool inches = notation.unit == Unit::Inches;
    const Length step = inches ? Length::inch(1, 2) : Length::mm(10);
    const auto steps = std::max<std::int64_t>(1, std::llround(mm / step.toMm()));
    return format(step * static_cast<int>(steps), notation);
}

}  // namespace

std::string borderGlueWords(const Job& job, const Notation& notation) {
    Area area;
    double grams = 0;
    for (const BorderGlue& joint : job.glue.border) {
        area += joint.area;
        grams += joint.grams;
    }
    if (area == Area()) {
        return {};
    }
    return "All glue of the border together: " + unbroken(formatArea(area, notation.unit)) +
           " of face, about " + figure(std::ceil(grams / 5) * 5, "g") + " of wood glue.";
}

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
            " of about " + figure(times.openMinutes, "min") + " open time";
    text += needs->withinOpenTime
                ? "; "
                : ": glue in " + std::to_string(needs->loads) + " groups, then join the groups. ";
    // Advice: sound boards are made with fewer, where joints fit.
    text += std::to_string(needs->clamps) + (needs->clamps == 1 ? " clamp" : " clamps") + " or so";
    if (needs->clamps > 1) {
        text += ", one every " + unbroken(aboutLength(needs->spacing, notation));
    }
    text += "; ";
    return text + figure(times.clampMinutes, "min") + " at least, no machine before " +
           figure(times.machiningHours, "h") + ". What the glue's own sheet says comes first.";
}

}  // namespace kerfwright
