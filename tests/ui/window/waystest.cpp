// Ways to glue what was drawn by clicking: a pinwheel, a basket, a motif that comes again mirrored,
// an odd chequer. Each yields ways that were carried out on the virtual bench, with pictures of
// their stages, and sheets once one is chosen.
#include "tests/ui/window/windowfixture.h"
#include "ui/window/benchtabs.h"
#include "ui/window/cardlist.h"
#include "ui/window/sheetspanel.h"
#include "ui/window/sheetspreview.h"
#include "ui/window/wayspanel.h"

#include <QAction>
#include <QPushButton>
#include <QTabBar>
#include <QTest>

namespace kerfwright {
namespace {

class WaysTest : public WindowTest {
protected:
    void clickTab(int tab) {
        QTabBar* bar = window->bench().tabBar();
        QTest::mouseClick(bar, Qt::LeftButton, Qt::NoModifier, bar->tabRect(tab).center());
        ASSERT_EQ(window->bench().currentIndex(), tab);
    }
    void cells(int columns, int rows) {
        type("acrossEntry", QString::number(columns));
        type("downEntry", QString::number(rows));
        ASSERT_EQ(field().columns.size(), static_cast<std::size_t>(columns));
        ASSERT_EQ(field().rows.size(), static_cast<std::size_t>(rows));
    }
    /// Marks cells with the mouse and makes one piece of them.
    void merge(int column, int row, int across, int down) {
        find<QAction>("toolMark")->trigger();
        drag(cellCentre(column, row), cellCentre(column + across - 1, row + down - 1));
        click("merge");
        ASSERT_EQ(field().pieces[static_cast<std::size_t>(pieceAt(field(), column, row))].across,
                  across);
    }
    /// Opens the tab and waits for the comparison of the board as it is.
    void compare() {
        ASSERT_TRUE(planned());
        clickTab(BenchTabs::Ways);
        ASSERT_TRUE(QTest::qWaitFor(
            [this] { return ways().comparer().state() == Comparer::State::Done; }, 30'000));
        ASSERT_TRUE(QTest::qWaitFor([this] { return ways().list()->count() > 0; }));
    }
    WaysPanel& ways() const { return *window->bench().ways(); }
    const Alternatives& found() const { return ways().comparer().last()->ways; }
    /// Every way was proven, and shows its stages.
    void checkCards() {
        ASSERT_FALSE(found().all.empty());
        for (std::size_t i = 0; i < found().all.size(); ++i) {
            EXPECT_TRUE(found().all[i].job.proof.ok());
            const Card& card = ways().list()->card(static_cast<int>(i));
            ASSERT_TRUE(card.pictures) << i;
            EXPECT_GE(card.pictures->size(), 1u);
            EXPECT_EQ(card.pictures->back().title, "Field");
        }
    }
    void take(int row) {
        CardList* list = ways().list();
        list->scrollTo(list->model()->index(row, 0));
        QTest::mouseClick(list->viewport(), Qt::LeftButton, Qt::NoModifier,
                          list->wayRect(row).center());
    }
};

TEST_F(WaysTest, OfAPinwheelComeOnceAJointFreesIt) {
    cells(3, 3);
    merge(0, 0, 2, 1);
    merge(2, 0, 1, 2);
    merge(1, 2, 2, 1);
    merge(0, 1, 1, 2);
    compare();
    EXPECT_EQ(found().locked.pieces.size(), 4u);
    auto* free = find<QPushButton>("freePicture");
    ASSERT_TRUE(free->isVisible());
    click(free);
    EXPECT_EQ(field().pieces.size(), 6u);
    EXPECT_EQ(window->document().history().undoText(), QStringLiteral("free locked pieces"));
    compare();
    EXPECT_TRUE(found().locked.pieces.empty());
    EXPECT_FALSE(free->isVisible());
    checkCards();
}

TEST_F(WaysTest, OfABasketAreInUseAtOnceAndOnTheSheets) {
    click("pattern-basket");
    compare();
    checkCards();
    EXPECT_TRUE(found().proven);
    EXPECT_TRUE(window->planner().last()->job.plan.extraJoints.empty());
    clickTab(BenchTabs::Sheets);
    bool deep = false;
    for (const Page& page : find<SheetsPreview>("sheets")->pages()) {
        deep = deep || page.title.find("to lengths") != std::string::npos;
    }
    EXPECT_TRUE(deep) << "a stick is cut to lengths for the next panel";
}

TEST_F(WaysTest, OfAnOddChequerOfferOnePanelShiftedAndTrimmed) {
    click("pattern-chequer");
    cells(5, 5);
    compare();
    checkCards();
    int shifted = -1;
    for (std::size_t i = 0; i < found().all.size(); ++i) {
        if (found().all[i].name.find("shifted and trimmed") != std::string::npos) {
            shifted = static_cast<int>(i);
        }
    }
    ASSERT_GE(shifted, 0);
    EXPECT_EQ(found().all[static_cast<std::size_t>(shifted)].measures.glueUps, 2);
    const std::string key = found().all[static_cast<std::size_t>(shifted)].key;
    take(shifted);
    EXPECT_EQ(project().choices.construction, key);
    ASSERT_TRUE(planned());
    EXPECT_EQ(window->planner().last()->job.plan.glueUps, 2);
    EXPECT_EQ(window->planner().last()->job.plan.construction, key);
    // Saved, reopened, still glued that way.
    answers.write = inFolder("odd.kerfwright");
    QTest::keyClick(window.get(), Qt::Key_S, Qt::ControlModifier);
    window = makeWindow(inFolder("odd.kerfwright"));
    ASSERT_TRUE(planned());
    EXPECT_EQ(window->planner().last()->job.plan.construction, key);
}

TEST_F(WaysTest, OfAMotifThatComesAgainMirroredAreFound) {
    click("pattern-plain");
    cells(6, 6);
    click("chip2");
    // An L in each corner, mirrored into the others.
    for (const auto& [column, row] : {std::pair(0, 0),
                                      {1, 0},
                                      {0, 1},
                                      {5, 0},
                                      {4, 0},
                                      {5, 1},
                                      {0, 5},
                                      {1, 5},
                                      {0, 4},
                                      {5, 5},
                                      {4, 5},
                                      {5, 4}}) {
        clickCell(column, row);
    }
    compare();
    checkCards();
    EXPECT_LE(found().all.front().measures.glueUps, 4);
    const int count = ways().list()->count();
    ASSERT_GT(count, 1);
    EXPECT_EQ(ways().list()->card(count - 1).title, QStringLiteral("Odd and even"));
}

}  // namespace
}  // namespace kerfwright
