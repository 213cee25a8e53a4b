// The paper against the plan: what a maker reads on the cut sheets is what `plan --json` says. The
// PDF is read by poppler, which knows nothing of this program.
#include "app/cli.h"
#include "tests/app/folder.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <cctype>
#include <map>
#include <regex>
#include <sstream>

namespace kerfwright {
namespace {

using Json = nlohmann::json;
using testing::HasSubstr;

/// The text of all pages that share a heading, "(continued)" pages included.
using Sections = std::map<std::string, std::string>;

/// Poppler keeps the ligatures and hard spaces of the font.
std::string plain(std::string text) {
    static const std::pair<const char*, const char*> signs[] = {
        {"\ufb00", "ff"}, {"\ufb01", "fi"}, {"\ufb02", "fl"}, {"\u00a0", " "}, {"\u2009", " "}};
    for (const auto& [sign, letters] : signs) {
        const std::string from = sign;
        for (std::size_t at = 0; (at = text.find(from, at)) != std::string::npos;) {
            text.replace(at, from.size(), letters);
        }
    }
    return text;
}

/// Pages in two ways: as they lie, where columns stand side by side and wide gaps divide them, and
/// as they run, where a sentence goes on after the end of its line.
std::vector<std::string> pagesOf(const std::string& pdf) {
    static const std::regex gap(" {2,}");
    static const std::regex lineEnd("\n");
    const auto pages = [&](const std::string& how) {
        const Ended text = runShell("pdftotext " + how + " '" + pdf + "' -");
        EXPECT_EQ(text.code, 0) << text.said;
        std::vector<std::string> all;
        std::istringstream in(plain(text.said));
        for (std::string page; std::getline(in, page, '\f');) {
            all.push_back(page);
        }
        return all;
    };
    std::vector<std::string> lying = pages("-layout");
    const std::vector<std::string> running = pages("");
    EXPECT_EQ(lying.size(), running.size());
    for (std::size_t i = 0; i < lying.size() && i < running.size(); ++i) {
        lying[i] = std::regex_replace(lying[i], gap, " | ") + "\n" +
                   std::regex_replace(running[i], lineEnd, " ");
    }
    return lying;
}

Sections read(const std::string& pdf) {
    // "Slice panel A | Tarn Hut Joinery", "Glue panel A (continued)", "Machine settings (continu…"
    static const std::regex heading("(?:^|\n) ?(Overview|Cut list|Glue panel \\w+|Slice panel "
                                    "\\w+|Cut panel \\w+|Final glue-up|The field|Border|"
                                    "Time at the bench|Machine settings)\\b");
    Sections sections;
    for (const std::string& page : pagesOf(pdf)) {
        std::smatch found;
        if (!std::regex_search(page, found, heading)) {
            ADD_FAILURE() << "a sheet without a known heading: " << page.substr(0, 300);
            continue;
        }
        // A field of one slice is not glued; its sheet has the other name.
        sections[found[1] == "The field" ? "Final glue-up" : found[1].str()] += page + "\n";
    }
    return sections;
}

/// Whether `number` ("1 7/8", "43 mm") stands in the text as a whole: "43" is not found in "143",
/// "43.5" or "43/64", nor "7/8" in "1 7/8".
bool stands(const std::string& text, const std::string& number) {
    const auto digit = [](char c) { return std::isdigit(static_cast<unsigned char>(c)) != 0; };
    for (std::size_t at = text.find(number); at != std::string::npos;
         at = text.find(number, at + 1)) {
        const std::size_t end = at + number.size();
        const bool before =
            at > 0 && (digit(text[at - 1]) || text[at - 1] == '.' || text[at - 1] == '/' ||
                       (at > 1 && text[at - 1] == ' ' && digit(text[at - 2])));
        const bool after = end < text.size() &&
                           (digit(text[end]) || text[end] == '/' ||
                            (text[end] == '.' && end + 1 < text.size() && digit(text[end + 1])));
        if (!before && !after) {
            return true;
        }
    }
    return false;
}

std::string bare(const std::string& text) {
    static const std::regex unit(" (mm|in)$");
    return std::regex_replace(text, unit, "");
}

/// One project with its paper and its plan.
class Paper {
public:
    explicit Paper(const std::string& file)
        : file_(file) {
        const std::string pdf = folder_.path("sheets.pdf");
        call({"sheets", file, "--out", pdf});
        sections_ = read(pdf);
        plan = Json::parse(call({"plan", file, "--json"}));
    }

    /// The figure with its unit, or without where a table names the unit once.
    void has(const Json& figure, const std::string& heading, const Json& step) const {
        const std::string text = figure.at("text");
        ASSERT_TRUE(sections_.count(heading) > 0) << file_ << " has no sheet " << heading;
        const std::string& page = sections_.at(heading);
        EXPECT_TRUE(stands(page, text) || stands(page, bare(text)))
            << file_ << ": " << text << " of step " << step.at("number") << " (" << step.at("title")
            << ") is not on sheet " << heading;
        ++figures;
    }
    void says(const std::string& words, const std::string& heading) const {
        EXPECT_THAT(sections_.at(heading), HasSubstr(words)) << file_;
    }
    bool hasSection(const std::string& heading) const { return sections_.count(heading) > 0; }

