#include "core/sheets/seasonjson.h"

#include "core/bench/season.h"

namespace kerfwright {
namespace {

using Json = nlohmann::ordered_json;

Json rangeJson(const Range& range) {
    return Json::array({range.least, range.greatest});
}

Json rangesJson(const std::vector<Range>& ranges) {
    Json out = Json::array();
    for (const Range& range : ranges) {
        out.push_back(rangeJson(range));
    }
    return out;
}

Json stateJson(const Project& project, const Job& job, double moisture) {
    const SeasonState state = seasonAt(job.board, project.woods, !job.plan.grainDown,
                                       project.climate, moisture, job.plan.border.surround);
    Json out = {{"moisture", moisture},
                {"width", rangeJson(state.width)},
                {"height", rangeJson(state.height)},
                {"thickness", rangeJson(state.thickness)},
                {"rows", rangesJson(state.rowLengths)},
                {"columns", rangesJson(state.columnLengths)},
                {"gapX", Json()},
                {"gapY", Json()}};
    if (project.board.border.has(BorderDesign::FloatingFrame)) {
        out["gapX"] = rangeJson(gapAt(job.plan.border.gapX.value, state.width));
        out["gapY"] = rangeJson(gapAt(job.plan.border.gapY.value, state.height));
    }
    return out;
}

}  // namespace

Json climateJson(const Climate& climate) {
    const ClimatePreset* place = presetOf(climate);
    Json out = {{"place", place == nullptr ? Json() : Json(place->key)}};
    for (const ClimateSetting& setting : climateSettings()) {
        out[setting.key] = climate.*setting.value;
    }
    return out;
}

Json glueJson(const GlueShop& glue) {
    Json out;
    for (const GlueSetting& setting : glueSettings()) {
        out[setting.key] = glue.*setting.value;
    }
    return out;
}

Json seasonJson(const Project& project, const Job& job) {
    return {{"unit", "mm"},
            {"driest", stateJson(project, job, project.climate.driest)},
            {"dampest", stateJson(project, job, project.climate.dampest)}};
}

Json placeJson(const CautionPlace& place) {
    const auto fromOne = [](const std::vector<int>& indices) {
        Json out = Json::array();
        for (const int index : indices) {
            out.push_back(index + 1);
        }
        return out;
    };
    return {{"pieces", fromOne(place.pieces)},
            {"rows", fromOne(place.rows)},
            {"columns", fromOne(place.columns)},
            {"border", place.border}};
}

}  // namespace kerfwright
