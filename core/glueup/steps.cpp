#include "core/glueup/steps.h"

#include "core/glueup/allowances.h"
#include "core/glueup/bordersteps.h"
#include "core/words/say.h"

#include <algorithm>
#include <array>
#include <string_view>

namespace kerfwright {
namespace {

constexpr std::string_view spareMark = "-spare";

/// What comes off a part, by where it comes off.
struct SidesWords {
    const char* each;
    const char* first;
    const char* last;
};
/// In the order of `SizedIn`.
constexpr std::array sidesWords{
    SidesWords{noted("{1} off each side"), noted("{1} off the left side"),
               noted("{1} off the right side")},
    SidesWords{noted("{1} off each end"), noted("{1} off the squared end"),
               noted("{1} off the other end")},
    SidesWords{noted("{1} off each face"), noted("{1} off the lower face"),
               noted("{1} off the upper face")}};

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

    void addPanel(const Part& panel) {
        Mill mill;
        mill.panel = panel.label;
        for (const Use& use : panel.uses) {
            const Part& strip = part(use.part);
            if (strip.role != Role::Strip) {
                continue;
            }
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
        if (!mill.lines.empty()) {
            for (const MillLine& line : mill.lines) {
                account(ledger(), line);
            }
            add(std::move(mill));
        }

        if (panel.isGlued()) {
            Glue glue;
            glue.result = panel.label;
            glue.along = panel.along;
            for (const Use& use : panel.uses) {
                glue.parts.push_back({labelOf(use), use.lay});
            }
            glue.width = panel.width;
            glue.length = panel.length;
            glue.thickness = panel.thickness;
            glue.glueFace =
                area(panel.along == GlueAlong::Width ? panel.length.value : panel.width.value,
                     panel.thickness.value) *
                static_cast<std::int64_t>(panel.uses.size() - 1);
            add(std::move(glue));
        }
        cutUp(panel);
    }

    /// What `count` parts of that size lose: planed off where it is thickness, else sawn off.
    void weigh(const Sizing& sizing, Length width, Length length, Length thickness, int count) {
        const Length off = sizing.offFirst + sizing.offLast;
        Volume& bucket = sizing.in == SizedIn::Thickness ? ledger().planed : ledger().trimmed;
        bucket += volume(sizing.in == SizedIn::Width ? off : width,
                         sizing.in == SizedIn::Length ? off : length,
                         sizing.in == SizedIn::Thickness ? off : thickness) *
                  count;
    }

    std::string labelOf(const Use& use) const {
        const std::string& label = part(use.part).label;
        return use.slice < 0 ? label : sliceLabel(label, use.slice + 1);
    }

    void cutUp(const Part& panel) {
        Figure thickness = panel.thickness;
        Length left = panel.length.value;
        Length width = panel.width.value;
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
            for (const Sizing& sizing : stage.sized) {
                add(BringToSize{{panel.label}, sizing});
                weigh(sizing, width, left, thickness.value, 1);
                (sizing.in == SizedIn::Width ? width : left) =
                    sizing.in == SizedIn::Width    ? sizing.to.value
                    : sizing.in == SizedIn::Length ? sizing.to.value
                                                   : left;
                if (sizing.in == SizedIn::Thickness) {
                    thickness = sizing.to;
                }
            }
            if (panel.keptWhole) {
                return;
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
                cut.forPanels = run.forPanels;
                for (int i = 0; i < run.count; ++i) {
                    cut.slices.push_back(sliceLabel(panel.label, ++slice));
                }
                for (int i = 0; i < run.spare; ++i) {
                    cut.spares.push_back(panel.label + std::string(spareMark) +
                                         (run.spare == 1 ? "" : std::to_string(++spare)));
                }
                const int cuts = run.count + run.spare;
                left -= (run.length.value + shop_.kerf) * cuts;
                cut.left = left;
                ledger().kerf += volume(section, shop_.kerf) * cuts;
                ledger().spare += volume(section, run.length.value) * run.spare;
                const std::vector<std::string> slices = cut.slices;
                add(std::move(cut));
                Length wide = width;
                Length thick = thickness.value;
                for (const Sizing& sizing : run.sized) {
                    add(BringToSize{slices, sizing});
                    weigh(sizing, wide, run.length.value, thick, run.count);
                    (sizing.in == SizedIn::Width ? wide : thick) = sizing.to.value;
                }
            }
        }
        ledger().offcut += volume(area(width, thickness.value), left);
    }

