#include "core/timber/layout.h"

#include "core/measure/at.h"
#include "core/timber/onewood.h"
#include "core/timber/tidy.h"

#include <algorithm>
#include <numeric>
#include <utility>

namespace kerfwright {
namespace {

using namespace cutting;

std::vector<std::string> woodsOf(const Demand& demand) {
    std::vector<std::string> woods;
    for (const WantedStrips& strips : demand.strips) {
        if (std::find(woods.begin(), woods.end(), strips.wood) == woods.end()) {
            woods.push_back(strips.wood);
        }
    }
    return woods;
}

/// Of one wood.
struct Part {
    Pool pool;
    std::vector<Pattern> patterns;
    std::vector<int> missing;  ///< of each item
    std::int64_t bound = 0;
    Volume leastMissing;
    bool proven = false;
};

class Layer {
public:
    Layer(const Rack& rack, const Demand& demand, const CutRules& rules,
          const LayoutCallback& callback)
        : rack_(rack)
        , demand_(demand)
        , rules_(rules)
        , callback_(callback) {
        const std::vector<std::string> woods = woodsOf(demand);
        const bool priced =
            std::all_of(rack.planks.begin(), rack.planks.end(), [&](const Plank& plank) {
                return plank.price > 0 ||
                       std::find(woods.begin(), woods.end(), plank.wood) == woods.end();
            });
        costIn_ = priced ? CostIn::Money : CostIn::Volume;
        for (const std::string& wood : woods) {
            Part part{poolOf(wood, rack, demand, rules, costIn_), {}, {}, 0, {}, false};
            for (const Item& item : part.pool.items) {
                part.missing.push_back(item.count);
                part.leastMissing += item.volume * item.count;
            }
            part.proven = part.pool.blanks.empty();
            if (!part.proven) {
                part.leastMissing = Volume();
            }
            parts_.push_back(std::move(part));
        }
    }

    Layout lay() {
        std::int64_t left = rules_.budget;
        for (std::size_t i = 0; i < parts_.size() && !stopped_; ++i) {
            if (parts_[i].proven) {
                continue;
            }
            const std::int64_t share = left / static_cast<std::int64_t>(parts_.size() - i);
            Budget budget(std::max<std::int64_t>(share, 1), [&, share, left] {
                return goOn(rules_.budget - left + share - current_->left());
            });
            current_ = &budget;
            search(parts_[i], budget);
            left -= std::min(share, share - budget.left());
            stopped_ = stopped_ || budget.stopped();
        }
        for (Part& part : parts_) {
            part.patterns = tidied(part.pool, rules_, part.patterns,
                                   [&] { return !stopped_ && goOn(rules_.budget); });
        }
        Layout layout = built();
        if (!stopped_ && callback_) {
            callback_({1, &layout});
        }
        return layout;
    }

private:
    void search(Part& part, Budget& budget) {
        OneWood* running = nullptr;
        const auto take = [&] {
            part.patterns = running->best;
            part.missing = running->missing;
            part.bound = running->bound;
            part.leastMissing = running->leastMissing;
            part.proven = running->proven;
        };
        OneWood wood(part.pool, budget, [&] {
            take();
            changed_ = true;
        });
        running = &wood;
        wood.search();
        take();
    }

    bool goOn(std::int64_t spent) {
        if (!callback_) {
            return true;
        }
        LayoutProgress progress;
        progress.done =
            rules_.budget > 0
                ? std::clamp(static_cast<double>(spent) / static_cast<double>(rules_.budget), 0.0,
                             1.0)
                : 1;
        Layout best;
        if (std::exchange(changed_, false)) {
            best = built();
            progress.best = &best;
        }
        stopped_ = stopped_ || !callback_(progress);
        return !stopped_;
    }

    /// Of what is wanted, so many of a kind; items hand them out to their lines in order.
    Layout built() const {
        Layout layout;
        layout.costIn = costIn_;
        layout.stopped = stopped_;
        layout.proven = true;
        layout.missing.assign(demand_.strips.size(), 0);
        std::vector<int> left;
        for (const WantedStrips& strips : demand_.strips) {
            left.push_back(strips.count);
        }
        for (const Part& part : parts_) {
            std::vector<std::size_t> used(part.pool.blanks.size(), 0);
            for (const Pattern& pattern : part.patterns) {
                PlankCuts cuts = cutsOf(part.pool, pattern, left);
                cuts.plank = part.pool.blanks[at(pattern.blank)].planks[used[at(pattern.blank)]++];
                if (!cuts.sections.empty()) {
                    layout.planks.push_back(std::move(cuts));
                }
            }
            layout.bound += part.bound;
            layout.leastMissingVolume += part.leastMissing;
            layout.proven = layout.proven && part.proven;
        }
        layout.missing = left;
        for (std::size_t i = 0; i < left.size(); ++i) {
            const WantedStrips& strips = demand_.strips[i];
            layout.missingVolume += volume(strips.thickness, strips.width, strips.length) * left[i];
        }
        std::sort(layout.planks.begin(), layout.planks.end(),
                  [](const PlankCuts& a, const PlankCuts& b) { return a.plank < b.plank; });
        for (PlankCuts& cuts : layout.planks) {
            const Plank& plank = rack_.planks[at(cuts.plank)];
            layout.cost += countedCost(plank, rules_, costIn_);
            cuts.offcuts = offcutsOf(plank, cuts, demand_, rules_);
        }
        // Of a wood that is short the bound means nothing.
        layout.bound = layout.isComplete() ? std::min(layout.bound, layout.cost) : 0;
        return layout;
    }

    PlankCuts cutsOf(const Pool& pool, const Pattern& pattern, std::vector<int>& left) const {
        PlankCuts cuts;
        for (const Stretch& stretch : pattern.stretches) {
            PlankSection section{
                Length::nm(stretch.x) + rules_.endTrim, Length::nm(stretch.length), {}};
            for (const Strip& strip : stretch.strips) {
                const std::vector<int>& lines = pool.items[at(strip.item)].wanted;
                const auto line = std::find_if(lines.begin(), lines.end(),
                                               [&left](int one) { return left[at(one)] > 0; });
                if (line != lines.end()) {
                    --left[at(*line)];
                    section.strips.push_back({*line, Length::nm(strip.x) + rules_.endTrim,
                                              Length::nm(strip.y) + rules_.edgeTrim, strip.onEdge});
                }
            }
            if (!section.strips.empty()) {
                cuts.sections.push_back(std::move(section));
            }
        }
        return cuts;
    }

    const Rack& rack_;
    const Demand& demand_;
    const CutRules& rules_;
    const LayoutCallback& callback_;
    CostIn costIn_ = CostIn::Volume;
    std::vector<Part> parts_;
    const Budget* current_ = nullptr;
    bool changed_ = false;
    bool stopped_ = false;
};

}  // namespace

Layout layout(const Rack& rack, const Demand& demand, const CutRules& rules,
              const LayoutCallback& callback) {
    return Layer(rack, demand, rules, callback).lay();
}

}  // namespace kerfwright
