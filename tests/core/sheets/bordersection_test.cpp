#include "core/bench/job.h"
#include "core/drawing/geometry.h"
#include "core/sheets/bordersection.h"
#include "core/sheets/sheets.h"
#include "tests/core/sheets/samples.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

namespace kerfwright {
namespace {

using testing::Contains;
using testing::DoubleNear;
using testing::IsEmpty;
using testing_samples::jobOf;

Project framed(BorderDesign design) {
    Project project = newProject(Unit::Millimetres);
    project.board.build =
        design == BorderDesign::BreadboardEnds ? Build::LongGrain : Build::EndGrain;
    project.board.border.width = Length::mm(50);
    project.board.border.design = design;
    return project;
}

Drawing railSection(const Project& project, double scale) {
    return drawRailSection(project.board, project.woods, jobOf(project).plan.border,
                           project.notation, {.scale = scale});
}

std::vector<std::string> textsOf(const Drawing& drawing) {
    std::vector<std::string> texts;
    for (const Mark& mark : drawing.marks) {
        if (const auto* text = std::get_if<Text>(&mark)) {
            texts.push_back(text->text);
        }
    }
    return texts;
}

/// Left edges of filled wood, sorted: where parts begin.
std::vector<double> woodEdges(const Drawing& drawing) {
    std::vector<double> edges;
    for (const Mark& mark : drawing.marks) {
        if (const auto* box = std::get_if<Rectangle>(&mark); box != nullptr && box->radius == 0) {
            edges.push_back(box->box.x);
            edges.push_back(box->box.right());
        }
    }
    std::sort(edges.begin(), edges.end());
    return edges;
}

TEST(BorderSection, IsDrawnToItsScale) {
    const Project project = framed(BorderDesign::FloatingFrame);
    const BorderFit fit = jobOf(project).plan.border;
    for (const double scale : {1.0, 2.0}) {
        const Drawing drawing = railSection(project, scale);
        const std::vector<double> edges = woodEdges(drawing);
        // From the rail's inside edge: its groove, the gap, the field's groove, the tongue's end.
        EXPECT_THAT(edges, Contains(DoubleNear(-fit.railGroove.value.toMm() * scale, 1e-9)));
        EXPECT_THAT(edges, Contains(DoubleNear(fit.gapX.value.toMm() * scale, 1e-9)));
        EXPECT_THAT(edges, Contains(DoubleNear(
                               (fit.gapX.value + fit.fieldGroove.value).toMm() * scale, 1e-9)));
        EXPECT_THAT(edges, Contains(DoubleNear(fit.fieldGroove.value.toMm() * scale, 1e-9)));
    }
}

TEST(BorderSection, SaysTheSizesOfItsGrooves) {
    const Project project = framed(BorderDesign::FloatingFrame);
    const BorderFit fit = jobOf(project).plan.border;
    const std::vector<std::string> texts = textsOf(railSection(project, 1));
    const auto says = [&](const char* name, const Figure& figure) {
        EXPECT_THAT(texts, Contains(std::string(name) + format(figure.value, project.notation)));
    };
    says("gap ", fit.gapX);
    says("rail groove ", fit.railGroove);
    says("field groove ", fit.fieldGroove);
    says("tongue ", fit.tongueWidth);
    says("", fit.tongueFromFace);
    says("", fit.tongueThickness);
}

TEST(BorderSection, ShowsALedgeWhereTheFieldLiesInARebate) {
    Project project = framed(BorderDesign::FloatingFrame);
    project.board.border.housing = Housing::Rebate;
    const BorderFit fit = jobOf(project).plan.border;
    const std::vector<std::string> texts = textsOf(railSection(project, 1));
    EXPECT_THAT(texts, Contains("ledge " + format(fit.ledge.value, project.notation)));
    EXPECT_THAT(texts, Contains("rebate " + format(fit.fieldGroove.value, project.notation)));
    EXPECT_THAT(texts, Contains(format(fit.ledgeThickness.value, project.notation)));
}

void expectNumbersApart(const Drawing& drawing, const std::string& what) {
    const auto overlap = [](const Box& a, const Box& b) {
        return a.x < b.right() && b.x < a.right() && a.y < b.bottom() && b.y < a.bottom();
    };
    for (auto one = drawing.marks.begin(); one != drawing.marks.end(); ++one) {
        const Text* text = std::get_if<Text>(&*one);
        if (text == nullptr) {
            continue;
        }
        const Box number = bounds(*one);
        for (auto other = drawing.marks.begin(); other != drawing.marks.end(); ++other) {
            const Text* second = std::get_if<Text>(&*other);
            // Bold letters of woods stand on hatch, on a ground of their own.
            const bool line = std::holds_alternative<Line>(*other) && !text->bold;
            if (other != one && (second != nullptr || line)) {
                EXPECT_FALSE(overlap(number, bounds(*other)))
                    << what << ": “" << text->text << "” and "
                    << (second != nullptr ? second->text : "a line");
            }
        }
    }
}

// No number lies on another one or on a line.
TEST(BorderSection, KeepsItsNumbersApart) {
    for (const Unit unit : {Unit::Millimetres, Unit::Inches}) {
        for (const BorderDesign design : {BorderDesign::FloatingFrame, BorderDesign::FixedFrame,
                                          BorderDesign::BreadboardEnds, BorderDesign::EdgeBand}) {
            for (const Housing housing : {Housing::Groove, Housing::Rebate}) {
                Project project = framed(design);
                project.notation = unit == Unit::Inches ? Notation::inches() : project.notation;
                project.board.border.housing = housing;
                project.board.border.inlayWidth = Length::mm(4);
                project.board.border.splineThickness = Length::mm(4);
                project.board.border.cautionRead = true;
                const std::string what = "design " + std::to_string(static_cast<int>(design));
                expectNumbersApart(railSection(project, 1), what);
                expectNumbersApart(drawCornerSection(project.board, project.woods,
                                                     jobOf(project).plan.border, project.notation),
                                   what + ", corner");
            }
        }
    }
}

TEST(BorderSection, NothingToDrawWithoutABorderOrInABand) {
    Project project = framed(BorderDesign::EndGrainBand);
    EXPECT_THAT(railSection(project, 1).marks, IsEmpty());
    project.board.border.width = Length();
    EXPECT_THAT(railSection(project, 1).marks, IsEmpty());
}

TEST(CornerSection, IsThereOnceACornerMayBeKeyed) {
    Project project = framed(BorderDesign::FixedFrame);
    project.board.border.splineThickness = Length::mm(4);
    const auto corner = [&] {
        return drawCornerSection(project.board, project.woods, jobOf(project).plan.border,
                                 project.notation);
    };
    EXPECT_THAT(corner().marks, IsEmpty());
    project.board.border.cautionRead = true;
    const BorderFit fit = jobOf(project).plan.border;
    EXPECT_THAT(textsOf(corner()),
                Contains("slot " + format(fit.splineDepth.value, project.notation)));
}

TEST(Sheets, PlanNoKeysWhileTheFrameMustNotBeGlued) {
    Project project = framed(BorderDesign::FixedFrame);
    project.board.border.splineThickness = Length::mm(4);
    const auto keys = [&] {
        const Job job = jobOf(project);
        return std::any_of(job.steps.steps.begin(), job.steps.steps.end(), [](const Step& step) {
            return std::holds_alternative<KeyCorners>(step.work);
        });
    };
    EXPECT_FALSE(keys());
    project.board.border.cautionRead = true;
    EXPECT_TRUE(keys());
}

// ISO 5455: 2 : 1, 5 : 1 ... and 1 : 2, 1 : 5 ... are the scales of drawings.
TEST(BorderSection, TakesAUsualScale) {
    EXPECT_EQ(scaleText(usualScale(20, 10, 110, 60)), "5 : 1");
    EXPECT_EQ(scaleText(usualScale(50, 30, 110, 60)), "2 : 1");
    EXPECT_EQ(scaleText(usualScale(50, 31, 110, 60)), "1 : 1");
    EXPECT_EQ(scaleText(usualScale(200, 60, 110, 60)), "1 : 2");
}

}  // namespace
}  // namespace kerfwright
