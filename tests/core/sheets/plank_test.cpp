// Planks as they are drawn, and their cuts in words.
#include "core/drawing/geometry.h"
#include "core/sheets/cutwords.h"
#include "core/sheets/layoutwords.h"
#include "core/sheets/plankpages.h"
#include "core/sheets/plankview.h"
#include "core/timber/demand.h"
#include "core/timber/timberwords.h"
#include "tests/core/sheets/samples.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <set>

using namespace kerfwright;
using namespace kerfwright::testing_samples;
using testing::Contains;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::Not;

namespace {

/// Two planks, the larger one with a knot, and strips that need both.
struct Bench {
    std::vector<Wood> woods{*findWood(woodCatalogue(), "hard-maple"),
                            *findWood(woodCatalogue(), "black-walnut")};
    Timber timber = [this] {
        Timber made = newTimber(Unit::Millimetres);
        made.rack.planks = {
            {"P1", woods[0].key, Length::mm(32), Length::mm(150), Length::mm(1800)},
            {"P2", woods[1].key, Length::mm(32), Length::mm(140), Length::mm(1200)}};
        made.rack.planks[0].defects = {
            {Length::mm(900), Length::mm(40), Length::mm(50), Length::mm(30)}};
        made.rack.planks[1].isOffcut = true;
        return made;
    }();
    Demand demand{{{"A1, A3, A5", woods[0].key, Length::mm(28), Length::mm(45), Length::mm(600), 3},
                   {"A2, A4", woods[1].key, Length::mm(28), Length::mm(45), Length::mm(600), 2}}};
    TimberPlan plan = planned();
    StripNames names = stripLabels(plan.layout, plan.demand);
    Notation notation = Notation::millimetres();

