// Borders that change what the board view counts in: bands of end grain, whose pieces are part of
// the field as glued, and breadboard ends, which lie where the planner has the grain end.
#include "core/bench/origin.h"
#include "core/bench/trail.h"
#include "tests/ui/window/windowfixture.h"
#include "ui/window/seasonpicture.h"

#include <QSlider>
#include <QTest>

#include <set>

namespace kerfwright {
namespace {

class BandTest : public WindowTest {
protected:
    void put(BorderDesign design, Build build) {
        window->document().edit(QStringLiteral("test"), entry::none, [&](Project& changed) {
            changed.board.build = build;
            changed.board.grain = GrainDirection::PlannersChoice;
            changed.board.border.width = Length::mm(40);
            changed.board.border.design = design;
        });
    }
    const Job& job() const { return window->planner().last()->job; }
};

TEST_F(BandTest, StepsLightUpTheLinesOfTheFieldThatIsShown) {
    put(BorderDesign::EndGrainBand, Build::EndGrain);
    ASSERT_TRUE(planned());
    const bool byColumns = job().plan.byColumns;
    const auto lines = static_cast<int>(byColumns ? field().columns.size() : field().rows.size());
    std::set<int> all;
    const Trails trails(job(), field());
    const auto count = static_cast<int>(job().steps.steps.size());
    for (int number = 0; number < count; ++number) {
        const Step& step = job().steps.steps[static_cast<std::size_t>(number)];
        const Highlight lit = trails.of({Subject::Kind::Step, number}).place;
        const std::set<int>& some = byColumns ? lit.columns : lit.rows;
        if (std::holds_alternative<Crosscut>(step.work)) {
            all.insert(some.begin(), some.end());
        }
        if (const auto* glue = std::get_if<Glue>(&step.work); glue != nullptr && glue->final) {
            EXPECT_TRUE(lit.field && lit.border);
        }
    }
    ASSERT_EQ(all.size(), static_cast<std::size_t>(lines + 2));
    EXPECT_EQ(*all.begin(), -1) << "the band before the first line";
    EXPECT_EQ(*all.rbegin(), lines) << "and behind the last";
}

TEST_F(BandTest, APieceComesFromTheStripAndSliceOfTheFieldAsGlued) {
    put(BorderDesign::EndGrainBand, Build::EndGrain);
    ASSERT_TRUE(planned());
    const std::vector<std::string> order = sliceOrder(job().steps);
    Length y;
    for (int row = 0; row < static_cast<int>(field().rows.size()); ++row) {
        Length x;
        for (int column = 0; column < static_cast<int>(field().columns.size()); ++column) {
            const auto at = [](const std::vector<Length>& sizes, int line) {
                return sizes[static_cast<std::size_t>(line)];
            };
            const Origin origin = originOf(job(), field(), x + half(at(field().columns, column)),
                                           y + half(at(field().rows, row)));
            const int line = job().plan.byColumns ? column : row;
            EXPECT_EQ(origin.slice, order[static_cast<std::size_t>(line + 1)]);
            // The wood of the strip is that of the piece.
            int wood = -1;
            for (const Step& step : job().steps.steps) {
                if (const auto* mill = std::get_if<Mill>(&step.work)) {
                    for (const MillLine& stick : mill->lines) {
                        for (const std::string& label : stick.strips) {
                            wood = label == origin.strip ? stick.wood : wood;
                        }
                    }
                }
            }
            EXPECT_EQ(wood, woodAt(column, row)) << column << ", " << row;
            x += at(field().columns, column);
        }
        y += field().rows[static_cast<std::size_t>(row)];
    }
}

TEST_F(BandTest, BreadboardEndsKeepTheirLengthThroughTheYear) {
    put(BorderDesign::BreadboardEnds, Build::LongGrain);
    ASSERT_TRUE(planned());
    const BoardGeometry& geometry = window->board().geometry();
    const bool sides = geometry.surround().railX > Length();
    const auto ends = [&] { return sides ? geometry.board().height() : geometry.board().width(); };
    const auto across = [&] {
        return sides ? geometry.field().height() : geometry.field().width();
    };
    const double built = ends();
    EXPECT_NEAR(across(), built, 1e-6);
    auto* year = find<QSlider>("year");
    year->setValue(0);
    EXPECT_NEAR(ends(), built, 1.01) << "to a pixel";
    EXPECT_LT(across(), built - 2) << "the field draws back in the dry";
    year->setValue(year->maximum() / 2);
    EXPECT_NEAR(ends(), built, 1.01);
    EXPECT_GT(across(), built + 2) << "and stands out in the damp";
}

TEST_F(BandTest, ABorderStaysOnTheSideThatThePlannerChoseWhileItPlansAgain) {
    put(BorderDesign::BreadboardEnds, Build::LongGrain);
    for (const RowChoice rows : {RowChoice::Rows, RowChoice::Columns}) {
        window->document().edit(QStringLiteral("test"), entry::none,
                                [&](Project& changed) { changed.choices.rows = rows; });
        ASSERT_TRUE(planned());
        const bool sides = job().plan.byColumns;
        EXPECT_EQ(window->board().geometry().surround().railX > Length(), sides);
        window->document().edit(QStringLiteral("test"), entry::none, [&](Project& changed) {
            changed.board.border.width += Length::mm(1);
        });
        EXPECT_NE(window->planner().state(), Planner::State::Current);
        EXPECT_EQ(window->board().geometry().surround().railX > Length(), sides);
        ASSERT_TRUE(planned());
        EXPECT_TRUE(window->board().isFitted());
        EXPECT_TRUE(QRectF(window->board().rect()).contains(window->board().geometry().board()));
    }
}

}  // namespace
}  // namespace kerfwright
