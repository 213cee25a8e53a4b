#include "core/bench/sessions.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <unordered_map>

namespace kerfwright {
namespace {

constexpr double day = 24 * 60;   // minutes
constexpr double instant = 1e-6;  // minutes: less is rounding
/// What glue takes that never sets: long enough to end a session. The order of work is still told.
constexpr double never = 1000 * day;

/// Minutes since the first session began; the bench is open at the beginning of every day.
class Clock {
public:
    explicit Clock(double hoursADay)
        : bench_(hoursADay * 60) {}

    double now() const { return now_; }
    int today() const { return dayOf(now_); }
    static int dayOf(double minute) {
        return static_cast<int>(std::min(std::floor(minute / day) + 1, 1e9));
    }
    /// Of today, until the bench closes.
    double room() const { return bench_ - sinceMidnight(); }
    bool fits(double minutes) const {
        return minutes <= room() + instant || (sinceMidnight() < instant && minutes > bench_);
    }
    void goTo(double minute) {
        now_ = std::max(now_, minute);
        if (room() < instant) {
            nextDay();
        }
    }
    void nextDay() { now_ = (std::floor(now_ / day) + 1) * day; }
    /// Overnight, where it is longer than a day's work.
    void work(double minutes) {
        const double whole = std::max(0.0, std::ceil((minutes - room() - instant) / bench_));
        now_ += minutes + whole * (day - bench_);
    }
    void idle(double minutes) { now_ += minutes; }

private:
    double sinceMidnight() const { return now_ - std::floor(now_ / day) * day; }

    double bench_;
    double now_ = 0;
};

/// The tasks that had one of its workpieces last, for each task.
std::vector<std::vector<int>> before(const std::vector<BenchTask>& tasks) {
    std::vector<std::vector<int>> all(tasks.size());
    std::unordered_map<std::string, int> last;
    for (std::size_t i = 0; i < tasks.size(); ++i) {
        for (const std::string& label : tasks[i].labels) {
            const auto [at, first] = last.try_emplace(label, static_cast<int>(i));
            if (!first) {
                all[i].push_back(at->second);
                at->second = static_cast<int>(i);
            }
        }
        std::sort(all[i].begin(), all[i].end());
        all[i].erase(std::unique(all[i].begin(), all[i].end()), all[i].end());
    }
    return all;
}

class Sitter {
public:
    Sitter(BenchHours& hours, const std::optional<GlueTimes>& times, double clampsOwned,
           double hoursADay)
        : hours_(hours)
        , tasks_(hours.tasks)
        , clampMinutes_(times ? times->clampMinutes : never)
        , clampsOwned_(static_cast<int>(clampsOwned))
        , clock_(hoursADay)
        , before_(before(tasks_))
        , end_(tasks_.size(), -1)
        , session_(tasks_.size(), -1) {}

    /// The minute at which all glue has set and all finish is dry.
    double operator()() {
        std::size_t done = 0;
        begin(false);
        while (done < tasks_.size()) {
            const int task = next();
            if (task >= 0) {
                carryOut(task);
                ++done;
            } else {
                goOn();
            }
        }
        double settled = 0;
        for (std::size_t i = 0; i < tasks_.size(); ++i) {
            settled = std::max(settled, end_[i] + tasks_[i].waitMinutes.value_or(never));
        }
        return settled;
    }

private:
    struct InUse {
        int clamps;
        double until;
    };

    const BenchTask& task(int index) const { return tasks_[static_cast<std::size_t>(index)]; }
    double length(const BenchTask& one) const { return one.minutes + one.betweenLoads; }
    bool isDone(int index) const { return end_[static_cast<std::size_t>(index)] >= 0; }

