#include "core/sheets/pages.h"

#include <algorithm>
#include <array>
#include <map>

namespace kerfwright {
namespace {

/// In the order in which the machines are set up.
enum class Machine {
    RoughThickness,
    RoughWidth,
    RoughLength,
    StripThickness,
    StripWidth,
    StripLength,
    PanelThickness,
    SquaringWaste,
    SliceStop,
    FieldThickness,
    FieldTrim,
    FieldSize,
    RailMitre,
};

struct MachineWords {
    Machine machine;
    const char* name;
    const char* about;
};

constexpr std::array<MachineWords, 13> machineWords = {{
    {Machine::RoughThickness, "Rough thickness", "sawn, from the plank"},
    {Machine::RoughWidth, "Rough width", "rip fence, before milling"},
    {Machine::RoughLength, "Rough length", "crosscut, from the plank"},
    {Machine::StripThickness, "Strip thickness", "thickness planer"},
    {Machine::StripWidth, "Strip width", "rip fence"},
    {Machine::StripLength, "Strip length", "length stop"},
    {Machine::PanelThickness, "Panel thickness", "thickness planer or drum sander"},
    {Machine::SquaringWaste, "Squaring cut", "waste, outside the blade"},
    {Machine::SliceStop, "Slice length", "stop block at the crosscut sled"},
    {Machine::FieldThickness, "Field thickness", "drum sander or router sled"},
    {Machine::FieldTrim, "Trim margin", "off each side of the field"},
    {Machine::FieldSize, "Field after trimming", "fence"},
    {Machine::RailMitre, "Border rail", "mitre stop, long point to long point"},
}};

struct Entry {
    std::size_t pieces = 0;
    std::vector<std::string> parts;       ///< in order, each once
    std::vector<const Figure*> workings;  ///< that differ
};

const std::string borderPart = "Border";
const std::string fieldPart = "Field";

using Entries = std::map<std::pair<Machine, Length>, Entry>;

class Collector {
public:
    explicit Collector(const Record& record) {
        for (const Step& step : record.list.steps) {
            std::visit([this](const auto& work) { take(work); }, step.work);
        }
    }
    const Entries& entries() const { return entries_; }

private:
    void add(Machine machine, const Figure& figure, std::size_t pieces, const std::string& part) {
        Entry& entry = entries_[{machine, figure.value}];
        entry.pieces += pieces;
        if (std::find(entry.parts.begin(), entry.parts.end(), part) == entry.parts.end()) {
            entry.parts.push_back(part);
        }
        const bool known =
            std::any_of(entry.workings.begin(), entry.workings.end(),
                        [&](const Figure* one) { return one->terms == figure.terms; });
        if (!known) {
            entry.workings.push_back(&figure);
        }
    }
    void take(const Mill& mill) {
        const std::string& part = mill.panel.empty() ? borderPart : mill.panel;
        for (const MillLine& line : mill.lines) {
            const std::size_t count = line.strips.size();
            add(Machine::RoughThickness, line.roughThickness, count, part);
            add(Machine::RoughWidth, line.roughWidth, count, part);
            add(Machine::RoughLength, line.roughLength, count, part);
            add(Machine::StripThickness, line.thickness, count, part);
            add(Machine::StripWidth, line.width, count, part);
            add(Machine::StripLength, line.length, count, part);
        }
    }
    void take(const Glue&) {}
    void take(const Take&) {}
    void take(const Flatten& work) {
        const bool field = work.purpose == Purpose::Finished;
        add(field ? Machine::FieldThickness : Machine::PanelThickness, work.to, 1,
            field ? fieldPart : work.part);
    }
    void take(const SquareEnd& work) { add(Machine::SquaringWaste, work.waste, 1, work.part); }
    void take(const Crosscut& work) {
        add(Machine::SliceStop, work.stop, work.slices.size() + work.spares.size(), work.part);
    }
    void take(const TrimField& work) {
        add(Machine::FieldTrim, work.margin, 4, fieldPart);
        add(Machine::FieldSize, work.width, 1, fieldPart);
        add(Machine::FieldSize, work.height, 1, fieldPart);
    }
    void take(const FitBorder& work) {
        for (const Rail& rail : work.rails) {
            add(Machine::RailMitre, rail.longPoint, 1, borderPart);
        }
    }

