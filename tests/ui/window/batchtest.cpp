// Several boards at once, from the menu to the paper.
#include "core/timber/rackcsv.h"
#include "tests/source.h"
#include "tests/ui/window/windowfixture.h"
#include "ui/window/batchdialog.h"
#include "ui/window/sheetspreview.h"

#include <QAbstractButton>
#include <QFile>
#include <QLabel>
#include <QListWidget>
#include <QTest>

namespace kerfwright {
namespace {

QString sample(const char* name) {
    return QString::fromStdString((sourceFolder() / "samples" / name).string()) +
           QStringLiteral(".kerfwright");
}

class BatchTest : public WindowTest {
protected:
    void open() {
        ASSERT_TRUE(planned());
        window->activateWindow();
        ASSERT_TRUE(QTest::qWaitForWindowActive(window.get()));
        key(Qt::Key_B, Qt::ControlModifier | Qt::ShiftModifier);
        ASSERT_TRUE(dialog().isVisible());
        ASSERT_TRUE(settled());
    }
    void add(std::initializer_list<const char*> names) {
        answers.several.clear();
        for (const char* name : names) {
            answers.several << sample(name);
        }
        click("batchAdd");
        ASSERT_TRUE(settled());
    }
    bool settled() {
        return QTest::qWaitFor([this] { return !dialog().batcher().isWorking(); }, 60'000);
    }
    BatchDialog& dialog() const { return *find<BatchDialog>("batch"); }
    QListWidget& list() const { return *find<QListWidget>("batchBoards"); }
    const std::vector<Page>& pages() const { return dialog().findChild<SheetsPreview*>()->pages(); }
    QString words() const { return find<QLabel>("batchWords")->text(); }
    QString warning() const { return find<QLabel>("batchWarning")->text(); }
    bool canPress(const char* name) const { return find<QAbstractButton>(name)->isEnabled(); }
    bool hasPage(const std::string& key) const {
        for (const Page& page : pages()) {
            if (page.key == key) {
                return true;
            }
        }
        return false;
    }
};

TEST_F(BatchTest, BeginsWithTheOpenBoardAndAsksForOthers) {
    open();
    EXPECT_EQ(list().count(), 1);
    EXPECT_TRUE(pages().empty());
    EXPECT_FALSE(canPress("batchPdf"));
    EXPECT_FALSE(canPress("batchRemove")) << "the open board stays";
    EXPECT_TRUE(canPress("batchAdd"));
}

TEST_F(BatchTest, WithOneBoardItSaysHowToComeByMore) {
    open();
    const QString said = dialog().findChild<SheetsPreview*>()->emptyText();
    EXPECT_TRUE(said.contains(QStringLiteral("two boards"))) << said.toStdString();
    click("batchMore");
    ASSERT_TRUE(settled());
    EXPECT_FALSE(pages().empty());
}

TEST_F(BatchTest, PlansPrintsAndKeepsTheRackOfAllTogether) {
    window = makeWindow(sample("hut-draughts"));
    window->document().edit(QStringLiteral("rack"), entry::none, [](Project& project) {
        for (const Wood& wood : project.woods) {
            project.timber.rack.planks.push_back(
                {wood.key, wood.key, Length::mm(60), Length::mm(200), Length::mm(2'500)});
        }
    });
    open();
    add({"brick-bond-block"});
    ASSERT_EQ(list().count(), 2);
    EXPECT_EQ(list().currentRow(), 1);
    ASSERT_NE(dialog().batcher().last(), nullptr) << dialog().batcher().fault().toStdString();
    EXPECT_EQ(dialog().batcher().last()->boards[1].project.shop, project().shop);
    ASSERT_FALSE(pages().empty());
    EXPECT_EQ(pages().front().key, "batch");

    answers.write = inFolder("together");
    click("batchPdf");
    QFile pdf(inFolder("together.pdf"));
    ASSERT_TRUE(pdf.open(QIODevice::ReadOnly));
    EXPECT_TRUE(pdf.readAll().startsWith("%PDF"));
    EXPECT_TRUE(answers.told.isEmpty()) << answers.told.join(u'\n').toStdString();

    answers.write = inFolder("left");
    click("batchRack");
    QFile table(inFolder("left.csv"));
    ASSERT_TRUE(table.open(QIODevice::ReadOnly));
    const auto rack = rackFromCsv(table.readAll().toStdString());
    ASSERT_TRUE(rack.ok()) << rack.fault().text();
    EXPECT_EQ(*rack, rackAfter(dialog().batcher().last()->timber));
}

TEST_F(BatchTest, OneMoreOfABoardAndOneLessByKeys) {
    open();
    list().setFocus();
    click("batchMore");
    ASSERT_TRUE(settled());
    ASSERT_EQ(list().count(), 2);
    EXPECT_EQ(list().currentRow(), 1);
    const std::size_t two = pages().size();
    EXPECT_GT(two, 0u);
    QTest::keyClick(find("batchMore"), Qt::Key_Space);
    ASSERT_TRUE(settled());
    EXPECT_EQ(list().count(), 3);
    EXPECT_GT(pages().size(), two);
    QTest::keyClick(&list(), Qt::Key_Delete);
    ASSERT_TRUE(settled());
    EXPECT_EQ(list().count(), 2);
    list().setCurrentRow(0);
    QTest::keyClick(&list(), Qt::Key_Delete);
    EXPECT_EQ(list().count(), 2) << "the open board stays";
    while (list().count() < static_cast<int>(mostBoards)) {
        click("batchMore");
    }
    EXPECT_FALSE(canPress("batchMore"));
    EXPECT_FALSE(canPress("batchAdd"));
    click("batchStop");
    EXPECT_TRUE(settled());
}

TEST_F(BatchTest, AFileThatCannotBeReadAddsNothing) {
    open();
    QFile bad(inFolder("bad.kerfwright"));
    ASSERT_TRUE(bad.open(QIODevice::WriteOnly));
    bad.write("{");
    bad.close();
    answers.several = QStringList{sample("brick-bond-block"), bad.fileName()};
    click("batchAdd");
    EXPECT_EQ(list().count(), 1);
    ASSERT_EQ(answers.told.size(), 1);
    EXPECT_TRUE(answers.told[0].startsWith(QStringLiteral("Not added: ")));
}

TEST_F(BatchTest, ABoardThatCannotBePlannedIsNamed) {
    window = makeWindow(sample("brick-bond-block"));
    window->document().edit(QStringLiteral("short timber"), entry::none,
                            [](Project& project) { project.shop.longestStrip = Length::mm(300); });
    open();
    // Its rails are longer than that.
    answers.several = QStringList{sample("hut-draughts")};
    click("batchAdd");
    ASSERT_TRUE(settled());
    EXPECT_EQ(list().count(), 2) << "so that it can be taken out again";
    EXPECT_TRUE(warning().startsWith(QStringLiteral("Board 2, "))) << warning().toStdString();
    EXPECT_FALSE(canPress("batchPdf"));
    EXPECT_TRUE(pages().empty());
    click("batchRemove");
    ASSERT_TRUE(settled());
    EXPECT_TRUE(warning().isEmpty());
}

TEST_F(BatchTest, ComesBackWithItsListAndTheOpenBoardAsItIsNow) {
    open();
    add({"brick-bond-block"});
    ASSERT_EQ(list().count(), 2);
    QTest::keyClick(&dialog(), Qt::Key_Escape);
    EXPECT_FALSE(dialog().isVisible());
    window->document().edit(QStringLiteral("name"), entry::name,
                            [](Project& project) { project.titles.name = "Bench top"; });
    open();
    ASSERT_EQ(list().count(), 2);
    EXPECT_TRUE(list().item(0)->text().contains(QStringLiteral("Bench top")));
}

}  // namespace
}  // namespace kerfwright
