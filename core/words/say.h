// What the program says to the maker, in the maker's language.
//
// The English sentence stands in the source and is the key to its translations. Whole sentences
// are said, with numbered places for what changes, since other languages put the parts in another
// order: say("The {1} is {2} too wide.", part, length). Words that are kept in files or compared
// by the program are not said.
#pragma once

#include <concepts>
#include <initializer_list>
#include <span>
#include <string>
#include <string_view>

namespace kerfwright {

/// What is put into a place of a sentence: a text that was said or typed, or a whole number.
class Filling {
public:
    Filling(std::string_view text)
        : text_(text) {}
    Filling(const std::string& text)
        : text_(text) {}
    Filling(const char* text)
        : text_(text) {}
    Filling(std::integral auto number)
        : text_(std::to_string(number)) {}

    const std::string& text() const { return text_; }

private:
    std::string text_;
};

/// `sentence` with "{1}" to "{9}" replaced by the fillings. A place without a filling, and a brace
/// that is no place, stay as they are.
std::string filled(std::string_view sentence, std::span<const Filling> fillings);

/// The sentence in the language that is spoken, in English where that has no words for it.
std::string say(std::string_view sentence, std::initializer_list<Filling> fillings);
template <std::convertible_to<Filling>... F>
std::string say(std::string_view sentence, const F&... fillings) {
    return say(sentence, {Filling(fillings)...});
}

/// The same, where one English text is two in other languages. `context` is never shown.
std::string sayIn(std::string_view context, std::string_view sentence,
                  std::initializer_list<Filling> fillings);
template <std::convertible_to<Filling>... F>
std::string sayIn(std::string_view context, std::string_view sentence, const F&... fillings) {
    return sayIn(context, sentence, {Filling(fillings)...});
}

/// "1 panel" or "3 panels": `count` is the filling of "{1}", the others follow it.
std::string sayCount(long long count, std::string_view one, std::string_view many,
                     std::initializer_list<Filling> others);
template <std::convertible_to<Filling>... F>
std::string sayCount(std::integral auto count, std::string_view one, std::string_view many,
                     const F&... others) {
    return sayCount(static_cast<long long>(count), one, many, {Filling(others)...});
}

/// Marks a text that stands in a table and is said where it is shown: say(row.name).
constexpr const char* noted(const char* text) {
    return text;
}
/// The same, for sayIn(context, row.name).
constexpr const char* notedIn(const char* /*context*/, const char* text) {
    return text;
}

/// "A", "A and B", "A, B and C".
template <class Texts>
std::string sayList(const Texts& texts) {
    std::string list;
    for (auto at = texts.begin(); at != texts.end();) {
        const std::string text(*at);
        const bool first = at == texts.begin();
        const bool last = ++at == texts.end();
        list = first ? text : last ? say("{1} and {2}", list, text) : say("{1}, {2}", list, text);
    }
    return list;
}

}  // namespace kerfwright
