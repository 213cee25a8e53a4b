#include "core/project/json.h"

#include "core/words/say.h"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <array>
#include <charconv>
#include <unordered_set>
#include <utility>

namespace kerfwright {
namespace {

using Library = nlohmann::ordered_json;

template <class Number>
std::string digits(Number value) {
    std::array<char, 64> buffer{};
    const auto end = std::to_chars(buffer.data(), buffer.data() + buffer.size(), value).ptr;
    return std::string(buffer.data(), end);
}

/// For somebody who opens the file in an editor; both from 1.
struct Place {
    std::size_t line, column;
};

/// Where in the text a byte is.
Place placeOf(std::string_view bytes, std::size_t offset) {
    const std::string_view before = bytes.substr(0, std::min(offset, bytes.size()));
    const auto linesBefore = std::count(before.begin(), before.end(), '\n');
    const std::size_t lineStart = before.rfind('\n') + 1;  // npos + 1 is 0: the first line
    return {static_cast<std::size_t>(linesBefore) + 1, before.size() - lineStart + 1};
}

/// Takes the events of the library's parser. Its own trees are not used: they turn long integers
/// into floating point and let the last of two equal keys win.
class Builder {
public:
    explicit Builder(std::string_view bytes)
        : bytes_(bytes) {}

    bool null() { return add(Json()); }
    bool boolean(bool value) { return add(Json::ofBoolean(value)); }
    bool number_integer(Library::number_integer_t value) { return addNumber(digits(value)); }
    bool number_unsigned(Library::number_unsigned_t value) { return addNumber(digits(value)); }
    bool number_float(Library::number_float_t, const std::string& written) {
        return addNumber(written);
    }
    bool string(std::string& value) { return add(Json::ofText(std::move(value))); }
    bool binary(Library::binary_t&) { return false; }

    bool start_object(std::size_t) { return open(Json::object()); }
    bool start_array(std::size_t) { return open(Json::array()); }
    bool end_object() { return close(); }
    bool end_array() { return close(); }
    bool key(std::string& name) {
        Level& level = levels_.back();
        level.key = name;
        if (!level.names.insert(name).second) {
            return refuse(
                {path(), say("must stand in its object only once"), say("the key twice")});
        }
        return true;
    }

    bool parse_error(std::size_t position, const std::string& token,
                     const Library::exception& error) {
        constexpr int numberTooGreat = 406;
        if (error.id == numberTooGreat) {
            return refuse({path(), say("must be a number that a computer can hold"), token});
        }
        if (position > bytes_.size()) {
            const Place end = placeOf(bytes_, bytes_.size());
            return refuse({say("File"),
                           say("breaks off at line {1}, column {2}; the rest of it is missing",
                               end.line, end.column),
                           ""});
        }
        const Place place = placeOf(bytes_, position == 0 ? 0 : position - 1);
        return refuse(
            {say("File"),
             say("is no project: line {1}, column {2} is not JSON", place.line, place.column), ""});
    }

    Result<Json> result() && {
        if (fault_) {
            return *std::move(fault_);
        }
        return std::move(root_);
    }

private:
    struct Level {
        Json json;
        std::string key;  ///< the one whose value comes next
        std::unordered_set<std::string> names;
    };

    std::string path() const {
        std::string all;
        for (const Level& level : levels_) {
            if (level.json.kind == Json::Kind::Array) {
                all += "[" + std::to_string(level.json.items.size()) + "]";
            } else {
                all += (all.empty() ? "" : ".") + level.key;
            }
        }
        return all.empty() ? say("File") : all;
    }

    bool refuse(Fault fault) {
        fault_ = std::move(fault);
        return false;
    }
    bool countOne() {
        if (++values_ > JsonLimits::values) {
            return refuse(
                {path(), say("must be within {1} values in all", JsonLimits::values), say("more")});
        }
        return true;
    }
    bool addNumber(std::string written) {
        Json json;
        json.kind = Json::Kind::Number;
        json.text = std::move(written);
        return add(std::move(json));
    }
    bool add(Json json) { return countOne() && put(std::move(json)); }
    bool put(Json json) {
        if (levels_.empty()) {
            root_ = std::move(json);
            return true;
        }
        Level& level = levels_.back();
        if (level.json.kind == Json::Kind::Object) {
            level.json.keys.push_back(level.key);
        }
        level.json.items.push_back(std::move(json));
        return true;
    }
    bool open(Json json) {
        if (levels_.size() >= JsonLimits::depth) {
            return refuse({path(),
                           say("must not be nested deeper than {1} levels", JsonLimits::depth),
                           say("a deeper one")});
        }
        if (!countOne()) {
            return false;
        }
        levels_.push_back({std::move(json), {}, {}});
        return true;
    }
    bool close() {
        Json json = std::move(levels_.back().json);
        levels_.pop_back();
        return put(std::move(json));
    }

