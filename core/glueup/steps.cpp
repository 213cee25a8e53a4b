#include "core/glueup/steps.h"

#include "core/glueup/allowances.h"

#include <algorithm>

namespace kerfwright {
namespace {

std::string sliceLabel(const std::string& panel, int number) {
    return panel + "-" + std::to_string(number);
}

/// Writes the steps down in order and keeps the planner's own account of where the timber goes.
class Writer {
public:
    Writer(const Plan& plan, const Board& board, const Shop& shop)
        : plan_(plan)
        , board_(board)
        , shop_(shop)
        , endGrain_(board.build == Build::EndGrain) {}

    StepList operator()() {
        list_.extraJoints = plan_.extraJoints;
        list_.omittedJoints = plan_.omittedJoints;
        for (const Part& part : plan_.parts) {
            if (part.role == Role::Panel) {
                addPanel(part);
            } else if (part.role == Role::Field) {
                addField(part);
            }
        }
        return std::move(list_);
    }

private:
    const Part& part(PartIndex index) const { return plan_.parts[static_cast<std::size_t>(index)]; }
    Ledger& ledger() { return list_.ledger; }
    void add(Work work) { list_.steps.push_back({std::move(work)}); }

    void account(const MillLine& line) {
        const auto strips = static_cast<std::int64_t>(line.strips.size());
        const Area rough = area(line.roughThickness.value, line.roughWidth.value);
        const Area milled = area(line.thickness.value, line.width.value);
        ledger().timberIn += volume(rough, line.roughLength.value) * strips;
        ledger().planed +=
            Volume((rough.squareNm() - milled.squareNm()) * line.roughLength.value.nm()) * strips;
        ledger().trimmed += volume(milled, line.roughLength.value - line.length.value) * strips;
    }

    void addPanel(const Part& panel) {
        Mill mill;
        mill.panel = panel.label;
        for (const Use& use : panel.uses) {
            const Part& strip = part(use.part);
            const auto same =
                std::find_if(mill.lines.begin(), mill.lines.end(), [&](const MillLine& line) {
                    return line.wood == strip.wood && line.width == strip.width;
                });
            if (same != mill.lines.end()) {
                same->strips.push_back(strip.label);
                continue;
            }
            mill.lines.push_back({strip.wood,
                                  {strip.label},
                                  strip.roughThickness,
                                  strip.roughWidth,
                                  strip.roughLength,
                                  strip.thickness,
                                  strip.width,
                                  strip.length});
        }
        for (const MillLine& line : mill.lines) {
            account(line);
        }
        add(std::move(mill));

        if (panel.isGlued()) {
            Glue glue;
            glue.result = panel.label;
            glue.along = GlueAlong::Width;
            for (const Use& use : panel.uses) {
                glue.parts.push_back({part(use.part).label, use.lay});
            }
            glue.width = panel.width;
            glue.length = panel.length;
            glue.thickness = panel.thickness;
            glue.glueFace = area(panel.length.value, panel.thickness.value) *
                            static_cast<std::int64_t>(panel.uses.size() - 1);
            add(std::move(glue));
        }
        cutUp(panel);
    }

