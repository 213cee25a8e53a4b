#include "core/glueup/plan.h"

#include "core/glueup/allowances.h"
#include "core/glueup/bordersteps.h"
#include "core/glueup/constructions.h"
#include "core/glueup/deep.h"
#include "core/glueup/rows.h"
#include "core/words/say.h"

#include <algorithm>
#include <optional>

namespace kerfwright {
namespace {

/// A slice that the field asks a panel for.
struct Order {
    int band = 0;
    Length rowHeight;
    int marginSides = 0;
};

class Planner {
public:
    Planner(const Board& board, const Shop& shop, const Notation& notation, rows::Draft draft)
        : board_(board)
        , shop_(shop)
        , notation_(notation)
        , endGrain_(board.build == Build::EndGrain)
        , draft_(std::move(draft)) {}

    Result<Plan> operator()() {
        plan_.byColumns = draft_.byColumns;
        plan_.grainDown = !draft_.byColumns;
        plan_.extraJoints = std::move(draft_.extraJoints);
        plan_.omittedJoints = std::move(draft_.omittedJoints);
        plan_.margin = shop_.trimMargin;
        bandUses_.resize(draft_.bands.size());

        int kind = 0;
        for (const rows::Sheet& sheet : draft_.sheets) {
            const Result<std::vector<std::vector<Order>>> loads = panelLoads(sheet);
            if (!loads) {
                return loads.fault();
            }
            for (const std::vector<Order>& load : *loads) {
                addPanel(sheet, load, kind);
            }
            plan_.panels += sheet.isGlued() ? 1 : 0;
            ++kind;
        }
        addField();
        plan_.glueUps = plan_.panels + (plan_.field().isGlued() ? 1 : 0);
        return std::move(plan_);
    }

private:
    Figure lengthOf(const Order& order) const {
        return sliceLength(board_, shop_, order.rowHeight, order.marginSides);
    }

    /// A field of one slice gets no spare one: that would be a second board.
    int spares() const { return draft_.bands.size() > 1 ? shop_.spareSlices : 0; }

    Figure lengthFor(const std::vector<Order>& load) const {
        std::vector<Length> slices;
        slices.reserve(load.size());
        for (const Order& order : load) {
            slices.push_back(lengthOf(order).value);
        }
        return stripLength(shop_, slices, spares());
    }

    bool fits(const std::vector<Order>& load) const {
        return lengthFor(load).value + shop_.endAllowance <= shop_.longestStrip;
    }

    /// The slices of a sheet, margin rows first, dealt out to as many panels as the longest strip
    /// makes necessary.
    Result<std::vector<std::vector<Order>>> panelLoads(const rows::Sheet& sheet) const {
        std::vector<Order> orders;
        for (const int band : sheet.bands) {
            const rows::Band& row = draft_.bands[static_cast<std::size_t>(band)];
            orders.push_back({band, row.height, row.marginSides});
        }
        std::stable_sort(orders.begin(), orders.end(), [](const Order& a, const Order& b) {
            return a.marginSides > b.marginSides;
        });
        std::vector<std::vector<Order>> loads;
        for (const Order& order : orders) {
            if (!loads.empty()) {
                loads.back().push_back(order);
                if (fits(loads.back())) {
                    continue;
                }
                loads.back().pop_back();
            }
            loads.push_back({order});
            if (!fits(loads.back())) {
                return Fault{
                    say("Longest strip"),
                    say("too short for a single slice, which needs a strip of {1}",
                        format(lengthFor(loads.back()).value + shop_.endAllowance, notation_)),
                    format(shop_.longestStrip, notation_)};
            }
        }
        return evenedOut(loads);
    }

    /// The same number of panels with about as many slices each, where those fit: a last panel with
    /// one slice would be short to hold.
    std::vector<std::vector<Order>> evenedOut(const std::vector<std::vector<Order>>& loads) const {
        std::vector<Order> all;
        for (const std::vector<Order>& load : loads) {
            all.insert(all.end(), load.begin(), load.end());
        }
        std::vector<std::vector<Order>> even;
        std::size_t next = 0;
        for (std::size_t left = loads.size(); left > 0; --left) {
            const std::size_t count = (all.size() - next + left - 1) / left;
            const auto begin = all.begin() + static_cast<std::ptrdiff_t>(next);
            even.emplace_back(begin, begin + static_cast<std::ptrdiff_t>(count));
            next += count;
        }
        const bool allFit =
            std::all_of(even.begin(), even.end(), [this](const auto& load) { return fits(load); });
        return allFit ? even : loads;
    }

