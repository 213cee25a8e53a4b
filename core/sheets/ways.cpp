#include "core/sheets/ways.h"

#include "core/sheets/hourwords.h"

#include <nlohmann/json.hpp>

#include <iomanip>
#include <sstream>

namespace kerfwright {
namespace {

using Json = nlohmann::ordered_json;

/// To the right in a column; a character may be several bytes.
std::string padded(const std::string& text, std::size_t width) {
    std::size_t characters = 0;
    for (const char c : text) {
        characters += (static_cast<unsigned char>(c) & 0xC0U) == 0x80U ? 0 : 1;
    }
    return std::string(width > characters ? width - characters : 0, ' ') + text;
}

std::string jointWords(const Joint& joint, const Notation& notation) {
    return std::string(joint.vertical ? "down at " : "across at ") + format(joint.at, notation) +
           ", from " + formatBare(joint.from, notation) + " to " + format(joint.to, notation);
}

}  // namespace

bool isInUse(const Alternative& way, const Plan& plan) {
    return way.job.plan.construction == plan.construction &&
           (!plan.construction.empty() || way.job.plan.byColumns == plan.byColumns);
}

std::string waysText(const Project& project, const Alternatives& ways) {
    std::ostringstream out;
    out << "Ways to glue " << (project.titles.name.empty() ? "this board" : project.titles.name)
        << "\n\n";
    out << "      glue-ups  loads  panels  settings   cuts         timber in  at the bench  days  "
           "way\n";
    int number = 0;
    for (const Alternative& way : ways.all) {
        const Measures& m = way.measures;
        out << std::setw(3) << ++number << ". " << std::setw(8) << m.glueUps << std::setw(8)
            << m.clampLoads << std::setw(8) << m.panels << std::setw(9) << m.settings
            << std::setw(8) << m.cuts << padded(formatVolume(m.timber, project.notation.unit), 18)
            << "  " << way.name << '\n';
        for (const std::string& limit : way.limits) {
            out << "      asks more than the shop has: " << limit << '\n';
        }
        if (const std::size_t joints = way.job.plan.extraJoints.size(); joints > 0) {
            out << "      " << joints << (joints == 1 ? " joint" : " joints") << " inside pieces\n";
        }
    }
    if (!ways.sentence.empty()) {
        out << '\n' << ways.sentence << '\n';
    }
    if (!ways.locked.freeing.empty()) {
        out << "It comes free with "
            << (ways.locked.freeing.size() == 1
                    ? "one joint more"
                    : std::to_string(ways.locked.freeing.size()) + " joints more")
            << (ways.locked.fewest ? ", and not with fewer" : "") << ":\n";
        for (const Joint& joint : ways.locked.freeing) {
            out << "  " << jointWords(joint, project.notation) << '\n';
        }
    }
    out << "\nOdd and even\n";
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
        json["ways"].push_back({{"key", way.key},
                                {"name", way.name},
                                {"glueUps", m.glueUps},
                                {"clampLoads", m.clampLoads},
                                {"panels", m.panels},
                                {"settings", m.settings},
                                {"cuts", m.cuts},
                                {"timberIn", formatVolume(m.timber, project.notation.unit)},
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
