#include "tests/core/replay/mutants.h"

#include <algorithm>
#include <array>
#include <map>
#include <set>
#include <tuple>

namespace kerfwright::test {

namespace {

constexpr std::array<const char*, static_cast<std::size_t>(Harmless::Count)> reasons = {
    "a strip is of one wood all through: turned end for end or over it is the same strip",
    "a slice is the same in front and at the back: turned over it shows the same row",
    "a row that reads the same both ways may be flipped",
    "a square of one wood may be turned a quarter, unless its grain would turn in the face",
    "two parts that are equal as they lie may change places",
    "two steps on different workpieces, or two grooves that do not touch, may change places",
    "equal slices may be named, and the lines of a mill list written, in another order",
    "a name that no later step uses may be any name",
    "where the only cut of a list runs out of the end of the wood, a wider blade changes nothing",
    "a rail is mitred from a blank: how much longer the blank is shows only at its rough length",
};

/// A row of strips: wood and width of each, left to right.
using Word = std::vector<std::pair<int, Length>>;

/// A part of a glue-up, as far as it can be told from others: its word, thickness, length, whether
/// it was cut as a margin row, and the turns that change its outline.
using Look = std::tuple<Word, Length, Length, bool, bool, bool>;

struct Known {
    Word word;
    Length thickness;
    Length length;
    bool marginRow = false;
    bool strip = false;
};

/// What a reader of the list, not of the bench, knows of each workpiece.
class Reading {
public:
    explicit Reading(const StepList& list) {
        for (const Step& step : list.steps) {
            std::visit([this](const auto& work) { read(work); }, step.work);
        }
    }

    const Known& operator[](const std::string& label) const { return known_.at(label); }

    Look look(const Laid& laid) const {
        const Known& part = known_.at(laid.part);
        Word word = part.word;
        if (laid.lay.flipped) {
            std::reverse(word.begin(), word.end());
        }
        return {word,           part.thickness,   part.length,
                part.marginRow, laid.lay.stoodUp, laid.lay.turned};
    }

    bool readsTheSameBothWays(const std::string& label) const {
        Word word = known_.at(label).word;
        std::reverse(word.begin(), word.end());
        return word == known_.at(label).word;
    }

    /// Length of the panel when the step at hand came to it; recorded for crosscuts.
    Length lengthBefore(const Crosscut& cut) const { return before_.at(cut.slices.front()); }

private:
    void read(const Mill& step) {
        for (const MillLine& line : step.lines) {
            for (const std::string& label : line.strips) {
                known_[label] = {{{line.wood, line.width.value}},
                                 line.thickness.value,
                                 line.length.value,
                                 false,
                                 true};
            }
        }
    }
    void read(const Glue& step) {
        Known whole = known_.at(step.parts.front().part);
        whole.strip = false;
        whole.word.clear();
        for (const Laid& laid : step.parts) {
            const Word& word = known_.at(laid.part).word;
            whole.word.insert(whole.word.end(), word.begin(), word.end());
        }
        known_[step.result] = whole;
    }
    void read(const Take& step) { known_[step.result] = known_.at(step.part.part); }
    void read(const Flatten& step) { known_[step.part].thickness = step.to.value; }
    void read(const SquareEnd& step) { known_[step.part].length = step.left; }
    void read(const Crosscut& step) {
        Known slice = known_.at(step.part);
        before_[step.slices.front()] = slice.length;
        known_[step.part].length = step.left;
        slice.length = step.stop.value;
        slice.marginRow = step.marginRows;
        slice.strip = false;
        for (const std::string& label : step.slices) {
            known_[label] = slice;
        }
        for (const std::string& label : step.spares) {
            known_[label] = slice;
        }
    }
    void read(const BringToSize& step) {
        for (const std::string& label : step.parts) {
            Known& part = known_[label];
            if (step.sizing.in == SizedIn::Width) {
                part.word.front().second -= step.sizing.offFirst;
                part.word.back().second -= step.sizing.offLast;
            } else {
                (step.sizing.in == SizedIn::Length ? part.length : part.thickness) =
                    step.sizing.to.value;
            }
        }
    }
    void read(const TrimField&) {}
    void read(const CutChannel&) {}
    void read(const GlueIn&) {}
    void read(const CutRails&) {}
    void read(const FitBorder&) {}
    void read(const KeyCorners&) {}

