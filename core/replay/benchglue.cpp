// Strips and what is glued from them.
#include "core/replay/bench.h"
#include "core/replay/words.h"

namespace kerfwright {

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

bool Bench::takeUp(const Laid& part, std::string_view result, bool forField, Solid& taken) {
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
    if (workpiece->kind == Kind::Slice && workpiece->forPanel == forField) {
        fault(quoted(part.part) + (forField ? " was cut for another panel, not for the field"
                                            : " was cut for the field, not for another panel"));
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
            noteMarginRow(part.part);
        }
        Solid next;
        if (!takeUp(part, step.result, step.final, next)) {
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
    noteMarginRow(step.part.part);
    Solid whole;
    if (!takeUp(step.part, step.result, true, whole)) {
        return;
    }
    checkSize(step.width, whole.size[X], "width");
    checkSize(step.length, whole.size[Y], "length");
    checkSize(step.thickness, whole.size[Z], "thickness");
    putField(step.result, std::move(whole));
}

}  // namespace kerfwright
