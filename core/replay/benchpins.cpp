// Pins of breadboard ends and keys across corners.
#include "core/replay/bench.h"
#include "core/replay/words.h"
#include "core/words/say.h"

namespace kerfwright {

namespace {

constexpr Length none{};

}  // namespace

void Bench::checkPins(const FitBorder& step, const BorderSides& on) {
    const bool pinned = step.design == BorderDesign::BreadboardEnds;
    bool sound = check(step.pinDiameter, notedIn("figure", "pin")) &&
                 check(step.pinFromEdge, notedIn("figure", "pin from the edge"));
    for (const Pin& pin : step.pins) {
        sound = sound && check(pin.at, notedIn("figure", "place of a pin")) &&
                check(pin.outward, notedIn("figure", "slot outwards")) &&
                check(pin.inward, notedIn("figure", "slot inwards"));
    }
    if (!sound) {
        return;
    }
    if (!pinned) {
        if (!step.pins.empty() || step.pinDiameter.value != none ||
            step.pinFromEdge.value != none) {
            fault(say("only breadboard ends are pinned"));
        }
        return;
    }
    const Length radius = half(step.pinDiameter.value);
    const RailState* end = openRail(step.rails.front().label);
    const Corner& field = workpieces_[field_].solid.size;
    const Length side = field[on.topAndBottom ? X : Y];
    const Length growth = on.topAndBottom ? season_.growthX : season_.growthY;
    const Length shrinkage = on.topAndBottom ? season_.shrinkageX : season_.shrinkageY;
    if (end == nullptr || !end->tongue || !end->groove) {
        return;
    }
    const Length reach = (*end->tongue)[X] - (end->groove->outEnd - end->groove->out);
    if (radius <= none || radius * 2 != step.pinDiameter.value ||
        step.pinFromEdge.value * 2 != reach) {
        fault(say("pins stand in the middle of what the tongue reaches into the field"));
    }
    const std::size_t count = step.pins.size();
    if (count % 2 == 0 || count < 3) {
        fault(say("an end has one pin in its middle and as many on each side of it"));
        return;
    }
    const Length middle = half(side);
    for (std::size_t i = 0; i < count; ++i) {
        const Pin& pin = step.pins[i];
        const Pin& opposite = step.pins[count - 1 - i];
        const bool tight = i == count / 2;
        const Length away = pin.at.value < middle ? middle - pin.at.value : pin.at.value - middle;
        // Slots are longer by what the field moves between its middle and the pin.
        const auto room = [&](Length slot, Length moves) {
            return static_cast<detail::Wide>((slot - radius).nm()) * side.nm() >=
                   static_cast<detail::Wide>(moves.nm()) * away.nm();
        };
        if (pin.at.value + opposite.at.value != middle * 2 ||
            pin.outward.value != opposite.outward.value ||
            pin.inward.value != opposite.inward.value || pin.at.value <= radius ||
            (i > 0 && pin.at.value <= step.pins[i - 1].at.value)) {
            fault(say("pins stand in pairs, equally far from the middle, in order"));
            return;
        }
        if (tight ? away != none || pin.outward.value != radius || pin.inward.value != radius
                  : !room(pin.outward.value, growth) || !room(pin.inward.value, shrinkage)) {
            fault(tight
                      ? say("the pin at {1} must be tight and in the middle", inWords(pin.at.value))
                      : say("the pin at {1} binds in its slot", inWords(pin.at.value)));
        }
    }
}

void Bench::run(const KeyCorners& step) {
    Workpiece* field = find(step.part);
    Workpiece* stick = find(step.stick);
    if (field == nullptr || stick == nullptr ||
        !check(step.depth, notedIn("figure", "depth of the slot")) ||
        !check(step.thickness, notedIn("figure", "thickness of the key")) ||
        !check(step.fromFace, notedIn("figure", "place of the slot"))) {
        return;
    }
    if (field->kind != Kind::Field || !bordered_ || !keysCorners(board_) || keyed_) {
        fault(say("only the corners of a closed frame that is to have splines are keyed, once"));
        return;
    }
    if (stick->kind != Kind::Strip || !stick->madeFor.empty()) {
        fault(say("{1} was not milled for the border", quoted(step.stick)));
        return;
    }
    const Length deep = step.depth.value;
    const Length thick = step.thickness.value;
    const Corner& size = stick->solid.size;
    if (thick != board_.border.splineThickness || size[Z] != thick || size[X] != deep ||
        size[Y] < deep * 8 || stick->solid.boxes.front().wood != board_.border.splineWood) {
        fault(say("four keys {1} thick for slots {2} deep do not come out of {3}", inWords(thick),
                  inWords(deep), quoted(step.stick)));
        return;
    }
    if (deep * 2 > board_.border.width ||
        step.fromFace.value != half(field->solid.size[Z] - thick)) {
        fault(say(
            "the slot must lie in the middle of the thickness and reach half the rail at most"));
    }
    const Volume keys = volume(deep, deep, thick) * 4;
    ledger_.grooved += keys;
    ledger_.trimmed += stick->solid.volume() - keys;
    if (area(deep, deep) * 8 != step.glueFace) {
        fault(say("the area to glue is not what the keys add up to"));
    }
    stick->gone = true;
    keyed_ = true;
}

}  // namespace kerfwright
