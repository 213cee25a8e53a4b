#include "core/timber/timberwords.h"

#include "core/measure/number.h"
#include "core/timber/demand.h"
#include "core/words/say.h"

#include <algorithm>
#include <cmath>

namespace kerfwright {
namespace {

/// Upwards, so that what is said is never better than what is known.
std::string percent(double value) {
    return formatNumber(std::ceil(value * 10) / 10) + " %";
}

int partsOf(const WantedStrips& strips) {
    const std::vector<std::string> labels = labelsOf(strips);
    return labels.empty() ? 1
                          : 1 + static_cast<int>(
                                    std::count(labels.front().begin(), labels.front().end(), '+'));
}

std::string goodness(const Layout& layout) {
    if (layout.isComplete()) {
        return layout.proven ? say("Proven best: no other layout of these planks costs less.")
                             : say("At most {1} above the best possible layout of these planks.",
                                   percent(layout.gapPercent()));
    }
    if (layout.proven) {
        return say("Proven: no layout of these planks leaves less timber missing.");
    }
    if (layout.leastMissingVolume > Volume()) {
        return say("At most {1} more timber missing than the best possible layout would leave.",
                   percent(layout.gapPercent()));
    }
    return say("Another layout might leave less missing: nothing is proven.");
}

/// Alike strips that are missing, whichever boards and panels they are of.
struct ShortSize {
    std::string size;
    int count = 0;
};

/// What is missing of one wood, and what its strips can be had from.
struct Short {
    std::string wood;
    std::vector<ShortSize> sizes = {};
    std::vector<std::string> strips = {};
    std::vector<std::string> planks = {};
    int count = 0;
    int impossible = 0;
};

std::vector<Short> shortOf(const TimberPlan& plan, const std::vector<Wood>& woods,
                           const Notation& notation) {
    std::vector<Short> all;
    const auto of = [&all](const std::string& wood) {
        return std::find_if(all.begin(), all.end(),
                            [&](const Short& one) { return one.wood == wood; });
    };
    for (const WantedStrips& strips : plan.missing().strips) {
        const std::string size = sizeWords(strips, notation);
        auto known = of(strips.wood);
        if (known == all.end()) {
            known = all.insert(all.end(), Short{.wood = strips.wood});
        }
        const auto alike = std::find_if(known->sizes.begin(), known->sizes.end(),
                                        [&](const ShortSize& one) { return one.size == size; });
        if (alike == known->sizes.end()) {
            known->sizes.push_back({size, strips.count});
        } else {
            alike->count += strips.count;
        }
        known->count += strips.count;
    }
    for (Short& wood : all) {
        for (const ShortSize& one : wood.sizes) {
            wood.strips.push_back(
                wood.strips.empty()
                    ? sayCount(one.count, "{1} strip of {2} {3}", "{1} strips of {2} {3}",
                               woodName(wood.wood, woods), one.size)
                    : sayCount(one.count, "{1} strip of {2}", "{1} strips of {2}", one.size));
        }
    }
    const ShoppingList& list = plan.shopping;
    for (std::size_t i = 0; i < list.impossible.size(); ++i) {
        if (const auto known = of(plan.toBuy.strips[i].wood); known != all.end()) {
            known->impossible += list.impossible[i];
        }
    }
    for (const ShoppingLine& line : list.lines) {
        if (const auto known = of(line.wood); known != all.end()) {
            known->planks.push_back(
                sayCount(line.count, "{1} plank {2}", "{1} planks {2}",
                         sizeWords(line.thickness, line.width, line.length, notation)));
        }
    }
    return all;
}

int railCount(const Demand& demand) {
    int count = 0;
    for (const WantedStrips& strips : demand.strips) {
        count += strips.isRail ? strips.count * partsOf(strips) : 0;
    }
    return count;
}

/// Elsewhere strips are counted without the border; a sum of both would look like another number.
std::string withRails(int strips, int rails, int missing, const std::string& planks) {
    const std::string wanted =
        say("{1} and {2}", sayCount(strips, "{1} strip", "{1} strips"),
            sayCount(rails, "{1} piece of the border", "{1} pieces of the border"));
    if (missing == 0) {
        return say("{1} lie on {2}.", wanted, planks);
    }
    if (missing == strips + rails) {
        return say("{1} are wanted; none of them fits on this rack.", wanted);
    }
    return say("{1} are wanted; {2} of them lie on {3}.", wanted, strips + rails - missing, planks);
}

}  // namespace

int stripCount(const Demand& demand) {
    int count = 0;
    for (const WantedStrips& strips : demand.strips) {
        count += strips.count * partsOf(strips);
    }
    return count;
}

int missingCount(const TimberPlan& plan) {
    int count = 0;
    for (std::size_t i = 0; i < plan.demand.strips.size(); ++i) {
        count += plan.layout.missing[i] * partsOf(plan.demand.strips[i]);
    }
    return count;
}

std::string sizeWords(Length thickness, Length width, Length length, const Notation& notation) {
    return formatSize({thickness, width, length}, notation);
}

std::string sizeWords(const Plank& plank, const Notation& notation) {
    return sizeWords(plank.thickness, plank.width, plank.length, notation);
}

std::string sizeWords(const WantedStrips& strips, const Notation& notation) {
    return sizeWords(strips.thickness, strips.width, strips.length, notation);
}

std::string woodName(const std::string& key, const std::vector<Wood>& woods) {
    if (const Wood* own = findWood(woods, key)) {
        return own->name;
    }
    const Wood* catalogued = findWood(woodCatalogue(), key);
    return catalogued != nullptr ? spokenName(*catalogued) : key;
}

std::string layoutWords(const TimberPlan& plan) {
    const int all = stripCount(plan.demand);
    const int missing = missingCount(plan);
    if (all == 0) {
        return say("This board needs no strips.");
    }
    if (plan.rack.planks.empty()) {
        return say("Nothing is on the rack: all strips have to be bought.");
    }
    const std::string planks = sayCount(plan.rack.planks.size(), "{2} of {1} plank",
                                        "{2} of {1} planks", plan.layout.planks.size());
    std::string words;
    const int rails = railCount(plan.demand);
    if (rails > 0 && rails < all) {
        words = withRails(all - rails, rails, missing, planks);
    } else if (missing == 0) {
        words = sayCount(all, "The one strip lies on {2}.", "All {1} strips lie on {2}.", planks);
    } else if (missing == all) {
        words = sayCount(all, "The one strip does not fit on this rack.",
                         "None of the {1} strips fits on this rack.");
    } else {
        words = sayCount(all, "{2} of {1} strip lies on {3}.", "{2} of {1} strips lie on {3}.",
                         all - missing, planks);
    }
    return words + " " + verdict(plan.layout);
}

std::string verdict(const Layout& layout) {
    const std::string words = goodness(layout);
    return layout.stopped ? say("Stopped; this is the best so far.") + " " + words : words;
}

std::string shoppingVerdict(const ShoppingList& list) {
    if (list.proven) {
        return list.price ? say("Proven best: no other planks of this yard cost less.")
                          : say("Proven best: no other planks of this yard hold less timber.");
    }
    const std::string most = percent(list.gapPercent);
    return list.price
               ? say("Other planks of this yard might cost less, by at most {1}.", most)
               : say("Other planks of this yard might hold less timber, by at most {1}.", most);
}

std::string shortageInBrief(const TimberPlan& plan, const std::vector<Wood>& woods, Shopping told) {
    std::vector<std::pair<std::string, int>> counts;
    for (const WantedStrips& strips : plan.missing().strips) {
        auto known = std::find_if(counts.begin(), counts.end(),
                                  [&](const auto& one) { return one.first == strips.wood; });
        if (known == counts.end()) {
            known = counts.insert(counts.end(), {strips.wood, 0});
        }
        known->second += strips.count * partsOf(strips);
    }
    std::vector<std::string> each;
    for (const auto& [wood, count] : counts) {
        each.push_back(std::to_string(count) + " × " + woodName(wood, woods));
    }
    if (each.empty()) {
        return {};
    }
    if (told == Shopping::Panel) {
        return say("Missing: {1}. “Shopping” lists what to buy.", sayList(each));
    }
    // Without a line there is no slip.
    return plan.shopping.lines.empty()
               ? say("Missing: {1}. The yard as it is set has no plank for them.", sayList(each))
               : say("Missing: {1}. The shopping slip lists what to buy.", sayList(each));
}

std::vector<std::string> shortageWords(const TimberPlan& plan, const std::vector<Wood>& woods,
                                       const Notation& notation) {
    std::vector<std::string> sentences;
    for (const Short& one : shortOf(plan, woods, notation)) {
        const std::string strips = sayList(one.strips);
        std::string words =
            one.planks.empty() ? sayCount(one.count, "{2} does not fit.", "{2} do not fit.", strips)
                               : sayCount(one.count, "{2} does not fit: buy {3}.",
                                          "{2} do not fit: buy {3}.", strips, sayList(one.planks));
        if (one.impossible > 0) {
            words += " " + sayCount(one.impossible,
                                    "The yard as it is set has no plank for {1} of them.",
                                    "The yard as it is set has no plank for {1} of them.");
        }
        sentences.push_back(words);
    }
    return sentences;
}

}  // namespace kerfwright