    std::string_view bytes_;
    std::vector<Level> levels_;
    std::size_t values_ = 0;
    Json root_;
    std::optional<Fault> fault_;
};

std::string quoted(const std::string& text) {
    // Text that is not UTF-8 is refused by `faults()`; here it must only not break the file.
    return Library(text).dump(-1, ' ', false, Library::error_handler_t::replace);
}

void putCompact(std::string& out, const Json& json) {
    switch (json.kind) {
    case Json::Kind::Null:
        out += "null";
        return;
    case Json::Kind::Boolean:
    case Json::Kind::Number:
        out += json.text;
        return;
    case Json::Kind::Text:
        out += quoted(json.text);
        return;
    case Json::Kind::Array:
    case Json::Kind::Object:
        break;
    }
    const bool object = json.kind == Json::Kind::Object;
    out += object ? "{" : "[";
    for (std::size_t i = 0; i < json.items.size(); ++i) {
        out += i == 0 ? "" : ", ";
        if (object) {
            out += quoted(json.keys[i]) + ": ";
        }
        putCompact(out, json.items[i]);
    }
    out += object ? "}" : "]";
}

void put(std::string& out, const Json& json, std::size_t indent) {
    const bool object = json.kind == Json::Kind::Object;
    const bool inLines = object ? !json.items.empty()
                                : std::any_of(json.items.begin(), json.items.end(),
                                              [](const Json& item) { return item.startsLine; });
    if (!inLines) {
        putCompact(out, json);
        return;
    }
    const std::string line = "\n" + std::string(indent + 2, ' ');
    out += object ? "{" : "[";
    for (std::size_t i = 0; i < json.items.size(); ++i) {
        const Json& item = json.items[i];
        const bool newLine = object || i == 0 || item.startsLine;
        out += i == 0 ? "" : ",";
        out += newLine ? line : " ";
        if (object) {
            out += quoted(json.keys[i]) + ": ";
        }
        put(out, item, indent + 2);
    }
    out += "\n" + std::string(indent, ' ') + (object ? "}" : "]");
}

bool isContinuation(unsigned char byte) {
    return (byte & 0xC0U) == 0x80U;
}

}  // namespace

Json Json::ofText(std::string value) {
    return {Kind::Text, std::move(value), {}, {}, false};
}
Json Json::ofNumber(std::int64_t value) {
    return {Kind::Number, digits(value), {}, {}, false};
}
Json Json::ofNumber(double value) {
    return {Kind::Number, digits(value), {}, {}, false};
}
Json Json::ofBoolean(bool value) {
    return {Kind::Boolean, value ? "true" : "false", {}, {}, false};
}

Json& Json::add(std::string key, Json value) {
    keys.push_back(std::move(key));
    items.push_back(std::move(value));
    return *this;
}

const Json* Json::find(std::string_view key) const {
    const auto at = std::find(keys.begin(), keys.end(), key);
    return at == keys.end() ? nullptr : &items[static_cast<std::size_t>(at - keys.begin())];
}

Json* Json::find(std::string_view key) {
    return const_cast<Json*>(std::as_const(*this).find(key));
}

Result<Json> parseJson(std::string_view bytes) {
    if (bytes.empty()) {
        return Fault{say("File"), say("is empty"), ""};
    }
    if (bytes.size() > JsonLimits::bytes) {
        return Fault{say("File"), say("must be at most 16 MiB long"),
                     sayCount(bytes.size(), "{1} byte", "{1} bytes")};
    }
    if (const auto bad = firstNotUtf8(bytes)) {
        const Place place = placeOf(bytes, *bad);
        return Fault{
            say("File"),
            say("is no project: line {1}, column {2} is not UTF-8", place.line, place.column), ""};
    }
    // The library takes a zero byte for the end of the text and would not look at what follows.
    if (const auto zero = bytes.find('\0'); zero != std::string_view::npos) {
        const Place place = placeOf(bytes, zero);
        return Fault{
            say("File"),
            say("is no project: line {1}, column {2} is a zero byte", place.line, place.column),
            ""};
    }
    Builder builder(bytes);
    Library::sax_parse(bytes.begin(), bytes.end(), &builder);
    return std::move(builder).result();
}

std::string printed(const Json& json) {
    std::string out;
    put(out, json, 0);
    return out;
}

std::string compact(const Json& json) {
    std::string out;
    putCompact(out, json);
    return out;
}

std::string shown(const Json& json) {
    constexpr std::size_t enough = 60;
    switch (json.kind) {
    case Json::Kind::Array:
        return say("a list");
    case Json::Kind::Object:
        return say("an object");
    case Json::Kind::Text: {
        std::string text = json.text.substr(0, enough);
        if (const auto cut = firstNotUtf8(text)) {
            text.resize(*cut);
        }
        return say("“{1}”", text.size() < json.text.size() ? text + "…" : text);
    }
    case Json::Kind::Null:
    case Json::Kind::Boolean:
    case Json::Kind::Number:
        break;
    }
    const std::string text = compact(json);
    return text.size() <= enough ? text : text.substr(0, enough) + "…";
}

std::optional<std::size_t> firstNotUtf8(std::string_view bytes) {
    const auto at = [&](std::size_t i) { return static_cast<unsigned char>(bytes[i]); };
    for (std::size_t i = 0; i < bytes.size();) {
        const unsigned char lead = at(i);
        std::size_t length = 0;
        if (lead < 0x80) {
            length = 1;
        } else if (lead >= 0xC2 && lead < 0xE0) {
            length = 2;
        } else if (lead >= 0xE0 && lead < 0xF0) {
            length = 3;
        } else if (lead >= 0xF0 && lead < 0xF5) {
            length = 4;
        }
        if (length == 0 || length > bytes.size() - i) {
            return i;
        }
        for (std::size_t k = 1; k < length; ++k) {
            if (!isContinuation(at(i + k))) {
                return i;
            }
        }
        // Longer forms than needed, surrogates, and beyond U+10FFFF.
        const unsigned char second = length > 1 ? at(i + 1) : lead;
        if ((lead == 0xE0 && second < 0xA0) || (lead == 0xED && second >= 0xA0) ||
            (lead == 0xF0 && second < 0x90) || (lead == 0xF4 && second >= 0x90)) {
            return i;
        }
        i += length;
    }
    return std::nullopt;
}

}  // namespace kerfwright
