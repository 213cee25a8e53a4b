// What layouts are made by: the checks of demand and rules, and what a plank counts for.
#include "core/timber/layout.h"
#include "core/words/say.h"

#include <algorithm>

namespace kerfwright {
namespace {

constexpr std::int64_t mostStrips = 100'000;

constexpr detail::Wide cubicNmPerCubicCentimetre =
    detail::Wide{10'000'000} * 10'000'000 * 10'000'000;

}  // namespace

std::vector<Fault> faults(const Demand& demand, const Notation& notation) {
    std::vector<Fault> found;
    std::int64_t all = 0;
    for (const WantedStrips& strips : demand.strips) {
        const std::string where = say("Strips {1}", strips.label);
        const auto check = [&](const std::string& entry, Length size, Length greatest) {
            if (size <= Length() || size > greatest) {
                found.push_back(
                    {entry,
                     say("must be more than 0 and at most {1}", formatGreatest(greatest, notation)),
                     formatExact(size, notation)});
            }
        };
        check(say("{1}, thickness", where), strips.thickness, RackLimits::width);
        check(say("{1}, width", where), strips.width, RackLimits::width);
        check(say("{1}, length", where), strips.length, RackLimits::length);
        if (strips.wood.empty()) {
            found.push_back({say("{1}, wood", where), say("must be named"), ""});
        }
        if (strips.count < 1) {
            found.push_back({say("{1}, count", where), say("must be at least {1}", 1),
                             std::to_string(strips.count)});
        }
        all += std::max(strips.count, 0);
    }
    if (all > mostStrips) {
        found.push_back(
            {say("Strips"), say("must be at most {1} in all", mostStrips), std::to_string(all)});
    }
    return found;
}

std::vector<Fault> faults(const CutRules& rules, const Notation& notation) {
    std::vector<Fault> found;
    const auto check = [&](const std::string& entry, Length value) {
        if (value < Length() || value > RackLimits::width) {
            found.push_back(
                {entry, say("must be from 0 to {1}", formatGreatest(RackLimits::width, notation)),
                 formatExact(value, notation)});
        }
    };
    check(say("Kerf"), rules.kerf);
    check(say("End trim"), rules.endTrim);
    check(say("Edge trim"), rules.edgeTrim);
    check(say("Thicker planks"), rules.thicker);
    check(say("Shortest offcut"), rules.offcutLength);
    check(say("Narrowest offcut"), rules.offcutWidth);
    if (rules.offcutPercent < 0 || rules.offcutPercent > 100) {
        found.push_back({say("Offcuts count for"), say("must be from 0 to {1}", "100 %"),
                         std::to_string(rules.offcutPercent)});
    }
    if (rules.budget < 0) {
        found.push_back({sayIn("entry", "Search"), say("must have a budget of at least 0 steps"),
                         std::to_string(rules.budget)});
    }
    return found;
}

CutRules cutRules(const Shop& shop) {
    CutRules rules;
    rules.kerf = shop.kerf;
    return rules;
}

double Layout::gapPercent() const {
    if (proven) {
        return 0;
    }
    if (!isComplete()) {
        const double least = leastMissingVolume.toCubicMetres();
        const double missed = missingVolume.toCubicMetres();
        return least > 0 ? (missed / least - 1) * 100 : 100;
    }
    return bound > 0 ? (static_cast<double>(cost) / static_cast<double>(bound) - 1) * 100 : 100;
}

std::int64_t countedCost(const Plank& plank, const CutRules& rules, CostIn in) {
    std::int64_t whole = plank.price;
    if (in == CostIn::Volume) {
        const detail::Wide cubicNm = volume(plank.thickness, plank.width, plank.length).cubicNm();
        whole = static_cast<std::int64_t>((cubicNm + cubicNmPerCubicCentimetre - 1) /
                                          cubicNmPerCubicCentimetre);
    }
    return std::max<std::int64_t>(plank.isOffcut ? whole * rules.offcutPercent / 100 : whole, 1);
}

Length acrossPlank(const WantedStrips& strips, bool onEdge) {
    return onEdge ? strips.thickness : strips.width;
}

bool suits(const WantedStrips& strips, const Plank& plank, bool onEdge, const CutRules& rules) {
    const Length through = onEdge ? strips.width : strips.thickness;
    return strips.wood == plank.wood && (strips.plank.empty() || strips.plank == plank.label) &&
           (!onEdge || strips.eitherWay) && through <= plank.thickness &&
           plank.thickness - through <= rules.thicker;
}

}  // namespace kerfwright