    std::map<std::string, Known> known_;
    std::map<std::string, Length> before_;
};

struct NamedFigure {
    const char* name;
    Figure* figure;
};

struct FiguresOf {
    std::vector<NamedFigure> operator()(Mill& step) const {
        std::vector<NamedFigure> all;
        for (MillLine& line : step.lines) {
            all.insert(all.end(), {{"rough thickness", &line.roughThickness},
                                   {"rough width", &line.roughWidth},
                                   {"rough length", &line.roughLength},
                                   {"milled thickness", &line.thickness},
                                   {"milled width", &line.width},
                                   {"milled length", &line.length}});
        }
        return all;
    }
    template <class Laying>
    std::vector<NamedFigure> operator()(Laying& step) const requires requires {
        step.result;
    }
    { return {{"width", &step.width}, {"length", &step.length}, {"thickness", &step.thickness}}; }
    std::vector<NamedFigure> operator()(Flatten& step) const {
        return {{"from", &step.from}, {"to", &step.to}};
    }
    std::vector<NamedFigure> operator()(SquareEnd& step) const {
        return {{"waste", &step.waste}, {"kerf", &step.kerf}};
    }
    std::vector<NamedFigure> operator()(Crosscut& step) const {
        return {{"stop", &step.stop}, {"kerf", &step.kerf}};
    }
    std::vector<NamedFigure> operator()(BringToSize& step) const {
        return {{"from", &step.sizing.from}, {"to", &step.sizing.to}};
    }
    std::vector<NamedFigure> operator()(TrimField& step) const {
        return {{"margin", &step.margin}, {"width", &step.width}, {"height", &step.height}};
    }
    std::vector<NamedFigure> operator()(FitBorder& step) const {
        std::vector<NamedFigure> all = {{"rail", &step.width},
                                        {"board width", &step.boardWidth},
                                        {"board height", &step.boardHeight}};
        all.insert(all.end(), {{"gap across", &step.gapX},
                               {"gap down", &step.gapY},
                               {"pin", &step.pinDiameter},
                               {"pin from the edge", &step.pinFromEdge}});
        for (Rail& rail : step.rails) {
            all.push_back({"long point", &rail.longPoint});
        }
        for (Pin& pin : step.pins) {
            all.insert(all.end(), {{"pin at", &pin.at},
                                   {"slot outwards", &pin.outward},
                                   {"slot inwards", &pin.inward}});
        }
        return all;
    }
    std::vector<NamedFigure> operator()(CutChannel& step) const {
        return {{"depth", &step.depth}, {"width", &step.width}, {"from face", &step.fromFace}};
    }
    std::vector<NamedFigure> operator()(GlueIn& step) const { return {{"proud", &step.proud}}; }
    std::vector<NamedFigure> operator()(CutRails& step) const {
        std::vector<NamedFigure> all;
        for (Rail& rail : step.rails) {
            all.push_back({"length", &rail.longPoint});
        }
        return all;
    }
    std::vector<NamedFigure> operator()(KeyCorners& step) const {
        return {
            {"depth", &step.depth}, {"thickness", &step.thickness}, {"from face", &step.fromFace}};
    }
};

/// Labels of the workpieces that a step makes, uses or works on.
struct LabelsOf {
    template <class Work>
    std::vector<std::string*> operator()(Work& step) const {
        if constexpr (std::is_same_v<Work, Mill>) {
            std::vector<std::string*> all;
            for (MillLine& line : step.lines) {
                for (std::string& label : line.strips) {
                    all.push_back(&label);
                }
            }
            return all;
        } else if constexpr (std::is_same_v<Work, Glue>) {
            std::vector<std::string*> all = {&step.result};
            for (Laid& laid : step.parts) {
                all.push_back(&laid.part);
            }
            return all;
        } else if constexpr (std::is_same_v<Work, Take>) {
            return {&step.result, &step.part.part};
        } else if constexpr (std::is_same_v<Work, Crosscut>) {
            std::vector<std::string*> all = {&step.part};
            for (std::string& label : step.slices) {
                all.push_back(&label);
            }
            for (std::string& label : step.spares) {
                all.push_back(&label);
            }
            return all;
        } else if constexpr (std::is_same_v<Work, FitBorder>) {
            std::vector<std::string*> all = {&step.part};
            for (Rail& rail : step.rails) {
                all.push_back(&rail.label);
            }
            return all;
        } else if constexpr (std::is_same_v<Work, CutChannel>) {
            std::vector<std::string*> all;
            for (std::string& label : step.parts) {
                all.push_back(&label);
            }
            return all;
        } else if constexpr (std::is_same_v<Work, BringToSize>) {
            std::vector<std::string*> all;
            for (std::string& label : step.parts) {
                all.push_back(&label);
            }
            return all;
        } else if constexpr (std::is_same_v<Work, GlueIn>) {
            std::vector<std::string*> all;
            for (Inset& inset : step.insets) {
                all.push_back(&inset.stick);
                all.push_back(&inset.rail);
            }
            return all;
        } else if constexpr (std::is_same_v<Work, CutRails>) {
            std::vector<std::string*> all;
            for (Rail& rail : step.rails) {
                all.push_back(&rail.label);
            }
            return all;
        } else if constexpr (std::is_same_v<Work, KeyCorners>) {
            return {&step.part, &step.stick};
        } else {
            return {&step.part};
        }
    }
};

std::set<std::string> touchedBy(Step step) {
    std::set<std::string> labels;
    for (const std::string* label : std::visit(LabelsOf(), step.work)) {
        labels.insert(*label);
    }
    return labels;
}

bool disjoint(const Step& a, const Step& b) {
    const std::set<std::string> labels = touchedBy(a);
    const std::set<std::string> others = touchedBy(b);
    return std::none_of(labels.begin(), labels.end(),
                        [&](const std::string& label) { return others.contains(label); });
}

/// A groove in the middle of an edge and a rebate at its face.
bool apart(const Step& a, const Step& b) {
    const auto* first = std::get_if<CutChannel>(&a.work);
    const auto* second = std::get_if<CutChannel>(&b.work);
    return first != nullptr && second != nullptr && first->purpose == ChannelFor::Tongue &&
           second->purpose == ChannelFor::Inlay;
}

using Verdict = std::optional<Harmless>;

Verdict harmlessIf(bool rule, Harmless harmless) {
    return rule ? Verdict(harmless) : Verdict();
}

class Mutator {
public:
    Mutator(const Job& job, const Judge& judge)
        : job_(job)
        , list_(job.list)
        , right_(job.list)
        , reading_(job.list)
        , judge_(judge) {}

