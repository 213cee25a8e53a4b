// The bench: cards, what they light up, the cut list, and what the words on them say.
#include "tests/ui/window/windowfixture.h"
#include "ui/window/benchtabs.h"
#include "ui/window/cardlist.h"
#include "ui/window/cutlist.h"
#include "ui/window/spotlight.h"
#include "ui/window/stepspanel.h"
#include "ui/window/stepwords.h"

#include <QAbstractButton>
#include <QScrollBar>
#include <QSignalSpy>
#include <QTabBar>
#include <QTest>

namespace kerfwright {
namespace {

class BenchTest : public WindowTest {
protected:
    CardList* steps() { return window->bench().steps()->list(); }
    StepWords words(int step) {
        const PlannedPtr planned = window->planner().last();
        return StepWriter(planned->job.steps, *planned->project).describe(step);
    }
    /// The first step whose work is a `Work` for which `fits` holds.
    template <class Work, class Fits>
    int stepWith(const Fits& fits) {
        const auto& all = window->planner().last()->job.steps.steps;
        for (std::size_t i = 0; i < all.size(); ++i) {
            const auto* work = std::get_if<Work>(&all[i].work);
            if (work != nullptr && fits(*work)) {
                return static_cast<int>(i);
            }
        }
        return -1;
    }
    template <class Work>
    int stepWith() {
        return stepWith<Work>([](const Work&) { return true; });
    }
    void clickCard(int row) {
        steps()->scrollTo(steps()->model()->index(row, 0));
        QTest::mouseClick(steps()->viewport(), Qt::LeftButton, Qt::NoModifier,
                          steps()->visualRect(steps()->model()->index(row, 0)).center());
    }
};

TEST_F(BenchTest, WalkingOverCardsByKeysChoosesNone) {
    ASSERT_TRUE(planned());
    QSignalSpy lit(&window->spotlight(), &Spotlight::changed);
    steps()->setFocus();
    for (int i = 0; i < 3; ++i) {
        QTest::keyClick(steps(), Qt::Key_Down);
    }
    EXPECT_GT(steps()->currentIndex().row(), 0);
    EXPECT_EQ(steps()->chosenCard(), -1);
    EXPECT_TRUE(lit.isEmpty());
    QTest::keyClick(steps(), Qt::Key_Space);
    EXPECT_EQ(steps()->chosenCard(), steps()->currentIndex().row());
    EXPECT_EQ(lit.size(), 1);
    QTest::keyClick(steps(), Qt::Key_Space);
    EXPECT_EQ(steps()->chosenCard(), -1) << "the same key lets go";
}

TEST_F(BenchTest, AChosenCardIsLetGoInEveryWayOneTries) {
    ASSERT_TRUE(planned());
    clickCard(1);
    ASSERT_EQ(steps()->chosenCard(), 1);
    clickCard(1);
    EXPECT_EQ(steps()->chosenCard(), -1) << "a second click";
    clickCard(1);
    QTest::keyClick(steps(), Qt::Key_Escape);
    EXPECT_EQ(steps()->chosenCard(), -1) << "Escape";
    clickCard(1);
    window->bench().setCurrentIndex(BenchTabs::CutListTab);
    EXPECT_EQ(steps()->chosenCard(), 1) << "another tab shows what belongs to it";
    key(Qt::Key_Escape);
    EXPECT_EQ(steps()->chosenCard(), -1) << "Escape on the board";
    EXPECT_TRUE(window->spotlight().place().isEmpty()) << "the board is no longer dimmed";
}

TEST_F(BenchTest, TheStepsOfACautionAreMarkedWhereTheyAreLookedUp) {
    // A border round end grain: a danger that is about one step.
    click(find("borderKind")->findChildren<QAbstractButton*>()[1]);
    ASSERT_TRUE(planned());
    window->bench().setCurrentIndex(BenchTabs::Cautions);
    const auto& cautions = window->planner().last()->job.cautions;
    int row = 0;
    while (cautions[static_cast<std::size_t>(row)].step < 0) {
        ++row;
    }
    const int step = cautions[static_cast<std::size_t>(row)].step;
    window->bench().cautions()->choose(row);
    window->bench().setCurrentIndex(BenchTabs::Steps);
    EXPECT_TRUE(steps()->isMarked(step));
    EXPECT_EQ(window->bench().cautions()->chosenCard(), row);
    clickCard(step);
    EXPECT_EQ(window->bench().cautions()->chosenCard(), -1) << "one thing is chosen at a time";
    EXPECT_TRUE(window->bench().cautions()->isMarked(row));
}

TEST_F(BenchTest, TheCutListSaysEverythingAndFitsItsPanel) {
    for (const int width : {1440, 1024}) {
        window->resize(width, 700);
        ASSERT_TRUE(planned());
        window->bench().setCurrentIndex(BenchTabs::CutListTab);
        QCoreApplication::processEvents();
        auto* list = find<CutList>("cutList");
        EXPECT_EQ(list->horizontalScrollBar()->maximum(), 0);
        // A chequer of 8 × 8 squares of 50 mm: four lines, as the outer strips carry the trim
        // margin of 3 mm. Then the border of a square board: four rails alike.
        ASSERT_EQ(list->count(), 5);
        EXPECT_EQ(list->line(4).use, QStringLiteral("border"));
        EXPECT_TRUE(list->line(4).pieces.startsWith(QStringLiteral("4 pieces: ")));
        const CutLine& line = list->line(2);
        EXPECT_EQ(line.wood.toStdString(), project().woods[0].name);
        EXPECT_EQ(line.letter.toStdString(), project().woods[0].letter);
        EXPECT_EQ(line.use, QStringLiteral("panel A"));
        EXPECT_EQ(line.pieces, QStringLiteral("3 pieces: A3, A5, A7"));
        // 50 mm rows, 3 mm flattening of panel and field each; 3 mm milling.
        EXPECT_EQ(line.milled, QStringLiteral("milled 56 × 50 × 430 mm"));
        EXPECT_EQ(line.rough, QStringLiteral("rough 59 × 53 × 430 mm"));
        EXPECT_FALSE(line.milled.contains(QStringLiteral("…")));
        const QRect row = list->visualRect(list->model()->index(0, 0));
        EXPECT_LE(row.width(), list->viewport()->width());
        QFont bold = list->font();
        bold.setBold(true);
        EXPECT_LT(QFontMetrics(bold).horizontalAdvance(line.milled), row.width() - 60)
            << "the milled size stands in one line";
        EXPECT_TRUE(list->model()
                        ->index(2, 0)
                        .data(Qt::AccessibleTextRole)
                        .toString()
                        .contains(line.rough));
    }
}

TEST_F(BenchTest, GlueStepsNameTheirPartsInOrder) {
    ASSERT_TRUE(planned());
    const std::string m = project().woods[0].letter;
    const std::string w = project().woods[1].letter;
    const int panel = stepWith<Glue>([](const Glue& glue) { return !glue.final; });
    ASSERT_GE(panel, 0);
    QString order = words(panel).lines.value(1);
    order.replace(QChar(QChar::Nbsp), QLatin1Char(' '));
    EXPECT_EQ(order.toStdString(), "A1 " + m + " · A2 " + w + " · A3 " + m + " · A4 " + w +
                                       " · A5 " + m + " · A6 " + w + " · A7 " + m + " · A8 " + w);
    const int final = stepWith<Glue>([](const Glue& glue) { return glue.final; });
    ASSERT_GE(final, 0);
    EXPECT_TRUE(words(final).lines.value(1).contains(QStringLiteral("flipped")));
    // Of many parts the first and the last.
    type("acrossEntry", QStringLiteral("16"));
    type("downEntry", QStringLiteral("16"));
    click("pattern-chequer");
    ASSERT_TRUE(planned());
    order = words(stepWith<Glue>([](const Glue& glue) { return !glue.final; })).lines.value(1);
    order.replace(QChar(QChar::Nbsp), QLatin1Char(' '));
    EXPECT_EQ(order.toStdString(), "A1 " + m + " · A2 " + w + " · A3 " + m + " · A4 " + w +
                                       " · A5 " + m + " · A6 " + w + " · … · A15 " + m + " · A16 " +
                                       w);
}

TEST_F(BenchTest, MillingSaysWhatItsThreeNumbersAre) {
    ASSERT_TRUE(planned());
    EXPECT_EQ(words(0).lines.value(0), QStringLiteral("milled, thickness × width × length"));
}

TEST_F(BenchTest, TheSquaringCutIsWhatThePlanHasForIt) {
    ASSERT_TRUE(planned());
    const StepWords square = words(stepWith<SquareEnd>());
    EXPECT_FALSE(square.lines.join(QLatin1Char(' ')).contains(QStringLiteral("no more")));
    EXPECT_EQ(square.lines.value(0),
              QStringLiteral("square the end; the plan has this much for it"));
}

TEST_F(BenchTest, CardsNameTheSameMachinesAsTheSheets) {
    ASSERT_TRUE(planned());
    const auto isField = [](const Flatten& flatten) {
        return flatten.purpose == Purpose::Finished;
    };
    const StepWords field = words(stepWith<Flatten>(isField));
    EXPECT_TRUE(field.lines.contains(QStringLiteral("on: drum sander or router sled")));
    EXPECT_EQ(field.warning, QStringLiteral("End grain: never a thickness planer"));
    // A panel of 8 strips of 50 mm: too wide for a planer of 300 mm, not for one of 600 mm.
    const auto panel = [&] {
        return words(stepWith<Flatten>([&](const Flatten& flatten) { return !isField(flatten); }));
    };
    window->document().edit(QStringLiteral("test"), entry::none, [](Project& changed) {
        changed.shop.planerWidth = Length::mm(300);
        changed.shop.planerShortest = Length::mm(200);
    });
    ASSERT_TRUE(planned());
    EXPECT_EQ(panel().warning, QStringLiteral("Too wide for the shop's planer"));
    window->document().edit(QStringLiteral("test"), entry::none,
                            [](Project& changed) { changed.shop.planerWidth = Length::mm(600); });
    ASSERT_TRUE(planned());
    EXPECT_TRUE(panel().warning.isEmpty()) << panel().warning.toStdString();
    EXPECT_TRUE(panel().lines.contains(
        QStringLiteral("on: thickness planer after one face has been made flat, or drum sander")));
}

}  // namespace
}  // namespace kerfwright
