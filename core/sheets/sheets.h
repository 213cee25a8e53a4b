// The cut sheets: pages of drawings in mm, ready to print at true size.
#pragma once

#include "core/bench/job.h"
#include "core/drawing/drawing.h"
#include "core/project/project.h"

#include <string>
#include <vector>

namespace kerfwright {

enum class Paper {
    A4,      ///< 210 x 297 mm, ISO 216
    Letter,  ///< 8 1/2 x 11 in, 215.9 x 279.4 mm
};

struct PaperSize {
    Length width, height;
};
PaperSize paperSize(Paper paper);

struct Page {
    std::string key;    ///< stable, for file names: "overview", "cut-list", "glue-A", "slicing-A"
    std::string title;  ///< "Glue panel A"
    Drawing drawing;    ///< extent is the paper
    /// Texts that found no room and end with "…", in full.
    std::vector<std::string> cutOff = {};
    /// How far down the page it is set, without safety words and foot: 0 to 1.
    double filled = 0;
};

/// Overview, planks with their cuts and what to buy where there is a timber plan, cut list, one
/// page per glue-up, slicing, final glue-up map, border, machine settings, in the order of work.
/// Everything stays inside 190 x 259 mm, centred on the paper.
std::vector<Page> sheets(const Project& project, const Job& job, Paper paper,
                         const TimberPlan* timber = nullptr);

/// Eight hexadecimal digits that change with the project's content; printed on every page.
std::string revision(const Project& project);

}  // namespace kerfwright
