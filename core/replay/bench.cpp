#include "core/replay/bench.h"

#include "core/measure/notation.h"
#include "core/replay/topview.h"

namespace kerfwright {

namespace {

std::string inWords(Length length) {
    return format(length, Notation::millimetres(6));
}

std::string quoted(std::string_view label) {
    return "“" + std::string(label) + "”";
}

/// A stick of a kilometre is no stick; below that no volume leaves its 128 bits.
constexpr Length greatestFigure = Length::mm(1'000'000);

}  // namespace

Bench::Bench(const StepList& list, const Board& board)
    : list_(list)
    , board_(board) {
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
    return &workpiece;
}

// ---- Strips ----

void Bench::run(const Mill& step) {
    if (step.lines.empty()) {
        fault("there is nothing to mill");
    }
    for (const MillLine& line : step.lines) {
        millLine(step, line);
    }
}

void Bench::millLine(const Mill& step, const MillLine& line) {
    const bool sound =
        check(line.roughThickness, "rough thickness") && check(line.roughWidth, "rough width") &&
        check(line.roughLength, "rough length") && check(line.thickness, "thickness") &&
        check(line.width, "width") && check(line.length, "length");
    if (!sound) {
        return;
    }
    const Length t = line.thickness.value;
    const Length w = line.width.value;
    const Length l = line.length.value;
    if (t <= Length() || w <= Length() || l <= Length()) {
        fault("a strip must be more than 0 thick, wide and long");
        return;
    }
    if (t > line.roughThickness.value || w > line.roughWidth.value || l > line.roughLength.value) {
        fault("a milled strip of " + inWords(t) + " × " + inWords(w) + " × " + inWords(l) +
              " is greater than its rough timber");
        return;
    }
    if (line.strips.empty()) {
        fault("a line of the mill list names no strip");
        return;
    }
    const auto count = static_cast<std::int64_t>(line.strips.size());
    const Area roughSection = area(line.roughThickness.value, line.roughWidth.value);
    const Area section = area(t, w);
    const Volume rough = volume(roughSection, line.roughLength.value);
    const Volume rest = volume(section, line.roughLength.value);
    ledger_.timberIn += rough * count;
    ledger_.planed += (rough - rest) * count;
    ledger_.trimmed += volume(section, line.roughLength.value - l) * count;
    for (const std::string& label : line.strips) {
        if (Workpiece* strip = put(label, Kind::Strip, stick(line.wood, w, l, t))) {
            strip->madeFor = step.panel;
        }
    }
}

// ---- Gluing ----

bool Bench::takeUp(const Laid& part, std::string_view result, Solid& taken) {
    Workpiece* workpiece = find(part.part);
    if (workpiece == nullptr) {
        return false;
    }
    if (workpiece->kind == Kind::Spare) {
        fault(quoted(part.part) + " is a spare slice");
        return false;
    }
    if (workpiece->kind == Kind::Field) {
        fault("the field is not part of anything else");
        return false;
    }
    if (workpiece->kind == Kind::Strip && workpiece->madeFor != result) {
        fault("the strip " + quoted(part.part) + " was not milled for " + quoted(result));
        return false;
    }
    workpiece->gone = true;
    taken = part.lay == Lay{} ? std::move(workpiece->solid) : laid(workpiece->solid, part.lay);
    workpiece->solid = Solid();
    return true;
}

void Bench::putField(std::string_view label, Solid solid) {
    if (fieldLaid_) {
        fault("there is a field already");
        return;
    }
    if (put(label, Kind::Field, std::move(solid)) != nullptr) {
        fieldLaid_ = true;
        field_ = workpieces_.size() - 1;
    }
}

void Bench::run(const Glue& step) {
    if (step.parts.size() < 2) {
        fault("a glue-up needs two parts or more");
        return;
    }
    const Axis along = step.along == GlueAlong::Width ? X : Y;
    const Axis beside = along == X ? Y : X;
    Solid whole;
    Area glued;
    for (const Laid& part : step.parts) {
        if (step.final) {
            const auto place = places_.find(part.part);
            marginRows_.push_back(place != places_.end() && workpieces_[place->second].marginRow);
        }
        Solid next;
        if (!takeUp(part, step.result, next)) {
            return;
        }
        if (!whole.boxes.empty()) {
            if (next.size[beside] != whole.size[beside] || next.size[Z] != whole.size[Z]) {
                fault("the glued face of " + quoted(part.part) + " is " +
                      inWords(next.size[beside]) + " × " + inWords(next.size[Z]) +
                      "; the face before it is " + inWords(whole.size[beside]) + " × " +
                      inWords(whole.size[Z]));
                return;
            }
            glued += whole.face(along);
        }
        append(whole, next, along);
    }
    checkSize(step.width, whole.size[X], "width");
    checkSize(step.length, whole.size[Y], "length");
    checkSize(step.thickness, whole.size[Z], "thickness");
    if (glued != step.glueFace) {
        fault("the area to glue is not what the joints add up to");
    }
    if (step.final) {
        putField(step.result, std::move(whole));
    } else {
        put(step.result, Kind::Panel, std::move(whole));
    }
}

void Bench::run(const Take& step) {
    const auto place = places_.find(step.part.part);
    marginRows_.push_back(place != places_.end() && workpieces_[place->second].marginRow);
    Solid whole;
    if (!takeUp(step.part, step.result, whole)) {
        return;
    }
    checkSize(step.width, whole.size[X], "width");
    checkSize(step.length, whole.size[Y], "length");
    checkSize(step.thickness, whole.size[Z], "thickness");
    putField(step.result, std::move(whole));
}

// ---- Flattening and cutting ----

void Bench::run(const Flatten& step) {
    Workpiece* workpiece =
        step.purpose == Purpose::Finished ? openField(step.part) : openPanel(step.part);
    if (workpiece == nullptr || !check(step.from, "thickness before") ||
        !check(step.to, "thickness after")) {
        return;
    }
    if (step.purpose == Purpose::AfterGlueUp && (workpiece->flattened || workpiece->cut)) {
        fault(quoted(step.part) + " is no longer as it came out of the clamps");
    }
    if (step.purpose == Purpose::RowHeight && !workpiece->cut) {
        fault("no slices have been cut from " + quoted(step.part) +
              " that would call for another row height");
    }
    if (step.purpose == Purpose::Finished && step.to.value != board_.thickness) {
        fault("the board is to be " + inWords(board_.thickness) + " thick; got " +
              inWords(step.to.value));
    }
    Solid& solid = workpiece->solid;
    if ((step.face == Face::EndGrain) != solid.showsEndGrain()) {
        fault(quoted(step.part) + (step.face == Face::EndGrain
                                       ? " shows long grain, not end grain"
                                       : " shows end grain, not long grain"));
    }
    if (step.from.value != solid.size[Z]) {
        fault(quoted(step.part) + " should be " + inWords(step.from.value) + " thick; it is " +
              inWords(solid.size[Z]));
    }
    if (step.to.value <= Length() || step.to.value >= step.from.value) {
        fault("a workpiece of " + inWords(step.from.value) + " cannot be flattened to " +
              inWords(step.to.value));
    }
    if (!faults_.empty()) {
        return;
    }
    const Length off = step.from.value - step.to.value;
    ledger_.planed += volume(solid.face(Z), off);
    const Length top = solid.size[Z] - half(off);
    solid = between(solid, Z, top - step.to.value, top);
    workpiece->flattened = true;
}

void Bench::run(const SquareEnd& step) {
    Workpiece* panel = openPanel(step.part);
    if (panel == nullptr || !check(step.waste, "squaring waste") || !checkKerf(step.kerf)) {
        return;
    }
    if (panel->cut) {
        fault("slices have been cut from " + quoted(step.part) + " before its end was squared");
        return;
    }
    Solid& solid = panel->solid;
    const Length off = step.waste.value + step.kerf.value;
    if (off >= solid.size[Y]) {
        fault(quoted(step.part) + " is " + inWords(solid.size[Y]) +
              " long; nothing is left of it when its end is squared");
        return;
    }
    ledger_.trimmed += volume(solid.face(Y), step.waste.value);
    ledger_.kerf += volume(solid.face(Y), step.kerf.value);
    solid = between(solid, Y, off, solid.size[Y]);
    if (solid.size[Y] != step.left) {
        fault(inWords(step.left) + " of " + quoted(step.part) + " should be left; it is " +
              inWords(solid.size[Y]));
    }
}

bool Bench::cutOne(std::string_view label, Workpiece& panel, const Crosscut& step, Kind kind) {
    Solid& solid = panel.solid;
    const Length stop = step.stop.value;
    const Length length = solid.size[Y];
    if (panel.gone || length < stop) {
        fault(quoted(step.part) + " is too short for the slice " + quoted(label) + ": " +
              inWords(panel.gone ? Length() : length) + " left of it");
        return false;
    }
    Solid slice = between(solid, Y, Length(), stop);
    // The last kerf may run out of the end of the wood; only the wood that is there turns to dust.
    const Length used = std::min(stop + step.kerf.value, length);
    ledger_.kerf += volume(solid.face(Y), used - stop);
    if (used == length) {
        panel.gone = true;
        solid = Solid();
    } else {
        solid = between(solid, Y, used, length);
    }
    // `panel` may not be used after `put`; the bench has room for all workpieces, see Bench().
    Workpiece* cut = put(label, kind, std::move(slice));
    if (cut != nullptr) {
        cut->marginRow = step.marginRows;
    }
    return cut != nullptr;
}

void Bench::run(const Crosscut& step) {
    Workpiece* panel = openPanel(step.part);
    if (panel == nullptr || !check(step.stop, "stop") || !checkKerf(step.kerf)) {
        return;
    }
    if (step.stop.value <= Length() || step.slices.size() + step.spares.size() == 0) {
        fault("a slice must be more than 0 long, and there must be one");
        return;
    }
    panel->cut = true;
    for (const std::string& label : step.slices) {
        if (!cutOne(label, *panel, step, Kind::Slice)) {
            return;
        }
    }
    for (const std::string& label : step.spares) {
        if (!cutOne(label, *panel, step, Kind::Spare)) {
            return;
        }
    }
    const Length left = panel->gone ? Length() : panel->solid.size[Y];
    if (left != step.left) {
        fault(inWords(step.left) + " of " + quoted(step.part) + " should be left; it is " +
              inWords(left));
    }
}

// ---- The field ----

void Bench::run(const TrimField& step) {
    Workpiece* field = openField(step.part);
    if (field == nullptr || !check(step.margin, "trim margin")) {
        return;
    }
    if (trimmed_) {
        fault("the field has been trimmed already");
        return;
    }
    Solid& solid = field->solid;
    const Length margin = step.margin.value;
    if (margin == Length()) {
        fault("there is nothing to trim off the field");
        return;
    }
    if (margin * 2 >= solid.size[X] || margin * 2 >= solid.size[Y]) {
        fault("nothing is left of the field when " + inWords(margin) + " comes off each side");
        return;
    }
    const Length right = solid.size[X] - margin;
    const Length bottom = solid.size[Y] - margin;
    const Area before = solid.face(Z);
    const Length high = solid.size[Z];
    solid = between(between(solid, X, margin, right), Y, margin, bottom);
    ledger_.trimmed += volume(before, high) - volume(solid.face(Z), high);
    trimmed_ = true;
    margin_ = margin;
    checkSize(step.width, solid.size[X], "width of the field");
    checkSize(step.height, solid.size[Y], "height of the field");
}

void Bench::run(const FitBorder& step) {
    Workpiece* field = openField(step.part);
    if (field == nullptr || !check(step.width, "width of the border")) {
        return;
    }
    const Length rail = board_.border.width;
    if (rail <= Length()) {
        fault("the board has no border");
        return;
    }
    if (step.width.value != rail) {
        fault("the border is to be " + inWords(rail) + " wide; got " + inWords(step.width.value));
    }
    if (!step.mustNotBeGlued) {
        fault("the field moves; a border of long grain round it must not be glued");
    }
    if (step.rails.size() != 4) {
        fault("a border has four rails; got " + std::to_string(step.rails.size()));
        return;
    }
    const Corner inside = field->solid.size;
    for (std::size_t i = 0; i < step.rails.size(); ++i) {
        const Rail& cut = step.rails[i];
        const Length longPoint = inside[i % 2 == 0 ? X : Y] + rail * 2;
        checkSize(cut.longPoint, longPoint, "length of the rail, long point to long point,");
        Workpiece* strip = find(cut.label);
        if (strip == nullptr) {
            return;
        }
        if (strip->kind != Kind::Strip || !strip->madeFor.empty()) {
            fault(quoted(cut.label) + " was not milled as a rail");
            return;
        }
        const Cuboid& wood = strip->solid.boxes.front();
        const Corner& size = strip->solid.size;
        if (wood.wood != board_.border.wood) {
            fault("the rail " + quoted(cut.label) + " is not of the wood of the border");
        }
        if (size[X] != rail || size[Z] != inside[Z]) {
            fault("the rail " + quoted(cut.label) + " should be " + inWords(inside[Z]) + " × " +
                  inWords(rail) + "; it is " + inWords(size[Z]) + " × " + inWords(size[X]));
        }
        if (size[Y] < longPoint) {
            fault("the rail " + quoted(cut.label) + " must be at least " + inWords(longPoint) +
                  " long; it is " + inWords(size[Y]));
        }
        // Seen from above a trapezium: the long point on one side, the field's side on the other.
        const Volume kept = volume(inside[Z], rail, longPoint - rail);
        ledger_.board += kept;
        ledger_.trimmed += strip->solid.volume() - kept;
        strip->gone = true;
    }
    bordered_ = true;
    boardWidth_ = inside[X] + rail * 2;
    boardHeight_ = inside[Y] + rail * 2;
    checkSize(step.boardWidth, boardWidth_, "width of the board");
    checkSize(step.boardHeight, boardHeight_, "height of the board");
}

// ---- The end ----

void Bench::checkMarginRows() {
    for (std::size_t i = 0; i < marginRows_.size(); ++i) {
        // A field of one slice has no rows of which some could be outermost.
        const bool outermost = marginRows_.size() > 1 && (i == 0 || i + 1 == marginRows_.size());
        const bool carries = outermost && margin_ > Length();
        if ((marginRows_[i] != 0) != carries) {
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
        {"timber in", &Ledger::timberIn},    {"in the board", &Ledger::board},
        {"sawn to dust", &Ledger::kerf},     {"planed off", &Ledger::planed},
        {"trimmed off", &Ledger::trimmed},   {"in spare slices", &Ledger::spare},
        {"left in offcuts", &Ledger::offcut}};
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
