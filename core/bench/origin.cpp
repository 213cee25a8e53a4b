#include "core/bench/origin.h"

#include "core/replay/trace.h"

#include <algorithm>

namespace kerfwright {

int bandOf(const Job& job, const Field& wished) {
    return static_cast<int>(job.board.field.columns.size() - wished.columns.size()) / 2;
}

std::vector<std::string> sliceOrder(const StepList& list) {
    std::vector<std::string> order;
    for (const Step& step : list.steps) {
        if (const auto* glue = std::get_if<Glue>(&step.work); glue && glue->final) {
            for (const Laid& laid : glue->parts) {
                order.push_back(laid.part);
            }
        } else if (const auto* take = std::get_if<Take>(&step.work)) {
            order.push_back(take->part.part);
        }
    }
    return order;
}

std::vector<StripSpan> stripSpans(const Plan& plan, const Part& panel, const Lay& lay,
                                  Length side) {
    std::vector<StripSpan> spans;
    Length edge = -plan.margin;
    for (const Use& stick : panel.uses) {
        const Length begin = std::clamp(edge, Length(), side);
        edge += plan.parts[static_cast<std::size_t>(stick.part)].width.value;
        const bool last = &stick == &panel.uses.back();
        const Length end = last ? side : std::clamp(edge, Length(), side);
        spans.push_back(lay.flipped ? StripSpan{stick.part, side - end, side - begin}
                                    : StripSpan{stick.part, begin, end});
    }
    return spans;
}

Origin originOf(const Job& job, const Field& wished, Length x, Length y) {
    Origin origin;
    const Plan& plan = job.plan;
    if (plan.parts.empty() || x < Length() || y < Length()) {
        return origin;
    }
    // The plan is of the field as glued, with its band.
    const Field& glued = job.board.field;
    const Length band = bandOf(job, wished) > 0 ? glued.columns.front() : Length();
    const int found = useAt(plan, (plan.byColumns ? x : y) + band);
    const std::vector<std::string> order = sliceOrder(job.steps);
    const Part& whole = plan.field();
    if (found < 0 || static_cast<std::size_t>(found) >= order.size()) {
        return origin;
    }
    const auto line = static_cast<std::size_t>(found);
    const Use& use = whole.uses[line];
    if (use.part < 0 || static_cast<std::size_t>(use.part) >= plan.parts.size()) {
        return origin;
    }
    const Part& panel = plan.parts[static_cast<std::size_t>(use.part)];
    origin.slice = order[line];
    origin.panel = panel.label;
    origin.flipped = use.lay.flipped;
    origin.turnedOver = use.lay.turnedOver;
    if (panel.role == Role::Strip) {
        origin.strip = panel.label;
        return origin;
    }
    if (!plan.construction.empty()) {
        const Trace solids = trace(job.steps, job.board, job.season);
        const std::vector<std::string> chain = originAt(job.steps, solids, x + band, y + band);
        origin.strip = chain.empty() ? std::string() : chain.back();
        return origin;
    }
    const Length side = plan.byColumns ? glued.height() : glued.width();
    const Length along = (plan.byColumns ? y : x) + band;
    for (const StripSpan& span : stripSpans(plan, panel, use.lay, side)) {
        if (span.from <= along && along < span.to) {
            origin.strip = plan.parts[static_cast<std::size_t>(span.strip)].label;
        }
    }
    return origin;
}

}  // namespace kerfwright
