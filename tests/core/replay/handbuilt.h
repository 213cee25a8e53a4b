// Step lists written out by hand, with volumes reckoned by hand, so that the bench is judged by
// something else than the planner.
#pragma once

#include "core/board/board.h"
#include "core/glueup/steps.h"

#include <string>
#include <vector>

namespace kerfwright::test {

constexpr Length operator""_mm(unsigned long long count) {
    return Length::mm(static_cast<std::int64_t>(count));
}

/// Volumes in cubic millimetres.
constexpr Volume cubicMm(std::int64_t count) {
    return volume(Length::mm(count), Length::mm(1), Length::mm(1));
}

/// A figure whose working is a single term.
Figure figure(Length value);

struct Job {
    std::string name;
    Board board;
    StepList list;
    bool mergeLike = false;
    FieldSeason season = {};
};

/// Maple over walnut, two rows of one panel, the second flipped; every allowance is used.
Job chequer();
/// Three columns, the middle one of a single strip; no allowance at all.
Job columns();
/// Stripes of one slice, with a border.
Job stripes();
/// Two rows with a joint left out and a piece divided.
Job divided();
/// One piece, one strip, one slice.
Job block();

std::vector<Job> handBuilt();

}  // namespace kerfwright::test
