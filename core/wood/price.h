// Prices of timber, in whatever money the maker reckons in. The core knows hundredths of it and no
// names: the project says what it is called.
#pragma once

#include "core/measure/length.h"
#include "core/measure/number.h"
#include "core/measure/result.h"

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace kerfwright {

/// Exact, in the hundredths of whatever money the maker reckons in; 0 where not known.
struct Price {
    std::int64_t minorPerCubicMetre = 0;
    friend bool operator==(const Price&, const Price&) = default;
};

inline constexpr std::int64_t greatestPrice = 1'000'000'000'000;  ///< hundredths for a cubic metre

/// A board foot is so small a part of a cubic metre that a price for it comes back unchanged.
Price pricePerBoardFoot(std::int64_t hundredths);
std::int64_t hundredthsPerBoardFoot(Price price);

/// What that much timber costs, in hundredths, to the nearest one. Empty where the price is not
/// known. The volume is that of the rough timber: what is sold by whole boards costs more.
std::optional<std::int64_t> cost(Volume timber, Price price);

/// "12.50": two decimals. `parseMoney` reads them back.
std::string formatMoney(std::int64_t hundredths, DecimalMark mark = DecimalMark::Spoken);
/// "12.50", "12,5", "12", at most two decimals and no sign. Faults name `entry`.
Result<std::int64_t> parseMoney(std::string_view text, std::string_view entry);

}  // namespace kerfwright
