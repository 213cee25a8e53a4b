// The whole job by keys alone: nothing here has a mouse, and every key goes to what has the focus.
#include "core/project/file.h"
#include "tests/source.h"
#include "tests/ui/window/windowfixture.h"
#include "ui/window/batchdialog.h"
#include "ui/window/benchtabs.h"
#include "ui/window/buildfilm.h"
#include "ui/window/cardlist.h"
#include "ui/window/filmmaker.h"
#include "ui/window/plankeditor.h"
#include "ui/window/stagerow.h"
#include "ui/window/stepspanel.h"
#include "ui/window/wayspanel.h"

#include <QAbstractButton>
#include <QApplication>
#include <QFile>
#include <QLineEdit>
#include <QListWidget>
#include <QTabBar>
#include <QTest>

namespace kerfwright {
namespace {

QString keysSample(const char* name) {
    return QString::fromStdString((sourceFolder() / "samples" / name).string()) +
           QStringLiteral(".kerfwright");
}

class KeysJobTest : public WindowTest {
protected:
    QWidget* focused() const {
        QWidget* widget = QApplication::focusWidget();
        return widget != nullptr ? widget : window.get();
    }
    void press(Qt::Key key, Qt::KeyboardModifiers modifiers = Qt::NoModifier) {
        QTest::keyClick(focused(), key, modifiers);
        QCoreApplication::processEvents();
    }
    void write(const QString& words) {
        press(Qt::Key_A, Qt::ControlModifier);
        QTest::keyClicks(focused(), words);
    }
    /// Tab until what has this name, or lies in it, has the focus.
    bool tabTo(const char* name) {
        const QString wanted = QString::fromLatin1(name);
        for (int i = 0; i < 400; ++i) {
            for (QWidget* at = focused(); at != nullptr; at = at->parentWidget()) {
                if (at->objectName() == wanted) {
                    return true;
                }
            }
            press(Qt::Key_Tab);
        }
        return false;
    }
    bool tabToWidget(const QWidget* wanted) {
        for (int i = 0; i < 400 && focused() != wanted; ++i) {
            press(Qt::Key_Tab);
        }
        return focused() == wanted;
    }
    void showTab(BenchTabs::Tab tab) {
        press(static_cast<Qt::Key>(Qt::Key_1 + int{tab}), Qt::AltModifier);
        ASSERT_EQ(window->bench().currentIndex(), tab);
    }
};

TEST_F(KeysJobTest, FromAWishToPaperAndBack) {
    press(Qt::Key_N, Qt::ControlModifier);

    // A pattern, then a stroke of another wood on the board.
    ASSERT_TRUE(tabTo("pattern-chequer")) << "the one in force; arrows go on from it";
    for (int i = 0; i < 30 && focused()->objectName() != QStringLiteral("pattern-plain"); ++i) {
        press(i % 6 == 5 ? Qt::Key_Down : Qt::Key_Right);
    }
    ASSERT_EQ(focused()->objectName(), QStringLiteral("pattern-plain"));
    press(Qt::Key_Space);
    EXPECT_EQ(woodAt(1, 0), woodAt(0, 0));
    ASSERT_TRUE(tabTo("board"));
    press(Qt::Key_2);
    ASSERT_EQ(window->editor().wood(), 1);
    press(Qt::Key_Right);  // marks the first piece
    press(Qt::Key_Space);
    press(Qt::Key_Right);
    press(Qt::Key_Space);
    EXPECT_EQ(woodAt(1, 0), 1);
    EXPECT_NE(project().board.field, newProject(Unit::Millimetres).board.field);
    EXPECT_TRUE(window->document().history().canUndo());

    // Sizes and a border.
    ASSERT_TRUE(tabTo("cellWidthEntry"));
    write(QStringLiteral("42"));
    EXPECT_EQ(field().columns[5], Length::mm(42));
    ASSERT_TRUE(tabTo("thicknessEntry"));
    write(QStringLiteral("35"));
    EXPECT_EQ(project().board.thickness, Length::mm(35));
    ASSERT_TRUE(tabTo("borderKind"));
    press(Qt::Key_Right);
    EXPECT_GT(project().board.border.width, Length());

    // What is to be done, and what to beware of.
    ASSERT_TRUE(planned());
    showTab(BenchTabs::Steps);
    ASSERT_TRUE(tabTo("steps"));
    press(Qt::Key_Home);
    press(Qt::Key_Down);
    press(Qt::Key_Space);
    EXPECT_EQ(window->bench().steps()->list()->chosenCard(), 1);
    showTab(BenchTabs::Cautions);
    ASSERT_TRUE(tabTo("cautions"));
    press(Qt::Key_Home);
    press(Qt::Key_Space);
    EXPECT_EQ(window->bench().cautions()->chosenCard(), 0);

    // A plank on the rack.
    showTab(BenchTabs::TimberTab);
    ASSERT_TRUE(tabTo("addPlank"));
    press(Qt::Key_Space);
    ASSERT_NE(window->findChild<PlankEditor*>(), nullptr);
    ASSERT_TRUE(tabTo("plankLengthEntry"));
    write(QStringLiteral("1.9 m"));
    press(Qt::Key_Return);
    ASSERT_EQ(project().timber.rack.planks.size(), 1u);
    EXPECT_EQ(project().timber.rack.planks[0].length, Length::mm(1900));

    // Paper, and the file. The offscreen platform leaves no window active when a popup closes.
    window->activateWindow();
    ASSERT_TRUE(QTest::qWaitForWindowActive(window.get()));
    showTab(BenchTabs::Sheets);
    ASSERT_TRUE(QTest::qWaitFor(
        [this] { return window->sawyer().state() == Sawyer::State::Current; }, 60'000));
    answers.write = inFolder("keys.pdf");
    press(Qt::Key_E, Qt::ControlModifier);
    EXPECT_TRUE(QFile::exists(inFolder("keys.pdf")));
    answers.write = inFolder("keys.kerfwright");
    press(Qt::Key_S, Qt::ControlModifier);
    const auto saved = readProject(inFolder("keys.kerfwright").toStdString());
    ASSERT_TRUE(saved.ok());
    EXPECT_EQ(*saved, project());

    // Back to where it began.
    while (window->document().history().canUndo()) {
        press(Qt::Key_Z, Qt::ControlModifier);
    }
    EXPECT_EQ(field(), newProject(Unit::Millimetres).board.field);
    answers.open = inFolder("keys.kerfwright");
    answers.unsaved = Dialogs::Unsaved::Discard;
    press(Qt::Key_O, Qt::ControlModifier);
    EXPECT_EQ(project(), *saved);
    EXPECT_TRUE(answers.told.isEmpty()) << answers.told.join(u'|').toStdString();
}

TEST_F(KeysJobTest, AnotherWay) {
    window = makeWindow(keysSample("basket-weave-block"));
    ASSERT_TRUE(planned());
    const Project before = project();
    showTab(BenchTabs::Ways);
    auto* ways = find<CardList>("ways");
    ASSERT_TRUE(QTest::qWaitFor([ways] { return ways->count() > 1 && !ways->isStale(); }, 60'000));
    EXPECT_TRUE(ways->hasFocus()) << "its keys go to the page that they show";
    window->bench().tabBar()->setFocus();
    press(Qt::Key_Tab);
    EXPECT_TRUE(window->bench().ways()->isAncestorOf(focused())) << "a page comes after its tab";
    ASSERT_TRUE(tabToWidget(ways));
    press(Qt::Key_Home);
    for (int row = 0; row < ways->count() && ways->card(ways->currentIndex().row()).ways.empty();
         ++row) {
        press(Qt::Key_Down);
    }
    ASSERT_FALSE(ways->card(ways->currentIndex().row()).ways.empty());
    press(Qt::Key_Return);
    EXPECT_NE(project().choices, before.choices);
    ASSERT_TRUE(planned());
    press(Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(project(), before);
}

TEST_F(KeysJobTest, TheBuildStageByStage) {
    window = makeWindow(keysSample("hut-draughts"));
    ASSERT_TRUE(planned());
    BuildFilm& film = window->film();
    ASSERT_TRUE(QTest::qWaitFor(
        [&film] { return film.hasBegun() && film.maker()->isCurrent() && film.row()->count() > 3; },
        60'000));
    film.setMoving(false);
    press(Qt::Key_F9);
    ASSERT_TRUE(film.isStageShown());
    press(Qt::Key_Home);
    EXPECT_EQ(film.row()->chosen(), 0);
    press(Qt::Key_Right);
    press(Qt::Key_Right);
    EXPECT_EQ(film.row()->chosen(), 2);
    press(Qt::Key_Left);
    EXPECT_EQ(film.row()->chosen(), 1);
    press(Qt::Key_End);
    EXPECT_EQ(film.row()->chosen(), film.row()->count() - 1);
    press(Qt::Key_Escape);
    EXPECT_FALSE(film.isStageShown());
}

TEST_F(KeysJobTest, APrice) {
    window = makeWindow(keysSample("hut-draughts"));
    ASSERT_TRUE(planned());
    showTab(BenchTabs::Price);
    ASSERT_TRUE(tabTo("price-bench-hour-entry"));
    write(QStringLiteral("42"));
    press(Qt::Key_Return);
    EXPECT_EQ(project().pricing.benchHour, 4'200);
    ASSERT_TRUE(tabTo("price-rounding"));
    const auto rounding = project().pricing.rounding;
    press(Qt::Key_Down);
    EXPECT_NE(project().pricing.rounding, rounding);
    press(Qt::Key_Z, Qt::ControlModifier);
    press(Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(project().pricing, readProject(keysSample("hut-draughts").toStdString())->pricing);
}

TEST_F(KeysJobTest, SeveralBoards) {
    window = makeWindow(keysSample("hut-draughts"));
    ASSERT_TRUE(planned());
    press(Qt::Key_B, Qt::ControlModifier | Qt::ShiftModifier);
    auto* batch = find<BatchDialog>("batch");
    ASSERT_TRUE(batch->isVisible());
    batch->activateWindow();
    ASSERT_TRUE(QTest::qWaitForWindowActive(batch));
    const auto settled = [batch] {
        return QTest::qWaitFor([batch] { return !batch->batcher().isWorking(); }, 60'000);
    };
    ASSERT_TRUE(settled());
    answers.several << keysSample("basket-weave-block");
    ASSERT_TRUE(tabTo("batchAdd"));
    press(Qt::Key_Space);
    ASSERT_TRUE(settled());
    EXPECT_EQ(find<QListWidget>("batchBoards")->count(), 2);
    answers.write = inFolder("both.pdf");
    ASSERT_TRUE(tabTo("batchPdf"));
    press(Qt::Key_Space);
    EXPECT_TRUE(QFile::exists(inFolder("both.pdf")));
    press(Qt::Key_Escape);
    EXPECT_FALSE(batch->isVisible());
    EXPECT_TRUE(answers.told.isEmpty()) << answers.told.join(u'|').toStdString();
}

}  // namespace
}  // namespace kerfwright
