// What runs round the field.
#include "core/replay/bench.h"
#include "core/replay/words.h"
#include "core/words/say.h"

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
        fault(say("{1} was not milled for the border", quoted(label)));
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
    if (!check(step.depth, notedIn("figure", "depth")) ||
        !check(step.width, notedIn("figure", "width")) ||
        !check(step.fromFace, notedIn("figure", "distance from the face"))) {
        return;
    }
    if (step.parts.empty() || step.depth.value <= none || step.width.value <= none) {
        fault(say("a groove or rebate must be more than 0 deep and wide, and in something"));
        return;
    }
    if (fieldLaid_ && step.parts.front() == workpieces_[field_].label) {
        cutFieldChannel(step);
        return;
    }
    if (step.edges != 1) {
        fault(say("a rail has one inside edge"));
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
        fault(rail->cut ? say("{1} is cut to length already", quoted(label))
                        : say("{1} has that already", quoted(label)));
        return;
    }
    if (step.purpose == ChannelFor::Tongue ? top <= none || bottom >= rail->stock[Z]
                                           : top != none) {
        fault(step.purpose == ChannelFor::Tongue
                  ? say("a groove must leave wood above and below it")
                  : say("the rebate must be open at the top face"));
    }
    const Length edge = rail->profile.innerEdge(top, bottom);
    const Slab away{edge - step.depth.value, edge, top, bottom};
    if (away.out <= none || !rail->profile.cut(away)) {
        fault(say("{1} has not the wood for it", quoted(label)));
        return;
    }
    ledger_.grooved += volume(step.depth.value, step.width.value, rail->stock[Y]);
    channel = away;
}