    /// When what it works on may be taken up; empty while that is not made yet.
    std::optional<double> ready(int index) const {
        double when = 0;
        for (const int earlier : before_[static_cast<std::size_t>(index)]) {
            if (!isDone(earlier)) {
                return std::nullopt;
            }
            when = std::max(when, end_[static_cast<std::size_t>(earlier)] +
                                      task(earlier).waitMinutes.value_or(never));
        }
        return when;
    }
    /// When so many clamps are free.
    double clampsFree(int clamps) const {
        if (clampsOwned_ <= 0 || clamps <= 0) {
            return 0;
        }
        int free = clampsOwned_;
        for (const InUse& use : inUse_) {
            free -= use.until > clock_.now() + instant ? use.clamps : 0;
        }
        std::vector<InUse> busy = inUse_;
        std::sort(busy.begin(), busy.end(),
                  [](const InUse& a, const InUse& b) { return a.until < b.until; });
        double when = 0;
        for (const InUse& use : busy) {
            if (free >= std::min(clamps, clampsOwned_)) {
                break;
            }
            if (use.until > clock_.now() + instant) {
                free += use.clamps;
                when = use.until;
            }
        }
        return when;
    }

    /// The first of the list that can be done now; -1 where none can.
    int next() const {
        const auto count = static_cast<int>(tasks_.size());
        for (int i = 0; i < count; ++i) {
            if (isDone(i)) {
                continue;
            }
            const std::optional<double> when = ready(i);
            if (when && *when <= clock_.now() + instant && clock_.fits(length(task(i))) &&
                clampsFree(task(i).clamps) <= clock_.now() + instant) {
                return i;
            }
        }
        return -1;
    }

    void carryOut(int index) {
        const BenchTask& one = task(index);
        BenchSession& session = hours_.sessions.back();
        const auto at = static_cast<std::size_t>(index);
        for (const int earlier : before_[at]) {
            const bool waited = task(earlier).wait != BenchWait::None &&
                                session_[static_cast<std::size_t>(earlier)] != current();
            if (waited && std::find(session.waitsFor.begin(), session.waitsFor.end(), earlier) ==
                              session.waitsFor.end()) {
                session.waitsFor.push_back(earlier);
            }
        }
        session.tasks.push_back(index);
        session.minutes += one.minutes;
        clock_.work(length(one));
        session.lastDay = Clock::dayOf(clock_.now() - instant);
        end_[at] = clock_.now();
        session_[at] = current();
        if (one.clamps > 0) {
            inUse_.push_back({one.clamps, clock_.now() + clampMinutes_});
        }
    }

    /// On to the next moment at which something can be done.
    void goOn() {
        double soonest = std::numeric_limits<double>::infinity();
        bool forClamps = false;
        const auto count = static_cast<int>(tasks_.size());
        for (int i = 0; i < count; ++i) {
            const std::optional<double> when = isDone(i) ? std::nullopt : ready(i);
            if (!when) {
                continue;
            }
            const double clamps = clampsFree(task(i).clamps);
            const double both = std::max(*when, clamps);
            if (both < soonest) {
                soonest = both;
                forClamps = clamps > std::max(*when, clock_.now() + instant);
            }
        }
        if (soonest > clock_.now() + instant) {
            clock_.goTo(soonest);
        } else {
            clock_.nextDay();
            forClamps = false;
        }
        // What is ready when the bench is about to close is begun the next morning.
        if (next() < 0) {
            clock_.nextDay();
        }
        begin(forClamps);
    }

    void begin(bool forClamps) {
        if (!hours_.sessions.empty() && hours_.sessions.back().tasks.empty()) {
            hours_.sessions.pop_back();
        }
        BenchSession session;
        session.day = session.lastDay = clock_.today();
        session.waitsForClamps = forClamps;
        hours_.sessions.push_back(std::move(session));
    }
    int current() const { return static_cast<int>(hours_.sessions.size()) - 1; }

    BenchHours& hours_;
    const std::vector<BenchTask>& tasks_;
    double clampMinutes_;
    int clampsOwned_;
    Clock clock_;
    std::vector<std::vector<int>> before_;
    std::vector<double> end_;   ///< in minutes; -1: not done yet
    std::vector<int> session_;  ///< in which it was done
    std::vector<InUse> inUse_;
};

}  // namespace

void addSessions(BenchHours& hours, const std::optional<GlueTimes>& times, double clampsOwned,
                 double hoursADay) {
    const double settled = Sitter(hours, times, clampsOwned, hoursADay)();
    if (!times) {
        for (BenchSession& session : hours.sessions) {
            session.day = session.lastDay = 0;
        }
        return;
    }
    hours.days = Clock::dayOf(std::max(0.0, settled - instant));
}

}  // namespace kerfwright
