// Files, unsaved work and work that was lost.
#include "core/project/file.h"

#include "tests/ui/window/windowfixture.h"
#include "ui/document/recovery.h"
#include "ui/window/filework.h"
#include "ui/window/gallery.h"
#include "ui/window/samples.h"

#include <QFile>
#include <QTest>

namespace kerfwright {
namespace {

class FileTest : public WindowTest {
protected:
    void change() { type("thicknessEntry", QStringLiteral("37")); }
};

TEST_F(FileTest, ABadFileIsToldOfAndWhatIsOpenStays) {
    change();
    const Project before = project();
    QFile bad(inFolder("bad.kerfwright"));
    ASSERT_TRUE(bad.open(QIODevice::WriteOnly));
    bad.write("{\"format\": \"kerfwright-project\", \"version\": 7}");
    bad.close();
    answers.open = bad.fileName();
    answers.unsaved = Dialogs::Unsaved::Discard;
    QTest::keyClick(window.get(), Qt::Key_O, Qt::ControlModifier);
    ASSERT_EQ(answers.told.size(), 1);
    EXPECT_TRUE(answers.told[0].contains(QStringLiteral("bad.kerfwright")));
    EXPECT_EQ(project(), before);
    EXPECT_TRUE(window->document().isModified());
}

TEST_F(FileTest, ATruncatedFileIsToldOfInPlainWords) {
    const std::string whole = toBytes(project());
    QFile bad(inFolder("cut.kerfwright"));
    ASSERT_TRUE(bad.open(QIODevice::WriteOnly));
    bad.write(whole.data(), static_cast<qint64>(whole.find("\"woods\"")));
    bad.close();
    answers.open = bad.fileName();
    QTest::keyClick(window.get(), Qt::Key_O, Qt::ControlModifier);
    ASSERT_EQ(answers.told.size(), 1);
    const QString told = answers.told[0];
    EXPECT_TRUE(told.contains(QStringLiteral("“cut.kerfwright” was not opened")));
    EXPECT_TRUE(told.contains(QStringLiteral("The board that is open is untouched.")));
    EXPECT_TRUE(told.contains(QStringLiteral("The file breaks off at line ")))
        << told.toStdString();
}

TEST_F(FileTest, ABadFileAtTheStartIsToldOfAndANewBoardIsThere) {
    QFile bad(inFolder("bad.kerfwright"));
    ASSERT_TRUE(bad.open(QIODevice::WriteOnly));
    bad.write("no JSON");
    bad.close();
    window = makeWindow(bad.fileName());
    ASSERT_EQ(answers.told.size(), 1);
    EXPECT_TRUE(answers.told[0].contains(QStringLiteral("bad.kerfwright")));
    EXPECT_EQ(project(), newProject(Unit::Millimetres));
    EXPECT_TRUE(window->document().path().isEmpty());
}

TEST_F(FileTest, LeavingUnsavedWorkIsAskedAbout) {
    change();
    answers.unsaved = Dialogs::Unsaved::Cancel;
    EXPECT_FALSE(window->close());
    EXPECT_TRUE(window->isVisible());
    EXPECT_EQ(answers.unsavedAsked, 1);
    answers.unsaved = Dialogs::Unsaved::Save;
    answers.write = inFolder("kept");
    EXPECT_TRUE(window->close());
    EXPECT_TRUE(QFile::exists(inFolder("kept.kerfwright")));
}

TEST_F(FileTest, NothingIsAskedWhereNothingChanged) {
    EXPECT_TRUE(window->close());
    EXPECT_EQ(answers.unsavedAsked, 0);
}

TEST_F(FileTest, GivingUpTheNameKeepsTheWindow) {
    change();
    answers.unsaved = Dialogs::Unsaved::Save;
    answers.write = QString();
    EXPECT_FALSE(window->close());
    EXPECT_TRUE(window->document().isModified());
}

TEST_F(FileTest, AFileChangedByAnotherIsNotWrittenOverUnasked) {
    answers.write = inFolder("board.kerfwright");
    change();
    QTest::keyClick(window.get(), Qt::Key_S, Qt::ControlModifier);
    ASSERT_EQ(window->document().path(), inFolder("board.kerfwright"));
    ASSERT_TRUE(writeProject(newProject(Unit::Inches), answers.write.toStdString()).ok());
    type("thicknessEntry", QStringLiteral("38"));
    QTest::keyClick(window.get(), Qt::Key_S, Qt::ControlModifier);
    EXPECT_EQ(answers.overwriteAsked, 1);
    EXPECT_TRUE(window->document().isModified());
    answers.overwrite = true;
    QTest::keyClick(window.get(), Qt::Key_S, Qt::ControlModifier);
    EXPECT_FALSE(window->document().isModified());
    EXPECT_EQ(*readProject(answers.write.toStdString()), project());
}

TEST_F(FileTest, LostWorkIsOfferedAndOpensAsUnsaved) {
    const QString lostFolder = inFolder("lost");
    Project left = newProject(Unit::Inches);
    left.titles.name = "Left behind";
    {
        Document document;
        document.start(left, true);
        Recovery recovery(document, lostFolder, std::chrono::hours(1));
        recovery.writeNow();
    }
    answers.lost = Dialogs::Lost::Later;
    EXPECT_FALSE(window->files().offerLostWork(lostFolder));
    answers.lost = Dialogs::Lost::Open;
    EXPECT_TRUE(window->files().offerLostWork(lostFolder));
    EXPECT_EQ(answers.lostAsked, 2);
    EXPECT_EQ(project(), left);
    EXPECT_TRUE(window->document().isModified());
    EXPECT_TRUE(Recovery::lostWork(lostFolder).empty());
}

TEST_F(FileTest, EverySampleOpensAndIsPlanned) {
    ASSERT_GE(samplePaths().size(), 6);
    for (const QString& sample : samplePaths()) {
        window->files().openSample(sample);
        EXPECT_TRUE(answers.told.isEmpty()) << sample.toStdString();
        EXPECT_TRUE(planned()) << sample.toStdString() << window->planner().fault().toStdString();
        EXPECT_FALSE(window->document().isModified());
        EXPECT_TRUE(window->document().path().isEmpty()) << "a sample is never written over";
    }
}

TEST_F(FileTest, TheGalleryOpensASample) {
    window->showGallery();
    ASSERT_TRUE(window->isGalleryShown());
    const auto cards = window->findChildren<BoardCard*>();
    ASSERT_GE(cards.size(), 6);
    click(cards.front());
    EXPECT_FALSE(window->isGalleryShown());
    EXPECT_EQ(project(), *readSample(samplePaths().front()));
}

TEST_F(FileTest, ABoardWithoutANameIsCalledAfterItsFile) {
    answers.write = inFolder("hut bench.kerfwright");
    key(Qt::Key_S, Qt::ControlModifier);
    EXPECT_EQ(project().titles.name, "hut bench");
    EXPECT_FALSE(window->document().isModified());
    window->document().edit(QStringLiteral("name"), entry::none,
                            [](Project& project) { project.titles.name = "Bench"; });
    answers.write = inFolder("other.kerfwright");
    key(Qt::Key_S, Qt::ControlModifier | Qt::ShiftModifier);
    EXPECT_EQ(project().titles.name, "Bench") << "a name of its own stays";
}

}  // namespace
}  // namespace kerfwright
