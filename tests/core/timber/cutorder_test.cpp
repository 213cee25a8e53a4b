// The cuts, carried out on the planks one after another by a saw that knows nothing of layouts.
#include "core/timber/cutorder.h"
#include "tests/core/timber/instances.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <string>
#include <vector>

namespace kerfwright::timbertest {
namespace {

constexpr Length mm(std::int64_t count) {
    return Length::mm(count);
}

struct Sheet {
    Length left, right, low, high;
    friend bool operator==(const Sheet&, const Sheet&) = default;
};

Sheet sheet(Length x, Length y, Length length, Length width) {
    return {x, x + length, y, y + width};
}

class Saw {
public:
    explicit Saw(const Plank& plank)
        : parts_{sheet(Length(), Length(), plank.length, plank.width)} {}

    /// Empty, or what is wrong.
    std::string cut(const SawCut& cut) {
        const Sheet blade = sheet(cut.x, cut.y, cut.length, cut.width);
        const auto part = std::find_if(parts_.begin(), parts_.end(), [&](const Sheet& one) {
            return one.left < blade.right && blade.left < one.right && one.low < blade.high &&
                   blade.low < one.high;
        });
        if (part == parts_.end()) {
            return "cuts air";
        }
        const Sheet whole = *part;
        parts_.erase(part);
        Sheet one = whole;
        Sheet other = whole;
        if (cut.kind == SawCutKind::Rip) {
            if (blade.left != whole.left || blade.right != whole.right) {
                return "does not run from end to end";
            }
            one.high = blade.low;
            other.low = blade.high;
        } else {
            if (blade.low != whole.low || blade.high != whole.high) {
                return "does not run from edge to edge";
            }
            one.right = blade.left;
            other.left = blade.right;
        }
        bool cameOff = cut.size == Length();
        for (const Sheet& half : {one, other}) {
            if (half.left < half.right && half.low < half.high) {
                parts_.push_back(half);
                const Length size =
                    cut.kind == SawCutKind::Rip ? half.high - half.low : half.right - half.left;
                cameOff = cameOff || size == cut.size;
            }
        }
        return cameOff ? "" : "frees nothing of its size";
    }

    bool has(const Sheet& wanted) const {
        return std::find(parts_.begin(), parts_.end(), wanted) != parts_.end();
    }

private:
    std::vector<Sheet> parts_;
};

void expectCarriedOut(const Instance& instance, const Layout& layout) {
    const std::vector<SawCut> cuts =
        cutOrder(layout, instance.rack, instance.demand, instance.rules);
    std::vector<Saw> saws;
    for (const PlankCuts& plank : layout.planks) {
        saws.emplace_back(instance.rack.planks[static_cast<std::size_t>(plank.plank)]);
    }
    int number = 0;
    for (const SawCut& cut : cuts) {
        EXPECT_EQ(cut.number, ++number);
        EXPECT_EQ(saws[static_cast<std::size_t>(cut.plank)].cut(cut), "") << "cut " << number;
    }
    for (std::size_t i = 0; i < layout.planks.size(); ++i) {
        for (const PlankSection& section : layout.planks[i].sections) {
            for (const LaidStrip& strip : section.strips) {
                const WantedStrips& wanted =
                    instance.demand.strips[static_cast<std::size_t>(strip.wanted)];
                EXPECT_TRUE(saws[i].has(
                    sheet(strip.x, strip.y, wanted.length, acrossPlank(wanted, strip.onEdge))))
                    << wanted.label;
            }
        }
        for (const Offcut& offcut : layout.planks[i].offcuts) {
            EXPECT_TRUE(saws[i].has(sheet(offcut.x, offcut.y, offcut.length, offcut.width)))
                << "an offcut of plank " << i << " was cut or is still on something";
        }
    }
}

TEST(CutOrder, FreesEveryStripAndEveryOffcut) {
    for (Instance instance : {typical(), planted(3, 4), mixed(11, 8, 30, 20)}) {
        instance.rules.budget = 60;
        instance.rules.offcutLength = mm(200);
        for (const Length trim : {Length(), mm(12)}) {
            instance.rules.endTrim = trim;
            instance.rules.edgeTrim = trim;
            expectCarriedOut(instance, layout(instance.rack, instance.demand, instance.rules));
        }
    }
}

TEST(CutOrder, KeepsTheLongestOffcutUntilLast) {
    Instance instance;
    instance.rules.kerf = mm(3);
    instance.rack.planks = {{"P", "oak", mm(30), mm(100), mm(2000)},
                            {"Q", "oak", mm(30), mm(100), mm(1000)}};
    instance.demand.strips = {{"A", "oak", mm(30), mm(97), mm(200), 2},
                              {"B", "oak", mm(30), mm(97), mm(997), 1},
                              {"C", "oak", mm(30), mm(97), mm(150), 1}};
    Layout byHand;
    byHand.planks.push_back({0,
                             {{Length(), mm(200), {{0, Length(), Length()}}},
                              {mm(1500), mm(200), {{0, mm(1500), Length()}}},
                              {mm(1703), mm(200), {{2, mm(1703), Length()}}}},
                             {{mm(203), Length(), mm(1294), mm(100)}}});
    byHand.planks.push_back({1, {{Length(), mm(997), {{1, Length(), Length()}}}}, {}});
    byHand.missing = {0, 0, 0};
    const std::vector<SawCut> cuts =
        cutOrder(byHand, instance.rack, instance.demand, instance.rules);
    // Q leaves nothing, so it comes first: one crosscut and one rip, the blade takes the rest.
    ASSERT_GE(cuts.size(), 7u);
    EXPECT_EQ(cuts[0].plank, 1);
    EXPECT_EQ(cuts[0].off, CutOff::Section);
    EXPECT_EQ(cuts[0].size, mm(997));
    EXPECT_EQ(cuts[1].kind, SawCutKind::Rip);
    EXPECT_EQ(cuts[1].size, mm(97));
    // P: the left section, the waste on the right, then the two sections from the right.
    EXPECT_EQ(cuts[2].x, mm(200));
    EXPECT_EQ(cuts[3].off, CutOff::Waste);
    EXPECT_EQ(cuts[3].size, mm(94));
    EXPECT_EQ(cuts[4].section, 2);
    EXPECT_EQ(cuts[5].section, 1);
    EXPECT_EQ(cuts[5].x, mm(1497));
    expectCarriedOut(instance, byHand);
}

}  // namespace
}  // namespace kerfwright::timbertest
