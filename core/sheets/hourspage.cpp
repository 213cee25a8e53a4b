#include "core/sheets/hourwords.h"
#include "core/sheets/pages.h"
#include "core/words/say.h"

#include <algorithm>

namespace kerfwright {
namespace {

constexpr double reckonedX = 162;  // right edge
constexpr double tookX = 168;
/// Above it the workings would fill a book.
constexpr std::size_t mostWorkings = 60;

constexpr Tone headTone{type::small, true, Ink::Quiet};

/// Of the numbers of the steps and the words beside them.
struct Columns {
    double numberX = std::max(10.0, textWidth(say("Step"), headTone.size, headTone.bold));  // right
    double wordsX = numberX + 3;
    double wordsWidth = 139 - wordsX;
};

void tableHead(Flow& flow, const Columns& at) {
    flow.box({flow.left(), flow.y, flow.width(), 6}, {.fill = Ink::Band});
    const double base = flow.y + 4.2;
    flow.text(flow.left() + at.numberX, base, say("Step"), headTone, Align::Right);
    flow.text(flow.left() + at.wordsX, base, say("Hands on, and its working"), headTone);
    flow.text(flow.left() + reckonedX, base, say("Reckoned"), headTone, Align::Right);
    flow.text(flow.left() + tookX, base, say("It took"), headTone);
    flow.y += 7.5;
}

void sessionHead(Flow& flow, const BenchHours& hours, const BenchSession& session) {
    const std::string day = dayTitle(session);
    flow.text(flow.left(), flow.y + 4.6, day, {type::body, true, Ink::Accent});
    const double at = textWidth(day, type::body, true) + 3;
    const std::string wait = waitWords(hours, session);
    flow.text(flow.left() + at, flow.y + 4.6, wait.empty() ? "" : say("once {1}", wait), quietText,
              Align::Left, reckonedX - 22 - at);
    flow.text(flow.left() + reckonedX, flow.y + 4.6, timeWords(session.minutes), boldText,
              Align::Right);
    flow.y += 6.8;
    flow.rule(flow.left(), flow.right(), flow.y);
}

/// "20 rips × 1 min + 10 crosscuts × 0.75 min", broken between its terms.
std::vector<std::string> workingOf(const BenchTask& task, double width) {
    std::vector<std::string> lines;
    for (const TimeTerm& term : task.terms) {
        const std::string words = termWords(term);
        const std::string joined = lines.empty() ? words : lines.back() + " + " + words;
        if (lines.empty() || textWidth(joined, type::small, false) > width) {
            lines.push_back((lines.empty() ? "" : "+ ") + words);
        } else {
            lines.back() = joined;
        }
    }
    return lines;
}

std::vector<std::string> titleOf(const BenchTask& task, const Columns& at) {
    return wrapped(task.title, boldText.size, boldText.bold, at.wordsWidth);
}

/// At the cursor, which moves below it.
void taskRow(Flow& flow, const Columns& at, const BenchTask& task,
             const std::vector<std::string>& working) {
    if (task.step >= 0) {
        flow.text(flow.left() + at.numberX, flow.y + 4, std::to_string(task.step + 1),
                  {type::small, true, Ink::Accent}, Align::Right);
    }
    const double x = flow.left() + at.wordsX;
    const double named = flow.lines(x, flow.y + 0.5, at.wordsWidth, titleOf(task, at), boldText);
    flow.text(flow.left() + reckonedX, flow.y + 4, timeWords(task.minutes), boldText, Align::Right);
    flow.rule(flow.left() + tookX, flow.right(), flow.y + 4.8, Ink::Text, 0.25);
    flow.y += named - 0.1;
    flow.y += flow.lines(x, flow.y, at.wordsWidth, working, quietText) + 1.2;
}

double heightOf(const BenchTask& task, const Columns& at, const std::vector<std::string>& working) {
    return static_cast<double>(titleOf(task, at).size()) * type::body * type::leading +
           static_cast<double>(working.size()) * type::small * type::leading + 1.1;
}

}  // namespace

/// What a session takes down the page.
double heightOf(const BenchHours& hours, const BenchSession& session, const Columns& at,
                bool full) {
    double height = 6.8;
    for (const int index : session.tasks) {
        const BenchTask& task = hours.tasks[static_cast<std::size_t>(index)];
        height +=
            heightOf(task, at, full ? workingOf(task, at.wordsWidth) : std::vector<std::string>());
    }
    return height;
}

void addHours(std::vector<Draft>& drafts, const Matter& matter) {
    const BenchHours& hours = matter.job.hours;
    Flow flow(drafts, matter, "hours", say("Time at the bench"), Sizes::Finished,
              Flow::Safety::None);
    flow.y += flow.paragraph(flow.left(), flow.y, flow.width(),
                             say("About {1}. Reckoned from the plan's own counts and the rates of "
                                 "the shop, which are a judgement until they are measured: write "
                                 "down what it took, and set the rates by it. Breaks, sharpening "
                                 "and tidying up are not in it.",
                                 totalWords(hours)),
                             smallText) +
              3;
    const Columns at;
    tableHead(flow, at);
    const bool full = hours.tasks.size() <= mostWorkings;
    for (const BenchSession& session : hours.sessions) {
        bool first = true;
        // A day that does not fit goes to the next page as a whole where little is left empty by
        // that, unless it has to be set close: so no last row stands alone there.
        if (!flow.isClose() && flow.room() < flow.pageHeight() * 0.6 &&
            flow.need(std::min(heightOf(hours, session, at, full), flow.pageHeight() - 10))) {
            tableHead(flow, at);
        }
        for (const int index : session.tasks) {
            const BenchTask& task = hours.tasks[static_cast<std::size_t>(index)];
            const std::vector<std::string> working =
                full ? workingOf(task, at.wordsWidth) : std::vector<std::string>();
            constexpr double headingHeight = 8;
            if (flow.need(heightOf(task, at, working) + (first ? headingHeight : 0))) {
                tableHead(flow, at);
                first = true;
            }
            if (first) {
                sessionHead(flow, hours, session);
                first = false;
            }
            taskRow(flow, at, task, working);
        }
        flow.y += 2;
    }
    flow.safetyWhereRoom();
}

}  // namespace kerfwright
