#include "core/bench/quote.h"

#include "core/measure/number.h"
#include "core/words/say.h"

#include <algorithm>
#include <cmath>

namespace kerfwright {
namespace {

using detail::Wide;

constexpr std::int64_t million = 1'000'000;
constexpr std::int64_t whole = 100'000;  ///< 100 % in thousandths
/// No line and no sum of a quote is more, so that none runs over.
constexpr std::int64_t greatestSum = 1'000'000'000'000'000;

/// Halves up; neither is negative.
constexpr Wide nearest(Wide value, Wide divisor) {
    return (value + divisor / 2) / divisor;
}

/// "0.412", at most `decimals` of them.
std::string decimal(std::int64_t value, std::int64_t scale, int decimals) {
    Wide unit = 1;
    for (int i = 0; i < decimals; ++i) {
        unit *= 10;
    }
    const auto rounded = static_cast<std::int64_t>(nearest(value * unit, scale));
    const auto ones = static_cast<std::int64_t>(rounded / unit);
    std::string part = std::to_string(static_cast<std::int64_t>(rounded % unit));
    part.insert(0,
                static_cast<std::size_t>(decimals) -
                    std::min<std::size_t>(part.size(), static_cast<std::size_t>(decimals)),
                '0');
    while (!part.empty() && part.back() == '0') {
        part.pop_back();
    }
    return std::to_string(ones) + (part.empty() ? "" : decimalMark() + part);
}

std::string percentText(std::int64_t thousandths) {
    return amountText(thousandths, PriceKind::Decimal) + " %";
}

std::string boardsText(std::int64_t count) {
    return sayCount(count, "{1} board", "{1} boards");
}

std::string hoursText(std::int64_t minutes) {
    const std::int64_t hours = minutes / 60;
    const std::string rest = std::to_string(minutes % 60) + " min";
    return hours == 0 ? rest : std::to_string(hours) + " h " + rest;
}

const PriceSetting& settingOf(const std::string& key) {
    const auto& rows = priceSettings();
    return *std::find_if(rows.begin(), rows.end(),
                         [&](const PriceSetting& row) { return key == row.key; });
}

/// Whole numbers of what is weighed or reckoned; what is not finite or beyond all boards is 0 or
/// the greatest that is reckoned with.
std::int64_t rounded(double amount) {
    constexpr double most = 1e9;
    return std::llround(std::isfinite(amount) ? std::clamp(amount, 0.0, most) : 0);
}

class Reckoner {
public:
    Reckoner(const Job& job, const TimberCost& timber, const Pricing& pricing,
             const Notation& notation, const std::string& currency)
        : job_(job)
        , timber_(timber)
        , pricing_(pricing)
        , notation_(notation)
        , currency_(currency) {
        quote_.boards = pricing.boards;
        quote_.basis = timber.basis;
    }

    Quote done() && {
        timber();
        glue();
        finish();
        sundries();
        quote_.materials = sum("materials", say("Materials"));
        work();
        overhead();
        quote_.cost = sum("cost", say("What it costs to make"));
        profit();
        quote_.net = sum("net", say("Before selling"));
        selling();
        quote_.price = sum("price", say("Price"));
        rounding();
        quote_.asked = sum("asked", say("Price asked"));
        tax();
        quote_.total = sum("total", say("To pay"));
        return std::move(quote_);
    }

private:
    /// "58 g × 3 boards"; "58 g" where it is one.
    std::string timesBoards(const std::string& words) const {
        return pricing_.boards == 1 ? words : words + " × " + boardsText(pricing_.boards);
    }
    std::string bare(std::int64_t hundredths) const { return moneyWords(hundredths, {}); }
    std::string money(std::int64_t hundredths) const { return moneyWords(hundredths, currency_); }

    void miss(const std::string& what) {
        if (std::find(quote_.missing.begin(), quote_.missing.end(), what) == quote_.missing.end()) {
            quote_.missing.push_back(what);
        }
    }

    /// Counts a line, unless its amount is beyond what can be reckoned.
    void add(QuoteLine line, std::optional<Wide> amount) {
        if (amount && *amount + sum_ > greatestSum) {
            amount.reset();
            miss(say("{1}, which is more than {2}", line.words, money(greatestSum)));
            line.working = say("more than can be reckoned");
        }
        if (amount) {
            line.amount = static_cast<std::int64_t>(*amount);
            sum_ += *line.amount;
        }
        quote_.lines.push_back(std::move(line));
    }

    std::int64_t sum(const char* key, std::string words) {
        QuoteLine line;
        line.key = key;
        line.isSum = true;
        line.words = std::move(words);
        line.amount = sum_;
        quote_.lines.push_back(std::move(line));
        return sum_;
    }

    /// `count` of a unit, of which `per` cost the price of the setting; without it `lacking` is
    /// missing.
    void addPriced(QuoteLine line, std::int64_t count, std::int64_t per,
                   const std::string& lacking) {
        const PriceSetting& setting = settingOf(line.setting);
        const std::optional<std::int64_t> price = setting.of(pricing_);
        if (!price && count > 0) {
            line.rate = say("price not known");
            miss(lacking);
            add(std::move(line), std::nullopt);
            return;
        }
        if (price) {
            line.rate = money(*price) + " " + say(setting.unit);
            line.working += " × " + bare(*price) + (per == 1 ? "" : " ÷ " + std::to_string(per));
        }
        add(std::move(line), nearest(Wide{count} * price.value_or(0), per));
    }

