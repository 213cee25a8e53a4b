// The whole job by keys alone: nothing here has a mouse, and every key goes to what has the focus.
#include "core/project/file.h"
#include "tests/ui/window/windowfixture.h"
#include "ui/window/benchtabs.h"
#include "ui/window/cardlist.h"
#include "ui/window/plankeditor.h"
#include "ui/window/stepspanel.h"

#include <QAbstractButton>
#include <QApplication>
#include <QFile>
#include <QLineEdit>
#include <QTest>

namespace kerfwright {
namespace {

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

}  // namespace
}  // namespace kerfwright
