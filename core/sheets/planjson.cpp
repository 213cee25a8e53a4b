#include "core/sheets/planjson.h"

#include "core/bench/standing.h"
#include "core/sheets/hoursjson.h"
#include "core/sheets/recordjson.h"
#include "core/sheets/seasonjson.h"
#include "core/sheets/sheets.h"

#include <nlohmann/json.hpp>

namespace kerfwright {
namespace {

using Json = nlohmann::ordered_json;

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

/// Turns each record into JSON, with texts in the notation of the project.
class Writer {
public:
    Writer(const Project& project, const Job& job)
        : project_(project)
        , job_(job)
        , json_(project) {}

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
        out["rates"] = ratesJson(project_.rates);
        out["purpose"] = {{"use", info(project_.purpose.use).key},
                          {"foot", json_.length(project_.purpose.foot)}};
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
        out["extraJoints"] = json_.joints(job_.plan.extraJoints);
        out["omittedJoints"] = json_.joints(job_.plan.omittedJoints);
        out["steps"] = Json::array();
        int number = 0;
        for (const Step& one : job_.steps.steps) {
            out["steps"].push_back(json_.step(one, ++number));
        }
        out["ledger"] = ledger(job_.steps.ledger);
        out["proof"] = {{"ok", job_.proof.ok()},
                        {"faults", job_.proof.faults},
                        {"width", json_.length(job_.proof.width)},
                        {"height", json_.length(job_.proof.height)},
                        {"thickness", json_.length(job_.proof.thickness)},
                        {"ledger", ledger(job_.proof.ledger)}};
        out["hours"] = hoursJson(job_.hours);
        out["season"] = seasonJson(project_, job_);
        out["cautions"] = cautionList();
        out["totals"] = totals();
        return out;
    }

private:
    Json board() const {
        const Board& wish = project_.board;
        Json out = {{"build", wish.build == Build::EndGrain ? "end-grain" : "long-grain"},
                    {"grain", wish.build == Build::EndGrain ? Json() : Json(key(wish.grain))},
                    {"width", json_.length(job_.totals.width)},
                    {"height", json_.length(job_.totals.height)},
                    {"thickness", json_.length(wish.thickness)}};
        Json field = {{"width", json_.length(wish.field.width())},
                      {"height", json_.length(wish.field.height())},
                      {"columns", Json::array()},
                      {"rows", Json::array()},
                      {"pieces", Json::array()}};
        for (const Length column : wish.field.columns) {
            field["columns"].push_back(json_.length(column));
        }
        for (const Length row : wish.field.rows) {
            field["rows"].push_back(json_.length(row));
        }
        for (const Piece& piece : wish.field.pieces) {
            field["pieces"].push_back({{"column", piece.column},
                                       {"row", piece.row},
                                       {"across", piece.across},
                                       {"down", piece.down},
                                       {"wood", json_.wood(piece.wood)}});
        }
        out["field"] = std::move(field);
        const bool bordered = wish.border.width > Length{};
        out["border"] = bordered ? border(wish.border) : Json();
        return out;
    }

    Json border(const Border& wish) const {
        Json out = {{"width", json_.length(wish.width)},
                    {"wood", json_.wood(wish.wood)},
                    {"design", fileKey(wish.design)},
                    {"gap",
                     {{"x", json_.figure(job_.plan.border.gapX)},
                      {"y", json_.figure(job_.plan.border.gapY)}}}};
        if (wish.has(BorderDesign::FloatingFrame)) {
            out["housing"] = wish.housing == Housing::Groove ? "groove" : "rebate";
        }
        if (wish.hasInlay()) {
            out["inlay"] = {{"width", json_.length(wish.inlayWidth)},
                            {"wood", json_.wood(wish.inlayWood)}};
        }
        if (wish.hasSplines()) {
            out["splines"] = {{"thickness", json_.length(wish.splineThickness)},
                              {"wood", json_.wood(wish.splineWood)}};
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
            out[info.key] = json_.length(project_.shop.*info.value);
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
                {"text", formatMoney(*hundredths, DecimalMark::Point) +
                             (currency.empty() ? "" : " " + currency)}};
    }

