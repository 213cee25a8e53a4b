#include "core/sheets/quotepage.h"

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
    return {{"hundredths", *hundredths}, {"text", moneyWords(*hundredths, currency)}};
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

Json lineJson(const QuoteLine& line, const std::string& currency) {
    constexpr double million = 1'000'000;
    Json quantity;
    if (!line.unit.empty()) {
        quantity = {{"count", static_cast<double>(line.count) / million},
                    {"unit", line.unit},
                    {"text", line.quantity}};
    }
    return {{"key", line.key},
            {"sum", line.isSum},
            {"words", line.words},
            {"quantity", std::move(quantity)},
            {"rate", line.rate},
            {"working", line.working},
            {"setting", line.setting.empty() ? Json() : Json(line.setting)},
            {"amount", moneyJson(line.amount, currency)}};
}

/// As many columns as the text has characters; enough for aligning Latin text.
std::size_t columns(const std::string& text) {
    return static_cast<std::size_t>(std::count_if(text.begin(), text.end(), [](char c) {
        return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U;
    }));
}

}  // namespace

std::string amountOf(const QuoteLine& line) {
    if (line.isSum || line.quantity.empty()) {
        return line.rate;
    }
    return line.quantity + (line.amount ? " at " : ", ") + line.rate;
}

std::string amountWords(const QuoteLine& line, const std::string& currency) {
    return line.amount ? moneyWords(*line.amount, currency) : "not known";
}

std::string reckoningRule(const Quote& quote) {
    return "Timber: " + quote.basis +
           " Where it is priced by volume, the exact volume counts. Every line is rounded for "
           "itself, to the nearest hundredth, halves up; the sums add "
           "up the lines as they stand here. Several boards take so many times the work and the "
           "material of one.";
}

std::string quoteText(const Project& project, const Quote& quote) {
    const std::string& name = project.titles.name;
    std::string out = (name.empty() ? "Board without a name" : name) + ": what to ask for " +
                      std::to_string(quote.boards) + (quote.boards == 1 ? " board" : " boards") +
                      "\n\n";
    std::size_t widest = 0;
    for (const QuoteLine& line : quote.lines) {
        widest = std::max(widest, columns(amountWords(line, project.currency)));
    }
    for (const QuoteLine& line : quote.lines) {
        const std::string amount = amountWords(line, project.currency);
        out += (line.isSum ? "= " : "  ") + std::string(widest - columns(amount), ' ') + amount +
               "  " + line.words + "\n";
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
    out["size"] = {{"width", format(job.totals.width, project.notation)},
                   {"height", format(job.totals.height, project.notation)},
                   {"thickness", format(job.totals.thickness, project.notation)}};
    out["pricing"] = pricingJson(project.pricing, currency);
    out["timber"] = quote.basis;
    out["complete"] = quote.isComplete();
    out["missing"] = quote.missing;
    out["lines"] = Json::array();
    for (const QuoteLine& line : quote.lines) {
        out["lines"].push_back(lineJson(line, currency));
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
