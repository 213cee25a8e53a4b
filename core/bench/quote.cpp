#include "core/bench/quote.h"

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
    return std::to_string(ones) + (part.empty() ? "" : "." + part);
}

std::string percentText(std::int64_t thousandths) {
    return amountText(thousandths, PriceKind::Decimal) + " %";
}

std::string boardsText(std::int64_t count) {
    return std::to_string(count) + (count == 1 ? " board" : " boards");
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
        quote_.materials = sum("materials", "Materials");
        work();
        overhead();
        quote_.cost = sum("cost", "What it costs to make");
        profit();
        quote_.net = sum("net", "Before selling");
        selling();
        quote_.price = sum("price", "Price");
        rounding();
        quote_.asked = sum("asked", "Price asked");
        tax();
        quote_.total = sum("total", "To pay");
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
            miss(line.words + ", which is more than " + money(greatestSum));
            line.working = "more than can be reckoned";
        }
        if (amount) {
            line.amount = static_cast<std::int64_t>(*amount);
            sum_ += *line.amount;
        }
        quote_.lines.push_back(std::move(line));
    }

    std::int64_t sum(const char* key, const char* words) {
        QuoteLine line;
        line.key = key;
        line.isSum = true;
        line.words = words;
        line.amount = sum_;
        quote_.lines.push_back(std::move(line));
        return sum_;
    }

    /// `count` of a unit, of which `per` cost the price of the setting.
    void addPriced(QuoteLine line, std::int64_t count, std::int64_t per, const std::string& what) {
        const PriceSetting& setting = settingOf(line.setting);
        const std::optional<std::int64_t> price = setting.of(pricing_);
        if (!price && count > 0) {
            line.rate = "price not known";
            miss("the price of " + what);
            add(std::move(line), std::nullopt);
            return;
        }
        if (price) {
            line.rate = money(*price) + " " + setting.unit;
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
            line.quantity = formatVolume(all, notation_.unit);
            if (!from.amount) {
                line.rate = "price not known";
                miss("the price of " + from.wood);
                add(std::move(line), std::nullopt);
                continue;
            }
            if (from.price.minorPerCubicMetre > 0) {
                const std::int64_t price =
                    inches ? hundredthsPerBoardFoot(from.price) : from.price.minorPerCubicMetre;
                line.rate = money(price) + (inches ? " a board foot" : " a m³");
                const std::int64_t one = std::llround(
                    (inches ? from.volume.toBoardFeet() : from.volume.toCubicMetres()) *
                    static_cast<double>(million));
                line.working = decimal(one, million, 6) + " " + line.unit + " × " + bare(price);
            } else {
                line.rate = "as priced";
                line.working = "prices of the planks: " + bare(*from.amount);
            }
            if (times > 1) {
                line.working += ", " + std::to_string(times) + " times";
            }
            add(std::move(line), Wide{*from.amount} * times);
        }
        for (const std::string& lacking : timber_.missing) {
            QuoteLine line;
            line.key = "timber";
            line.words = lacking;
            line.rate = "price not known";
            miss(lacking);
            add(std::move(line), std::nullopt);
        }
    }

    void glue() {
        const std::int64_t grams = rounded(job_.glue.grams);
        const std::int64_t all = grams * pricing_.boards;
        QuoteLine line{.key = "glue", .words = "Glue", .setting = "glue-kilogram"};
        line.quantity = std::to_string(all) + " g";
        line.unit = "g";
        line.count = all * million;
        line.working = timesBoards(std::to_string(grams) + " g");
        addPriced(std::move(line), all, 1000, "glue");
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
        QuoteLine line{.key = "finish", .words = "Finish", .setting = "finish-litre"};
        line.words += coats == 0 ? ", no coats"
                                 : ", " + std::to_string(coats) + (coats == 1 ? " coat" : " coats");
        line.quantity = std::to_string(all) + " ml";
        line.unit = "ml";
        line.count = all * million;
        line.working = decimal(area, 1000, 3) + " m² × " + std::to_string(coats) + " ÷ " +
                       amountText(pricing_.finishSpread, PriceKind::Decimal) +
                       " m² a litre = " + timesBoards(std::to_string(millilitres) + " ml");
        addPriced(std::move(line), all, 1000, "finish");
    }

    void sundries() {
        QuoteLine line{.key = "sundries", .words = "Sundries", .setting = "sundries"};
        line.quantity = boardsText(pricing_.boards);
        line.unit = "boards";
        line.count = pricing_.boards * million;
        line.working = line.quantity;
        addPriced(std::move(line), pricing_.boards, 1, "sundries");
    }

    void work() {
        const std::int64_t minutes = rounded(job_.hours.minutes);
        const std::int64_t all = minutes * pricing_.boards;
        QuoteLine line{.key = "work", .words = "Bench work", .setting = "bench-hour"};
        line.quantity = hoursText(all);
        line.unit = "min";
        line.count = all * million;
        line.working = timesBoards(std::to_string(minutes) + " min");
        addPriced(std::move(line), all, 60, "a bench hour");
        quote_.work = quote_.lines.back().amount.value_or(0);
    }

    /// A percentage of the sum so far.
    void addPercent(const char* key, std::string words, const char* setting, std::int64_t part,
                    const std::string& note = {}) {
        QuoteLine line{.key = key, .words = std::move(words), .setting = setting};
        line.rate = percentText(part);
        line.working = bare(sum_) + " × " + percentText(part) + note;
        add(std::move(line), nearest(Wide{sum_} * part, whole));
    }

    void overhead() {
        addPercent("overhead", "Overhead, on materials and bench work", "overhead-percent",
                   pricing_.overhead);
    }

    void profit() {
        // The same as a margin, since the two are easily taken for one another.
        const auto margin = static_cast<std::int64_t>(
            nearest(Wide{pricing_.profit} * whole, Wide{whole} + pricing_.profit));
        addPercent("profit", "Profit, on what it costs to make", "profit-percent", pricing_.profit,
                   pricing_.profit == 0 ? ""
                                        : "; a margin of " + decimal(margin, 1000, 1) +
                                              " % of what is left after selling");
    }

    void selling() {
        QuoteLine fixed{
            .key = "selling-fixed", .words = "Selling, each sale", .setting = "selling-fixed"};
        fixed.rate = money(pricing_.sellingFixed) + " a sale";
        fixed.working = "once";
        add(std::move(fixed), pricing_.sellingFixed);

        const std::int64_t part = pricing_.selling;
        const Wide price = nearest(Wide{sum_} * whole, whole - part);
        QuoteLine line{
            .key = "selling", .words = "Selling, of the price", .setting = "selling-percent"};
        line.rate = percentText(part);
        line.working = part == 0
                           ? percentText(0)
                           : bare(sum_) + " ÷ (100 − " + amountText(part, PriceKind::Decimal) +
                                 ") × 100, less " + bare(sum_);
        add(std::move(line), price - sum_);
    }

    void rounding() {
        const FinalRoundingInfo& info = infoOf(pricing_.rounding);
        Wide asked = nearest(sum_, info.step) * info.step;
        if (asked == 0 && sum_ > 0) {
            asked = info.step;
        }
        QuoteLine line{.key = "rounding", .words = "Rounding", .setting = "rounding"};
        line.rate = info.name;
        line.working = bare(static_cast<std::int64_t>(asked)) + " − " + bare(sum_);
        add(std::move(line), asked - sum_);
    }

    void tax() {
        addPercent("tax", "Tax, on the price asked", "tax-percent", pricing_.tax);
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
    cost.basis = "Rough strips as they are sawn, without the waste of whole planks.";
    for (std::size_t i = 0; i < totals.timberByWood.size() && i < woods.size(); ++i) {
        if (totals.timberByWood[i] > Volume()) {
            cost.lines.push_back({woods[i].name, "as sawn", totals.timberByWood[i],
                                  kerfwright::cost(totals.timberByWood[i], woods[i].price),
                                  woods[i].price});
        }
    }
    return cost;
}

std::string moneyWords(std::int64_t hundredths, const std::string& currency) {
    return amountText(hundredths, PriceKind::Money) + (currency.empty() ? "" : " " + currency);
}

std::string incompleteWords(const Quote& quote) {
    if (quote.isComplete()) {
        return {};
    }
    std::string all;
    for (std::size_t i = 0; i < quote.missing.size(); ++i) {
        all += (i == 0 ? "" : i + 1 == quote.missing.size() ? " and " : ", ") + quote.missing[i];
    }
    return "Incomplete. Missing: " + all + ". The sums are without " +
           (quote.missing.size() == 1 ? "it" : "them") +
           ", so that they are the least it can come to.";
}

std::string eachWords(const Quote& quote, const std::string& currency) {
    if (quote.boards == 1) {
        return {};
    }
    const std::string each =
        moneyWords(static_cast<std::int64_t>(nearest(quote.total, quote.boards)), currency);
    return (quote.total % quote.boards == 0 ? "" : "about ") + each + " each";
}

}  // namespace kerfwright
