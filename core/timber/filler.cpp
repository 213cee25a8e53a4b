#include "core/timber/filler.h"

#include "core/measure/at.h"

#include <algorithm>

namespace kerfwright::cutting {
namespace {

std::uint64_t bit(std::size_t i) {
    return std::uint64_t{1} << i;
}

}  // namespace

Filler::Filler(const Pool& pool, int blank)
    : pool_(pool)
    , blank_(pool.blanks[at(blank)])
    , index_(blank) {
    for (const Way& way : blank_.ways) {
        lengths_.push_back(pool.items[at(way.item)].length);
    }
    std::sort(lengths_.begin(), lengths_.end());
    lengths_.erase(std::unique(lengths_.begin(), lengths_.end()), lengths_.end());
    for (std::size_t length = 0; length < lengths_.size(); ++length) {
        for (const Box& defect : blank_.defects) {
            for (std::size_t other = 0; other <= length; ++other) {
                const Nm start = defect.right + lengths_[other] - lengths_[length];
                if (start > 0 && start + lengths_[length] <= blank_.length) {
                    starts_.emplace_back(start, static_cast<int>(length));
                }
            }
        }
    }
    std::sort(starts_.begin(), starts_.end());
    starts_.erase(std::unique(starts_.begin(), starts_.end()), starts_.end());
    at_.resize(lengths_.size());
    for (std::size_t w = 0; w < blank_.ways.size(); ++w) {
        order_.push_back(static_cast<int>(w));
        narrowest_ = w == 0 ? blank_.ways[w].width : std::min(narrowest_, blank_.ways[w].width);
    }
    density_.resize(blank_.ways.size());
    above_.resize(blank_.ways.size() + 1);
    for (const Nm length : lengths_) {
        Window window;
        for (std::size_t w = 0; w < blank_.ways.size(); ++w) {
            if (pool.items[at(blank_.ways[w].item)].length <= length) {
                window.ways.emplace_back(static_cast<int>(w), std::vector<std::uint64_t>{0});
            }
        }
        clear_.push_back(number(std::move(window)));
    }
}

int Filler::windowAt(Nm x, int length) {
    const Nm end = x + lengths_[at(length)];
    const bool meets = std::any_of(blank_.defects.begin(), blank_.defects.end(),
                                   [&](const Box& box) { return box.left < end && x < box.right; });
    if (!meets) {
        return clear_[at(length)];
    }
    const auto found = at_[at(length)].find(x);
    if (found != at_[at(length)].end()) {
        return found->second;
    }
    const int window = findWindow(x, length);
    at_[at(length)].emplace(x, window);
    return window;
}

int Filler::findWindow(Nm x, int length) {
    Window window;
    const Nm end = x + lengths_[at(length)];
    for (std::size_t w = 0; w < blank_.ways.size(); ++w) {
        const Nm own = pool_.items[at(blank_.ways[w].item)].length;
        if (x + own > end) {
            continue;
        }
        std::vector<Nm> places = {x};
        for (const Box& box : blank_.defects) {
            if (box.right > x && box.right + own <= end) {
                places.push_back(box.right);
            }
        }
        std::vector<std::uint64_t> sets;
        for (const Nm place : places) {
            std::uint64_t set = 0;
            for (std::size_t d = 0; d < blank_.defects.size(); ++d) {
                const Box& box = blank_.defects[d];
                set |= box.left < place + own && place < box.right ? bit(d) : 0;
            }
            sets.push_back(set);
        }
        // A set that holds all of another blocks more and is never wanted.
        std::sort(sets.begin(), sets.end());
        sets.erase(std::unique(sets.begin(), sets.end()), sets.end());
        std::vector<std::uint64_t> least;
        for (const std::uint64_t set : sets) {
            if (std::none_of(sets.begin(), sets.end(), [set](std::uint64_t other) {
                    return other != set && (other & set) == other;
                })) {
                least.push_back(set);
            }
        }
        window.ways.emplace_back(static_cast<int>(w), std::move(least));
    }
    return number(std::move(window));
}

int Filler::number(Window window) {
    const auto [place, isNew] = known_.emplace(window, static_cast<int>(windows_.size()));
    if (isNew) {
        windows_.push_back(std::move(window));
    }
    return place->second;
}

Nm Filler::lowest(const std::pair<int, std::vector<std::uint64_t>>& way, Nm y) const {
    const Nm width = blank_.ways[at(way.first)].width;
    Nm best = -1;
    for (const std::uint64_t set : way.second) {
        Nm place = y;
        for (bool moved = set != 0; moved;) {
            moved = false;
            for (std::size_t d = 0; d < blank_.defects.size(); ++d) {
                const Box& box = blank_.defects[d];
                if ((set & bit(d)) != 0 && box.low < place + width && place < box.high) {
                    place = box.high;
                    moved = true;
                }
            }
        }
        if (place + width <= blank_.width && (best < 0 || place < best)) {
            best = place;
        }
    }
    return best;
}

const Filler::Cross& Filler::crossIn(int index) {
    const std::size_t window = at(index);
    if (window >= memo_.size()) {
        memo_.resize(windows_.size());
        filled_.resize(windows_.size(), -1);
    }
    if (filled_[window] != filling_) {
        across(windows_[window], limits_, memo_[window]);
        filled_[window] = filling_;
    }
    return memo_[window];
}

const Filler::Cross& Filler::cross(Nm x, int length) {
    return crossIn(windowAt(x, length));
}

const Filler::Cross& Filler::crossOf(const Label& label) {
    return label.own >= 0 ? own_[at(label.own)] : cross(label.from, label.choice);
}

/// Another section behind those of a label.
void Filler::extend(int now, Nm x, int length) {
    if (x + lengths_[at(length)] > blank_.length) {
        return;
    }
    // No window holds more than one that is clear.
    const Nm behind = x + lengths_[at(length)] + pool_.kerf;
    const double most = cuts_[at(now)].value + crossIn(clear_[at(length)]).value;
    const double after = most + behind_.within(blank_.length + pool_.kerf - behind);
    const double bestSum = cuts_[at(best_)].value;
    if (after < floor_ || (most <= bestSum && after <= bestSum)) {
        return;
    }
    const Cross* chosen = &cross(x, length);
    int own = -1;
    if (limits_ != nullptr && cuts_[at(now)].before >= 0) {
        left_ = *limits_;
        for (int cut = now; cuts_[at(cut)].before >= 0; cut = cuts_[at(cut)].before) {
            for (const auto& strip : crossOf(cuts_[at(cut)]).strips) {
                --left_[at(blank_.ways[at(strip.first)].item)];
            }
        }
        bool tooMany = false;
        for (const auto& strip : chosen->strips) {
            tooMany = --left_[at(blank_.ways[at(strip.first)].item)] < 0 || tooMany;
        }
        if (tooMany) {
            for (const auto& strip : chosen->strips) {
                ++left_[at(blank_.ways[at(strip.first)].item)];
            }
            if (owns_ == own_.size()) {
                own_.emplace_back();
            }
            own = static_cast<int>(owns_++);
            own_[at(own)].strips.clear();
            across(windows_[at(windowAt(x, length))], &left_, own_[at(own)]);
            chosen = &own_[at(own)];
        }
    }
    if (chosen->value <= 0) {
        return;
    }
    const double sum = cuts_[at(now)].value + chosen->value;
    cuts_.push_back({behind, sum, now, length, x, own});
    const int next = static_cast<int>(cuts_.size()) - 1;
    best_ = sum > bestSum ? next : best_;
    cutQueue_.push_back({behind, next});
    std::push_heap(cutQueue_.begin(), cutQueue_.end());
}

Stretch Filler::stretch(Nm x, Nm length, const std::vector<std::pair<int, Nm>>& strips) const {
    Stretch stretch{x, length, {}};
    for (const auto& [w, y] : strips) {
        const Way& way = blank_.ways[at(w)];
        const Nm own = pool_.items[at(way.item)].length;
        const auto isClear = [&, low = y, high = y + way.width](Nm place) {
            return std::none_of(blank_.defects.begin(), blank_.defects.end(), [&](const Box& box) {
                return box.left < place + own && place < box.right && box.low < high &&
                       low < box.high;
            });
        };
        Nm place = x;
        for (const Box& box : blank_.defects) {
            if (isClear(place)) {
                break;
            }
            if (box.right > x && box.right + own <= x + length) {
                place = box.right;
            }
        }
        stretch.strips.push_back({way.item, place, y, way.onEdge});
    }
    return stretch;
}

double Filler::along(const std::vector<double>& values, const std::vector<int>* limits,
                     Pattern* pattern) {
    values_ = &values;
    limits_ = limits;
    ++filling_;
    owns_ = 0;
    cuts_.assign(1, Label{});
    cutQueue_.assign(1, {0, 0});
    for (std::size_t w = 0; w < blank_.ways.size(); ++w) {
        const Way& way = blank_.ways[w];
        density_[w] = values[at(way.item)] / static_cast<double>(way.width + pool_.kerf);
    }
    std::sort(order_.begin(), order_.end(), [this](int a, int b) {
        return density_[at(a)] != density_[at(b)] ? density_[at(a)] > density_[at(b)] : a < b;
    });
    for (Steps& steps : above_) {
        steps.values.clear();
    }
    std::vector<std::pair<Nm, double>> sections;
    for (std::size_t length = 0; length < lengths_.size(); ++length) {
        sections.emplace_back(lengths_[length] + pool_.kerf, crossIn(clear_[length]).value);
    }
    climb(sections, blank_.length + pool_.kerf, behind_);
    const Pattern* remembered = recall(values, limits);
    double reached = -1;
    int before = 0;
    best_ = 0;
    auto start = starts_.begin();
    while (!cutQueue_.empty() || start != starts_.end()) {
        if (cutQueue_.empty() ||
            (start != starts_.end() && start->first < cutQueue_.front().place)) {
            if (start->first > cuts_[at(before)].place) {
                extend(before, start->first, start->second);
            }
            ++start;
            continue;
        }
        std::pop_heap(cutQueue_.begin(), cutQueue_.end());
        const int now = cutQueue_.back().label;
        cutQueue_.pop_back();
        if (cuts_[at(now)].value <= reached) {
            continue;
        }
        reached = cuts_[at(now)].value;
        before = now;
        const double most =
            reached + behind_.within(blank_.length + pool_.kerf - cuts_[at(now)].place);
        if (most < floor_ || most <= cuts_[at(best_)].value) {
            continue;
        }
        const Nm place = cuts_[at(now)].place;
        for (std::size_t length = 0; length < lengths_.size(); ++length) {
            extend(now, place, static_cast<int>(length));
        }
    }
    const double sum = cuts_[at(best_)].value;
    if (remembered != nullptr && remembered_ > sum) {
        if (pattern != nullptr) {
            *pattern = *remembered;
        }
        return remembered_;
    }
    Pattern found{index_, {}, std::vector<int>(pool_.items.size())};
    for (int cut = best_; cuts_[at(cut)].before >= 0; cut = cuts_[at(cut)].before) {
        const Label label = cuts_[at(cut)];
        const Cross& strips = crossOf(label);
        found.stretches.push_back(stretch(label.from, lengths_[at(label.choice)], strips.strips));
        for (const auto& strip : strips.strips) {
            ++found.counts[at(blank_.ways[at(strip.first)].item)];
        }
    }
    std::reverse(found.stretches.begin(), found.stretches.end());
    if (pattern != nullptr) {
        *pattern = found;
    }
    memory_[next_++ % memory_.size()] = std::move(found);
    return sum;
}

/// The best of what was found before, at these values and within these limits: nothing below it
/// needs to be looked at.
const Pattern* Filler::recall(const std::vector<double>& values, const std::vector<int>* limits) {
    const Pattern* best = nullptr;
    remembered_ = 0;
    const auto look = [&](const Pattern& pattern) {
        double sum = 0;
        bool within = true;
        for (std::size_t item = 0; item < pattern.counts.size(); ++item) {
            sum += pattern.counts[item] * values[item];
            within = within && (limits == nullptr || pattern.counts[item] <= (*limits)[item]);
        }
        if (within && sum > remembered_) {
            best = &pattern;
            remembered_ = sum;
        }
    };
    std::for_each(memory_.begin(), memory_.end(), look);
    look(hint_);
    // A little lower, since sums are rounded otherwise than bounds.
    floor_ = remembered_ * (1 - 1e-9);
    return best;
}

double Filler::fill(const std::vector<double>& values, Pattern* pattern) {
    return along(values, nullptr, pattern);
}

double Filler::fillWithin(const std::vector<double>& values, const std::vector<int>& limits,
                          Pattern& pattern) {
    hint_ = pattern;
    const double value = along(values, &limits, &pattern);
    hint_ = {};
    return value;
}

}  // namespace kerfwright::cutting
