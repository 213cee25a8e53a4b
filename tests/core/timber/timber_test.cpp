// The timber of a project: pins, rails in one length, what is bought, what goes back on the rack.
#include "core/timber/demand.h"
#include "core/timber/referee.h"
#include "core/timber/timber.h"
#include "core/timber/timberwords.h"
#include "tests/core/timber/instances.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <functional>
#include <map>
#include <set>

namespace kerfwright {
namespace {

std::vector<Wood> woods() {
    Wood ash;
    ash.key = "ash";
    ash.name = "Ash";
    ash.price.minorPerCubicMetre = 200'000;
    Wood oak = ash;
    oak.key = "oak";
    oak.name = "Oak";
    return {ash, oak};
}

Shop shop() {
    Shop shop = metricShop();
    shop.kerf = Length::mm(3);
    return shop;
}

Plank plank(const char* label, int thickness, int width, int length, const char* wood = "ash") {
    return {label, wood, Length::mm(thickness), Length::mm(width), Length::mm(length)};
}

WantedStrips strips(const char* label, int thickness, int width, int length, int count) {
    return {label, "ash", Length::mm(thickness), Length::mm(width), Length::mm(length), count};
}

Demand rails() {
    Demand demand;
    demand.strips = {strips("Top rail, Bottom rail", 30, 50, 600, 2),
                     strips("Left rail, Right rail", 30, 50, 400, 2)};
    for (WantedStrips& line : demand.strips) {
        line.isRail = true;
    }
    return demand;
}

/// The plank that gives a strip; empty where none does.
std::string plankOf(const TimberPlan& plan, const std::string& strip) {
    const auto labels = stripLabels(plan.layout, plan.demand);
    for (std::size_t i = 0; i < labels.size(); ++i) {
        for (const auto& section : labels[i]) {
            if (std::find(section.begin(), section.end(), strip) != section.end()) {
                return plan.rack.planks[static_cast<std::size_t>(plan.layout.planks[i].plank)]
                    .label;
            }
        }
    }
    return "";
}

TEST(Timber, APinnedStripComesFromItsPlank) {
    Timber timber;
    timber.rack.planks = {plank("P1", 30, 200, 1'000), plank("P2", 30, 200, 3'000)};
    Demand demand;
    demand.strips = {strips("A1, A2, A3", 28, 40, 500, 3)};
    const Result<TimberPlan> free = planTimber(demand, woods(), shop(), timber);
    ASSERT_TRUE(free);
    for (const char* strip : {"A1", "A2", "A3"}) {
        EXPECT_EQ(plankOf(free.value(), strip), "P1");
    }
    timber.pins = {{"A2", "P2"}};
    const Result<TimberPlan> pinned = planTimber(demand, woods(), shop(), timber);
    ASSERT_TRUE(pinned);
    EXPECT_EQ(plankOf(pinned.value(), "A2"), "P2");
    EXPECT_TRUE(pinned->layout.isComplete());
    EXPECT_TRUE(pinned->lostPins.empty());
}

TEST(Timber, APinThatCannotBeKeptIsToldAndTheStripIsLaidElsewhere) {
    Timber timber;
    timber.rack.planks = {plank("P1", 30, 200, 1'000), plank("P2", 20, 200, 3'000),
                          plank("P3", 30, 200, 3'000, "oak"), plank("P4", 30, 45, 520)};
    timber.pins = {{"A1", "P9"}, {"A2", "P2"}, {"A3", "P3"},
                   {"A4", "P4"}, {"A5", "P4"}, {"Z1", "P1"}};
    Demand demand;
    demand.strips = {strips("A1, A2, A3, A4, A5", 28, 40, 500, 5)};
    const Result<TimberPlan> plan = planTimber(demand, woods(), shop(), timber);
    ASSERT_TRUE(plan);
    EXPECT_TRUE(plan->layout.isComplete());
    std::map<std::string, std::string> lost;
    for (const LostPin& pin : plan->lostPins) {
        lost[pin.pin.strip] = pin.reason;
    }
    EXPECT_EQ(lost["A1"], "there is no plank P9 on the rack");
    EXPECT_EQ(lost["A2"], "it is too large for plank P2");
    EXPECT_EQ(lost["A3"], "plank P3 is of another wood");
    EXPECT_EQ(lost["Z1"], "no strip is called Z1");
    EXPECT_EQ(lost.count("A4") + lost.count("A5"), 1u) << "P4 has room for one of the two";
}

TEST(Timber, RailsComeFromOneLengthWhereAPlankGivesIt) {
    Timber timber;
    timber.rack.planks = {plank("P1", 32, 60, 2'200), plank("P2", 32, 300, 700)};
    const Result<TimberPlan> plan = planTimber(rails(), woods(), shop(), timber);
    ASSERT_TRUE(plan);
    EXPECT_EQ(plan->rails, RailLengths::OneLength);
    ASSERT_EQ(plan->demand.strips.size(), 1u);
    EXPECT_EQ(plan->demand.strips[0].length, Length::mm(600 + 400 + 600 + 400 + 3 * 3));
    EXPECT_EQ(plan->demand.strips[0].label, "Top rail + Left rail + Bottom rail + Right rail");
}

TEST(Timber, RailsComeInPairsOrSinglyWhereNoPlankIsLongEnough) {
    Timber timber;
    timber.rack.planks = {plank("P1", 32, 120, 1'100)};
    Result<TimberPlan> plan = planTimber(rails(), woods(), shop(), timber);
    ASSERT_TRUE(plan);
    EXPECT_EQ(plan->rails, RailLengths::Pairs);
    ASSERT_EQ(plan->demand.strips.size(), 1u);
    EXPECT_EQ(plan->demand.strips[0].count, 2);
    EXPECT_TRUE(plan->layout.isComplete());
    timber.rack.planks = {plank("P1", 32, 300, 700)};
    plan = planTimber(rails(), woods(), shop(), timber);
    ASSERT_TRUE(plan);
    EXPECT_EQ(plan->rails, RailLengths::Single);
    EXPECT_TRUE(plan->layout.isComplete());
    timber.railsInOneLength = false;
    timber.rack.planks = {plank("P1", 32, 60, 2'200)};
    plan = planTimber(rails(), woods(), shop(), timber);
    ASSERT_TRUE(plan);
    EXPECT_EQ(plan->rails, RailLengths::Single);
}

TEST(Timber, OneLengthNeverCostsAStripThatSinglyWouldBeLaid) {
    // The long plank holds the rails in one length or the long strip, the short one single rails.
    Timber timber;
    timber.rack.planks = {plank("P1", 32, 60, 2'200), plank("P2", 32, 220, 650)};
    Demand demand = rails();
    demand.strips.push_back(strips("A1", 30, 50, 2'100, 1));
    const Result<TimberPlan> plan = planTimber(demand, woods(), shop(), timber);
    ASSERT_TRUE(plan);
    EXPECT_TRUE(plan->layout.isComplete());
    EXPECT_EQ(plan->rails, RailLengths::Single);
}

TEST(Timber, WhatIsMissingIsBought) {
    Timber timber;
    Demand demand;
    demand.strips = {strips("A1, A2", 28, 40, 900, 2)};
    const Result<TimberPlan> plan = planTimber(demand, woods(), shop(), timber);
    ASSERT_TRUE(plan);
    EXPECT_EQ(plan->missing(), demand);
    ASSERT_EQ(plan->shopping.lines.size(), 1u);
    // 100 x 1000 holds both: 40 + 3 + 40.
    EXPECT_EQ(plan->shopping.lines[0].width, Length::mm(100));
    EXPECT_EQ(plan->shopping.lines[0].length, Length::mm(1'000));
    EXPECT_EQ(plan->shopping.lines[0].thickness, Length::mm(32));
    const std::vector<std::string> words =
        shortageWords(plan.value(), woods(), Notation::millimetres());
    ASSERT_EQ(words.size(), 1u);
    EXPECT_EQ(words.front(),
              "2 strips of Ash 28 × 40 × 900 mm do not fit: buy 1 plank 32 × 100 × 1000 mm.");
}

TEST(Timber, CountsPiecesOfTheBorderApartFromTheStrips) {
    Timber timber;
    timber.rack.planks = {plank("P1", 32, 300, 700)};
    Demand demand = rails();
    demand.strips.push_back(strips("A1, A2", 28, 40, 2'500, 2));
    const Result<TimberPlan> plan = planTimber(demand, woods(), shop(), timber);
    ASSERT_TRUE(plan);
    EXPECT_EQ(missingCount(plan.value()), 2);
    EXPECT_EQ(layoutWords(plan.value())
                  .find("2 strips and 4 pieces of the border are wanted; 4 of "
                        "them lie on 1 of 1 plank."),
              0u)
        << layoutWords(plan.value());
    EXPECT_EQ(shortageInBrief(plan.value(), woods()),
              "Missing: 2 × Ash. “Shopping” lists what to buy.");
    EXPECT_EQ(shortageInBrief(plan.value(), woods(), Shopping::Slip),
              "Missing: 2 × Ash. The shopping slip lists what to buy.");
}

TEST(Timber, SendsNobodyToASlipThatIsNotThere) {
    Demand demand;
    demand.strips = {strips("A1, A2", 280, 40, 900, 2)};  // thicker than any yard has planks
    const Result<TimberPlan> plan = planTimber(demand, woods(), shop(), Timber());
    ASSERT_TRUE(plan);
    ASSERT_TRUE(plan->shopping.lines.empty());
    EXPECT_EQ(shortageInBrief(plan.value(), woods(), Shopping::Slip),
              "Missing: 2 × Ash. The yard as it is set has no plank for them.");
}

TEST(Timber, AlikeStripsOfSeveralPartsAreCountedTogether) {
    Demand demand;
    demand.strips = {strips("1: A1, A2", 28, 40, 900, 2), strips("1: B1", 28, 30, 900, 1),
                     strips("2: A1, A2", 28, 40, 900, 2)};
    const Result<TimberPlan> plan = planTimber(demand, woods(), shop(), Timber());
    ASSERT_TRUE(plan);
    const std::vector<std::string> words =
        shortageWords(plan.value(), woods(), Notation::millimetres());
    ASSERT_EQ(words.size(), 1u);
    EXPECT_TRUE(words.front().starts_with(
        "4 strips of Ash 28 × 40 × 900 mm and 1 strip of 28 × 30 × 900 mm do not fit"))
        << words.front();
}

TEST(Timber, OffcutsGoBackOnTheRackWithTheirShareOfPriceAndDefects) {
    Timber timber;
    timber.rack.planks = {plank("P1", 30, 100, 2'000), plank("P2", 30, 100, 2'000, "oak")};
    timber.rack.planks[0].price = 4'000;
    timber.rack.planks[0].defects = {
        {Length::mm(1'500), Length::mm(10), Length::mm(20), Length::mm(20)}};
    Demand demand;
    demand.strips = {strips("A1, A2", 28, 48, 497, 2)};
    const Result<TimberPlan> plan = planTimber(demand, woods(), shop(), timber);
    ASSERT_TRUE(plan);
    const Rack after = rackAfter(plan.value());
    ASSERT_EQ(after.planks.size(), 2u);
    EXPECT_EQ(after.planks[0].label, "P2");
    const Plank& offcut = after.planks[1];
    EXPECT_EQ(offcut.label, "P1.1");
    EXPECT_TRUE(offcut.isOffcut);
    EXPECT_EQ(offcut.length, Length::mm(1'500));
    EXPECT_EQ(offcut.price, 3'000);
    ASSERT_EQ(offcut.defects.size(), 1u);
    EXPECT_TRUE(faults(after).empty());
}

TEST(Timber, StoppedAtOnceItStillAnswersWithAWholePlan) {
    const timbertest::Instance instance = timbertest::mixed(7, 12, 60, 10);
    Timber timber;
    timber.rack = instance.rack;
    const Result<TimberPlan> plan = planTimber(instance.demand, {}, shop(), timber,
                                               [](const TimberProgress&) { return false; });
    ASSERT_TRUE(plan) << plan.fault().text();
    EXPECT_TRUE(plan->layout.stopped);
    EXPECT_NE(verdict(plan->layout).find("Stopped"), std::string::npos);
}

TEST(Timber, ProgressGrowsAndShowsWhatIsBestSoFar) {
    const timbertest::Instance instance = timbertest::mixed(7, 12, 60, 10);
    Timber timber;
    timber.rack = instance.rack;
    timber.sawing.effort = 1;
    int shown = 0;
    bool grows = true;
    double last = 0;
    const auto look = [&](const TimberProgress& progress) {
        grows = grows && progress.done >= 0 && progress.done <= 1;
        last = progress.done;
        if (progress.best != nullptr) {
            ++shown;
        }
        return true;
    };
    ASSERT_TRUE(planTimber(instance.demand, {}, shop(), timber, look));
    EXPECT_TRUE(grows);
    EXPECT_GT(shown, 0);
    EXPECT_DOUBLE_EQ(last, 1);
}

RC_GTEST_PROP(Timber, EveryPinIsKeptOrToldAndEveryStripHasOneLabel, ()) {
    const int planks = *rc::gen::inRange(1, 4);
    const int count = *rc::gen::inRange(1, 8);
    Timber timber;
    for (int i = 0; i < planks; ++i) {
        timber.rack.planks.push_back(plank("", *rc::gen::inRange(20, 40),
                                           *rc::gen::inRange(40, 200),
                                           *rc::gen::inRange(300, 1'500)));
        timber.rack.planks.back().label = "P" + std::to_string(i);
    }
    Demand demand;
    WantedStrips line = strips("", 25, 40, *rc::gen::inRange(200, 600), count);
    for (int i = 1; i <= count; ++i) {
        line.label += (i == 1 ? "A" : ", A") + std::to_string(i);
    }
    demand.strips = {line};
    for (int i = 1; i <= count; ++i) {
        if (*rc::gen::arbitrary<bool>()) {
            timber.pins.push_back(
                {"A" + std::to_string(i), "P" + std::to_string(*rc::gen::inRange(0, planks + 1))});
        }
    }
    const Result<TimberPlan> plan = planTimber(demand, woods(), shop(), timber);
    RC_ASSERT(plan.ok());
    for (const StripPin& pin : timber.pins) {
        const bool lost = std::any_of(plan->lostPins.begin(), plan->lostPins.end(),
                                      [&](const LostPin& one) { return one.pin == pin; });
        RC_ASSERT(lost || plankOf(plan.value(), pin.strip) == pin.plank ||
                  !plan->layout.isComplete());
    }
    std::multiset<std::string> all;
    for (const auto& cuts : stripLabels(plan->layout, plan->demand)) {
        for (const auto& section : cuts) {
            all.insert(section.begin(), section.end());
        }
    }
    RC_ASSERT(std::set<std::string>(all.begin(), all.end()).size() == all.size());
    RC_ASSERT(faults(rackAfter(plan.value())).empty());
}

TEST(Timber, FaultsNameEntryRuleAndValue) {
    Timber timber;
    timber.sawing.endTrim = Length::mm(-1);
    timber.sawing.offcutPercent = 101;
    timber.pins = {{"A1", "P1"}, {"A1", "P2"}, {"", "P1"}};
    const std::vector<Fault> found = faults(timber);
    ASSERT_EQ(found.size(), 4u);
    EXPECT_EQ(found[0].entry, "End trim");
    EXPECT_EQ(found[1].entry, "Offcuts count for");
    EXPECT_EQ(found[2].entry, "Pin of A1");
    EXPECT_EQ(found[3].entry, "Pin");
}

TEST(Timber, LabelsOfABatchSayTheBoardAndRailsStayWithTheirBoard) {
    Demand other = rails();
    other.strips.push_back(strips("A1, A2", 28, 40, 500, 2));
    const Demand both = together({other, other});
    ASSERT_EQ(both.strips.size(), 5u);
    EXPECT_EQ(both.strips[2].label, "1: A1, 1: A2, 2: A1, 2: A2");
    EXPECT_EQ(both.strips[2].count, 4);
    EXPECT_EQ(labelsOf(both.strips[2])[3], "2: A2");
    Timber timber;
    timber.rack.planks = {plank("P1", 32, 60, 2'100), plank("P2", 32, 60, 2'100),
                          plank("P3", 32, 300, 700)};
    const Result<TimberPlan> plan = planTimber(both, woods(), shop(), timber);
    ASSERT_TRUE(plan);
    EXPECT_EQ(plan->rails, RailLengths::OneLength);
    EXPECT_TRUE(plan->layout.isComplete());
}

}  // namespace
}  // namespace kerfwright
