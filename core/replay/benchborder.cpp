// What runs round the field.
#include "core/replay/bench.h"
#include "core/replay/words.h"

namespace kerfwright {

void Bench::run(const FitBorder& step) {
    Workpiece* field = openField(step.part);
    if (field == nullptr || !check(step.width, "width of the border")) {
        return;
    }
    const Length rail = board_.border.width;
    if (rail <= Length()) {
        fault("the board has no border");
        return;
    }
    if (step.width.value != rail) {
        fault("the border is to be " + inWords(rail) + " wide; got " + inWords(step.width.value));
    }
    if (!step.mustNotBeGlued) {
        fault("the field moves; a border of long grain round it must not be glued");
    }
    if (step.rails.size() != 4) {
        fault("a border has four rails; got " + std::to_string(step.rails.size()));
        return;
    }
    const Corner inside = field->solid.size;
    for (std::size_t i = 0; i < step.rails.size(); ++i) {
        const Rail& cut = step.rails[i];
        const Length longPoint = inside[i % 2 == 0 ? X : Y] + rail * 2;
        checkSize(cut.longPoint, longPoint, "length of the rail, long point to long point,");
        Workpiece* strip = find(cut.label);
        if (strip == nullptr) {
            return;
        }
        if (strip->kind != Kind::Strip || !strip->madeFor.empty()) {
            fault(quoted(cut.label) + " was not milled as a rail");
            return;
        }
        const Cuboid& wood = strip->solid.boxes.front();
        const Corner& size = strip->solid.size;
        if (wood.wood != board_.border.wood) {
            fault("the rail " + quoted(cut.label) + " is not of the wood of the border");
        }
        if (size[X] != rail || size[Z] != inside[Z]) {
            fault("the rail " + quoted(cut.label) + " should be " + inWords(inside[Z]) + " × " +
                  inWords(rail) + "; it is " + inWords(size[Z]) + " × " + inWords(size[X]));
        }
        if (size[Y] < longPoint) {
            fault("the rail " + quoted(cut.label) + " must be at least " + inWords(longPoint) +
                  " long; it is " + inWords(size[Y]));
        }
        // Seen from above a trapezium: the long point on one side, the field's side on the other.
        const Volume kept = volume(inside[Z], rail, longPoint - rail);
        ledger_.board += kept;
        ledger_.trimmed += strip->solid.volume() - kept;
        strip->gone = true;
    }
    bordered_ = true;
    boardWidth_ = inside[X] + rail * 2;
    boardHeight_ = inside[Y] + rail * 2;
    checkSize(step.boardWidth, boardWidth_, "width of the board");
    checkSize(step.boardHeight, boardHeight_, "height of the board");
}

}  // namespace kerfwright
