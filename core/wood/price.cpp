#include "core/wood/price.h"

#include "core/words/say.h"

#include <algorithm>

namespace kerfwright {
namespace {

constexpr detail::Wide cubicNmPerMetre =
    detail::Wide{1'000'000'000} * 1'000'000'000 * 1'000'000'000;
constexpr detail::Wide cubicNmPerBoardFoot =
    detail::Wide{144} * 25'400'000 * 25'400'000 * 25'400'000;

constexpr detail::Wide nearest(detail::Wide value, detail::Wide divisor) {
    return (value + divisor / 2) / divisor;
}

}  // namespace

Price pricePerBoardFoot(std::int64_t hundredths) {
    // Both volumes are whole multiples of 1000 nm3, which keeps the product within 128 bits.
    constexpr detail::Wide part = 1000;
    return {static_cast<std::int64_t>(
        nearest(hundredths * (cubicNmPerMetre / part), cubicNmPerBoardFoot / part))};
}

std::int64_t hundredthsPerBoardFoot(Price price) {
    constexpr detail::Wide part = 1000;
    return static_cast<std::int64_t>(
        nearest(price.minorPerCubicMetre * (cubicNmPerBoardFoot / part), cubicNmPerMetre / part));
}

std::optional<std::int64_t> cost(Volume timber, Price price) {
    if (price.minorPerCubicMetre <= 0) {
        return std::nullopt;
    }
    // To a millionth of a cubic millimetre: less than a thousandth of a hundredth at any price.
    constexpr detail::Wide part = 1'000'000'000'000;
    return static_cast<std::int64_t>(nearest(
        nearest(timber.cubicNm(), part) * price.minorPerCubicMetre, cubicNmPerMetre / part));
}

std::string formatMoney(std::int64_t hundredths, DecimalMark mark) {
    const std::string rest = std::to_string(hundredths % 100);
    return std::to_string(hundredths / 100) + decimalMark(mark) + (rest.size() == 1 ? "0" : "") +
           rest;
}

Result<std::int64_t> parseMoney(std::string_view text, std::string_view entry) {
    const auto refused = [&] {
        return Fault{std::string(entry), say("must be an amount such as {1}", formatMoney(1250)),
                     std::string(text)};
    };
    const auto isDigit = [](char c) { return c >= '0' && c <= '9'; };
    const auto isBlank = [](char c) { return c == ' ' || c == '\t'; };
    std::string_view rest = text;
    while (!rest.empty() && isBlank(rest.front())) {
        rest.remove_prefix(1);
    }
    while (!rest.empty() && isBlank(rest.back())) {
        rest.remove_suffix(1);
    }
    const std::size_t mark = rest.find_first_of(".,");
    const std::string_view whole = rest.substr(0, mark);
    const std::string_view part =
        mark == std::string_view::npos ? std::string_view() : rest.substr(mark + 1);
    if (whole.empty() || part.size() > 2 || (mark != std::string_view::npos && part.empty()) ||
        !std::all_of(whole.begin(), whole.end(), isDigit) ||
        !std::all_of(part.begin(), part.end(), isDigit)) {
        return refused();
    }
    std::int64_t hundredths = 0;
    for (const char digit :
         std::string(whole) + std::string(part) + std::string(2 - part.size(), '0')) {
        hundredths = hundredths * 10 + (digit - '0');
        if (hundredths > greatestPrice) {
            return Fault{std::string(entry), say("must be at most {1}", formatMoney(greatestPrice)),
                         std::string(text)};
        }
    }
    return hundredths;
}

}  // namespace kerfwright
