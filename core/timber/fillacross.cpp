// One section across: strips beside each other.
#include "core/measure/at.h"
#include "core/timber/filler.h"

#include <algorithm>

namespace kerfwright::cutting {
double Filler::Steps::within(Nm room) const {
    return room <= 0 ? 0 : values[static_cast<std::size_t>(room / unit)];
}

/// How much of such parts, any number of each, goes into how much room, at most: sizes are rounded
/// down to whole units of the room, so no more than that can be true.
void Filler::climb(const std::vector<std::pair<Nm, double>>& parts, Nm room, Steps& steps) {
    constexpr Nm units = 1024;
    constexpr Nm mostUnits = 16 * units;
    Nm smallest = room;
    double dense = 0;
    for (const auto& [size, value] : parts) {
        smallest = std::min(smallest, size);
        dense = std::max(dense, value / static_cast<double>(size));
    }
    steps.unit = std::max(std::min(room / units + 1, smallest), room / mostUnits + 1);
    steps.values.assign(static_cast<std::size_t>(room / steps.unit) + 1, 0);
    if (steps.unit > smallest) {
        // Parts that round down to nothing would be had without end: a slope bounds them.
        for (std::size_t i = 0; i < steps.values.size(); ++i) {
            steps.values[i] = dense * static_cast<double>((static_cast<Nm>(i) + 1) * steps.unit);
        }
        return;
    }
    for (const auto& [size, value] : parts) {
        const auto step = static_cast<std::size_t>(size / steps.unit);
        for (std::size_t i = step; value > 0 && i < steps.values.size(); ++i) {
            steps.values[i] = std::max(steps.values[i], steps.values[i - step] + value);
        }
    }
}

/// For windows with so many ways, were they clear. Ways are dropped where they are too long, so the
/// number stands for the length.
const Filler::Steps& Filler::aboveIn(std::size_t ways) {
    Steps& steps = above_[ways];
    if (steps.values.empty()) {
        const auto clear = std::find_if(clear_.begin(), clear_.end(), [&](int window) {
            return windows_[at(window)].ways.size() == ways;
        });
        std::vector<std::pair<Nm, double>> parts;
        for (const auto& way : windows_[at(*clear)].ways) {
            const Way& lies = blank_.ways[at(way.first)];
            parts.emplace_back(lies.width + pool_.kerf, (*values_)[at(lies.item)]);
        }
        climb(parts, blank_.width + pool_.kerf, steps);
    }
    return steps;
}

/// What the densest ways make one after another: nothing below it needs to be looked at.
double Filler::easily(const Window& window, const std::vector<int>* limits) const {
    double sum = 0;
    Nm y = 0;
    for (const int dense : order_) {
        if (y + narrowest_ > blank_.width) {
            break;
        }
        const auto way =
            std::lower_bound(window.ways.begin(), window.ways.end(), dense,
                             [](const auto& one, int wanted) { return one.first < wanted; });
        if (way == window.ways.end() || way->first != dense) {
            continue;
        }
        const Way& lies = blank_.ways[at(dense)];
        const int limit = limits != nullptr ? (*limits)[at(lies.item)] : 1'000'000;
        for (int count = 0; count < limit; ++count) {
            const Nm place = lowest(*way, y);
            if (place < 0) {
                break;
            }
            sum += (*values_)[at(lies.item)];
            y = place + lies.width + pool_.kerf;
        }
    }
    return sum;
}

/// What was laid in a window before, at the values of now; 0 where limits forbid it.
double Filler::again(const Cross& before, const std::vector<int>* limits) const {
    double sum = 0;
    for (const auto& strip : before.strips) {
        const int item = blank_.ways[at(strip.first)].item;
        sum += (*values_)[at(item)];
        if (limits != nullptr) {
            const auto alike =
                std::count_if(before.strips.begin(), before.strips.end(), [&](const auto& one) {
                    return blank_.ways[at(one.first)].item == item;
                });
            if (alike > (*limits)[at(item)]) {
                return 0;
            }
        }
    }
    return sum;
}

/// Where no two strips go beside each other.
void Filler::single(const Window& window, const std::vector<int>* limits, Cross& cross) const {
    cross.value = 0;
    cross.strips.clear();
    for (const auto& way : window.ways) {
        const int item = blank_.ways[at(way.first)].item;
        const double value = (*values_)[at(item)];
        if (value > cross.value && (limits == nullptr || (*limits)[at(item)] > 0)) {
            const Nm y = lowest(way, 0);
            if (y >= 0) {
                cross.value = value;
                cross.strips.assign(1, {way.first, y});
            }
        }
    }
}

void Filler::across(const Window& window, const std::vector<int>* limits, Cross& cross) {
    if (2 * narrowest_ + pool_.kerf > blank_.width) {
        single(window, limits, cross);
        return;
    }
    rips_.assign(1, Label{});
    ripQueue_.assign(1, {0, 0});
    const Steps& above = aboveIn(window.ways.size());
    // A little lower than its sum, which is rounded otherwise than the bounds below.
    const double floor = std::max(easily(window, limits), again(cross, limits)) * (1 - 1e-9);
    double reached = -1;
    int best = 0;
    const auto used = [this](int label, int item) {
        int count = 0;
        for (; rips_[at(label)].before >= 0; label = rips_[at(label)].before) {
            count += blank_.ways[at(rips_[at(label)].choice)].item == item ? 1 : 0;
        }
        return count;
    };
    while (!ripQueue_.empty()) {
        std::pop_heap(ripQueue_.begin(), ripQueue_.end());
        const int now = ripQueue_.back().label;
        ripQueue_.pop_back();
        const Label label = rips_[at(now)];
        if (label.value <= reached) {
            continue;  // as much was laid in less room
        }
        reached = label.value;
        const double most = label.value + above.within(blank_.width + pool_.kerf - label.place);
        if (most <= rips_[at(best)].value || most < floor) {
            continue;
        }
        for (const auto& way : window.ways) {
            const Way& lies = blank_.ways[at(way.first)];
            const double value = (*values_)[at(lies.item)];
            if (value <= 0) {
                continue;
            }
            const Nm y = way.second.front() == 0 ? label.place : lowest(way, label.place);
            if (y < 0 || y + lies.width > blank_.width) {
                continue;
            }
            const Nm end = y + lies.width + pool_.kerf;
            const double sum = label.value + value;
            const double bestSum = rips_[at(best)].value;
            const double after = sum + above.within(blank_.width + pool_.kerf - end);
            if (after < floor || (sum <= bestSum && after <= bestSum)) {
                continue;
            }
            if (limits != nullptr) {
                const int limit = (*limits)[at(lies.item)];
                if (limit <= 0 || used(now, lies.item) >= limit) {
                    continue;
                }
            }
            rips_.push_back({end, sum, now, way.first, y, -1});
            const int next = static_cast<int>(rips_.size()) - 1;
            best = sum > bestSum ? next : best;
            ripQueue_.push_back({end, next});
            std::push_heap(ripQueue_.begin(), ripQueue_.end());
        }
    }
    cross.value = rips_[at(best)].value;
    cross.strips.clear();
    for (int label = best; rips_[at(label)].before >= 0; label = rips_[at(label)].before) {
        cross.strips.emplace_back(rips_[at(label)].choice, rips_[at(label)].from);
    }
    std::reverse(cross.strips.begin(), cross.strips.end());
}

}  // namespace kerfwright::cutting
