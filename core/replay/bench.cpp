#include "core/replay/bench.h"

#include "core/replay/topview.h"
#include "core/replay/words.h"

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
        fault(std::string(name) + " of " + inWords(figure.value) +
              " is not the sum of its working");
        return false;
    }
    if (figure.value < Length() || figure.value > greatestFigure) {
        fault(std::string(name) + " must be 0 to 1 km; got " + inWords(figure.value));
        return false;
    }
    return true;
}

bool Bench::checkKerf(const Figure& kerf) {
    if (!check(kerf, "kerf")) {
        return false;
    }
    if (kerfKnown_ && kerf.value != kerf_) {
        fault("the kerf is " + inWords(kerf.value) + ", but " + inWords(kerf_) +
              " at an earlier cut; there is one blade");
        return false;
    }
    kerfKnown_ = true;
    kerf_ = kerf.value;
    return true;
}

void Bench::checkSize(const Figure& written, Length actual, const char* name) {
    if (check(written, name) && written.value != actual) {
        fault(std::string(name) + " should be " + inWords(written.value) + "; it is " +
              inWords(actual));
    }
}

Bench::Workpiece* Bench::find(std::string_view label) {
    const auto place = places_.find(label);
    if (place == places_.end()) {
        fault("there is no workpiece " + quoted(label));
        return nullptr;
    }
    Workpiece& workpiece = workpieces_[place->second];
    if (workpiece.gone) {
        fault("the workpiece " + quoted(label) + " has been used up");
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
        fault(quoted(label) + " is not the field");
        return nullptr;
    }
    if (bordered_) {
        fault("the field has its border already");
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
        fault(quoted(label) + " is not a panel");
        return nullptr;
    }
    return panel;
}

Bench::Workpiece* Bench::put(std::string_view label, Kind kind, Solid solid) {
    if (label.empty()) {
        fault("a workpiece has no label");
        return nullptr;
    }
    if (!places_.try_emplace(label, workpieces_.size()).second) {
        fault("the label " + quoted(label) + " is given twice");
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
            fault(carries ? "an outermost slice was not cut as a margin row"
                          : "a slice was cut as a margin row that carries no margin");
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
            fault(quoted(workpiece.label) + " is left over");
        }
    }
}

void Bench::closeLedger() {
    if (ledger_.timberIn != ledger_.out()) {
        fault("timber has vanished or come from nowhere");
    }
    const std::pair<const char*, Volume Ledger::*> buckets[] = {
        {"timber in", &Ledger::timberIn},     {"in the board", &Ledger::board},
        {"sawn to dust", &Ledger::kerf},      {"planed off", &Ledger::planed},
        {"trimmed off", &Ledger::trimmed},    {"in spare slices", &Ledger::spare},
        {"left in offcuts", &Ledger::offcut}, {"out of grooves", &Ledger::grooved}};
    for (const auto& [name, bucket] : buckets) {
        if (ledger_.*bucket != list_.ledger.*bucket) {
            fault(std::string("the volume ") + name + " is not what the list says");
        }
    }
}

std::vector<std::string> Bench::finish(bool mergeLike) {
    faults_.clear();
    if (!fieldLaid_) {
        fault("no field was made");
        return std::move(faults_);
    }
    const Solid& field = workpieces_[field_].solid;
    const Corner wished = {board_.field.width(), board_.field.height(), board_.thickness};
    if (field.size != wished) {
        fault("the field is to be " + inWords(wished[X]) + " × " + inWords(wished[Y]) + " × " +
              inWords(wished[Z]) + "; it is " + inWords(field.size[X]) + " × " +
              inWords(field.size[Y]) + " × " + inWords(field.size[Z]));
        return std::move(faults_);
    }
    if (!bordered_ && board_.border.width > Length()) {
        fault("the border is missing");
    }
    if (keysCorners(board_) && !keyed_) {
        fault("the corners have no splines");
    }
    const bool down = board_.grain != GrainDirection::Across;
    const bool across = board_.grain != GrainDirection::Down;
    const Axis grain = field.boxes.front().grain;
    const bool asBuilt = board_.build == Build::EndGrain ? grain == Z
                         : grain == Y                    ? down
                                                         : grain == X && across;
    for (const Cuboid& box : field.boxes) {
        if (box.grain != grain || !asBuilt) {
            fault("the grain does not run as the build wants");
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