    void cutUp(const Part& panel) {
        Figure thickness = panel.thickness;
        Length left = panel.length.value;
        const Length width = panel.width.value;
        bool squared = false;
        int slice = 0;
        int spare = 0;
        for (const Stage& stage : panel.stages) {
            if (thickness.value != stage.thickness.value) {
                const Purpose purpose = squared || slice > 0 || !panel.isGlued()
                                            ? Purpose::RowHeight
                                            : Purpose::AfterGlueUp;
                add(Flatten{panel.label, Face::LongGrain, purpose, thickness, stage.thickness});
                ledger().planed += volume(width, left, thickness.value - stage.thickness.value);
                thickness = stage.thickness;
            }
            const Area section = area(width, thickness.value);
            if (!squared && shop_.squaringCut > Length()) {
                SquareEnd square;
                square.part = panel.label;
                square.waste.add(TermKind::SquaringCut, shop_.squaringCut);
                square.kerf.add(TermKind::Kerf, shop_.kerf);
                left -= shop_.squaringCut + shop_.kerf;
                square.left = left;
                ledger().trimmed += volume(section, shop_.squaringCut);
                ledger().kerf += volume(section, shop_.kerf);
                add(std::move(square));
            }
            squared = true;
            for (const SliceRun& run : stage.runs) {
                Crosscut cut;
                cut.part = panel.label;
                cut.stop = run.length;
                cut.kerf.add(TermKind::Kerf, shop_.kerf);
                cut.marginRows = run.marginSides == 1 && plan_.margin > Length();
                for (int i = 0; i < run.count; ++i) {
                    cut.slices.push_back(sliceLabel(panel.label, ++slice));
                }
                for (int i = 0; i < run.spare; ++i) {
                    cut.spares.push_back(panel.label + "-spare" +
                                         (run.spare == 1 ? "" : std::to_string(++spare)));
                }
                const int cuts = run.count + run.spare;
                left -= (run.length.value + shop_.kerf) * cuts;
                cut.left = left;
                ledger().kerf += volume(section, shop_.kerf) * cuts;
                ledger().spare += volume(section, run.length.value) * run.spare;
                add(std::move(cut));
            }
        }
        ledger().offcut += volume(area(width, thickness.value), left);
    }

    void addField(const Part& field) {
        std::vector<Laid> laid;
        for (const Use& use : field.uses) {
            laid.push_back({sliceLabel(part(use.part).label, use.slice + 1), use.lay});
        }
        if (field.isGlued()) {
            Glue glue;
            glue.result = field.label;
            glue.final = true;
            glue.along = plan_.byColumns ? GlueAlong::Width : GlueAlong::Down;
            const Length joint = plan_.byColumns ? field.length.value : field.width.value;
            glue.glueFace =
                area(joint, field.thickness.value) * static_cast<std::int64_t>(laid.size() - 1);
            glue.parts = std::move(laid);
            glue.width = field.width;
            glue.length = field.length;
            glue.thickness = field.thickness;
            add(std::move(glue));
        } else {
            add(Take{field.label, laid.front(), field.width, field.length, field.thickness});
        }

        const Figure finished{{TermKind::BoardThickness, board_.thickness}};
        if (field.thickness.value != finished.value) {
            add(Flatten{field.label, endGrain_ ? Face::EndGrain : Face::LongGrain,
                        Purpose::Finished, field.thickness, finished});
            ledger().planed += volume(field.width.value, field.length.value,
                                      field.thickness.value - finished.value);
        }
        const Length width = board_.field.width();
        const Length height = board_.field.height();
        if (plan_.margin > Length()) {
            TrimField trim;
            trim.part = field.label;
            trim.margin.add(TermKind::TrimMargin, plan_.margin);
            trim.width.add(TermKind::FieldSide, width);
            trim.height.add(TermKind::FieldSide, height);
            ledger().trimmed += volume(field.width.value, field.length.value, board_.thickness) -
                                volume(width, height, board_.thickness);
            add(std::move(trim));
        }
        ledger().board = volume(width, height, board_.thickness);
        if (board_.border.width > Length()) {
            addBorder(field.label);
        }
    }

