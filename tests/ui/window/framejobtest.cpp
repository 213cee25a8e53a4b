// A frame that is glued round an end-grain field, made safe with one click, and the seasons after.
#include "core/sheets/sheets.h"
#include "tests/source.h"
#include "tests/ui/window/windowfixture.h"
#include "ui/window/benchtabs.h"
#include "ui/window/cardlist.h"

#include <QLabel>
#include <QSlider>
#include <QTest>

namespace kerfwright {
namespace {

class FrameJobTest : public WindowTest {
protected:
    CardList* cards() { return window->bench().cautions(); }
    const Job& job() { return window->planner().last()->job; }
    int rowOf(const std::string& key) {
        const auto& all = job().cautions;
        const auto found = std::find_if(all.begin(), all.end(),
                                        [&](const Caution& one) { return one.key == key; });
        return found == all.end() ? -1 : static_cast<int>(found - all.begin());
    }
    /// Of the gap at the left, in mm as it is painted.
    double paintedGap() const {
        const BoardGeometry& geometry = window->board().geometry();
        return (geometry.field().left() - geometry.inside().left()) / geometry.scale();
    }
    QString how() { return find<QLabel>("seasonHow")->text(); }
};

TEST_F(FrameJobTest, OneClickTurnsAFixedFrameIntoAFloatingOneWhoseGapBreathes) {
    const QString sample =
        QString::fromStdString((sourceFolder() / "samples/hut-draughts.kerfwright").string());
    ASSERT_TRUE(window->document().open(sample).isEmpty());
    window->document().edit(QStringLiteral("test"), entry::none, [](Project& changed) {
        changed.board.border.design = BorderDesign::FixedFrame;
    });
    ASSERT_TRUE(planned());
    window->bench().setCurrentIndex(BenchTabs::Cautions);
    const int row = rowOf("border-moves");
    ASSERT_GE(row, 0);
    EXPECT_TRUE(cards()->card(row).lines.join(QString()).contains(QStringLiteral(" mm across")));
    ASSERT_FALSE(cards()->card(row).ways.empty());
    cards()->scrollTo(cards()->model()->index(row, 0));
    QTest::mouseClick(cards()->viewport(), Qt::LeftButton, Qt::NoModifier,
                      cards()->wayRect(row).center());
    ASSERT_TRUE(project().board.border.has(BorderDesign::FloatingFrame));
    ASSERT_TRUE(planned());
    EXPECT_EQ(rowOf("border-moves"), -1);

    // The gap takes the growth of half the field to the dampest season, and something over.
    const Length gap = job().plan.border.surround.gapX;
    EXPECT_GE(gap.toMm(), job().movement.width.toDampest.greatest / 2);
    EXPECT_NEAR(paintedGap(), gap.toMm(), 1 / window->board().geometry().scale());

    bool groove = false;
    for (const Page& page : sheets(project(), job(), Paper::A4)) {
        for (const auto& mark : page.drawing.marks) {
            if (const auto* text = std::get_if<Text>(&mark)) {
                groove = groove || text->text.find("roove") != std::string::npos;
            }
        }
    }
    EXPECT_TRUE(groove) << "the sheets show the section with its groove";

    auto* year = find<QSlider>("year");
    year->setFocus();
    QTest::keyClick(year, Qt::Key_Home);
    const double dry = paintedGap();
    EXPECT_TRUE(how().contains(QStringLiteral("gap "))) << how().toStdString();
    EXPECT_TRUE(how().contains(QStringLiteral("drawn 10 ×"))) << how().toStdString();
    for (int month = 0; month < 6; ++month) {
        QTest::keyClick(year, Qt::Key_PageUp);
    }
    const double damp = paintedGap();
    EXPECT_GT(dry, damp + 1) << "open in the dry, closing in the damp";
    EXPECT_GT(damp, -1 / window->board().geometry().scale()) << "and never pressed shut";

    click("asBuilt");
    EXPECT_NEAR(paintedGap(), gap.toMm(), 1 / window->board().geometry().scale());
    QTest::keyClick(window.get(), Qt::Key_Z, Qt::ControlModifier);
    EXPECT_TRUE(project().board.border.has(BorderDesign::FixedFrame));
}

}  // namespace
}  // namespace kerfwright
