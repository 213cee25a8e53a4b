#include "core/timber/tidy.h"

#include "core/measure/at.h"

#include <algorithm>
#include <numeric>

namespace kerfwright::cutting {
namespace {

/// The section drawn in to its strips; false where it has none.
bool drawIn(const Pool& pool, Stretch& stretch) {
    if (stretch.strips.empty()) {
        return false;
    }
    Nm left = stretch.x + stretch.length;
    Nm right = stretch.x;
    for (const Strip& strip : stretch.strips) {
        left = std::min(left, strip.x);
        right = std::max(right, strip.x + pool.items[at(strip.item)].length);
    }
    stretch.x = left;
    stretch.length = right - left;
    return true;
}

void dropSurplus(const Pool& pool, std::vector<Pattern>& patterns) {
    std::vector<int> surplus;
    for (std::size_t item = 0; item < pool.items.size(); ++item) {
        surplus.push_back(-pool.items[item].count);
        for (const Pattern& pattern : patterns) {
            surplus[item] += pattern.counts[item];
        }
    }
    for (auto pattern = patterns.rbegin(); pattern != patterns.rend(); ++pattern) {
        for (auto stretch = pattern->stretches.rbegin(); stretch != pattern->stretches.rend();
             ++stretch) {
            std::erase_if(stretch->strips, [&](const Strip& strip) {
                int& over = surplus[at(strip.item)];
                if (over <= 0) {
                    return false;
                }
                --over;
                --pattern->counts[at(strip.item)];
                return true;
            });
        }
        std::erase_if(pattern->stretches,
                      [&pool](Stretch& stretch) { return !drawIn(pool, stretch); });
    }
    std::erase_if(patterns, [](const Pattern& pattern) { return pattern.isEmpty(); });
}

/// In m3, times the length in m: long offcuts count for more than as much in short ones.
double worth(const Pool& pool, const CutRules& rules, const Pattern& pattern) {
    const Blank& blank = pool.blanks[at(pattern.blank)];
    double sum = 0;
    const auto count = [&](Nm length, Nm width) {
        if (length >= rules.offcutLength.nm() && width >= rules.offcutWidth.nm()) {
            const double metres = static_cast<double>(length) / 1e9;
            sum += metres * metres * static_cast<double>(width) / 1e9;
        }
    };
    Nm free = 0;
    for (const Stretch& stretch : pattern.stretches) {
        count(stretch.x - pool.kerf - free, blank.width);
        free = stretch.x + stretch.length + pool.kerf;
        Nm top = 0;
        for (const Strip& strip : stretch.strips) {
            const auto way = std::find_if(blank.ways.begin(), blank.ways.end(),
                                          [&](const Way& one) { return one.item == strip.item; });
            top = std::max(top, strip.y + way->width + pool.kerf);
        }
        count(stretch.length, blank.width - top);
    }
    count(blank.length - free, blank.width);
    return sum;
}

class Tidier {
public:
    Tidier(const Pool& pool, const CutRules& rules)
        : pool_(pool)
        , rules_(rules) {
        for (const Item& item : pool.items) {
            values_.push_back(item.volume.toCubicMetres());
        }
        for (int blank = 0; blank < static_cast<int>(pool.blanks.size()); ++blank) {
            fillers_.emplace_back(pool, blank);
        }
    }

    double worthOf(const std::vector<Pattern>& patterns) const {
        double sum = 0;
        for (const Pattern& pattern : patterns) {
            sum += pattern.isEmpty() ? unused(pattern.blank) : worth(pool_, rules_, pattern);
        }
        return sum;
    }

    /// Moves what it can from one plank to the others.
    std::vector<Pattern> emptied(std::vector<Pattern> patterns, std::size_t which) {
        std::vector<int> rest = patterns[which].counts;
        for (std::size_t other = 0; other < patterns.size(); ++other) {
            if (other == which || isDone(rest)) {
                continue;
            }
            std::vector<int> both = rest;
            for (std::size_t item = 0; item < both.size(); ++item) {
                both[item] += patterns[other].counts[item];
            }
            Pattern fuller;
            fillers_[at(patterns[other].blank)].fillWithin(values_, both, fuller);
            if (volumeOf(fuller) > volumeOf(patterns[other])) {
                for (std::size_t item = 0; item < both.size(); ++item) {
                    rest[item] = both[item] - fuller.counts[item];
                }
                patterns[other] = fuller;
            }
        }
        Pattern left;
        fillers_[at(patterns[which].blank)].fillWithin(values_, rest, left);
        if (left.counts != rest) {
            return {};
        }
        patterns[which] = left;
        return patterns;
    }

    /// The same strips in as little of the plank's length as can be.
    void moveTogether(Pattern& pattern) {
        Pattern again;
        fillers_[at(pattern.blank)].fillWithin(values_, pattern.counts, again);
        if (again.counts == pattern.counts &&
            worth(pool_, rules_, again) > worth(pool_, rules_, pattern)) {
            pattern = again;
        }
    }

private:
    static bool isDone(const std::vector<int>& rest) {
        return std::all_of(rest.begin(), rest.end(), [](int count) { return count == 0; });
    }
    double volumeOf(const Pattern& pattern) const {
        return std::inner_product(values_.begin(), values_.end(), pattern.counts.begin(), 0.0);
    }
    double unused(int blank) const {
        const Blank& whole = pool_.blanks[at(blank)];
        const double metres = static_cast<double>(whole.length) / 1e9;
        return metres * metres * static_cast<double>(whole.width) / 1e9;
    }

    const Pool& pool_;
    const CutRules& rules_;
    std::vector<double> values_;
    std::vector<Filler> fillers_;
};

constexpr std::size_t mostPlanks = 60;  ///< each is tried against each

}  // namespace

std::vector<Pattern> tidied(const Pool& pool, const CutRules& rules, std::vector<Pattern> patterns,
                            const std::function<bool()>& goOn) {
    dropSurplus(pool, patterns);
    if (patterns.size() > mostPlanks) {
        return patterns;
    }
    Tidier tidier(pool, rules);
    for (Pattern& pattern : patterns) {
        tidier.moveTogether(pattern);
    }
    double best = tidier.worthOf(patterns);
    for (std::size_t which = 0; which < patterns.size() && goOn(); ++which) {
        std::vector<Pattern> next = tidier.emptied(patterns, which);
        const double reached = next.empty() ? best : tidier.worthOf(next);
        if (reached > best) {
            best = reached;
            patterns = std::move(next);
        }
    }
    std::erase_if(patterns, [](const Pattern& pattern) { return pattern.isEmpty(); });
    return patterns;
}

std::vector<Offcut> offcutsOf(const Plank& plank, const PlankCuts& cuts, const Demand& demand,
                              const CutRules& rules) {
    std::vector<Offcut> offcuts;
    const auto keep = [&](Length x, Length y, Length right, Length high) {
        if (right - x >= rules.offcutLength && high - y >= rules.offcutWidth) {
            offcuts.push_back({x, y, right - x, high - y});
        }
    };
    Length free;
    for (const PlankSection& section : cuts.sections) {
        keep(free, Length(), section.x - rules.kerf, plank.width);
        Length low;
        for (const LaidStrip& strip : section.strips) {
            keep(section.x, low, section.x + section.length, strip.y - rules.kerf);
            low = strip.y + acrossPlank(demand.strips[at(strip.wanted)], strip.onEdge) + rules.kerf;
        }
        keep(section.x, low, section.x + section.length, plank.width);
        free = section.x + section.length + rules.kerf;
    }
    keep(free, Length(), plank.length, plank.width);
    return offcuts;
}

}  // namespace kerfwright::cutting
