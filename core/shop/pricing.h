// What goes into the price of a board beside its timber, and how the price is made of it.
//
// Money is whole hundredths of whatever the maker reckons in; percentages and spreads are whole
// thousandths, so that 8.875 % is exact. No floating point.
#pragma once

#include "core/measure/number.h"
#include "core/measure/result.h"
#include "core/words/say.h"

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace kerfwright {

/// To what the price asked is rounded: to the nearest, halves up, but never to nothing.
enum class FinalRounding { None, Whole, Five, Ten };
struct FinalRoundingInfo {
    FinalRounding rounding;
    std::string_view key;   ///< in files
    std::string_view name;  ///< on screen, to be said
    std::int64_t step;      ///< hundredths
};
inline constexpr std::array finalRoundings{
    FinalRoundingInfo{FinalRounding::None, "none", noted("not rounded"), 1},
    FinalRoundingInfo{FinalRounding::Whole, "whole", noted("to the nearest 1"), 100},
    FinalRoundingInfo{FinalRounding::Five, "five", noted("to the nearest 5"), 500},
    FinalRoundingInfo{FinalRounding::Ten, "ten", noted("to the nearest 10"), 1000}};
const FinalRoundingInfo& infoOf(FinalRounding rounding);

/// Each number is a row of `priceSettings()`, which says its unit and where it is from. What a
/// thing costs is empty where nobody said: there is no money in which a guess would be right.
struct Pricing {
    std::int64_t boards = 1;  ///< alike, in one quote; none of them saves work on the next
    std::optional<std::int64_t> benchHour, glueKilogram, finishLitre;  ///< hundredths
    std::int64_t finishSpread = 12'000;  ///< thousandths of m2 that a litre covers, one coat
    std::int64_t sundries = 0;           ///< hundredths a board: abrasives, screws, packing
    std::int64_t overhead = 15'000;      ///< of materials and bench work together
    std::int64_t profit = 10'000;        ///< on materials, bench work and overhead together
    std::int64_t sellingFixed = 0;       ///< hundredths, once a quote
    std::int64_t selling = 0;            ///< of the price itself, before rounding and tax
    std::int64_t tax = 0;                ///< on the price asked
    FinalRounding rounding = FinalRounding::None;
    std::string customer;    ///< whom the quote is for
    std::string validUntil;  ///< as typed
    friend bool operator==(const Pricing&, const Pricing&) = default;
};

enum class PriceKind {
    Count,
    Money,    ///< in hundredths
    Decimal,  ///< in thousandths
};

struct PriceSetting {
    const char* key;     ///< "bench-hour"
    const char* name;    ///< to be said: "Bench hour"
    const char* unit;    ///< of one that is money, what it is the price of, to be said: "an hour"
    const char* source;  ///< to be said
    PriceKind kind;
    std::int64_t Pricing::*value;                 ///< null where the next is not
    std::optional<std::int64_t> Pricing::*price;  ///< may be not known
    std::int64_t least;                           ///< inclusive
    std::int64_t greatest;                        ///< inclusive

    std::optional<std::int64_t> of(const Pricing& pricing) const {
        return value != nullptr ? std::optional(pricing.*value) : pricing.*price;
    }
    /// Empty, for one that must be known: nothing changes.
    void set(Pricing& pricing, std::optional<std::int64_t> to) const;
};
/// In the order a form shows them.
const std::vector<PriceSetting>& priceSettings();

/// "38.5", "2", "8.875": as an entry shows it and `readAmount` reads it.
std::string amountText(std::int64_t amount, PriceKind kind, DecimalMark mark = DecimalMark::Spoken);
/// Faults name the setting; what has more decimals than its kind is refused, not rounded.
Result<std::int64_t> readAmount(std::string_view text, const PriceSetting& setting);

/// Outside the limits of `priceSettings()`.
std::vector<Fault> faults(const Pricing& pricing);

}  // namespace kerfwright
