// The seasons under the board: it breathes on the screen, says by how much, and is itself again.
#include "tests/ui/window/windowfixture.h"
#include "ui/window/amounts.h"
#include "ui/window/benchtabs.h"
#include "ui/window/boardpainter.h"
#include "ui/window/movementbox.h"
#include "ui/window/seasonbar.h"
#include "ui/window/seasonpicture.h"

#include <QLabel>
#include <QSlider>
#include <QTest>

#include <set>

namespace kerfwright {
namespace {

class SeasonTest : public WindowTest {
protected:
    QSlider* year() { return find<QSlider>("year"); }
    QString when() { return find<QLabel>("seasonWhen")->text(); }
    QString how() { return find<QLabel>("seasonHow")->text(); }
    double fieldWidth() { return window->board().geometry().field().width(); }
    const Job& job() { return window->planner().last()->job; }
};

TEST_F(SeasonTest, TheBoardShrinksInTheDryAndSwellsInTheDamp) {
    ASSERT_TRUE(planned());
    ASSERT_TRUE(year()->isEnabled());
    EXPECT_TRUE(when().startsWith(QStringLiteral("As built")));
    const double built = fieldWidth();
    year()->setFocus();
    QTest::keyClick(year(), Qt::Key_Home);
    EXPECT_LT(fieldWidth(), built);
    EXPECT_TRUE(when().startsWith(QStringLiteral("Driest month · 6.0 %"))) << when().toStdString();
    EXPECT_TRUE(how().contains(changeText(job().movement.width.toDriest, Unit::Millimetres)))
        << how().toStdString();
    const int times = drawnTimes(project().board, job().movement);
    ASSERT_GT(times, 1);
    EXPECT_TRUE(how().contains(QStringLiteral("drawn %1 ×").arg(times)));
    // As much smaller as it is said to be drawn.
    const Range& change = job().movement.width.toDriest;
    const double mm = (built - fieldWidth()) / window->board().geometry().scale();
    EXPECT_GE(mm, -change.greatest * times - 0.5);
    EXPECT_LE(mm, -change.least * times + 0.5);
    for (int month = 0; month < 6; ++month) {
        QTest::keyClick(year(), Qt::Key_PageUp);
    }
    EXPECT_TRUE(when().startsWith(QStringLiteral("Dampest month"))) << when().toStdString();
    EXPECT_GT(fieldWidth(), built);
    click("asBuilt");
    EXPECT_EQ(fieldWidth(), built);
    EXPECT_TRUE(when().startsWith(QStringLiteral("As built")));
}

TEST_F(SeasonTest, AnEditOrAMarkIsOfTheBoardAsItIsBuilt) {
    ASSERT_TRUE(planned());
    const double built = fieldWidth();
    year()->setValue(0);
    ASSERT_NE(fieldWidth(), built);
    window->editor().setWood(1);
    clickCell(0, 0);
    EXPECT_EQ(fieldWidth(), built);
    ASSERT_TRUE(planned());
    year()->setValue(0);
    ASSERT_NE(fieldWidth(), built);
    key(Qt::Key_Right);
    EXPECT_EQ(fieldWidth(), built);
    EXPECT_FALSE(find<SeasonBar>("seasons")->isVisible());
    key(Qt::Key_Escape);
    EXPECT_TRUE(find<SeasonBar>("seasons")->isVisible());
}

TEST_F(SeasonTest, WhereTheWoodsSayNothingTheSliderSaysSo) {
    window->document().edit(QStringLiteral("test"), entry::none, [](Project& changed) {
        for (Wood& wood : changed.woods) {
            wood.shrinkage = Shrinkage();
            wood.movement = MovementCoefficients();
        }
    });
    ASSERT_TRUE(planned());
    EXPECT_FALSE(year()->isEnabled());
    EXPECT_TRUE(how().contains(QStringLiteral("do not say how they move")));
}

TEST_F(SeasonTest, WhereTheAirIsAlwaysTheSameNothingMoves) {
    window->document().edit(QStringLiteral("test"), entry::none, [](Project& changed) {
        changed.climate = Climate{8, 8, 8};
    });
    ASSERT_TRUE(planned());
    EXPECT_FALSE(year()->isEnabled());
    EXPECT_TRUE(how().contains(QStringLiteral("all the year")));
}

TEST_F(SeasonTest, TheHandleStandsWhereTheYearHasTheMoistureOfTheBuild) {
    const Climate climate{8, 6, 10};
    EXPECT_NEAR(moistureInYear(climate, yearOf(climate, 8)), 8, 1e-6);
    EXPECT_NEAR(yearOf(climate, 5), 0, 1e-6);
    EXPECT_NEAR(yearOf(climate, 12), 0.5, 1e-6);
}

TEST_F(SeasonTest, TheBenchTellsMovementWeightGlueAndClamps) {
    ASSERT_TRUE(planned());
    window->bench().setCurrentIndex(BenchTabs::Cautions);
    const auto* box = find<MovementBox>("movement");
    ASSERT_TRUE(box->isVisible());
    const QString text = box->text();
    const Unit unit = project().notation.unit;
    EXPECT_TRUE(text.contains(changeText(job().movement.width.toDriest, unit)));
    EXPECT_TRUE(text.contains(changeText(job().movement.height.toDampest, unit)));
    EXPECT_TRUE(text.contains(QStringLiteral(" kg</td>")));
    for (const GlueUpNeeds& needs : job().glue.glueUps) {
        EXPECT_TRUE(text.contains(QString::fromStdString(needs.result))) << needs.result;
        EXPECT_TRUE(text.contains(QStringLiteral("%1 clamp").arg(needs.clamps))) << needs.result;
    }
}

TEST_F(SeasonTest, ChangesAreWrittenWithTheirSign) {
    EXPECT_EQ(changeText({-0.31, 0.92}, Unit::Millimetres), QStringLiteral("−0.3 to +0.9 mm"));
    EXPECT_EQ(changeText({0.5, 0.5}, Unit::Millimetres), QStringLiteral("+0.5 mm"));
    EXPECT_EQ(changeText({-0.01, 0.01}, Unit::Millimetres), QStringLiteral("±0 mm"));
    EXPECT_EQ(changeText({2.54, 5.08}, Unit::Inches), QStringLiteral("+0.10 to +0.20 in"));
    EXPECT_EQ(gapText({-0.4, 1.2}, Unit::Millimetres), QStringLiteral("−0.4 to 1.2 mm"));
}

TEST_F(SeasonTest, InASmallWindowTheGapAndTheWayBackAreInSight) {
    window->document().edit(QStringLiteral("frame"), entry::none, [](Project& changed) {
        changed.board.border.design = BorderDesign::FloatingFrame;
        changed.board.border.width = Length::mm(40);
    });
    window->resize(1024, 700);
    ASSERT_TRUE(planned());
    year()->setValue(5);
    QCoreApplication::processEvents();
    ASSERT_TRUE(how().contains(QStringLiteral("gap"))) << how().toStdString();
    for (const char* name : {"seasonWhen", "seasonHow"}) {
        auto* label = find<QLabel>(name);
        const QRect words =
            label->fontMetrics().boundingRect(label->rect(), Qt::TextWordWrap, label->text());
        EXPECT_TRUE(label->wordWrap() || words.width() <= label->width()) << name;
        EXPECT_LE(words.height(), label->height()) << name << " " << label->text().toStdString();
        EXPECT_LE(words.width(), label->width()) << name;
        const QWidget* bar = label->parentWidget();
        EXPECT_TRUE(bar->rect().contains(label->geometry())) << name;
        EXPECT_TRUE(bar->parentWidget()->rect().contains(bar->geometry())) << name;
    }
    EXPECT_TRUE(find("asBuilt")->isVisible());
}

TEST_F(SeasonTest, RulersMeasureNothingThatIsDrawnEnlarged) {
    ASSERT_TRUE(planned());
    const auto marks = [this] {
        const QImage view = window->board().grab().toImage();
        std::set<QRgb> colours;
        for (int x = Rulers::left + 2; x < view.width() - 4; ++x) {
            colours.insert(view.pixel(x, Rulers::top - 3));
        }
        return colours.size() > 1;
    };
    EXPECT_TRUE(marks());
    ASSERT_GT(drawnTimes(project().board, job().movement), 1);
    year()->setValue(0);
    EXPECT_FALSE(marks());
    click("asBuilt");
    EXPECT_TRUE(marks());
}

}  // namespace
}  // namespace kerfwright
