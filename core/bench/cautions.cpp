#include "core/bench/cautions.h"

#include "core/bench/boardmovement.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <string_view>

namespace kerfwright {
namespace {

/// What every rule may look at.
struct Ground {
    const Board& board;
    const std::vector<Wood>& woods;
    const Shop& shop;
    const Plan& plan;
    const StepList& list;
    const Notation& notation;

    std::string text(Length length) const { return format(length, notation); }
    const std::string& woodName(int wood) const {
        static const std::string unknown = "wood";
        const auto at = static_cast<std::size_t>(wood);
        return wood >= 0 && at < woods.size() ? woods[at].name : unknown;
    }
};

/// A workpiece as it lies on the machine at one step.
struct Size {
    Length width, length, thickness;
    bool field = false;
};

/// Walks through the step list and keeps the size of every workpiece, so that a rule can ask what
/// is really there when a step begins: a panel that went to the saw is shorter at the sander.
class Sizes {
public:
    const Size* of(const std::string& label) const {
        const auto found = sizes_.find(label);
        return found == sizes_.end() ? nullptr : &found->second;
    }

    void after(const Step& step) {
        std::visit([this](const auto& work) { take(work); }, step.work);
    }

private:
    void take(const Mill& work) {
        for (const MillLine& line : work.lines) {
            for (const std::string& strip : line.strips) {
                sizes_[strip] = {line.width.value, line.length.value, line.thickness.value, false};
            }
        }
    }
    void take(const Glue& work) {
        sizes_[work.result] = {work.width.value, work.length.value, work.thickness.value,
                               work.final};
    }
    void take(const Take& work) {
        sizes_[work.result] = {work.width.value, work.length.value, work.thickness.value, true};
    }
    void take(const Flatten& work) { sizes_[work.part].thickness = work.to.value; }
    void take(const SquareEnd& work) { sizes_[work.part].length = work.left; }
    void take(const Crosscut& work) {
        const Size whole = sizes_[work.part];
        for (const auto* labels : {&work.slices, &work.spares}) {
            for (const std::string& slice : *labels) {
                sizes_[slice] = {whole.width, work.stop.value, whole.thickness, false};
            }
        }
        sizes_[work.part].length = work.left;
    }
    void take(const TrimField& work) {
        sizes_[work.part].width = work.width.value;
        sizes_[work.part].length = work.height.value;
    }
    void take(const FitBorder& work) {
        sizes_[work.part].width = work.boardWidth.value;
        sizes_[work.part].length = work.boardHeight.value;
    }

    std::map<std::string, Size> sizes_;
};

/// Calls `look(work, sizes before the step, index of the step)` for each step that does `Work`.
template <class Work, class Look>
void forEach(const StepList& list, Look look) {
    Sizes sizes;
    for (std::size_t i = 0; i < list.steps.size(); ++i) {
        if (const auto* work = std::get_if<Work>(&list.steps[i].work)) {
            look(*work, sizes, static_cast<int>(i));
        }
        sizes.after(list.steps[i]);
    }
}

std::string counted(std::size_t count, std::string_view one, std::string_view many) {
    return std::to_string(count) + " " + std::string(count == 1 ? one : many);
}

/// A workpiece that breaks a rule, at a step, and the length that the rule is about.
struct Spot {
    std::string label;
    int step = -1;
    Length length;
    bool field = false;
};

/// The spots of one rule, one a workpiece, so that ten panels alike make one caution and not ten.
class Spots {
public:
    /// `isWorse(a, b)` tells whether length a is worse than b.
    explicit Spots(bool (*isWorse)(Length, Length))
        : isWorse_(isWorse) {}

