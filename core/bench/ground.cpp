#include "core/bench/ground.h"

#include <cmath>

namespace kerfwright::rules {

std::string text(const Ground& on, Length length) {
    return format(length, on.notation);
}

std::string woodName(const Ground& on, int wood) {
    const auto at = static_cast<std::size_t>(wood);
    return wood >= 0 && at < on.woods.size() ? on.woods[at].name : "wood";
}

std::string counted(std::size_t count, std::string_view one, std::string_view many) {
    return std::to_string(count) + " " + std::string(count == 1 ? one : many);
}

std::string percent(double moisture) {
    const long tenths = std::lround(moisture * 10);
    return std::to_string(tenths / 10) +
           (tenths % 10 == 0 ? "" : "." + std::to_string(tenths % 10)) + " %";
}

std::string roundly(const Ground& on, double mm) {
    const std::int64_t step = on.notation.step().nm();
    return text(on, Length::nm(std::llround(mm * 1e6 / static_cast<double>(step)) * step));
}

std::string yearly(const Ground& on, const SeasonChange& change) {
    // Ends of a range that belong together: what swells most also shrinks most.
    const std::string least = roundly(on, change.toDampest.least - change.toDriest.greatest);
    const std::string greatest = roundly(on, change.toDampest.greatest - change.toDriest.least);
    return least == greatest ? least : least + " to " + greatest;
}

}  // namespace kerfwright::rules
