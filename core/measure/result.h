// A value, or the fault that kept it from being made.
#pragma once

#include "core/words/say.h"

#include <string>
#include <utility>
#include <variant>

namespace kerfwright {

/// What is wrong with an entry: which one, the rule it breaks, the value it was given.
struct Fault {
    std::string entry;
    std::string rule;
    std::string value;

    /// "Kerf: must be more than 0; got -1/8 in."
    std::string text() const {
        return value.empty() ? say("{1}: {2}.", entry, rule)
                             : say("{1}: {2}; got {3}.", entry, rule, value);
    }
    friend bool operator==(const Fault&, const Fault&) = default;
};

/// Either a `T` or a `Fault`. Ask `ok()` before either is taken.
template <class T>
class Result {
public:
    Result(T value)
        : held_(std::in_place_index<0>, std::move(value)) {}
    Result(Fault fault)
        : held_(std::in_place_index<1>, std::move(fault)) {}

    bool ok() const { return held_.index() == 0; }
    explicit operator bool() const { return ok(); }
    const T& value() const& { return std::get<0>(held_); }
    T&& value() && { return std::get<0>(std::move(held_)); }
    const T& operator*() const { return value(); }
    const T* operator->() const { return &value(); }
    const Fault& fault() const { return std::get<1>(held_); }

private:
    std::variant<T, Fault> held_;
};

}  // namespace kerfwright
