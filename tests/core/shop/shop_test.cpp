#include "core/shop/benchrates.h"
#include "core/shop/pricing.h"
#include "core/shop/shop.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <set>
#include <stdexcept>
#include <string>

namespace kerfwright {
namespace {

constexpr Notation inches = Notation::inches();
constexpr Notation millimetres = Notation::millimetres();

TEST(Shop, MetricDefaults) {
    const Shop shop = metricShop();
    EXPECT_EQ(shop.kerf, Length::um(3200));
    EXPECT_EQ(shop.fieldFlattening, Length::mm(3));
    EXPECT_EQ(shop.panelFlattening, Length::mm(3));
    EXPECT_EQ(shop.trimMargin, Length::mm(3));
    EXPECT_EQ(shop.squaringCut, Length::mm(10));
    EXPECT_EQ(shop.tail, Length::mm(10));
    EXPECT_EQ(shop.lengthStep, Length::mm(10));
    EXPECT_EQ(shop.spareSlices, 1);
    // A drum sander's manual (shop machines): nothing shorter than 60 mm.
    EXPECT_EQ(shop.sanderShortest, Length::mm(60));
    // The UK regulator's advice on surface planers, as quoted in a trade forum: under 300 mm,
    // consider a sander.
    EXPECT_EQ(shop.planerShortest, Length::mm(300));
}

TEST(Shop, InchDefaults) {
    const Shop shop = inchShop();
    // A maker's table of table saw blades (trade press): full kerf is 1/8 in.
    EXPECT_EQ(shop.kerf, Length::inch(1, 8));
    EXPECT_EQ(shop.lengthStep, Length::inch(1));
    // The drum sander's manual in inches: 22 in in a single pass, nothing shorter than 2 3/8 in.
    EXPECT_EQ(shop.sanderWidth, Length::inch(22));
    EXPECT_EQ(shop.sanderShortest, Length::inch(19, 8));
    // Workshop safety courses: nothing of 12 in or shorter is machined.
    EXPECT_EQ(shop.planerShortest, Length::inch(12));
}

TEST(Shop, DefaultsAreRightAndOnTheGridOfTheirUnit) {
    EXPECT_TRUE(faults(metricShop(), millimetres).empty());
    EXPECT_TRUE(faults(inchShop(), inches).empty());
    EXPECT_NE(metricShop(), inchShop());
    const Shop metric = metricShop();
    const Shop inch = inchShop();
    for (const SettingInfo& info : shopSettings()) {
        EXPECT_FALSE(write(metric.*info.value, millimetres).rounded) << info.name;
        EXPECT_FALSE(write(inch.*info.value, Notation::inches(8)).rounded) << info.name;
    }
}

// What is a whole allowance in one unit is nearly the same in the other.
TEST(Shop, BothShopsAreTheSameShop) {
    const Shop metric = metricShop();
    const Shop inch = inchShop();
    for (const SettingInfo& info : shopSettings()) {
        if (info.setting == Setting::LengthStep) {
            continue;  // 10 mm and 1 in: each is the step of its tape
        }
        const double a = (metric.*info.value).toMm();
        const double b = (inch.*info.value).toMm();
        EXPECT_NEAR(a, b, 3 + 0.05 * a) << info.name;
    }
}

TEST(Settings, EverySettingHasOneRow) {
    constexpr int last = static_cast<int>(Setting::SliceShortest);
    EXPECT_EQ(shopSettings().size(), static_cast<std::size_t>(last));
    std::set<std::string> keys;
    std::set<std::string> names;
    for (int i = 1; i <= last; ++i) {
        const auto setting = static_cast<Setting>(i);
        const SettingInfo* info = settingInfo(setting);
        ASSERT_NE(info, nullptr) << i;
        EXPECT_EQ(info->setting, setting);
        EXPECT_TRUE(keys.insert(info->key).second) << info->key;
        EXPECT_TRUE(names.insert(info->name).second) << info->name;
        EXPECT_THAT(std::string(info->key), testing::MatchesRegex("[a-z-]+"));
        EXPECT_THAT(std::string(info->about), testing::EndsWith(".")) << info->name;
        EXPECT_LE(info->least, info->greatest) << info->name;
        EXPECT_GE(info->least, Length()) << info->name;
    }
    EXPECT_EQ(settingInfo(Setting::None), nullptr);
}

TEST(Settings, EveryRowHasALengthOfItsOwn) {
    for (const SettingInfo& info : shopSettings()) {
        Shop changed = metricShop();
        changed.*info.value += Length::mm(1);
        int differing = 0;
        for (const SettingInfo& other : shopSettings()) {
            differing += changed.*other.value != metricShop().*other.value ? 1 : 0;
        }
        EXPECT_EQ(differing, 1) << info.name;
    }
    EXPECT_EQ(settingInfo(Setting::TrimMargin)->value, &Shop::trimMargin);
    EXPECT_EQ(settingInfo(Setting::SanderShortest)->value, &Shop::sanderShortest);
}

TEST(BenchRates, EveryRateHasOneRow) {
    EXPECT_EQ(rateSettings().size() * sizeof(double), sizeof(BenchRates));
    std::set<std::string> keys;
    std::set<std::string> names;
    for (const RateSetting& rate : rateSettings()) {
        EXPECT_TRUE(keys.insert(rate.key).second) << rate.key;
        EXPECT_TRUE(names.insert(rate.name).second) << rate.name;
        EXPECT_THAT(std::string(rate.key), testing::MatchesRegex("[a-z-]+"));
        EXPECT_STRNE(rate.source, "") << rate.name;
        BenchRates changed;
        for (const double value : {rate.least, rate.greatest}) {
            changed.*rate.value = value;
            EXPECT_TRUE(faults(changed).empty()) << rate.name;
        }
        changed.*rate.value = rate.greatest + 1;
        ASSERT_EQ(faults(changed).size(), 1U) << rate.name;
        EXPECT_EQ(faults(changed).front().entry, rate.name);
    }
    EXPECT_TRUE(faults(BenchRates()).empty());
}

TEST(BenchRates, FaultsNameEntryRuleAndValue) {
    BenchRates rates;
    rates.coats = 1.5;
    rates.hoursADay = 0;
    const std::vector<Fault> found = faults(rates);
    ASSERT_EQ(found.size(), 2U);
    EXPECT_EQ(found[0].text(), "Coats of finish: must be a whole number; got 1.5.");
    EXPECT_EQ(found[1].text(), "At the bench in a day: must be from 0.25 h to 24 h; got 0 h.");
}

TEST(Pricing, EveryNumberHasOneRow) {
    std::set<std::string> keys;
    std::set<std::string> names;
    for (const PriceSetting& setting : priceSettings()) {
        EXPECT_TRUE(keys.insert(setting.key).second) << setting.key;
        EXPECT_TRUE(names.insert(setting.name).second) << setting.name;
        EXPECT_THAT(std::string(setting.key), testing::MatchesRegex("[a-z-]+"));
        EXPECT_STRNE(setting.source, "") << setting.name;
        EXPECT_NE(setting.value == nullptr, setting.price == nullptr) << setting.name;
        Pricing changed;
        for (const std::int64_t value : {setting.least, setting.greatest}) {
            setting.set(changed, value);
            EXPECT_EQ(setting.of(changed), value) << setting.name;
            EXPECT_TRUE(faults(changed).empty()) << setting.name;
        }
        for (const std::int64_t value : {setting.least - 1, setting.greatest + 1}) {
            setting.set(changed, value);
            ASSERT_EQ(faults(changed).size(), 1U) << setting.name;
            EXPECT_EQ(faults(changed).front().entry, setting.name);
        }
        setting.set(changed, std::nullopt);
        EXPECT_EQ(setting.of(changed).has_value(), setting.price == nullptr) << setting.name;
    }
    EXPECT_TRUE(faults(Pricing()).empty());
}

const PriceSetting& priceSetting(const std::string& key) {
    for (const PriceSetting& setting : priceSettings()) {
        if (setting.key == key) {
            return setting;
        }
    }
    throw std::runtime_error(key);
}

TEST(Pricing, WhatAnEntryShowsReadsBack) {
    EXPECT_TRUE(rc::check([] {
        const PriceSetting& setting = *rc::gen::elementOf(priceSettings());
        const auto amount = *rc::gen::inRange(setting.least, setting.greatest + 1);
        const Result<std::int64_t> read = readAmount(amountText(amount, setting.kind), setting);
        RC_ASSERT(read.ok());
        RC_ASSERT(*read == amount);
    }));
    EXPECT_EQ(amountText(8'875, PriceKind::Decimal), "8.875");
    EXPECT_EQ(amountText(15'000, PriceKind::Decimal), "15");
    EXPECT_EQ(amountText(5, PriceKind::Money), "0.05");
    EXPECT_EQ(amountText(-120'050, PriceKind::Money), "−1200.50");
    EXPECT_EQ(readAmount("8,875 %", priceSetting("tax-percent")).value(), 8'875);
    EXPECT_EQ(readAmount(" 38,5 ", priceSetting("bench-hour")).value(), 3'850);
}

TEST(Pricing, FaultsNameEntryRuleAndValue) {
    const auto said = [](const char* text, const char* key) {
        const Result<std::int64_t> read = readAmount(text, priceSetting(key));
        return read ? std::string("taken") : read.fault().text();
    };
    EXPECT_EQ(said("12.345", "bench-hour"),
              "Bench work: must be a number with at most 2 decimals; got 12.345.");
    EXPECT_EQ(said("-1", "tax-percent"), "Tax: must be a number with at most 3 decimals; got -1.");
    EXPECT_EQ(said("95.001", "selling-percent"),
              "Selling, of the price: must be from 0 % to 95 %; got 95.001.");
    EXPECT_EQ(said("99999999999999999999999", "sundries"),
              "Sundries: must be from 0.00 to 10000000.00; got 99999999999999999999999.");
    EXPECT_EQ(said("0", "boards"), "Boards quoted: must be from 1 to 1000; got 0.");
    EXPECT_EQ(said("1.5", "boards"), "Boards quoted: must be a whole number; got 1.5.");
    EXPECT_EQ(said("", "finish-spread"),
              "A litre of finish covers: must be a number with at most 3 decimals; got nothing.");
    EXPECT_EQ(said("1.", "sundries"),
              "Sundries: must be a number with at most 2 decimals; got 1..");
    Pricing pricing;
    pricing.overhead = -1;
    ASSERT_EQ(faults(pricing).size(), 1U);
    EXPECT_EQ(faults(pricing).front().text(), "Overhead: must be from 0 % to 500 %; got −0.001 %.");
}

TEST(Pricing, RoundingsHaveKeysAndSteps) {
    EXPECT_EQ(infoOf(FinalRounding::None).step, 1);
    EXPECT_EQ(infoOf(FinalRounding::Whole).step, 100);
    EXPECT_EQ(infoOf(FinalRounding::Five).key, "five");
    EXPECT_EQ(infoOf(FinalRounding::Ten).step, 1000);
}

TEST(ShopFaults, NameEntryRuleAndValueInTheUnitsOfTheMaker) {
    Shop shop = inchShop();
    shop.kerf = Length::inch(-1, 8);
    ASSERT_EQ(faults(shop, inches).size(), 1u);
    EXPECT_EQ(faults(shop, inches).front().text(), "Kerf: must be more than 0; got -1/8 in.");
    EXPECT_EQ(faults(shop, millimetres).front().text(),
              "Kerf: must be more than 0; got -3.175 mm.");
    shop.kerf = Length();
    EXPECT_EQ(faults(shop, inches).front().text(), "Kerf: must be more than 0; got 0 in.");
    shop.kerf = Length::inch(1);
    EXPECT_EQ(faults(shop, inches).front().text(), "Kerf: must be at most 15/32 in; got 1 in.");
    EXPECT_EQ(faults(shop, millimetres).front().text(),
              "Kerf: must be at most 12 mm; got 25.4 mm.");
    shop.kerf = Length::um(50);
    EXPECT_EQ(faults(shop, inches).front().text(),
              "Kerf: must be at least 1/64 in; got ≈ 0 in (0.05 mm).");
    EXPECT_EQ(faults(shop, Notation::millimetres(0)).front().text(),
              "Kerf: must be at least 0.1 mm; got 0.05 mm.");
}

TEST(ShopFaults, AValueIsNeverWrittenLikeTheLimitItBreaks) {
    for (const SettingInfo& info : shopSettings()) {
        for (const Notation& notation :
             {inches, Notation::inches(8), millimetres, Notation::millimetres(0)}) {
            Shop shop = metricShop();
            shop.*info.value = info.greatest + Length::nm(1);
            const std::vector<Fault> found = faults(shop, notation);
            ASSERT_EQ(found.size(), 1u) << info.name;
            EXPECT_EQ(found.front().entry, info.name);
            EXPECT_THAT(found.front().rule, testing::StartsWith("must be at most "));
            EXPECT_THAT(found.front().rule, testing::Not(testing::HasSubstr("≈")));
            EXPECT_EQ(found.front().rule.find(found.front().value), std::string::npos)
                << found.front().text();
        }
    }
}

TEST(ShopFaults, WhatTheWordsPromiseIsTaken) {
    for (const SettingInfo& info : shopSettings()) {
        for (const Notation& notation : {inches, millimetres}) {
            for (const bool above : {false, true}) {
                Shop shop = metricShop();
                shop.*info.value = above ? Length::mm(1'000'000) : info.least - Length::nm(1);
                const std::vector<Fault> found = faults(shop, notation);
                ASSERT_EQ(found.size(), 1u) << info.name;
                const std::string& rule = found.front().rule;
                const std::string words = above ? "must be at most " : "must be at least ";
                if (!rule.starts_with(words)) {
                    EXPECT_FALSE(above);
                    EXPECT_THAT(rule,
                                testing::AnyOf("must not be less than 0", "must be more than 0"));
                    continue;
                }
                const Result<Reading> limit =
                    parse(std::string_view(rule).substr(words.size()), notation, info.name);
                ASSERT_TRUE(limit.ok()) << rule;
                shop.*info.value = limit->length;
                EXPECT_TRUE(faults(shop, notation).empty()) << rule;
            }
        }
    }
}

TEST(ShopFaults, SpareSlices) {
    Shop shop = metricShop();
    for (const int good : {0, 1, 20}) {
        shop.spareSlices = good;
        EXPECT_TRUE(faults(shop, millimetres).empty()) << good;
    }
    for (const int bad : {-1, 21, 2'000'000'000}) {
        shop.spareSlices = bad;
        ASSERT_EQ(faults(shop, millimetres).size(), 1u) << bad;
        EXPECT_EQ(faults(shop, millimetres).front().text(),
                  "Spare slices: must be from 0 to 20; got " + std::to_string(bad) + ".");
    }
}

TEST(ShopFaults, AllOfThemInTheOrderOfTheForm) {
    Shop shop;  // every length 0
    shop.spareSlices = -1;
    for (const SettingInfo& info : shopSettings()) {
        shop.*info.value = Length::mm(-1);
    }
    const std::vector<Fault> found = faults(shop, millimetres);
    ASSERT_EQ(found.size(), shopSettings().size() + 1);
    for (std::size_t i = 0; i < shopSettings().size(); ++i) {
        EXPECT_EQ(found[i].entry, shopSettings()[i].name);
        EXPECT_EQ(found[i].value, "-1 mm");
    }
}

TEST(ShopFaults, WhatMayBeNothing) {
    Shop shop = metricShop();
    shop.squaringCut = Length();
    shop.tail = Length();
    shop.trimMargin = Length();
    shop.endAllowance = Length();
    shop.fieldFlattening = Length();
    shop.panelFlattening = Length();
    shop.milling = Length();
    EXPECT_TRUE(faults(shop, millimetres).empty());
    shop.lengthStep = Length();
    ASSERT_EQ(faults(shop, millimetres).size(), 1u);
    EXPECT_EQ(faults(shop, millimetres).front().text(),
              "Length step: must be more than 0; got 0 mm.");
}

RC_GTEST_PROP(ShopFaults, RefusesExactlyWhatIsOutsideTheLimits, ()) {
    const SettingInfo& info =
        shopSettings()[*rc::gen::inRange<std::size_t>(0, shopSettings().size())];
    const Length value = Length::nm(
        *rc::gen::oneOf(rc::gen::inRange<std::int64_t>(-100'000'000, 30'000'000'000),
                        rc::gen::map(rc::gen::inRange<std::int64_t>(-2, 3),
                                     [&](std::int64_t off) { return info.least.nm() + off; }),
                        rc::gen::map(rc::gen::inRange<std::int64_t>(-2, 3),
                                     [&](std::int64_t off) { return info.greatest.nm() + off; })));
    Shop shop = metricShop();
    shop.*info.value = value;
    const bool inside = value >= info.least && value <= info.greatest;
    RC_ASSERT(faults(shop, millimetres).empty() == inside);
    RC_ASSERT(faults(shop, inches).empty() == inside);
}

}  // namespace
}  // namespace kerfwright
