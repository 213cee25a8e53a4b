#include "core/project/pricingfile.h"

#include "core/project/project.h"
#include "core/words/say.h"

#include <array>
#include <cmath>
#include <limits>
#include <optional>

namespace kerfwright {
namespace {

constexpr std::array<FileName<FinalRounding>, finalRoundings.size()> roundingNames = [] {
    std::array<FileName<FinalRounding>, finalRoundings.size()> names{};
    for (std::size_t i = 0; i < names.size(); ++i) {
        names[i] = {finalRoundings[i].rounding, finalRoundings[i].key};
    }
    return names;
}();

/// Of what the core keeps in thousandths.
constexpr double thousand = 1000;

std::int64_t readThousandths(const Node& json) {
    const double value = json.real();
    constexpr double most = 1e12;  // far beyond every limit, and still exact in thousandths
    const double scaled = std::round(value * thousand);
    if (!(std::abs(value) <= most) || scaled / thousand != value) {
        json.refuseWith(say("must be a number with at most {1} decimals", 3));
    }
    return static_cast<std::int64_t>(scaled);
}

}  // namespace

Json ofPricing(const Pricing& pricing) {
    Json json = Json::object();
    for (const PriceSetting& setting : priceSettings()) {
        if (const std::optional<std::int64_t> value = setting.of(pricing)) {
            json.add(setting.key, setting.kind == PriceKind::Decimal
                                      ? Json::ofNumber(static_cast<double>(*value) / thousand)
                                      : Json::ofNumber(*value));
        }
    }
    json.add("rounding", named(roundingNames, pricing.rounding));
    json.add("customer", Json::ofText(pricing.customer));
    json.add("valid-until", Json::ofText(pricing.validUntil));
    return json;
}

void readPricing(const Node& json, Pricing& pricing) {
    for (const PriceSetting& setting : priceSettings()) {
        if (const std::optional<Node> value = json.maybe(setting.key)) {
            setting.set(pricing, setting.kind == PriceKind::Decimal
                                     ? readThousandths(*value)
                                     : value->whole(std::numeric_limits<std::int64_t>::min(),
                                                    std::numeric_limits<std::int64_t>::max()));
        }
    }
    if (const std::optional<Node> rounding = json.maybe("rounding")) {
        pricing.rounding = rounding->name(roundingNames);
    }
    if (const std::optional<Node> customer = json.maybe("customer")) {
        pricing.customer = customer->text(ProjectLimits::textBytes);
    }
    if (const std::optional<Node> until = json.maybe("valid-until")) {
        pricing.validUntil = until->text(ProjectLimits::textBytes);
    }
}

}  // namespace kerfwright