    void all() {
        for (at_ = 0; at_ < list_.steps.size(); ++at_) {
            figures();
            labels();
            std::visit([this](auto& work) { special(work); }, list_.steps[at_].work);
            wholeStep();
        }
        joints("extra joint", &StepList::extraJoints, &StepList::omittedJoints);
        joints("omitted joint", &StepList::omittedJoints, &StepList::extraJoints);
        volumes();
    }

private:
    static constexpr std::array<std::pair<const char*, Length>, 3> nudges = {
        {{" + 1 nm", Length::nm(1)}, {" + 1 mm", Length::mm(1)}, {" - 1 mm", Length::mm(-1)}}};

    std::string here(const std::string& what) const {
        return job_.name + ", step " + std::to_string(at_ + 1) + ": " + what;
    }

    /// Changes the step at hand, has the list judged, and puts the step back.
    template <class Change>
    void mutant(const std::string& what, Verdict verdict, Change change) {
        change();
        judge_(here(what), list_, verdict);
        list_.steps[at_] = right_.steps[at_];
    }

    template <class T>
    void swapNeighbours(const std::string& what, std::vector<T>& parts,
                        const std::function<Verdict(const T&, const T&)>& rule) {
        for (std::size_t i = 0; i + 1 < parts.size(); ++i) {
            const Verdict verdict = rule(parts[i], parts[i + 1]);
            std::swap(parts[i], parts[i + 1]);
            judge_(here("swap " + what + " " + std::to_string(i + 1) + " and the next"), list_,
                   verdict);
            std::swap(parts[i], parts[i + 1]);
        }
    }

