// Joints that hold little, or that the drawing does not show.
#include "core/bench/rules.h"
#include "core/words/say.h"

namespace kerfwright::rules {
namespace {

/// Where each joint runs, for facts.
std::string placesOf(const std::vector<Joint>& joints) {
    std::string all;
    for (const Joint& joint : joints) {
        all += (all.empty() ? "" : " ") + std::string(joint.vertical ? "down" : "across") + ',' +
               std::to_string(joint.at.nm()) + ',' + std::to_string(joint.from.nm()) + ',' +
               std::to_string(joint.to.nm());
    }
    return all;
}

}  // namespace

// The old view is that such joints are weak; one test of 2021 found them stronger than thought.
// Sizing the ends first is the usual precaution.
void endToEnd(const Scene& on, Found& found) {
    if (on.board.build != Build::LongGrain) {
        return;
    }
    forEach<Glue>(on, [&](const Glue& work, const Size*, int step) {
        const bool alongGrain =
            work.final ? on.plan.byColumns != on.plan.grainDown : work.along == GlueAlong::Down;
        if (alongGrain && work.parts.size() > 1) {
            const std::size_t joints = work.parts.size() - 1;
            found.push_back(
                {Severity::Caution, "end-to-end",
                 !work.final         ? say("Parts of {1} meet end grain to end grain", work.result)
                 : on.plan.byColumns ? say("Columns meet end grain to end grain")
                                     : say("Rows meet end grain to end grain"),
                 work.final
                     ? sayCount(joints,
                                "{1} joint in the final glue-up joins sawn ends, which hold far "
                                "less than long grain.",
                                "{1} joints in the final glue-up join sawn ends, which hold far "
                                "less than long grain.")
                     : sayCount(joints,
                                "{1} joint in this glue-up joins sawn ends, which hold far less "
                                "than long grain.",
                                "{1} joints in this glue-up join sawn ends, which hold far less "
                                "than long grain."),
                 say("Brush thin glue on the ends, let it soak in, then glue as usual. Never lift "
                     "the board by one edge; back it with a frame or a substrate where it can be "
                     "leant on."),
                 step});
            found.back().about = work.final ? "field" : work.result;
            found.back().said = {fact("joints", static_cast<std::int64_t>(joints)),
                                 fact("columns", std::int64_t{on.plan.byColumns ? 1 : 0})};
        }
    });
}

void extraJoints(const Scene& on, Found& found) {
    if (!on.plan.extraJoints.empty()) {
        found.push_back(
            {Severity::Note,
             "extra-joints",
             say("Joints inside pieces"),
             sayCount(
                 on.plan.extraJoints.size(),
                 "{1} joint was added inside a piece that straight glue lines or the timber's "
                 "section cannot give whole; it is drawn dashed, or fine where it is short.",
                 "{1} joints were added inside pieces that straight glue lines or the "
                 "timber's section cannot give whole; they are drawn dashed, or fine where they "
                 "are short."),
             say("Pick strips of one plank for both sides of such a joint, or change the pattern."),
             -1,
             {},
             piecesAt(on, on.plan.extraJoints)});
        found.back().said = {fact("joints", static_cast<std::int64_t>(on.plan.extraJoints.size())),
                             fact("places", placesOf(on.plan.extraJoints))};
    }
}

void omittedJoints(const Scene& on, Found& found) {
    if (!on.plan.omittedJoints.empty()) {
        Remedy each{say("Make each piece of its own strip")};
        each.choices = on.choices;
        each.choices->mergeLike = false;
        found.push_back({Severity::Note,
                         "omitted-joints",
                         say("Joints left out"),
                         sayCount(on.plan.omittedJoints.size(),
                                  "{1} joint between pieces of one wood will not be there: one "
                                  "strip makes both pieces.",
                                  "{1} joints between pieces of one wood will not be there: one "
                                  "strip makes both pieces."),
                         say("Switch off merging of like pieces if each joint shall be seen."),
                         -1,
                         {},
                         piecesAt(on, on.plan.omittedJoints),
                         {each}});
        found.back().said = {
            fact("joints", static_cast<std::int64_t>(on.plan.omittedJoints.size())),
            fact("places", placesOf(on.plan.omittedJoints))};
    }
}

}  // namespace kerfwright::rules