    void addField(const Part& field) {
        std::vector<Laid> laid;
        for (const Use& use : field.uses) {
            laid.push_back({labelOf(use), use.lay});
        }
        if (field.isGlued()) {
            Glue glue;
            glue.result = field.label;
            glue.final = true;
            glue.along = field.along;
            const Length joint =
                field.along == GlueAlong::Width ? field.length.value : field.width.value;
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
        if (board_.border.isThere()) {
            addBorderSteps(list_, plan_.border, board_, shop_, plan_.grainDown, field.label);
        }
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
            const bool railsOnly =
                std::all_of(mill.lines.begin(), mill.lines.end(), [](const MillLine& line) {
                    return line.strips.size() == 2 &&
                           line.strips.front().find(" rail") != std::string::npos;
                });
            return railsOnly ? say("Mill the border rails") : say("Mill the parts of the border");
        }
        const bool single = mill.lines.size() == 1 && mill.lines.front().strips.size() == 1;
        return single ? say("Mill strip {1}", mill.panel)
                      : say("Mill and rip the strips of panel {1}", mill.panel);
    }
    std::string operator()(const Glue& glue) const {
        return glue.final ? say("Glue the field") : say("Glue panel {1}", glue.result);
    }
    std::string operator()(const Take&) const { return say("Take the slice as the field"); }
    std::string operator()(const Flatten& flatten) const {
        switch (flatten.purpose) {
        case Purpose::AfterGlueUp:
            return say("Flatten panel {1}, both faces true", flatten.part);
        case Purpose::RowHeight:
            return say("Bring {1} down to its final thickness", flatten.part);
        case Purpose::Finished:
            break;
        }
        return say("Flatten the field");
    }
    std::string operator()(const SquareEnd& square) const {
        return say("Square one end of {1}", square.part);
    }
    std::string operator()(const Crosscut& cut) const {
        const std::size_t slices = cut.slices.size();
        if (cut.forPanels) {
            return sayCount(slices, "Cut {1} length off {2}", "Cut {1} lengths off {2}", cut.part);
        }
        if (cut.spares.empty()) {
            return cut.marginRows ? sayCount(slices, "Cut the margin slice off {2}",
                                             "Cut {1} margin slices off {2}", cut.part)
                                  : sayCount(slices, "Cut the slice off {2}",
                                             "Cut {1} slices off {2}", cut.part);
        }
        const std::string spares = sayCount(cut.spares.size(), "{1} spare", "{1} spare");
        return cut.marginRows ? sayCount(slices, "Cut the margin slice and {3} off {2}",
                                         "Cut {1} margin slices and {3} off {2}", cut.part, spares)
                              : sayCount(slices, "Cut {1} slice and {3} off {2}",
                                         "Cut {1} slices and {3} off {2}", cut.part, spares);
    }
    std::string operator()(const BringToSize& work) const {
        const Sizing& sizing = work.sizing;
        if (work.parts.size() > 1) {
            return ofSeveral(sizing, work.parts.size());
        }
        const std::string& part = work.parts.front();
        switch (sizing.purpose) {
        case SizedFor::TrueSides:
            return sizing.in == SizedIn::Length ? say("Square both ends of {1}", part)
                                                : say("True both sides of {1}", part);
        case SizedFor::Window:
            return say("Saw the row out of {1}", part);
        case SizedFor::LessMargin:
            break;
        }
        return sizing.in == SizedIn::Thickness ? say("Bring {1} to its thickness", part)
               : sizing.in == SizedIn::Length  ? say("Bring {1} to its length", part)
                                               : say("Bring {1} to its width", part);
    }
    static std::string ofSeveral(const Sizing& sizing, std::size_t lengths) {
        switch (sizing.purpose) {
        case SizedFor::TrueSides:
            return sizing.in == SizedIn::Length
                       ? sayCount(lengths, "Square both ends of {1} length",
                                  "Square both ends of {1} lengths")
                       : sayCount(lengths, "True both sides of {1} length",
                                  "True both sides of {1} lengths");
        case SizedFor::Window:
            return sayCount(lengths, "Saw the row out of {1} length",
                            "Saw the row out of {1} lengths");
        case SizedFor::LessMargin:
            break;
        }
        return sizing.in == SizedIn::Thickness
                   ? sayCount(lengths, "Bring {1} length to its thickness",
                              "Bring {1} lengths to their thickness")
               : sizing.in == SizedIn::Length ? sayCount(lengths, "Bring {1} length to its length",
                                                         "Bring {1} lengths to their length")
                                              : sayCount(lengths, "Bring {1} length to its width",
                                                         "Bring {1} lengths to their width");
    }
    std::string operator()(const TrimField&) const { return say("Trim the field on four sides"); }
    std::string operator()(const CutChannel& cut) const {
        const bool field = cut.edges > 1;
        switch (cut.purpose) {
        case ChannelFor::Tongue:
            return !field           ? say("Groove the rails")
                   : cut.edges == 4 ? say("Groove the edges of the field")
                                    : say("Groove the ends of the field");
        case ChannelFor::Ledge:
            return field ? say("Rebate the field from below")
                         : say("Rebate the rails down to the ledge");
        case ChannelFor::Inlay:
            break;
        }
        return say("Rebate the rails for the inlay");
    }
    std::string operator()(const GlueIn& glue) const {
        return glue.purpose == ChannelFor::Inlay ? say("Glue the inlay into the rails and level it")
                                                 : say("Glue the tongues into the rails");
    }
    std::string operator()(const CutRails& cut) const {
        return cut.mitred ? say("Mitre the border rails") : say("Cut the border to length");
    }
    std::string operator()(const FitBorder& fit) const {
        switch (fit.design) {
        case BorderDesign::FloatingFrame:
            return say("Close the frame round the loose field");
        case BorderDesign::BreadboardEnds:
            return say("Pin the breadboard ends");
        case BorderDesign::EdgeBand:
            return fit.mustNotBeGlued ? say("Lay the bands dry round the field")
                                      : say("Glue the bands to the field");
        case BorderDesign::EndGrainBand:
        case BorderDesign::FixedFrame:
            break;
        }
        return fit.mustNotBeGlued ? say("Lay the rails dry round the field")
                                  : say("Glue the rails to the field");
    }
    std::string operator()(const KeyCorners&) const { return say("Key the corners of the frame"); }
};

struct Workpieces {
    static const std::string& nothing() {
        static const std::string empty;
        return empty;
    }
    const std::string& operator()(const Mill& mill) const { return mill.panel; }
    const std::string& operator()(const Glue& glue) const { return glue.result; }
    const std::string& operator()(const Take& take) const { return take.result; }
    const std::string& operator()(const CutChannel& cut) const {
        return cut.edges > 1 ? cut.parts.front() : nothing();
    }
    const std::string& operator()(const BringToSize& work) const { return work.parts.front(); }
    const std::string& operator()(const GlueIn&) const { return nothing(); }
    const std::string& operator()(const CutRails&) const { return nothing(); }
    template <class Other>
    const std::string& operator()(const Other& work) const {
        return work.part;
    }
};

}  // namespace