    void timber() {
        const bool inches = notation_.unit == Unit::Inches;
        // Planks for some boards are bought as often as it takes for all.
        const std::int64_t times =
            (pricing_.boards + timber_.boards - 1) / std::max(timber_.boards, 1);
        for (const TimberCostLine& from : timber_.lines) {
            QuoteLine line;
            line.key = "timber";
            line.words = from.wood + ": " + from.words;
            const Volume all = from.volume * times;
            line.unit = inches ? "board feet" : "m³";
            line.count = std::llround((inches ? all.toBoardFeet() : all.toCubicMetres()) *
                                      static_cast<double>(million));
            line.timber = all;
            line.quantity = formatVolume(all, notation_.unit);
            if (!from.amount) {
                line.rate = say("price not known");
                miss(say("the price of {1}", from.wood));
                add(std::move(line), std::nullopt);
                continue;
            }
            if (from.price.minorPerCubicMetre > 0) {
                const std::int64_t price =
                    inches ? hundredthsPerBoardFoot(from.price) : from.price.minorPerCubicMetre;
                line.rate =
                    inches ? say("{1} a board foot", money(price)) : say("{1} a m³", money(price));
                const std::int64_t one = std::llround(
                    (inches ? from.volume.toBoardFeet() : from.volume.toCubicMetres()) *
                    static_cast<double>(million));
                const std::string amount = decimal(one, million, 6);
                line.working = inches ? say("{1} board feet × {2}", amount, bare(price))
                                      : amount + " m³ × " + bare(price);
            } else {
                line.rate = say("as priced");
                line.working = say("prices of the planks: {1}", bare(*from.amount));
            }
            if (times > 1) {
                line.working = sayCount(times, "{2}, {1} time", "{2}, {1} times", line.working);
            }
            add(std::move(line), Wide{*from.amount} * times);
        }
        for (const std::string& lacking : timber_.missing) {
            QuoteLine line;
            line.key = "timber";
            line.words = lacking;
            line.rate = say("price not known");
            miss(lacking);
            add(std::move(line), std::nullopt);
        }
    }

    void glue() {
        const std::int64_t grams = rounded(job_.glue.grams);
        const std::int64_t all = grams * pricing_.boards;
        QuoteLine line{.key = "glue", .words = say("Glue"), .setting = "glue-kilogram"};
        line.quantity = std::to_string(all) + " g";
        line.unit = "g";
        line.count = all * million;
        line.working = timesBoards(std::to_string(grams) + " g");
        addPriced(std::move(line), all, 1000, say("the price of glue"));
    }

    void finish() {
        double squareMetres = 0;
        std::int64_t coats = 0;
        for (const BenchTask& task : job_.hours.tasks) {
            for (const TimeTerm& term : task.terms) {
                if (std::string_view(term.setting) == "coat-minutes") {
                    squareMetres = term.count;
                    ++coats;
                }
            }
        }
        const std::int64_t area = rounded(squareMetres * 1000);  // thousandths of a m2
        const auto millilitres =
            static_cast<std::int64_t>(nearest(Wide{area} * coats * 1000, pricing_.finishSpread));
        const std::int64_t all = millilitres * pricing_.boards;
        QuoteLine line{.key = "finish", .setting = "finish-litre"};
        line.words = coats == 0 ? say("Finish, no coats")
                                : sayCount(coats, "Finish, {1} coat", "Finish, {1} coats");
        line.quantity = std::to_string(all) + " ml";
        line.unit = "ml";
        line.count = all * million;
        line.working = say("{1} m² × {2} ÷ {3} m² a litre = {4}", decimal(area, 1000, 3), coats,
                           amountText(pricing_.finishSpread, PriceKind::Decimal),
                           timesBoards(std::to_string(millilitres) + " ml"));
        addPriced(std::move(line), all, 1000, say("the price of finish"));
    }

    void sundries() {
        QuoteLine line{.key = "sundries", .words = say("Sundries"), .setting = "sundries"};
        line.quantity = boardsText(pricing_.boards);
        line.unit = "boards";
        line.count = pricing_.boards * million;
        line.working = line.quantity;
        addPriced(std::move(line), pricing_.boards, 1, say("the price of sundries"));
    }

    void work() {
        const std::int64_t minutes = toldMinutes(job_.hours.minutes);
        const std::int64_t all = minutes * pricing_.boards;
        QuoteLine line{.key = "work", .words = say("Bench work"), .setting = "bench-hour"};
        line.quantity = hoursText(all);
        line.unit = "min";
        line.count = all * million;
        line.working = timesBoards(std::to_string(minutes) + " min");
        addPriced(std::move(line), all, 60, say("the price of a bench hour"));
        quote_.work = quote_.lines.back().amount.value_or(0);
    }

