#include "core/sheets/planjson.h"

#include "core/sheets/seasonjson.h"
#include "core/sheets/sheets.h"

#include <nlohmann/json.hpp>

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

const char* key(Severity severity) {
    switch (severity) {
    case Severity::Note:
        return "note";
    case Severity::Caution:
        return "caution";
    case Severity::Danger:
        return "danger";
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

const char* key(GrainDirection grain) {
    switch (grain) {
    case GrainDirection::PlannersChoice:
        return "planners-choice";
    case GrainDirection::Down:
        return "down";
    case GrainDirection::Across:
        return "across";
    }
    return "";
}

const char* key(BorderDesign design) {
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

/// Turns each record into JSON, with texts in the notation of the project.
class Writer {
public:
    Writer(const Project& project, const Job& job)
        : project_(project)
        , job_(job) {}

    Json whole() const {
        Json out;
        out["format"] = "kerfwright-plan";
        out["version"] = planJsonVersion;
        out["project"] = {{"name", project_.titles.name},
                          {"maker", project_.titles.maker},
                          {"date", project_.titles.date},
                          {"revision", revision(project_)}};
        out["units"] = unitName(project_.notation.unit);
        out["glueUps"] = job_.plan.glueUps;
        out["assemblies"] = job_.plan.assemblies;
        out["by"] = job_.plan.byColumns ? "columns" : "rows";
        out["decidedBy"] = job_.plan.decidedBy;
        out["board"] = board();
        out["woods"] = woods();
        out["shop"] = shop();
        out["climate"] = climateJson(project_.climate);
        out["glue"] = glueJson(project_.glue);
        out["purpose"] = {{"use", info(project_.purpose.use).key},
                          {"foot", length(project_.purpose.foot)}};
        out["panels"] = Json::array();
        out["strips"] = Json::array();
        for (const Part& part : job_.plan.parts) {
            if (part.role == Role::Strip) {
                out["strips"].push_back(strip(part));
            } else if (part.role == Role::Panel) {
                out["panels"].push_back(glued(part));
            } else {
                out["field"] = glued(part);
            }
        }
        out["extraJoints"] = joints(job_.plan.extraJoints);
        out["omittedJoints"] = joints(job_.plan.omittedJoints);
        out["steps"] = Json::array();
        int number = 0;
        for (const Step& one : job_.steps.steps) {
            out["steps"].push_back(step(one, ++number));
        }
        out["ledger"] = ledger(job_.steps.ledger);
        out["proof"] = {{"ok", job_.proof.ok()},
                        {"faults", job_.proof.faults},
                        {"width", length(job_.proof.width)},
                        {"height", length(job_.proof.height)},
                        {"thickness", length(job_.proof.thickness)},
                        {"ledger", ledger(job_.proof.ledger)}};
        out["season"] = seasonJson(project_, job_);
        out["cautions"] = cautionList();
        out["totals"] = totals();
        return out;
    }

private:
    Json length(Length value) const {
        const Written written = write(value, project_.notation);
        Json out = {{"nm", value.nm()}, {"text", written.text}};
        if (written.rounded) {
            out["rounded"] = true;
        }
        return out;
    }

    Json figure(const Figure& value) const {
        Json out = length(value.value);
        out["working"] = Json::array();
        for (const Term& term : value.terms) {
            const SettingInfo* info = settingInfo(settingOf(term.kind));
            out["working"].push_back({{"term", key(term.kind)},
                                      {"nm", term.value.nm()},
                                      {"text", format(term.value, project_.notation)},
                                      {"times", term.times},
                                      {"setting", info == nullptr ? Json() : Json(info->key)}});
        }
        return out;
    }

    Json volumeOf(Volume value) const {
        return {{"nm3", decimal(value.cubicNm())},
                {"text", formatVolume(value, project_.notation.unit)}};
    }

    Json wood(int index) const {
        const auto at = static_cast<std::size_t>(index);
        return index >= 0 && at < project_.woods.size() ? Json(project_.woods[at].key) : Json();
    }

    Json board() const {
        const Board& wish = project_.board;
        Json out = {{"build", wish.build == Build::EndGrain ? "end-grain" : "long-grain"},
                    {"grain", wish.build == Build::EndGrain ? Json() : Json(key(wish.grain))},
                    {"width", length(job_.totals.width)},
                    {"height", length(job_.totals.height)},
                    {"thickness", length(wish.thickness)}};
        Json field = {{"width", length(wish.field.width())},
                      {"height", length(wish.field.height())},
                      {"columns", Json::array()},
                      {"rows", Json::array()},
                      {"pieces", Json::array()}};
        for (const Length column : wish.field.columns) {
            field["columns"].push_back(length(column));
        }
        for (const Length row : wish.field.rows) {
            field["rows"].push_back(length(row));
        }
        for (const Piece& piece : wish.field.pieces) {
            field["pieces"].push_back({{"column", piece.column},
                                       {"row", piece.row},
                                       {"across", piece.across},
                                       {"down", piece.down},
                                       {"wood", wood(piece.wood)}});
        }
        out["field"] = std::move(field);
        const bool bordered = wish.border.width > Length{};
        out["border"] = bordered ? border(wish.border) : Json();
        return out;
    }

    Json border(const Border& wish) const {
        Json out = {
            {"width", length(wish.width)},
            {"wood", wood(wish.wood)},
            {"design", key(wish.design)},
            {"gap", {{"x", figure(job_.plan.border.gapX)}, {"y", figure(job_.plan.border.gapY)}}}};
        if (wish.has(BorderDesign::FloatingFrame)) {
            out["housing"] = wish.housing == Housing::Groove ? "groove" : "rebate";
        }
        if (wish.hasInlay()) {
            out["inlay"] = {{"width", length(wish.inlayWidth)}, {"wood", wood(wish.inlayWood)}};
        }
        if (wish.hasSplines()) {
            out["splines"] = {{"thickness", length(wish.splineThickness)},
                              {"wood", wood(wish.splineWood)}};
        }
        return out;
    }

    Json area(Area value) const {
        return {{"nm2", decimal(value.squareNm())},
                {"text", formatArea(value, project_.notation.unit)}};
    }

    Json rails(const std::vector<Rail>& all) const {
        Json out = Json::array();
        for (const Rail& rail : all) {
            out.push_back({{"label", rail.label}, {"longPoint", figure(rail.longPoint)}});
        }
        return out;
    }

    Json woods() const {
        const std::vector<WoodUse> use =
            woodUse(project_.board.field, static_cast<int>(project_.woods.size()));
        Json out = Json::array();
        for (std::size_t i = 0; i < project_.woods.size(); ++i) {
            const Wood& one = project_.woods[i];
            out.push_back({{"key", one.key},
                           {"name", one.name},
                           {"letter", one.letter},
                           {"pieces", i < use.size() ? use[i].pieces : 0}});
        }
        return out;
    }

    Json shop() const {
        Json out;
        for (const SettingInfo& info : shopSettings()) {
            out[info.key] = length(project_.shop.*info.value);
        }
        out["spare-slices"] = project_.shop.spareSlices;
        return out;
    }

    Json money(const std::optional<std::int64_t>& hundredths) const {
        if (!hundredths) {
            return {};
        }
        const std::string& currency = project_.currency;
        return {{"hundredths", *hundredths},
                {"text", formatMoney(*hundredths) + (currency.empty() ? "" : " " + currency)}};
    }

    Json strip(const Part& part) const {
        return {{"label", part.label},
                {"wood", wood(part.wood)},
                {"rough",
                 {{"thickness", figure(part.roughThickness)},
                  {"width", figure(part.roughWidth)},
                  {"length", figure(part.roughLength)}}},
                {"milled",
                 {{"thickness", figure(part.thickness)},
                  {"width", figure(part.width)},
                  {"length", figure(part.length)}}}};
    }

    static Json lay(const Lay& how) {
        return {{"rolled", how.rolled},
                {"stoodUp", how.stoodUp},
                {"turnedOver", how.turnedOver},
                {"flipped", how.flipped},
                {"turned", how.turned}};
    }

    /// A panel or the field.
    Json glued(const Part& part) const {
        Json out = {{"label", part.label},           {"kind", part.kind},
                    {"glued", part.isGlued()},       {"width", figure(part.width)},
                    {"length", figure(part.length)}, {"thickness", figure(part.thickness)},
                    {"uses", Json::array()}};
        for (const Use& use : part.uses) {
            const auto at = static_cast<std::size_t>(use.part);
            out["uses"].push_back({{"part", job_.plan.parts.at(at).label},
                                   {"slice", use.slice < 0 ? Json() : Json(use.slice + 1)},
                                   {"lay", lay(use.lay)}});
        }
        out["stages"] = Json::array();
        for (const Stage& stage : part.stages) {
            Json runs = Json::array();
            for (const SliceRun& run : stage.runs) {
                runs.push_back({{"length", figure(run.length)},
                                {"count", run.count},
                                {"spare", run.spare},
                                {"marginSides", run.marginSides}});
            }
            out["stages"].push_back(
                {{"thickness", figure(stage.thickness)}, {"slices", std::move(runs)}});
        }
        return out;
    }

    Json joints(const std::vector<Joint>& list) const {
        Json out = Json::array();
        for (const Joint& joint : list) {
            out.push_back({{"direction", joint.vertical ? "down" : "across"},
                           {"at", length(joint.at)},
                           {"from", length(joint.from)},
                           {"to", length(joint.to)}});
        }
        return out;
    }

    Json step(const Step& one, int number) const {
        Json out = {{"number", number}, {"kind", ""}, {"title", title(one)}};
        std::visit([&](const auto& work) { describe(work, out); }, one.work);
        return out;
    }

    void describe(const Mill& work, Json& out) const {
        out["kind"] = "mill";
        out["panel"] = work.panel;
        out["lines"] = Json::array();
        for (const MillLine& line : work.lines) {
            out["lines"].push_back({{"wood", wood(line.wood)},
                                    {"strips", line.strips},
                                    {"rough",
                                     {{"thickness", figure(line.roughThickness)},
                                      {"width", figure(line.roughWidth)},
                                      {"length", figure(line.roughLength)}}},
                                    {"milled",
                                     {{"thickness", figure(line.thickness)},
                                      {"width", figure(line.width)},
                                      {"length", figure(line.length)}}}});
        }
    }
    void describe(const Glue& work, Json& out) const {
        out["kind"] = "glue";
        out["result"] = work.result;
        out["final"] = work.final;
        out["along"] = work.along == GlueAlong::Width ? "width" : "down";
        out["parts"] = Json::array();
        for (const Laid& part : work.parts) {
            out["parts"].push_back({{"part", part.part}, {"lay", lay(part.lay)}});
        }
        out["width"] = figure(work.width);
        out["length"] = figure(work.length);
        out["thickness"] = figure(work.thickness);
        out["glueFace"] = {{"nm2", decimal(work.glueFace.squareNm())},
                           {"text", formatArea(work.glueFace, project_.notation.unit)}};
    }
    void describe(const Take& work, Json& out) const {
        out["kind"] = "take";
        out["result"] = work.result;
        out["part"] = work.part.part;
        out["lay"] = lay(work.part.lay);
        out["width"] = figure(work.width);
        out["length"] = figure(work.length);
        out["thickness"] = figure(work.thickness);
    }
    void describe(const Flatten& work, Json& out) const {
        out["kind"] = "flatten";
        out["part"] = work.part;
        out["face"] = work.face == Face::EndGrain ? "end-grain" : "long-grain";
        out["purpose"] = key(work.purpose);
        out["from"] = figure(work.from);
        out["to"] = figure(work.to);
    }
    void describe(const SquareEnd& work, Json& out) const {
        out["kind"] = "square-end";
        out["part"] = work.part;
        out["waste"] = figure(work.waste);
        out["kerf"] = figure(work.kerf);
        out["left"] = length(work.left);
    }
    void describe(const Crosscut& work, Json& out) const {
        out["kind"] = "crosscut";
        out["part"] = work.part;
        out["stop"] = figure(work.stop);
        out["kerf"] = figure(work.kerf);
        out["slices"] = work.slices;
        out["spares"] = work.spares;
        out["marginRows"] = work.marginRows;
        out["forPanels"] = work.forPanels;
        out["left"] = length(work.left);
    }
    void describe(const BringToSize& work, Json& out) const {
        const Sizing& sizing = work.sizing;
        out["kind"] = "bring-to-size";
        out["parts"] = work.parts;
        out["in"] = sizing.in == SizedIn::Width    ? "width"
                    : sizing.in == SizedIn::Length ? "length"
                                                   : "thickness";
        out["for"] = sizing.purpose == SizedFor::TrueSides    ? "true-sides"
                     : sizing.purpose == SizedFor::LessMargin ? "less-margin"
                                                              : "window";
        out["from"] = figure(sizing.from);
        out["to"] = figure(sizing.to);
        out["offFirst"] = length(sizing.offFirst);
        out["offLast"] = length(sizing.offLast);
    }
    void describe(const TrimField& work, Json& out) const {
        out["kind"] = "trim";
        out["part"] = work.part;
        out["margin"] = figure(work.margin);
        out["width"] = figure(work.width);
        out["height"] = figure(work.height);
    }
    void describe(const CutChannel& work, Json& out) const {
        out["kind"] = "channel";
        out["parts"] = work.parts;
        out["for"] = key(work.purpose);
        out["edges"] = work.edges;
        out["depth"] = figure(work.depth);
        out["width"] = figure(work.width);
        out["fromFace"] = figure(work.fromFace);
    }
    void describe(const GlueIn& work, Json& out) const {
        out["kind"] = "glue-in";
        out["for"] = key(work.purpose);
        out["insets"] = Json::array();
        for (const Inset& inset : work.insets) {
            out["insets"].push_back({{"stick", inset.stick}, {"rail", inset.rail}});
        }
        out["proud"] = figure(work.proud);
        out["glueFace"] = area(work.glueFace);
    }
    void describe(const CutRails& work, Json& out) const {
        out["kind"] = "cut-rails";
        out["mitred"] = work.mitred;
        out["rails"] = rails(work.rails);
    }
    void describe(const KeyCorners& work, Json& out) const {
        out["kind"] = "key-corners";
        out["part"] = work.part;
        out["stick"] = work.stick;
        out["depth"] = figure(work.depth);
        out["thickness"] = figure(work.thickness);
        out["fromFace"] = figure(work.fromFace);
        out["glueFace"] = area(work.glueFace);
    }
    void describe(const FitBorder& work, Json& out) const {
        out["kind"] = "border";
        out["part"] = work.part;
        out["rails"] = rails(work.rails);
        out["width"] = figure(work.width);
        out["boardWidth"] = figure(work.boardWidth);
        out["boardHeight"] = figure(work.boardHeight);
        out["mustNotBeGlued"] = work.mustNotBeGlued;
        out["design"] = key(work.design);
        out["gap"] = {{"x", figure(work.gapX)}, {"y", figure(work.gapY)}};
        out["glueFace"] = area(work.glueFace);
        out["pins"] = Json::array();
        for (const Pin& pin : work.pins) {
            out["pins"].push_back({{"at", figure(pin.at)},
                                   {"outward", figure(pin.outward)},
                                   {"inward", figure(pin.inward)}});
        }
        out["pinDiameter"] = figure(work.pinDiameter);
        out["pinFromEdge"] = figure(work.pinFromEdge);
    }

    Json ledger(const Ledger& all) const {
        return {{"timberIn", volumeOf(all.timberIn)}, {"board", volumeOf(all.board)},
                {"kerf", volumeOf(all.kerf)},         {"planed", volumeOf(all.planed)},
                {"trimmed", volumeOf(all.trimmed)},   {"spare", volumeOf(all.spare)},
                {"offcut", volumeOf(all.offcut)},     {"grooved", volumeOf(all.grooved)}};
    }

    Json cautionList() const {
        Json out = Json::array();
        for (const Caution& caution : job_.cautions) {
            Json steps = Json::array();
            for (const int step : caution.steps) {
                steps.push_back(step + 1);
            }
            Json remedies = Json::array();
            for (const Remedy& remedy : caution.remedies) {
                remedies.push_back(remedy.label);
            }
            out.push_back({{"severity", key(caution.severity)},
                           {"key", caution.key},
                           {"title", caution.title},
                           {"reason", caution.reason},
                           {"remedy", caution.remedy},
                           {"place", placeJson(caution.place)},
                           {"remedies", std::move(remedies)},
                           {"step", caution.step < 0 ? Json() : Json(caution.step + 1)},
                           {"steps", steps}});
        }
        return out;
    }

    Json totals() const {
        const Totals& all = job_.totals;
        Json out = {{"width", length(all.width)},
                    {"height", length(all.height)},
                    {"thickness", length(all.thickness)},
                    {"weightKg", all.weightKg > 0 ? Json(all.weightKg) : Json()},
                    {"timberIn", volumeOf(all.timberIn)},
                    {"yieldPercent", all.yieldPercent},
                    {"cost", money(all.cost)},
                    {"timberByWood", Json::array()}};
        for (std::size_t i = 0; i < all.timberByWood.size(); ++i) {
            if (all.timberByWood[i] > Volume{}) {
                out["timberByWood"].push_back({{"wood", wood(static_cast<int>(i))},
                                               {"timber", volumeOf(all.timberByWood[i])},
                                               {"cost", money(all.costByWood[i])}});
            }
        }
        return out;
    }

    const Project& project_;
    const Job& job_;
};

}  // namespace

std::string planJson(const Project& project, const Job& job) {
    return Writer(project, job).whole().dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace kerfwright
