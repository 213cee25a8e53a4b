// Which form of a word goes with which count: the expression in C that a catalogue has in its head,
// as in the manual of GNU gettext, "Additional functions for plural forms":
// "nplurals=2; plural=(n != 1);"
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace kerfwright {

class Plurals {
public:
    /// The rule of English and German.
    Plurals() = default;
    /// Nothing where the rule cannot be read.
    static std::optional<Plurals> read(std::string_view rule);

    /// 0-based, and within the forms there are; what a rule leaves undefined is form 0.
    std::size_t form(long long count) const;

private:
    std::string expression_ = "n!=1";
    std::size_t forms_ = 2;
};

}  // namespace kerfwright
