#include "core/sheets/settingrows.h"

#include "core/sheets/methods.h"
#include "core/words/say.h"

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

    /// The block of a step that works on one panel; `words` are to be said.
    SettingBlock& panelBlock(const std::string& panel, const char* words) {
        if (!together_) {
            return blockAt({number_, {}}, title(record_.list.steps[stepIndex()]));
        }
        return blockAt({done_[panel]++, words}, say(words));
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
            mill.panel.empty() ? laterBlock() : panelBlock(mill.panel, noted("Mill the strips"));
        const bool byPanel = together_ && !mill.panel.empty();
        const auto edge = [&](const MillLine& line) {
            return standsOnEdge(line, matter_.wood(line.wood));
        };
        const auto planed = [&](const MillLine& line) -> std::string {
            return tooShortToMillSingly(line, matter_.project.shop)
                       ? say("thickness planer, in blanks of several")
                       : say("thickness planer");
        };
        // One machine after the other, all strips at each.
        const auto each = [&](auto&& set) {
            for (const MillLine& line : mill.lines) {
                set(line, byPanel ? std::vector<std::string>{mill.panel} : line.strips);
            }
        };
        each([&](const MillLine& line, const auto& parts) {
            const bool up = edge(line);
            add(block, up ? say("Rough height") : say("Rough thickness"),
                up ? say("rip fence; stands on edge in the panel") : say("sawn, from the plank"),
                line.roughThickness, line.strips.size(), parts);
        });
        each([&](const MillLine& line, const auto& parts) {
            add(block, say("Rough width"),
                edge(line) ? say("sawn, from the plank") : say("rip fence, before milling"),
                line.roughWidth, line.strips.size(), parts);
        });
        // Nothing comes off the ends in milling: the plank is crosscut to length once.
        const auto cutOnce = [](const MillLine& line) {
            return line.roughLength.value == line.length.value;
        };
        each([&](const MillLine& line, const auto& parts) {
            add(block, cutOnce(line) ? say("Strip length") : say("Rough length"),
                say("crosscut, from the plank"), line.roughLength, line.strips.size(), parts);
        });
        each([&](const MillLine& line, const auto& parts) {
            const bool up = edge(line);
            add(block, up ? say("Strip height") : say("Strip thickness"),
                up ? say("rip fence; stands on edge in the panel") : planed(line), line.thickness,
                line.strips.size(), parts);
        });
        each([&](const MillLine& line, const auto& parts) {
            add(block, say("Strip width"), edge(line) ? planed(line) : say("rip fence"), line.width,
                line.strips.size(), parts);
        });
        each([&](const MillLine& line, const auto& parts) {
            if (!cutOnce(line)) {
                add(block, say("Strip length"), say("length stop"), line.length, line.strips.size(),
                    parts);
            }
        });
    }
    void take(const Glue& glue) {
        if (glue.final) {
            return;
        }
        // A panel of lengths of others has come as far as the furthest of them.
        int furthest = done_[glue.result];
        for (const Laid& laid : glue.parts) {
            if (const auto from = done_.find(panelOf(laid.part)); from != done_.end()) {
                furthest = std::max(furthest, from->second);
            }
        }
        done_[glue.result] = furthest + 1;
    }
    void take(const Take&) {}
    void take(const Flatten& work) {
        const bool field = work.purpose == Purpose::Finished;
        SettingBlock& block =
            field ? laterBlock()
                  : panelBlock(work.part, work.purpose == Purpose::AfterGlueUp
                                              ? noted("Flatten the panels")
                                              : noted("Bring the panels to their row height"));
        add(block, field ? say("Field thickness") : say("Panel thickness"),
            flatteningTools(flatWork(record_, work, number_), matter_.project.shop), work.to, 1,
            {field ? "Field" : work.part});
    }
    void take(const SquareEnd& work) {
        add(panelBlock(work.part, noted("Square one end")), say("Squaring cut"),
            say("waste, outside the blade"), work.waste, 1, {work.part});
    }
    void take(const Crosscut& work) {
        add(panelBlock(work.part, work.forPanels    ? noted("Cut lengths")
                                  : work.marginRows ? noted("Cut margin slices")
                                                    : noted("Cut slices")),
            work.forPanels    ? say("Length of sticks")
            : work.marginRows ? say("Length of margin slices")
                              : say("Slice length"),
            say("stop, crosscut sled"), work.stop, work.slices.size() + work.spares.size(),
            {work.part});
    }
    void take(const BringToSize& work) {
        const Sizing& sizing = work.sizing;
        const std::string what = sizing.in == SizedIn::Width    ? say("Width brought to")
                                 : sizing.in == SizedIn::Length ? say("Length brought to")
                                                                : say("Thickness brought to");
        const std::string machine = sizing.in == SizedIn::Width    ? say("jointer, then rip fence")
                                    : sizing.in == SizedIn::Length ? say("stop, crosscut sled")
                                                                   : say("thickness planer");
        add(panelBlock(panelOf(work.parts.front()), noted("True and bring to size")), what, machine,
            sizing.to, work.parts.size(), work.parts);
    }
    void take(const TrimField& work) {
        SettingBlock& block = laterBlock();
        add(block, say("Trim margin"), say("off each side of the field"), work.margin, 4,
            {"Field"});
        for (const Figure* side : {&work.width, &work.height}) {
            add(block, say("Field after trimming"), say("fence"), *side, 1, {"Field"});
        }
    }
    void take(const CutChannel& work) {
        SettingBlock& block = laterBlock();
        const std::string what = work.purpose == ChannelFor::Tongue  ? say("Groove")
                                 : work.purpose == ChannelFor::Ledge ? say("Rebate at the ledge")
                                                                     : say("Rebate for the inlay");
        const std::size_t edges = work.parts.size() * static_cast<std::size_t>(work.edges);
        add(block, what, say("deep, in from the edge"), work.depth, edges, work.parts);
        add(block, what, say("wide"), work.width, edges, work.parts);
        if (work.fromFace.value > Length()) {
            add(block, what, say("below the top face"), work.fromFace, edges, work.parts);
        }
    }
    void take(const GlueIn&) {}
    void take(const CutRails& work) {
        SettingBlock& block = laterBlock();
        for (const Rail& rail : work.rails) {
            add(block, say("Border rail"),
                work.mitred ? say("mitre stop, long point to long point")
                            : sayIn("of a saw", "stop"),
                rail.longPoint, 1, {rail.label});
        }
    }
    void take(const FitBorder&) {}
    void take(const KeyCorners& work) {
        SettingBlock& block = laterBlock();
        const std::string what = say("Slot in the corner");
        add(block, what, say("deep, square to the corner"), work.depth, 4, {work.stick});
        add(block, what, say("wide"), work.thickness, 4, {work.stick});
        add(block, what, say("below the top face"), work.fromFace, 4, {work.stick});
    }
    static constexpr int afterPanels = 1'000'000;
    const Matter& matter_;
    const Record& record_;
    bool together_;
    int number_ = 0;
    std::map<std::string, int> done_;  ///< how far each panel has come
    std::map<Key, SettingBlock> blocks_;
};

}  // namespace

