#include "core/sheets/timbertext.h"

#include "core/bench/quote.h"
#include "core/glueup/steps.h"
#include "core/measure/at.h"
#include "core/sheets/amounts.h"
#include "core/timber/demand.h"
#include "core/timber/timberwords.h"
#include "core/words/say.h"

#include <nlohmann/json.hpp>

#include <sstream>

namespace kerfwright {
namespace {

using Json = nlohmann::ordered_json;

std::string railWords(RailLengths rails) {
    switch (rails) {
    case RailLengths::OneLength:
        return say(
            "The rails are sawn one after another from one length: their grain runs round the "
            "board.");
    case RailLengths::Pairs:
        return say("The rails are sawn in two lengths of two: no plank gives all four in one.");
    case RailLengths::Single:
        return say("The rails are sawn singly.");
    case RailLengths::None:
        break;
    }
    return {};
}

std::string name(const Project& project) {
    return project.titles.name.empty() ? say("a board") : project.titles.name;
}

/// Text and JSON read the same.
struct Told {
    explicit Told(const Batch& all)
        : batch(all)
        , project(all.boards.front().project)
        , plan(all.timber)
        , labels(stripLabels(plan.layout, plan.demand)) {}

    std::string text(Length length) const { return format(length, project.notation); }
    std::string size(Length thickness, Length width, Length length) const {
        return sizeWords(thickness, width, length, project.notation);
    }
    std::string volume(Volume volume) const { return formatVolume(volume, project.notation.unit); }
    std::string money(std::int64_t hundredths) const {
        return moneyWords(hundredths, project.currency);
    }
    std::string wood(const std::string& key) const { return woodName(key, batch.woods); }

    const Batch& batch;
    const Project& project;
    const TimberPlan& plan;
    std::vector<std::vector<std::vector<std::string>>> labels;
};

/// "A1 (40 mm), A2 (28 mm, on edge)".
std::string stripsOf(const Told& told, std::size_t plank, std::size_t section) {
    std::string all;
    const auto& strips = told.plan.layout.planks[plank].sections[section].strips;
    for (std::size_t i = 0; i < strips.size(); ++i) {
        const WantedStrips& wanted = told.plan.demand.strips[at(strips[i].wanted)];
        const std::string label = shownLabel(told.labels[plank][section][i]);
        const std::string across = told.text(acrossPlank(wanted, strips[i].onEdge));
        all += i == 0 ? "" : ", ";
        all += strips[i].onEdge ? say("{1} ({2}, on edge)", label, across)
                                : label + " (" + across + ")";
    }
    return all;
}

void tellPlanks(std::ostream& out, const Told& told) {
    const TimberPlan& plan = told.plan;
    for (std::size_t i = 0; i < plan.layout.planks.size(); ++i) {
        const PlankCuts& cuts = plan.layout.planks[i];
        const Plank& plank = plan.rack.planks[at(cuts.plank)];
        const std::string wood = told.wood(plank.wood);
        const std::string size = sizeWords(plank, told.project.notation);
        out << '\n'
            << (plank.isOffcut ? say("{1}: {2}, {3}, an offcut", plank.label, wood, size)
                               : plank.label + ": " + wood + ", " + size)
            << '\n';
        for (std::size_t k = 0; k < cuts.sections.size(); ++k) {
            const PlankSection& section = cuts.sections[k];
            out << "  "
                << say("from {1}, {2} long: {3}", told.text(section.x), told.text(section.length),
                       stripsOf(told, i, k))
                << '\n';
        }
        for (const Offcut& offcut : cuts.offcuts) {
            out << "  "
                << say("offcut to keep: {1}",
                       told.size(plank.thickness, offcut.width, offcut.length))
                << '\n';
        }
    }
}

std::string lineWords(const Told& told, const ShoppingLine& line) {
    const std::string wood = told.wood(line.wood);
    const std::string size = told.size(line.thickness, line.width, line.length);
    const std::string charged = told.volume(line.charged);
    return line.price
               ? say("{1} × {2}, {3} at least, {4} charged, {5}", line.count, wood, size, charged,
                     told.money(*line.price))
               : say("{1} × {2}, {3} at least, {4} charged", line.count, wood, size, charged);
}

std::string sumWords(const Told& told, const ShoppingList& list) {
    const std::string net = told.volume(list.net);
    const std::string bought = told.volume(list.volume);
    const std::string charged = told.volume(list.charged);
    return list.price ? say("net {1}, bought {2}, charged {3}, {4}", net, bought, charged,
                            told.money(*list.price))
                      : say("net {1}, bought {2}, charged {3}", net, bought, charged);
}

void tellShopping(std::ostream& out, const Told& told) {
    const ShoppingList& list = told.plan.shopping;
    if (told.plan.toBuy.strips.empty()) {
        return;
    }
    out << '\n' << say("To buy") << '\n';
    for (const ShoppingLine& line : list.lines) {
        out << "  " << lineWords(told, line) << '\n';
    }
    for (std::size_t i = 0; i < list.impossible.size(); ++i) {
        if (list.impossible[i] > 0) {
            const WantedStrips& strips = told.plan.toBuy.strips[i];
            out << "  "
                << say("no plank of the yard gives {1} × {2}, {3}", list.impossible[i],
                       told.wood(strips.wood), sizeWords(strips, told.project.notation))
                << '\n';
        }
    }
    out << "  " << sumWords(told, list) << "\n  "
        << say("waste by this layout: {1}", percentWords(wastePercent(list.net, list.volume)))
        << '\n';
    for (const UsualWaste& usual : usualWastes()) {
        out << "  "
            << say("with the usual {1} % ({2}): net ÷ (1 − {1} %) = {3}", usual.percent,
                   say(usual.name), told.volume(withWaste(list.net, usual.percent)))
            << '\n';
    }
    out << "  " << shoppingVerdict(list) << '\n';
}

}  // namespace

std::string timberText(const Batch& batch) {
    const Told told(batch);
    const TimberPlan& plan = told.plan;
    std::ostringstream out;
    std::string boards = name(batch.boards.front().project);
    if (batch.boards.size() > 1) {
        boards = "1: " + boards;
        for (std::size_t i = 1; i < batch.boards.size(); ++i) {
            boards += "; " + std::to_string(i + 1) + ": " + name(batch.boards[i].project);
        }
    }
    out << say("Timber for {1}", boards) << "\n\n" << layoutWords(plan) << '\n';
    for (const std::string& words : shortageWords(plan, batch.woods, told.project.notation)) {
        out << words << '\n';
    }
    if (plan.rackCost && !plan.layout.planks.empty()) {
        out << say("The planks cost {1}.", told.money(*plan.rackCost)) << '\n';
    }
    if (const std::string rails = railWords(plan.rails); !rails.empty()) {
        out << rails << '\n';
    }
    for (const LostPin& lost : plan.lostPins) {
        out << say("Strip {1} does not come from plank {2} as wished: {3}.", lost.pin.strip,
                   lost.pin.plank, lost.reason)
            << '\n';
    }
    tellPlanks(out, told);
    tellShopping(out, told);
    out << '\n'
        << say("Sawing: work to the manual of the saw, local rules and what trained people have "
               "shown you.")
        << '\n'
        << say("Short and narrow pieces are held by a push block or a jig, never by hand.") << '\n';
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
