// The cut sheets of the first sample as PDF, from the project to the bytes.
#include "core/bench/job.h"
#include "core/project/file.h"
#include "core/sheets/sheets.h"
#include "tests/bench/pairs.h"
#include "tests/source.h"
#include "ui/paint/export.h"

#include <benchmark/benchmark.h>

#include <cstdio>
#include <memory>

namespace kerfwright::bench {

void addSheets() {
    const Result<Project> read = readProject(sourceFolder() / "samples/hut-draughts.kerfwright");
    if (!read) {
        std::fprintf(stderr, "%s\n", read.fault().text().c_str());
        return;
    }
    const auto project = std::make_shared<Project>(*read);
    const auto job = [project] {
        return makeJob(project->board, project->woods, project->shop, project->choices,
                       project->notation,
                       {project->climate, project->glue, project->purpose, project->rates});
    };
    if (const Result<Job> first = job(); !first) {
        std::fprintf(stderr, "%s\n", first.fault().text().c_str());
        return;
    }
    const auto make = [project, job] { return sheets(*project, *job(), Paper::A4); };
    std::vector<Page> blank = make();
    for (Page& page : blank) {
        page.drawing.marks.clear();
    }
    pair(
        "cut sheets of a sample to PDF", {1000, 0},
        [make] { benchmark::DoNotOptimize(toPdf(make(), Paper::A4, QStringLiteral("Sheets"))); },
        "as many blank pages to PDF",
        [blank] { benchmark::DoNotOptimize(toPdf(blank, Paper::A4, QStringLiteral("Blank"))); });
}

}  // namespace kerfwright::bench
