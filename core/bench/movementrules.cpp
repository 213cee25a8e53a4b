// What moves, and what is held where it moves.
#include "core/bench/rules.h"
#include "core/words/say.h"

namespace kerfwright::rules {
namespace {

/// Two lines side by side, of which an end-grain band can be one: that has no number.
std::string rowsBeside(std::optional<int> upper, std::optional<int> lower) {
    if (!upper) {
        return sayIn("between", "the band and row {1}", lower.value_or(0) + 1);
    }
    return lower ? sayIn("between", "row {1} and row {2}", *upper + 1, *lower + 1)
                 : sayIn("between", "row {1} and the band", *upper + 1);
}

std::string columnsBeside(std::optional<int> left, std::optional<int> right) {
    if (!left) {
        return sayIn("between", "the band and column {1}", right.value_or(0) + 1);
    }
    return right ? sayIn("between", "column {1} and column {2}", *left + 1, *right + 1)
                 : sayIn("between", "column {1} and the band", *left + 1);
}

}  // namespace

// From 1 mm on, neighbours that pull at each other are worth a thought: the project's own
// judgement, no source. Maple beside walnut in 400 mm comes to 1.3 mm over 4 % moisture.
void unevenRows(const Scene& on, Found& found) {
    constexpr double much = 1;  // mm
    const auto look = [&](const Apart& apart, bool areRows) {
        if (apart.first < 0 || apart.mm < much) {
            return;
        }
        CautionPlace place;
        const std::optional<int> first = drawnLine(on, apart.first, areRows);
        const std::optional<int> second = drawnLine(on, apart.first + 1, areRows);
        for (const std::optional<int>& drawn : {first, second}) {
            if (drawn) {
                (areRows ? place.rows : place.columns).push_back(*drawn);
            } else {
                place.border = true;
            }
        }
        found.push_back(
            {Severity::Caution,
             areRows ? "uneven-rows" : "uneven-columns",
             areRows ? say("Rows that move unlike each other")
                     : say("Columns that move unlike each other"),
             say("Between {1} lengths drift apart by {2} between the moisture at build, {3}, and a "
                 "season, even where all rings lie alike.",
                 areRows ? rowsBeside(first, second) : columnsBeside(first, second),
                 roundly(on, apart.mm), percent(on.conditions.climate.build)),
             say("Mix the woods along both, choose woods that move alike, or have timber of one "
                 "way of sawing and of the right moisture."),
             -1,
             {},
             std::move(place)});
        found.back().said = {micrometres("apart", apart.mm),
                             hundredths("build-percent", on.conditions.climate.build)};
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
         tooDry ? say("Timber drier than the board will ever be")
                : say("Timber damper than the board will ever be"),
         say("It is glued at {1}; where the board lives, wood goes from {2} to {3} moisture: {4} "
             "off, and all of it goes into movement after the last glue-up.",
             percent(climate.build), percent(climate.driest), percent(climate.dampest),
             percent(off)),
         say("Let the timber lie in the room where the board will live, stacked with sticks "
             "between, until the meter shows {1} to {2}.",
             percent(climate.driest), percent(climate.dampest)),
         -1});
    found.back().said = {hundredths("build-percent", climate.build),
                         hundredths("driest-percent", climate.driest),
                         hundredths("dampest-percent", climate.dampest)};
}

}  // namespace kerfwright::rules
