// The wood of a plank as it is drawn: its shades, grain, waste and what spoils it.
#pragma once

#include "core/sheets/plankview.h"

#include <cstdint>

namespace kerfwright {

class PlankGround {
public:
    /// Shades are added to the woods of the drawing, which must begin with those of `matter`.
    PlankGround(Drawing& drawing, const PlankMatter& matter, const PlankScale& scale);

    /// Where in the drawing the plank lies; said before anything is drawn.
    void lay(const Box& plank) { plank_ = plank; }

    /// Index among the woods of the drawing.
    int wood() const { return wood_; }
    /// The plank's wood, that much darker: 0 to 1.
    int dark(double share);

    /// Of a part of the plank, measured as planks are: from its lower left corner.
    Box boxOf(Length x, Length y, Length length, Length width) const;
    /// As it is drawn: small ones larger, so that they are seen.
    Box boxOf(const Defect& defect) const;
    /// Bare wood with the lines of its grain, which run on from part to part of one plank.
    void figured(const Box& box);
    /// The whole plank faded and hatched.
    void waste();
    /// Bare ground below words, so that grain does not run through them.
    void backed(const Box& box);
    void defect(const Defect& defect);

private:
    /// A shade of the plank's wood, as one more wood of the drawing.
    int shade(Colour towards, double share);

    Drawing& drawing_;
    const PlankMatter& matter_;
    PlankScale scale_;
    Colour base_;
    int wood_;
    Box plank_;
    std::uint32_t seed_ = 2'166'136'261U;
};

}  // namespace kerfwright
