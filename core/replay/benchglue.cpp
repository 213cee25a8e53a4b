// Strips and what is glued from them.
#include "core/replay/bench.h"
#include "core/replay/words.h"
#include "core/words/say.h"

namespace kerfwright {

void Bench::run(const Mill& step) {
    if (step.lines.empty()) {
        fault(say("there is nothing to mill"));
    }
    for (const MillLine& line : step.lines) {
        millLine(step, line);
    }
}

void Bench::millLine(const Mill& step, const MillLine& line) {
    const bool sound = check(line.roughThickness, notedIn("figure", "rough thickness")) &&
                       check(line.roughWidth, notedIn("figure", "rough width")) &&
                       check(line.roughLength, notedIn("figure", "rough length")) &&
                       check(line.thickness, notedIn("figure", "thickness")) &&
                       check(line.width, notedIn("figure", "width")) &&
                       check(line.length, notedIn("figure", "length"));
    if (!sound) {
        return;
    }
    const Length t = line.thickness.value;
    const Length w = line.width.value;
    const Length l = line.length.value;
    if (t <= Length() || w <= Length() || l <= Length()) {
        fault(say("a strip must be more than 0 thick, wide and long"));
        return;
    }
    if (t > line.roughThickness.value || w > line.roughWidth.value || l > line.roughLength.value) {
        fault(say("a milled strip of {1} × {2} × {3} is greater than its rough timber", inWords(t),
                  inWords(w), inWords(l)));
        return;
    }
    if (line.strips.empty()) {
        fault(say("a line of the mill list names no strip"));
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

bool Bench::takeUp(const Laid& part, std::string_view result, bool forField, Solid& taken) {
    Workpiece* workpiece = find(part.part);
    if (workpiece == nullptr) {
        return false;
    }
    if (workpiece->kind == Kind::Spare) {
        fault(say("{1} is a spare slice", quoted(part.part)));
        return false;
    }
    if (workpiece->kind == Kind::Field) {
        fault(say("the field is not part of anything else"));
        return false;
    }
    if (workpiece->kind == Kind::Strip && workpiece->madeFor != result) {
        fault(say("the strip {1} was not milled for {2}", quoted(part.part), quoted(result)));
        return false;
    }
    if (workpiece->kind == Kind::Slice && workpiece->forPanel == forField) {
        fault(forField
                  ? say("{1} was cut for another panel, not for the field", quoted(part.part))
                  : say("{1} was cut for the field, not for another panel", quoted(part.part)));
        return false;
    }
    noteReady(*workpiece);
    workpiece->gone = true;
    taken = part.lay == Lay{} ? std::move(workpiece->solid) : laid(workpiece->solid, part.lay);
    workpiece->solid = Solid();
    return true;
}

void Bench::putField(std::string_view label, Solid solid) {
    if (fieldLaid_) {
        fault(say("there is a field already"));
        return;
    }
    if (put(label, Kind::Field, std::move(solid)) != nullptr) {
        fieldLaid_ = true;
        field_ = workpieces_.size() - 1;
    }
}

void Bench::run(const Glue& step) {
    if (step.parts.size() < 2) {
        fault(say("a glue-up needs two parts or more"));
        return;
    }
    const Axis along = step.along == GlueAlong::Width ? X : Y;
    const Axis beside = along == X ? Y : X;
    Solid whole;
    Area glued;
    for (const Laid& part : step.parts) {
        if (step.final) {
            noteMarginRow(part.part);
        }
        Solid next;
        if (!takeUp(part, step.result, step.final, next)) {
            return;
        }
        if (!whole.boxes.empty()) {
            if (next.size[beside] != whole.size[beside] || next.size[Z] != whole.size[Z]) {
                fault(say("the glued face of {1} is {2} × {3}; the face before it is {4} × {5}",
                          quoted(part.part), inWords(next.size[beside]), inWords(next.size[Z]),
                          inWords(whole.size[beside]), inWords(whole.size[Z])));
                return;
            }
            glued += whole.face(along);
        }
        append(whole, next, along);
    }
    checkSize(step.width, whole.size[X], notedIn("figure", "width"));
    checkSize(step.length, whole.size[Y], notedIn("figure", "length"));
    checkSize(step.thickness, whole.size[Z], notedIn("figure", "thickness"));
    if (glued != step.glueFace) {
        fault(say("the area to glue is not what the joints add up to"));
    }
    if (step.final) {
        putField(step.result, std::move(whole));
    } else {
        put(step.result, Kind::Panel, std::move(whole));
    }
}

void Bench::run(const Take& step) {
    noteMarginRow(step.part.part);
    Solid whole;
    if (!takeUp(step.part, step.result, true, whole)) {
        return;
    }
    checkSize(step.width, whole.size[X], notedIn("figure", "width"));
    checkSize(step.length, whole.size[Y], notedIn("figure", "length"));
    checkSize(step.thickness, whole.size[Z], notedIn("figure", "thickness"));
    putField(step.result, std::move(whole));
}

}  // namespace kerfwright
