// The painting tools and the joints, each by mouse and again by keys alone.
#include "tests/ui/window/paintingfixture.h"

#include <QAction>

namespace kerfwright {
namespace {

// --- line and rectangle

TEST_F(PaintingTest, DragDrawsALine) {
    key(Qt::Key_L);
    drag(cellCentre(0, 0), cellCentre(4, 2));
    EXPECT_EQ(picture(), Rows({"100000", "011000", "000110", "000000", "000000"}));
    EXPECT_EQ(steps(), 1);
    EXPECT_TRUE(undoText().startsWith(QStringLiteral("draw a line in ")))
        << undoText().toStdString();
    window->document().history().undo();
    EXPECT_EQ(picture()[0], "000000");
}

TEST_F(PaintingTest, KeysDrawALine) {
    key(Qt::Key_L);
    goTo(0, 0);
    key(Qt::Key_Space);
    EXPECT_TRUE(window->board().isDrawing());
    walk(4, 2);
    EXPECT_TRUE(described().contains(QStringLiteral("Line from column 1, row 1 to column 5, row 3, "
                                                    "5 pieces")))
        << described().toStdString();
    EXPECT_EQ(steps(), 0) << "nothing is painted before the end is there";
    key(Qt::Key_Space);
    EXPECT_EQ(picture(), Rows({"100000", "011000", "000110", "000000", "000000"}));
    EXPECT_EQ(steps(), 1);
}

TEST_F(PaintingTest, ShiftKeepsALineStraight) {
    key(Qt::Key_L);
    press(cellCentre(0, 0));
    move(cellCentre(4, 1));
    release(cellCentre(4, 1), Qt::ShiftModifier);
    EXPECT_EQ(picture()[0], "111110");
    EXPECT_EQ(picture()[1], "000000");
    goTo(0, 2);
    key(Qt::Key_Space);
    walk(4, 1);
    key(Qt::Key_Return, Qt::ShiftModifier);
    EXPECT_EQ(picture()[2], "111110");
    EXPECT_EQ(picture()[3], "000000");
}

TEST_F(PaintingTest, EscapeLeavesALineUndrawn) {
    key(Qt::Key_L);
    press(cellCentre(0, 0));
    move(cellCentre(3, 3));
    key(Qt::Key_Escape);
    release(cellCentre(3, 3));
    EXPECT_EQ(steps(), 0);
    goTo(1, 1);
    key(Qt::Key_Space);
    walk(2, 0);
    key(Qt::Key_Escape);
    EXPECT_FALSE(window->board().isDrawing());
    EXPECT_FALSE(window->editor().mark().isNull());
    EXPECT_EQ(steps(), 0);
}

TEST_F(PaintingTest, DragAndKeysDrawARectangleAndItsEdge) {
    key(Qt::Key_R);
    drag(cellCentre(1, 1), cellCentre(3, 2));
    EXPECT_EQ(picture(), Rows({"000000", "011100", "011100", "000000", "000000"}));
    EXPECT_TRUE(undoText().startsWith(QStringLiteral("draw a rectangle in ")));
    window->document().history().undo();

    press(cellCentre(5, 4));
    move(cellCentre(2, 2));
    release(cellCentre(2, 2), Qt::ShiftModifier);
    EXPECT_EQ(picture(), Rows({"000000", "000000", "001111", "001001", "001111"}));
    window->document().history().undo();

    goTo(1, 1);
    key(Qt::Key_Space);
    walk(2, 1);
    key(Qt::Key_Return);
    EXPECT_EQ(picture(), Rows({"000000", "011100", "011100", "000000", "000000"}));
    window->document().history().undo();
    goTo(0, 0);
    key(Qt::Key_Space);
    walk(2, 2);
    key(Qt::Key_Return, Qt::ShiftModifier);
    EXPECT_EQ(picture(), Rows({"111000", "101000", "111000", "000000", "000000"}));
}

TEST_F(PaintingTest, ShapesAndFillsAreRepeatedBySymmetry) {
    window->editor().setSymmetry({.across = true, .down = true});
    key(Qt::Key_L);
    drag(cellCentre(0, 0), cellCentre(1, 1));
    EXPECT_EQ(picture(), Rows({"100001", "010010", "000000", "010010", "100001"}));
    window->editor().setSymmetry({.across = true});
    window->editor().setWood(2);
    key(Qt::Key_F);
    clickCell(0, 0);
    EXPECT_EQ(picture(), Rows({"200002", "010010", "000000", "010010", "100001"}));
}

// --- fill

TEST_F(PaintingTest, FillsWhatHangsTogetherByMouseAndByKeys) {
    key(Qt::Key_L);
    drag(cellCentre(2, 0), cellCentre(2, 4));  // a wall down the middle
    window->editor().setWood(2);
    key(Qt::Key_F);
    clickCell(0, 3);
    EXPECT_EQ(picture(), Rows({"221000", "221000", "221000", "221000", "221000"}));
    EXPECT_TRUE(undoText().startsWith(QStringLiteral("fill with ")));
    EXPECT_EQ(steps(), 2);
    window->document().history().undo();
    EXPECT_EQ(picture()[0], "001000");
    goTo(5, 4);
    key(Qt::Key_Space);
    EXPECT_EQ(picture(), Rows({"001222", "001222", "001222", "001222", "001222"}));
}

// --- joints

TEST_F(PaintingTest, ADraggedJointHoldsWhereSizesAgree) {
    Field uneven = plainGrid(6, 5, Length::mm(50), Length::mm(40), 0);
    uneven.columns[4] = Length::mm(63);
    layOut(uneven);
    key(Qt::Key_J);
    const BoardGeometry geometry = window->board().geometry();
    // Column 4 becomes as wide as the one beyond column 5, near enough: the hand is 3 pixels off.
    const QRectF cell = geometry.cells(QRect(3, 2, 1, 1));
    const QPoint from(qRound(cell.right()), qRound(cell.center().y()));
    drag(from, from + QPoint(qRound(13 * geometry.scale()) + 3, 0));
    EXPECT_EQ(field().columns[4], Length::mm(50));
    EXPECT_EQ(field().columns[3], Length::mm(63));
    EXPECT_EQ(steps(), 1);
}

TEST_F(PaintingTest, KeysTakeAJointToWhereSizesAgreeAndReadItOut) {
    Field uneven = plainGrid(4, 3, Length::mm(50), Length::mm(40), 0);
    uneven.columns[0] = Length::mm(43);
    layOut(uneven);
    goTo(0, 0);
    key(Qt::Key_Right, Qt::AltModifier);
    EXPECT_EQ(field().columns[0], Length::mm(44));
    EXPECT_TRUE(described().contains(QStringLiteral("Joint after column 1, 44 mm | 49 mm")))
        << described().toStdString();
    key(Qt::Key_N);
    EXPECT_EQ(field().columns[0], Length::um(46'500));
    EXPECT_TRUE(described().contains(QStringLiteral("both sides equal")))
        << described().toStdString();
    goTo(1, 0);
    key(Qt::Key_N, Qt::ShiftModifier);
    EXPECT_EQ(field().rows[0], Length::mm(60)) << "the middle of the field";
}

TEST_F(PaintingTest, AMirrorMovesTheImageOfAJointAlong) {
    key(Qt::Key_J);
    find<QAction>("symmetryAcross")->trigger();
    const QRectF cell = window->board().geometry().cells(QRect(0, 2, 1, 1));
    const QPoint from(qRound(cell.right()), qRound(cell.center().y()));
    drag(from, from + QPoint(0, 4) + QPoint(25, 0));
    EXPECT_GT(field().columns[0], Length::mm(52));
    EXPECT_EQ(field().columns[0], field().columns[5]);
    EXPECT_EQ(field().columns[1], field().columns[4]);
    EXPECT_EQ(field().columns[2], Length::mm(50));
    EXPECT_EQ(steps(), 1);
    goTo(0, 0);
    key(Qt::Key_Left, Qt::AltModifier);
    EXPECT_EQ(field().columns[0], field().columns[5]);
}

// --- an irregular field

TEST_F(PaintingTest, ToolsWorkOnPiecesThatSpanCells) {
    layOut(withMerged(plainGrid(6, 5, Length::mm(50), Length::mm(40), 0), 1, 1, 3, 2));
    key(Qt::Key_L);
    drag(cellCentre(0, 1), cellCentre(2, 1));
    EXPECT_EQ(picture(), Rows({"000000", "111100", "011100", "000000", "000000"}));
    // Marking half of it and mirroring cuts it at the edge of the mark and nowhere else.
    key(Qt::Key_K);
    goTo(0, 0);
    walk(1, 1, Qt::ShiftModifier);
    const std::size_t before = field().pieces.size();
    key(Qt::Key_H);
    EXPECT_EQ(picture(), Rows({"000000", "111100", "011100", "000000", "000000"}));
    EXPECT_EQ(field().pieces.size(), before + 2);
    window->document().history().undo();
    // Split takes every piece under the mark apart, merge puts all of the mark together.
    markL();
    key(Qt::Key_S);
    EXPECT_EQ(field().pieces.size(), 30u);
    key(Qt::Key_M);
    EXPECT_EQ(field().pieces.size(), 27u);
}

// --- what the hand is over

TEST_F(PaintingTest, TheCursorTellsWhatAPressWouldDo) {
    BoardView& board = window->board();
    const auto shapeAt = [&](QPoint at) {
        move(at);
        return board.cursor().shape();
    };
    key(Qt::Key_P);
    EXPECT_EQ(shapeAt(cellCentre(4, 4)), Qt::PointingHandCursor);
    key(Qt::Key_R);
    EXPECT_EQ(shapeAt(cellCentre(4, 3)), Qt::CrossCursor);
    markL();
    EXPECT_EQ(shapeAt(cellCentre(4, 4)), Qt::CrossCursor);
    EXPECT_EQ(shapeAt(cellCentre(1, 0)), Qt::SizeAllCursor);
    EXPECT_EQ(shapeAt(board.geometry().cells(QRect(0, 0, 2, 2)).bottomRight().toPoint()),
              Qt::SizeFDiagCursor);
    key(Qt::Key_J);
    const QRectF cell = board.geometry().cells(QRect(2, 2, 1, 1));
    EXPECT_EQ(shapeAt(QPointF(cell.right(), cell.center().y()).toPoint()), Qt::SplitHCursor);
    EXPECT_EQ(shapeAt(QPointF(cell.center().x(), cell.bottom()).toPoint()), Qt::SplitVCursor);
}

TEST_F(PaintingTest, WhatIsMarkedIsReadOut) {
    paintL();
    markL();
    EXPECT_TRUE(
        described().contains(QStringLiteral("Marked: columns 1 to 2, rows 1 to 2, 4 pieces: "
                                            "1 hard maple, 3 black walnut, 100 × 80 mm")))
        << described().toStdString();
    goTo(1, 0);
    EXPECT_TRUE(described().contains(QStringLiteral("Marked: Hard maple · column 2, row 1")))
        << described().toStdString();
}

}  // namespace
}  // namespace kerfwright
