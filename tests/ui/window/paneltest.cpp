// What stands round the board: it stays put, hands the focus back, and makes itself small.
#include "tests/ui/window/windowfixture.h"
#include "ui/window/benchtabs.h"
#include "ui/window/faultnote.h"
#include "ui/window/panels.h"
#include "ui/window/theme.h"
#include "ui/window/tones.h"

#include <QAbstractButton>
#include <QAction>
#include <QApplication>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QTest>
#include <QToolButton>

namespace kerfwright {
namespace {

class PanelTest : public WindowTest {
protected:
    QAction* action(const char* name) const {
        auto* found = window->findChild<QAction*>(QString::fromLatin1(name));
        EXPECT_NE(found, nullptr) << name;
        return found;
    }
    bool boardHasFocus() const { return window->board().hasFocus(); }
    void resizeTo(int width, int height) {
        window->resize(width, height);
        QCoreApplication::sendPostedEvents();
        ASSERT_TRUE(QTest::qWaitFor([&] { return window->width() == width; }));
        QCoreApplication::processEvents();
    }
    Panels& panels() const { return window->panels(); }
};

TEST_F(PanelTest, ACommandByButtonLeavesTheKeysToTheBoard) {
    key(Qt::Key_Right);
    key(Qt::Key_Right, Qt::ShiftModifier);
    click("merge");
    EXPECT_TRUE(boardHasFocus());
    EXPECT_EQ(field().pieces.front().across, 2);
    click("split");
    EXPECT_TRUE(boardHasFocus());
    EXPECT_EQ(field().pieces.front().across, 1);
    click("chip2");
    EXPECT_TRUE(boardHasFocus());
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Space);
    EXPECT_EQ(woodAt(0, 0), 1);
    find<QLineEdit>("cellWidthEntry")->setFocus();
    action("toolMark")->trigger();
    EXPECT_TRUE(boardHasFocus());
}

TEST_F(PanelTest, NothingBelowTheBoardMovesIt) {
    const QRectF before = window->board().geometry().board();
    key(Qt::Key_Right);
    QCoreApplication::processEvents();
    EXPECT_EQ(window->board().geometry().board(), before);
    type("columnWidthEntry", QStringLiteral("no length"));
    QCoreApplication::processEvents();
    EXPECT_TRUE(find<FaultNote>("boardHint")->text().startsWith(QStringLiteral("▲ Column width")));
    EXPECT_EQ(window->board().geometry().board(), before);
    key(Qt::Key_Escape);
    QCoreApplication::processEvents();
    EXPECT_EQ(window->board().geometry().board(), before);
    EXPECT_FALSE(find<FaultNote>("boardHint")->isSaying());
}

TEST_F(PanelTest, TheBarSaysHowLargeAPieceOfSeveralCellsIs) {
    key(Qt::Key_Right);
    EXPECT_EQ(find<QLabel>("markSize")->text(), QString());
    key(Qt::Key_Right, Qt::ShiftModifier);
    EXPECT_TRUE(find<QLabel>("markSize")->text().startsWith(QStringLiteral("Marked ")));
    key(Qt::Key_M);
    const Length both = field().columns[0] + field().columns[1];
    const QString size =
        QStringLiteral("Piece %1 × %2")
            .arg(QString::fromStdString(formatBare(both, project().notation)),
                 QString::fromStdString(format(field().rows[0], project().notation)));
    EXPECT_EQ(find<QLabel>("markSize")->text(), size);
    EXPECT_TRUE(find<QLabel>("markSize")->isVisible());
}

TEST_F(PanelTest, F6GoesRoundTheWindow) {
    window->board().setFocus();
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_F6);
    EXPECT_TRUE(find("bench")->isAncestorOf(QApplication::focusWidget()));
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_F6);
    QWidget* inWish = QApplication::focusWidget();
    EXPECT_TRUE(find("wish")->isAncestorOf(inWish));
    QTest::keyClick(inWish, Qt::Key_Tab);
    QWidget* further = QApplication::focusWidget();
    QTest::keyClick(further, Qt::Key_F6);
    EXPECT_TRUE(boardHasFocus());
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_F6, Qt::ShiftModifier);
    EXPECT_EQ(QApplication::focusWidget(), further);
}

