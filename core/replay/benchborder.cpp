// What runs round the field.
#include "core/replay/bench.h"
#include "core/replay/words.h"

#include <algorithm>

namespace kerfwright {

namespace {

constexpr Length none{};

/// Runs along x, as rails at top and bottom do: the first and third of four, or both of two.
bool runsAcross(std::size_t rail, const BorderSides& sides) {
    return sides.topAndBottom && (!sides.leftAndRight || rail % 2 == 0);
}

}  // namespace

BorderSides Bench::sides() const {
    const Solid& field = workpieces_[field_].solid;
    return borderSides(board_, field.boxes.front().grain == Y);
}

Bench::RailState* Bench::openRail(std::string_view label) {
    Workpiece* strip = find(label);
    if (strip == nullptr) {
        return nullptr;
    }
    if (strip->kind != Kind::Strip || !strip->madeFor.empty()) {
        fault(quoted(label) + " was not milled for the border");
        return nullptr;
    }
    const auto known = rails_.find(label);
    if (known != rails_.end()) {
        return &known->second;
    }
    RailState rail;
    rail.stock = strip->solid.size;
    rail.wood = strip->solid.boxes.front().wood;
    rail.profile = Profile(rail.stock[X], rail.stock[Z]);
    return &rails_.emplace(label, std::move(rail)).first->second;
}

void Bench::run(const CutChannel& step) {
    if (!check(step.depth, "depth") || !check(step.width, "width") ||
        !check(step.fromFace, "distance from the face")) {
        return;
    }
    if (step.parts.empty() || step.depth.value <= none || step.width.value <= none) {
        fault("a groove or rebate must be more than 0 deep and wide, and in something");
        return;
    }
    if (fieldLaid_ && step.parts.front() == workpieces_[field_].label) {
        cutFieldChannel(step);
        return;
    }
    if (step.edges != 1) {
        fault("a rail has one inside edge");
    }
    for (const std::string& label : step.parts) {
        cutRailChannel(step, label);
    }
}

void Bench::cutRailChannel(const CutChannel& step, std::string_view label) {
    RailState* rail = openRail(label);
    if (rail == nullptr) {
        return;
    }
    const Length top = step.fromFace.value;
    const Length bottom = top + step.width.value;
    std::optional<Slab>& channel = step.purpose == ChannelFor::Tongue  ? rail->groove
                                   : step.purpose == ChannelFor::Ledge ? rail->ledge
                                                                       : rail->inlay;
    if (rail->cut || channel) {
        fault(quoted(label) + (rail->cut ? " is cut to length already" : " has that already"));
        return;
    }
    if (step.purpose == ChannelFor::Tongue ? top <= none || bottom >= rail->stock[Z]
                                           : top != none) {
        fault(step.purpose == ChannelFor::Tongue ? "a groove must leave wood above and below it"
                                                 : "the rebate must be open at the top face");
    }
    const Length edge = rail->profile.innerEdge(top, bottom);
    const Slab away{edge - step.depth.value, edge, top, bottom};
    if (away.out <= none || !rail->profile.cut(away)) {
        fault(quoted(label) + " has not the wood for it");
        return;
    }
    ledger_.grooved += volume(step.depth.value, step.width.value, rail->stock[Y]);
    channel = away;
}

void Bench::cutFieldChannel(const CutChannel& step) {
    if (step.parts.size() != 1) {
        fault("the field is cut by itself");
        return;
    }
    Workpiece* field = openField(step.parts.front());
    if (field == nullptr) {
        return;
    }
    const bool wished = step.purpose != ChannelFor::Inlay;
    const bool all = board_.border.isFrame();
    if (fieldChannel_ || !wished || step.edges != (all ? 4 : 2)) {
        fault("the field gets one groove or rebate along the edges that the border is on");
        return;
    }
    const Corner& size = field->solid.size;
    const Length top = step.fromFace.value;
    const Length bottom = top + step.width.value;
    const bool below = step.purpose == ChannelFor::Ledge;
    if (top <= none || (below ? bottom != size[Z] : bottom >= size[Z])) {
        fault("the channel does not lie as it should in a field " + inWords(size[Z]) + " thick");
        return;
    }
    const BorderSides on = sides();
    const Length offX = on.leftAndRight ? step.depth.value * 2 : none;
    const Length offY = on.topAndBottom ? step.depth.value * 2 : none;
    if (offX >= size[X] || offY >= size[Y]) {
        fault("nothing would be left between the grooves of the field");
        return;
    }
    const Area inside = area(size[X] - offX, size[Y] - offY);
    const Volume out =
        volume(Area(field->solid.face(Z).squareNm() - inside.squareNm()), step.width.value);
    ledger_.grooved += out;
    ledger_.board -= out;
    fieldChannel_ = Slab{none, step.depth.value, top, bottom};
    fieldLedge_ = below;
}

void Bench::run(const GlueIn& step) {
    Area glued;
    if (!check(step.proud, "what stands out")) {
        return;
    }
    if (step.insets.empty()) {
        fault("there is nothing to glue in");
    }
    for (const Inset& inset : step.insets) {
        if (inset.stick == inset.rail) {
            fault("a stick cannot be glued into itself");
            return;
        }
        Workpiece* stick = find(inset.stick);
        RailState* rail = openRail(inset.rail);
        if (stick == nullptr || rail == nullptr) {
            return;
        }
        if (stick->kind != Kind::Strip || !stick->madeFor.empty() || rails_.contains(inset.stick)) {
            fault(quoted(inset.stick) + " was not milled as a stick for the border");
            return;
        }
        glued += step.purpose == ChannelFor::Tongue ? glueTongue(step, *stick, *rail)
                                                    : glueInlay(step, *stick, *rail);
        stick->gone = true;
    }
    if (glued != step.glueFace) {
        fault("the area to glue is not what the joints add up to");
    }
}

Area Bench::glueTongue(const GlueIn& step, const Workpiece& stick, RailState& rail) {
    const Corner& size = stick.solid.size;
    if (!rail.groove || !rail.cut || rail.tongue) {
        fault("the rail must be grooved, cut to length, and have no tongue yet");
        return {};
    }
    const Length deep = rail.groove->outEnd - rail.groove->out;
    if (size[Z] != rail.groove->downEnd - rail.groove->down || size[X] <= deep) {
        fault("the tongue " + quoted(stick.label) + " does not fit its groove");
    }
    if (stick.solid.boxes.front().wood != board_.border.wood) {
        fault("the tongue " + quoted(stick.label) + " is not of the wood of the border");
    }
    checkSize(step.proud, size[X] - deep, "what stands out of the rail");
    rail.tongue = size;
    ledger_.board += stick.solid.volume();
    return area(deep, size[Y]) * 2;
}

Area Bench::glueInlay(const GlueIn& step, const Workpiece& stick, RailState& rail) {
    const Corner& size = stick.solid.size;
    if (!rail.inlay || rail.cut || rail.inlaid) {
        fault("the rail must have its rebate, its full length, and no inlay yet");
        return {};
    }
    const Slab& place = *rail.inlay;
    const Length deep = place.downEnd - place.down;
    if (size[X] != place.outEnd - place.out || size[X] != board_.border.inlayWidth) {
        fault("the inlay " + quoted(stick.label) + " is not as wide as its rebate and the wish");
    }
    if (size[Y] != rail.stock[Y] || size[Z] <= deep) {
        fault("the inlay " + quoted(stick.label) +
              " must be as long as the rail and stand over its face");
        return {};
    }
    if (stick.solid.boxes.front().wood != board_.border.inlayWood) {
        fault("the inlay " + quoted(stick.label) + " is not of its wood");
    }
    checkSize(step.proud, size[Z] - deep, "what stands over the face");
    ledger_.planed += volume(size[X], size[Y], size[Z] - deep);
    rail.profile.put(place);
    rail.inlaid = true;
    return area(size[X] + deep, size[Y]);
}

void Bench::run(const CutRails& step) {
    if (!board_.border.isThere()) {
        fault("the board has no border");
        return;
    }
    if (step.mitred != board_.border.isFrame()) {
        fault("only the rails of a frame are mitred");
    }
    if (step.rails.empty()) {
        fault("there is no rail to cut");
    }
    for (const Rail& cut : step.rails) {
        RailState* rail = openRail(cut.label);
        if (rail == nullptr || !check(cut.longPoint, "length of the rail")) {
            return;
        }
        const Length length = cut.longPoint.value;
        if (rail->cut) {
            fault("the rail " + quoted(cut.label) + " is cut already");
            return;
        }
        if (rail->stock[Y] < length || (step.mitred && length <= rail->stock[X] * 2)) {
            fault("the rail " + quoted(cut.label) + " of " + inWords(rail->stock[Y]) +
                  " does not give " + inWords(length));
            return;
        }
        const Volume kept =
            step.mitred ? rail->profile.mitred(length) : rail->profile.straight(length);
        ledger_.trimmed += rail->profile.straight(rail->stock[Y]) - kept;
        ledger_.board += kept;
        rail->cut = true;
        rail->length = length;
    }
}

void Bench::run(const FitBorder& step) {
    Workpiece* field = openField(step.part);
    if (field == nullptr || !check(step.width, "width of the border") ||
        !check(step.gapX, "gap left and right") || !check(step.gapY, "gap above and below")) {
        return;
    }
    const Border& border = board_.border;
    if (!border.isThere() || border.design != step.design) {
        fault(border.isThere() ? "the border is to be of another design"
                               : "the board has no border");
        return;
    }
    if (step.width.value != border.width) {
        fault("the border is to be " + inWords(border.width) + " wide; got " +
              inWords(step.width.value));
    }
    checkGaps(step);
    const BorderSides on = sides();
    const std::size_t wanted = (on.leftAndRight ? 2U : 0U) + (on.topAndBottom ? 2U : 0U);
    if (step.rails.size() != wanted) {
        fault("this border has " + std::to_string(wanted) + " rails; got " +
              std::to_string(step.rails.size()));
        return;
    }
    checkPins(step, on);
    const Corner& size = field->solid.size;
    Area glued;
    for (std::size_t i = 0; i < step.rails.size(); ++i) {
        const bool across = runsAcross(i, on);
        Length inside = size[across ? X : Y];
        if (border.isFrame()) {
            inside += (across ? step.gapX : step.gapY).value * 2;
        } else if (across && on.leftAndRight) {
            inside += border.width * 2;  // bands at top and bottom lie over the ends of the others
        }
        layRail(step, step.rails[i], inside, across, *field);
        glued += area(inside, size[Z]);
    }
    checkGlued(step, glued, size[Z]);
    const Surround around =
        surroundOf(board_, field->solid.boxes.front().grain == Y, step.gapX.value, step.gapY.value);
    bordered_ = true;
    boardWidth_ = size[X] + around.left() * 2;
    boardHeight_ = size[Y] + around.top() * 2;
    checkSize(step.boardWidth, boardWidth_, "width of the board");
    checkSize(step.boardHeight, boardHeight_, "height of the board");
}

void Bench::checkGaps(const FitBorder& step) {
    const bool floats = step.design == BorderDesign::FloatingFrame;
    const std::pair<Length, Length> sides[] = {{step.gapX.value, season_.growthX},
                                               {step.gapY.value, season_.growthY}};
    for (const auto& [gap, growth] : sides) {
        if (!floats ? gap != none : board_.border.gap && gap != *board_.border.gap) {
            fault("the gap should be " + inWords(floats ? *board_.border.gap : none) + "; got " +
                  inWords(gap));
        }
        if (floats && !board_.border.gap && gap * 2 < growth) {
            fault("a gap of " + inWords(gap) + " closes: the field grows by " + inWords(growth));
        }
    }
}

/// `inside`: between the rails at its two ends, or the whole length of one that is not mitred.
void Bench::layRail(const FitBorder& step, const Rail& written, Length inside, bool across,
                    const Workpiece& field) {
    const Border& border = board_.border;
    RailState* rail = openRail(written.label);
    if (rail == nullptr) {
        return;
    }
    const std::string name = "the rail " + quoted(written.label);
    const Corner& size = field.solid.size;
    const Length longPoint = border.isFrame() ? inside + border.width * 2 : inside;
    checkSize(written.longPoint, longPoint, "length of the rail, long point to long point,");
    if (!rail->cut || rail->length != longPoint) {
        fault(name + " was not cut to " + inWords(longPoint));
    }
    if (rail->wood != border.wood) {
        fault(name + " is not of the wood of the border");
    }
    if (rail->stock[Z] != size[Z] || rail->profile.innerEdge(none, Length::nm(1)) != border.width) {
        fault(name + " should be " + inWords(size[Z]) + " × " + inWords(border.width) +
              " as it is seen; it is " + inWords(rail->stock[Z]) + " × " +
              inWords(rail->profile.innerEdge(none, Length::nm(1))));
    }
    if (rail->inlaid != border.hasInlay() || rail->inlay.has_value() != border.hasInlay()) {
        fault(name + (rail->inlaid ? " has an inlay" : " lacks its inlay"));
    }
    checkHousing(step, *rail, across, size, name);
    find(written.label)->gone = true;
}

/// Tongue or ledge, and what it meets in the field.
void Bench::checkHousing(const FitBorder& step, const RailState& rail, bool across,
                         const Corner& field, const std::string& name) {
    const bool floats = step.design == BorderDesign::FloatingFrame;
    const bool ledge = floats && board_.border.housing == Housing::Rebate;
    const bool tongue = (floats && !ledge) || step.design == BorderDesign::BreadboardEnds;
    if (rail.ledge.has_value() != ledge || rail.tongue.has_value() != tongue ||
        rail.groove.has_value() != tongue || fieldChannel_.has_value() != (ledge || tongue)) {
        fault(name + " and the field do not have the grooves or rebates of this border");
        return;
    }
    if (!fieldChannel_) {
        return;
    }
    const Slab own = ledge ? Slab{none, none, rail.ledge->downEnd, rail.stock[Z]} : *rail.groove;
    if (fieldLedge_ != ledge || own.down != fieldChannel_->down ||
        own.downEnd != fieldChannel_->downEnd) {
        fault(name + " and the field are not grooved at one height");
        return;
    }
    // The tongue lies beside the rail's gap; along the rail it must not meet the next one.
    const Length gap = across ? step.gapY.value : step.gapX.value;
    const Length reach = ledge ? rail.ledge->outEnd - rail.ledge->out
                               : (*rail.tongue)[X] - (rail.groove->outEnd - rail.groove->out);
    const Length shrinkage = across ? season_.shrinkageY : season_.shrinkageX;
    const Length deep = fieldChannel_->outEnd;
    if (reach > deep) {
        fault(name + ": what reaches below the field is longer than the field's groove is deep");
    }
    if (reach <= gap || (floats && (reach - gap) * 2 <= shrinkage)) {
        fault(name + " does not hold the field when that is smallest");
    }
    if (tongue) {
        const Length along = field[across ? X : Y];
        const Length length = (*rail.tongue)[Y];
        if (length > (floats ? along - deep * 2 : along)) {
            fault(name + ": its tongue is too long");
        }
    }
}

void Bench::checkGlued(const FitBorder& step, Area edges, Length thickness) {
    const bool floats = step.design == BorderDesign::FloatingFrame;
    const bool pinned = step.design == BorderDesign::BreadboardEnds;
    const bool loose = floats || pinned || (bindsTheField(board_) && !board_.border.cautionRead);
    if (step.mustNotBeGlued != loose) {
        fault(loose ? "the field moves; this border must not be glued to it"
                    : "this border is to be glued to the field");
    }
    Area glued = loose ? Area() : edges;
    if (board_.border.isFrame() && (floats || !loose)) {
        glued += area(diagonal(board_.border.width), thickness) * 4;
    }
    if (glued != step.glueFace) {
        fault("the area to glue is not what the joints add up to");
    }
}

void Bench::checkPins(const FitBorder& step, const BorderSides& on) {
    const bool pinned = step.design == BorderDesign::BreadboardEnds;
    bool sound = check(step.pinDiameter, "pin") && check(step.pinFromEdge, "pin from the edge");
    for (const Pin& pin : step.pins) {
        sound = sound && check(pin.at, "place of a pin") && check(pin.outward, "slot outwards") &&
                check(pin.inward, "slot inwards");
    }
    if (!sound) {
        return;
    }
    if (!pinned) {
        if (!step.pins.empty() || step.pinDiameter.value != none ||
            step.pinFromEdge.value != none) {
            fault("only breadboard ends are pinned");
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
        fault("pins stand in the middle of what the tongue reaches into the field");
    }
    const std::size_t count = step.pins.size();
    if (count % 2 == 0 || count < 3) {
        fault("an end has one pin in its middle and as many on each side of it");
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
            fault("pins stand in pairs, equally far from the middle, in order");
            return;
        }
        if (tight ? away != none || pin.outward.value != radius || pin.inward.value != radius
                  : !room(pin.outward.value, growth) || !room(pin.inward.value, shrinkage)) {
            fault("the pin at " + inWords(pin.at.value) +
                  (tight ? " must be tight and in the middle" : " binds in its slot"));
        }
    }
}

void Bench::run(const KeyCorners& step) {
    Workpiece* field = find(step.part);
    Workpiece* stick = find(step.stick);
    if (field == nullptr || stick == nullptr || !check(step.depth, "depth of the slot") ||
        !check(step.thickness, "thickness of the key") ||
        !check(step.fromFace, "place of the slot")) {
        return;
    }
    if (field->kind != Kind::Field || !bordered_ || !keysCorners(board_) || keyed_) {
        fault("only the corners of a closed frame that is to have splines are keyed, once");
        return;
    }
    if (stick->kind != Kind::Strip || !stick->madeFor.empty()) {
        fault(quoted(step.stick) + " was not milled for the border");
        return;
    }
    const Length deep = step.depth.value;
    const Length thick = step.thickness.value;
    const Corner& size = stick->solid.size;
    if (thick != board_.border.splineThickness || size[Z] != thick || size[X] != deep ||
        size[Y] < deep * 8 || stick->solid.boxes.front().wood != board_.border.splineWood) {
        fault("four keys " + inWords(thick) + " thick for slots " + inWords(deep) +
              " deep do not come out of " + quoted(step.stick));
        return;
    }
    if (deep * 2 > board_.border.width ||
        step.fromFace.value != half(field->solid.size[Z] - thick)) {
        fault("the slot must lie in the middle of the thickness and reach half the rail at most");
    }
    const Volume keys = volume(deep, deep, thick) * 4;
    ledger_.grooved += keys;
    ledger_.trimmed += stick->solid.volume() - keys;
    if (area(deep, deep) * 8 != step.glueFace) {
        fault("the area to glue is not what the keys add up to");
    }
    stick->gone = true;
    keyed_ = true;
}

}  // namespace kerfwright
