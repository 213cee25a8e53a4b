#include "core/sheets/gluewords.h"

#include "core/sheets/flow.h"
#include "core/words/say.h"

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

std::string glueAmount(double grams) {
    return figure(std::ceil(grams / 5) * 5, "g");
}

/// How many clamps is advice: sound boards are made with fewer, where joints fit.
std::string clampWords(const GlueUpNeeds& needs, const GlueTimes& times, const Notation& notation) {
    const std::string inClamps = figure(times.clampMinutes, "min");
    const std::string unworked = figure(times.machiningHours, "h");
    if (needs.clamps > 1 && needs.clamps < needs.clampsByForce) {
        return sayCount(needs.clamps,
                        "{1} clamp, as many as have room, one every {2}; {3} at least, no machine "
                        "before {4}.",
                        "{1} clamps, as many as have room, one every {2}; {3} at least, no machine "
                        "before {4}.",
                        unbroken(aboutLength(needs.spacing, notation)), inClamps, unworked);
    }
    if (needs.clamps > 1) {
        return sayCount(needs.clamps,
                        "{1} clamp or so, one every {2}; {3} at least, no machine before {4}.",
                        "{1} clamps or so, one every {2}; {3} at least, no machine before {4}.",
                        unbroken(aboutLength(needs.spacing, notation)), inClamps, unworked);
    }
    return sayCount(needs.clamps, "{1} clamp or so; {2} at least, no machine before {3}.",
                    "{1} clamps or so; {2} at least, no machine before {3}.", inClamps, unworked);
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
    return say("All glue of the border together: {1} of face, about {2} of wood glue.",
               unbroken(formatArea(area, notation.unit)), glueAmount(grams));
}

std::string glueWords(const Job& job, const Glue& glue, const Notation& notation) {
    const auto needs =
        std::find_if(job.glue.glueUps.begin(), job.glue.glueUps.end(),
                     [&](const GlueUpNeeds& one) { return one.result == glue.result; });
    const std::string face = unbroken(formatArea(glue.glueFace, notation.unit));
    const std::size_t joints = glue.parts.size() - 1;
    if (needs == job.glue.glueUps.end() || !job.glue.times) {
        return sayCount(joints, "Glue face {2} in {1} joint.", "Glue face {2} in {1} joints.",
                        face);
    }
    const GlueTimes& times = *job.glue.times;
    const std::string spreading = figure(std::ceil(needs->spreadMinutes), "min");
    const std::string open = figure(times.openMinutes, "min");
    const std::string clamps = clampWords(*needs, times, notation);
    const std::string taken =
        needs->withinOpenTime
            ? say("Spreading takes about {1} of about {2} open time; {3}", spreading, open, clamps)
            : sayCount(needs->loads,
                       "Spreading takes about {2} of about {3} open time: glue in {1} group, then "
                       "join the groups. {4}",
                       "Spreading takes about {2} of about {3} open time: glue in {1} groups, then "
                       "join the groups. {4}",
                       spreading, open, clamps);
    return sentences({sayCount(joints, "Glue face {2} in {1} joint, about {3} of wood glue.",
                               "Glue face {2} in {1} joints, about {3} of wood glue.", face,
                               glueAmount(needs->grams)),
                      taken, say("What the glue's own sheet says comes first.")});
}

}  // namespace kerfwright
