// What people are used to from their desktop: files dragged onto the window, the clipboard, a
// window that comes back where it was, the paper of the country.
#include "core/project/file.h"
#include "tests/ui/window/windowfixture.h"
#include "ui/window/benchtabs.h"
#include "ui/window/panels.h"
#include "ui/window/segmented.h"
#include "ui/window/sheetspanel.h"
#include "ui/window/windowplace.h"
#include "ui/window/wishform.h"

#include <QApplication>
#include <QClipboard>
#include <QDir>
#include <QDragEnterEvent>
#include <QFile>
#include <QMimeData>
#include <QScreen>
#include <QSettings>
#include <QSplitter>
#include <QTest>
#include <QUrl>
#include <QXmlStreamReader>

namespace kerfwright {
namespace {

class DesktopTest : public WindowTest {
protected:
    ~DesktopTest() override { QLocale::setDefault(QLocale::c()); }

    QString write(const char* name) {
        const QString path = inFolder(name);
        EXPECT_TRUE(writeProject(newProject(Unit::Inches), path.toStdString()).ok());
        return path;
    }
    /// As a file manager does it. False: refused before it could be let go.
    bool dropFiles(const QList<QUrl>& urls) {
        QMimeData data;
        data.setUrls(urls);
        const QPointF middle = window->rect().center();
        const Qt::DropActions offered = Qt::CopyAction | Qt::MoveAction;
        QDragEnterEvent enter(middle.toPoint(), offered, &data, Qt::LeftButton, Qt::NoModifier);
        enter.ignore();
        QApplication::sendEvent(window.get(), &enter);
        if (!enter.isAccepted()) {
            return false;
        }
        QDropEvent drop(middle, offered, &data, Qt::LeftButton, Qt::NoModifier);
        drop.ignore();
        QApplication::sendEvent(window.get(), &drop);
        EXPECT_TRUE(drop.isAccepted());
        EXPECT_EQ(drop.dropAction(), Qt::CopyAction) << "who offers a move would delete the file";
        QCoreApplication::processEvents();
        return true;
    }
    bool dropFile(const QString& path) { return dropFiles({QUrl::fromLocalFile(path)}); }

