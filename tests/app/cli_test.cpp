// The command line, called in this process.
#include "app/cli.h"
#include "core/bench/job.h"
#include "core/bench/standing.h"
#include "core/board/patterns.h"
#include "tests/app/folder.h"

#include <QBuffer>
#include <QImage>
#include <QXmlStreamReader>

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <set>
#include <sstream>

namespace kerfwright {
namespace {

namespace fs = std::filesystem;
using testing::HasSubstr;
using testing::IsEmpty;
using Json = nlohmann::json;

struct Called {
    int code = -1;
    std::string out;
    std::string err;
};

Called call(const std::vector<std::string>& arguments) {
    std::ostringstream out;
    std::ostringstream err;
    const Understood understood = understand(arguments, out, err);
    int code = understood.code;
    if (understood.request) {
        code = carryOut(*understood.request, out, err);
    }
    return {code, out.str(), err.str()};
}

Request requestOf(const std::vector<std::string>& arguments) {
    std::ostringstream said;
    const Understood understood = understand(arguments, said, said);
    EXPECT_TRUE(understood.request.has_value()) << said.str();
    return understood.request.value_or(Request{});
}

Project someProject(Unit unit = Unit::Millimetres) {
    Project project = newProject(unit);
    project.titles.name = "Hut board <1> & more";
    return project;
}

// ---------------------------------------------------------------------------------- understanding

TEST(Understand, EveryCommand) {
    EXPECT_EQ(requestOf({}).command, Command::Window);
    EXPECT_EQ(requestOf({}).file, "");
    EXPECT_EQ(requestOf({"a.kerfwright"}).command, Command::Window);
    EXPECT_EQ(requestOf({"a.kerfwright"}).file, "a.kerfwright");

    const Request plan = requestOf({"plan", "a.kerfwright", "--json"});
    EXPECT_EQ(plan.command, Command::Plan);
    EXPECT_EQ(plan.file, "a.kerfwright");
    EXPECT_TRUE(plan.json);
    EXPECT_FALSE(requestOf({"plan", "a"}).json);
    EXPECT_FALSE(plan.paints());

    const Request sheets =
        requestOf({"sheets", "a", "--out", "b", "--format", "svg", "--paper", "letter"});
    EXPECT_EQ(sheets.command, Command::Sheets);
    EXPECT_EQ(sheets.out, "b");
    EXPECT_EQ(sheets.format, SheetFormat::Svg);
    EXPECT_EQ(sheets.paper, Paper::Letter);
    EXPECT_TRUE(sheets.paints());
    EXPECT_EQ(requestOf({"sheets", "a", "--out", "b"}).format, SheetFormat::Pdf);
    EXPECT_EQ(requestOf({"sheets", "a", "--out", "b"}).paper, std::nullopt);

    const Request picture = requestOf({"picture", "a", "--out", "b.PNG", "--scale", "2.5"});
    EXPECT_EQ(picture.command, Command::Picture);
    EXPECT_EQ(picture.scale, 2.5);
    EXPECT_TRUE(picture.paints());

    EXPECT_EQ(requestOf({"check", "a"}).command, Command::Check);

    const Request quote = requestOf({"quote", "a", "--json"});
    EXPECT_EQ(quote.command, Command::Quote);
    EXPECT_TRUE(quote.json);
    EXPECT_FALSE(quote.paints());
    const Request handed = requestOf({"quote", "a", "--out", "b.PDF", "--paper", "letter"});
    EXPECT_EQ(handed.out, "b.PDF");
    EXPECT_EQ(handed.paper, Paper::Letter);
    EXPECT_FALSE(handed.forMaker);
    EXPECT_TRUE(handed.paints());
    EXPECT_TRUE(requestOf({"quote", "a", "--out", "b.pdf", "--for", "maker"}).forMaker);
}

TEST(Understand, HelpAndVersionAreNoErrors) {
    for (const char* flag : {"--help", "-h"}) {
        const Called help = call({flag});
        EXPECT_EQ(help.code, Done);
        EXPECT_THAT(help.err, IsEmpty());
        for (const char* word : {"plan", "sheets", "quote", "picture", "check", "FILE"}) {
            EXPECT_THAT(help.out, HasSubstr(word));
        }
    }
    EXPECT_THAT(call({"sheets", "--help"}).out, HasSubstr("--paper"));
    EXPECT_EQ(call({"--version"}).out, "kerfwright " KERFWRIGHT_VERSION "\n");
}

TEST(Understand, WrongUsageEndsWithTwoAndSaysWhy) {
    const std::vector<std::vector<std::string>> wrong = {
        {"plan"},
        {"check"},
        {"sheets", "a.kerfwright"},
        {"picture", "a.kerfwright"},
        {"sheets", "--out", "b.pdf"},
        {"sheets", "a", "--out", "b", "--format", "docx"},
        {"sheets", "a", "--out", "b", "--paper", "a3"},
        {"sheets", "a", "--out"},
        {"picture", "a", "--out", "b.gif"},
        {"picture", "a", "--out", ".png"},
        {"picture", "a", "--out", "b.png", "--scale", "big"},
        {"picture", "a", "--out", "b.png", "--scale", "0"},
        {"picture", "a", "--out", "b.png", "--scale", "-3"},
        {"picture", "a", "--out", "b.png", "--scale", "nan"},
        {"plan", "a", "b"},
        {"a", "b"},
        {"plan", "a", "--yaml"},
        {"--frobnicate"},
        {"plan", "a", "check", "b"},
        {"quote"},
        {"quote", "a", "--out", "b.svg"},
        {"quote", "a", "--out", "b.pdf", "--json"},
        {"quote", "a", "--for", "maker"},
        {"quote", "a", "--paper", "a4"},
        {"quote", "a", "--out", "b.pdf", "--for", "neighbour"},
    };
    for (const auto& arguments : wrong) {
        const Called called = call(arguments);
        EXPECT_EQ(called.code, Usage) << testing::PrintToString(arguments);
        EXPECT_THAT(called.out, IsEmpty()) << testing::PrintToString(arguments);
        EXPECT_FALSE(called.err.empty()) << testing::PrintToString(arguments);
    }
}

TEST(Understand, AMistypedCommandIsToldTheCommands) {
    const Called called = call({"frobnicate", "a.kerfwright"});
    EXPECT_EQ(called.code, Usage);
    EXPECT_THAT(called.err, HasSubstr("“frobnicate” is no command"));
    EXPECT_THAT(called.err, HasSubstr("plan, sheets, quote, picture, check, timber and rack"));
    EXPECT_THAT(call({"plan", "a", "--yaml"}).err, testing::Not(HasSubstr("is no command")));
}

TEST(MayOpenWindow, NamesAMissingFileBeforeAMissingDisplay) {
    const auto told = [](const std::string& file, bool display) {
        std::ostringstream err;
        Request request;
        request.file = file;
        const bool may = mayOpenWindow(request, display, err);
        EXPECT_EQ(may, err.str().empty());
        return err.str();
    };
    EXPECT_EQ(told("none/board.kerfwright", false),
              "kerfwright: none/board.kerfwright: there is no such file.\n");
    EXPECT_EQ(told("none/board.kerfwright", true), "") << "the window tells of it";
    for (const bool display : {false, true}) {
        EXPECT_EQ(
            told("frobnicate", display),
            "kerfwright: frobnicate: there is no such file, and no such command; the "
            "commands are plan, sheets, quote, picture, check, timber and rack; see --help.\n");
    }
    EXPECT_THAT(told("", false), HasSubstr("no display"));
    EXPECT_EQ(told("", true), "");
    const Folder folder;
    const std::string file = folder.write("a.kerfwright", someProject());
    EXPECT_THAT(told(file, false), HasSubstr("no display"));
    EXPECT_EQ(told(file, true), "");
}

TEST(Check, NamesAFileThatCannotBeReadOnce) {
    const Folder folder;
    EXPECT_EQ(
        call({"check", folder.path("")}).err.find("kerfwright: " + folder.path("") + ": must"), 0u);
    EXPECT_EQ(call({"check", "none/x.kerfwright"}).err,
              "kerfwright: none/x.kerfwright: there is no such file.\n");
}

// --------------------------------------------------------------------------------------- carrying
// out

TEST(Plan, ComparesAllWaysToGlueABoard) {
    Folder folder;
    const std::string file = folder.write("a.kerfwright", someProject());
    const Called text = call({"plan", file, "--all"});
    EXPECT_EQ(text.code, Done) << text.err;
    EXPECT_THAT(text.out, HasSubstr("Ways to glue"));
    EXPECT_THAT(text.out, HasSubstr("glue-ups  loads"));
    EXPECT_THAT(text.out, HasSubstr("Odd and even"));
    const Called json = call({"plan", file, "--all", "--json"});
    EXPECT_EQ(json.code, Done) << json.err;
    const auto ways = nlohmann::json::parse(json.out);
    EXPECT_EQ(ways.at("format"), "kerfwright-ways");
    ASSERT_FALSE(ways.at("ways").empty());
    for (const auto& way : ways.at("ways")) {
        EXPECT_GE(way.at("glueUps").get<int>(), 1);
        EXPECT_GT(way.at("handsOnMinutes").get<int>(), 0);
    }
}

TEST(Plan, IsTextForTheMaker) {
    const Folder folder;
    const Called called = call({"plan", folder.write("a.kerfwright", someProject())});
    EXPECT_EQ(called.code, Done);
    EXPECT_THAT(called.err, IsEmpty());
    // Derived for the board that a new project holds: 8 × 8 squares of 50 mm, kerf 3.2 mm.
    for (const char* words :
         {"Hut board <1> & more", "480 × 480 mm", "Glue panel A", "stop: 38 mm board thickness",
          "3 mm flattening the field = 41 mm", "A-3 (flipped)", "hands on, 4 days in 4 sessions",
          "Sessions at the bench\n  day 1, ", "steps 3–8; once the glue of step 2 has set",
          "Cautions"}) {
        EXPECT_THAT(called.out, HasSubstr(words));
    }
}

TEST(Plan, AsJsonSaysTheSameInNumbers) {
    const Folder folder;
    const Called called = call({"plan", folder.write("a.kerfwright", someProject()), "--json"});
    ASSERT_EQ(called.code, Done) << called.err;
    const Json plan = Json::parse(called.out);
    EXPECT_EQ(plan["format"], "kerfwright-plan");
    EXPECT_EQ(plan["version"], 1);
    EXPECT_EQ(plan["project"]["name"], "Hut board <1> & more");
    // A chequer with an even number of rows takes two glue-ups: every other slice is flipped.
    EXPECT_EQ(plan["glueUps"], 2);
    ASSERT_EQ(plan["panels"].size(), 1u);
    ASSERT_EQ(plan["strips"].size(), 8u);
    EXPECT_EQ(plan["strips"][1]["milled"]["width"]["nm"], 50'000'000);
    EXPECT_EQ(plan["strips"][1]["milled"]["width"]["text"], "50 mm");
    EXPECT_EQ(plan["woods"][0]["pieces"], 32);
    EXPECT_TRUE(plan["proof"]["ok"]);
    EXPECT_TRUE(plan["board"]["grain"].is_null());
    EXPECT_EQ(plan["climate"]["place"], "heated-inland");
    EXPECT_EQ(plan["glue"]["glue-spread"], 175);
    EXPECT_EQ(plan["purpose"]["use"], "unsaid");
    EXPECT_EQ(plan["season"]["dampest"]["moisture"], 10);
    EXPECT_GT(plan["season"]["dampest"]["width"][0], 0);
    EXPECT_LT(plan["season"]["driest"]["width"][1], 0);
    EXPECT_TRUE(plan["season"]["driest"]["gapX"].is_null());
    EXPECT_TRUE(plan["totals"]["cost"].is_null());
    EXPECT_TRUE(std::any_of(plan["cautions"].begin(), plan["cautions"].end(), [](const auto& one) {
        return one["key"] == "border-moves" && one["place"]["border"] == true &&
               one["remedies"].size() == 3;
    }));
    EXPECT_EQ(plan["totals"]["width"]["nm"], 480'000'000);

    std::vector<std::string> kinds;
    int number = 0;
    for (const Json& step : plan["steps"]) {
        EXPECT_EQ(step["number"], ++number);
        EXPECT_FALSE(step["title"].get<std::string>().empty());
        kinds.push_back(step["kind"]);
    }
    EXPECT_EQ(kinds, (std::vector<std::string>{"mill", "glue", "flatten", "square-end", "crosscut",
                                               "flatten", "crosscut", "glue", "flatten", "trim",
                                               "mill", "cut-rails", "border"}));
}

/// Calls `look` with every figure (an object with a working) below `json`.
template <class Look>
void forEachFigure(const Json& json, const Look& look) {
    if (json.is_object() && json.contains("working")) {
        look(json);
    } else if (json.is_structured()) {
        for (const auto& below : json) {
            forEachFigure(below, look);
        }
    }
}

TEST(Plan, TimesInTheJsonAddUp) {
    const Folder folder;
    const Called called = call({"plan", folder.write("a.kerfwright", someProject()), "--json"});
    ASSERT_EQ(called.code, Done) << called.err;
    const Json plan = Json::parse(called.out);
    const Json& hours = plan["hours"];
    EXPECT_EQ(plan["rates"]["coats"], 2);
    EXPECT_EQ(hours["days"], 4);
    ASSERT_EQ(hours["tasks"].size(), plan["steps"].size() + 3) << "sanding and two coats";
    double all = 0;
    for (const Json& task : hours["tasks"]) {
        double minutes = 0;
        for (const Json& term : task["terms"]) {
            minutes += term["count"].get<double>() * term["each"].get<double>();
            const auto key = term["setting"].get<std::string>();
            EXPECT_TRUE(plan["rates"].contains(key) || plan["glue"].contains(key)) << key;
        }
        EXPECT_NEAR(task["minutes"].get<double>(), minutes, 1e-9);
        EXPECT_FALSE(task["waitMinutes"].is_null());
        all += minutes;
    }
    EXPECT_NEAR(hours["minutes"].get<double>(), all, 1e-6);
    EXPECT_EQ(hours["tasks"][1]["wait"], "glue");
    EXPECT_EQ(hours["tasks"][1]["waitMinutes"], 720);
    EXPECT_EQ(hours["sessions"][1]["tasks"][0], 3);
    EXPECT_EQ(hours["sessions"][1]["waitsFor"][0], 2);
}

TEST(Plan, EveryFigureInTheJsonIsTheSumOfItsWorking) {
    const Folder folder;
    const Called called =
        call({"plan", folder.write("a.kerfwright", someProject(Unit::Inches)), "--json"});
    ASSERT_EQ(called.code, Done) << called.err;
    const Json plan = Json::parse(called.out);
    int figures = 0;
    forEachFigure(plan, [&](const Json& figure) {
        std::int64_t sum = 0;
        for (const Json& term : figure["working"]) {
            sum += term["nm"].get<std::int64_t>() * term["times"].get<std::int64_t>();
            EXPECT_FALSE(term["term"].get<std::string>().empty());
            if (!term["setting"].is_null()) {
                EXPECT_TRUE(plan["shop"].contains(term["setting"].get<std::string>()))
                    << term.dump();
            }
        }
        EXPECT_EQ(sum, figure["nm"].get<std::int64_t>()) << figure.dump();
        ++figures;
    });
    EXPECT_GT(figures, 60);
}

TEST(Plan, TheLedgerInTheJsonCloses) {
    const Folder folder;
    const Called called = call({"plan", folder.write("a.kerfwright", someProject()), "--json"});
    ASSERT_EQ(called.code, Done) << called.err;
    const Json ledger = Json::parse(called.out)["ledger"];
    // 25 digits: 128-bit numbers are texts. Two halves of them fit into 64 bits.
    const auto split = [](const std::string& digits) {
        const std::size_t low = std::min<std::size_t>(digits.size(), 15);
        const std::string high = digits.substr(0, digits.size() - low);
        return std::pair<long long, long long>(high.empty() ? 0 : std::stoll(high),
                                               std::stoll(digits.substr(digits.size() - low)));
    };
    long long high = 0;
    long long low = 0;
    for (const char* part : {"board", "kerf", "planed", "trimmed", "spare", "offcut"}) {
        const auto [partHigh, partLow] = split(ledger[part]["nm3"]);
        high += partHigh;
        low += partLow;
    }
    constexpr long long base = 1'000'000'000'000'000;
    high += low / base;
    low %= base;
    EXPECT_EQ((std::pair<long long, long long>(high, low)), split(ledger["timberIn"]["nm3"]));
    EXPECT_GT(high, 0);
}

TEST(Check, ListsCautionsAndEndsWithZero) {
    const Folder folder;
    const Called called = call({"check", folder.write("a.kerfwright", someProject())});
    EXPECT_EQ(called.code, Done);
    EXPECT_THAT(called.err, IsEmpty());
    EXPECT_THAT(called.out, HasSubstr("virtual bench"));
    EXPECT_THAT(called.out, HasSubstr("2 glue-ups"));
    EXPECT_THAT(called.out, HasSubstr("danger, step 13: A border of long grain"));
}

TEST(SeenTo, IsToldInTextAndJsonAndChangesNoExitCode) {
    const Folder folder;
    Project project = newProject(Unit::Millimetres);
    project.board.border.design = BorderDesign::FixedFrame;
    const Result<Job> made =
        makeJob(project.board, project.woods, project.shop, project.choices, project.notation,
                {project.climate, project.glue, project.purpose, project.rates});
    ASSERT_TRUE(made.ok());
    ASSERT_GE(made->cautions.size(), 2U);
    seeTo(project.seenTo, made->cautions[0]);
    Caution lapsed = made->cautions[1];
    lapsed.said.push_back(fact("another", 1));
    seeTo(project.seenTo, lapsed);
    const std::string file = folder.write("a.kerfwright", toBytes(project));

    const Called checked = call({"check", file});
    EXPECT_EQ(checked.code, Done);
    EXPECT_THAT(checked.out, HasSubstr(" (seen to): " + made->cautions[0].title));
    EXPECT_THAT(checked.out,
                HasSubstr(" (was seen to before its numbers changed): " + made->cautions[1].title));
    const Called text = call({"plan", file});
    EXPECT_EQ(text.code, Done);
    EXPECT_THAT(text.out, HasSubstr("Cautions (" + std::to_string(made->cautions.size() - 1) +
                                    " open · 1 seen to)\n"));
    EXPECT_THAT(text.out, HasSubstr(" (seen to): " + made->cautions[0].title));
    const Called json = call({"plan", file, "--json"});
    EXPECT_EQ(json.code, Done);
    const Json plan = Json::parse(json.out);
    ASSERT_EQ(plan["cautions"].size(), made->cautions.size());
    for (std::size_t i = 0; i < plan["cautions"].size(); ++i) {
        EXPECT_EQ(plan["cautions"][i]["seenTo"], i == 0);
        EXPECT_EQ(plan["cautions"][i]["seenToBefore"], i == 1);
    }
}

TEST(Check, EverySamplePasses) {
    EXPECT_GE(samples().size(), 6u);
    for (const std::string& sample : samples()) {
        const Called called = call({"check", sample});
        EXPECT_EQ(called.code, Done) << called.err;
        EXPECT_THAT(called.out, HasSubstr("gives the wished board")) << sample;
    }
}

// ISO 216: A4 is 210 × 297 mm; ANSI A (Letter) is 8 1/2 × 11 in. A PDF point is 1/72 in.
TEST(Sheets, TakeThePaperOfTheProjectsUnits) {
    const Folder folder;
    const std::string metric = folder.write("m.kerfwright", someProject());
    const std::string inches = folder.write("i.kerfwright", someProject(Unit::Inches));
    const std::string pdf = folder.path("out.pdf");
    const auto size = [&] { return runShell("pdfinfo " + pdf + " | grep 'Page size'").said; };

    EXPECT_EQ(call({"sheets", metric, "--out", pdf}).code, Done);
    EXPECT_THAT(size(), HasSubstr("595 x 842"));
    EXPECT_EQ(call({"sheets", inches, "--out", pdf}).code, Done);
    EXPECT_THAT(size(), HasSubstr("612 x 792"));
    EXPECT_EQ(call({"sheets", inches, "--out", pdf, "--paper", "a4"}).code, Done);
    EXPECT_THAT(size(), HasSubstr("595 x 842"));
}

TEST(Sheets, AsSvgAreOneFileASheet) {
    const Folder folder;
    const std::string file = folder.write("a.kerfwright", someProject());
    const Called called =
        call({"sheets", file, "--out", folder.path("new/sheets"), "--format", "svg"});
    EXPECT_EQ(called.code, Done) << called.err;
    std::vector<std::string> names;
    for (const auto& entry : fs::directory_iterator(folder.path("new/sheets"))) {
        names.push_back(entry.path().filename().string());
        QXmlStreamReader reader(QByteArray::fromStdString(bytesOf(entry.path())));
        bool svg = false;
        while (!reader.atEnd()) {
            svg = reader.readNext() == QXmlStreamReader::StartElement &&
                          reader.name() == QStringLiteral("svg")
                      ? true
                      : svg;
        }
        EXPECT_FALSE(reader.hasError()) << entry.path() << reader.errorString().toStdString();
        EXPECT_TRUE(svg) << entry.path();
        EXPECT_THAT(called.out, HasSubstr(entry.path().filename().string()));
    }
    std::sort(names.begin(), names.end());
    ASSERT_GE(names.size(), 6u);
    EXPECT_EQ(names.front(), "01-overview.svg");
}

/// Everything has a price, and the rack holds one plank of each wood.
Project pricedProject() {
    Project project = someProject();
    project.currency = "€";
    project.pricing.benchHour = 4000;
    project.pricing.glueKilogram = 1200;
    project.pricing.finishLitre = 2400;
    project.pricing.customer = "The hut";
    for (Wood& wood : project.woods) {
        wood.price = {150'000};
        project.timber.rack.planks.push_back(
            {"P" + std::to_string(project.timber.rack.planks.size() + 1),
             wood.key,
             Length::mm(52),
             Length::mm(120),
             Length::mm(1000),
             {},
             990});
    }
    return project;
}

TEST(Quote, CountsPlanksOfTheRackAndPlanksToBuy) {
    const Folder folder;
    const Called called = call({"quote", folder.write("a.kerfwright", pricedProject()), "--json"});
    ASSERT_EQ(called.code, Done) << called.err;
    const Json quote = Json::parse(called.out);
    EXPECT_EQ(quote["format"], "kerfwright-quote");
    EXPECT_EQ(quote["complete"], true) << quote["missing"];
    std::int64_t sum = 0, timber = 0;
    std::string words;
    for (const Json& line : quote["lines"]) {
        const std::int64_t amount = line["amount"]["hundredths"];
        if (line["sum"] == true) {
            EXPECT_EQ(amount, sum) << line["key"];
            continue;
        }
        sum += amount;
        if (line["key"] == "timber") {
            timber += amount;
            words += line["words"].get<std::string>() + "\n";
        }
    }
    EXPECT_EQ(quote["totals"]["total"]["hundredths"], sum);
    EXPECT_THAT(words, HasSubstr("from the rack: 1 plank, P"));
    EXPECT_THAT(words, HasSubstr("bought"));
    // Whole planks cost more than the rough strips alone.
    Project bare = pricedProject();
    bare.timber.rack.planks.clear();
    const Json plan = Json::parse(call({"plan", folder.write("b.kerfwright", bare), "--json"}).out);
    EXPECT_GT(timber, plan["totals"]["cost"]["hundredths"].get<std::int64_t>());
}

TEST(Quote, AsTextSaysWhatIsMissing) {
    const Folder folder;
    const Called called = call({"quote", folder.write("a.kerfwright", someProject())});
    ASSERT_EQ(called.code, Done) << called.err;
    EXPECT_THAT(called.out, HasSubstr("Hut board <1> & more: what to ask for 1 board\n"));
    EXPECT_THAT(called.out, HasSubstr("Incomplete. Missing: the price of Wenge, the price of"));
    EXPECT_THAT(called.out, HasSubstr("the price of a bench hour"));
    EXPECT_THAT(call({"quote", folder.write("b.kerfwright", pricedProject())}).out,
                testing::Not(HasSubstr("Incomplete")));
}

TEST(Quote, AsPdfIsForTheCustomerOrForTheMaker) {
    const Folder folder;
    const std::string file = folder.write("a.kerfwright", pricedProject());
    const auto words = [&](const std::vector<std::string>& more) {
        const std::string pdf = folder.path("quote.pdf");
        std::vector<std::string> arguments{"quote", file, "--out", pdf};
        arguments.insert(arguments.end(), more.begin(), more.end());
        const Called called = call(arguments);
        EXPECT_EQ(called.code, Done) << called.err;
        EXPECT_EQ(called.out, pdf + "\n");
        EXPECT_THAT(called.err, IsEmpty());
        const Ended text = runShell("pdftotext -layout '" + pdf + "' -");
        EXPECT_EQ(text.code, 0) << text.said;
        return text.said;
    };
    const std::string handed = words({});
    EXPECT_THAT(handed, HasSubstr("The hut"));
    EXPECT_THAT(handed, testing::Not(HasSubstr("Overhead")));
    const std::string reckoning = words({"--for", "maker", "--paper", "letter"});
    EXPECT_THAT(reckoning, HasSubstr("Overhead"));
    const Json quote = Json::parse(call({"quote", file, "--json"}).out);
    const std::string total = quote["totals"]["total"]["text"];
    EXPECT_THAT(handed, HasSubstr(total));
    EXPECT_THAT(reckoning, HasSubstr(total));
    // Written all the same where a price is not known, but not without a word.
    const Called lacking = call({"quote", folder.write("b.kerfwright", someProject()), "--out",
                                 folder.path("lacking.pdf")});
    EXPECT_EQ(lacking.code, Done);
    EXPECT_THAT(lacking.err, HasSubstr("kerfwright: Incomplete. Missing:"));
}

TEST(Picture, IsAsLargeAsTheScaleSays) {
    const Folder folder;
    const std::string file = folder.write("a.kerfwright", someProject());
    const std::string png = folder.path("a.png");
    EXPECT_EQ(call({"picture", file, "--out", png, "--scale", "2"}).code, Done);
    const QImage image(QString::fromStdString(png));
    EXPECT_NEAR(image.width(), 960, 4);  // 480 mm at 2 pixels per mm
    EXPECT_NEAR(image.height(), 960, 4);

    const std::string svg = folder.path("a.svg");
    EXPECT_EQ(call({"picture", file, "--out", svg}).code, Done);
    EXPECT_THAT(bytesOf(svg), HasSubstr("<svg"));
}

TEST(Picture, ShowsTheFigureOfTheWoodsUnlessAskedForPlainOnes) {
    const Folder folder;
    const std::string file = folder.write("a.kerfwright", someProject());
    const auto colours = [&](std::vector<std::string> more) {
        const std::string png = folder.path("a.png");
        more.insert(more.begin(), {"picture", file, "--out", png, "--scale", "2"});
        EXPECT_EQ(call(more).code, Done);
        const QImage image(QString::fromStdString(png));
        std::set<QRgb> all;
        for (int x = 0; x < image.width(); ++x) {
            all.insert(image.pixel(x, image.height() / 2 + 7));
        }
        return all.size();
    };
    EXPECT_GT(colours({}), 60u);
    EXPECT_LT(colours({"--plain"}), 12u);
}

TEST(Picture, RefusesAScaleThatWouldNotFitIntoMemory) {
    const Folder folder;
    const std::string file = folder.write("a.kerfwright", someProject());
    const Called called = call({"picture", file, "--out", folder.path("a.png"), "--scale", "100"});
    EXPECT_EQ(called.code, Problem);
    EXPECT_THAT(called.err, HasSubstr("Scale"));
    EXPECT_FALSE(fs::exists(folder.path("a.png")));
}

TEST(Output, ThatCannotBeWrittenIsAProblemWithItsPath) {
    const Folder folder;
    const std::string file = folder.write("a.kerfwright", someProject());
    folder.write("taken", "a file where a folder should be");
    fs::create_directory(folder.path("folder.png"));
    const std::vector<std::vector<std::string>> calls = {
        {"sheets", file, "--out", folder.path("none/here.pdf")},
        {"picture", file, "--out", folder.path("none/here.png")},
        {"picture", file, "--out", folder.path("none/here.svg")},
        {"picture", file, "--out", folder.path("folder.png")},
        {"sheets", file, "--out", folder.path("taken"), "--format", "svg"},
        {"sheets", file, "--out", folder.path("taken/below"), "--format", "svg"},
    };
    for (const auto& arguments : calls) {
        const Called called = call(arguments);
        EXPECT_EQ(called.code, Problem) << testing::PrintToString(arguments);
        EXPECT_THAT(called.err, HasSubstr(arguments[3])) << testing::PrintToString(arguments);
        EXPECT_THAT(called.out, IsEmpty());
    }
    EXPECT_EQ(bytesOf(folder.path("taken")), "a file where a folder should be");
}

TEST(Output, IsTheSameEveryTime) {
    const Folder folder;
    const std::string file = folder.write("a.kerfwright", someProject());
    const auto twice = [&](const std::vector<std::string>& arguments, const std::string& end) {
        std::string bytes[2];
        for (std::string& one : bytes) {
            const std::string out = folder.path("out" + end);
            std::vector<std::string> all = arguments;
            all.insert(all.end(), {"--out", out});
            EXPECT_EQ(call(all).code, Done);
            one = bytesOf(out);
            fs::remove(out);
        }
        EXPECT_FALSE(bytes[0].empty());
        EXPECT_TRUE(bytes[0] == bytes[1]) << end;
    };
    twice({"sheets", file}, ".pdf");
    twice({"picture", file}, ".svg");
    twice({"picture", file}, ".png");
    EXPECT_EQ(call({"plan", file, "--json"}).out, call({"plan", file, "--json"}).out);
}

// ---------------------------------------------------------------------------------------- bad
// input

/// One bad project file, and a word that the message must say.
struct Bad {
    std::string what;
    std::string bytes;
    std::string word;
};

std::vector<Bad> badFiles() {
    const Project good = newProject(Unit::Millimetres);
    const std::string bytes = toBytes(good);
    const auto changed = [&](const char* pointer, const Json& value) {
        auto json = nlohmann::ordered_json::parse(bytes);
        json[nlohmann::ordered_json::json_pointer(pointer)] = value;
        return json.dump();
    };
    const auto without = [&](const char* parent, const char* key) {
        auto json = nlohmann::ordered_json::parse(bytes);
        json[nlohmann::ordered_json::json_pointer(parent)].erase(key);
        return json.dump();
    };
    std::vector<std::int64_t> manyColumns(10'000, 10'000'000);
    return {
        {"empty", "", ""},
        {"blank", "   \n", ""},
        {"truncated", bytes.substr(0, bytes.size() / 2), ""},
        {"not JSON", "a board, please", ""},
        {"bytes",
         std::string("\x7f"
                     "ELF\x00\x01\xff\xfe",
                     8),
         ""},
        {"a list", "[]", ""},
        {"a number", "7", ""},
        {"deep", std::string(100'000, '['), ""},
        {"no format", without("", "format"), "format"},
        {"another format", changed("/format", "kerfwright-plan"), "format"},
        {"no version", without("", "version"), "version"},
        {"newer", changed("/version", 2), "version"},
        {"much newer", changed("/version", 4'000'000'000), "version"},
        {"version zero", changed("/version", 0), "version"},
        {"negative thickness", changed("/board/thickness-nm", -1), "hickness"},
        {"zero thickness", changed("/board/thickness-nm", 0), "hickness"},
        {"huge thickness", changed("/board/thickness-nm", std::int64_t{1} << 62), "hickness"},
        {"beyond 64 bits", changed("/board/thickness-nm", 1e30), "hickness"},
        {"half a nanometre", changed("/board/thickness-nm", 38'000'000.5), "hickness"},
        {"thickness as text", changed("/board/thickness-nm", "38 mm"), "hickness"},
        {"no thickness", without("/board", "thickness-nm"), "hickness"},
        {"zero kerf", changed("/shop/kerf-nm", 0), "erf"},
        {"negative kerf", changed("/shop/kerf-nm", -3'200'000), "erf"},
        {"no kerf", without("/shop", "kerf-nm"), "erf"},
        {"a row of no height", changed("/board/field/rows-nm/0", 0), "ow"},
        {"a negative column", changed("/board/field/columns-nm/3", -50'000'000), "olumn"},
        {"no columns", changed("/board/field/columns-nm", Json::array()), "olumn"},
        {"10 000 columns", changed("/board/field/columns-nm", manyColumns), "olumn"},
        {"no pieces", changed("/board/field/pieces", Json::array()), "iece"},
        {"overlapping pieces", changed("/board/field/pieces/1/0", 0), "iece"},
        {"a piece outside", changed("/board/field/pieces/0/2", 100), "iece"},
        {"an unknown wood", changed("/board/field/pieces/0/4", "moonwood"), "moonwood"},
        {"an unknown border wood", changed("/board/border/wood", "moonwood"), "moonwood"},
        {"no woods", changed("/woods", Json::array()), "ood"},
        {"spare slices beyond count", changed("/shop/spare-slices", 1'000'000), "pare"},
        {"an unknown build", changed("/board/build", "sideways"), "sideways"},
        {"pieces as a text", changed("/board/field/pieces", "all of them"), "iece"},
        {"null board", changed("/board", nullptr), "board"},
    };
}

TEST(BadInput, IsAProblemThatNamesTheFileAndTheEntry) {
    const Folder folder;
    for (const Bad& bad : badFiles()) {
        const std::string file = folder.write("bad.kerfwright", bad.bytes);
        for (const std::vector<std::string>& arguments :
             {std::vector<std::string>{"check", file},
              {"plan", file, "--json"},
              {"sheets", file, "--out", folder.path("out.pdf")},
              {"picture", file, "--out", folder.path("out.png")}}) {
            const Called called = call(arguments);
            EXPECT_EQ(called.code, Problem) << bad.what;
            EXPECT_THAT(called.out, IsEmpty()) << bad.what;
            EXPECT_THAT(called.err, HasSubstr("bad.kerfwright")) << bad.what;
            EXPECT_THAT(called.err, HasSubstr(bad.word)) << bad.what;
            EXPECT_LT(called.err.size(), 600u) << bad.what;
        }
        EXPECT_EQ(bytesOf(file), bad.bytes) << bad.what;
    }
    EXPECT_FALSE(fs::exists(folder.path("out.pdf")));
    EXPECT_FALSE(fs::exists(folder.path("out.png")));
}

TEST(BadInput, AFileThatIsNotThereOrNoFile) {
    const Folder folder;
    for (const std::string& file : {folder.path("nothing.kerfwright"), folder.path()}) {
        const Called called = call({"check", file});
        EXPECT_EQ(called.code, Problem) << file;
        EXPECT_THAT(called.err, HasSubstr(file));
    }
}

TEST(BadInput, ABoardThatNoTimberGivesIsAProblem) {
    Project project = someProject();
    project.shop.longestStrip = Length::mm(300);
    const Folder folder;
    const Called called = call({"check", folder.write("a.kerfwright", project)});
    EXPECT_EQ(called.code, Problem);
    EXPECT_THAT(called.err, HasSubstr("300 mm"));
}

}  // namespace
}  // namespace kerfwright
