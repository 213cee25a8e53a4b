#include "core/timber/aftercut.h"

#include <algorithm>
#include <set>

namespace kerfwright {
namespace {

/// What of the defects lies on the offcut, counted from its own corner.
std::vector<Defect> defectsOn(const Plank& plank, const Offcut& offcut) {
    std::vector<Defect> found;
    for (const Defect& defect : plank.defects) {
        const Length left = std::max(defect.x, offcut.x);
        const Length right = std::min(defect.x + defect.length, offcut.x + offcut.length);
        const Length low = std::max(defect.y, offcut.y);
        const Length high = std::min(defect.y + defect.width, offcut.y + offcut.width);
        if (left < right && low < high) {
            found.push_back({left - offcut.x, low - offcut.y, right - left, high - low});
        }
    }
    return found;
}

std::int64_t shareOfPrice(const Plank& plank, const Offcut& offcut) {
    const double whole = area(plank.length, plank.width).toSquareMetres();
    const double part = area(offcut.length, offcut.width).toSquareMetres();
    return static_cast<std::int64_t>(static_cast<double>(plank.price) * part / whole);
}

std::string freeOf(const std::set<std::string>& taken, const std::string& label) {
    std::string free = label;
    for (int number = 2; taken.contains(free); ++number) {
        free = label + "-" + std::to_string(number);
    }
    return free;
}

std::set<std::string> labelsOf(const Rack& rack) {
    std::set<std::string> labels;
    for (const Plank& plank : rack.planks) {
        labels.insert(plank.label);
    }
    return labels;
}

}  // namespace

std::string freeLabel(const Rack& rack, const std::string& label) {
    return freeOf(labelsOf(rack), label);
}

int addPlanks(Rack& rack, const Rack& more) {
    std::set<std::string> taken = labelsOf(rack);
    int renamed = 0;
    for (Plank plank : more.planks) {
        const std::string label = freeOf(taken, plank.label);
        renamed += label != plank.label ? 1 : 0;
        plank.label = label;
        taken.insert(label);
        rack.planks.push_back(std::move(plank));
    }
    return renamed;
}

Rack rackAfter(const Rack& rack, const Layout& layout) {
    std::set<std::size_t> cut;
    for (const PlankCuts& cuts : layout.planks) {
        cut.insert(static_cast<std::size_t>(cuts.plank));
    }
    Rack after;
    for (std::size_t i = 0; i < rack.planks.size(); ++i) {
        if (!cut.contains(i)) {
            after.planks.push_back(rack.planks[i]);
        }
    }
    std::set<std::string> taken = labelsOf(after);
    for (const PlankCuts& cuts : layout.planks) {
        const Plank& plank = rack.planks[static_cast<std::size_t>(cuts.plank)];
        for (const Offcut& offcut : cuts.offcuts) {
            Plank kept = plank;
            // The rest of a rest is called as that one was.
            const bool isRest = plank.label.find(" rest") != std::string::npos;
            kept.label = freeOf(taken, isRest ? plank.label : plank.label + " rest");
            taken.insert(kept.label);
            kept.length = offcut.length;
            kept.width = offcut.width;
            kept.isOffcut = true;
            kept.price = shareOfPrice(plank, offcut);
            kept.defects = defectsOn(plank, offcut);
            after.planks.push_back(std::move(kept));
        }
    }
    return after;
}

}  // namespace kerfwright
