#include "core/timber/cutorder.h"

#include "core/measure/at.h"

#include <algorithm>
#include <numeric>

namespace kerfwright {
namespace {

struct Range {
    Length from, to;
    Length size() const { return to - from; }
};

/// A cut in one direction: where the blade runs, and what comes off.
struct Parting {
    Range blade;
    Range off;
    int part = -1;  ///< -1: waste or an offcut
};

/// Frees parts that lie in order between `whole`'s ends, a kerf or more from each other, so that
/// the largest gap stays on the workpiece until last.
std::vector<Parting> partings(const std::vector<Range>& parts, Range whole, Length kerf) {
    const std::size_t count = parts.size();
    std::size_t kept = count;
    Length largest = whole.to - parts.back().to;
    for (std::size_t gap = 0; gap < count; ++gap) {
        const Length size = parts[gap].from - (gap == 0 ? whole.from : parts[gap - 1].to);
        if (size > largest) {
            largest = size;
            kept = gap;
        }
    }
    std::vector<Parting> all;
    Length left = whole.from;
    Length right = whole.to;
    for (std::size_t i = 0; i < kept; ++i) {
        if (parts[i].from > left) {
            const Length blade = std::max(left, parts[i].from - kerf);
            all.push_back({{blade, parts[i].from}, {left, blade}, -1});
        }
        left = parts[i].to;
        if (left < right) {
            const Length end = std::min(left + kerf, right);
            all.push_back({{left, end}, parts[i], static_cast<int>(i)});
            left = end;
        }
    }
    for (std::size_t i = count; i-- > kept;) {
        if (parts[i].to < right) {
            const Length blade = std::min(right, parts[i].to + kerf);
            all.push_back({{parts[i].to, blade}, {blade, right}, -1});
        }
        right = parts[i].from;
        if (left < right) {
            const Length end = std::max(right - kerf, left);
            all.push_back({{end, right}, parts[i], static_cast<int>(i)});
            right = end;
        }
    }
    return all;
}

class Orderer {
public:
    Orderer(const Rack& rack, const Demand& demand, const CutRules& rules)
        : rack_(rack)
        , demand_(demand)
        , rules_(rules) {}

    void plank(const PlankCuts& cuts, int index) {
        const Plank& plank = rack_.planks[at(cuts.plank)];
        std::vector<Range> sections;
        for (const PlankSection& section : cuts.sections) {
            sections.push_back({section.x, section.x + section.length});
        }
        for (const Parting& parting : partings(sections, {Length(), plank.length}, rules_.kerf)) {
            SawCut& cut = add(SawCutKind::Crosscut, index, parting);
            cut.section = parting.part;
            cut.off = parting.part >= 0 ? CutOff::Section : gap(parting.off.size(), plank.width);
            cut.x = parting.blade.from;
            cut.length = parting.blade.size();
            cut.width = plank.width;
        }
        for (std::size_t i = 0; i < cuts.sections.size(); ++i) {
            rip(cuts.sections[i], static_cast<int>(i), plank, index);
        }
        for (std::size_t i = 0; i < cuts.sections.size(); ++i) {
            toLength(cuts.sections[i], static_cast<int>(i), index);
        }
    }

    std::vector<SawCut> cuts() { return std::move(cuts_); }

private:
    SawCut& add(SawCutKind kind, int plank, const Parting& parting) {
        SawCut cut;
        cut.number = static_cast<int>(cuts_.size()) + 1;
        cut.kind = kind;
        cut.plank = plank;
        cut.size = parting.off.size();
        cuts_.push_back(cut);
        return cuts_.back();
    }
    CutOff gap(Length length, Length width) const {
        return length >= rules_.offcutLength && width >= rules_.offcutWidth ? CutOff::Kept
                                                                            : CutOff::Waste;
    }
    Range across(const LaidStrip& strip) const {
        return {strip.y, strip.y + acrossPlank(demand_.strips[at(strip.wanted)], strip.onEdge)};
    }

    void rip(const PlankSection& section, int index, const Plank& plank, int plankIndex) {
        std::vector<Range> strips;
        for (const LaidStrip& strip : section.strips) {
            strips.push_back(across(strip));
        }
        for (const Parting& parting : partings(strips, {Length(), plank.width}, rules_.kerf)) {
            SawCut& cut = add(SawCutKind::Rip, plankIndex, parting);
            cut.section = index;
            cut.strip = parting.part;
            cut.off = parting.part >= 0 ? CutOff::Strip : gap(section.length, parting.off.size());
            cut.x = section.x;
            cut.length = section.length;
            cut.y = parting.blade.from;
            cut.width = parting.blade.size();
        }
    }

    void toLength(const PlankSection& section, int index, int plank) {
        for (std::size_t i = 0; i < section.strips.size(); ++i) {
            const LaidStrip& strip = section.strips[i];
            const Range width = across(strip);
            const Range own{strip.x, strip.x + demand_.strips[at(strip.wanted)].length};
            for (const Parting& parting :
                 partings({own}, {section.x, section.x + section.length}, rules_.kerf)) {
                SawCut& cut = add(SawCutKind::ToLength, plank, parting);
                cut.section = index;
                cut.strip = static_cast<int>(i);
                cut.off = parting.part >= 0 ? CutOff::Strip : CutOff::Waste;
                cut.x = parting.blade.from;
                cut.length = parting.blade.size();
                cut.y = width.from;
                cut.width = width.size();
            }
        }
    }

    const Rack& rack_;
    const Demand& demand_;
    const CutRules& rules_;
    std::vector<SawCut> cuts_;
};

Length longestOffcut(const PlankCuts& cuts) {
    Length longest;
    for (const Offcut& offcut : cuts.offcuts) {
        longest = std::max(longest, offcut.length);
    }
    return longest;
}

}  // namespace

std::vector<SawCut> cutOrder(const Layout& layout, const Rack& rack, const Demand& demand,
                             const CutRules& rules) {
    std::vector<int> order(layout.planks.size());
    std::iota(order.begin(), order.end(), 0);
    std::stable_sort(order.begin(), order.end(), [&](int a, int b) {
        return longestOffcut(layout.planks[at(a)]) < longestOffcut(layout.planks[at(b)]);
    });
    Orderer orderer(rack, demand, rules);
    for (const int plank : order) {
        orderer.plank(layout.planks[at(plank)], plank);
    }
    return orderer.cuts();
}

}  // namespace kerfwright
