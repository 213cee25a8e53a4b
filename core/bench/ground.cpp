#include "core/bench/ground.h"

#include <cmath>

namespace kerfwright::rules {

std::string counted(std::size_t count, std::string_view one, std::string_view many) {
    return std::to_string(count) + " " + std::string(count == 1 ? one : many);
}

std::string roundly(const Ground& on, double mm) {
    const std::int64_t step = on.notation.step().nm();
    return on.text(Length::nm(std::llround(mm * 1e6 / static_cast<double>(step)) * step));
}

std::string yearly(const Ground& on, const SeasonChange& change) {
    // Ends of a range that belong together: what swells most also shrinks most.
    const std::string least = roundly(on, change.toDampest.least - change.toDriest.greatest);
    const std::string greatest = roundly(on, change.toDampest.greatest - change.toDriest.least);
    return least == greatest ? least : least + " to " + greatest;
}

}  // namespace kerfwright::rules