    void addPanel(const rows::Sheet& sheet, const std::vector<Order>& load, int kind) {
        Part panel;
        panel.role = Role::Panel;
        panel.kind = kind;
        panel.label = rows::panelLabel(panelCount_++);
        int marginSides = 0;
        for (const Order& order : load) {
            marginSides = std::max(marginSides, order.marginSides);
        }
        panel.thickness =
            thicknessAsGlued(board_, shop_, load.front().rowHeight, marginSides, sheet.isGlued());
        panel.length = lengthFor(load);
        Length across;
        for (const rows::Span& strip : sheet.strips) {
            across += strip.width;
        }
        panel.width.add(TermKind::FieldSide, across).add(TermKind::TrimMargin, shop_.trimMargin, 2);

        for (std::size_t i = 0; i < sheet.strips.size(); ++i) {
            const bool first = i == 0;
            const bool last = i + 1 == sheet.strips.size();
            Part strip;
            strip.role = Role::Strip;
            // A panel of one strip is that strip, so both go by one name.
            strip.label = sheet.isGlued() ? panel.label + std::to_string(i + 1) : panel.label;
            strip.kind = kind;
            strip.wood = sheet.strips[i].wood;
            strip.width.add(TermKind::PieceWidth, sheet.strips[i].width)
                .add(TermKind::TrimMargin, shop_.trimMargin, int{first} + int{last});
            strip.thickness = panel.thickness;
            strip.length = panel.length;
            strip.roughWidth = rough(strip.width, shop_);
            strip.roughThickness = rough(strip.thickness, shop_);
            strip.roughLength = roughLength(strip.length, shop_);
            panel.uses.push_back({static_cast<PartIndex>(plan_.parts.size()), -1, {}});
            plan_.parts.push_back(std::move(strip));
            ++plan_.strips;
        }
        plan_.assemblies += sheet.isGlued() ? 1 : 0;
        addStages(panel, load);
        plan_.parts.push_back(std::move(panel));
    }

    /// Which slices are cut at which thickness of the panel and which stop. Where the grain stands
    /// up, margin rows come off before the panel goes down to the height of the others. Where it
    /// lies in the face, short slices come first: the panel stays long, and the last one is easier
    /// to hold.
    void addStages(Part& panel, std::vector<Order> load) {
        const PartIndex self = static_cast<PartIndex>(plan_.parts.size());
        const auto setting = [&](const Order& order) {
            return endGrain_ ? std::pair(Length() - shop_.trimMargin * order.marginSides, Length())
                             : std::pair(Length(), lengthOf(order).value);
        };
        std::stable_sort(load.begin(), load.end(),
                         [&](const Order& a, const Order& b) { return setting(a) < setting(b); });
        int slice = 0;
        for (const Order& order : load) {
            const Figure thickness =
                thicknessAsGlued(board_, shop_, order.rowHeight, order.marginSides, false);
            if (panel.stages.empty() || panel.stages.back().thickness != thickness) {
                panel.stages.push_back({thickness, {}});
            }
            std::vector<SliceRun>& runs = panel.stages.back().runs;
            const Figure length = lengthOf(order);
            if (runs.empty() || runs.back().length != length) {
                runs.push_back({length, 0, 0, order.marginSides});
            }
            ++runs.back().count;
            bandUses_[static_cast<std::size_t>(order.band)] = {self, slice++, {}};
        }
        panel.stages.back().runs.back().spare = spares();
    }

    void addField() {
        Part field;
        field.role = Role::Field;
        field.label = noted("Field");
        field.along = draft_.byColumns ? GlueAlong::Width : GlueAlong::Down;
        field.width.add(TermKind::FieldSide, board_.field.width())
            .add(TermKind::TrimMargin, shop_.trimMargin, 2);
        field.length.add(TermKind::FieldSide, board_.field.height())
            .add(TermKind::TrimMargin, shop_.trimMargin, 2);
        field.thickness.add(TermKind::BoardThickness, board_.thickness)
            .add(TermKind::FieldFlattening,
                 flattenedAfterwards(board_, shop_, bandUses_.size() > 1));
        for (std::size_t i = 0; i < bandUses_.size(); ++i) {
            Use use = bandUses_[i];
            use.lay.stoodUp = endGrain_;
            use.lay.flipped = draft_.bands[i].flipped;
            use.lay.turned = draft_.byColumns;
            use.finished = draft_.bands[i].height;
            field.uses.push_back(use);
        }
        plan_.assemblies += field.isGlued() ? 1 : 0;
        plan_.parts.push_back(std::move(field));
    }

