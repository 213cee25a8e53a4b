#include "core/sheets/settingrows.h"

#include "core/sheets/methods.h"

#include <algorithm>
#include <map>

namespace kerfwright {
namespace {

constexpr std::size_t mostRows = 24;

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

    std::vector<SettingBlock> blocks() const {
        std::vector<SettingBlock> all;
        for (const auto& [key, block] : blocks_) {
            all.push_back(block);
            for (SettingRow& row : all.back().rows) {
                std::stable_sort(row.parts.begin(), row.parts.end(), labelBefore);
            }
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
    SettingBlock& panelBlock(const std::string& panel, const std::string& words) {
        if (!together_) {
            return blockAt({number_, {}}, title(record_.list.steps[stepIndex()]));
        }
        return blockAt({done_[panel]++, words}, words);
    }
    /// The block of a step that comes after all panels.
    SettingBlock& laterBlock() {
        return blockAt({together_ ? afterPanels + number_ : number_, {}},
                       title(record_.list.steps[stepIndex()]));
    }
    SettingBlock& blockAt(const Key& key, const std::string& words) {
        SettingBlock& block = blocks_[key];
        block.title = words;
        block.steps.push_back(number_);
        return block;
    }
    std::size_t stepIndex() const { return static_cast<std::size_t>(number_ - 1); }

    static void add(SettingBlock& block, const std::string& name, const std::string& about,
                    const Figure& figure, std::size_t pieces,
                    const std::vector<std::string>& parts) {
        auto row = std::find_if(block.rows.begin(), block.rows.end(), [&](const SettingRow& one) {
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
        SettingBlock& block =
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
        // Nothing comes off the ends in milling: the plank is crosscut to length once.
        const auto cutOnce = [](const MillLine& line) {
            return line.roughLength.value == line.length.value;
        };
        each([&](const MillLine& line, const auto& parts) {
            add(block, cutOnce(line) ? "Strip length" : "Rough length", "crosscut, from the plank",
                line.roughLength, line.strips.size(), parts);
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
            if (!cutOnce(line)) {
                add(block, "Strip length", "length stop", line.length, line.strips.size(), parts);
            }
        });
    }
    void take(const Glue& glue) { come(glue.result, glue.final); }
    void take(const Take&) {}
    void take(const Flatten& work) {
        const bool field = work.purpose == Purpose::Finished;
        SettingBlock& block =
            field ? laterBlock()
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
        add(panelBlock(work.part, work.forPanels    ? "Cut lengths"
                                  : work.marginRows ? "Cut margin slices"
                                                    : "Cut slices"),
            work.forPanels    ? "Length of sticks"
            : work.marginRows ? "Length of margin slices"
                              : "Slice length",
            "stop, crosscut sled", work.stop, work.slices.size() + work.spares.size(), {work.part});
    }
    void take(const BringToSize& work) {
        const Sizing& sizing = work.sizing;
        const char* what = sizing.in == SizedIn::Width    ? "Width brought to"
                           : sizing.in == SizedIn::Length ? "Length brought to"
                                                          : "Thickness brought to";
        const char* machine = sizing.in == SizedIn::Width    ? "jointer, then rip fence"
                              : sizing.in == SizedIn::Length ? "stop, crosscut sled"
                                                             : "thickness planer";
        add(panelBlock(panelOf(work.parts.front()), "True and bring to size"), what, machine,
            sizing.to, work.parts.size(), work.parts);
    }
    void take(const TrimField& work) {
        SettingBlock& block = laterBlock();
        add(block, "Trim margin", "off each side of the field", work.margin, 4, {"Field"});
        add(block, "Field after trimming", "fence", work.width, 1, {"Field"});
        add(block, "Field after trimming", "fence", work.height, 1, {"Field"});
    }
    void take(const CutChannel& work) {
        SettingBlock& block = laterBlock();
        const char* what = work.purpose == ChannelFor::Tongue  ? "Groove"
                           : work.purpose == ChannelFor::Ledge ? "Rebate at the ledge"
                                                               : "Rebate for the inlay";
        const std::size_t edges = work.parts.size() * static_cast<std::size_t>(work.edges);
        add(block, what, "deep, in from the edge", work.depth, edges, work.parts);
        add(block, what, "wide", work.width, edges, work.parts);
        if (work.fromFace.value > Length()) {
            add(block, what, "below the top face", work.fromFace, edges, work.parts);
        }
    }
    void take(const GlueIn&) {}
    void take(const CutRails& work) {
        SettingBlock& block = laterBlock();
        for (const Rail& rail : work.rails) {
            add(block, "Border rail", work.mitred ? "mitre stop, long point to long point" : "stop",
                rail.longPoint, 1, {rail.label});
        }
    }
    void take(const FitBorder&) {}
    void take(const KeyCorners& work) {
        SettingBlock& block = laterBlock();
        add(block, "Slot in the corner", "deep, square to the corner", work.depth, 4, {work.stick});
        add(block, "Slot in the corner", "wide", work.thickness, 4, {work.stick});
        add(block, "Slot in the corner", "below the top face", work.fromFace, 4, {work.stick});
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
    std::map<Key, SettingBlock> blocks_;
};

}  // namespace

std::string partList(const std::vector<std::string>& parts) {
    const auto isRail = [](const std::string& part) { return part.ends_with(" rail"); };
    if (parts.size() == 4 && std::all_of(parts.begin(), parts.end(), isRail)) {
        return "all four rails";
    }
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

Settings machineSettings(const Matter& matter, const Record& record) {
    const Collector apart(matter, record, false);
    if (record.panels.size() < 2 || apart.rowCount() <= mostRows) {
        return {apart.blocks(), false};
    }
    return {Collector(matter, record, true).blocks(), true};
}

}  // namespace kerfwright
