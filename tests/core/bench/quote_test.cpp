#include "core/bench/quote.h"
#include "core/board/patterns.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <algorithm>

namespace kerfwright {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

constexpr Notation millimetres = Notation::millimetres();

/// A job of which nothing is known but what a quote asks for.
Job jobOf(double minutes, double grams = 0, double coatedSquareMetres = 0, int coats = 0) {
    Job job;
    job.hours.minutes = minutes;
    job.glue.grams = grams;
    for (int coat = 0; coat < coats; ++coat) {
        BenchTask task;
        task.terms.push_back({"of surface", "m²", coatedSquareMetres, 20, "coat-minutes"});
        job.hours.tasks.push_back(task);
    }
    return job;
}

TimberCost timberOf(std::int64_t amount, int boards = 1) {
    TimberCost timber;
    timber.boards = boards;
    timber.lines.push_back({"Cherry",
                            "2 planks",
                            volume(Length::mm(1000), Length::mm(100), Length::mm(50)),
                            amount,
                            {}});
    return timber;
}

/// Everything has a price and nothing costs anything.
Pricing plain() {
    Pricing pricing;
    pricing.benchHour = pricing.glueKilogram = pricing.finishLitre = 0;
    pricing.overhead = pricing.profit = 0;
    return pricing;
}

Quote quoteOf(const Job& job, const TimberCost& timber, const Pricing& pricing) {
    return quote(job, timber, pricing, millimetres, "€");
}

std::int64_t amount(const Quote& quote, std::string_view key) {
    const QuoteLine* line = quote.line(key);
    EXPECT_TRUE(line != nullptr && line->amount.has_value()) << key;
    return line != nullptr ? line->amount.value_or(-1) : -1;
}

// Source: a price formula for cutting boards, materials + labour + 15 % overhead + 10 % profit and
// then the selling cost: 12 board feet at $3.25 and 2.5 h give $173. The hour there is
// $75 000 / 1920 h = $39.
TEST(Quote, IsThePublishedPriceFormula) {
    Pricing pricing = plain();
    pricing.benchHour = 3900;
    pricing.overhead = 15'000;
    pricing.profit = 10'000;
    TimberCost timber;
    const Price price = pricePerBoardFoot(325);
    const Volume twelveFeet = volume(Length::inch(12), Length::inch(12), Length::inch(12));
    timber.lines.push_back({"Cherry", "as sawn", twelveFeet, cost(twelveFeet, price), price});
    const Quote made = quote(jobOf(150), timber, pricing, Notation::inches(), "$");
    EXPECT_EQ(made.materials, 3900);
    EXPECT_EQ(made.work, 9750);
    EXPECT_EQ(made.cost, 15'698);   // 136.50 x 1.15 = 156.975
    EXPECT_EQ(made.total, 17'268);  // 172.67 and a hundredth of rounding by lines
    EXPECT_EQ((made.total + 50) / 100, 173);
    EXPECT_EQ(made.line("timber")->quantity, "12.0 board feet");
    EXPECT_EQ(made.line("timber")->rate, "3.25 $ a board foot");
    EXPECT_EQ(made.line("timber")->working, "12 board feet × 3.25");
    EXPECT_EQ(made.line("work")->quantity, "2 h 30 min");
    EXPECT_EQ(made.line("work")->working, "150 min × 39.00 ÷ 60");
}

// Markups and the margins that they are, as every retail table has them (values from memory).
TEST(Quote, TellsAMarkupFromAMargin) {
    const std::pair<std::int64_t, const char*> pairs[] = {
        {25'000, "20 %"}, {50'000, "33.3 %"}, {100'000, "50 %"}, {10'000, "9.1 %"}};
    for (const auto& [markup, margin] : pairs) {
        Pricing pricing = plain();
        pricing.profit = markup;
        const Quote made = quoteOf(jobOf(0), timberOf(10'000), pricing);
        EXPECT_EQ(amount(made, "profit"), markup / 10);
        EXPECT_THAT(made.line("profit")->working, HasSubstr("a margin of " + std::string(margin)));
    }
}

// 90 that are to be left after a shop keeps 10 % are sold for 100, and not for 99; 60 after a
// gallery's 40 % likewise (arithmetic).
TEST(Quote, SellingIsOfThePriceAndNotOnTheCost) {
    Pricing pricing = plain();
    pricing.selling = 10'000;
    EXPECT_EQ(quoteOf(jobOf(0), timberOf(9000), pricing).price, 10'000);
    pricing.selling = 40'000;
    EXPECT_EQ(quoteOf(jobOf(0), timberOf(6000), pricing).price, 10'000);
    // What a sale costs in any case is sold too.
    pricing.sellingFixed = 600;
    const Quote made = quoteOf(jobOf(0), timberOf(5400), pricing);
    EXPECT_EQ(made.net, 5400);
    EXPECT_EQ(made.price, 10'000);
    EXPECT_EQ(amount(made, "selling"), 4000);
    EXPECT_EQ(made.line("selling")->working, "60.00 ÷ (100 − 40) × 100, less 60.00");
}

TEST(Quote, EveryLineShowsItsWorking) {
    Pricing pricing = plain();
    pricing.boards = 3;
    pricing.benchHour = 4000;
    pricing.glueKilogram = 1200;
    pricing.finishLitre = 2450;
    pricing.finishSpread = 12'500;
    pricing.sundries = 150;
    pricing.tax = 8'875;
    pricing.rounding = FinalRounding::Five;
    const Quote made = quoteOf(jobOf(395.2, 57.6, 0.4118, 2), timberOf(2550), pricing);
    const auto check = [&](const char* key, const char* quantity, const char* rate,
                           const char* working, std::int64_t hundredths) {
        const QuoteLine* line = made.line(key);
        ASSERT_NE(line, nullptr) << key;
        EXPECT_EQ(line->quantity, quantity) << key;
        EXPECT_EQ(line->rate, rate) << key;
        EXPECT_EQ(line->working, working) << key;
        EXPECT_EQ(line->amount, hundredths) << key;
    };
    check("timber", "0.0150 m³", "as priced", "prices of the planks: 25.50, 3 times", 7650);
    check("glue", "174 g", "12.00 € a kg", "58 g × 3 boards × 12.00 ÷ 1000", 209);
    // 0.412 x 2 / 12.5 = 65.92 ml a board; 198 x 24.50 / 1000 = 4.851
    check("finish", "198 ml", "24.50 € a litre",
          "0.412 m² × 2 ÷ 12.5 m² a litre = 66 ml × 3 boards × 24.50 ÷ 1000", 485);
    check("sundries", "3 boards", "1.50 € a board", "3 boards × 1.50", 450);
    check("work", "19 h 45 min", "40.00 € an hour", "395 min × 3 boards × 40.00 ÷ 60", 79'000);
    check("rounding", "", "to the nearest 5", "880.00 − 877.94", 206);
    check("tax", "", "8.875 %", "880.00 × 8.875 %", 7810);
    EXPECT_EQ(made.asked, 88'000);
    EXPECT_EQ(made.total, 95'810);
    EXPECT_TRUE(made.isComplete());
    EXPECT_EQ(eachWords(made, "€"), "about 319.37 € each");
}

TEST(Quote, TimberForSeveralBoardsIsNotBoughtAgain) {
    Pricing pricing = plain();
    pricing.boards = 4;
    EXPECT_EQ(quoteOf(jobOf(0), timberOf(1000, 4), pricing).materials, 1000);
    EXPECT_EQ(quoteOf(jobOf(0), timberOf(1000, 1), pricing).materials, 4000);
    // Planks for three boards are bought twice for four.
    EXPECT_EQ(quoteOf(jobOf(0), timberOf(1000, 3), pricing).materials, 2000);
}

TEST(Quote, WhatIsNotKnownIsNamedAndNotCountedAsNothing) {
    Pricing pricing;
    TimberCost timber = timberOf(1000);
    timber.lines.push_back({"Wenge", "1 plank", timber.lines.front().volume, std::nullopt, {}});
    timber.missing.emplace_back("2 strips that no plank of the yard can give");
    const Quote made = quoteOf(jobOf(60, 50, 0.5, 2), timber, pricing);
    EXPECT_FALSE(made.isComplete());
    EXPECT_THAT(made.missing,
                ElementsAre("the price of Wenge", "2 strips that no plank of the yard can give",
                            "the price of glue", "the price of finish",
                            "the price of a bench hour"));
    EXPECT_EQ(incompleteWords(made),
              "Incomplete. Missing: the price of Wenge, 2 strips that no plank of the yard can "
              "give, the price of glue, the price of finish and the price of a bench hour. The "
              "sums are without them, so that they are the least it can come to.");
    for (const char* key : {"glue", "finish", "work"}) {
        ASSERT_NE(made.line(key), nullptr);
        EXPECT_EQ(made.line(key)->amount, std::nullopt) << key;
        EXPECT_EQ(made.line(key)->rate, "price not known") << key;
    }
    EXPECT_EQ(made.materials, 1000);
}

TEST(Quote, NothingUsedNeedsNoPrice) {
    Pricing pricing;
    pricing.benchHour = 4000;
    const Quote made = quoteOf(jobOf(60), timberOf(1000), pricing);
    EXPECT_THAT(made.missing, IsEmpty());
    EXPECT_EQ(made.line("finish")->words, "Finish, no coats");
    EXPECT_EQ(amount(made, "finish"), 0);
}

TEST(Quote, RoundsToTheNearestButNeverToNothing) {
    Pricing pricing = plain();
    const auto asked = [&](FinalRounding rounding, std::int64_t hundredths) {
        pricing.rounding = rounding;
        return quoteOf(jobOf(0), timberOf(hundredths), pricing).asked;
    };
    EXPECT_EQ(asked(FinalRounding::None, 12'345), 12'345);
    EXPECT_EQ(asked(FinalRounding::Whole, 12'349), 12'300);
    EXPECT_EQ(asked(FinalRounding::Whole, 12'350), 12'400);
    EXPECT_EQ(asked(FinalRounding::Five, 12'249), 12'000);
    EXPECT_EQ(asked(FinalRounding::Five, 12'250), 12'500);
    EXPECT_EQ(asked(FinalRounding::Ten, 12'499), 12'000);
    EXPECT_EQ(asked(FinalRounding::Ten, 12'500), 13'000);
    EXPECT_EQ(asked(FinalRounding::Ten, 3), 1'000);
    EXPECT_EQ(asked(FinalRounding::Ten, 0), 0);
}

TEST(Quote, WhatRunsOverIsNotReckoned) {
    Pricing pricing = plain();
    pricing.boards = 1000;
    const Quote made = quoteOf(jobOf(1e30), timberOf(greatestPrice), pricing);
    EXPECT_EQ(made.materials, 1000 * greatestPrice);
    pricing.benchHour = 1'000'000'000;
    const Quote more = quoteOf(jobOf(1e30), timberOf(greatestPrice), pricing);
    EXPECT_EQ(more.line("work")->amount, std::nullopt);
    EXPECT_THAT(more.missing, ElementsAre("Bench work, which is more than 10000000000000.00 €"));
}

// --- properties

/// Call inside a property only.
Pricing anyPricing() {
    Pricing pricing;
    for (const PriceSetting& setting : priceSettings()) {
        setting.set(pricing,
                    *rc::gen::inRange(setting.least,
                                      std::min<std::int64_t>(setting.greatest, 200'000) + 1));
    }
    pricing.rounding =
        finalRoundings[*rc::gen::inRange<std::size_t>(0, finalRoundings.size())].rounding;
    return pricing;
}

Job anyJob() {
    return jobOf(*rc::gen::inRange(0, 10'000), *rc::gen::inRange(0, 5'000),
                 *rc::gen::inRange(0, 3'000) / 1000.0, *rc::gen::inRange(0, 5));
}

TimberCost anyTimber() {
    TimberCost timber;
    const auto lines = *rc::gen::inRange(0, 6);
    for (int i = 0; i < lines; ++i) {
        TimberCostLine line = timberOf(*rc::gen::inRange(0, 1'000'000)).lines.front();
        line.wood = "Wood " + std::to_string(i);
        if (*rc::gen::inRange(0, 5) == 0) {
            line.amount.reset();
        }
        timber.lines.push_back(line);
    }
    timber.boards = *rc::gen::inRange(1, 5);
    return timber;
}

TEST(QuoteProperty, SumsAreTheLinesAsTheyAreShown) {
    EXPECT_TRUE(rc::check([] {
        const Quote made = quoteOf(anyJob(), anyTimber(), anyPricing());
        std::int64_t sum = 0;
        std::size_t unknown = 0;
        for (const QuoteLine& line : made.lines) {
            if (line.isSum) {
                RC_ASSERT(line.amount == sum);
            } else {
                sum += line.amount.value_or(0);
                unknown += line.amount ? 0U : 1U;
                RC_ASSERT(line.amount.value_or(0) >= 0 || line.key == "rounding");
            }
        }
        RC_ASSERT(sum == made.total);
        RC_ASSERT(made.missing.size() == unknown);
        RC_ASSERT(made.asked + made.tax == made.total);
    }));
}

TEST(QuoteProperty, SellingKeepsExactlyItsPart) {
    EXPECT_TRUE(rc::check([] {
        const Pricing pricing = anyPricing();
        const Quote made = quoteOf(anyJob(), anyTimber(), pricing);
        constexpr detail::Wide all = 100'000;
        const detail::Wide kept = detail::Wide{amount(made, "selling")} * all;
        const detail::Wide part = detail::Wide{made.price} * pricing.selling;
        // Nearest hundredth: off by half of one at most.
        RC_ASSERT(2 * (kept > part ? kept - part : part - kept) <= all);
        RC_ASSERT(made.price - amount(made, "selling") == made.net + amount(made, "selling-fixed"));
    }));
}

TEST(QuoteProperty, RaisingAnythingNeverLowersThePrice) {
    EXPECT_TRUE(rc::check([] {
        const Pricing pricing = anyPricing();
        const Job job = anyJob();
        const TimberCost timber = anyTimber();
        const Quote before = quoteOf(job, timber, pricing);
        for (const PriceSetting& setting : priceSettings()) {
            Pricing raised = pricing;
            const std::int64_t value = *setting.of(pricing);
            const std::int64_t more =
                std::min(setting.greatest, value + *rc::gen::inRange<std::int64_t>(1, 50'000));
            setting.set(raised, more);
            const Quote after = quoteOf(job, timber, raised);
            // A finish that goes further costs less.
            const bool lowers = setting.value == &Pricing::finishSpread;
            RC_ASSERT((lowers ? after.total <= before.total : after.total >= before.total));
        }
        Job longer = job;
        longer.hours.minutes += 30;
        RC_ASSERT(quoteOf(longer, timber, pricing).total >= before.total);
    }));
}

TEST(QuoteProperty, TheOrderOfTheTimberDoesNotMatter) {
    EXPECT_TRUE(rc::check([] {
        const Pricing pricing = anyPricing();
        const Job job = anyJob();
        TimberCost timber = anyTimber();
        const Quote before = quoteOf(job, timber, pricing);
        std::rotate(timber.lines.begin(),
                    timber.lines.begin() +
                        *rc::gen::inRange<std::ptrdiff_t>(
                            0, static_cast<std::ptrdiff_t>(timber.lines.size()) + 1),
                    timber.lines.end());
        std::reverse(timber.lines.begin(), timber.lines.end());
        const Quote after = quoteOf(job, timber, pricing);
        RC_ASSERT(before.materials == after.materials);
        RC_ASSERT(before.total == after.total);
        RC_ASSERT(before.missing.size() == after.missing.size());
    }));
}

// --- a real board

TEST(Quote, TakesWhatTheJobNeeds) {
    std::vector<Wood> woods{*findWood(woodCatalogue(), "hard-maple"),
                            *findWood(woodCatalogue(), "black-walnut"),
                            *findWood(woodCatalogue(), "cherry")};
    woods[0].price = {120'000};
    woods[1].price = {250'000};
    Board board;
    board.thickness = Length::mm(38);
    board.field = layOut({Pattern::Chequer, 8, 8, Length::mm(45), Length::mm(45), {0, 1}}).value();
    const Job job = makeJob(board, woods, metricShop(), {}, millimetres).value();
    Pricing pricing;
    pricing.benchHour = 4000;
    pricing.glueKilogram = 1200;
    pricing.finishLitre = 2400;
    const Quote made = quoteOf(job, timberAsSawn(job.totals, woods), pricing);
    EXPECT_TRUE(made.isComplete()) << incompleteWords(made);
    EXPECT_EQ(made.line("timber")->words, "Hard maple: as sawn");
    EXPECT_EQ(made.materials, *job.totals.cost + amount(made, "glue") + amount(made, "finish"));
    // The board all round, two coats: 2 x (0.36 m x 0.36 m) + 4 x 0.36 m x 0.038 m = 0.314 m2.
    EXPECT_THAT(made.line("finish")->working, HasSubstr("0.314 m² × 2 ÷ 12 m² a litre = 52 ml"));
    EXPECT_EQ(made.line("glue")->count, std::llround(job.glue.grams) * 1'000'000);
    EXPECT_EQ(made.line("work")->count, toldMinutes(job.hours.minutes) * 1'000'000);
    // Cherry is not used, so that nobody misses its price.
    woods[1].price = {};
    const Job unpriced = makeJob(board, woods, metricShop(), {}, millimetres).value();
    const Quote lacking = quoteOf(unpriced, timberAsSawn(unpriced.totals, woods), pricing);
    EXPECT_THAT(lacking.missing, ElementsAre("the price of Black walnut"));
}

}  // namespace
}  // namespace kerfwright
