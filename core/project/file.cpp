#include "core/project/file.h"

#include "core/project/json.h"
#include "core/project/unknown.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <cstdio>
#include <limits>
#include <optional>
#include <utility>

namespace kerfwright {
namespace {

// --- names in the file

template <class Value>
struct Name {
    Value value;
    std::string_view text;
};

constexpr std::array unitNames{Name<Unit>{Unit::Millimetres, "mm"}, Name<Unit>{Unit::Inches, "in"}};
constexpr std::array buildNames{Name<Build>{Build::EndGrain, "end-grain"},
                                Name<Build>{Build::LongGrain, "long-grain"}};
constexpr std::array grainNames{
    Name<GrainDirection>{GrainDirection::PlannersChoice, "planners-choice"},
    Name<GrainDirection>{GrainDirection::Down, "down"},
    Name<GrainDirection>{GrainDirection::Across, "across"}};
constexpr std::array rowNames{Name<RowChoice>{RowChoice::Best, "best"},
                              Name<RowChoice>{RowChoice::Rows, "rows"},
                              Name<RowChoice>{RowChoice::Columns, "columns"}};

template <class Value, std::size_t n>
Json named(const std::array<Name<Value>, n>& names, Value value) {
    const auto at = std::find_if(names.begin(), names.end(),
                                 [&](const Name<Value>& name) { return name.value == value; });
    return Json::ofText(std::string(at == names.end() ? names.front().text : at->text));
}

std::string lengthKey(const char* key) {
    return std::string(key) + "-nm";
}

// --- writing

Json ofLength(Length length) {
    return Json::ofNumber(length.nm());
}

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

Json ofColour(Colour colour) {
    std::array<char, 8> text{};
    std::snprintf(text.data(), text.size(), "#%02x%02x%02x", unsigned{colour.red},
                  unsigned{colour.green}, unsigned{colour.blue});
    return Json::ofText(text.data());
}

Json ofWoods(const std::vector<Wood>& woods) {
    Json all = Json::array();
    for (const Wood& wood : woods) {
        Json json = Json::object();
        json.add("key", Json::ofText(wood.key));
        json.add("name", Json::ofText(wood.name));
        json.add("letter", Json::ofText(wood.letter));
        json.add("colour", ofColour(wood.colour));
        json.add("density", Json::ofNumber(wood.density));
        json.add("timber-thickness-nm", ofLength(wood.timber.thickness));
        json.add("timber-width-nm", ofLength(wood.timber.width));
        json.add("source", Json::ofText(wood.source));
        json.startsLine = true;
        all.items.push_back(std::move(json));
    }
    return all;
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

    Json json = Json::object();
    json.add("format", Json::ofText(std::string(projectFormat)));
    json.add("version", Json::ofNumber(std::int64_t{projectVersion}));
    json.add("titles", std::move(titles));
    json.add("notation", std::move(notation));
    json.add("board", ofBoard(project));
    json.add("woods", ofWoods(project.woods));
    json.add("shop", std::move(shop));
    json.add("choices", std::move(choices));
    return json;
}

// --- reading

/// Thrown within this file only, from wherever the reading stops.
struct Refused {
    Fault fault;
};

[[noreturn]] void refuse(std::string entry, std::string rule, std::string value) {
    throw Refused{{std::move(entry), std::move(rule), std::move(value)}};
}

/// A value of the file and where it stands.
class Place {
public:
    Place(const Json& json, std::string path)
        : json_(&json)
        , path_(std::move(path)) {}

    const std::string& path() const { return path_; }
    [[noreturn]] void refuseWith(std::string rule) const {
        refuse(path_, std::move(rule), shown(*json_));
    }

    Place at(const std::string& key) const {
        if (json_->kind != Json::Kind::Object) {
            refuseWith("must be an object");
        }
        const std::string path = path_.empty() ? key : path_ + "." + key;
        const Json* found = json_->find(key);
        if (found == nullptr) {
            refuse(path, "must be given", "nothing");
        }
        return {*found, path};
    }

