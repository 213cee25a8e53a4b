// What moves, and what is held where it moves.
#include "core/bench/rules.h"

namespace kerfwright::rules {

void borderMoves(const Scene& on, Found& found) {
    forEach<FitBorder>(on, [&](const FitBorder&, const Size*, int step) {
        if (!bindsTheField(on.board)) {
            return;
        }
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
            {Severity::Danger,
             "border-moves",
             endGrain ? "A border of long grain round an end-grain field"
                      : "A border round a field that moves across its grain",
             std::move(reason),
             "Do not glue this border to the field: it will move by some millimetres and burst the "
             "mitres. Let the field float in the frame, or take a band of end grain; a board that "
             "gets wet is best left without a border.",
             step,
             {},
             {{}, {}, {}, true}});
    });
}

// From 1 mm on, neighbours that pull at each other are worth a thought: the project's own
// judgement, no source. Maple beside walnut in 400 mm comes to 1.3 mm over 4 % moisture.
void unevenRows(const Scene& on, Found& found) {
    constexpr double much = 1;  // mm
    const auto look = [&](const Apart& apart, const char* lines, bool areRows) {
        if (apart.first < 0 || apart.mm < much) {
            return;
        }
        CautionPlace place;
        (areRows ? place.rows : place.columns) = {apart.first, apart.first + 1};
        found.push_back(
            {Severity::Caution,
             areRows ? "uneven-rows" : "uneven-columns",
             std::string(lines) + " that move unlike each other",
             std::string(lines) + " " + std::to_string(apart.first + 1) + " and " +
                 std::to_string(apart.first + 2) + " pull apart by " + roundly(on, apart.mm) +
                 " between the moisture at build, " + percent(on.conditions.climate.build) +
                 ", and a season, even where all rings lie alike.",
             "Mix the woods along both, choose woods that move alike, or have timber of one way of "
             "sawing and of the right moisture.",
             -1,
             {},
             std::move(place)});
    };
    look(on.movement.rowsApart.alike, "Rows", true);
    look(on.movement.columnsApart.alike, "Columns", false);
}

// Install wood at the moisture that it will have in service: Wood Handbook (2010), chapter 13.
void moistureFarOff(const Scene& on, Found& found) {
    const Climate& climate = on.conditions.climate;
    const bool tooDry = climate.build < climate.driest;
    if (!tooDry && climate.build <= climate.dampest) {
        return;
    }
    const double off = tooDry ? climate.driest - climate.build : climate.build - climate.dampest;
    found.push_back(
        {Severity::Caution, "timber-moisture",
         tooDry ? "Timber drier than the board will ever be"
                : "Timber damper than the board will ever be",
         "It is glued at " + percent(climate.build) + "; where the board lives, wood goes from " +
             percent(climate.driest) + " to " + percent(climate.dampest) + " moisture: " +
             percent(off) + " off, and all of it goes into movement after the last glue-up.",
         "Let the timber lie in the room where the board will live, stacked with sticks between, "
         "until the meter shows " +
             percent(climate.driest) + " to " + percent(climate.dampest) + ".",
         -1});
}

}  // namespace kerfwright::rules
