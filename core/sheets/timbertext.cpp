#include "core/sheets/timbertext.h"

#include "core/measure/number.h"
#include "core/timber/demand.h"
#include "core/wood/price.h"

#include <nlohmann/json.hpp>

#include <cmath>
#include <sstream>

namespace kerfwright {
namespace {

using Json = nlohmann::ordered_json;

std::size_t at(int i) {
    return static_cast<std::size_t>(i);
}

std::string woodName(const Batch& batch, const std::string& key) {
    const Wood* wood = findWood(batch.woods, key);
    return wood != nullptr ? wood->name : key;
}

const char* railWords(RailLengths rails) {
    switch (rails) {
    case RailLengths::OneLength:
        return "The rails are sawn one after another from one length: their grain runs round the "
               "board.";
    case RailLengths::Pairs:
        return "The rails are sawn in two lengths of two: no plank gives all four in one.";
    case RailLengths::Single:
        return "The rails are sawn singly.";
    case RailLengths::None:
        break;
    }
    return "";
}

std::string percent(double value) {
    return formatNumber(std::round(value * 10) / 10) + " %";
}

std::string name(const Project& project) {
    return project.titles.name.empty() ? "a board" : project.titles.name;
}

/// Text and JSON read the same.
struct Told {
    explicit Told(const Batch& all)
        : batch(all)
        , project(all.boards.front().project)
        , plan(all.timber)
        , labels(stripLabels(plan.layout, plan.demand)) {}

    std::string size(Length thickness, Length width, Length length) const {
        const Notation& in = project.notation;
        return formatBare(thickness, in) + " × " + formatBare(width, in) + " × " +
               format(length, in);
    }
    std::string volume(Volume volume) const { return formatVolume(volume, project.notation.unit); }
    std::string money(std::int64_t hundredths) const {
        return formatMoney(hundredths) + (project.currency.empty() ? "" : " " + project.currency);
    }

