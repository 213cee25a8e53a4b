#include "ui/document/document.h"

#include "core/project/file.h"
#include "ui/document/recent.h"

#include <QFile>
#include <QSettings>
#include <QTemporaryDir>

#include <gtest/gtest.h>

namespace kerfwright {
namespace {

void thicken(Document& document, int mm, int entry = entry::thickness) {
    document.edit(QStringLiteral("change thickness"), entry,
                  [mm](Project& project) { project.board.thickness = Length::mm(mm); });
}

QByteArray contentOf(const QString& path) {
    QFile file(path);
    EXPECT_TRUE(file.open(QIODevice::ReadOnly));
    return file.readAll();
}

void write(const QString& path, const QByteArray& bytes) {
    QFile file(path);
    ASSERT_TRUE(file.open(QIODevice::WriteOnly));
    ASSERT_EQ(file.write(bytes), bytes.size());
}

TEST(Document, MergesEditsOfOneEntryAndSession) {
    Document document;
    const Project before = document.project();
    thicken(document, 31);
    thicken(document, 32);
    thicken(document, 33);
    EXPECT_EQ(document.history().count(), 1);
    EXPECT_EQ(document.history().undoText(), QStringLiteral("change thickness"));
    document.endSession();
    thicken(document, 34);
    EXPECT_EQ(document.history().count(), 2);
    document.history().undo();
    EXPECT_EQ(document.project().board.thickness, Length::mm(33));
    document.history().undo();
    EXPECT_EQ(document.project(), before);
    document.history().redo();
    EXPECT_EQ(document.project().board.thickness, Length::mm(33));
}

TEST(Document, KeepsEditsOfOtherEntriesApart) {
    Document document;
    thicken(document, 31);
    document.edit(QStringLiteral("change name"), entry::name,
                  [](Project& project) { project.titles.name = "Tray"; });
    thicken(document, 32);
    EXPECT_EQ(document.history().count(), 3);
}

TEST(Document, ForgetsAStepThatCameBack) {
    Document document;
    const int before = static_cast<int>(document.project().board.thickness.nm() / 1'000'000);
    thicken(document, before + 5);
    EXPECT_TRUE(document.isModified());
    thicken(document, before);
    EXPECT_EQ(document.history().count(), 0);
    EXPECT_FALSE(document.isModified());
}

TEST(Document, PushesNothingWhereNothingChanged) {
    Document document;
    document.edit(QStringLiteral("nothing"), entry::none, [](Project&) {});
    EXPECT_EQ(document.history().count(), 0);
}

TEST(Document, RefusesWhatWouldNotHold) {
    Document document;
    const Project before = document.project();
    const auto fault = document.edit(QStringLiteral("too thick"), entry::thickness,
                                     [](Project& p) { p.board.thickness = Length::mm(5000); });
    ASSERT_TRUE(fault.has_value());
    EXPECT_FALSE(fault->rule.empty());
    EXPECT_EQ(document.project(), before);
    EXPECT_FALSE(document.isModified());
}

TEST(Document, SavesOpensAndKnowsWhenItIsClean) {
    const QTemporaryDir dir;
    const QString path = dir.filePath(QStringLiteral("Tray.kerfwright"));
    Document document;
    thicken(document, 37);
    ASSERT_EQ(document.save(path), QString());
    EXPECT_FALSE(document.isModified());
    EXPECT_EQ(document.displayName(), QStringLiteral("Tray.kerfwright"));
    // An edit after saving is a step of its own, even in the same session.
    thicken(document, 38);
    EXPECT_TRUE(document.isModified());
    document.history().undo();
    EXPECT_FALSE(document.isModified());

    Document other;
    ASSERT_EQ(other.open(path), QString());
    EXPECT_EQ(other.project(), document.project());
    EXPECT_EQ(other.history().count(), 0);
}

TEST(Document, StaysAsItWasWhereAFileIsBad) {
    const QTemporaryDir dir;
    const QString path = dir.filePath(QStringLiteral("bad.kerfwright"));
    const QByteArray good = QByteArray::fromStdString(toBytes(newProject(Unit::Inches)));
    QByteArray newer = good;
    newer.replace("\"version\": 1", "\"version\": 999");
    ASSERT_NE(newer, good);
    for (const QByteArray& bytes :
         {QByteArray(), good.left(good.size() / 2), QByteArray("not JSON"),
          QByteArray("{\"format\": \"another\", \"version\": 1}"), newer}) {
        write(path, bytes);
        Document document;
        thicken(document, 37);
        const Project before = document.project();
        const QString fault = document.open(path);
        EXPECT_FALSE(fault.isEmpty()) << bytes.left(40).toStdString();
        EXPECT_EQ(document.project(), before);
        EXPECT_TRUE(document.path().isEmpty());
        EXPECT_TRUE(document.isModified());
        EXPECT_EQ(contentOf(path), bytes);
    }
}

TEST(Document, SaysWhereItCouldNotSave) {
    Document document;
    thicken(document, 37);
    EXPECT_FALSE(document.save(QStringLiteral("/no/such/folder/board.kerfwright")).isEmpty());
    EXPECT_TRUE(document.isModified());
    EXPECT_TRUE(document.path().isEmpty());
}

TEST(Document, SeesThatTheFileWasChangedByAnother) {
    const QTemporaryDir dir;
    const QString path = dir.filePath(QStringLiteral("board.kerfwright"));
    Document document;
    ASSERT_EQ(document.save(path), QString());
    EXPECT_FALSE(document.changedOnDisk());
    write(path, QByteArray::fromStdString(toBytes(newProject(Unit::Inches))));
    EXPECT_TRUE(document.changedOnDisk());
}

TEST(Recent, KeepsTheNewestFirstAndDropsWhatIsGone) {
    QSettings().clear();
    const QTemporaryDir dir;
    QStringList paths;
    for (int i = 0; i < 10; ++i) {
        paths << dir.filePath(QString::number(i));
        write(paths.back(), "x");
        addRecentFile(paths.back());
    }
    addRecentFile(paths[5]);
    QFile::remove(paths[9]);
    const QStringList recent = recentFiles();
    EXPECT_EQ(recent.size(), 7);
    EXPECT_EQ(recent.value(0), paths[5]);
    EXPECT_FALSE(recent.contains(paths[9]));
    clearRecentFiles();
    EXPECT_TRUE(recentFiles().isEmpty());
}

}  // namespace
}  // namespace kerfwright
