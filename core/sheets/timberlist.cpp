#include "core/bench/quote.h"
#include "core/sheets/amounts.h"
#include "core/sheets/cutwords.h"
#include "core/sheets/layoutwords.h"
#include "core/sheets/plankpages.h"
#include "core/sheets/plankview.h"
#include "core/sheets/record.h"
#include "core/timber/demand.h"
#include "core/timber/timberwords.h"
#include "core/words/say.h"

#include <algorithm>

namespace kerfwright {
namespace {

constexpr double rowHeight = 6.6;
constexpr std::size_t mostLabelLines = 6;
constexpr Tone headTone{type::small, true, Ink::Quiet};

struct Column {
    std::string name;
    double x;  ///< of its right edge, or of its left one
    Align align = Align::Left;
};

void tableHead(Flow& flow, const std::vector<Column>& columns) {
    flow.box({flow.left(), flow.y, flow.width(), 6}, {.fill = Ink::Band});
    for (const Column& column : columns) {
        flow.text(flow.left() + column.x, flow.y + 4.2, column.name, headTone, column.align);
    }
    flow.y += 7;
}

void swatchOf(Flow& flow, const Matter& matter, const std::string& wood) {
    const int index = woodIndex(matter.project.woods, wood);
    if (index >= 0) {
        flow.swatch(flow.left(), flow.y + 0.6, 5.6, index);
    }
}

/// Labels of the planks that strips of this line lie on.
std::string sources(const TimberPlan& plan, int line) {
    std::vector<std::string> labels;
    for (const PlankCuts& cuts : plan.layout.planks) {
        bool used = false;
        for (const PlankSection& section : cuts.sections) {
            used =
                used || std::any_of(section.strips.begin(), section.strips.end(),
                                    [&](const LaidStrip& strip) { return strip.wanted == line; });
        }
        if (used) {
            labels.push_back(plan.rack.planks[static_cast<std::size_t>(cuts.plank)].label);
        }
    }
    return labelList(labels);
}

void addWanted(Flow& flow, const Matter& matter, const TimberPlan& plan) {
    const std::vector<Column> columns{{say("Strips"), 9},
                                      {say("Pcs"), 63, Align::Right},
                                      {say("Rough size"), 68},
                                      // Translators: the planks that strips come from.
                                      {sayIn("column", "From"), 118}};
    const auto head = [&] { tableHead(flow, columns); };
    // Translators: the strips that a board needs.
    flow.heading(sayIn("strips", "Wanted"));
    head();
    for (std::size_t i = 0; i < plan.demand.strips.size(); ++i) {
        const WantedStrips& strips = plan.demand.strips[i];
        const int missing = plan.layout.missing[i];
        std::string from = sources(plan, static_cast<int>(i));
        if (missing > 0) {
            from =
                from.empty() ? say("buy for {1}", missing) : say("{1}; buy for {2}", from, missing);
        }
        const auto fromLines = wrapped(from, type::small, true, flow.width() - 118);
        std::vector<std::string> parts = labelsOf(strips);
        std::sort(parts.begin(), parts.end(), labelBefore);
        auto labels = wrapped(labelList(parts), type::small, false, 102);
        if (labels.size() > mostLabelLines) {
            // The cut list has them all.
            flow.page().cutOff.push_back(labels[mostLabelLines]);
            labels.resize(mostLabelLines);
            labels.back() += " …";
        }
        const double pitch = type::small * type::leading;
        const double height = std::max(5.4 + static_cast<double>(labels.size()) * pitch,
                                       1.6 + static_cast<double>(fromLines.size()) * pitch) +
                              1;
        if (flow.need(height)) {
            head();
        }
        swatchOf(flow, matter, strips.wood);
        const double base = flow.y + 4.4;
        flow.name(flow.left() + 9, base, woodName(strips.wood, matter.project.woods), bodyText, 42);
        flow.text(flow.left() + 63, base, std::to_string(strips.count), boldText, Align::Right);
        flow.name(flow.left() + 68, base, sizeWords(strips, matter.notation()), boldText, 48);
        flow.lines(flow.left() + 118, flow.y + 1.4, flow.width() - 118, fromLines,
                   {type::small, true, missing > 0 ? Ink::Warning : Ink::Text});
        flow.lines(flow.left() + 9, flow.y + 5.6, 106, labels, quietText);
        flow.y += height;
        flow.rule(flow.left(), flow.right(), flow.y, Ink::Rule, 0.15);
    }
    flow.y += 4;
}

int stripsOn(const PlankCuts& cuts) {
    std::size_t count = 0;
    for (const PlankSection& section : cuts.sections) {
        count += section.strips.size();
    }
    return static_cast<int>(count);
}

void addTaken(Flow& flow, const Matter& matter, const TimberPlan& plan) {
    if (plan.layout.planks.empty()) {
        return;
    }
    const std::vector<Column> columns{{say("Plank"), 9},
                                      {say("Size"), 70},
                                      {say("Strips"), 128, Align::Right},
                                      {say("Price"), 150, Align::Right},
                                      {say("Back on the rack"), 154}};
    const auto head = [&] { tableHead(flow, columns); };
    flow.need(26);
    flow.heading(say("Taken from the rack"));
    head();
    for (const PlankCuts& cuts : plan.layout.planks) {
        const Plank& plank = plan.rack.planks[static_cast<std::size_t>(cuts.plank)];
        std::string kept;
        for (const Offcut& offcut : cuts.offcuts) {
            kept += (kept.empty() ? "" : ", ") +
                    unbroken(matter.bare(offcut.width) + " × " + matter.bare(offcut.length));
        }
        const auto lines =
            wrapped(kept.empty() ? "–" : kept, type::small, false, flow.width() - 154);
        const double pitch = type::small * type::leading;
        const double height = std::max(rowHeight, 2.2 + static_cast<double>(lines.size()) * pitch);
        if (flow.need(height)) {
            head();
        }
        swatchOf(flow, matter, plank.wood);
        const double base = flow.y + 4.4;
        flow.name(flow.left() + 9, base, plankWords(plank, matter.project.woods), bodyText, 60);
        flow.name(flow.left() + 70, base, sizeWords(plank, matter.notation()), smallText, 52);
        flow.text(flow.left() + 128, base, std::to_string(stripsOn(cuts)), smallText, Align::Right);
        flow.text(flow.left() + 150, base, plank.price > 0 ? formatMoney(plank.price) : "–",
                  smallText, Align::Right);
        flow.lines(flow.left() + 154, flow.y + 1.4, flow.width() - 154, lines, smallText);
        flow.y += height;
        flow.rule(flow.left(), flow.right(), flow.y, Ink::Rule, 0.15);
    }
    flow.y += 4;
}

/// What the layout wastes, beside what is usually reckoned with.
void addWaste(Flow& flow, const Matter& matter, const TimberPlan& plan) {
    const Unit unit = matter.notation().unit;
    TimberUse use = useOf(plan.layout, plan.rack, plan.demand);
    const TimberUse bought = useOf(plan.shopping.layout, plan.shopping.planks, plan.toBuy);
    use.net += bought.net;
    use.planks += bought.planks;
    use.kept += bought.kept;
    if (use.planks == Volume()) {
        return;
    }
    flow.need(46);
    flow.heading(say("Waste"));
    flow.y +=
        flow.paragraph(
            flow.left(), flow.y, flow.width(),
            say("Of {1} that is cut, {2} goes into strips and {3} stays as offcuts: {4} of what is "
                "used up is waste, as these planks are laid out. For comparison, what is usually "
                "reckoned with where there is no layout: net ÷ (1 − waste), never net × (1 + "
                "waste).",
                unbroken(formatVolume(use.planks, unit)), unbroken(formatVolume(use.net, unit)),
                unbroken(formatVolume(use.kept, unit)), unbroken(percentWords(use.wastePercent()))),
            smallText) +
        2;
    const std::vector<Column> columns{{say("Reckoned as"), 0},
                                      {say("Waste"), 80, Align::Right},
                                      {say("Net"), 118, Align::Right},
                                      // Translators: the timber that one should have.
                                      {say("To have"), 160, Align::Right}};
    tableHead(flow, columns);
    const auto row = [&](const std::string& name, const std::string& waste, Volume net, Volume have,
                         bool bold) {
        const Tone tone{type::small, bold, Ink::Text};
        const double base = flow.y + 4.2;
        flow.text(flow.left(), base, name, tone);
        flow.text(flow.left() + 80, base, waste, tone, Align::Right);
        flow.text(flow.left() + 118, base, formatVolume(net, unit), tone, Align::Right);
        flow.text(flow.left() + 160, base, formatVolume(have, unit), tone, Align::Right);
        flow.y += 5.6;
    };
    row(say("This layout"), percentWords(use.wastePercent()), use.net, use.planks - use.kept, true);
    for (const UsualWaste& usual : usualWastes()) {
        row(say(usual.name), percentWords(usual.percent), use.net,
            withWaste(use.net, usual.percent), false);
    }
    flow.y += 3;
}

}  // namespace

void addTimberList(std::vector<Draft>& drafts, const Matter& matter, const TimberPlan& plan) {
    Flow flow(drafts, matter, "timber-list", say("Timber list"), Sizes::Rough, Flow::Safety::None);
    flow.y += flow.paragraph(flow.left(), flow.y, flow.width(), layoutWords(plan), bodyText) + 1;
    flow.y += flow.paragraph(flow.left(), flow.y, flow.width(),
                             shortageInBrief(plan, matter.project.woods, Shopping::Slip),
                             {type::body, false, Ink::Warning});
    flow.y += 3;
    addWanted(flow, matter, plan);
    addTaken(flow, matter, plan);
    addWaste(flow, matter, plan);
}

void addShoppingSlip(std::vector<Draft>& drafts, const Matter& matter, const TimberPlan& plan) {
    if (plan.shopping.lines.empty()) {
        return;
    }
    const ShoppingList& list = plan.shopping;
    const Unit unit = matter.notation().unit;
    Flow flow(drafts, matter, "shopping-slip", say("Shopping slip"), Sizes::Rough,
              Flow::Safety::None);
    flow.y += flow.paragraph(
                  flow.left(), flow.y, flow.width(),
                  say("Whole planks of sizes that the yard is likely to have. A plank of another "
                      "size does as well where it is at least as thick, as wide and as long as "
                      "stands under “at least”, and free of knots and cracks there."),
                  smallText) +
              3;
    const std::vector<Column> columns{{say("Wood"), 9},
                                      {say("Planks"), 68, Align::Right},
                                      {say("Thickness × width × length"), 72},
                                      {say("Charged"), 152, Align::Right},
                                      {say("Price"), 176, Align::Right}};
    const auto head = [&] { tableHead(flow, columns); };
    head();
    for (const ShoppingLine& line : list.lines) {
        if (flow.need(14)) {
            head();
        }
        swatchOf(flow, matter, line.wood);
        const double base = flow.y + 5;
        flow.name(flow.left() + 9, base, woodName(line.wood, matter.project.woods), boldText, 46);
        flow.text(flow.left() + 68, base, std::to_string(line.count),
                  {type::setting, true, Ink::Text}, Align::Right);
        flow.name(flow.left() + 72, base,
                  sizeWords(line.thickness, line.width, line.length, matter.notation()), strongText,
                  56);
        flow.text(flow.left() + 152, base, formatVolume(line.charged, unit), smallText,
                  Align::Right);
        flow.text(flow.left() + 176, base,
                  line.price ? moneyWords(*line.price, matter.project.currency) : "–", smallText,
                  Align::Right, 23);
        flow.tick(flow.left() + 182, flow.y + 1.2, 4.2);
        const LeastPlank least = leastPlank(plan, line);
        flow.text(
            flow.left() + 72, base + 5.2,
            say("at least {1} wide, {2} long", matter.bare(least.width), matter.text(least.length)),
            quietText);
        flow.y += 13;
        flow.rule(flow.left(), flow.right(), flow.y - 0.6, Ink::Rule, 0.15);
    }
    flow.y += 2;
    flow.need(40);
    std::vector<BigNumber> numbers{
        {say("Net, of the strips"), formatVolume(list.net, unit), {}},
        {say("Bought, as measured"), formatVolume(list.volume, unit), {}},
        {say("Charged by the yard"), formatVolume(list.charged, unit), {}}};
    if (list.price) {
        numbers.push_back({say("Price"), moneyWords(*list.price, matter.project.currency), {}});
    }
    flow.y += bigNumbers(flow, flow.left(), flow.y, flow.width(), numbers) + 3;
    flow.y += flow.paragraph(
        flow.left(), flow.y, flow.width(),
        say("The yard’s rule: {1}", tallyWords(matter.project.timber.yard.tally)) + " " +
            say("Waste of these planks: {1} of the bought measure, from the layout.",
                unbroken(percentWords(wastePercent(list.net, list.volume)))) +
            " " + shoppingVerdict(list),
        smallText);
    const int impossible = [&] {
        int count = 0;
        for (const int strips : list.impossible) {
            count += strips;
        }
        return count;
    }();
    if (impossible > 0) {
        flow.y += 2;
        flow.y += flow.paragraph(flow.left(), flow.y, flow.width(),
                                 sayCount(impossible,
                                          "No plank of the yard, as it is set, gives {1} strip of "
                                          "the list: ask for wider, thicker or longer stock.",
                                          "No plank of the yard, as it is set, gives {1} strips of "
                                          "the list: ask for wider, thicker or longer stock."),
                                 {type::body, true, Ink::Warning});
    }
}

}  // namespace kerfwright
