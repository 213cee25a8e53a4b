// Flattening, crosscutting and trimming.
#include "core/replay/bench.h"
#include "core/replay/words.h"
#include "core/words/say.h"

namespace kerfwright {

void Bench::run(const Flatten& step) {
    Workpiece* workpiece =
        step.purpose == Purpose::Finished ? openField(step.part) : openPanel(step.part);
    if (workpiece == nullptr || !check(step.from, notedIn("figure", "thickness before")) ||
        !check(step.to, notedIn("figure", "thickness after"))) {
        return;
    }
    if (step.purpose == Purpose::AfterGlueUp && (workpiece->flattened || workpiece->cut)) {
        fault(say("{1} is no longer as it came out of the clamps", quoted(step.part)));
    }
    if (step.purpose == Purpose::RowHeight && !workpiece->cut) {
        fault(say("no slices have been cut from {1} that would call for another row height",
                  quoted(step.part)));
    }
    if (step.purpose == Purpose::Finished && step.to.value != board_.thickness) {
        fault(say("the board is to be {1} thick; got {2}", inWords(board_.thickness),
                  inWords(step.to.value)));
    }
    Solid& solid = workpiece->solid;
    if ((step.face == Face::EndGrain) != solid.showsEndGrain()) {
        fault(step.face == Face::EndGrain
                  ? say("{1} shows long grain, not end grain", quoted(step.part))
                  : say("{1} shows end grain, not long grain", quoted(step.part)));
    }
    if (step.from.value != solid.size[Z]) {
        fault(say("{1} should be {2} thick; it is {3}", quoted(step.part), inWords(step.from.value),
                  inWords(solid.size[Z])));
    }
    if (step.to.value <= Length() || step.to.value >= step.from.value) {
        fault(say("a workpiece of {1} cannot be flattened to {2}", inWords(step.from.value),
                  inWords(step.to.value)));
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
    if (panel == nullptr || !check(step.waste, notedIn("figure", "squaring waste")) ||
        !checkKerf(step.kerf)) {
        return;
    }
    if (panel->cut) {
        fault(say("slices have been cut from {1} before its end was squared", quoted(step.part)));
        return;
    }
    Solid& solid = panel->solid;
    const Length off = step.waste.value + step.kerf.value;
    if (off >= solid.size[Y]) {
        fault(say("{1} is {2} long; nothing is left of it when its end is squared",
                  quoted(step.part), inWords(solid.size[Y])));
        return;
    }
    ledger_.trimmed += volume(solid.face(Y), step.waste.value);
    ledger_.kerf += volume(solid.face(Y), step.kerf.value);
    solid = between(solid, Y, off, solid.size[Y]);
    if (solid.size[Y] != step.left) {
        fault(say("{1} of {2} should be left; it is {3}", inWords(step.left), quoted(step.part),
                  inWords(solid.size[Y])));
    }
}

bool Bench::cutOne(std::string_view label, Workpiece& panel, const Crosscut& step, Kind kind) {
    Solid& solid = panel.solid;
    const Length stop = step.stop.value;
    const Length length = solid.size[Y];
    if (panel.gone || length < stop) {
        fault(say("{1} is too short for the slice {2}: {3} left of it", quoted(step.part),
                  quoted(label), inWords(panel.gone ? Length() : length)));
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
    if (panel == nullptr || !check(step.stop, notedIn("figure", "stop")) || !checkKerf(step.kerf)) {
        return;
    }
    if (step.stop.value <= Length() || step.slices.size() + step.spares.size() == 0) {
        fault(say("a slice must be more than 0 long, and there must be one"));
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
        fault(say("{1} of {2} should be left; it is {3}", inWords(step.left), quoted(step.part),
                  inWords(left)));
    }
}

void Bench::bringToSize(const std::string& label, const Sizing& sizing) {
    Workpiece* workpiece = find(label);
    if (workpiece == nullptr) {
        return;
    }
    if (workpiece->kind == Kind::Field || workpiece->kind == Kind::Spare) {
        fault(say("{1} is not to be brought to a size", quoted(label)));
        return;
    }
    const bool wholePanel = workpiece->kind == Kind::Panel && !workpiece->cut;
    if (sizing.purpose == SizedFor::TrueSides && !wholePanel) {
        fault(say("{1} is no panel as it came out of the clamps", quoted(label)));
        return;
    }
    if (sizing.purpose != SizedFor::TrueSides && wholePanel) {
        fault(say("nothing has been cut from {1} that needed more", quoted(label)));
        return;
    }
    Solid& solid = workpiece->solid;
    const Axis axis = sizing.in == SizedIn::Width ? X : sizing.in == SizedIn::Length ? Y : Z;
    if (solid.size[axis] != sizing.from.value) {
        fault(say("{1} should measure {2}; it measures {3}", quoted(label),
                  inWords(sizing.from.value), inWords(solid.size[axis])));
        return;
    }
    const Length off = sizing.offFirst + sizing.offLast;
    if (sizing.offFirst < Length() || sizing.offLast < Length() || off == Length() ||
        off >= sizing.from.value || sizing.from.value - off != sizing.to.value) {
        fault(say("{1} and {2} off {3} do not bring {4} to {5}", inWords(sizing.offFirst),
                  inWords(sizing.offLast), quoted(label), inWords(sizing.from.value),
                  inWords(sizing.to.value)));
        return;
    }
    Volume& bucket = axis == Z ? ledger_.planed : ledger_.trimmed;
    bucket += volume(solid.face(axis), off);
    solid = between(solid, axis, sizing.offFirst, sizing.from.value - sizing.offLast);
}

void Bench::run(const BringToSize& step) {
    if (step.parts.empty()) {
        fault(say("nothing is named that is to be brought to a size"));
    }
    if (!check(step.sizing.from, notedIn("figure", "size before")) ||
        !check(step.sizing.to, notedIn("figure", "size after"))) {
        return;
    }
    for (const std::string& label : step.parts) {
        bringToSize(label, step.sizing);
    }
}

void Bench::run(const TrimField& step) {
    Workpiece* field = openField(step.part);
    if (field == nullptr || !check(step.margin, notedIn("figure", "trim margin"))) {
        return;
    }
    if (trimmed_) {
        fault(say("the field has been trimmed already"));
        return;
    }
    Solid& solid = field->solid;
    const Length margin = step.margin.value;
    if (margin == Length()) {
        fault(say("there is nothing to trim off the field"));
        return;
    }
    if (margin * 2 >= solid.size[X] || margin * 2 >= solid.size[Y]) {
        fault(say("nothing is left of the field when {1} comes off each side", inWords(margin)));
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
    checkSize(step.width, solid.size[X], notedIn("figure", "width of the field"));
    checkSize(step.height, solid.size[Y], notedIn("figure", "height of the field"));
}

}  // namespace kerfwright
