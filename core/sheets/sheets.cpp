#include "core/sheets/sheets.h"

#include "core/measure/hexadecimal.h"
#include "core/project/file.h"
#include "core/sheets/pages.h"
#include "core/sheets/plankpages.h"
#include "core/sheets/settle.h"

#include <cstdint>
#include <functional>

namespace kerfwright {

PaperSize paperSize(Paper paper) {
    if (paper == Paper::A4) {
        return {Length::mm(210), Length::mm(297)};
    }
    return {Length::inch(17, 2), Length::inch(11)};
}

namespace {

/// Panels of one kind that stay whole are glued one like the other; every other stands alone.
std::vector<const PanelRecord*> gluedAlike(const Matter& matter, const Record& record,
                                           const PanelRecord& panel) {
    const auto partOf = [&](const PanelRecord& one) -> const Part* {
        for (const Part& part : matter.job.plan.parts) {
            if (part.label == one.label && part.role == Role::Panel) {
                return &part;
            }
        }
        return nullptr;
    };
    std::vector<const PanelRecord*> alike;
    const Part* own = partOf(panel);
    for (const PanelRecord& one : record.panels) {
        const Part* other = partOf(one);
        const bool same = own != nullptr && other != nullptr && own->keptWhole &&
                          other->keptWhole && own->kind == other->kind &&
                          own->width.value == other->width.value &&
                          own->length.value == other->length.value &&
                          own->thickness.value == other->thickness.value;
        if (same || &one == &panel) {
            alike.push_back(&one);
        }
    }
    return alike;
}

std::vector<Draft> drafted(const Matter& matter, const Record& record, const TimberPlan* timber) {
    std::vector<Draft> drafts;
    // Every kind of sheet is settled for itself.
    const auto add = [&](const std::function<void(std::vector<Draft>&, const Matter&)>& set) {
        settle(drafts, matter, set);
    };
    const auto addOf = [&](void (*set)(std::vector<Draft>&, const Matter&, const Record&)) {
        add([&](std::vector<Draft>& to, const Matter& with) { set(to, with, record); });
    };
    addOf(addOverview);
    if (timber != nullptr) {
        addTimber(drafts, matter, *timber);
    }
    addOf(addCutList);
    for (const PanelRecord& panel : record.panels) {
        if (panel.deep) {
            const auto alike = gluedAlike(matter, record, panel);
            if (alike.front() == &panel) {
                add([&](std::vector<Draft>& to, const Matter& with) {
                    addDeepGlueUp(to, with, record, alike);
                });
            }
        } else if (panel.glue) {
            add([&](std::vector<Draft>& to, const Matter& with) {
                addPanelGlueUp(to, with, record, panel);
            });
        }
        if (record.isCutUp(panel)) {
            add([&](std::vector<Draft>& to, const Matter& with) {
                addSlicing(to, with, record, panel);
            });
        }
    }
    addOf(addFinalGlueUp);
    if (record.border) {
        addOf(addBorder);
        add(addJoinery);
    }
    add(addHours);
    addOf(addMachineSettings);
    return drafts;
}

}  // namespace

std::vector<Page> sheets(const Project& project, const Job& job, Paper paper,
                         const TimberPlan* timber) {
    Matter matter{project, job, paper};
    Record record(job.steps);
    record.follow(job.board, job.season);
    std::vector<Draft> drafts = drafted(matter, record, timber);
    // Only paper that needs the line gives up room for it.
    if (printRounded(drafts)) {
        matter.roundingLine = true;
        drafts = drafted(matter, record, timber);
    }
    stamp(drafts, matter);

    std::vector<Page> pages;
    pages.reserve(drafts.size());
    for (Draft& draft : drafts) {
        pages.push_back(std::move(draft.page));
    }
    return pages;
}

std::string revision(const Project& project) {
    // FNV-1a over the file's bytes: any change that would be saved shows, but for ticks: sheets
    // that hang above the bench are no older for a caution that was seen to.
    Project plan = project;
    plan.seenTo.clear();
    std::uint32_t hash = 2'166'136'261U;
    for (const char c : toBytes(plan)) {
        hash ^= static_cast<unsigned char>(c);
        hash *= 16'777'619U;
    }
    return hexadecimal(hash, 8);
}

}  // namespace kerfwright