    /// The items of a list, refused before anything is made of them if there are too many.
    std::vector<Place> items(std::size_t least, std::size_t most) const {
        if (json_->kind != Json::Kind::Array) {
            refuseWith("must be a list");
        }
        const std::size_t count = json_->items.size();
        if (count < least || count > most) {
            refuse(path_,
                   least == most ? "must have " + std::to_string(least) + " items"
                                 : "must have from " + std::to_string(least) + " to " +
                                       std::to_string(most) + " items",
                   std::to_string(count));
        }
        std::vector<Place> all;
        all.reserve(count);
        for (std::size_t i = 0; i < count; ++i) {
            all.emplace_back(json_->items[i], path_ + "[" + std::to_string(i) + "]");
        }
        return all;
    }

    const std::string& text() const {
        if (json_->kind != Json::Kind::Text) {
            refuseWith("must be a text");
        }
        return json_->text;
    }

    bool flag() const {
        if (json_->kind != Json::Kind::Boolean) {
            refuseWith("must be true or false");
        }
        return json_->text == "true";
    }

    std::int64_t whole(std::int64_t least, std::int64_t most) const {
        const std::int64_t value = wholeNumber();
        if (value < least || value > most) {
            refuseWith("must be from " + std::to_string(least) + " to " + std::to_string(most));
        }
        return value;
    }
    int smallWhole(int least, int most) const { return static_cast<int>(whole(least, most)); }

    Length length() const { return Length::nm(wholeNumber()); }
    Length length(Length least, Length most) const {
        const Length value = length();
        if (value < least || value > most) {
            const Notation style = Notation::millimetres(6);
            refuse(path_, "must be from " + format(least, style) + " to " + format(most, style),
                   shown(*json_) + " nm");
        }
        return value;
    }

    double real() const {
        double value = 0;
        const std::string& text = json_->text;
        if (json_->kind != Json::Kind::Number ||
            std::from_chars(text.data(), text.data() + text.size(), value).ec != std::errc() ||
            !std::isfinite(value)) {
            refuseWith("must be a number");
        }
        return value;
    }

    template <class Value, std::size_t n>
    Value name(const std::array<Name<Value>, n>& names) const {
        const std::string& given = text();
        std::string rule = "must be one of ";
        for (const Name<Value>& each : names) {
            if (each.text == given) {
                return each.value;
            }
            rule += (&each == names.data() ? "" : ", ") + std::string(each.text);
        }
        refuseWith(rule);
    }

private:
    std::int64_t wholeNumber() const {
        std::int64_t value = 0;
        const std::string& text = json_->text;
        const char* const end = text.data() + text.size();
        if (json_->kind != Json::Kind::Number) {
            refuseWith("must be a whole number");
        }
        const auto [rest, error] = std::from_chars(text.data(), end, value);
        if (rest != end || error == std::errc::invalid_argument) {
            refuseWith("must be a whole number, without point or exponent");
        }
        if (error != std::errc()) {
            refuseWith("must be a whole number of at most 64 bits");
        }
        return value;
    }

