#include "core/sheets/recordjson.h"

#include <algorithm>

namespace kerfwright {
namespace {

using Json = nlohmann::ordered_json;

// Keys of the file, not words for the eye: they stay when a word on the screen is bettered.
const char* key(TermKind kind) {
    switch (kind) {
    case TermKind::PieceWidth:
        return "piece-width";
    case TermKind::RowHeight:
        return "row-height";
    case TermKind::BoardThickness:
        return "board-thickness";
    case TermKind::BorderWidth:
        return "border-width";
    case TermKind::FieldSide:
        return "field-side";
    case TermKind::TrimMargin:
        return "trim-margin";
    case TermKind::PanelFlattening:
        return "panel-flattening";
    case TermKind::HalfPanelFlattening:
        return "half-panel-flattening";
    case TermKind::FieldFlattening:
        return "field-flattening";
    case TermKind::Truing:
        return "truing";
    case TermKind::Stick:
        return "stick";
    case TermKind::Milling:
        return "milling";
    case TermKind::EndAllowance:
        return "end-allowance";
    case TermKind::SquaringCut:
        return "squaring-cut";
    case TermKind::Kerf:
        return "kerf";
    case TermKind::Slices:
        return "slices";
    case TermKind::SpareSlices:
        return "spare-slices";
    case TermKind::Tail:
        return "tail";
    case TermKind::RoundingUp:
        return "rounding-up";
    case TermKind::HalfGrowth:
        return "half-growth";
    case TermKind::HalfShrinkage:
        return "half-shrinkage";
    case TermKind::PinGrowth:
        return "pin-growth";
    case TermKind::PinShrinkage:
        return "pin-shrinkage";
    case TermKind::Clearance:
        return "clearance";
    case TermKind::OwnGap:
        return "own-gap";
    case TermKind::Gap:
        return "gap";
    case TermKind::Hold:
        return "hold";
    case TermKind::RailGroove:
        return "rail-groove";
    case TermKind::FieldGroove:
        return "field-groove";
    case TermKind::Ledge:
        return "ledge";
    case TermKind::TongueReach:
        return "tongue-reach";
    case TermKind::Joinery:
        return "joinery";
    case TermKind::Inlay:
        return "inlay";
    case TermKind::Proud:
        return "proud";
    case TermKind::PinRadius:
        return "pin-radius";
    case TermKind::RoundingFine:
        return "rounding-fine";
    }
    return "";
}

const char* key(Purpose purpose) {
    switch (purpose) {
    case Purpose::AfterGlueUp:
        return "after-glue-up";
    case Purpose::RowHeight:
        return "row-height";
    case Purpose::Finished:
        return "finished";
    }
    return "";
}

const char* key(ChannelFor purpose) {
    switch (purpose) {
    case ChannelFor::Tongue:
        return "tongue";
    case ChannelFor::Ledge:
        return "ledge";
    case ChannelFor::Inlay:
        return "inlay";
    }
    return "";
}

/// JSON numbers of 64 bits would cut these off, so they are written out.
std::string decimal(detail::Wide value) {
    const bool negative = value < 0;
    std::string digits;
    do {
        const int digit = static_cast<int>(value % 10);
        digits += static_cast<char>('0' + (digit < 0 ? -digit : digit));
        value /= 10;
    } while (value != 0);
    if (negative) {
        digits += '-';
    }
    std::reverse(digits.begin(), digits.end());
    return digits;
}

/// Puts the record of a step into an object.
class Describer {
public:
    Describer(const RecordJson& json, Json& out)
        : json_(json)
        , out_(out) {}

