// What a board costs to make and what to ask for it, line by line; nothing is hidden in a factor.
//
//   materials  = timber as paid for + glue + finish + sundries
//   cost       = materials + bench work + overhead, a percentage of those two
//   net        = cost + profit, a percentage on the cost (a markup, not a margin)
//   price      = (net + what a sale costs) / (1 - what selling keeps of the price)
//   asked      = price, rounded as the maker likes
//   total      = asked + tax
//
// All money is whole hundredths. Every line is rounded for itself, halves up, from the quantities
// that it shows, and every sum adds up the lines as they are shown. Several boards take so many
// times the work and the material of one.
#pragma once

#include "core/bench/job.h"
#include "core/measure/number.h"
#include "core/shop/pricing.h"
#include "core/wood/timbercost.h"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace kerfwright {

struct QuoteLine {
    std::string key = {};       ///< "timber", "glue", "materials"
    bool isSum = false;         ///< of all lines above that are not sums
    std::string words = {};     ///< "Cherry: 3 planks 27 × 150 × 2400 mm, bought"
    std::string quantity = {};  ///< "174 g"; empty for percentages and sums
    std::string rate = {};      ///< "12.00 € a kg", "15 %"; "price not known"
    std::string working = {};   ///< "58 g × 3 boards × 12.00 ÷ 1000"
    std::string setting = {};   ///< key in `priceSettings()`; empty where it comes from elsewhere
    std::int64_t count = 0;     ///< of the quantity, in millionths of `unit`
    std::string unit = {};      ///< "g", "ml", "min", "m³", "board feet"; empty: a percentage
    std::optional<Volume> timber = {};        ///< what `quantity` tells, where it is a volume
    std::optional<std::int64_t> amount = {};  ///< hundredths; empty where a price is not known
    friend bool operator==(const QuoteLine&, const QuoteLine&) = default;
};

/// Sums are of what is known.
struct Quote {
    std::int64_t boards = 1;
    std::vector<QuoteLine> lines;  ///< in the order in which they are reckoned, sums among them
    std::int64_t materials = 0, work = 0, cost = 0, net = 0;
    std::int64_t price = 0;  ///< before rounding
    std::int64_t asked = 0;
    std::int64_t tax = 0;
    std::int64_t total = 0;
    /// What the sums lack, each as in "the price of Cherry".
    std::vector<std::string> missing;
    std::string basis;  ///< of the timber, as a sentence

    bool isComplete() const { return missing.empty(); }
    /// The line of that key; null where there is none.
    const QuoteLine* line(std::string_view key) const;
    friend bool operator==(const Quote&, const Quote&) = default;
};

/// `pricing` must be without faults.
Quote quote(const Job& job, const TimberCost& timber, const Pricing& pricing,
            const Notation& notation, const std::string& currency);

/// The rough strips of one board as they are sawn, at the prices of their woods: without the waste
/// of whole planks, for where nothing is laid out.
TimberCost timberAsSawn(const Totals& totals, const std::vector<Wood>& woods);

/// "−12.50 €"; the currency may be empty.
std::string moneyWords(std::int64_t hundredths, const std::string& currency,
                       DecimalMark mark = DecimalMark::Spoken);
/// "Incomplete. Missing: the price of glue. …"; empty for a complete quote.
std::string incompleteWords(const Quote& quote);
/// The same where no sum is shown: "Missing: the price of glue."
std::string missingWords(const Quote& quote);
/// What a quote of several boards asks for each: "330.00 € each", "about 319.37 € each". Empty for
/// one board.
std::string eachWords(const Quote& quote, const std::string& currency);

}  // namespace kerfwright
