#include "core/sheets/pages.h"
#include "core/sheets/settingrows.h"
#include "core/sheets/settingtable.h"
#include "core/words/say.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace kerfwright {
namespace {

/// "Step 3", "Steps 3, 9, 15", "Steps 3 to 380".
std::string stepWords(const std::vector<int>& steps) {
    constexpr std::size_t most = 6;
    if (steps.size() > most) {
        return say("Steps {1} to {2}", steps.front(), steps.back());
    }
    std::string numbers;
    for (const int step : steps) {
        numbers += (numbers.empty() ? "" : ", ") + std::to_string(step);
    }
    return sayCount(steps.size(), "Step {2}", "Steps {2}", numbers);
}

void blockHead(Flow& flow, const SettingBlock& block) {
    const std::string steps = stepWords(block.steps);
    flow.text(flow.left(), flow.y + 4.6, steps, {type::body, true, Ink::Accent});
    const double at = textWidth(steps, type::body, true) + 3;
    flow.name(flow.left() + at, flow.y + 4.6, block.title, boldText, flow.width() - at);
    flow.y += 6.8;
    flow.rule(flow.left(), flow.right(), flow.y);
}

/// What a row is for, on which machine, and the workings of its value.
std::vector<SettingTable::Line> linesOf(const SettingRow& row, const Notation& notation,
                                        double width) {
    std::vector<SettingTable::Line> lines;
    const auto add = [&lines](std::vector<std::string> all, const Tone& tone) {
        for (std::string& words : all) {
            lines.push_back({std::move(words), tone});
        }
    };
    const bool named = row.parts != std::vector<std::string>{"Field"};
    add(wrapped(row.name + (named ? ": " + partList(row.parts) : ""), type::small, true, width),
        {type::small, true, Ink::Text});
    const std::size_t bold = lines.size();
    add(wrapped(row.about, type::small, false, width), quietText);
    for (const Figure* figure : row.workings) {
        add(workingLines(*figure, notation, width), quietText);
    }
    // A single working that is short shares the line of the machine.
    if (row.workings.size() == 1 && lines.size() == bold + 2) {
        const std::string both = lines[bold].words + " · " + lines[bold + 1].words;
        if (textWidth(both, type::small, false) <= width) {
            lines.pop_back();
            lines.back().words = both;
        }
    }
    return lines;
}

constexpr double checkBarsHeight = 17.5;

/// Bars of known length back to back, to be measured with a steel rule. They stand where printing
/// is looked at first, so that they never want a page of their own.
void checkBars(Flow& flow) {
    const std::string head = say("Print at 100 %");
    flow.text(flow.left(), flow.y + 4.2, head, strongText);
    flow.text(flow.left() + std::max(38.0, textWidth(head, type::strong, true) + 3), flow.y + 4.2,
              say("no scaling, no “fit to page”; then lay a steel rule on both bars."), quietText);
    const double left = flow.left() + 2;
    const double middle = flow.y + 11.5;
    const struct {
        double length, step, tick;
        const char* name;
        double y, text;
    } bars[] = {{100, 10, -1, "100 mm", middle, middle - 0.6},
                {101.6, 25.4, 1, "4 in", middle + 0.9, middle + 4.6}};
    const Style line{.line = Ink::Text, .lineWidth = 0.25};
    for (const auto& bar : bars) {
        flow.drawing().marks.emplace_back(Line{{left, bar.y}, {left + bar.length, bar.y}, line});
        const int steps = static_cast<int>(std::lround(bar.length / bar.step));
        for (int i = 0; i <= steps; ++i) {
            const bool end = i == 0 || i == steps;
            const double x = left + bar.step * i;
            flow.drawing().marks.emplace_back(
                Line{{x, bar.y}, {x, bar.y + bar.tick * (end ? 4 : 2.5)}, line});
        }
        flow.text(left + 106, bar.text, bar.name, boldText);
    }
    flow.y += checkBarsHeight;
}

}  // namespace

void addMachineSettings(std::vector<Draft>& drafts, const Matter& matter, const Record& record) {
    Flow flow(drafts, matter, "machine-settings", say("Machine settings"), Sizes::ToSet,
              Flow::Safety::FirstPage);
    const Settings settings = machineSettings(matter, record);
    flow.y +=
        flow.paragraph(
            flow.left(), flow.y, flow.width(),
            sentences({settings.together
                           ? say("Every fence, thickness and stop, in step order inside each "
                                 "panel; panels that have come equally far share a line.")
                           : say("Every fence, thickness and stop in step order."),
                       say("Cut a test piece in waste, measure it, write down what it measures, "
                           "and cut all pieces of one line before the machine is moved. Never work "
                           "ahead: a thickness of a later step spoils what an earlier one still "
                           "needs.")}),
            smallText) +
        1;
    checkBars(flow);
    SettingTable table(flow, say("For, and its working"));
    table.head();
    for (const SettingBlock& block : settings.blocks) {
        bool first = true;
        for (const SettingRow& row : block.rows) {
            table.row(matter.text(row.value), linesOf(row, matter.notation(), table.wordsWidth()),
                      row.pieces, first, [&] { blockHead(flow, block); });
            first = false;
        }
    }
}

}  // namespace kerfwright
