#include "core/timber/demand.h"

#include <algorithm>
#include <variant>

namespace kerfwright {
namespace {

void add(Demand& demand, const WantedStrips& more) {
    for (WantedStrips& strips : demand.strips) {
        if (strips.wood == more.wood && strips.thickness == more.thickness &&
            strips.width == more.width && strips.length == more.length &&
            strips.eitherWay == more.eitherWay && strips.plank == more.plank &&
            strips.isRail == more.isRail && strips.ofBorder == more.ofBorder &&
            (!more.isRail || strips.board == more.board)) {
            strips.count += more.count;
            if (!more.label.empty()) {
                strips.label += (strips.label.empty() ? "" : ", ") + more.label;
            }
            return;
        }
    }
    demand.strips.push_back(more);
}

std::string joined(const std::vector<std::string>& labels) {
    std::string all;
    for (const std::string& label : labels) {
        all += (all.empty() ? "" : ", ") + label;
    }
    return all;
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
            WantedStrips strips{
                joined(line.strips),       woods[static_cast<std::size_t>(line.wood)].key,
                line.roughThickness.value, line.roughWidth.value,
                line.roughLength.value,    static_cast<int>(line.strips.size())};
            // The rails come first of what the border is made of; a tongue or an inlay has another
            // section.
            const MillLine& first = mill->lines.front();
            strips.ofBorder = mill->panel.empty();
            strips.isRail = mill->panel.empty() && line.wood == first.wood &&
                            line.roughThickness.value == first.roughThickness.value &&
                            line.roughWidth.value == first.roughWidth.value;
            add(demand, strips);
        }
    }
    return demand;
}

Demand together(const std::vector<Demand>& demands) {
    Demand all;
    for (std::size_t i = 0; i < demands.size(); ++i) {
        for (WantedStrips strips : demands[i].strips) {
            if (demands.size() > 1) {
                std::vector<std::string> labels = labelsOf(strips);
                for (std::string& label : labels) {
                    label = std::to_string(i + 1) + ": " + label;
                }
                strips.label = joined(labels);
                strips.board = static_cast<int>(i);
            }
            add(all, strips);
        }
    }
    return all;
}

std::vector<std::string> labelsOf(const WantedStrips& strips) {
    std::vector<std::string> labels;
    for (std::size_t from = 0; from < strips.label.size();) {
        const std::size_t end = std::min(strips.label.find(", ", from), strips.label.size());
        labels.push_back(strips.label.substr(from, end - from));
        from = end + 2;
    }
    // A line that names fewer strips than it holds was not made from steps.
    labels.resize(static_cast<std::size_t>(std::max(strips.count, 0)), strips.label);
    return labels;
}

}  // namespace kerfwright
