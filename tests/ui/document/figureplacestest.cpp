#include "ui/document/figureplaces.h"

#include "core/board/patterns.h"
#include "core/project/project.h"

#include <gtest/gtest.h>

#include <cmath>
#include <map>
#include <set>
#include <tuple>

namespace kerfwright {
namespace {

Job planned(const Project& project) {
    Result<Job> job =
        makeJob(project.board, project.woods, project.shop, project.choices, project.notation);
    EXPECT_TRUE(job);
    return std::move(*job);
}

/// Two woods in a checker of 6 × 5.
Project checker(Build build) {
    Project project = newProject(Unit::Millimetres);
    project.board.build = build;
    project.board.border = Border();
    project.board.field = plainGrid(6, 5, Length::mm(40), Length::mm(40), 0);
    for (Piece& piece : project.board.field.pieces) {
        piece.wood = (piece.column + piece.row) % 2;
    }
    return project;
}

double dot(const Vector& a, const Vector& b) {
    return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

TEST(FigurePlaceOfAPiece, IsAPlaneOfItsStripsTree) {
    for (const Build build : {Build::EndGrain, Build::LongGrain}) {
        const Project project = checker(build);
        const Job job = planned(project);
        const FigurePlaces places = figurePlaces(job, project.woods);
        ASSERT_EQ(places.size(), project.board.field.pieces.size());
        for (const FigurePlace& place : places) {
            EXPECT_NEAR(dot(place.face.across, place.face.across), 1, 1e-9);
            EXPECT_NEAR(dot(place.face.down, place.face.down), 1, 1e-9);
            EXPECT_NEAR(dot(place.face.across, place.face.down), 0, 1e-9);
            // w is the third: in end grain the face lies across it, in long grain along it.
            const double along = std::abs(place.face.across[2]) + std::abs(place.face.down[2]);
            EXPECT_NEAR(along, build == Build::EndGrain ? 0 : 1, 1e-9);
            if (build == Build::LongGrain) {
                EXPECT_NEAR(std::abs(place.face.down[2]), job.plan.grainDown ? 1 : 0, 1e-9);
            }
        }
    }
}

TEST(FigurePlaceOfAPiece, IsOfOneTreeForAllSlicesOfAStrip) {
    const Project project = checker(Build::EndGrain);
    const Job job = planned(project);
    const FigurePlaces places = figurePlaces(job, project.woods);
    std::map<std::uint32_t, std::vector<const FigurePlace*>> bySeed;
    for (const FigurePlace& place : places) {
        bySeed[place.cut.seed].push_back(&place);
    }
    std::size_t strips = 0;
    for (const Step& step : job.steps.steps) {
        if (const auto* mill = std::get_if<Mill>(&step.work)) {
            for (const MillLine& line : mill->lines) {
                strips += line.strips.size();
            }
        }
    }
    EXPECT_EQ(bySeed.size(), strips);
    std::size_t mirrored = 0;
    for (const auto& [seed, slices] : bySeed) {
        for (const FigurePlace* slice : slices) {
            EXPECT_EQ(slice->cut, slices.front()->cut);
            EXPECT_EQ(slice->piece.wood, slices.front()->piece.wood);
            // Each shows the whole section, as it is or turned: its middle is the strip's.
            Vector middle = slice->face.origin;
            for (std::size_t axis = 0; axis < 3; ++axis) {
                middle[axis] += 20 * slice->face.across[axis] + 20 * slice->face.down[axis];
            }
            EXPECT_NEAR(middle[0], slice->cut.radius, 3.5);
            EXPECT_NEAR(middle[1], 0, 3.5);
            mirrored += std::size_t{dot(slice->face.across, slices.front()->face.across) < -0.99};
        }
    }
    // A checker is made by flipping every other slice.
    EXPECT_GT(mirrored, 0U);
    EXPECT_LT(mirrored, places.size() / 2 + 1);
}

TEST(FigurePlaceOfAPiece, RunsOnFromSliceToSliceInLongGrain) {
    const Project project = checker(Build::LongGrain);
    const FigurePlaces places = figurePlaces(planned(project), project.woods);
    std::map<std::uint32_t, std::set<long>> alongs;
    std::size_t slices = 0;
    for (const FigurePlace& place : places) {
        alongs[place.cut.seed].insert(std::lround(place.face.origin[2]));
        ++slices;
    }
    std::size_t different = 0;
    for (const auto& [seed, along] : alongs) {
        different += along.size();
    }
    // No two slices show the same part of their strip.
    EXPECT_EQ(different, slices);
}

TEST(FigurePlaceOfAPiece, StaysWhileTheBoardIsPaintedAndHasNoPlan) {
    const Project project = checker(Build::EndGrain);
    const FigurePlaces before = figurePlaces(planned(project), project.woods);
    Board painted = project.board;
    painted.field.pieces[7].wood = 1 - painted.field.pieces[7].wood;
    const FigurePlaces after = figurePlaces(painted, project.woods, before, true);
    ASSERT_EQ(after.size(), before.size());
    for (std::size_t i = 0; i < after.size(); ++i) {
        EXPECT_EQ(after[i].cut, before[i].cut) << i;
        EXPECT_EQ(after[i].face, before[i].face) << i;
        EXPECT_EQ(after[i].piece, painted.field.pieces[i]) << i;
    }
}

TEST(FigurePlaceOfAPiece, WithoutAnyPlanIsAStickOfItsOwnAndAlwaysTheSame) {
    for (const bool grainDown : {true, false}) {
        const Project project = checker(Build::LongGrain);
        const FigurePlaces one = figurePlaces(project.board, project.woods, {}, grainDown);
        const FigurePlaces two = figurePlaces(project.board, project.woods, {}, grainDown);
        std::set<std::uint32_t> seeds;
        for (std::size_t i = 0; i < one.size(); ++i) {
            EXPECT_EQ(one[i].cut, two[i].cut);
            EXPECT_EQ(one[i].face, two[i].face);
            EXPECT_NEAR(std::abs(one[i].face.down[2]), grainDown ? 1 : 0, 1e-9);
            seeds.insert(one[i].cut.seed);
        }
        EXPECT_EQ(seeds.size(), one.size());
    }
}

TEST(FigureOfABorder, RunsOnRoundTheMitres) {
    const Wood& wood = woodCatalogue().front();
    constexpr double width = 30;
    constexpr double boardWidth = 400;
    constexpr double boardHeight = 250;
    const auto at = [&](int side, double x, double y) {
        const RailPlace place = railPlace(side, width, boardWidth, boardHeight, wood);
        Vector point = place.face.origin;
        for (std::size_t axis = 0; axis < 3; ++axis) {
            point[axis] += x * place.face.across[axis] + y * place.face.down[axis];
        }
        return point;
    };
    // At a distance from the outside edge, the same rings on both sides of a mitre.
    for (const double in : {0.0, 10.0, 25.0}) {
        const std::array<std::pair<Vector, Vector>, 3> corners = {
            {{at(0, boardWidth - in, in), at(1, width - in, in)},
             {at(1, width - in, boardHeight - in), at(2, boardWidth - in, width - in)},
             {at(2, in, width - in), at(3, in, boardHeight - in)}}};
        for (const auto& [one, other] : corners) {
            EXPECT_NEAR(one[0], other[0], 1e-9);
            EXPECT_NEAR(one[1], other[1], 1e-9);
            EXPECT_NEAR(one[2], other[2], 2 * width);
        }
    }
}

double areaOf(const std::vector<Point>& corners) {
    double twice = 0;
    for (std::size_t i = 0; i < corners.size(); ++i) {
        const Point& a = corners[i];
        const Point& b = corners[(i + 1) % corners.size()];
        twice += a.x * b.y - b.x * a.y;
    }
    return std::abs(twice) / 2;
}

TEST(FacesWithFigure, CoverTheBoardButForTheGap) {
    for (const BorderDesign design : {BorderDesign::FloatingFrame, BorderDesign::FixedFrame,
                                      BorderDesign::EndGrainBand, BorderDesign::BreadboardEnds}) {
        for (const int width : {0, 30}) {
            Project project = checker(design == BorderDesign::BreadboardEnds ? Build::LongGrain
                                                                             : Build::EndGrain);
            project.board.border.design = design;
            project.board.border.width = Length::mm(width);
            project.board.border.wood = 1;
            const Board glued = asGlued(project.board);
            const Surround room = surroundOf(project.board, true, Length::mm(2), Length::mm(1));
            const std::vector<FiguredFace> faces = figuredFaces(
                project.board, room, project.woods, figurePlaces(glued, project.woods, {}, true));
            double area = 0;
            for (const FiguredFace& face : faces) {
                area += areaOf(face.corners);
            }
            const BoardSize size = sizeOf(project.board, room);
            const double wide = size.width.toMm();
            const double high = size.height.toMm();
            const bool hasBorder = glued.border.isThere();
            const double inside =
                hasBorder ? (wide - 2 * room.railX.toMm()) * (high - 2 * room.railY.toMm()) : 0;
            const double field = glued.field.width().toMm() * glued.field.height().toMm();
            EXPECT_NEAR(area, hasBorder ? wide * high - inside + field : field, 1e-6)
                << static_cast<int>(design) << ", " << width;
        }
    }
}

}  // namespace
}  // namespace kerfwright
