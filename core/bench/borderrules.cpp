// Borders round a field that moves.
#include "core/bench/borderroom.h"
#include "core/bench/rules.h"

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
    const BoardMovement& movement = on.movement;
    std::string text = "Where the wood of a board goes from " + percent(climate.driest) + " to " +
                       percent(climate.dampest) + " moisture in a year" +
                       (place == nullptr ? std::string() : " (" + place->name + ")") +
                       ", this field grows and shrinks by " + yearly(on, movement.width) +
                       " across and " + yearly(on, movement.height) +
                       " down, by how its rings lie. ";
    if (!movement.unknownWoods.empty()) {
        text += "Not all its woods are known: it may be more. ";
    }
    return text;
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
          "Use a floating frame with a gap of " + text(on, x) +
              (x == y ? "" : " at the sides and " + text(on, y) + " above and below"),
          remedies);
}

std::vector<Remedy> thatMove(const Scene& on) {
    std::vector<Remedy> remedies;
    offerFloating(on, remedies);
    Border border = on.wish.border;
    border.cautionRead = false;
    if (on.wish.build == Build::EndGrain) {
        border.design = BorderDesign::EndGrainBand;
        offer(on, border, "Use a band of end grain", remedies);
    } else {
        border.design = BorderDesign::BreadboardEnds;
        offer(on, border, "Use breadboard ends", remedies);
    }
    border.width = Length();
    offer(on, border, "Leave the border out", remedies);
    return remedies;
}

}  // namespace

void borderMoves(const Scene& on, Found& found) {
    if (!bindsTheField(on.wish)) {
        return;
    }
    const bool endGrain = on.wish.build == Build::EndGrain;
    const bool band = on.wish.border.design == BorderDesign::EdgeBand;
    const bool read = on.wish.border.cautionRead;
    const std::string title = endGrain ? "A border of long grain fixed round an end-grain field"
                                       : "A border fixed round a field that moves across its grain";
    // Who has read it goes into it with open eyes; the wood moves all the same.
    found.push_back(
        {read ? Severity::Caution : Severity::Danger,
         "border-moves",
         read ? title + ", as you decided" : title,
         howItMoves(on) + "Rails of " + woodName(on, on.wish.border.wood) +
             " hardly change along their length, so a glued " + (band ? "band" : "frame") +
             (read ? " may burst at its " : " bursts at its ") + (band ? "ends" : "mitres") +
             (read ? " or crack the field." : " or cracks the field."),
         read ? "You have read this, and the plan glues the border. Keep the board in a "
                "room of even air and away from water, and look at its joints in the "
                "dampest season; a floating frame would be safe."
              : "Do not glue this border to the field: let the field float in its "
                "frame, or leave the border out; a board that gets wet is best without "
                "one.",
         borderStep(on),
         {},
         theBorder(),
         thatMove(on)});
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
                     "The gap closes before the field is largest",
                     "The gap is " + text(on, *border.gap) +
                         " a side. From build to the dampest "
                         "season, at " +
                         percent(on.conditions.climate.dampest) +
                         " moisture, the field may grow by " + roundly(on, growth.toMm()) +
                         ", and half of that goes to each side.",
                     "Leave the gap to the season, or build with damper timber.",
                     borderStep(on),
                     {},
                     theBorder(),
                     std::move(remedies)});
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
    const std::string pieces = counted(place.pieces.size(), "piece", "pieces");
    found.push_back({Severity::Caution,
                     "unknown-movement",
                     "Movement of a wood is not known",
                     "Nothing is said of how far " + listed(names) + " moves: " + pieces +
                         " of it are reckoned as if they stayed as they are, gaps and slots too.",
                     "Enter its shrinkage or its movement, or set the gap yourself.",
                     borderStep(on),
                     {},
                     std::move(place)});
}

}  // namespace kerfwright::rules
