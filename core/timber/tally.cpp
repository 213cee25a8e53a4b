#include "core/timber/tally.h"

#include "core/words/say.h"

#include <algorithm>

namespace kerfwright {
namespace {

constexpr Length inch = Length::inch(1);
constexpr Length foot = Length::inch(12);

Length roundedDown(Length length, Length step) {
    return Length::nm(length.nm() / step.nm() * step.nm());
}

}  // namespace

const std::vector<TallyInfo>& tallies() {
    static const std::vector<TallyInfo> all = {
        {Tally::Exact, "exact", noted("As measured"),
         noted("Volume as measured, nothing rounded.")},
        {Tally::BoardMeasure, "board-measure", noted("Board measure"),
         noted("As measured; thinner than 1 in counts as 1 in.")},
        {Tally::SurfaceMeasure, "surface-measure", noted("Surface measure"),
         noted("Face in whole square feet first, then times the thickness.")},
        {Tally::Export, "export", noted("Export tally"),
         noted("Width to the nearest inch, halves up and down in turn; length down to the foot.")},
        {Tally::Retail, "retail", noted("Retail yard"),
         noted("Width up to the inch, length up to the foot where more than 3 in over, thickness "
               "up to the next in stock.")},
    };
    return all;
}

Tallying::Tallying(Tally tally, std::vector<Length> stocked)
    : tally_(tally)
    , stocked_(std::move(stocked)) {
    std::sort(stocked_.begin(), stocked_.end());
}

Volume Tallying::charged(Length thickness, Length width, Length length) {
    if (tally_ == Tally::Exact) {
        return volume(thickness, width, length);
    }
    const Length thick = std::max(thickness, inch);
    switch (tally_) {
    case Tally::SurfaceMeasure: {
        const detail::Wide squareFoot = area(foot, foot).squareNm();
        const detail::Wide feet = (area(width, length).squareNm() + squareFoot / 2) / squareFoot;
        return Volume(feet * squareFoot * thick.nm());
    }
    case Tally::Export: {
        const Length over = width - roundedDown(width, inch);
        bool up = 2 * over > inch;
        if (2 * over == inch) {
            up = !nextHalfDown_;
            nextHalfDown_ = !nextHalfDown_;
        }
        const Length counted = roundedDown(width, inch) + (up ? inch : Length());
        return volume(thick, counted, roundedDown(length, foot));
    }
    case Tally::Retail: {
        const auto stock = std::lower_bound(stocked_.begin(), stocked_.end(), thickness);
        const Length whole = roundedDown(length, foot);
        return volume(std::max(stock == stocked_.end() ? thickness : *stock, inch),
                      roundedUp(width, inch),
                      length - whole > Length::inch(3) ? whole + foot : whole);
    }
    case Tally::Exact:
    case Tally::BoardMeasure:
        break;
    }
    return volume(thick, width, length);
}

Volume withWaste(Volume net, int percent) {
    const detail::Wide left = 100 - std::clamp(percent, 0, 99);
    return Volume((net.cubicNm() * 100 + left - 1) / left);
}

double wastePercent(Volume net, Volume bought) {
    const double all = bought.toCubicMetres();
    return all > 0 ? (1 - net.toCubicMetres() / all) * 100 : 0;
}

const std::vector<UsualWaste>& usualWastes() {
    static const std::vector<UsualWaste> all = {
        {noted("Wide stock"), 20, noted("trade forum: 20 % in wide stock to over 50 % in narrow")},
        {noted("Furniture"), 33,
         noted("trade forum: furniture shops reckon with 20 to 25, 33 or 40 %")},
        {noted("Narrow stock"), 50,
         noted("trade forum: 20 % in wide stock to over 50 % in narrow")},
    };
    return all;
}

}  // namespace kerfwright
