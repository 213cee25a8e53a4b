// The referee, by mutation: a right layout passes, and every single change to it that matters is
// found.
#include "core/timber/referee.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <functional>
#include <string>
#include <vector>

namespace kerfwright {
namespace {

constexpr Length mm(std::int64_t count) {
    return Length::mm(count);
}

/// Two planks of 1000 x 100, the first with a knot; kerf 3, trims 5 at the ends and 2 at the edges.
struct Bench {
    Rack rack;
    Demand demand;
    CutRules rules;
    Layout layout;

    Bench() {
        rack.planks.push_back(
            {"P", "oak", mm(30), mm(100), mm(1000), {{mm(450), mm(40), mm(20), mm(20)}}, 900});
        rack.planks.push_back({"Q", "oak", mm(30), mm(100), mm(1000), {}, 1000});
        rack.planks.push_back({"R", "ash", mm(30), mm(100), mm(1000), {}, 1000});
        demand.strips.push_back({"A", "oak", mm(30), mm(38), mm(500), 4});
        demand.strips.push_back({"B", "oak", mm(20), mm(30), mm(400), 1});
        demand.strips.push_back({"C", "oak", mm(20), mm(30), mm(400), 1, false});
        rules.kerf = mm(3);
        rules.endTrim = mm(5);
        rules.edgeTrim = mm(2);
        rules.thicker = mm(10);
        rules.offcutLength = mm(400);
        rules.offcutWidth = mm(10);
        // P: A above and below the knot would touch it: one A beside it, B on edge below, C above.
        layout.planks.push_back({0,
                                 {{mm(5), mm(400), {{1, mm(5), mm(2), true}, {2, mm(5), mm(25)}}},
                                  {mm(473), mm(500), {{0, mm(473), mm(2)}, {0, mm(473), mm(43)}}}},
                                 {{mm(5), mm(58), mm(400), mm(42)}}});
        layout.planks.push_back(
            {1, {{mm(5), mm(500), {{0, mm(5), mm(2)}}}}, {{mm(508), Length(), mm(492), mm(100)}}});
        layout.missing = {1, 0, 0};
        layout.costIn = CostIn::Money;
        layout.cost = 1900;
        layout.missingVolume = volume(mm(30), mm(38), mm(500));
    }
    std::vector<Fault> verdict() const { return layoutFaults(layout, rack, demand, rules); }
};

std::string words(const std::vector<Fault>& faults) {
    std::string all;
    for (const Fault& fault : faults) {
        all += fault.text() + "\n";
    }
    return all;
}

TEST(Referee, LetsARightLayoutPass) {
    EXPECT_EQ(words(Bench().verdict()), "");
}

struct Mutation {
    const char* what;
    std::function<void(Bench&)> spoil;
};

TEST(Referee, FindsEveryChangeThatMatters) {
    const Length bit = Length::nm(1);
    const std::vector<Mutation> mutations = {
        {"unknown plank", [](Bench& b) { b.layout.planks[1].plank = 7; }},
        {"plank twice", [](Bench& b) { b.layout.planks[1].plank = 0; }},
        {"other wood", [](Bench& b) { b.layout.planks[1].plank = 2; }},
        {"into the end trim", [&](Bench& b) { b.layout.planks[1].sections[0].x -= bit; }},
        {"section too near", [](Bench& b) { b.layout.planks[0].sections[1].x = mm(407); }},
        {"section beyond the end",
         [](Bench& b) { b.layout.planks[0].sections[1].length = mm(523); }},
        {"section without a strip",
         [](Bench& b) { b.layout.planks[1].sections[0].strips.clear(); }},
        {"plank without a section", [](Bench& b) { b.layout.planks[1].sections.clear(); }},
        {"unknown strip", [](Bench& b) { b.layout.planks[1].sections[0].strips[0].wanted = 9; }},
        {"another strip", [](Bench& b) { b.layout.planks[1].sections[0].strips[0].wanted = 1; }},
        {"into the edge trim",
         [&](Bench& b) { b.layout.planks[1].sections[0].strips[0].y -= bit; }},
        {"beyond the edge",
         [&](Bench& b) { b.layout.planks[1].sections[0].strips[0].y = mm(60) + bit; }},
        {"kerf below a strip",
         [&](Bench& b) { b.layout.planks[0].sections[0].strips[1].y -= bit; }},
        {"left of its section",
         [&](Bench& b) { b.layout.planks[0].sections[1].strips[0].x -= bit; }},
        {"right of its section",
         [&](Bench& b) { b.layout.planks[0].sections[1].strips[0].x += bit; }},
        {"over the knot",
         [](Bench& b) {
             b.layout.planks[0].sections[1].x = mm(469);
             b.layout.planks[0].sections[1].strips[0].x = mm(469);
             b.layout.planks[0].sections[1].strips[1].x = mm(469);
         }},
        {"flat instead of on edge",
         [](Bench& b) { b.layout.planks[0].sections[0].strips[0].onEdge = false; }},
        {"on edge where it must not be",
         [](Bench& b) { b.layout.planks[0].sections[0].strips[1].onEdge = true; }},
        {"plank too thin", [](Bench& b) { b.rack.planks[1].thickness = mm(29); }},
        {"plank too thick", [](Bench& b) { b.rules.thicker = mm(9); }},
        {"offcut too short", [](Bench& b) { b.layout.planks[1].offcuts[0].length = mm(399); }},
        {"offcut in the kerf", [&](Bench& b) { b.layout.planks[1].offcuts[0].x -= bit; }},
        {"offcut off the plank", [&](Bench& b) { b.layout.planks[1].offcuts[0].length += bit; }},
        {"offcut twice",
         [](Bench& b) { b.layout.planks[1].offcuts.push_back(b.layout.planks[1].offcuts[0]); }},
        {"one strip fewer", [](Bench& b) { b.layout.planks[0].sections[1].strips.pop_back(); }},
        {"more missing than said", [](Bench& b) { b.layout.missing[0] = 0; }},
        {"missing told of two lines", [](Bench& b) { b.layout.missing.pop_back(); }},
        {"missing timber", [](Bench& b) { b.layout.missingVolume = Volume(); }},
        {"cost", [](Bench& b) { b.layout.cost -= 1; }},
        {"cost counted otherwise", [](Bench& b) { b.layout.costIn = CostIn::Volume; }},
        {"proven without a reason", [](Bench& b) { b.layout.proven = true; }},
        {"more missing at least than is missing",
         [](Bench& b) { b.layout.leastMissingVolume = b.layout.missingVolume + Volume(1); }},
        {"kerf", [&](Bench& b) { b.rules.kerf += bit; }},
        {"end trim", [&](Bench& b) { b.rules.endTrim += bit; }},
        {"edge trim", [&](Bench& b) { b.rules.edgeTrim += bit; }},
    };
    for (const Mutation& mutation : mutations) {
        Bench bench;
        mutation.spoil(bench);
        EXPECT_FALSE(bench.verdict().empty()) << mutation.what;
    }
}

TEST(Referee, HoldsTheBoundToTheCostOfWhatIsComplete) {
    Bench bench;
    bench.demand.strips[0].count = 3;
    bench.layout.missing[0] = 0;
    bench.layout.missingVolume = Volume();
    bench.layout.bound = 1900;
    bench.layout.proven = true;
    EXPECT_EQ(words(bench.verdict()), "");
    bench.layout.bound = 1899;
    EXPECT_FALSE(bench.verdict().empty());
    bench.layout.proven = false;
    EXPECT_TRUE(bench.verdict().empty());
    bench.layout.bound = 1901;
    EXPECT_FALSE(bench.verdict().empty());
}

}  // namespace
}  // namespace kerfwright
