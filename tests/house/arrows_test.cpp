// Which part of the house may use which. The table here is the law; the includes, the CMake files
// and DEVELOPERS.md must all say the same.
#include "tests/house/files.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <map>
#include <regex>
#include <set>
#include <sstream>

namespace kerfwright::house {
namespace {

using testing::IsEmpty;

using Arrows = std::map<std::string, std::set<std::string>>;

const Arrows& arrows() {
    static const Arrows table = {
        {"core/words", {}},
        {"core/measure", {"core/words"}},
        {"core/drawing", {}},
        {"core/wood", {"core/words", "core/measure", "core/drawing"}},
        {"core/figure", {"core/words", "core/measure", "core/drawing", "core/wood"}},
        {"core/shop", {"core/words", "core/measure"}},
        {"core/board", {"core/words", "core/measure", "core/wood"}},
        {"core/search", {"core/words", "core/measure", "core/board"}},
        {"core/glueup",
         {"core/words", "core/measure", "core/wood", "core/shop", "core/board", "core/search"}},
        {"core/timber", {"core/words", "core/measure", "core/wood", "core/shop", "core/glueup"}},
        {"core/replay", {"core/words", "core/measure", "core/board", "core/glueup"}},
        {"core/bench",
         {"core/words", "core/measure", "core/wood", "core/figure", "core/shop", "core/board",
          "core/search", "core/glueup", "core/timber", "core/replay"}},
        {"core/project",
         {"core/words", "core/measure", "core/wood", "core/shop", "core/board", "core/glueup",
          "core/timber"}},
        {"core/batch",
         {"core/words", "core/measure", "core/wood", "core/shop", "core/timber", "core/bench",
          "core/project"}},
        {"core/sheets",
         {"core/words", "core/measure", "core/drawing", "core/wood", "core/shop", "core/board",
          "core/glueup", "core/timber", "core/replay", "core/bench", "core/project", "core/batch"}},
    };
    return table;
}

/// Above the wall every part may use the core.
const Arrows& arrowsAboveTheWall() {
    static const Arrows table = {
        {"ui/paint", {}},
        {"ui/document", {}},
        {"ui/window", {"ui/document", "ui/paint"}},
        {"app", {"ui/document", "ui/paint", "ui/window"}},
    };
    return table;
}

std::string partOf(const std::string& path) {
    static const std::regex part("^(core/[^/]+|ui/[^/]+|app)/");
    std::smatch found;
    return std::regex_search(path, found, part) ? found[1].str() : std::string();
}

/// "file includes header" for every include of the project's own headers that `mayUse` refuses.
template <class MayUse>
std::vector<std::string> wrongIncludes(const std::vector<File>& files, MayUse mayUse) {
    static const std::regex include("#include\\s+\"([^\"]+)\"");
    std::vector<std::string> wrong;
    for (const File& file : files) {
        const std::string part = partOf(file.path);
        for (std::sregex_iterator at(file.text.begin(), file.text.end(), include), end; at != end;
             ++at) {
            const std::string header = (*at)[1];
            const std::string used = partOf(header);
            if (used != part && !mayUse(part, used)) {
                wrong.push_back(file.path + " includes " + header);
            }
        }
    }
    return wrong;
}

const std::vector<std::string> sources = {".h", ".cpp", ".in"};

TEST(Arrows, EveryPartOfTheCoreIsInTheTable) {
    std::set<std::string> parts;
    for (const File& file : filesBelow("core", sources)) {
        parts.insert(partOf(file.path));
    }
    std::set<std::string> known;
    for (const auto& [part, uses] : arrows()) {
        known.insert(part);
    }
    EXPECT_EQ(parts, known);
}

TEST(Arrows, TheCoreIncludesOnlyWhatItsArrowsAllow) {
    const std::vector<File> files = filesBelow("core", sources);
    ASSERT_GT(files.size(), 20u);
    EXPECT_THAT(wrongIncludes(files,
                              [](const std::string& part, const std::string& used) {
                                  return arrows().at(part).count(used) > 0;
                              }),
                IsEmpty());
}

TEST(Arrows, AboveTheWallNothingLooksUpOrSideways) {
    std::vector<File> files = filesBelow("ui", sources);
    for (const File& file : filesBelow("app", sources)) {
        files.push_back(file);
    }
    EXPECT_THAT(wrongIncludes(files,
                              [](const std::string& part, const std::string& used) {
                                  return arrows().count(used) > 0 ||
                                         arrowsAboveTheWall().at(part).count(used) > 0;
                              }),
                IsEmpty());
}

TEST(Arrows, HaveNoRing) {
    // A part may only use parts that can be built before it.
    std::set<std::string> built;
    bool more = true;
    while (more) {
        more = false;
        for (const auto& [part, uses] : arrows()) {
            const bool ready = std::includes(built.begin(), built.end(), uses.begin(), uses.end());
            if (ready && built.insert(part).second) {
                more = true;
            }
        }
    }
    EXPECT_EQ(built.size(), arrows().size());
}

TEST(Arrows, AreTheDependenciesThatCMakeHas) {
    static const std::regex call("kw_core_part\\((\\w+)([^)]*)\\)");
    static const std::regex depends("DEPENDS\\s+([\\w\\s]+)");
    for (const auto& [part, uses] : arrows()) {
        const std::string text = textOf(part + "/CMakeLists.txt");
        std::smatch found;
        ASSERT_TRUE(std::regex_search(text, found, call)) << part;
        EXPECT_EQ("core/" + found[1].str(), part);
        const std::string arguments = found[2];
        std::set<std::string> named;
        if (std::regex_search(arguments, found, depends)) {
            std::istringstream words(found[1]);
            for (std::string word; words >> word;) {
                named.insert("core/" + word);
            }
        }
        EXPECT_EQ(named, uses) << part;
    }
}

TEST(Arrows, AreTheOnesThatDevelopersRead) {
    // Rows such as: | `core/shop` | measure |
    static const std::regex row("\\| `(core/\\w+)` \\|([^|]*)\\|");
    static const std::regex word("\\w+");
    const std::string whole = textOf("DEVELOPERS.md");
    const std::size_t from = whole.find("\n### Arrows");
    ASSERT_NE(from, std::string::npos);
    const std::string text = whole.substr(from, whole.find("\n## ", from + 1) - from);
    Arrows written;
    for (std::sregex_iterator at(text.begin(), text.end(), row), end; at != end; ++at) {
        const std::string cell = (*at)[2];
        std::set<std::string>& uses = written[(*at)[1]];
        for (std::sregex_iterator one(cell.begin(), cell.end(), word); one != end; ++one) {
            if (one->str() != "nothing") {
                uses.insert("core/" + one->str());
            }
        }
    }
    EXPECT_EQ(written, arrows());
}

}  // namespace
}  // namespace kerfwright::house
