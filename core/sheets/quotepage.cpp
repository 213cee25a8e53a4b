#include "core/sheets/quotepage.h"

#include "core/drawing/dimension.h"
#include "core/drawing/geometry.h"
#include "core/sheets/boardview.h"
#include "core/sheets/flow.h"
#include "core/sheets/settle.h"
#include "core/words/say.h"

#include <algorithm>
#include <functional>

namespace kerfwright {
namespace {

constexpr double amountWidth = 34;  // at the right

double linesHeight(std::size_t count, const Tone& tone) {
    return static_cast<double>(count) * tone.size * type::leading;
}

/// Sets the pages twice where a rounded length needs room for its line in the foot.
std::vector<Page> stamped(const Project& project, const Job& job, Paper paper,
                          const std::function<void(std::vector<Draft>&, const Matter&)>& set) {
    Matter matter{project, job, paper};
    std::vector<Draft> drafts;
    settle(drafts, matter, set);
    if (printRounded(drafts)) {
        matter.roundingLine = true;
        drafts.clear();
        settle(drafts, matter, set);
    }
    stamp(drafts, matter);
    std::vector<Page> pages;
    for (Draft& draft : drafts) {
        pages.push_back(std::move(draft.page));
    }
    return pages;
}

std::string boardsWords(std::int64_t count) {
    return sayCount(count, "{1} board", "{1} boards");
}

// --- the maker's reckoning

void tableHead(Flow& flow) {
    flow.box({flow.left(), flow.y, flow.width(), 6}, {.fill = Ink::Band});
    constexpr Tone tone{type::small, true, Ink::Quiet};
    flow.text(flow.left() + 2, flow.y + 4.2, say("What, how much, and its working"), tone);
    flow.text(flow.right() - 2, flow.y + 4.2, sayIn("of money", "Amount"), tone, Align::Right);
    flow.y += 7.5;
}

/// A line that is no sum, wrapped.
struct Item {
    std::vector<std::string> words;
    std::vector<std::string> working;

    double height() const {
        return linesHeight(words.size(), bodyText) + linesHeight(working.size(), smallText);
    }
};

Item itemOf(const QuoteLine& line, double width) {
    std::string below = amountOf(line);
    if (!line.working.empty()) {
        below += (below.empty() ? "" : ": ") + line.working;
    }
    return {wrapped(line.words, type::body, false, width),
            wrapped(below, type::small, false, width - 4)};
}

/// The table of the reckoning, of which the total never stands alone on a page.
class ReckoningTable {
public:
    ReckoningTable(Flow& flow, const Quote& quote, const std::string& currency)
        : flow_(flow)
        , quote_(quote)
        , currency_(currency) {}

    /// `after`: what must follow the total on its page, mm.
    void add(double after) {
        tableHead(flow_);
        const std::size_t count = quote_.lines.size();
        const std::size_t end = count - std::min<std::size_t>(count, keptWithTotal);
        double ending = after;
        for (std::size_t i = end; i < count; ++i) {
            ending += heightOf(quote_.lines[i]);
        }
        for (std::size_t i = 0; i < count; ++i) {
            const QuoteLine& line = quote_.lines[i];
            if (flow_.need(i == end ? ending : heightOf(line))) {
                tableHead(flow_);
            }
            if (line.isSum) {
                sumRow(line);
            } else {
                itemRow(line);
            }
        }
    }

private:
    static constexpr std::size_t keptWithTotal = 6;
    static constexpr double afterSum = 1.4;

    double sumRowHeight() const { return flow_.isClose() ? 6.2 : 7; }
    double afterItem() const { return flow_.isClose() ? 0.5 : 1.2; }

    double itemWidth() const { return flow_.width() - amountWidth - 6; }

    double heightOf(const QuoteLine& line) const {
        return line.isSum ? sumRowHeight() + afterSum
                          : itemOf(line, itemWidth()).height() + afterItem();
    }

