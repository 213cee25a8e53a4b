#include "core/sheets/batchsheets.h"

#include "core/drawing/geometry.h"
#include "core/sheets/amounts.h"
#include "core/sheets/boardview.h"
#include "core/sheets/hourwords.h"
#include "core/sheets/pages.h"
#include "core/sheets/plankpages.h"
#include "core/sheets/settingrows.h"
#include "core/sheets/settingtable.h"
#include "core/sheets/settle.h"
#include "core/words/say.h"

#include <algorithm>
#include <utility>

namespace kerfwright {
namespace {

/// A position of one machine, and the boards that want it.
struct SharedSetting {
    Length value;
    struct Use {
        std::size_t board = 0;
        std::string parts;
        std::size_t pieces = 0;
    };
    std::vector<Use> uses;
};

/// All positions for one thing that is set, largest first: a planer is lowered step by step, and a
/// fence that moves one way takes up its play.
struct SharedMachine {
    std::string name, about;
    std::vector<SharedSetting> settings;
};

std::vector<SharedMachine> sharedMachines(const Batch& batch, Paper paper) {
    std::vector<SharedMachine> machines;
    for (std::size_t i = 0; i < batch.boards.size(); ++i) {
        const BatchBoard& board = batch.boards[i];
        const Matter matter{board.project, board.job, paper};
        Record record(board.job.steps);
        record.follow(board.job.board, board.job.season);
        for (const SettingBlock& block : machineSettings(matter, record).blocks) {
            for (const SettingRow& row : block.rows) {
                auto machine =
                    std::find_if(machines.begin(), machines.end(), [&](const SharedMachine& each) {
                        return each.name == row.name && each.about == row.about;
                    });
                if (machine == machines.end()) {
                    machine = machines.insert(machines.end(), {row.name, row.about, {}});
                }
                auto setting = std::find_if(
                    machine->settings.begin(), machine->settings.end(),
                    [&](const SharedSetting& each) { return each.value == row.value; });
                if (setting == machine->settings.end()) {
                    setting = machine->settings.insert(machine->settings.end(), {row.value, {}});
                }
                setting->uses.push_back({i, partList(row.parts), row.pieces});
            }
        }
    }
    for (SharedMachine& machine : machines) {
        std::stable_sort(
            machine.settings.begin(), machine.settings.end(),
            [](const SharedSetting& a, const SharedSetting& b) { return b.value < a.value; });
    }
    return machines;
}

void machineHead(Flow& flow, const SharedMachine& machine) {
    flow.text(flow.left(), flow.y + 4.6, machine.name, boldText);
    const double at = textWidth(machine.name, type::body, true) + 3;
    flow.text(flow.left() + at, flow.y + 4.6, machine.about, quietText, Align::Left,
              flow.width() - at);
    flow.y += 6.8;
    flow.rule(flow.left(), flow.right(), flow.y);
}

void addSetting(SettingTable& table, Flow& flow, const Matter& matter, const SharedMachine& machine,
                const SharedSetting& setting, bool first) {
    std::vector<SettingTable::Line> lines;
    std::size_t pieces = 0;
    for (const SharedSetting::Use& use : setting.uses) {
        for (std::string& line : wrapped(std::to_string(use.board + 1) + ": " + use.parts,
                                         type::small, false, table.wordsWidth())) {
            lines.push_back({std::move(line), smallText});
        }
        pieces += use.pieces;
    }
    table.row(matter.text(setting.value), std::move(lines), pieces, first,
              [&] { machineHead(flow, machine); });
}

void addSharedSettings(std::vector<Draft>& drafts, const Matter& matter, const Batch& batch) {
    Flow flow(drafts, matter, "shared-settings", say("One setting, all boards"), Sizes::ToSet,
              Flow::Safety::FirstPage);
    flow.y += flow.paragraph(
                  flow.left(), flow.y, flow.width(),
                  say("Every position of every machine once, with all boards that need it, largest "
                      "first. The order of work inside each board stays that of its own sheets: "
                      "take from here only what has come so far, and never work ahead. Cut a test "
                      "piece in waste and write down what it measures before the parts are cut."),
                  smallText) +
              3;
    SettingTable table(flow, say("For board: parts"));
    table.head();
    for (const SharedMachine& machine : sharedMachines(batch, matter.paper)) {
        bool first = true;
        for (const SharedSetting& setting : machine.settings) {
            addSetting(table, flow, matter, machine, setting, first);
            first = false;
        }
    }
}

void addBoards(std::vector<Draft>& drafts, const Matter& matter, const Batch& batch) {
    Flow flow(drafts, matter, "batch", say("Boards made together"), Sizes::Finished,
              Flow::Safety::None);
    flow.y += flow.paragraph(
                  flow.left(), flow.y, flow.width(),
                  say("Planned together: one shop and one rack for all. Labels begin with the "
                      "number of the board on the sheets that all share (“2: A3”); on the sheets "
                      "of a board they stand alone. Write the number on every part."),
                  smallText) +
              4;
    double minutes = 0;
    for (std::size_t i = 0; i < batch.boards.size(); ++i) {
        const BatchBoard& board = batch.boards[i];
        const Totals& totals = board.job.totals;
        constexpr double side = 36;
        constexpr double height = side + 8;
        flow.need(height);
        const double top = flow.y;
        const Box extent{0, 0, totals.width.toMm(), totals.height.toMm()};
        const double scale = fitting(extent, side, side);
        const BoardViewOptions options{.hatch = true,
                                       .wholeBoard = true,
                                       .lineWidth = 0.18 / scale,
                                       .hatchPitch = 1.7 / scale,
                                       .surround = board.job.surround};
        Drawing drawn = drawBoard(board.project.board, board.project.woods,
                                  board.job.plan.extraJoints, options);
        place(flow.drawing(), drawn, {flow.left() + 14, top}, scale);
        flow.text(flow.left(), top + 6.4, std::to_string(i + 1), {type::big, true, Ink::Accent});
        const double x = flow.left() + 14 + side + 6;
        const std::string& name = board.project.titles.name;
        flow.name(x, top + 5, name.empty() ? say("Board without a name") : name, strongText,
                  flow.right() - x);
        const auto words = [&](double down, const std::string& line) {
            flow.name(x, top + down, line, bodyText, flow.right() - x);
        };
        words(11.5, format(totals.width, board.project.notation) + " × " +
                        format(totals.height, board.project.notation) + " × " +
                        format(totals.thickness, board.project.notation));
        words(17, board.project.board.build == Build::EndGrain ? say("End grain up")
                                                               : say("Long grain up"));
        words(22.5, sayCount(board.job.plan.assemblies, "{1} glue-up", "{1} glue-ups") + ", " +
                        sayCount(board.job.plan.strips, "{1} strip", "{1} strips"));
        words(28, say("{1} at the bench by itself", totalWords(board.job.hours)));
        words(33.5,
              say("Timber in: {1}", formatVolume(totals.timberIn, board.project.notation.unit)));
        minutes += board.job.hours.minutes;
        flow.y = top + height;
        flow.rule(flow.left(), flow.right(), flow.y - 4, Ink::Rule, 0.15);
    }
    flow.y += flow.paragraph(flow.left(), flow.y, flow.width(),
                             say("One by one the boards would take {1} with hands on; each setting "
                                 "that they share saves its time.",
                                 timeWords(minutes)),
                             bodyText);
}

}  // namespace

std::vector<Page> batchSheets(const Batch& batch, Paper paper) {
    const BatchBoard& first = batch.boards.front();
    if (batch.boards.size() == 1) {
        const bool hasRack = !first.project.timber.rack.planks.empty();
        return sheets(first.project, first.job, paper, hasRack ? &batch.timber : nullptr);
    }
    Project shared = first.project;
    shared.titles.name = sayCount(batch.boards.size(), "{1} board", "{1} boards");
    shared.woods = batch.woods;
    const Matter matter{shared, first.job, paper};
    std::vector<Draft> drafts;
    const auto each = [&](void (*add)(std::vector<Draft>&, const Matter&, const Batch&)) {
        settle(drafts, matter,
               [&](std::vector<Draft>& to, const Matter& with) { add(to, with, batch); });
    };
    each(addBoards);
    each(addSharedSettings);
    addTimber(drafts, matter, batch.timber);
    stamp(drafts, matter);
    std::vector<Page> pages;
    for (Draft& draft : drafts) {
        pages.push_back(std::move(draft.page));
    }
    for (std::size_t i = 0; i < batch.boards.size(); ++i) {
        const std::string number = std::to_string(i + 1);
        for (Page& page : sheets(batch.boards[i].project, batch.boards[i].job, paper)) {
            page.key = "board-" + number + "-" + page.key;
            page.title = say("Board {1}: {2}", number, page.title);
            pages.push_back(std::move(page));
        }
    }
    return pages;
}

}  // namespace kerfwright