std::string partList(const std::vector<std::string>& parts) {
    const auto isRail = [](const std::string& part) { return part.ends_with(" rail"); };
    if (parts.size() == 4 && std::all_of(parts.begin(), parts.end(), isRail)) {
        return say("all four rails");
    }
    const auto panels = std::count_if(
        parts.begin(), parts.end(), [](const std::string& part) { return panelNumber(part) > 0; });
    if (panels == 0) {
        return labelList(parts);
    }
    std::string text;
    for (std::size_t i = 0; i < parts.size();) {
        std::size_t end = i + 1;
        while (end < parts.size() && panelNumber(parts[i]) >= 0 &&
               panelNumber(parts[end]) == panelNumber(parts[i]) + static_cast<int>(end - i)) {
            ++end;
        }
        text += text.empty() ? "" : ", ";
        if (end - i >= 3) {
            text += parts[i] + "–" + parts[end - 1];
            i = end;
        } else {
            text += parts[i];
            ++i;
        }
    }
    return panels == 1 ? say("panel {1}", text) : say("each of panels {1}", text);
}

Settings machineSettings(const Matter& matter, const Record& record) {
    const Collector apart(matter, record, false);
    if (record.panels.size() < 2 || apart.rowCount() <= mostRows) {
        return {apart.blocks(), false};
    }
    return {Collector(matter, record, true).blocks(), true};
}

}  // namespace kerfwright