    /// Rails are mitred from blanks that have a squaring cut, a kerf for each mitre and a tail.
    void addBorder(const std::string& fieldLabel) {
        const Length sides[] = {board_.field.width(), board_.field.height()};
        const std::string labels[] = {"Top rail", "Right rail", "Bottom rail", "Left rail"};
        Mill mill;
        FitBorder border;
        border.part = fieldLabel;
        border.width.add(TermKind::BorderWidth, board_.border.width);
        border.boardWidth.add(TermKind::FieldSide, sides[0])
            .add(TermKind::BorderWidth, board_.border.width, 2);
        border.boardHeight.add(TermKind::FieldSide, sides[1])
            .add(TermKind::BorderWidth, board_.border.width, 2);
        for (std::size_t side = 0; side < 4; ++side) {
            Rail rail;
            rail.label = labels[side];
            rail.longPoint = side % 2 == 0 ? border.boardWidth : border.boardHeight;
            border.rails.push_back(std::move(rail));
        }
        for (std::size_t pair = 0; pair < 2; ++pair) {
            const Rail& rail = border.rails[pair];
            MillLine line;
            line.wood = board_.border.wood;
            line.strips = {labels[pair], labels[pair + 2]};
            line.thickness.add(TermKind::BoardThickness, board_.thickness);
            line.width = border.width;
            line.length = railLength(shop_, rail.longPoint);
            line.roughThickness = rough(line.thickness, shop_);
            line.roughWidth = rough(line.width, shop_);
            line.roughLength = roughLength(line.length, shop_);
            account(line);

            const Area section = area(line.thickness.value, line.width.value);
            // A rail seen from above is a trapezium: its two sides differ by two border widths.
            const Volume kept = volume(section, rail.longPoint.value - line.width.value);
            ledger().trimmed += (volume(section, line.length.value) - kept) * 2;
            ledger().board += kept * 2;
            mill.lines.push_back(std::move(line));
        }
        add(std::move(mill));
        add(std::move(border));
    }

    const Plan& plan_;
    const Board& board_;
    const Shop& shop_;
    bool endGrain_;
    StepList list_;
};

struct Titles {
    std::string operator()(const Mill& mill) const {
        if (mill.panel.empty()) {
            return "Mill the border rails";
        }
        const bool single = mill.lines.size() == 1 && mill.lines.front().strips.size() == 1;
        return single ? "Mill strip " + mill.panel
                      : "Mill and rip the strips of panel " + mill.panel;
    }
    std::string operator()(const Glue& glue) const {
        return glue.final ? "Glue the field" : "Glue panel " + glue.result;
    }
    std::string operator()(const Take&) const { return "Take the slice as the field"; }
    std::string operator()(const Flatten& flatten) const {
        switch (flatten.purpose) {
        case Purpose::AfterGlueUp:
            return "Flatten panel " + flatten.part + ", both faces true";
        case Purpose::RowHeight:
            return "Bring " + flatten.part + " down to its final thickness";
        case Purpose::Finished:
            break;
        }
        return "Flatten the field";
    }
    std::string operator()(const SquareEnd& square) const {
        return "Square one end of " + square.part;
    }
    std::string operator()(const Crosscut& cut) const {
        const std::size_t slices = cut.slices.size();
        std::string text = "Cut ";
        if (slices == 1 && cut.spares.empty() && !cut.marginRows) {
            return "Cut the slice off " + cut.part;
        }
        if (cut.marginRows) {
            text += slices == 1 ? "the margin slice" : std::to_string(slices) + " margin slices";
        } else {
            text += std::to_string(slices) + (slices == 1 ? " slice" : " slices");
        }
        if (!cut.spares.empty()) {
            text += " and " + std::to_string(cut.spares.size()) + " spare";
        }
        return text + " off " + cut.part;
    }
    std::string operator()(const TrimField&) const { return "Trim the field on four sides"; }
    std::string operator()(const FitBorder&) const { return "Mitre the border rails"; }
};

struct Workpieces {
    const std::string& operator()(const Mill& mill) const { return mill.panel; }
    const std::string& operator()(const Glue& glue) const { return glue.result; }
    const std::string& operator()(const Take& take) const { return take.result; }
    template <class Other>
    const std::string& operator()(const Other& work) const {
        return work.part;
    }
};

}  // namespace

StepList steps(const Plan& plan, const Board& board, const Shop& shop) {
    return Writer(plan, board, shop)();
}

std::string title(const Step& step) {
    return std::visit(Titles{}, step.work);
}

const std::string& workpiece(const Step& step) {
    return std::visit(Workpieces{}, step.work);
}

}  // namespace kerfwright
