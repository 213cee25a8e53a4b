// What the maker has seen to of the cautions of a plan, and what each of them said then.
#pragma once

#include "core/measure/length.h"
#include "core/measure/result.h"

#include <cstddef>
#include <cstdint>
#include <string>
#include <variant>
#include <vector>

namespace kerfwright {

/// A number or a text that a caution rests upon, whatever language it is said in and whatever unit
/// lengths are shown in.
struct Fact {
    std::string name;  ///< lower case letters, digits and hyphens; a length's ends in "-nm"
    std::variant<std::int64_t, std::string> value;
    friend bool operator==(const Fact&, const Fact&) = default;
};

/// `name` without "-nm".
Fact fact(std::string name, Length length);
Fact fact(std::string name, std::int64_t number);
/// The text as `brief` has it.
Fact fact(std::string name, const std::string& text);
/// The text itself, or sixteen hexadecimal digits made from it where it is longer than
/// `SeenToLimits::textBytes`: enough to see that it changed.
std::string brief(const std::string& text);

/// A caution that was seen to. It counts as long as the same caution says the same.
struct SeenTo {
    std::string rule;        ///< `Caution::key`
    std::string about = {};  ///< which of several cautions of that rule; empty: the only one
    std::vector<Fact> said = {};
    friend bool operator==(const SeenTo&, const SeenTo&) = default;
};

struct SeenToLimits {
    static constexpr std::size_t entries = 256;
    static constexpr std::size_t facts = 32;      ///< of an entry
    static constexpr std::size_t nameBytes = 60;  ///< of a rule or a fact
    static constexpr std::size_t textBytes = 200;
};

/// Too many entries or facts, names that are none, texts that are too long, the same entry or the
/// same fact twice.
std::vector<Fault> faults(const std::vector<SeenTo>& seenTo);

}  // namespace kerfwright
