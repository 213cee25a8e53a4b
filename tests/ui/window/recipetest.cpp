// Patterns, their numbers and their woods, by mouse and keys.
#include "core/project/file.h"
#include "tests/ui/window/windowfixture.h"
#include "ui/window/patternpicker.h"
#include "ui/window/recipeform.h"

#include <QApplication>
#include <QLabel>
#include <QLineEdit>
#include <QMenu>
#include <QTest>

namespace kerfwright {
namespace {

class RecipeTest : public WindowTest {
protected:
    QString said() const { return find<QLabel>("recipeAbout")->text(); }
    QUndoStack& history() { return window->document().history(); }
    /// Picks a wood from the list that a role opens.
    void choose(const char* role, int wood) {
        auto* button = find<RoleButton>(role);
        click(button);
        auto* menu = button->findChild<QMenu*>();
        ASSERT_NE(menu, nullptr);
        menu->actions().at(wood)->trigger();
        menu->close();
    }
};

TEST_F(RecipeTest, ANumberLaysTheFieldAnewInOneStep) {
    click("pattern-bricks");
    const Project before = project();
    const int steps = history().count();
    type("bricks-acrossEntry", QStringLiteral("5"));
    QTest::keyClick(find<QLineEdit>("bricks-acrossEntry"), Qt::Key_Return);
    ASSERT_TRUE(project().recipe);
    EXPECT_EQ(project().recipe->counts[0], 5);
    EXPECT_EQ(field(), layOut(*project().recipe).value());
    EXPECT_EQ(field().columns.size(), 10u);
    EXPECT_EQ(field().width(), Length::mm(400)) << "the room stays";
    EXPECT_EQ(history().count(), steps + 1);
    EXPECT_EQ(history().undoText(), QStringLiteral("change bricks a course"));
    history().undo();
    EXPECT_EQ(project(), before);
}

TEST_F(RecipeTest, MoreSquaresGoOnWithThePattern) {
    click("pattern-diagonal-steps");
    ASSERT_TRUE(project().recipe);
    const Field before = field();
    type("acrossEntry", QString::number(before.columns.size() + 3));
    ASSERT_TRUE(project().recipe) << "the pattern was lost";
    EXPECT_EQ(field().columns.size(), before.columns.size() + 3);
    EXPECT_EQ(field().columns.front(), before.columns.front()) << "squares keep their size";
    EXPECT_EQ(field(), layOut(*project().recipe).value());
}

TEST_F(RecipeTest, LengthsAndTheRoomAreNumbersToo) {
    click("pattern-mortar-bricks");
    type("mortar-bricks-mortarEntry", QStringLiteral("5"));
    EXPECT_EQ(field().columns[1], Length::mm(5));
    EXPECT_EQ(field().rows[1], Length::mm(5));
    type("mortar-bricks-widthEntry", QStringLiteral("50 cm"));
    EXPECT_LE(field().width(), Length::mm(500));
    EXPECT_GT(field().width(), Length::mm(498));
    EXPECT_EQ(field().columns[1], Length::mm(5));
}

TEST_F(RecipeTest, WhatDoesNotFitIsSaidAndChangesNothing) {
    click("pattern-basket");
    const Project before = project();
    type("basket-acrossEntry", QStringLiteral("30"));
    auto* entry = find<QLineEdit>("basket-acrossEntry");
    EXPECT_TRUE(entry->accessibleDescription().contains(
        QStringLiteral("Tiles across: must be from 1 to 21")))
        << entry->accessibleDescription().toStdString();
    EXPECT_EQ(project(), before);
}

TEST_F(RecipeTest, PaintingMakesAFreeFieldAndSaysSo) {
    click("pattern-bricks");
    EXPECT_EQ(find<QLabel>("recipeName")->text(), QStringLiteral("Bricks"));
    EXPECT_TRUE(find("bricks-across")->isVisible());
    click("chip4");
    clickCell(0, 0);
    EXPECT_FALSE(project().recipe);
    EXPECT_EQ(find<QLabel>("recipeName")->text(), QStringLiteral("Free field"));
    EXPECT_TRUE(said().contains(QStringLiteral("no longer laid out as bricks")));
    EXPECT_FALSE(find("bricks-across")->isVisible());
    history().undo();
    EXPECT_TRUE(project().recipe);
    EXPECT_TRUE(find("bricks-across")->isVisible());
}

TEST_F(RecipeTest, AFieldThatOnlyGrowsKeepsItsRecipe) {
    type("cellWidthEntry", QStringLiteral("45"));
    ASSERT_TRUE(project().recipe);
    EXPECT_EQ(project().recipe->width, Length::mm(360));
    type("acrossEntry", QStringLiteral("10"));
    ASSERT_TRUE(project().recipe);
    EXPECT_EQ(project().recipe->counts[0], 10);
    EXPECT_EQ(find<QLineEdit>("chequer-acrossEntry")->text(), QStringLiteral("10"));
}

// Half a number on the way to the whole one makes a field that the recipe cannot lay out.
TEST_F(RecipeTest, ANumberThatIsTypedDigitByDigitKeepsTheRecipe) {
    click("pattern-basket");
    type("basket-acrossEntry", QStringLiteral("4"));
    type("basket-widthEntry", QStringLiteral("360"));  // three equal strips a tile
    const Project before = project();
    ASSERT_EQ(field().columns.size(), 12u);
    type("acrossEntry", QStringLiteral("18"));
    ASSERT_TRUE(project().recipe);
    EXPECT_EQ(project().recipe->counts[0], 6);
    type("acrossEntry", QStringLiteral("12"));
    EXPECT_EQ(project(), before);
}

TEST_F(RecipeTest, AReopenedFileKeepsIt) {
    click("pattern-log-cabin");
    type("log-cabin-roundsEntry", QStringLiteral("1"));
    answers.write = inFolder("cabin.kerfwright");
    QTest::keyClick(window.get(), Qt::Key_S, Qt::ControlModifier);
    const Project saved = project();
    window = makeWindow(inFolder("cabin.kerfwright"));
    EXPECT_EQ(project(), saved);
    EXPECT_EQ(find<QLineEdit>("log-cabin-roundsEntry")->text(), QStringLiteral("1"));
    type("log-cabin-roundsEntry", QStringLiteral("2"));
    EXPECT_EQ(field().columns.size(), saved.board.field.columns.size() / 3 * 5);
}

TEST_F(RecipeTest, PicturesLiveInTheWoodsThatAreChosen) {
    click("pattern-chequer");
    const auto picture = [this](const char* name) { return find(name)->grab().toImage(); };
    const QImage basket = picture("pattern-basket");
    const QImage chequer = picture("pattern-chequer");
    choose("chequer-wood1", 2);
    EXPECT_EQ(project().recipe->woods, (std::vector<int>{2, 1}));
    EXPECT_EQ(woodAt(0, 0), 2);
    EXPECT_NE(picture("pattern-chequer"), chequer);
    EXPECT_NE(picture("pattern-basket"), basket);
    EXPECT_EQ(history().undoText(), QStringLiteral("change wood (first)"));
    history().undo();
    EXPECT_EQ(picture("pattern-basket"), basket);
    window->document().edit(QStringLiteral("repaint"), entry::none, [](Project& changed) {
        changed.woods[0].colour = {10, 120, 60};
    });
    EXPECT_NE(picture("pattern-basket"), basket);
}

TEST_F(RecipeTest, APatternWithoutRoomIsSaidSo) {
    type("acrossEntry", QStringLiteral("1"));
    type("downEntry", QStringLiteral("1"));
    type("cellWidthEntry", QStringLiteral("6"));
    type("cellHeightEntry", QStringLiteral("6"));
    const Project before = project();
    click("pattern-mortar-bricks");
    EXPECT_EQ(project(), before);
    auto* note = find<QLabel>("patternNote");
    EXPECT_TRUE(note->isVisible());
    EXPECT_TRUE(
        note->text().contains(QStringLiteral("No room for bricks with mortar lines. Column 1")))
        << note->text().toStdString();
    click("pattern-plain");
    EXPECT_FALSE(note->isVisible());
}

TEST_F(RecipeTest, ArrowKeysGoFromPictureToPicture) {
    const auto button = [](std::size_t i) { return "pattern-" + std::string(patterns()[i].key); };
    find(button(0).c_str())->setFocus();
    for (const Qt::Key key : {Qt::Key_Right, Qt::Key_Down, Qt::Key_Left, Qt::Key_Up}) {
        QTest::keyClick(QApplication::focusWidget(), key);
    }
    EXPECT_EQ(QApplication::focusWidget(), find(button(0).c_str()));
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Right);
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Space);
    ASSERT_TRUE(project().recipe);
    EXPECT_EQ(project().recipe->pattern, patterns()[1].pattern);
}

}  // namespace
}  // namespace kerfwright
