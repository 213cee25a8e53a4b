#include "core/replay/bench.h"

#include "core/replay/topview.h"
#include "core/replay/words.h"
#include "core/words/say.h"

namespace kerfwright {

namespace {

/// A stick of a kilometre is no stick; below that no volume leaves its 128 bits.
constexpr Length greatestFigure = Length::mm(1'000'000);

}  // namespace

Bench::Bench(const StepList& list, const Board& board, const FieldSeason& season)
    : list_(list)
    , board_(board)
    , season_(season) {
    std::size_t expected = 0;
    for (const Step& step : list.steps) {
        if (const auto* mill = std::get_if<Mill>(&step.work)) {
            for (const MillLine& line : mill->lines) {
                expected += line.strips.size();
            }
        } else if (const auto* cut = std::get_if<Crosscut>(&step.work)) {
            expected += cut->slices.size() + cut->spares.size();
        } else {
            ++expected;
        }
    }
    workpieces_.reserve(expected);
    places_.reserve(expected);
}

std::vector<std::string> Bench::carryOut(const Step& step) {
    faults_.clear();
    std::visit([this](const auto& work) { run(work); }, step.work);
    return std::move(faults_);
}

Length Bench::width() const {
    return bordered_ ? boardWidth_ : fieldLaid_ ? workpieces_[field_].solid.size[X] : Length();
}

Length Bench::height() const {
    return bordered_ ? boardHeight_ : fieldLaid_ ? workpieces_[field_].solid.size[Y] : Length();
}

Length Bench::thickness() const {
    return fieldLaid_ ? workpieces_[field_].solid.size[Z] : Length();
}

// ---- Checks that many steps share ----

bool Bench::check(const Figure& figure, const char* name) {
    detail::Wide sum = 0;
    for (const Term& term : figure.terms) {
        sum += static_cast<detail::Wide>(term.value.nm()) * term.times;
    }
    if (sum != figure.value.nm()) {
        fault(say("{1} of {2} is not the sum of its working", sayIn("figure", name),
                  inWords(figure.value)));
        return false;
    }
    if (figure.value < Length() || figure.value > greatestFigure) {
        fault(say("{1} must be 0 to 1 km; got {2}", sayIn("figure", name), inWords(figure.value)));
        return false;
    }
    return true;
}

bool Bench::checkKerf(const Figure& kerf) {
    if (!check(kerf, notedIn("figure", "kerf"))) {
        return false;
    }
    if (kerfKnown_ && kerf.value != kerf_) {
        fault(say("the kerf is {1}, but {2} at an earlier cut; there is one blade",
                  inWords(kerf.value), inWords(kerf_)));
        return false;
    }
    kerfKnown_ = true;
    kerf_ = kerf.value;
    return true;
}

void Bench::checkSize(const Figure& written, Length actual, const char* name) {
    if (check(written, name) && written.value != actual) {
        fault(say("{1} should be {2}; it is {3}", sayIn("figure", name), inWords(written.value),
                  inWords(actual)));
    }
}

Bench::Workpiece* Bench::find(std::string_view label) {
    const auto place = places_.find(label);
    if (place == places_.end()) {
        fault(say("there is no workpiece {1}", quoted(label)));
        return nullptr;
    }
    Workpiece& workpiece = workpieces_[place->second];
    if (workpiece.gone) {
        fault(say("the workpiece {1} has been used up", quoted(label)));
        return nullptr;
    }
    return &workpiece;
}

Bench::Workpiece* Bench::openField(std::string_view label) {
    Workpiece* field = find(label);
    if (field == nullptr) {
        return nullptr;
    }
    if (field->kind != Kind::Field) {
        fault(say("{1} is not the field", quoted(label)));
        return nullptr;
    }
    if (bordered_) {
        fault(say("the field has its border already"));
        return nullptr;
    }
    return field;
}

Bench::Workpiece* Bench::openPanel(std::string_view label) {
    Workpiece* panel = find(label);
    if (panel == nullptr) {
        return nullptr;
    }
    const bool stripAlone = panel->kind == Kind::Strip && panel->madeFor == label;
    if (panel->kind != Kind::Panel && !stripAlone) {
        fault(say("{1} is not a panel", quoted(label)));
        return nullptr;
    }
    return panel;
}

Bench::Workpiece* Bench::put(std::string_view label, Kind kind, Solid solid) {
    if (label.empty()) {
        fault(say("a workpiece has no label"));
        return nullptr;
    }
    if (!places_.try_emplace(label, workpieces_.size()).second) {
        fault(say("the label {1} is given twice", quoted(label)));
        return nullptr;
    }
    Workpiece& workpiece = workpieces_.emplace_back();
    workpiece.label = label;
    workpiece.kind = kind;
    workpiece.solid = std::move(solid);
    if (trace_ != nullptr) {
        (*trace_)[std::string(label)].made = workpiece.solid;
    }
    return &workpiece;
}

void Bench::noteReady(const Workpiece& workpiece) {
    if (trace_ != nullptr && !workpiece.cut) {
        (*trace_)[std::string(workpiece.label)].ready = workpiece.solid;
    }
}

void Bench::noteRest() {
    for (const Workpiece& workpiece : workpieces_) {
        if (!workpiece.gone) {
            noteReady(workpiece);
        }
    }
}

// ---- The end ----

void Bench::noteMarginRow(const std::string& part) {
    const auto place = places_.find(part);
    if (place == places_.end()) {
        marginRows_.push_back(Margin::None);
        return;
    }
    const Workpiece& workpiece = workpieces_[place->second];
    marginRows_.push_back(workpiece.kind == Kind::Panel ? Margin::NotSliced
                          : workpiece.marginRow         ? Margin::Row
                                                        : Margin::None);
}

void Bench::checkMarginRows() {
    for (std::size_t i = 0; i < marginRows_.size(); ++i) {
        // A field of one slice has no rows of which some could be outermost.
        const bool outermost = marginRows_.size() > 1 && (i == 0 || i + 1 == marginRows_.size());
        const bool carries = outermost && margin_ > Length();
        // What was glued by itself and not sliced off shows its margin in its size alone.
        if (marginRows_[i] != Margin::NotSliced && (marginRows_[i] == Margin::Row) != carries) {
            fault(carries ? say("an outermost slice was not cut as a margin row")
                          : say("a slice was cut as a margin row that carries no margin"));
            return;
        }
    }
}

void Bench::weighRest() {
    for (const Workpiece& workpiece : workpieces_) {
        if (workpiece.gone) {
            continue;
        }
        if (workpiece.kind == Kind::Field) {
            ledger_.board += workpiece.solid.volume();
        } else if (workpiece.kind == Kind::Spare) {
            ledger_.spare += workpiece.solid.volume();
        } else if (workpiece.cut) {
            ledger_.offcut += workpiece.solid.volume();
        } else {
            fault(say("{1} is left over", quoted(workpiece.label)));
        }
    }
}

void Bench::closeLedger() {
    if (ledger_.timberIn != ledger_.out()) {
        fault(say("timber has vanished or come from nowhere"));
    }
    const std::pair<const char*, Volume Ledger::*> buckets[] = {
        {noted("the volume timber in is not what the list says"), &Ledger::timberIn},
        {noted("the volume in the board is not what the list says"), &Ledger::board},
        {noted("the volume sawn to dust is not what the list says"), &Ledger::kerf},
        {noted("the volume planed off is not what the list says"), &Ledger::planed},
        {noted("the volume trimmed off is not what the list says"), &Ledger::trimmed},
        {noted("the volume in spare slices is not what the list says"), &Ledger::spare},
        {noted("the volume left in offcuts is not what the list says"), &Ledger::offcut},
        {noted("the volume out of grooves is not what the list says"), &Ledger::grooved},
    };
    for (const auto& [wrong, bucket] : buckets) {
        if (ledger_.*bucket != list_.ledger.*bucket) {
            fault(say(wrong));
        }
    }
}

std::vector<std::string> Bench::finish(bool mergeLike) {
    faults_.clear();
    if (!fieldLaid_) {
        fault(say("no field was made"));
        return std::move(faults_);
    }
    const Solid& field = workpieces_[field_].solid;
    const Corner wished = {board_.field.width(), board_.field.height(), board_.thickness};
    if (field.size != wished) {
        fault(say("the field is to be {1} × {2} × {3}; it is {4} × {5} × {6}", inWords(wished[X]),
                  inWords(wished[Y]), inWords(wished[Z]), inWords(field.size[X]),
                  inWords(field.size[Y]), inWords(field.size[Z])));
        return std::move(faults_);
    }
    if (!bordered_ && board_.border.width > Length()) {
        fault(say("the border is missing"));
    }
    if (keysCorners(board_) && !keyed_) {
        fault(say("the corners have no splines"));
    }
    const bool down = board_.grain != GrainDirection::Across;
    const bool across = board_.grain != GrainDirection::Down;
    const Axis grain = field.boxes.front().grain;
    const bool asBuilt = board_.build == Build::EndGrain ? grain == Z
                         : grain == Y                    ? down
                                                         : grain == X && across;
    for (const Cuboid& box : field.boxes) {
        if (box.grain != grain || !asBuilt) {
            fault(say("the grain does not run as the build wants"));
            break;
        }
    }
    checkMarginRows();
    for (std::string& text :
         topViewFaults(field, board_.field, list_.extraJoints, list_.omittedJoints, mergeLike)) {
        fault(std::move(text));
    }
    weighRest();
    closeLedger();
    return std::move(faults_);
}

}  // namespace kerfwright
