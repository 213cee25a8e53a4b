#include "core/sheets/sheets.h"

#include "core/project/file.h"
#include "core/sheets/pages.h"

#include <cstdint>

namespace kerfwright {

PaperSize paperSize(Paper paper) {
    if (paper == Paper::A4) {
        return {Length::mm(210), Length::mm(297)};
    }
    return {Length::inch(17, 2), Length::inch(11)};
}

namespace {

std::vector<Draft> drafted(const Matter& matter, const Record& record) {
    std::vector<Draft> drafts;
    addOverview(drafts, matter, record);
    addCutList(drafts, matter, record);
    for (const PanelRecord& panel : record.panels) {
        if (panel.glue) {
            addPanelGlueUp(drafts, matter, record, panel);
        }
        addSlicing(drafts, matter, record, panel);
    }
    addFinalGlueUp(drafts, matter, record);
    if (record.border) {
        addBorder(drafts, matter, record);
    }
    addHours(drafts, matter);
    addMachineSettings(drafts, matter, record);
    return drafts;
}

}  // namespace

std::vector<Page> sheets(const Project& project, const Job& job, Paper paper) {
    Matter matter{project, job, paper};
    const Record record(job.steps);
    std::vector<Draft> drafts = drafted(matter, record);
    // Only paper that needs the line gives up room for it.
    if (printRounded(drafts)) {
        matter.roundingLine = true;
        drafts = drafted(matter, record);
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
    // FNV-1a over the file's bytes: any change that would be saved shows.
    std::uint32_t hash = 2'166'136'261U;
    for (const char c : toBytes(project)) {
        hash ^= static_cast<unsigned char>(c);
        hash *= 16'777'619U;
    }
    constexpr char digits[] = "0123456789abcdef";
    std::string text(8, '0');
    for (std::size_t i = text.size(); i > 0; --i) {
        text[i - 1] = digits[hash & 0xFU];
        hash >>= 4U;
    }
    return text;
}

}  // namespace kerfwright