    const Board& board_;
    const Shop& shop_;
    const Notation& notation_;
    bool endGrain_;
    rows::Draft draft_;
    Plan plan_;
    int panelCount_ = 0;
    std::vector<Use> bandUses_;  // which slice makes which row
};

/// What a way of gluing costs, most important first.
struct Cost {
    int glueUps;
    int endJoints;  // lines where end grain meets end grain
    int extraJoints;
    int strips;
    friend auto operator<=>(const Cost&, const Cost&) = default;
};

Cost costOf(const rows::Draft& draft, Build build) {
    const int lines = static_cast<int>(draft.bands.size()) - 1;
    return {draft.glueUps(), build == Build::LongGrain ? lines : 0,
            static_cast<int>(draft.extraJoints.size()), draft.strips()};
}

/// What decides between ways that need as many glue-ups.
std::string tieBreak(const Cost& rows, const Cost& columns) {
    if (rows.endJoints != columns.endJoints) {
        return sayCount(rows.endJoints,
                        "end grain meets end grain along {1} line with rows, {2} with columns.",
                        "end grain meets end grain along {1} lines with rows, {2} with columns.",
                        columns.endJoints);
    }
    if (rows.extraJoints != columns.extraJoints) {
        return sayCount(
            rows.extraJoints, "rows divide pieces with {1} extra joint, columns with {2}.",
            "rows divide pieces with {1} extra joints, columns with {2}.", columns.extraJoints);
    }
    if (rows.strips != columns.strips) {
        return sayCount(rows.strips, "rows take {1} strip, columns {2}.",
                        "rows take {1} strips, columns {2}.", columns.strips);
    }
    return say("nothing else sets them apart, so rows are glued.");
}

std::string reason(const Cost& rows, const Cost& columns) {
    if (rows.glueUps != columns.glueUps) {
        return sayCount(rows.glueUps, "Rows need {1} glue-up, columns {2}.",
                        "Rows need {1} glue-ups, columns {2}.", columns.glueUps);
    }
    return sayCount(rows.glueUps, "Rows and columns both need {1} glue-up; {2}",
                    "Rows and columns both need {1} glue-ups; {2}", tieBreak(rows, columns));
}

struct Chosen {
    rows::Draft draft;
    std::string why;
};

Result<Chosen> choose(const Board& board, const std::vector<Wood>& woods, const Shop& shop,
                      const Choices& choices, const Notation& notation) {
    const auto only = [&](bool byColumns, const std::string& why) -> Result<Chosen> {
        Result<rows::Draft> draft =
            rows::draft(board, woods, shop, choices.mergeLike, byColumns, notation);
        if (!draft) {
            return draft.fault();
        }
        return Chosen{std::move(draft).value(), why};
    };
    if (board.build == Build::LongGrain && board.grain == GrainDirection::Down) {
        return only(false, say("The grain runs down the board, so the plan goes by rows."));
    }
    if (board.build == Build::LongGrain && board.grain == GrainDirection::Across) {
        return only(true, say("The grain runs across the board, so the plan goes by columns."));
    }
    if (choices.rows == RowChoice::Rows) {
        return only(false, say("Rows were chosen."));
    }
    if (choices.rows == RowChoice::Columns) {
        return only(true, say("Columns were chosen."));
    }
    Result<Chosen> byRows = only(false, say("Columns cannot be made from this timber."));
    Result<Chosen> byColumns = only(true, say("Rows cannot be made from this timber."));
    if (!byRows || !byColumns) {
        return byColumns.ok() ? std::move(byColumns) : std::move(byRows);
    }
    const Cost rowCost = costOf(byRows->draft, board.build);
    const Cost columnCost = costOf(byColumns->draft, board.build);
    Chosen better = columnCost < rowCost ? std::move(byColumns).value() : std::move(byRows).value();
    better.why = reason(rowCost, columnCost);
    return better;
}

/// A border is cut from timber like any strip.
std::optional<Fault> timberFault(const BorderFit& fit, const Board& board,
                                 const std::vector<Wood>& woods, const Shop& shop, bool grainDown,
                                 const Notation& notation) {
    const Wood& wood = woods[static_cast<std::size_t>(board.border.wood)];
    const Length rough[] = {board.thickness + shop.milling, fit.railStock.value + shop.milling};
    const bool flat = rough[0] <= wood.timber.thickness && rough[1] <= wood.timber.width;
    const bool onEdge = rough[1] <= wood.timber.thickness && rough[0] <= wood.timber.width;
    if (!flat && !onEdge) {
        return Fault{say("Border width"),
                     say("a rail {1} × {2} rough must come from timber of {3}, which is {4} × {5} "
                         "at most",
                         format(rough[0], notation), format(rough[1], notation), wood.name,
                         format(wood.timber.thickness, notation),
                         format(wood.timber.width, notation)),
                     format(board.border.width, notation)};
    }
    const Length rail =
        railLength(shop, longestRail(fit, board, grainDown)).value + shop.endAllowance;
    if (rail > shop.longestStrip) {
        return Fault{
            say("Longest strip"),
            say("too short for the border, which needs rails of {1}", format(rail, notation)),
            format(shop.longestStrip, notation)};
    }
    return std::nullopt;
}

}  // namespace

std::vector<bool> usesFrom(const Plan& plan, const std::vector<std::string>& panels) {
    std::vector<bool> all(plan.parts.size());
    for (std::size_t i = 0; i < all.size(); ++i) {
        const Part& part = plan.parts[i];
        all[i] = std::find(panels.begin(), panels.end(), part.label) != panels.end() ||
                 std::any_of(part.uses.begin(), part.uses.end(), [&](const Use& use) {
                     return all[static_cast<std::size_t>(use.part)];
                 });
    }
    std::vector<bool> uses;
    for (const Use& use : plan.field().uses) {
        uses.push_back(all[static_cast<std::size_t>(use.part)]);
    }
    return uses;
}

std::vector<int> linesOf(const Plan& plan, const Field& field, const std::vector<bool>& uses) {
    const std::vector<Length> lines = rows::edges(plan.byColumns ? field.columns : field.rows);
    std::vector<int> found;
    Length begin;
    for (std::size_t i = 0; i < uses.size(); ++i) {
        const Length end = begin + plan.field().uses[i].finished;
        for (std::size_t line = 0; uses[i] && line + 1 < lines.size(); ++line) {
            const int number = static_cast<int>(line);
            if (lines[line] < end && begin < lines[line + 1] &&
                (found.empty() || found.back() != number)) {
                found.push_back(number);
            }
        }
        begin = end;
    }
    return found;
}

int useAt(const Plan& plan, Length at) {
    Length end;
    for (std::size_t i = 0; i < plan.field().uses.size(); ++i) {
        end += plan.field().uses[i].finished;
        if (at < end) {
            return static_cast<int>(i);
        }
    }
    return -1;
}

Result<Plan> planField(const Board& board, const std::vector<Wood>& woods, const Shop& shop,
                       const Choices& choices, const Notation& notation) {
    if (!choices.construction.empty()) {
        ProposalOptions options;
        options.mergeLike = choices.mergeLike;
        options.mostParts = choices.mostParts;
        const Proposals all = proposals(board, woods, shop, options);
        if (const Proposal* own = withKey(all, choices.construction)) {
            Result<Plan> made =
                planOf(own->construction, own->laying, board, woods, shop, notation);
            if (!made) {
                return made;
            }
            Plan asChosen = std::move(made).value();
            asChosen.construction = own->key;
            asChosen.decidedBy = say("{1}, as chosen.", own->name);
            return asChosen;
        }
    }
    Result<Chosen> chosen = choose(board, woods, shop, choices, notation);
    if (!chosen) {
        return chosen.fault();
    }
    Chosen taken = std::move(chosen).value();
    Result<Plan> made = Planner(board, shop, notation, std::move(taken.draft))();
    if (!made) {
        return made;
    }
    Plan plan = std::move(made).value();
    plan.decidedBy = std::move(taken.why);
    if (!choices.construction.empty()) {
        plan.decidedBy =
            say("The way that was chosen does not make this picture.") + " " + plan.decidedBy;
    }
    return plan;
}

Result<Plan> withBorder(Plan plan, const Board& board, const std::vector<Wood>& woods,
                        const Shop& shop, const FieldSeason& season, const Notation& notation) {
    const bool grainDown = plan.grainDown;
    Result<BorderFit> fit = fitBorder(board, shop, grainDown, season, notation);
    if (!fit) {
        return fit.fault();
    }
    plan.border = std::move(fit).value();
    if (board.border.isThere()) {
        if (const auto fault = timberFault(plan.border, board, woods, shop, grainDown, notation)) {
            return *fault;
        }
    }
    return plan;
}

Result<Plan> plan(const Board& board, const std::vector<Wood>& woods, const Shop& shop,
                  const Choices& choices, const Notation& notation, const FieldSeason& season) {
    Result<Plan> field = planField(board, woods, shop, choices, notation);
    if (!field) {
        return field;
    }
    return withBorder(std::move(field).value(), board, woods, shop, season, notation);
}

}  // namespace kerfwright
