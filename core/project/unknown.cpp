#include "core/project/unknown.h"

#include <string>
#include <string_view>
#include <utility>

namespace kerfwright {
namespace {

Json* itemOf(Json& list, std::string_view key) {
    for (Json& item : list.items) {
        const Json* own = item.find("key");
        if (own != nullptr && own->text == key) {
            return &item;
        }
    }
    return nullptr;
}

}  // namespace

Json unknownIn(const Json& read, const Json& ours) {
    Json rest = Json::object();
    const auto keep = [&rest](const std::string& key, Json inner) {
        if (!inner.items.empty()) {
            rest.add(key, std::move(inner));
        }
    };
    if (ours.kind == Json::Kind::Array) {
        for (std::size_t i = 0; i < ours.items.size(); ++i) {
            if (const Json* key = ours.items[i].find("key")) {
                keep(key->text, unknownIn(read.items[i], ours.items[i]));
            }
        }
        return rest;
    }
    for (std::size_t i = 0; i < ours.items.size(); ++i) {
        if (const Json* inner = read.find(ours.keys[i])) {
            keep(ours.keys[i], unknownIn(*inner, ours.items[i]));
        }
    }
    for (std::size_t i = 0; i < read.items.size(); ++i) {
        if (read.kind == Json::Kind::Object && ours.find(read.keys[i]) == nullptr) {
            rest.add(read.keys[i], read.items[i]);
        }
    }
    return rest;
}

void mergeUnknown(Json& ours, const Json& unknown) {
    for (std::size_t i = 0; i < unknown.items.size(); ++i) {
        const std::string& key = unknown.keys[i];
        const Json& value = unknown.items[i];
        Json* place = ours.kind == Json::Kind::Array ? itemOf(ours, key) : ours.find(key);
        if (place == nullptr && ours.kind == Json::Kind::Object) {
            ours.add(key, value);
        } else if (place != nullptr && value.kind == Json::Kind::Object) {
            mergeUnknown(*place, value);
        }
    }
}

}  // namespace kerfwright