    const Json* json_;
    std::string path_;
};

void checkFormat(const Place& root) {
    const Place format = root.at("format");
    if (format.text() != projectFormat) {
        format.refuseWith("must be “" + std::string(projectFormat) + "”");
    }
    const Place version = root.at("version");
    const std::int64_t number = version.whole(1, std::numeric_limits<std::int64_t>::max());
    if (number > projectVersion) {
        refuse(version.path(),
               "made by a newer Kerfwright, this one reads up to " + std::to_string(projectVersion),
               "version " + std::to_string(number));
    }
}

std::string readTitle(const Place& json) {
    const std::string& text = json.text();
    if (text.size() > ProjectLimits::textBytes) {
        json.refuseWith("must be at most " + std::to_string(ProjectLimits::textBytes) +
                        " bytes long");
    }
    return text;
}

Titles readTitles(const Place& json) {
    return {readTitle(json.at("name")), readTitle(json.at("maker")), readTitle(json.at("date")),
            readTitle(json.at("note"))};
}

Notation readNotation(const Place& json) {
    const Place denominator = json.at("denominator");
    const int parts = denominator.smallWhole(1, 64);
    if ((parts & (parts - 1)) != 0) {
        denominator.refuseWith("must be 1, 2, 4, 8, 16, 32 or 64");
    }
    return {json.at("unit").name(unitNames), parts, json.at("decimals").smallWhole(0, 6)};
}

Colour readColour(const Place& json) {
    const std::string& text = json.text();
    std::uint32_t value = 0;
    const char* const end = text.data() + text.size();
    if (text.size() != 7 || text.front() != '#' ||
        std::from_chars(text.data() + 1, end, value, 16).ptr != end) {
        json.refuseWith("must be a colour such as #ebd3a6");
    }
    const auto part = [value](unsigned shift) {
        return static_cast<std::uint8_t>((value >> shift) & 0xFFU);
    };
    return {part(16), part(8), part(0)};
}

std::vector<Wood> readWoods(const Place& json) {
    std::vector<Wood> woods;
    for (const Place& item : json.items(1, ProjectLimits::woods)) {
        Wood wood;
        wood.key = item.at("key").text();
        wood.name = item.at("name").text();
        wood.letter = item.at("letter").text();
        wood.colour = readColour(item.at("colour"));
        wood.density = item.at("density").real();
        wood.timber.thickness = item.at("timber-thickness-nm").length();
        wood.timber.width = item.at("timber-width-nm").length();
        wood.source = item.at("source").text();
        woods.push_back(std::move(wood));
    }
    return woods;
}

int readWoodKey(const Place& json, const std::vector<Wood>& woods) {
    const int wood = woodIndex(woods, json.text());
    if (wood < 0) {
        json.refuseWith("must be the key of one of the woods of this file");
    }
    return wood;
}

std::vector<Length> readCells(const Place& json) {
    std::vector<Length> sizes;
    for (const Place& item : json.items(1, BoardLimits::cellsAcross)) {
        sizes.push_back(item.length(BoardLimits::leastCell, BoardLimits::greatestCell));
    }
    return sizes;
}

Field readField(const Place& json, const std::vector<Wood>& woods) {
    Field field;
    field.columns = readCells(json.at("columns-nm"));
    field.rows = readCells(json.at("rows-nm"));
    const auto columns = static_cast<int>(field.columns.size());
    const auto rows = static_cast<int>(field.rows.size());
    const Place list = json.at("pieces");
    for (const Place& item : list.items(1, field.columns.size() * field.rows.size())) {
        const std::vector<Place> parts = item.items(5, 5);
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

Board readBoard(const Place& json, const std::vector<Wood>& woods) {
    Board board;
    board.build = json.at("build").name(buildNames);
    board.grain = json.at("grain").name(grainNames);
    board.thickness =
        json.at("thickness-nm").length(BoardLimits::leastThickness, BoardLimits::greatestThickness);
    const Place border = json.at("border");
    board.border.width = border.at("width-nm").length(Length(), BoardLimits::greatestBorder);
    board.border.wood = readWoodKey(border.at("wood"), woods);
    board.field = readField(json.at("field"), woods);
    return board;
}

Shop readShop(const Place& json) {
    Shop shop;
    for (const SettingInfo& info : shopSettings()) {
        shop.*info.value = json.at(lengthKey(info.key)).length(info.least, info.greatest);
    }
    shop.spareSlices = json.at("spare-slices").smallWhole(0, 20);
    return shop;
}

Choices readChoices(const Place& json) {
    return {json.at("rows").name(rowNames), json.at("merge-like").flag()};
}

/// Refuses what no single value breaks: pieces over one another, two woods with one key, and so on.
void passOn(const std::string& path, const std::vector<Fault>& found) {
    if (!found.empty()) {
        refuse(path + ": " + found.front().entry, found.front().rule, found.front().value);
    }
}

Project readTree(const Json& json) {
    const Place root(json, "");
    checkFormat(root);
    Project project;
    project.titles = readTitles(root.at("titles"));
    project.notation = readNotation(root.at("notation"));
    project.woods = readWoods(root.at("woods"));
    passOn("woods", faults(project.woods));
    project.board = readBoard(root.at("board"), project.woods);
    passOn("board", faults(project.board, static_cast<int>(project.woods.size())));
    project.shop = readShop(root.at("shop"));
    project.choices = readChoices(root.at("choices"));
    passOn("File", faults(project));
    const Json unknown = unknownIn(json, known(project));
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
            mergeUnknown(json, *unknown);
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
        return Fault{"File", "must hold a project, a JSON object", shown(*json)};
    }
    try {
        return readTree(*json);
    } catch (const Refused& refused) {
        return refused.fault;
    }
}

}  // namespace kerfwright
