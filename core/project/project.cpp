#include "core/project/project.h"

#include "core/project/json.h"
#include "core/words/say.h"

#include <algorithm>
#include <array>
#include <iterator>

namespace kerfwright {
namespace {

/// The woods of a first project: two for the chequer, one for the border, and a few to paint with.
constexpr std::array firstWoods{"hard-maple", "black-walnut", "cherry",
                                "wenge",      "white-oak",    "padauk"};

void checkText(std::vector<Fault>& all, const char* entry, const std::string& text,
               std::size_t most = ProjectLimits::textBytes) {
    if (text.size() > most) {
        all.push_back({say(entry), say("must be at most {1} bytes long", most),
                       sayCount(text.size(), "{1} byte", "{1} bytes")});
    }
    if (const auto bad = firstNotUtf8(text)) {
        all.push_back(
            {say(entry), say("must be UTF-8"), say("another byte at place {1}", *bad + 1)});
    }
}

void checkNotation(std::vector<Fault>& all, const Notation& notation) {
    constexpr std::array denominators{1, 2, 4, 8, 16, 32, 64};
    if (std::find(denominators.begin(), denominators.end(), notation.denominator) ==
        denominators.end()) {
        all.push_back({say("Finest fraction"), say("must be 1, 2, 4, 8, 16, 32 or 64"),
                       std::to_string(notation.denominator)});
    }
    if (notation.decimals < 0 || notation.decimals > 6) {
        all.push_back({say("Decimals"), say("must be from {1} to {2}", 0, 6),
                       std::to_string(notation.decimals)});
    }
}

void checkWoods(std::vector<Fault>& all, const std::vector<Wood>& woods) {
    if (woods.empty() || woods.size() > static_cast<std::size_t>(ProjectLimits::woods)) {
        all.push_back({say("Woods"), say("must be from {1} to {2}", 1, ProjectLimits::woods),
                       std::to_string(woods.size())});
    }
    for (const Wood& wood : woods) {
        checkText(all, noted("Name of a wood"), wood.name);
        checkText(all, noted("Source of a wood"), wood.source);
        checkText(all, noted("Botanical name of a wood"), wood.botanical);
        checkText(all, noted("Reactions to a wood"), wood.reactions);
        checkText(all, noted("Food and a wood"), wood.food);
        const WoodSources& from = wood.sources;
        for (const std::string* source : {&from.shrinkage, &from.movement, &from.hardness,
                                          &from.pores, &from.gluing, &from.reactions, &from.food}) {
            checkText(all, noted("Source of a wood"), *source);
        }
    }
}

void checkTimber(std::vector<Fault>& all, const Timber& timber) {
    for (const Plank& plank : timber.rack.planks) {
        checkText(all, noted("Label of a plank"), plank.label);
        checkText(all, noted("Wood of a plank"), plank.wood);
        checkText(all, noted("Note on a plank"), plank.note);
    }
    for (const StripPin& pin : timber.pins) {
        checkText(all, noted("Strip of a pin"), pin.strip);
        checkText(all, noted("Plank of a pin"), pin.plank);
    }
}

void append(std::vector<Fault>& all, std::vector<Fault> more) {
    std::move(more.begin(), more.end(), std::back_inserter(all));
}

}  // namespace

Project newProject(Unit unit) {
    const bool inches = unit == Unit::Inches;
    Project project;
    project.notation = inches ? Notation::inches() : Notation::millimetres();
    project.shop = inches ? inchShop() : metricShop();
    project.timber = newTimber(unit);
    for (const char* key : firstWoods) {
        if (const Wood* wood = findWood(woodCatalogue(), key)) {
            project.woods.push_back(takenOver(*wood));
        }
    }
    const Length side = inches ? Length::inch(16) : Length::mm(400);
    project.recipe = usualRecipe(
        Pattern::Chequer, side, side, ruleStep(unit),
        {woodIndex(project.woods, "hard-maple"), woodIndex(project.woods, "black-walnut")});
    project.board.field = layOut(*project.recipe).value();
    project.board.thickness = inches ? Length::inch(3, 2) : Length::mm(38);
    project.board.border.width = inches ? Length::inch(3, 2) : Length::mm(40);
    project.board.border.wood = woodIndex(project.woods, "wenge");
    return project;
}

void setUnit(Project& project, Unit unit) {
    project.notation.unit = unit;
    const bool inches = unit == Unit::Inches;
    if (project.shop == (inches ? metricShop() : inchShop())) {
        project.shop = inches ? inchShop() : metricShop();
    }
    if (project.timber.yard == newTimber(inches ? Unit::Millimetres : Unit::Inches).yard) {
        project.timber.yard = newTimber(unit).yard;
    }
}

void settleRecipe(Project& project) {
    if (project.recipe && !faults(*project.recipe, project.board.field).empty()) {
        project.recipe = refitted(*project.recipe, project.board.field);
    }
}

std::vector<Fault> faults(const Project& project) {
    std::vector<Fault> all;
    checkText(all, noted("Name"), project.titles.name);
    checkText(all, noted("Maker"), project.titles.maker);
    checkText(all, noted("Date"), project.titles.date);
    checkText(all, noted("Note"), project.titles.note);
    checkNotation(all, project.notation);
    append(all, faults(project.board, static_cast<int>(project.woods.size()), project.notation));
    if (project.recipe) {
        append(all, faults(*project.recipe, project.board.field, project.notation));
        for (const int wood : project.recipe->woods) {
            if (wood >= static_cast<int>(project.woods.size())) {
                all.push_back({say("Wood of the recipe"),
                               sayCount(project.woods.size(), "must be the one wood of the project",
                                        "must be one of the {1} woods of the project"),
                               say("wood number {1}", wood + std::int64_t{1})});
            }
        }
    }
    checkWoods(all, project.woods);
    append(all, faults(project.woods, project.notation));
    append(all, faults(project.shop, project.notation));
    append(all, faults(project.climate));
    append(all, faults(project.glue));
    append(all, faults(project.purpose, project.notation));
    append(all, faults(project.rates));
    append(all, faults(project.timber, project.notation));
    checkTimber(all, project.timber);
    checkText(all, noted("Currency"), project.currency, ProjectLimits::currencyBytes);
    append(all, faults(project.pricing));
    checkText(all, noted("Customer"), project.pricing.customer);
    checkText(all, noted("Quote valid until"), project.pricing.validUntil);
    append(all, faults(project.seenTo));
    for (const SeenTo& entry : project.seenTo) {
        checkText(all, noted("Seen to"), entry.about);
        for (const Fact& fact : entry.said) {
            if (const auto* text = std::get_if<std::string>(&fact.value)) {
                checkText(all, noted("Seen to"), *text);
            }
        }
    }
    if (!project.unknownKeys.empty()) {
        const Result<Json> unknown = parseJson(project.unknownKeys);
        if (!unknown || unknown->kind != Json::Kind::Object) {
            all.push_back({say("Unknown keys"), say("must be a JSON object"),
                           unknown ? say("another value") : unknown.fault().text()});
        }
    }
    return all;
}

}  // namespace kerfwright