    Json plan;
    mutable int figures = 0;

private:
    static std::string call(const std::vector<std::string>& arguments) {
        std::ostringstream out;
        std::ostringstream err;
        const Understood understood = understand(arguments, out, err);
        EXPECT_EQ(carryOut(understood.request.value_or(Request{}), out, err), Done) << err.str();
        return out.str();
    }

    Folder folder_;
    std::string file_;
    Sections sections_;
};

void compareStep(const Paper& paper, const Json& step) {
    const std::string kind = step.at("kind");
    const auto all = [&](const std::string& heading, std::initializer_list<const char*> keys) {
        for (const char* key : keys) {
            paper.has(step.at(key), heading, step);
        }
    };
    const auto settings = [&](std::initializer_list<const char*> keys) {
        all("Machine settings", keys);
    };
    // A stick whose lengths go into other panels is cut to lengths, not sliced.
    const auto cutUp = [&](const std::string& part) {
        const std::string lengths = "Cut panel " + part;
        return paper.hasSection(lengths) ? lengths : "Slice panel " + part;
    };
    if (kind == "mill") {
        for (const Json& line : step.at("lines")) {
            for (const char* state : {"rough", "milled"}) {
                for (const char* side : {"thickness", "width", "length"}) {
                    paper.has(line.at(state).at(side), "Cut list", step);
                }
            }
            for (const char* side : {"thickness", "width"}) {
                paper.has(line.at("milled").at(side), "Machine settings", step);
            }
        }
    } else if (kind == "glue" && !step.at("final").get<bool>()) {
        all("Glue panel " + step.at("result").get<std::string>(), {"thickness", "width", "length"});
    } else if (kind == "glue" || kind == "take") {
        all("Final glue-up", {"thickness", "width", "length"});
    } else if (kind == "flatten" && step.at("purpose") == "finished") {
        all("Final glue-up", {"to"});
        settings({"to"});
    } else if (kind == "flatten") {
        const std::string part = step.at("part");
        all(step.at("purpose") == "after-glue-up" ? "Glue panel " + part : cutUp(part), {"to"});
        settings({"to"});
    } else if (kind == "square-end") {
        all(cutUp(step.at("part")), {"waste", "left"});
    } else if (kind == "crosscut") {
        all(cutUp(step.at("part")), {"stop"});
        settings({"stop"});
    } else if (kind == "bring-to-size") {
        const std::string part = step.at("parts").front();
        all(cutUp(part.substr(0, part.find('-'))), {"to"});
        settings({"to"});
    } else if (kind == "trim") {
        all("Final glue-up", {"margin", "width", "height"});
    } else if (kind == "border") {
        all("Border", {"width", "boardWidth", "boardHeight"});
        for (const Json& rail : step.at("rails")) {
            paper.has(rail.at("longPoint"), "Border", step);
        }
        const bool floats = step.at("design") == "floating-frame";
        paper.says(floats ? "Glue the mitres and nothing else" : "Do not glue this border",
                   "Border");
    } else if (kind == "channel") {
        settings({"depth", "width"});
    } else if (kind == "cut-rails") {
        for (const Json& rail : step.at("rails")) {
            paper.has(rail.at("longPoint"), "Machine settings", step);
        }
    } else if (kind == "key-corners") {
        settings({"depth", "thickness", "fromFace"});
    } else if (kind != "glue-in") {  // nothing is set for it: its sticks are in the cut list
        ADD_FAILURE() << "a kind of step that no sheet was compared with: " << kind;
    }
}

TEST(Paper, SaysEveryMachineFigureOfThePlan) {
    ASSERT_GE(samples().size(), 6u);
    for (const std::string& sample : samples()) {
        const Paper paper(sample);
        for (const Json& step : paper.plan.at("steps")) {
            compareStep(paper, step);
        }
        for (const Json& task : paper.plan.at("hours").at("tasks")) {
            paper.says(task.at("title"), "Time at the bench");
        }
        EXPECT_GT(paper.figures, 20) << sample;
        paper.has(paper.plan.at("board").at("thickness"), "Overview",
                  Json{{"number", 0}, {"title", "finished size"}});
        paper.says(paper.plan.at("project").at("revision").get<std::string>(), "Overview");
    }
}

// The comparison itself can fail: figures that are on no sheet, and look-alikes.
TEST(Paper, ComparesWholeNumbers) {
    EXPECT_TRUE(stands("stop 43 mm, then", "43 mm"));
    EXPECT_TRUE(stands("54 × | 51 × | 540", "51"));
    EXPECT_TRUE(stands("1 7/8 in", "1 7/8"));
    EXPECT_FALSE(stands("143 mm", "43 mm"));
    EXPECT_FALSE(stands("43.5 mm", "43"));
    EXPECT_FALSE(stands("3.43 mm", "43 mm"));
    EXPECT_FALSE(stands("1 7/8 in", "7/8 in"));
    EXPECT_FALSE(stands("43/64 in", "43"));
    EXPECT_FALSE(stands("1 43/64 in", "1 4"));
}

}  // namespace
}  // namespace kerfwright
