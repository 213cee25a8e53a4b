#include "core/sheets/hoursjson.h"

namespace kerfwright {
namespace {

using Json = nlohmann::ordered_json;

Json key(BenchWait wait) {
    switch (wait) {
    case BenchWait::None:
        return {};
    case BenchWait::Glue:
        return "glue";
    case BenchWait::Finish:
        return "finish";
    }
    return {};
}

Json fromOne(const std::vector<int>& indices) {
    Json out = Json::array();
    for (const int index : indices) {
        out.push_back(index + 1);
    }
    return out;
}

Json day(int number) {
    return number > 0 ? Json(number) : Json();
}

Json taskJson(const BenchTask& task) {
    Json out = {{"step", task.step < 0 ? Json() : Json(task.step + 1)},
                {"title", task.title},
                {"minutes", task.minutes},
                {"terms", Json::array()},
                {"betweenLoadsMinutes", task.betweenLoads},
                {"wait", key(task.wait)},
                {"waitMinutes", task.waitMinutes ? Json(*task.waitMinutes) : Json()}};
    for (const TimeTerm& term : task.terms) {
        out["terms"].push_back({{"term", term.what},
                                {"unit", term.unit},
                                {"count", term.count},
                                {"each", term.each},
                                {"minutes", term.minutes()},
                                {"setting", term.setting}});
    }
    return out;
}

}  // namespace

Json ratesJson(const BenchRates& rates) {
    Json out;
    for (const RateSetting& setting : rateSettings()) {
        out[setting.key] = rates.*setting.value;
    }
    return out;
}

Json hoursJson(const BenchHours& hours) {
    Json out = {{"minutes", hours.minutes},
                {"days", hours.days ? Json(*hours.days) : Json()},
                {"tasks", Json::array()},
                {"sessions", Json::array()}};
    for (const BenchTask& task : hours.tasks) {
        out["tasks"].push_back(taskJson(task));
    }
    for (const BenchSession& session : hours.sessions) {
        out["sessions"].push_back({{"day", day(session.day)},
                                   {"lastDay", day(session.lastDay)},
                                   {"minutes", session.minutes},
                                   {"tasks", fromOne(session.tasks)},
                                   {"waitsFor", fromOne(session.waitsFor)},
                                   {"waitsForClamps", session.waitsForClamps}});
    }
    return out;
}

}  // namespace kerfwright
