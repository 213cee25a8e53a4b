// What is chosen in one place of the window is followed in all others, both ways.
#include "ui/window/spotlight.h"

#include "core/bench/origin.h"
#include "tests/ui/window/windowfixture.h"
#include "ui/window/benchtabs.h"
#include "ui/window/cardlist.h"
#include "ui/window/cutlist.h"
#include "ui/window/cutsview.h"
#include "ui/window/filework.h"
#include "ui/window/racklist.h"
#include "ui/window/rackpage.h"
#include "ui/window/spotlightnote.h"
#include "ui/window/stepspanel.h"
#include "ui/window/timberpanel.h"

#include <QAbstractButton>
#include <QTest>
#include <QToolButton>

namespace kerfwright {
namespace {

using Kind = Subject::Kind;

class SpotlightTest : public WindowTest {
protected:
    void SetUp() override {
        // Figure comes in its own time; pictures of the board are compared here.
        FigureStyle plain;
        plain.on = false;
        window->board().figure().setStyle(plain);
        window->document().edit(QStringLiteral("test"), entry::none, [](Project& changed) {
            int number = 0;
            for (const Wood& wood : changed.woods) {
                for (int i = 0; i < 5; ++i) {
                    Plank plank;
                    plank.wood = wood.key;
                    plank.label = "P" + std::to_string(++number);
                    plank.thickness = Length::mm(65);
                    plank.width = Length::mm(150);
                    plank.length = Length::mm(1400);
                    changed.timber.rack.planks.push_back(plank);
                }
            }
        });
        ASSERT_TRUE(planned());
    }
    Spotlight& light() { return window->spotlight(); }
    const Trail& trail() { return light().trail(); }
    const Job& job() { return window->planner().last()->job; }
    BenchTabs& bench() { return window->bench(); }
    CardList& steps() { return *bench().steps()->list(); }
    CardList& cautions() { return *bench().cautions(); }
    CutList& cuts() { return *find<CutList>("cutList"); }
    TimberPanel& timber() { return *bench().timber(); }
    CutsView& planks() { return *timber().cuts(); }
    RackList& rack() { return *timber().rack()->list(); }
    void open(BenchTabs::Tab tab) {
        bench().setCurrentIndex(tab);
        QCoreApplication::processEvents();
    }
    void openPlanks(TimberPanel::Page page) {
        open(BenchTabs::TimberTab);
        timber().showPage(page);
        ASSERT_TRUE(QTest::qWaitFor(
            [this] { return window->sawyer().state() == Sawyer::State::Current; }, 60'000));
        QCoreApplication::processEvents();
    }
    void clickRow(QAbstractItemView& list, int row) {
        list.scrollTo(list.model()->index(row, 0));
        const QRect place = list.visualRect(list.model()->index(row, 0));
        QTest::mouseClick(list.viewport(), Qt::LeftButton, Qt::NoModifier,
                          place.topLeft() + QPoint(60, 14));
    }
    /// Until the row that the keys stand on is that one.
    void walkTo(QAbstractItemView& list, int row) {
        list.setFocus();
        QTest::keyClick(&list, Qt::Key_Home);
        for (int i = 0; i < row; ++i) {
            QTest::keyClick(&list, Qt::Key_Down);
        }
        ASSERT_EQ(list.currentIndex().row(), row);
    }
    void clickPiece(int column, int row) {
        key(Qt::Key_K);
        clickCell(column, row);
    }
    int cautionAbout(const std::string& key) {
        for (std::size_t i = 0; i < job().cautions.size(); ++i) {
            if (job().cautions[i].key == key) {
                return static_cast<int>(i);
            }
        }
        return -1;
    }
    int millStep() {
        for (std::size_t i = 0; i < job().steps.steps.size(); ++i) {
            const auto* mill = std::get_if<Mill>(&job().steps.steps[i].work);
            if (mill != nullptr && !mill->panel.empty()) {
                return static_cast<int>(i);
            }
        }
        return -1;
    }
    std::set<int> marksOf(const CardList& list) {
        std::set<int> marks;
        for (int row = 0; row < list.count(); ++row) {
            if (list.isMarked(row)) {
                marks.insert(row);
            }
        }
        return marks;
    }
    std::set<int> marksOf(const CutList& list) {
        std::set<int> marks;
        for (int row = 0; row < list.count(); ++row) {
            if (list.isMarked(row)) {
                marks.insert(row);
            }
        }
        return marks;
    }
    std::set<std::string> stripsMarked() {
        std::set<std::string> marks;
        for (int plank = 0; plank < planks().plankCount(); ++plank) {
            for (int strip = 0; strip < planks().stripCount(plank); ++strip) {
                if (planks().isMarked(plank, strip)) {
                    marks.insert(planks().stripName(plank, strip).toStdString());
                }
            }
        }
        return marks;
    }
    QImage boardNow() { return window->board().grab().toImage(); }
};

TEST_F(SpotlightTest, APieceIsFollowedEverywhere) {
    openPlanks(TimberPanel::Cuts);
    open(BenchTabs::CutListTab);
    const QImage before = boardNow();
    clickPiece(3, 3);
    ASSERT_TRUE(light().isOn(Kind::Piece, pieceAt(field(), 3, 3)));
    EXPECT_FALSE(trail().steps.empty());
    EXPECT_EQ(marksOf(steps()), trail().steps);
    EXPECT_EQ(marksOf(cautions()), trail().cautions);
    EXPECT_EQ(marksOf(cuts()), trail().cutLines);
    EXPECT_EQ(trail().cutLines.size(), 1u);
    EXPECT_EQ(stripsMarked().size(), 1u);
    Length x;
    Length y;
    for (int i = 0; i < 3; ++i) {
        x += field().columns[static_cast<std::size_t>(i)];
        y += field().rows[static_cast<std::size_t>(i)];
    }
    const Origin origin = originOf(job(), field(), x + Length::mm(9), y + Length::mm(9));
    EXPECT_EQ(*stripsMarked().begin(), origin.strip);
    ASSERT_EQ(trail().planks.size(), 1u);
    for (int row = 0; row < rack().count(); ++row) {
        EXPECT_EQ(rack().isMarked(row),
                  project().timber.rack.planks[static_cast<std::size_t>(row)].label ==
                      *trail().planks.begin());
    }
    key(Qt::Key_Escape);
    EXPECT_TRUE(light().subject().isNone());
    EXPECT_TRUE(marksOf(steps()).empty());
    EXPECT_TRUE(marksOf(cuts()).empty());
    EXPECT_TRUE(stripsMarked().empty());
    EXPECT_EQ(boardNow().size(), before.size());
}

TEST_F(SpotlightTest, AStepLightsUpTheBoardAndItsLinesCautionsAndStrips) {
    openPlanks(TimberPanel::Cuts);
    open(BenchTabs::CutListTab);
    open(BenchTabs::Steps);
    const QImage before = boardNow();
    const int step = millStep();
    ASSERT_GE(step, 0);
    clickRow(steps(), step);
    ASSERT_TRUE(light().isOn(Kind::Step, step));
    EXPECT_NE(boardNow(), before);
    EXPECT_FALSE(trail().pieces.empty());
    EXPECT_TRUE(trail().pieces.contains(pieceAt(field(), 0, 0)) ||
                trail().pieces.contains(pieceAt(field(), 0, 1)));
    open(BenchTabs::CutListTab);
    EXPECT_TRUE(light().isOn(Kind::Step, step)) << "it is followed from tab to tab";
    EXPECT_FALSE(marksOf(cuts()).empty());
    EXPECT_EQ(marksOf(cuts()), trail().cutLines);
    EXPECT_EQ(marksOf(cautions()), trail().cautions);
    const auto& mill = std::get<Mill>(job().steps.steps[static_cast<std::size_t>(step)].work);
    std::set<std::string> strips;
    for (const MillLine& line : mill.lines) {
        strips.insert(line.strips.begin(), line.strips.end());
    }
    EXPECT_EQ(stripsMarked(), strips);
    auto* note = find<SpotlightNote>("spotlightNote");
    EXPECT_EQ(note->text(), QStringLiteral("Step %1").arg(step + 1));
    click("letGo");
    EXPECT_TRUE(light().subject().isNone());
    EXPECT_EQ(steps().chosenCard(), -1);
    EXPECT_EQ(boardNow(), before);
}

TEST_F(SpotlightTest, ALineOfTheCutListLightsUpItsPiecesAndSteps) {
    openPlanks(TimberPanel::Cuts);
    open(BenchTabs::CutListTab);
    const QImage before = boardNow();
    clickRow(cuts(), 1);
    ASSERT_TRUE(light().isOn(Kind::CutLine, 1));
    EXPECT_EQ(cuts().chosenLine(), 1);
    EXPECT_NE(boardNow(), before);
    EXPECT_EQ(marksOf(steps()), trail().steps);
    EXPECT_TRUE(marksOf(steps()).contains(millStep()));
    const CutListLine line = cutListOf(job().steps)[1];
    EXPECT_EQ(stripsMarked(),
              std::set<std::string>(line.strips.strips.begin(), line.strips.strips.end()));
    for (const int piece : trail().pieces) {
        EXPECT_EQ(field().pieces[static_cast<std::size_t>(piece)].wood, line.strips.wood);
    }
    clickRow(cuts(), 1);
    EXPECT_TRUE(light().subject().isNone()) << "a second click lets go";
    EXPECT_EQ(boardNow(), before);
}

TEST_F(SpotlightTest, ACautionLightsUpItsPlaceItsStepsAndItsLines) {
    // Maple beside walnut: two columns that move unlike each other.
    window->document().edit(QStringLiteral("test"), entry::none, [](Project& changed) {
        changed.recipe.reset();
        for (Piece& piece : changed.board.field.pieces) {
            piece.wood = piece.column < 4 ? 0 : 1;
        }
        changed.climate = {8, 4, 18};
    });
    ASSERT_TRUE(planned());
    open(BenchTabs::CutListTab);
    open(BenchTabs::Cautions);
    const int row = cautionAbout("uneven-columns");
    ASSERT_GE(row, 0);
    const QImage before = boardNow();
    clickRow(cautions(), row);
    ASSERT_TRUE(light().isOn(Kind::Caution, row));
    const Caution& caution = job().cautions[static_cast<std::size_t>(row)];
    EXPECT_EQ(light().place(), highlightOf(caution.place));
    EXPECT_NE(boardNow(), before);
    EXPECT_EQ(marksOf(steps()), std::set<int>(caution.steps.begin(), caution.steps.end()));
    EXPECT_FALSE(marksOf(cuts()).empty());
    // And back: a piece in its place has it in its trail.
    ASSERT_FALSE(trail().pieces.empty());
    const Piece piece = field().pieces[static_cast<std::size_t>(*trail().pieces.begin())];
    clickPiece(piece.column, piece.row);
    EXPECT_TRUE(cautions().isMarked(row));
    EXPECT_EQ(cautions().chosenCard(), -1);
}

TEST_F(SpotlightTest, AStripOnAPlankLightsUpItsPieces) {
    open(BenchTabs::CutListTab);
    openPlanks(TimberPanel::Cuts);
    const QImage before = boardNow();
    ASSERT_GT(planks().plankCount(), 0);
    int plank = 0;
    while (planks().stripCount(plank) == 0) {
        ++plank;
    }
    planks().choose(plank, -1);
    QTest::mouseClick(planks().viewport(), Qt::LeftButton, Qt::NoModifier,
                      planks().stripRect(plank, 0).center().toPoint());
    const std::string strip = planks().stripName(plank, 0).toStdString();
    ASSERT_EQ(light().subject(), (Subject{Kind::Part, -1, strip}));
    EXPECT_NE(boardNow(), before);
    EXPECT_EQ(marksOf(steps()), trail().steps);
    EXPECT_EQ(marksOf(cuts()), trail().cutLines);
    EXPECT_EQ(trail().cutLines.size(), 1u);
    EXPECT_TRUE(trail().planks.contains(planks().plankLabel(plank).toStdString()));
    QTest::keyClick(&planks(), Qt::Key_Escape);
    EXPECT_TRUE(light().subject().isNone());
    EXPECT_EQ(boardNow(), before);
}

TEST_F(SpotlightTest, APlankOfTheRackLightsUpAllThatIsCutFromIt) {
    openPlanks(TimberPanel::RackOf);
    const PlankCuts& cut = window->sawyer().last()->plan.layout.planks.front();
    const QImage before = boardNow();
    clickRow(rack(), cut.plank);
    const std::string label =
        project().timber.rack.planks[static_cast<std::size_t>(cut.plank)].label;
    ASSERT_EQ(light().subject(), (Subject{Kind::Plank, -1, label}));
    EXPECT_NE(boardNow(), before);
    EXPECT_FALSE(marksOf(steps()).empty());
    std::set<std::string> strips;
    for (int plank = 0; plank < planks().plankCount(); ++plank) {
        for (int strip = 0; strip < planks().stripCount(plank); ++strip) {
            if (planks().plankLabel(plank).toStdString() == label) {
                strips.insert(planks().stripName(plank, strip).toStdString());
            }
        }
    }
    EXPECT_EQ(stripsMarked(), strips);
    QTest::keyClick(&rack(), Qt::Key_Escape);
    EXPECT_TRUE(light().subject().isNone());
    EXPECT_EQ(boardNow(), before);
}

TEST_F(SpotlightTest, TheBorderIsFollowedToo) {
    open(BenchTabs::CutListTab);
    key(Qt::Key_K);
    const QRectF board = window->board().geometry().board();
    QTest::mouseClick(
        &window->board(), Qt::LeftButton, Qt::NoModifier,
        QPoint(static_cast<int>(board.center().x()), static_cast<int>(board.top()) + 8));
    ASSERT_EQ(light().subject().kind, Kind::Border);
    EXPECT_TRUE(marksOf(cuts()).contains(cuts().count() - 1)) << "the rails";
    EXPECT_EQ(find<SpotlightNote>("spotlightNote")->text(), QStringLiteral("Border"));
}

TEST_F(SpotlightTest, KeysDoAllThatTheMouseDoes) {
    openPlanks(TimberPanel::Cuts);
    open(BenchTabs::CutListTab);
    // From a piece.
    key(Qt::Key_K);
    key(Qt::Key_Right);
    ASSERT_EQ(light().subject().kind, Kind::Piece);
    EXPECT_FALSE(marksOf(cuts()).empty());
    // From a line of the cut list.
    walkTo(cuts(), 2);
    EXPECT_EQ(light().subject().kind, Kind::Piece) << "walking chooses nothing";
    QTest::keyClick(&cuts(), Qt::Key_Space);
    EXPECT_TRUE(light().isOn(Kind::CutLine, 2));
    QTest::keyClick(&cuts(), Qt::Key_Space);
    EXPECT_TRUE(light().subject().isNone());
    QTest::keyClick(&cuts(), Qt::Key_Space);
    QTest::keyClick(&cuts(), Qt::Key_Escape);
    EXPECT_TRUE(light().subject().isNone());
    // From a step.
    open(BenchTabs::Steps);
    walkTo(steps(), 1);
    QTest::keyClick(&steps(), Qt::Key_Space);
    EXPECT_TRUE(light().isOn(Kind::Step, 1));
    // From a caution.
    open(BenchTabs::Cautions);
    walkTo(cautions(), 0);
    QTest::keyClick(&cautions(), Qt::Key_Space);
    EXPECT_TRUE(light().isOn(Kind::Caution, 0));
    EXPECT_EQ(steps().chosenCard(), -1);
    // From a strip.
    open(BenchTabs::TimberTab);
    planks().setFocus();
    QTest::keyClick(&planks(), Qt::Key_Right);
    EXPECT_EQ(light().subject().kind, Kind::Part);
    EXPECT_EQ(cautions().chosenCard(), -1);
    QTest::keyClick(&planks(), Qt::Key_Down);
    EXPECT_EQ(light().subject().kind, Kind::Plank);
    // From a plank of the rack.
    timber().showPage(TimberPanel::RackOf);
    walkTo(rack(), 3);
    EXPECT_EQ(light().subject(), (Subject{Kind::Plank, -1, "P4"}));
    QTest::keyClick(&rack(), Qt::Key_Escape);
    EXPECT_TRUE(light().subject().isNone());
}

TEST_F(SpotlightTest, EscLetsGoInAListWhereNothingIsChosen) {
    open(BenchTabs::CutListTab);
    clickRow(cuts(), 0);
    open(BenchTabs::Steps);
    ASSERT_FALSE(marksOf(steps()).empty());
    steps().setFocus();
    QTest::keyClick(&steps(), Qt::Key_Escape);
    EXPECT_TRUE(light().subject().isNone());
    EXPECT_TRUE(marksOf(steps()).empty());
}

TEST_F(SpotlightTest, WhatIsChosenIsKeptThroughAnEditOrLetGo) {
    clickRow(steps(), 0);
    const auto thicker = [](Project& changed) { changed.board.thickness += Length::mm(2); };
    window->document().edit(QStringLiteral("test"), entry::none, thicker);
    ASSERT_TRUE(planned());
    EXPECT_TRUE(light().isOn(Kind::Step, 0));
    EXPECT_FALSE(trail().isEmpty());
    clickRow(steps(), steps().count() - 1);
    window->document().edit(QStringLiteral("test"), entry::none, [](Project& changed) {
        changed.board.border = Border();
        changed.board.build = Build::LongGrain;
    });
    ASSERT_TRUE(planned());
    EXPECT_TRUE(light().subject().isNone() || light().subject().index < steps().count());
    clickPiece(2, 2);
    ASSERT_FALSE(marksOf(steps()).empty());
    answers.unsaved = Dialogs::Unsaved::Discard;
    window->files().startNew(Unit::Millimetres);
    ASSERT_TRUE(planned());
    EXPECT_TRUE(light().subject().isNone()) << "another board";
}

}  // namespace
}  // namespace kerfwright
