// From an entry to a length, or to the rule that it breaks.
#include "core/measure/entryreader.h"
#include "core/words/say.h"

namespace kerfwright {
namespace {

constexpr std::size_t longestEntry = 256;  // bytes; far more than any sum that somebody types
constexpr detail::Wide limit = detail::Wide{1'000'000} * 1'000'000;  // nm in 1 km

}  // namespace

Result<Reading> parse(std::string_view text, const Notation& notation, std::string_view entry) {
    const auto fault = [&](std::string rule) {
        return Fault{std::string(entry), std::move(rule), detail::quoted(text)};
    };
    if (text.size() > longestEntry) {
        return fault(say("must be at most {1} characters long", longestEntry));
    }
    if (detail::isBlank(text)) {
        return Fault{std::string(entry), say("must not be empty"), ""};
    }
    detail::EntryReader reader(text, notation.unit);
    const std::optional<detail::Rational> sum = reader.read();
    if (!sum) {
        return fault(reader.rule());
    }
    const detail::Wide nm = sum->nearest();
    if (nm >= limit || nm <= -limit) {
        return fault(say("must be less than 1 km"));
    }
    return Reading{Length::nm(static_cast<std::int64_t>(nm)), !sum->isWhole()};
}

}  // namespace kerfwright