    /// Closes the window and begins anew, as the program does.
    void startAgain() {
        answers.unsaved = Dialogs::Unsaved::Discard;
        ASSERT_TRUE(window->close());
        WindowOptions options;
        options.planDelay = std::chrono::milliseconds(0);
        options.recoveryDelay = std::chrono::hours(1);
        options.recoveryFolder = inFolder("recovery");
        options.dialogs = &answers;
        window = std::make_unique<MainWindow>(options, QString());
        restorePlace(*window);
        window->show();
        ASSERT_TRUE(QTest::qWaitForWindowExposed(window.get()));
        restoreTab(*window);
    }
    void resizeTo(int width, int height) {
        window->resize(width, height);
        ASSERT_TRUE(QTest::qWaitFor([&] { return window->size() == QSize(width, height); }));
        QCoreApplication::processEvents();
    }
};

TEST_F(DesktopTest, AProjectDroppedOnTheWindowIsOpened) {
    const QString path = write("Bretter für Tarn Hut.kerfwright");
    EXPECT_TRUE(dropFile(path));
    EXPECT_EQ(window->document().path(), path);
    EXPECT_EQ(project(), newProject(Unit::Inches));
    EXPECT_EQ(answers.unsavedAsked, 0);
    EXPECT_TRUE(QFile::exists(path));
}

TEST_F(DesktopTest, UnsavedWorkIsAskedAboutBeforeADroppedFileTakesItsPlace) {
    const QString path = write("dropped.kerfwright");
    type("thicknessEntry", QStringLiteral("37"));
    window->document().edit(QStringLiteral("name"), entry::none,
                            [](Project& changed) { changed.titles.name = "Mine"; });
    const Project mine = project();
    answers.unsaved = Dialogs::Unsaved::Cancel;
    EXPECT_TRUE(dropFile(path));
    EXPECT_EQ(answers.unsavedAsked, 1);
    EXPECT_EQ(project(), mine);
    answers.unsaved = Dialogs::Unsaved::Save;
    answers.write = inFolder("mine.kerfwright");
    EXPECT_TRUE(dropFile(path));
    EXPECT_EQ(project(), newProject(Unit::Inches));
    EXPECT_EQ(*readProject(answers.write.toStdString()), mine);
}

TEST_F(DesktopTest, WhatIsNotOneProjectOnThisMachineIsRefused) {
    const QUrl one = QUrl::fromLocalFile(write("one.kerfwright"));
    const QUrl two = QUrl::fromLocalFile(write("two.kerfwright"));
    ASSERT_TRUE(QDir(folder.path()).mkdir(QStringLiteral("folder.kerfwright")));
    EXPECT_FALSE(dropFiles({}));
    EXPECT_FALSE(dropFiles({one, two}));
    EXPECT_FALSE(dropFiles({QUrl(QStringLiteral("https://boards.example/one.kerfwright"))}));
    EXPECT_FALSE(dropFile(write("picture.png")));
    EXPECT_FALSE(dropFile(inFolder("gone.kerfwright")));
    EXPECT_FALSE(dropFile(inFolder("folder.kerfwright")));
    EXPECT_TRUE(window->document().path().isEmpty());
    EXPECT_TRUE(dropFiles({one}));
}

TEST_F(DesktopTest, ADroppedFileThatCannotBeReadIsToldOf) {
    QFile bad(inFolder("bad.kerfwright"));
    ASSERT_TRUE(bad.open(QIODevice::WriteOnly));
    bad.write("no JSON");
    bad.close();
    const Project before = project();
    EXPECT_TRUE(dropFile(bad.fileName()));
    ASSERT_EQ(answers.told.size(), 1);
    EXPECT_TRUE(answers.told[0].contains(QStringLiteral("bad.kerfwright")));
    EXPECT_EQ(project(), before);
}

TEST_F(DesktopTest, TheBoardIsCopiedAsPixelsAndAsADrawing) {
    QApplication::clipboard()->clear();
    QTest::keyClick(&window->board(), Qt::Key_C, Qt::ControlModifier | Qt::ShiftModifier);
    const QMimeData* data = QApplication::clipboard()->mimeData();
    ASSERT_NE(data, nullptr);
    ASSERT_TRUE(data->hasImage());
    EXPECT_TRUE(data->formats().contains(QStringLiteral("application/x-qt-image")));
    const QImage image = qvariant_cast<QImage>(data->imageData());
    EXPECT_EQ(std::max(image.width(), image.height()), 2400);
    // A field with at least two woods, so not one colour.
    const QColor middle = image.pixelColor(image.width() / 2 + 40, image.height() / 2 + 40);
    bool other = false;
    for (int x = 0; x < image.width(); ++x) {
        other = other || image.pixelColor(x, image.height() / 2 + 40) != middle;
    }
    EXPECT_EQ(middle.alpha(), 255);
    EXPECT_TRUE(other);

    QXmlStreamReader svg(data->data(QStringLiteral("image/svg+xml")));
    ASSERT_TRUE(svg.readNextStartElement());
    EXPECT_EQ(svg.name(), u"svg");
    while (!svg.atEnd()) {
        svg.readNext();
    }
    EXPECT_FALSE(svg.hasError()) << svg.errorString().toStdString();
}

TEST_F(DesktopTest, TheWindowComesBackAsItWasLeft) {
    resizeTo(780, 640);
    window->move(12, 34);
    auto* splitter = window->findChild<QSplitter*>();
    ASSERT_NE(splitter, nullptr);
    auto* wish = window->findChild<WishForm*>();
    const int before = wish->width();
    QSplitterHandle* handle = splitter->handle(1);
    const QPoint grip = handle->rect().center();
    QTest::mousePress(handle, Qt::LeftButton, Qt::NoModifier, grip);
    QTest::mouseMove(handle, grip + QPoint(30, 0));
    QTest::mouseRelease(handle, Qt::LeftButton, Qt::NoModifier, grip);
    const int wide = wish->width();
    EXPECT_GT(wide, before + 10);
    window->bench().setCurrentIndex(BenchTabs::CutListTab);
    const QRect place = window->geometry();

    startAgain();
    EXPECT_EQ(window->geometry(), place);
    EXPECT_TRUE(window->panels().isOpen(Panels::Wish));
    EXPECT_EQ(window->findChild<WishForm*>()->width(), wide);
    EXPECT_EQ(window->bench().currentIndex(), BenchTabs::CutListTab);

    window->panels().setOpen(Panels::Wish, false);
    window->bench().setCurrentIndex(BenchTabs::Steps);
    startAgain();
    EXPECT_FALSE(window->panels().isOpen(Panels::Wish));
    EXPECT_TRUE(window->panels().isOpen(Panels::Bench));
    EXPECT_EQ(window->bench().currentIndex(), BenchTabs::Steps);
    window->panels().setOpen(Panels::Wish, true);
    EXPECT_EQ(window->findChild<WishForm*>()->width(), wide);
}

TEST_F(DesktopTest, AMaximisedWindowComesBackMaximised) {
    resizeTo(780, 640);
    window->showMaximized();
    ASSERT_TRUE(QTest::qWaitFor([this] { return window->isMaximized(); }));
    startAgain();
    EXPECT_TRUE(window->isMaximized());
}

TEST_F(DesktopTest, AWindowThatWasOnAScreenThatIsGoneComesToOneThatIsThere) {
    resizeTo(700, 500);
    window->move(9000, 7000);
    startAgain();
    const QRect screen = window->screen()->availableGeometry();
    EXPECT_TRUE(screen.intersects(window->geometry())) << window->x() << ' ' << window->y();
    EXPECT_GE(screen.intersected(window->geometry()).width(), 600);
    EXPECT_GE(screen.intersected(window->geometry()).height(), 400);
}

TEST_F(DesktopTest, AFirstStartAndBrokenSettingsGetTheUsualWindow) {
    QSettings().setValue(QStringLiteral("window"), QByteArray("no geometry"));
    QSettings().setValue(QStringLiteral("benchTab"), 99);
    QSettings().setValue(QStringLiteral("panels"), QStringLiteral("open"));
    WindowOptions options;
    options.recoveryFolder = inFolder("recovery");
    options.dialogs = &answers;
    window = std::make_unique<MainWindow>(options, QString());
    restorePlace(*window);
    window->show();
    restoreTab(*window);
    const QSize room = window->screen()->availableSize();
    EXPECT_EQ(window->size(), QSize(1440, 900).boundedTo(room));
    EXPECT_EQ(window->bench().currentIndex(), BenchTabs::Steps);
}

TEST_F(DesktopTest, TheFirstPaperIsThatOfTheCountryAndAChoiceIsKept) {
    const auto paper = [this] {
        return window->bench().sheets()->findChild<Segmented*>()->current();
    };
    EXPECT_EQ(paper(), 0) << "A4";
    QLocale::setDefault(QLocale(QLocale::English, QLocale::Canada));
    window = makeWindow();
    EXPECT_EQ(project().notation.unit, Unit::Millimetres);
    EXPECT_EQ(paper(), 1) << "Letter";
    QLocale::setDefault(QLocale(QLocale::English, QLocale::UnitedStates));
    window = makeWindow();
    EXPECT_EQ(project(), newProject(Unit::Inches));
    EXPECT_EQ(paper(), 1);
    window->bench().setCurrentIndex(BenchTabs::Sheets);
    click(window->bench().sheets()->findChild<Segmented*>()->segment(0));
    window = makeWindow();
    EXPECT_EQ(paper(), 0) << "what was chosen goes before the country";
}

}  // namespace
}  // namespace kerfwright