    void figures() {
        const std::size_t count = std::visit(FiguresOf(), list_.steps[at_].work).size();
        for (std::size_t i = 0; i < count; ++i) {
            for (const auto& [text, by] : nudges) {
                const NamedFigure named = std::visit(FiguresOf(), list_.steps[at_].work)[i];
                const Verdict verdict = figureRule(named, by);
                named.figure->value += by;
                named.figure->terms.push_back({TermKind::RoundingUp, by, 1});
                judge_(here(named.name + std::string(text)), list_, verdict);
                list_.steps[at_] = right_.steps[at_];
            }
            const NamedFigure named = std::visit(FiguresOf(), list_.steps[at_].work)[i];
            named.figure->terms.push_back({TermKind::RoundingUp, Length::nm(1), 1});
            judge_(here(named.name + std::string(", working alone")), list_, {});
            list_.steps[at_] = right_.steps[at_];
        }
    }

    Verdict figureRule(const NamedFigure& named, Length by) const {
        const Work& work = list_.steps[at_].work;
        if (const auto* mill = std::get_if<Mill>(&work); mill != nullptr && mill->panel.empty()) {
            for (const MillLine& line : mill->lines) {
                if (&line.length == named.figure) {
                    const Length length = line.length.value + by;
                    const Length least = leastBlankOf(line.strips.front());
                    return harmlessIf(least > Length() && length <= line.roughLength.value &&
                                          length >= least,
                                      Harmless::RailBlank);
                }
            }
        }
        if (const auto* cut = std::get_if<Crosscut>(&work);
            cut != nullptr && &cut->kerf == named.figure && cutSteps() == 1) {
            const auto cuts = static_cast<std::int64_t>(cut->slices.size() + cut->spares.size());
            const Length kerf = cut->kerf.value + by;
            const Length last =
                reading_.lengthBefore(*cut) - cut->stop.value * cuts - kerf * (cuts - 1);
            return harmlessIf(last >= Length() && last <= kerf && cut->left == Length(),
                              Harmless::KerfOffTheEnd);
        }
        return {};
    }

    /// The least length of a stick that is cut to length later and whose blank nothing else tells:
    /// what is grooved or inlaid from end to end is weighed. 0 for others.
    Length leastBlankOf(const std::string& label) const {
        for (const Step& step : right_.steps) {
            const auto* channel = std::get_if<CutChannel>(&step.work);
            if (channel != nullptr && touchedBy(step).contains(label)) {
                return {};
            }
            if (const auto* keys = std::get_if<KeyCorners>(&step.work)) {
                if (keys->stick == label) {
                    return keys->depth.value * 8;
                }
            }
            if (const auto* border = std::get_if<CutRails>(&step.work)) {
                for (const Rail& rail : border->rails) {
                    if (rail.label == label) {
                        return rail.longPoint.value;
                    }
                }
            }
        }
        return {};
    }

    std::ptrdiff_t cutSteps() const {
        return std::count_if(right_.steps.begin(), right_.steps.end(), [](const Step& step) {
            return std::holds_alternative<Crosscut>(step.work) ||
                   std::holds_alternative<SquareEnd>(step.work);
        });
    }

    bool usedLater(const std::string& label) const {
        return std::any_of(right_.steps.begin() + static_cast<std::ptrdiff_t>(at_) + 1,
                           right_.steps.end(),
                           [&](const Step& step) { return touchedBy(step).contains(label); });
    }

    /// Whether the step at hand is where the label appears for the first time.
    bool madeHere(const std::string& label) const {
        return std::none_of(right_.steps.begin(),
                            right_.steps.begin() + static_cast<std::ptrdiff_t>(at_),
                            [&](const Step& step) { return touchedBy(step).contains(label); });
    }

    void labels() {
        const std::size_t count = std::visit(LabelsOf(), list_.steps[at_].work).size();
        for (std::size_t i = 0; i < count; ++i) {
            std::string* label = std::visit(LabelsOf(), list_.steps[at_].work)[i];
            const std::string was = *label;
            const bool unused = madeHere(was) && !usedLater(was);
            *label = "Elsewhere";
            judge_(here("rename " + was), list_, harmlessIf(unused, Harmless::UnusedName));
            for (const Step& step : right_.steps) {
                const std::string other = *touchedBy(step).begin();
                if (other != was) {
                    *label = other;
                    judge_(here(was + " becomes " + other), list_, {});
                }
            }
            *label = was;
        }
    }

