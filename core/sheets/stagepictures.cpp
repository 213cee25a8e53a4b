#include "core/sheets/stagepictures.h"

#include "core/replay/trace.h"
#include "core/sheets/stickview.h"
#include "core/words/say.h"

#include <algorithm>
#include <set>

namespace kerfwright {
namespace {

constexpr double outlineWidth = 0.6;  // mm
constexpr double leastSide =
    0.16;  // of the longer one: less is a splinter in which no wood is seen

StagePicture pictureOf(const Matter& matter, std::string title, const Solid& solid, Seen seen,
                       double longest) {
    const double wide = solid.size[X].toMm();
    const double tall = solid.size[seen == Seen::FromAbove ? Y : Z].toMm();
    const double room = longest - 2 * outlineWidth;
    const double scale = room / std::max(wide, tall);
    const Box face{outlineWidth, outlineWidth, std::max(wide * scale, leastSide * room),
                   std::max(tall * scale, leastSide * room)};
    StagePicture picture{std::move(title), {}};
    for (const Wood& wood : matter.project.woods) {
        picture.drawing.woods.push_back(wood.colour);
    }
    picture.drawing.extent = {0, 0, face.right() + outlineWidth, face.bottom() + outlineWidth};
    drawFace(picture.drawing, matter, solid, seen, face, false);
    // Dark woods on a dark ground are lost without it, and pale ones on a light one.
    picture.drawing.marks.emplace_back(Rectangle{
        {outlineWidth / 2, outlineWidth / 2, face.width + outlineWidth, face.height + outlineWidth},
        0,
        {.line = Ink::Quiet, .lineWidth = outlineWidth}});
    return picture;
}

}  // namespace

std::vector<StagePicture> stagePictures(const Project& project, const Job& job, double longest) {
    const Matter matter{project, job, Paper::A4};
    const Trace solids = trace(job.steps, job.board, job.season);
    std::vector<StagePicture> pictures;
    std::set<int> kinds;
    for (const Part& part : job.plan.parts) {
        const auto solid = solids.find(part.label);
        if (part.role == Role::Strip || solid == solids.end()) {
            continue;
        }
        const bool field = part.role == Role::Field;
        if (!field && (!part.isGlued() || !kinds.insert(part.kind).second)) {
            continue;
        }
        const bool fromEnd = !field && job.board.build == Build::EndGrain;
        pictures.push_back(pictureOf(matter, field ? say("Field") : say("Panel {1}", part.label),
                                     fromEnd ? solid->second.ready : solid->second.made,
                                     fromEnd ? Seen::FromTheNearEnd : Seen::FromAbove, longest));
    }
    return pictures;
}

}  // namespace kerfwright