    void operator()(const Mill& work) {
        out_["kind"] = "mill";
        out_["panel"] = work.panel;
        out_["lines"] = Json::array();
        for (const MillLine& line : work.lines) {
            out_["lines"].push_back({{"wood", json_.wood(line.wood)},
                                     {"strips", line.strips},
                                     {"rough",
                                      {{"thickness", json_.figure(line.roughThickness)},
                                       {"width", json_.figure(line.roughWidth)},
                                       {"length", json_.figure(line.roughLength)}}},
                                     {"milled",
                                      {{"thickness", json_.figure(line.thickness)},
                                       {"width", json_.figure(line.width)},
                                       {"length", json_.figure(line.length)}}}});
        }
    }
    void operator()(const Glue& work) {
        out_["kind"] = "glue";
        out_["result"] = work.result;
        out_["final"] = work.final;
        out_["along"] = work.along == GlueAlong::Width ? "width" : "down";
        out_["parts"] = Json::array();
        for (const Laid& part : work.parts) {
            out_["parts"].push_back({{"part", part.part}, {"lay", RecordJson::lay(part.lay)}});
        }
        out_["width"] = json_.figure(work.width);
        out_["length"] = json_.figure(work.length);
        out_["thickness"] = json_.figure(work.thickness);
        out_["glueFace"] = json_.area(work.glueFace);
    }
    void operator()(const Take& work) {
        out_["kind"] = "take";
        out_["result"] = work.result;
        out_["part"] = work.part.part;
        out_["lay"] = RecordJson::lay(work.part.lay);
        out_["width"] = json_.figure(work.width);
        out_["length"] = json_.figure(work.length);
        out_["thickness"] = json_.figure(work.thickness);
    }
    void operator()(const Flatten& work) {
        out_["kind"] = "flatten";
        out_["part"] = work.part;
        out_["face"] = work.face == Face::EndGrain ? "end-grain" : "long-grain";
        out_["purpose"] = key(work.purpose);
        out_["from"] = json_.figure(work.from);
        out_["to"] = json_.figure(work.to);
    }
    void operator()(const SquareEnd& work) {
        out_["kind"] = "square-end";
        out_["part"] = work.part;
        out_["waste"] = json_.figure(work.waste);
        out_["kerf"] = json_.figure(work.kerf);
        out_["left"] = json_.length(work.left);
    }
    void operator()(const Crosscut& work) {
        out_["kind"] = "crosscut";
        out_["part"] = work.part;
        out_["stop"] = json_.figure(work.stop);
        out_["kerf"] = json_.figure(work.kerf);
        out_["slices"] = work.slices;
        out_["spares"] = work.spares;
        out_["marginRows"] = work.marginRows;
        out_["forPanels"] = work.forPanels;
        out_["left"] = json_.length(work.left);
    }
    void operator()(const BringToSize& work) {
        const Sizing& sizing = work.sizing;
        out_["kind"] = "bring-to-size";
        out_["parts"] = work.parts;
        out_["in"] = sizing.in == SizedIn::Width    ? "width"
                     : sizing.in == SizedIn::Length ? "length"
                                                    : "thickness";
        out_["for"] = sizing.purpose == SizedFor::TrueSides    ? "true-sides"
                      : sizing.purpose == SizedFor::LessMargin ? "less-margin"
                                                               : "window";
        out_["from"] = json_.figure(sizing.from);
        out_["to"] = json_.figure(sizing.to);
        out_["offFirst"] = json_.length(sizing.offFirst);
        out_["offLast"] = json_.length(sizing.offLast);
    }
    void operator()(const TrimField& work) {
        out_["kind"] = "trim";
        out_["part"] = work.part;
        out_["margin"] = json_.figure(work.margin);
        out_["width"] = json_.figure(work.width);
        out_["height"] = json_.figure(work.height);
    }
    void operator()(const CutChannel& work) {
        out_["kind"] = "channel";
        out_["parts"] = work.parts;
        out_["for"] = key(work.purpose);
        out_["edges"] = work.edges;
        out_["depth"] = json_.figure(work.depth);
        out_["width"] = json_.figure(work.width);
        out_["fromFace"] = json_.figure(work.fromFace);
    }
    void operator()(const GlueIn& work) {
        out_["kind"] = "glue-in";
        out_["for"] = key(work.purpose);
        out_["insets"] = Json::array();
        for (const Inset& inset : work.insets) {
            out_["insets"].push_back({{"stick", inset.stick}, {"rail", inset.rail}});
        }
        out_["proud"] = json_.figure(work.proud);
        out_["glueFace"] = json_.area(work.glueFace);
    }
    void operator()(const CutRails& work) {
        out_["kind"] = "cut-rails";
        out_["mitred"] = work.mitred;
        out_["rails"] = rails(work.rails);
    }
    void operator()(const KeyCorners& work) {
        out_["kind"] = "key-corners";
        out_["part"] = work.part;
        out_["stick"] = work.stick;
        out_["depth"] = json_.figure(work.depth);
        out_["thickness"] = json_.figure(work.thickness);
        out_["fromFace"] = json_.figure(work.fromFace);
        out_["glueFace"] = json_.area(work.glueFace);
    }
    void operator()(const FitBorder& work) {
        out_["kind"] = "border";
        out_["part"] = work.part;
        out_["rails"] = rails(work.rails);
        out_["width"] = json_.figure(work.width);
        out_["boardWidth"] = json_.figure(work.boardWidth);
        out_["boardHeight"] = json_.figure(work.boardHeight);
        out_["mustNotBeGlued"] = work.mustNotBeGlued;
        out_["design"] = fileKey(work.design);
        out_["gap"] = {{"x", json_.figure(work.gapX)}, {"y", json_.figure(work.gapY)}};
        out_["glueFace"] = json_.area(work.glueFace);
        out_["pins"] = Json::array();
        for (const Pin& pin : work.pins) {
            out_["pins"].push_back({{"at", json_.figure(pin.at)},
                                    {"outward", json_.figure(pin.outward)},
                                    {"inward", json_.figure(pin.inward)}});
        }
        out_["pinDiameter"] = json_.figure(work.pinDiameter);
        out_["pinFromEdge"] = json_.figure(work.pinFromEdge);
    }

private:
    Json rails(const std::vector<Rail>& all) const {
        Json out = Json::array();
        for (const Rail& rail : all) {
            out.push_back({{"label", rail.label}, {"longPoint", json_.figure(rail.longPoint)}});
        }
        return out;
    }

