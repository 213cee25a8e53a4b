// The board in words, for who hears it, and the commands with their keys, to search in.
#include "tests/ui/window/everyplace.h"
#include "ui/window/boardtext.h"
#include "ui/window/keyfinder.h"

#include <QAccessible>
#include <QAction>
#include <QApplication>
#include <QClipboard>
#include <QLineEdit>
#include <QMenu>
#include <QPlainTextEdit>
#include <QPointer>
#include <QTest>
#include <QTreeWidget>

#include <gmock/gmock.h>

#include <set>

namespace kerfwright {
namespace {

using testing::HasSubstr;

class WordsTest : public EveryPlace {
protected:
    KeyFinder* openKeys() {
        // What Ctrl, Shift and the key of ? are on a keyboard.
        QTest::keyClick(&window->board(), Qt::Key_Question, Qt::ControlModifier);
        auto* finder = window->findChild<KeyFinder*>();
        EXPECT_NE(finder, nullptr);
        EXPECT_TRUE(QTest::qWaitForWindowActive(finder));
        return finder;
    }
    static std::vector<std::string> shown(const KeyFinder& finder) {
        auto* list = finder.findChild<QTreeWidget*>();
        std::vector<std::string> lines;
        for (int i = 0; i < list->topLevelItemCount(); ++i) {
            const QTreeWidgetItem* line = list->topLevelItem(i);
            if (!line->isHidden()) {
                lines.push_back((line->text(0) + u'|' + line->text(1)).toStdString());
            }
        }
        return lines;
    }
};

Project striped() {
    Project project = newProject(Unit::Millimetres);
    project.board.border.width = Length();
    project.recipe.reset();
    project.board.field = plainGrid(4, 3, Length::mm(50), Length::mm(40), 0);
    for (Piece& piece : project.board.field.pieces) {
        piece.wood = (piece.row == 1 ? piece.column + 1 : piece.column) % 2;
    }
    return project;
}

TEST_F(WordsTest, ARowSaysItsPiecesFromTheLeft) {
    const Project project = striped();
    EXPECT_EQ(
        rowWords(project, 0),
        QStringLiteral("Row 1 of 3, 40 mm high: 2 times hard maple 50 mm, black walnut 50 mm"));
    EXPECT_EQ(
        rowWords(project, 1),
        QStringLiteral("Row 2 of 3, 40 mm high: 2 times black walnut 50 mm, hard maple 50 mm"));
}

TEST_F(WordsTest, PiecesOverSeveralRowsSayHowFarTheyReach) {
    Project project = striped();
    project.board.field = withMerged(project.board.field, 0, 0, 2, 2);
    EXPECT_EQ(rowWords(project, 0), QStringLiteral("Row 1 of 3, 40 mm high: hard maple 100 mm down "
                                                   "to row 2, hard maple 50 mm, black walnut "
                                                   "50 mm"));
    EXPECT_EQ(rowWords(project, 1), QStringLiteral("Row 2 of 3, 40 mm high: hard maple 100 mm from "
                                                   "row 1, black walnut 50 mm, hard maple 50 mm"));
}

TEST_F(WordsTest, TheWholeBoardIsSaidAndLikeRowsOnce) {
    const Project project = striped();
    const QStringList lines =
        boardWords(project, BoardSize{Length::mm(200), Length::mm(120)}).split(u'\n');
    ASSERT_GE(lines.size(), 6);
    const QStringList end = lines.mid(lines.size() - 6);
    EXPECT_EQ(end[0], QStringLiteral("200 × 120 × 38 mm, end grain up"));
    EXPECT_EQ(end[1],
              QStringLiteral("4 columns by 3 rows, 12 pieces: 6 hard maple, 6 black walnut"));
    EXPECT_EQ(end[2], QStringLiteral("No border"));
    EXPECT_EQ(end[5], QStringLiteral("Row 3 of 3, 40 mm high: as row 1"));
}

/// WCAG 2.1, 1.1.1 Non-text Content: the picture of the board has its equal in words.
TEST_F(WordsTest, ReadersWalkOverTheRowsOfTheBoard) {
    QAccessibleInterface* board = QAccessible::queryAccessibleInterface(&window->board());
    ASSERT_NE(board, nullptr);
    EXPECT_EQ(board->role(), QAccessible::List);
    const int rows = static_cast<int>(field().rows.size());
    ASSERT_EQ(board->childCount(), rows);
    for (int row = 0; row < rows; ++row) {
        QAccessibleInterface* line = board->child(row);
        ASSERT_NE(line, nullptr);
        EXPECT_EQ(line->text(QAccessible::Name), rowWords(project(), row));
        EXPECT_EQ(board->indexOfChild(line), row);
        EXPECT_EQ(line->parent()->object(), &window->board());
        const QPoint cell = window->board().mapToGlobal(cellCentre(1, row));
        EXPECT_TRUE(line->rect().contains(cell));
        EXPECT_EQ(board->childAt(cell.x(), cell.y()), line);
    }
    // They follow the board, whose last row goes.
    QAccessibleInterface* last = board->child(rows - 1);
    type("downEntry", QStringLiteral("2"));
    EXPECT_EQ(board->childCount(), 2);
    EXPECT_FALSE(last->isValid());
    EXPECT_TRUE(last->text(QAccessible::Name).isEmpty());
    EXPECT_EQ(board->child(1)->text(QAccessible::Name), rowWords(project(), 1));
}

TEST_F(WordsTest, TheWordsOfTheBoardAreReadAndCopied) {
    QTest::keyClick(&window->board(), Qt::Key_R, Qt::ControlModifier);
    auto* dialog = window->findChild<BoardText*>();
    ASSERT_NE(dialog, nullptr);
    ASSERT_TRUE(QTest::qWaitForWindowActive(dialog));
    auto* text = dialog->findChild<QPlainTextEdit*>();
    EXPECT_TRUE(QTest::qWaitFor([&] { return QApplication::focusWidget() == text; }));
    EXPECT_EQ(text->toPlainText(), window->board().words());
    EXPECT_THAT(text->toPlainText().toStdString(), HasSubstr(rowWords(project(), 0).toStdString()));
    QApplication::clipboard()->clear();
    QTest::keyClick(text, Qt::Key_C, Qt::AltModifier);
    EXPECT_TRUE(QTest::qWaitFor(
        [this] { return QApplication::clipboard()->text() == window->board().words(); }));
    QTest::keyClick(text, Qt::Key_Escape);
    EXPECT_FALSE(dialog->isVisible());
}

TEST_F(WordsTest, EveryCommandOfTheMenusIsFoundWithItsKeys) {
    KeyFinder* finder = openKeys();
    const std::vector<std::string> lines = shown(*finder);
    for (QAction* one : window->findChildren<QAction*>()) {
        const bool command = one->menu() == nullptr && !one->isSeparator() &&
                             !one->objectName().isEmpty() && !one->shortcut().isEmpty();
        if (command && one->objectName().startsWith(QStringLiteral("action"))) {
            const std::string text =
                one->text().remove(u'&').toStdString() + "|" +
                one->shortcut().toString(QKeySequence::NativeText).toStdString();
            EXPECT_TRUE(std::any_of(lines.begin(), lines.end(), [&](const std::string& line) {
                return line.rfind(text, 0) == 0;
            })) << text;
        }
    }
    EXPECT_THAT(lines, testing::Contains("go from piece to piece|Arrows"));
}

TEST_F(WordsTest, TheSearchTakesWordsInAnyOrderAndKeys) {
    KeyFinder* finder = openKeys();
    auto* search = finder->findChild<QLineEdit*>();
    EXPECT_TRUE(QTest::qWaitFor([&] { return QApplication::focusWidget() == search; }));
    QTest::keyClicks(search, QStringLiteral("rows insert"));
    EXPECT_THAT(shown(*finder), testing::ElementsAre("Insert rows above|Ctrl+Shift+Up",
                                                     "Insert rows below|Ctrl+Shift+Down"));
    QTest::keyClick(search, Qt::Key_A, Qt::ControlModifier);
    QTest::keyClicks(search, QStringLiteral("ctrl+shift+c"));
    EXPECT_THAT(shown(*finder), testing::ElementsAre("Copy the board as a picture|Ctrl+Shift+C"));
    QTest::keyClick(search, Qt::Key_A, Qt::ControlModifier);
    QTest::keyClicks(search, QStringLiteral("nothing like this"));
    EXPECT_TRUE(shown(*finder).empty());
    QTest::keyClick(search, Qt::Key_Return);
    EXPECT_TRUE(finder->isVisible());
}

TEST_F(WordsTest, ReturnCarriesACommandOut) {
    const QPointer<KeyFinder> finder = openKeys();
    auto* search = finder->findChild<QLineEdit*>();
    QTest::keyClicks(search, QStringLiteral("letters hatch"));
    ASSERT_EQ(shown(*finder).size(), 1U);
    QTest::keyClick(search, Qt::Key_Return);
    EXPECT_TRUE(QTest::qWaitFor([this] { return action("actionLetters")->isChecked(); }));
    EXPECT_TRUE(finder.isNull() || !finder->isVisible());
}

TEST_F(WordsTest, NoTwoCommandsAreListedAlike) {
    KeyFinder* finder = openKeys();
    auto* list = finder->findChild<QTreeWidget*>();
    ASSERT_NE(list, nullptr);
    std::set<QString> known;
    for (int row = 0; row < list->topLevelItemCount(); ++row) {
        const QTreeWidgetItem& line = *list->topLevelItem(row);
        EXPECT_TRUE(known.insert(line.text(0) + QLatin1Char('|') + line.text(2)).second)
            << line.text(0).toStdString();
        // Whole, on as many lines as that takes.
        const QRect place = list->visualItemRect(list->topLevelItem(row));
        const QRect room(0, 0, list->columnWidth(0) - 8, 1000);
        EXPECT_GE(place.height() + 2,
                  list->fontMetrics().boundingRect(room, Qt::TextWordWrap, line.text(0)).height())
            << line.text(0).toStdString();
    }
}

}  // namespace
}  // namespace kerfwright
