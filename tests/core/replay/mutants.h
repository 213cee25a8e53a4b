// Right step lists made wrong, one thing at a time.
#pragma once

#include "tests/core/replay/handbuilt.h"

#include <functional>
#include <optional>
#include <string>

namespace kerfwright::test {

/// Changes that leave a right list right. Each is decided by a rule of its own that reads only the
/// list before the change, and a test shows that the bench indeed passes it.
enum class Harmless {
    OneWoodStrip,
    FrontAndBack,
    SymmetricFlip,
    SquareOfOneWood,
    EqualParts,
    IndependentSteps,
    OrderOfNames,
    UnusedName,
    KerfOffTheEnd,
    RailBlank,
    Count,
};

/// Why it is harmless, for the one who reads the table.
const char* reason(Harmless harmless);

using Judge = std::function<void(const std::string& what, const StepList& list,
                                 std::optional<Harmless> harmless)>;

/// Calls `judge` for each mutant: every figure and length (by +1 nm, +1 mm and -1 mm, the working
/// still adding up), every count, order, turn, wood, label, face, purpose, joint and volume.
void forEachMutant(const Job& job, const Judge& judge);

}  // namespace kerfwright::test
