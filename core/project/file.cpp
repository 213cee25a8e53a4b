#include "core/project/file.h"

#include "core/project/json.h"
#include "core/project/node.h"
#include "core/project/pricingfile.h"
#include "core/project/recipefile.h"
#include "core/project/seentofile.h"
#include "core/project/timberfile.h"
#include "core/project/unknown.h"
#include "core/project/woodfile.h"
#include "core/words/say.h"

#include <array>
#include <limits>
#include <optional>
#include <utility>

namespace kerfwright {
namespace {

// --- names in the file

constexpr std::array unitNames{FileName<Unit>{Unit::Millimetres, "mm"},
                               FileName<Unit>{Unit::Inches, "in"}};
constexpr std::array buildNames{FileName<Build>{Build::EndGrain, "end-grain"},
                                FileName<Build>{Build::LongGrain, "long-grain"}};
constexpr std::array grainNames{
    FileName<GrainDirection>{GrainDirection::PlannersChoice, "planners-choice"},
    FileName<GrainDirection>{GrainDirection::Down, "down"},
    FileName<GrainDirection>{GrainDirection::Across, "across"}};
constexpr std::array rowNames{FileName<RowChoice>{RowChoice::Best, "best"},
                              FileName<RowChoice>{RowChoice::Rows, "rows"},
                              FileName<RowChoice>{RowChoice::Columns, "columns"}};

constexpr std::array<FileName<BoardUse>, boardUses.size()> useNames = [] {
    std::array<FileName<BoardUse>, boardUses.size()> names{};
    for (std::size_t i = 0; i < names.size(); ++i) {
        names[i] = {boardUses[i].use, boardUses[i].key};
    }
    return names;
}();
constexpr std::array designNames{
    FileName<BorderDesign>{BorderDesign::EndGrainBand, "end-grain-band"},
    FileName<BorderDesign>{BorderDesign::FloatingFrame, "floating-frame"},
    FileName<BorderDesign>{BorderDesign::FixedFrame, "fixed-frame"},
    FileName<BorderDesign>{BorderDesign::BreadboardEnds, "breadboard-ends"},
    FileName<BorderDesign>{BorderDesign::EdgeBand, "edge-band"}};
constexpr std::array housingNames{FileName<Housing>{Housing::Groove, "groove"},
                                  FileName<Housing>{Housing::Rebate, "rebate"}};

std::string lengthKey(const char* key) {
    return std::string(key) + "-nm";
}

// --- writing

Json ofLengths(const std::vector<Length>& lengths) {
    Json all = Json::array();
    for (const Length length : lengths) {
        all.items.push_back(ofLength(length));
    }
    return all;
}

std::string woodKey(const Project& project, int wood) {
    const auto i = static_cast<std::size_t>(wood);
    return wood >= 0 && i < project.woods.size() ? project.woods[i].key : std::string();
}

/// Pieces that begin in one row share a line, so that two versions of a board compare well.
Json ofPieces(const Project& project) {
    Json all = Json::array();
    int row = -1;
    for (const Piece& piece : project.board.field.pieces) {
        Json one = Json::array();
        for (const int number : {piece.column, piece.row, piece.across, piece.down}) {
            one.items.push_back(Json::ofNumber(std::int64_t{number}));
        }
        one.items.push_back(Json::ofText(woodKey(project, piece.wood)));
        one.startsLine = piece.row != row;
        row = piece.row;
        all.items.push_back(std::move(one));
    }
    return all;
}

Json ofBoard(const Project& project) {
    const Board& board = project.board;
    Json border = Json::object();
    border.add("width-nm", ofLength(board.border.width));
    border.add("wood", Json::ofText(woodKey(project, board.border.wood)));
    border.add("design", named(designNames, board.border.design));
    border.add("housing", named(housingNames, board.border.housing));
    if (board.border.gap) {
        border.add("gap-nm", ofLength(*board.border.gap));
    }
    border.add("inlay-width-nm", ofLength(board.border.inlayWidth));
    border.add("inlay-wood", Json::ofText(woodKey(project, board.border.inlayWood)));
    border.add("spline-thickness-nm", ofLength(board.border.splineThickness));
    border.add("spline-wood", Json::ofText(woodKey(project, board.border.splineWood)));
    border.add("caution-read", Json::ofBoolean(board.border.cautionRead));
    Json field = Json::object();
    field.add("columns-nm", ofLengths(board.field.columns));
    field.add("rows-nm", ofLengths(board.field.rows));
    field.add("pieces", ofPieces(project));
    Json json = Json::object();
    json.add("build", named(buildNames, board.build));
    json.add("grain", named(grainNames, board.grain));
    json.add("thickness-nm", ofLength(board.thickness));
    json.add("border", std::move(border));
    json.add("field", std::move(field));
    return json;
}

template <class Values, class Settings>
Json ofReals(const Settings& settings, const Values& values) {
    Json json = Json::object();
    for (const auto& setting : settings) {
        json.add(setting.key, Json::ofNumber(values.*setting.value));
    }
    return json;
}

/// All that this version knows of a project, in the order of the file.
Json known(const Project& project) {
    Json titles = Json::object();
    titles.add("name", Json::ofText(project.titles.name));
    titles.add("maker", Json::ofText(project.titles.maker));
    titles.add("date", Json::ofText(project.titles.date));
    titles.add("note", Json::ofText(project.titles.note));
    Json notation = Json::object();
    notation.add("unit", named(unitNames, project.notation.unit));
    notation.add("denominator", Json::ofNumber(std::int64_t{project.notation.denominator}));
    notation.add("decimals", Json::ofNumber(std::int64_t{project.notation.decimals}));
    Json shop = Json::object();
    for (const SettingInfo& info : shopSettings()) {
        shop.add(lengthKey(info.key), ofLength(project.shop.*info.value));
    }
    shop.add("spare-slices", Json::ofNumber(std::int64_t{project.shop.spareSlices}));
    Json choices = Json::object();
    choices.add("rows", named(rowNames, project.choices.rows));
    choices.add("merge-like", Json::ofBoolean(project.choices.mergeLike));
    if (!project.choices.construction.empty()) {
        choices.add("construction", Json::ofText(project.choices.construction));
        choices.add("most-parts", Json::ofNumber(std::int64_t{project.choices.mostParts}));
    }

    Json purpose = Json::object();
    purpose.add("use", named(useNames, project.purpose.use));
    purpose.add("foot-nm", ofLength(project.purpose.foot));

    Json json = Json::object();
    json.add("format", Json::ofText(std::string(projectFormat)));
    json.add("version", Json::ofNumber(std::int64_t{projectVersion}));
    json.add("titles", std::move(titles));
    json.add("notation", std::move(notation));
    json.add("board", ofBoard(project));
    if (project.recipe) {
        json.add("recipe", ofRecipe(*project.recipe, project.woods));
    }
    json.add("woods", ofWoods(project.woods));
    json.add("shop", std::move(shop));
    json.add("choices", std::move(choices));
    json.add("climate", ofReals(climateSettings(), project.climate));
    json.add("glue", ofReals(glueSettings(), project.glue));
    json.add("purpose", std::move(purpose));
    json.add("rates", ofReals(rateSettings(), project.rates));
    json.add("currency", Json::ofText(project.currency));
    json.add("timber", ofTimber(project.timber));
    json.add("pricing", ofPricing(project.pricing));
    if (!project.seenTo.empty()) {
        json.add("seen-to", ofSeenTo(project.seenTo));
    }
    return json;
}

// --- reading

void checkFormat(const Node& root) {
    const Node format = root.at("format");
    if (format.text() != projectFormat) {
        format.refuseWith(say("must be “{1}”", projectFormat));
    }
    const Node version = root.at("version");
    const std::int64_t number = version.whole(1, std::numeric_limits<std::int64_t>::max());
    if (number > projectVersion) {
        refuse(version.path(),
               say("made by a newer Kerfwright, this one reads up to {1}", projectVersion),
               say("version {1}", number));
    }
}

Titles readTitles(const Node& json) {
    const auto title = [&json](const char* key) {
        return json.at(key).text(ProjectLimits::textBytes);
    };
    return {title("name"), title("maker"), title("date"), title("note")};
}

Notation readNotation(const Node& json) {
    const Node denominator = json.at("denominator");
    const int parts = denominator.smallWhole(1, 64);
    if ((parts & (parts - 1)) != 0) {
        denominator.refuseWith(say("must be 1, 2, 4, 8, 16, 32 or 64"));
    }
    return {json.at("unit").name(unitNames), parts, json.at("decimals").smallWhole(0, 6)};
}

int readWoodKey(const Node& json, const std::vector<Wood>& woods) {
    const int wood = woodIndex(woods, json.text());
    if (wood < 0) {
        json.refuseWith(say("must be the key of one of the woods of this file"));
    }
    return wood;
}

std::vector<Length> readCells(const Node& json) {
    std::vector<Length> sizes;
    for (const Node& item : json.items(1, BoardLimits::cellsAcross)) {
        sizes.push_back(item.length(BoardLimits::leastCell, BoardLimits::greatestCell));
    }
    return sizes;
}

Field readField(const Node& json, const std::vector<Wood>& woods) {
    Field field;
    field.columns = readCells(json.at("columns-nm"));
    field.rows = readCells(json.at("rows-nm"));
    const auto columns = static_cast<int>(field.columns.size());
    const auto rows = static_cast<int>(field.rows.size());
    const Node list = json.at("pieces");
    for (const Node& item : list.items(1, field.columns.size() * field.rows.size())) {
        const std::vector<Node> parts = item.items(5, 5);
        Piece piece;
        piece.column = parts[0].smallWhole(0, columns - 1);
        piece.row = parts[1].smallWhole(0, rows - 1);
        piece.across = parts[2].smallWhole(1, columns - piece.column);
        piece.down = parts[3].smallWhole(1, rows - piece.row);
        piece.wood = readWoodKey(parts[4], woods);
        field.pieces.push_back(piece);
    }
    return field;
}

/// Files from before borders had a design hold a plain frame: width and wood.
Border readBorder(const Node& json, const std::vector<Wood>& woods) {
    Border border;
    border.width = json.at("width-nm").length(Length(), BoardLimits::greatestBorder);
    border.wood = readWoodKey(json.at("wood"), woods);
    if (const auto design = json.maybe("design")) {
        border.design = design->name(designNames);
    }
    if (const auto housing = json.maybe("housing")) {
        border.housing = housing->name(housingNames);
    }
    if (const auto gap = json.maybe("gap-nm")) {
        border.gap = gap->length(Length(), BoardLimits::greatestGap);
    }
    if (const auto width = json.maybe("inlay-width-nm")) {
        border.inlayWidth = width->length(Length(), BoardLimits::greatestBorder);
    }
    if (const auto wood = json.maybe("inlay-wood")) {
        border.inlayWood = readWoodKey(*wood, woods);
    }
    if (const auto thickness = json.maybe("spline-thickness-nm")) {
        border.splineThickness = thickness->length(Length(), BoardLimits::greatestSpline);
    }
    if (const auto wood = json.maybe("spline-wood")) {
        border.splineWood = readWoodKey(*wood, woods);
    }
    if (const auto read = json.maybe("caution-read")) {
        border.cautionRead = read->flag();
    }
    return border;
}

Board readBoard(const Node& json, const std::vector<Wood>& woods) {
    Board board;
    board.build = json.at("build").name(buildNames);
    board.grain = json.at("grain").name(grainNames);
    board.thickness =
        json.at("thickness-nm").length(BoardLimits::leastThickness, BoardLimits::greatestThickness);
    board.border = readBorder(json.at("border"), woods);
    board.field = readField(json.at("field"), woods);
    return board;
}

/// Version 1 began without the truing allowance: such a shop gets the usual one of its unit.
Shop readShop(const Node& json, Unit unit) {
    Shop shop = unit == Unit::Inches ? inchShop() : metricShop();
    for (const SettingInfo& info : shopSettings()) {
        const bool mayMiss = info.setting == Setting::Truing;
        if (mayMiss && !json.maybe(lengthKey(info.key).c_str())) {
            continue;
        }
        shop.*info.value = json.at(lengthKey(info.key)).length(info.least, info.greatest);
    }
    shop.spareSlices = json.at("spare-slices").smallWhole(0, 20);
    return shop;
}

Choices readChoices(const Node& json) {
    Choices choices{json.at("rows").name(rowNames), json.at("merge-like").flag()};
    if (const std::optional<Node> key = json.maybe("construction")) {
        choices.construction = key->text();
        constexpr std::size_t keySize = 16;
        const bool sound =
            choices.construction.size() == keySize &&
            choices.construction.find_first_not_of("0123456789abcdef") == std::string::npos;
        if (!sound) {
            key->refuseWith(say("must be sixteen hexadecimal digits"));
        }
        const std::optional<Node> parts = json.maybe("most-parts");
        choices.mostParts = parts ? parts->smallWhole(0, 1000) : 0;
    }
    return choices;
}

/// Version 1 began without these, so the object and each of its keys may be missing.
template <class Values, class Settings>
void readReals(const Node& root, const char* key, const Settings& settings, Values& values) {
    const std::optional<Node> json = root.maybe(key);
    if (!json) {
        return;
    }
    for (const auto& setting : settings) {
        if (const std::optional<Node> value = json->maybe(setting.key)) {
            values.*setting.value = value->real();
        }
    }
}

void readPurpose(const Node& root, BoardPurpose& purpose) {
    const std::optional<Node> json = root.maybe("purpose");
    if (!json) {
        return;
    }
    if (const std::optional<Node> use = json->maybe("use")) {
        purpose.use = use->name(useNames);
    }
    if (const std::optional<Node> foot = json->maybe("foot-nm")) {
        purpose.foot = foot->length(Length(), greatestFoot);
    }
}

/// Refuses what no single value breaks: pieces over one another, two woods with one key, and so on.
void passOn(const std::string& path, const std::vector<Fault>& found) {
    if (!found.empty()) {
        refuse(path + ": " + found.front().entry, found.front().rule, found.front().value);
    }
}

/// The object without one of its keys.
Json without(std::string_view key, const Json& object) {
    Json rest = Json::object();
    for (std::size_t i = 0; i < object.items.size(); ++i) {
        if (object.keys[i] != key) {
            rest.add(object.keys[i], object.items[i]);
        }
    }
    return rest;
}

Project readTree(const Json& json) {
    const Node root(json, "");
    checkFormat(root);
    Project project;
    project.titles = readTitles(root.at("titles"));
    project.notation = readNotation(root.at("notation"));
    project.woods = readWoods(root.at("woods"));
    passOn("woods", faults(project.woods));
    project.board = readBoard(root.at("board"), project.woods);
    passOn("board", faults(project.board, static_cast<int>(project.woods.size())));
    if (const std::optional<Node> recipe = root.maybe("recipe")) {
        project.recipe = readRecipe(*recipe, project.woods);
        passOn("recipe", faults(*project.recipe, project.board.field));
    }
    project.shop = readShop(root.at("shop"), project.notation.unit);
    project.choices = readChoices(root.at("choices"));
    readReals(root, "climate", climateSettings(), project.climate);
    passOn("climate", faults(project.climate));
    readReals(root, "glue", glueSettings(), project.glue);
    passOn("glue", faults(project.glue));
    readPurpose(root, project.purpose);
    readReals(root, "rates", rateSettings(), project.rates);
    passOn("rates", faults(project.rates));
    if (const std::optional<Node> currency = root.maybe("currency")) {
        project.currency = currency->text();
    }
    project.timber = newTimber(project.notation.unit);
    if (const std::optional<Node> timber = root.maybe("timber")) {
        project.timber = readTimber(*timber, std::move(project.timber));
        passOn("timber", faults(project.timber, project.notation));
    }
    if (const std::optional<Node> pricing = root.maybe("pricing")) {
        readPricing(*pricing, project.pricing);
    }
    passOn("pricing", faults(project.pricing));
    if (const std::optional<Node> seenTo = root.maybe("seen-to")) {
        project.seenTo = readSeenTo(*seenTo);
        passOn("seen-to", faults(project.seenTo));
    }
    passOn(say("File"), faults(project));
    // An empty list is known too, though it is not written.
    const Json unknown = without("seen-to", unknownIn(json, known(project)));
    if (!unknown.items.empty()) {
        project.unknownKeys = compact(unknown);
    }
    return project;
}

}  // namespace

std::string toBytes(const Project& project) {
    Json json = known(project);
    if (!project.unknownKeys.empty()) {
        const Result<Json> unknown = parseJson(project.unknownKeys);
        if (unknown && unknown->kind == Json::Kind::Object) {
            // What was unknown of a recipe goes with it.
            mergeUnknown(json, project.recipe ? *unknown : without("recipe", *unknown));
        }
    }
    return printed(json) + "\n";
}

Result<Project> fromBytes(std::string_view bytes) {
    const Result<Json> json = parseJson(bytes);
    if (!json) {
        return json.fault();
    }
    if (json->kind != Json::Kind::Object) {
        return Fault{say("File"), say("must hold a project, a JSON object"), shown(*json)};
    }
    try {
        return readTree(*json);
    } catch (const Refused& refused) {
        return refused.fault;
    }
}

}  // namespace kerfwright
