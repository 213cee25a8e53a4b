// Borders round a field that moves.
#include "core/bench/borderroom.h"
#include "core/bench/rules.h"
#include "core/words/say.h"

#include <algorithm>
#include <utility>

namespace kerfwright::rules {
namespace {

CautionPlace theBorder() {
    CautionPlace place;
    place.border = true;
    return place;
}

/// The step that puts the rails on; -1: none.
int borderStep(const Scene& on) {
    int found = -1;
    forEach<FitBorder>(on, [&](const FitBorder&, const Size*, int step) { found = step; });
    return found;
}

/// "Where wood goes from 6 % to 10 % moisture in a year (Heated home, inland), this field grows and
/// shrinks by ... ."
std::string howItMoves(const Scene& on) {
    const Climate& climate = on.conditions.climate;
    const ClimatePreset* place = presetOf(climate);
    const std::string driest = percent(climate.driest);
    const std::string dampest = percent(climate.dampest);
    const std::string across = yearly(on, on.movement.width);
    const std::string down = yearly(on, on.movement.height);
    std::string text =
        place == nullptr
            ? say("Where the wood of a board goes from {1} to {2} moisture in a year, this field "
                  "grows and shrinks by {3} across and {4} down, by how its rings lie.",
                  driest, dampest, across, down)
            : say("Where the wood of a board goes from {1} to {2} moisture in a year ({5}), this "
                  "field grows and shrinks by {3} across and {4} down, by how its rings lie.",
                  driest, dampest, across, down, say(place->name));
    if (!on.movement.unknownWoods.empty()) {
        text += " " + say("Not all its woods are known: it may be more.");
    }
    return text;
}

/// What `howItMoves` says, and of which border.
std::vector<Fact> movementFacts(const Scene& on) {
    const Climate& climate = on.conditions.climate;
    std::vector<Fact> facts{hundredths("driest-percent", climate.driest),
                            hundredths("dampest-percent", climate.dampest),
                            fact("unknown-woods", woodKeys(on, on.movement.unknownWoods)),
                            fact("border-wood", woodKeys(on, {on.wish.border.wood})),
                            fact("border-design", static_cast<std::int64_t>(on.wish.border.design)),
                            fact("build", static_cast<std::int64_t>(on.wish.build))};
    for (const auto& more :
         {yearlyFacts("width", on.movement.width), yearlyFacts("height", on.movement.height)}) {
        facts.insert(facts.end(), more.begin(), more.end());
    }
    return facts;
}

std::string titleOf(const Scene& on) {
    const bool read = on.wish.border.cautionRead;
    if (on.wish.build == Build::EndGrain) {
        return read ? say("A border of long grain fixed round an end-grain field, as you decided")
                    : say("A border of long grain fixed round an end-grain field");
    }
    return read ? say("A border fixed round a field that moves across its grain, as you decided")
                : say("A border fixed round a field that moves across its grain");
}

/// Who has read it goes into it with open eyes; the wood moves all the same.
std::string whatBursts(const Scene& on) {
    const Border& border = on.wish.border;
    const std::string wood = woodName(on, border.wood);
    if (border.design == BorderDesign::EdgeBand) {
        return border.cautionRead
                   ? say("Rails of {1} hardly change along their length, so a glued band may burst "
                         "at its ends or crack the field.",
                         wood)
                   : say("Rails of {1} hardly change along their length, so a glued band bursts at "
                         "its ends or cracks the field.",
                         wood);
    }
    return border.cautionRead
               ? say("Rails of {1} hardly change along their length, so a glued frame may burst at "
                     "its mitres or crack the field.",
                     wood)
               : say("Rails of {1} hardly change along their length, so a glued frame bursts at "
                     "its mitres or cracks the field.",
                     wood);
}

/// The wish with that border, where its rails and its field have room for it.
void offer(const Scene& on, Border border, const std::string& label,
           std::vector<Remedy>& remedies) {
    Board board = on.wish;
    board.border = border;
    const bool grainDown = on.plan.grainDown;
    if (faults(board, static_cast<int>(on.woods.size())).empty() &&
        faults(asGlued(board), static_cast<int>(on.woods.size())).empty() &&
        fitBorder(board, on.shop, grainDown, seasonOf(on.movement)).ok()) {
        Remedy remedy{label};
        remedy.board = std::move(board);
        remedies.push_back(std::move(remedy));
    }
}

/// A frame that lets the field move, with the gap that the season asks for.
void offerFloating(const Scene& on, std::vector<Remedy>& remedies) {
    Border border = on.wish.border;
    border.design = BorderDesign::FloatingFrame;
    border.gap.reset();
    border.cautionRead = false;
    const FieldSeason season = seasonOf(on.movement);
    const Length x = gapFor(border, season.growthX, on.shop).value;
    const Length y = gapFor(border, season.growthY, on.shop).value;
    offer(on, border,
          x == y
              ? say("Use a floating frame with a gap of {1}", text(on, x))
              : say("Use a floating frame with a gap of {1} at the sides and {2} above and below",
                    text(on, x), text(on, y)),
          remedies);
}

std::vector<Remedy> thatMove(const Scene& on) {
    std::vector<Remedy> remedies;
    offerFloating(on, remedies);
    Border border = on.wish.border;
    border.cautionRead = false;
    if (on.wish.build == Build::EndGrain) {
        border.design = BorderDesign::EndGrainBand;
        offer(on, border, say("Use a band of end grain"), remedies);
    } else {
        border.design = BorderDesign::BreadboardEnds;
        offer(on, border, say("Use breadboard ends"), remedies);
    }
    border.width = Length();
    offer(on, border, say("Leave the border out"), remedies);
    return remedies;
}

}  // namespace

void borderMoves(const Scene& on, Found& found) {
    if (!bindsTheField(on.wish)) {
        return;
    }
    const bool read = on.wish.border.cautionRead;
    found.push_back(
        {read ? Severity::Caution : Severity::Danger,
         "border-moves",
         titleOf(on),
         howItMoves(on) + " " + whatBursts(on),
         read ? say("You have read this, and the plan glues the border. Keep the board in a room "
                    "of even air and away from water, and look at its joints in the dampest "
                    "season; a floating frame would be safe.")
              : say("Do not glue this border to the field: let the field float in its frame, or "
                    "leave the border out; a board that gets wet is best without one."),
         borderStep(on),
         {},
         theBorder(),
         thatMove(on)});
    found.back().said = movementFacts(on);
}

// The gap must take half of the growth: the other half goes to the other side.
void gapCloses(const Scene& on, Found& found) {
    const Border& border = on.wish.border;
    if (!border.has(BorderDesign::FloatingFrame) || !border.gap) {
        return;
    }
    const FieldSeason season = seasonOf(on.movement);
    const Length growth = std::max(season.growthX, season.growthY);
    if (*border.gap * 2 >= growth) {
        return;
    }
    std::vector<Remedy> remedies;
    offerFloating(on, remedies);
    found.push_back({Severity::Danger,
                     "gap-closes",
                     say("The gap closes before the field is largest"),
                     say("The gap is {1} a side. From build to the dampest season, at {2} "
                         "moisture, the field may grow by {3}, and half of that goes to each side.",
                         text(on, *border.gap), percent(on.conditions.climate.dampest),
                         roundly(on, growth.toMm())),
                     say("Leave the gap to the season, or build with damper timber."),
                     borderStep(on),
                     {},
                     theBorder(),
                     std::move(remedies)});
    found.back().said = {fact("gap", *border.gap),
                         hundredths("dampest-percent", on.conditions.climate.dampest),
                         fact("growth", growth)};
}

// Without coefficients and shrinkage a gap is reckoned for wood that stays as it is.
void unknownMovement(const Scene& on, Found& found) {
    if (on.movement.unknownWoods.empty() || !on.wish.border.isThere() ||
        on.wish.border.design == BorderDesign::EndGrainBand) {
        return;
    }
    CautionPlace place = piecesOf(on, on.movement.unknownWoods);
    std::vector<std::string> names;
    for (const int wood : on.movement.unknownWoods) {
        names.push_back(woodName(on, wood));
    }
    found.push_back(
        {Severity::Caution,
         "unknown-movement",
         say("Movement of a wood is not known"),
         sayCount(place.pieces.size(),
                  "Nothing is said of how far {2} moves: {1} piece of it is reckoned as "
                  "if it stayed as it is, gaps and slots too.",
                  "Nothing is said of how far {2} moves: {1} pieces of it are reckoned "
                  "as if they stayed as they are, gaps and slots too.",
                  sayList(names)),
         say("Enter its shrinkage or its movement, or set the gap yourself."),
         borderStep(on),
         {},
         std::move(place)});
    found.back().said = {fact("woods", woodKeys(on, on.movement.unknownWoods))};
}

}  // namespace kerfwright::rules
