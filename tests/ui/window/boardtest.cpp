// The board worked with mouse and keys.
#include "tests/ui/window/windowfixture.h"
#include "ui/window/benchtabs.h"
#include "ui/window/cardlist.h"
#include "ui/window/lengthfield.h"
#include "ui/window/stepspanel.h"

#include <QTest>

#include <algorithm>

namespace kerfwright {
namespace {

class BoardTest : public WindowTest {};

TEST_F(BoardTest, ClickPaintsOnePiece) {
    const int other = 1 - woodAt(2, 3);
    window->editor().setWood(other);
    clickCell(2, 3);
    EXPECT_EQ(woodAt(2, 3), other);
    EXPECT_EQ(window->document().history().count(), 1);
}

TEST_F(BoardTest, DragPaintsEveryPieceOnItsWayAsOneStep) {
    window->editor().setWood(0);
    drag(cellCentre(0, 2), cellCentre(7, 2));
    for (int column = 0; column < 8; ++column) {
        EXPECT_EQ(woodAt(column, 2), 0) << column;
    }
    EXPECT_EQ(window->document().history().count(), 1);
    window->document().history().undo();
    EXPECT_FALSE(window->document().isModified());
}

TEST_F(BoardTest, RightButtonPicksTheWoodUp) {
    const int here = woodAt(0, 0);
    window->editor().setWood(1 - here);
    clickCell(0, 0, Qt::RightButton);
    EXPECT_EQ(window->editor().wood(), here);
    EXPECT_FALSE(window->document().isModified());
}

TEST_F(BoardTest, SymmetryRepeatsTheStroke) {
    const int columns = static_cast<int>(field().columns.size());
    const int rows = static_cast<int>(field().rows.size());
    const auto has = [](const std::vector<QPoint>& all, QPoint point) {
        return std::count(all.begin(), all.end(), point) == 1;
    };
    const auto across = images({1, 2}, {.across = true}, columns, rows);
    EXPECT_EQ(across.size(), 2u);
    EXPECT_TRUE(has(across, {columns - 2, 2}));
    const auto both = images({1, 2}, {.across = true, .down = true}, columns, rows);
    EXPECT_EQ(both.size(), 4u);
    EXPECT_TRUE(has(both, {columns - 2, rows - 3}));
    const auto turn = images({1, 2}, {.halfTurn = true}, columns, rows);
    EXPECT_EQ(turn.size(), 2u);
    EXPECT_TRUE(has(turn, {columns - 2, rows - 3}));
    const auto alternate = images({1, 3}, {.alternateRows = true}, columns, rows);
    EXPECT_EQ(alternate.size(), static_cast<std::size_t>(rows / 2));
    EXPECT_TRUE(has(alternate, {1, 1}));
    EXPECT_FALSE(has(alternate, {1, 2}));
    // A cell on the axis is its own image.
    EXPECT_EQ(images({2, 2}, {.across = true, .down = true, .halfTurn = true}, 5, 5).size(), 1u);

    window->editor().setWood(0);
    window->editor().setSymmetry({.across = true});
    const int left = woodAt(0, 0) == 0 ? 1 : 0;  // a column whose piece is not wood 0
    clickCell(left, 0);
    EXPECT_EQ(woodAt(left, 0), 0);
    EXPECT_EQ(woodAt(columns - 1 - left, 0), 0);
}

TEST_F(BoardTest, KeysMarkPaintAndChooseTheWood) {
    key(Qt::Key_Right);  // marks the first piece
    key(Qt::Key_Right);
    key(Qt::Key_Down);
    EXPECT_EQ(window->editor().mark(), QRect(1, 1, 1, 1));
    const int other = 1 - woodAt(1, 1);
    key(other == 0 ? Qt::Key_1 : Qt::Key_2);
    EXPECT_EQ(window->editor().wood(), other);
    key(Qt::Key_Space);
    EXPECT_EQ(woodAt(1, 1), other);
    key(Qt::Key_Right);
    key(Qt::Key_Return);
    EXPECT_EQ(window->editor().wood(), woodAt(2, 1));
    key(Qt::Key_Escape);
    EXPECT_TRUE(window->editor().mark().isNull());
}

TEST_F(BoardTest, MergesAndSplitsByKey) {
    const std::size_t before = field().pieces.size();
    key(Qt::Key_Right);
    key(Qt::Key_Right, Qt::ShiftModifier);
    key(Qt::Key_M);
    EXPECT_EQ(field().pieces.size(), before - 1);
    EXPECT_EQ(field().pieces.front().across, 2);
    key(Qt::Key_S);
    EXPECT_EQ(field().pieces.size(), before);
    EXPECT_EQ(window->document().history().undoText(), QStringLiteral("split piece"));
}

TEST_F(BoardTest, DraggingAJointKeepsTheSumAndSnaps) {
    key(Qt::Key_J);
    ASSERT_EQ(window->board().tool(), Tool::Joints);
    const Length sum = field().width();
    const Length before = field().columns[2];
    const QRectF cell = window->board().geometry().cells(QRect(2, 4, 1, 1));
    const QPoint from(qRound(cell.right()), qRound(cell.center().y()));
    drag(from, from + QPoint(17, 3));
    EXPECT_GT(field().columns[2], before);
    EXPECT_EQ(field().columns[2] + field().columns[3], before + before);
    EXPECT_EQ(field().width(), sum);
    EXPECT_EQ(field().columns[2].nm() % Length::mm(1).nm(), 0);
    EXPECT_EQ(window->document().history().count(), 1);
    EXPECT_EQ(window->document().history().undoText(), QStringLiteral("move joint"));
    // The field beside shows it and takes it to full precision.
    EXPECT_EQ(find<LengthField>("columnWidth")->value(), field().columns[2]);
    type("columnWidthEntry", QStringLiteral("47.125"));
    EXPECT_EQ(field().columns[2], Length::um(47'125));
}

TEST_F(BoardTest, KeysMoveJointsToo) {
    key(Qt::Key_Right);
    const Length before = field().columns[0];
    key(Qt::Key_Right, Qt::AltModifier);
    EXPECT_EQ(field().columns[0], before + Length::mm(1));
    key(Qt::Key_Left, Qt::AltModifier | Qt::ShiftModifier);
    EXPECT_EQ(field().columns[0], before + Length::mm(1) - Length::um(100));
}

TEST_F(BoardTest, ZoomsAboutThePointerAndFitsAgain) {
    BoardView& board = window->board();
    const QPointF at(cellCentre(1, 1));
    const QPointF before = board.geometry().toMm(at);
    const double scale = board.geometry().scale();
    QWheelEvent wheel(at, board.mapToGlobal(at), {}, {0, 120}, Qt::NoButton, Qt::ControlModifier,
                      Qt::NoScrollPhase, false);
    QCoreApplication::sendEvent(&board, &wheel);
    EXPECT_GT(board.geometry().scale(), scale);
    EXPECT_FALSE(board.isFitted());
    EXPECT_NEAR(board.geometry().toMm(at).x(), before.x(), 1e-6);
    EXPECT_NEAR(board.geometry().toMm(at).y(), before.y(), 1e-6);
    QTest::keyClick(window.get(), Qt::Key_0, Qt::ControlModifier);
    EXPECT_TRUE(board.isFitted());
    EXPECT_NEAR(board.geometry().scale(), scale, 1e-9);
}

TEST_F(BoardTest, AStepLightsUpItsRowsAndAPieceItsSteps) {
    ASSERT_TRUE(planned());
    CardList* steps = window->bench().steps()->list();
    ASSERT_GT(steps->count(), 4);
    const QImage plain = window->board().grab().toImage();
    QTest::mouseClick(steps->viewport(), Qt::LeftButton, Qt::NoModifier, QPoint(60, 24));
    EXPECT_EQ(steps->chosenCard(), 0);
    EXPECT_NE(window->board().grab().toImage(), plain);
    QTest::mouseClick(steps->viewport(), Qt::LeftButton, Qt::NoModifier, QPoint(60, 24));
    EXPECT_EQ(steps->chosenCard(), -1);
    EXPECT_EQ(window->board().grab().toImage(), plain);

    key(Qt::Key_K);
    clickCell(3, 3);
    EXPECT_TRUE(steps->isMarked(0)) << "the first step mills the strips of every piece";
}

TEST_F(BoardTest, LettersChangeThePictureOnly) {
    ASSERT_TRUE(planned());
    const Project before = project();
    const QImage plain = window->board().grab().toImage();
    QTest::keyClick(window.get(), Qt::Key_L, Qt::ControlModifier);
    EXPECT_NE(window->board().grab().toImage(), plain);
    EXPECT_EQ(project(), before);
}

TEST_F(BoardTest, ShowsTheColourOfTheWoodWhereThePieceIs) {
    const QImage picture = window->board().grab().toImage();
    const double ratio = picture.devicePixelRatio();
    for (const QPoint cell : {QPoint(0, 0), QPoint(1, 0), QPoint(7, 7)}) {
        const QPoint pixel = (QPointF(cellCentre(cell.x(), cell.y())) * ratio).toPoint();
        const Colour colour =
            project().woods[static_cast<std::size_t>(woodAt(cell.x(), cell.y()))].colour;
        EXPECT_EQ(picture.pixelColor(pixel), toQColor(colour));
    }
}

}  // namespace
}  // namespace kerfwright
