#include "core/timber/pool.h"

#include "core/measure/at.h"

#include <algorithm>
#include <numeric>
#include <tuple>

namespace kerfwright::cutting {
namespace {

/// Items in the order of the demand; `like` is one line of each.
std::vector<Item> itemsOf(const std::string& wood, const Demand& demand, std::vector<int>& like) {
    std::vector<Item> items;
    for (std::size_t i = 0; i < demand.strips.size(); ++i) {
        const WantedStrips& strips = demand.strips[i];
        if (strips.wood != wood) {
            continue;
        }
        std::size_t item = 0;
        for (; item < items.size(); ++item) {
            const WantedStrips& other = demand.strips[at(like[item])];
            if (std::tie(other.thickness, other.width, other.length, other.eitherWay,
                         other.plank) == std::tie(strips.thickness, strips.width, strips.length,
                                                  strips.eitherWay, strips.plank)) {
                break;
            }
        }
        if (item == items.size()) {
            items.push_back(
                {{}, strips.length.nm(), 0, volume(strips.thickness, strips.width, strips.length)});
            like.push_back(static_cast<int>(i));
        }
        items[item].wanted.push_back(static_cast<int>(i));
        items[item].count += strips.count;
    }
    return items;
}

/// What trims leave of a plank, with the defects that reach into it.
Blank blankOf(const Plank& plank, const CutRules& rules) {
    Blank blank;
    blank.length = (plank.length - 2 * rules.endTrim).nm();
    blank.width = (plank.width - 2 * rules.edgeTrim).nm();
    for (const Defect& defect : plank.defects) {
        Box box;
        box.left = std::max<Nm>((defect.x - rules.endTrim).nm(), 0);
        box.right = std::min((defect.x + defect.length - rules.endTrim).nm(), blank.length);
        box.low = std::max<Nm>((defect.y - rules.edgeTrim).nm(), 0);
        box.high = std::min((defect.y + defect.width - rules.edgeTrim).nm(), blank.width);
        if (box.left < box.right && box.low < box.high) {
            blank.defects.push_back(box);
        }
    }
    std::sort(blank.defects.begin(), blank.defects.end(), [](const Box& a, const Box& b) {
        return std::tie(a.left, a.low, a.right, a.high) < std::tie(b.left, b.low, b.right, b.high);
    });
    return blank;
}

bool alike(const Blank& a, const Blank& b) {
    const auto sameWay = [](const Way& one, const Way& other) {
        return one.item == other.item && one.onEdge == other.onEdge;
    };
    return a.length == b.length && a.width == b.width && a.cost == b.cost &&
           a.defects == b.defects &&
           std::equal(a.ways.begin(), a.ways.end(), b.ways.begin(), b.ways.end(), sameWay);
}

}  // namespace

Pool poolOf(const std::string& wood, const Rack& rack, const Demand& demand, const CutRules& rules,
            CostIn in) {
    Pool pool;
    pool.kerf = rules.kerf.nm();
    std::vector<int> like;
    pool.items = itemsOf(wood, demand, like);
    for (std::size_t i = 0; i < rack.planks.size(); ++i) {
        const Plank& plank = rack.planks[i];
        if (plank.wood != wood) {
            continue;
        }
        Blank blank = blankOf(plank, rules);
        for (std::size_t item = 0; item < pool.items.size(); ++item) {
            const WantedStrips& strips = demand.strips[at(like[item])];
            for (const bool onEdge : {false, true}) {
                const Nm width = acrossPlank(strips, onEdge).nm();
                if (suits(strips, plank, onEdge, rules) && width <= blank.width &&
                    pool.items[item].length <= blank.length) {
                    blank.ways.push_back({static_cast<int>(item), width, onEdge});
                }
            }
            // Where both ways suit, the narrower one is never worse.
            const std::size_t ways = blank.ways.size();
            if (ways >= 2 && blank.ways[ways - 2].item == blank.ways[ways - 1].item) {
                const bool keepLast = blank.ways[ways - 1].width < blank.ways[ways - 2].width;
                blank.ways.erase(blank.ways.end() - (keepLast ? 2 : 1));
            }
        }
        if (blank.ways.empty()) {
            continue;
        }
        blank.cost = countedCost(plank, rules, in);
        const auto same = std::find_if(pool.blanks.begin(), pool.blanks.end(),
                                       [&](const Blank& other) { return alike(other, blank); });
        if (same == pool.blanks.end()) {
            blank.planks.push_back(static_cast<int>(i));
            pool.blanks.push_back(std::move(blank));
        } else {
            same->planks.push_back(static_cast<int>(i));
        }
    }
    return pool;
}

}  // namespace kerfwright::cutting
