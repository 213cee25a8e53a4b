// A board of six columns and five rows, and hands that paint on it.
#pragma once

#include "tests/ui/window/windowfixture.h"
#include "ui/window/faultnote.h"
#include "ui/window/regioneditor.h"

#include <QTest>

#include <cstdlib>
#include <string>
#include <vector>

namespace kerfwright {

using Rows = std::vector<std::string>;

class PaintingTest : public WindowTest {
protected:
    PaintingTest() {
        // Six columns and five rows of one wood to paint on.
        window->document().edit(QStringLiteral("lay out"), entry::none, [](Project& project) {
            project.board.field = plainGrid(6, 5, Length::mm(50), Length::mm(40), 0);
        });
        window->document().history().clear();
        window->editor().setWood(1);
        window->resize(1760, 900);  // room for all buttons below the board
    }

    void layOut(const Field& wanted) {
        window->document().edit(QStringLiteral("lay out"), entry::none,
                                [&](Project& project) { project.board.field = wanted; });
        window->document().history().clear();
    }
    void press(QPoint at, Qt::KeyboardModifiers keys = Qt::NoModifier) {
        QTest::mousePress(&window->board(), Qt::LeftButton, keys, at);
    }
    void move(QPoint at) { QTest::mouseMove(&window->board(), at); }
    void release(QPoint at, Qt::KeyboardModifiers keys = Qt::NoModifier) {
        QTest::mouseRelease(&window->board(), Qt::LeftButton, keys, at);
    }
    /// Marks by key alone: the piece in the corner, then from cell to cell.
    void goTo(int column, int row) {
        key(Qt::Key_Escape);
        key(Qt::Key_Right);
        walk(column, row);
    }
    void walk(int right, int down, Qt::KeyboardModifiers keys = Qt::NoModifier) {
        for (int i = 0; i < std::abs(right); ++i) {
            key(right > 0 ? Qt::Key_Right : Qt::Key_Left, keys);
        }
        for (int i = 0; i < std::abs(down); ++i) {
            key(down > 0 ? Qt::Key_Down : Qt::Key_Up, keys);
        }
    }
    /// Rows of digits, the wood of each cell.
    Rows picture() const {
        Rows rows;
        for (int row = 0; row < static_cast<int>(field().rows.size()); ++row) {
            std::string line;
            for (int column = 0; column < static_cast<int>(field().columns.size()); ++column) {
                line += std::to_string(woodAt(column, row));
            }
            rows.push_back(line);
        }
        return rows;
    }
    QString undoText() const { return window->document().history().undoText(); }
    int steps() const { return window->document().history().count(); }
    QString described() const { return window->board().accessibleDescription(); }
    QString hint() const { return find<FaultNote>("boardHint")->text(); }
    /// A cross of wood 1 in the top left corner of 2 x 2 cells: an L, which has no symmetry.
    void paintL() {
        Field changed = plainGrid(6, 5, Length::mm(50), Length::mm(40), 0);
        for (const int piece : {0, 6, 7}) {
            changed.pieces[static_cast<std::size_t>(piece)].wood = 1;
        }
        layOut(changed);
    }
    void markL() {
        key(Qt::Key_K);
        goTo(0, 0);
        walk(1, 1, Qt::ShiftModifier);
        ASSERT_EQ(window->editor().mark(), QRect(0, 0, 2, 2));
    }
};

}  // namespace kerfwright