    void itemRow(const QuoteLine& line) {
        const Item item = itemOf(line, itemWidth());
        flow_.text(flow_.right() - 2, flow_.y + 3.5, amountWords(line, currency_),
                   line.amount ? bodyText : Tone{type::body, true, Ink::Warning}, Align::Right,
                   amountWidth);
        double y = flow_.y;
        y += flow_.lines(flow_.left() + 2, y, itemWidth(), item.words, bodyText);
        flow_.lines(flow_.left() + 6, y, itemWidth() - 4, item.working, quietText);
        flow_.y += item.height() + afterItem();
    }

    void sumRow(const QuoteLine& line) {
        const bool last = line.key == "total";
        const Tone tone = last ? strongText : boldText;
        flow_.rule(flow_.right() - amountWidth, flow_.right(), flow_.y, Ink::Text, 0.25);
        const double base = flow_.y + sumRowHeight() - 2.2;
        flow_.text(flow_.left() + 2, base, line.words, tone);
        flow_.text(flow_.right() - 2, base, amountWords(line, currency_), tone, Align::Right,
                   amountWidth);
        flow_.y += sumRowHeight();
        flow_.rule(flow_.left(), flow_.right(), flow_.y, Ink::Rule);
        flow_.y += afterSum;
    }

    Flow& flow_;
    const Quote& quote_;
    const std::string& currency_;
};

void setReckoning(std::vector<Draft>& drafts, const Matter& matter, const Quote& quote) {
    const std::string& currency = matter.project.currency;
    Flow flow(drafts, matter, "reckoning", say("Reckoning"), Sizes::Finished, Flow::Safety::None);
    flow.heading(boardsWords(quote.boards) + ", " + matter.text(matter.job.totals.width) + " × " +
                     matter.text(matter.job.totals.height) + " × " +
                     matter.text(matter.job.totals.thickness),
                 say("for the shop, not for the customer"));
    if (!quote.isComplete()) {
        flow.notice(sayIn("heading", "Mind"), incompleteWords(quote));
        flow.y += 4;
    }
    const std::string each = eachWords(quote, currency);
    const std::string rule = reckoningRule(quote);
    ReckoningTable(flow, quote, currency)
        .add((each.empty() ? 0 : 7) + 2 + Flow::paragraphHeight(rule, quietText, flow.width()));
    if (!each.empty()) {
        flow.text(flow.right() - 2, flow.y + 4, each, boldText, Align::Right);
        flow.y += 7;
    }
    flow.y += 2;
    flow.running(flow.left(), flow.width(), rule, quietText, [] {});
}

// --- the quote to hand over

struct Fact {
    std::string name;
    std::string value;
};

std::string borderWords(const Border& border) {
    switch (border.design) {
    case BorderDesign::EndGrainBand:
        return say("end-grain band");
    case BorderDesign::FloatingFrame:
        return say("frame in which the field lies loose, free to move");
    case BorderDesign::FixedFrame:
        return say("mitred frame");
    case BorderDesign::BreadboardEnds:
        return say("breadboard ends");
    case BorderDesign::EdgeBand:
        return say("edge bands");
    }
    return {};
}

std::vector<Fact> boardFacts(const Matter& matter) {
    const Board& board = matter.project.board;
    const Totals& size = matter.job.totals;
    std::vector<Fact> all;
    all.push_back({say("Size"), matter.text(size.width) + " × " + matter.text(size.height)});
    all.push_back({say("Thickness"), matter.text(size.thickness)});
    all.push_back({sayIn("noun", "Build"),
                   board.build == Build::EndGrain ? say("end grain up") : say("long grain up")});
    all.push_back({say("Field"), std::to_string(board.field.columns.size()) + " × " +
                                     std::to_string(board.field.rows.size())});
    if (board.border.isThere()) {
        all.push_back(
            {say("Border"), borderWords(board.border) + ", " + matter.text(board.border.width)});
    }
    const auto coats = static_cast<int>(matter.project.rates.coats);
    all.push_back(
        {sayIn("oil or varnish", "Finish"),
         coats == 0 ? sayIn("finish", "none") : sayCount(coats, "{1} coat", "{1} coats")});
    if (matter.project.purpose.use != BoardUse::Unsaid) {
        all.push_back({say("Made for"), say(info(matter.project.purpose.use).name)});
    }
    return all;
}

/// Woods that are seen, in the order of the chips.
std::vector<int> woodsSeen(const Project& project) {
    const Border& border = project.board.border;
    std::vector<int> seen;
    const auto uses = woodUse(project.board.field, static_cast<int>(project.woods.size()));
    for (int wood = 0; wood < static_cast<int>(project.woods.size()); ++wood) {
        if (uses[static_cast<std::size_t>(wood)].pieces > 0 ||
            (border.isThere() && border.wood == wood) ||
            (border.hasInlay() && border.inlayWood == wood) ||
            (border.hasSplines() && border.splineWood == wood)) {
            seen.push_back(wood);
        }
    }
    return seen;
}

double picture(Flow& flow, const Matter& matter, double width, double tallest) {
    const Box extent{0, 0, matter.job.totals.width.toMm(), matter.job.totals.height.toMm()};
    const double scale = fitting(extent, width, tallest);
    const BoardViewOptions options{.lineWidth = 0.2 / scale, .surround = matter.job.surround};
    const Drawing drawn =
        drawBoard(matter.project.board, matter.project.woods, matter.job.plan.extraJoints, options);
    place(flow.drawing(), drawn, {flow.left(), flow.y}, scale);
    return extent.height * scale;
}

double factColumn(Flow& flow, double x, double top, double width, const std::vector<Fact>& facts) {
    double nameWidth = 22;
    for (const Fact& fact : facts) {
        nameWidth = std::max(nameWidth, textWidth(fact.name, type::small, false) + 2);
    }
    double y = top;
    for (const Fact& fact : facts) {
        flow.text(x, y + 3.5, fact.name, quietText);
        y += std::max(flow.paragraph(x + nameWidth, y, width - nameWidth, fact.value, bodyText),
                      4.9) +
             0.8;
    }
    return y - top;
}

void priceLine(Flow& flow, const std::string& words, const std::string& amount, const Tone& tone) {
    flow.text(flow.left() + 4, flow.y + tone.size, words, tone);
    flow.text(flow.right() - 4, flow.y + tone.size, amount, tone, Align::Right);
    flow.y += tone.size * type::leading + 2;
}

void prices(Flow& flow, const Matter& matter, const Quote& quote) {
    const std::string& currency = matter.project.currency;
    if (!quote.isComplete()) {
        const std::string head = say("Not a quote yet");
        flow.need(flow.noticeHeight(head, missingWords(quote)) + 2);
        flow.notice(head, missingWords(quote));
        flow.y += 4;
        return;
    }
    const bool taxed = matter.project.pricing.tax > 0;
    const std::string each = eachWords(quote, currency);
    constexpr Tone bigTone{type::big, true, Ink::Text};
    const double height = 16 + (taxed ? 14 : 0) + (each.empty() ? 0 : 7);
    flow.need(height + 2);
    const double top = flow.y;
    flow.box({flow.left(), top, flow.width(), height}, {.fill = Ink::Band});
    flow.y += 3;
    if (taxed) {
        priceLine(flow, boardsWords(quote.boards), moneyWords(quote.asked, currency), bodyText);
        priceLine(flow,
                  say("Tax, {1} %", amountText(matter.project.pricing.tax, PriceKind::Decimal)),
                  moneyWords(quote.tax, currency), bodyText);
    }
    priceLine(flow,
              taxed ? say("To pay")
                    : sayCount(quote.boards, "Price of {1} board", "Price of {1} boards"),
              moneyWords(quote.total, currency), bigTone);
    if (!each.empty()) {
        flow.text(flow.right() - 4, flow.y + 2, each, bodyText, Align::Right);
    }
    flow.y = top + height + 5;
}

/// At the cursor, which stays.
void namedLine(Flow& flow, const std::string& name, const std::string& words) {
    const double indent = std::max(22.0, textWidth(name, type::small, false) + 2);
    flow.text(flow.left(), flow.y + 4, name, quietText);
    flow.name(flow.left() + indent, flow.y + 4, words, boldText, flow.width() - indent);
}

void setQuote(std::vector<Draft>& drafts, const Matter& matter, const Quote& quote) {
    const Project& project = matter.project;
    Flow flow(drafts, matter, "quote", sayIn("noun", "Quote"), Sizes::Finished, Flow::Safety::None);
    if (!project.pricing.customer.empty()) {
        namedLine(flow, sayIn("a customer", "For"), project.pricing.customer);
        flow.y += 9;
    }
    for (const std::string& line :
         flow.wrappedName(project.titles.name.empty() ? say("A board") : project.titles.name,
                          strongText, flow.width())) {
        flow.heading(line);
    }
    flow.y += 1;
    constexpr double pictureWidth = 92;
    constexpr double gap = 8;
    const double top = flow.y;
    const double pictured = picture(flow, matter, pictureWidth, 92);
    const double x = flow.left() + pictureWidth + gap;
    const double width = flow.right() - x;
    double y = top + factColumn(flow, x, top, width, boardFacts(matter)) + 2;
    for (const int wood : woodsSeen(project)) {
        // Of very many woods the first are named; the picture shows them all.
        if (y > top + 118) {
            flow.text(x, y + 3.5, say("and more, as in the picture"), quietText);
            y += 5;
            break;
        }
        flow.swatch(x, y, 5.6, wood);
        flow.name(x + 9, y + 4.1, matter.wood(wood).name, bodyText, width - 9);
        y += 7;
    }
    flow.y = std::max(top + pictured, y) + 7;
    prices(flow, matter, quote);
    if (!project.pricing.validUntil.empty()) {
        flow.need(7);
        namedLine(flow, say("Valid until"), project.pricing.validUntil);
        flow.y += 8;
    }
    if (!project.titles.note.empty()) {
        flow.need(14);
        flow.heading(sayIn("heading", "Note"));
        flow.running(flow.left(), flow.width(), shortened(project.titles.note, smallText, 1e9),
                     smallText,
                     [&flow] { flow.heading(say("{1}, continued", sayIn("heading", "Note"))); });
        flow.y += 4;
    }
    // There is nothing to sign before there is a price.
    if (!quote.isComplete()) {
        return;
    }
    constexpr double signing = 24;
    flow.need(signing);
    flow.y = std::max(flow.y + 12, std::min(flow.y + 30, flow.bottom() - 8));
    const double half = (flow.width() - 10) / 2;
    const std::pair<double, std::string> places[] = {
        {flow.left(), project.titles.maker.empty() ? say("The maker") : project.titles.maker},
        {flow.left() + half + 10, say("Ordered, date and name")}};
    for (const auto& [at, words] : places) {
        flow.rule(at, at + half, flow.y, Ink::Text, 0.25);
        flow.name(at, flow.y + 4.2, words, quietText, half);
    }
}

}  // namespace

std::vector<Page> reckoningPages(const Project& project, const Job& job, const Quote& quote,
                                 Paper paper) {
    return stamped(project, job, paper, [&quote](std::vector<Draft>& drafts, const Matter& matter) {
        setReckoning(drafts, matter, quote);
    });
}

std::vector<Page> quotePages(const Project& project, const Job& job, const Quote& quote,
                             Paper paper) {
    return stamped(project, job, paper, [&quote](std::vector<Draft>& drafts, const Matter& matter) {
        setQuote(drafts, matter, quote);
    });
}

}  // namespace kerfwright