    void add(Spot spot) {
        if (steps_.empty() || steps_.back() != spot.step) {
            steps_.push_back(spot.step);
        }
        const auto known = std::find_if(spots_.begin(), spots_.end(),
                                        [&](const Spot& s) { return s.label == spot.label; });
        if (known == spots_.end()) {
            spots_.push_back(std::move(spot));
        } else if (isWorse_(spot.length, known->length)) {
            *known = std::move(spot);
        }
    }
    bool empty() const { return spots_.empty(); }
    bool single() const { return spots_.size() == 1; }
    const Spot& worst() const {
        return *std::min_element(
            spots_.begin(), spots_.end(),
            [this](const Spot& a, const Spot& b) { return isWorse_(a.length, b.length); });
    }
    const std::vector<int>& steps() const { return steps_; }
    /// "Panel A", "Panels A, B and C", "Panels A, B, C, D and 12 more", "The field".
    std::string subject() const {
        if (single()) {
            return spots_.front().field ? "The field" : "Panel " + spots_.front().label;
        }
        constexpr std::size_t named = 4;
        const bool all = spots_.size() <= named + 1;
        const std::size_t shown = all ? spots_.size() - 1 : named;
        std::string text = "Panels ";
        for (std::size_t i = 0; i < shown; ++i) {
            text += (i == 0 ? "" : ", ") + spots_[i].label;
        }
        return text + " and " +
               (all ? spots_.back().label : std::to_string(spots_.size() - named) + " more");
    }
    std::string verb(const char* one, const char* many) const { return single() ? one : many; }
    /// "It" or "Panel B", for the sentence about the worst.
    std::string theWorst() const { return single() ? "It" : "Panel " + worst().label; }

private:
    bool (*isWorse_)(Length, Length);
    std::vector<Spot> spots_;
    std::vector<int> steps_;  // all of them, also those of one workpiece
};

bool shorter(Length a, Length b) {
    return a < b;
}
bool longer(Length a, Length b) {
    return a > b;
}

using Found = std::vector<Caution>;

/// A movement in words, on the grid of the notation: nothing here is cut to it.
std::string roundly(const Ground& on, double mm) {
    const std::int64_t step = on.notation.step().nm();
    return on.text(Length::nm(std::llround(mm * 1e6 / static_cast<double>(step)) * step));
}

/// "4.1 mm to 9.3 mm", or one figure where both read the same: from the driest to the dampest.
std::string yearly(const Ground& on, const SeasonChange& change) {
    // Ends of a range that belong together: what swells most also shrinks most.
    const std::string least = roundly(on, change.toDampest.least - change.toDriest.greatest);
    const std::string greatest = roundly(on, change.toDampest.greatest - change.toDriest.least);
    return least == greatest ? least : least + " to " + greatest;
}

// Reckoned for a heated home, the commonest place of such a board and no damp one.
void borderMoves(const Ground& on, Found& found) {
    forEach<FitBorder>(on.list, [&](const FitBorder&, const Sizes&, int step) {
        const bool endGrain = on.board.build == Build::EndGrain;
        const ClimatePreset& place = climatePresets().front();
        const BoardMovement movement =
            movementOf(on.board, on.woods, on.plan.byColumns, place.climate);
        const auto percent = [](double moisture) {
            return std::to_string(std::lround(moisture)) + " %";
        };
        std::string reason =
            "Where the wood of a board goes from " + percent(place.climate.driest) + " to " +
            percent(place.climate.dampest) + " moisture in a year (" + place.name +
            "), this field grows and shrinks by " + yearly(on, movement.width) + " across and " +
            yearly(on, movement.height) + " down, by how its rings lie. ";
        if (!movement.unknownWoods.empty()) {
            reason += "Not all its woods are known: it may be more. ";
        }
        reason += "Rails of " + on.woodName(on.board.border.wood) +
                  " hardly change along their length, so a glued border bursts at its mitres or "
                  "cracks the field.";
        found.push_back(
            {Severity::Danger, "border-moves",
             endGrain ? "A border of long grain round an end-grain field"
                      : "A border round a field that moves across its grain",
             std::move(reason),
             "Do not glue this border to the field: it will move by some millimetres and burst the "
             "mitres. Joinery is not planned yet; a board that gets wet is best left without a "
             "border.",
             step});
    });
}

void wideForSander(const Ground& on, Found& found) {
    Spots panels(longer);
    Spots field(longer);
    forEach<Flatten>(on.list, [&](const Flatten& work, const Sizes& sizes, int step) {
        const Size* size = sizes.of(work.part);
        if (size == nullptr) {
            return;
        }
        // A field has no grain to follow through the machine and may go in by its lesser side.
        const Length width = size->field ? std::min(size->width, size->length) : size->width;
        if (width > on.shop.sanderWidth) {
            (size->field ? field : panels).add({work.part, step, width, size->field});
        }
    });
    for (const Spots* spots : {&panels, &field}) {
        if (spots->empty()) {
            continue;
        }
        found.push_back(
            {Severity::Caution, "wide-for-sander",
             spots->subject() + spots->verb(" is", " are") + " wider than the sander",
             spots->theWorst() + " is " + on.text(spots->worst().length) +
                 " wide; the flattening machine takes " + on.text(on.shop.sanderWidth) + ".",
             spots == &field ? "Flatten it with a router sled, or make the board smaller."
                             : "Flatten it with a router sled or by hand, glue strips into columns "
                               "instead of rows, or make the field narrower.",
             spots->worst().step, spots->steps()});
    }
}

void thickForSaw(const Ground& on, Found& found) {
    Spots spots(longer);
    forEach<Crosscut>(on.list, [&](const Crosscut& work, const Sizes& sizes, int step) {
        const Size* size = sizes.of(work.part);
        if (size != nullptr && size->thickness > on.shop.sawDepth) {
            spots.add({work.part, step, size->thickness});
        }
    });
    if (!spots.empty()) {
        found.push_back({Severity::Danger, "thick-for-saw",
                         spots.subject() + spots.verb(" is", " are") + " thicker than the saw cuts",
                         spots.theWorst() + " is " + on.text(spots.worst().length) +
                             " thick; the saw cuts " + on.text(on.shop.sawDepth) + " deep.",
                         "Crosscut at a bandsaw, or make the rows lower.", spots.worst().step,
                         spots.steps()});
    }
}

// What is held at the last cut is the slice and what stays behind it.
void littleToHold(const Ground& on, Found& found) {
    Spots spots(shorter);
    forEach<Crosscut>(on.list, [&](const Crosscut& work, const Sizes&, int step) {
        const Length held = work.stop.value + work.left;
        if (held < on.shop.leastHeld) {
            spots.add({work.part, step, held});
        }
    });
    if (spots.empty()) {
        return;
    }
    const auto& worst =
        std::get<Crosscut>(on.list.steps[static_cast<std::size_t>(spots.worst().step)].work);
    found.push_back(
        {Severity::Danger, "little-to-hold",
         spots.subject() + spots.verb(" gets", " get") + " short at the saw",
         "At the last cut of panel " + worst.part + " " + on.text(spots.worst().length) +
             " is left: slice " + on.text(worst.stop.value) + " and " + on.text(worst.left) +
             " behind it. The least that is safe to hold is set to " + on.text(on.shop.leastHeld) +
             ".",
         "Use a crosscut sled with a stop block and a hold-down clamp, hands clear of the blade; "
         "or make the strips longer. Never use the rip fence and the mitre gauge together.",
         spots.worst().step, spots.steps()});
}

void shortForSander(const Ground& on, Found& found) {
    const Length usual = on.shop.planerShortest;
    Spots tooShort(shorter);
    Spots isShort(shorter);
    Spots fieldTooShort(shorter);
    Spots fieldIsShort(shorter);
    forEach<Flatten>(on.list, [&](const Flatten& work, const Sizes& sizes, int step) {
        const Size* size = sizes.of(work.part);
        if (size == nullptr) {
            return;
        }
        const Length length = size->field ? std::max(size->width, size->length) : size->length;
        if (length < on.shop.sanderShortest) {
            (size->field ? fieldTooShort : tooShort).add({work.part, step, length, size->field});
        } else if (length < usual) {
            (size->field ? fieldIsShort : isShort).add({work.part, step, length, size->field});
        }
    });
    for (const Spots* spots : {&tooShort, &fieldTooShort, &isShort, &fieldIsShort}) {
        if (spots->empty()) {
            continue;
        }
        const bool never = spots == &tooShort || spots == &fieldTooShort;
        const std::string is =
            spots->theWorst() + " is " + on.text(spots->worst().length) +
            " long when it goes to the flattening machine; " +
            (never ? "yours takes nothing under " + on.text(on.shop.sanderShortest)
                   : "the shortest to plane is set to " + on.text(usual)) +
            ".";
        const std::string remedy =
            spots->worst().field
                ? "Fix it to a longer carrier board with glued runners, or flatten it with a "
                  "router sled."
                : "Make the panel longer (a higher tail in the shop settings, or more spare "
                  "slices), carry it on longer runners, or use a machine that takes it.";
        found.push_back({never ? Severity::Danger : Severity::Caution, "short-for-sander",
                         spots->subject() + spots->verb(" is", " are") +
                             (never ? " too short for the sander" : " too short for a planer"),
                         is, never ? remedy : "Leave the planer out and sand it. " + remedy,
                         spots->worst().step, spots->steps()});
    }
}

void shortSlices(const Ground& on, Found& found) {
    Spots spots(shorter);
    forEach<Crosscut>(on.list, [&](const Crosscut& work, const Sizes&, int step) {
        if (work.stop.value < on.shop.sliceShortest) {
            spots.add({work.part, step, work.stop.value});
        }
    });
    if (!spots.empty()) {
        found.push_back(
            {Severity::Danger, "short-slices",
             spots.subject() + spots.verb(" gives", " give") + " short slices",
             "Slices of panel " + spots.worst().label + " are " + on.text(spots.worst().length) +
                 " long; the shortest slice is set to " + on.text(on.shop.sliceShortest) + ".",
             on.board.build == Build::EndGrain ? "Make the board thicker."
                                               : "Make the rows higher, or merge rows of one wood.",
             spots.worst().step, spots.steps()});
    }
}

// Planing and ripping short pieces is how hands come near knives; a piece wider than long turns at
// the fence. Advice for one long blank is common practice, no source.
void shortStrips(const Ground& on, Found& found) {
    Spots spots(shorter);
    std::size_t count = 0;
    forEach<Mill>(on.list, [&](const Mill& work, const Sizes&, int step) {
        for (const MillLine& line : work.lines) {
            if (line.roughLength.value < on.shop.planerShortest) {
                count += line.strips.size();
                spots.add({work.panel, step, line.roughLength.value});
            }
        }
    });
    if (!spots.empty()) {
        found.push_back(
            {Severity::Danger, "short-strips", "Strips too short to plane or rip one by one",
             counted(count, "strip is", "strips are") + " shorter than " +
                 on.text(on.shop.planerShortest) +
                 ", which is set as the shortest; the shortest is " +
                 on.text(spots.worst().length) + " rough.",
             "Mill and rip blanks that hold several strips of one size end to end, with a kerf "
             "between, and crosscut them to length last. Never feed a piece along the fence by its "
             "shorter side.",
             spots.worst().step, spots.steps()});
    }
}

// 1/4 in: the narrowest rip with the usual push blocks (a magazine's article on thin parts).
void narrowRips(const Ground& on, Found& found) {
    const Length least = Length::inch(1, 4);
    Spots spots(shorter);
    std::size_t count = 0;
    forEach<Mill>(on.list, [&](const Mill& work, const Sizes&, int step) {
        for (const MillLine& line : work.lines) {
            if (line.width.value < least) {
                count += line.strips.size();
                spots.add({work.panel, step, line.width.value});
            }
        }
    });
    if (!spots.empty()) {
        found.push_back(
            {Severity::Danger, "narrow-rip", "Very narrow strips to rip",
             counted(count, "strip is", "strips are") + " narrower than " + on.text(least) +
                 "; the narrowest is " + on.text(spots.worst().length) + ".",
             "Rip each from the free side of a wider plank with a push block that lies flat on "
             "it, or saw it at a bandsaw and bring it to width at the sander.",
             spots.worst().step, spots.steps()});
    }
}

// Accounts of boards thrown and burst by thickness planers; no maker's manual is known that allows
// it. 1/64 in a pass: limit of school shops for drum sanders.
void endGrainFace(const Ground& on, Found& found) {
    forEach<Flatten>(on.list, [&](const Flatten& work, const Sizes&, int step) {
        if (work.face == Face::EndGrain) {
            found.push_back(
                {Severity::Danger, "end-grain-face", "End grain never through a thickness planer",
                 on.text(work.from.value - work.to.value) +
                     " has to come off an end-grain face. Planer knives tear it and can throw the "
                     "board.",
                 "Use a drum sander with passes of no more than " +
                     on.text(on.notation.unit == Unit::Inches ? Length::inch(1, 64)
                                                              : Length::um(400)) +
                     ", or a router sled. Break the edges first.",
                 step});
        }
    });
}

bool isCrosscut(const StepList& list) {
    return std::any_of(list.steps.begin(), list.steps.end(), [](const Step& step) {
        return std::holds_alternative<Crosscut>(step.work);
    });
}

void noTrimMargin(const Ground& on, Found& found) {
    if (on.shop.trimMargin <= Length{}) {
        found.push_back(
            {Severity::Caution, "no-trim-margin", "No trim margin",
             "The trim margin is " + on.text(on.shop.trimMargin) +
                 ": strips that slip in the clamps cannot be sawn straight afterwards.",
             "Set a trim margin, usually " +
                 on.text(on.notation.unit == Unit::Inches ? Length::inch(1, 8) : Length::mm(3)) +
                 " a side.",
             -1});
    }
}

void noSpareSlice(const Ground& on, Found& found) {
    // A field of one slice gets no spare one, whatever the setting.
    const bool severalSlices =
        std::any_of(on.list.steps.begin(), on.list.steps.end(), [](const Step& step) {
            const auto* glue = std::get_if<Glue>(&step.work);
            return glue != nullptr && glue->final;
        });
    if (on.shop.spareSlices == 0 && severalSlices) {
        const auto panels = static_cast<std::size_t>(
            std::count_if(on.plan.parts.begin(), on.plan.parts.end(),
                          [](const Part& part) { return part.role == Role::Panel; }));
        found.push_back({Severity::Note, "no-spare-slice", "No spare slice",
                         "0 spare slices are cut from " + counted(panels, "panel", "panels") +
                             ": one bad slice means another panel.",
                         "Set one spare slice, unless timber is short.", -1});
    }
}

void noSquaringCut(const Ground& on, Found& found) {
    if (on.shop.squaringCut <= Length{} && isCrosscut(on.list)) {
        found.push_back({Severity::Caution, "no-squaring-cut", "No squaring cut",
                         "The squaring cut is " + on.text(on.shop.squaringCut) +
                             ": the first slice of each panel has the end that the strips happened "
                             "to have.",
                         "Set a squaring cut, or see that every strip is cut square and glued "
                         "flush at that end.",
                         -1});
    }
}

// The old view is that such joints are weak; one test of 2021 found them stronger than thought.
// Sizing the ends first is the usual precaution.
void endToEnd(const Ground& on, Found& found) {
    if (on.board.build != Build::LongGrain) {
        return;
    }
    forEach<Glue>(on.list, [&](const Glue& work, const Sizes&, int step) {
        if (work.final && work.parts.size() > 1) {
            found.push_back(
                {Severity::Caution, "end-to-end",
                 on.plan.byColumns ? "Columns meet end grain to end grain"
                                   : "Rows meet end grain to end grain",
                 counted(work.parts.size() - 1, "joint", "joints") +
                     " in the final glue-up join sawn ends, which hold far less than long grain.",
                 "Brush thin glue on the ends, let it soak in, then glue as usual. Never lift the "
                 "board by one edge; back it with a frame or a substrate where it can be leant on.",
                 step});
        }
    });
}

void extraJoints(const Ground& on, Found& found) {
    if (!on.plan.extraJoints.empty()) {
        found.push_back(
            {Severity::Note, "extra-joints", "Joints inside pieces",
             counted(on.plan.extraJoints.size(), "joint was", "joints were") +
                 " added inside pieces that straight glue lines or the timber's section "
                 "cannot give whole; they are drawn dashed.",
             "Pick strips of one plank for both sides of such a joint, or change the "
             "pattern.",
             -1});
    }
}

void omittedJoints(const Ground& on, Found& found) {
    if (!on.plan.omittedJoints.empty()) {
        found.push_back({Severity::Note, "omitted-joints", "Joints left out",
                         counted(on.plan.omittedJoints.size(), "joint", "joints") +
                             " between pieces of one wood will not be there: one strip makes both "
                             "pieces.",
                         "Switch off merging of like pieces if each joint shall be seen.", -1});
    }
}

/// Every rule there is. A new one is a function above, a line here and a test.
using Rule = void (*)(const Ground&, Found&);
constexpr Rule rules[] = {
    borderMoves,  endGrainFace, littleToHold,  shortForSander, shortSlices,
    shortStrips,  narrowRips,   wideForSander, thickForSaw,    noSquaringCut,
    noTrimMargin, endToEnd,     noSpareSlice,  extraJoints,    omittedJoints,
};

}  // namespace

std::vector<Caution> cautions(const Board& board, const std::vector<Wood>& woods, const Shop& shop,
                              const Plan& plan, const StepList& list, const Notation& notation) {
    const Ground ground{board, woods, shop, plan, list, notation};
    Found found;
    for (const Rule rule : rules) {
        rule(ground, found);
    }
    for (Caution& caution : found) {
        if (caution.steps.empty() && caution.step >= 0) {
            caution.steps.push_back(caution.step);
        }
    }
    std::stable_sort(found.begin(), found.end(), [](const Caution& a, const Caution& b) {
        return a.severity != b.severity ? a.severity > b.severity : a.step < b.step;
    });
    return found;
}

std::string whichSteps(const Caution& caution) {
    std::string text;
    for (std::size_t i = 0; i < caution.steps.size(); ++i) {
        text += i == 0 ? "" : i + 1 == caution.steps.size() ? " and " : ", ";
        text += std::to_string(caution.steps[i] + 1);
    }
    return text.empty() ? text : (caution.steps.size() == 1 ? "step " : "steps ") + text;
}

const std::vector<std::string>& safetyWords() {
    static const std::vector<std::string> words = {
        "Guard and riving knife on the saw wherever the cut allows it; push sticks and push blocks "
        "within reach before the machine starts.",
        "Keep to the least length, width and thickness that each machine takes, for every "
        "workpiece "
        "on the way and not only for finished parts.",
        "Short workpieces go on a sled with a stop block and a hold-down clamp. Never rip fence "
        "and "
        "mitre gauge together.",
        "End grain never goes through a thickness planer.",
        "Extraction on, and a dust mask: fine dust harms, and that of some woods is an irritant.",
        "Goggles and ear defenders; no gloves, loose sleeves or long hair near a turning blade.",
        "This paper gives sizes and an order of work. The machine's manual and the local rules "
        "come "
        "first; whoever is unsure asks a trained person.",
    };
    return words;
}

}  // namespace kerfwright
