#include "core/timber/shopping.h"

#include "core/measure/at.h"
#include "core/wood/price.h"
#include "core/words/say.h"

#include <algorithm>
#include <map>
#include <tuple>

namespace kerfwright {
namespace {

constexpr std::size_t longestList = 12;

/// The thinnest thickness that a strip can be sawn from; 0 where there is none.
Length thicknessFor(const WantedStrips& strips, const Yard& yard, const CutRules& rules) {
    Length best;
    for (const Length thickness : yard.thicknesses) {
        const Plank plank{"", strips.wood, thickness, strips.width, strips.length};
        const bool taken = suits(strips, plank, false, rules) || suits(strips, plank, true, rules);
        if (taken && (best == Length() || thickness < best)) {
            best = thickness;
        }
    }
    return best;
}

/// As many of every size as could be of use.
void offer(Rack& rack, const std::string& wood, Length thickness, const Demand& demand,
           const Yard& yard, const Wood* priceOf) {
    Area wanted;
    int strips = 0;
    for (const WantedStrips& line : demand.strips) {
        wanted += area(line.length, std::min(line.width, line.thickness)) * line.count;
        wanted += area(line.length, std::max(line.width, line.thickness)) * line.count;
        strips += line.count;
    }
    for (const Length width : yard.widths) {
        for (const Length length : yard.lengths) {
            // Twice the timber and one more; no strip needs a plank of its own more than once.
            const detail::Wide full = wanted.squareNm() / area(width, length).squareNm() + 2;
            const int count = static_cast<int>(std::min<detail::Wide>(full, strips));
            // The first of a size is charged like the others, for the choice at least.
            const Volume charged =
                Tallying(yard.tally, yard.thicknesses).charged(thickness, width, length);
            const std::optional<std::int64_t> price =
                priceOf != nullptr ? cost(charged, priceOf->price) : std::nullopt;
            // Without a price the charged cubic centimetres are as good to compare by.
            const auto counted = price.value_or(static_cast<std::int64_t>(
                charged.cubicNm() / (detail::Wide{10'000'000} * 10'000'000 * 10'000'000)));
            Plank plank{"", wood, thickness, width, length, {}, std::max<std::int64_t>(counted, 1)};
            for (int i = 0; i < count; ++i) {
                plank.label = "N" + std::to_string(rack.planks.size() + 1);
                rack.planks.push_back(plank);
            }
        }
    }
}

bool comesFirst(const ShoppingLine& a, const ShoppingLine& b) {
    return std::tie(b.thickness, b.width, b.length) < std::tie(a.thickness, a.width, a.length);
}

/// Only the planks that are cut, renumbered.
void keepUsed(ShoppingList& list, const Rack& offered) {
    for (PlankCuts& cuts : list.layout.planks) {
        Plank plank = offered.planks[at(cuts.plank)];
        cuts.plank = static_cast<int>(list.planks.planks.size());
        plank.label = "N" + std::to_string(list.planks.planks.size() + 1);
        list.planks.planks.push_back(std::move(plank));
    }
}

void countLines(ShoppingList& list, const Yard& yard, const std::vector<Wood>& woods,
                const std::vector<std::string>& order) {
    Tallying tallying(yard.tally, yard.thicknesses);
    bool allPriced = true;
    std::int64_t price = 0;
    for (const std::string& wood : order) {
        std::vector<ShoppingLine> lines;
        for (Plank& plank : list.planks.planks) {
            if (plank.wood != wood) {
                continue;
            }
            auto line = std::find_if(lines.begin(), lines.end(), [&](const ShoppingLine& one) {
                return std::tie(one.thickness, one.width, one.length) ==
                       std::tie(plank.thickness, plank.width, plank.length);
            });
            if (line == lines.end()) {
                lines.push_back(
                    {wood, plank.thickness, plank.width, plank.length, 0, {}, {}, std::nullopt});
                line = lines.end() - 1;
            }
            const Volume charged = tallying.charged(plank.thickness, plank.width, plank.length);
            ++line->count;
            line->volume += volume(plank.thickness, plank.width, plank.length);
            line->charged += charged;
            const Wood* known = findWood(woods, wood);
            plank.price = known != nullptr ? cost(charged, known->price).value_or(0) : 0;
            if (plank.price > 0) {
                line->price = line->price.value_or(0) + plank.price;
            }
            allPriced = allPriced && plank.price > 0;
            price += plank.price;
        }
        std::sort(lines.begin(), lines.end(), comesFirst);
        for (const ShoppingLine& line : lines) {
            list.volume += line.volume;
            list.charged += line.charged;
            list.lines.push_back(line);
        }
    }
    if (allPriced) {
        list.price = price;
    }
}

}  // namespace

Yard quarterYard() {
    // Quarters: rough 3/4 in as 3/4, 4/4 as 1 in, and so on to 16/4.
    return {{Length::inch(3, 4), Length::inch(1), Length::inch(5, 4), Length::inch(3, 2),
             Length::inch(2), Length::inch(3), Length::inch(4)},
            {Length::inch(4), Length::inch(6), Length::inch(8)},
            {Length::inch(48), Length::inch(72), Length::inch(96), Length::inch(120)},
            Tally::SurfaceMeasure};
}

Yard metricYard() {
    return {{Length::mm(19), Length::mm(26), Length::mm(32), Length::mm(38), Length::mm(52),
             Length::mm(63), Length::mm(75), Length::mm(100)},
            {Length::mm(100), Length::mm(150), Length::mm(200)},
            {Length::mm(1'000), Length::mm(1'500), Length::mm(2'000), Length::mm(2'500)},
            Tally::Exact};
}

std::vector<Fault> faults(const Yard& yard, const Notation& notation) {
    std::vector<Fault> found;
    const auto check = [&](const std::string& entry, const std::vector<Length>& sizes,
                           Length greatest) {
        if (sizes.empty() || sizes.size() > longestList) {
            found.push_back({entry, say("must be from 1 to {1} sizes", longestList),
                             std::to_string(sizes.size())});
        }
        for (const Length size : sizes) {
            if (size <= Length() || size > greatest) {
                found.push_back(
                    {entry,
                     say("must be more than 0 and at most {1}", formatGreatest(greatest, notation)),
                     formatExact(size, notation)});
            }
        }
    };
    check(say("Yard, thicknesses"), yard.thicknesses, RackLimits::thickness);
    check(say("Yard, widths"), yard.widths, RackLimits::width);
    check(say("Yard, lengths"), yard.lengths, RackLimits::length);
    return found;
}

Demand missingOf(const Layout& layout, const Demand& demand) {
    Demand missing;
    for (std::size_t i = 0; i < demand.strips.size(); ++i) {
        if (layout.missing[i] > 0) {
            missing.strips.push_back(demand.strips[i]);
            missing.strips.back().count = layout.missing[i];
        }
    }
    return missing;
}

ShoppingList shopping(const Demand& demand, const Yard& yard, const std::vector<Wood>& woods,
                      const CutRules& rules, const LayoutCallback& callback) {
    std::vector<std::string> order;
    std::map<std::pair<std::string, Length>, Demand> kinds;
    for (const WantedStrips& strips : demand.strips) {
        if (std::find(order.begin(), order.end(), strips.wood) == order.end()) {
            order.push_back(strips.wood);
        }
        const Length thickness = thicknessFor(strips, yard, rules);
        if (thickness > Length()) {
            kinds[{strips.wood, thickness}].strips.push_back(strips);
        }
    }
    Rack offered;
    for (const auto& [kind, wanted] : kinds) {
        offer(offered, kind.first, kind.second, wanted, yard, findWood(woods, kind.first));
    }
    ShoppingList list;
    list.layout = layout(offered, demand, rules, callback);
    list.impossible = list.layout.missing;
    for (std::size_t i = 0; i < demand.strips.size(); ++i) {
        const WantedStrips& strips = demand.strips[i];
        const Volume one = volume(strips.thickness, strips.width, strips.length);
        list.net += one * (strips.count - list.layout.missing[i]);
    }
    list.proven = list.layout.proven;
    list.gapPercent = list.layout.gapPercent();
    keepUsed(list, offered);
    countLines(list, yard, woods, order);
    // What is charged may differ from what the choice was made by: halves go up and down in turn.
    list.layout.costIn = list.price ? CostIn::Money : CostIn::Volume;
    list.layout.cost = 0;
    for (const Plank& plank : list.planks.planks) {
        list.layout.cost += countedCost(plank, rules, list.layout.costIn);
    }
    list.layout.bound = 0;
    list.layout.proven = false;
    return list;
}

}  // namespace kerfwright
