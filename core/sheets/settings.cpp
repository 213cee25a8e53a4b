#include "core/sheets/methods.h"
#include "core/sheets/pages.h"

#include <algorithm>
#include <map>

namespace kerfwright {
namespace {

/// One setting of one machine.
struct Row {
    std::string name;   ///< "Strip width"
    std::string about;  ///< "rip fence"
    Length value;
    std::size_t pieces = 0;
    std::vector<std::string> parts;       ///< in order, each once
    std::vector<const Figure*> workings;  ///< that differ
};

/// What is set between two steps that must not be mixed.
struct Block {
    std::string title;
    std::vector<int> steps;
    std::vector<Row> rows;
};

constexpr std::size_t mostRows = 60;

class Collector {
public:
    /// `together`: equal settings of several panels in one line, where the panels have come equally
    /// far; so the order inside every panel stays.
    Collector(const Matter& matter, const Record& record, bool together)
        : matter_(matter)
        , record_(record)
        , together_(together) {
        for (std::size_t i = 0; i < record.list.steps.size(); ++i) {
            number_ = static_cast<int>(i) + 1;
            std::visit([this](const auto& work) { take(work); }, record.list.steps[i].work);
        }
    }

    std::vector<const Block*> blocks() const {
        std::vector<const Block*> all;
        for (const auto& [key, block] : blocks_) {
            all.push_back(&block);
        }
        return all;
    }
    std::size_t rowCount() const {
        std::size_t count = 0;
        for (const auto& [key, block] : blocks_) {
            count += block.rows.size();
        }
        return count;
    }

private:
    /// How far the work has come, then what is done.
    using Key = std::pair<int, std::string>;

    /// The block of a step that works on one panel.
    Block& panelBlock(const std::string& panel, const std::string& words) {
        if (!together_) {
            return blockAt({number_, {}}, title(record_.list.steps[stepIndex()]));
        }
        return blockAt({done_[panel]++, words}, words);
    }
    /// The block of a step that comes after all panels.
    Block& laterBlock() {
        return blockAt({together_ ? afterPanels + number_ : number_, {}},
                       title(record_.list.steps[stepIndex()]));
    }
    Block& blockAt(const Key& key, const std::string& words) {
        Block& block = blocks_[key];
        block.title = words;
        block.steps.push_back(number_);
        return block;
    }
    std::size_t stepIndex() const { return static_cast<std::size_t>(number_ - 1); }

    static void add(Block& block, const std::string& name, const std::string& about,
                    const Figure& figure, std::size_t pieces,
                    const std::vector<std::string>& parts) {
        auto row = std::find_if(block.rows.begin(), block.rows.end(), [&](const Row& one) {
            return one.name == name && one.about == about && one.value == figure.value;
        });
        if (row == block.rows.end()) {
            block.rows.push_back({name, about, figure.value, 0, {}, {}});
            row = block.rows.end() - 1;
        }
        row->pieces += pieces;
        for (const std::string& part : parts) {
            if (std::find(row->parts.begin(), row->parts.end(), part) == row->parts.end()) {
                row->parts.push_back(part);
            }
        }
        const bool known =
            std::any_of(row->workings.begin(), row->workings.end(),
                        [&](const Figure* one) { return one->terms == figure.terms; });
        if (!known) {
            row->workings.push_back(&figure);
        }
    }

