// The marked region, by mouse and again by keys alone.
#include "tests/ui/window/paintingfixture.h"

#include <QCoreApplication>

namespace kerfwright {
namespace {

class RegionTest : public PaintingTest {};

TEST_F(RegionTest, CopiesAndPastesByKeys) {
    paintL();
    markL();
    key(Qt::Key_C, Qt::ControlModifier);
    EXPECT_EQ(steps(), 0);
    key(Qt::Key_V, Qt::ControlModifier);
    ASSERT_NE(window->editor().region().carried(), nullptr);
    walk(3, 2);
    EXPECT_TRUE(described().contains(
        QStringLiteral("In the hand: 2 by 2 cells, top left over column 4, row 3")))
        << described().toStdString();
    key(Qt::Key_H);  // mirrored while it is in the hand
    key(Qt::Key_Return);
    EXPECT_EQ(picture(), Rows({"100000", "110000", "000010", "000110", "000000"}));
    EXPECT_EQ(window->editor().mark(), QRect(3, 2, 2, 2));
    EXPECT_EQ(undoText(), QStringLiteral("paste pieces"));
    EXPECT_EQ(steps(), 1);
}

TEST_F(RegionTest, TheCopyFollowsThePointerAndShiftKeepsItInTheHand) {
    paintL();
    markL();
    click("copyPieces");
    click("pastePieces");
    ASSERT_NE(window->editor().region().carried(), nullptr);
    move(cellCentre(3, 1));
    EXPECT_EQ(window->editor().region().carried()->at, QPoint(2, 0));
    QTest::mouseClick(&window->board(), Qt::LeftButton, Qt::ShiftModifier, cellCentre(3, 1));
    ASSERT_NE(window->editor().region().carried(), nullptr);
    move(cellCentre(5, 4));
    QTest::mouseClick(&window->board(), Qt::LeftButton, Qt::NoModifier, cellCentre(5, 4));
    EXPECT_EQ(window->editor().region().carried(), nullptr);
    EXPECT_EQ(picture(), Rows({"101000", "111100", "000000", "000010", "000011"}));
    EXPECT_EQ(steps(), 2);
}

TEST_F(RegionTest, EscapeAndTheOtherButtonLetGo) {
    paintL();
    markL();
    key(Qt::Key_C, Qt::ControlModifier);
    key(Qt::Key_V, Qt::ControlModifier);
    key(Qt::Key_Escape);
    EXPECT_EQ(window->editor().region().carried(), nullptr);
    key(Qt::Key_V, Qt::ControlModifier);
    clickCell(3, 3, Qt::RightButton);
    EXPECT_EQ(window->editor().region().carried(), nullptr);
    EXPECT_EQ(window->editor().wood(), 1) << "that button let go and picked nothing up";
    EXPECT_EQ(steps(), 0);
}

TEST_F(RegionTest, CutLeavesTheWoodThatPaints) {
    paintL();
    markL();
    window->editor().setWood(2);
    key(Qt::Key_X, Qt::ControlModifier);
    EXPECT_EQ(picture()[0], "220000");
    EXPECT_EQ(undoText(), QStringLiteral("cut pieces"));
    key(Qt::Key_V, Qt::ControlModifier);
    walk(4, 0);
    key(Qt::Key_Space);
    EXPECT_EQ(picture(), Rows({"220010", "220011", "000000", "000000", "000000"}));
}

TEST_F(RegionTest, DraggingWhatIsMarkedMovesItAndWithCtrlCopiesIt) {
    paintL();
    markL();
    window->editor().setWood(0);
    drag(cellCentre(1, 1), cellCentre(4, 3));
    EXPECT_EQ(picture(), Rows({"000000", "000000", "000100", "000110", "000000"}));
    EXPECT_EQ(undoText(), QStringLiteral("move pieces"));
    EXPECT_EQ(steps(), 1);
    EXPECT_EQ(window->editor().mark(), QRect(3, 2, 2, 2));
    press(cellCentre(3, 2), Qt::ControlModifier);
    QMouseEvent away(QEvent::MouseMove, cellCentre(0, 0),
                     window->board().mapToGlobal(cellCentre(0, 0)), Qt::NoButton, Qt::LeftButton,
                     Qt::ControlModifier);
    QCoreApplication::sendEvent(&window->board(), &away);
    release(cellCentre(0, 0), Qt::ControlModifier);
    EXPECT_EQ(picture(), Rows({"100000", "110000", "000100", "000110", "000000"}));
}

TEST_F(RegionTest, KeysMoveWhatIsMarked) {
    paintL();
    markL();
    window->editor().setWood(0);
    key(Qt::Key_G);
    walk(2, 0, Qt::ShiftModifier);  // by its own width
    key(Qt::Key_Return);
    EXPECT_EQ(picture(), Rows({"000010", "000011", "000000", "000000", "000000"}));
    EXPECT_EQ(undoText(), QStringLiteral("move pieces"));
    key(Qt::Key_G);
    key(Qt::Key_Return);
    EXPECT_EQ(steps(), 1) << "laid down where it was is no step";
}

TEST_F(RegionTest, MirrorsAndTurnsWhereItLies) {
    paintL();
    markL();
    key(Qt::Key_H);
    EXPECT_EQ(picture()[0], "010000");
    EXPECT_EQ(undoText(), QStringLiteral("mirror pieces across"));
    key(Qt::Key_H);
    click("mirrorDown");
    EXPECT_EQ(picture()[0], "110000");
    EXPECT_EQ(picture()[1], "100000");
    EXPECT_EQ(undoText(), QStringLiteral("mirror pieces down"));
    click("turn");
    EXPECT_EQ(picture()[0], "110000");
    EXPECT_EQ(picture()[1], "010000");
    EXPECT_EQ(undoText(), QStringLiteral("turn pieces"));
    for (int i = 0; i < 3; ++i) {
        key(Qt::Key_T);
    }
    EXPECT_EQ(picture()[1], "100000");
}

TEST_F(RegionTest, SaysWhyARegionCannotBeTurnedAndTurnsTheWholeField) {
    paintL();
    markL();
    key(Qt::Key_Right, Qt::ShiftModifier);
    key(Qt::Key_T);
    EXPECT_EQ(steps(), 0);
    EXPECT_TRUE(hint().contains(QStringLiteral("3 by 2 cells do not fit"))) << hint().toStdString();
    key(Qt::Key_A, Qt::ControlModifier);
    EXPECT_FALSE(hint().contains(QStringLiteral("do not fit")));
    key(Qt::Key_T);
    EXPECT_EQ(field().columns.size(), 5u);
    EXPECT_EQ(field().columns.front(), Length::mm(40));
    EXPECT_EQ(picture()[0], "00011");
}

TEST_F(RegionTest, RepeatsOverTheBoardByKeyAndOverAnAreaByItsCorner) {
    paintL();
    markL();
    key(Qt::Key_D, Qt::ControlModifier);
    EXPECT_EQ(picture(), Rows({"101010", "111111", "101010", "111111", "101010"}));
    EXPECT_EQ(undoText(), QStringLiteral("repeat pieces"));
    window->document().history().undo();
    markL();
    const QPoint corner =
        window->board().geometry().cells(QRect(0, 0, 2, 2)).bottomRight().toPoint();
    drag(corner, cellCentre(4, 1));
    EXPECT_EQ(picture(), Rows({"101010", "111110", "000000", "000000", "000000"}));
    EXPECT_EQ(window->editor().mark(), QRect(0, 0, 5, 2));
}

TEST_F(RegionTest, CoversAMarkedAreaWithTheCopy) {
    paintL();
    markL();
    key(Qt::Key_C, Qt::ControlModifier);
    goTo(3, 1);
    walk(2, 3, Qt::ShiftModifier);
    key(Qt::Key_V, Qt::ControlModifier | Qt::ShiftModifier);
    EXPECT_EQ(picture(), Rows({"100000", "110101", "000111", "000101", "000111"}));
    EXPECT_EQ(undoText(), QStringLiteral("cover with the copy"));
}

TEST_F(RegionTest, ACopyComesAlongToAnotherBoardByItsWoods) {
    paintL();
    markL();
    key(Qt::Key_C, Qt::ControlModifier);
    Project other = newProject(Unit::Millimetres);
    std::swap(other.woods[0], other.woods[1]);
    other.recipe.reset();
    other.board.field = plainGrid(4, 4, Length::mm(50), Length::mm(50), 2);
    window->document().start(other);
    window->editor().clearMark();
    key(Qt::Key_V, Qt::ControlModifier);
    key(Qt::Key_Return);
    EXPECT_EQ(picture(), Rows({"0122", "0022", "2222", "2222"}));
    // A wood that is not there is named.
    other.woods.erase(other.woods.begin());
    for (Piece& piece : other.board.field.pieces) {
        piece.wood = 0;
    }
    other.board.border = Border();
    window->document().start(other);
    key(Qt::Key_V, Qt::ControlModifier);
    EXPECT_EQ(window->editor().region().carried(), nullptr);
    EXPECT_TRUE(hint().contains(QStringLiteral("which this board has not")))
        << hint().toStdString();
}

// --- rows and columns

TEST_F(RegionTest, InsertsAndRemovesLinesByKeys) {
    paintL();
    markL();
    key(Qt::Key_Right, Qt::ControlModifier | Qt::ShiftModifier);
    EXPECT_EQ(picture()[1], "11110000");
    EXPECT_EQ(undoText(), QStringLiteral("insert 2 columns"));
    EXPECT_EQ(window->editor().mark(), QRect(2, 0, 2, 2));
    key(Qt::Key_Delete);
    EXPECT_EQ(picture()[1], "110000");
    EXPECT_EQ(undoText(), QStringLiteral("remove 2 columns"));
    goTo(0, 0);
    key(Qt::Key_Down, Qt::ControlModifier | Qt::ShiftModifier);
    EXPECT_EQ(field().rows.size(), 6u);
    EXPECT_EQ(undoText(), QStringLiteral("insert 1 row"));
    key(Qt::Key_Up, Qt::ControlModifier | Qt::ShiftModifier);
    EXPECT_EQ(field().rows.size(), 7u);
    key(Qt::Key_Delete, Qt::ShiftModifier);
    EXPECT_EQ(field().rows.size(), 6u);
    EXPECT_EQ(undoText(), QStringLiteral("remove 1 row"));
    key(Qt::Key_A, Qt::ControlModifier);
    key(Qt::Key_Delete);
    EXPECT_EQ(field().columns.size(), 6u);
    EXPECT_TRUE(hint().contains(QStringLiteral("one at least has to stay")))
        << hint().toStdString();
}

TEST_F(RegionTest, TheRulersMarkWholeLinesAndButtonsWorkOnThem) {
    key(Qt::Key_K);
    const int top = Rulers::top / 2;
    const int left = Rulers::left / 2;
    drag(QPoint(cellCentre(1, 0).x(), top), QPoint(cellCentre(2, 0).x(), top));
    EXPECT_EQ(window->editor().mark(), QRect(1, 0, 2, 5));
    click("removeColumns");
    EXPECT_EQ(field().columns.size(), 4u);
    drag(QPoint(left, cellCentre(0, 3).y()), QPoint(left, cellCentre(0, 4).y()));
    EXPECT_EQ(window->editor().mark(), QRect(0, 3, 4, 2));
    click("insertBelow");
    EXPECT_EQ(field().rows.size(), 7u);
    EXPECT_EQ(window->editor().mark(), QRect(0, 5, 4, 2));
}

TEST_F(RegionTest, SaysWhyTheFieldCannotGrow) {
    layOut(plainGrid(40, 2, Length::mm(20), Length::mm(20), 0));
    key(Qt::Key_A, Qt::ControlModifier);
    key(Qt::Key_Right, Qt::ControlModifier | Qt::ShiftModifier);
    EXPECT_EQ(field().columns.size(), 40u);
    EXPECT_TRUE(hint().contains(QStringLiteral("must be from 1 to 64"))) << hint().toStdString();
    layOut(plainGrid(2, 2, Length::mm(1000), Length::mm(20), 0));
    key(Qt::Key_A, Qt::ControlModifier);
    key(Qt::Key_Right, Qt::ControlModifier | Qt::ShiftModifier);
    EXPECT_EQ(field().columns.size(), 2u);
    EXPECT_TRUE(hint().contains(QStringLiteral("Field width"))) << hint().toStdString();
}

TEST_F(RegionTest, AChangeByHandMakesAFreeFieldAndUndoBringsTheRecipeBack) {
    window->document().start(newProject(Unit::Millimetres));
    ASSERT_TRUE(project().recipe.has_value());
    key(Qt::Key_K);
    goTo(0, 0);
    walk(2, 0, Qt::ShiftModifier);
    key(Qt::Key_M);
    EXPECT_FALSE(project().recipe.has_value());
    window->document().history().undo();
    EXPECT_TRUE(project().recipe.has_value());
}

}  // namespace
}  // namespace kerfwright
