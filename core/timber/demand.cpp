#include "core/timber/demand.h"

#include <variant>

namespace kerfwright {
namespace {

void add(Demand& demand, const WantedStrips& more) {
    for (WantedStrips& strips : demand.strips) {
        if (strips.wood == more.wood && strips.thickness == more.thickness &&
            strips.width == more.width && strips.length == more.length &&
            strips.eitherWay == more.eitherWay) {
            strips.count += more.count;
            if (!more.label.empty()) {
                strips.label += (strips.label.empty() ? "" : ", ") + more.label;
            }
            return;
        }
    }
    demand.strips.push_back(more);
}

}  // namespace

Demand demandOf(const StepList& steps, const std::vector<Wood>& woods) {
    Demand demand;
    for (const Step& step : steps.steps) {
        const Mill* mill = std::get_if<Mill>(&step.work);
        if (mill == nullptr) {
            continue;
        }
        for (const MillLine& line : mill->lines) {
            std::string label;
            for (const std::string& strip : line.strips) {
                label += (label.empty() ? "" : ", ") + strip;
            }
            add(demand, {label, woods[static_cast<std::size_t>(line.wood)].key,
                         line.roughThickness.value, line.roughWidth.value, line.roughLength.value,
                         static_cast<int>(line.strips.size())});
        }
    }
    return demand;
}

Demand together(const std::vector<Demand>& demands) {
    Demand all;
    for (const Demand& demand : demands) {
        for (const WantedStrips& strips : demand.strips) {
            add(all, strips);
        }
    }
    return all;
}

}  // namespace kerfwright
