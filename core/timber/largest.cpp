#include "core/timber/largest.h"

#include <map>

namespace kerfwright {
namespace {

class Trier {
public:
    Trier(const Rack& rack, const CutRules& rules, const DemandAt& demandAt,
          const LayoutCallback& callback)
        : rack_(rack)
        , rules_(rules)
        , demandAt_(demandAt)
        , callback_(callback) {}

    bool fits(int size) {
        const Result<Demand> demand = demandAt_(size);
        if (!demand) {
            isImpossible_[size] = true;
            return false;
        }
        bool isOver = false;
        const Layout found = layout(rack_, *demand, rules_, [&](const LayoutProgress& progress) {
            if (callback_ && !callback_(progress)) {
                stopped_ = true;
                return false;
            }
            // Cheaper layouts are of no interest here, nor smaller shortages.
            isOver = isOver ||
                     (progress.best != nullptr && (progress.best->isComplete() ||
                                                   progress.best->leastMissingVolume > Volume()));
            return !isOver;
        });
        isImpossible_[size] = found.leastMissingVolume > Volume();
        if (found.isComplete()) {
            layouts_[size] = found;
        }
        return found.isComplete();
    }

    bool stopped() const { return stopped_; }
    bool isImpossible(int size) { return isImpossible_[size]; }
    /// With the whole budget, now that cost matters.
    Layout best(int size) {
        const Result<Demand> demand = demandAt_(size);
        if (stopped_ || !demand) {
            return layouts_[size];
        }
        Layout again = layout(rack_, *demand, rules_, callback_);
        return again.isComplete() ? again : layouts_[size];
    }

private:
    const Rack& rack_;
    const CutRules& rules_;
    const DemandAt& demandAt_;
    const LayoutCallback& callback_;
    std::map<int, Layout> layouts_;
    std::map<int, bool> isImpossible_;
    bool stopped_ = false;
};

}  // namespace

std::optional<Largest> largestFrom(const Rack& rack, const CutRules& rules, int count,
                                   const DemandAt& demandAt, const LayoutCallback& callback) {
    Trier trier(rack, rules, demandAt, callback);
    int fits = -1;
    int tooLarge = count;
    while (tooLarge - fits > 1 && !trier.stopped()) {
        const int middle = fits + (tooLarge - fits) / 2;
        if (trier.fits(middle)) {
            fits = middle;
        } else if (!trier.stopped()) {
            tooLarge = middle;
        }
    }
    if (fits < 0) {
        return std::nullopt;
    }
    return Largest{fits, trier.best(fits),
                   tooLarge - fits == 1 && (tooLarge == count || trier.isImpossible(tooLarge))};
}

}  // namespace kerfwright
