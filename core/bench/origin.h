// Where in the job a piece of the board comes from.
#pragma once

#include "core/bench/job.h"

#include <string>
#include <vector>

namespace kerfwright {

struct Origin {
    std::string slice;  ///< label, as in the step list
    std::string panel;  ///< label of the panel it is cut from
    std::string strip;  ///< label of the strip
    bool flipped = false;
    bool turnedOver = false;
    bool isKnown() const { return !slice.empty(); }
};

/// Of a point of the field that was wished, from its top left corner; unknown outside it.
Origin originOf(const Job& job, const Field& wished, Length x, Length y);

/// Labels of the slices in the order in which they make the field.
std::vector<std::string> sliceOrder(const StepList& list);

/// How many lines of the field as glued lie outside the field that was wished, on each side.
int bandOf(const Job& job, const Field& wished);

/// Where the strips of a panel of two levels end along the finished field, from its left edge or
/// its top, in the order of the panel's uses and as a slice laid like that has them. The outermost
/// strips carry the trim margin, which lies outside the field.
struct StripSpan {
    PartIndex strip = -1;
    Length from, to;
};
std::vector<StripSpan> stripSpans(const Plan& plan, const Part& panel, const Lay& lay, Length side);

}  // namespace kerfwright
