#include "core/sheets/columns.h"
#include "core/sheets/quotepage.h"
#include "core/words/say.h"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <utility>

namespace kerfwright {
namespace {

using Json = nlohmann::ordered_json;

Json moneyJson(const std::optional<std::int64_t>& hundredths, const std::string& currency) {
    if (!hundredths) {
        return {};
    }
    return {{"hundredths", *hundredths},
            {"text", moneyWords(*hundredths, currency, DecimalMark::Point)}};
}

Json pricingJson(const Pricing& pricing, const std::string& currency) {
    Json out;
    for (const PriceSetting& setting : priceSettings()) {
        const std::optional<std::int64_t> value = setting.of(pricing);
        switch (setting.kind) {
        case PriceKind::Count:
            out[setting.key] = value.value_or(0);
            break;
        case PriceKind::Money:
            out[setting.key] = moneyJson(value, currency);
            break;
        case PriceKind::Decimal:
            out[setting.key] = static_cast<double>(value.value_or(0)) / 1000;
            break;
        }
    }
    out["rounding"] = infoOf(pricing.rounding).key;
    return out;
}

Json lineJson(const QuoteLine& line, const Project& project) {
    constexpr double million = 1'000'000;
    Json quantity;
    if (!line.unit.empty()) {
        quantity = {{"count", static_cast<double>(line.count) / million},
                    {"unit", line.unit},
                    {"text", line.timber ? formatVolume(*line.timber, project.notation.unit,
                                                        DecimalMark::Point)
                                         : line.quantity}};
    }
    return {{"key", line.key},
            {"sum", line.isSum},
            {"words", line.words},
            {"quantity", std::move(quantity)},
            {"rate", line.rate},
            {"working", line.working},
            {"setting", line.setting.empty() ? Json() : Json(line.setting)},
            {"amount", moneyJson(line.amount, project.currency)}};
}

}  // namespace

std::string amountOf(const QuoteLine& line) {
    if (line.isSum || line.quantity.empty()) {
        return line.rate;
    }
    // Translators: "174 g at 12.00 € a kg".
    return line.amount ? say("{1} at {2}", line.quantity, line.rate)
                       : line.quantity + ", " + line.rate;
}

std::string amountWords(const QuoteLine& line, const std::string& currency) {
    return line.amount ? moneyWords(*line.amount, currency) : sayIn("an amount", "not known");
}

std::string reckoningRule(const Quote& quote) {
    // Translators: {1} is a sentence with its full stop.
    return say("Timber: {1} Where it is priced by volume, the exact volume counts. Every line is "
               "rounded for itself, to the nearest hundredth, halves up; the sums add up the lines "
               "as they stand here. Several boards take so many times the work and the material of "
               "one.",
               quote.basis);
}

std::string quoteText(const Project& project, const Quote& quote) {
    const std::string& name = project.titles.name;
    std::string out =
        sayCount(quote.boards, "{2}: what to ask for {1} board", "{2}: what to ask for {1} boards",
                 name.empty() ? say("Board without a name") : name) +
        "\n\n";
    std::size_t widest = 0;
    for (const QuoteLine& line : quote.lines) {
        widest = std::max(widest, columnsOf(amountWords(line, project.currency)));
    }
    for (const QuoteLine& line : quote.lines) {
        const std::string amount = amountWords(line, project.currency);
        out += (line.isSum ? "= " : "  ") + rightAligned(amount, widest) + "  " + line.words + "\n";
        if (line.isSum) {
            out += "\n";
            continue;
        }
        const std::string below = amountOf(line);
        if (!below.empty()) {
            out += std::string(widest + 6, ' ') + below +
                   (line.working.empty() ? "" : ": " + line.working) + "\n";
        }
    }
    if (const std::string each = eachWords(quote, project.currency); !each.empty()) {
        out += each + "\n";
    }
    if (!quote.isComplete()) {
        out += incompleteWords(quote) + "\n";
    }
    return out + reckoningRule(quote) + "\n";
}

std::string quoteJson(const Project& project, const Job& job, const Quote& quote) {
    const std::string& currency = project.currency;
    Json out;
    out["format"] = "kerfwright-quote";
    out["version"] = quoteJsonVersion;
    out["project"] = {{"name", project.titles.name},
                      {"maker", project.titles.maker},
                      {"date", project.titles.date},
                      {"revision", revision(project)}};
    out["customer"] = project.pricing.customer;
    out["validUntil"] = project.pricing.validUntil;
    out["currency"] = currency;
    out["boards"] = quote.boards;
    out["size"] = {
        {"width", format(job.totals.width, project.notation, DecimalMark::Point)},
        {"height", format(job.totals.height, project.notation, DecimalMark::Point)},
        {"thickness", format(job.totals.thickness, project.notation, DecimalMark::Point)}};
    out["pricing"] = pricingJson(project.pricing, currency);
    out["timber"] = quote.basis;
    out["complete"] = quote.isComplete();
    out["missing"] = quote.missing;
    out["lines"] = Json::array();
    for (const QuoteLine& line : quote.lines) {
        out["lines"].push_back(lineJson(line, project));
    }
    const std::pair<const char*, std::int64_t> sums[] = {{"materials", quote.materials},
                                                         {"work", quote.work},
                                                         {"cost", quote.cost},
                                                         {"net", quote.net},
                                                         {"price", quote.price},
                                                         {"asked", quote.asked},
                                                         {"tax", quote.tax},
                                                         {"total", quote.total}};
    for (const auto& [key, hundredths] : sums) {
        out["totals"][key] = moneyJson(hundredths, currency);
    }
    return out.dump(2) + "\n";
}

}  // namespace kerfwright
