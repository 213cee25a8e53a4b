#include "core/timber/rack.h"

#include "core/wood/price.h"

#include <set>

namespace kerfwright {
namespace {

void checkSize(std::vector<Fault>& found, const std::string& entry, Length size, Length greatest,
               const Notation& notation) {
    if (size <= Length()) {
        found.push_back({entry, "must be more than 0", formatExact(size, notation)});
    } else if (size > greatest) {
        found.push_back({entry, "must be at most " + formatGreatest(greatest, notation),
                         formatExact(size, notation)});
    }
}

void checkDefect(std::vector<Fault>& found, const std::string& entry, const Defect& defect,
                 const Plank& plank, const Notation& notation) {
    if (defect.length <= Length() || defect.width <= Length()) {
        found.push_back(
            {entry, "must be larger than 0 both ways",
             formatExact(defect.length, notation) + " x " + formatExact(defect.width, notation)});
        return;
    }
    const auto within = [&](Length from, Length size, Length whole, const char* along) {
        if (from < Length() || from + size > whole) {
            found.push_back({entry,
                             "must lie on the plank, whose " + std::string(along) + " is " +
                                 formatExact(whole, notation),
                             "from " + formatExact(from, notation) + " to " +
                                 formatExact(from + size, notation)});
        }
    };
    within(defect.x, defect.length, plank.length, "length");
    within(defect.y, defect.width, plank.width, "width");
}

}  // namespace

std::vector<Fault> faults(const Plank& plank, const std::string& where, const Notation& notation) {
    std::vector<Fault> found;
    if (plank.wood.empty()) {
        found.push_back({where + ", wood", "must be named", ""});
    }
    checkSize(found, where + ", thickness", plank.thickness, RackLimits::thickness, notation);
    checkSize(found, where + ", width", plank.width, RackLimits::width, notation);
    checkSize(found, where + ", length", plank.length, RackLimits::length, notation);
    if (plank.price < 0 || plank.price > RackLimits::price) {
        found.push_back({where + ", price", "must be from 0 to " + formatMoney(RackLimits::price),
                         formatMoney(plank.price)});
    }
    if (plank.defects.size() > RackLimits::defects) {
        found.push_back({where + ", defects",
                         "must be at most " + std::to_string(RackLimits::defects),
                         std::to_string(plank.defects.size())});
    }
    for (std::size_t i = 0; i < plank.defects.size(); ++i) {
        checkDefect(found, where + ", defect " + std::to_string(i + 1), plank.defects[i], plank,
                    notation);
    }
    return found;
}

std::vector<Fault> faults(const Rack& rack, const Notation& notation) {
    std::vector<Fault> found;
    if (rack.planks.size() > RackLimits::planks) {
        found.push_back({"Rack",
                         "must hold at most " + std::to_string(RackLimits::planks) + " planks",
                         std::to_string(rack.planks.size())});
    }
    std::set<std::string> labels;
    for (std::size_t i = 0; i < rack.planks.size(); ++i) {
        const Plank& plank = rack.planks[i];
        std::string where = "Plank " + plank.label;
        if (plank.label.empty()) {
            where += std::to_string(i + 1);
            found.push_back({where + ", label", "must not be empty", ""});
        } else if (!labels.insert(plank.label).second) {
            found.push_back({where + ", label", "must be on one plank only", plank.label});
        }
        const std::vector<Fault> own = faults(plank, where, notation);
        found.insert(found.end(), own.begin(), own.end());
    }
    return found;
}

Rack priced(Rack rack, const std::vector<Wood>& woods) {
    for (Plank& plank : rack.planks) {
        const Wood* wood = findWood(woods, plank.wood);
        if (plank.price == 0 && wood != nullptr) {
            const Volume timber = volume(plank.thickness, plank.width, plank.length);
            plank.price = cost(timber, wood->price).value_or(0);
        }
    }
    return rack;
}

}  // namespace kerfwright
