#include "ui/document/recovery.h"

#include <QDir>
#include <QTemporaryDir>

#include <gtest/gtest.h>

namespace kerfwright {
namespace {

using namespace std::chrono_literals;

constexpr auto never = std::chrono::hours(1);

void thicken(Document& document, int mm) {
    document.edit(QStringLiteral("change thickness"), entry::thickness,
                  [mm](Project& project) { project.board.thickness = Length::mm(mm); });
}

qsizetype filesIn(const QString& folder) {
    return QDir(folder).entryList(QDir::Files).size();
}

/// Leaves a copy behind as a window does that ended without warning.
Project leaveWork(const QString& folder, Document& document) {
    Recovery recovery(document, folder, never);
    recovery.writeNow();
    return document.project();
}

TEST(Recovery, KeepsWorkThatWasNeverSaved) {
    const QTemporaryDir dir;
    Document document;
    thicken(document, 37);
    const Project left = leaveWork(dir.path(), document);
    const std::vector<LostWork> lost = Recovery::lostWork(dir.path());
    ASSERT_EQ(lost.size(), 1u);
    EXPECT_EQ(lost[0].project, left);
    EXPECT_TRUE(lost[0].path.isEmpty());

    Document again;
    again.openRecovered(lost[0].project, lost[0].path, lost[0].hashAtOpen);
    EXPECT_TRUE(again.isModified());
    EXPECT_EQ(again.project(), left);
}

TEST(Recovery, WritesNothingForWorkThatIsSaved) {
    const QTemporaryDir dir;
    Document document;
    leaveWork(dir.path(), document);
    EXPECT_EQ(filesIn(dir.path()), 0);
}

TEST(Recovery, TakesTheCopyAwayOnceSaved) {
    const QTemporaryDir dir;
    const QTemporaryDir own;
    Document document;
    Recovery recovery(document, dir.path(), never);
    thicken(document, 37);
    recovery.writeNow();
    EXPECT_GT(filesIn(dir.path()), 0);
    ASSERT_EQ(document.save(own.filePath(QStringLiteral("board.kerfwright"))), QString());
    EXPECT_EQ(filesIn(dir.path()), 0);
}

TEST(Recovery, LeavesTheCopyOfAWindowThatIsStillOpen) {
    const QTemporaryDir dir;
    Document document;
    Recovery recovery(document, dir.path(), never);
    thicken(document, 37);
    recovery.writeNow();
    EXPECT_TRUE(Recovery::lostWork(dir.path()).empty());
    EXPECT_GT(filesIn(dir.path()), 0);
}

TEST(Recovery, DropsACopyThatEqualsItsFile) {
    const QTemporaryDir dir;
    const QTemporaryDir own;
    const QString path = own.filePath(QStringLiteral("board.kerfwright"));
    Document document;
    ASSERT_EQ(document.save(path), QString());
    thicken(document, 37);
    const Project left = leaveWork(dir.path(), document);
    ASSERT_EQ(Recovery::lostWork(dir.path()).size(), 1u);
    ASSERT_EQ(document.save(path), QString());
    EXPECT_TRUE(Recovery::lostWork(dir.path()).empty());
    EXPECT_EQ(filesIn(dir.path()), 0);
}

TEST(Recovery, DropsACopyThatCannotBeRead) {
    const QTemporaryDir dir;
    QFile broken(dir.filePath(QStringLiteral("x.kerfwright")));
    ASSERT_TRUE(broken.open(QIODevice::WriteOnly));
    broken.write("{");
    broken.close();
    EXPECT_TRUE(Recovery::lostWork(dir.path()).empty());
    EXPECT_EQ(filesIn(dir.path()), 0);
}

}  // namespace
}  // namespace kerfwright
