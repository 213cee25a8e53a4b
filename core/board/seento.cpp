#include "core/board/seento.h"

#include "core/measure/hexadecimal.h"
#include "core/words/say.h"

#include <algorithm>
#include <set>
#include <utility>

namespace kerfwright {
namespace {

bool isName(const std::string& name) {
    return !name.empty() && name.size() <= SeenToLimits::nameBytes &&
           std::all_of(name.begin(), name.end(), [](char c) {
               return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '-';
           });
}

/// FNV-1a.
std::string digest(const std::string& text) {
    std::uint64_t hash = 14'695'981'039'346'656'037U;
    for (const char c : text) {
        hash ^= static_cast<unsigned char>(c);
        hash *= 1'099'511'628'211U;
    }
    return hexadecimal(hash, 16);
}

/// The faults of one list, each with the entry that it is in.
class Checks {
public:
    explicit Checks(std::vector<Fault>& all)
        : all_(all) {}

    void begin(std::size_t entry) { entry_ = entry + 1; }
    void refuse(std::string rule, std::string value) {
        all_.push_back({say("Seen to, entry {1}", entry_), std::move(rule), std::move(value)});
    }
    void name(const std::string& name) {
        if (!isName(name)) {
            refuse(say("must have names of 1 to {1} lower case letters, digits and hyphens",
                       SeenToLimits::nameBytes),
                   name.empty() ? say("nothing") : "“" + name + "”");
        }
    }
    void text(const std::string& text) {
        if (text.size() > SeenToLimits::textBytes) {
            refuse(say("must be at most {1} bytes long", SeenToLimits::textBytes),
                   sayCount(text.size(), "{1} byte", "{1} bytes"));
        }
    }

private:
    std::vector<Fault>& all_;
    std::size_t entry_ = 0;
};

}  // namespace

std::string brief(const std::string& text) {
    return text.size() <= SeenToLimits::textBytes ? text : digest(text);
}

Fact fact(std::string name, Length length) {
    return {std::move(name) + "-nm", length.nm()};
}

Fact fact(std::string name, std::int64_t number) {
    return {std::move(name), number};
}

Fact fact(std::string name, const std::string& text) {
    return {std::move(name), brief(text)};
}

std::vector<Fault> faults(const std::vector<SeenTo>& seenTo) {
    std::vector<Fault> all;
    if (seenTo.size() > SeenToLimits::entries) {
        all.push_back({say("Seen to"), say("must have at most {1} entries", SeenToLimits::entries),
                       std::to_string(seenTo.size())});
        return all;
    }
    Checks checks(all);
    for (std::size_t i = 0; i < seenTo.size(); ++i) {
        const SeenTo& one = seenTo[i];
        checks.begin(i);
        checks.name(one.rule);
        checks.text(one.about);
        if (one.said.size() > SeenToLimits::facts) {
            checks.refuse(say("must say at most {1} things", SeenToLimits::facts),
                          std::to_string(one.said.size()));
        }
        std::set<std::string> names;
        for (const Fact& fact : one.said) {
            checks.name(fact.name);
            if (const auto* text = std::get_if<std::string>(&fact.value)) {
                checks.text(*text);
            }
            if (!names.insert(fact.name).second) {
                checks.refuse(say("must say each thing only once"), "“" + fact.name + "”");
            }
        }
        if (std::find(seenTo.begin(), seenTo.begin() + static_cast<std::ptrdiff_t>(i), one) !=
            seenTo.begin() + static_cast<std::ptrdiff_t>(i)) {
            checks.refuse(say("must differ from the entries before it"), "“" + one.rule + "”");
        }
    }
    return all;
}

}  // namespace kerfwright
