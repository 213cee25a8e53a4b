#include "core/project/node.h"

#include "core/measure/notation.h"
#include "core/words/say.h"

#include <charconv>
#include <cmath>

namespace kerfwright {

void refuse(std::string entry, std::string rule, std::string value) {
    throw Refused{{std::move(entry), std::move(rule), std::move(value)}};
}

void Node::refuseWith(std::string rule) const {
    refuse(path_, std::move(rule), shown(*json_));
}

std::string oneOf(const std::vector<std::string_view>& words) {
    std::string list;
    for (const std::string_view word : words) {
        list += (list.empty() ? "" : ", ") + std::string(word);
    }
    return say("must be one of {1}", list);
}

std::optional<Node> Node::maybe(const std::string& key) const {
    if (json_->kind != Json::Kind::Object) {
        refuseWith(say("must be an object"));
    }
    const Json* found = json_->find(key);
    if (found == nullptr) {
        return std::nullopt;
    }
    return Node(*found, path_.empty() ? key : path_ + "." + key);
}

Node Node::at(const std::string& key) const {
    const std::optional<Node> found = maybe(key);
    if (!found) {
        refuse(path_.empty() ? key : path_ + "." + key, say("must be given"), say("nothing"));
    }
    return *found;
}

std::vector<Node> Node::items(std::size_t least, std::size_t most) const {
    if (json_->kind != Json::Kind::Array) {
        refuseWith(say("must be a list"));
    }
    const std::size_t count = json_->items.size();
    if (count < least || count > most) {
        refuse(path_,
               least == most ? sayCount(least, "must have {1} item", "must have {1} items")
                             : say("must have from {1} to {2} items", least, most),
               std::to_string(count));
    }
    std::vector<Node> all;
    all.reserve(count);
    for (std::size_t i = 0; i < count; ++i) {
        all.emplace_back(json_->items[i], path_ + "[" + std::to_string(i) + "]");
    }
    return all;
}

std::vector<std::pair<std::string, Node>> Node::entries(std::size_t most) const {
    if (json_->kind != Json::Kind::Object) {
        refuseWith(say("must be an object"));
    }
    if (json_->keys.size() > most) {
        refuse(path_, say("must have at most {1} keys", most), std::to_string(json_->keys.size()));
    }
    std::vector<std::pair<std::string, Node>> all;
    all.reserve(json_->keys.size());
    for (std::size_t i = 0; i < json_->keys.size(); ++i) {
        all.emplace_back(json_->keys[i], Node(json_->items[i], path_ + "." + json_->keys[i]));
    }
    return all;
}

const std::string& Node::text() const {
    if (json_->kind != Json::Kind::Text) {
        refuseWith(say("must be a text"));
    }
    return json_->text;
}

const std::string& Node::text(std::size_t mostBytes) const {
    if (text().size() > mostBytes) {
        refuseWith(say("must be at most {1} bytes long", mostBytes));
    }
    return json_->text;
}

bool Node::flag() const {
    if (json_->kind != Json::Kind::Boolean) {
        refuseWith(say("must be true or false"));
    }
    return json_->text == "true";
}

std::int64_t Node::whole(std::int64_t least, std::int64_t most) const {
    const std::int64_t value = wholeNumber();
    if (value < least || value > most) {
        refuseWith(say("must be from {1} to {2}", least, most));
    }
    return value;
}

Length Node::length(Length least, Length most) const {
    const Length value = length();
    if (value < least || value > most) {
        const Notation style = Notation::millimetres(6);
        refuse(path_, say("must be from {1} to {2}", format(least, style), format(most, style)),
               shown(*json_) + " nm");
    }
    return value;
}

double Node::real() const {
    double value = 0;
    const std::string& text = json_->text;
    if (json_->kind != Json::Kind::Number ||
        std::from_chars(text.data(), text.data() + text.size(), value).ec != std::errc() ||
        !std::isfinite(value)) {
        refuseWith(say("must be a number"));
    }
    return value;
}

std::int64_t Node::wholeNumber() const {
    std::int64_t value = 0;
    const std::string& text = json_->text;
    const char* const end = text.data() + text.size();
    if (json_->kind != Json::Kind::Number) {
        refuseWith(say("must be a whole number"));
    }
    const auto [rest, error] = std::from_chars(text.data(), end, value);
    if (rest != end || error == std::errc::invalid_argument) {
        refuseWith(say("must be a whole number, without point or exponent"));
    }
    if (error != std::errc()) {
        refuseWith(say("must be a whole number of at most 64 bits"));
    }
    return value;
}

}  // namespace kerfwright
