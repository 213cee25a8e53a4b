// A JSON tree that keeps numbers as they were written: lengths are 64-bit integers that must not
// pass through floating point, and what this version does not know is written back unchanged.
#pragma once

#include "core/measure/result.h"

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace kerfwright {

struct Json {
    enum class Kind { Null, Boolean, Number, Text, Array, Object };

    Kind kind = Kind::Null;
    std::string text;               ///< of a text; a number or boolean as written
    std::vector<std::string> keys;  ///< of an object, one for each of `items`
    std::vector<Json> items;        ///< of an array or object
    bool startsLine = false;        ///< in an array: printed on a new line

    static Json ofText(std::string value);
    static Json ofNumber(std::int64_t value);
    static Json ofNumber(double value);
    static Json ofBoolean(bool value);
    static Json array() { return {Kind::Array, {}, {}, {}, false}; }
    static Json object() { return {Kind::Object, {}, {}, {}, false}; }

    /// Appends to an object. The key must be new.
    Json& add(std::string key, Json value);
    /// Null where the object has no such key.
    const Json* find(std::string_view key) const;
    Json* find(std::string_view key);
};

struct JsonLimits {
    static constexpr std::size_t bytes = std::size_t{16} << 20;
    static constexpr std::size_t depth = 64;
    static constexpr std::size_t values = 500'000;
};

/// Reads one JSON value. Strict: valid UTF-8, no key twice in an object, within `JsonLimits`. The
/// fault names the place as a path ("board.field") where the text is JSON, else "File" with the
/// line and column.
Result<Json> parseJson(std::string_view bytes);

/// Objects with a key a line; arrays on one line, unless items start lines.
std::string printed(const Json& json);
/// All on one line.
std::string compact(const Json& json);

/// The value in a few words, for a fault.
std::string shown(const Json& json);

/// Offset of the first byte that is not UTF-8, if there is one.
std::optional<std::size_t> firstNotUtf8(std::string_view bytes);

}  // namespace kerfwright
