// A value of a project file that is being read, and where it stands. Private to core/project.
#pragma once

#include "core/measure/length.h"
#include "core/measure/result.h"
#include "core/project/json.h"
#include "core/wood/names.h"

#include <algorithm>
#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace kerfwright {

/// Thrown within the reading of a file only, from wherever it stops.
struct Refused {
    Fault fault;
};

[[noreturn]] void refuse(std::string entry, std::string rule, std::string value);
/// The rule for a text that must be one of these, as they stand in files.
std::string oneOf(const std::vector<std::string_view>& words);

/// Every question throws `Refused` where the answer is not of the kind or the size asked for.
class Node {
public:
    Node(const Json& json, std::string path)
        : json_(&json)
        , path_(std::move(path)) {}

    const std::string& path() const { return path_; }
    [[noreturn]] void refuseWith(std::string rule) const;

    /// The value of a key that must be there.
    Node at(const std::string& key) const;
    /// Empty where the object has no such key, as in files from before there was one.
    std::optional<Node> maybe(const std::string& key) const;
    /// The items of a list, refused before anything is made of them if there are too many.
    std::vector<Node> items(std::size_t least, std::size_t most) const;

    /// The keys of an object with their values, refused if there are too many.
    std::vector<std::pair<std::string, Node>> entries(std::size_t most) const;
    bool isText() const { return json_->kind == Json::Kind::Text; }

    const std::string& text() const;
    const std::string& text(std::size_t mostBytes) const;
    bool flag() const;
    std::int64_t whole(std::int64_t least, std::int64_t most) const;
    std::int64_t wholeNumber() const;
    int smallWhole(int least, int most) const { return static_cast<int>(whole(least, most)); }
    Length length() const { return Length::nm(wholeNumber()); }
    Length length(Length least, Length most) const;
    double real() const;

    template <class Value, std::size_t n>
    Value name(const std::array<FileName<Value>, n>& names) const {
        const std::string& given = text();
        std::vector<std::string_view> known;
        for (const FileName<Value>& each : names) {
            if (each.text == given) {
                return each.value;
            }
            known.push_back(each.text);
        }
        refuseWith(oneOf(known));
    }

private:
    const Json* json_;
    std::string path_;
};

/// The name of a value, as a text of the file.
template <class Value, std::size_t n>
Json named(const std::array<FileName<Value>, n>& names, Value value) {
    const auto at = std::find_if(names.begin(), names.end(),
                                 [&](const FileName<Value>& name) { return name.value == value; });
    return Json::ofText(std::string(at == names.end() ? names.front().text : at->text));
}

inline Json ofLength(Length length) {
    return Json::ofNumber(length.nm());
}

}  // namespace kerfwright