void Bench::cutFieldChannel(const CutChannel& step) {
    if (step.parts.size() != 1) {
        fault(say("the field is cut by itself"));
        return;
    }
    Workpiece* field = openField(step.parts.front());
    if (field == nullptr) {
        return;
    }
    const bool wished = step.purpose != ChannelFor::Inlay;
    const bool all = board_.border.isFrame();
    if (fieldChannel_ || !wished || step.edges != (all ? 4 : 2)) {
        fault(say("the field gets one groove or rebate along the edges that the border is on"));
        return;
    }
    const Corner& size = field->solid.size;
    const Length top = step.fromFace.value;
    const Length bottom = top + step.width.value;
    const bool below = step.purpose == ChannelFor::Ledge;
    if (top <= none || (below ? bottom != size[Z] : bottom >= size[Z])) {
        fault(say("the channel does not lie as it should in a field {1} thick", inWords(size[Z])));
        return;
    }
    const BorderSides on = sides();
    const Length offX = on.leftAndRight ? step.depth.value * 2 : none;
    const Length offY = on.topAndBottom ? step.depth.value * 2 : none;
    if (offX >= size[X] || offY >= size[Y]) {
        fault(say("nothing would be left between the grooves of the field"));
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
    if (!check(step.proud, notedIn("figure", "what stands out"))) {
        return;
    }
    if (step.insets.empty()) {
        fault(say("there is nothing to glue in"));
    }
    for (const Inset& inset : step.insets) {
        if (inset.stick == inset.rail) {
            fault(say("a stick cannot be glued into itself"));
            return;
        }
        Workpiece* stick = find(inset.stick);
        RailState* rail = openRail(inset.rail);
        if (stick == nullptr || rail == nullptr) {
            return;
        }
        if (stick->kind != Kind::Strip || !stick->madeFor.empty() || rails_.contains(inset.stick)) {
            fault(say("{1} was not milled as a stick for the border", quoted(inset.stick)));
            return;
        }
        glued += step.purpose == ChannelFor::Tongue ? glueTongue(step, *stick, *rail)
                                                    : glueInlay(step, *stick, *rail);
        stick->gone = true;
    }
    if (glued != step.glueFace) {
        fault(say("the area to glue is not what the joints add up to"));
    }
}

Area Bench::glueTongue(const GlueIn& step, const Workpiece& stick, RailState& rail) {
    const Corner& size = stick.solid.size;
    if (!rail.groove || !rail.cut || rail.tongue) {
        fault(say("the rail must be grooved, cut to length, and have no tongue yet"));
        return {};
    }
    const Length deep = rail.groove->outEnd - rail.groove->out;
    if (size[Z] != rail.groove->downEnd - rail.groove->down || size[X] <= deep) {
        fault(say("the tongue {1} does not fit its groove", quoted(stick.label)));
    }
    if (stick.solid.boxes.front().wood != board_.border.wood) {
        fault(say("the tongue {1} is not of the wood of the border", quoted(stick.label)));
    }
    checkSize(step.proud, size[X] - deep, notedIn("figure", "what stands out of the rail"));
    rail.tongue = size;
    ledger_.board += stick.solid.volume();
    return area(deep, size[Y]) * 2;
}

Area Bench::glueInlay(const GlueIn& step, const Workpiece& stick, RailState& rail) {
    const Corner& size = stick.solid.size;
    if (!rail.inlay || rail.cut || rail.inlaid) {
        fault(say("the rail must have its rebate, its full length, and no inlay yet"));
        return {};
    }
    const Slab& place = *rail.inlay;
    const Length deep = place.downEnd - place.down;
    if (size[X] != place.outEnd - place.out || size[X] != board_.border.inlayWidth) {
        fault(say("the inlay {1} is not as wide as its rebate and the wish", quoted(stick.label)));
    }
    if (size[Y] != rail.stock[Y] || size[Z] <= deep) {
        fault(say("the inlay {1} must be as long as the rail and stand over its face",
                  quoted(stick.label)));
        return {};
    }
    if (stick.solid.boxes.front().wood != board_.border.inlayWood) {
        fault(say("the inlay {1} is not of its wood", quoted(stick.label)));
    }
    checkSize(step.proud, size[Z] - deep, notedIn("figure", "what stands over the face"));
    ledger_.planed += volume(size[X], size[Y], size[Z] - deep);
    rail.profile.put(place);
    rail.inlaid = true;
    return area(size[X] + deep, size[Y]);
}

void Bench::run(const CutRails& step) {
    if (!board_.border.isThere()) {
        fault(say("the board has no border"));
        return;
    }
    if (step.mitred != board_.border.isFrame()) {
        fault(say("only the rails of a frame are mitred"));
    }
    if (step.rails.empty()) {
        fault(say("there is no rail to cut"));
    }
    for (const Rail& cut : step.rails) {
        RailState* rail = openRail(cut.label);
        if (rail == nullptr || !check(cut.longPoint, notedIn("figure", "length of the rail"))) {
            return;
        }
        const Length length = cut.longPoint.value;
        if (rail->cut) {
            fault(say("the rail {1} is cut already", quoted(cut.label)));
            return;
        }
        if (rail->stock[Y] < length || (step.mitred && length <= rail->stock[X] * 2)) {
            fault(say("the rail {1} of {2} does not give {3}", quoted(cut.label),
                      inWords(rail->stock[Y]), inWords(length)));
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
    if (field == nullptr || !check(step.width, notedIn("figure", "width of the border")) ||
        !check(step.gapX, notedIn("figure", "gap left and right")) ||
        !check(step.gapY, notedIn("figure", "gap above and below"))) {
        return;
    }
    const Border& border = board_.border;
    if (!border.isThere() || border.design != step.design) {
        fault(border.isThere() ? say("the border is to be of another design")
                               : say("the board has no border"));
        return;
    }
    if (step.width.value != border.width) {
        fault(say("the border is to be {1} wide; got {2}", inWords(border.width),
                  inWords(step.width.value)));
    }
    checkGaps(step);
    const BorderSides on = sides();
    const std::size_t wanted = (on.leftAndRight ? 2U : 0U) + (on.topAndBottom ? 2U : 0U);
    if (step.rails.size() != wanted) {
        fault(sayCount(wanted, "this border has {1} rail; got {2}",
                       "this border has {1} rails; got {2}", step.rails.size()));
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
    checkSize(step.boardWidth, boardWidth_, notedIn("figure", "width of the board"));
    checkSize(step.boardHeight, boardHeight_, notedIn("figure", "height of the board"));
}

void Bench::checkGaps(const FitBorder& step) {
    const bool floats = step.design == BorderDesign::FloatingFrame;
    const std::pair<Length, Length> sides[] = {{step.gapX.value, season_.growthX},
                                               {step.gapY.value, season_.growthY}};
    for (const auto& [gap, growth] : sides) {
        if (!floats ? gap != none : board_.border.gap && gap != *board_.border.gap) {
            fault(say("the gap should be {1}; got {2}", inWords(floats ? *board_.border.gap : none),
                      inWords(gap)));
        }
        if (floats && !board_.border.gap && gap * 2 < growth) {
            fault(
                say("a gap of {1} closes: the field grows by {2}", inWords(gap), inWords(growth)));
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
    const std::string name = quoted(written.label);
    const Corner& size = field.solid.size;
    const Length longPoint = border.isFrame() ? inside + border.width * 2 : inside;
    checkSize(written.longPoint, longPoint,
              notedIn("figure", "length of the rail, long point to long point,"));
    if (!rail->cut || rail->length != longPoint) {
        fault(say("the rail {1} was not cut to {2}", name, inWords(longPoint)));
    }
    if (rail->wood != border.wood) {
        fault(say("the rail {1} is not of the wood of the border", name));
    }
    if (rail->stock[Z] != size[Z] || rail->profile.innerEdge(none, Length::nm(1)) != border.width) {
        fault(say("the rail {1} should be {2} × {3} as it is seen; it is {4} × {5}", name,
                  inWords(size[Z]), inWords(border.width), inWords(rail->stock[Z]),
                  inWords(rail->profile.innerEdge(none, Length::nm(1)))));
    }
    if (rail->inlaid != border.hasInlay() || rail->inlay.has_value() != border.hasInlay()) {
        fault(rail->inlaid ? say("the rail {1} has an inlay", name)
                           : say("the rail {1} lacks its inlay", name));
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
        fault(say("the rail {1} and the field do not have the grooves or rebates of this border",
                  name));
        return;
    }
    if (!fieldChannel_) {
        return;
    }
    const Slab own = ledge ? Slab{none, none, rail.ledge->downEnd, rail.stock[Z]} : *rail.groove;
    if (fieldLedge_ != ledge || own.down != fieldChannel_->down ||
        own.downEnd != fieldChannel_->downEnd) {
        fault(say("the rail {1} and the field are not grooved at one height", name));
        return;
    }
    // The tongue lies beside the rail's gap; along the rail it must not meet the next one.
    const Length gap = across ? step.gapY.value : step.gapX.value;
    const Length reach = ledge ? rail.ledge->outEnd - rail.ledge->out
                               : (*rail.tongue)[X] - (rail.groove->outEnd - rail.groove->out);
    const Length shrinkage = across ? season_.shrinkageY : season_.shrinkageX;
    const Length deep = fieldChannel_->outEnd;
    if (reach > deep) {
        fault(say(
            "the rail {1}: what reaches below the field is longer than the field's groove is deep",
            name));
    }
    if (reach <= gap || (floats && (reach - gap) * 2 <= shrinkage)) {
        fault(say("the rail {1} does not hold the field when that is smallest", name));
    }
    if (tongue) {
        const Length along = field[across ? X : Y];
        const Length length = (*rail.tongue)[Y];
        if (length > (floats ? along - deep * 2 : along)) {
            fault(say("the rail {1}: its tongue is too long", name));
        }
    }
}

void Bench::checkGlued(const FitBorder& step, Area edges, Length thickness) {
    const bool floats = step.design == BorderDesign::FloatingFrame;
    const bool pinned = step.design == BorderDesign::BreadboardEnds;
    const bool loose = floats || pinned || (bindsTheField(board_) && !board_.border.cautionRead);
    if (step.mustNotBeGlued != loose) {
        fault(loose ? say("the field moves; this border must not be glued to it")
                    : say("this border is to be glued to the field"));
    }
    Area glued = loose ? Area() : edges;
    if (board_.border.isFrame() && (floats || !loose)) {
        glued += area(diagonal(board_.border.width), thickness) * 4;
    }
    if (glued != step.glueFace) {
        fault(say("the area to glue is not what the joints add up to"));
    }
}

}  // namespace kerfwright
