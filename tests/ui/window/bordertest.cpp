// The border by mouse and keys: designs, how the field is held, what it comes to.
#include "tests/ui/window/windowfixture.h"
#include "ui/window/designpicker.h"
#include "ui/window/lengthfield.h"

#include <QAbstractButton>
#include <QCheckBox>
#include <QComboBox>
#include <QLabel>
#include <QTest>
#include <QToolButton>

#include <algorithm>

namespace kerfwright {
namespace {

class BorderTest : public WindowTest {
protected:
    const Border& border() const { return project().board.border; }
    void choose(DesignChoice design) {
        for (auto* button : find("borderKind")->findChildren<DesignButton*>()) {
            if (button->design() == design) {
                click(button);
            }
        }
    }
    DesignButton* button(DesignChoice design) const {
        const auto all = find("borderKind")->findChildren<DesignButton*>();
        const auto found = std::find_if(all.begin(), all.end(),
                                        [&](DesignButton* one) { return one->design() == design; });
        return found == all.end() ? nullptr : *found;
    }
    void press(const char* segmented, int index) {
        click(find(segmented)->findChildren<QAbstractButton*>()[index]);
    }
    /// A box takes clicks on itself and its words, not on the room beside them.
    void tick(const char* box) {
        auto* found = find<QCheckBox>(box);
        ASSERT_TRUE(QTest::qWaitFor([found] { return found->isVisible(); }));
        QTest::mouseClick(found, Qt::LeftButton, Qt::NoModifier, QPoint(10, found->height() / 2));
    }
    QString fitText() const {
        QString all;
        for (auto* label : find("borderFit")->findChildren<QLabel*>()) {
            all += label->text() + QLatin1Char('\n');
        }
        return all;
    }
};

TEST_F(BorderTest, EveryDesignThatSuitsTheBuildIsTakenAndUndone) {
    choose(std::nullopt);
    EXPECT_FALSE(border().isThere());
    const Project before = project();
    const int steps = window->document().history().count();
    for (const BorderDesign design : {BorderDesign::FloatingFrame, BorderDesign::FixedFrame,
                                      BorderDesign::EndGrainBand, BorderDesign::EdgeBand}) {
        choose(design);
        EXPECT_TRUE(border().has(design));
        EXPECT_TRUE(planned()) << designName(design).toStdString();
        window->document().history().undo();
        EXPECT_EQ(project(), before);
    }
    EXPECT_EQ(window->document().history().index(), steps);
    EXPECT_FALSE(button(BorderDesign::BreadboardEnds)->isEnabled());
    EXPECT_TRUE(button(BorderDesign::BreadboardEnds)
                    ->toolTip()
                    .contains(QStringLiteral("long-grain field")));
    press("build", 1);
    EXPECT_TRUE(button(BorderDesign::BreadboardEnds)->isEnabled());
    EXPECT_FALSE(button(BorderDesign::EndGrainBand)->isEnabled());
    choose(BorderDesign::BreadboardEnds);
    EXPECT_TRUE(planned());
    EXPECT_TRUE(fitText().contains(QStringLiteral("Pins"))) << fitText().toStdString();
}

TEST_F(BorderTest, AFloatingFrameTakesItsGapFromTheSeasonOrFromTheMaker) {
    choose(BorderDesign::FloatingFrame);
    ASSERT_TRUE(planned());
    const Length season = window->planner().last()->job.plan.border.gapX.value;
    EXPECT_GT(season, Length());
    EXPECT_TRUE(fitText().contains(QStringLiteral("Gap left and right")))
        << fitText().toStdString();
    press("gapFrom", 1);
    ASSERT_TRUE(border().gap.has_value());
    EXPECT_GE(*border().gap, season) << "it begins with what the season asks for";
    type("borderGapEntry", QStringLiteral("2,5"));
    EXPECT_EQ(border().gap, Length::um(2'500));
    QTest::keyClick(find("borderGapEntry"), Qt::Key_Return);
    ASSERT_TRUE(planned());
    EXPECT_EQ(window->planner().last()->job.plan.border.gapX.value, Length::um(2'500));
    type("borderGapEntry", QStringLiteral("-1"));
    EXPECT_TRUE(find<LengthField>("borderGap")->isFaulty());
    EXPECT_EQ(border().gap, Length::um(2'500));
    press("gapFrom", 0);
    EXPECT_FALSE(border().gap.has_value());
    press("housing", 1);
    EXPECT_EQ(border().housing, Housing::Rebate);
    ASSERT_TRUE(planned());
    EXPECT_TRUE(fitText().contains(QStringLiteral("Ledge"))) << fitText().toStdString();
}

TEST_F(BorderTest, AFigureOfTheFitShowsItsWorking) {
    choose(BorderDesign::FloatingFrame);
    ASSERT_TRUE(planned());
    click("fitWorking0");
    auto* working = find("workingPopup");
    QString all;
    for (auto* label : working->findChildren<QLabel*>()) {
        all += label->text() + QLatin1Char('\n');
    }
    EXPECT_TRUE(all.contains(QStringLiteral("Gap left and right"))) << all.toStdString();
    EXPECT_TRUE(all.contains(QStringLiteral("= "))) << all.toStdString();
    // The term that the season brings leads to where the season is typed.
    const auto links = working->findChildren<QToolButton*>();
    const auto season = std::find_if(links.begin(), links.end(), [](QToolButton* link) {
        return link->text().startsWith(QStringLiteral("Season"));
    });
    ASSERT_NE(season, links.end());
    click(*season);
    EXPECT_TRUE(find("climate-build-percent-entry")->hasFocus());
}

TEST_F(BorderTest, AFixedFrameRoundAMovingFieldWantsItsCautionRead) {
    choose(BorderDesign::FixedFrame);
    ASSERT_TRUE(planned());
    auto* caution = find<QLabel>("borderCaution");
    EXPECT_TRUE(caution->text().contains(QStringLiteral(" mm "))) << caution->text().toStdString();
    EXPECT_FALSE(border().cautionRead);
    tick("cautionRead");
    EXPECT_TRUE(border().cautionRead);
    choose(BorderDesign::FloatingFrame);
    choose(BorderDesign::FixedFrame);
    EXPECT_FALSE(border().cautionRead) << "it must be read again";
    click("letFloat");
    EXPECT_TRUE(border().has(BorderDesign::FloatingFrame));
    EXPECT_FALSE(find("cautionRead")->isVisible());
    EXPECT_TRUE(planned());
}

TEST_F(BorderTest, InlayAndSplinesComeAndGo) {
    choose(BorderDesign::FloatingFrame);
    tick("inlay");
    EXPECT_TRUE(border().hasInlay());
    type("inlaySizeEntry", QStringLiteral("4"));
    EXPECT_EQ(border().inlayWidth, Length::mm(4));
    type("inlaySizeEntry", QStringLiteral("400"));
    EXPECT_TRUE(find<LengthField>("inlaySize")->isFaulty());
    EXPECT_EQ(border().inlayWidth, Length::mm(3)) << "as when the entry was begun";
    tick("spline");
    EXPECT_TRUE(border().hasSplines());
    auto* wood = find<QComboBox>("splineWood");
    wood->setFocus();
    QTest::keyClick(wood, Qt::Key_Home);
    EXPECT_EQ(border().splineWood, 0);
    ASSERT_TRUE(planned());
    tick("spline");
    tick("inlay");
    EXPECT_FALSE(border().hasInlay());
    EXPECT_FALSE(border().hasSplines());
}

TEST_F(BorderTest, ABorderComesBackAsItWas) {
    choose(BorderDesign::FloatingFrame);
    type("borderWidthEntry", QStringLiteral("55"));
    choose(std::nullopt);
    EXPECT_FALSE(border().isThere());
    choose(BorderDesign::FloatingFrame);
    EXPECT_EQ(border().width, Length::mm(55));
}

}  // namespace
}  // namespace kerfwright
