#include "core/wood/movement.h"

#include "core/wood/moisture.h"

#include <algorithm>

namespace kerfwright {
namespace {

/// Equation 13-3: linear shrinkage from fibre saturation down. The shrinkage must be more than 0.
double growthByShrinkage(double shrinkage, double from, double to) {
    return (to - from) / (fibreSaturation * 100 / shrinkage - fibreSaturation + from);
}

double growthOf(double shrinkage, double coefficient, double from, double to) {
    if (coefficient <= 0) {
        return growthByShrinkage(shrinkage, from, to);
    }
    if (shrinkage <= 0) {
        shrinkage = shrinkageFrom(coefficient);
    }
    // In parts: what lies below, between and above the moistures of the coefficient.
    double factor = 1;
    double at = from;
    const auto go = [&](double next, bool within) {
        factor *= 1 + (within ? coefficient * (next - at) : growthByShrinkage(shrinkage, at, next));
        at = next;
    };
    const bool rising = to > from;
    const double first = rising ? leastCoefficientMoisture : greatestCoefficientMoisture;
    const double second = rising ? greatestCoefficientMoisture : leastCoefficientMoisture;
    const auto before = [rising](double a, double b) { return rising ? a < b : a > b; };
    if (before(at, first)) {
        go(before(to, first) ? to : first, false);
    }
    if (before(at, to) && before(at, second)) {
        go(before(to, second) ? to : second, true);
    }
    if (before(at, to)) {
        go(to, false);
    }
    return factor - 1;
}

}  // namespace

Range hull(const Range& a, const Range& b) {
    return {std::min(a.least, b.least), std::max(a.greatest, b.greatest)};
}

double coefficientFrom(double shrinkage) {
    return shrinkage / (3000 - 20 * shrinkage);
}

double shrinkageFrom(double coefficient) {
    return 3000 * coefficient / (1 + 20 * coefficient);
}

std::optional<double> growth(const Wood& wood, RingDirection direction, double from, double to) {
    const bool radial = direction == RingDirection::Radial;
    const double shrinkage = radial ? wood.shrinkage.radial : wood.shrinkage.tangential;
    const double coefficient = radial ? wood.movement.radial : wood.movement.tangential;
    if (shrinkage <= 0 && coefficient <= 0) {
        return std::nullopt;
    }
    return growthOf(shrinkage, coefficient, std::clamp(from, 0.0, fibreSaturation),
                    std::clamp(to, 0.0, fibreSaturation));
}

std::optional<Range> growth(const Wood& wood, StickSide side, Rings rings, double from, double to) {
    const auto single = [&](RingDirection direction) -> std::optional<Range> {
        const std::optional<double> value = growth(wood, direction, from, to);
        return value ? std::optional(Range{*value, *value}) : std::nullopt;
    };
    const bool width = side == StickSide::Width;
    if (rings == Rings::Flat) {
        return single(width ? RingDirection::Tangential : RingDirection::Radial);
    }
    if (rings == Rings::Quarter) {
        return single(width ? RingDirection::Radial : RingDirection::Tangential);
    }
    const std::optional<double> radial = growth(wood, RingDirection::Radial, from, to);
    const std::optional<double> tangential = growth(wood, RingDirection::Tangential, from, to);
    if (!radial || !tangential) {
        return std::nullopt;
    }
    if (rings == Rings::Rift) {
        const double middle = (*radial + *tangential) / 2;
        return Range{middle, middle};
    }
    return hull({*radial, *radial}, {*tangential, *tangential});
}

Range growthAlongGrain(double from, double to) {
    constexpr Range perPoint{0.001 / fibreSaturation, 0.002 / fibreSaturation};
    return perPoint *
           (std::clamp(to, 0.0, fibreSaturation) - std::clamp(from, 0.0, fibreSaturation));
}

Range changeInMm(Length dimension, const Range& growth) {
    return growth * dimension.toMm();
}

}  // namespace kerfwright
