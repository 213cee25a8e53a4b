#include "tests/ui/window/windowfixture.h"

#include "ui/window/entryfield.h"

#include <QAbstractButton>
#include <QApplication>
#include <QLineEdit>
#include <QSettings>
#include <QTest>

namespace kerfwright {

WindowTest::WindowTest() {
    QSettings().clear();
    window = makeWindow();
}

WindowTest::~WindowTest() {
    answers.unsaved = Dialogs::Unsaved::Discard;
}

std::unique_ptr<MainWindow> WindowTest::makeWindow(const QString& file) {
    WindowOptions options;
    options.planDelay = std::chrono::milliseconds(0);
    options.recoveryDelay = std::chrono::hours(1);
    options.recoveryFolder = folder.filePath(QStringLiteral("recovery"));
    options.dialogs = &answers;
    std::unique_ptr<QWidget> made = makeMainWindow(file, options);
    std::unique_ptr<MainWindow> main(qobject_cast<MainWindow*>(made.release()));
    EXPECT_NE(main, nullptr);
    main->resize(1280, 860);
    main->show();
    main->activateWindow();
    EXPECT_TRUE(QTest::qWaitForWindowActive(main.get()));
    return main;
}

bool WindowTest::planned() {
    return QTest::qWaitFor([this] { return window->planner().state() == Planner::State::Current; },
                           10'000);
}

void WindowTest::click(QWidget* widget) {
    ASSERT_NE(widget, nullptr);
    // A layout shows what was added to it only when it gets its turn.
    ASSERT_TRUE(QTest::qWaitFor([widget] { return widget->isVisible(); }))
        << widget->objectName().toStdString();
    ASSERT_TRUE(widget->isEnabled()) << widget->objectName().toStdString();
    QTest::mouseClick(widget, Qt::LeftButton);
}

void WindowTest::type(const char* entry, const QString& text) {
    auto* line = find<QLineEdit>(entry);
    ASSERT_NE(line, nullptr);
    line->setFocus();
    QTest::keyClick(line, Qt::Key_A, Qt::ControlModifier);
    QTest::keyClicks(line, text);
}

QPoint WindowTest::cellCentre(int column, int row) const {
    return window->board().geometry().cells(QRect(column, row, 1, 1)).center().toPoint();
}

int WindowTest::woodAt(int column, int row) const {
    return field().pieces[static_cast<std::size_t>(pieceAt(field(), column, row))].wood;
}

void WindowTest::clickCell(int column, int row, Qt::MouseButton button) {
    QTest::mouseClick(&window->board(), button, Qt::NoModifier, cellCentre(column, row));
}

void WindowTest::drag(QPoint from, QPoint to) {
    BoardView* board = &window->board();
    QTest::mousePress(board, Qt::LeftButton, Qt::NoModifier, from);
    // Events that a test sends carry no pressed buttons of their own; the view keeps its own count.
    QTest::mouseMove(board, (from + to) / 2);
    QTest::mouseMove(board, to);
    QTest::mouseRelease(board, Qt::LeftButton, Qt::NoModifier, to);
}

void WindowTest::key(Qt::Key key, Qt::KeyboardModifiers modifiers) {
    window->board().setFocus();
    QTest::keyClick(&window->board(), key, modifiers);
}

}  // namespace kerfwright