    Entries entries_;
};

constexpr double valueWidth = 42;
constexpr double wordsX = 45;
constexpr double wordsWidth = 88;
constexpr double piecesX = 147;
constexpr double testX = 150;
constexpr double measuredX = 166;

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

/// Panels are counted A to Z, AA, AB and so on; -1 for anything else.
int panelNumber(const std::string& label) {
    int number = 0;
    for (const char c : label) {
        if (c < 'A' || c > 'Z') {
            return -1;
        }
        number = number * 26 + (c - 'A' + 1);
    }
    return number;
}

/// "Panels A–D", "Panel A, Border": panels in a row are put together.
std::string partList(const std::vector<std::string>& parts) {
    const auto panels = std::count_if(parts.begin(), parts.end(), [](const std::string& part) {
        return part != borderPart && part != fieldPart;
    });
    std::string text = panels == 0 ? "" : panels == 1 ? "Panel " : "Panels ";
    const std::size_t start = text.size();
    for (std::size_t i = 0; i < parts.size();) {
        std::size_t end = i + 1;
        while (end < parts.size() && panelNumber(parts[i]) >= 0 &&
               panelNumber(parts[end]) == panelNumber(parts[i]) + static_cast<int>(end - i)) {
            ++end;
        }
        text += text.size() == start ? "" : ", ";
        if (end - i >= 3) {
            text += parts[i] + "–" + parts[end - 1];
            i = end;
        } else {
            text += parts[i];
            ++i;
        }
    }
    return text;
}

void addEntry(Flow& flow, const Matter& matter, const MachineWords& words, Length value,
              const Entry& entry, bool first) {
    std::vector<std::string> lines = wrapped(partList(entry.parts), type::small, true, wordsWidth);
    const std::size_t bold = lines.size();
    for (const Figure* figure : entry.workings) {
        for (std::string& line : workingLines(*figure, matter.notation(), wordsWidth)) {
            lines.push_back(std::move(line));
        }
    }
    // Short ones share a line.
    double inset = 0;
    if (lines.size() == 2 && bold == 1) {
        inset = textWidth(lines[0], type::small, true) + 3;
        if (inset + textWidth(lines[1], type::small, false) > wordsWidth) {
            inset = 0;
        }
    }
    const double pitch = type::small * type::leading;
    // A value with very many parts or workings is cut off at what one page holds.
    lines.resize(std::min<std::size_t>(lines.size(), 30));
    const std::size_t lineCount = inset > 0 ? 1 : lines.size();
    const double height = std::max(9.0, static_cast<double>(lineCount) * pitch + 2.2);
    constexpr double headingHeight = 8;
    if (flow.need(height + (first ? headingHeight : 0))) {
        tableHead(flow);
        first = true;
    }
    if (first) {
        flow.text(flow.left(), flow.y + 4.6, words.name, {type::body, true, Ink::Accent});
        flow.text(flow.left() + textWidth(words.name, type::body, true) + 3, flow.y + 4.6,
                  words.about, quietText);
        flow.y += 6.8;
        flow.rule(flow.left(), flow.right(), flow.y);
    }
    const double top = flow.y + 1;
    flow.text(flow.left() + 2, top + 5.4, matter.text(value), {5.6, true, Ink::Text}, Align::Left,
              valueWidth);
    for (std::size_t i = 0; i < lines.size(); ++i) {
        const bool beside = i == 1 && inset > 0;
        flow.text(flow.left() + wordsX + (beside ? inset : 0),
                  top + (inset > 0 ? 5.0 : 3.4 + static_cast<double>(i) * pitch), lines[i],
                  i < bold ? Tone{type::small, true, Ink::Text} : quietText, Align::Left,
                  wordsWidth);
    }
    flow.text(flow.left() + piecesX, top + 5.2, std::to_string(entry.pieces),
              {type::body, true, Ink::Text}, Align::Right);
    flow.tick(flow.left() + testX + 4.5, top + 0.6, 5.6);
    flow.rule(flow.left() + measuredX + 1, flow.right(), top + 6.2, Ink::Text, 0.25);
    flow.y += height;
    flow.rule(flow.left(), flow.right(), flow.y);
}

/// Bars of known length, to be measured with a steel rule.
void checkBars(Flow& flow) {
    constexpr double height = 27;
    flow.need(height);
    flow.y = flow.bottom() - height;
    flow.text(flow.left(), flow.y + 4.2, "Print at 100 %", strongText);
    flow.text(flow.left() + 38, flow.y + 4.2,
              "no scaling, no “fit to page”; then lay a steel rule on both bars.", quietText);
    const double left = flow.left() + 2;
    const struct {
        double length, step;
        const char* name;
        double y;
    } bars[] = {{100, 10, "100 mm", flow.y + 12.5}, {101.6, 25.4, "4 in", flow.y + 22.5}};
    const Style line{.line = Ink::Text, .lineWidth = 0.25};
    for (const auto& bar : bars) {
        flow.drawing().marks.emplace_back(Line{{left, bar.y}, {left + bar.length, bar.y}, line});
        const int steps = static_cast<int>(bar.length / bar.step + 0.5);
        for (int i = 0; i <= steps; ++i) {
            const bool end = i == 0 || i == steps;
            const double x = left + bar.step * i;
            flow.drawing().marks.emplace_back(
                Line{{x, bar.y - (end ? 3.5 : 2)}, {x, bar.y + (end ? 1.5 : 0)}, line});
        }
        flow.text(left + bar.length + 5, bar.y + 0.4, bar.name, boldText);
    }
    flow.y = flow.bottom();
}

}  // namespace

void addMachineSettings(std::vector<Draft>& drafts, const Matter& matter, const Record& record) {
    Flow flow(drafts, matter, "machine-settings", "Machine settings", Sizes::ToSet,
              Flow::Safety::FirstPage);
    flow.y +=
        flow.paragraph(flow.left(), flow.y, flow.width(),
                       "Every fence, thickness and stop once. Cut a test piece, measure it, "
                       "write down what it measures, and cut all pieces of one setting before "
                       "the machine is moved.",
                       smallText) +
        3;
    tableHead(flow);
    const Collector collector(record);
    for (const MachineWords& words : machineWords) {
        bool first = true;
        for (const auto& [key, entry] : collector.entries()) {
            if (key.first == words.machine) {
                addEntry(flow, matter, words, key.second, entry, first);
                first = false;
            }
        }
    }
    checkBars(flow);
}

}  // namespace kerfwright