TEST_F(PanelTest, ThePanelWithTheFocusGetsWiderAndNarrowerByKey) {
    QWidget* wish = find("wish");
    QWidget* bench = find("bench");
    const int wishWidth = wish->width();
    const int benchWidth = bench->width();
    find<QLineEdit>("cellWidthEntry")->setFocus();
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_F7, Qt::ControlModifier);
    EXPECT_EQ(wish->width(), wishWidth + 24);
    EXPECT_EQ(bench->width(), benchWidth);
    for (int i = 0; i < 20; ++i) {
        QTest::keyClick(QApplication::focusWidget(), Qt::Key_F8, Qt::ControlModifier);
    }
    EXPECT_EQ(wish->width(), wish->minimumWidth());
    window->board().setFocus();
    QTest::keyClick(&window->board(), Qt::Key_F7, Qt::ControlModifier);
    EXPECT_EQ(wish->width(), wish->minimumWidth());
    QTest::keyClick(&window->board(), Qt::Key_F6);
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_F7, Qt::ControlModifier);
    EXPECT_EQ(bench->width(), benchWidth + 24);
}

TEST_F(PanelTest, KeysOfTheBoardStandInItsMenuAndAreNotTakenFromEntries) {
    EXPECT_EQ(action("toolPaint")->shortcut(), QKeySequence(Qt::Key_P));
    EXPECT_EQ(action("toolMark")->shortcut(), QKeySequence(Qt::Key_K));
    EXPECT_EQ(action("toolJoints")->shortcut(), QKeySequence(Qt::Key_J));
    key(Qt::Key_J);
    EXPECT_EQ(window->board().tool(), Tool::Joints);
    find<QAbstractButton>("titlesHead")->click();
    type("nameEntry", QStringLiteral("pkj"));
    EXPECT_EQ(project().titles.name, "pkj");
    EXPECT_EQ(window->board().tool(), Tool::Joints);
}

TEST_F(PanelTest, TheHintFollowsTheMode) {
    auto* hint = find<FaultNote>("boardHint");
    key(Qt::Key_P);
    EXPECT_TRUE(hint->text().contains(QStringLiteral("paints with")));
    key(Qt::Key_K);
    EXPECT_TRUE(hint->text().contains(QStringLiteral("marks pieces")));
    key(Qt::Key_J);
    EXPECT_TRUE(hint->text().contains(QStringLiteral("Drag a joint")));
}

TEST_F(PanelTest, SymmetriesThatDoNothingSayWhy) {
    EXPECT_TRUE(action("symmetryDown")->isEnabled());
    key(Qt::Key_J);
    EXPECT_TRUE(action("symmetryDown")->isEnabled()) << "joints are moved in pairs";
    EXPECT_FALSE(action("symmetryRows")->isEnabled());
    EXPECT_TRUE(action("symmetryRows")->toolTip().contains(QStringLiteral("run through all rows")));
    key(Qt::Key_P);
    type("downEntry", QStringLiteral("1"));
    EXPECT_FALSE(action("symmetryDown")->isEnabled());
    EXPECT_TRUE(action("symmetryDown")->toolTip().contains(QStringLiteral("too few")));
    EXPECT_FALSE(action("symmetryRows")->isEnabled());
    EXPECT_TRUE(action("symmetryAcross")->isEnabled());
}

/// A screen of 1440 × 900 at double scale has 720 × 450 of these pixels.
TEST_F(PanelTest, ASmallWindowKeepsABoardTheUnitsAndTheWayToItsPanels) {
    resizeTo(720, 450);
    EXPECT_TRUE(panels().isOpen(Panels::Wish));
    EXPECT_FALSE(panels().isOpen(Panels::Bench));
    const auto inWindow = [this](QWidget* widget) {
        return widget->isVisible() && window->rect().contains(QRect(
                                          widget->mapTo(window.get(), QPoint()), widget->size()));
    };
    EXPECT_TRUE(inWindow(find("units")));
    EXPECT_TRUE(inWindow(find("totals")));
    EXPECT_GE(window->board().geometry().board().width(), 180);
    QTest::keyClick(window.get(), Qt::Key_F8);
    EXPECT_TRUE(panels().isOpen(Panels::Bench));
    EXPECT_FALSE(panels().isOpen(Panels::Wish));
    QTest::keyClick(window.get(), Qt::Key_F8);
    EXPECT_FALSE(panels().isOpen(Panels::Bench));
    EXPECT_TRUE(panels().isOpen(Panels::Wish));
    QTest::keyClick(window.get(), Qt::Key_F7);
    EXPECT_FALSE(panels().isOpen(Panels::Wish));
    QTest::keyClick(window.get(), Qt::Key_2, Qt::AltModifier);
    EXPECT_TRUE(panels().isOpen(Panels::Bench));
    EXPECT_EQ(window->bench().currentIndex(), 1);
    QTest::keyClick(window.get(), Qt::Key_F7);
    resizeTo(1280, 860);
    EXPECT_TRUE(panels().isOpen(Panels::Wish));
    EXPECT_TRUE(panels().isOpen(Panels::Bench));
}

