#include "core/sheets/pages.h"
#include "core/sheets/settingrows.h"

#include <algorithm>
#include <cmath>

namespace kerfwright {
namespace {

constexpr double valueWidth = 38;
constexpr double wordsX = 41;
constexpr double wordsWidth = 98;
constexpr double piecesX = 149;
constexpr double testX = 152;
constexpr double measuredX = 168;

void tableHead(Flow& flow) {
    flow.box({flow.left(), flow.y, flow.width(), 6}, {.fill = Ink::Band});
    constexpr Tone tone{type::small, true, Ink::Quiet};
    const double base = flow.y + 4.2;
    flow.text(flow.left() + 2, base, "Set to", tone);
    flow.text(flow.left() + wordsX, base, "For, and its working", tone);
    flow.text(flow.left() + piecesX, base, "Pieces", tone, Align::Right);
    flow.text(flow.left() + testX, base, "Test cut", tone);
    flow.text(flow.left() + measuredX + 1, base, "Measured", tone);
    flow.y += 7.5;
}

/// "Step 3", "Steps 3, 9, 15", "Steps 3 to 380".
std::string stepWords(const std::vector<int>& steps) {
    constexpr std::size_t most = 6;
    if (steps.size() == 1) {
        return "Step " + std::to_string(steps.front());
    }
    if (steps.size() > most) {
        return "Steps " + std::to_string(steps.front()) + " to " + std::to_string(steps.back());
    }
    std::string words = "Steps ";
    for (std::size_t i = 0; i < steps.size(); ++i) {
        words += (i == 0 ? "" : ", ") + std::to_string(steps[i]);
    }
    return words;
}

void blockHead(Flow& flow, const SettingBlock& block) {
    const std::string steps = stepWords(block.steps);
    flow.text(flow.left(), flow.y + 4.6, steps, {type::body, true, Ink::Accent});
    const double at = textWidth(steps, type::body, true) + 3;
    flow.text(flow.left() + at, flow.y + 4.6, shortened(block.title, boldText, flow.width() - at),
              boldText);
    flow.y += 6.8;
    flow.rule(flow.left(), flow.right(), flow.y);
}

void addRow(Flow& flow, const Matter& matter, const SettingBlock& block, const SettingRow& row,
            bool first) {
    const bool named = row.parts != std::vector<std::string>{"Field"};
    std::vector<std::string> lines = wrapped(row.name + (named ? ": " + partList(row.parts) : ""),
                                             type::small, true, wordsWidth);
    const std::size_t bold = lines.size();
    for (std::string& line : wrapped(row.about, type::small, false, wordsWidth)) {
        lines.push_back(std::move(line));
    }
    for (const Figure* figure : row.workings) {
        for (std::string& line : workingLines(*figure, matter.notation(), wordsWidth)) {
            lines.push_back(std::move(line));
        }
    }
    // A single working that is short shares the line of the machine.
    if (row.workings.size() == 1 && lines.size() == bold + 2) {
        const std::string both = lines[bold] + " · " + lines[bold + 1];
        if (textWidth(both, type::small, false) <= wordsWidth) {
            lines.resize(bold);
            lines.push_back(both);
        }
    }
    const double pitch = type::small * type::leading;
    // A value with very many parts or workings is cut off at what one page holds.
    constexpr std::size_t most = 30;
    if (lines.size() > most) {
        lines.resize(most);
        lines.back() += " …";
    }
    const double height = std::max(9.0, static_cast<double>(lines.size()) * pitch + 2.2);
    constexpr double headingHeight = 8;
    if (flow.need(height + (first ? headingHeight : 0))) {
        tableHead(flow);
        first = true;
    }
    if (first) {
        blockHead(flow, block);
    }
    const double top = flow.y + 1;
    flow.text(flow.left() + 2, top + 5.4, matter.text(row.value), {5.6, true, Ink::Text},
              Align::Left, valueWidth);
    for (std::size_t i = 0; i < lines.size(); ++i) {
        flow.text(flow.left() + wordsX, top + 3.4 + static_cast<double>(i) * pitch, lines[i],
                  i < bold ? Tone{type::small, true, Ink::Text} : quietText, Align::Left,
                  wordsWidth);
    }
    flow.text(flow.left() + piecesX, top + 5.2, std::to_string(row.pieces),
              {type::body, true, Ink::Text}, Align::Right);
    flow.tick(flow.left() + testX + 4.5, top + 0.6, 5.6);
    flow.rule(flow.left() + measuredX + 1, flow.right(), top + 6.2, Ink::Text, 0.25);
    flow.y += height;
    flow.rule(flow.left(), flow.right(), flow.y);
}

/// Bars of known length back to back, to be measured with a steel rule.
void checkBars(Flow& flow) {
    constexpr double height = 17.5;
    flow.need(height);
    flow.y = flow.bottom() - height;
    flow.text(flow.left(), flow.y + 4.2, "Print at 100 %", strongText);
    flow.text(flow.left() + 38, flow.y + 4.2,
              "no scaling, no “fit to page”; then lay a steel rule on both bars.", quietText);
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
    flow.y = flow.bottom();
}

}  // namespace

void addMachineSettings(std::vector<Draft>& drafts, const Matter& matter, const Record& record) {
    Flow flow(drafts, matter, "machine-settings", "Machine settings", Sizes::ToSet,
              Flow::Safety::FirstPage);
    const Settings settings = machineSettings(matter, record);
    flow.y +=
        flow.paragraph(
            flow.left(), flow.y, flow.width(),
            std::string(settings.together ? "Every fence, thickness and stop, in step order inside "
                                            "each panel; panels that have come equally far share a "
                                            "line. "
                                          : "Every fence, thickness and stop in step order. ") +
                "Cut a test piece in waste, measure it, write down what it measures, and cut "
                "all pieces of one line before the machine is moved. Never work ahead: a "
                "thickness of a later step spoils what an earlier one still needs.",
            smallText) +
        3;
    tableHead(flow);
    for (const SettingBlock& block : settings.blocks) {
        bool first = true;
        for (const SettingRow& row : block.rows) {
            addRow(flow, matter, block, row, first);
            first = false;
        }
    }
    checkBars(flow);
}

}  // namespace kerfwright
