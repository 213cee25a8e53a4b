#include "core/shop/pricing.h"

#include "core/words/say.h"

#include <algorithm>

namespace kerfwright {
namespace {

constexpr std::int64_t greatestAmount = 1'000'000'000;  ///< hundredths
constexpr std::int64_t percent = 1'000;                 ///< thousandths

std::size_t decimalsOf(PriceKind kind) {
    return kind == PriceKind::Count ? 0 : kind == PriceKind::Money ? 2 : 3;
}

std::string withUnit(std::int64_t amount, const PriceSetting& setting) {
    // The unit of money says what it buys, which a limit need not repeat.
    const std::string unit = setting.kind == PriceKind::Money ? "" : setting.unit;
    return amountText(amount, setting.kind) + (unit.empty() ? "" : " " + unit);
}

Fault outside(const PriceSetting& setting, std::string value) {
    return {say(setting.name),
            say("must be from {1} to {2}", withUnit(setting.least, setting),
                withUnit(setting.greatest, setting)),
            std::move(value)};
}

}  // namespace

const FinalRoundingInfo& infoOf(FinalRounding rounding) {
    const auto* const found =
        std::find_if(finalRoundings.begin(), finalRoundings.end(),
                     [&](const FinalRoundingInfo& info) { return info.rounding == rounding; });
    return found == finalRoundings.end() ? finalRoundings.front() : *found;
}

void PriceSetting::set(Pricing& pricing, std::optional<std::int64_t> to) const {
    if (price != nullptr) {
        pricing.*price = to;
    } else if (to) {
        pricing.*value = *to;
    }
}

const std::vector<PriceSetting>& priceSettings() {
    static constexpr auto yours =
        noted("yours to say; left empty it is not known, and the quote says so");
    static constexpr auto judged = noted("common practice, no source; yours to set");
    static constexpr auto formula =
        noted("an American price formula: materials and labour, 15 % overhead, 10 % profit, "
              "selling cost; yours to set");
    using Kind = PriceKind;
    static const std::vector<PriceSetting> settings{
        {"boards", noted("Boards quoted"), "", noted("yours to say; none saves work on the next"),
         Kind::Count, &Pricing::boards, nullptr, 1, 1000},
        {"bench-hour", noted("Bench work"), noted("an hour"), yours, Kind::Money, nullptr,
         &Pricing::benchHour, 0, greatestAmount},
        {"glue-kilogram", noted("Glue"), noted("a kg"), yours, Kind::Money, nullptr,
         &Pricing::glueKilogram, 0, greatestAmount},
        {"finish-litre", noted("Finish"), noted("a litre"), yours, Kind::Money, nullptr,
         &Pricing::finishLitre, 0, greatestAmount},
        {"finish-spread", noted("A litre of finish covers"), "m²", judged, Kind::Decimal,
         &Pricing::finishSpread, nullptr, 100, 1'000'000},
        {"sundries", noted("Sundries"), noted("a board"),
         noted("yours to say: abrasives, screws, feet, packing"), Kind::Money, &Pricing::sundries,
         nullptr, 0, greatestAmount},
        {"overhead-percent", noted("Overhead"), "%", formula, Kind::Decimal, &Pricing::overhead,
         nullptr, 0, 500 * percent},
        {"profit-percent", noted("Profit"), "%", formula, Kind::Decimal, &Pricing::profit, nullptr,
         0, 500 * percent},
        {"selling-fixed", noted("Selling"), noted("a sale"),
         noted("yours to say: a stall, a listing, carriage"), Kind::Money, &Pricing::sellingFixed,
         nullptr, 0, greatestAmount},
        {"selling-percent", noted("Selling, of the price"), "%",
         noted("yours to say: what a shop or site keeps"), Kind::Decimal, &Pricing::selling,
         nullptr, 0, 95 * percent},
        {"tax-percent", noted("Tax"), "%", noted("yours to say"), Kind::Decimal, &Pricing::tax,
         nullptr, 0, 100 * percent},
    };
    return settings;
}

std::string amountText(std::int64_t amount, PriceKind kind, DecimalMark mark) {
    const std::size_t decimals = decimalsOf(kind);
    std::string digits = std::to_string(amount < 0 ? -amount : amount);
    if (digits.size() <= decimals) {
        digits.insert(0, decimals + 1 - digits.size(), '0');
    }
    std::string part = digits.substr(digits.size() - decimals);
    digits.resize(digits.size() - decimals);
    while (kind != PriceKind::Money && !part.empty() && part.back() == '0') {
        part.pop_back();
    }
    return (amount < 0 ? "−" : "") + digits + (part.empty() ? "" : decimalMark(mark) + part);
}

Result<std::int64_t> readAmount(std::string_view text, const PriceSetting& setting) {
    const std::size_t decimals = decimalsOf(setting.kind);
    const auto isDigit = [](char c) { return c >= '0' && c <= '9'; };
    const auto trimmed = [](std::string_view words) {
        const auto from = words.find_first_not_of(" \t");
        const auto to = words.find_last_not_of(" \t");
        return from == std::string_view::npos ? std::string_view()
                                              : words.substr(from, to - from + 1);
    };
    std::string_view rest = trimmed(text);
    const std::string_view unit = setting.unit;
    if (setting.kind == PriceKind::Decimal && rest.ends_with(unit)) {
        rest = trimmed(rest.substr(0, rest.size() - unit.size()));
    }
    const std::size_t mark = rest.find_first_of(".,");
    const std::string_view whole = rest.substr(0, mark);
    const std::string_view part =
        mark == std::string_view::npos ? std::string_view() : rest.substr(mark + 1);
    if (whole.size() + part.size() == 0 || part.size() > decimals ||
        (mark != std::string_view::npos && part.empty()) ||
        !std::all_of(whole.begin(), whole.end(), isDigit) ||
        !std::all_of(part.begin(), part.end(), isDigit)) {
        return Fault{say(setting.name),
                     decimals == 0 ? say("must be a whole number")
                                   : say("must be a number with at most {1} decimals", decimals),
                     rest.empty() ? say("nothing") : std::string(rest)};
    }
    std::int64_t amount = 0;
    for (const char digit :
         std::string(whole) + std::string(part) + std::string(decimals - part.size(), '0')) {
        amount = amount * 10 + (digit - '0');
        if (amount > setting.greatest) {
            return outside(setting, std::string(rest));
        }
    }
    if (amount < setting.least) {
        return outside(setting, std::string(rest));
    }
    return amount;
}

std::vector<Fault> faults(const Pricing& pricing) {
    std::vector<Fault> found;
    for (const PriceSetting& setting : priceSettings()) {
        const std::optional<std::int64_t> value = setting.of(pricing);
        if (value && (*value < setting.least || *value > setting.greatest)) {
            found.push_back(outside(setting, withUnit(*value, setting)));
        }
    }
    return found;
}

}  // namespace kerfwright
