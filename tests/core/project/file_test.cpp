#include "core/board/patterns.h"
#include "core/project/file.h"
#include "tests/core/board/randomfield.h"
#include "tests/source.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <fstream>
#include <limits>
#include <sstream>
#include <string>
#include <utility>
#include <vector>

namespace kerfwright {
namespace {

using ::testing::HasSubstr;
using ::testing::Not;
using ::testing::StartsWith;

std::string goodBytes() {
    Project project = newProject(Unit::Millimetres);
    project.titles = {"Tray", "Tarn Hut Joinery", "3 October 2026", "For “tea” \\ and cake.\n"};
    project.woods[0].colour = {0xEB, 0xD3, 0xA6};
    project.woods[0].density = 705;
    return toBytes(project);
}

/// The good file with the first `from` replaced.
std::string changed(const std::string& from, const std::string& to) {
    std::string bytes = goodBytes();
    const std::size_t at = bytes.find(from);
    if (at == std::string::npos) {
        ADD_FAILURE() << "not in the file: " << from;
        return bytes;
    }
    return bytes.replace(at, from.size(), to);
}

std::string faultOf(const std::string& bytes) {
    const Result<Project> read = fromBytes(bytes);
    return read.ok() ? "none" : read.fault().text();
}

Wood anyWood(int number) {
    static const std::vector<std::string> names{"Ahorn", "Nußbaum", "Cherry “old”", "木",
                                                "a\\b\n\tc"};
    Wood wood;
    wood.key = "wood-" + std::to_string(number);
    wood.name = *rc::gen::elementOf(names);
    wood.letter = std::string(1, static_cast<char>('A' + number));
    wood.colour = {*rc::gen::arbitrary<std::uint8_t>(), *rc::gen::arbitrary<std::uint8_t>(),
                   *rc::gen::arbitrary<std::uint8_t>()};
    wood.density = *rc::gen::inRange(0, 1'400'000'000) / 1e6;
    wood.timber = {Length::mm(*rc::gen::inRange(20, 100)), Length::mm(*rc::gen::inRange(50, 300))};
    wood.source = *rc::gen::elementOf(names);
    const auto upTo = [](int greatest) { return *rc::gen::inRange(0, greatest * 100'000) / 1e5; };
    wood.botanical = *rc::gen::elementOf(names);
    wood.shrinkage = {upTo(12), upTo(15), upTo(25)};
    wood.movement = {upTo(12) / 1000, upTo(15) / 1000};
    wood.hardness = upTo(20'000);
    wood.pores = *rc::gen::element(Pores::Unknown, Pores::Ring, Pores::SemiRing, Pores::Diffuse);
    wood.poreEnds = *rc::gen::element(PoreEnds::Unknown, PoreEnds::Closed, PoreEnds::Open);
    wood.gluing = *rc::gen::element(Gluing::Unknown, Gluing::Easily, Gluing::Well,
                                    Gluing::Satisfactorily, Gluing::WithDifficulty);
    wood.reactions = *rc::gen::elementOf(names);
    wood.food = *rc::gen::elementOf(names);
    wood.rings = *rc::gen::element(Rings::Unknown, Rings::Flat, Rings::Rift, Rings::Quarter);
    wood.price.minorPerCubicMetre = *rc::gen::inRange<std::int64_t>(0, WoodLimits::price + 1);
    for (std::string WoodSources::*const source :
         {&WoodSources::shrinkage, &WoodSources::movement, &WoodSources::hardness,
          &WoodSources::pores, &WoodSources::gluing, &WoodSources::reactions, &WoodSources::food}) {
        wood.sources.*source = *rc::gen::elementOf(names);
    }
    return wood;
}

Border anyBorder(int woods) {
    const auto upTo = [](Length greatest) {
        return Length::nm(*rc::gen::inRange<std::int64_t>(0, greatest.nm() + 1));
    };
    Border border{upTo(BoardLimits::greatestBorder), *rc::gen::inRange(0, woods)};
    border.design = *rc::gen::element(BorderDesign::EndGrainBand, BorderDesign::FloatingFrame,
                                      BorderDesign::FixedFrame, BorderDesign::BreadboardEnds,
                                      BorderDesign::EdgeBand);
    border.housing = *rc::gen::element(Housing::Groove, Housing::Rebate);
    if (*rc::gen::arbitrary<bool>()) {
        border.gap = upTo(BoardLimits::greatestGap);
    }
    border.inlayWidth = upTo(border.width);
    border.inlayWood = *rc::gen::inRange(0, woods);
    border.splineThickness = upTo(BoardLimits::greatestSpline);
    border.splineWood = *rc::gen::inRange(0, woods);
    border.cautionRead = *rc::gen::arbitrary<bool>();
    return border;
}

Timber anyTimber(Unit unit) {
    const auto between = [](Length least, Length greatest) {
        return Length::nm(*rc::gen::inRange<std::int64_t>(least.nm(), greatest.nm() + 1));
    };
    Timber timber = newTimber(unit);
    const int planks = *rc::gen::inRange(0, 4);
    for (int i = 0; i < planks; ++i) {
        Plank plank;
        plank.label = "P" + std::to_string(i);
        plank.wood = *rc::gen::element<std::string>("ash", "another-wood");
        plank.thickness = between(Length::mm(1), RackLimits::thickness);
        plank.width = between(Length::mm(10), RackLimits::width);
        plank.length = between(Length::mm(10), RackLimits::length);
        if (*rc::gen::arbitrary<bool>()) {
            const Length x = between(Length(), plank.length - Length::mm(2));
            const Length y = between(Length(), plank.width - Length::mm(2));
            plank.defects.push_back({x, y, between(Length::nm(1), plank.length - x),
                                     between(Length::nm(1), plank.width - y)});
        }
        plank.price = *rc::gen::inRange<std::int64_t>(0, RackLimits::price + 1);
        plank.note = *rc::gen::element<std::string>("", "½ “wane”", "🪵");
        plank.isOffcut = *rc::gen::arbitrary<bool>();
        timber.rack.planks.push_back(plank);
        timber.pins.push_back({"A" + std::to_string(i), *rc::gen::element<std::string>("P1", "?")});
    }
    if (*rc::gen::arbitrary<bool>()) {
        timber.yard = {{between(Length::mm(1), RackLimits::thickness)},
                       {between(Length::mm(1), RackLimits::width), Length::mm(7)},
                       {between(Length::mm(1), RackLimits::length)},
                       *rc::gen::element(Tally::Exact, Tally::Export, Tally::Retail)};
    }
    for (const SawingLength& setting : sawingLengths()) {
        timber.sawing.*setting.value = between(Length(), setting.greatest);
    }
    for (const SawingCount& setting : sawingCounts()) {
        timber.sawing.*setting.value = *rc::gen::inRange(setting.least, setting.greatest + 1);
    }
    timber.railsInOneLength = *rc::gen::arbitrary<bool>();
    return timber;
}

std::vector<SeenTo> anySeenTo() {
    std::vector<SeenTo> seenTo;
    const int entries = *rc::gen::inRange(0, 5);
    for (int i = 0; i < entries; ++i) {
        SeenTo entry{*rc::gen::element<std::string>("open-pores", "woods-alike"),
                     *rc::gen::element<std::string>("", "ash oak", "½ “x”")};
        entry.said.push_back(fact("number", i));  // no two alike
        if (*rc::gen::arbitrary<bool>()) {
            entry.said.push_back({"any-nm", *rc::gen::arbitrary<std::int64_t>()});
            entry.said.push_back(
                fact("parts", *rc::gen::element<std::string>("", "A B", "🪵\n")));
        }
        seenTo.push_back(std::move(entry));
    }
    return seenTo;
}

/// Call inside a property only.
Project anyProject() {
    Project project;
    const int woods = *rc::gen::inRange(1, 8);
    for (int i = 0; i < woods; ++i) {
        project.woods.push_back(anyWood(i));
    }
    const auto text = [] {
        return *rc::gen::element<std::string>("", "Brotbrett", "½ × “x”", "\x01\x7F/\"\\", "🪵");
    };
    project.titles = {text(), text(), text(), text()};
    project.notation.unit = *rc::gen::element(Unit::Millimetres, Unit::Inches);
    project.notation.denominator = 1 << *rc::gen::inRange(0, 7);
    project.notation.decimals = *rc::gen::inRange(0, 7);
    project.board.build = *rc::gen::element(Build::EndGrain, Build::LongGrain);
    project.board.grain = *rc::gen::element(GrainDirection::PlannersChoice, GrainDirection::Down,
                                            GrainDirection::Across);
    project.board.thickness = Length::nm(*rc::gen::inRange<std::int64_t>(5'000'000, 200'000'001));
    project.board.field = random::anyField(12, woods);
    project.board.border = anyBorder(woods);
    for (const SettingInfo& info : shopSettings()) {
        project.shop.*info.value =
            Length::nm(*rc::gen::inRange(info.least.nm(), info.greatest.nm() + 1));
    }
    project.shop.spareSlices = *rc::gen::inRange(0, 21);
    project.choices.rows = *rc::gen::element(RowChoice::Best, RowChoice::Rows, RowChoice::Columns);
    project.choices.mergeLike = *rc::gen::arbitrary<bool>();
    const auto between = [](double least, double greatest) {
        return least + (greatest - least) * *rc::gen::inRange(0, 1001) / 1000;
    };
    for (const ClimateSetting& setting : climateSettings()) {
        project.climate.*setting.value = between(0, fibreSaturation);
    }
    project.climate.dampest = std::max(project.climate.driest, project.climate.dampest);
    for (const GlueSetting& setting : glueSettings()) {
        const double value = between(setting.least, setting.greatest);
        project.glue.*setting.value = setting.whole ? std::floor(value) : value;
    }
    for (const RateSetting& setting : rateSettings()) {
        const double value = between(setting.least, setting.greatest);
        project.rates.*setting.value = setting.whole ? std::floor(value) : value;
    }
    project.glue.lightDensity = between(100, 1000);
    project.glue.heavyDensity = between(1001, 2000);
    project.purpose.use =
        static_cast<BoardUse>(*rc::gen::inRange<std::size_t>(0, boardUses.size()));
    project.purpose.foot = Length::nm(*rc::gen::inRange<std::int64_t>(0, 200'000'001));
    project.currency = *rc::gen::element<std::string>("", "€", "CHF", "“$”");
    project.timber = anyTimber(project.notation.unit);
    for (const PriceSetting& setting : priceSettings()) {
        setting.set(project.pricing, *rc::gen::inRange(setting.least, setting.greatest + 1));
        if (setting.price != nullptr && *rc::gen::arbitrary<bool>()) {
            setting.set(project.pricing, std::nullopt);
        }
    }
    project.pricing.rounding = *rc::gen::element(FinalRounding::None, FinalRounding::Whole,
                                                 FinalRounding::Five, FinalRounding::Ten);
    project.pricing.customer = text();
    project.pricing.validUntil = text();
    project.seenTo = anySeenTo();
    return project;
}

// --- round trips

TEST(ProjectFile, readsBackWhatItWrote) {
    EXPECT_TRUE(rc::check([] {
        const Project project = anyProject();
        RC_ASSERT(faults(project).empty());
        const std::string bytes = toBytes(project);
        const Result<Project> read = fromBytes(bytes);
        RC_ASSERT(read.ok());
        RC_ASSERT(*read == project);
        RC_ASSERT(toBytes(*read) == bytes);
    }));
}

TEST(ProjectFile, beginsWithFormatAndVersionAndEndsWithALineFeed) {
    EXPECT_THAT(goodBytes(),
                StartsWith("{\n  \"format\": \"kerfwright-project\",\n  \"version\": 1,\n"));
    EXPECT_EQ(goodBytes().back(), '\n');
    EXPECT_THAT(goodBytes(), HasSubstr("\"thickness-nm\": 38000000,"));
}

TEST(ProjectFile, putsEachRowOfPiecesOnALine) {
    Project project = newProject(Unit::Millimetres);
    project.board.field =
        layOut({Pattern::Chequer, 2, 2, Length::mm(50), Length::mm(50), {0, 1}}).value();
    EXPECT_THAT(toBytes(project),
                HasSubstr("      \"pieces\": [\n"
                          "        [0, 0, 1, 1, \"hard-maple\"], [1, 0, 1, 1, \"black-walnut\"],\n"
                          "        [0, 1, 1, 1, \"black-walnut\"], [1, 1, 1, 1, \"hard-maple\"]\n"
                          "      ]\n"));
}

// Written by hand when version 1 was made. It never changes: files of that day must be read for
// ever.
TEST(ProjectFile, readsTheFixtureOfVersion1) {
    const Result<Project> read =
        readProject(sourceFolder() / "tests/core/project/fixtures/version-1.kerfwright");
    ASSERT_TRUE(read.ok()) << read.fault().text();
    EXPECT_EQ(read->titles.name, "Two-wood trivet");
    EXPECT_EQ(read->titles.note, "Quarter-inch “feet” come later.");
    EXPECT_EQ(read->notation, (Notation{Unit::Inches, 32, 2}));
    EXPECT_EQ(read->board.build, Build::LongGrain);
    EXPECT_EQ(read->board.grain, GrainDirection::Across);
    EXPECT_EQ(read->board.thickness, Length::inch(3, 4));
    EXPECT_EQ(read->board.border, (Border{Length::inch(1), 1}));
    EXPECT_EQ(read->board.field.columns,
              (std::vector<Length>{Length::inch(2), Length::inch(1, 64) * 100, Length::inch(2)}));
    EXPECT_EQ(read->board.field.rows, (std::vector<Length>{Length::inch(2), Length::inch(1)}));
    EXPECT_EQ(
        read->board.field.pieces,
        (std::vector<Piece>{{0, 0, 2, 1, 0}, {2, 0, 1, 2, 1}, {0, 1, 1, 1, 1}, {1, 1, 1, 1, 0}}));
    ASSERT_EQ(read->woods.size(), 2U);
    EXPECT_EQ(read->woods[0].name, "Cherry");
    EXPECT_EQ(read->woods[0].colour, (Colour{0xB0, 0x6A, 0x45}));
    EXPECT_EQ(read->woods[0].density, 562.5);
    EXPECT_EQ(read->woods[1].timber, (Section{Length::mm(50), Length::mm(150)}));
    EXPECT_EQ(read->shop.kerf, Length::inch(3, 32));
    EXPECT_EQ(read->shop.spareSlices, 2);
    EXPECT_EQ(read->shop.longestStrip, Length::inch(96));
    EXPECT_EQ(read->choices, (Choices{RowChoice::Columns, true}));
    EXPECT_EQ(read->unknownKeys, R"({"titles": {"customer": "The hut"}})");
}

// What woods came to say after version 1 was made is not in that fixture.
TEST(ProjectFile, readsWoodsThatSayLessAndWritesThatItIsNotKnown) {
    const Project read =
        readProject(sourceFolder() / "tests/core/project/fixtures/version-1.kerfwright").value();
    const Wood& wood = read.woods[0];
    EXPECT_EQ(wood.botanical, "");
    EXPECT_EQ(wood.shrinkage, Shrinkage());
    EXPECT_EQ(wood.movement, MovementCoefficients());
    EXPECT_EQ(wood.pores, Pores::Unknown);
    EXPECT_EQ(wood.rings, Rings::Unknown);
    EXPECT_EQ(wood.price, Price());
    EXPECT_EQ(wood.sources, WoodSources());
    const std::string bytes = toBytes(read);
    EXPECT_THAT(bytes, HasSubstr("      \"hardness\": 0,\n      \"pores\": \"unknown\",\n"));
    EXPECT_EQ(fromBytes(bytes).value(), read);
}

TEST(ProjectFile, writesWhatItKnowsOfAWood) {
    Project project = newProject(Unit::Millimetres);
    project.woods[0].rings = Rings::Quarter;
    project.woods[0].price = {123'456'789};
    const std::string bytes = toBytes(project);
    for (const char* line :
         {"\"botanical\": \"Acer saccharum\",", "\"shrinkage-tangential\": 9.9,",
          "\"movement-radial\": 0.00165,", "\"hardness\": 6400,", "\"pores\": \"diffuse\",",
          "\"pore-ends\": \"closed\",", "\"gluing\": \"satisfactorily\",",
          "\"rings\": \"quarter\",", "\"price-per-m3\": 123456789,"}) {
        EXPECT_THAT(bytes, HasSubstr(line));
    }
}

// Nor are climate, glue, purpose, rates and currency.
TEST(ProjectFile, readsFilesFromBeforeTheSeasons) {
    const Project read =
        readProject(sourceFolder() / "tests/core/project/fixtures/version-1.kerfwright").value();
    EXPECT_EQ(read.climate, Climate());
    EXPECT_EQ(read.glue, GlueShop());
    EXPECT_EQ(read.purpose, BoardPurpose());
    EXPECT_EQ(read.rates, BenchRates());
    EXPECT_EQ(read.currency, "");
    EXPECT_EQ(read.pricing, Pricing());
    // A part of them may be missing too.
    const Result<Project> part = fromBytes(changed("\"driest-percent\": 6,", ""));
    ASSERT_TRUE(part.ok()) << part.fault().text();
    EXPECT_EQ(part->climate.driest, 6);
}

TEST(ProjectFile, keepsPricesApartFromThoseThatAreNotKnown) {
    Project project = newProject(Unit::Millimetres);
    EXPECT_THAT(toBytes(project), Not(HasSubstr("\"bench-hour\"")));
    project.pricing.benchHour = 0;
    project.pricing.tax = 8'875;
    const std::string bytes = toBytes(project);
    EXPECT_THAT(bytes, HasSubstr("\"bench-hour\": 0,"));
    EXPECT_THAT(bytes, HasSubstr("\"tax-percent\": 8.875,"));
    const Project read = fromBytes(bytes).value();
    EXPECT_EQ(read.pricing.benchHour, 0);
    EXPECT_EQ(read.pricing.glueKilogram, std::nullopt);
}

TEST(ProjectFile, refusesPricesThatCannotBe) {
    const auto said = [](const char* from, const char* to) {
        const Result<Project> read = fromBytes(changed(from, to));
        return read ? std::string("taken") : read.fault().text();
    };
    EXPECT_EQ(said("\"tax-percent\": 0,", "\"tax-percent\": 8.1234,"),
              "pricing.tax-percent: must be a number with at most 3 decimals; got 8.1234.");
    EXPECT_EQ(said("\"selling-percent\": 0,", "\"selling-percent\": 100,"),
              "pricing: Selling, of the price: must be from 0 % to 95 %; got 100 %.");
    EXPECT_EQ(said("\"sundries\": 0,", "\"sundries\": -5,"),
              "pricing: Sundries: must be from 0.00 to 10000000.00; got −0.05.");
    EXPECT_EQ(said("\"sundries\": 0,", "\"sundries\": 1.5,"),
              "pricing.sundries: must be a whole number, without point or exponent; got 1.5.");
    EXPECT_EQ(said("\"rounding\": \"none\"", "\"rounding\": \"up\""),
              "pricing.rounding: must be one of none, whole, five, ten; got “up”.");
}

// --- unknown keys

TEST(ProjectFile, keepsUnknownKeysBesideSettings) {
    for (const std::string key : {"climate", "rates", "pricing"}) {
        const Result<Project> read =
            fromBytes(changed('"' + key + "\": {", '"' + key + "\": {\"wind\": 1,"));
        ASSERT_TRUE(read.ok()) << read.fault().text();
        EXPECT_EQ(read->unknownKeys, "{\"" + key + "\": {\"wind\": 1}}");
        EXPECT_EQ(fromBytes(toBytes(*read)).value(), *read);
    }
}

TEST(ProjectFile, keepsUnknownKeysAmongTheSourcesOfAWood) {
    const Result<Project> read = fromBytes(changed("\"sources\": {", "\"sources\": {\"tone\": 1,"));
    ASSERT_TRUE(read.ok()) << read.fault().text();
    EXPECT_EQ(read->unknownKeys, R"({"woods": {"hard-maple": {"sources": {"tone": 1}}}})");
    EXPECT_EQ(fromBytes(toBytes(*read)).value(), *read);
}

TEST(ProjectFile, keepsKeysItDoesNotKnowAtEveryLevel) {
    std::string bytes = goodBytes();
    const auto insert = [&bytes](const std::string& after, const std::string& text) {
        const std::size_t at = bytes.find(after);
        ASSERT_NE(at, std::string::npos) << after;
        bytes.insert(at + after.size(), text);
    };
    insert("\"version\": 1,", "\"place\": {\"summer\": 65, \"deep\": [{\"x\": [1, 2.50, 1e3]}]},");
    insert("\"titles\": {", "\"customer\": null,");
    insert("\"board\": {", "\"feet\": true,");
    insert("\"border\": {", "\"reveal-nm\": 123456789012345678901234567890,");
    insert("\"field\": {", "\"pinned\": [],");
    insert("\"key\": \"hard-maple\",", "\"price\": 0.1,");
    insert("\"key\": \"wenge\",", "\"price\": \"dear\",");
    insert("\"shop\": {", "\"bench\": {},");

    const Result<Project> read = fromBytes(bytes);
    ASSERT_TRUE(read.ok()) << read.fault().text();
    EXPECT_EQ(read->unknownKeys,
              R"({"titles": {"customer": null}, )"
              R"("board": {"border": {"reveal-nm": 123456789012345678901234567890}, )"
              R"("field": {"pinned": []}, "feet": true}, )"
              R"("woods": {"hard-maple": {"price": 0.1}, "wenge": {"price": "dear"}}, )"
              R"("shop": {"bench": {}}, )"
              R"("place": {"summer": 65, "deep": [{"x": [1, 2.50, 1e3]}]}})");
    const std::string again = toBytes(*read);
    EXPECT_THAT(again, HasSubstr("\"reveal-nm\": 123456789012345678901234567890\n"));
    EXPECT_THAT(again, HasSubstr("\"deep\": [{\"x\": [1, 2.50, 1e3]}]"));
    EXPECT_THAT(again, StartsWith("{\n  \"format\": "));
    const Result<Project> twice = fromBytes(again);
    ASSERT_TRUE(twice.ok());
    EXPECT_EQ(*twice, *read);

    // The known part is what it would be without them.
    Project plain = *read;
    plain.unknownKeys.clear();
    EXPECT_EQ(toBytes(plain), goodBytes());

    // They follow their wood when the chips are sorted anew.
    Project sorted = *read;
    std::swap(sorted.woods[0], sorted.woods[3]);
    const std::string moved = toBytes(sorted);
    EXPECT_LT(moved.find("\"dear\""), moved.find("\"price\": 0.1"));
}

// --- bad files

TEST(BadProjectFile, isRefusedInWords) {
    EXPECT_EQ(faultOf(""), "File: is empty.");
    EXPECT_EQ(faultOf("{\"format\": \"kerf"),
              "File: breaks off at line 1, column 17; the rest of it is missing.");
    EXPECT_EQ(faultOf(" \n"), "File: breaks off at line 2, column 1; the rest of it is missing.");
    EXPECT_EQ(faultOf("<svg/>"), "File: is no project: line 1, column 1 is not JSON.");
    EXPECT_EQ(faultOf("{}\n{}"), "File: is no project: line 2, column 1 is not JSON.");
    EXPECT_EQ(faultOf("{\"a\": \xC3\x28}"), "File: is no project: line 1, column 7 is not UTF-8.");
    EXPECT_EQ(faultOf("[]"), "File: must hold a project, a JSON object; got a list.");
    EXPECT_EQ(faultOf("{}"), "format: must be given; got nothing.");
    EXPECT_EQ(faultOf("{}" + std::string(1, '\0') + "x"),
              "File: is no project: line 1, column 3 is a zero byte.");
    EXPECT_EQ(faultOf(changed("kerfwright-project", "drawing")),
              "format: must be “kerfwright-project”; got “drawing”.");
    EXPECT_EQ(faultOf(changed("\"version\": 1", "\"version\": 7")),
              "version: made by a newer Kerfwright, this one reads up to 1; got version 7.");
    EXPECT_EQ(faultOf(changed("\"version\": 1", "\"version\": 0")),
              "version: must be from 1 to 9223372036854775807; got 0.");
    EXPECT_EQ(faultOf(changed("\"version\": 1,", "\"version\": 1, \"version\": 1,")),
              "version: must stand in its object only once; got the key twice.");
    EXPECT_EQ(faultOf(changed("\"build\": ", "\"border\": 1, \"build\": ")),
              "board.border: must stand in its object only once; got the key twice.");
}

TEST(BadProjectFile, isRefusedWithThePathTheRuleAndTheValue) {
    const std::string thickness = "\"thickness-nm\": 38000000";
    const auto withThickness = [&](const std::string& value) {
        return faultOf(changed(thickness, "\"thickness-nm\": " + value));
    };
    EXPECT_EQ(withThickness("-5"), "board.thickness-nm: must be from 5 mm to 200 mm; got -5 nm.");
    EXPECT_EQ(withThickness("0"), "board.thickness-nm: must be from 5 mm to 200 mm; got 0 nm.");
    EXPECT_EQ(withThickness("9223372036854775807"),
              "board.thickness-nm: must be from 5 mm to 200 mm; got 9223372036854775807 nm.");
    EXPECT_EQ(withThickness("9223372036854775808"),
              "board.thickness-nm: must be a whole number of at most 64 bits; got "
              "9223372036854775808.");
    EXPECT_EQ(withThickness("-99999999999999999999999"),
              "board.thickness-nm: must be a whole number of at most 64 bits; got "
              "-99999999999999999999999.");
    const std::string whole =
        "board.thickness-nm: must be a whole number, without point or exponent; got ";
    EXPECT_EQ(withThickness("38000000.5"), whole + "38000000.5.");
    EXPECT_EQ(withThickness("38000000.0"), whole + "38000000.0.");
    EXPECT_EQ(withThickness("1e30"), whole + "1e30.");
    EXPECT_EQ(withThickness("1e999"),
              "board.thickness-nm: must be a number that a computer can hold; got 1e999.");
    EXPECT_EQ(withThickness("\"38 mm\""),
              "board.thickness-nm: must be a whole number; got “38 mm”.");
    EXPECT_EQ(withThickness("null"), "board.thickness-nm: must be a whole number; got null.");
    EXPECT_EQ(withThickness("[38000000]"),
              "board.thickness-nm: must be a whole number; got a list.");
    EXPECT_EQ(faultOf(changed(thickness, "\"thick\": 1")),
              "board.thickness-nm: must be given; got nothing.");

    EXPECT_EQ(faultOf(changed("\"columns-nm\": [50000000, 50000000, 50000000, 50000000,",
                              "\"columns-nm\": [50000000, 50000000, 50000000, -4,")),
              "board.field.columns-nm[3]: must be from 2 mm to 1500 mm; got -4 nm.");
    EXPECT_EQ(
        faultOf(changed("[0, 0, 1, 1, \"hard-maple\"]", "[0, 0, 1, 1, \"oak\"]")),
        "board.field.pieces[0][4]: must be the key of one of the woods of this file; got “oak”.");
    EXPECT_EQ(faultOf(changed("[1, 0, 1, 1,", "[1, 0, 8, 1,")),
              "board.field.pieces[1][2]: must be from 1 to 7; got 8.");
    EXPECT_EQ(faultOf(changed("[1, 0, 1, 1,", "[1, 0, 1, 2,")),
              "board: Piece 10: must not lie over another piece; got a piece over piece 2 at "
              "column 2, row "
              "2.");
    EXPECT_EQ(faultOf(changed("[1, 0, 1, 1, \"black-walnut\"]", "[1, 0, 1, 1]")),
              "board.field.pieces[1]: must have 5 items; got 4.");
    EXPECT_EQ(faultOf(changed("\"build\": \"end-grain\"", "\"build\": \"plywood\"")),
              "board.build: must be one of end-grain, long-grain; got “plywood”.");
    EXPECT_EQ(faultOf(changed("\"merge-like\": false", "\"merge-like\": 0")),
              "choices.merge-like: must be true or false; got 0.");
    EXPECT_EQ(faultOf(changed("\"kerf-nm\": 3200000", "\"kerf-nm\": 0")),
              "shop.kerf-nm: must be from 0.1 mm to 12 mm; got 0 nm.");
    EXPECT_EQ(faultOf(changed("\"spare-slices\": 1", "\"spare-slices\": 21")),
              "shop.spare-slices: must be from 0 to 20; got 21.");
    EXPECT_THAT(faultOf(changed("\"density\": 705", "\"density\": -705")),
                ::testing::AllOf(StartsWith("woods: "), HasSubstr("density"), HasSubstr("-705")));
    EXPECT_EQ(faultOf(changed("\"pores\": \"diffuse\"", "\"pores\": \"many\"")),
              "woods[0].pores: must be one of unknown, ring, semi-ring, diffuse; got “many”.");
    EXPECT_EQ(faultOf(changed("\"price-per-m3\": 0", "\"price-per-m3\": -1")),
              "woods[0].price-per-m3: must be from 0 to 1000000000000; got -1.");
    EXPECT_EQ(faultOf(changed("\"price-per-m3\": 0", "\"price-per-m3\": 1.5")),
              "woods[0].price-per-m3: must be a whole number, without point or exponent; got 1.5.");
    EXPECT_EQ(faultOf(changed("\"hardness\": 6400", "\"hardness\": \"hard\"")),
              "woods[0].hardness: must be a number; got “hard”.");
    EXPECT_EQ(faultOf(changed("\"build-percent\": 8", "\"build-percent\": 31")),
              "climate: Moisture when built: must be from 0 % to 30 %; got 31 %.");
    EXPECT_EQ(faultOf(changed("\"dampest-percent\": 10", "\"dampest-percent\": 5")),
              "climate: Moisture in the dampest season: must be at least that of the driest, 6 %; "
              "got 5 %.");
    EXPECT_EQ(faultOf(changed("\"build-percent\": 8", "\"build-percent\": \"wet\"")),
              "climate.build-percent: must be a number; got “wet”.");
    EXPECT_EQ(faultOf(changed("\"glue-spread\": 175", "\"glue-spread\": 5")),
              "glue: Glue spread: must be from 20 g/m² to 1000 g/m²; got 5 g/m².");
    EXPECT_EQ(faultOf(changed("\"clamps-owned\": 0", "\"clamps-owned\": 2.5")),
              "glue: Clamps that you own: must be a whole number; got 2.5.");
    EXPECT_EQ(faultOf(changed("\"coats\": 2", "\"coats\": 21")),
              "rates: Coats of finish: must be from 0 to 20; got 21.");
    EXPECT_EQ(faultOf(changed("\"coats\": 2", "\"coats\": \"many\"")),
              "rates.coats: must be a number; got “many”.");
    EXPECT_EQ(faultOf(changed("\"use\": \"unsaid\"", "\"use\": \"sledge\"")),
              "purpose.use: must be one of unsaid, chess, draughts, dry-room, serving, kitchen, "
              "outdoors; got “sledge”.");
    EXPECT_EQ(faultOf(changed("\"foot-nm\": 0", "\"foot-nm\": -1")),
              "purpose.foot-nm: must be from 0 mm to 200 mm; got -1 nm.");
    EXPECT_THAT(faultOf(changed("\"currency\": \"\"", "\"currency\": \"seventeen bytes!!\"")),
                HasSubstr("Currency: must be at most 16 bytes long"));
    EXPECT_EQ(faultOf(changed("\"sources\": {", "\"sources\": 3, \"x\": {")),
              "woods[0].sources: must be an object; got 3.");
    EXPECT_THAT(faultOf(changed("\"shrinkage-radial\": 4.8", "\"shrinkage-radial\": 48")),
                ::testing::AllOf(StartsWith("woods: "), HasSubstr("radial shrinkage: must be from "
                                                                  "0 to 30 %")));
    EXPECT_EQ(faultOf(changed("\"colour\": \"#ebd3a6\"", "\"colour\": \"#ebd3a\"")),
              "woods[0].colour: must be a colour such as #ebd3a6; got “#ebd3a”.");
    EXPECT_THAT(faultOf(changed("\"key\": \"cherry\"", "\"key\": \"hard-maple\"")),
                HasSubstr("must differ from the keys of the other woods"));
    EXPECT_THAT(faultOf(changed("\"Tray\"", '"' + std::string(10'001, 'x') + '"')),
                StartsWith("titles.name: must be at most 10000 bytes long; got “xxx"));
    EXPECT_EQ(faultOf(changed("\"titles\": {", "\"titles\": 3, \"x\": {")),
              "titles: must be an object; got 3.");
    EXPECT_EQ(faultOf(changed("\"denominator\": 64", "\"denominator\": 63")),
              "notation.denominator: must be 1, 2, 4, 8, 16, 32 or 64; got 63.");
}

TEST(BadProjectFile, withNoColumnsOrTenThousandIsRefused) {
    const std::string eight =
        "[50000000, 50000000, 50000000, 50000000, 50000000, 50000000, 50000000, 50000000]";
    EXPECT_EQ(faultOf(changed("\"columns-nm\": " + eight, "\"columns-nm\": []")),
              "board.field.columns-nm: must have from 1 to 64 items; got 0.");
    std::string many = "[50000000";
    for (int i = 1; i < 10'000; ++i) {
        many += ", 50000000";
    }
    EXPECT_EQ(faultOf(changed("\"columns-nm\": " + eight, "\"columns-nm\": " + many + "]")),
              "board.field.columns-nm: must have from 1 to 64 items; got 10000.");
    EXPECT_EQ(faultOf(changed("\"rows-nm\": " + eight, "\"rows-nm\": 10000")),
              "board.field.rows-nm: must be a list; got 10000.");
}

TEST(BadProjectFile, cannotExhaustTheProgram) {
    EXPECT_EQ(
        faultOf(std::string(1'000'000, '[')),
        "[0][0][0][0][0][0][0][0][0][0][0][0][0][0][0][0][0][0][0][0][0][0][0][0][0][0][0][0][0]"
        "[0][0][0][0][0][0][0][0][0][0][0][0][0][0][0][0][0][0][0][0][0][0][0][0][0][0][0][0][0]"
        "[0][0][0][0][0][0]: must not be nested deeper than 64 levels; got a deeper one.");
    std::string wide = "[0";
    for (int i = 0; i < 600'000; ++i) {
        wide += ",0";
    }
    EXPECT_THAT(faultOf(wide + "]"), HasSubstr("must be within 500000 values in all; got more."));
    EXPECT_EQ(faultOf(std::string((std::size_t{16} << 20) + 1, ' ')),
              "File: must be at most 16 MiB long; got 16777217 bytes.");
}

TEST(BadProjectFile, cutOffAnywhereIsRefused) {
    // A small one: the work grows with the square of its length.
    Project project = newProject(Unit::Millimetres);
    project.woods.resize(1);
    project.board.border = {};
    project.board.field = plainGrid(2, 1, Length::mm(45), Length::mm(45), 0);
    settleRecipe(project);
    const std::string bytes = toBytes(project);
    ASSERT_TRUE(fromBytes(bytes).ok());
    // The last byte is a line feed; without it the file is still whole.
    for (std::size_t length = 0; length + 1 < bytes.size(); ++length) {
        const Result<Project> read = fromBytes(std::string_view(bytes).substr(0, length));
        ASSERT_FALSE(read.ok()) << "cut to " << length << " bytes";
    }
}

TEST(BadProjectFile, withBytesChangedIsRefusedOrStillValid) {
    EXPECT_TRUE(rc::check([] {
        std::string bytes = goodBytes();
        const int times = *rc::gen::inRange(1, 5);
        for (int i = 0; i < times; ++i) {
            const auto at = *rc::gen::resize(1000, rc::gen::inRange<std::size_t>(0, bytes.size()));
            if (*rc::gen::arbitrary<bool>()) {
                bytes[at] = *rc::gen::resize(1000, rc::gen::arbitrary<char>());
            } else {
                bytes[at] =
                    *rc::gen::element('0', '9', '-', 'e', '"', ',', '[', ']', '{', '}', ' ');
            }
        }
        const Result<Project> read = fromBytes(bytes);
        if (read.ok()) {
            RC_ASSERT(faults(*read).empty());
            RC_ASSERT(fromBytes(toBytes(*read)).ok());
        } else {
            RC_ASSERT(!read.fault().entry.empty());
            RC_ASSERT(!read.fault().rule.empty());
        }
    }));
}

}  // namespace
}  // namespace kerfwright