TEST_F(PanelTest, AFoldedPanelGivesItsFocusToTheBoardAndIsRemembered) {
    find<QLineEdit>("cellWidthEntry")->setFocus();
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_F7);
    EXPECT_FALSE(panels().isOpen(Panels::Wish));
    EXPECT_TRUE(boardHasFocus());
    panels().save();
    const auto another = makeWindow();
    EXPECT_TRUE(another->panels().isOpen(Panels::Wish));
    another->panels().restore();
    EXPECT_FALSE(another->panels().isOpen(Panels::Wish));
    EXPECT_TRUE(another->panels().isOpen(Panels::Bench));
}

TEST_F(PanelTest, DarkWoodsHaveAnOutlineInADarkWindow) {
    setThemeChoice(ThemeChoice::Dark);
    applyTheme(*qApp);
    ASSERT_TRUE(QTest::qWaitFor([this] { return isDark(window->palette()); }));
    window->document().edit(QStringLiteral("darken"), entry::none, [](Project& changed) {
        for (Wood& wood : changed.woods) {
            wood.colour = Colour{30, 24, 20};
        }
    });
    BoardView& board = window->board();
    const QImage image = board.grab().toImage();
    const QRectF cell = board.geometry().cells(QRect(2, 2, 1, 1));
    // Away from the pointer's frame: the joint on the right of the piece, and the board's edge.
    const QColor wood = image.pixelColor(cell.center().toPoint());
    const QColor joint =
        image.pixelColor(static_cast<int>(cell.right()) - 1, static_cast<int>(cell.center().y()));
    EXPECT_GE(contrast(wood, joint), 1.25);
    const QRectF all = board.geometry().board();
    const QColor edge =
        image.pixelColor(static_cast<int>(all.left()) - 1, static_cast<int>(all.center().y()));
    EXPECT_GE(contrast(edge, wood), 2);
    setThemeChoice(ThemeChoice::Light);
    applyTheme(*qApp);
}

TEST_F(PanelTest, TotalsThatHaveNoRoomAreOneStepAway) {
    ASSERT_TRUE(planned());
    auto* more = find<QToolButton>("totalsMore");
    QStringList before;
    for (const int width : {1024, 1280, 1440, 1920, 2600}) {
        window->resize(width, 700);
        ASSERT_TRUE(QTest::qWaitFor([&] { return find("totals")->width() == width; }));
        const QStringList left =
            more->isVisible() ? more->toolTip().split(QLatin1Char('\n')) : QStringList();
        for (const QString& one : left) {
            EXPECT_TRUE(width == 1024 || before.contains(one))
                << one.toStdString() << " came and went at " << width;
        }
        before = left;
    }
    EXPECT_TRUE(before.isEmpty()) << "there is room for all";

    window->resize(1024, 700);
    ASSERT_TRUE(QTest::qWaitFor([&] { return more->isVisible(); }));
    const QStringList left = more->toolTip().split(QLatin1Char('\n'));
    EXPECT_TRUE(more->text().startsWith(QStringLiteral("%1 more").arg(left.size())))
        << more->text().toStdString();
    more->setFocus();
    QTest::keyClick(more, Qt::Key_Space);
    auto* list = find<QListWidget>("totalsMoreList");
    ASSERT_TRUE(QTest::qWaitFor([&] { return list->isVisible(); }));
    ASSERT_EQ(list->count(), left.size());
    EXPECT_FALSE(list->item(0)->text().isEmpty());
    EXPECT_TRUE(list->selectedItems().isEmpty()) << "nothing is chosen before a key is pressed";
    EXPECT_EQ(list->currentRow(), -1);
    const QRect lastRow = list->visualItemRect(list->item(list->count() - 1));
    EXPECT_NEAR(lastRow.bottom(), list->viewport()->rect().bottom(), 3) << "and no row is empty";
    QTest::keyClick(list, Qt::Key_Escape);
    EXPECT_FALSE(list->isVisible());
}

TEST_F(PanelTest, SideWidthsFollowTheWindowUntilTheMakerSetsThem) {
    resizeTo(1440, 860);
    const int wide = find("bench")->width();
    const int form = find("wish")->width();
    resizeTo(1024, 700);
    EXPECT_LT(find("bench")->width(), wide);
    EXPECT_LT(find("wish")->width(), form);
    EXPECT_GT(window->board().width(), 320);
    resizeTo(1440, 860);
    EXPECT_NEAR(find("bench")->width(), wide, 3);
    find("across")->setFocus();
    window->panels().widen(60);
    const int own = find("wish")->width();
    EXPECT_GT(own, form + 40);
    resizeTo(1600, 860);
    EXPECT_NEAR(find("wish")->width(), own, 3);
}

}  // namespace
}  // namespace kerfwright