    void take(const Mill& mill) {
        Block& block =
            mill.panel.empty() ? laterBlock() : panelBlock(mill.panel, "Mill the strips");
        const bool byPanel = together_ && !mill.panel.empty();
        const auto edge = [&](const MillLine& line) {
            return standsOnEdge(line, matter_.wood(line.wood));
        };
        const auto planed = [&](const MillLine& line) -> std::string {
            return tooShortToMillSingly(line, matter_.project.shop)
                       ? "thickness planer, in blanks of several"
                       : "thickness planer";
        };
        // One machine after the other, all strips at each.
        const auto each = [&](auto&& set) {
            for (const MillLine& line : mill.lines) {
                set(line, byPanel ? std::vector<std::string>{mill.panel} : line.strips);
            }
        };
        each([&](const MillLine& line, const auto& parts) {
            const bool up = edge(line);
            add(block, up ? "Rough height" : "Rough thickness",
                up ? "rip fence; stands on edge in the panel" : "sawn, from the plank",
                line.roughThickness, line.strips.size(), parts);
        });
        each([&](const MillLine& line, const auto& parts) {
            add(block, "Rough width",
                edge(line) ? "sawn, from the plank" : "rip fence, before milling", line.roughWidth,
                line.strips.size(), parts);
        });
        each([&](const MillLine& line, const auto& parts) {
            add(block, "Rough length", "crosscut, from the plank", line.roughLength,
                line.strips.size(), parts);
        });
        each([&](const MillLine& line, const auto& parts) {
            const bool up = edge(line);
            add(block, up ? "Strip height" : "Strip thickness",
                up ? "rip fence; stands on edge in the panel" : planed(line), line.thickness,
                line.strips.size(), parts);
        });
        each([&](const MillLine& line, const auto& parts) {
            add(block, "Strip width", edge(line) ? planed(line) : "rip fence", line.width,
                line.strips.size(), parts);
        });
        each([&](const MillLine& line, const auto& parts) {
            add(block, "Strip length", "length stop", line.length, line.strips.size(), parts);
        });
    }
    void take(const Glue& glue) { come(glue.result, glue.final); }
    void take(const Take&) {}
    void take(const Flatten& work) {
        const bool field = work.purpose == Purpose::Finished;
        Block& block = field ? laterBlock()
                             : panelBlock(work.part, work.purpose == Purpose::AfterGlueUp
                                                         ? "Flatten the panels"
                                                         : "Bring the panels to their row height");
        add(block, field ? "Field thickness" : "Panel thickness",
            flatteningTools(flatWork(record_, work, number_), matter_.project.shop), work.to, 1,
            {field ? "Field" : work.part});
    }
    void take(const SquareEnd& work) {
        add(panelBlock(work.part, "Square one end"), "Squaring cut", "waste, outside the blade",
            work.waste, 1, {work.part});
    }
    void take(const Crosscut& work) {
        add(panelBlock(work.part, work.marginRows ? "Cut margin slices" : "Cut slices"),
            work.marginRows ? "Length of margin slices" : "Slice length", "stop, crosscut sled",
            work.stop, work.slices.size() + work.spares.size(), {work.part});
    }
    void take(const TrimField& work) {
        Block& block = laterBlock();
        add(block, "Trim margin", "off each side of the field", work.margin, 4, {"Field"});
        add(block, "Field after trimming", "fence", work.width, 1, {"Field"});
        add(block, "Field after trimming", "fence", work.height, 1, {"Field"});
    }
    void take(const FitBorder& work) {
        Block& block = laterBlock();
        for (const Rail& rail : work.rails) {
            add(block, "Border rail", "mitre stop, long point to long point", rail.longPoint, 1,
                {rail.label});
        }
    }
    void come(const std::string& panel, bool final) {
        if (!final) {
            ++done_[panel];
        }
    }

    static constexpr int afterPanels = 1'000'000;
    const Matter& matter_;
    const Record& record_;
    bool together_;
    int number_ = 0;
    std::map<std::string, int> done_;  ///< steps done, by panel
    std::map<Key, Block> blocks_;
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

/// "each of panels A–D", "A1–A6", "Field": panels in a row are put together.
std::string partList(const std::vector<std::string>& parts) {
    const auto panels = std::count_if(
        parts.begin(), parts.end(), [](const std::string& part) { return panelNumber(part) > 0; });
    if (panels == 0) {
        return labelList(parts);
    }
    std::string text = panels == 1 ? "panel " : "each of panels ";
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

void blockHead(Flow& flow, const Block& block) {
    const std::string steps = stepWords(block.steps);
    flow.text(flow.left(), flow.y + 4.6, steps, {type::body, true, Ink::Accent});
    const double at = textWidth(steps, type::body, true) + 3;
    flow.text(flow.left() + at, flow.y + 4.6, shortened(block.title, boldText, flow.width() - at),
              boldText);
    flow.y += 6.8;
    flow.rule(flow.left(), flow.right(), flow.y);
}

void addRow(Flow& flow, const Matter& matter, const Block& block, const Row& row, bool first) {
    std::vector<std::string> lines =
        wrapped(row.name + ": " + partList(row.parts), type::small, true, wordsWidth);
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
    const bool together = Collector(matter, record, false).rowCount() > mostRows;
    const Collector collector(matter, record, together);
    flow.y += flow.paragraph(
                  flow.left(), flow.y, flow.width(),
                  std::string(together ? "Every fence, thickness and stop, in step order inside "
                                         "each panel; panels that have come equally far share a "
                                         "line. "
                                       : "Every fence, thickness and stop in step order. ") +
                      "Cut a test piece in waste, measure it, write down what it measures, and cut "
                      "all pieces of one line before the machine is moved. Never work ahead: a "
                      "thickness of a later step spoils what an earlier one still needs.",
                  smallText) +
              3;
    tableHead(flow);
    for (const Block* block : collector.blocks()) {
        bool first = true;
        for (const Row& row : block->rows) {
            addRow(flow, matter, *block, row, first);
            first = false;
        }
    }
    checkBars(flow);
}

}  // namespace kerfwright
