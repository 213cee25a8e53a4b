// What moves, and what is held where it moves.
#include "core/bench/rules.h"

namespace kerfwright::rules {

void borderMoves(const Ground& on, Found& found) {
    forEach<FitBorder>(on.list, [&](const FitBorder&, const Sizes&, int step) {
        const bool endGrain = on.board.build == Build::EndGrain;
        const Climate& climate = on.conditions.climate;
        const ClimatePreset* place = presetOf(climate);
        const BoardMovement& movement = on.movement;
        std::string reason = "Where the wood of a board goes from " + percent(climate.driest) +
                             " to " + percent(climate.dampest) + " moisture in a year" +
                             (place == nullptr ? std::string() : " (" + place->name + ")") +
                             ", this field grows and shrinks by " + yearly(on, movement.width) +
                             " across and " + yearly(on, movement.height) +
                             " down, by how its rings lie. ";
        if (!movement.unknownWoods.empty()) {
            reason += "Not all its woods are known: it may be more. ";
        }
        reason += "Rails of " + woodName(on, on.board.border.wood) +
                  " hardly change along their length, so a glued border bursts at its mitres or "
                  "cracks the field.";
        found.push_back(
            {Severity::Danger, "border-moves",
             endGrain ? "A border of long grain round an end-grain field"
                      : "A border round a field that moves across its grain",
             std::move(reason),
             "Do not glue this border to the field: it will move by some millimetres and burst the "
             "mitres. Joinery is not planned yet; a board that gets wet is best left without a "
             "border.",
             step});
    });
}

}  // namespace kerfwright::rules