    void wholeStep() {
        const Step step = right_.steps[at_];
        auto place = list_.steps.begin() + static_cast<std::ptrdiff_t>(at_);
        list_.steps.erase(place);
        judge_(here("left out"), list_, {});
        place = list_.steps.begin() + static_cast<std::ptrdiff_t>(at_);
        list_.steps.insert(place, 2, step);
        judge_(here("done twice"), list_, {});
        list_.steps = right_.steps;
        if (at_ + 1 < list_.steps.size()) {
            std::swap(list_.steps[at_], list_.steps[at_ + 1]);
            judge_(here("swap with the next step"), list_,
                   harmlessIf(disjoint(right_.steps[at_], right_.steps[at_ + 1]) ||
                                  apart(right_.steps[at_], right_.steps[at_ + 1]),
                              Harmless::IndependentSteps));
            list_.steps = right_.steps;
        }
    }

    void lay(Laid& laid, bool final, bool taken) {
        const Known& part = reading_[laid.part];
        const bool oneWood = part.word.size() == 1;
        const bool square = oneWood && (laid.lay.stoodUp ? part.thickness : part.length) ==
                                           part.word.front().second;
        const bool anyGrain = job_.board.build == Build::EndGrain ||
                              (taken && job_.board.grain == GrainDirection::PlannersChoice);
        const std::tuple<const char*, bool Lay::*, Verdict> bits[] = {
            {"stood up", &Lay::stoodUp, {}},
            {"turned over", &Lay::turnedOver,
             final ? Harmless::FrontAndBack : Harmless::OneWoodStrip},
            {"flipped", &Lay::flipped,
             final ? harmlessIf(reading_.readsTheSameBothWays(laid.part), Harmless::SymmetricFlip)
                   : Verdict(Harmless::OneWoodStrip)},
            {"turned", &Lay::turned,
             harmlessIf(final && square && anyGrain, Harmless::SquareOfOneWood)}};
        for (const auto& [name, bit, verdict] : bits) {
            laid.lay.*bit = !(laid.lay.*bit);
            judge_(here(laid.part + " the other way: " + name), list_, verdict);
            laid.lay.*bit = !(laid.lay.*bit);
        }
    }

    void left(Length& length) {
        for (const auto& [text, by] : nudges) {
            length += by;
            judge_(here(std::string("left") + text), list_, {});
            length -= by;
        }
    }

    void special(Mill& step) {
        mutant("for another panel", {}, [&] { step.panel += "?"; });
        for (std::size_t i = 0; i < step.lines.size(); ++i) {
            mutant("another wood", {}, [&] { step.lines[i].wood += 1; });
            mutant("a strip more", {}, [&] { step.lines[i].strips.push_back("One more"); });
            mutant("a strip twice", {},
                   [&] { step.lines[i].strips.push_back(step.lines[i].strips.back()); });
            mutant("a strip less", {}, [&] { step.lines[i].strips.pop_back(); });
            mutant("a line less", {},
                   [&] { step.lines.erase(step.lines.begin() + static_cast<std::ptrdiff_t>(i)); });
        }
        swapNeighbours<MillLine>("mill lines", step.lines, [](const MillLine&, const MillLine&) {
            return Harmless::OrderOfNames;
        });
    }

    void special(Glue& step) {
        for (std::size_t i = 0; i < step.parts.size(); ++i) {
            const auto offset = static_cast<std::ptrdiff_t>(i);
            mutant("a part less", {}, [&] { step.parts.erase(step.parts.begin() + offset); });
            mutant("a part twice", {},
                   [&] { step.parts.insert(step.parts.begin() + offset, Laid(step.parts[i])); });
            lay(step.parts[i], step.final, false);
        }
        swapNeighbours<Laid>("parts", step.parts, [this](const Laid& a, const Laid& b) {
            return harmlessIf(reading_.look(a) == reading_.look(b), Harmless::EqualParts);
        });
        mutant("final or not", {}, [&] { step.final = !step.final; });
        mutant("along the other way", {}, [&] {
            step.along = step.along == GlueAlong::Down ? GlueAlong::Width : GlueAlong::Down;
        });
        mutant("glued area + 1", {}, [&] { step.glueFace += Area(1); });
        mutant("glued area - 1", {}, [&] { step.glueFace += Area(-1); });
    }

    void special(Take& step) { lay(step.part, true, true); }

