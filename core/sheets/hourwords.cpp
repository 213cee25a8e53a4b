#include "core/sheets/hourwords.h"

#include "core/measure/number.h"
#include "core/words/say.h"

#include <algorithm>
#include <cmath>
#include <string_view>
#include <utility>

namespace kerfwright {
namespace {

/// Runs of three and more as "2–5".
std::string rangeWords(const std::vector<int>& numbers) {
    std::string words;
    for (std::size_t i = 0; i < numbers.size();) {
        std::size_t last = i;
        while (last + 1 < numbers.size() && numbers[last + 1] == numbers[last] + 1) {
            ++last;
        }
        const bool run = last - i >= 2;
        words += (words.empty() ? "" : ", ") + std::to_string(numbers[i]);
        if (run) {
            words += "–" + std::to_string(numbers[last]);
        }
        i = run ? last + 1 : i + 1;
    }
    return words;
}

const BenchTask& taskAt(const BenchHours& hours, int index) {
    return hours.tasks[static_cast<std::size_t>(index)];
}

/// Which coat a task is, from 1, and of how many.
std::pair<int, int> coatOf(const BenchHours& hours, const BenchTask& task) {
    std::pair<int, int> coat;
    for (const BenchTask& one : hours.tasks) {
        coat.second += one.wait == BenchWait::Finish ? 1 : 0;
        coat.first = &one == &task ? coat.second : coat.first;
    }
    return coat;
}

/// What follows the last step: sanding, then each coat of finish.
std::string afterSteps(const BenchHours& hours, const BenchTask& task) {
    if (task.wait != BenchWait::Finish) {
        return say("sand the board");
    }
    const auto [coat, coats] = coatOf(hours, task);
    return coats == 1 ? say("coat of finish") : say("coat {1}", coat);
}

std::string finishIsDry(const BenchHours& hours, const BenchTask& task) {
    const auto [coat, coats] = coatOf(hours, task);
    return coats == 1 ? sayIn("once …", "coat of finish is dry")
                      : sayIn("once …", "coat {1} is dry", coat);
}

/// To three figures.
std::string rounded(double value) {
    const double fine = value >= 100 ? 1 : value >= 10 ? 10 : 100;
    return formatNumber(std::round(value * fine) / fine);
}

std::string countWords(const TimeTerm& term) {
    const std::string unit(term.unit);
    return rounded(term.count) + (unit.empty() ? "" : " ") + unit;
}

}  // namespace

std::string timeWords(double minutes) {
    const std::int64_t told = toldMinutes(minutes);
    if (told < 60) {
        return std::to_string(told) + " min";
    }
    const std::string rest = std::to_string(told % 60);
    return std::to_string(told / 60) + " h" +
           (told % 60 == 0 ? "" : (rest.size() < 2 ? " 0" : " ") + rest + " min");
}

std::string daysWords(const BenchHours& hours) {
    const std::string sessions = sayCount(hours.sessions.size(), "{1} session", "{1} sessions");
    return hours.days ? sayCount(*hours.days, "{1} day in {2}", "{1} days in {2}", sessions)
                      : say("{1}; days not known: too cold for the glue", sessions);
}

std::string totalWords(const BenchHours& hours) {
    return say("{1} hands on, {2}", timeWords(hours.minutes), daysWords(hours));
}

std::string dayWords(const BenchSession& session) {
    if (session.day <= 0) {
        return say("later");
    }
    return session.day == session.lastDay ? say("day {1}", session.day)
                                          : say("days {1}–{2}", session.day, session.lastDay);
}

std::string dayTitle(const BenchSession& session) {
    if (session.day <= 0) {
        return say("Later");
    }
    return session.day == session.lastDay ? say("Day {1}", session.day)
                                          : say("Days {1}–{2}", session.day, session.lastDay);
}

std::string taskWords(const BenchHours& hours, const BenchSession& session) {
    std::vector<int> steps;
    std::string others;
    for (const int index : session.tasks) {
        const BenchTask& task = taskAt(hours, index);
        if (task.step >= 0) {
            steps.push_back(task.step + 1);
        } else {
            others += (others.empty() ? "" : ", ") + afterSteps(hours, task);
        }
    }
    if (steps.empty()) {
        return others;
    }
    const std::string words = sayCount(steps.size(), "step {2}", "steps {2}", rangeWords(steps));
    return others.empty() ? words : words + "; " + others;
}

std::string waitWords(const BenchHours& hours, const BenchSession& session) {
    std::vector<int> glued;
    std::string dry;
    for (const int index : session.waitsFor) {
        const BenchTask& task = taskAt(hours, index);
        if (task.wait == BenchWait::Glue) {
            glued.push_back(task.step + 1);
        } else {
            dry = finishIsDry(hours, task);
        }
    }
    std::vector<std::string> all;
    if (!glued.empty()) {
        // Translators: all of these stand after "once".
        all.push_back(sayCount(glued.size(), "the glue of step {2} has set",
                               "the glue of steps {2} has set", rangeWords(glued)));
    }
    if (!dry.empty()) {
        all.push_back(dry);
    }
    if (session.waitsForClamps) {
        all.push_back(sayIn("once …", "the clamps are free"));
    }
    return sayList(all);
}

std::string termWords(const TimeTerm& term) {
    // Translators: "24 m", "of milling passes", "0.25".
    return say("{1} {2} × {3} min", countWords(term), term.what, rounded(term.each));
}

std::string termAmount(const TimeTerm& term) {
    return countWords(term) + " × " + rounded(term.each) + " min";
}

std::string rateName(const TimeTerm& term) {
    const std::string_view key = term.setting;
    for (const RateSetting& setting : rateSettings()) {
        if (setting.key == key) {
            return say(setting.name);
        }
    }
    for (const GlueSetting& setting : glueSettings()) {
        if (setting.key == key) {
            return say(setting.name);
        }
    }
    return {};
}

}  // namespace kerfwright