    TimberPlan planned() const {
        Shop shop = metricShop();
        shop.kerf = Length::mm(3);
        Result<TimberPlan> made = planTimber(demand, woods, shop, timber);
        EXPECT_TRUE(made.ok()) << made.fault().text();
        return std::move(made).value();
    }
    void planAgain() {
        plan = planned();
        names = stripLabels(plan.layout, plan.demand);
    }
    PlankLook look(double length = 180) const {
        PlankLook made;
        made.scale =
            scaleOf(plan.rack, plan.layout, plan.demand, length - leftOfPlank(made), made.type, 46);
        return made;
    }
    PlankView view(int plank, const PlankLook& look) const {
        const auto i = static_cast<std::size_t>(plank);
        const PlankCuts& cut = plan.layout.planks[i];
        return drawPlank({plan.rack.planks[static_cast<std::size_t>(cut.plank)], woods, notation,
                          &cut, &plan.demand, &names[i], plank, &plan.cuts},
                         look);
    }
};

std::vector<std::string> textsOf(const Drawing& drawing) {
    std::vector<std::string> texts;
    for (const Mark& mark : drawing.marks) {
        if (const auto* text = std::get_if<Text>(&mark)) {
            texts.push_back(text->text);
        }
    }
    return texts;
}

std::string allTexts(const std::vector<Draft>& drafts) {
    std::string all;
    for (const Draft& draft : drafts) {
        for (const std::string& text : textsOf(draft.page.drawing)) {
            all += text + "\n";
        }
    }
    // Sizes keep together by spaces at which no line breaks.
    for (std::size_t at = all.find("\u00A0"); at != std::string::npos;
         at = all.find("\u00A0", at)) {
        all.replace(at, 2, " ");
    }
    return all;
}

bool inside(const Box& outer, const Box& inner) {
    constexpr double slack = 1e-6;
    return inner.x >= outer.x - slack && inner.y >= outer.y - slack &&
           inner.right() <= outer.right() + slack && inner.bottom() <= outer.bottom() + slack;
}

TEST(PlankView, ShowsEveryStripWhereItLies) {
    const Bench bench;
    ASSERT_TRUE(bench.plan.layout.isComplete());
    ASSERT_EQ(bench.plan.layout.planks.size(), 2u);
    const PlankLook look = bench.look();
    const PlankView view = bench.view(0, look);
    ASSERT_EQ(view.places.strips.size(), 3u);
    for (const PlankPlaces::Strip& strip : view.places.strips) {
        EXPECT_TRUE(inside(view.places.plank, strip.box));
        EXPECT_NEAR(strip.box.width, 600 * look.scale.along, 1e-6);
        const LaidStrip& laid = bench.plan.layout.planks[0]
                                    .sections[static_cast<std::size_t>(strip.place.first)]
                                    .strips[static_cast<std::size_t>(strip.place.second)];
        EXPECT_NEAR(strip.box.x - view.places.plank.x, laid.x.toMm() * look.scale.along, 1e-6);
        // The plank's y runs up from its lower edge.
        EXPECT_NEAR(view.places.plank.bottom() - strip.box.bottom(),
                    laid.y.toMm() * look.scale.across, 1e-6);
    }
    const std::vector<std::string> texts = textsOf(view.drawing);
    for (const char* name : {"A1", "A3", "A5"}) {
        EXPECT_TRUE(std::any_of(texts.begin(), texts.end(), [&](const std::string& text) {
            return text.starts_with(name);
        })) << name;
    }
}

TEST(PlankView, NumbersEveryCutOfItsPlankAndNoOther) {
    const Bench bench;
    for (int plank = 0; plank < 2; ++plank) {
        const std::vector<std::string> texts = textsOf(bench.view(plank, bench.look()).drawing);
        for (const SawCut& cut : bench.plan.cuts) {
            const auto times = std::count(texts.begin(), texts.end(), std::to_string(cut.number));
            EXPECT_EQ(times, cut.plank == plank ? 1 : 0) << cut.number;
        }
    }
}

TEST(PlankView, KeepsInsideItsExtentInBothUnits) {
    Bench bench;
    for (const Notation& notation : {Notation::millimetres(), Notation::inches(16)}) {
        bench.notation = notation;
        for (const double length : {90.0, 180.0}) {
            const PlankView view = bench.view(0, bench.look(length));
            Box outer = view.drawing.extent;
            outer.x -= 0.5;
            outer.width += 1;
            outer.y -= 0.5;
            outer.height += 1;
            for (const Mark& mark : view.drawing.marks) {
                EXPECT_TRUE(inside(outer, bounds(mark)));
            }
        }
    }
}

TEST(PlankView, MakesRoomForALineOfTextOnTheNarrowestStrip) {
    const Bench bench;
    const PlankLook look = bench.look();
    EXPECT_GT(look.scale.across, look.scale.along);
    for (const PlankPlaces::Strip& strip : bench.view(0, look).places.strips) {
        EXPECT_GE(strip.box.height, look.type * 1.2);
    }
}

TEST(PlankView, MarksDefectsByMoreThanColour) {
    const Bench bench;
    PlankLook look;
    look.scale = {0.1, 0.2};
    Plank clean = bench.plan.rack.planks[0];
    clean.defects.clear();
    const PlankView bare = drawPlank({clean, bench.woods, bench.notation}, look);
    const PlankView marked =
        drawPlank({bench.plan.rack.planks[0], bench.woods, bench.notation}, look);
    const Box knot{marked.places.plank.x + 90, marked.places.plank.bottom() - 14, 5, 6};
    std::size_t crossing = 0;
    for (const Mark& mark : marked.drawing.marks) {
        const auto* line = std::get_if<Line>(&mark);
        if (line != nullptr && line->style.line == Ink::WoodLine &&
            inside(knot,
                   {std::min(line->from.x, line->to.x), std::min(line->from.y, line->to.y),
                    std::abs(line->to.x - line->from.x), std::abs(line->to.y - line->from.y)})) {
            ++crossing;
        }
    }
    EXPECT_GT(crossing, 6u);
    EXPECT_GT(marked.drawing.marks.size(), bare.drawing.marks.size() + crossing);
}

TEST(PlankView, SaysWhatIsKeptAndWhatIsPinned) {
    const Bench bench;
    PlankLook look = bench.look();
    const PlankView plain = bench.view(1, look);
    ASSERT_FALSE(bench.plan.layout.planks[1].offcuts.empty());
    EXPECT_THAT(textsOf(plain.drawing), Contains(HasSubstr("keep ")));
    Bench pinned;
    pinned.timber.pins = {{"A2", "P2"}};
    pinned.planAgain();
    EXPECT_GT(pinned.view(1, look).drawing.marks.size(), plain.drawing.marks.size());
}

/// Planks of some breadths, the first with a knot, for all woods of a project.
Timber rackFor(const Project& project, Length width, Length length) {
    Timber timber = newTimber(Unit::Millimetres);
    int number = 0;
    for (const Wood& wood : project.woods) {
        for (int i = 0; i < 3; ++i) {
            Plank plank{"P" + std::to_string(++number), wood.key, Length::mm(65), width, length};
            if (i == 0) {
                plank.defects = {{Length::mm(700), Length::mm(60), Length::mm(40), Length::mm(30)}};
            }
            timber.rack.planks.push_back(plank);
        }
    }
    return timber;
}

bool apart(const Box& a, const Box& b) {
    constexpr double touch = 1e-6;
    return a.x >= b.right() - touch || b.x >= a.right() - touch || a.y >= b.bottom() - touch ||
           b.y >= a.bottom() - touch;
}

/// On paper and in a narrow and a wide panel of the window.
TEST(PlankView, NumbersOfCutsLieClearOfEachOtherOfWordsAndOfKnots) {
    int badges = 0, strips = 0, named = 0;
    for (const Sample& sample : samples()) {
        const Job job = jobOf(sample.project);
        for (const Length width : {Length::mm(90), Length::mm(200)}) {
            const Timber timber = rackFor(sample.project, width, Length::mm(1800));
            const Result<TimberPlan> plan =
                planTimber(demandOf(job.steps, sample.project.woods), sample.project.woods,
                           sample.project.shop, timber);
            ASSERT_TRUE(plan.ok());
            const StripNames names = stripLabels(plan->layout, plan->demand);
            for (const double length : {95.0, 130.0, 180.0}) {
                PlankLook look;
                look.dimensions = false;
                look.scale = scaleOf(plan->rack, plan->layout, plan->demand, length, look.type, 40);
                for (std::size_t i = 0; i < plan->layout.planks.size(); ++i) {
                    const PlankCuts& cuts = plan->layout.planks[i];
                    const Plank& plank = plan->rack.planks[static_cast<std::size_t>(cuts.plank)];
                    const PlankView view =
                        drawPlank({plank, sample.project.woods, sample.project.notation, &cuts,
                                   &plan->demand, &names[i], static_cast<int>(i), &plan->cuts},
                                  look);
                    SCOPED_TRACE(sample.name + " " + plank.label + " " + std::to_string(length));
                    const std::vector<Box>& plates = view.places.badges;
                    std::vector<Box> words;
                    for (const Mark& mark : view.drawing.marks) {
                        const auto* text = std::get_if<Text>(&mark);
                        if (text != nullptr && text->style.line == Ink::WoodLine) {
                            words.push_back(bounds(mark));
                        }
                    }
                    for (std::size_t a = 0; a < plates.size(); ++a) {
                        EXPECT_TRUE(inside(view.places.plank,
                                           {plates[a].x, view.places.plank.y, plates[a].width, 0}));
                        for (std::size_t b = 0; b < a; ++b) {
                            EXPECT_TRUE(apart(plates[a], plates[b])) << a << " on " << b;
                        }
                        for (const Box& word : words) {
                            EXPECT_TRUE(apart(plates[a], word)) << a << " on words at " << word.x;
                        }
                        for (const Defect& knot : plank.defects) {
                            const double x = view.places.plank.x + knot.x.toMm() * look.scale.along;
                            const double y = view.places.plank.bottom() -
                                             (knot.y + knot.width).toMm() * look.scale.across;
                            EXPECT_TRUE(
                                apart(plates[a], {x, y, knot.length.toMm() * look.scale.along,
                                                  knot.width.toMm() * look.scale.across}))
                                << a << " on a knot";
                        }
                    }
                    badges += static_cast<int>(plates.size());
                    for (const PlankPlaces::Strip& strip : view.places.strips) {
                        const bool has =
                            std::any_of(words.begin(), words.end(), [&](const Box& word) {
                                return strip.box.x < word.x + word.width / 2 &&
                                       word.x + word.width / 2 < strip.box.right() &&
                                       strip.box.y < word.y + word.height / 2 &&
                                       word.y + word.height / 2 < strip.box.bottom();
                            });
                        // Names of lesser strips are in the list of the cuts.
                        const bool holds =
                            strip.box.height > look.type * 1.05 && strip.box.width > 6;
                        named += holds && has ? 1 : 0;
                        strips += holds ? 1 : 0;
                    }
                }
            }
        }
    }
    EXPECT_GT(badges, 300);
    // Clear of the numbers there is still room for nearly every name.
    EXPECT_GT(named, 0.95 * strips);
    EXPECT_GT(strips, 300);
}

TEST(PlankView, DrawsWoodsThatTheProjectDoesNotHave) {
    const Bench bench;
    Plank other = bench.plan.rack.planks[0];
    other.wood = "cherry";
    const Wood* cherry = findWood(woodCatalogue(), other.wood);
    ASSERT_NE(cherry, nullptr);
    PlankLook look;
    look.scale = {0.1, 0.2};
    const PlankView view = drawPlank({other, bench.woods, bench.notation}, look);
    EXPECT_THAT(view.drawing.woods, Contains(cherry->colour));
    EXPECT_EQ(plankWords(other, bench.woods), "P1 · " + cherry->name);
}

TEST(CutWords, TellEveryCutOnceAndInOrder) {
    const Bench bench;
    int next = 1;
    for (const int plank : cuttingOrder(bench.plan.layout, bench.plan.cuts)) {
        for (const CutRow& row : cutRows(bench.plan.layout, bench.plan.cuts, bench.names, plank)) {
            EXPECT_EQ(row.first, next);
            EXPECT_GE(row.count(), 1);
            next = row.last + 1;
            const SawCut& cut = bench.plan.cuts[static_cast<std::size_t>(row.first) - 1];
            EXPECT_EQ(row.set, cut.size);
            if (cut.off == CutOff::Strip) {
                EXPECT_EQ(row.kind, cut.kind);
                EXPECT_THAT(row.what, HasSubstr("A"));
            }
        }
    }
    EXPECT_EQ(next, static_cast<int>(bench.plan.cuts.size()) + 1);
}

TEST(CutWords, NameWhatTheSawIsSetTo) {
    const Notation mm = Notation::millimetres();
    EXPECT_EQ(settingWords({1, 1, SawCutKind::Rip, CutOff::Strip, Length::mm(48), "A1"}, mm),
              "fence at 48 mm");
    EXPECT_EQ(settingWords({1, 1, SawCutKind::Crosscut, CutOff::Section, Length::mm(620), ""}, mm),
              "stop at 620 mm");
    EXPECT_EQ(settingWords({1, 1, SawCutKind::Crosscut, CutOff::Waste, Length(), ""}, mm), "trim");
    EXPECT_EQ(numberWords({3, 6, SawCutKind::Rip, CutOff::Strip, Length::mm(48), ""}), "3–6");
    EXPECT_EQ(numberWords({3, 3, SawCutKind::Rip, CutOff::Strip, Length::mm(48), ""}), "3");
}

TEST(TimberWords, SayHowGoodALayoutIs) {
    Bench bench;
    EXPECT_THAT(layoutWords(bench.plan),
                HasSubstr("All 5 strips lie on 2 of 2 planks. Proven best"));
    bench.plan.layout.proven = false;
    bench.plan.layout.cost = 1018;
    bench.plan.layout.bound = 1000;
    EXPECT_THAT(layoutWords(bench.plan), HasSubstr("1.9 % above the best possible"));
}

TEST(TimberWords, SayWhatIsMissingAndWhatToBuy) {
    Bench bench;
    bench.timber.rack.planks.resize(1);  // no walnut
    bench.planAgain();
    ASSERT_EQ(missingCount(bench.plan), 2);
    const auto words = shortageWords(bench.plan, bench.woods, bench.notation);
    ASSERT_EQ(words.size(), 1u);
    EXPECT_THAT(words.front(), HasSubstr("2 strips of " + bench.woods[1].name +
                                         " 28 × 45 × 600 mm do not fit: buy 1 plank "));
    const ShoppingLine& line = bench.plan.shopping.lines.front();
    const LeastPlank least = leastPlank(bench.plan, line);
    EXPECT_GE(least.length, Length::mm(600));
    EXPECT_LE(least.length, line.length);
    EXPECT_GE(least.width, Length::mm(45));
    EXPECT_LE(least.width, line.width);
}

TEST(TimberWords, CountWasteOfWhatIsUsedUp) {
    const Bench bench;
    const TimberUse use = useOf(bench.plan.layout, bench.plan.rack, bench.plan.demand);
    const Volume strip = volume(Length::mm(28), Length::mm(45), Length::mm(600));
    EXPECT_EQ(use.net, strip * 5);
    EXPECT_GT(use.kept, Volume());
    const double usedUp = (use.planks - use.kept).toCubicMetres();
    EXPECT_NEAR(use.wastePercent(), 100 * (1 - use.net.toCubicMetres() / usedUp), 1e-6);
}

/// The pages of a project's timber.
std::vector<Draft> draftsOf(Project project, const Rack& rack) {
    project.timber.rack = rack;
    const Job job = jobOf(project);
    const Matter matter{project, job, Paper::A4};
    const Result<TimberPlan> plan =
        planTimber(demandOf(job.steps, project.woods), project.woods, project.shop, project.timber);
    EXPECT_TRUE(plan.ok());
    std::vector<Draft> drafts;
    addPlankCuts(drafts, matter, *plan);
    addTimberList(drafts, matter, *plan);
    addShoppingSlip(drafts, matter, *plan);
    stamp(drafts, matter);
    return drafts;
}

TEST(PlankPages, StayInsideThePrintedAreaForEverySample) {
    for (const Sample& sample : samples()) {
        Rack rack;
        int number = 0;
        for (const Wood& wood : sample.project.woods) {
            for (int i = 0; i < 2; ++i) {
                rack.planks.push_back({"P" + std::to_string(++number),
                                       wood.key,
                                       Length::mm(52),
                                       Length::mm(140),
                                       Length::mm(1500 + 200 * i),
                                       {},
                                       0,
                                       {},
                                       i == 1});
            }
        }
        const std::vector<Draft> drafts = draftsOf(sample.project, rack);
        ASSERT_FALSE(drafts.empty());
        const Box area = printedArea(Paper::A4);
        for (const Draft& draft : drafts) {
            for (const Mark& mark : draft.page.drawing.marks) {
                const auto* text = std::get_if<Text>(&mark);
                EXPECT_TRUE(inside(area, bounds(mark)))
                    << sample.name << ", " << draft.page.key << " "
                    << (text != nullptr ? text->text : std::string());
                if (text != nullptr) {
                    EXPECT_GE(text->size, type::small - 1e-9) << text->text;
                }
            }
        }
    }
}

TEST(PlankPages, TellWhatToBuyWhereTheRackIsEmpty) {
    const Sample sample = samples().front();
    const std::vector<Draft> drafts = draftsOf(sample.project, Rack());
    std::set<std::string> keys;
    for (const Draft& draft : drafts) {
        keys.insert(draft.page.key);
    }
    EXPECT_FALSE(keys.contains("plank-cuts"));
    EXPECT_THAT(allTexts(drafts), HasSubstr("The shopping slip lists what to buy."));
    EXPECT_THAT(allTexts(drafts), Not(HasSubstr("do not fit: buy")));
    EXPECT_TRUE(keys.contains("timber-list"));
    EXPECT_TRUE(keys.contains("shopping-slip"));
    const std::string words = allTexts(drafts);
    EXPECT_THAT(words, HasSubstr("at least"));
    EXPECT_THAT(words, HasSubstr("÷ (1 − waste)"));
    EXPECT_THAT(words, HasSubstr("The yard’s rule"));
}

}  // namespace
