#include "core/sheets/hourwords.h"

#include "core/measure/number.h"

#include <algorithm>
#include <cmath>
#include <string_view>

namespace kerfwright {
namespace {

std::string counted(std::size_t count, const char* one, const char* many) {
    return std::to_string(count) + " " + (count == 1 ? one : many);
}

std::string listed(const std::vector<std::string>& all) {
    std::string words;
    for (std::size_t i = 0; i < all.size(); ++i) {
        words += (i == 0 ? "" : i + 1 == all.size() ? " and " : ", ") + all[i];
    }
    return words;
}

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

std::string lowered(std::string words) {
    if (!words.empty() && words.front() >= 'A' && words.front() <= 'Z') {
        words.front() = static_cast<char>(words.front() - 'A' + 'a');
    }
    return words;
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
    constexpr double hour = 60;
    constexpr double many = 20 * hour;
    if (minutes >= many) {
        return std::to_string(std::lround(minutes / hour)) + " h";
    }
    if (minutes < hour - 0.5) {
        return std::to_string(minutes > 0 ? std::max(1L, std::lround(minutes)) : 0) + " min";
    }
    const long fives = std::lround(minutes / 5) * 5;
    const std::string rest = std::to_string(fives % 60);
    return std::to_string(fives / 60) + " h" +
           (fives % 60 == 0 ? "" : (rest.size() < 2 ? " 0" : " ") + rest + " min");
}

std::string daysWords(const BenchHours& hours) {
    const std::string sessions = counted(hours.sessions.size(), "session", "sessions");
    return hours.days
               ? counted(static_cast<std::size_t>(*hours.days), "day", "days") + " in " + sessions
               : sessions + "; days not known: too cold for the glue";
}

std::string totalWords(const BenchHours& hours) {
    return timeWords(hours.minutes) + " hands on, " + daysWords(hours);
}

std::string dayWords(const BenchSession& session) {
    if (session.day <= 0) {
        return "later";
    }
    return session.day == session.lastDay
               ? "day " + std::to_string(session.day)
               : "days " + std::to_string(session.day) + "–" + std::to_string(session.lastDay);
}

std::string taskWords(const BenchHours& hours, const BenchSession& session) {
    std::vector<int> steps;
    std::string others;
    for (const int index : session.tasks) {
        const BenchTask& task = taskAt(hours, index);
        if (task.step >= 0) {
            steps.push_back(task.step + 1);
        } else {
            others += (others.empty() ? "" : ", ") + lowered(task.title);
        }
    }
    std::string words =
        steps.empty() ? "" : (steps.size() == 1 ? "step " : "steps ") + rangeWords(steps);
    return words + (words.empty() || others.empty() ? "" : "; ") + others;
}

std::string waitWords(const BenchHours& hours, const BenchSession& session) {
    std::vector<int> glued;
    std::string dry;
    for (const int index : session.waitsFor) {
        const BenchTask& task = taskAt(hours, index);
        if (task.wait == BenchWait::Glue) {
            glued.push_back(task.step + 1);
        } else {
            dry = lowered(task.title) + " is dry";
        }
    }
    std::vector<std::string> all;
    if (!glued.empty()) {
        all.push_back(std::string("the glue of ") + (glued.size() == 1 ? "step " : "steps ") +
                      rangeWords(glued) + " has set");
    }
    if (!dry.empty()) {
        all.push_back(dry);
    }
    if (session.waitsForClamps) {
        all.emplace_back("the clamps are free");
    }
    return listed(all);
}

std::string termWords(const TimeTerm& term) {
    return countWords(term) + " " + term.what + " × " + rounded(term.each) + " min";
}

std::string termAmount(const TimeTerm& term) {
    return countWords(term) + " × " + rounded(term.each) + " min";
}

std::string rateName(const TimeTerm& term) {
    const std::string_view key = term.setting;
    for (const RateSetting& setting : rateSettings()) {
        if (setting.key == key) {
            return setting.name;
        }
    }
    for (const GlueSetting& setting : glueSettings()) {
        if (setting.key == key) {
            return setting.name;
        }
    }
    return {};
}

}  // namespace kerfwright
