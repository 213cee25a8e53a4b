#include "core/timber/worth.h"

#include "core/timber/timberwords.h"
#include "core/words/say.h"

#include <algorithm>
#include <map>
#include <numeric>
#include <tuple>

namespace kerfwright {
namespace {

/// Where the price of a plank comes from; lines are kept apart by it.
enum class PricedBy { Plank, Wood, Nothing };

std::string fromTheRack(const std::vector<std::string>& labels) {
    constexpr std::size_t most = 6;
    std::string first;
    for (std::size_t i = 0; i < labels.size() && i < most; ++i) {
        first += (i == 0 ? "" : ", ") + labels[i];
    }
    return labels.size() > most
               ? sayCount(labels.size(), "from the rack: {1} plank, {2} and {3} more",
                          "from the rack: {1} planks, {2} and {3} more", first,
                          labels.size() - most)
               : sayCount(labels.size(), "from the rack: {1} plank, {2}",
                          "from the rack: {1} planks, {2}", first);
}

std::string toBuy(const ShoppingLine& line, const Notation& notation) {
    const std::string size = sizeWords(line.thickness, line.width, line.length, notation);
    return line.charged == line.volume
               ? sayCount(line.count, "{1} plank {2}, bought", "{1} planks {2}, bought", size)
               : sayCount(line.count, "{1} plank {2}, bought and charged as {3}",
                          "{1} planks {2}, bought and charged as {3}", size,
                          formatVolume(line.charged, notation.unit));
}

/// A plank that was given the price of its wood is told as priced by it.
PricedBy pricedBy(const Plank& plank, const Wood* wood) {
    const std::optional<std::int64_t> byWood =
        wood == nullptr ? std::nullopt
                        : cost(volume(plank.thickness, plank.width, plank.length), wood->price);
    if (byWood && (plank.price == 0 || plank.price == *byWood)) {
        return PricedBy::Wood;
    }
    return plank.price > 0 ? PricedBy::Plank : PricedBy::Nothing;
}

void addFromRack(TimberCost& cost, const Rack& rack, const Layout& layout,
                 const std::vector<Wood>& woods) {
    struct Group {
        std::string wood;
        std::vector<std::string> labels;
        Volume volume;
        std::int64_t prices = 0;
    };
    std::map<std::tuple<int, std::string, PricedBy>, Group> groups;
    for (const PlankCuts& cuts : layout.planks) {
        const Plank& plank = rack.planks[static_cast<std::size_t>(cuts.plank)];
        const Wood* wood = findWood(woods, plank.wood);
        const PricedBy by = pricedBy(plank, wood);
        Group& group = groups[{woodIndex(woods, plank.wood), plank.wood, by}];
        group.wood = woodName(plank.wood, woods);
        group.labels.push_back(plank.label);
        group.volume += volume(plank.thickness, plank.width, plank.length);
        group.prices += plank.price;
    }
    for (const auto& [key, group] : groups) {
        const PricedBy by = std::get<PricedBy>(key);
        TimberCostLine line;
        line.wood = group.wood;
        line.words = fromTheRack(group.labels);
        line.volume = group.volume;
        if (by == PricedBy::Plank) {
            line.amount = group.prices;
        } else if (by == PricedBy::Wood) {
            line.price = woods[static_cast<std::size_t>(std::get<int>(key))].price;
            line.amount = kerfwright::cost(group.volume, line.price);
        }
        cost.lines.push_back(std::move(line));
    }
}

}  // namespace

TimberCost timberCost(const Rack& rack, const Layout& layout, const ShoppingList* bought,
                      const std::vector<Wood>& woods, const Notation& notation, int boards) {
    TimberCost cost;
    cost.boards = boards;
    cost.basis =
        say("Whole planks, as they are cut and bought; what is left of them is not taken off.");
    addFromRack(cost, rack, layout, woods);
    const auto strips = [](const std::vector<int>& counts) {
        return std::accumulate(counts.begin(), counts.end(), std::int64_t{0});
    };
    if (bought == nullptr) {
        if (const std::int64_t count = strips(layout.missing); count > 0) {
            cost.missing.push_back(sayCount(count, "{1} strip for which the rack has no timber",
                                            "{1} strips for which the rack has no timber"));
        }
        return cost;
    }
    for (const ShoppingLine& line : bought->lines) {
        const Wood* wood = findWood(woods, line.wood);
        cost.lines.push_back({woodName(line.wood, woods), toBuy(line, notation), line.charged,
                              line.price, wood == nullptr ? Price() : wood->price});
    }
    if (const std::int64_t count = strips(bought->impossible); count > 0) {
        cost.missing.push_back(sayCount(count, "{1} strip that no plank of the yard can give",
                                        "{1} strips that no plank of the yard can give"));
    }
    return cost;
}

TimberCost timberCost(const TimberPlan& plan, const std::vector<Wood>& woods,
                      const Notation& notation, int boards) {
    return timberCost(plan.rack, plan.layout, &plan.shopping, woods, notation, boards);
}

}  // namespace kerfwright