    const RecordJson& json_;
    Json& out_;
};

}  // namespace

const char* fileKey(BorderDesign design) {
    switch (design) {
    case BorderDesign::EndGrainBand:
        return "end-grain-band";
    case BorderDesign::FloatingFrame:
        return "floating-frame";
    case BorderDesign::FixedFrame:
        return "fixed-frame";
    case BorderDesign::BreadboardEnds:
        return "breadboard-ends";
    case BorderDesign::EdgeBand:
        return "edge-band";
    }
    return "";
}

RecordJson::Json RecordJson::length(Length value) const {
    const Written written = write(value, project_.notation, DecimalMark::Point);
    Json out = {{"nm", value.nm()}, {"text", written.text}};
    if (written.rounded) {
        out["rounded"] = true;
    }
    return out;
}

RecordJson::Json RecordJson::figure(const Figure& value) const {
    Json out = length(value.value);
    out["working"] = Json::array();
    for (const Term& term : value.terms) {
        const SettingInfo* info = settingInfo(settingOf(term.kind));
        out["working"].push_back(
            {{"term", key(term.kind)},
             {"nm", term.value.nm()},
             {"text", format(term.value, project_.notation, DecimalMark::Point)},
             {"times", term.times},
             {"setting", info == nullptr ? Json() : Json(info->key)}});
    }
    return out;
}

RecordJson::Json RecordJson::volume(Volume value) const {
    return {{"nm3", decimal(value.cubicNm())},
            {"text", formatVolume(value, project_.notation.unit, DecimalMark::Point)}};
}

RecordJson::Json RecordJson::wood(int index) const {
    const auto at = static_cast<std::size_t>(index);
    return index >= 0 && at < project_.woods.size() ? Json(project_.woods[at].key) : Json();
}

RecordJson::Json RecordJson::area(Area value) const {
    return {{"nm2", decimal(value.squareNm())},
            {"text", formatArea(value, project_.notation.unit, DecimalMark::Point)}};
}

RecordJson::Json RecordJson::lay(const Lay& how) {
    return {{"rolled", how.rolled},
            {"stoodUp", how.stoodUp},
            {"turnedOver", how.turnedOver},
            {"flipped", how.flipped},
            {"turned", how.turned}};
}

RecordJson::Json RecordJson::joints(const std::vector<Joint>& list) const {
    Json out = Json::array();
    for (const Joint& joint : list) {
        out.push_back({{"direction", joint.vertical ? "down" : "across"},
                       {"at", length(joint.at)},
                       {"from", length(joint.from)},
                       {"to", length(joint.to)}});
    }
    return out;
}

RecordJson::Json RecordJson::step(const Step& one, int number) const {
    Json out = {{"number", number}, {"kind", ""}, {"title", title(one)}};
    std::visit(Describer(*this, out), one.work);
    return out;
}

}  // namespace kerfwright