    void special(Flatten& step) {
        mutant("the other face", {},
               [&] { step.face = step.face == Face::EndGrain ? Face::LongGrain : Face::EndGrain; });
        for (const Purpose other : {Purpose::AfterGlueUp, Purpose::RowHeight, Purpose::Finished}) {
            if (other != step.purpose) {
                mutant("another purpose", {}, [&] { step.purpose = other; });
            }
        }
    }

    void special(SquareEnd& step) { left(step.left); }

    void special(Crosscut& step) {
        left(step.left);
        mutant("margin rows or not", {}, [&] { step.marginRows = !step.marginRows; });
        mutant("for panels or not", {}, [&] { step.forPanels = !step.forPanels; });
        mutant("a slice more", {}, [&] { step.slices.push_back("One more"); });
        mutant("a spare more", {}, [&] { step.spares.push_back("One more"); });
        mutant("a slice less", {}, [&] { step.slices.pop_back(); });
        mutant("a slice kept as a spare", {}, [&] {
            step.spares.insert(step.spares.begin(), step.slices.back());
            step.slices.pop_back();
        });
        if (!step.spares.empty()) {
            mutant("a spare less", {}, [&] { step.spares.pop_back(); });
            mutant("a spare among the slices", {}, [&] {
                step.slices.push_back(step.spares.front());
                step.spares.erase(step.spares.begin());
            });
            mutant("slice and spare change places", {},
                   [&] { std::swap(step.slices.back(), step.spares.front()); });
        }
        const auto equalSlices = [](const std::string&, const std::string&) {
            return Verdict(Harmless::OrderOfNames);
        };
        swapNeighbours<std::string>("slices", step.slices, equalSlices);
        swapNeighbours<std::string>("spares", step.spares, equalSlices);
    }

    void special(BringToSize& step) {
        mutant("a part less", {}, [&] { step.parts.pop_back(); });
        mutant("a part twice", {}, [&] { step.parts.push_back(step.parts.back()); });
        const Sizing& was = step.sizing;
        for (const SizedIn in : {SizedIn::Width, SizedIn::Length, SizedIn::Thickness}) {
            if (in != was.in) {
                mutant("another size", {}, [&] { step.sizing.in = in; });
            }
        }
        mutant("more off one side", {}, [&] { step.sizing.offFirst += Length::um(1); });
        mutant("less off one side", {}, [&] { step.sizing.offLast -= Length::um(1); });
        mutant("true sides or not", {}, [&] {
            step.sizing.purpose =
                was.purpose == SizedFor::TrueSides ? SizedFor::LessMargin : SizedFor::TrueSides;
        });
        swapNeighbours<std::string>(
            "parts", step.parts,
            [](const std::string&, const std::string&) { return Verdict(Harmless::OrderOfNames); });
    }

    void special(TrimField&) {}

    void special(CutChannel& step) {
        mutant("a part less", {}, [&] { step.parts.pop_back(); });
        mutant("a part twice", {}, [&] { step.parts.push_back(step.parts.back()); });
        mutant("an edge more", {}, [&] { ++step.edges; });
        mutant("an edge less", {}, [&] { --step.edges; });
        for (const ChannelFor other : {ChannelFor::Tongue, ChannelFor::Ledge, ChannelFor::Inlay}) {
            if (other != step.purpose) {
                mutant("for something else", {}, [&] { step.purpose = other; });
            }
        }
        swapNeighbours<std::string>(
            "parts", step.parts,
            [](const std::string&, const std::string&) { return Verdict(Harmless::OrderOfNames); });
    }

    void special(GlueIn& step) {
        mutant("an inset less", {}, [&] { step.insets.pop_back(); });
        mutant("an inset twice", {}, [&] { step.insets.push_back(step.insets.back()); });
        mutant("for something else", {}, [&] {
            step.purpose =
                step.purpose == ChannelFor::Tongue ? ChannelFor::Inlay : ChannelFor::Tongue;
        });
        mutant("glued area + 1", {}, [&] { step.glueFace += Area(1); });
        mutant("glued area - 1", {}, [&] { step.glueFace += Area(-1); });
        swapNeighbours<Inset>("insets", step.insets, [](const Inset&, const Inset&) {
            return Verdict(Harmless::OrderOfNames);
        });
    }

    void special(CutRails& step) {
        mutant("mitred or not", {}, [&] { step.mitred = !step.mitred; });
        mutant("a rail less", {}, [&] { step.rails.pop_back(); });
        mutant("a rail twice", {}, [&] { step.rails.push_back(step.rails.back()); });
        swapNeighbours<Rail>("rails", step.rails, [](const Rail&, const Rail&) {
            return Verdict(Harmless::OrderOfNames);
        });
    }