    Json strip(const Part& part) const {
        return {{"label", part.label},
                {"wood", json_.wood(part.wood)},
                {"rough",
                 {{"thickness", json_.figure(part.roughThickness)},
                  {"width", json_.figure(part.roughWidth)},
                  {"length", json_.figure(part.roughLength)}}},
                {"milled",
                 {{"thickness", json_.figure(part.thickness)},
                  {"width", json_.figure(part.width)},
                  {"length", json_.figure(part.length)}}}};
    }

    /// A panel or the field.
    Json glued(const Part& part) const {
        Json out = {{"label", part.label},
                    {"kind", part.kind},
                    {"glued", part.isGlued()},
                    {"width", json_.figure(part.width)},
                    {"length", json_.figure(part.length)},
                    {"thickness", json_.figure(part.thickness)},
                    {"uses", Json::array()}};
        for (const Use& use : part.uses) {
            const auto at = static_cast<std::size_t>(use.part);
            out["uses"].push_back({{"part", job_.plan.parts.at(at).label},
                                   {"slice", use.slice < 0 ? Json() : Json(use.slice + 1)},
                                   {"lay", RecordJson::lay(use.lay)}});
        }
        out["stages"] = Json::array();
        for (const Stage& stage : part.stages) {
            Json runs = Json::array();
            for (const SliceRun& run : stage.runs) {
                runs.push_back({{"length", json_.figure(run.length)},
                                {"count", run.count},
                                {"spare", run.spare},
                                {"marginSides", run.marginSides}});
            }
            out["stages"].push_back(
                {{"thickness", json_.figure(stage.thickness)}, {"slices", std::move(runs)}});
        }
        return out;
    }

    Json ledger(const Ledger& all) const {
        return {{"timberIn", json_.volume(all.timberIn)}, {"board", json_.volume(all.board)},
                {"kerf", json_.volume(all.kerf)},         {"planed", json_.volume(all.planed)},
                {"trimmed", json_.volume(all.trimmed)},   {"spare", json_.volume(all.spare)},
                {"offcut", json_.volume(all.offcut)},     {"grooved", json_.volume(all.grooved)}};
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
            const Standing standing = standingOf(caution, project_.seenTo);
            out.push_back({{"severity", keyOf(caution.severity)},
                           {"key", caution.key},
                           {"title", caution.title},
                           {"reason", caution.reason},
                           {"remedy", caution.remedy},
                           {"place", placeJson(caution.place)},
                           {"remedies", std::move(remedies)},
                           {"step", caution.step < 0 ? Json() : Json(caution.step + 1)},
                           {"steps", steps},
                           {"seenTo", standing == Standing::SeenTo},
                           {"seenToBefore", standing == Standing::Lapsed}});
        }
        return out;
    }

    Json totals() const {
        const Totals& all = job_.totals;
        Json out = {{"width", json_.length(all.width)},
                    {"height", json_.length(all.height)},
                    {"thickness", json_.length(all.thickness)},
                    {"weightKg", all.weightKg > 0 ? Json(all.weightKg) : Json()},
                    {"timberIn", json_.volume(all.timberIn)},
                    {"yieldPercent", all.yieldPercent},
                    {"cost", money(all.cost)},
                    {"timberByWood", Json::array()}};
        for (std::size_t i = 0; i < all.timberByWood.size(); ++i) {
            if (all.timberByWood[i] > Volume{}) {
                out["timberByWood"].push_back({{"wood", json_.wood(static_cast<int>(i))},
                                               {"timber", json_.volume(all.timberByWood[i])},
                                               {"cost", money(all.costByWood[i])}});
            }
        }
        return out;
    }

    const Project& project_;
    const Job& job_;
    RecordJson json_;
};

}  // namespace

std::string planJson(const Project& project, const Job& job) {
    return Writer(project, job).whole().dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace kerfwright
