// Cautions: where they are shown, and what one click does about them.
#include "tests/ui/window/windowfixture.h"
#include "ui/window/benchtabs.h"
#include "ui/window/cardlist.h"
#include "ui/window/spotlight.h"
#include "ui/window/stepspanel.h"

#include <QAbstractButton>
#include <QTest>

namespace kerfwright {
namespace {

class CautionTest : public WindowTest {
protected:
    CardList* cards() { return window->bench().cautions(); }
    const std::vector<Caution>& cautions() { return window->planner().last()->job.cautions; }
    int rowOf(const std::string& key) {
        for (std::size_t i = 0; i < cautions().size(); ++i) {
            if (cautions()[i].key == key) {
                return static_cast<int>(i);
            }
        }
        return -1;
    }
    void showCautions() { window->bench().setCurrentIndex(BenchTabs::Cautions); }
    void clickAt(const QRect& rect) {
        QTest::mouseClick(cards()->viewport(), Qt::LeftButton, Qt::NoModifier, rect.center());
    }
    /// A chess board whose first column is wider than the others: its squares are not alike.
    void makeUneven() {
        window->document().edit(QStringLiteral("test"), entry::none, [](Project& changed) {
            changed.purpose.use = BoardUse::ChessBoard;
            changed.board.field.columns.front() += Length::mm(4);
        });
        ASSERT_TRUE(planned());
        showCautions();
    }
};

TEST_F(CautionTest, OneClickDoesWhatTheRemedySaysAndUndoTakesItBack) {
    makeUneven();
    const Project before = project();
    const int row = rowOf("squares-uneven");
    ASSERT_GE(row, 0);
    ASSERT_FALSE(cards()->card(row).ways.empty());
    EXPECT_TRUE(cards()->card(row).ways[0].acts);
    cards()->scrollTo(cards()->model()->index(row, 0));
    const int undoable = window->document().history().count();
    clickAt(cards()->wayRect(row));
    EXPECT_EQ(window->document().history().count(), undoable + 1);
    for (const Length column : field().columns) {
        EXPECT_EQ(column, field().columns.front());
    }
    ASSERT_TRUE(planned());
    EXPECT_EQ(rowOf("squares-uneven"), -1);
    QTest::keyClick(window.get(), Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(project(), before);
}

TEST_F(CautionTest, EnterTakesTheFirstRemedyOfTheCardThatTheKeysStandOn) {
    makeUneven();
    const int row = rowOf("squares-uneven");
    ASSERT_GE(row, 0);
    cards()->setFocus();
    QTest::keyClick(cards(), Qt::Key_Home);
    for (int i = 0; i < row; ++i) {
        QTest::keyClick(cards(), Qt::Key_Down);
    }
    QTest::keyClick(cards(), Qt::Key_Return);
    EXPECT_EQ(field().columns.front(), field().columns.back());
}

TEST_F(CautionTest, ARemedyForABoardThatIsNoLongerThereIsNotTaken) {
    makeUneven();
    const int row = rowOf("squares-uneven");
    ASSERT_GE(row, 0);
    window->document().edit(QStringLiteral("test"), entry::none,
                            [](Project& changed) { changed.board.thickness += Length::mm(3); });
    const Project before = project();
    Q_EMIT cards()->wayAsked(row, 0);
    EXPECT_EQ(project(), before);
}

TEST_F(CautionTest, AChosenCautionLightsUpItsPlaceAndItsSteps) {
    click(find("borderKind")->findChildren<QAbstractButton*>()[1]);
    ASSERT_TRUE(planned());
    showCautions();
    const auto placed = std::find_if(cautions().begin(), cautions().end(), [](const Caution& one) {
        return !highlightOf(one.place).isEmpty();
    });
    ASSERT_NE(placed, cautions().end());
    const int row = static_cast<int>(placed - cautions().begin());
    const Highlight place = highlightOf(placed->place);
    const std::vector<int> steps = placed->steps;
    const QImage before = window->board().grab().toImage();
    cards()->scrollTo(cards()->model()->index(row, 0));
    const QRect card = cards()->visualRect(cards()->model()->index(row, 0));
    clickAt(QRect(card.topLeft(), QSize(card.width(), 30)));
    ASSERT_EQ(cards()->chosenCard(), row);
    EXPECT_EQ(window->spotlight().place(), place);
    EXPECT_NE(window->board().grab().toImage(), before);
    for (const int step : steps) {
        EXPECT_TRUE(window->bench().steps()->list()->isMarked(step)) << step;
    }
    QTest::keyClick(cards(), Qt::Key_Escape);
    EXPECT_EQ(window->spotlight().place(), Highlight());
    EXPECT_EQ(window->board().grab().toImage(), before);
}

}  // namespace
}  // namespace kerfwright
