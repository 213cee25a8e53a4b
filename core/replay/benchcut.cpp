// Flattening, crosscutting and trimming.
#include "core/replay/bench.h"
#include "core/replay/words.h"

namespace kerfwright {

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
        cut->forPanel = step.forPanels;
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
    noteReady(*panel);
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

void Bench::bringToSize(const std::string& label, const Sizing& sizing) {
    Workpiece* workpiece = find(label);
    if (workpiece == nullptr) {
        return;
    }
    if (workpiece->kind == Kind::Field || workpiece->kind == Kind::Spare) {
        fault(quoted(label) + " is not to be brought to a size");
        return;
    }
    const bool wholePanel = workpiece->kind == Kind::Panel && !workpiece->cut;
    if (sizing.purpose == SizedFor::TrueSides && !wholePanel) {
        fault(quoted(label) + " is no panel as it came out of the clamps");
        return;
    }
    if (sizing.purpose != SizedFor::TrueSides && wholePanel) {
        fault("nothing has been cut from " + quoted(label) + " that needed more");
        return;
    }
    Solid& solid = workpiece->solid;
    const Axis axis = sizing.in == SizedIn::Width ? X : sizing.in == SizedIn::Length ? Y : Z;
    if (solid.size[axis] != sizing.from.value) {
        fault(quoted(label) + " should measure " + inWords(sizing.from.value) + "; it measures " +
              inWords(solid.size[axis]));
        return;
    }
    const Length off = sizing.offFirst + sizing.offLast;
    if (sizing.offFirst < Length() || sizing.offLast < Length() || off == Length() ||
        off >= sizing.from.value || sizing.from.value - off != sizing.to.value) {
        fault(inWords(sizing.offFirst) + " and " + inWords(sizing.offLast) + " off " +
              quoted(label) + " do not bring " + inWords(sizing.from.value) + " to " +
              inWords(sizing.to.value));
        return;
    }
    Volume& bucket = axis == Z ? ledger_.planed : ledger_.trimmed;
    bucket += volume(solid.face(axis), off);
    solid = between(solid, axis, sizing.offFirst, sizing.from.value - sizing.offLast);
}

void Bench::run(const BringToSize& step) {
    if (step.parts.empty()) {
        fault("nothing is named that is to be brought to a size");
    }
    if (!check(step.sizing.from, "size before") || !check(step.sizing.to, "size after")) {
        return;
    }
    for (const std::string& label : step.parts) {
        bringToSize(label, step.sizing);
    }
}

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

}  // namespace kerfwright
