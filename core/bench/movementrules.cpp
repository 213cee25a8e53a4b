// What moves, and what is held where it moves.
#include "core/bench/rules.h"

namespace kerfwright::rules {

// From 1 mm on, neighbours that pull at each other are worth a thought: the project's own
// judgement, no source. Maple beside walnut in 400 mm comes to 1.3 mm over 4 % moisture.
void unevenRows(const Scene& on, Found& found) {
    constexpr double much = 1;  // mm
    const auto look = [&](const Apart& apart, bool areRows) {
        if (apart.first < 0 || apart.mm < much) {
            return;
        }
        CautionPlace place;
        std::vector<std::string> both;
        for (const int line : {apart.first, apart.first + 1}) {
            if (const std::optional<int> drawn = drawnLine(on, line, areRows)) {
                (areRows ? place.rows : place.columns).push_back(*drawn);
                both.push_back((areRows ? "row " : "column ") + std::to_string(*drawn + 1));
            } else {
                place.border = true;
                both.emplace_back("the band");
            }
        }
        found.push_back(
            {Severity::Caution,
             areRows ? "uneven-rows" : "uneven-columns",
             std::string(areRows ? "Rows" : "Columns") + " that move unlike each other",
             "Between " + listed(both) + " lengths drift apart by " + roundly(on, apart.mm) +
                 " between the moisture at build, " + percent(on.conditions.climate.build) +
                 ", and a season, even where all rings lie alike.",
             "Mix the woods along both, choose woods that move alike, or have timber of one way of "
             "sawing and of the right moisture.",
             -1,
             {},
             std::move(place)});
    };
    look(on.movement.rowsApart.alike, true);
    look(on.movement.columnsApart.alike, false);
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