    /// A percentage of the sum so far.
    void addPercent(QuoteLine line, std::int64_t part) {
        line.rate = percentText(part);
        if (line.working.empty()) {
            line.working = ofSum(part);
        }
        add(std::move(line), nearest(Wide{sum_} * part, whole));
    }
    std::string ofSum(std::int64_t part) const { return bare(sum_) + " × " + percentText(part); }

    void overhead() {
        addPercent({.key = "overhead",
                    .words = say("Overhead, on materials and bench work"),
                    .setting = "overhead-percent"},
                   pricing_.overhead);
    }

    void profit() {
        QuoteLine line{.key = "profit",
                       .words = say("Profit, on what it costs to make"),
                       .setting = "profit-percent"};
        if (pricing_.profit != 0) {
            // The same as a margin, since the two are easily taken for one another.
            const auto margin = static_cast<std::int64_t>(
                nearest(Wide{pricing_.profit} * whole, Wide{whole} + pricing_.profit));
            line.working = say("{1}; a margin of {2} % of what is left after selling",
                               ofSum(pricing_.profit), decimal(margin, 1000, 1));
        }
        addPercent(std::move(line), pricing_.profit);
    }

    void selling() {
        QuoteLine fixed{
            .key = "selling-fixed", .words = say("Selling, each sale"), .setting = "selling-fixed"};
        fixed.rate = say("{1} a sale", money(pricing_.sellingFixed));
        fixed.working = sayIn("price", "once");
        add(std::move(fixed), pricing_.sellingFixed);

        const std::int64_t part = pricing_.selling;
        const Wide price = nearest(Wide{sum_} * whole, whole - part);
        QuoteLine line{
            .key = "selling", .words = say("Selling, of the price"), .setting = "selling-percent"};
        line.rate = percentText(part);
        line.working = part == 0 ? percentText(0)
                                 : say("{1} ÷ (100 − {2}) × 100, less {1}", bare(sum_),
                                       amountText(part, PriceKind::Decimal));
        add(std::move(line), price - sum_);
    }

    void rounding() {
        const FinalRoundingInfo& info = infoOf(pricing_.rounding);
        Wide asked = nearest(sum_, info.step) * info.step;
        if (asked == 0 && sum_ > 0) {
            asked = info.step;
        }
        QuoteLine line{.key = "rounding", .words = say("Rounding"), .setting = "rounding"};
        line.rate = say(info.name);
        line.working = bare(static_cast<std::int64_t>(asked)) + " − " + bare(sum_);
        add(std::move(line), asked - sum_);
    }

    void tax() {
        addPercent(
            {.key = "tax", .words = say("Tax, on the price asked"), .setting = "tax-percent"},
            pricing_.tax);
        quote_.tax = quote_.lines.back().amount.value_or(0);
    }

    const Job& job_;
    const TimberCost& timber_;
    const Pricing& pricing_;
    const Notation& notation_;
    const std::string& currency_;
    Quote quote_;
    std::int64_t sum_ = 0;
};

}  // namespace

const QuoteLine* Quote::line(std::string_view key) const {
    const auto found = std::find_if(lines.begin(), lines.end(),
                                    [&](const QuoteLine& line) { return line.key == key; });
    return found == lines.end() ? nullptr : &*found;
}

Quote quote(const Job& job, const TimberCost& timber, const Pricing& pricing,
            const Notation& notation, const std::string& currency) {
    return Reckoner(job, timber, pricing, notation, currency).done();
}

TimberCost timberAsSawn(const Totals& totals, const std::vector<Wood>& woods) {
    TimberCost cost;
    cost.basis = say("Rough strips as they are sawn, without the waste of whole planks.");
    for (std::size_t i = 0; i < totals.timberByWood.size() && i < woods.size(); ++i) {
        if (totals.timberByWood[i] > Volume()) {
            cost.lines.push_back({woods[i].name, say("as sawn"), totals.timberByWood[i],
                                  kerfwright::cost(totals.timberByWood[i], woods[i].price),
                                  woods[i].price});
        }
    }
    return cost;
}

std::string moneyWords(std::int64_t hundredths, const std::string& currency, DecimalMark mark) {
    return amountText(hundredths, PriceKind::Money, mark) +
           (currency.empty() ? "" : " " + currency);
}

std::string incompleteWords(const Quote& quote) {
    if (quote.isComplete()) {
        return {};
    }
    return sayCount(quote.missing.size(),
                    "Incomplete. Missing: {2}. The sums are without it, so that they are the least "
                    "it can come to.",
                    "Incomplete. Missing: {2}. The sums are without them, so that they are the "
                    "least it can come to.",
                    sayList(quote.missing));
}

std::string missingWords(const Quote& quote) {
    return quote.isComplete() ? std::string() : say("Missing: {1}.", sayList(quote.missing));
}

std::string eachWords(const Quote& quote, const std::string& currency) {
    if (quote.boards == 1) {
        return {};
    }
    const std::string each =
        moneyWords(static_cast<std::int64_t>(nearest(quote.total, quote.boards)), currency);
    return quote.total % quote.boards == 0 ? say("{1} each", each) : say("about {1} each", each);
}

}  // namespace kerfwright