    const Batch& batch;
    const Project& project;
    const TimberPlan& plan;
    std::vector<std::vector<std::vector<std::string>>> labels;
};

void tellPlanks(std::ostream& out, const Told& told) {
    const TimberPlan& plan = told.plan;
    for (std::size_t i = 0; i < plan.layout.planks.size(); ++i) {
        const PlankCuts& cuts = plan.layout.planks[i];
        const Plank& plank = plan.rack.planks[at(cuts.plank)];
        out << '\n'
            << plank.label << ": " << woodName(told.batch, plank.wood) << ", "
            << told.size(plank.thickness, plank.width, plank.length)
            << (plank.isOffcut ? ", an offcut" : "") << '\n';
        for (std::size_t k = 0; k < cuts.sections.size(); ++k) {
            const PlankSection& section = cuts.sections[k];
            out << "  from " << format(section.x, told.project.notation) << ", "
                << format(section.length, told.project.notation) << " long:";
            for (std::size_t s = 0; s < section.strips.size(); ++s) {
                const LaidStrip& strip = section.strips[s];
                const WantedStrips& wanted = plan.demand.strips[at(strip.wanted)];
                out << (s == 0 ? " " : ", ") << told.labels[i][k][s] << " ("
                    << format(acrossPlank(wanted, strip.onEdge), told.project.notation)
                    << (strip.onEdge ? ", on edge)" : ")");
            }
            out << '\n';
        }
        for (const Offcut& offcut : cuts.offcuts) {
            out << "  offcut to keep: " << told.size(plank.thickness, offcut.width, offcut.length)
                << '\n';
        }
    }
}

void tellShopping(std::ostream& out, const Told& told) {
    const ShoppingList& list = told.plan.shopping;
    if (told.plan.toBuy.strips.empty()) {
        return;
    }
    out << "\nTo buy\n";
    for (const ShoppingLine& line : list.lines) {
        out << "  " << line.count << " × " << woodName(told.batch, line.wood) << ", "
            << told.size(line.thickness, line.width, line.length) << " at least, "
            << told.volume(line.charged) << " charged";
        if (line.price) {
            out << ", " << told.money(*line.price);
        }
        out << '\n';
    }
    for (std::size_t i = 0; i < list.impossible.size(); ++i) {
        if (list.impossible[i] > 0) {
            const WantedStrips& strips = told.plan.toBuy.strips[i];
            out << "  no plank of the yard gives " << list.impossible[i] << " × "
                << woodName(told.batch, strips.wood) << ", "
                << sizesOf(strips, told.project.notation) << '\n';
        }
    }
    out << "  net " << told.volume(list.net) << ", bought " << told.volume(list.volume)
        << ", charged " << told.volume(list.charged);
    if (list.price) {
        out << ", " << told.money(*list.price);
    }
    out << "\n  waste by this layout: " << percent(wastePercent(list.net, list.volume)) << '\n';
    for (const UsualWaste& usual : usualWastes()) {
        out << "  with the usual " << usual.percent << " % (" << usual.name << "): net ÷ (1 − "
            << usual.percent << " %) = " << told.volume(withWaste(list.net, usual.percent)) << '\n';
    }
    out << "  " << shoppingVerdict(list) << '\n';
}

}  // namespace

std::string shoppingVerdict(const ShoppingList& list) {
    const char* of = list.price ? "cost less" : "hold less timber";
    if (list.proven) {
        return std::string("Proven best: no other planks of this yard ") + of + ".";
    }
    return "Other planks of this yard might " + std::string(of) + ", by at most " +
           formatNumber(std::ceil(list.gapPercent * 10) / 10) + " %.";
}

std::string timberText(const Batch& batch) {
    const Told told(batch);
    const TimberPlan& plan = told.plan;
    std::ostringstream out;
    out << "Timber for ";
    for (std::size_t i = 0; i < batch.boards.size(); ++i) {
        if (batch.boards.size() > 1) {
            out << (i == 0 ? "" : "; ") << i + 1 << ": ";
        }
        out << name(batch.boards[i].project);
    }
    out << "\n\n" << shortage(plan, batch.woods, told.project.notation) << '\n';
    if (!plan.rack.planks.empty() && !plan.demand.strips.empty()) {
        out << verdict(plan.layout) << '\n';
    }
    if (plan.rackCost && !plan.layout.planks.empty()) {
        out << "The planks cost " << told.money(*plan.rackCost) << ".\n";
    }
    if (*railWords(plan.rails) != '\0') {
        out << railWords(plan.rails) << '\n';
    }
    for (const LostPin& lost : plan.lostPins) {
        out << "Strip " << lost.pin.strip << " does not come from plank " << lost.pin.plank
            << " as wished: " << lost.reason << ".\n";
    }
    tellPlanks(out, told);
    tellShopping(out, told);
    out << "\nSawing: work to the manual of the saw, local rules and what trained people have "
           "shown "
           "you.\nShort and narrow pieces are held by a push block or a jig, never by hand.\n";
    return out.str();
}

std::string timberJson(const Batch& batch) {
    const Told told(batch);
    const TimberPlan& plan = told.plan;
    const auto nm = [](Length length) { return length.nm(); };
    Json json;
    json["format"] = "kerfwright-timber";
    json["version"] = 1;
    json["boards"] = Json::array();
    for (const BatchBoard& board : batch.boards) {
        json["boards"].push_back(board.project.titles.name);
    }
    json["wanted"] = Json::array();
    for (std::size_t i = 0; i < plan.demand.strips.size(); ++i) {
        const WantedStrips& strips = plan.demand.strips[i];
        json["wanted"].push_back({{"strips", labelsOf(strips)},
                                  {"wood", strips.wood},
                                  {"thickness", nm(strips.thickness)},
                                  {"width", nm(strips.width)},
                                  {"length", nm(strips.length)},
                                  {"count", strips.count},
                                  {"missing", plan.layout.missing[i]},
                                  {"plank", strips.plank.empty() ? Json() : Json(strips.plank)}});
    }
    json["complete"] = plan.layout.isComplete();
    json["proven"] = plan.layout.proven;
    json["gapPercent"] = plan.layout.gapPercent();
    json["sentence"] = verdict(plan.layout);
    json["rackCost"] = plan.rackCost ? Json(*plan.rackCost) : Json();
    json["planks"] = Json::array();
    for (std::size_t i = 0; i < plan.layout.planks.size(); ++i) {
        const PlankCuts& cuts = plan.layout.planks[i];
        Json sections = Json::array();
        for (std::size_t k = 0; k < cuts.sections.size(); ++k) {
            Json strips = Json::array();
            for (std::size_t s = 0; s < cuts.sections[k].strips.size(); ++s) {
                const LaidStrip& strip = cuts.sections[k].strips[s];
                strips.push_back({{"label", told.labels[i][k][s]},
                                  {"x", nm(strip.x)},
                                  {"y", nm(strip.y)},
                                  {"onEdge", strip.onEdge}});
            }
            sections.push_back({{"x", nm(cuts.sections[k].x)},
                                {"length", nm(cuts.sections[k].length)},
                                {"strips", std::move(strips)}});
        }
        Json offcuts = Json::array();
        for (const Offcut& offcut : cuts.offcuts) {
            offcuts.push_back({{"x", nm(offcut.x)},
                               {"y", nm(offcut.y)},
                               {"length", nm(offcut.length)},
                               {"width", nm(offcut.width)}});
        }
        json["planks"].push_back({{"plank", plan.rack.planks[at(cuts.plank)].label},
                                  {"sections", std::move(sections)},
                                  {"offcuts", std::move(offcuts)}});
    }
    json["cuts"] = Json::array();
    for (const SawCut& cut : plan.cuts) {
        const char* kind = cut.kind == SawCutKind::Crosscut ? "crosscut"
                           : cut.kind == SawCutKind::Rip    ? "rip"
                                                            : "to-length";
        const PlankCuts& cuts = plan.layout.planks[at(cut.plank)];
        json["cuts"].push_back({{"number", cut.number},
                                {"kind", kind},
                                {"plank", plan.rack.planks[at(cuts.plank)].label},
                                {"size", nm(cut.size)},
                                {"x", nm(cut.x)},
                                {"y", nm(cut.y)},
                                {"length", nm(cut.length)},
                                {"width", nm(cut.width)}});
    }
    Json lines = Json::array();
    for (const ShoppingLine& line : plan.shopping.lines) {
        lines.push_back({{"wood", line.wood},
                         {"thickness", nm(line.thickness)},
                         {"width", nm(line.width)},
                         {"length", nm(line.length)},
                         {"count", line.count},
                         {"charged", told.volume(line.charged)},
                         {"price", line.price ? Json(*line.price) : Json()}});
    }
    json["shopping"] = {{"lines", std::move(lines)},
                        {"net", told.volume(plan.shopping.net)},
                        {"charged", told.volume(plan.shopping.charged)},
                        {"wastePercent", wastePercent(plan.shopping.net, plan.shopping.volume)},
                        {"price", plan.shopping.price ? Json(*plan.shopping.price) : Json()},
                        {"impossible", plan.shopping.impossible},
                        {"proven", plan.shopping.proven}};
    json["lostPins"] = Json::array();
    for (const LostPin& lost : plan.lostPins) {
        json["lostPins"].push_back(
            {{"strip", lost.pin.strip}, {"plank", lost.pin.plank}, {"reason", lost.reason}});
    }
    return json.dump(2) + "\n";
}

}  // namespace kerfwright
