#include "core/sheets/methods.h"
#include "core/sheets/pages.h"
#include "core/words/say.h"

#include <algorithm>

namespace kerfwright {
namespace {

// Columns, from the left edge.
constexpr double labelX = 11;
constexpr double labelWidth = 42;
constexpr double countX = 63;
constexpr double kindX = 67;
constexpr double numberX = 80;  ///< of the first number; three of them
constexpr double numberStep = 33;
constexpr double tickX = 184;
constexpr double lineHeight = 6.7;

void tableHead(Flow& flow) {
    flow.box({flow.left(), flow.y, flow.width(), 6}, {.fill = Ink::Band});
    const double base = flow.y + 4.2;
    constexpr Tone tone{type::small, true, Ink::Quiet};
    flow.text(flow.left() + labelX, base, say("Strips"), tone);
    flow.text(flow.left() + countX, base, say("Pcs"), tone, Align::Right);
    const std::string names[] = {say("Thickness"), say("Width"), say("Length")};
    for (int i = 0; i < 3; ++i) {
        flow.text(flow.left() + numberX + numberStep * (i + 1) - 2, base, names[i], tone,
                  Align::Right);
    }
    flow.text(flow.right(), base, sayIn("head of a column", "Done"), tone, Align::Right);
    flow.y += 7.5;
}

void sizes(Flow& flow, const Matter& matter, double top, const std::string& kind,
           const Figure& thickness, const Figure& width, const Figure& length, bool bold) {
    const double base = top + 4.8;
    flow.text(flow.left() + kindX, base, kind,
              bold ? Tone{type::small, true, Ink::Text} : smallText);
    const Tone tone{type::setting, bold, Ink::Text};
    const Figure* figures[] = {&thickness, &width, &length};
    for (int i = 0; i < 3; ++i) {
        const double right = flow.left() + numberX + numberStep * (i + 1) - 2;
        flow.text(right, base, matter.bare(figures[i]->value), tone, Align::Right, numberStep - 5);
        if (i < 2) {
            flow.text(right + 2.4, base, "×", quietText, Align::Centre);
        }
    }
    flow.tick(flow.left() + tickX, top + 1.0, 4.2);
}

/// One kind of strip at the cursor, which stays: wood, count, rough and milled sizes.
void addSizes(Flow& flow, const Matter& matter, const MillLine& line, std::size_t count) {
    const double top = flow.y;
    flow.swatch(flow.left(), top + 1, 8, line.wood);
    flow.name(flow.left() + labelX, top + 4.4, matter.wood(line.wood).name, bodyText, labelWidth);
    flow.text(flow.left() + countX, top + 5, std::to_string(count),
              {type::setting, true, Ink::Text}, Align::Right);
    // A plank is thinner than wide, so the smaller side of the section stands first.
    const bool edge = standsOnEdge(line, matter.wood(line.wood));
    sizes(flow, matter, top, sayIn("sizes", "rough"), edge ? line.roughWidth : line.roughThickness,
          edge ? line.roughThickness : line.roughWidth, line.roughLength, false);
    sizes(flow, matter, top + lineHeight, sayIn("sizes", "milled"),
          edge ? line.width : line.thickness, edge ? line.thickness : line.width, line.length,
          true);
}

/// What must be known of these strips before they are sawn; each a line below the sizes.
std::vector<std::string> remarks(const Matter& matter, const MillLine& line, double width) {
    const std::string words = sentences(
        {standsOnEdge(line, matter.wood(line.wood))
             ? say("Stands on edge in the panel: its height there comes out of the plank’s width.")
             : "",
         tooShortToMillSingly(line, matter.project.shop)
             ? say("Too short to plane or rip singly: mill and rip blanks that hold several end to "
                   "end, then crosscut.")
             : ""});
    return words.empty() ? std::vector<std::string>{} : wrapped(words, type::small, false, width);
}

std::string headingOf(const Mill& mill) {
    if (mill.panel.empty()) {
        return say("Border rails");
    }
    const bool single = mill.lines.size() == 1 && mill.lines.front().strips.size() == 1;
    return single ? say("Strip {1}", mill.panel) : say("Panel {1}", mill.panel);
}

void addMill(Flow& flow, const Matter& matter, const Mill& mill, int number) {
    std::size_t strips = 0;
    for (const MillLine& line : mill.lines) {
        strips += line.strips.size();
    }
    const std::string heading = headingOf(mill);
    const std::string aside =
        sayCount(strips, "{1} strip · step {2}", "{1} strips · step {2}", number);
    // What is true of all strips of a panel is said once.
    const double notesWidth = flow.width() - labelX;
    const std::vector<std::string> common = remarks(matter, mill.lines.front(), notesWidth);
    const bool shared =
        mill.lines.size() > 1 &&
        std::all_of(mill.lines.begin(), mill.lines.end(), [&](const MillLine& line) {
            return remarks(matter, line, notesWidth) == common;
        });
    const double pitch = type::small * type::leading;
    const double commonHeight = shared ? static_cast<double>(common.size()) * pitch : 0;
    bool begun = false;
    for (const MillLine& line : mill.lines) {
        const std::vector<std::string> labels =
            wrapped(labelList(line.strips), type::small, true, labelWidth);
        const double height =
            std::max(2 * lineHeight, 6 + static_cast<double>(labels.size()) * 4.4) + 1.6;
        const std::vector<std::string> notes =
            shared ? std::vector<std::string>{} : remarks(matter, line, notesWidth);
        const double notesHeight = static_cast<double>(notes.size()) * pitch;
        const bool fresh = flow.need(height + notesHeight + (begun ? 0 : 7.2 + commonHeight));
        if (fresh) {
            tableHead(flow);
        }
        if (!begun || fresh) {
            flow.heading(begun ? say("{1}, continued", heading) : heading, aside);
            if (shared) {
                flow.y +=
                    flow.lines(flow.left() + labelX, flow.y - 0.8, notesWidth, common, smallText);
            }
            begun = true;
        }
        const double top = flow.y;
        addSizes(flow, matter, line, line.strips.size());
        flow.lines(flow.left() + labelX, top + 6.4, labelWidth, labels,
                   {type::small, true, Ink::Text});
        flow.y = top + height;
        if (!notes.empty()) {
            flow.lines(flow.left() + labelX, flow.y - 1.2, notesWidth, notes, smallText);
            flow.y += notesHeight;
        }
        flow.rule(flow.left(), flow.right(), flow.y - 0.8);
    }
    flow.y += 3;
}

/// Strips of one wood and size, whichever panel they are for.
struct Kind {
    const MillLine* line;
    std::vector<std::string> labels;
};

bool alike(const MillLine& a, const MillLine& b) {
    return a.wood == b.wood && a.thickness.value == b.thickness.value &&
           a.width.value == b.width.value && a.length.value == b.length.value &&
           a.roughThickness.value == b.roughThickness.value &&
           a.roughWidth.value == b.roughWidth.value && a.roughLength.value == b.roughLength.value;
}

/// Where very many panels would repeat the same few sizes page after page, equal strips of all
/// panels stand together, with their labels below.
void addAcrossPanels(Flow& flow, const Matter& matter, const Record& record) {
    std::vector<Kind> kinds;
    for (const PanelRecord& panel : record.panels) {
        if (!panel.mill) {
            continue;
        }
        for (const MillLine& line : panel.mill->lines) {
            auto known = std::find_if(kinds.begin(), kinds.end(),
                                      [&](const Kind& kind) { return alike(*kind.line, line); });
            if (known == kinds.end()) {
                kinds.push_back({&line, {}});
                known = kinds.end() - 1;
            }
            known->labels.insert(known->labels.end(), line.strips.begin(), line.strips.end());
        }
    }
    const double width = flow.width() - labelX;
    const double pitch = type::small * type::leading;
    for (const Kind& kind : kinds) {
        const std::vector<std::string> notes = remarks(matter, *kind.line, width);
        if (flow.need(2 * lineHeight + static_cast<double>(3 + notes.size()) * pitch)) {
            tableHead(flow);
        }
        addSizes(flow, matter, *kind.line, kind.labels.size());
        flow.y += 2 * lineHeight + 0.4;
        flow.y += flow.lines(flow.left() + labelX, flow.y, width, notes, smallText);
        for (const std::string& line : wrapped(labelList(kind.labels), type::small, false, width)) {
            if (flow.need(pitch)) {
                tableHead(flow);
            }
            flow.lines(flow.left() + labelX, flow.y, width, {line}, smallText);
            flow.y += pitch;
        }
        flow.y += 1.6;
        flow.rule(flow.left(), flow.right(), flow.y - 0.8);
    }
}

/// Of all rails one after another in one plank, and of the first two of them, kerfs between.
struct Runs {
    std::size_t rails = 0;
    Length all, two;
};

Runs railRuns(const Matter& matter, const Record& record) {
    Runs runs;
    for (const Rail& rail : record.border->rails) {
        for (const MillLine& line : record.railMill->lines) {
            if (std::find(line.strips.begin(), line.strips.end(), rail.label) ==
                line.strips.end()) {
                continue;
            }
            const Length kerf = runs.rails > 0 ? matter.project.shop.kerf : Length();
            runs.all += line.roughLength.value + kerf;
            ++runs.rails;
            if (runs.rails <= 2) {
                runs.two = runs.all;
            }
        }
    }
    return runs;
}

/// Planks for the border are put aside before strips are sawn out of what could have been one.
void addReserve(Flow& flow, const Matter& matter, const Record& record) {
    const Runs runs = railRuns(matter, record);
    if (runs.rails < 2) {
        return;
    }
    const std::string words = sentences(
        {say("Put the planks for the border aside before any strip is sawn."),
         runs.rails == 4
             ? say("Best all four out of one plank, {1} with its kerfs, in the order top, right, "
                   "bottom, left: then the grain goes round the corners. Else two and two, each "
                   "pair out of {2}.",
                   matter.inText(runs.all), matter.inText(runs.two))
             : say("Both out of one plank, {1} with its kerf, so that they match.",
                   matter.inText(runs.all))});
    flow.y += flow.paragraph(flow.left(), flow.y, flow.width(), words, smallText) + 3;
}

}  // namespace

void addCutList(std::vector<Draft>& drafts, const Matter& matter, const Record& record) {
    Flow flow(drafts, matter, "cut-list", say("Cut list"), Sizes::RoughAndMilled,
              Flow::Safety::WholeOnFirstPage);
    flow.y += flow.paragraph(flow.left(), flow.y, flow.width(),
                             say("Thickness × width × length, length along the grain. Saw to the "
                                 "rough sizes, let the timber rest, then mill to the milled sizes, "
                                 "and write its label on every strip. All strips of one width go "
                                 "past the fence at one setting."),
                             smallText);
    flow.y += 3;
    if (record.railMill && record.border) {
        addReserve(flow, matter, record);
    }
    tableHead(flow);
    if (record.railMill) {
        addMill(flow, matter, *record.railMill.work, record.railMill.number);
    }
    std::size_t kinds = 0;
    for (const PanelRecord& panel : record.panels) {
        kinds += panel.mill ? panel.mill->lines.size() : 0;
    }
    constexpr std::size_t mostKinds = 60;
    if (kinds > mostKinds) {
        addAcrossPanels(flow, matter, record);
    } else {
        for (const PanelRecord& panel : record.panels) {
            if (panel.mill) {
                addMill(flow, matter, *panel.mill.work, panel.mill.number);
            }
        }
    }
}

}  // namespace kerfwright
