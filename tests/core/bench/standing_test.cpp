// What was seen to: it counts as long as the caution says the same, and no longer.
#include "core/bench/job.h"
#include "core/bench/standing.h"
#include "core/board/recipe.h"
#include "tests/core/replay/randomboard.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <functional>
#include <set>
#include <utility>

namespace kerfwright {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;
using testing::SizeIs;

/// A job, and what was seen to in it.
struct Bench {
    Board board;
    std::vector<Wood> woods;
    Shop shop = metricShop();
    Choices choices = {};
    Conditions conditions = {};
    Notation notation = Notation::millimetres();
    std::vector<SeenTo> seenTo = {};

    std::vector<Caution> all() const {
        return makeJob(board, woods, shop, choices, notation, conditions).value().cautions;
    }
    std::vector<Caution> with(const std::string& key) const {
        std::vector<Caution> found;
        for (const Caution& caution : all()) {
            if (caution.key == key) {
                found.push_back(caution);
            }
        }
        return found;
    }
    /// The one caution of that rule; a failure and an empty one where it is not so.
    Caution one(const std::string& key) const {
        const std::vector<Caution> found = with(key);
        EXPECT_THAT(found, SizeIs(1)) << key;
        return found.size() == 1 ? found.front() : Caution{};
    }
    Standing standing(const std::string& key) const { return standingOf(one(key), seenTo); }
    void see(const std::string& key) { seeTo(seenTo, one(key)); }
};

/// Maple and walnut for the kitchen, with a frame that is glued round end grain.
Bench framed() {
    Bench bench;
    bench.woods = {*findWood(woodCatalogue(), "hard-maple"),
                   *findWood(woodCatalogue(), "black-walnut"),
                   *findWood(woodCatalogue(), "red-oak")};
    bench.board.thickness = Length::mm(40);
    bench.board.field =
        layOut({Pattern::Chequer, 6, 6, Length::mm(50), Length::mm(50), {0, 2}}).value();
    bench.board.border = {Length::mm(40), 1};
    bench.conditions.purpose.use = BoardUse::KitchenBoard;
    return bench;
}

TEST(Standing, CountsUntilANumberChangesAndAgainWhenItIsBack) {
    Bench bench = framed();
    EXPECT_EQ(bench.standing("end-grain-face"), Standing::Open);
    bench.see("end-grain-face");
    EXPECT_EQ(bench.standing("end-grain-face"), Standing::SeenTo);
    const Length before = bench.shop.fieldFlattening;
    bench.shop.fieldFlattening += Length::nm(1);
    EXPECT_EQ(bench.standing("end-grain-face"), Standing::Lapsed);
    bench.shop.fieldFlattening = before;
    EXPECT_EQ(bench.standing("end-grain-face"), Standing::SeenTo);
    // What it does not rest upon may change.
    bench.woods[0].price.minorPerCubicMetre = 5;
    bench.board.border.wood = 0;
    EXPECT_EQ(bench.standing("end-grain-face"), Standing::SeenTo);
}

TEST(Standing, LapsesWhenThePlaceChanges) {
    Bench bench = framed();
    bench.see("open-pores");
    EXPECT_EQ(bench.standing("open-pores"), Standing::SeenTo);
    // As many pieces of oak as before, but others.
    std::vector<Piece>& pieces = bench.board.field.pieces;
    std::swap(pieces[0].wood, pieces[1].wood);
    EXPECT_EQ(bench.standing("open-pores"), Standing::Lapsed);
}

TEST(Standing, LapsesWhenACautionBecomesADanger) {
    Bench bench = framed();
    bench.board.border.cautionRead = true;
    ASSERT_EQ(bench.one("border-moves").severity, Severity::Caution);
    bench.see("border-moves");
    EXPECT_EQ(bench.standing("border-moves"), Standing::SeenTo);
    bench.board.border.cautionRead = false;
    EXPECT_EQ(bench.standing("border-moves"), Standing::Lapsed);
}

TEST(Standing, IsTheSameInOtherUnitsAndUnderOtherNamesOfWoods) {
    Bench bench = framed();
    bench.shop.trimMargin = Length();
    bench.shop.spareSlices = 0;
    bench.shop.sanderWidth = Length::mm(200);
    for (const Caution& caution : bench.all()) {
        seeTo(bench.seenTo, caution);
    }
    ASSERT_GT(bench.seenTo.size(), 5U);
    bench.notation = Notation::inches();
    bench.woods[2].name = "Oak from the shed";
    for (const Caution& caution : bench.all()) {
        EXPECT_EQ(standingOf(caution, bench.seenTo), Standing::SeenTo) << caution.reason;
    }
}

TEST(Standing, TellsCautionsOfOneRuleApart) {
    Bench bench = framed();
    bench.woods[1].colour = bench.woods[2].colour = bench.woods[0].colour;
    bench.board.field.pieces[4].wood = 1;
    const std::vector<Caution> alike = bench.with("woods-alike");
    ASSERT_THAT(alike, SizeIs(2));  // with oak, maple and walnut each
    seeTo(bench.seenTo, alike[0]);
    EXPECT_EQ(standingOf(alike[0], bench.seenTo), Standing::SeenTo);
    EXPECT_EQ(standingOf(alike[1], bench.seenTo), Standing::Open);
    // One that lapsed says nothing of the others either.
    bench.board.field.pieces[6].wood = 1;
    const std::vector<Caution> later = bench.with("woods-alike");
    const auto again = std::find_if(later.begin(), later.end(), [&](const Caution& caution) {
        return caution.about == alike[0].about;
    });
    ASSERT_NE(again, later.end());
    EXPECT_EQ(standingOf(*again, bench.seenTo), Standing::Lapsed);
    for (const Caution& caution : later) {
        EXPECT_TRUE(caution.about == again->about ||
                    standingOf(caution, bench.seenTo) == Standing::Open)
            << caution.about;
    }
}

TEST(Standing, IsOpenAsIfItHadNeverBeenSeenToOnceItIsReopened) {
    Bench bench = framed();
    bench.see("end-grain-face");
    bench.see("open-pores");
    bench.shop.fieldFlattening += Length::mm(1);
    bench.see("end-grain-face");
    EXPECT_THAT(bench.seenTo, SizeIs(3));
    reopen(bench.seenTo, bench.one("end-grain-face"));
    EXPECT_EQ(bench.standing("end-grain-face"), Standing::Open);
    EXPECT_EQ(bench.standing("open-pores"), Standing::SeenTo);
}

TEST(Standing, KeepsTheNewestEntriesWithinTheLimitAndEachOnce) {
    std::vector<SeenTo> seenTo;
    Caution caution;
    caution.key = "thin-work";
    for (int i = 0; i < 300; ++i) {
        caution.said = {fact("number", i)};
        seeTo(seenTo, caution);
        seeTo(seenTo, caution);
    }
    EXPECT_THAT(seenTo, SizeIs(SeenToLimits::entries));
    EXPECT_THAT(faults(seenTo), IsEmpty());
    EXPECT_EQ(seenTo.back().said, caution.said);
    EXPECT_EQ(seenTo.front().said, (std::vector{fact("number", 300 - 256)}));
    caution.said = {fact("number", 0)};
    EXPECT_EQ(standingOf(caution, seenTo), Standing::Lapsed);
}

TEST(Standing, CountsWhatIsOpenAndPutsItFirst) {
    std::vector<Caution> all(4);
    for (std::size_t i = 0; i < all.size(); ++i) {
        all[i].key = "rule-" + std::to_string(i);
    }
    all[0].severity = all[1].severity = Severity::Danger;
    std::vector<SeenTo> seenTo;
    EXPECT_EQ(countOf(all, seenTo), (CautionCount{4, 2, 0}));
    EXPECT_EQ(countWords(countOf(all, seenTo)), "4 cautions");
    seeTo(seenTo, all[0]);
    seeTo(seenTo, all[2]);
    EXPECT_EQ(countOf(all, seenTo), (CautionCount{2, 1, 2}));
    EXPECT_EQ(countWords(countOf(all, seenTo)), "2 open · 2 seen to");
    EXPECT_THAT(openFirst(all, seenTo), ElementsAre(1, 3, 0, 2));
    EXPECT_EQ(countWords(countOf({}, seenTo)), "No cautions");
}

// --- every rule

/// Whoever adds a rule has to say what it rests upon: what reads differently says something else.
TEST(EveryCaution, SaysSomethingElseWhereItReadsDifferently) {
    const std::function<void(Bench&)> changes[] = {
        [](Bench&) {},
        [](Bench& bench) { bench.board.thickness += Length::mm(2); },
        [](Bench& bench) { bench.shop.fieldFlattening += Length::mm(1); },
        [](Bench& bench) { bench.shop.panelFlattening += Length::mm(1); },
        [](Bench& bench) { bench.shop.kerf += Length::mm(1); },
        [](Bench& bench) { bench.shop.tail += Length::mm(5); },
        [](Bench& bench) { bench.shop.planerShortest += Length::mm(20); },
        [](Bench& bench) { bench.shop.sanderShortest += Length::mm(20); },
        [](Bench& bench) { bench.shop.leastHeld += Length::mm(20); },
        [](Bench& bench) { bench.shop.sanderWidth = Length::mm(120); },
        [](Bench& bench) { bench.shop.sawDepth = Length::mm(15); },
        [](Bench& bench) { bench.shop.spareSlices = 0; },
        [](Bench& bench) { bench.shop.trimMargin = Length(); },
        [](Bench& bench) { bench.shop.squaringCut = Length(); },
        [](Bench& bench) { bench.choices.mergeLike = !bench.choices.mergeLike; },
        [](Bench& bench) { bench.choices.rows = RowChoice::Rows; },
        [](Bench& bench) { bench.choices.rows = RowChoice::Columns; },
        [](Bench& bench) { bench.conditions.climate.build = 14; },
        [](Bench& bench) { bench.conditions.climate.build = 15; },
        [](Bench& bench) { bench.conditions.climate.dampest = 16; },
        [](Bench& bench) { bench.conditions.glue.celsius = 2; },
        [](Bench& bench) { bench.conditions.glue.openMinutes = 1; },
        [](Bench& bench) { bench.conditions.glue.clampsOwned = 2; },
        [](Bench& bench) { bench.conditions.purpose.use = BoardUse::KitchenBoard; },
        [](Bench& bench) { bench.conditions.purpose.use = BoardUse::ChessBoard; },
        [](Bench& bench) {
            bench.conditions.purpose.use = BoardUse::ChessBoard;
            bench.conditions.purpose.foot = Length::mm(45);
        },
        [](Bench& bench) {
            bench.woods[0].timber = {Length::mm(10), Length::mm(20)};
        },
        [](Bench& bench) { bench.woods[0] = *findWood(woodCatalogue(), "red-oak"); },
        [](Bench& bench) { bench.woods[0] = *findWood(woodCatalogue(), "padauk"); },
        [](Bench& bench) { bench.woods[0] = *findWood(woodCatalogue(), "wenge"); },
        [](Bench& bench) { bench.board.border.design = BorderDesign::FixedFrame; },
        [](Bench& bench) {
            bench.board.border = {Length::mm(40), 0, BorderDesign::FloatingFrame};
            bench.board.border.gap = Length::um(100);
        },
        [](Bench& bench) { bench.board.border.cautionRead = true; },
    };
    std::vector<Bench> benches{framed(), framed(), framed(), framed()};
    benches[1].board.build = Build::LongGrain;
    benches[1].board.border = {};
    benches[2].board.field = layOut(usualRecipe(Pattern::Basket, Length::mm(300), Length::mm(300),
                                                Length::um(100), {0, 1, 2}))
                                 .value();
    benches[2].board.build = Build::LongGrain;
    benches[3].board.field =
        layOut({Pattern::Chequer, 8, 8, Length::mm(4), Length::mm(30), {0, 1}}).value();
    benches[3].board.thickness = Length::mm(12);
    for (std::uint64_t seed = 1; seed <= 4; ++seed) {
        test::RandomBoard wish = test::randomBoard(seed, 4, 3);
        benches.push_back({std::move(wish.board), std::move(wish.woods), wish.shop, wish.choices});
    }
    std::set<std::string> keys;
    for (const Bench& as : benches) {
        std::vector<std::pair<Caution, std::string>> all;  // with what each reads
        for (const auto& change : changes) {
            Bench bench = as;
            change(bench);
            const Result<Job> made = makeJob(bench.board, bench.woods, bench.shop, bench.choices,
                                             bench.notation, bench.conditions);
            if (!made.ok()) {
                continue;
            }
            std::set<std::pair<std::string, std::string>> names;
            std::vector<SeenTo> seenTo;
            for (const Caution& caution : made->cautions) {
                keys.insert(caution.key);
                EXPECT_TRUE(names.emplace(caution.key, caution.about).second) << caution.title;
                EXPECT_THAT(caution.said, SizeIs(testing::Ge(2U))) << caution.key;
                seeTo(seenTo, caution);
                all.emplace_back(caution, caution.title + " " + caution.reason);
            }
            EXPECT_THAT(faults(seenTo), IsEmpty());
        }
        for (const auto& [one, words] : all) {
            for (const auto& [other, otherWords] : all) {
                if (one.key == other.key && one.about == other.about && one.said == other.said) {
                    EXPECT_EQ(words, otherWords) << one.key;
                    EXPECT_EQ(one.place, other.place) << one.key;
                }
            }
        }
    }
    std::string list;
    for (const std::string& key : keys) {
        list += key + " ";
    }
    EXPECT_GE(keys.size(), 25U) << list;
}

}  // namespace
}  // namespace kerfwright