StepList steps(const Plan& plan, const Board& board, const Shop& shop) {
    return Writer(plan, board, shop)();
}

std::string sizingWords(const Sizing& sizing, const Notation& notation) {
    const SidesWords& words = sidesWords[static_cast<std::size_t>(sizing.in)];
    const std::string first = format(sizing.offFirst, notation);
    const std::string last = format(sizing.offLast, notation);
    if (sizing.offFirst == sizing.offLast) {
        return say(words.each, first);
    }
    if (sizing.offLast <= Length()) {
        return say(words.first, first);
    }
    if (sizing.offFirst <= Length()) {
        return say(words.last, last);
    }
    return say(words.first, first) + ", " + say(words.last, last);
}

std::string shownLabel(const std::string& label) {
    const std::string both = " + ";
    if (const std::size_t plus = label.find(both); plus != std::string::npos) {
        return shownLabel(label.substr(0, plus)) + both +
               shownLabel(label.substr(plus + both.size()));
    }
    const std::string board = ": ";
    if (const std::size_t colon = label.find(board); colon != std::string::npos) {
        return label.substr(0, colon) + board + shownLabel(label.substr(colon + board.size()));
    }
    const std::size_t spare = label.find(spareMark);
    return spare == std::string::npos ? say(label)
                                      : say("{1}-spare{2}", label.substr(0, spare),
                                            label.substr(spare + spareMark.size()));
}

std::string title(const Step& step) {
    return std::visit(Titles{}, step.work);
}

const std::string& workpiece(const Step& step) {
    return std::visit(Workpieces{}, step.work);
}

}  // namespace kerfwright
