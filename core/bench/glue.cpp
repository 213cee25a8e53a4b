#include "core/bench/glue.h"

#include <algorithm>
#include <cmath>
#include <unordered_map>
#include <utility>

namespace kerfwright {
namespace {

/// What is known of a workpiece once a step has made it.
struct Stock {
    Length width, length, thickness;
    std::vector<int> woods;  ///< sorted, each once
};

void merge(std::vector<int>& woods, const std::vector<int>& more) {
    for (const int wood : more) {
        const auto at = std::lower_bound(woods.begin(), woods.end(), wood);
        if (at == woods.end() || *at != wood) {
            woods.insert(at, wood);
        }
    }
}

/// Up to a whole number, at least 1. The little that is taken off is the rounding of a product that
/// is whole on paper.
int roundedUp(double count) {
    return std::max(1, static_cast<int>(std::ceil(count - 1e-9)));
}

/// Walks through the step list and keeps what every workpiece is made of.
class Reckoner {
public:
    Reckoner(const std::vector<Wood>& woods, const GlueShop& shop)
        : woods_(woods)
        , shop_(shop) {
        needs_.times = glueTimes(shop);
    }

    void take(const Step& step, int index) {
        index_ = index;
        std::visit([this](const auto& work) { after(work); }, step.work);
    }
    GlueNeeds done() && { return std::move(needs_); }

private:
    void after(const Mill& work) {
        for (const MillLine& line : work.lines) {
            for (const std::string& strip : line.strips) {
                stocks_[strip] = {
                    line.width.value, line.length.value, line.thickness.value, {line.wood}};
            }
        }
    }
    void after(const Flatten& work) { stocks_[work.part].thickness = work.to.value; }
    void after(const BringToSize& work) {
        for (const std::string& part : work.parts) {
            Stock& stock = stocks_[part];
            (work.sizing.in == SizedIn::Width    ? stock.width
             : work.sizing.in == SizedIn::Length ? stock.length
                                                 : stock.thickness) = work.sizing.to.value;
        }
    }
    void after(const Crosscut& work) {
        Stock slice = stocks_[work.part];
        slice.length = work.stop.value;
        for (const auto* labels : {&work.slices, &work.spares}) {
            for (const std::string& label : *labels) {
                stocks_[label] = slice;
            }
        }
    }
    void after(const Glue& work) {
        Stock stock{work.width.value, work.length.value, work.thickness.value, {}};
        for (const Laid& laid : work.parts) {
            merge(stock.woods, stocks_[laid.part].woods);
        }
        if (work.parts.size() > 1) {
            reckon(work, stock);
        }
        stocks_[work.result] = std::move(stock);
    }
    void after(const GlueIn& work) { border(work.glueFace); }
    void after(const FitBorder& work) { border(work.glueFace); }
    void after(const KeyCorners& work) { border(work.glueFace); }
    template <class Work>
    void after(const Work&) {}

    void border(Area face) {
        if (face == Area()) {
            return;
        }
        needs_.border.push_back({index_, face, face.toSquareMetres() * shop_.spread});
        needs_.area += face;
        needs_.grams += needs_.border.back().grams;
    }

    /// How far a part reaches across the lines that it is glued at.
    Length reach(const Laid& laid, GlueAlong along) const {
        const Stock& stock = stocks_.at(laid.part);
        const Lay& lay = laid.lay;
        const Length down = lay.stoodUp ? stock.thickness : stock.length;
        const Length across = lay.rolled ? stock.thickness : stock.width;
        return (along == GlueAlong::Down) != lay.turned ? down : across;
    }

    void reckon(const Glue& work, const Stock& stock) {
        GlueUpNeeds needs;
        needs.step = index_;
        needs.result = work.result;
        needs.final = work.final;
        needs.lines = static_cast<int>(work.parts.size()) - 1;
        needs.area = work.glueFace;
        needs.grams = work.glueFace.toSquareMetres() * shop_.spread;
        time(needs);
        for (const int wood : stock.woods) {
            const Wood& own = woods_[static_cast<std::size_t>(wood)];
            needs.density = std::max(needs.density, own.density);
            needs.hardest = std::max(needs.hardest, own.gluing);
        }
        needs.jointLength = work.along == GlueAlong::Width ? work.length.value : work.width.value;
        needs.line = kerfwright::area(needs.jointLength, work.thickness.value);
        needs.pressure = pressureFor(needs.density, shop_);
        needs.force = needs.pressure * 1e6 * needs.line.toSquareMetres();
        needs.clampsByForce = clampsFor(needs.pressure, needs.line, shop_.clampForce);
        // Pressure widens at about 45° from the clamp: common practice, value from memory.
        const Length nearest =
            std::min(reach(work.parts.front(), work.along), reach(work.parts.back(), work.along));
        const double widest = 2 * (nearest.toMm() + shop_.caul);
        needs.clampsBySpacing = roundedUp(needs.jointLength.toMm() / widest);
        const int haveRoom =
            std::max(1, static_cast<int>(std::floor(needs.jointLength.toMm() / clampRoom)));
        needs.clamps = std::max(std::min(needs.clampsByForce, haveRoom), needs.clampsBySpacing);
        needs.spacing = needs.jointLength.toMm() / needs.clamps;

        needs_.area += needs.area;
        needs_.grams += needs.grams;
        needs_.glueUps.push_back(std::move(needs));
    }

    void time(GlueUpNeeds& needs) const {
        needs.spreadMinutes = needs.lines * shop_.secondsPerLine / 60;
        if (!needs_.times) {
            return;
        }
        const double fit = needs_.times->openMinutes * 60 / shop_.secondsPerLine;
        needs.linesInOpenTime = static_cast<int>(std::floor(fit + 1e-9));
        needs.withinOpenTime = needs.lines <= needs.linesInOpenTime;
        needs.loads =
            roundedUp(static_cast<double>(needs.lines) / std::max(1, needs.linesInOpenTime));
    }

    const std::vector<Wood>& woods_;
    const GlueShop& shop_;
    GlueNeeds needs_;
    std::unordered_map<std::string, Stock> stocks_;
    int index_ = 0;
};

}  // namespace

std::optional<GlueTimes> glueTimes(const GlueShop& shop) {
    if (shop.celsius < shop.leastCelsius) {
        return std::nullopt;
    }
    const double longer = std::exp2((20 - shop.celsius) / 10);
    return GlueTimes{shop.openMinutes * longer, shop.clampMinutes * longer,
                     shop.machiningHours * longer, shop.cureHours * longer};
}

double pressureFor(double density, const GlueShop& shop) {
    if (density <= 0) {
        return shop.heavyPressure;
    }
    const double share = (density - shop.lightDensity) / (shop.heavyDensity - shop.lightDensity);
    return std::lerp(shop.lightPressure, shop.heavyPressure, std::clamp(share, 0.0, 1.0));
}

int clampsFor(double pressure, Area face, double newtonsPerClamp) {
    return roundedUp(pressure * 1e6 * face.toSquareMetres() / newtonsPerClamp);
}

GlueNeeds glueNeeds(const StepList& list, const std::vector<Wood>& woods, const GlueShop& shop) {
    Reckoner reckoner(woods, shop);
    int index = 0;
    for (const Step& step : list.steps) {
        reckoner.take(step, index++);
    }
    return std::move(reckoner).done();
}

}  // namespace kerfwright
