// Glue-ups that the glue or the clamps do not bear. Advice: none of it stops a plan.
#include "core/bench/rules.h"
#include "core/words/say.h"

#include <algorithm>
#include <cmath>

namespace kerfwright::rules {
namespace {

/// Steps of the glue-ups that are like that, the panels made there, and the worst of them.
struct Hit {
    const GlueUpNeeds* worst = nullptr;
    std::vector<int> steps;
    std::vector<std::string> results;
};

template <class Broken, class Worse>
Hit hits(const Scene& on, Broken broken, Worse worse) {
    Hit hit;
    for (const GlueUpNeeds& one : on.glue.glueUps) {
        if (broken(one)) {
            hit.steps.push_back(one.step);
            hit.results.push_back(one.result);
            if (hit.worst == nullptr || worse(one, *hit.worst)) {
                hit.worst = &one;
            }
        }
    }
    return hit;
}

/// The panels made there, for facts.
std::string parts(const Hit& hit) {
    std::string all;
    for (const std::string& result : hit.results) {
        all += (all.empty() ? "" : " ") + result;
    }
    return all;
}

/// As books ask for them, whether or not they have room.
int clampsAsked(const GlueUpNeeds& one) {
    return std::max(one.clampsByForce, one.clampsBySpacing);
}

long rounded(double value) {
    return std::lround(value);
}

}  // namespace

void coldGlue(const Scene& on, Found& found) {
    const GlueShop& glue = on.conditions.glue;
    if (!on.glue.times && !on.glue.glueUps.empty()) {
        found.push_back({Severity::Danger, "cold-glue", say("Too cold to glue"),
                         say("The shop is at {1} °C; below {2} °C this glue dries to chalk and "
                             "holds nothing.",
                             rounded(glue.celsius), rounded(glue.leastCelsius)),
                         say("Warm shop, wood and glue, and keep them warm until the clamps come "
                             "off."),
                         on.glue.glueUps.front().step});
        found.back().said = {hundredths("celsius", glue.celsius),
                             hundredths("least-celsius", glue.leastCelsius)};
    }
}

void openTime(const Scene& on, Found& found) {
    if (!on.glue.times) {
        return;
    }
    const Hit hit = hits(
        on, [](const GlueUpNeeds& one) { return !one.withinOpenTime; },
        [](const GlueUpNeeds& a, const GlueUpNeeds& b) { return a.lines > b.lines; });
    if (hit.worst != nullptr) {
        const GlueUpNeeds& worst = *hit.worst;
        found.push_back(
            {Severity::Caution, "open-time", say("More joints than the glue stays open for"),
             sayCount(hit.steps.size(),
                      "{1} glue-up takes longer to spread than the glue may lie open.",
                      "{1} glue-ups take longer to spread than the glue may lie open.") +
                 " " +
                 sayCount(
                     worst.lines,
                     "The largest, {2}, has {1} line and takes {3} min; there is time for {4} "
                     "in {5} min.",
                     "The largest, {2}, has {1} lines and takes {3} min; there is time for {4} "
                     "in {5} min.",
                     worst.result, rounded(worst.spreadMinutes), worst.linesInOpenTime,
                     rounded(on.glue.times->openMinutes)),
             sayCount(worst.loads,
                      "Clamp it in {1} load, use a slower glue, or have somebody help you spread "
                      "it.",
                      "Clamp it in {1} loads and join those when they have set, use a slower glue, "
                      "or have somebody help you spread it."),
             worst.step, hit.steps, worst.final ? CautionPlace() : slicesOf(on, hit.results)});
        found.back().said = {fact("glue-ups", parts(hit)),
                             fact("worst", worst.result),
                             fact("lines", std::int64_t{worst.lines}),
                             hundredths("minutes", worst.spreadMinutes),
                             fact("lines-in-time", std::int64_t{worst.linesInOpenTime}),
                             hundredths("open-minutes", on.glue.times->openMinutes),
                             fact("loads", std::int64_t{worst.loads})};
    }
}

// Makers report sound joints at far less pressure where joints fit: advice, and no more.
void fewClamps(const Scene& on, Found& found) {
    const double owned = on.conditions.glue.clampsOwned;
    if (owned <= 0) {
        return;
    }
    const Hit hit = hits(
        on, [&](const GlueUpNeeds& one) { return clampsAsked(one) > owned; },
        [](const GlueUpNeeds& a, const GlueUpNeeds& b) { return clampsAsked(a) > clampsAsked(b); });
    if (hit.worst != nullptr) {
        const GlueUpNeeds& worst = *hit.worst;
        found.push_back(
            {Severity::Note, "few-clamps", say("Fewer clamps than books ask for"),
             sayCount(hit.steps.size(), "{1} glue-up asks for more than your {2}.",
                      "{1} glue-ups ask for more than your {2}.", rounded(owned)) +
                 " " +
                 say("The most, {1}, are for {2}: {3} kN in all.", clampsAsked(worst), worst.result,
                     rounded(worst.force / 1000)),
             say("True joints hold with less: look for a line of squeezed-out glue along the whole "
                 "joint. Else borrow clamps, use stronger ones, or glue in smaller loads."),
             worst.step, hit.steps, worst.final ? CautionPlace() : slicesOf(on, hit.results)});
        found.back().said = {fact("glue-ups", parts(hit)), fact("worst", worst.result),
                             hundredths("owned", owned),
                             fact("clamps", std::int64_t{clampsAsked(worst)}),
                             fact("newtons", std::int64_t{rounded(worst.force)})};
    }
}

// The class is that of the Wood Handbook (2010), table 10-1; to wipe such woods is common practice.
void hardToGlue(const Scene& on, Found& found) {
    std::vector<int> woods;
    std::vector<std::string> names;
    const std::vector<WoodUse> use = woodUse(on.wish.field, static_cast<int>(on.woods.size()));
    std::size_t pieces = 0;
    for (std::size_t i = 0; i < use.size(); ++i) {
        if (use[i].pieces > 0 && on.woods[i].gluing == Gluing::WithDifficulty) {
            woods.push_back(static_cast<int>(i));
            names.push_back(on.woods[i].name);
            pieces += static_cast<std::size_t>(use[i].pieces);
        }
    }
    if (!woods.empty()) {
        found.push_back(
            {Severity::Caution,
             "hard-to-glue",
             say("A wood that glues with difficulty"),
             sayCount(pieces, "{1} piece is of {2}, which the tables call hard to bond.",
                      "{1} pieces are of {2}, which the tables call hard to bond.", sayList(names)),
             say("Plane or sand the faces on the day, wipe them with a solvent that "
                 "dries at once, and try a joint on offcuts first."),
             -1,
             {},
             piecesOf(on, woods)});
        found.back().said = {fact("woods", woodKeys(on, woods)),
                             fact("count", static_cast<std::int64_t>(pieces))};
    }
}

}  // namespace kerfwright::rules
