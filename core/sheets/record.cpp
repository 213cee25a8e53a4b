#include "core/sheets/record.h"

#include "core/words/say.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <tuple>

namespace kerfwright {
namespace {

const StripRecord* findStrip(const std::vector<StripRecord>& strips, const std::string& label) {
    const auto found = std::find_if(strips.begin(), strips.end(),
                                    [&](const StripRecord& strip) { return strip.label == label; });
    return found == strips.end() ? nullptr : &*found;
}

/// "A12" into "A" and 12; a label without a number has -1.
std::pair<std::string, int> splitLabel(const std::string& label) {
    std::size_t digits = label.size();
    while (digits > 0 && label[digits - 1] >= '0' && label[digits - 1] <= '9') {
        --digits;
    }
    int number = -1;
    std::from_chars(label.data() + digits, label.data() + label.size(), number);
    return {label.substr(0, digits), number};
}

}  // namespace

Length PanelRecord::width() const {
    if (glue) {
        return glue->width.value;
    }
    Length sum;
    for (const StripRecord& strip : strips) {
        sum += strip.line->width.value;
    }
    return sum;
}

Record::Record(const StepList& steps)
    : list(steps) {
    std::map<std::string, Length> thickness;
    for (std::size_t i = 0; i < steps.steps.size(); ++i) {
        const int number = static_cast<int>(i) + 1;
        const Work& work = steps.steps[i].work;
        if (const auto* mill = std::get_if<Mill>(&work)) {
            if (mill->panel.empty()) {
                railMill = {mill, number};
                continue;
            }
            PanelRecord panel;
            panel.label = mill->panel;
            panel.mill = {mill, number};
            for (const MillLine& line : mill->lines) {
                for (const std::string& label : line.strips) {
                    panel.strips.push_back({label, &line});
                }
            }
            thickness[panel.label] = panel.thickness().value;
            panels.push_back(std::move(panel));
        } else if (const auto* glue = std::get_if<Glue>(&work)) {
            if (glue->final) {
                finalGlue = {glue, number};
                continue;
            }
            if (std::none_of(panels.begin(), panels.end(),
                             [&](const PanelRecord& one) { return one.label == glue->result; })) {
                panels.emplace_back().label = glue->result;
            }
            PanelRecord& panel = this->panel(glue->result);
            panel.glue = {glue, number};
            thickness[panel.label] = glue->thickness.value;
            std::vector<StripRecord> ordered;
            for (const Laid& laid : glue->parts) {
                if (const StripRecord* strip = findStrip(panel.strips, laid.part)) {
                    ordered.push_back(*strip);
                } else {
                    panel.deep = true;
                    deep = true;
                }
            }
            panel.strips = std::move(ordered);
        } else if (const auto* taken = std::get_if<Take>(&work)) {
            take = {taken, number};
        } else if (const auto* flatten = std::get_if<Flatten>(&work)) {
            if (flatten->purpose == Purpose::Finished) {
                flattenField = {flatten, number};
            } else {
                thickness[flatten->part] = flatten->to.value;
                panel(flatten->part).later.push_back(number);
            }
        } else if (const auto* square = std::get_if<SquareEnd>(&work)) {
            panel(square->part).later.push_back(number);
        } else if (const auto* cut = std::get_if<Crosscut>(&work)) {
            panel(cut->part).later.push_back(number);
            const auto index = static_cast<std::size_t>(&panel(cut->part) - panels.data());
            for (const auto* labels : {&cut->slices, &cut->spares}) {
                for (const std::string& label : *labels) {
                    slices[label] = {index, thickness[cut->part], cut->stop.value};
                }
            }
        } else if (const auto* sized = std::get_if<BringToSize>(&work)) {
            noteSized(*sized, number);
        } else if (const auto* trimmed = std::get_if<TrimField>(&work)) {
            trim = {trimmed, number};
        } else if (const auto* fit = std::get_if<FitBorder>(&work)) {
            border = {fit, number};
        }
    }
}

void Record::follow(const Board& board, const FieldSeason& season) {
    if (deep) {
        solids = trace(list, board, season);
    }
}

std::string panelOf(const std::string& label) {
    return label.substr(0, label.find('-'));
}

void Record::noteSized(const BringToSize& work, int number) {
    panel(panelOf(work.parts.front())).later.push_back(number);
    deep = deep || slices.find(work.parts.front()) != slices.end();
}

PanelRecord& Record::panel(const std::string& label) {
    return *std::find_if(panels.begin(), panels.end(),
                         [&](const PanelRecord& one) { return one.label == label; });
}

bool Record::isCutUp(const PanelRecord& panel) const {
    return std::any_of(panel.later.begin(), panel.later.end(),
                       [&](int number) { return std::holds_alternative<Crosscut>(work(number)); });
}

const Work& Record::work(int number) const {
    return list.steps[static_cast<std::size_t>(number - 1)].work;
}

std::vector<RowRecord> Record::rows(bool endGrain, bool asTold) const {
    std::vector<Laid> laid;
    if (finalGlue) {
        laid = finalGlue->parts;
    } else if (take) {
        laid = {take->part};
    }
    std::vector<RowRecord> rows;
    for (const Laid& one : laid) {
        RowRecord row;
        row.slice = one.part;
        row.lay = one.lay;
        if (deep) {
            if (!asTold) {
                row.lay.flipped = false;
                row.lay.turnedOver = false;
            }
            const auto known = solids.find(one.part);
            if (known != solids.end()) {
                row.solid = kerfwright::laid(known->second.ready, row.lay);
                row.height = row.solid.size[byColumns() ? X : Y];
            }
            rows.push_back(std::move(row));
            continue;
        }
        const auto slice = slices.find(one.part);
        if (slice == slices.end()) {
            continue;
        }
        row.height = endGrain ? slice->second.thickness : slice->second.length;
        row.strips = panels[slice->second.panel].strips;
        if (!asTold) {
            row.lay.flipped = false;
        }
        if (row.lay.flipped) {
            std::reverse(row.strips.begin(), row.strips.end());
        }
        rows.push_back(std::move(row));
    }
    return rows;
}

bool labelBefore(const std::string& a, const std::string& b) {
    const auto rank = [](const std::string& label) {
        const bool panel =
            std::all_of(label.begin(), label.end(), [](char c) { return c >= 'A' && c <= 'Z'; });
        const auto [prefix, number] = splitLabel(label);
        // Labels of words have no order of their own.
        return panel || number >= 0 ? std::tuple(prefix.size(), prefix, number)
                                    : std::tuple(std::size_t{0}, std::string(), 0);
    };
    return rank(a) < rank(b);
}

std::string eachLabel(const std::vector<std::string>& labels) {
    std::string text;
    for (const std::string& label : labels) {
        text += (text.empty() ? "" : ", ") + shownLabel(label);
    }
    return text;
}

std::string labelList(const std::vector<std::string>& labels) {
    std::string text;
    for (std::size_t i = 0; i < labels.size();) {
        const auto [prefix, number] = splitLabel(labels[i]);
        std::size_t end = i + 1;
        while (number >= 0 && end < labels.size() &&
               splitLabel(labels[end]) == std::pair(prefix, number + static_cast<int>(end - i))) {
            ++end;
        }
        if (!text.empty()) {
            text += ", ";
        }
        if (end - i >= 3) {
            // A dash between two hyphens would be read as a minus.
            // Translators: a range, "A-1 to A-12", "-0.3 to 0.9".
            text += prefix.ends_with('-') ? say("{1} to {2}", labels[i], labels[end - 1])
                                          : labels[i] + "–" + labels[end - 1];
            i = end;
        } else {
            text += shownLabel(labels[i]);
            ++i;
        }
    }
    return text;
}

}  // namespace kerfwright
