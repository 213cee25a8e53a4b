// How a yard counts what it sells. One board foot is 144 cubic inches.
#pragma once

#include "core/measure/length.h"

#include <string_view>
#include <vector>

namespace kerfwright {

/// The rounding rule of a supplier. Sources: trade guides and the rules of a hardwood lumber
/// association, as told in tests/core/timber/shopping_test.cpp.
enum class Tally {
    Exact,  ///< as measured, by volume: usual where timber is sold by the cubic metre
    /// As measured, in board feet; stock thinner than 1 in is charged as 1 in.
    BoardMeasure,
    /// Width in inches by length in feet over 12, to the whole foot (halves up), and only then
    /// times the thickness.
    SurfaceMeasure,
    /// Width to the nearest inch, halves alternately up and down; length down to the whole foot.
    Export,
    /// Width up to the next inch, length up to the next foot where it is more than 3 in over, and
    /// thickness up to the next that is stocked.
    Retail,
};

struct TallyInfo {
    Tally tally;
    std::string_view key;    ///< in files
    std::string_view name;   ///< on screen, to be said
    std::string_view about;  ///< to be said
};
const std::vector<TallyInfo>& tallies();

/// Counts planks in the order in which they are laid on the scale: some rules round one up and the
/// next one down.
class Tallying {
public:
    /// `stocked`: rough thicknesses that the yard has, for the rules that ask for them.
    explicit Tallying(Tally tally, std::vector<Length> stocked = {});
    /// What a plank is charged as.
    Volume charged(Length thickness, Length width, Length length);

private:
    Tally tally_;
    std::vector<Length> stocked_;
    bool nextHalfDown_ = false;
};

/// What has to be bought for a net volume, where that part of it is waste: net / (1 - waste), and
/// not net x (1 + waste). From 0 to 99 percent; rounded up to the whole cubic nanometre.
Volume withWaste(Volume net, int percent);
/// What part of the bought timber does not end up in strips, in percent; 0 where nothing is bought.
double wastePercent(Volume net, Volume bought);

/// A percentage that makers reckon with where they have no layout.
struct UsualWaste {
    std::string_view name;  ///< to be said
    int percent;
    std::string_view source;  ///< to be said
};
const std::vector<UsualWaste>& usualWastes();

}  // namespace kerfwright