    void special(KeyCorners& step) {
        mutant("glued area + 1", {}, [&] { step.glueFace += Area(1); });
        mutant("glued area - 1", {}, [&] { step.glueFace += Area(-1); });
    }

    void special(FitBorder& step) {
        mutant("glued area + 1", {}, [&] { step.glueFace += Area(1); });
        mutant("glued area - 1", {}, [&] { step.glueFace += Area(-1); });
        for (const BorderDesign other :
             {BorderDesign::EndGrainBand, BorderDesign::FloatingFrame, BorderDesign::FixedFrame,
              BorderDesign::BreadboardEnds, BorderDesign::EdgeBand}) {
            if (other != step.design) {
                mutant("another design", {}, [&] { step.design = other; });
            }
        }
        for (std::size_t i = 0; i < step.pins.size(); ++i) {
            const auto offset = static_cast<std::ptrdiff_t>(i);
            mutant("a pin less", {}, [&] { step.pins.erase(step.pins.begin() + offset); });
            mutant("a pin twice", {},
                   [&] { step.pins.insert(step.pins.begin() + offset, Pin(step.pins[i])); });
        }
        mutant("may be glued", {}, [&] { step.mustNotBeGlued = !step.mustNotBeGlued; });
        mutant("a rail less", {}, [&] { step.rails.pop_back(); });
        mutant("a rail more", {}, [&] { step.rails.push_back(step.rails.back()); });
        swapNeighbours<Rail>("rails", step.rails, [this](const Rail& a, const Rail& b) {
            return harmlessIf(a.longPoint.value == b.longPoint.value &&
                                  reading_.look({a.label, {}}) == reading_.look({b.label, {}}),
                              Harmless::EqualParts);
        });
    }

    void joints(const std::string& name, std::vector<Joint> StepList::*which,
                std::vector<Joint> StepList::*other) {
        at_ = list_.steps.size();
        std::vector<Joint>& joints = list_.*which;
        const std::vector<Joint> right = joints;
        const auto judged = [&](const std::string& what) {
            judge_(here(name + what), list_, {});
            joints = right;
        };
        for (std::size_t i = 0; i < right.size(); ++i) {
            const auto offset = static_cast<std::ptrdiff_t>(i);
            for (const auto& [text, by] : nudges) {
                for (Length Joint::*length : {&Joint::at, &Joint::from, &Joint::to}) {
                    joints[i].*length += by;
                    judged(text);
                }
            }
            joints[i].vertical = !joints[i].vertical;
            judged(" the other way");
            joints.insert(joints.begin() + offset, Joint(right[i]));
            judged(" twice");
            if (i > 0) {
                std::swap(joints[i], joints[i - 1]);
                judged(" out of order");
            }
            joints.erase(joints.begin() + offset);
            judged(" not told");
            const std::vector<Joint> others = list_.*other;
            joints.erase(joints.begin() + offset);
            (list_.*other).push_back(right[i]);
            std::sort((list_.*other).begin(), (list_.*other).end());
            judged(" in the other list");
            list_.*other = others;
        }
        joints.push_back({true, job_.board.field.width(), Length(), job_.board.field.height()});
        std::sort(joints.begin(), joints.end());
        judged(" at the edge of the field");
    }

    void volumes() {
        for (Volume Ledger::*bucket :
             {&Ledger::timberIn, &Ledger::board, &Ledger::kerf, &Ledger::planed, &Ledger::trimmed,
              &Ledger::spare, &Ledger::offcut, &Ledger::grooved}) {
            for (const int by : {1, -1}) {
                (list_.ledger.*bucket) += Volume(by);
                judge_(here("ledger"), list_, {});
                list_.ledger = right_.ledger;
            }
        }
    }

    const Job& job_;
    StepList list_;
    const StepList right_;
    Reading reading_;
    const Judge& judge_;
    std::size_t at_ = 0;
};

}  // namespace

const char* reason(Harmless harmless) {
    return reasons[static_cast<std::size_t>(harmless)];
}

void forEachMutant(const Job& job, const Judge& judge) {
    Mutator(job, judge).all();
}

}  // namespace kerfwright::test
