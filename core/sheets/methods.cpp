#include "core/sheets/methods.h"

#include "core/words/say.h"

#include <algorithm>

namespace kerfwright {

FlatWork flatWork(const Record& record, const Flatten& flatten, int number) {
    FlatWork work{{}, {}, flatten.face, false};
    if (flatten.purpose == Purpose::Finished) {
        const auto measure = [&](const Figure& across, const Figure& down, bool grainAcross) {
            work.width = grainAcross ? down.value : across.value;
            work.length = grainAcross ? across.value : down.value;
        };
        if (record.finalGlue) {
            measure(record.finalGlue->width, record.finalGlue->length, record.byColumns());
            work.endJoints = flatten.face == Face::LongGrain && record.finalGlue->parts.size() > 1;
        } else if (record.take) {
            measure(record.take->width, record.take->length, record.take->part.lay.turned);
        }
        return work;
    }
    const auto panel =
        std::find_if(record.panels.begin(), record.panels.end(),
                     [&](const PanelRecord& one) { return one.label == flatten.part; });
    if (panel == record.panels.end()) {
        return work;
    }
    work.width = panel->width();
    work.length = panel->length().value;
    work.endJoints = panel->glue && panel->glue->along == GlueAlong::Down;
    for (const int step : panel->later) {
        if (step >= number) {
            break;
        }
        const Work& before = record.work(step);
        if (const auto* square = std::get_if<SquareEnd>(&before)) {
            work.length = square->left;
        } else if (const auto* cut = std::get_if<Crosscut>(&before)) {
            work.length = cut->left;
        } else if (const auto* sized = std::get_if<BringToSize>(&before);
                   sized != nullptr && sized->parts.front() == flatten.part) {
            if (sized->sizing.in == SizedIn::Width) {
                work.width = sized->sizing.to.value;
            } else if (sized->sizing.in == SizedIn::Length) {
                work.length = sized->sizing.to.value;
            }
        }
    }
    return work;
}

bool planerTakes(const FlatWork& work, const Shop& shop) {
    return work.face == Face::LongGrain && !work.endJoints && work.width <= shop.planerWidth &&
           work.length >= shop.planerShortest;
}

std::string flatteningTools(const FlatWork& work, const Shop& shop) {
    return planerTakes(work, shop)
               ? say("thickness planer after one face has been made flat, or drum sander")
               : say("drum sander or router sled");
}

std::string whyNoPlaner(const FlatWork& work, const Shop& shop) {
    if (planerTakes(work, shop)) {
        return {};
    }
    if (work.face == Face::EndGrain) {
        return say("End grain: never a thickness planer.");
    }
    if (work.endJoints) {
        return say("Long grain: a planer tears out at the end joints.");
    }
    return work.width > shop.planerWidth ? say("Too wide for the shop's planer.")
                                         : say("Too short for the shop's planer.");
}

bool standsOnEdge(const MillLine& line, const Wood& wood) {
    return line.roughThickness.value > wood.timber.thickness;
}

bool tooShortToMillSingly(const MillLine& line, const Shop& shop) {
    return line.roughLength.value < shop.planerShortest;
}

}  // namespace kerfwright
