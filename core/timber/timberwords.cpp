// What a timber plan says in words.
#include "core/measure/number.h"
#include "core/timber/timber.h"

#include <cmath>

namespace kerfwright {
namespace {

std::string counted(std::size_t count, const char* one, const char* many) {
    return std::to_string(count) + " " + (count == 1 ? one : many);
}

/// Upwards, so that what is said is never better than what is known.
std::string percent(double value) {
    return formatNumber(std::ceil(value * 10) / 10) + " %";
}

std::string name(const std::vector<Wood>& woods, const std::string& key) {
    const Wood* wood = findWood(woods, key);
    return wood != nullptr ? wood->name : key;
}

}  // namespace

std::string verdict(const Layout& layout) {
    std::string words;
    if (layout.isComplete()) {
        words = layout.proven
                    ? std::string("Proven best: no other layout of these planks costs less.")
                    : "At most " + percent(layout.gapPercent()) +
                          " above the best possible layout of these planks.";
    } else if (layout.proven) {
        words = "Proven: no layout of these planks leaves less timber missing.";
    } else if (layout.leastMissingVolume > Volume()) {
        words = "At most " + percent(layout.gapPercent()) +
                " more timber missing than the best possible layout would leave.";
    } else {
        words = "Another layout might leave less missing: nothing is proven.";
    }
    return layout.stopped ? "Stopped; this is the best so far. " + words : words;
}

std::string sizesOf(const WantedStrips& strips, const Notation& notation) {
    return formatBare(strips.thickness, notation) + " × " + formatBare(strips.width, notation) +
           " × " + format(strips.length, notation);
}

std::string shortage(const TimberPlan& plan, const std::vector<Wood>& woods,
                     const Notation& notation) {
    std::size_t wanted = 0;
    for (const WantedStrips& strips : plan.demand.strips) {
        wanted += static_cast<std::size_t>(strips.count);
    }
    if (wanted == 0) {
        return "No strips are wanted.";
    }
    if (plan.layout.isComplete()) {
        return (wanted == 1 ? std::string("The one strip lies on ")
                            : "All " + std::to_string(wanted) + " strips lie on ") +
               counted(plan.layout.planks.size(), "plank.", "planks.");
    }
    std::string words = "The rack does not suffice. No place was found for:";
    for (const WantedStrips& strips : plan.missing().strips) {
        words += "\n" + counted(static_cast<std::size_t>(strips.count), "strip of ", "strips of ") +
                 name(woods, strips.wood) + ", " + sizesOf(strips, notation);
    }
    return words;
}

}  // namespace kerfwright
