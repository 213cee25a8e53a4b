#include "core/sheets/ways.h"

#include "core/sheets/columns.h"
#include "core/sheets/hourwords.h"
#include "core/words/say.h"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <iomanip>
#include <optional>
#include <sstream>
#include <utility>
#include <vector>

namespace kerfwright {
namespace {

using Json = nlohmann::ordered_json;

std::string jointWords(const Joint& joint, const Notation& notation) {
    const std::string at = format(joint.at, notation);
    const std::string from = formatBare(joint.from, notation);
    const std::string to = format(joint.to, notation);
    return joint.vertical ? say("down at {1}, from {2} to {3}", at, from, to)
                          : say("across at {1}, from {2} to {3}", at, from, to);
}

/// Numbers stand at the right of their columns, the name of a way after the last.
struct Table {
    std::vector<std::string> heads;
    std::vector<std::size_t> widths;

    explicit Table(std::vector<std::string> all)
        : heads(std::move(all)) {
        for (const std::string& head : heads) {
            widths.push_back(columnsOf(head) + 2);
        }
    }
    void fit(const std::vector<std::string>& row) {
        for (std::size_t i = 0; i < row.size(); ++i) {
            widths[i] = std::max(widths[i], columnsOf(row[i]) + 2);
        }
    }
    std::string line(const std::vector<std::string>& row, const std::string& last) const {
        std::string words;
        for (std::size_t i = 0; i < row.size(); ++i) {
            words += rightAligned(row[i], widths[i]);
        }
        return words + "  " + last + "\n";
    }
};

std::vector<std::string> rowOf(const Alternative& way, Unit unit) {
    const Measures& m = way.measures;
    const std::optional<int>& days = way.job.hours.days;
    return {std::to_string(m.glueUps), std::to_string(m.clampLoads),
            std::to_string(m.panels),  std::to_string(m.settings),
            std::to_string(m.cuts),    formatVolume(m.timber, unit),
            timeWords(m.minutes),      days ? std::to_string(*days) : "–"};
}

}  // namespace

bool isInUse(const Alternative& way, const Plan& plan) {
    return way.job.plan.construction == plan.construction &&
           (!plan.construction.empty() || way.job.plan.byColumns == plan.byColumns);
}

std::string waysText(const Project& project, const Alternatives& ways) {
    std::ostringstream out;
    out << (project.titles.name.empty() ? say("Ways to glue this board")
                                        : say("Ways to glue {1}", project.titles.name))
        << "\n\n";
    Table table({sayIn("head of a column", "glue-ups"), sayIn("head of a column", "loads"),
                 sayIn("head of a column", "panels"), sayIn("head of a column", "settings"),
                 sayIn("head of a column", "cuts"), sayIn("head of a column", "timber in"),
                 sayIn("head of a column", "at the bench"), sayIn("head of a column", "days")});
    for (const Alternative& way : ways.all) {
        table.fit(rowOf(way, project.notation.unit));
    }
    out << "    " << table.line(table.heads, sayIn("head of a column", "way"));
    int number = 0;
    for (const Alternative& way : ways.all) {
        out << std::setw(3) << ++number << '.'
            << table.line(rowOf(way, project.notation.unit), way.name);
        for (const std::string& limit : way.limits) {
            out << "      " << say("asks more than the shop has: {1}", limit) << '\n';
        }
        if (const std::size_t joints = way.job.plan.extraJoints.size(); joints > 0) {
            out << "      "
                << sayCount(joints, "{1} joint inside pieces", "{1} joints inside pieces") << '\n';
        }
    }
    if (!ways.sentence.empty()) {
        out << '\n' << ways.sentence << '\n';
    }
    if (const std::size_t more = ways.locked.freeing.size(); more > 0) {
        out << (ways.locked.fewest
                    ? sayCount(more, "It comes free with one joint more, and not with fewer:",
                               "It comes free with {1} joints more, and not with fewer:")
                    : sayCount(more, "It comes free with one joint more:",
                               "It comes free with {1} joints more:"))
            << '\n';
        for (const Joint& joint : ways.locked.freeing) {
            out << "  " << jointWords(joint, project.notation) << '\n';
        }
    }
    out << '\n' << say("Odd and even") << '\n';
    for (const OddEven& look : ways.looks) {
        out << "  " << look.sentence << '\n';
    }
    return out.str();
}

std::string waysJson(const Project& project, const Alternatives& ways) {
    Json json;
    json["format"] = "kerfwright-ways";
    json["version"] = 1;
    json["project"] = project.titles.name;
    json["bound"] = ways.bound;
    json["proven"] = ways.proven;
    json["sentence"] = ways.sentence;
    json["ways"] = Json::array();
    for (const Alternative& way : ways.all) {
        const Measures& m = way.measures;
        json["ways"].push_back(
            {{"key", way.key},
             {"name", way.name},
             {"glueUps", m.glueUps},
             {"clampLoads", m.clampLoads},
             {"panels", m.panels},
             {"settings", m.settings},
             {"cuts", m.cuts},
             {"timberIn", formatVolume(m.timber, project.notation.unit, DecimalMark::Point)},
             {"handsOnMinutes", m.minutes},
             {"days", way.job.hours.days ? Json(*way.job.hours.days) : Json()},
             {"extraJoints", way.job.plan.extraJoints.size()},
             {"limits", way.limits}});
    }
    json["lockedPieces"] = ways.locked.pieces;
    json["freeing"] = Json::array();
    for (const Joint& joint : ways.locked.freeing) {
        json["freeing"].push_back({{"direction", joint.vertical ? "down" : "across"},
                                   {"at", joint.at.nm()},
                                   {"from", joint.from.nm()},
                                   {"to", joint.to.nm()}});
    }
    json["oddAndEven"] = Json::array();
    for (const OddEven& look : ways.looks) {
        json["oddAndEven"].push_back(
            {{"columns", look.columns}, {"rows", look.rows}, {"words", look.sentence}});
    }
    return json.dump(2) + "\n";
}

}  // namespace kerfwright
