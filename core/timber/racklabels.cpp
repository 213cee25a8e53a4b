#include "core/timber/racklabels.h"

#include <set>

namespace kerfwright {
namespace {

std::set<std::string> labelsOf(const Rack& rack) {
    std::set<std::string> labels;
    for (const Plank& plank : rack.planks) {
        labels.insert(plank.label);
    }
    return labels;
}

}  // namespace

int addPlanks(Rack& rack, const Rack& more) {
    std::set<std::string> taken = labelsOf(rack);
    int renamed = 0;
    for (Plank plank : more.planks) {
        const std::string label = plank.label;
        for (int number = 2; !taken.insert(plank.label).second; ++number) {
            plank.label = label + "-" + std::to_string(number);
        }
        renamed += plank.label != label ? 1 : 0;
        rack.planks.push_back(std::move(plank));
    }
    return renamed;
}

std::string nextLabel(const Rack& rack) {
    const std::set<std::string> taken = labelsOf(rack);
    std::size_t number = rack.planks.size() + 1;
    while (taken.contains("P" + std::to_string(number))) {
        ++number;
    }
    return "P" + std::to_string(number);
}

}  // namespace kerfwright
